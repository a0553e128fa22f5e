//! From a need to whole packs.
use crate::takeoff::{Basis, MaterialLine, Unit};

use super::needs::line;

/// The packs that hold what a line needs with its waste, each so much in the line's unit: up to whole ones, once for
/// the whole job.
pub(super) fn packs_of(of: &MaterialLine, item: &str, holds: f64, what: String) -> MaterialLine {
    let basis = vec![Basis { what, count: 1, each: of.need / holds, places: Vec::new() }];
    let packs = line(item.to_owned(), Unit::Each, of.waste, basis);
    MaterialLine { bring: whole_packs(packs.bring) as f64, ..packs }
}

/// The least number of whole packs that covers a need given in packs: up to the next whole number, but a need
/// within a relative 1e-9 of whole packs is that many, so that a last digit lost in a sum costs no pack.
///
/// # Example
///
/// ```
/// use takeoff_core::consumables::whole_packs;
/// assert_eq!(whole_packs(4.345), 5);
/// assert_eq!(whole_packs(4.000_000_001), 4);
/// assert_eq!(whole_packs(4.000_001), 5);
/// ```
pub fn whole_packs(need: f64) -> u64 {
    let nearest = need.round();
    let packs = if (need - nearest).abs() <= 1e-9 * nearest { nearest } else { need.ceil() };
    packs as u64
}

//! From a need to whole packs.
use super::needs::line;
use super::{Basis, MaterialLine};
use crate::units::Unit;

/// The packs that hold what a line needs with its waste, each so much in the line's unit: up to whole ones, once for
/// the whole job.
pub(super) fn packs_of(of: &MaterialLine, item: &str, holds: f64, what: String) -> MaterialLine {
    let basis = vec![Basis { what, count: 1, each: of.need / holds, places: Vec::new() }];
    let packs = line(item.to_owned(), Unit::Each, of.waste, basis);
    MaterialLine { bring: whole_packs(packs.bring) as f64, packs_of: Some(of.item.clone()), ..packs }
}

/// The least number of whole packs that covers a need given in packs: up to the next whole number, but a need
/// within a relative 1e-9 of whole packs is that many, so that a last digit lost in a sum costs no pack.
///
/// # Example
///
/// ```
/// use takeoff_core::quantities::whole_packs;
/// assert_eq!(whole_packs(4.345), 5);
/// assert_eq!(whole_packs(4.000_000_001), 4);
/// assert_eq!(whole_packs(4.000_001), 5);
/// ```
pub fn whole_packs(need: f64) -> u64 {
    least_covering(need, 1.0) as u64
}

/// The least whole number of measures that covers a need, by the rule of [`whole_packs`].
pub(crate) fn least_covering(need: f64, measure: f64) -> i128 {
    (need / (measure * (1.0 + 1e-9))).ceil() as i128
}

//! Sealant of a post: beads, filled pilot holes, dabs.
use std::f64::consts::PI;

use super::Need;
use crate::materials::Material;
use crate::model::{Assembly, BeadPlace, DeckFlashing, Display, Practice};
use crate::units::{Length, RealLength, Volume};

/// Volume of a round bead in mm³: `π d²/4 × length`.
///
/// # Example
///
/// A cartridge of 10.1 US fl oz (18.227 in³, the gallon being 231 in³) yields 13.75 ft of a 3/8 in bead:
///
/// ```
/// use takeoff_core::quantities::bead_mm3;
/// use takeoff_core::units::{Length, Volume};
/// let foot = bead_mm3(Length::parse("3/8 in")?, 304.8);
/// let cartridge = Volume::parse("10.1 fl oz")?.mm3();
/// assert!((cartridge / foot - 13.75).abs() < 0.005);
/// # Ok::<(), takeoff_core::units::UnitError>(())
/// ```
pub fn bead_mm3(diameter: Length, length_mm: f64) -> f64 {
    PI * diameter.mm() * diameter.mm() / 4.0 * length_mm
}

/// Length in millimetres of the U under a deck flange, set in from its edges and open below:
/// `2 (d + up − inset) + (a − 2 inset)`; a side shorter than the inset has none.
///
/// # Example
///
/// 10 in wide, 4 in down, 7 in up, inset 3/4 in: 2 · 10 1/4 + 8 1/2 = 29 in.
pub fn flange_bead_mm(flashing: &DeckFlashing, inset: Length) -> f64 {
    let side = flashing.down + flashing.up - inset;
    let top = flashing.width - inset - inset;
    2.0 * side.max(Length::ZERO).mm() + top.max(Length::ZERO).mm()
}

/// Length in millimetres of a ring round a post: `π × diameter`.
pub fn ring_mm(diameter: Length) -> f64 {
    PI * diameter.mm()
}

/// Sealant of one post of an assembly: each bead, each set of pilot holes, each set of dabs.
pub(super) fn sealant(
    assembly: &Assembly,
    practice: &Practice,
    display: Display,
) -> impl Iterator<Item = Need> {
    let length = move |length: Length| display.length(length);
    let need = move |amount: f64, why: String| Need {
        material: Material::Sealant,
        amount,
        why: format!("`{}`: {why}", assembly.name),
    };
    let beads = assembly.beads.iter().map(move |bead| {
        let (length_mm, place) = match bead.place {
            BeadPlace::DeckFlange => {
                (flange_bead_mm(&assembly.deck_flashing, practice.bead_inset), "under the deck flange")
            }
            BeadPlace::Collar => (ring_mm(assembly.post_diameter), "round the post at its collar"),
        };
        let long = length(RealLength::from_mm(length_mm).nearest());
        let why = format!("bead of {} {place}, {long} long", length(bead.diameter));
        need(bead_mm3(bead.diameter, length_mm), why)
    });
    let holes = assembly.pilot_holes.iter().map(move |hole| {
        let (diameter, depth) = (length(hole.diameter), length(hole.depth));
        let why = format!("pilot holes of {diameter} filled {depth} deep, {} a post", hole.count);
        need(f64::from(hole.count) * bead_mm3(hole.diameter, hole.depth.mm()), why)
    });
    let dabs = assembly.dabs.iter().map(move |dab| {
        let why = format!("dabs of {}, {} a post", volume(dab.volume_mm3, display), dab.count);
        need(f64::from(dab.count) * dab.volume_mm3, why)
    });
    beads.chain(holes).chain(dabs)
}

pub(super) fn volume(mm3: f64, display: Display) -> String {
    match display {
        Display::Imperial => Volume::from_mm3(mm3).imperial(2),
        Display::Metric => Volume::from_mm3(mm3).metric(1),
    }
}

//! Sealant: beads, pilot holes filled, dabs, and the cartridges for all of it.
use std::f64::consts::PI;

use super::MaterialLine;
use super::needs::{Needs, line, posts_by_assembly};
use super::packs::packs_of;
use crate::model::{Assembly, BeadPlace, DeckFlashing, Display, Job, Practice};
use crate::units::{Length, RealLength, Unit, Volume};

/// Sealant in one kind of place at a post.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// Where it goes, with the numbers that make up its volume.
    pub what: String,
    /// Volume in mm³.
    pub mm3: f64,
}

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

/// The sealant that one post of an assembly takes.
pub fn doses(assembly: &Assembly, practice: &Practice, display: Display) -> Vec<Dose> {
    let length = |length: Length| display.length(length);
    let beads = assembly.beads.iter().map(|bead| {
        let (length_mm, place) = match bead.place {
            BeadPlace::DeckFlange => {
                (flange_bead_mm(&assembly.deck_flashing, practice.bead_inset), "under the deck flange")
            }
            BeadPlace::Collar => (ring_mm(assembly.post_diameter), "round the post at its collar"),
        };
        let long = length(RealLength::from_mm(length_mm).nearest());
        Dose {
            what: format!("bead of {} {place}, {long} long", length(bead.diameter)),
            mm3: bead_mm3(bead.diameter, length_mm),
        }
    });
    let holes = assembly.pilot_holes.iter().map(|hole| Dose {
        what: format!(
            "pilot holes of {} filled {} deep, {} a post",
            length(hole.diameter),
            length(hole.depth),
            hole.count
        ),
        mm3: f64::from(hole.count) * bead_mm3(hole.diameter, hole.depth.mm()),
    });
    let dabs = assembly.dabs.iter().map(|dab| Dose {
        what: format!("dabs of {}, {} a post", volume(dab.volume_mm3, display), dab.count),
        mm3: f64::from(dab.count) * dab.volume_mm3,
    });
    beads.chain(holes).chain(dabs).collect()
}

/// The sealant of a job and its cartridges: `total × (1 + waste) / cartridge`, up, once for the whole job.
pub(super) fn sealant(job: &Job) -> Vec<MaterialLine> {
    let practice = &job.practice;
    let mut needs = Needs::new(Unit::Mm3);
    for (assembly, posts) in posts_by_assembly(job) {
        for dose in doses(assembly, practice, job.display) {
            let what = format!("`{}`: {}", assembly.name, dose.what);
            needs.add("sealant", what, dose.mm3, posts.clone());
        }
    }
    let Some(of_posts) = needs.into_lines().pop() else { return Vec::new() };
    let volume_line = line(of_posts.item, Unit::Mm3, practice.sealant_waste, of_posts.basis);
    let cartridge = volume(practice.cartridge_mm3, job.display);
    let what = format!("{} of sealant in cartridges of {cartridge}", volume(volume_line.need, job.display));
    let cartridges = packs_of(&volume_line, "sealant cartridge", practice.cartridge_mm3, what);
    vec![volume_line, cartridges]
}

pub(super) fn volume(mm3: f64, display: Display) -> String {
    match display {
        Display::Imperial => Volume::from_mm3(mm3).imperial(2),
        Display::Metric => Volume::from_mm3(mm3).metric(1),
    }
}

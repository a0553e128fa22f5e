//! A cost by purpose.
use std::collections::BTreeSet;

use crate::quantities::Work;

/// Cost of posts in the currency of the job, by purpose. Nothing is rounded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cost {
    /// The assemblies' items, sealant, cement and mesh, fasteners of tiles that are reset, batten nails.
    pub hardware: f64,
    /// The crew's minutes.
    pub labour: f64,
    /// Felt of the patches, and their staples.
    pub patches: f64,
    /// Blocking boards, and their items.
    pub blocking: f64,
    /// Expected breakage of tiles, and the pieces for severed ones.
    pub breakage: f64,
    /// Items without a price, by name: they are in no sum.
    pub unpriced: BTreeSet<String>,
}

impl Cost {
    /// The sum over all purposes.
    pub fn total(&self) -> f64 {
        self.hardware + self.labour + self.patches + self.blocking + self.breakage
    }

    /// The part that the materials of some work belong to.
    pub(super) fn of_work(&mut self, work: Work) -> &mut f64 {
        match work {
            Work::Post | Work::Batten | Work::Tile | Work::Saw => &mut self.hardware,
            Work::Blocking => &mut self.blocking,
            Work::Patch => &mut self.patches,
        }
    }

    pub(super) fn add(&mut self, other: Cost) {
        self.hardware += other.hardware;
        self.labour += other.labour;
        self.patches += other.patches;
        self.blocking += other.blocking;
        self.breakage += other.breakage;
        self.unpriced.extend(other.unpriced);
    }
}

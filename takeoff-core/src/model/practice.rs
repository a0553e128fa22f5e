//! Working practice of the crew.
use std::collections::BTreeMap;

use super::Breakage;
use crate::units::{Length, Money};

/// How the crew works: every value is an assumption unless the job sets it.
#[derive(Clone, Debug, PartialEq)]
pub struct Practice {
    pub(crate) least_web: Length,
    pub(crate) hand_clearance: Length,
    pub(crate) least_margin: Length,
    pub(crate) drain: Length,
    pub(crate) deck_tuck: Length,
    pub(crate) patch_underlap: Length,
    pub(crate) patch_side_margin: Length,
    pub(crate) least_top_tuck: Length,
    pub(crate) least_side_cover: Length,
    pub(crate) bead_inset: Length,
    pub(crate) staple_spacing: Length,
    /// How far the nearest place may be from where the post is; `None` is one exposure.
    pub(crate) window: Option<Length>,
    pub(crate) breakage: Breakage,
    pub(crate) service_level: f64,
    /// What each tile short costs, if the job says.
    pub(crate) cost_of_short: Option<Money>,
    /// What a layout pays at most to keep one post from severing a tile or failing a check; `None` is any price.
    pub(crate) cost_of_failing: Option<Money>,
    /// New tiles that make up one severed tile.
    pub(crate) pieces_for_severed: u64,
    /// Volume of a cartridge of sealant, mm³.
    pub(crate) cartridge_mm3: f64,
    /// Share of sealant lost, for example 0.1.
    pub(crate) sealant_waste: f64,
    /// Share lost by item.
    pub(crate) waste: BTreeMap<String, f64>,
    /// What one blade cuts in tile.
    pub(crate) blade_life: Option<Length>,
    pub(crate) three_course: MeshAndCement,
}

/// What three-course work is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct MeshAndCement {
    /// Width of the mesh, `w`.
    pub(crate) mesh_width: Length,
    /// Thickness of one coat of cement.
    pub(crate) film: Length,
    /// Coats of cement; at least one.
    pub(crate) coats: u32,
    /// What a container of cement holds, mm³.
    pub(crate) container_mm3: f64,
    /// Length of a roll of mesh.
    pub(crate) roll: Length,
    /// Share of cement lost.
    pub(crate) cement_waste: f64,
    /// Share of mesh lost.
    pub(crate) mesh_waste: f64,
}

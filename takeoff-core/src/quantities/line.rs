//! A line of the material list.
use schemars::JsonSchema;
use serde::Serialize;

use crate::units::Unit;

/// One line of the material list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct MaterialLine {
    /// What to buy.
    pub item: String,
    /// Unit of `need`: `each`, `mm2`, `mm`, `mm3`.
    pub unit: Unit,
    /// How much the work takes, before waste.
    pub need: f64,
    /// Share added for waste; 0 when there is none.
    pub waste: f64,
    /// What to bring: need with waste; whole for counts.
    pub bring: f64,
    /// The line whose need this one gives again in packs: of the two, one is bought.
    pub packs_of: Option<String>,
    /// Where the need comes from.
    pub basis: Vec<Basis>,
}

/// One reason for a need: `count × each`.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Basis {
    /// Which rule, in words, with the numbers it used.
    pub what: String,
    /// How many times.
    pub count: u64,
    /// How much each time, in the line's unit.
    pub each: f64,
    /// Where, by name: posts, patches or tiles, `slope/name`; empty when it is the whole job.
    pub places: Vec<String>,
}

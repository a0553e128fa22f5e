//! A line of the material list.
use schemars::JsonSchema;
use serde::Serialize;

use super::whole_packs;
use crate::materials::Material;
use crate::units::Unit;

/// One line of the material list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct MaterialLine {
    /// What to buy.
    pub item: Material,
    /// Unit of `need`: `each`, `mm2`, `mm`, `mm3`.
    pub unit: Unit,
    /// How much the work takes, before waste.
    pub need: f64,
    /// Share added for waste; 0 when there is none.
    pub waste: f64,
    /// What to bring: need with waste; whole for counts.
    pub bring: f64,
    /// The line whose need this one gives again in packs: of the two, one is bought.
    pub packs_of: Option<Material>,
    /// Where the need comes from.
    pub basis: Vec<Basis>,
}

impl MaterialLine {
    /// The line of a material whose need is the sum of its basis.
    ///
    /// # Example
    ///
    /// 46 staples and a twentieth more: 48.3, so bring 49.
    pub(crate) fn new(item: Material, waste: f64, basis: Vec<Basis>) -> MaterialLine {
        let need = basis.iter().map(Basis::amount).sum();
        let (unit, packs_of) = (item.unit(), item.packs_of());
        MaterialLine { bring: to_bring(unit, need, waste), item, unit, need, waste, packs_of, basis }
    }
}

/// Amount to bring: the need with its waste, whole pieces where it is counted.
pub(crate) fn to_bring(unit: Unit, need: f64, waste: f64) -> f64 {
    let amount = need * (1.0 + waste);
    match unit {
        Unit::Each if amount.fract() != 0.0 => whole_packs(amount) as f64,
        _ => amount,
    }
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

impl Basis {
    /// `count × each`.
    pub fn amount(&self) -> f64 {
        self.count as f64 * self.each
    }
}

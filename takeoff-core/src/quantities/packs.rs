//! Packs: the whole ones that cover a need, and the pack that a quantity is sold in.
use super::sealant::volume;
use super::{Basis, MaterialLine};
use crate::materials::Material;
use crate::model::Job;

/// A pack that a quantity is sold in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pack {
    /// The material in packs.
    pub(crate) material: Material,
    /// Amount that one pack holds, in the quantity's unit.
    pub(crate) holds: f64,
}

impl Pack {
    /// The pack of a quantity; `None` for a material that is no such quantity, and for felt whose rolls have no length
    /// in the job.
    pub(crate) fn of_quantity(job: &Job, quantity: &Material) -> Option<Pack> {
        let three_course = &job.practice.three_course;
        let (material, holds) = match quantity {
            Material::Sealant => (Material::SealantCartridges, job.practice.cartridge_mm3),
            Material::RoofCement => (Material::CementContainers, three_course.container_mm3),
            Material::Mesh => (Material::MeshRolls, three_course.roll.mm()),
            Material::Felt(name) => {
                let sheets = job.slopes.iter().map(|slope| &slope.underlayment);
                let sheet = sheets.into_iter().find(|sheet| sheet.name == *name)?;
                let roll_mm2 = sheet.roll_length?.mm() * sheet.sheet_width.mm();
                (Material::FeltRolls(name.clone()), roll_mm2)
            }
            _ => return None,
        };
        Some(Pack { material, holds })
    }
}

/// The line of the packs that hold the need of a quantity: whole ones, once for the whole job. `None` for felt, whose
/// rolls the cutting plan counts, and for what is not sold in packs of the job's.
pub(super) fn line_of_packs(job: &Job, quantity: &MaterialLine) -> Option<MaterialLine> {
    let Pack { material, holds } = Pack::of_quantity(job, &quantity.item)?;
    let shown = |mm3: f64| volume(mm3, job.display);
    let (need, held) = (quantity.need, holds);
    let what = match &quantity.item {
        Material::Sealant => format!("{} of sealant in cartridges of {}", shown(need), shown(held)),
        Material::RoofCement => format!("{} of roof cement in containers of {}", shown(need), shown(held)),
        Material::Mesh => {
            let roll = job.display.length(job.practice.three_course.roll);
            format!("the mesh from rolls of {roll}, by its length alone")
        }
        _ => return None,
    };
    let waste = material.waste(&job.practice);
    let basis = vec![Basis { what, count: 1, each: need / holds, places: Vec::new() }];
    Some(MaterialLine::new(material, waste, basis))
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

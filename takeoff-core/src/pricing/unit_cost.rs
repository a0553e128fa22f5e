//! Cost of one unit of a material.
use crate::materials::Material;
use crate::model::Job;
use crate::quantities::Pack;

/// Cost of one unit of a material with its waste, by the job's prices: its share of the pack that it is sold in where
/// that has a price, else by its own price.
///
/// # Errors
///
/// Without a price: the material that it would be bought as.
///
/// # Example
///
/// Sealant of which a tenth is lost, in cartridges of 300 mL at 7.50: 7.50 · 1.1 / 300 = 0.0275 for a millilitre.
pub(crate) fn unit_cost(job: &Job, material: &Material) -> Result<f64, Material> {
    let of = |material: &Material| {
        let cost = job.prices.as_ref()?.unit_cost(&material.name())?;
        Some(cost.to_f64() * (1.0 + material.waste(&job.practice)))
    };
    let pack = Pack::of_quantity(job, material);
    let by_pack = pack.as_ref().and_then(|pack| Some(of(&pack.material)? / pack.holds));
    let cost = by_pack.or_else(|| of(material));
    cost.ok_or_else(|| pack.map_or_else(|| material.clone(), |pack| pack.material))
}

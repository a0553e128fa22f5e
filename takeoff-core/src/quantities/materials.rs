//! The material list of a job.
use crate::model::Code;
use std::collections::BTreeMap;

use super::felt::felt_rolls;
use super::packs::line_of_packs;
use super::spare_tiles::spare_tiles;
use super::{Basis, JobBill, MaterialLine, RollPlan};
use crate::materials::Material;
use crate::model::{Job, Problem};
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;

/// What a job takes, line by line: spare tiles, felt, roof cement and mesh, sealant, what is counted by the piece,
/// blocking, blades.
///
/// `slopes` are the takeoffs of the job's slopes in its order, `bill` is their [`job_bill`](super::job_bill), `rolls`
/// are the cutting plans of their patches. The need of every line is the sum of `count × each` over its basis, which
/// names the rule, the numbers it used and the places, so that "why 37?" has an answer.
pub fn materials(
    job: &Job,
    bill: &JobBill,
    slopes: &[SlopeTakeoff],
    spares: &[TileSpares],
    rolls: &[RollPlan],
) -> Vec<MaterialLine> {
    let mut by_material: BTreeMap<&Material, Vec<Basis>> = BTreeMap::new();
    for entry in &bill.entries {
        by_material.entry(&entry.material).or_default().push(entry.basis.clone());
    }
    let waste = |material: &Material| material.waste(&job.practice);
    let mut lines: Vec<MaterialLine> = by_material
        .into_iter()
        .map(|(material, basis)| MaterialLine::new(material.clone(), waste(material), basis))
        .collect();
    let packs: Vec<MaterialLine> = lines.iter().filter_map(|line| line_of_packs(job, line)).collect();
    lines.extend(packs);
    lines.extend(rolls.iter().filter_map(|plan| {
        let rolls = Material::FeltRolls(plan.sheet.name.clone());
        felt_rolls(job.display, plan, waste(&rolls))
    }));
    lines.sort_by_cached_key(|line| place_on_list(&line.item));
    spare_tiles(job, slopes, spares).chain(lines).collect()
}

/// Section of the list, and within it the name.
fn place_on_list(material: &Material) -> (u8, String) {
    let section = match material {
        Material::SpareTile(_) => 0,
        Material::Felt(_) => 1,
        Material::FeltRolls(_) => 2,
        Material::RoofCement => 3,
        Material::CementContainers => 4,
        Material::Mesh => 5,
        Material::MeshRolls => 6,
        Material::Sealant => 7,
        Material::SealantCartridges => 8,
        Material::Staple | Material::BattenNail | Material::TileFastener(_) | Material::Item(_) => 9,
        Material::Blocking => 10,
        Material::Blade => 11,
    };
    (section, material.name())
}

/// A finding for each item whose waste the job gives and that the work does not take.
pub fn unused_waste(job: &Job, lines: &[MaterialLine]) -> Vec<Problem> {
    let unused = job.practice.waste.keys().filter(|item| lines.iter().all(|line| line.item.name() != **item));
    unused
        .map(|item| {
            let message = format!("the waste of `{item}` is not used: the work takes none");
            let help = "call the item as the material list does";
            Problem::new(Code::WasteNotUsed, message, help, "/practice/waste")
        })
        .collect()
}

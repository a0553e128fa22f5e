//! The material list of a job.
use super::waste::with_waste;
use super::{MaterialLine, RollPlan, blades, boards, cement, fasteners, felt, sealant, spare_tiles};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;

/// What a job takes, line by line: spare tiles, felt, roof cement and mesh, sealant, what is counted by the piece,
/// boards, blades.
///
/// `slopes` are the takeoffs of the job's slopes in its order, `rolls` the cutting plans of their patches. The need of
/// every line is the sum of `count × each` over its basis, which names the rule, the numbers it used and the places, so
/// that "why 37?" has an answer.
pub fn materials(
    job: &Job,
    slopes: &[SlopeTakeoff],
    spares: &[TileSpares],
    rolls: &[RollPlan],
) -> Vec<MaterialLine> {
    let mut lines = spare_tiles::spare_tiles(job, slopes, spares);
    lines.extend(felt::felt(job, slopes, rolls));
    lines.extend(cement::cement_and_mesh(job));
    lines.extend(sealant::sealant(job));
    lines.extend(fasteners::fasteners(job, slopes));
    lines.extend(boards::boards(job, slopes));
    lines.extend(blades::blades(job, slopes));
    with_waste(job, lines)
}

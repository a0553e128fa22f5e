//! The materials of all jobs, line by line.
use super::{OrderSpares, Ordered};
use crate::materials::Material;
use crate::model::Display;
use crate::quantities::{Basis, MaterialLine, RollPlan, felt_rolls, to_bring};

/// The lines of all jobs added up, in the order in which they first stand; spare tiles are those of the pools, and rolls
/// of felt those of the common cutting plans.
///
/// The waste of a line is that of its jobs in proportion to their needs, so that need with waste is the sum of theirs;
/// spare tiles, whose pool needs fewer, have the greatest waste that one of the jobs gives them.
pub(super) fn materials(
    jobs: &[Ordered<'_>],
    spares: &[OrderSpares],
    plans: &[RollPlan],
    display: Display,
) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = spares.iter().map(|of_piece| spare_tiles(jobs, of_piece)).collect();
    for Ordered { job, takeoff } in jobs {
        let of_pools = |line: &&MaterialLine| matches!(line.item, Material::SpareTile(_));
        for line in takeoff.materials.iter().filter(|line| !of_pools(line)) {
            let basis =
                Basis { what: format!("job `{}`", job.name), count: 1, each: line.need, places: Vec::new() };
            let known = lines.iter_mut().find(|known| known.item == line.item);
            match known {
                Some(known) => {
                    let wasted = known.need * known.waste + line.need * line.waste;
                    known.need += line.need;
                    known.waste = if known.need > 0.0 { wasted / known.need } else { 0.0 };
                    known.bring = to_bring(known.unit, known.need, known.waste);
                    known.basis.push(basis);
                }
                None => lines.push(MaterialLine { basis: vec![basis], ..line.clone() }),
            }
        }
    }
    for plan in plans {
        let rolls = Material::FeltRolls(plan.sheet.name.clone());
        if let Some(line) = lines.iter_mut().find(|line| line.item == rolls)
            && let Some(rolls) = felt_rolls(display, plan, line.waste)
        {
            *line = rolls;
        }
    }
    lines
}

fn spare_tiles(ordered: &[Ordered<'_>], of_piece: &OrderSpares) -> MaterialLine {
    let OrderSpares { tile, jobs, apart, spares } = of_piece;
    let basis = |what: String, count, each| Basis { what, count, each, places: jobs.clone() };
    let need = spares.used_at_level + spares.for_severed;
    let on_hand = spares.on_hand.min(need);
    let harvested = spares.harvested.min(need - on_hand);
    let breakage =
        format!("breakage on all jobs together; ordered one by one they would be {apart} tiles in all");
    let reasons = [
        basis("new tiles that make up severed ones".to_owned(), spares.for_severed, 1.0),
        basis("on hand already".to_owned(), on_hand, -1.0),
        basis("salvaged from under the arrays".to_owned(), harvested, -1.0),
    ];
    let reasons = reasons.into_iter().filter(|basis| basis.count > 0);
    let basis = std::iter::once(basis(breakage, spares.used_at_level, 1.0)).chain(reasons).collect();
    let material = Material::SpareTile(tile.clone());
    let waste = ordered.iter().map(|ordered| material.waste(&ordered.job.practice)).fold(0.0, f64::max);
    MaterialLine::new(material, waste, basis)
}

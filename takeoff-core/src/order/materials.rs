//! The materials of all jobs, line by line.
use super::{OrderSpares, Ordered};
use crate::model::Display;
use crate::quantities::{Basis, MaterialLine, RollPlan, felt_rolls, whole_packs};
use crate::units::Unit;

/// The lines of all jobs added up, in the order in which they first stand; spare tiles are those of the pools, and rolls
/// of felt those of the common cutting plans.
///
/// The waste of a line is that of its jobs in proportion to their needs, so that need with waste is the sum of theirs.
pub(super) fn materials(
    jobs: &[Ordered<'_>],
    spares: &[OrderSpares],
    plans: &[RollPlan],
    display: Display,
) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = spares.iter().map(spare_tiles).collect();
    for Ordered { job, takeoff } in jobs {
        let spare: Vec<String> = takeoff.spares.iter().map(|spares| spares.item()).collect();
        for line in takeoff.materials.iter().filter(|line| !spare.contains(&line.item)) {
            let basis =
                Basis { what: format!("job `{}`", job.name), count: 1, each: line.need, places: Vec::new() };
            let known = lines.iter_mut().find(|known| known.item == line.item && known.unit == line.unit);
            match known {
                Some(known) => {
                    let wasted = known.need * known.waste + line.need * line.waste;
                    known.need += line.need;
                    known.waste = if known.need > 0.0 { wasted / known.need } else { 0.0 };
                    known.basis.push(basis);
                }
                None => lines.push(MaterialLine { basis: vec![basis], ..line.clone() }),
            }
        }
    }
    for rolls in plans.iter().filter_map(|plan| felt_rolls(display, plan)) {
        if let Some(line) = lines.iter_mut().find(|line| line.item == rolls.item) {
            *line = MaterialLine { waste: line.waste, ..rolls };
        }
    }
    lines.iter_mut().for_each(bring);
    lines
}

/// What is counted comes whole, once an order.
fn bring(line: &mut MaterialLine) {
    let with_waste = line.need * (1.0 + line.waste);
    line.bring = if line.unit == Unit::Each { whole_packs(with_waste) as f64 } else { with_waste };
}

fn spare_tiles(of_kind: &OrderSpares) -> MaterialLine {
    let OrderSpares { tile, jobs, apart, spares } = of_kind;
    let basis = |what: String, count, each| Basis { what, count, each, places: jobs.clone() };
    let need = spares.used_at_level + spares.for_severed;
    let on_hand = spares.on_hand.min(need);
    let harvested = spares.harvested.min(need - on_hand);
    let breakage =
        format!("breakage on all jobs together; ordered one by one they would be {apart} tiles in all");
    let reasons = [
        basis("new tiles that make up severed ones".to_owned(), spares.for_severed, 1.0),
        basis("on hand already".to_owned(), on_hand, -1.0),
        basis("taken from under the arrays".to_owned(), harvested, -1.0),
    ];
    let reasons = reasons.into_iter().filter(|basis| basis.count > 0);
    MaterialLine {
        item: format!("spare tile {tile}"),
        unit: Unit::Each,
        need: spares.spares as f64,
        waste: 0.0,
        bring: spares.spares as f64,
        packs_of: None,
        basis: std::iter::once(basis(breakage, spares.used_at_level, 1.0)).chain(reasons).collect(),
    }
}

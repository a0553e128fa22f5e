//! Waste that the job gives by item.
use super::{MaterialLine, whole_packs};
use crate::model::{Code, Job, Problem};
use crate::units::Unit;

/// The lines with the waste that the job gives for their items; a line in packs has that of its quantity, unless it
/// has its own. What to bring follows: need × (1 + waste), whole pieces up.
///
/// # Example
///
/// 46 staples and a twentieth more: 48.3, so bring 49.
pub(super) fn with_waste(job: &Job, lines: Vec<MaterialLine>) -> Vec<MaterialLine> {
    let given = |line: &MaterialLine| {
        let waste = &job.practice.waste;
        waste.get(&line.item).or_else(|| waste.get(line.packs_of.as_ref()?)).copied()
    };
    let with = |line: MaterialLine| match given(&line) {
        Some(waste) => {
            let amount = line.need * (1.0 + waste);
            let bring = if line.unit == Unit::Each { whole_packs(amount) as f64 } else { amount };
            MaterialLine { waste, bring, ..line }
        }
        None => line,
    };
    lines.into_iter().map(with).collect()
}

/// A finding for each item whose waste the job gives and that the work does not take.
pub fn unused_waste(job: &Job, lines: &[MaterialLine]) -> Vec<Problem> {
    let unused = job.practice.waste.keys().filter(|item| lines.iter().all(|line| line.item != **item));
    unused
        .map(|item| {
            let message = format!("the waste of `{item}` is not used: the work takes none");
            Problem::new(
                Code::WasteNotUsed,
                message,
                "call the item as the material list does",
                "/practice/waste",
            )
        })
        .collect()
}

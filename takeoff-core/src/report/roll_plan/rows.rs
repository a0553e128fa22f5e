//! Rolls in rows that fit the paper.
use crate::report::document::RollPlan;

/// A stretch of a roll in one row of the drawing: some sections, and what stays on the roll after its last one.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    /// The roll.
    pub(super) roll: u64,
    /// The first and the last section.
    pub(super) sections: [u64; 2],
    /// Start and end on the roll.
    pub(super) from: f64,
    pub(super) to: f64,
    /// The roll continues, uncut, after it.
    pub(super) goes_on: bool,
}

/// The rows of a plan, each at most so long, or one section where that is longer.
pub(super) fn rows(plan: &RollPlan, longest: f64) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    for section in &plan.sections {
        let end = section.start_mm + section.length_mm;
        match rows.last_mut() {
            Some(row) if row.roll == section.roll && end - row.from <= longest => {
                row.sections[1] = section.section;
                row.to = end;
            }
            _ => rows.push(Row {
                roll: section.roll,
                sections: [section.section; 2],
                from: section.start_mm,
                to: end,
                goes_on: false,
            }),
        }
    }
    for at in 0..rows.len() {
        let last = rows.get(at + 1).is_none_or(|next| next.roll != rows[at].roll);
        let used = plan.rolls.iter().find(|roll| roll.roll == rows[at].roll);
        rows[at].goes_on = last && used.is_some_and(|roll| roll.left_mm.is_none_or(|left| left > 0.0));
    }
    rows
}

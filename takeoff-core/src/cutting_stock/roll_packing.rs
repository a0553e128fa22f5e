//! Assignment of sections to rolls: bin packing by first-fit decreasing.
use std::cmp::Reverse;

use super::pattern::Pattern;

/// A roll that is being filled.
struct OpenRoll {
    used: i64,
    sections: Vec<Pattern>,
}

/// Assigns sections to rolls: longest first, each to the first roll with enough length left.
///
/// Heuristic: the number of rolls is not always the least.
pub(super) fn first_fit_decreasing(
    mut sections: Vec<Pattern>,
    roll_length: Option<i64>,
) -> Vec<Vec<Pattern>> {
    sections.sort_by_cached_key(|section| (Reverse(section.size().0), section.clone()));
    let mut rolls: Vec<OpenRoll> = Vec::new();
    for section in sections {
        let (length, _) = section.size();
        let has_room = |roll: &&mut OpenRoll| roll_length.is_none_or(|total| roll.used + length <= total);
        match rolls.iter_mut().find(has_room) {
            Some(roll) => {
                roll.used += length;
                roll.sections.push(section);
            }
            None => rolls.push(OpenRoll { used: length, sections: vec![section] }),
        }
    }
    rolls.into_iter().map(|roll| roll.sections).collect()
}

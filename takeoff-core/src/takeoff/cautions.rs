//! What every report says beside its numbers: the usual cautions, and what a survey should have asked.
use crate::model::SurveyQuestion;
use crate::quantities::Counts;

/// The usual cautions of the trade, a sentence or two each. The regulations named are those of the
/// United States; elsewhere the local ones hold.
///
/// # Source
///
/// 29 CFR 1926.501(b)(11) and (b)(13) for work on steep and residential roofs, 29 CFR 1926.1153(c)
/// Table 1 for respirable crystalline silica.
pub const CAUTIONS: [&str; 6] = [
    "Estimate: this takeoff is computed from the measurements in the job file. Verify every post, course \
     and joint on the roof before you cut, and order with your own judgement.",
    "Falls: work on a roof needs fall protection. In the United States 29 CFR 1926.501 asks for it from \
     6 ft up, and 1926.501(b)(11) on slopes steeper than 4:12; elsewhere the local rules hold. Walking on \
     tile breaks tile and feet slip on it.",
    "Dust: cutting or drilling tile frees respirable silica. Cut wet, or with the dust collection and \
     respirators that 29 CFR 1926.1153 Table 1 (or the local rule) asks for the tool and the hours.",
    "Structure: posts, lag screws, blocking and the roof below them are not designed here; a screening of \
     the lags, where there is one, replaces no engineer. Loads and fastening follow the local code and are \
     for a licensed engineer to decide.",
    "Waterproofing: flashing, underlayment and patches follow the local code, the makers' instructions \
     and the practice of a licensed roofer. Repair what you find torn or brittle before you cover it.",
    "Warranty: opening a roof can end the warranties of roof, tile and underlayment. Ask the roofer of \
     record and the makers first.",
];

/// The caution beside three-course work.
pub const THREE_COURSE_CAUTION: &str = "Three-course work: bands of roof cement and mesh are taken off because the \
     job says that the building official allows them here. Have that permission in writing; the local code and the makers' \
     instructions for cement, mesh and underlayment decide whether and how it is done.";

/// What is said besides where tiles are harvested from under an array.
pub const HARVEST_CAUTION: &str = "Harvest: where a tile is taken from under an array, only the underlayment is left against rain, sun and \
     animals. Whether that is allowed, and how the place is kept weathertight, follows the local code and is for a \
     licensed roofer to decide.";

/// What is said besides of a layout.
pub const LAYOUT_CAUTION: &str = "Layout: spans, overhangs and clamp windows are what the job file says, as the maker of \
     the rails and modules or an engineer gave them; a place at the least cost is none that anybody has proved to hold. \
     What a limit costs is no reason to pass it.";

/// The cautions of a takeoff: the usual ones, and those of work that only some jobs have.
pub(super) fn cautions(counts: &Counts) -> Vec<String> {
    let three_course = (counts.three_course > 0).then_some(THREE_COURSE_CAUTION);
    let harvest = (counts.harvested > 0).then_some(HARVEST_CAUTION);
    CAUTIONS.into_iter().chain(three_course).chain(harvest).map(str::to_owned).collect()
}

/// A question of the survey, in words.
pub fn question(question: SurveyQuestion) -> &'static str {
    match question {
        SurveyQuestion::Tile => "Who made the tile, how old is it, and can matching tiles still be had?",
        SurveyQuestion::RooferOfRecord => "Who is the roofer of record, and may the roof be opened?",
        SurveyQuestion::Warranties => "Which warranties of roof and tile stand, and what ends them?",
        SurveyQuestion::Underlayment => "How old is the underlayment, of what kind, and does it still bend?",
        SurveyQuestion::Rafters => "Were rafter size and spacing verified from inside?",
        SurveyQuestion::Deck => "Of what is the deck, how thick, and is it sound where the posts go?",
    }
}

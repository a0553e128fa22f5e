//! Results as documents: every name ends in its unit, every total carries its basis. As JSON they have a record a line.
//!
//! The other rooms hold lengths, areas and ids; here alone these become the numbers and names that people and programs
//! read.
mod array;
mod batten;
mod comparison;
mod counts;
mod course;
mod cut;
mod deck_work;
mod frame;
mod height;
mod mm;
mod names;
mod order;
mod patch;
mod post;
mod roll_plan;
mod rows;
mod screening;
mod slope;
mod support;
mod takeoff;
mod three_course;
mod tile;
mod top_check;
mod trim;

pub use array::ArrayTakeoff;
pub use batten::BattenPiece;
pub use comparison::{Comparison, PostChange, PostPlace};
pub use counts::Counts;
pub use course::{Columns, Course};
pub use cut::Cut;
pub use deck_work::DeckWork;
pub use frame::PlaceTakeoff;
pub use height::HeightStack;
pub use order::Order;
pub use patch::Patch;
pub use post::{Margin, Nearest, Opening, PostTakeoff};
pub use roll_plan::{Offcut, PieceCut, RollPlan, RollSection, RollUse};
pub use screening::{Distance, Distances, NotScreened, PostScreening, Screening};
pub use slope::SlopeTakeoff;
pub use support::{Blocking, Support};
pub use takeoff::{SurveyAnswer, Takeoff};
pub use three_course::ThreeCourse;
pub use tile::TileWork;
pub use top_check::TopCheck;
pub use trim::Trim;

use serde::Serialize;

use crate::job::LaidJob;
use crate::layout::Layout;

use rows::Rows;

/// An order as `order.json` holds it.
pub fn order_document(order: &Order) -> String {
    json_text(order, 3)
}

/// A layout as `layout.json` holds it.
pub fn layout_document(layout: &Layout) -> String {
    json_text(layout, 4)
}

/// The job of a layout as a job file: a post a line.
pub fn laid_document(job: &LaidJob) -> String {
    json_text(job, 4)
}

/// A takeoff as `takeoff.json` holds it.
pub fn document(takeoff: &Takeoff) -> String {
    json_text(takeoff, 4)
}

/// JSON with a line end, laid out by [`Rows`]. What is serialised here has string keys and finite numbers only, so
/// that nothing can fail; if it ever did, the answer would be empty and not wrong.
pub(crate) fn json_text(value: &impl Serialize, open: usize) -> String {
    let mut bytes = Vec::new();
    let mut serializer = serde_json::Serializer::with_formatter(&mut bytes, Rows::new(open));
    let written = value.serialize(&mut serializer).ok().and_then(|()| String::from_utf8(bytes).ok());
    written.map(|text| text + "\n").unwrap_or_default()
}

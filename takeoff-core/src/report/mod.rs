//! Reports of a takeoff: tables, roof maps and the summary on screen.
//!
//! Each is a pure function from a [document](document::Takeoff), which is made of a
//! [takeoff](crate::takeoff::Takeoff) once, to text, and shows lengths in the units that the job asks for.
//!
//! # What does the page fold away?
//!
//! Long tables, which print only where somebody has opened them; reasons always print. Cuts that show alike are one line, and
//! tiles are grouped by course. A roof map prints on a page of its own, across, to scale.
//!
//! # What does the workbook recompute?
//!
//! One or two packs of an item are mixed anew by formulas that try every number of the larger pack. For three packs and more
//! the takeoff's mix stands there as an input, beside a check that says when it falls short. A sheet holds at most 100 000
//! rows and says what it leaves out; its lengths are rounded to 1/16 in or 1 mm, the tables and `takeoff.json` have them whole.

mod bid;
mod comparison;
mod dictionary;
pub mod document;
mod files;
mod findings;
mod layout;
mod markup;
mod order;
mod page;
mod plain;
mod quantity;
mod roll_plan;
mod roof_map;
mod screen;
mod screening;
mod shift_map;
mod spares_chart;
mod summary;
mod svg;
pub mod tables;
#[cfg(test)]
mod tests;
mod totals;
mod words;
#[cfg(feature = "workbook")]
mod workbook;

pub use crate::takeoff::{CAUTIONS, question};
pub use comparison::comparison;
pub(crate) use dictionary::dictionary;
pub(crate) use document::json_text;
pub use document::{document, laid_document, layout_document, order_document};
pub use files::{files, layout_files, order_files};
pub use layout::layout;
pub use order::order;
pub use page::page;
pub use roll_plan::roll_plan;
pub use roof_map::roof_map;
pub use shift_map::shift_map;
pub use spares_chart::spares_chart;
pub use summary::summary;
pub(crate) use tables::brought;
#[cfg(feature = "workbook")]
pub use workbook::workbook;

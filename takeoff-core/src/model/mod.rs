//! The job as plain data: tiles, assemblies, slopes, practice, and the problems that a job can have.
//!
//! To hold a [`Job`] is proof that it was validated: lengths are whole nanometres and every reference is resolved.
//!
//! # What is an array?
//!
//! The rectangle round its modules, gaps included. Arrays of a slope do not overlap. One that reaches off the slope or over
//! a hole is a finding. A shift that could bring an array off the slope, over a hole or over another array is an error, and
//! so are clamp windows in which two rails could come nearer than their posts may: no layout has to look for that.
mod array;
mod assembly;
mod assumption;
mod blocking;
mod breakage;
mod codes;
mod display;
mod job;
mod judge;
mod lags;
mod loads;
mod outline;
mod post;
mod practice;
mod price_list;
mod problem;
mod rafters;
mod rails;
mod range;
mod setback;
mod slope;
mod survey;
mod terms;
mod tile;
mod underlayment;
mod wind;

pub use array::{Array, Containment};
pub use assembly::{
    Assembly, AssemblyBuilder, Axis, Bead, BeadPlace, Dabs, DeckFlashing, DriedIn, Item, PilotHoles,
    TopFlashing,
};
pub(crate) use assembly::{BeadMeasures, DeckFlashingMeasures, TopFlashingMeasures};
pub use assumption::Assumption;
pub(crate) use assumption::{Assumptions, inches_and_64ths, of};
pub use blocking::BlockingWood;
pub use breakage::Breakage;
pub(crate) use breakage::{CrewRecord, StatedBreakage};
pub use codes::Code;
pub use display::Display;
pub use job::Job;
#[cfg(test)]
pub(crate) use judge::is_unseen;
pub(crate) use judge::{Input, Judge, LENGTH, LONGEST_NAME, Source, quoted, refused_name};
pub use lags::{Lags, LagsBuilder, Thread, ThreadLimit, usual_thread, usual_tip};
pub use loads::{Loads, ScreeningInput};
pub(crate) use outline::HoleMeasures;
pub use outline::{Outline, OutlineBuilder};
pub use post::{Post, PostId};
pub(crate) use practice::ThreeCourseMeasures;
pub use practice::{MeshAndCement, Practice, PracticeBuilder};
pub use price_list::{PriceList, PriceRow};
pub use problem::{Problem, Problems, Severity};
pub use rafters::{RafterLine, Rafters};
pub use rails::{ClampWindow, Rails, Shift, SpanZone};
pub(crate) use range::Range;
pub use setback::{Setback, SetbackViolation};
pub use slope::{Battens, EdgeKind, Georeference, Perimeter, Slope};
pub use survey::SurveyQuestion;
pub use terms::{Action, Labour, Minutes, Terms};
pub(crate) use tile::PanAndCover;
pub use tile::{Held, LapSide, Laps, Pieces, Stock, Tile, TileBuilder};
pub use underlayment::{LapLines, Underlayment, UnderlaymentBuilder};
pub use wind::{Wind, WindEquation};

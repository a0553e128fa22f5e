//! The job as plain data: tiles, assemblies, slopes, practice, and the problems that a job can have.
//!
//! To hold a [`Job`] is proof that it was validated: lengths are whole nanometres and every reference is resolved.
mod array;
mod assembly;
mod assumption;
mod blocking;
mod breakage;
mod codes;
mod display;
mod job;
mod lags;
mod loads;
mod post;
mod practice;
mod price_list;
mod problem;
mod rafters;
mod rails;
mod setback;
mod slope;
mod survey;
mod terms;
mod tile;
mod underlayment;
mod wind;

pub use array::{Array, Lies};
pub use assembly::{
    Assembly, Axis, Bead, BeadPlace, Dabs, DeckFlashing, DriedIn, Item, PilotHoles, TopFlashing,
};
pub use assumption::Assumption;
pub use blocking::BlockingWood;
pub use breakage::Breakage;
pub use codes::CODES;
pub(crate) use codes::Code;
pub use display::Display;
pub use job::Job;
pub use lags::{Lags, Thread, ThreadLimit, usual_thread, usual_tip};
pub use loads::{Loads, ScreeningInput};
pub use post::{Post, PostId};
pub use practice::{MeshAndCement, Practice};
pub use price_list::{PriceList, PriceRow};
pub(crate) use problem::problem;
pub use problem::{Problem, Severity};
pub use rafters::{RafterLine, Rafters};
pub use rails::{ClampWindow, Rails, Shift, SpanZone};
pub use setback::{Breaks, Setback};
pub use slope::{Battens, EdgeKind, Perimeter, Place, Slope};
pub use survey::SurveyQuestion;
pub use terms::{Action, Labour, Minutes, Terms};
pub use tile::{Held, LapSide, Laps, Pieces, Stock, Tile};
pub use underlayment::{LapLines, Underlayment};
pub use wind::{Wind, WindEquation};

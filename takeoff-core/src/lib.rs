//! Takeoff of posts through an existing tile roof: which tiles are cut and how, which come up, the deck work, and how
//! many spares to bring.
//!
//! A job goes in, a takeoff comes out. Nothing is read or written but what is handed over, and the same job gives the
//! same bytes on every target. Lengths are whole nanometres, so that whether an opening meets a tile is decided without
//! tolerance.
//!
//! # From a job file
//!
//! ```
//! use takeoff_core::{EXAMPLE, Files, Job, report, takeoff};
//!
//! let job = Job::read(EXAMPLE, &Files::new())?;
//! let takeoff = takeoff(&job)?;
//! assert_eq!(takeoff.counts.posts, 1);
//! assert!(report::summary(&takeoff).contains("Materials to bring"));
//! # Ok::<(), takeoff_core::Problems>(())
//! ```
//!
//! # The house
//!
//! [`Job`] reads and checks a job; [`takeoff()`] takes it off, slope by slope; [`layout()`] places its posts;
//! [`compare()`] and [`order()`] put takeoffs side by side and together; [`report`] shows them; [`api`] is the same for
//! other languages, text in and text out. Every refusal is one [`Problems`], and every [`Code`] stands in one table.
//!
//! An estimate, not a design: structure, waterproofing and work at height follow the local code and licensed practice.
#![forbid(unsafe_code)]
pub mod api;
pub mod compare;
pub mod cuts;
pub mod deck;
pub mod geometry;
pub mod job;
pub mod layout;
pub mod model;
pub mod num;
pub mod order;
pub mod pricing;
pub mod probability;
pub mod profile;
pub mod quantities;
pub mod relocation;
pub mod report;
pub mod rolls;
pub mod roof;
pub mod screening;
pub mod slope_takeoff;
pub mod spares;
pub mod takeoff;
pub mod units;

#[cfg(test)]
mod testing;

// A job, as text and as plain data.
#[cfg(feature = "command")]
pub use job::write_back_toml;
pub use job::{EXAMPLE, Files, LaidJob, schema, write_back};
pub use model::{
    Array, Assembly, AssemblyBuilder, Axis, Battens, Bead, BeadPlace, Breakage, ClampWindow, Dabs,
    DeckFlashing, Display, DriedIn, EdgeKind, Georeference, Held, Item, Job, Lags, LagsBuilder, LapLines,
    LapSide, Laps, Pieces, PilotHoles, Post, Practice, Rafters, Rails, Slope, Stock, Tile, TileBuilder,
    TopFlashing, Underlayment, UnderlaymentBuilder,
};

// What is wrong or odd with it.
pub use model::{Code, Problem, Problems, Severity};

// What is computed of it.
pub use compare::{Comparison, compare};
pub use layout::{LaidOut, Layout, layout};
pub use order::{Order, Ordered, order};
pub use takeoff::{Takeoff, takeoff};

// Quantities with a unit.
pub use geometry::SlopePoint;
pub use units::{Area, Azimuth, Force, Length, Money, Pitch, Pressure, Speed, UnitError, Volume, Weight};

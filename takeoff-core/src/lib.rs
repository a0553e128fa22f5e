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
//! let document = report::document::Takeoff::from(&takeoff);
//! assert!(report::summary(&document).contains("Materials to bring"));
//! # Ok::<(), takeoff_core::Problems>(())
//! ```
//!
//! # The geometry alone
//!
//! Openings in, cuts out, from nothing but numbers. A tile 16 1/2 in long covers 12 in, its courses show 13 1/4 in. A hole
//! of 2 in at 18 in from the left and 27 in up meets two layers: the head of the second course, in a sound hole, and the
//! nose of the third, in a notch.
//!
//! ```
//! use takeoff_core::cuts::{CutKind, cut};
//! use takeoff_core::geometry::{Ellipse, SlopePoint};
//! use takeoff_core::roof::{Field, TileGrid, noses_at};
//! use takeoff_core::{EdgeKind, Held, LapSide, Length, Outline, Tile};
//!
//! let inches = |count: i64| Length::from_nm(count * Length::INCH.nm());
//! let at = |u: i64, v: i64| SlopePoint { u: inches(u), v: inches(v) };
//! let tile = Tile::builder("flat")
//!     .length(Length::parse("16 1/2 in")?)
//!     .width(inches(13))
//!     .cover(inches(12))
//!     .lap_side(LapSide::Left)
//!     .least_head_lap(inches(3))
//!     .thickness(inches(1))
//!     .held(Held::Nailed)
//!     .build()?;
//! let outline = Outline::builder([at(0, 0), at(240, 0), at(240, 120), at(0, 120)])
//!     .edges([EdgeKind::Eave, EdgeKind::Rake, EdgeKind::Ridge, EdgeKind::Rake].map(Some))
//!     .build()?;
//! let field = Field::new(&outline, Length::ZERO);
//! let noses = noses_at(Length::ZERO, Length::parse("13 1/4 in")?, inches(120))?;
//! let grid = TileGrid::new(&tile, &noses, Length::ZERO, &[]);
//!
//! let cuts = cut(&grid, &field, Ellipse::circle(at(18, 27), inches(2)), inches(1));
//! let seen: Vec<_> = cuts.iter().map(|cut| (cut.tile.course, cut.tile.column, cut.kind())).collect();
//! assert_eq!(seen, [(1, 1, CutKind::Hole), (2, 1, CutKind::Notch)]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
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
pub mod cutting_stock;
pub mod deck;
pub mod geometry;
pub mod job;
pub mod layout;
pub mod materials;
pub mod model;
pub mod num;
pub mod order;
pub mod pricing;
pub mod probability;
pub mod profile;
pub mod quantities;
pub mod relocation;
pub mod report;
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
    LapSide, Laps, Outline, OutlineBuilder, Pieces, PilotHoles, Post, Practice, PracticeBuilder, Rafters,
    Rails, Slope, Stock, Tile, TileBuilder, TopFlashing, Underlayment, UnderlaymentBuilder,
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

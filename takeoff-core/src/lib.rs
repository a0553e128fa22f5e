//! Takeoff of posts through an existing tile roof: which tiles are cut and how, which come up, what the deck work
//! takes, how many spares to bring.
//!
//! A job goes in, a takeoff comes out; nothing is read or written but what is handed over. The same job gives the same
//! bytes on every target. Lengths are whole nanometres, so that whether an opening meets a tile is decided without
//! tolerance.
//!
//! ```
//! use takeoff_core::job::{EXAMPLE, Files};
//! use takeoff_core::model::Job;
//! use takeoff_core::report::{self, document};
//! use takeoff_core::takeoff::takeoff;
//!
//! let job = Job::read(EXAMPLE, &Files::new()).expect("the example is sound");
//! let takeoff = takeoff(&job).expect("its spares can be counted");
//! assert_eq!(takeoff.counts.posts, 1);
//! let document = document::Takeoff::from(&takeoff);
//! assert!(report::summary(&document).contains("Materials to bring"));
//! ```
//!
//! The stages, in order: [`job`] reads and checks; [`slope`] lays out field and tiles; [`cuts`] judges openings; [`deck`]
//! dries them in; [`place`] says how far a post may move; [`consumables`] and [`spares`] count; [`buying`] costs;
//! [`screening`] weighs uplift against lags; [`takeoff`](mod@takeoff) joins them; [`report`] shows; [`api`] is what other
//! languages call.
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

//! Cutting stock: how rectangular pieces are cut from rolls, with a proven lower bound and an independent checker.
//!
//! # Problem
//!
//! Rectangular pieces are cut from rolls of one width so that the total length cut off the rolls is small. Every cut is
//! a *guillotine* cut: it runs from edge to edge of the rectangle that is cut. That is how a person cuts felt with a
//! knife and a straightedge.
//!
//! ```text
//!  across
//!    ▲
//!    │  ┌──────────┬────────────────┬───────┬─ ─ ─ ─ ─ ─ ─ ─ ┐
//!    │  │    B     │ ▒ ▒ ▒ ▒ ▒ ▒ ▒ ▒│       │
//!    │  ├──────────┼───────┬────────┤       │                │
//!    │  │          │   D   │   E    │   F   │  stays whole
//!    │  │    A     ├───────┴──┬─────┤       │                │
//!    │  │          │    C     │▒ ▒ ▒│       │
//!    │  └──────────┴──────────┴─────┴───────┴─ ─ ─ ─ ─ ─ ─ ─ ┘
//!       ├──────────┼────────────────┼───────┤
//!        section 1     section 2        3                       ──► along
//! ```
//!
//! - A *section* is the part of a roll between two cuts across its whole width. Sections have the *lengths* that a plan
//!   adds up.
//! - A section is cut by a *pattern*: a tree of cuts, in turn along and across the roll. Section 2 takes two *stages*
//!   more: two cuts along the roll, then one across each of the lower two strips.
//! - What no piece covers (▒) is *offcut*. What lies beyond the last section stays on the roll.
//!
//! Pieces come with the laps they need: joints between sheets and rolls are part of their sizes, and a piece is never
//! cut from two rolls.
//!
//! # Algorithm
//!
//! 1. Pieces of one size become one *item type* with a *demand*. A turnable piece has two *orientations*.
//! 2. **Few pieces:** dynamic programming over all subsets of the pieces finds the optimum, which is its own lower
//!    bound.
//! 3. **Otherwise, a lower bound:** the greater of area ÷ width and of what lines across the roll can meet. Linear
//!    programming weights the pieces, and an integer knapsack proves the result.
//! 4. **Greedy plans:** sections filled with the first piece that fits, in three orders of priority and with either cut
//!    first.
//! 5. **Column generation:** a linear program chooses sections that cover the demand, each cut a fractional number of
//!    times (Gilmore and Gomory 1961). Its dual prices enter a guillotine *knapsack* (Gilmore and Gomory 1966), which
//!    finds sections worth more than their length. These become new columns, until there are none. *Diving* then cuts
//!    the whole part of each number and solves again for the rest. Where there are many item types, similar ones are
//!    grouped.
//! 6. **Local search:** the most wasteful sections of the shortest plan are cut anew by step 2, a few at a time.
//! 7. Sections are assigned to rolls by first-fit decreasing, and patterns become rectangles.
//!
//! The search stops early when a plan meets the bound.
//!
//! # What is proven and what is heuristic
//!
//! | proven, in integers | heuristic |
//! |---|---|
//! | the bound on the length: no guillotine plan is shorter | the plan's length, except for few pieces |
//! | the bound on the number of rolls | the number of rolls |
//! | the plan of few pieces has the least length | which of several plans of one length is taken |
//! | every plan can be cut ([`check`]) | dual prices, in floating point: they guide search and bound |
//!
//! The same pieces give the same plan, byte for byte, on every target.
//!
//! # Files
//!
//! `model` is the plain data; `plan` the entry; `item_types` and `pattern` the planner's view of pieces and sections;
//! `lower_bound` step 3; `search` steps 2, 4 and 6 and the diving of step 5; `column_generation` the linear program and
//! its knapsack; `roll_packing` and `section_layout` step 7; `checker` the check, which shares only `model` with the
//! rest.
mod checker;
mod column_generation;
mod item_types;
mod lower_bound;
mod model;
mod pattern;
mod plan;
mod roll_packing;
mod search;
mod section_layout;
#[cfg(test)]
mod tests;

pub use checker::check;
pub use model::{OversizedPieces, Piece, PlacedPiece, Plan, Rectangle, Roll, RollStock, Section};
pub use plan::plan;

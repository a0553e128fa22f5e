//! Post layout: where arrays, rails and posts go so that the posts cost least.
//!
//! # What does a layout decide?
//!
//! The shift of each array within the job's limits, the height of each rail within its clamp window, and the rafters (or
//! bays, with blocking) that carry each rail. The *additive* cost is the value to minimise: the sum over the posts of the
//! cost of each one alone. Tiles and patches that posts share are not in it; the layout reports the true cost, with
//! sharing, beside it.
//!
//! # Which layout is better?
//!
//! `objective` compares in lexicographic order: posts that sever a tile or fail a check first, then posts in narrow
//! intervals, then money in whole millionths of the currency. Equal objectives: the larger margin wins, then the lower rails.
//! A job may put a price on a failing post; it then counts as money.
//!
//! # How does the cost of a post depend on its place?
//!
//! Along one rafter the cost is piecewise constant in `v`, except for the felt and staples of a patch, which shrink as the
//! post moves up toward the patch's upper edge. It is a piecewise concave function (`post_cost`):
//!
//! ```text
//! cost
//!  |                      o-----------o               a hole and a notch
//!  |  o_                  |           |
//!  |    ‾‾--__            |           o------------o  a hole
//!  |          ‾‾--__      |           |            |
//!  |    a patch     ‾‾----o           |            |
//!  +--|-------------------|-----------|------------|--> v
//!     b1                  b2          b3           b4    breakpoints
//!     [..===============..|..=======..|..========..]     feasible intervals, and the least margin (..) at their ends
//! ```
//!
//! Jumps are at breakpoints, where the work of the post changes: a tile more is cut, the deck method changes, the work zone
//! reaches another tile. They are known in closed form (`intervals::breakpoints`) from noses, heads, webs, lap lines and
//! battens.
//!
//! # Where may a post stand?
//!
//! In a *feasible interval* (`intervals::feasible`): between two breakpoints, shortened by the least margin at both ends, so
//! that a post set a little off still means the same work. An interval shorter than twice the margin is narrow and is used at
//! its middle only. Outline, holes, setbacks and other posts (`intervals::permitted`) cut the intervals further. Ends go to
//! tape graduations, 1/16 in or 1 mm, where an interval has one.
//!
//! # How are the posts of a rail chosen?
//!
//! At one height each rafter under the rail has one *candidate post* or none (`rail::candidates`). The cheapest subset from a
//! first to a last post, with spans, least distance and stagger kept, is a shortest path from left to right
//! (`rail::shortest_path`):
//!
//! ```text
//!  left end                                           right end
//!  |<-overhang->o--------span------->o------->o<-overhang->|     rail
//!       x       |      x      x      |   x    |      x           candidates; o: on the shortest path
//!       r1      r2     r3     r4     r5  r6   r7     r8          rafters
//! ```
//!
//! Between two heights at which an interval, a zone or a limit begins or ends, the candidates stay the same and the cost of
//! each is concave, and so is that of the whole path's minimum: the least is at one of those heights (`rail::height_table`).
//!
//! # How are the shift and the rails' heights found?
//!
//! At one shift the rails are independent. The candidate shifts bring an end of some clamp window to a height of the table,
//! or some overhang to its limit. Each gets a bound from the tables; exact evaluations follow, the least bound first, until no
//! bound is below the best objective found (`search`). Among equal objectives `placement` takes the largest margin and moves
//! rails to the middle of their bands, and the array no further than it must. `solve` does so for every array.
//!
//! # What does a post keep clear of?
//!
//! Of every change of its work by the least margin: cuts, deck method and checks, and also tiles handled, batten pieces and
//! pieces of a patch. Limits (setbacks, holes, the outline, the least distance) are no changes: a post may stand right at them.
//!
//! # How do rails, arrays and fixed posts interact?
//!
//! Staggered rails take turns in the rafters, counted from the left: two, or as many as the job says. A rail has at least two
//! posts. A fixed post under an array belongs to the rail whose window's middle is nearest, and that rail passes through it.
//! Arrays are laid out apart from each other, which is exact since the rectangles that they can sweep may not meet. Where
//! their posts come nearer to each other than the least distance, the slope's arrays are laid out again in turn, and the
//! layout says so.
//!
//! # What is exact, and what is not?
//!
//! - Exact: breakpoints, to the nanometre, on straight rafters; the shortest path; the search over shifts, for one array on
//!   the graduations of the tape (off them it could save a sixteenth of felt at most).
//! - On crooked rafters the breakpoints of three places along the rafter divide it, and bisection finds the changes between:
//!   two changes that cancel each other between two samples are not seen.
//! - Arrays are solved one by one, which is exact unless posts of two arrays come nearer than the least distance; then those
//!   of the slope are solved in sequence, and the layout says so.
//! - Of shifts with equal objective at most 64 are compared by their margins.
//! - Money is counted in millionths of the currency; sums beyond 9.2 × 10¹² of it are refused.
//!
//! # How does a layout explain itself?
//!
//! `explain` gives the baseline (the array left where it is), the runners-up, a map of the cost over all shifts, the price of
//! each limit (the saving from relaxing it alone), and moves for single posts. Without a layout it names an irreducible
//! infeasible set of limits, and the least relaxation of each.
//!
//! The price of a limit is the difference of two layouts, with an inch (25 mm) more of it or without it. The laid-out job
//! keeps the rest of each shift. An item without a price costs nothing, and the layout names it; minutes that are not timed
//! cost nothing, as in the bid.
//!
//! # Who checks a layout?
//!
//! [`check`](mod@check) takes the job and the laid-out job and verifies every rule. It shares no code with the search beyond
//! the takeoff and plain geometry, and the search's result is checked before it leaves [`layout`]. The tests also hold the
//! search against an enumeration of all places a sixteenth apart.
//!
//! # In which order to read?
//!
//! ```text
//! entry ── preconditions
//!   │
//!   ├─ solve ── placement ── search ── rail ── intervals ── post_cost ── objective, graduations
//!   ├─ laid_job ── post_names
//!   ├─ check                                          (job and laid-out job only)
//!   └─ explain                                        (reads solutions, solves relaxed jobs)
//! ```
mod bisection;
pub mod check;
mod entry;
mod explain;
mod graduations;
mod intervals;
mod laid_job;
mod objective;
mod placement;
mod post_cost;
mod post_names;
mod preconditions;
mod rail;
mod replaced;
mod result;
mod search;
mod solve;

#[cfg(test)]
mod tests;

pub use check::check;
pub use entry::{LaidOut, layout, place_posts};
pub use post_cost::{Cost, additive, cost};
pub use result::*;
pub use search::ShiftMap;

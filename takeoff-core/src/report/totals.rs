//! The totals in words, by what they are about: screen and page tell the same.
use super::quantity::Quantities;
use super::screening::screened;
use super::words;
use crate::report::document::{RollPlan, Takeoff};

/// Counts of one kind.
pub(super) struct Totals {
    /// Heading: `Tiles cut: 21`.
    pub(super) head: String,
    /// Counts with their nouns.
    pub(super) counts: Vec<(u64, String)>,
    /// Notes, in sentences.
    pub(super) notes: Vec<String>,
}

impl Totals {
    pub(super) fn new(head: impl Into<String>) -> Totals {
        Totals { head: head.into(), counts: Vec::new(), notes: Vec::new() }
    }

    pub(super) fn count(&mut self, count: u64, what: &str) {
        self.counts.push((count, what.to_owned()));
    }

    pub(super) fn count_if_any(&mut self, count: u64, what: &str) {
        if count > 0 {
            self.count(count, what);
        }
    }
}

/// The totals of the work: posts, tiles cut, tiles handled, deck work.
pub(super) fn work(takeoff: &Takeoff) -> [Totals; 4] {
    let shown = Quantities(takeoff.display);
    [posts(takeoff), tiles_cut(takeoff, shown), tiles_handled(takeoff), deck_work(takeoff, shown)]
}

/// The totals of a takeoff: the work, and the screening where there is one.
pub(super) fn totals(takeoff: &Takeoff) -> Vec<Totals> {
    let screened = takeoff.screening.as_ref().map(|screening| screened(screening, takeoff.display));
    work(takeoff).into_iter().chain(screened).collect()
}

fn posts(takeoff: &Takeoff) -> Totals {
    let mut totals = Totals::new(format!("Posts: {}", takeoff.counts.posts));
    let posts = || takeoff.slopes.iter().flat_map(|slope| &slope.posts);
    for situation in words::SITUATIONS {
        let count = posts().filter(|post| post.situation == situation).count() as u64;
        totals.count_if_any(count, words::situation(situation));
    }
    let better = posts().filter(|post| post.nearest.is_some()).count() as u64;
    if better > 0 {
        let have = if better == 1 { "has" } else { "have" };
        let posts = words::count(better, "post", "posts");
        totals.notes.push(format!("{posts} {have} a better place on the rafter: see the table of posts."));
    }
    totals
}

fn tiles_cut(takeoff: &Takeoff, shown: Quantities) -> Totals {
    let counts = &takeoff.counts;
    let cut = counts.holes + counts.notches + counts.corners + counts.severed;
    let mut totals = Totals::new(format!("Tiles cut: {cut}"));
    totals.count(counts.holes, "with a hole");
    totals.count(counts.notches, "with a notch, open at one side");
    totals.count(counts.corners, "with a corner notch");
    totals.count(counts.severed, "can't be cut in one piece: replace");
    totals.notes.push(format!("Tile cutting: {}.", shown.length(counts.blade_path_mm)));
    totals
}

fn tiles_handled(takeoff: &Takeoff) -> Totals {
    let mut totals = Totals::new("Tiles handled");
    totals.count(takeoff.counts.removed, "removed and reset, cut ones included");
    totals.count(takeoff.counts.loosened, "raised: nose lifted, not removed");
    totals.count_if_any(takeoff.counts.harvested, "salvaged from under the arrays as spares");
    let tiles = || takeoff.slopes.iter().flat_map(|slope| &slope.tiles);
    let refastened = tiles().filter(|tile| tile.refasten).count() as u64;
    let excluded = tiles().filter(|tile| tile.excluded).count() as u64;
    totals.count_if_any(refastened, "of them refastened, near an edge of the roof");
    totals.count_if_any(excluded, "set in a bed: left in place, not counted");
    totals
}

fn deck_work(takeoff: &Takeoff, shown: Quantities) -> Totals {
    let (counts, slopes) = (&takeoff.counts, &takeoff.slopes);
    let mut totals = Totals::new("Deck work");
    totals.count(counts.tucked, "flashings tucked under the sheet above");
    let patches = words::count(counts.patches, "felt patch", "felt patches");
    totals.count(counts.patched, &format!("flashings patched, with {patches}"));
    totals.count_if_any(
        counts.three_course,
        "flashings with three-course work, as the building official allows",
    );
    let battens = slopes.iter().map(|slope| slope.battens.len() as u64).sum();
    let blocking = slopes.iter().map(|slope| slope.blocking.len() as u64).sum();
    totals.count_if_any(battens, "pieces of batten cut out and reset");
    totals.count_if_any(blocking, "pieces of blocking between rafters");
    let trim: f64 = slopes.iter().flat_map(|slope| &slope.trim).map(|trim| trim.length_mm).sum();
    if trim > 0.0 {
        totals.notes.push(format!("Ridge, hip and rake tile removed: {}.", shown.length(trim)));
    }
    totals.notes.extend(takeoff.rolls.iter().map(|plan| rolls(plan, shown)));
    totals
}

/// Roll length used by the patches, and its distance from the lower bound.
fn rolls(plan: &RollPlan, shown: Quantities) -> String {
    let (name, width) = (&plan.underlayment, shown.short_length(plan.sheet_width_mm));
    let used = shown.length(plan.length_used_mm);
    let least = if plan.gap > 0.0 {
        let bound = shown.length(plan.length_bound_mm);
        format!("no cutting plan takes less than {bound} (gap {:.1} %)", 100.0 * plan.gap)
    } else {
        "no cutting plan takes less".to_owned()
    };
    format!("The patches take {used} of {name}, {width} wide; {least}: see cutting.csv.")
}

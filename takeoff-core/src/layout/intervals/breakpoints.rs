//! Where the work of a post may change as it moves up the slope, in closed form.
//!
//! The places where its state changes ([`thresholds`]: noses, heads, webs, lap lines, tucks), and besides those where
//! the work zone begins or ceases to reach a tile, the deck work a batten, and where a patch takes one piece more.
use crate::cuts::Footprint;
use crate::geometry::{Point, Polygon, Rect, grid, half};
use crate::layout::post_cost::PostCostModel;
use crate::model::DriedIn;
use crate::relocation::{Axis, thresholds};

/// The places `v` from `low` to `high` at which the work of a post at `u` may change, ascending. A place that is not
/// whole is taken down.
pub(crate) fn breakpoints(model: &PostCostModel, u: i64, low: i64, high: i64) -> Vec<i64> {
    let from = Point::new(u, low);
    let mut changes: Vec<i64> =
        thresholds(&model.mover, from, Axis::V, 0, high - low).into_iter().map(|by| low + by).collect();
    let reach = Reach::of(model);
    reach.of_tiles(model, u, low, high, &mut changes);
    reach.of_battens(model, low, high, &mut changes);
    of_pieces(model, u, low, high, &mut changes);
    changes.extend(model.site.field.polygon().crossings_at(u));
    changes.retain(|&v| low <= v && v <= high);
    changes.sort_unstable();
    changes.dedup();
    changes
}

/// How far the deck work of a post reaches from its point, where no lap line or edge ends it.
struct Reach {
    down: i64,
    up: i64,
    aside: i64,
    hand: i64,
}

impl Reach {
    fn of(model: &PostCostModel) -> Reach {
        let (flashing, practice) = (&model.mover.assembly.deck_flashing, model.site.practice);
        let band = match flashing.dried_in {
            DriedIn::ThreeCourse => half(practice.three_course.mesh_width),
            DriedIn::Underlayment => 0,
        };
        Reach {
            down: grid(flashing.down),
            up: grid(flashing.up) + band,
            aside: half(flashing.width) + band.max(grid(practice.patch_side_margin)),
            hand: grid(practice.hand_clearance),
        }
    }

    /// Where the zone's lower edge leaves a tile's head, and its upper edge comes to a nose: whole tiles by their
    /// courses, tiles at the field's edge by their corners and where their edges cross the zone's sides.
    fn of_tiles(&self, model: &PostCostModel, u: i64, low: i64, high: i64, changes: &mut Vec<i64>) {
        let Reach { down, up, aside, hand } = *self;
        let site = model.site;
        let mut at = |edge: i64| changes.extend([edge + down + hand, edge - up - hand]);
        for &nose in site.grid.noses() {
            at(nose);
            at(nose + site.grid.length());
        }
        let swept = Rect::new(u - aside - hand, low - down - hand, u + aside + hand, high + up + hand);
        if site.field.is_rectangle() {
            let bounds = site.field.bounds();
            [bounds.lower, bounds.upper].into_iter().for_each(at);
            return;
        }
        if site.field.covers(&site.grid.reach(&swept)) {
            return;
        }
        let flange = half(model.mover.assembly.deck_flashing.width);
        let sides = [flange, aside].map(|side| side + hand).map(|side| [u - side, u + side]);
        for (_, tile) in site.grid.over(swept) {
            for piece in Footprint::pieces(&site.field, &tile) {
                if let Footprint::Edge { polygon, .. } = piece {
                    heights(&polygon, sides.as_flattened()).for_each(&mut at);
                }
            }
        }
    }

    fn of_battens(&self, model: &PostCostModel, low: i64, high: i64, changes: &mut Vec<i64>) {
        let Some(battens) = &model.site.slope.battens else { return };
        let Reach { down, up, .. } = *self;
        let to_upper = model.site.grid.length() - grid(battens.lug);
        let to_lower = to_upper - grid(battens.width);
        for nose in model.site.grid.noses() {
            for edge in [nose + to_lower, nose + to_upper] {
                changes.extend([edge + down, edge - up].into_iter().filter(|v| (low..=high).contains(v)));
            }
        }
    }
}

/// The heights of a polygon's corners, and of where its edges cross vertical lines.
fn heights(polygon: &Polygon, lines: &[i64]) -> impl Iterator<Item = i64> {
    let corners = polygon.rings().iter().flatten().map(|corner| corner.v);
    let crossings = lines.iter().flat_map(|&u| polygon.crossings_at(u));
    corners.chain(crossings).collect::<Vec<_>>().into_iter()
}

/// Where a patch takes one piece of sheet more: `n` pieces are `n·(B − b) + b` high.
fn of_pieces(model: &PostCostModel, u: i64, low: i64, high: i64, changes: &mut Vec<i64>) {
    let site = model.site;
    let sheet = &site.slope.underlayment;
    let (lap, step) = (grid(sheet.head_lap), grid(sheet.sheet_width - sheet.head_lap));
    let bounds = site.field.bounds();
    let lines = site.laps.between(low, bounds.upper).map(|line| line + grid(site.practice.patch_underlap));
    for upper in lines.take(MOST_LINES).chain(site.field.polygon().crossings_at(u)) {
        let most = (upper - low - lap).div_euclid(step);
        let least = (upper - high - lap).div_euclid(step);
        changes.extend((least.max(1)..=most.max(0)).map(|pieces| upper - pieces * step - lap));
    }
}

/// A patch goes up to the first lap line above its flashing: lines far above don't matter.
const MOST_LINES: usize = 64;

//! Heights at which the work of a post may change, in closed form.
//!
//! [`thresholds`] gives those of its state: noses, heads, webs, lap lines, tucks. Three kinds are added here: the work zone
//! begins or ceases to reach a tile, the deck work begins or ceases to reach a batten, a patch takes one piece of sheet
//! more.
use crate::cuts::Footprint;
use crate::geometry::{Point, Polygon, Rect, grid, half};
use crate::layout::post_cost::PostCostModel;
use crate::model::DriedIn;
use crate::relocation::{Axis, thresholds};

/// The heights `v` from `low` to `high` at which the work of a post at `u` may change, ascending. A height off the grid is
/// rounded down.
pub(super) fn breakpoints(model: &PostCostModel, u: i64, low: i64, high: i64) -> Vec<i64> {
    let from = Point::new(u, low);
    let mut heights: Vec<i64> =
        thresholds(&model.mover, from, Axis::V, 0, high - low).into_iter().map(|by| low + by).collect();
    let reach = Reach::new(model);
    reach.add_tiles(model, u, low, high, &mut heights);
    reach.add_battens(model, low, high, &mut heights);
    add_pieces(model, u, low, high, &mut heights);
    heights.extend(model.site.field.polygon().crossings_at(u));
    heights.retain(|&v| low <= v && v <= high);
    heights.sort_unstable();
    heights.dedup();
    heights
}

/// Reach of the deck work of a post from its point, where no lap line or edge ends it, in grid steps.
struct Reach {
    down: i64,
    up: i64,
    aside: i64,
    hand: i64,
}

impl Reach {
    fn new(model: &PostCostModel) -> Reach {
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

    /// Adds the heights at which the zone's lower edge leaves a tile's head, or its upper edge comes to a nose: for whole tiles from
    /// their courses, for tiles at the field's edge from their corners and from the crossings of their edges with the
    /// zone's sides.
    fn add_tiles(&self, model: &PostCostModel, u: i64, low: i64, high: i64, heights: &mut Vec<i64>) {
        let Reach { down, up, aside, hand } = *self;
        let site = model.site;
        let mut at = |edge: i64| heights.extend([edge + down + hand, edge - up - hand]);
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
                    corner_heights(&polygon, sides.as_flattened()).for_each(&mut at);
                }
            }
        }
    }

    /// Adds the heights at which the deck work begins or ceases to reach a batten.
    fn add_battens(&self, model: &PostCostModel, low: i64, high: i64, heights: &mut Vec<i64>) {
        let Some(battens) = &model.site.slope.battens else { return };
        let Reach { down, up, .. } = *self;
        let to_upper = model.site.grid.length() - grid(battens.lug);
        let to_lower = to_upper - grid(battens.width);
        for nose in model.site.grid.noses() {
            for edge in [nose + to_lower, nose + to_upper] {
                heights.extend([edge + down, edge - up].into_iter().filter(|v| (low..=high).contains(v)));
            }
        }
    }
}

/// The heights of a polygon's corners, and of the crossings of its edges with lines up the slope.
fn corner_heights(polygon: &Polygon, lines: &[i64]) -> impl Iterator<Item = i64> {
    let corners = polygon.rings().iter().flatten().map(|corner| corner.v);
    let crossings = lines.iter().flat_map(|&u| polygon.crossings_at(u));
    corners.chain(crossings).collect::<Vec<_>>().into_iter()
}

/// Adds the heights at which a patch takes one piece of sheet more.
///
/// # Formula
///
/// `n` pieces are `n · (B − b) + b` high, with `B` the sheet's width and `b` its head lap.
fn add_pieces(model: &PostCostModel, u: i64, low: i64, high: i64, heights: &mut Vec<i64>) {
    let site = model.site;
    let sheet = &site.slope.underlayment;
    let (lap, step) = (grid(sheet.head_lap), grid(sheet.sheet_width - sheet.head_lap));
    let bounds = site.field.bounds();
    let lines = site.laps.between(low, bounds.upper).map(|line| line + grid(site.practice.patch_underlap));
    for upper in lines.take(MOST_LINES).chain(site.field.polygon().crossings_at(u)) {
        let most = (upper - low - lap).div_euclid(step);
        let least = (upper - high - lap).div_euclid(step);
        heights.extend((least.max(1)..=most.max(0)).map(|pieces| upper - pieces * step - lap));
    }
}

/// Lap lines counted from the lowest place up: a patch ends at the first one above its flashing, so that lines far above
/// have no effect.
const MOST_LINES: usize = 64;

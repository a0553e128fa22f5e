//! Limits on the place of a post: outline, holes, setbacks, and posts that stay.
use crate::geometry::{Point, Segment, grid, half};
use crate::layout::bisection::boundary;
use crate::model::Assembly;
use crate::roof::Site;

/// Posts that stay where they are, and the distance that other posts keep from them, in grid steps.
pub(crate) struct Exclusion<'a> {
    pub(crate) posts: &'a [Point],
    pub(crate) distance: i64,
}

impl Exclusion<'_> {
    /// Whether a place is at the distance or farther from all of the posts.
    pub(crate) fn permits(&self, at: Point) -> bool {
        let is_near = |post: &Point| {
            let [du, dv, distance] = [at.u - post.u, at.v - post.v, self.distance].map(i128::from);
            du * du + dv * dv < distance * distance
        };
        !self.posts.iter().any(is_near)
    }
}

/// The ranges of `v` from `low` to `high`, ends included, in which a post whose `u` at `v` is `u_at(v)` keeps inside the
/// outline, off holes and setbacks, and outside the exclusion.
///
/// # Rule
///
/// A limit forbids the outside of a polygon, or all places nearer than a distance to an edge or a post. On a line up the
/// slope each of these is an interval. Samples at the polygon's crossings and at the place nearest to each edge and post
/// hit every interval; bisection between two samples finds its ends.
pub(crate) fn permitted_ranges(
    site: &Site,
    assembly: &Assembly,
    exclusion: &Exclusion,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<(i64, i64)> {
    let is_permitted = |v: i64| {
        let at = Point::new(u_at(v), v);
        site.allows_post_at(at, assembly) && exclusion.permits(at)
    };
    let mut ranges: Vec<(i64, i64)> = Vec::new();
    let mut previous: Option<(i64, bool)> = None;
    for v in samples(site, assembly, exclusion, u_at, low, high) {
        let now = is_permitted(v);
        match previous {
            Some((last, was)) if was != now => {
                let (inside, outside) = boundary(last, v, |v| is_permitted(v) == was);
                match ranges.last_mut() {
                    Some(range) if was => range.1 = inside,
                    _ => ranges.push((outside, v)),
                }
            }
            Some(_) if now => {
                if let Some(range) = ranges.last_mut() {
                    range.1 = v;
                }
            }
            None if now => ranges.push((v, v)),
            _ => {}
        }
        previous = Some((v, now));
    }
    ranges
}

/// Heights that hit every permitted and every forbidden interval between `low` and `high`, ascending, in whole nanometres.
fn samples(
    site: &Site,
    assembly: &Assembly,
    exclusion: &Exclusion,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<i64> {
    let flashing = &assembly.deck_flashing;
    // A deck flashing reaches `aside` to both sides of its post, and its middle is `lift` below the post.
    let (aside, lift) = (half(flashing.width), (grid(flashing.down) - grid(flashing.up)) / 2);
    let mut samples = vec![low, high];
    for u in [u_at(low), u_at(low + (high - low) / 2), u_at(high)] {
        let crossings = site.outline.crossings_at(u);
        samples.extend(crossings.iter().flat_map(|&v| [v - 2, v, v + 2]));
        for setback in &site.slope.setbacks {
            samples.push(nearest_height(&setback.edge, u, 0));
            samples.push(nearest_height(&setback.edge, u, aside) + lift);
        }
        let beside = |post: &&Point| (post.u - u).abs() < exclusion.distance;
        samples.extend(exclusion.posts.iter().filter(beside).map(|post| post.v));
    }
    let whole = samples.into_iter().map(|v| 2 * v.div_euclid(2));
    let mut samples: Vec<i64> = whole.filter(|v| (low..=high).contains(v)).collect();
    samples.sort_unstable();
    samples.dedup();
    samples
}

/// The height of the point of an edge that is nearest to the strip reaching `aside` to both sides of `u`.
fn nearest_height(edge: &Segment, u: i64, aside: i64) -> i64 {
    let (left, right) = if edge.from.u <= edge.to.u { (edge.from, edge.to) } else { (edge.to, edge.from) };
    let beside = u.clamp(left.u.min(right.u), right.u);
    if right.u == left.u || u + aside <= left.u {
        return left.v + if right.u == left.u { (right.v - left.v) / 2 } else { 0 };
    }
    if u - aside >= right.u {
        return right.v;
    }
    let share = (beside - left.u) as f64 / (right.u - left.u) as f64;
    left.v + (share * (right.v - left.v) as f64) as i64
}

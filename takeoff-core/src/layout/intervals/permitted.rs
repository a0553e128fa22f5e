//! Where a post keeps inside the outline, off holes and setbacks, and away from posts that stay.
use crate::geometry::{Point, Segment, grid, half};
use crate::model::Assembly;
use crate::roof::Site;

/// Posts that stay where they are, and how far others keep from them (grid steps).
pub(crate) struct Exclusion<'a> {
    pub(crate) posts: &'a [Point],
    pub(crate) least: i64,
}

impl Exclusion<'_> {
    /// Whether a post may stand there as far as they go.
    pub(crate) fn allows(&self, at: Point) -> bool {
        let near = |post: &&Point| {
            let [du, dv, least] = [at.u - post.u, at.v - post.v, self.least].map(i128::from);
            du * du + dv * dv < least * least
        };
        self.posts.iter().find(near).is_none()
    }
}

/// The stretches of `v` from `low` to `high` where a post whose `u` at `v` is `u_at(v)` is allowed, ends included.
///
/// What forbids places is the outside of a polygon, or all that is nearer than a distance to an edge or a post: on a
/// way up the slope an interval each, found by looking at the polygon's crossings and at each way's nearest place, and
/// its ends by halving.
pub(crate) fn permitted_ranges(
    site: &Site,
    assembly: &Assembly,
    exclusion: &Exclusion,
    u_at: &dyn Fn(i64) -> i64,
    low: i64,
    high: i64,
) -> Vec<(i64, i64)> {
    let is_allowed = |v: i64| {
        let at = Point::new(u_at(v), v);
        site.allows_post_at(at, assembly) && exclusion.allows(at)
    };
    let flashing = &assembly.deck_flashing;
    let (aside, lift) = (half(flashing.width), (grid(flashing.down) - grid(flashing.up)) / 2);
    let mut looks = vec![low, high];
    for u in [u_at(low), u_at(low + (high - low) / 2), u_at(high)] {
        let crossings = site.outline.crossings_at(u);
        looks.extend(crossings.iter().flat_map(|&v| [v - 2, v, v + 2]));
        for setback in &site.slope.setbacks {
            looks.push(nearest(&setback.edge, u, 0));
            looks.push(nearest(&setback.edge, u, aside) + lift);
        }
        let beside = |post: &&Point| (post.u - u).abs() < exclusion.least;
        looks.extend(exclusion.posts.iter().filter(beside).map(|post| post.v));
    }
    let whole = looks.into_iter().map(|v| 2 * v.div_euclid(2));
    let mut looks: Vec<i64> = whole.filter(|v| (low..=high).contains(v)).collect();
    looks.sort_unstable();
    looks.dedup();

    let mut stretches: Vec<(i64, i64)> = Vec::new();
    let mut before: Option<(i64, bool)> = None;
    for v in looks {
        let now = is_allowed(v);
        match before {
            Some((last, was)) if was != now => {
                let (mut same, mut other) = (last, v);
                while other - same > 2 {
                    let between = 2 * ((same + other) / 2).div_euclid(2);
                    if is_allowed(between) == was { same = between } else { other = between }
                }
                if let (true, Some(stretch)) = (was, stretches.last_mut()) {
                    stretch.1 = same;
                } else {
                    stretches.push((other, v));
                }
            }
            Some(_) if now => {
                if let Some(stretch) = stretches.last_mut() {
                    stretch.1 = v;
                }
            }
            None if now => stretches.push((v, v)),
            _ => {}
        }
        before = Some((v, now));
    }
    stretches
}

/// The height of the point of an edge that comes nearest to the strip `aside` on both sides of `u`.
fn nearest(edge: &Segment, u: i64, aside: i64) -> i64 {
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

//! Places along the eave with the same work: the key by which intervals are cached.
use super::model::PostCostModel;
use crate::geometry::{Point, Polygon, Rect, grid, half};

impl PostCostModel<'_> {
    /// A key shared by all `u` with the same work from `low` to `high`; `None` where there is none.
    ///
    /// Tiles repeat from column to column. Where no edge is near, or only the lower and upper edge of a rectangle, the
    /// work depends on the place within a column alone, and that place is the key.
    pub(crate) fn column_key(&self, u: i64, low: i64, high: i64) -> Option<i64> {
        let (flashing, practice, site) = (&self.assembly.deck_flashing, self.site.practice, self.site);
        let hand =
            grid(practice.hand_clearance + practice.patch_side_margin + practice.three_course.mesh_width);
        let aside = half(flashing.width) + hand;
        // Intervals are computed on a range that is longer by this much at both ends.
        let beyond = practice.least_margin + practice.least_margin;
        let line = site.laps.lowest_from(high + grid(flashing.up + beyond));
        let opening = self.mover.opening_at(Point::new(u, high + grid(beyond))).bounds();
        let upper = line.map_or(high, |line| line + grid(practice.patch_underlap)).max(opening.upper) + hand;
        let lower = low - grid(flashing.down + beyond) - hand;
        let aside = aside.max(opening.right - u);
        // Two steps: the tiles within reach of the post, and those lying on them.
        let swept = site.grid.reach(&site.grid.reach(&Rect::new(u - aside, lower, u + aside, upper)));
        let bounds = site.field.bounds();
        let inside = if site.field.is_rectangle() {
            bounds.left <= swept.left && swept.right <= bounds.right
        } else {
            line.is_some() && site.field.covers(&swept)
        };
        let rect = || Polygon::new(vec![swept.corners().to_vec()]);
        let at_strip = || self.counter.strip_to_fasten(site).is_some_and(|strip| strip.meets_any(&[rect()]));
        (inside && !at_strip()).then(|| (u - site.grid.joint(0, 0)).rem_euclid(site.grid.cover()))
    }
}

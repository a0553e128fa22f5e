//! Where the state of a moving post may change, in closed form.
//!
//! Along a straight way everything that decides the state is constant between finitely many places: where the
//! opening, or the opening grown by the least web, begins or ceases to meet an edge or a corner of a footprint;
//! where a lap line enters or leaves the range in which it tucks; where the opening's centre passes a nose; and
//! where the tile flashing's tuck becomes enough. A place that is not whole is taken down; the state is then
//! looked at just before and just after it.
use super::Mover;
use crate::cuts::Footprint;
use crate::deck::{Method, asked_tuck};
use crate::geometry::{Ellipse, Point, Polygon, Rect, Segment, grid};
use crate::roof::Site;

/// Along which axis a post moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    /// Along the eave.
    U,
    /// Up and down the slope.
    V,
}

impl Axis {
    /// `at`, moved by `by` grid steps.
    pub(crate) fn moved(self, at: Point, by: i64) -> Point {
        match self {
            Axis::U => Point::new(at.u + by, at.v),
            Axis::V => Point::new(at.u, at.v + by),
        }
    }

    /// The coordinates of a point along and across the way.
    fn split(self, p: Point) -> (i64, i64) {
        match self {
            Axis::U => (p.u, p.v),
            Axis::V => (p.v, p.u),
        }
    }

    /// The semi-axes along and across the way.
    fn semi_axes(self, ellipse: &Ellipse) -> (f64, f64) {
        match self {
            Axis::U => (ellipse.a as f64, ellipse.b as f64),
            Axis::V => (ellipse.b as f64, ellipse.a as f64),
        }
    }

    /// The sides of a rectangle along the way, then across it: low, high, low, high.
    fn sides(self, rect: &Rect) -> (i64, i64, i64, i64) {
        match self {
            Axis::U => (rect.left, rect.right, rect.lower, rect.upper),
            Axis::V => (rect.lower, rect.upper, rect.left, rect.right),
        }
    }

    /// A rectangle stretched along the way from `low` to `high` steps.
    pub(crate) fn swept(self, rect: &Rect, low: i64, high: i64) -> Rect {
        match self {
            Axis::U => Rect::new(rect.left + low, rect.lower, rect.right + high, rect.upper),
            Axis::V => Rect::new(rect.left, rect.lower + low, rect.right, rect.upper + high),
        }
    }
}

/// The moves, in grid steps from `low` to `high`, at which the state may change, ascending.
pub(crate) fn thresholds(mover: &Mover, at: Point, axis: Axis, low: i64, high: i64) -> Vec<i64> {
    let site = mover.site;
    let web = grid(site.practice.least_web);
    let own = mover.opening_at(at);
    let grown = own.grown(web);
    let mut gather = Gather { axis, centre: own.centre, moves: Vec::with_capacity(64) };
    let swept = axis.swept(&grown.bounds(), low, high);
    let reach = site.grid.over(swept).fold(swept, |reach, (_, rect)| reach.union(&rect));
    let all_whole = site.field.covers(&reach);
    for (_, rect) in site.grid.over(swept) {
        if all_whole {
            gather.at_rect(&own, &grown, &rect);
            continue;
        }
        for footprint in Footprint::pieces(&site.field, &rect) {
            match footprint {
                Footprint::Whole(rect) => gather.at_rect(&own, &grown, &rect),
                Footprint::Edge { polygon, .. } => gather.at_polygon(&own, &grown, &polygon),
            }
        }
    }
    if mover.partners.any_on_the_way(&swept) {
        for (tile, rect) in site.grid.over(swept) {
            for footprint in Footprint::pieces(&site.field, &rect) {
                let boxes = mover.partners.on_the_way(tile, footprint.number(), &swept);
                if !boxes.is_empty() {
                    gather.at_boxes(&own.bounds(), &boxes, web, &footprint.polygon());
                }
            }
        }
    }
    match axis {
        Axis::U => gather.at_ends_of_laps(mover, at),
        Axis::V => gather.at_courses_and_laps(mover, at, low, high),
    }
    let mut moves = gather.moves;
    moves.retain(|&by| low <= by && by <= high);
    moves.sort_unstable();
    moves.dedup();
    moves
}

/// Gathers moves of the opening's centre.
struct Gather {
    axis: Axis,
    centre: Point,
    moves: Vec<i64>,
}

impl Gather {
    /// The move that brings the opening's centre to `along`.
    fn add(&mut self, along: f64) {
        let (own, _) = self.axis.split(self.centre);
        self.moves.push((along - own as f64).floor() as i64);
    }

    /// A whole footprint: where the opening begins or ceases to meet it, and where the grown one its sides.
    fn at_rect(&mut self, own: &Ellipse, grown: &Ellipse, rect: &Rect) {
        let (p0, p1, q0, q1) = self.axis.sides(rect);
        let (_, across) = self.axis.split(self.centre);
        let beside = across.clamp(q0, q1) - across;
        if let Some(reach) = self.reach(own, beside) {
            self.add(p0 as f64 - reach);
            self.add(p1 as f64 + reach);
        }
        // The sides across the way are left behind again after as much on the other hand.
        if let Some(reach) = self.reach(grown, beside) {
            for p in [p0, p1] {
                self.add(p as f64 - reach);
                self.add(p as f64 + reach);
            }
        }
        for q in [q0, q1] {
            if let Some(reach) = self.reach(grown, q - across) {
                self.add(p0 as f64 - reach);
                self.add(p1 as f64 + reach);
            }
        }
    }

    /// A clipped footprint: where the opening, and the grown one, touch its corners and edges.
    fn at_polygon(&mut self, own: &Ellipse, grown: &Ellipse, polygon: &Polygon) {
        for edge in polygon.edges() {
            for ellipse in [own, grown] {
                self.at_corner(ellipse, edge.from);
                self.at_line(ellipse, edge);
            }
        }
    }

    fn at_corner(&mut self, ellipse: &Ellipse, corner: Point) {
        let (_, across) = self.axis.split(self.centre);
        let (p, q) = self.axis.split(corner);
        if let Some(reach) = self.reach(ellipse, q - across) {
            self.add(p as f64 - reach);
            self.add(p as f64 + reach);
        }
    }

    /// Where the ellipse touches the line through an edge: `((P − C) × D)² = b²·dx² + a²·dy²`, solved for the
    /// centre's place along the way.
    fn at_line(&mut self, ellipse: &Ellipse, edge: Segment) {
        let (_, across) = self.axis.split(self.centre);
        let (a, b) = self.axis.semi_axes(ellipse);
        let (p, q) = self.axis.split(edge.from);
        let (p_to, q_to) = self.axis.split(edge.to);
        let (dp, dq) = ((p_to - p) as f64, (q_to - q) as f64);
        if dq != 0.0 {
            let reach = (b * b * dp * dp + a * a * dq * dq).sqrt();
            let level = (q - across) as f64 * dp;
            self.add(p as f64 - (level - reach) / dq);
            self.add(p as f64 - (level + reach) / dq);
        }
    }

    /// Judged together with partners, the opening is a box: where its sides along the way come to a partner's, to
    /// within the web of it, or to an edge, as they are or grown by the web.
    fn at_boxes(&mut self, own: &Rect, partners: &[Rect], web: i64, footprint: &Polygon) {
        let axis = self.axis;
        let (low, high, ..) = axis.sides(own);
        let half_way = (high - low) as f64 / 2.0;
        let mut beside = |along: f64| {
            for gap in [half_way, half_way + web as f64] {
                self.add(along - gap);
                self.add(along + gap);
            }
        };
        for partner in partners {
            let (low, high, ..) = axis.sides(partner);
            beside(low as f64);
            beside(high as f64);
        }
        let across = partners.iter().chain([own]).flat_map(|rect| {
            let (.., low, high) = axis.sides(rect);
            [low - web, high + web]
        });
        let across: Vec<i64> = across.collect();
        for edge in footprint.edges() {
            let ((p, q), (p_to, q_to)) = (axis.split(edge.from), axis.split(edge.to));
            beside(p as f64);
            if p != p_to && q != q_to {
                for level in &across {
                    beside(p as f64 + (p_to - p) as f64 * (level - q) as f64 / (q_to - q) as f64);
                }
            }
        }
    }

    /// Half the chord of an ellipse along the way, at a distance across it; `None` beyond its end.
    fn reach(&self, ellipse: &Ellipse, across: i64) -> Option<f64> {
        let (along, wide) = self.axis.semi_axes(ellipse);
        let t = across as f64 / wide;
        (t.abs() < 1.0).then(|| along * (1.0 - t * t).sqrt())
    }

    /// Moving along the eave: where a lap line that may govern meets the field's edge.
    fn at_ends_of_laps(&mut self, mover: &Mover, at: Point) {
        let site = mover.site;
        if site.field.is_rectangle() {
            return;
        }
        let Some((low, high)) = Method::tuck_window(mover.assembly, site.practice, at.v) else { return };
        for line in site.laps.between(low, high) {
            for u in site.field.edges_at_height(line) {
                self.moves.push(u - at.u);
            }
        }
    }

    /// Moving up the slope: the noses, the tile flashing's tuck, and the ends of the ranges in which a lap line
    /// tucks.
    fn at_courses_and_laps(&mut self, mover: &Mover, at: Point, low: i64, high: i64) {
        let Site { grid: tiles, laps, practice, .. } = mover.site;
        let up = grid(mover.assembly.top_flashing.up);
        let noses = tiles.noses();
        let first = noses.partition_point(|&nose| nose + tiles.length() < self.centre.v + low);
        for (k, &nose) in noses.iter().enumerate().skip(first) {
            if nose > self.centre.v + high {
                break;
            }
            self.moves.push(nose - self.centre.v);
            self.moves.push(nose + tiles.length() - self.centre.v);
            self.moves.push(nose + tiles.length() - up - self.centre.v);
            if let Some(&next) = noses.get(k + 1) {
                self.moves.push(next + asked_tuck(mover.site, k as u32) - up - self.centre.v);
            }
        }
        let Some((tuck_low, tuck_high)) = Method::tuck_window(mover.assembly, practice, at.v) else { return };
        for line in laps.between(tuck_low + low, tuck_high + high) {
            self.moves.extend([line - tuck_low, line - tuck_high]);
        }
    }
}

//! What a cut takes away of a footprint of any shape: exact, by vertical slabs.
//!
//! Seen in a frame whose `y` runs against the direction in which the cut leaves the tile, the opening with all
//! that lies below it is bounded by one curve from above. Between the abscissas where anything changes (a
//! vertex, a crossing, a tangent) the footprint is a stack of trapezoids under fixed edges, and what is removed
//! of each has a closed form.
use super::removed::Removed;
use super::{Judged, Shape};
use crate::geometry::{Ellipse, Point, Rect, Segment, ellipse_arc_length, to_mm};
use crate::num::math::{asin, atan2};

/// What a cut takes away of a footprint.
///
/// A notch goes, from every point of the opening inside the tile, along the breached edge's outward normal up to
/// where that ray first leaves the tile. For a corner the same holds for the cone of both normals; in a footprint
/// that is not convex, what lies in the cone behind a gap is taken as removed too.
pub(super) fn swept(judged: &Judged) -> Removed {
    let frame = Frame::for_cut(judged);
    let outline = Outline::of(judged, &frame);
    let footprint = judged.footprint.polygon();
    let edges: Vec<Line> = footprint.edges().filter_map(|edge| Line::of(&frame, edge)).collect();
    let stops = outline.stops(&edges);
    let slabs: Vec<Slab> =
        stops.windows(2).map(|ends| Slab::of(ends[0], ends[1], &edges, &outline)).collect();

    let area_mm2 = slabs.iter().map(|slab| slab.area(&outline)).sum();
    let along: f64 = slabs.iter().map(|slab| slab.sawn(&outline, &frame)).sum();
    let walls: f64 = slabs.windows(2).map(|pair| wall(&pair[0], &pair[1], &outline)).sum();
    Removed { area_mm2, path_mm: along + walls }
}

/// A frame in millimetres, centred on the opening, in which the cut leaves the tile toward `−y`.
struct Frame {
    centre: Point,
    x_axis: [f64; 2],
    y_axis: [f64; 2],
}

impl Frame {
    fn for_cut(judged: &Judged) -> Frame {
        let bounds = judged.shape.bounds();
        // Of the two directions of a corner the later one: the other then points to the left.
        let y_axis = judged.open_edges().last().map_or([0.0, 1.0], |edge| {
            let [u, v] = outward(edge);
            [-u, -v]
        });
        Frame {
            centre: Point::new(
                bounds.left + (bounds.right - bounds.left) / 2,
                bounds.lower + (bounds.upper - bounds.lower) / 2,
            ),
            x_axis: [y_axis[1], -y_axis[0]],
            y_axis,
        }
    }

    fn direction(&self, [u, v]: [f64; 2]) -> [f64; 2] {
        [u * self.x_axis[0] + v * self.x_axis[1], u * self.y_axis[0] + v * self.y_axis[1]]
    }

    fn point(&self, p: Point) -> [f64; 2] {
        self.direction([to_mm(p.u - self.centre.u), to_mm(p.v - self.centre.v)])
    }

    /// Back to directions along `u` and `v`.
    fn back(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [x * self.x_axis[0] + y * self.y_axis[0], x * self.x_axis[1] + y * self.y_axis[1]]
    }
}

/// The unit normal of an edge, away from the interior on its left.
fn outward(edge: Segment) -> [f64; 2] {
    let (du, dv) = (to_mm(edge.to.u - edge.from.u), to_mm(edge.to.v - edge.from.v));
    let length = (du * du + dv * dv).sqrt();
    [dv / length, -du / length]
}

/// A straight line `y = at0 + slope·x` over a stretch of `x`.
#[derive(Clone, Copy, Debug)]
struct Line {
    from: f64,
    to: f64,
    at0: f64,
    slope: f64,
}

impl Line {
    /// An edge in the frame; `None` where it runs along `y`.
    fn of(frame: &Frame, edge: Segment) -> Option<Line> {
        Line::through(frame.point(edge.from), frame.point(edge.to))
    }

    fn through(a: [f64; 2], b: [f64; 2]) -> Option<Line> {
        let (a, b) = if a[0] <= b[0] { (a, b) } else { (b, a) };
        let slope = (b[1] - a[1]) / (b[0] - a[0]);
        (a[0] < b[0]).then(|| Line { from: a[0], to: b[0], at0: a[1] - slope * a[0], slope })
    }

    fn at(&self, x: f64) -> f64 {
        self.at0 + self.slope * x
    }
}

/// A curve that bounds the opening, or an edge that bounds the tile.
#[derive(Clone, Copy, Debug)]
enum Curve {
    Line(Line),
    /// The upper (`+1`) or lower (`−1`) half of the ellipse.
    Arc(f64),
}

/// The ellipse in the frame: `y = lean·x ± height·sqrt(1 − (x/width)²)`.
#[derive(Clone, Copy, Debug)]
struct Leaning {
    a: f64,
    b: f64,
    width: f64,
    lean: f64,
    height: f64,
}

impl Leaning {
    fn of(ellipse: &Ellipse, frame: &Frame) -> Leaning {
        let (a, b) = (to_mm(ellipse.a), to_mm(ellipse.b));
        let [[xu, xv], [yu, yv]] = [frame.x_axis, frame.y_axis];
        let xx = a * a * xu * xu + b * b * xv * xv;
        let xy = a * a * xu * yu + b * b * xv * yv;
        let width = xx.sqrt();
        Leaning { a, b, width, lean: xy / xx, height: a * b / width }
    }

    /// `sqrt(1 − (x/width)²)`, 0 beyond the ends.
    fn chord(&self, x: f64) -> f64 {
        let t = x / self.width;
        (1.0 - t * t).max(0.0).sqrt()
    }

    /// The point whose outward normal is `m`.
    fn support(&self, m: [f64; 2], frame: &Frame) -> [f64; 2] {
        let [mu, mv] = frame.back(m);
        let (su, sv) = (self.a * self.a * mu, self.b * self.b * mv);
        let norm = (su * mu + sv * mv).sqrt();
        frame.direction([su / norm, sv / norm])
    }

    /// The ellipse's own angle at `x` on its upper or lower half.
    fn angle(&self, x: f64, half: f64, frame: &Frame) -> f64 {
        let [u, v] = frame.back([x, self.lean * x + half * self.height * self.chord(x)]);
        atan2(v / self.b, u / self.a)
    }
}

/// The region a cut takes, as far as the opening bounds it.
struct Outline {
    ellipse: Option<Leaning>,
    /// From left to right, each over its own stretch of `x`.
    upper: Vec<(f64, f64, Curve)>,
    lower: Vec<(f64, f64, Curve)>,
    how: How,
}

/// How far down a cut goes.
#[derive(Clone, Copy, PartialEq, Eq)]
enum How {
    /// The opening only.
    Within,
    /// From the opening down to the tile's boundary.
    Down,
    /// Everything below the upper curve.
    Under,
}

impl Outline {
    fn of(judged: &Judged, frame: &Frame) -> Outline {
        let shape = &judged.shape;
        let (ellipse, mut upper, lower) = match shape {
            Shape::Ellipse(ellipse) => {
                let leaning = Leaning::of(ellipse, frame);
                let half = |sign| vec![(-leaning.width, leaning.width, Curve::Arc(sign))];
                (Some(leaning), half(1.0), half(-1.0))
            }
            Shape::Rect(rect) => {
                let (upper, lower) = chains(rect, frame);
                (None, upper, lower)
            }
        };
        let mut edges = judged.open_edges();
        let how = match (edges.next(), edges.next()) {
            (None, _) => How::Within,
            (Some(_), None) => How::Down,
            (Some(left), Some(_)) => {
                let ray = frame.direction(outward(left));
                let normal = [ray[1], -ray[0]];
                let touch = match (&ellipse, shape) {
                    (Some(leaning), _) => leaning.support(normal, frame),
                    (None, shape) => farthest(&shape.bounds(), normal, frame),
                };
                let slope = ray[1] / ray[0];
                let at0 = touch[1] - slope * touch[0];
                let line = Line { from: f64::NEG_INFINITY, to: touch[0], at0, slope };
                upper.retain(|&(_, to, _)| to > touch[0]);
                if let Some(first) = upper.first_mut() {
                    first.0 = first.0.max(touch[0]);
                }
                upper.insert(0, (f64::NEG_INFINITY, touch[0], Curve::Line(line)));
                How::Under
            }
        };
        Outline { ellipse, upper, lower, how }
    }

    fn at(&self, curve: Curve, x: f64) -> f64 {
        match (curve, &self.ellipse) {
            (Curve::Line(line), _) => line.at(x),
            (Curve::Arc(half), Some(e)) => e.lean * x + half * e.height * e.chord(x),
            (Curve::Arc(_), None) => 0.0,
        }
    }

    fn integral(&self, curve: Curve, from: f64, to: f64) -> f64 {
        let straight = |at0: f64, slope: f64| at0 * (to - from) + slope / 2.0 * (to * to - from * from);
        match (curve, &self.ellipse) {
            (Curve::Line(line), _) => straight(line.at0, line.slope),
            (Curve::Arc(half), Some(e)) => {
                let primitive = |x: f64| {
                    let t = (x / e.width).clamp(-1.0, 1.0);
                    asin(t) + t * e.chord(x)
                };
                straight(0.0, e.lean) + half * e.height * e.width / 2.0 * (primitive(to) - primitive(from))
            }
            (Curve::Arc(_), None) => 0.0,
        }
    }

    fn length(&self, curve: Curve, from: f64, to: f64, frame: &Frame) -> f64 {
        match (curve, &self.ellipse) {
            (Curve::Line(line), _) => (1.0 + line.slope * line.slope).sqrt() * (to - from),
            (Curve::Arc(half), Some(e)) => {
                // Left to right the lower half runs with the angle, the upper half against it.
                let (first, last) = if half < 0.0 { (from, to) } else { (to, from) };
                let start = e.angle(first, half, frame);
                let turn = (e.angle(last, half, frame) - start).rem_euclid(std::f64::consts::TAU);
                ellipse_arc_length(e.a, e.b, start, start + turn)
            }
            (Curve::Arc(_), None) => 0.0,
        }
    }

    /// The abscissas where anything changes, ascending.
    fn stops(&self, edges: &[Line]) -> Vec<f64> {
        let mut stops: Vec<f64> = edges.iter().flat_map(|edge| [edge.from, edge.to]).collect();
        let (least, greatest) =
            stops.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, g), &x| (l.min(x), g.max(x)));
        for &(from, to, curve) in self.upper.iter().chain(&self.lower) {
            stops.extend([from, to]);
            for edge in edges {
                self.crossings(curve, edge, &mut stops);
            }
        }
        stops.retain(|&x| least <= x && x <= greatest);
        stops.sort_by(f64::total_cmp);
        // One place computed in two ways is two stops a rounding apart, with a slab between them that has no middle.
        let rounding = 16.0 * f64::EPSILON * greatest.max(-least);
        stops.dedup_by(|next, kept| *next - *kept <= rounding);
        stops
    }

    /// Where a curve and an edge may cross.
    fn crossings(&self, curve: Curve, edge: &Line, stops: &mut Vec<f64>) {
        match (curve, &self.ellipse) {
            (Curve::Line(line), _) => {
                let x = (edge.at0 - line.at0) / (line.slope - edge.slope);
                stops.extend(x.is_finite().then_some(x));
            }
            (Curve::Arc(_), Some(e)) => {
                // (p + q·x)² = h²·(1 − x²/w²)
                let (p, q, h2) = (edge.at0, edge.slope - e.lean, e.height * e.height);
                let square = q * q + h2 / (e.width * e.width);
                let discriminant = p * p * q * q - square * (p * p - h2);
                let root = discriminant.max(0.0).sqrt();
                // Between the two lies the place where an edge may touch: it must not be a slab's middle.
                stops.extend([-root, 0.0, root].map(|root| (root - p * q) / square));
            }
            (Curve::Arc(_), None) => {}
        }
    }
}

/// The curve over an abscissa.
fn over(curves: &[(f64, f64, Curve)], x: f64) -> Option<Curve> {
    curves.iter().find(|(from, to, _)| *from < x && x < *to).map(|c| c.2)
}

/// The upper and the lower boundary of a rectangle in the frame.
#[allow(clippy::type_complexity, reason = "a pair of the outline's own two lists")]
fn chains(rect: &Rect, frame: &Frame) -> (Vec<(f64, f64, Curve)>, Vec<(f64, f64, Curve)>) {
    let corners = rect.corners().map(|p| frame.point(p));
    let (mut upper, mut lower) = (Vec::new(), Vec::new());
    for i in 0..4 {
        let (a, b) = (corners[i], corners[(i + 1) % 4]);
        if let Some(line) = Line::through(a, b) {
            // Counter-clockwise, the lower boundary runs to the right.
            let chain = if a[0] < b[0] { &mut lower } else { &mut upper };
            chain.push((line.from, line.to, Curve::Line(line)));
        }
    }
    for chain in [&mut upper, &mut lower] {
        chain.sort_by(|a, b| a.0.total_cmp(&b.0));
    }
    (upper, lower)
}

/// The corner of a rectangle farthest along `m`.
fn farthest(rect: &Rect, m: [f64; 2], frame: &Frame) -> [f64; 2] {
    let along = |p: &[f64; 2]| p[0] * m[0] + p[1] * m[1];
    let corners = rect.corners().map(|p| frame.point(p));
    corners.into_iter().fold(corners[0], |best, p| if along(&p) > along(&best) { p } else { best })
}

/// A stretch of `x` in which nothing changes.
struct Slab {
    from: f64,
    to: f64,
    /// The tile here, from below: between which edges it lies.
    tile: Vec<(Curve, Curve)>,
    /// What is removed here, and between which curves.
    removed: Vec<(Curve, Curve)>,
}

impl Slab {
    fn of(from: f64, to: f64, edges: &[Line], outline: &Outline) -> Slab {
        let x = (from + to) / 2.0;
        let mut across: Vec<&Line> = edges.iter().filter(|edge| edge.from < x && x < edge.to).collect();
        across.sort_by(|a, b| a.at(x).total_cmp(&b.at(x)));
        let tile: Vec<(Curve, Curve)> =
            across.chunks_exact(2).map(|pair| (Curve::Line(*pair[0]), Curve::Line(*pair[1]))).collect();
        let (top, bottom) = (over(&outline.upper, x), over(&outline.lower, x));
        let removed = tile.iter().filter_map(|&(low, high)| {
            let (y0, y1) = (outline.at(low, x), outline.at(high, x));
            let top = top?;
            let y_top = outline.at(top, x);
            let y_bottom = bottom.map_or(f64::NEG_INFINITY, |curve| outline.at(curve, x));
            let upper = if y1 <= y_top { high } else { top };
            let lower = match (outline.how, bottom) {
                (How::Within, Some(curve)) if y0 < y_bottom => curve,
                _ => low,
            };
            let reached = y0 < y_top && (outline.how == How::Under || y1 > y_bottom);
            reached.then_some((lower, upper))
        });
        let removed = removed.collect();
        Slab { from, to, tile, removed }
    }

    fn area(&self, outline: &Outline) -> f64 {
        let integral = |curve| outline.integral(curve, self.from, self.to);
        self.removed.iter().map(|&(lower, upper)| integral(upper) - integral(lower)).sum()
    }

    /// Length of the curves here along which the tile is sawn: those of the opening, not the tile's own edges.
    fn sawn(&self, outline: &Outline, frame: &Frame) -> f64 {
        let bounds = self.tile.iter().flat_map(|&(low, high)| [low, high]);
        let x = (self.from + self.to) / 2.0;
        let own: Vec<f64> = bounds.map(|curve| outline.at(curve, x)).collect();
        self.removed
            .iter()
            .flat_map(|&(lower, upper)| [lower, upper])
            .filter(|&curve| !own.contains(&outline.at(curve, x)))
            .map(|curve| outline.length(curve, self.from, self.to, frame))
            .sum()
    }
}

/// Length of the sawn wall along `y` between two neighbouring slabs: where one side is removed, the other is
/// not, and both are tile.
fn wall(left: &Slab, right: &Slab, outline: &Outline) -> f64 {
    let x = left.to;
    let spans = |list: &[(Curve, Curve)]| -> Vec<(f64, f64)> {
        list.iter().map(|&(low, high)| (outline.at(low, x), outline.at(high, x))).collect()
    };
    let lists = [&left.removed, &right.removed, &left.tile, &right.tile].map(|list| spans(list));
    let mut ys: Vec<f64> = lists.iter().flatten().flat_map(|&(low, high)| [low, high]).collect();
    ys.sort_by(f64::total_cmp);
    ys.windows(2)
        .filter(|ends| {
            let y = (ends[0] + ends[1]) / 2.0;
            let [gone_left, gone_right, tile_left, tile_right] =
                [0, 1, 2, 3].map(|i: usize| lists[i].iter().any(|&(low, high)| low < y && y < high));
            gone_left != gone_right && tile_left && tile_right
        })
        .map(|ends| ends[1] - ends[0])
        .sum()
}

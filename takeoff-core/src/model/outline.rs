//! The outline of a slope and its holes: simple polygons, counter-clockwise and clockwise.
use std::collections::BTreeMap;

use geo::validation::InvalidPolygon;
use geo::{Coord, LineString, Validation};

use super::judge::{Input, Judge, quoted};
use super::range::Range;
use super::{Code, EdgeKind, Problems};
use crate::geometry;
use crate::geometry::SlopePoint;
use crate::units::Length;

/// The most corners that the outline of a slope and its holes may have together.
const MOST_CORNERS: usize = 2_000;

/// The outline of a slope and its holes.
#[derive(Clone, Debug)]
pub struct Outline {
    /// Counter-clockwise.
    pub(crate) corners: Vec<SlopePoint>,
    /// Kind of edge `i`, from corner `i` to the next.
    pub(crate) edges: Vec<Option<EdgeKind>>,
    /// Clockwise.
    pub(crate) holes: Vec<Vec<SlopePoint>>,
}

impl Outline {
    /// As a polygon on the grid.
    pub(crate) fn polygon(&self) -> geometry::Polygon {
        let rings = std::iter::once(&self.corners).chain(&self.holes);
        geometry::Polygon::new(rings.map(|ring| ring.iter().map(|&corner| corner.into()).collect()).collect())
    }

    /// The lowest corner of an eave.
    pub(crate) fn lowest_eave(&self) -> Option<Length> {
        let next = self.corners.iter().cycle().skip(1);
        let edges = self.corners.iter().zip(next).zip(&self.edges);
        edges.filter(|(_, kind)| **kind == Some(EdgeKind::Eave)).map(|((from, to), _)| from.v.min(to.v)).min()
    }

    pub(crate) fn highest(&self) -> Length {
        self.corners.iter().map(|corner| corner.v).max().unwrap_or_default()
    }

    /// From the leftmost corner to the rightmost.
    pub(crate) fn across(&self) -> (Length, Length) {
        let along = || self.corners.iter().map(|corner| corner.u);
        (along().min().unwrap_or_default(), along().max().unwrap_or_default())
    }
}

impl Outline {
    /// An outline by its corners, in turn and in either direction; the last edge goes back to the first corner.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::{EdgeKind, Length, Outline, SlopePoint};
    /// let at = |u: &str, v: &str| SlopePoint { u: Length::parse(u).unwrap(), v: Length::parse(v).unwrap() };
    /// let gable = [at("0", "0"), at("38 ft", "0"), at("38 ft", "17 ft"), at("0", "17 ft")];
    /// let edges = [EdgeKind::Eave, EdgeKind::Rake, EdgeKind::Ridge, EdgeKind::Rake].map(Some);
    /// assert!(Outline::builder(gable).edges(edges).build().is_ok());
    /// let [a, b, c, d] = gable;
    /// assert_eq!(Outline::builder([a, b, d, c]).build().unwrap_err()[0].code, "crossing-outline");
    /// ```
    pub fn builder(corners: impl IntoIterator<Item = SlopePoint>) -> OutlineBuilder {
        OutlineBuilder { corners: Input::Given(corners.into_iter().collect()), ..OutlineBuilder::default() }
    }
}

/// An [`Outline`] in the making.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct OutlineBuilder {
    pub(crate) corners: Input<Vec<SlopePoint>>,
    /// Number of corners as given, readable or not.
    pub(crate) corner_count: Option<usize>,
    pub(crate) edges: Input<Vec<Input<Option<EdgeKind>>>>,
    pub(crate) holes: Vec<HoleMeasures>,
}

/// A hole of an outline.
#[derive(Clone, Debug, Default)]
pub(crate) struct HoleMeasures {
    pub(crate) name: Option<String>,
    pub(crate) corners: Input<Vec<SlopePoint>>,
    /// Number of corners as given, readable or not.
    pub(crate) corner_count: Option<usize>,
}

impl OutlineBuilder {
    /// Kinds of the edges: one for each corner, the first from the first corner to the second.
    pub fn edges(mut self, kinds: impl IntoIterator<Item = Option<EdgeKind>>) -> Self {
        self.edges = Input::Given(kinds.into_iter().map(Input::Given).collect());
        self
    }

    /// One more hole, such as a chimney, by its corners in turn.
    pub fn hole(mut self, name: impl Into<String>, corners: impl IntoIterator<Item = SlopePoint>) -> Self {
        let corners: Vec<SlopePoint> = corners.into_iter().collect();
        let (name, corner_count) = (Some(name.into()), Some(corners.len()));
        self.holes.push(HoleMeasures { name, corners: Input::Given(corners), corner_count });
        self
    }

    /// The outline.
    ///
    /// # Errors
    ///
    /// A ring that is no simple polygon, a hole that is not inside the outline and clear of the others, edges that do
    /// not fit the corners, and too many corners.
    pub fn build(mut self) -> Result<Outline, Problems> {
        self.corner_count = self.corners.clone().given().map(|corners| corners.len());
        Judge::alone(|judge| self.judge(judge))
    }

    pub(crate) fn judge(self, judge: &mut Judge<'_>) -> Option<Outline> {
        let edges = edges(self.edges, self.corner_count, judge);
        let counts = self.holes.iter().map(|hole| hole.corner_count).chain([self.corner_count]);
        let count: usize = counts.flatten().sum();
        if count > MOST_CORNERS {
            let message = format!("the slope and its holes have {count} corners, more than {MOST_CORNERS}");
            let help = "leave out corners, or make several slopes of it";
            judge.report("/outline", Code::TooMany, message, help);
            return None;
        }
        let corners = ring(self.corners, "outline", "/outline", judge);
        let (mut rings, mut names) = (Vec::new(), Vec::new());
        for (i, hole) in self.holes.into_iter().enumerate() {
            let what = hole.name.map_or("hole".to_owned(), |name| format!("hole {}", quoted(&name)));
            rings.push(ring(hole.corners, &what, &format!("/holes/{i}/outline"), judge));
            names.push(what);
        }
        let (corners, holes) = (corners?, rings.into_iter().collect::<Option<Vec<_>>>()?);
        check_holes(&corners, &holes, &names, judge);
        let (corners, edges) = counter_clockwise(corners, edges?);
        let (corners, edges) = without_straight_corners(corners, edges);
        let holes = holes
            .into_iter()
            .map(|hole| {
                let untagged = vec![None; hole.len()];
                let (hole, untagged) = counter_clockwise(hole, untagged);
                let (mut hole, _) = without_straight_corners(hole, untagged);
                hole.reverse();
                hole
            })
            .collect();
        Some(Outline { corners, edges, holes })
    }
}

/// Kind of each edge; `None` where nobody gives it.
fn edges(
    edges: Input<Vec<Input<Option<EdgeKind>>>>,
    corners: Option<usize>,
    judge: &mut Judge<'_>,
) -> Option<Vec<Option<EdgeKind>>> {
    let corners = corners?;
    let edges = match edges {
        Input::Missing => return Some(vec![None; corners]),
        given => given.given()?,
    };
    if edges.len() != corners {
        let message = format!("{} edges do not fit {corners} corners", edges.len());
        let help = "name one edge for each corner: the first runs from the first corner to the second";
        judge.report("/edges", Code::EdgeCount, message, help);
        return None;
    }
    edges.into_iter().map(Input::given).collect()
}

/// The corners of a ring, if they make a simple polygon.
fn ring(
    corners: Input<Vec<SlopePoint>>,
    what: &str,
    at: &str,
    judge: &mut Judge<'_>,
) -> Option<Vec<SlopePoint>> {
    let corners = corners.given()?;
    for (i, corner) in corners.iter().enumerate() {
        for (side, length) in [corner.u, corner.v].into_iter().enumerate() {
            if !Range::POSITION.contains(length) {
                let at = format!("{at}/{i}/{side}");
                let (message, help) = Range::POSITION.refusal(None, &judge.shown(&at, length));
                judge.report(&at, Code::OutOfRange, message, help);
                return None;
            }
        }
    }
    let problem = if corners.len() < 3 {
        let message = format!("the {what} has {} corners", corners.len());
        Some((Code::TooFewCorners, message, "give three or more, in turn"))
    } else {
        crossing(&corners, what)
    };
    match problem {
        None => Some(corners),
        Some((code, message, help)) => {
            judge.report(at, code, message, help);
            None
        }
    }
}

/// Reason why a ring is no simple polygon.
fn crossing(corners: &[SlopePoint], what: &str) -> Option<(Code, String, &'static str)> {
    let points: Vec<geometry::Point> = corners.iter().map(|&corner| corner.into()).collect();
    let count = points.len();
    let mut seen = BTreeMap::new();
    for (i, &point) in points.iter().enumerate() {
        if let Some(first) = seen.insert(point, i) {
            let message = format!("corners {} and {} of the {what} are one point", first + 1, i + 1);
            let help = if first == 0 && i + 1 == count {
                "do not repeat the first corner at the end: the outline closes by itself"
            } else {
                "an outline goes round once and touches itself nowhere: take one of them out"
            };
            return Some((Code::CrossingOutline, message, help));
        }
    }
    let turns = |i: usize| points[i].cross(points[(i + 1) % count], points[(i + 2) % count]);
    if (0..count).all(|i| turns(i) == 0) {
        let message = format!("all corners of the {what} lie in one line");
        return Some((Code::NoArea, message, "give the corners of an area"));
    }
    let help = "give the corners in turn, all the way round: two of them may be swapped";
    for i in 0..count {
        let (a, b, c) = (points[i], points[(i + 1) % count], points[(i + 2) % count]);
        let (back, on) =
            ((i128::from(a.u - b.u), i128::from(a.v - b.v)), (i128::from(c.u - b.u), i128::from(c.v - b.v)));
        if turns(i) == 0 && back.0 * on.0 + back.1 * on.1 > 0 {
            let message = format!("the {what} turns back on itself at corner {}", (i + 1) % count + 1);
            return Some((Code::CrossingOutline, message, help));
        }
    }
    for i in 0..count {
        for j in i + 2..count {
            let neighbours = i == 0 && j + 1 == count;
            if !neighbours && meet((points[i], points[i + 1]), (points[j], points[(j + 1) % count])) {
                let message = format!("edges {} and {} of the {what} cross or touch", i + 1, j + 1);
                return Some((Code::CrossingOutline, message, help));
            }
        }
    }
    None
}

/// Whether two closed segments have a point in common.
fn meet(first: (geometry::Point, geometry::Point), second: (geometry::Point, geometry::Point)) -> bool {
    let apart = |a: (i64, i64), b: (i64, i64)| a.0.max(a.1) < b.0.min(b.1) || b.0.max(b.1) < a.0.min(a.1);
    if apart((first.0.u, first.1.u), (second.0.u, second.1.u))
        || apart((first.0.v, first.1.v), (second.0.v, second.1.v))
    {
        return false;
    }
    let sides = |(from, to): (geometry::Point, geometry::Point),
                 (a, b): (geometry::Point, geometry::Point)| {
        (from.cross(to, a).signum(), from.cross(to, b).signum())
    };
    let parts = |(a, b): (i128, i128)| a == b && a != 0;
    !parts(sides(first, second)) && !parts(sides(second, first))
}

/// Each hole has to lie inside the outline and clear of the others; points may touch. The coordinates are
/// whole nanometres below 2^53, which geo's numbers hold exactly.
fn check_holes(corners: &[SlopePoint], holes: &[Vec<SlopePoint>], names: &[String], judge: &mut Judge<'_>) {
    let line = |ring: &Vec<SlopePoint>| -> LineString {
        ring.iter().map(|corner| Coord { x: corner.u.nm() as f64, y: corner.v.nm() as f64 }).collect()
    };
    let polygon = geo::Polygon::new(line(&corners.to_vec()), holes.iter().map(line).collect());
    let hole = |role: &geo::validation::RingRole| match role {
        geo::validation::RingRole::Interior(index) => names.get(*index).map(|name| (*index, name)),
        geo::validation::RingRole::Exterior => None,
    };
    for error in polygon.validation_errors() {
        let (code, hole, trouble) = match &error {
            InvalidPolygon::IntersectingRingsOnALine(first, second)
            | InvalidPolygon::IntersectingRingsOnAnArea(first, second) => match hole(first) {
                Some((_, other)) => {
                    (Code::HolesOverlap, hole(second), format!("overlaps the {other}, or lies along it"))
                }
                None => (Code::HoleOutside, hole(second), "lies along the slope's outline".to_owned()),
            },
            InvalidPolygon::InteriorRingNotContainedInExteriorRing(ring) => {
                (Code::HoleOutside, hole(ring), "is not inside the slope's outline".to_owned())
            }
            _ => continue,
        };
        if let Some((i, what)) = hole {
            let help = match code {
                Code::HolesOverlap => "make one hole of both",
                _ => "move it inside, or let the outline go round it",
            };
            judge.report(&format!("/holes/{i}"), code, format!("the {what} {trouble}"), help);
        }
    }
}

/// The ring counter-clockwise, from the same corner.
fn counter_clockwise(
    mut corners: Vec<SlopePoint>,
    mut edges: Vec<Option<EdgeKind>>,
) -> (Vec<SlopePoint>, Vec<Option<EdgeKind>>) {
    let points: Vec<geometry::Point> = corners.iter().map(|&corner| corner.into()).collect();
    let doubled_area: i128 = points
        .iter()
        .zip(points.iter().cycle().skip(1))
        .map(|(a, b)| geometry::Point::new(0, 0).cross(*a, *b))
        .sum();
    if doubled_area < 0 {
        // Backwards from the first corner: the last edge comes first.
        corners[1..].reverse();
        edges.reverse();
    }
    (corners, edges)
}

/// The ring without the corners at which it runs straight on along an edge of the same kind.
fn without_straight_corners(
    corners: Vec<SlopePoint>,
    edges: Vec<Option<EdgeKind>>,
) -> (Vec<SlopePoint>, Vec<Option<EdgeKind>>) {
    let count = corners.len();
    let point = |i: usize| geometry::Point::from(corners[i % count]);
    let keep = |&i: &usize| {
        let before = (i + count - 1) % count;
        edges[before] != edges[i] || point(before).cross(point(i), point(i + 1)) != 0
    };
    (0..count).filter(keep).map(|i| (corners[i], edges[i])).unzip()
}

//! Posts that stand nearer to an edge than its setback allows.
use ethnum::I256;

use super::codes::Code;
use super::outline::Outline;
use super::raw;
use super::reader::{Field, Reader};
use super::tree::At;
use super::{Display, EdgeKind, Post};
use crate::geometry::{GRID_PER_MM, Point, Rect, Segment, grid, half, math};
use crate::units::Length;

/// The setbacks given, by the kind of edge.
pub(super) fn setbacks(
    field: &Field<Option<raw::Setbacks>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Vec<(EdgeKind, Length)> {
    let Some(written) = field.given() else {
        return Vec::new();
    };
    let by_kind = [
        (EdgeKind::Eave, &written.eave),
        (EdgeKind::Ridge, &written.ridge),
        (EdgeKind::Rake, &written.rake),
        (EdgeKind::Hip, &written.hip),
        (EdgeKind::Valley, &written.valley),
        (EdgeKind::Wall, &written.wall),
    ];
    let mut setbacks = Vec::new();
    for (kind, setback) in by_kind {
        if let Some(&length) = setback.given() {
            check_edge(kind, setback.at, outline, reader);
            setbacks.push((kind, length));
        }
    }
    setbacks
}

/// A rule for edges that the slope does not have may be meant for another slope.
pub(super) fn check_edge(kind: EdgeKind, at: At, outline: Option<&Outline>, reader: &mut Reader<'_>) {
    if outline.is_some_and(|outline| !outline.edges.contains(&Some(kind))) {
        let message = format!("no edge of the slope is a {}", name(kind));
        let help = "say in `edges` which edge it is, or take this out";
        reader.report(at, Code::NoSuchEdge, message, help);
    }
}

/// Finds the posts within a setback: their points on the deck, or their deck flashings too.
pub(super) fn check_posts(
    posts: &[(At, Post)],
    setbacks: &[(EdgeKind, Length)],
    hold_flashing: bool,
    outline: &Outline,
    display: Display,
    reader: &mut Reader<'_>,
) {
    let polygon = outline.polygon();
    let edges: Vec<(Segment, EdgeKind, Length)> = polygon
        .edges()
        .zip(&outline.edges)
        .filter_map(|(segment, kind)| {
            let (kind, setback) = setbacks.iter().find(|(held, _)| Some(*held) == *kind)?;
            Some((segment, *kind, *setback))
        })
        .collect();
    for (at, post) in posts {
        let point = Point::from(post.at);
        let flashing = &post.assembly.deck_flashing;
        let side = half(flashing.width);
        let (lower, upper) = (point.v - grid(flashing.down), point.v + grid(flashing.up));
        let rect = Rect::new(point.u - side, lower, point.u + side, upper);
        for (edge, kind, setback) in &edges {
            let near = |distance: Distance| distance.is_below(grid(*setback));
            let (what, distance) = if near(to_point(edge, point)) {
                ("stands", to_point(edge, point))
            } else if hold_flashing && near(to_rect(edge, &rect)) {
                ("has its deck flashing", to_rect(edge, &rect))
            } else {
                continue;
            };
            let message = format!(
                "the post `{}` {what} {} from the {}, within its setback of {}",
                post.name,
                display.length(distance.length()),
                name(*kind),
                display.length(*setback)
            );
            reader.report(
                *at,
                Code::InsideSetback,
                message,
                "move the post, or ask whether the setback holds here",
            );
        }
    }
}

fn name(kind: EdgeKind) -> &'static str {
    match kind {
        EdgeKind::Eave => "eave",
        EdgeKind::Ridge => "ridge",
        EdgeKind::Rake => "rake",
        EdgeKind::Hip => "hip",
        EdgeKind::Valley => "valley",
        EdgeKind::Wall => "wall",
    }
}

/// A distance in grid steps, as the exact quotient of its square, `top / over`.
#[derive(Clone, Copy)]
pub(super) struct Distance {
    top: I256,
    over: I256,
}

impl Distance {
    const ZERO: Distance = Distance { top: I256::ZERO, over: I256::ONE };

    fn is_below(self, limit: i64) -> bool {
        self.top < I256::from(limit) * I256::from(limit) * self.over
    }

    /// To the nearest nanometre, for showing.
    pub(super) fn length(self) -> Length {
        let steps = math::sqrt(self.top.as_f64() / self.over.as_f64());
        Length::nearest(steps / GRID_PER_MM * 1e6).unwrap_or(Length::LIMIT)
    }

    fn min(self, other: Distance) -> Distance {
        if other.top * self.over < self.top * other.over { other } else { self }
    }
}

pub(super) fn to_point(segment: &Segment, point: Point) -> Distance {
    let (along, from, to) = (way(segment.from, segment.to), way(segment.from, point), way(segment.to, point));
    let dot = |a: (i128, i128), b: (i128, i128)| a.0 * b.0 + a.1 * b.1;
    let (length, reached) = (dot(along, along), dot(along, from));
    if reached <= 0 {
        Distance { top: dot(from, from).into(), over: I256::ONE }
    } else if reached >= length {
        Distance { top: dot(to, to).into(), over: I256::ONE }
    } else {
        let cross = I256::from(segment.from.cross(segment.to, point));
        Distance { top: cross * cross, over: length.into() }
    }
}

fn way(from: Point, to: Point) -> (i128, i128) {
    (i128::from(to.u - from.u), i128::from(to.v - from.v))
}

pub(super) fn to_rect(segment: &Segment, rect: &Rect) -> Distance {
    if rect.meets_segment(segment) {
        return Distance::ZERO;
    }
    let ends = [segment.from, segment.to].map(|end| {
        let inside = Point::new(end.u.clamp(rect.left, rect.right), end.v.clamp(rect.lower, rect.upper));
        let (u, v) = way(end, inside);
        Distance { top: (u * u + v * v).into(), over: I256::ONE }
    });
    let corners = rect.corners().map(|corner| to_point(segment, corner));
    corners.into_iter().fold(ends[0].min(ends[1]), Distance::min)
}

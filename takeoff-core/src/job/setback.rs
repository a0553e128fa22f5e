//! Posts that stand nearer to an edge than its setback allows.
use super::codes::Code;
use super::outline::Outline;
use super::raw;
use super::reader::Reader;
use super::tree::At;
use super::{Display, EdgeKind, Post};
use crate::geometry::Point;
use crate::slope::{Breaks, Setback};
use crate::units::Length;

/// The setbacks of a slope, edge by edge.
pub(super) fn setbacks(
    written: &raw::Slope,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Vec<Setback>> {
    let Some(by_kind) = written.setbacks.given() else {
        return Some(Vec::new());
    };
    let by_kind = [
        (EdgeKind::Eave, &by_kind.eave),
        (EdgeKind::Ridge, &by_kind.ridge),
        (EdgeKind::Rake, &by_kind.rake),
        (EdgeKind::Hip, &by_kind.hip),
        (EdgeKind::Valley, &by_kind.valley),
        (EdgeKind::Wall, &by_kind.wall),
    ];
    let given: Vec<(EdgeKind, Length)> =
        by_kind.iter().filter_map(|(kind, setback)| Some((*kind, *setback.given()?))).collect();
    for (kind, setback) in by_kind {
        if setback.given().is_some() {
            check_edge(kind, setback.at, outline, reader);
        }
    }
    let holds_flashing = written.setbacks_hold_flashing.given().copied().unwrap_or(false);
    let outline = outline?;
    let polygon = outline.polygon();
    let edges = polygon.edges().zip(&outline.edges);
    let setbacks = edges.filter_map(|(edge, kind)| {
        let &(kind, least) = given.iter().find(|(held, _)| Some(*held) == *kind)?;
        Some(Setback { edge, kind, least, holds_flashing })
    });
    Some(setbacks.collect())
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
    setbacks: &[Setback],
    display: Display,
    reader: &mut Reader<'_>,
) {
    for (at, post) in posts {
        for setback in setbacks {
            let (what, distance) = match setback.broken_by(Point::from(post.at), &post.assembly) {
                Some(Breaks::Post(distance)) => ("stands", distance),
                Some(Breaks::Flashing(distance)) => ("has its deck flashing", distance),
                None => continue,
            };
            let message = format!(
                "the post `{}` {what} {} from the {}, within its setback of {}",
                post.name,
                display.length(distance),
                name(setback.kind),
                display.length(setback.least)
            );
            let help = "move the post, or ask whether the setback holds here";
            reader.report(*at, Code::InsideSetback, message, help);
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

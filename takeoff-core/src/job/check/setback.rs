//! Posts that stand nearer to an edge than its setback allows.
use crate::geometry::Point;
use crate::job::fields::raw;
use crate::job::parse::decode::Reader;
use crate::job::parse::document::At;
use crate::model::{Code, Display, EdgeKind, Outline, Post, Setback, SetbackViolation};
use crate::units::Length;

/// The setbacks of a slope, edge by edge.
pub(crate) fn setbacks(
    written: &raw::Slope,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Vec<Setback>> {
    let Some(asked) = written.setbacks.given() else {
        return Some(Vec::new());
    };
    let by_kind = [
        (EdgeKind::Eave, &asked.eave),
        (EdgeKind::Ridge, &asked.ridge),
        (EdgeKind::Rake, &asked.rake),
        (EdgeKind::Hip, &asked.hip),
        (EdgeKind::Valley, &asked.valley),
        (EdgeKind::Wall, &asked.wall),
    ];
    let given: Vec<(EdgeKind, Length)> =
        by_kind.iter().filter_map(|(kind, setback)| Some((*kind, *setback.given()?))).collect();
    for (kind, setback) in by_kind {
        if setback.given().is_some() {
            check_edge(kind, setback.at, outline, reader);
        }
    }
    let from_holes = asked.hole.given().copied();
    if from_holes.is_some() && outline.is_some_and(|outline| outline.holes.is_empty()) {
        let help = "say in `holes` where they are, or take this out";
        reader.report(asked.hole.at, Code::NoSuchEdge, "the slope has no hole", help);
    }
    let holds_flashing = written.setbacks_hold_flashing.given().copied().unwrap_or(false);
    let outline = outline?;
    let polygon = outline.polygon();
    let edges = polygon.edges().zip(&outline.edges);
    let setbacks = edges.filter_map(|(edge, kind)| {
        let &(kind, least) = given.iter().find(|(held, _)| Some(*held) == *kind)?;
        Some(Setback { edge, kind: Some(kind), least, holds_flashing })
    });
    let round_holes = polygon.edges().skip(outline.edges.len());
    let round_holes =
        round_holes.filter_map(|edge| Some(Setback { edge, kind: None, least: from_holes?, holds_flashing }));
    Some(setbacks.chain(round_holes).collect())
}

/// A rule for edges that the slope does not have may be meant for another slope.
pub(crate) fn check_edge(kind: EdgeKind, at: At, outline: Option<&Outline>, reader: &mut Reader<'_>) {
    if outline.is_some_and(|outline| !outline.edges.contains(&Some(kind))) {
        let message = format!("no edge of the slope is a {}", name(kind));
        let help = "say in `edges` which edge it is, or take this out";
        reader.report(at, Code::NoSuchEdge, message, help);
    }
}

/// Finds the posts within a setback: their points on the deck, or their deck flashings too.
pub(crate) fn check_posts(
    posts: &[(At, Post)],
    setbacks: &[Setback],
    display: Display,
    reader: &mut Reader<'_>,
) {
    for (at, post) in posts {
        // Where two edges of a kind meet in a corner, one finding is enough.
        let mut reported = Vec::new();
        for setback in setbacks {
            let (what, distance) = match setback.broken_by(Point::from(post.at), &post.assembly) {
                Some(SetbackViolation::Post(distance)) => ("stands", distance),
                Some(SetbackViolation::Flashing(distance)) => ("has its deck flashing", distance),
                None => continue,
            };
            let message = format!(
                "the post `{}` {what} {} from the {}, within its setback of {}",
                post.name,
                display.length(distance),
                setback.kind.map_or("edge of a hole", name),
                display.length(setback.least)
            );
            let help = "move the post, or ask whether the setback holds here";
            if !reported.contains(&message) {
                reader.report(*at, Code::InsideSetback, message.clone(), help);
                reported.push(message);
            }
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

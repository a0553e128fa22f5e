//! What is odd about a screening.
use std::collections::BTreeMap;

use super::{Distance, NotScreened, PostScreening, Unscreened};
use crate::model::{Code, Display, Post, Problem, Slope};
use crate::units::RealLength;

/// Posts that a finding names; the others are counted.
const NAMED: usize = 5;

/// A reason why posts of the slope at `place` are not screened, each once.
pub(super) fn of_slope<'a>(
    place: usize,
    slope: &'a Slope,
    left_out: &'a [NotScreened],
) -> impl Iterator<Item = Problem> + 'a {
    let mut by_reason: BTreeMap<Unscreened, Vec<&str>> = BTreeMap::new();
    for NotScreened { post, reason, .. } in left_out {
        by_reason.entry(*reason).or_default().push(&slope.posts[post.place()].name);
    }
    by_reason.into_iter().map(move |(reason, posts)| {
        let named: Vec<String> = posts.iter().take(NAMED).map(|name| format!("`{name}`")).collect();
        let more = match posts.len().saturating_sub(NAMED) {
            0 => String::new(),
            more => format!(" and {more} more"),
        };
        let (why, help) = words(reason);
        let message = format!("on `{}` {}{more}: not screened, {why}", slope.name, named.join(", "));
        Problem::new(Code::NotScreened, message, help, format!("/slopes/{place}"))
    })
}

fn words(reason: Unscreened) -> (&'static str, &'static str) {
    match reason {
        Unscreened::NoArray => {
            ("below no array", "look at the slope's `arrays`, or leave these to the engineer")
        }
        Unscreened::NoLags => ("lags unknown", "say in the assembly's `lags` what they are"),
        Unscreened::NoDeckThickness => ("sheathing unknown", "give the slope's `deck_thickness`"),
        Unscreened::NoWood => ("wood unknown", "give the slope's `rafters` with their `specific_gravity`"),
        Unscreened::NoBlocking => ("on blocking boards of unknown wood", "give the slope's `blocking`"),
        Unscreened::BesideTheRafters => {
            ("beyond the rafters", "move them onto a rafter, or survey the framing there")
        }
    }
}

/// What is too much, too little or too near at some posts.
pub(super) fn of_posts(screened: &[(&Post, PostScreening)], display: Display) -> Vec<Problem> {
    screened.iter().flat_map(|(post, row)| of_post(post, row, display)).collect()
}

fn of_post(post: &Post, row: &PostScreening, display: Display) -> Vec<Problem> {
    let name = &post.name;
    let show = |length: RealLength| display.length(length.nearest());
    let mut found = Vec::new();
    if row.exceeds() {
        let [uplift, resistance] = [row.uplift, row.resistance].map(|force| display.force(force));
        let ratio = row.ratio.map_or(String::new(), |ratio| format!(", a ratio of {ratio:.2}"));
        let message =
            format!("the lags of `{name}` are screened with {uplift} of uplift against {resistance}{ratio}");
        let help = "more lags, a longer lag, closer posts: for a licensed engineer to decide";
        found.push(Problem::new(Code::UpliftAboveResistance, message, help, &post.path));
    }
    let distances = [
        (row.distances.edge, "from the edge of their wood"),
        (row.distances.end, "from the end of their wood"),
        (row.distances.spacing, "from each other"),
    ];
    for (distance, of_what) in distances {
        if let Some(distance) = distance.filter(Distance::is_short) {
            let [has, asked] = [distance.has, distance.asked].map(show);
            let message = format!("the lags of `{name}` lie {has} {of_what}, and {asked} are asked");
            let help = "another place, other lags or blocking: for a licensed engineer to decide";
            found.push(Problem::new(Code::LagTooNear, message, help, &post.path));
        }
    }
    if row.lags > 1 && row.distances.spacing.is_none() {
        let message =
            format!("the spacing of the lags of `{name}` is not given: not all distances are checked");
        let help = "give `spacing` in the assembly's `lags`";
        found.push(Problem::new(Code::LagSpacingUnknown, message, help, &post.path));
    }
    let [least, greatest] = row.pilot;
    let beyond = |mm: f64| mm < least.mm() - 1e-6 || mm > greatest.mm() + 1e-6;
    if let Some(hole) = post.assembly.pilot_holes.iter().find(|hole| beyond(hole.diameter.mm())) {
        let message = format!(
            "the pilot holes of `{name}` are {}; for its lags and wood {} to {} are usual",
            display.length(hole.diameter),
            show(least),
            show(greatest),
        );
        found.push(Problem::new(Code::PilotHole, message, "take another drill for the thread", &post.path));
    }
    found
}

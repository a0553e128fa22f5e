//! What is odd but real about courses and posts.
use super::PostTakeoff;
use crate::deck::{head_lap, too_low, without_rafter};
use crate::geometry::{Point, grid};
use crate::model::{Code, Display, Post, Problem};
use crate::relocation::Situation;
use crate::roof::Site;
use crate::units::{Length, RealLength};

#[cfg(test)]
mod tests;

/// One finding for all courses whose head lap is below the least tuck of the tile flashing: no flashing could be
/// tucked further than the head lap.
pub(super) fn course_findings(site: &Site, display: Display, path: &str) -> Option<Problem> {
    let least = grid(site.practice.least_top_tuck);
    let short: Vec<u32> = (0..site.grid.courses())
        .filter(|&k| head_lap(&site.grid, k).is_some_and(|lap| lap < least))
        .collect();
    (!short.is_empty()).then(|| {
        let message = format!(
            "on `{}` the head lap of {} is below the least tuck of {}: no tile flashing can be tucked that far",
            site.slope.name,
            courses_in_words(&short),
            display.length(site.practice.least_top_tuck),
        );
        Problem::new(Code::HeadLapBelowTuck, message, "seal under the course above, or agree on a smaller tuck", path)
    })
}

/// `course 3`, `courses 1 to 4, 7 and 9`.
fn courses_in_words(courses: &[u32]) -> String {
    let runs = courses.chunk_by(|a, b| a + 1 == *b);
    let runs: Vec<String> = runs
        .map(|run| match *run {
            [only] => format!("{}", only + 1),
            [first, .., last] => format!("{} to {}", first + 1, last + 1),
            [] => String::new(),
        })
        .collect();
    let noun = if courses.len() == 1 { "course" } else { "courses" };
    match runs.split_last() {
        Some((last, before)) if !before.is_empty() => format!("{noun} {} and {last}", before.join(", ")),
        _ => format!("{noun} {}", runs.join("")),
    }
}

/// Posts named in one finding; the rest are counted.
const NAMED: usize = 6;

/// A finding for every spot on which two posts or more stand.
pub(super) fn posts_at_one_point(posts: &[Post]) -> Vec<Problem> {
    let mut by_place: Vec<(Point, usize)> = posts.iter().map(|post| Point::from(post.at)).zip(0..).collect();
    by_place.sort_unstable();
    let mut spots: Vec<&[(Point, usize)]> =
        by_place.chunk_by(|a, b| a.0 == b.0).filter(|on_spot| on_spot.len() > 1).collect();
    spots.sort_unstable_by_key(|on_spot| on_spot[0].1);
    let found = spots.into_iter().map(|on_spot| {
        let names = on_spot.iter().take(NAMED).map(|&(_, post)| format!("`{}`", posts[post].name));
        let mut parts: Vec<String> = names.collect();
        if on_spot.len() > NAMED {
            parts.push(format!("{} more", on_spot.len() - NAMED));
        }
        let last = parts.pop().unwrap_or_default();
        let message = format!("{} and {last} stand at one point", parts.join(", "));
        let help = "keep one of them, or give each its own place";
        Problem::new(Code::PostsAtOnePoint, message, help, posts[on_spot[0].1].path.as_str())
    });
    found.collect()
}

/// The findings about one post.
pub(super) fn post_findings(site: &Site, display: Display, post: &Post, row: &PostTakeoff) -> Vec<Problem> {
    let name = &post.name;
    let show = |length: Length| display.length(length);
    // A half of a nanometre shows as a whole one.
    let steps = |steps: i64| display.length(Length::from_nm((steps + 1).div_euclid(2)));
    let mut found = Vec::new();
    let mut add = |code: Code, message: String, help: String| {
        found.push(Problem::new(code, message, help, post.path.as_str()))
    };
    let elsewhere = move_in_words(row, display);

    if row.situation == Situation::None {
        add(
            Code::NoTile,
            format!("`{name}` meets no tile"),
            "check the post's place and the courses".to_owned(),
        );
    }
    if row.severed {
        let message = format!("`{name}` severs a tile: no sound single piece remains");
        let help = format!(
            "{}, or make the piece up from new tiles",
            elsewhere.as_deref().unwrap_or("move the post")
        );
        add(Code::Severed, message, help);
    }
    let clearance = row.opening.least_clearance_mm;
    if clearance < 0.0 {
        let message = format!(
            "`{name}` does not pass its opening: {} too tight",
            show(RealLength::from_mm(-clearance).nearest())
        );
        add(Code::PostTooTight, message, "give more clearance".to_owned());
    }
    if row.top.tuck_short > 0 {
        let message =
            format!("the tile flashing of `{name}` tucks {} less than asked", steps(row.top.tuck_short));
        let help = elsewhere.clone().unwrap_or_else(|| "take a taller tile flashing".to_owned());
        add(Code::TuckShort, message, help);
    }
    if row.top.side_short > 0 {
        let message = format!(
            "the tile flashing of `{name}` covers each side {} less than asked",
            steps(row.top.side_short)
        );
        add(Code::SideCoverShort, message, "take a wider tile flashing".to_owned());
    }
    if row.top.trimmed > 0 {
        let message = format!(
            "the tile flashing of `{name}` is trimmed by {} at its tile's head",
            steps(row.top.trimmed)
        );
        add(Code::FlashingTrimmed, message, "nothing to mend; trim it on the ground".to_owned());
    }
    let margin = &row.margin;
    let ways = [("left", margin.left), ("right", margin.right), ("down", margin.down), ("up", margin.up)];
    let least = site.practice.least_margin;
    let thin: Vec<String> = ways
        .iter()
        .filter(|(_, margin)| *margin < least)
        .map(|(way, margin)| format!("{} {way}", show(*margin)))
        .collect();
    if !thin.is_empty() {
        let message = format!(
            "the margin of `{name}` is {}: a post that lands that far off changes the work",
            thin.join(", ")
        );
        add(
            Code::ThinMargin,
            message,
            format!("keep {} clear, or measure this one twice", display.length(least)),
        );
    }
    found.extend(too_low(post, &row.height, display));
    found.extend(row.support.as_ref().and_then(|support| without_rafter(post, support)));
    found
}

/// `move it up 1 3/16 in`.
fn move_in_words(row: &PostTakeoff, display: Display) -> Option<String> {
    row.nearest.as_ref().map(|nearest| {
        let way = if nearest.up < Length::ZERO { "down" } else { "up" };
        format!("move it {way} {}", display.length(nearest.up.abs()))
    })
}

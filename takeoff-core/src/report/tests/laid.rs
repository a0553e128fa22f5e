//! The layout on screen.
use super::super::{layout, plain};
use super::{HOSTILE, sample};
use crate::layout::{Constraint, ConstraintPrice, Layout, Nudge};
use crate::model::Display;
use crate::relocation::Situation;
use crate::takeoff::{CAUTIONS, LAYOUT_CAUTION};
use crate::units::Money;

/// The text as one line, so that a phrase is found wherever it was wrapped.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn money(amount: &str) -> Money {
    Money::new(amount.parse().unwrap())
}

/// The layout with these names for everything that has one.
fn named(name: &str) -> Layout {
    let mut laid = sample::laid();
    laid.job = name.to_owned();
    laid.unpriced = vec![name.to_owned(); 3];
    laid.nudges = vec![nudge()];
    laid.nudges[0].post = name.to_owned();
    for array in &mut laid.arrays {
        array.array = name.to_owned();
        array.slope = name.to_owned();
        array.rails[0].posts[0].name = name.to_owned();
        array.rails[0].posts[0].rafter = None;
    }
    laid
}

fn nudge() -> Nudge {
    Nudge {
        slope: "south".to_owned(),
        post: "A7".to_owned(),
        up_mm: 30.1625, // 1 3/16 in
        v_mm: 965.2,
        situation: Situation::TwoSideBySide,
        better: Situation::OneTileHole,
        patched: true,
        better_patched: false,
        fails: false,
        saves: money("23.10"),
    }
}

#[test]
fn no_line_passes_80_columns() {
    for laid in HOSTILE.map(named).into_iter().chain([sample::laid()]) {
        for display in [Display::Imperial, Display::Metric] {
            let text = layout(&Layout { display, ..laid.clone() });
            assert!(text.lines().count() > 60);
            for line in text.lines() {
                assert!(plain::columns(line) <= 80, "{line}");
                assert!(!line.chars().any(char::is_control), "{line:?}");
                assert_eq!(line.trim_end(), line);
            }
        }
    }
}

#[test]
fn every_array_and_rail_is_told() {
    let mut laid = sample::laid();
    (laid.arrays[0].right_mm, laid.arrays[0].up_mm) = (-152.4, 3.175);
    let told = flowing(&layout(&laid));
    assert!(told.contains("large on south: move it 6 in left and 1/8 in up"));
    for array in &laid.arrays {
        let posts: usize = array.rails.iter().map(|rail| rail.posts.len()).sum();
        assert!(
            told.contains(&format!(
                "{posts} posts: {} USD, the sum of single-post costs.",
                array.additive_cost
            ))
        );
        assert!(told.contains(&format!("the move saves {} USD", array.saves().unwrap())));
        for rail in &array.rails {
            let posts = rail.posts.iter().map(|post| match post.rafter.unwrap() {
                rafter if post.on_board => format!("{rafter}/{}", rafter + 1),
                rafter => rafter.to_string(),
            });
            let posts = posts.collect::<Vec<_>>().join(", ");
            assert!(
                told.contains(&format!("in {} {posts}: one tile, hole, ", rail.additive_cost)),
                "{posts}"
            );
        }
    }
    for caution in CAUTIONS.into_iter().chain([LAYOUT_CAUTION]) {
        assert!(told.contains(&flowing(caution)));
    }
}

/// Each row of the table before and after: what changes is the difference of the two.
#[test]
fn the_changes_add_up() {
    let text = layout(&sample::laid());
    let table = text.split("as it is    laid out      change\n").nth(1).unwrap();
    let rows: Vec<&str> = table.lines().take_while(|line| line.starts_with("   ")).collect();
    assert_eq!(rows.len(), 18, "{table}");
    for row in rows {
        let cell = |at: usize| row.get(12 * at..12 * (at + 1)).unwrap().trim();
        let number = |at: usize| cell(at).parse::<f64>().unwrap();
        let change = if cell(2).is_empty() { 0.0 } else { number(2) };
        assert!((number(1) - number(0) - change).abs() < 0.005, "{row}");
    }
    let no_posts = Layout { before: None, before_breaks: Vec::new(), ..sample::laid() };
    assert!(layout(&no_posts).contains("\nWork and cost\n    laid out\n          39  posts\n"));
}

#[test]
fn limits_are_told_by_what_they_cost() {
    let price = |constraint, by_mm, saves, fewer_faults| ConstraintPrice {
        constraint,
        by_mm,
        saves: money(saves),
        fewer_faults,
    };
    let told = |constraints: Vec<ConstraintPrice>| {
        let text = layout(&Layout { constraints, ..sample::laid() });
        text.split("What each limit costs").nth(1).map(|text| flowing(text.split("\n\n").next().unwrap()))
    };
    let inch = Some(25.4);
    assert_eq!(
        told(vec![
            price(Constraint::Zones, None, "0.00", 0),
            price(Constraint::Stagger, None, "12.00", 0),
            price(Constraint::GreatestSpan, inch, "154.90", 0),
            price(Constraint::LeastMargin, inch, "-3.00", 2),
            price(Constraint::GreatestOverhang, inch, "0.00", 0),
        ])
        .unwrap(),
        ", the others as they are A tolerance up to 1 in smaller would cost 3.00 USD and have 2 posts at fault \
         fewer. 1 in more of span would save 154.90 USD. No stagger between the rails would save 12.00 USD. Nothing \
         would be saved by no zones of shorter spans; or by 1 in more of overhang."
    );
    assert_eq!(told(Vec::new()), None);
}

#[test]
fn a_nudge_is_told_as_one_would_say_it() {
    let told = |nudge: Nudge| flowing(&layout(&Layout { nudges: vec![nudge], ..sample::laid() }));
    assert!(told(nudge()).contains(
        "south: move A7 up 1 3/16 in, along its rafter, to v 3 ft 2 in: one hole instead of a notch across two tiles \
         side by side; a patch is no longer needed; saves 23.10 USD."
    ));
    let same = Nudge {
        situation: Situation::OneTileHole,
        up_mm: -25.4,
        patched: false,
        fails: true,
        saves: money("-4.00"),
        ..nudge()
    };
    assert!(told(same).contains(
        "move A7 down 1 in, along its rafter, to v 3 ft 2 in: one hole as before; where it stands a tile can't be \
         cut in one piece or a check fails; there neither does; costs 4.00 USD more."
    ));
}

#[test]
fn posts_with_the_same_to_be_done_are_one_line() {
    let post = |post: &str, v_mm| Nudge { post: post.to_owned(), v_mm, ..nudge() };
    let nudges = vec![post("A7", 965.2), post("B1", 1000.0), post("A8", 965.2)];
    let told = flowing(&layout(&Layout { nudges, ..sample::laid() }));
    assert!(told.contains(
        "rails to move: 3 south: move A7, A8 up 1 3/16 in, each along its rafter, to v 3 ft 2 in:"
    ));
    assert!(told.contains("each saves 23.10 USD. south: move B1 up"));
}

#[test]
fn what_went_wrong_is_told() {
    let mut laid = sample::laid();
    let array = &mut laid.arrays[0];
    (array.failing, array.thin, array.yielded) = (1, 2, true);
    (array.right_mm, array.up_mm) = (0.0, 0.0);
    laid.arrays[1].unmoved = None;
    let told = flowing(&layout(&laid));
    for phrase in [
        "large on south: leave it where it is",
        "1 post cuts a tile beyond repair or fails a check: no better place keeps all limits.",
        "2 posts stand with less than the tolerance on one side",
        "It keeps away from arrays laid before it",
        "Where the array is now, no rails and posts keep all limits.",
        "layout-rafter (30), the first: array `large`: `A2` at 80 in, 44 in stands on no rafter's centre line.",
    ] {
        assert!(told.contains(phrase), "{phrase}\n{told}");
    }
}

//! The summary on screen.
use super::super::{CAUTIONS, plain, summary};
use super::{HOSTILE, sample};
use crate::takeoff::THREE_COURSE_CAUTION;

/// The summary as one line, so that a phrase is found wherever it was wrapped.
fn flowing(summary: &str) -> String {
    summary.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn no_line_passes_80_columns() {
    for takeoff in sample::all().into_iter().chain(HOSTILE.map(sample::named)) {
        let summary = summary(&takeoff);
        assert!(summary.lines().count() > 20);
        for line in summary.lines() {
            assert!(plain::columns(line) <= 80, "{line}");
            assert!(!line.chars().any(char::is_control), "{line:?}");
            assert_eq!(line.trim_end(), line);
        }
    }
}

#[test]
fn every_total_is_told() {
    for takeoff in sample::all() {
        let text = flowing(&summary(&takeoff));
        let counts = &takeoff.counts;
        for (count, what) in [
            (counts.holes, "with a hole"),
            (counts.notches, "with a notch"),
            (counts.corners, "with a corner notch"),
            (counts.severed, "can't be cut in one piece"),
            (counts.removed, "removed and reset"),
            (counts.loosened, "raised: nose lifted"),
            (counts.tucked, "flashings tucked under"),
            (counts.patched, "flashings patched"),
        ] {
            assert!(text.contains(&format!(" {count} {what}")), "{count} {what}\n{text}");
        }
        let three_course = counts.three_course;
        assert_eq!(
            text.contains(&format!(" {three_course} flashings with three-course work")),
            three_course > 0
        );
        for line in &takeoff.materials {
            assert!(text.contains(&flowing(&line.item.name())), "{}", line.item);
        }
        if let Some(bid) = &takeoff.bid {
            for line in &bid.lines {
                assert!(
                    text.contains(&format!("{} {}: ", line.cost, flowing(&line.item.name()))),
                    "{}",
                    line.item
                );
            }
            for item in &bid.unpriced {
                assert!(
                    text.contains(&format!("no price {}: ", flowing(&item.item.name()))),
                    "{}",
                    item.item
                );
            }
            for line in &bid.labour {
                let cost = line.cost.map_or("not timed".to_owned(), |cost| cost.to_string());
                assert!(text.contains(&format!("{cost} {} {}", line.count, line.basis)), "{cost}");
            }
            assert!(text.contains(&format!("{} price ", bid.totals.price)) && text.contains(&bid.rounding));
        }
        for spares in &takeoff.spares {
            assert!(
                text.contains(&format!("{}: {} (", spares.tile, spares.spares.spares)),
                "{}",
                spares.tile
            );
        }
        for finding in &takeoff.findings {
            assert!(text.contains(finding.code.as_str()), "{}", finding.code);
        }
        for caution in CAUTIONS {
            assert!(text.contains(&flowing(caution)));
        }
        assert_eq!(text.contains(&flowing(THREE_COURSE_CAUTION)), three_course > 0);
        let open = takeoff.survey.iter().filter(|answer| answer.answer.is_none());
        for answer in open {
            assert!(text.contains(&flowing(&answer.asks)), "{}", answer.asks);
        }
    }
}

#[test]
fn the_posts_by_situation_add_up() {
    for takeoff in sample::all() {
        let summary = summary(&takeoff);
        let block = summary.split("\nPosts: ").nth(1).unwrap().split("\n\n").next().unwrap();
        let mut lines = block.lines();
        let total: u64 = lines.next().unwrap().parse().unwrap();
        let first_number =
            |line: &str| line.split_whitespace().next().and_then(|word| word.parse::<u64>().ok());
        let counted: u64 = lines.filter(|line| line.starts_with("   ")).filter_map(first_number).sum();
        assert_eq!((total, counted), (takeoff.counts.posts, takeoff.counts.posts));
    }
}

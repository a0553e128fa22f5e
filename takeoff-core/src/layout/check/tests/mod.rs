//! A layout made by hand that is right, and what is said when one thing of it is wrong.
mod cases;
mod limits;

use crate::geometry::SlopePoint;
use std::collections::BTreeSet;
use std::sync::Arc;

use super::{CODES, check};
use crate::geometry::Segment;
use crate::model::*;
use crate::model::{Array, ClampWindow, Rails, Setback, Shift, SpanZone};
use crate::testing::{assembly, at, gable, inches, job, len};
use crate::units::Length;

/// Where the rails run, in inches, and the rafters below each: the centre lines are at 8, 32, 56… in.
const RAILS: [f64; 4] = [46.0, 72.5, 100.0, 138.0];
const RAFTERS: [f64; 3] = [56.0, 128.0, 200.0];
const NM: Length = Length::from_nm(1);

fn post(name: String, u: f64, v: f64) -> Post {
    let at = SlopePoint { u: inches(u), v: inches(v) };
    Post { name, assembly: Arc::new(assembly()), at, fixed: false, path: "/slopes/0/posts/0".into() }
}

fn array(name: &str, u: &str, v: &str, columns: u32) -> Array {
    Array {
        name: name.into(),
        at: at(u, v),
        module_width: len("40 in"),
        module_height: len("60 in"),
        columns,
        rows: 2,
        column_gap: len("1 in"),
        row_gap: len("1 in"),
        shift: Shift::default(),
        rails: None,
    }
}

/// A job and a right layout of it.
///
/// The array is 163 in wide and has two rows of 60 in, 1 in apart; it was moved 2 in to the right and 3 in down, as far
/// as it may, to 40, 30 in. Its rails may be clamped from 8 to 20 and from 40 to 52 in up its modules: from 38 to 50, 70
/// to 82, 99 to 111 and 131 to 143 in. Their posts are 72 in apart, as far as they may, and 16 in from the left end, which
/// is the most too. `F` on the second rail is fixed; `K` at 212, 154 in is kept, 12 and 16 in from the post at 200,
/// 138 in, so 20 in straight, which is the least distance. The lowest posts keep 46 in from the eave and no more is asked.
struct Right {
    job: Job,
    laid: Job,
}

fn right() -> Right {
    let rails = Rails {
        assembly: Arc::new(assembly()),
        clamps: vec![
            ClampWindow { from: len("8 in"), to: len("20 in") },
            ClampWindow { from: len("40 in"), to: len("52 in") },
        ],
        greatest_span: len("72 in"),
        greatest_overhang: len("16 in"),
        zones: vec![],
        least_distance: len("20 in"),
        stagger: 1,
        blocking: false,
    };
    let (right, down) = (len("2 in"), len("3 in"));
    let field = Array {
        rails: Some(rails),
        shift: Shift { right, down, ..Shift::default() },
        ..array("field", "38 in", "33 in", 4)
    };
    let eave = Segment { from: at("0", "0").into(), to: at("38 ft", "0").into() };
    let given = [
        Post { fixed: true, ..post("F".into(), 104.0, 72.5) },
        post("old".into(), 120.0, 60.0),
        post("K".into(), 212.0, 154.0),
    ];
    let slope = Slope {
        setbacks: vec![Setback {
            edge: eave,
            kind: Some(EdgeKind::Eave),
            least: len("46 in"),
            holds_flashing: false,
        }],
        arrays: vec![field, array("other", "300 in", "30 in", 2)],
        posts: given.to_vec(),
        ..gable()
    };
    let mut laid = slope.clone();
    laid.arrays[0].at = at("40 in", "30 in");
    laid.posts.remove(1);
    for (rail, v) in RAILS.into_iter().enumerate() {
        let posts = RAFTERS.into_iter().enumerate();
        laid.posts.extend(posts.map(|(i, u)| post(format!("field-{}-{}", rail + 1, i + 1), u, v)));
    }
    Right { job: job(vec![slope]), laid: job(vec![laid]) }
}

impl Right {
    fn rails(&mut self) -> &mut Rails {
        self.job.slopes[0].arrays[0].rails.as_mut().unwrap()
    }

    /// A post of the laid job.
    fn post(&mut self, name: &str) -> &mut Post {
        self.laid.slopes[0].posts.iter_mut().find(|post| post.name == name).unwrap()
    }

    fn without(&mut self, name: &str) {
        self.laid.slopes[0].posts.retain(|post| post.name != name);
    }

    /// Changes what both jobs have alike.
    fn both(&mut self, change: impl Fn(&mut Slope)) {
        change(&mut self.job.slopes[0]);
        change(&mut self.laid.slopes[0]);
    }

    fn practice(&mut self, change: impl Fn(&mut Practice)) {
        change(&mut self.job.practice);
        change(&mut self.laid.practice);
    }

    /// Every post of another assembly.
    fn assemblies(&mut self, change: impl Fn(&mut Assembly)) {
        let mut other = assembly();
        change(&mut other);
        let other = Arc::new(other);
        self.both(|slope| slope.posts.iter_mut().for_each(|post| post.assembly = other.clone()));
    }

    /// A rail of the laid job at another height.
    fn rail_to(&mut self, number: usize, v: Length) {
        let prefix = format!("field-{number}-");
        let posts = self.laid.slopes[0].posts.iter_mut();
        posts.filter(|post| post.name.starts_with(&prefix)).for_each(|post| post.at.v = v);
    }

    fn codes(&self) -> BTreeSet<String> {
        check(&self.job, &self.laid).into_iter().map(|problem| problem.code.to_string()).collect()
    }
}

/// What is found when a right layout is changed.
#[track_caller]
fn found(change: impl FnOnce(&mut Right)) -> Vec<Problem> {
    let mut right = right();
    change(&mut right);
    check(&right.job, &right.laid)
}

#[track_caller]
fn accepted(change: impl FnOnce(&mut Right)) {
    assert_eq!(found(change), []);
}

/// The message of the only thing that is found.
#[track_caller]
fn message(change: impl FnOnce(&mut Right)) -> String {
    let found = found(change);
    let [problem] = &found[..] else { panic!("{found:#?}") };
    problem.message.clone()
}

#[test]
fn the_layout_made_by_hand_is_right() {
    accepted(|_| {});
}

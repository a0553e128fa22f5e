//! A valid layout by hand, and the problems found after one change to it.
mod cases;
mod geometry;
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

/// Heights of the rails and centre lines of the rafters under each, in inches; rafters are at 8, 32, 56… in.
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

/// A job and a valid layout of it.
///
/// The array is 163 in wide and has two rows of 60 in, 1 in apart; its shift is 2 in to the right and 3 in down, the most
/// allowed, to 40, 30 in. The clamp windows are from 8 to 20 and from 40 to 52 in up the modules: from 38 to 50, 70 to 82,
/// 99 to 111 and 131 to 143 in. Posts are 72 in apart, the greatest span, and 16 in from the left end, the greatest
/// overhang. `F` on the second rail is fixed; `K` at 212, 154 in stays, 12 and 16 in from the post at 200, 138 in: 20 in
/// straight, the least distance. The lowest posts are 46 in from the eave, the setback.
struct Valid {
    job: Job,
    laid: Job,
}

fn valid() -> Valid {
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
    Valid { job: job(vec![slope]), laid: job(vec![laid]) }
}

impl Valid {
    fn rails(&mut self) -> &mut Rails {
        self.job.slopes[0].arrays[0].rails.as_mut().unwrap()
    }

    /// A post of the laid-out job.
    fn post(&mut self, name: &str) -> &mut Post {
        self.laid.slopes[0].posts.iter_mut().find(|post| post.name == name).unwrap()
    }

    fn without(&mut self, name: &str) {
        self.laid.slopes[0].posts.retain(|post| post.name != name);
    }

    /// Changes the slope of both jobs.
    fn both(&mut self, change: impl Fn(&mut Slope)) {
        change(&mut self.job.slopes[0]);
        change(&mut self.laid.slopes[0]);
    }

    fn practice(&mut self, change: impl Fn(&mut Practice)) {
        change(&mut self.job.practice);
        change(&mut self.laid.practice);
    }

    /// Changes the assembly of every post.
    fn assemblies(&mut self, change: impl Fn(&mut Assembly)) {
        let mut other = assembly();
        change(&mut other);
        let other = Arc::new(other);
        self.both(|slope| slope.posts.iter_mut().for_each(|post| post.assembly = other.clone()));
    }

    /// Moves a rail of the laid-out job to another height.
    fn rail_to(&mut self, number: usize, v: Length) {
        let prefix = format!("field-{number}-");
        let posts = self.laid.slopes[0].posts.iter_mut();
        posts.filter(|post| post.name.starts_with(&prefix)).for_each(|post| post.at.v = v);
    }

    fn codes(&self) -> BTreeSet<String> {
        check(&self.job, &self.laid).into_iter().map(|problem| problem.code.to_string()).collect()
    }
}

/// The problems of the valid layout after a change.
#[track_caller]
fn found(change: impl FnOnce(&mut Valid)) -> Vec<Problem> {
    let mut valid = valid();
    change(&mut valid);
    check(&valid.job, &valid.laid)
}

#[track_caller]
fn accepted(change: impl FnOnce(&mut Valid)) {
    assert_eq!(found(change), []);
}

/// The message of the only problem after a change.
#[track_caller]
fn message(change: impl FnOnce(&mut Valid)) -> String {
    let found = found(change);
    let [problem] = &found[..] else { panic!("{found:#?}") };
    problem.message.clone()
}

#[test]
fn the_layout_by_hand_is_valid() {
    accepted(|_| {});
}

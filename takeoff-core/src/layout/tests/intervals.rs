//! Spans in closed form against looking at place after place.
use std::sync::Arc;

use proptest::prelude::*;

use super::jobs::with_arrays;
use crate::geometry::{Point, grid};
use crate::layout::intervals::feasible_intervals;
use crate::layout::post_cost::PostCostModel;
use crate::model::*;
use crate::roof::Site;
use crate::testing::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Inside a span, and up to the least margin around it, the work is one and the same; between two spans it changes
    /// within the least margin. Along a crooked rafter, too.
    #[test]
    fn spans_hold_the_work_still(
        kind in 0..3usize,
        u in 20.0..400.0f64,
        v in 20.0..160.0f64,
        crooked in -2..3i64,
        looks in prop::collection::vec(0.0..1.0f64, 12),
    ) {
        let mut job = with_arrays(vec![]);
        let battens = Battens { height: len("3/4 in"), width: len("1 1/2 in"), lug: len("1/2 in") };
        job.slopes[0] = [gable(), hip(), Slope { battens: Some(battens), ..gable() }][kind].clone();
        let site = Site::of(&job.slopes[0], &job.practice);
        let assembly = Arc::new(assembly());
        let model = PostCostModel::new(&job, &site, &assembly);
        let margin = grid(job.practice.least_margin);
        let u = grid(inches(u));
        let u_at = |v: i64| u + 2 * (v / 400 * crooked / 2);
        let (low, high) = (grid(inches(v)), grid(inches(v + 20.0)));
        if !site.field.polygon().contains(Point::new(u_at(low), low)) || !site.field.polygon().contains(Point::new(u_at(high), high)) {
            return Ok(());
        }
        let found = feasible_intervals(&model, &u_at, low, high);
        let work = |v: i64| model.work(Point::new(u_at(v), v));
        for span in &found {
            prop_assert!(low <= span.from && span.from <= span.to && span.to <= high);
            let (from, to) = if span.base.narrow == 0 { (span.from - margin, span.to + margin) } else { (span.from, span.to) };
            let own = work(span.from);
            for look in &looks {
                let v = from + 2 * (((to - from) / 2) as f64 * look) as i64;
                prop_assert_eq!(&work(v), &own, "at {} of {:?}", v, span);
            }
        }
        for look in &looks {
            let v = low + 2 * (((high - low) / 2) as f64 * look) as i64;
            let inside = found.iter().any(|span| (span.from..=span.to).contains(&v));
            let own = work(v);
            if !inside && own.is_possible() {
                // Finely enough: work that changes and changes back is changed for more than 1/64 in.
                let step = grid(inches(1.0 / 64.0));
                let around = (-16..=16).map(|i| v + i * step);
                prop_assert!(around.into_iter().any(|v| work(v) != own), "nothing changes round {}", v);
            }
        }
    }
}

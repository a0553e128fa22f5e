//! Feasible intervals in closed form against samples.
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

    /// The work is constant in an interval and up to the least margin around it; between two intervals it changes within
    /// the least margin. Along straight and crooked rafters.
    #[test]
    fn work_is_constant_in_intervals_and_changes_between_them(
        kind in 0..3usize,
        u in 20.0..400.0f64,
        v in 20.0..160.0f64,
        crooked in -2..3i64,
        samples in prop::collection::vec(0.0..1.0f64, 12),
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
        for interval in &found {
            prop_assert!(low <= interval.from && interval.from <= interval.to && interval.to <= high);
            let (from, to) = if interval.base.narrow == 0 { (interval.from - margin, interval.to + margin) } else { (interval.from, interval.to) };
            let own = work(interval.from);
            for sample in &samples {
                let v = from + 2 * (((to - from) / 2) as f64 * sample) as i64;
                prop_assert_eq!(&work(v), &own, "at {} of {:?}", v, interval);
            }
        }
        for sample in &samples {
            let v = low + 2 * (((high - low) / 2) as f64 * sample) as i64;
            let inside = found.iter().any(|interval| (interval.from..=interval.to).contains(&v));
            let own = work(v);
            if !inside && own.meets_tile() {
                // Steps of 1/64 in: a change that is undone further on lasts longer than that.
                let step = grid(inches(1.0 / 64.0));
                let around = (-16..=16).map(|i| v + i * step);
                prop_assert!(around.into_iter().any(|v| work(v) != own), "no change near {}", v);
            }
        }
    }
}

//! How many posts a second are cut out of a field of 1 000 000 tiles, on one thread?
//!
//! Beside it, `benches/python/shapely_cuts.py` does the same with general-purpose geometry.
#![allow(missing_docs, reason = "criterion's macros make functions without docs")]
#![allow(clippy::expect_used, reason = "a benchmark on an unsound job should stop")]
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use takeoff_core::cuts::{each_cut, openings_of, removed};
use takeoff_core::roof::Site;
use takeoff_core::{Files, Job};

fn cuts(c: &mut Criterion) {
    const POSTS: u64 = 50_000;
    let job = Job::read(&tilepost_benches::gable(1000, 1000, POSTS), &Files::new()).expect("a sound job");
    let slope = &job.slopes()[0];
    let site = Site::of(slope, job.practice());
    let openings: Vec<_> =
        openings_of(slope).iter().zip(slope.posts()).map(|(o, post)| o.for_post(post)).collect();
    let mut group = c.benchmark_group("cuts");
    group.throughput(Throughput::Elements(POSTS)).sample_size(10);
    group.bench_function("50 000 posts on 1 000 000 tiles, kinds and areas", |b| {
        b.iter(|| {
            let (mut areas, mut kinds) = (0.0, [0u64; 4]);
            each_cut(&site, &openings, |cut| {
                areas += removed(&cut.judged).area_mm2;
                kinds[cut.judged.kind() as usize] += 1;
            });
            (areas, kinds)
        });
    });
    group.finish();
}

criterion_group!(benches, cuts);
criterion_main!(benches);

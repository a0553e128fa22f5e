//! How long does it take to place the posts of four arrays, and how does it grow with the rafters?
#![allow(missing_docs, reason = "criterion's macros make functions without docs")]
#![allow(clippy::panic, reason = "a benchmark on an unsound job should stop")]
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use takeoff_core::layout;
use takeoff_core::layout::place_posts;
use takeoff_core::{Files, Job};

fn job(arrays: u64, rails: u64, rafters: u64, measured: bool) -> Job {
    let text = tilepost_benches::arrays(arrays, rails, rafters, measured);
    Job::read(&text, &Files::new()).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn search(c: &mut Criterion) {
    let mut group = c.benchmark_group("layout, 4 arrays x 8 rails x 60 rafters");
    group.sample_size(20);
    for (name, measured) in [("evenly spaced", false), ("measured", true)] {
        let job = job(4, 8, 60, measured);
        group.bench_function(BenchmarkId::new("search", name), |b| b.iter(|| place_posts(&job).is_ok()));
        group.bench_function(BenchmarkId::new("with its reasons", name), |b| b.iter(|| layout(&job).is_ok()));
    }
    group.finish();
}

fn growth(c: &mut Criterion) {
    let mut group = c.benchmark_group("layout, an array of 2 rails");
    group.sample_size(20);
    for rafters in [6, 60, 600, 6000] {
        let job = job(1, 2, rafters, false);
        group.throughput(Throughput::Elements(rafters));
        group.bench_with_input(BenchmarkId::from_parameter(rafters), &job, |b, job| {
            b.iter(|| place_posts(job).is_ok())
        });
    }
    group.finish();
}

criterion_group!(benches, search, growth);
criterion_main!(benches);

//! How long does a 200-post roof take, file in to JSON out, and how does it grow?
#![allow(missing_docs, reason = "criterion's macros make functions without docs")]
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use takeoff_core::Files;
use takeoff_core::api::takeoff_json;

fn roof(c: &mut Criterion) {
    let mut group = c.benchmark_group("roof, text to JSON");
    for posts in [20, 200, 2000] {
        // A post to every 40 tiles or so, as on a roof.
        let columns = 10 + 2 * (posts as f64).sqrt() as u64 * 3;
        let job = tilepost_benches::gable(columns, columns, posts);
        assert!(takeoff_json(&job, &Files::new()).starts_with("{\n  \"ok\": true"));
        group.throughput(Throughput::Elements(posts));
        group.bench_with_input(BenchmarkId::from_parameter(posts), &job, |b, job| {
            b.iter(|| takeoff_json(job, &Files::new()).len());
        });
    }
    group.finish();
}

criterion_group!(benches, roof);
criterion_main!(benches);

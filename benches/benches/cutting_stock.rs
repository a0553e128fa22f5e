//! Time for a cutting plan of 2 000 patches, and its length compared with shelves.
#![allow(missing_docs, reason = "criterion's macros make functions without docs")]
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use takeoff_core::cutting_stock::{Piece, RollStock, plan};
use takeoff_core::units::Length;

fn inches(n: i64) -> Length {
    Length::from_nm(n * Length::INCH.nm())
}

/// 2 000 pieces of `sizes` sizes, 16 to 30 in along the roll and 8 to 36 in across it, by a fixed rule.
fn pieces(sizes: i64) -> Vec<Piece> {
    let size = |k: i64| (16 + 7 * k % 15, 8 + 11 * k % 29);
    (0..2000)
        .map(|i| {
            let (along, across) = size(i % sizes);
            Piece { name: format!("P{i}"), along: inches(along), across: inches(across), turnable: false }
        })
        .collect()
}

/// Total length of first-fit decreasing shelves, each as long as its longest piece: the textbook heuristic.
fn shelves(pieces: &[Piece], stock: &RollStock) -> i64 {
    let mut sizes: Vec<(i64, i64)> =
        pieces.iter().map(|piece| (piece.along.nm(), piece.across.nm())).collect();
    sizes.sort_unstable_by(|a, b| b.cmp(a));
    let mut shelves: Vec<(i64, i64)> = Vec::new();
    for (along, across) in sizes {
        match shelves.iter_mut().find(|(_, left)| *left >= across) {
            Some((_, left)) => *left -= across,
            None => shelves.push((along, stock.width.nm() - across)),
        }
    }
    shelves.iter().map(|(along, _)| along).sum()
}

fn cutting_stock(c: &mut Criterion) {
    let stock = RollStock { width: inches(36), roll_length: Some(inches(72 * 12)) };
    let mut group = c.benchmark_group("cutting stock, 2000 pieces");
    group.sample_size(10);
    for sizes in [10, 100] {
        let pieces = pieces(sizes);
        let Ok(best) = plan(&pieces, &stock) else { continue };
        let used = best.length_used.nm() as f64;
        println!(
            "{sizes} sizes: used {:.4} of the bound; shelves {:.4}",
            used / best.length_bound.nm() as f64,
            shelves(&pieces, &stock) as f64 / best.length_bound.nm() as f64
        );
        group.bench_with_input(BenchmarkId::new("plan", sizes), &pieces, |b, pieces| {
            b.iter(|| plan(pieces, &stock).map(|plan| plan.rolls.len()));
        });
        group.bench_with_input(BenchmarkId::new("shelves", sizes), &pieces, |b, pieces| {
            b.iter(|| shelves(pieces, &stock));
        });
    }
    group.finish();
}

criterion_group!(benches, cutting_stock);
criterion_main!(benches);

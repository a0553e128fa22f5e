//! A length that no plan can be shorter than, proven in whole numbers.
use std::collections::BTreeMap;

use super::columns::{Master, PRICE_UNIT};
use super::groups::Groups;
use super::guillotine::Board;
use super::kinds::{Counts, Kind, Way};
use super::sums::{Rounding, Sums};

/// A lower bound on the length that any plan uses, guillotine or not.
///
/// # Proof
///
/// Give each way to cut a piece a value `v ≥ 0` and let `V` be the most value of pieces whose widths together are
/// within the sheet's. A line across the roll meets pieces worth at most `V`, and a piece cut that way is met over its
/// length `l`. So all lines together see at least `Σ min(l·v)` and at most `length × V`:
///
/// ```text
/// length ≥ Σ min(l·v) / V
/// ```
///
/// for any values: `V` is found exactly by the knapsack, in whole numbers, so nothing rests on floating point. Good
/// values are the dual prices of a linear program over the sets of pieces one line can meet (the bar relaxation of
/// strip packing; Scheithauer 1999). The widths themselves are
/// tried too, which is the bound by area.
/// Pushed together toward the start of the roll, pieces end at sums of their lengths; so the bound goes up to the next
/// such sum.
///
/// # Example
///
/// Three pieces 10 long and 18 wide from a sheet 36 wide: `v = 1`, `V = 2`, length ≥ 30/2 = 15; the next sum is 20.
pub(super) fn length_bound(kinds: &[Kind], counts: &Counts, width: i64) -> i64 {
    let lines: Vec<Kind> = kinds.iter().map(line).collect();
    let values = [widths(&lines), prices(kinds, &lines, counts, width)];
    let bounds = values.into_iter().map(|values| across_lines(kinds, &lines, counts, width, &values));
    let longest = kinds.iter().map(shortest);
    let bound = bounds.chain(longest).max().unwrap_or(0);
    Sums::of(&lengths(kinds, counts), bound).and_then(|sums| sums.at_least(bound)).unwrap_or(bound)
}

/// A lower bound on the rolls of this length that a plan takes.
///
/// What is used of a roll is a sum of lengths too, so of 60 in with pieces of 18 in no more than 54 in.
pub(super) fn rolls_bound(kinds: &[Kind], counts: &Counts, length: i64, roll: i64) -> u64 {
    let usable = Sums::of(&lengths(kinds, counts), roll).map_or(roll, |sums| sums.at_most(roll));
    u64::try_from((length + usable - 1) / usable.max(1)).unwrap_or(0)
}

/// How many of each length there may be.
fn lengths(kinds: &[Kind], counts: &Counts) -> BTreeMap<i64, u64> {
    let mut lengths = BTreeMap::new();
    for (kind, &count) in kinds.iter().zip(counts) {
        kind.ways.iter().for_each(|way| *lengths.entry(way.length).or_insert(0) += count);
    }
    lengths.retain(|_, &mut count| count > 0);
    lengths
}

fn shortest(kind: &Kind) -> i64 {
    kind.ways.iter().map(|way| way.length).min().unwrap_or(0)
}

/// The bound from what a line across the roll can meet, at these values of the ways of each kind.
fn across_lines(kinds: &[Kind], lines: &[Kind], counts: &Counts, width: i64, values: &[Vec<i64>]) -> i64 {
    let board = Board::new(lines, 1, width, 1, Rounding::Down);
    // What would round to nothing on the board is worth nothing.
    let value = |kind: usize, way: usize| {
        if board.overstates(&lines[kind].ways[way]) { 0 } else { values[kind][way] }
    };
    let mut prices = Vec::new();
    for (kind, way) in board.ways() {
        let at = lines[*kind].ways.iter().position(|other| other == way);
        prices.push(at.map_or(0, |at| value(*kind, at)));
    }
    let most = i128::from(board.values(prices).top()).max(1);
    let seen = |(kind, &count): (usize, &u64)| {
        let ways = kinds[kind].ways.iter().enumerate();
        let least = ways.map(|(at, way)| i128::from(way.length) * i128::from(value(kind, at))).min();
        least.unwrap_or(0) * i128::from(count)
    };
    let seen: i128 = counts.iter().enumerate().map(seen).sum();
    i64::try_from((seen + most - 1) / most).unwrap_or(i64::MAX)
}

/// A kind as a line across the roll meets it: only the width counts.
fn line(kind: &Kind) -> Kind {
    Kind { ways: kind.ways.iter().map(|way| Way { length: 1, ..*way }).collect() }
}

/// The widths as values: the bound by area, and a little more where widths do not add up to the sheet's.
fn widths(lines: &[Kind]) -> Vec<Vec<i64>> {
    lines.iter().map(|line| line.ways.iter().map(|way| way.width).collect()).collect()
}

/// The dual prices as values.
fn prices(kinds: &[Kind], lines: &[Kind], counts: &Counts, width: i64) -> Vec<Vec<i64>> {
    let groups = Groups::of(lines, counts);
    let grouped = groups.kinds(lines, i64::min);
    let unit = kinds.iter().flat_map(|kind| &kind.ways).map(|way| way.length).max().unwrap_or(1) as f64;
    // A piece that can't be turned is priced by its length; one that can as a whole, and turned its length is
    // the width that it has the other way.
    let worth = |ways: &[Way], way: &Way| match ways {
        [a, b] => unit / (a.width + b.width - way.width) as f64,
        _ => 1.0,
    };
    let demand = |kind: usize| match kinds[kind].ways.as_slice() {
        [way] => counts[kind] as f64 * way.length as f64 / unit,
        _ => counts[kind] as f64,
    };
    let demands: Vec<f64> =
        groups.members.iter().map(|members| members.iter().map(|&kind| demand(kind)).sum()).collect();
    let board = Board::new(&grouped, 1, width, 1, Rounding::Down);
    let prices =
        Master::new(&board, 1.0, |group, way| worth(&grouped[group].ways, way)).solve(&demands).prices;
    let mut values = vec![Vec::new(); lines.len()];
    for ((members, price), Kind { ways }) in groups.members.iter().zip(prices).zip(&grouped) {
        let of_way = |way: &Way| (price * worth(ways, way) * PRICE_UNIT).round().max(0.0) as i64;
        let of_kind: Vec<i64> = ways.iter().map(of_way).collect();
        members.iter().for_each(|&member| values[member] = of_kind.clone());
    }
    values
}

//! Lower bounds on the length and on the number of rolls, proven in integers.
pub(super) mod subset_sums;

use std::collections::BTreeMap;

use super::column_generation::cut_positions::Rounding;
use super::column_generation::grouping::Groups;
use super::column_generation::knapsack::Knapsack;
use super::column_generation::master::{Master, PRICE_SCALE};
use super::item_types::{ItemType, Orientation};
use subset_sums::SubsetSums;

/// Values of each orientation of each item type.
type OrientationValues = Vec<Vec<i64>>;

/// A lower bound on the length that any plan uses, guillotine or not.
///
/// # Proof
///
/// Give each orientation of a piece a value `v ≥ 0`. Let `V` be the greatest total value of pieces whose widths
/// together fit across the roll. A line across the roll meets pieces of total value `V` at most, and it meets a piece of
/// length `l` over a distance `l`. Summed over all lines along the used length:
///
/// ```text
/// Σ min(l·v) ≤ length × V,   so   length ≥ Σ min(l·v) / V
/// ```
///
/// with the least `l·v` among a piece's orientations. This holds for any values: `V` comes exactly, in integers, from
/// the knapsack, so nothing depends on floating point. Good values are the dual prices of the linear program over the
/// sets of pieces that one line can meet (bar relaxation of strip packing; Scheithauer 1999). The widths as values give
/// area ÷ width or more, unless the knapsack rounds, which it does on a roll much wider than its pieces. So the bound by
/// [area](area_bound) is taken on its own as well.
///
/// No plan is shorter than its longest piece. Pieces pushed toward the start of the roll end at sums of their lengths,
/// so the bound rises to the next such sum.
///
/// # Example
///
/// Three pieces 10 long and 18 wide from a roll 36 wide: `v = 1`, `V = 2`, length ≥ 30/2 = 15. The next sum is 20.
pub(super) fn length_bound(items: &[ItemType], demand: &[u64], width: i64) -> i64 {
    let bars: Vec<ItemType> = items.iter().map(bar).collect();
    let values = [width_values(&bars), dual_values(items, &bars, demand, width)];
    let bounds = values.into_iter().map(|values| line_bound(items, &bars, demand, width, &values));
    let lengths = items.iter().map(least_length);
    let bound = bounds.chain(lengths).chain([area_bound(items, demand, width)]).max().unwrap_or(0);
    let sums = SubsetSums::new(&length_counts(items, demand), bound);
    sums.and_then(|sums| sums.at_least(bound)).unwrap_or(bound)
}

/// A lower bound on the number of rolls, from a lower bound on the total length.
///
/// The length used of a roll is a sum of pieces' lengths too: of a roll of 60 in, pieces of 18 in use 54 in at most.
pub(super) fn rolls_bound(items: &[ItemType], demand: &[u64], length_bound: i64, roll: i64) -> u64 {
    let usable = SubsetSums::new(&length_counts(items, demand), roll).map_or(roll, |sums| sums.at_most(roll));
    u64::try_from((length_bound + usable - 1) / usable.max(1)).unwrap_or(0)
}

/// The lengths that pieces can have in some orientation, and how many pieces each.
fn length_counts(items: &[ItemType], demand: &[u64]) -> BTreeMap<i64, u64> {
    let mut counts = BTreeMap::new();
    for (item, &count) in items.iter().zip(demand) {
        item.orientations.iter().for_each(|of| *counts.entry(of.length).or_insert(0) += count);
    }
    counts.retain(|_, &mut count| count > 0);
    counts
}

/// Total area of the pieces ÷ width of the roll, rounded up.
///
/// # Proof
///
/// Sections are cut across the whole roll, so a plan uses an area of its length × the roll's width. Pieces lie within
/// that area and do not overlap, and each has the same area in every orientation. Hence length × width is not less than
/// the total area, and as the length is an integer, it is not less than the quotient rounded up. Laps between sheets are
/// part of the pieces' sizes, and division into rolls takes no area away, so neither changes the bound.
fn area_bound(items: &[ItemType], demand: &[u64], width: i64) -> i64 {
    let item_area = |item: &ItemType| item.orientations.first().map_or(0, Orientation::area);
    let area: i128 = items.iter().zip(demand).map(|(item, &count)| item_area(item) * i128::from(count)).sum();
    let width = i128::from(width.max(1));
    i64::try_from((area + width - 1) / width).unwrap_or(i64::MAX)
}

fn least_length(item: &ItemType) -> i64 {
    item.orientations.iter().map(|of| of.length).min().unwrap_or(0)
}

/// The bound from lines across the roll, at these values.
fn line_bound(
    items: &[ItemType],
    bars: &[ItemType],
    demand: &[u64],
    width: i64,
    values: &OrientationValues,
) -> i64 {
    let knapsack = Knapsack::new(bars, 1, width, 1, Rounding::Down);
    // The knapsack may round widths down, which raises `V` and keeps the bound valid. A width that would round to
    // nothing it rounds up; such an orientation has no value.
    let value = |item: usize, index: usize| {
        if knapsack.overstates(&bars[item].orientations[index]) { 0 } else { values[item][index] }
    };
    let price = |&(item, orientation): &(usize, Orientation)| {
        let index = bars[item].orientations.iter().position(|other| *other == orientation);
        index.map_or(0, |index| value(item, index))
    };
    let prices = knapsack.orientations().iter().map(price).collect();
    let greatest = i128::from(knapsack.solve(prices).total()).max(1);
    let total: i128 = items
        .iter()
        .zip(demand)
        .enumerate()
        .map(|(item, (of, &count))| {
            let orientations = of.orientations.iter().enumerate();
            let least =
                orientations.map(|(index, of)| i128::from(of.length) * i128::from(value(item, index))).min();
            least.unwrap_or(0) * i128::from(count)
        })
        .sum();
    i64::try_from((total + greatest - 1) / greatest).unwrap_or(i64::MAX)
}

/// An item type as a line across the roll meets it: only the width counts.
fn bar(item: &ItemType) -> ItemType {
    ItemType { orientations: item.orientations.iter().map(|of| Orientation { length: 1, ..*of }).collect() }
}

/// The widths as values.
fn width_values(bars: &[ItemType]) -> OrientationValues {
    bars.iter().map(|bar| bar.orientations.iter().map(|of| of.width).collect()).collect()
}

/// The dual prices as values.
fn dual_values(items: &[ItemType], bars: &[ItemType], demand: &[u64], width: i64) -> OrientationValues {
    let groups = Groups::new(bars, demand);
    let group_bars = groups.item_types(bars, i64::min);
    let unit = items.iter().flat_map(|item| &item.orientations).map(|of| of.length).max().unwrap_or(1) as f64;
    // A row of a fixed piece demands its length. A row of a turnable piece demands one piece, and a line covers
    // 1 ÷ length of it. A bar has no length, but one side is the other orientation's width: the sum of both widths less
    // its own.
    let coverage = |orientations: &[Orientation], of: &Orientation| match orientations {
        [a, b] => unit / (a.width + b.width - of.width) as f64,
        _ => 1.0,
    };
    let row_demand = |item: usize| match items[item].orientations.as_slice() {
        [of] => demand[item] as f64 * of.length as f64 / unit,
        _ => demand[item] as f64,
    };
    let demands: Vec<f64> =
        groups.members.iter().map(|members| members.iter().map(|&item| row_demand(item)).sum()).collect();
    let knapsack = Knapsack::new(&group_bars, 1, width, 1, Rounding::Down);
    let prices = Master::new(&knapsack, 1.0, |group, of| coverage(&group_bars[group].orientations, of))
        .solve(&demands)
        .prices;
    let mut values = vec![Vec::new(); bars.len()];
    for ((members, price), group) in groups.members.iter().zip(prices).zip(&group_bars) {
        let value = |of: &Orientation| {
            (price * coverage(&group.orientations, of) * PRICE_SCALE).round().max(0.0) as i64
        };
        let group_values: Vec<i64> = group.orientations.iter().map(value).collect();
        members.iter().for_each(|&member| values[member] = group_values.clone());
    }
    values
}

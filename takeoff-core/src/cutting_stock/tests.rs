//! Cutting plans against published optima, against all plans of few pieces, and against the checker.
use proptest::prelude::*;

use super::column_generation::cut_positions::Rounding;
use super::column_generation::knapsack::Knapsack;
use super::item_types::{ItemType, Orientation, demand, item_types};
use super::lower_bound::length_bound;
use super::lower_bound::subset_sums::SubsetSums;
use super::pattern::total_length;
use super::search::exact::{optimal_sections, split_count};
use super::search::shortest_sections;
use super::*;
use crate::units::Length;

/// Pieces by size and count: along × across, number.
fn pieces(sizes: &[(i64, i64, u64)], turnable: bool) -> Vec<Piece> {
    let piece = |along, across| Piece {
        name: format!("{along} × {across}"),
        along: Length::from_nm(along),
        across: Length::from_nm(across),
        turnable,
    };
    sizes.iter().flat_map(|&(along, across, count)| (0..count).map(move |_| piece(along, across))).collect()
}

fn stock(width: i64, roll: Option<i64>) -> RollStock {
    RollStock { width: Length::from_nm(width), roll_length: roll.map(Length::from_nm) }
}

/// The plan, after the checker has accepted it. Its bound is never below area ÷ width.
fn planned(pieces: &[Piece], stock: &RollStock) -> Plan {
    let plan = plan(pieces, stock).unwrap();
    assert_eq!(check(pieces, stock, &plan), Ok(()));
    let area = |piece: &Piece| i128::from(piece.along.nm()) * i128::from(piece.across.nm());
    let area: i128 = pieces.iter().map(area).sum();
    assert!(
        area <= i128::from(plan.length_bound.nm()) * i128::from(stock.width.nm()),
        "the bound is below area ÷ width"
    );
    plan
}

/// Length used and bound of one-dimensional cutting stock: every piece is 1 long, so each section is one bar.
fn bars(width: i64, items: &[(i64, u64)]) -> (i64, i64) {
    let sizes: Vec<(i64, i64, u64)> = items.iter().map(|&(across, count)| (1, across, count)).collect();
    let plan = planned(&pieces(&sizes, false), &stock(width, None));
    (plan.length_used.nm(), plan.length_bound.nm())
}

/// Gilmore and Gomory, Operations Research 9 (1961) and 11 (1963), as kept in a public model library: optimum 453,
/// linear program 452.25.
#[test]
fn paper_rolls_of_gilmore_and_gomory() {
    assert_eq!(bars(100, &[(45, 97), (36, 610), (31, 395), (14, 211)]), (453, 453));
}

/// A textbook set, from memory: optimum 47 where the linear program rounded up gives 50.
#[test]
fn a_textbook_set() {
    assert_eq!(bars(110, &[(20, 48), (45, 35), (50, 24), (55, 10), (75, 8)]), (47, 47));
}

/// The cutting-stock example of a solver's documentation (demands from memory): from 177.67 down to 160.95, so 161
/// rolls. Widths are doubled.
#[test]
fn a_solvers_example() {
    assert_eq!(bars(188, &[(34, 150), (42, 96), (45, 48), (48, 108), (59, 227)]), (161, 161));
}

/// The example of the encyclopaedia's article on the cutting stock problem: 73 rolls at 0.401 % waste.
#[test]
fn an_encyclopaedias_example() {
    let items = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (1880, 18),
        (1930, 20),
        (2000, 10),
        (2050, 12),
        (2100, 14),
        (2140, 16),
        (2150, 18),
        (2200, 20),
    ];
    assert_eq!(bars(5600, &items), (73, 73));
}

/// 84 pieces of each of 36 widths, 706 to a bar at least: 5 bars. The area is 4.23 bars. The cut positions are coarser than
/// the differences between these widths, and a knapsack that counts each piece half as wide proves only 3 bars.
#[test]
fn small_pieces_on_a_wide_roll_are_bounded_by_their_area() {
    let items: Vec<(i64, u64)> = (1380..1416).map(|width| (width, 84)).collect();
    assert_eq!(bars(1_000_000, &items), (5, 5));
}

/// The greatest value of a plate by the guillotine knapsack that prices sections; each piece with its value.
fn knapsack(plate: [i64; 2], valued: &[(i64, i64, i64)], turned: bool) -> i64 {
    let item = |&(length, width, _): &(i64, i64, i64)| {
        let straight = Orientation { length, width, turned: false };
        let orientations = [straight, Orientation { length: width, width: length, turned: true }];
        ItemType { orientations: orientations[..if turned { 2 } else { 1 }].to_vec() }
    };
    let items: Vec<ItemType> = valued.iter().map(item).collect();
    let knapsack = Knapsack::new(&items, plate[0], plate[1], 250, Rounding::Up);
    let prices = knapsack.orientations().iter().map(|&(item, _)| valued[item].2).collect();
    let solution = knapsack.solve(prices);
    let mut cut = vec![0; items.len()];
    let pattern = solution.pattern(solution.by_length().count()).unwrap();
    pattern.count_items(&mut cut);
    let (length, width) = pattern.size();
    assert!(length <= plate[0] && width <= plate[1], "{pattern:?} is not within the plate");
    let value: i64 = cut.iter().zip(valued).map(|(&count, item)| count as i64 * item.2).sum();
    assert_eq!(value, solution.total(), "{pattern:?}");
    value
}

/// `cgcut1` of the OR-Library (Christofides and Whitlock, Operations Research 25, 1977), each piece any
/// number of times: 249, and 278 with turned pieces.
#[test]
fn cgcut1_of_the_or_library() {
    let items = [(8, 4, 66), (3, 7, 35), (8, 2, 24), (3, 4, 17), (3, 3, 11), (3, 2, 8), (2, 1, 2)];
    assert_eq!(knapsack([15, 10], &items, false), 249);
    assert_eq!(knapsack([15, 10], &items, true), 278);
}

/// `gcut1` of the OR-Library (Beasley, Journal of the Operational Research Society 36, 1985), value is area: 56 460,
/// and 58 136 with turned pieces.
#[test]
fn gcut1_of_the_or_library() {
    let sizes = [
        (167, 184),
        (114, 118),
        (167, 152),
        (83, 140),
        (70, 86),
        (143, 166),
        (120, 160),
        (66, 148),
        (87, 141),
        (69, 165),
    ];
    let items = sizes.map(|(length, width)| (length, width, length * width));
    assert_eq!(knapsack([250, 250], &items, false), 56_460);
    assert_eq!(knapsack([250, 250], &items, true), 58_136);
}

/// 100 × 100 with pieces 10 × 10 of value 7: a hundred of them.
#[test]
fn a_chequered_plate() {
    assert_eq!(knapsack([100, 100], &[(10, 10, 7)], false), 700);
}

#[test]
fn subset_sums_are_found_from_both_sides() {
    let sums = SubsetSums::new(&[(10, 3), (14, 1)].into(), 60).unwrap();
    assert_eq!([0, 1, 11, 31, 35, 44].map(|least| sums.at_least(least)), [0, 10, 14, 34, 44, 44].map(Some));
    assert_eq!(sums.at_least(45), None);
    assert_eq!([0, 9, 13, 33, 60].map(|most| sums.at_most(most)), [0, 0, 10, 30, 44]);
}

/// Four pieces of 18 in, three of which fit on a roll of 60 in: two rolls. The length alone would need 1.2.
#[test]
fn a_roll_keeps_an_end_that_is_too_short() {
    let four = planned(&pieces(&[(18, 36, 4)], false), &stock(36, Some(60)));
    assert_eq!((four.rolls.len(), four.rolls_bound), (2, 2));
    let used: Vec<usize> = four.rolls.iter().map(|roll| roll.sections.len()).collect();
    assert_eq!(used, [3, 1]);
}

#[test]
fn nothing_to_cut_takes_no_roll() {
    let none = planned(&[], &stock(36, None));
    assert_eq!((none.rolls.len(), none.rolls_bound, none.length_used), (0, 0, Length::ZERO));
}

#[test]
fn oversized_pieces_are_listed() {
    let three = pieces(&[(10, 36, 1), (10, 37, 1), (61, 36, 1)], false);
    assert_eq!(plan(&three, &stock(36, Some(60))), Err(OversizedPieces(vec![1, 2])));
    // 10 × 37 turned is 37 long and 10 wide; 61 × 36 is too long in one orientation and too wide in the other.
    let turnable = pieces(&[(10, 36, 1), (10, 37, 1), (61, 36, 1)], true);
    assert_eq!(plan(&turnable, &stock(36, Some(60))), Err(OversizedPieces(vec![2])));
    assert!(plan(&pieces(&[(0, 10, 1)], false), &stock(36, None)).is_err());
}

/// Two pieces of 24 × 22 in from a roll 36 in wide: 48 in, or 44 in turned.
#[test]
fn only_turnable_pieces_are_turned() {
    let used = |turnable| planned(&pieces(&[(24, 22, 2)], turnable), &stock(36, None)).length_used.nm();
    assert_eq!((used(false), used(true)), (48, 44));
}

#[test]
fn the_checker_rejects_spoiled_plans() {
    let pieces = pieces(&[(10, 18, 2), (12, 20, 1)], false);
    let stock = stock(36, Some(60));
    let valid = planned(&pieces, &stock);
    let spoil = |spoil: &dyn Fn(&mut Plan)| {
        let mut plan = valid.clone();
        spoil(&mut plan);
        check(&pieces, &stock, &plan)
    };
    let nm = Length::from_nm;
    assert_eq!(spoil(&|_| ()), Ok(()));
    assert!(spoil(&|plan| plan.rolls[0].sections[0].pieces[0].rectangle.edge = nm(1)).is_err());
    assert!(spoil(&|plan| plan.rolls[0].sections[0].pieces[0].rectangle.width = nm(17)).is_err());
    assert!(spoil(&|plan| plan.rolls[0].sections[0].pieces[0].turned = true).is_err());
    assert!(spoil(&|plan| plan.rolls[0].sections[0].pieces[0].piece = 1).is_err());
    assert!(spoil(&|plan| plan.rolls[0].sections[0].offcuts.clear()).is_err());
    assert!(spoil(&|plan| plan.rolls[0].sections[1].start = nm(11)).is_err());
    assert!(spoil(&|plan| plan.length_used = nm(21)).is_err());
    assert!(spoil(&|plan| plan.length_bound = nm(23)).is_err());
    assert!(spoil(&|plan| drop(plan.rolls[0].sections.pop())).is_err());
}

/// Four rectangles around a square: no cut runs from edge to edge.
#[test]
fn the_checker_rejects_a_pinwheel() {
    let pieces = pieces(&[(2, 1, 2), (1, 2, 2), (1, 1, 1)], false);
    let places = [(0, 0, 2, 1, 0), (1, 2, 2, 1, 1), (2, 0, 1, 2, 2), (0, 1, 1, 2, 3), (1, 1, 1, 1, 4)];
    let placed = |(start, edge, length, width, piece)| {
        let [start, edge, length, width] = [start, edge, length, width].map(Length::from_nm);
        PlacedPiece { piece, rectangle: Rectangle { start, edge, length, width }, turned: false }
    };
    let three = Length::from_nm(3);
    let placed = places.map(placed).to_vec();
    let section = Section { start: Length::ZERO, length: three, pieces: placed, offcuts: Vec::new() };
    let rolls = vec![Roll { sections: vec![section] }];
    let pinwheel = Plan { rolls, length_used: three, length_bound: three, rolls_bound: 1 };
    let rejected = check(&pieces, &stock(3, None), &pinwheel);
    assert!(rejected.unwrap_err().contains("do not separate"));
}

/// Pieces of up to `most` sizes, for a roll 36 wide.
fn some_pieces(most: usize) -> impl Strategy<Value = Vec<Piece>> {
    let sizes = prop::collection::vec((1..40_i64, 1..=36_i64, 1..5_u64), 1..most);
    (sizes, any::<bool>()).prop_map(|(sizes, turnable)| pieces(&sizes, turnable))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_plan_can_be_cut(pieces in some_pieces(24), roll in prop::option::of(40..200_i64)) {
        planned(&pieces, &stock(36, roll));
    }

    #[test]
    fn the_order_of_pieces_changes_no_length(pieces in some_pieces(12), seed in any::<u64>()) {
        let stock = stock(36, Some(60));
        let one = planned(&pieces, &stock);
        prop_assert_eq!(&one, &planned(&pieces, &stock), "the same pieces give another plan");
        let mut other = pieces.clone();
        for at in (1..other.len()).rev() {
            other.swap(at, (seed.rotate_left(at as u32) % (at as u64 + 1)) as usize);
        }
        let other = planned(&other, &stock);
        prop_assert_eq!((one.length_used, one.length_bound), (other.length_used, other.length_bound));
        prop_assert_eq!((one.rolls.len(), one.rolls_bound), (other.rolls.len(), other.rolls_bound));
    }

    /// Sizes without a common unit are rounded to cut positions; bound and plan stay valid.
    #[test]
    fn sizes_without_a_common_unit(
        sizes in prop::collection::vec((100_000..2_000_000_i64, 1..=3_600_000_i64, 1..3_u64), 1..12),
        turnable: bool,
    ) {
        planned(&pieces(&sizes, turnable), &stock(3_600_000, Some(9_000_000)));
    }

    /// The method for many pieces, on few enough that an exhaustive search gives the optimum.
    #[test]
    fn bound_and_plan_are_on_both_sides_of_the_optimum(pieces in some_pieces(4), roll in prop::option::of(40..80_i64)) {
        let stock = stock(36, roll);
        let (items, members) = item_types(&pieces, &stock);
        let demand = demand(&members);
        prop_assume!(split_count(&demand) < 2_000);
        let max_length = roll.unwrap_or(i64::MAX);
        let optimum = total_length(&optimal_sections(&items, &demand, 36, max_length));
        let bound = length_bound(&items, &demand, 36);
        let used = total_length(&shortest_sections(&items, &demand, 36, max_length, 0));
        prop_assert!(bound <= optimum && optimum <= used, "{bound} ≤ {optimum} ≤ {used}");
    }
}

//! Costs, redone on paper.
use std::collections::BTreeSet;
use std::sync::Arc;

use proptest::prelude::*;
use rust_decimal::Decimal;

use super::super::*;
use crate::model::{Action, Labour, Minutes, PriceList, PriceRow, Terms, *};
use crate::probability::Rate;
use crate::takeoff::takeoff;
use crate::testing::{assembly, gable_with, inches, job, len};
use crate::units::{Currency, Measure, Money};

/// A price list in one currency: item, unit, pack, price.
fn prices(rows: &[(&str, &str, &str, &str)]) -> PriceList {
    let decimal = |text: &str| text.parse::<Decimal>().unwrap();
    let row = |(line, &(item, unit, pack, price)): (usize, &(&str, &str, &str, &str))| {
        let Measure { unit, size } = Measure::of(unit).unwrap();
        PriceRow {
            item: item.to_owned(),
            unit,
            size: size * decimal(pack),
            shown: pack.to_owned(),
            price: Money::new(decimal(price)),
            minimum_order: 1,
            vendor_part: None,
            line: line as u64 + 2,
        }
    };
    let rows = rows.iter().enumerate().map(row).collect();
    PriceList { file: "prices.csv".into(), currency: Currency::new("USD").unwrap(), rows }
}

pub(super) fn labour(rate: &str, minutes: &[(Action, i64)]) -> Terms {
    let minutes = minutes.iter().map(|&(action, minutes)| (action, minutes.into())).collect();
    let labour = Labour { rate_per_hour: Money::new(rate.parse().unwrap()), minutes: Minutes(minutes) };
    Terms {
        currency: Currency::new("USD").unwrap(),
        labour: Some(labour),
        tax: Decimal::ZERO,
        contingency: Decimal::ZERO,
        markup: Decimal::ZERO,
    }
}

/// The gable with posts of the test assembly at `u`, `v` in inches, and with prices for all their items.
pub(super) fn priced(posts: &[(f64, f64)]) -> Job {
    let item = |item: &str, count| Item { item: item.to_owned(), count };
    let assembly = Assembly {
        items: vec![item("lag", 2), item("screw", 1)],
        blocking_items: vec![item("screw", 4)],
        beads: vec![Bead { place: BeadPlace::DeckFlange, diameter: inches(0.375) }],
        ..assembly()
    };
    Job {
        prices: Some(prices(&[
            ("lag", "each", "1", "1.50"),
            ("screw", "each", "50", "10.00"),
            ("screw", "each", "100", "16.00"),
            ("felt-30, patches", "sq ft", "200", "80.00"),
            ("staple", "each", "100", "2.00"),
            ("blocking board", "ft", "8", "12.00"),
            ("spare tile flat", "each", "1", "5.00"),
            ("fastener for flat", "each", "100", "4.00"),
        ])),
        bid: Some(labour(
            "60.00",
            &[(Action::Set, 20), (Action::Patch, 10), (Action::Lift, 3), (Action::Block, 15)],
        )),
        ..job(vec![gable_with(assembly, posts)])
    }
}

fn together(job: &Job) -> Cost {
    cost(job, &takeoff(job).unwrap()).unwrap()
}

#[track_caller]
fn assert_near(a: f64, b: f64) {
    assert!((a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0), "{a} and {b}");
}

/// The patch is 18 in wide and reaches from 39 to 72 in: 4.125 square feet, 102 in around. The opening cuts a hole
/// and a notch; the work zone, 22 × 41 in, removes ten more tiles and loosens nine.
#[test]
fn one_post() {
    let job = priced(&[(56.0, 39.0)]);
    let taken = takeoff(&job).unwrap();
    let handled = taken.spares[0].handled;
    assert_eq!((handled.cut, handled.removed, handled.loosened), (2, 10, 9));

    let cost = cost(&job, &taken).unwrap();
    assert_near(cost.hardware, 2.0 * 1.50 + 0.16 + 12.0 * 0.04); // screws are cheapest by the hundred
    assert_near(cost.labour, 20.0 + 10.0 + 12.0 * 3.0); // at a dollar a minute
    assert_near(cost.patches, 4.125 * 0.40 + 26.0 * 0.02);
    assert_eq!(cost.blocking, 0.0);
    assert_near(cost.breakage, 5.0 * (2.0 * 0.06 / 0.94 + 10.0 * 0.02 + 9.0 * 0.01));
    assert_near(cost.total(), 3.64 + 66.0 + 2.17 + 2.088_297_872_340);
    // Sealant has no price: the list names the pack in which it would be bought.
    assert_eq!(cost.unpriced, BTreeSet::from(["sealant cartridge".to_owned()]));

    let additive = additive(&job).unwrap();
    assert_near(additive.patches, 4.125 * 0.40 + 25.5 * 0.02);
    assert_eq!(Cost { patches: cost.patches, ..additive }, cost);
}

/// Six inches off its rafter the post takes a board of 22 1/2 in at 1.50 a foot, and four screws.
#[test]
fn a_blocking_board_with_its_screws() {
    let job = priced(&[(50.0, 31.0)]);
    let taken = takeoff(&job).unwrap();
    let cost = cost(&job, &taken).unwrap();
    assert_near(cost.blocking, 1.875 * 1.50 + 4.0 * 0.16);
    // The fifth screw belongs to the post.
    assert_near(cost.hardware, 2.0 * 1.50 + 0.16 + taken.counts.removed as f64 * 0.04);
}

/// A bead of 3/8 in, 29 in long, is 52 486.98 mm³; with a tenth of waste 0.1933 of a cartridge of 298 690 mm³.
#[test]
fn an_item_in_two_lines_is_paid_once() {
    let priced_also = |rows: &[(&str, &str, &str, &str)]| {
        let mut job = priced(&[(56.0, 39.0)]);
        let bare = together(&job).hardware;
        job.prices.as_mut().unwrap().rows.extend(prices(rows).rows);
        together(&job).hardware - bare
    };
    let bead = std::f64::consts::PI * 9.525 * 9.525 / 4.0 * 29.0 * 25.4;
    let (volume, cartridge) = (("sealant", "ml", "100", "8.00"), ("sealant cartridge", "each", "1", "7.50"));
    assert_near(priced_also(&[volume]), bead * 1.1 / 1000.0 * 0.08);
    assert_near(priced_also(&[cartridge]), bead * 1.1 / 298_690.0 * 7.50);
    assert_near(priced_also(&[volume, cartridge]), bead * 1.1 / 298_690.0 * 7.50);
}

/// A roll of 3 × 72 ft at 64.80 is 0.30 a square foot; with a tenth of waste 0.33.
#[test]
fn felt_from_rolls_is_priced_by_area() {
    let mut job = priced(&[(56.0, 39.0)]);
    let sheet = Underlayment { roll_length: Some(len("72 ft")), ..(*job.slopes[0].underlayment).clone() };
    job.slopes[0].underlayment = Arc::new(sheet);
    job.practice.waste.insert("felt-30, patches".into(), 0.1);
    assert_near(together(&job).patches, 4.125 * 0.44 + 26.0 * 0.02);
    job.prices.as_mut().unwrap().rows.extend(prices(&[("felt-30, rolls", "each", "1", "64.80")]).rows);
    assert_near(together(&job).patches, 4.125 * 0.33 + 26.0 * 0.02);
}

/// Posts 14 in apart share one patch 32 in wide; alone each has one of 18 in.
#[test]
fn the_gap_is_the_saving_from_sharing() {
    let job = priced(&[(56.0, 39.0), (70.0, 39.0)]);
    let (all, apart) = (together(&job), additive(&job).unwrap());
    assert_near(all.patches, 32.0 * 33.0 / 144.0 * 0.40 + 33.0 * 0.02); // 130 in ÷ 4 in, up
    assert_near(apart.patches, 2.0 * (4.125 * 0.40 + 25.5 * 0.02));
    assert!(all.labour < apart.labour && all.breakage < apart.breakage && all.hardware < apart.hardware);
}

/// An opening 11 1/2 in wide in the middle of a tile of 13 in leaves 3/4 in on each side, less than the web of 1 in.
#[test]
fn a_severed_tile_costs_its_pieces() {
    let mut job = priced(&[(53.5, 31.0)]);
    let before = together(&job).breakage;
    job.slopes[0].posts[0].assembly =
        Arc::new(Assembly { clearance: inches(5.0), ..(*job.slopes[0].posts[0].assembly).clone() });
    let taken = takeoff(&job).unwrap();
    let severed = taken.spares[0].handled.severed;
    assert!(severed > 0);
    let handled = taken.spares[0].handled;
    let mean =
        handled.cut as f64 * 0.06 / 0.94 + handled.removed as f64 * 0.02 + handled.loosened as f64 * 0.01;
    let breakage = cost(&job, &taken).unwrap().breakage;
    assert_near(breakage, 5.0 * (mean + 2.0 * severed as f64));
    assert!(breakage > before + 9.0);
}

#[test]
fn tiles_walked_on_cost_no_post_anything() {
    let mut job = priced(&[(56.0, 39.0)]);
    let before = together(&job);
    job.slopes[0].walked = 100;
    assert_eq!(together(&job), before);
}

#[test]
fn without_prices_the_cost_is_labour() {
    let mut job = priced(&[(56.0, 39.0)]);
    job.prices = None;
    let cost = together(&job);
    assert_eq!(cost.total(), 66.0);
    assert!(cost.unpriced.contains("lag") && cost.unpriced.contains("spare tile flat"));

    job.bid = None;
    let problems = cost_refused(&job);
    assert_eq!(problems[0].code, "no-costs");
    assert_eq!(additive(&job).unwrap_err(), problems);
}

/// Beta(1, 1): β is not above 1, and the mean is infinite.
#[test]
fn a_record_without_a_mean_is_refused() {
    let mut job = priced(&[(56.0, 39.0)]);
    job.practice.breakage.cut = Rate::Beta { alpha: 1.0, beta: 1.0 };
    job.practice.service_level = 0.5;
    assert_eq!(cost_refused(&job)[0].code, "breakage-without-mean");
}

fn cost_refused(job: &Job) -> Problems {
    cost(job, &takeoff(job).unwrap()).unwrap_err()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// Posts six feet apart share nothing: the additive cost is the shared one, whole staples excepted.
    #[test]
    fn posts_far_apart_cost_the_same_alone_and_together(
        off in prop::collection::vec((-96_i32..=96, -96_i32..=96), 12),
        staple: bool,
    ) {
        let place = |(i, &(u, v)): (usize, &(i32, i32))| {
            let (column, row) = ((i % 6) as f64, (i / 6) as f64);
            (48.0 + column * 72.0 + f64::from(u) / 16.0, 48.0 + row * 90.0 + f64::from(v) / 16.0)
        };
        let posts: Vec<(f64, f64)> = off.iter().enumerate().map(place).collect();
        let mut job = priced(&posts);
        if !staple {
            job.prices.as_mut().unwrap().rows.retain(|row| row.item != "staple");
        }
        let (all, apart) = (together(&job), additive(&job).unwrap());
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * a.max(1.0);
        prop_assert!(near(all.hardware, apart.hardware) && near(all.labour, apart.labour));
        prop_assert!(near(all.blocking, apart.blocking) && near(all.breakage, apart.breakage));
        let whole = all.patches - apart.patches;
        if staple {
            prop_assert!((-1e-9..=12.0 * 0.02).contains(&whole), "{whole}");
        } else {
            prop_assert!(near(whole, 0.0), "{whole}");
        }
        prop_assert_eq!(&all.unpriced, &apart.unpriced);
    }
}

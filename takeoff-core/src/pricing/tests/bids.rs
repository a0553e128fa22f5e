//! The bid of the plain gable with prices of the test's own.
use rust_decimal::Decimal;
use serde_json::{Value, json};

use super::super::{Bid, BidLine, purchase};
use crate::api::read_and_take_off;
use crate::job::Files;
use crate::model::{Action, PriceList, PriceRow, Problem, Problems};
use crate::quantities::MaterialLine;
use crate::takeoff::Takeoff;
use crate::units::{Currency, Money};

const HEADER: &str = "item,unit,pack,price,currency,minimum_order\n";

/// The plain gable with these rows of prices and the job file changed.
fn taken(rows: &str, change: impl Fn(&mut Value)) -> Result<Takeoff, Problems> {
    let mut job = serde_json::from_str(include_str!("../../../../fixtures/plain-gable/job.json")).unwrap();
    change(&mut job);
    let files = Files::from([("prices.csv".to_owned(), format!("{HEADER}{rows}"))]);
    read_and_take_off(&job.to_string(), &files)
}

fn as_it_is(_: &mut Value) {}

fn bid(rows: &str, change: impl Fn(&mut Value)) -> Bid {
    taken(rows, change).unwrap().bid.unwrap()
}

fn refused(rows: &str) -> Problems {
    taken(rows, as_it_is).map(drop).unwrap_err()
}

fn line<'a>(bid: &'a Bid, item: &str) -> &'a BidLine {
    bid.lines.iter().find(|line| line.item.name() == item).unwrap()
}

fn items(bid: &Bid) -> Vec<String> {
    bid.lines.iter().map(|line| line.item.name()).collect()
}

fn unpriced(bid: &Bid) -> Vec<String> {
    bid.unpriced.iter().map(|line| line.item.name()).collect()
}

#[test]
fn no_prices_and_no_terms_no_bid() {
    let without = |fields: &'static [&'static str]| {
        move |job: &mut Value| fields.iter().for_each(|field| job[field] = Value::Null)
    };
    assert!(taken("", without(&["prices", "bid"])).unwrap().bid.is_none());
    // Prices alone: materials, and nothing added.
    let prices = bid("storm collar,each,1,6.20,USD,\n", without(&["bid"]));
    assert_eq!(prices.totals.price.to_string(), "74.40");
    assert!(prices.labour.is_empty());
    // Terms alone: labour, and every material without a price.
    let terms = bid("", |job| {
        job["prices"] = Value::Null;
        job["bid"]["currency"] = json!("USD");
    });
    assert_eq!(terms.totals.materials.to_string(), "0.00");
    assert!(terms.lines.is_empty() && !terms.unpriced.is_empty() && !terms.labour.is_empty());
}

/// 12 collars at 6.205 are 74.46; 18 minutes for each of 14 posts are 252, at 68.50 an hour 287.70.
#[test]
fn from_the_lines_to_the_price() {
    let bid = bid("storm collar,each,1,6.205,USD,\n", |job| {
        job["bid"] = json!({
            "labour": { "rate_per_hour": "68.50", "minutes": { "set": 18 } },
            "tax": 0.0725, "contingency": 0.05, "markup": 0.18,
        });
    });
    assert_eq!(line(&bid, "storm collar").cost.to_string(), "74.46");
    let totals = &bid.totals;
    for (amount, expected) in [
        (totals.materials, "74.46"),
        (totals.tax, "5.40"), // 74.46 · 0.0725 = 5.39835
        (totals.labour, "287.70"),
        (totals.direct_cost, "367.56"), // 74.46 + 5.40 + 287.70
        (totals.contingency, "18.38"),  // 367.56 · 0.05 = 18.378
        (totals.markup, "69.47"),       // 385.94 · 0.18 = 69.4692
        (totals.price, "455.41"),
    ] {
        assert_eq!(amount.to_string(), expected);
    }
    let untimed = bid.labour.iter().filter(|line| line.cost.is_none()).map(|line| line.action);
    use Action::{Block, CutHole, CutNotch, Lift, Loosen, Patch};
    assert_eq!(untimed.collect::<Vec<_>>(), [Lift, Loosen, CutHole, CutNotch, Patch, Block]);
}

#[test]
fn what_stands_in_two_lines_is_bought_once() {
    let (volume, cartridge) = ("sealant,fl oz,28,17.90,USD,\n", "sealant cartridge,each,1,7.45,USD,\n");
    let by_volume = bid(volume, as_it_is);
    assert_eq!(items(&by_volume), ["sealant"]);
    assert!(!unpriced(&by_volume).contains(&"sealant cartridge".to_owned()));
    // 937 108 mm³ in cartridges of 298 693 mm³: 3.14, so 4.
    let by_piece = bid(&format!("{volume}{cartridge}"), as_it_is);
    assert_eq!(items(&by_piece), ["sealant cartridge"]);
    assert_eq!(by_piece.totals.materials.to_string(), "29.80");
    assert_eq!(by_piece.unused_prices.len(), 1);
    let neither = bid("storm collar,each,1,6.20,USD,\n", as_it_is);
    assert!(
        unpriced(&neither).contains(&"sealant cartridge".to_owned())
            && !unpriced(&neither).contains(&"sealant".to_owned())
    );
}

#[test]
fn a_minimum_order_is_bought_whole() {
    let bid = bid("storm collar,each,5,30.00,USD,4\n", as_it_is);
    let pack = &line(&bid, "storm collar").packs[0];
    assert_eq!((pack.packs, pack.cost.to_string().as_str()), (4, "120.00"));
}

#[test]
fn a_unit_that_does_not_fit_its_item_is_refused() {
    let problems = refused("sealant,each,1,7.45,USD,\nstaple,ft,3,1.00,USD,\n");
    assert!(
        problems.iter().all(|problem| (problem.code.as_str(), &*problem.path) == ("unit-of-item", "/prices"))
    );
    let told: Vec<&str> = problems.iter().map(|problem| problem.message.as_str()).collect();
    let by_piece = "`prices.csv` line 2, column `unit`: `sealant` is needed by volume, and priced by piece";
    let by_length = "`prices.csv` line 3, column `unit`: `staple` is needed by piece, and priced by length";
    assert_eq!(told, [by_piece, by_length]);
}

/// Two packs, each at the greatest sum that a decimal holds.
#[test]
fn more_money_than_a_sum_holds_is_refused() {
    let line = bring(&taken("storm collar,each,1,6.20,USD,\n", as_it_is).unwrap(), "storm collar");
    let currency = Currency::new("USD").unwrap();
    let row = PriceRow {
        item: line.item.name(),
        unit: line.unit,
        size: Decimal::ONE,
        shown: "1 each".to_owned(),
        price: Money::new(Decimal::MAX),
        minimum_order: 2,
        vendor_part: None,
        line: 2,
    };
    let prices = PriceList { file: "prices.csv".to_owned(), currency: currency.clone(), rows: vec![row] };
    let problems = purchase(&[line], Some(&prices), &currency).unwrap_err();
    assert_eq!((problems[0].code.as_str(), problems[0].path.as_str()), ("too-much-money", "/prices"));
}

#[test]
fn packs_beyond_reason_are_refused() {
    assert_eq!(refused("sealant,mm3,0.0000001,1,USD,\n")[0].code, "bad-csv");
    assert_eq!(refused("sealant,mm3,0.000001,999999999,USD,\n")[0].code, "too-many");
}

fn bring(takeoff: &Takeoff, item: &str) -> MaterialLine {
    takeoff.materials.iter().find(|line| line.item.name() == item).unwrap().clone()
}

#[test]
fn waste_stands_beside_the_need() {
    let takeoff = taken("staple,each,1,0.0125,USD,\n", |job| {
        job["practice"]["waste"] = json!({ "staple": 0.05, "storm collar": 0.5, "stapel": 1 });
    })
    .unwrap();
    // 163 · 1.05 = 171.15; 172 at 0.0125 are 2.15.
    let staple = bring(&takeoff, "staple");
    assert_eq!((staple.need, staple.waste, staple.bring), (163.0, 0.05, 172.0));
    let staple = line(takeoff.bid.as_ref().unwrap(), "staple");
    assert_eq!((staple.packs[0].packs, staple.cost.to_string().as_str()), (172, "2.15"));
    assert_eq!(bring(&takeoff, "storm collar").bring, 18.0);
    let unused: Vec<&Problem> =
        takeoff.findings.iter().filter(|finding| finding.code == "waste-not-used").collect();
    assert_eq!(unused.len(), 1);
    assert!(unused[0].message.contains("`stapel`"));
}

#[test]
fn blades_by_what_they_cut() {
    let takeoff =
        taken("saw blade,each,1,34,USD,\n", |job| job["practice"]["blade_life"] = json!("1 m")).unwrap();
    let metres = takeoff.counts.blade_path.mm() / 1000.0;
    let blades = bring(&takeoff, "saw blade");
    assert!((blades.need - metres).abs() < 1e-12 * metres);
    assert_eq!(blades.bring, metres.ceil());
}

/// Nothing is in two places or in none, and the totals are sums.
#[test]
fn every_material_is_priced_or_listed() {
    let rows = "spare tile flat-13,each,1,3.85,USD,\nlag 5/16 x 3 1/2 in,each,25,19.75,USD,\n\
                staple,each,1000,4.85,USD,\nsealant,mL,300,6.90,USD,\n";
    let takeoff = taken(rows, as_it_is).unwrap();
    let bid = takeoff.bid.as_ref().unwrap();
    for material in takeoff.materials.iter().filter(|line| line.need > 0.0) {
        let (item, packs_of) = (&material.item, material.packs_of.as_ref());
        let places =
            bid.lines.iter().map(|line| &line.item).chain(bid.unpriced.iter().map(|line| &line.item));
        let places = places.filter(|known| *known == item).count();
        let other = takeoff
            .materials
            .iter()
            .any(|other| packs_of == Some(&other.item) || other.packs_of.as_ref() == Some(item));
        assert!(places == 1 || places == 0 && other, "{item} {places}");
    }
    let sum = bid.lines.iter().map(|line| line.cost.amount()).sum::<Decimal>();
    assert_eq!(sum, bid.totals.materials.amount());
}

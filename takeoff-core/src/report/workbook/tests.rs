//! Checks of the workbook: an independent reader gets back what the takeoff says.
use std::collections::BTreeMap;
use std::io::Cursor;

use calamine::{Data, Range, Reader, Xlsx};
use rust_decimal::prelude::ToPrimitive;
use serde_json::json;

use super::names::keys;
use super::rows::{Column, sheet_of_rows};
use super::styles::{Kind, Look};
use super::{book, workbook};
use crate::report::document::Takeoff;
use crate::report::tests::{HOSTILE, sample};

type Book = Xlsx<Cursor<Vec<u8>>>;

fn read(takeoff: &Takeoff) -> Book {
    Xlsx::new(Cursor::new(workbook(takeoff))).unwrap()
}

fn rows<'r>(sheet: &'r Range<Data>, below: &str) -> impl Iterator<Item = &'r [Data]> {
    let head = sheet.rows().position(|row| row[0] == Data::String(below.to_owned())).unwrap();
    sheet.rows().skip(head + 1)
}

fn number(cell: &Data) -> f64 {
    match cell {
        Data::Float(number) => *number,
        Data::Int(number) => *number as f64,
        other => panic!("{other:?} is no number"),
    }
}

/// The numbers of a column, row by row.
fn numbers(rows: &[&[Data]], column: usize) -> Vec<f64> {
    rows.iter().map(|row| number(&row[column])).collect()
}

fn texts(rows: &[&[Data]], column: usize) -> Vec<String> {
    rows.iter().map(|row| row[column].to_string()).collect()
}

#[test]
fn sheets_say_what_the_takeoff_says() {
    for takeoff in sample::all() {
        let mut book = read(&takeoff);
        let mut sheet = |name: &str| book.worksheet_range(name).unwrap();
        let slopes = || takeoff.slopes.iter();

        let materials = sheet("materials");
        let lines: Vec<_> = rows(&materials, "item").collect();
        assert_eq!(
            texts(&lines, 0),
            takeoff.materials.iter().map(|line| line.item.name()).collect::<Vec<_>>()
        );
        for (row, line) in lines.iter().zip(&takeoff.materials) {
            let size = number(&row[2]) / line.need;
            assert!(
                (number(&row[4]) - size * line.need * (1.0 + line.waste)).abs()
                    < 1e-9 * number(&row[4]).max(1.0)
            );
            assert_eq!(number(&row[3]), line.waste);
            if line.unit == crate::units::Unit::Each {
                assert_eq!(number(&row[5]), line.bring, "{}", line.item);
            }
        }

        let posts = sheet("posts");
        let lines: Vec<_> = rows(&posts, "slope").collect();
        let names: Vec<String> =
            slopes().flat_map(|slope| slope.posts.iter().map(|post| post.name.clone())).collect();
        assert_eq!(texts(&lines, 1), names);
        let unit = match takeoff.display {
            crate::model::Display::Imperial => 25.4,
            crate::model::Display::Metric => 1.0,
        };
        let places = slopes().flat_map(|slope| slope.posts.iter().map(|post| post.v_mm / unit));
        for (shown, exact) in numbers(&lines, 4).iter().zip(places) {
            assert!((shown - exact).abs() <= if unit > 1.0 { 1.0 / 32.0 } else { 0.5 });
        }

        let cuts = sheet("cuts");
        let lines: Vec<_> = rows(&cuts, "slope").collect();
        assert_eq!(lines.len(), slopes().map(|slope| slope.cuts.len()).sum::<usize>());
        let tiles = sheet("tiles");
        let lines: Vec<_> = rows(&tiles, "slope").collect();
        assert_eq!(lines.len(), slopes().map(|slope| slope.tiles.len()).sum::<usize>());

        let spares = sheet("spares");
        let lines: Vec<_> = rows(&spares, "tile").take(takeoff.spares.len()).collect();
        for (row, of_kind) in lines.iter().zip(&takeoff.spares) {
            assert_eq!(row[0].to_string(), of_kind.tile.to_string());
            assert_eq!(number(&row[1]), of_kind.spares.used_at_level as f64);
            assert_eq!(number(&row[5]), of_kind.spares.spares as f64);
            assert!((number(&row[6]) - of_kind.spares.stockout_probability).abs() < 1e-9);
        }

        let assumptions = sheet("assumptions");
        let lines: Vec<_> = rows(&assumptions, "what is assumed").take(takeoff.assumptions.len()).collect();
        assert_eq!(texts(&lines, 1), takeoff.assumptions.iter().map(|a| a.value.clone()).collect::<Vec<_>>());
    }
}

#[test]
fn sheets_say_what_the_bid_says() {
    let takeoff = sample::gable();
    let bid = takeoff.bid.as_ref().unwrap();
    let mut book = read(&takeoff);
    let order = book.worksheet_range("order").unwrap();
    let offers: Vec<_> =
        bid.lines.iter().flat_map(|line| line.packs.iter().map(move |pack| (line, pack))).collect();
    assert!(offers.len() > bid.lines.len(), "no item has several packs");
    for (row, (line, pack)) in rows(&order, "item").zip(offers) {
        assert_eq!(row[0].to_string(), line.item.name());
        assert_eq!(number(&row[5]), pack.unit_price.amount().to_f64().unwrap());
        assert_eq!(number(&row[8]), pack.packs as f64);
        assert_eq!(number(&row[9]), pack.cost.amount().to_f64().unwrap());
    }
    let labour = book.worksheet_range("labour").unwrap();
    for (row, line) in rows(&labour, "action").zip(&bid.labour) {
        assert_eq!(number(&row[2]), line.count as f64);
        assert_eq!(number(&row[5]), line.cost.unwrap().amount().to_f64().unwrap());
    }
    let summary = book.worksheet_range("summary").unwrap();
    let price = rows(&summary, "price").find(|row| row[0] == "price").unwrap();
    assert_eq!(number(&price[2]), bid.totals.price.amount().to_f64().unwrap());
}

/// A name like `need_with_waste_staple` leads from the order to one cell of the sheet of materials: that of the same item.
#[test]
fn the_order_takes_each_need_from_the_row_of_its_item() {
    let items_of_line_names = sample::edited(|job| {
        let items = job["assemblies"]["post-7"]["items"].as_array_mut().unwrap();
        items.extend(
            ["saw blade", "staple", "fastener for flat-13"].map(|item| json!({ "item": item, "count": 1 })),
        );
        job["practice"]["blade_life"] = json!("25 m");
    });
    for takeoff in sample::all().into_iter().chain([items_of_line_names]) {
        let mut book = read(&takeoff);
        let cells: BTreeMap<String, String> = book.defined_names().iter().cloned().collect();
        let formulas = book.worksheet_formula("order").unwrap();
        let [order, materials] = ["order", "materials"].map(|name| book.worksheet_range(name).unwrap());
        let text =
            |sheet: &Range<Data>, row: u32, column| sheet.get_value((row, column)).unwrap().to_string();
        let value = |sheet: &Range<Data>, row: u32, column| number(sheet.get_value((row, column)).unwrap());
        let mut needs = 0;
        for (row, column, formula) in formulas.used_cells() {
            let (top, left) = formulas.start().unwrap();
            let (row, column) = (row as u32 + top, column as u32 + left);
            let Some(name) = formula.strip_prefix('=').unwrap_or(formula).strip_prefix("need_with_waste_")
            else {
                continue;
            };
            let cell = &cells[&format!("need_with_waste_{name}")];
            let (_, line) = cell.rsplit_once('$').unwrap();
            let line = line.parse::<u32>().unwrap() - 1;
            assert_eq!(text(&order, row, 0), text(&materials, line, 0));
            assert_eq!(value(&order, row, column), value(&materials, line, 4), "{}", text(&order, row, 0));
            needs += 1;
        }
        let Some(bid) = &takeoff.bid else { continue };
        let offers: usize = bid.lines.iter().map(|line| line.packs.len()).sum();
        assert!(needs >= offers + bid.unpriced.len(), "{needs} needs");
        // Where one pack is on offer, whole ones cover what that cell holds.
        for (row, line) in (3..order.height() as u32).filter_map(|row| {
            let item = text(&order, row, 0);
            Some((row, bid.lines.iter().find(|line| line.item.name() == item && line.packs.len() == 1)?))
        }) {
            let packs = (value(&order, row, 7) / value(&order, row, 3) / (1.0 + 1e-9)).ceil();
            assert_eq!(
                packs.max(line.packs[0].minimum_order as f64),
                line.packs[0].packs as f64,
                "{}",
                line.item
            );
        }
    }
}

#[test]
fn hostile_names_are_words() {
    for name in HOSTILE {
        let takeoff = sample::named(name);
        let mut book = read(&takeoff);
        for sheet in book.sheet_names() {
            for (row, column, formula) in book.worksheet_formula(&sheet).unwrap().used_cells() {
                assert!(!formula.contains(name), "{sheet} {row} {column}: {formula}");
            }
        }
        let posts = book.worksheet_range("posts").unwrap();
        let shown = rows(&posts, "slope").next().unwrap()[0].to_string();
        assert_eq!(shown, crate::report::plain::printable(&takeoff.slopes[0].name));
    }
}

#[test]
fn long_texts_are_cut_off() {
    let mut takeoff = sample::gable();
    takeoff.assumptions[0].value = "é".repeat(100_000);
    let assumptions = read(&takeoff).worksheet_range("assumptions").unwrap();
    let value = rows(&assumptions, "what is assumed").next().unwrap()[1].to_string();
    assert!(value.ends_with("é…") && value.chars().count() == 32_000);
}

#[test]
fn rows_beyond_a_sheet_are_cut_off_and_it_says_so() {
    let takeoff = sample::gable();
    let things: Vec<u64> = (0..100_002).collect();
    let columns = vec![
        Column::new("thing", 10.0, Look::Number(Kind::Count), |thing: u64| thing),
        Column::new("word", 10.0, Look::Text, |_: u64| ""),
    ];
    let (sheet, _) = sheet_of_rows(&book(&takeoff), "things", "", &things, columns).unwrap();
    let mut workbook = rust_xlsxwriter::Workbook::new();
    workbook.push_worksheet(sheet);
    let mut book: Book = Xlsx::new(Cursor::new(workbook.save_to_buffer().unwrap())).unwrap();
    let sheet = book.worksheet_range("things").unwrap();
    let rows: Vec<_> = rows(&sheet, "thing").collect();
    let [.., last, note] = rows.as_slice() else { panic!("no rows") };
    assert_eq!(number(&last[0]), 99_999.0);
    assert_eq!(note[0].to_string(), "2 more rows are in things.csv: this sheet is not whole.");
}

#[test]
fn names_of_cells_are_plain_and_differ() {
    assert_eq!(
        keys(["lag 5/16 x 3 1/2 in", "Lag 5-16 x 3 1/2 IN", "屋根", "", "a_2", "a", "a"]),
        ["lag_5_16_x_3_1_2_in", "lag_5_16_x_3_1_2_in_2", "", "_2", "a_2", "a", "a_3"]
    );
}

#[test]
fn the_same_takeoff_gives_the_same_bytes_on_every_day() {
    let takeoff = sample::gable();
    let bytes = workbook(&takeoff);
    assert_eq!(bytes, workbook(&takeoff));
    // Parts of an archive begin with PK\3\4; their time and date stand 10 bytes on: 1980-01-01, as no clock would say.
    let parts: Vec<usize> =
        (0..bytes.len() - 30).filter(|&at| bytes[at..].starts_with(b"PK\x03\x04")).collect();
    assert!(parts.len() > 10);
    assert!(parts.iter().all(|&at| bytes[at + 10..at + 14] == [0, 0, 0x21, 0]));
}

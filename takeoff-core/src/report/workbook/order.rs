//! The sheet of what is ordered: packs, prices, and the cheapest mix of packs.
use rust_decimal::prelude::ToPrimitive;
use rust_xlsxwriter::XlsxError;

use super::measure::unit;
use super::names::keys;
use super::page::Head::{Numbers, Words};
use super::page::{Cell, Page, at};
use super::styles::{Kind, Look};
use super::{Book, Sheet, amount};
use crate::materials::Material;
use crate::pricing::{Bid, BidLine, BidPack};
use crate::quantities::MaterialLine;

const HOLDS: u16 = 3;
const PRICE: u16 = 5;
const LEAST: u16 = 6;
const NEEDED: u16 = 7;
const PACKS: u16 = 8;
const COST: u16 = 9;
/// Working columns, which are not printed: what the packs of an item have as common measure, the need in it, and
/// of a mix of two packs what the cheapest one costs and the fewest packs that do for it.
const MEASURE: u16 = 13;
const MEASURES: u16 = 14;
const CHEAPEST: u16 = 15;
const FEWEST: u16 = 16;
/// Mixes of two packs that a cell compares at most; with more, the packs of the takeoff stand there.
const MOST_MIXES: f64 = 20_000.0;

/// A line a pack on offer, item by item, and what has no price.
pub(super) fn order(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let widths = [28.0, 13.0, 11.0, 10.0, 7.0, 12.0, 8.0, 12.0, 8.0, 13.0, 17.0, 32.0];
    let mut page = Page::new(book, "order", &widths)?;
    page.put(0, 0, Look::Title, format!("{}: order", book.takeoff.job))?;
    let Some(bid) = &book.takeoff.bid else {
        page.paragraph(
            1,
            Look::Note,
            "The job file has no price list: see the sheet `materials` for what to bring.",
        )?;
        return page.done();
    };
    page.paragraph(
        1,
        Look::Note,
        &format!(
            "Yellow cells with a border are inputs. Amounts are in {}: {}. Packs are whole, up; of one or two packs on \
             offer the cheapest mix is found anew when a price, the waste or the need changes (of equally cheap ones the fewest packs, then the larger). Of three and more packs \
             the mix is that of the takeoff, and an input: where a change leaves it short, or another might be cheaper, \
             take the roof off again.",
            bid.currency, bid.rounding
        ),
    )?;
    let price = format!("price of a pack ({})", bid.currency);
    let cost = format!("cost ({})", bid.currency);
    page.heads(
        2,
        &[
            Words("item"),
            Words("pack"),
            Words("vendor's part"),
            Numbers("holds (unit)"),
            Words("unit"),
            Numbers(&price),
            Numbers("least order (packs)"),
            Numbers("need with waste (unit)"),
            Numbers("packs"),
            Numbers(&cost),
            Words("check"),
            Words("how the packs are chosen"),
        ],
    )?;
    let working = [
        (MEASURE, "working: common measure of the packs (unit)"),
        (MEASURES, "need (measures)"),
        (CHEAPEST, "cheapest mix costs"),
        (FEWEST, "in as few packs as"),
    ];
    for (column, head) in working {
        page.put(2, column, Look::Note, head)?;
    }
    let after = packs(&mut page, book, bid)?;
    page.put(after, 0, Look::Text, "materials")?;
    let total = sum_of_costs(3, after, book);
    page.put(after, COST, Look::Sum(Kind::Money), Cell::Formula(total, amount(bid.totals.materials)))?;
    page.name("materials_total", after, COST);
    unpriced(&mut page, after + 2, book, bid)?;
    page.done()
}

/// The sum of the costs above a row: sums of decimals are decimals again.
fn sum_of_costs(first: u32, after: u32, book: &Book<'_>) -> String {
    if after == first {
        return "=0".to_owned();
    }
    format!("=ROUND(SUM({}:{}),{})", at(first, COST), at(after - 1, COST), book.decimals)
}

/// The packs of every item; gives the row after them.
fn packs(page: &mut Page<'_>, book: &Book<'_>, bid: &Bid) -> Result<u32, XlsxError> {
    let mut row = 3;
    let offers = bid.lines.iter().flat_map(|line| {
        let several = line.packs.len() > 1;
        (1..=line.packs.len())
            .map(move |n| if several { format!("{} {n}", line.item) } else { line.item.name() })
    });
    let mut names = keys(offers).into_iter();
    for line in &bid.lines {
        let first = row;
        for pack in &line.packs {
            offer(page, book, line, pack, row)?;
            if let Some(name) = names.next() {
                page.name(format!("price_{name}"), row, PRICE);
            }
            row += 1;
        }
        mix(page, book, line, first)?;
    }
    Ok(row)
}

/// The line of one pack, but for how many of it are bought.
fn offer(
    page: &mut Page<'_>,
    book: &Book<'_>,
    line: &BidLine,
    pack: &BidPack,
    row: u32,
) -> Result<(), XlsxError> {
    let (unit, size) = unit(line.unit, book.takeoff.display);
    let cost = format!("=ROUND({}*{},{})", at(row, PACKS), at(row, PRICE), book.decimals);
    let needed = book.key_of(&line.item);
    page.row(
        row,
        [
            (Look::Text, line.item.name().into()),
            (Look::Text, pack.pack_shown.as_str().into()),
            (Look::Text, pack.vendor_part.as_deref().into()),
            (Look::Number(Kind::Amount), (pack.pack / size).into()),
            (Look::Text, unit.into()),
            (Look::Input(Kind::Price), amount(pack.unit_price).into()),
            (Look::Number(Kind::Count), pack.minimum_order.into()),
            (
                Look::Number(Kind::Amount),
                Cell::Formula(format!("=need_with_waste_{needed}"), line.need / size * (1.0 + line.waste)),
            ),
        ],
    )?;
    page.put(row, COST, Look::Number(Kind::Money), Cell::Formula(cost, amount(pack.cost)))
}

/// Numbers of packs bought, from the item's first row on.
fn mix(page: &mut Page<'_>, book: &Book<'_>, line: &BidLine, first: u32) -> Result<(), XlsxError> {
    let (_, size) = unit(line.unit, book.takeoff.display);
    let last = first + line.packs.len() as u32 - 1;
    let measure = line.measure / size;
    let measures = (line.need_with_waste / (line.measure * (1.0 + 1e-9))).ceil();
    page.put(first, MEASURE, Look::Number(Kind::Amount), measure)?;
    let need = format!("=ROUNDUP({}/({}*1.000000001),0)", at(first, NEEDED), at(first, MEASURE));
    page.put(first, MEASURES, Look::Number(Kind::Count), Cell::Formula(need, measures))?;
    let how = match line.packs.as_slice() {
        [only] => {
            let count = filling(&at(first, MEASURES), "1", &at(first, LEAST));
            page.put(
                first,
                PACKS,
                Look::Result(Kind::Count),
                Cell::Formula(format!("={count}"), only.packs as f64),
            )?;
            "whole packs, up"
        }
        [one, other] if measures * line.measure / one.pack.max(other.pack) <= MOST_MIXES => {
            two_packs(page, line, one, other, first)?;
            "cheapest mix, found anew"
        }
        several => {
            for (row, pack) in (first..).zip(several) {
                page.put(row, PACKS, Look::Input(Kind::Count), pack.packs)?;
            }
            "mix of the takeoff: inputs"
        }
    };
    let column = |column| format!("{}:{}", at(first, column), at(last, column));
    let covers = format!(
        "=IF(SUMPRODUCT({},{})*1.000000001>={},\"covers the need\",\"SHORT OF THE NEED\")",
        column(HOLDS),
        column(PACKS),
        at(first, NEEDED)
    );
    page.put(first, PACKS + 2, Look::Text, Cell::Told(covers, "covers the need".to_owned()))?;
    page.put(first, PACKS + 3, Look::Text, how)
}

/// A term for the least number of packs, each of `holds` measures, that fills up `rest`: none, or as many as are sold.
fn filling(rest: &str, holds: &str, least: &str) -> String {
    format!("IF({rest}<=0,0,MAX({least},ROUNDUP({rest}/{holds},0)))")
}

/// The cheapest mix of two packs: every number `n` of the larger is tried, and filled up with the smaller. Of the
/// cheapest the one with the fewest packs, and of those the one with most of the larger.
fn two_packs(
    page: &mut Page<'_>,
    line: &BidLine,
    one: &BidPack,
    other: &BidPack,
    first: u32,
) -> Result<(), XlsxError> {
    // Which row has the larger pack.
    let (large, small, larger, smaller) =
        if other.pack > one.pack { (first + 1, first, other, one) } else { (first, first + 1, one, other) };
    let [large_holds, small_holds] = [larger, smaller].map(|pack| (pack.pack / line.measure).round());
    let need = at(first, MEASURES);
    let (large_price, small_price) = (at(large, PRICE), at(small, PRICE));
    let (large_least, small_least) = (at(large, LEAST), at(small, LEAST));
    // 0, 1, 2, … up to where the larger packs alone are enough: rows of column A, as far as they are counted.
    let most = format!("MAX({large_least},ROUNDUP({need}/{large_holds},0))");
    let n = format!("(ROW(INDEX($A:$A,1):INDEX($A:$A,{most}+1))-1)");
    let rest = format!("({need}-{n}*{large_holds})");
    let up = format!("ROUNDUP({rest}*({rest}>0)/{small_holds},0)");
    let fill = format!("({up}+({up}>0)*({up}<{small_least})*({small_least}-{up}))");
    // Prices have parts of a cent at most: what is beyond the sixth decimal is noise of the sum.
    let cost = format!("(ROUND({n}*{large_price}+{fill}*{small_price},6)+({n}>0)*({n}<{large_least})*1E+99)");
    let (cheapest, fewest) = (at(first, CHEAPEST), at(first, FEWEST));
    let (count, money) = (larger.packs + smaller.packs, exact_cost(larger) + exact_cost(smaller));

    page.put(first, CHEAPEST, Look::Number(Kind::Price), Cell::Array(format!("=MIN({cost})"), money))?;
    let formula = format!("=MIN(IF({cost}={cheapest},{n}+{fill}))");
    page.put(first, FEWEST, Look::Number(Kind::Count), Cell::Array(formula, count as f64))?;
    let formula = format!("=MAX(IF(({cost}={cheapest})*({n}+{fill}={fewest}),{n}))");
    page.put(large, PACKS, Look::Result(Kind::Count), Cell::Array(formula, larger.packs as f64))?;
    let rest = format!("({need}-{}*{large_holds})", at(large, PACKS));
    let formula = format!("={}", filling(&rest, &small_holds.to_string(), &small_least));
    page.put(small, PACKS, Look::Result(Kind::Count), Cell::Formula(formula, smaller.packs as f64))
}

/// Cost of the packs before rounding.
fn exact_cost(pack: &BidPack) -> f64 {
    (rust_decimal::Decimal::from(pack.packs) * pack.unit_price.amount()).to_f64().unwrap_or_default()
}

/// Items in no total.
fn unpriced(page: &mut Page<'_>, mut row: u32, book: &Book<'_>, bid: &Bid) -> Result<(), XlsxError> {
    // A spare tile that is not needed now has no packs here, but would have with another service level.
    let lines = book.takeoff.materials.iter().zip(&book.item_keys);
    let lines: Vec<_> = lines
        .filter(|(MaterialLine { item, .. }, _)| {
            let is_bought = bid.lines.iter().any(|known| known.item == *item);
            let is_unpriced = bid.unpriced.iter().any(|known| known.item == *item);
            is_unpriced || matches!(item, Material::SpareTile(_)) && !is_bought
        })
        .collect();
    if lines.is_empty() {
        return page.paragraph(row, Look::Note, "Every material that is needed has a price.");
    }
    page.paragraph(row, Look::Caution, "No price is known for these: they are in no total.")?;
    for (line, key) in lines {
        row += 1;
        let (unit, size) = unit(line.unit, book.takeoff.display);
        page.put(row, 0, Look::Text, line.item.name())?;
        page.put(row, HOLDS + 1, Look::Text, unit)?;
        let needed = line.need / size * (1.0 + line.waste);
        let formula = format!("=need_with_waste_{key}");
        page.put(row, NEEDED, Look::Number(Kind::Amount), Cell::Formula(formula, needed))?;
    }
    Ok(())
}

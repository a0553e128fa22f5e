//! The sheet of labour by action.
use rust_xlsxwriter::XlsxError;

use super::page::Head::{Numbers, Words};
use super::page::{Cell, Page, at};
use super::styles::{Kind, Look};
use super::{Book, Sheet, amount};
use crate::model::Action;
use crate::pricing::LabourLine;

const COUNT: u16 = 2;
const EACH: u16 = 3;
const MINUTES: u16 = 4;
const COST: u16 = 5;
const FIRST: u32 = 5;

/// A line an action.
pub(super) fn labour(book: &Book<'_>) -> Result<Sheet, XlsxError> {
    let mut page = Page::new(book, "labour", &[34.0, 50.0, 12.0, 14.0, 14.0, 16.0])?;
    page.put(0, 0, Look::Title, format!("{}: labour", book.takeoff.job))?;
    let rated = book.takeoff.bid.as_ref().and_then(|bid| Some((bid, bid.labour_rate_per_hour?)));
    let Some((bid, rate)) = rated else {
        page.paragraph(1, Look::Note, "The job file gives no labour: the price contains none.")?;
        return page.done();
    };
    let note = "Yellow cells with a border are inputs. Cost = count × minutes ÷ 60 × rate, rounded once per line. An action \
                without minutes is not timed and is in no total.";
    page.paragraph(1, Look::Note, note)?;
    page.put(2, 0, Look::Text, format!("rate ({} an hour)", bid.currency))?;
    page.put(2, 1, Look::Input(Kind::Price), amount(rate))?;
    page.name("labour_rate", 2, 1);
    let cost = format!("cost ({})", bid.currency);
    page.heads(
        FIRST - 1,
        &[
            Words("action"),
            Words("basis of the count"),
            Numbers("count"),
            Numbers("minutes each (min)"),
            Numbers("minutes (min)"),
            Numbers(&cost),
        ],
    )?;
    let mut row = FIRST;
    for line in &bid.labour {
        action(&mut page, book, line, row)?;
        row += 1;
    }
    page.put(row, 0, Look::Text, "labour")?;
    let minutes = bid.labour.iter().filter_map(|line| line.minutes).sum::<f64>();
    let sum = |column, digits| match row {
        FIRST => "=0".to_owned(),
        _ => format!("=ROUND(SUM({}:{}),{digits})", at(FIRST, column), at(row - 1, column)),
    };
    page.put(row, MINUTES, Look::Sum(Kind::Amount), Cell::Formula(sum(MINUTES, 6), minutes))?;
    let total = Cell::Formula(sum(COST, book.decimals), amount(bid.totals.labour));
    page.put(row, COST, Look::Sum(Kind::Money), total)?;
    page.name("labour_total", row, COST);
    page.done()
}

fn action(page: &mut Page<'_>, book: &Book<'_>, line: &LabourLine, row: u32) -> Result<(), XlsxError> {
    let [count, each, minutes] = [COUNT, EACH, MINUTES].map(|column| at(row, column));
    let timed = |formula: String, result: Option<f64>| {
        let formula = format!("=IF(ISNUMBER({each}),{formula},\"not timed\")");
        match result {
            Some(result) => Cell::Formula(formula, result),
            None => Cell::Told(formula, "not timed".to_owned()),
        }
    };
    page.row(
        row,
        [
            (Look::Text, line.action.words().into()),
            (Look::Text, line.basis.as_str().into()),
            (Look::Number(Kind::Count), line.count.into()),
            (Look::Input(Kind::Amount), line.minutes_each.into()),
            (Look::Number(Kind::Amount), timed(format!("{count}*{each}"), line.minutes)),
            (
                Look::Number(Kind::Money),
                timed(format!("ROUND({minutes}*labour_rate/60,{})", book.decimals), line.cost.map(amount)),
            ),
        ],
    )?;
    page.name(format!("minutes_{}", key(line.action)), row, EACH);
    Ok(())
}

/// Name of an action in the job file.
fn key(action: Action) -> &'static str {
    match action {
        Action::Lift => "lift",
        Action::Loosen => "loosen",
        Action::Harvest => "harvest",
        Action::CutHole => "cut_hole",
        Action::CutNotch => "cut_notch",
        Action::MakeUp => "make_up",
        Action::Patch => "patch",
        Action::ThreeCourse => "three_course",
        Action::Block => "block",
        Action::Batten => "batten",
        Action::Set => "set",
    }
}

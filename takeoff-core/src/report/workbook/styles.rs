//! Looks of cells.
use rust_xlsxwriter::{Color, Format, FormatAlign, FormatBorder};

use crate::model::Display;
use crate::units::Currency;

/// Fill of the cells that are meant to be changed; they have a border too, for print in grey.
const INPUT: Color = Color::RGB(0x00FF_F2CC);
const HEAD: Color = Color::RGB(0x00E7_E9ED);
const LINE: Color = Color::RGB(0x00A6_A6A6);

/// Role of a cell, which decides its look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Look {
    /// The sheet's title.
    Title,
    /// The title of a part of a sheet.
    Part,
    /// The head of a column of words.
    Head,
    /// The head of a column of numbers.
    NumberHead,
    /// A line on how to read the sheet.
    Note,
    /// A warning.
    Caution,
    /// Words.
    Text,
    /// A line to be signed.
    Blank,
    /// A number of its kind.
    Number(Kind),
    /// A number that is meant to be changed.
    Input(Kind),
    /// A number that the sheet is there for.
    Result(Kind),
    /// The sum of those above it.
    Sum(Kind),
}

impl Look {
    /// Wraps words too long for the cell.
    pub(super) fn wraps(self) -> bool {
        matches!(self, Look::Head | Look::NumberHead | Look::Note | Look::Caution | Look::Text)
    }
}

/// Quantity of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Whole things.
    Count,
    /// Any number, to two decimals.
    Amount,
    /// A length on the roof, in inches to a sixteenth or in millimetres.
    Length,
    /// A share, as percent.
    Share,
    /// A probability, to six decimals.
    Chance,
    /// Money, to the cent.
    Money,
    /// A price, which may have parts of a cent.
    Price,
}

const KINDS: [Kind; 7] =
    [Kind::Count, Kind::Amount, Kind::Length, Kind::Share, Kind::Chance, Kind::Money, Kind::Price];

/// The formats of all looks.
pub(super) struct Styles(Vec<(Look, Format)>);

impl Styles {
    /// The formats for lengths in these units and money in this currency.
    pub(super) fn new(display: Display, currency: Option<&Currency>) -> Styles {
        let words = [
            Look::Title,
            Look::Part,
            Look::Head,
            Look::NumberHead,
            Look::Note,
            Look::Caution,
            Look::Text,
            Look::Blank,
        ];
        let numbers = KINDS
            .iter()
            .flat_map(|&kind| [Look::Number(kind), Look::Input(kind), Look::Result(kind), Look::Sum(kind)]);
        let looks = words.into_iter().chain(numbers);
        Styles(looks.map(|look| (look, format(look, display, currency))).collect())
    }

    /// The format of a look.
    pub(super) fn format(&self, look: Look) -> &Format {
        static PLAIN: std::sync::LazyLock<Format> = std::sync::LazyLock::new(Format::new);
        self.0.iter().find(|(of, _)| *of == look).map_or(&PLAIN, |(_, format)| format)
    }
}

fn format(look: Look, display: Display, currency: Option<&Currency>) -> Format {
    let top = Format::new().set_align(FormatAlign::Top);
    // Words stand off from the numbers to their left.
    let words = top.clone().set_text_wrap().set_align(FormatAlign::Left).set_indent(1);
    let head = Format::new()
        .set_bold()
        .set_text_wrap()
        .set_align(FormatAlign::Bottom)
        .set_background_color(HEAD)
        .set_border_bottom(FormatBorder::Thin);
    let number = |kind| top.clone().set_num_format(number_format(kind, display, currency));
    match look {
        Look::Title => Format::new().set_bold().set_font_size(16),
        Look::Part => Format::new().set_bold().set_font_size(12).set_align(FormatAlign::Bottom),
        Look::Head => head.set_align(FormatAlign::Left).set_indent(1),
        Look::NumberHead => head.set_align(FormatAlign::Right),
        Look::Note => top.set_text_wrap().set_italic(),
        Look::Caution => top.set_text_wrap().set_bold(),
        Look::Text => words,
        Look::Blank => Format::new().set_indent(1).set_border_bottom(FormatBorder::Thin),
        Look::Number(kind) => number(kind),
        Look::Input(kind) => {
            number(kind).set_background_color(INPUT).set_border(FormatBorder::Thin).set_border_color(LINE)
        }
        Look::Result(kind) => number(kind).set_bold(),
        Look::Sum(kind) => number(kind).set_bold().set_border_top(FormatBorder::Thin),
    }
}

fn number_format(kind: Kind, display: Display, currency: Option<&Currency>) -> String {
    match (kind, display) {
        (Kind::Count, _) => "#,##0".to_owned(),
        (Kind::Amount, _) => "#,##0.00".to_owned(),
        (Kind::Length, Display::Imperial) => "# ??/??".to_owned(),
        (Kind::Length, Display::Metric) => "#,##0".to_owned(),
        (Kind::Share, _) => "0.0##%".to_owned(),
        (Kind::Chance, _) => "0.000000".to_owned(),
        (Kind::Money, _) => money(currency, &to_decimals(currency.map_or(2, Currency::decimals))),
        (Kind::Price, _) => money(currency, "#,##0.00##"),
    }
}

fn to_decimals(decimals: u32) -> String {
    let point = if decimals > 0 { "." } else { "" };
    format!("#,##0{point}{}", "0".repeat(decimals as usize))
}

/// A number with the sign of its currency, or with the currency's code behind it.
fn money(currency: Option<&Currency>, digits: &str) -> String {
    match currency.map(Currency::code) {
        Some("USD") => format!("\"$\"{digits}"),
        Some("EUR") => format!("\"€\"{digits}"),
        Some("GBP") => format!("\"£\"{digits}"),
        Some(code) => format!("{digits} \"{code}\""),
        None => digits.to_owned(),
    }
}

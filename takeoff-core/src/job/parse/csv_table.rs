//! A CSV file as a table: separator, decimal mark and units are found out from the file, never guessed.
use super::decode::{listed, quoted};
use super::suggest::suggest;
use super::text::MOST_BYTES;
use crate::model::Code;

/// The most rows of a file: as many as a slope may have posts.
const MOST_ROWS: usize = 1_000_000;
/// Units that a column's name may end in, after a `_`.
const UNITS: [&str; 5] = ["mm", "cm", "m", "in", "ft"];
/// A byte that no text holds, for a file of one column.
const NO_SEPARATOR: u8 = 0xff;

/// A column that a file has to have, or may have.
pub(crate) struct Column {
    name: String,
    kind: Kind,
    may_be_missing: bool,
}

/// Kind of the cells of a column.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Text,
    /// A number with a unit, in each cell or in the column's name.
    Length,
    /// A bare number.
    Number,
}

impl Column {
    pub(crate) fn text(name: &str) -> Column {
        Column::new(name, Kind::Text)
    }

    pub(crate) fn length(name: &str) -> Column {
        Column::new(name, Kind::Length)
    }

    pub(crate) fn number(name: &str) -> Column {
        Column::new(name, Kind::Number)
    }

    /// The column may be missing; its cells are empty then.
    pub(crate) fn optional(self) -> Column {
        Column { may_be_missing: true, ..self }
    }

    fn new(name: &str, kind: Kind) -> Column {
        Column { name: name.to_owned(), kind, may_be_missing: false }
    }
}

/// Why a file is refused.
pub(crate) struct Refusal {
    pub(crate) code: Code,
    pub(crate) message: String,
    pub(crate) help: String,
}

impl Refusal {
    fn new(code: Code, message: impl Into<String>, help: impl Into<String>) -> Refusal {
        Refusal { code, message: message.into(), help: help.into() }
    }
}

/// A file as read.
pub(crate) struct CsvTable {
    separator: Option<u8>,
    decimal: Decimal,
    /// Place of each expected column; none where it may be missing and is.
    columns: Vec<Option<Found>>,
    records: Vec<csv::StringRecord>,
}

struct Found {
    index: usize,
    header: String,
    kind: Kind,
    /// The unit in the column's name.
    unit: Option<&'static str>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Decimal {
    None,
    Point,
    Comma,
}

impl CsvTable {
    pub(crate) fn read(text: &str, columns: &[Column]) -> Result<CsvTable, Refusal> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if text.len() > MOST_BYTES {
            let message = format!("the file has more than {} MB", MOST_BYTES >> 20);
            return Err(Refusal::new(Code::TooLarge, message, "make several slopes or several jobs of it"));
        }
        let separator = separator(text)?;
        check_quotes(text, separator.unwrap_or(NO_SEPARATOR))?;
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(separator.unwrap_or(NO_SEPARATOR))
            .flexible(true)
            .from_reader(text.as_bytes());
        let broken = |error: csv::Error| Refusal::new(Code::BadCsv, error.to_string(), "mend the file there");
        let header = reader.headers().map_err(broken)?.clone();
        let columns = find(columns, &header)?;
        let mut records = Vec::new();
        for record in reader.records() {
            let record = record.map_err(broken)?;
            if record.iter().all(|cell| cell.trim().is_empty()) {
                continue;
            }
            if record.len() != header.len() {
                let (line, cells) = (line(&record), record.len());
                let message = format!("line {line} has {cells} cells, the header {}", header.len());
                return Err(Refusal::new(Code::BadCsv, message, "give each row a cell for each column"));
            }
            if records.len() >= MOST_ROWS {
                let message = format!("the file has more than {MOST_ROWS} rows");
                return Err(Refusal::new(
                    Code::TooMany,
                    message,
                    "make several slopes or several jobs of it",
                ));
            }
            records.push(record);
        }
        let decimal = decimal(&columns, &records, separator)?;
        Ok(CsvTable { separator, decimal, columns, records })
    }

    pub(crate) fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.records.iter().map(|record| Row { sheet: self, record })
    }

    /// Separator, decimal mark and first row as read, in words.
    pub(crate) fn shown(&self) -> String {
        let separator = match self.separator {
            None => "one column",
            Some(b',') => "commas between columns",
            Some(b';') => "semicolons between columns",
            Some(_) => "tabs between columns",
        };
        let decimal = match self.decimal {
            Decimal::None => "no decimals",
            Decimal::Point => "decimal points",
            Decimal::Comma => "decimal commas",
        };
        let first = self.rows().next().map_or("no rows".to_owned(), |row| {
            let cells = self.columns.iter().enumerate().filter_map(|(column, found)| {
                let found = found.as_ref()?;
                let cell = match found.kind {
                    Kind::Text => row.text(column).to_owned(),
                    Kind::Length => row.length(column),
                    Kind::Number => row.number(column),
                };
                Some(format!("{} {}", found.header, quoted(&cell)))
            });
            format!("first row {}", cells.collect::<Vec<_>>().join(", "))
        });
        format!("{separator} and {decimal}; {first}")
    }
}

/// A row of a file.
#[derive(Clone, Copy)]
pub(crate) struct Row<'a> {
    sheet: &'a CsvTable,
    record: &'a csv::StringRecord,
}

impl<'a> Row<'a> {
    pub(crate) fn line(self) -> u64 {
        line(self.record)
    }

    /// The file's own name of an expected column.
    pub(crate) fn header(self, column: usize) -> &'a str {
        self.found(column).map_or("", |found| &found.header)
    }

    pub(crate) fn text(self, column: usize) -> &'a str {
        self.found(column).and_then(|found| self.record.get(found.index)).unwrap_or_default().trim()
    }

    /// A number with a decimal point.
    pub(crate) fn number(self, column: usize) -> String {
        match self.sheet.decimal {
            Decimal::Comma => self.text(column).replace(',', "."),
            _ => self.text(column).to_owned(),
        }
    }

    /// A length as one would write it in a job file: with a decimal point, and with its unit.
    pub(crate) fn length(self, column: usize) -> String {
        let number = self.number(column);
        match self.found(column).and_then(|found| found.unit) {
            Some(unit) => format!("{number} {unit}"),
            None => number,
        }
    }

    /// Whether both a cell and the name of its column have a unit.
    pub(crate) fn has_two_units(self, column: usize) -> bool {
        let marks = |c: char| c.is_alphabetic() || matches!(c, '\'' | '"' | '′' | '″' | '’' | '”');
        self.found(column).is_some_and(|found| found.unit.is_some()) && self.text(column).contains(marks)
    }

    fn found(self, column: usize) -> Option<&'a Found> {
        self.sheet.columns.get(column)?.as_ref()
    }
}

fn line(record: &csv::StringRecord) -> u64 {
    record.position().map_or(0, csv::Position::line)
}

/// Separator of the columns, from the header, which has no numbers in it.
fn separator(text: &str) -> Result<Option<u8>, Refusal> {
    let header = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let mut in_quotes = false;
    let mut seen: Vec<u8> = Vec::new();
    for byte in header.bytes() {
        match byte {
            b'"' => in_quotes = !in_quotes,
            b',' | b';' | b'\t' if !in_quotes && !seen.contains(&byte) => seen.push(byte),
            _ => {}
        }
    }
    match seen.as_slice() {
        [] => Ok(None),
        [one] => Ok(Some(*one)),
        _ => Err(Refusal::new(
            Code::AmbiguousCsv,
            "the header has more than one of comma, semicolon and tab, so that the columns can't be told",
            "separate the columns of the header in one way",
        )),
    }
}

/// Every quote that begins a cell ends it, on its own line: a stray one would take rows that follow into its cell.
///
/// A quote inside a cell that does not begin with one stands for itself, as in `4' 8"`. Lines are counted as by the
/// `csv` crate.
fn check_quotes(text: &str, separator: u8) -> Result<(), Refusal> {
    /// What the cell is like up to here.
    #[derive(Clone, Copy, PartialEq)]
    enum Cell {
        /// Empty, or spaces only.
        Blank {
            spaces: bool,
        },
        /// It began with something else than a quote.
        Plain,
        Quoted,
        /// A quote that ends the cell, or the first of two that stand for one.
        Ending,
        /// Spaces behind the quote that ends it.
        Ended,
    }
    let mut cell = Cell::Blank { spaces: false };
    let mut line = 1;
    let refused = |line: usize, what: &str| {
        let message = format!("line {line}: {what}");
        let help = "end the cell with a quote right before the separator, and write a quote inside it twice";
        Err(Refusal::new(Code::BadCsv, message, help))
    };
    for byte in text.bytes() {
        let space = byte == b' ' || byte == b'\t';
        cell = match (cell, byte) {
            (Cell::Quoted, b'\r' | b'\n') => return refused(line, "a quote is not closed on its line"),
            (Cell::Quoted, b'"') => Cell::Ending,
            (Cell::Quoted, _) => Cell::Quoted,
            (_, b'\r' | b'\n') => Cell::Blank { spaces: false },
            (_, byte) if byte == separator => Cell::Blank { spaces: false },
            (Cell::Blank { spaces: false }, b'"') | (Cell::Ending, b'"') => Cell::Quoted,
            (Cell::Blank { .. }, b'"') => return refused(line, "a space stands before the quote of a cell"),
            (Cell::Blank { .. }, _) if space => Cell::Blank { spaces: true },
            (Cell::Blank { .. } | Cell::Plain, _) => Cell::Plain,
            (Cell::Ending | Cell::Ended, _) if space => Cell::Ended,
            (Cell::Ending | Cell::Ended, _) => {
                return refused(line, "a cell goes on behind its closing quote");
            }
        };
        line += usize::from(byte == b'\n');
    }
    if cell == Cell::Quoted { refused(line, "a quote is not closed on its line") } else { Ok(()) }
}

/// The decimal mark of all numbers of a file. What may be a mark between thousands is refused, unless the
/// separator or another number shows that it is none.
fn decimal(
    columns: &[Option<Found>],
    records: &[csv::StringRecord],
    separator: Option<u8>,
) -> Result<Decimal, Refusal> {
    let numbers: Vec<&Found> = columns.iter().flatten().filter(|column| column.kind != Kind::Text).collect();
    let cells = || {
        let of_record = |record| numbers.iter().filter_map(move |&column| Cell::new(record, column));
        records.iter().flat_map(of_record)
    };
    let first = |mark| cells().find(|cell| cell.text.contains(mark));
    // A file with commas between columns has decimal points; a comma inside a cell is refused with the cell.
    let (mark, name, example, found) = match (first('.'), first(',')) {
        (Some(point), Some(comma)) if separator != Some(b',') => {
            let (later, point, comma) = (point.later(&comma), quoted(point.text), quoted(comma.text));
            let message = format!(
                "{later}{point} has a point and {comma} a comma, so that the decimal mark can't be told"
            );
            let help = "write all numbers with one decimal mark, and none between thousands";
            return Err(Refusal::new(Code::AmbiguousCsv, message, help));
        }
        (None, Some(comma)) if separator != Some(b',') => (',', "comma", comma, Decimal::Comma),
        (Some(point), _) if separator == Some(b';') => ('.', "point", point, Decimal::Point),
        (Some(_), _) => return Ok(Decimal::Point),
        (None, _) => return Ok(Decimal::None),
    };
    if cells().filter(|cell| cell.text.contains(mark)).all(|cell| may_be_thousands(cell.text, mark)) {
        let place = example.place();
        let message = format!(
            "{place}the {name} in {} may be a decimal mark or between thousands",
            quoted(example.text)
        );
        let help = "write one number with another count of decimals, or leave out what is between thousands";
        return Err(Refusal::new(Code::AmbiguousCsv, message, help));
    }
    Ok(found)
}

/// A cell, and where it stands.
struct Cell<'a> {
    line: u64,
    column: &'a Found,
    text: &'a str,
}

impl<'a> Cell<'a> {
    fn new(record: &'a csv::StringRecord, column: &'a Found) -> Option<Cell<'a>> {
        Some(Cell { line: line(record), column, text: record.get(column.index)? })
    }

    /// Beginning of messages about it.
    fn place(&self) -> String {
        format!("line {}, column {}: ", self.line, quoted(&self.column.header))
    }

    /// Place of the later one of two cells, where the file contradicts itself.
    fn later(&self, other: &Cell<'_>) -> String {
        let at = |cell: &Cell<'_>| (cell.line, cell.column.index);
        if at(self) > at(other) { self.place() } else { other.place() }
    }
}

/// Whether every mark of a number has three digits behind it, and the first one to three before it.
fn may_be_thousands(cell: &str, mark: char) -> bool {
    let number = cell.trim().trim_start_matches(['-', '+', '−']);
    let end = number.find(|c: char| !c.is_ascii_digit() && c != mark).unwrap_or(number.len());
    let mut groups = number[..end].split(mark);
    let first = groups.next().unwrap_or_default();
    (1..=3).contains(&first.len()) && !first.starts_with('0') && groups.all(|group| group.len() == 3)
}

/// Place of each expected column in a header.
fn find(asked: &[Column], header: &csv::StringRecord) -> Result<Vec<Option<Found>>, Refusal> {
    let place = format!("line {}: ", header.position().map_or(1, csv::Position::line).max(1));
    let known: Vec<&str> = asked.iter().map(|column| column.name.as_str()).collect();
    let columns = || {
        let length = asked.iter().find(|column| column.kind == Kind::Length);
        let unit =
            length.map(|column| format!("; a length may have its unit in the name, as `{}_mm`", column.name));
        format!("the columns are {}{}", listed(&known), unit.unwrap_or_default())
    };
    let mut found: Vec<Option<Found>> = asked.iter().map(|_| None).collect();
    for (index, cell) in header.iter().enumerate() {
        let name = cell.trim().to_lowercase();
        let parts = name.rsplit_once('_').and_then(|(stem, last)| {
            let unit = UNITS.into_iter().find(|unit| *unit == last)?;
            Some((stem, unit))
        });
        let as_it_is = asked.iter().position(|column| column.name == name).map(|which| (which, None));
        let with_unit = || {
            let (stem, unit) = parts?;
            let which = asked.iter().position(|column| column.kind == Kind::Length && column.name == stem)?;
            Some((which, Some(unit)))
        };
        let Some((which, unit)) = as_it_is.or_else(with_unit) else {
            let stem = parts.map_or(name.as_str(), |(stem, _)| stem);
            let help = suggest(stem, &known).map_or_else(columns, |meant| format!("did you mean `{meant}`?"));
            let message = format!("{place}unknown column {}", quoted(cell.trim()));
            return Err(Refusal::new(Code::BadCsv, message, help));
        };
        let column = Found { index, header: cell.trim().to_owned(), kind: asked[which].kind, unit };
        if found[which].replace(column).is_some() {
            let message = format!("{place}two columns are {}", quoted(&asked[which].name));
            return Err(Refusal::new(Code::BadCsv, message, "take one of them out"));
        }
    }
    let missing: Vec<&str> = asked
        .iter()
        .zip(&found)
        .filter(|(asked, found)| found.is_none() && !asked.may_be_missing)
        .map(|(asked, _)| asked.name.as_str())
        .collect();
    if !missing.is_empty() {
        let message = format!("{place}there is no column {}", listed(&missing));
        return Err(Refusal::new(Code::BadCsv, message, columns()));
    }
    Ok(found)
}

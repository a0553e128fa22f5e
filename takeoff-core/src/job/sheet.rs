//! A CSV file as a table: separator, decimal mark and units are found out from the file, never guessed.
use super::codes::Code;
use super::nearest::nearest;
use super::read::MOST_BYTES;
use super::reader::{listed, quoted};

/// The most rows of a file: as many as a slope may have posts.
const MOST_ROWS: usize = 1_000_000;
/// Units that a column's name may end in, after a `_`.
const UNITS: [&str; 5] = ["mm", "cm", "m", "in", "ft"];
/// A byte that no text holds, for a file of one column.
const NO_SEPARATOR: u8 = 0xff;

/// A column that a file has to have.
pub(super) struct Column {
    name: String,
    is_length: bool,
}

impl Column {
    pub(super) fn text(name: &str) -> Column {
        Column { name: name.to_owned(), is_length: false }
    }

    pub(super) fn length(name: &str) -> Column {
        Column { name: name.to_owned(), is_length: true }
    }
}

/// Why a file is refused.
pub(super) struct Refusal {
    pub(super) code: Code,
    pub(super) message: String,
    pub(super) help: String,
}

impl Refusal {
    fn new(code: Code, message: impl Into<String>, help: impl Into<String>) -> Refusal {
        Refusal { code, message: message.into(), help: help.into() }
    }
}

/// A file as read.
pub(super) struct Sheet {
    separator: Option<u8>,
    decimal: Decimal,
    /// Where each of the columns asked for stands.
    columns: Vec<Found>,
    records: Vec<csv::StringRecord>,
}

struct Found {
    index: usize,
    header: String,
    is_length: bool,
    /// The unit in the column's name.
    unit: Option<&'static str>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Decimal {
    None,
    Point,
    Comma,
}

impl Sheet {
    pub(super) fn read(text: &str, columns: &[Column]) -> Result<Sheet, Refusal> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if text.len() > MOST_BYTES {
            let message = format!("the file has more than {} MB", MOST_BYTES >> 20);
            return Err(Refusal::new(Code::TooLarge, message, "make several slopes or several jobs of it"));
        }
        let separator = separator(text)?;
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
        Ok(Sheet { separator, decimal, columns, records })
    }

    pub(super) fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.records.iter().map(|record| Row { sheet: self, record })
    }

    /// How the file was read, in words: separator, decimal mark and first row.
    pub(super) fn shown(&self) -> String {
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
            let cells = (0..self.columns.len()).map(|column| {
                let cell = if self.columns[column].is_length {
                    row.length(column)
                } else {
                    row.text(column).to_owned()
                };
                format!("{} {}", self.columns[column].header, quoted(&cell))
            });
            format!("first row {}", cells.collect::<Vec<_>>().join(", "))
        });
        format!("{separator} and {decimal}; {first}")
    }
}

/// A row of a file.
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    sheet: &'a Sheet,
    record: &'a csv::StringRecord,
}

impl<'a> Row<'a> {
    pub(super) fn line(self) -> u64 {
        line(self.record)
    }

    /// What the file calls one of the columns asked for.
    pub(super) fn header(self, column: usize) -> &'a str {
        &self.sheet.columns[column].header
    }

    pub(super) fn text(self, column: usize) -> &'a str {
        self.record.get(self.sheet.columns[column].index).unwrap_or_default().trim()
    }

    /// A length as one would write it in a job file: with a decimal point, and with its unit.
    pub(super) fn length(self, column: usize) -> String {
        let cell = match self.sheet.decimal {
            Decimal::Comma => self.text(column).replace(',', "."),
            _ => self.text(column).to_owned(),
        };
        match self.sheet.columns[column].unit {
            Some(unit) => format!("{cell} {unit}"),
            None => cell,
        }
    }

    /// Whether both a cell and the name of its column have a unit.
    pub(super) fn has_two_units(self, column: usize) -> bool {
        let marks = |c: char| c.is_alphabetic() || matches!(c, '\'' | '"' | '′' | '″' | '’' | '”');
        self.sheet.columns[column].unit.is_some() && self.text(column).contains(marks)
    }
}

fn line(record: &csv::StringRecord) -> u64 {
    record.position().map_or(0, csv::Position::line)
}

/// What stands between the columns: told by the header, which has no numbers in it.
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

/// The decimal mark of all lengths of a file. What may be a mark between thousands is refused, unless the
/// separator or another length shows that it is none.
fn decimal(
    columns: &[Found],
    records: &[csv::StringRecord],
    separator: Option<u8>,
) -> Result<Decimal, Refusal> {
    let lengths: Vec<usize> =
        columns.iter().filter(|column| column.is_length).map(|column| column.index).collect();
    let cells = || records.iter().flat_map(|record| lengths.iter().filter_map(|&index| record.get(index)));
    let (point, comma) = (cells().find(|cell| cell.contains('.')), cells().find(|cell| cell.contains(',')));
    // A file with commas between columns has decimal points; a comma inside a cell is refused with the cell.
    let (mark, name, example, found) = match (point, comma) {
        (Some(point), Some(comma)) if separator != Some(b',') => {
            let (point, comma) = (quoted(point), quoted(comma));
            let message =
                format!("{point} has a point and {comma} a comma, so that the decimal mark can't be told");
            let help = "write all lengths with one decimal mark, and none between thousands";
            return Err(Refusal::new(Code::AmbiguousCsv, message, help));
        }
        (None, Some(comma)) if separator != Some(b',') => (',', "comma", comma, Decimal::Comma),
        (Some(point), _) if separator == Some(b';') => ('.', "point", point, Decimal::Point),
        (Some(_), _) => return Ok(Decimal::Point),
        (None, _) => return Ok(Decimal::None),
    };
    if cells().filter(|cell| cell.contains(mark)).all(|cell| may_be_thousands(cell, mark)) {
        let message = format!("the {name} in {} may be a decimal mark or between thousands", quoted(example));
        let help = "write one length with another number of decimals, or leave out what is between thousands";
        return Err(Refusal::new(Code::AmbiguousCsv, message, help));
    }
    Ok(found)
}

/// Whether every mark of a number has three digits behind it, and the first one to three before it.
fn may_be_thousands(cell: &str, mark: char) -> bool {
    let number = cell.trim().trim_start_matches(['-', '+', '−']);
    let end = number.find(|c: char| !c.is_ascii_digit() && c != mark).unwrap_or(number.len());
    let mut groups = number[..end].split(mark);
    let first = groups.next().unwrap_or_default();
    (1..=3).contains(&first.len()) && !first.starts_with('0') && groups.all(|group| group.len() == 3)
}

/// Where each of the columns asked for stands in a header.
fn find(asked: &[Column], header: &csv::StringRecord) -> Result<Vec<Found>, Refusal> {
    let known: Vec<&str> = asked.iter().map(|column| column.name.as_str()).collect();
    let columns = || {
        let with_unit = asked.iter().find(|column| column.is_length).map_or("", |column| &column.name);
        format!(
            "the columns are {}; a length may have its unit in the name, as `{with_unit}_mm`",
            listed(&known)
        )
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
            let which = asked.iter().position(|column| column.is_length && column.name == stem)?;
            Some((which, Some(unit)))
        };
        let Some((which, unit)) = as_it_is.or_else(with_unit) else {
            let stem = parts.map_or(name.as_str(), |(stem, _)| stem);
            let help = nearest(stem, &known).map_or_else(columns, |meant| format!("did you mean `{meant}`?"));
            return Err(Refusal::new(Code::BadCsv, format!("unknown column {}", quoted(cell.trim())), help));
        };
        let column = Found { index, header: cell.trim().to_owned(), is_length: asked[which].is_length, unit };
        if found[which].replace(column).is_some() {
            let message = format!("two columns are {}", quoted(&asked[which].name));
            return Err(Refusal::new(Code::BadCsv, message, "take one of them out"));
        }
    }
    let missing: Vec<&str> =
        known.iter().zip(&found).filter(|(_, found)| found.is_none()).map(|(name, _)| *name).collect();
    if !missing.is_empty() {
        return Err(Refusal::new(
            Code::BadCsv,
            format!("there is no column {}", listed(&missing)),
            columns(),
        ));
    }
    Ok(found.into_iter().flatten().collect())
}

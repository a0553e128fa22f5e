//! Lists out of CSV files: separator, decimal mark and units are found out, and shown back.
use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use super::codes::Code;
use super::kinds::{List, MOST_ITEMS, Name, Position};
use super::nearest::nearest;
use super::raw::Post;
use super::reader::{Field, Read, Reader, listed, quoted};
use super::tree::{At, Value};
use crate::units::Length;

/// A list that stands in the job file, or in a CSV file that the job file names: `{"csv": "posts.csv"}`.
pub(super) struct Table<K>(std::marker::PhantomData<K>);

/// What can be a row of a CSV file.
pub(super) trait Row: Read {
    /// Its columns, in a list of the given name.
    fn columns(list: &str) -> Vec<Column>;

    /// The value that a row gives, or nothing when it is reported to be wrong.
    fn from_row(row: &mut CsvRow<'_, '_, '_>) -> Option<Self::Value>;
}

/// A column of a CSV file.
pub(super) struct Column {
    name: String,
    is_length: bool,
}

impl Column {
    fn text(name: &str) -> Column {
        Column { name: name.to_owned(), is_length: false }
    }

    fn length(name: &str) -> Column {
        Column { name: name.to_owned(), is_length: true }
    }
}

impl Row for Position {
    /// One column, called as the list is, in the singular: `nose`, `lap_line`, `at`.
    fn columns(list: &str) -> Vec<Column> {
        vec![Column::length(list.strip_suffix('s').unwrap_or(list))]
    }

    fn from_row(row: &mut CsvRow<'_, '_, '_>) -> Option<Length> {
        row.length(0)
    }
}

impl Row for Post {
    fn columns(_: &str) -> Vec<Column> {
        vec![Column::text("name"), Column::text("assembly"), Column::length("u"), Column::length("v")]
    }

    fn from_row(row: &mut CsvRow<'_, '_, '_>) -> Option<Post> {
        let (name, assembly) = (row.name(0), row.name(1));
        let (u, v) = (row.length(2), row.length(3));
        let at = row.at;
        Some(Post {
            name: Field::new(at, name),
            assembly: Field::new(at, assembly),
            u: Field::new(at, u),
            v: Field::new(at, v),
        })
    }
}

impl<K: Row> Read for Table<K> {
    type Value = Vec<Field<K>>;
    const EXPECTS: &'static str = "a list, or a CSV file such as `{\"csv\": \"posts.csv\"}`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Vec<Field<K>>> {
        match reader.tree.value(at) {
            Value::List => List::<K>::read(at, reader),
            Value::Object => {
                reader.object(at, &["csv"], Self::EXPECTS);
                let file = reader.field::<FileName>(at, "csv");
                rows(file.at, file.get()?, &K::columns(reader.tree.name(at).unwrap_or_default()), reader)
            }
            _ => {
                reader.report_type(at, Self::EXPECTS);
                None
            }
        }
    }
}

impl<K: JsonSchema> JsonSchema for Table<K> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("Table of {}", K::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [
            List::<K>::json_schema(generator),
            {
                "type": "object",
                "description": "A CSV file beside the job file. Its first row names the columns; a quantity has \
                    its unit in each cell, or in the name of its column (`u_mm`, `u_in`). Separator (comma, \
                    semicolon, tab) and decimal mark are found out and shown back in a finding.",
                "properties": { "csv": generator.subschema_for::<FileName>() },
                "required": ["csv"],
                "additionalProperties": false,
            },
        ] })
    }
}

/// The name of a file in the job's folder or below it.
pub(super) struct FileName;

impl JsonSchema for FileName {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "FileName".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string", "minLength": 1,
            "description": "A file name, relative to the job file, with `/` between folders.",
        })
    }
}

impl Read for FileName {
    type Value = String;
    const EXPECTS: &'static str = "a file name, such as `\"posts.csv\"`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<String> {
        let name = reader.text(at, Self::EXPECTS)?;
        let leads_out = name.split('/').any(|step| matches!(step, "" | "." | ".."));
        if leads_out || name.contains(['\\', ':']) || name.chars().any(char::is_control) {
            let message = format!("{} is not a plain file name in the job's folder", quoted(name));
            let help = "put the file beside the job file, and name it with `/` between folders, without `..`";
            reader.report(at, Code::BadFileName, message, help);
            return None;
        }
        reader.files_named.push(name.to_owned());
        Some(name.to_owned())
    }
}

/// A row of a CSV file on its way into a value.
pub(super) struct CsvRow<'a, 'b, 'c> {
    reader: &'a mut Reader<'b>,
    at: At,
    file: &'c str,
    line: u64,
    form: &'c Form,
    cells: &'c csv::StringRecord,
}

impl CsvRow<'_, '_, '_> {
    fn cell(&self, column: usize) -> &str {
        self.form.columns.get(column).and_then(|found| self.cells.get(found.index)).unwrap_or_default().trim()
    }

    fn name(&mut self, column: usize) -> Option<String> {
        let (at, cell, told) = (self.at, self.cell(column).to_owned(), self.told(column));
        self.reader.within(told, |reader| Name::check(&cell, at, reader))
    }

    fn length(&mut self, column: usize) -> Option<Length> {
        let mut written = self.cell(column).to_owned();
        if self.form.decimal == Decimal::Comma {
            written = written.replace(',', ".");
        }
        if let Some(unit) = self.form.columns.get(column).and_then(|found| found.unit) {
            written = format!("{written} {unit}");
        }
        let (at, told) = (self.at, self.told(column));
        self.reader.within(told, |reader| match Length::parse(&written) {
            Ok(length) => Position::check(length, &written, at, reader),
            Err(error) => {
                reader.report_unit(at, error);
                None
            }
        })
    }

    /// What messages about a cell begin with.
    fn told(&self, column: usize) -> String {
        let header = self.form.columns.get(column).map_or("", |found| found.header.as_str());
        format!("{} line {}, column {}: ", quoted(self.file), self.line, quoted(header))
    }
}

/// How a CSV file is written.
struct Form {
    separator: Option<u8>,
    decimal: Decimal,
    columns: Vec<Found>,
}

/// A column where it was found.
struct Found {
    index: usize,
    header: String,
    unit: Option<&'static str>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Decimal {
    None,
    Point,
    Comma,
}

const UNITS: [&str; 5] = ["mm", "cm", "m", "in", "ft"];

fn rows<K: Row>(at: At, file: &str, columns: &[Column], reader: &mut Reader<'_>) -> Option<Vec<Field<K>>> {
    let files = reader.files;
    let Some(text) = files.get(file) else {
        let message = format!("the file {} is not there", quoted(file));
        reader.report(at, Code::MissingFile, message, "put it beside the job file, or mend its name");
        return None;
    };
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let bad = |code, (message, help): (String, String), reader: &mut Reader<'_>| {
        reader.report(at, code, format!("{}: {message}", quoted(file)), help);
    };

    let separator = match separator(text) {
        Ok(separator) => separator,
        Err(ambiguous) => {
            bad(Code::AmbiguousCsv, ambiguous, reader);
            return None;
        }
    };
    let mut sheet = csv::ReaderBuilder::new()
        .delimiter(separator.unwrap_or(NO_SEPARATOR))
        .flexible(true)
        .from_reader(text.as_bytes());
    let header = sheet.headers().cloned().unwrap_or_default();
    let found = match find_columns(&header, columns) {
        Ok(found) => found,
        Err(problem) => {
            bad(Code::BadCsv, problem, reader);
            return None;
        }
    };
    let mut records = Vec::new();
    for record in sheet.records() {
        let Ok(record) = record else { continue };
        if record.iter().all(|cell| cell.trim().is_empty()) {
            continue;
        }
        if record.len() != header.len() {
            let line = record.position().map_or(0, csv::Position::line);
            let message = format!("line {line} has {} cells, the header {}", record.len(), header.len());
            bad(Code::BadCsv, (message, "give each row a cell for each column".to_owned()), reader);
            return None;
        }
        if records.len() >= MOST_ITEMS {
            let message = format!("more than {MOST_ITEMS} rows");
            bad(Code::TooMany, (message, "make several slopes or several jobs of it".to_owned()), reader);
            return None;
        }
        records.push(record);
    }
    let lengths: Vec<usize> = columns
        .iter()
        .zip(&found)
        .filter(|(column, _)| column.is_length)
        .map(|(_, found)| found.index)
        .collect();
    let cells = records.iter().flat_map(|record| lengths.iter().filter_map(|&index| record.get(index)));
    let decimal = match decimal(cells) {
        Ok(decimal) => decimal,
        Err(ambiguous) => {
            bad(Code::AmbiguousCsv, ambiguous, reader);
            return None;
        }
    };

    let form = Form { separator, decimal, columns: found };
    let mut values = Vec::with_capacity(records.len());
    for cells in &records {
        let line = cells.position().map_or(0, csv::Position::line);
        let mut row = CsvRow { reader, at, file, line, form: &form, cells };
        values.push(Field::new(at, K::from_row(&mut row)));
    }
    let shown = form.shown(&header, records.first());
    let message = format!("{} was read with {shown}", quoted(file));
    reader.report(at, Code::CsvReadAs, message, "look whether that is how it was meant");
    Some(values)
}

impl Form {
    /// Separator, decimal mark and first row, in words.
    fn shown(&self, header: &csv::StringRecord, first: Option<&csv::StringRecord>) -> String {
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
        let row = first.map_or("no rows".to_owned(), |cells| {
            let cells = header
                .iter()
                .zip(cells)
                .map(|(name, cell)| format!("{} {}", name.trim(), quoted(cell.trim())));
            format!("first row {}", cells.collect::<Vec<_>>().join(", "))
        });
        format!("{separator} and {decimal}; {row}")
    }
}

/// A byte that no text holds, for a file of one column.
const NO_SEPARATOR: u8 = 0xff;

/// What stands between the columns: told by the header, which has no numbers in it.
fn separator(text: &str) -> Result<Option<u8>, (String, String)> {
    let header = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let mut quoted = false;
    let mut seen: Vec<u8> = Vec::new();
    for byte in header.bytes() {
        match byte {
            b'"' => quoted = !quoted,
            b',' | b';' | b'\t' if !quoted && !seen.contains(&byte) => seen.push(byte),
            _ => {}
        }
    }
    match seen.as_slice() {
        [] => Ok(None),
        [one] => Ok(Some(*one)),
        _ => Err((
            "the header has more than one of comma, semicolon and tab, so that the columns can't be told"
                .to_owned(),
            "separate the columns of the header in one way".to_owned(),
        )),
    }
}

/// The decimal mark of all numbers of a file.
fn decimal<'a>(cells: impl Iterator<Item = &'a str>) -> Result<Decimal, (String, String)> {
    let (mut point, mut comma, mut clear) = (None, None, false);
    for cell in cells {
        if cell.contains('.') {
            point.get_or_insert(cell);
        }
        if cell.contains(',') {
            comma.get_or_insert(cell);
            clear |= !may_be_thousands(cell);
        }
    }
    match (point, comma) {
        (None, None) => Ok(Decimal::None),
        (Some(_), None) => Ok(Decimal::Point),
        (None, Some(_)) if clear => Ok(Decimal::Comma),
        (None, Some(comma)) => Err((
            format!("the comma in {} may be a decimal mark or between thousands", quoted(comma)),
            "write it with a decimal point, or without a mark between thousands".to_owned(),
        )),
        (Some(point), Some(comma)) => Err((
            format!(
                "{} has a point and {} a comma, so that the decimal mark can't be told",
                quoted(point),
                quoted(comma)
            ),
            "write all numbers with one decimal mark, and none between thousands".to_owned(),
        )),
    }
}

/// Whether every comma of a number has three digits behind it and at most three before.
fn may_be_thousands(cell: &str) -> bool {
    let number: String =
        cell.trim().chars().take_while(|c| c.is_ascii_digit() || matches!(c, ',' | '-' | '+')).collect();
    let mut groups = number.trim_start_matches(['-', '+']).split(',');
    let first = groups.next().unwrap_or_default();
    (1..=3).contains(&first.len()) && !first.starts_with('0') && groups.all(|group| group.len() == 3)
}

/// Where each column is; what is wrong with the header, and what mends it.
fn find_columns(header: &csv::StringRecord, columns: &[Column]) -> Result<Vec<Found>, (String, String)> {
    let known: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    let expected =
        || format!("the columns are {}, a length may have its unit in the name: `u_mm`", listed(&known));
    let mut found: Vec<Option<Found>> = columns.iter().map(|_| None).collect();
    for (index, cell) in header.iter().enumerate() {
        let name = cell.trim().to_lowercase();
        let unit =
            UNITS.into_iter().find(|unit| name.strip_suffix(unit).is_some_and(|rest| rest.ends_with('_')));
        let stem = unit.map_or(name.as_str(), |unit| &name[..name.len() - unit.len() - 1]);
        let fits = |column: &Column| column.name == name || (column.is_length && column.name == stem);
        let Some(which) = columns.iter().position(fits) else {
            let help = match nearest(stem, known.iter().copied()) {
                Some(meant) => format!("did you mean `{meant}`?"),
                None => expected(),
            };
            return Err((format!("unknown column {}", quoted(cell.trim())), help));
        };
        let unit = unit.filter(|_| columns[which].name != name);
        if found[which].replace(Found { index, header: cell.trim().to_owned(), unit }).is_some() {
            let message = format!("two columns are called {}", quoted(&columns[which].name));
            return Err((message, "take one of them out".to_owned()));
        }
    }
    let missing: Vec<&str> =
        known.iter().zip(&found).filter(|(_, found)| found.is_none()).map(|(name, _)| *name).collect();
    if missing.is_empty() {
        Ok(found.into_iter().flatten().collect())
    } else {
        Err((format!("there is no column {}", listed(&missing)), expected()))
    }
}

//! Lists that may stand in a CSV file beside the job file.
use std::borrow::Cow;
use std::marker::PhantomData;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use super::collections::List;
use super::quantities::Position;
use super::raw::{Post, RafterLine};
use super::scalars::{Name, schema};
use crate::job::parse::csv_table::{Column, CsvTable, Refusal, Row};
use crate::job::parse::decode::{Field, Read, Reader, quoted};
use crate::job::parse::document::{At, Value};
use crate::model::Code;
use crate::units::Length;

/// A list that stands in the job file, or in a CSV file that the job file names: `{"csv": "posts.csv"}`.
pub(crate) struct Table<K>(PhantomData<K>);

/// A value that can be a row of a CSV file.
pub(crate) trait FromRow: Read {
    /// Its columns, in a list of the given name.
    fn columns(list: &str) -> Vec<Column>;

    /// The value that a row gives, or nothing when it is reported to be wrong.
    fn from_row(row: &mut Cells<'_, '_, '_>) -> Option<Self::Value>;
}

impl FromRow for Position {
    /// One column, called as the list is, in the singular: `nose`, `lap_line`, `at`.
    fn columns(list: &str) -> Vec<Column> {
        vec![Column::length(list.strip_suffix('s').unwrap_or(list))]
    }

    fn from_row(row: &mut Cells<'_, '_, '_>) -> Option<Length> {
        row.length(0)
    }
}

impl FromRow for Post {
    fn columns(_: &str) -> Vec<Column> {
        let fixed = Column::text("fixed").optional();
        vec![Column::text("name"), Column::text("assembly"), Column::length("u"), Column::length("v"), fixed]
    }

    fn from_row(row: &mut Cells<'_, '_, '_>) -> Option<Post> {
        let at = row.at;
        Some(Post {
            name: Field::new(at, row.name(0)),
            assembly: Field::new(at, row.name(1)),
            u: Field::new(at, row.length(2)),
            v: Field::new(at, row.length(3)),
            fixed: Field::new(at, row.flag(4)),
        })
    }
}

impl FromRow for RafterLine {
    fn columns(_: &str) -> Vec<Column> {
        vec![Column::length("lower"), Column::length("upper")]
    }

    fn from_row(row: &mut Cells<'_, '_, '_>) -> Option<RafterLine> {
        let at = row.at;
        Some(RafterLine { lower: Field::new(at, row.length(0)), upper: Field::new(at, row.length(1)) })
    }
}

impl<K: FromRow> Read for Table<K> {
    type Value = Vec<Field<K>>;
    const EXPECTS: &'static str = "a list, or a CSV file such as `{\"csv\": \"posts.csv\"}`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Vec<Field<K>>> {
        match reader.tree.value(at) {
            Value::List => List::<K>::read(at, reader),
            Value::Object => {
                reader.object(at, &["csv"], Self::EXPECTS);
                let file = reader.field::<FileName>(at, "csv");
                let columns = K::columns(reader.tree.name(at).unwrap_or_default());
                rows(file.at, file.get()?, &columns, reader)
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
        json_schema!({ "anyOf": [List::<K>::json_schema(generator), generator.subschema_for::<CsvFile>()] })
    }
}

/// The other form of a [`Table`].
struct CsvFile;
schema!(CsvFile by name: json_schema!({
    "type": "object",
    "description": "A CSV file beside the job file, by its name, with `/` between folders. Its first row names the \
        columns; a length has its unit in each cell, or in the name of its column (`u_mm`, `u_in`). Separator (comma, \
        semicolon, tab) and decimal mark are found out and shown back in a finding.",
    "properties": { "csv": { "type": "string", "minLength": 1 } },
    "required": ["csv"],
    "additionalProperties": false,
    "examples": [{ "csv": "posts.csv" }],
}));

/// The name of a file in the job's folder or below it.
pub(crate) struct FileName;

schema!(FileName: json_schema!({ "type": "string", "minLength": 1 }));

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

fn rows<K: FromRow>(
    at: At,
    file: &str,
    columns: &[Column],
    reader: &mut Reader<'_>,
) -> Option<Vec<Field<K>>> {
    let sheet = table(at, file, columns, reader)?;
    let value = |row| Field::new(at, K::from_row(&mut Cells::new(row, file, at, reader)));
    Some(sheet.rows().map(value).collect())
}

/// A file with these columns; reports where it is not there or can't be read, and how it was read.
pub(crate) fn table(at: At, file: &str, columns: &[Column], reader: &mut Reader<'_>) -> Option<CsvTable> {
    let files = reader.files;
    let Some(text) = files.get(file) else {
        let message = format!("the file {} is not there", quoted(file));
        reader.report(at, Code::MissingFile, message, "put it beside the job file, or mend its name");
        return None;
    };
    match CsvTable::read(text, columns) {
        Ok(sheet) => {
            let message = format!("{} was read with {}", quoted(file), sheet.shown());
            reader.report(at, Code::CsvReadAs, message, "look whether that is how it was meant");
            Some(sheet)
        }
        Err(Refusal { code, message, help }) => {
            reader.report(at, code, format!("{}: {message}", quoted(file)), help);
            None
        }
    }
}

/// The cells of a row on their way into a value.
pub(crate) struct Cells<'a, 'b, 'c> {
    pub(crate) row: Row<'c>,
    file: &'c str,
    at: At,
    reader: &'a mut Reader<'b>,
}

impl<'a, 'b, 'c> Cells<'a, 'b, 'c> {
    pub(crate) fn new(row: Row<'c>, file: &'c str, at: At, reader: &'a mut Reader<'b>) -> Cells<'a, 'b, 'c> {
        Cells { row, file, at, reader }
    }

    pub(crate) fn name(&mut self, column: usize) -> Option<String> {
        let name = self.row.text(column);
        self.read(column, |at, reader| Name::check(name, at, reader))
    }

    /// Yes or no, where a cell says so.
    fn flag(&mut self, column: usize) -> Option<Option<bool>> {
        let text = self.row.text(column);
        match text.to_lowercase().as_str() {
            "" => Some(None),
            "true" => Some(Some(true)),
            "false" => Some(Some(false)),
            _ => {
                let message = format!("{} is neither `true` nor `false`", quoted(text));
                self.refuse(column, Code::WrongType, message, "write one of them, or leave the cell empty");
                None
            }
        }
    }

    /// Number of a cell's name among the known ones; reports where it has none of them.
    pub(crate) fn choice(&mut self, column: usize, what: &str, known: &[&str]) -> Option<usize> {
        let name = self.row.text(column);
        let place = known.iter().position(|known| *known == name);
        if place.is_none() {
            let message = format!("there is no {what} {}", quoted(name));
            self.read(column, |at, reader| {
                reader.report_unknown(at, Code::UnknownReference, message, name, "the job has", known);
            });
        }
        place
    }

    /// Checks the row as a whole; messages begin with its line.
    pub(crate) fn check(&mut self, check: impl FnOnce(At, &mut Reader<'_>)) {
        let (at, prefix) = (self.at, format!("{} line {}: ", quoted(self.file), self.row.line()));
        self.reader.within(prefix, |reader| check(at, reader));
    }

    /// Reports what is wrong with a cell.
    pub(crate) fn refuse(&mut self, column: usize, code: Code, message: String, help: impl Into<String>) {
        self.read(column, |at, reader| reader.report(at, code, message, help));
    }

    /// Reads a cell; messages begin with its line and column.
    pub(crate) fn read<T>(&mut self, column: usize, read: impl FnOnce(At, &mut Reader<'b>) -> T) -> T {
        let at = self.at;
        self.reader.within(self.prefix(column), |reader| read(at, reader))
    }

    pub(crate) fn length(&mut self, column: usize) -> Option<Length> {
        let row = self.row;
        self.read(column, |at, reader| {
            if row.has_two_units(column) {
                let message = format!("{} has a unit, and so has its column", quoted(row.text(column)));
                reader.report(
                    at,
                    Code::BadCsv,
                    message,
                    "give the unit in the cells or in the header, not in both",
                );
                return None;
            }
            Position::parse(&row.length(column), at, reader)
        })
    }

    /// Beginning of messages about a cell.
    fn prefix(&self, column: usize) -> String {
        format!(
            "{} line {}, column {}: ",
            quoted(self.file),
            self.row.line(),
            quoted(self.row.header(column))
        )
    }
}

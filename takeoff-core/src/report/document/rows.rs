//! Layout of JSON text: one record per line.
use std::io::{Result, Write};

use serde_json::ser::Formatter;

/// Opens the outer objects and arrays over several lines, an element each, and keeps what lies deeper in one line:
/// records can be told apart, compared line by line and searched, and a large roof stays small.
pub(super) struct Rows {
    /// Number of levels broken into lines.
    open: usize,
    depth: usize,
    empty: bool,
}

impl Rows {
    pub(super) fn new(open: usize) -> Rows {
        Rows { open, depth: 0, empty: false }
    }

    fn begin<W: Write + ?Sized>(&mut self, writer: &mut W, bracket: &[u8]) -> Result<()> {
        self.depth += 1;
        self.empty = true;
        writer.write_all(bracket)
    }

    fn end<W: Write + ?Sized>(&mut self, writer: &mut W, bracket: &[u8]) -> Result<()> {
        self.depth -= 1;
        if !self.empty && self.depth < self.open {
            self.new_line(writer)?;
        }
        self.empty = false;
        writer.write_all(bracket)
    }

    fn element<W: Write + ?Sized>(&mut self, writer: &mut W, first: bool) -> Result<()> {
        self.empty = false;
        let opened = self.depth <= self.open;
        match (first, opened) {
            (true, false) => return Ok(()),
            (false, false) => return writer.write_all(b", "),
            (true, true) => {}
            (false, true) => writer.write_all(b",")?,
        }
        self.new_line(writer)
    }

    fn new_line<W: Write + ?Sized>(&self, writer: &mut W) -> Result<()> {
        writer.write_all(b"\n")?;
        (0..self.depth).try_for_each(|_| writer.write_all(b"  "))
    }
}

impl Formatter for Rows {
    fn begin_array<W: Write + ?Sized>(&mut self, writer: &mut W) -> Result<()> {
        self.begin(writer, b"[")
    }

    fn end_array<W: Write + ?Sized>(&mut self, writer: &mut W) -> Result<()> {
        self.end(writer, b"]")
    }

    fn begin_array_value<W: Write + ?Sized>(&mut self, writer: &mut W, first: bool) -> Result<()> {
        self.element(writer, first)
    }

    fn begin_object<W: Write + ?Sized>(&mut self, writer: &mut W) -> Result<()> {
        self.begin(writer, b"{")
    }

    fn end_object<W: Write + ?Sized>(&mut self, writer: &mut W) -> Result<()> {
        self.end(writer, b"}")
    }

    fn begin_object_key<W: Write + ?Sized>(&mut self, writer: &mut W, first: bool) -> Result<()> {
        self.element(writer, first)
    }

    fn begin_object_value<W: Write + ?Sized>(&mut self, writer: &mut W) -> Result<()> {
        writer.write_all(b": ")
    }
}

//! Writes markup, SVG or HTML: tags, attributes, numbers, all of it escaped.
use std::fmt::Write as _;

use super::plain;

/// Markup that grows tag by tag.
#[derive(Default)]
pub(super) struct Markup {
    text: String,
}

/// A tag whose attributes are being written.
pub(super) struct Tag<'m> {
    markup: &'m mut Markup,
    name: &'static str,
}

impl Markup {
    /// Begins a tag.
    pub(super) fn tag(&mut self, name: &'static str) -> Tag<'_> {
        self.text.push('<');
        self.text.push_str(name);
        Tag { markup: self, name }
    }

    /// Ends an open tag.
    pub(super) fn close(&mut self, name: &'static str) {
        self.text.push_str("</");
        self.text.push_str(name);
        self.text.push_str(">\n");
    }

    /// Text between tags.
    pub(super) fn say(&mut self, content: &str) {
        escape(content, &mut self.text);
    }

    /// Text that is markup already.
    pub(super) fn put(&mut self, markup: &str) {
        self.text.push_str(markup);
    }

    /// The whole text.
    pub(super) fn done(self) -> String {
        self.text
    }
}

impl Tag<'_> {
    /// An attribute.
    pub(super) fn with(self, name: &str, value: impl Value) -> Self {
        let text = &mut self.markup.text;
        text.push(' ');
        text.push_str(name);
        text.push_str("=\"");
        value.write(text);
        text.push('"');
        self
    }

    /// Ends the tag, its content still to come.
    pub(super) fn open(self) {
        self.markup.text.push_str(">\n");
    }

    /// Ends an element that holds what `fill` writes.
    pub(super) fn holds(self, fill: impl FnOnce(&mut Markup)) {
        let Tag { markup, name } = self;
        markup.text.push('>');
        fill(markup);
        markup.close(name);
    }

    /// Ends an element without content.
    pub(super) fn empty(self) {
        self.markup.text.push_str("/>\n");
    }

    /// Ends an element that holds text.
    pub(super) fn text(self, content: &str) {
        let Tag { markup, name } = self;
        markup.text.push('>');
        escape(content, &mut markup.text);
        markup.close(name);
    }
}

/// Value of an attribute.
pub(super) trait Value {
    /// Writes it, escaped.
    fn write(&self, text: &mut String);
}

impl Value for &str {
    fn write(&self, text: &mut String) {
        escape(self, text);
    }
}

impl Value for String {
    fn write(&self, text: &mut String) {
        escape(self, text);
    }
}

impl Value for f64 {
    fn write(&self, text: &mut String) {
        number(*self, text);
    }
}

/// A number with at most one decimal: a tenth of a millimetre on the roof is finer than any line.
pub(super) fn number(value: f64, text: &mut String) {
    let tenths = (value * 10.0).round() as i64;
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, tenth) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    // Writing to a string does not fail.
    let _ = if tenth == 0 { write!(text, "{sign}{whole}") } else { write!(text, "{sign}{whole}.{tenth}") };
}

/// Markup as text: names come from people and may hold anything.
fn escape(from: &str, text: &mut String) {
    for c in plain::printable(from).chars() {
        match c {
            '&' => text.push_str("&amp;"),
            '<' => text.push_str("&lt;"),
            '>' => text.push_str("&gt;"),
            '"' => text.push_str("&quot;"),
            c => text.push(c),
        }
    }
}

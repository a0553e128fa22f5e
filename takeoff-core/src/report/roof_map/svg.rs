//! Writes SVG text: tags, attributes, numbers, all of it escaped.
use std::fmt::Write as _;

use super::super::plain;

/// SVG text that grows tag by tag.
#[derive(Default)]
pub(super) struct Svg {
    text: String,
}

/// A tag whose attributes are being written.
pub(super) struct Tag<'s> {
    svg: &'s mut Svg,
    name: &'static str,
}

impl Svg {
    /// Begins a tag.
    pub(super) fn tag(&mut self, name: &'static str) -> Tag<'_> {
        self.text.push('<');
        self.text.push_str(name);
        Tag { svg: self, name }
    }

    /// Ends an open tag.
    pub(super) fn close(&mut self, name: &'static str) {
        self.text.push_str("</");
        self.text.push_str(name);
        self.text.push_str(">\n");
    }

    /// The whole text.
    pub(super) fn done(self) -> String {
        self.text
    }
}

impl Tag<'_> {
    /// An attribute.
    pub(super) fn with(self, name: &str, value: impl Value) -> Self {
        let text = &mut self.svg.text;
        text.push(' ');
        text.push_str(name);
        text.push_str("=\"");
        value.write(text);
        text.push('"');
        self
    }

    /// Ends the tag, its content still to come.
    pub(super) fn open(self) {
        self.svg.text.push_str(">\n");
    }

    /// Ends an element without content.
    pub(super) fn empty(self) {
        self.svg.text.push_str("/>\n");
    }

    /// Ends an element that holds text.
    pub(super) fn text(self, content: &str) {
        let Tag { svg, name } = self;
        svg.text.push('>');
        escape(content, &mut svg.text);
        svg.close(name);
    }
}

/// What an attribute can hold.
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

/// The way of a pen over the slope; up the slope is up on paper.
#[derive(Default)]
pub(super) struct Pen {
    way: String,
    at: Option<[f64; 2]>,
}

impl Pen {
    /// Moves to a point.
    pub(super) fn to(mut self, u: f64, v: f64) -> Pen {
        self.way.push('M');
        number(u, &mut self.way);
        self.way.push(' ');
        number(-v, &mut self.way);
        self.at = Some([u, v]);
        self
    }

    /// Draws to a point.
    pub(super) fn line(mut self, u: f64, v: f64) -> Pen {
        let [from_u, from_v] = self.at.unwrap_or_default();
        if v == from_v {
            self.way.push('H');
            number(u, &mut self.way);
        } else if u == from_u {
            self.way.push('V');
            number(-v, &mut self.way);
        } else {
            self.way.push('L');
            number(u, &mut self.way);
            self.way.push(' ');
            number(-v, &mut self.way);
        }
        self.at = Some([u, v]);
        self
    }

    /// Draws a closed ring.
    pub(super) fn ring(self, points: &[[f64; 2]]) -> Pen {
        let Some((&[u, v], rest)) = points.split_first() else { return self };
        let mut pen = rest.iter().fold(self.to(u, v), |pen, &[u, v]| pen.line(u, v));
        pen.way.push('Z');
        pen
    }

    /// Draws a rectangle: left, lower, right, upper.
    pub(super) fn rectangle(self, [left, lower, right, upper]: [f64; 4]) -> Pen {
        self.ring(&[[left, lower], [right, lower], [right, upper], [left, upper]])
    }

    /// The way, for the attribute `d`.
    pub(super) fn way(self) -> String {
        self.way
    }
}

/// Closed rings, for the attribute `d`.
pub(super) fn rings(rings: &[Vec<[f64; 2]>]) -> String {
    rings.iter().fold(Pen::default(), |pen, ring| pen.ring(ring)).way()
}

/// A `transform` to a point of the slope, turned clockwise by so many degrees.
pub(super) fn placed(u: f64, v: f64, degrees: f64) -> String {
    let mut text = String::from("translate(");
    number(u, &mut text);
    text.push(' ');
    number(-v, &mut text);
    text.push(')');
    if degrees != 0.0 {
        text.push_str(" rotate(");
        number(degrees, &mut text);
        text.push(')');
    }
    text
}

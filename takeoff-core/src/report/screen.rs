//! A page of text for a screen.
use super::plain::{columns, printable, wrap};

/// Columns of a line at most.
const WIDTH: usize = 80;

/// Lines of text that never pass the width.
#[derive(Default)]
pub(super) struct Page {
    lines: Vec<String>,
}

impl Page {
    /// A page that begins with a title, underlined.
    pub(super) fn titled(title: &str) -> Page {
        let mut page = Page::default();
        page.text("", "", title);
        let widest = page.lines.iter().map(|line| columns(line)).max();
        page.lines.push("=".repeat(widest.unwrap_or(0)));
        page
    }

    /// A blank line and a heading.
    pub(super) fn head(&mut self, text: &str) {
        self.lines.push(String::new());
        self.text("", "", text);
    }

    /// A count with what it counts.
    pub(super) fn counted(&mut self, count: u64, what: &str) {
        self.text(&format!("  {count:>6}  "), "          ", what);
    }

    /// A paragraph: its first line begins with `first`, the others with `rest`.
    pub(super) fn text(&mut self, first: &str, rest: &str, text: &str) {
        self.lines.extend(wrap(first, rest, &printable(text), WIDTH));
    }

    pub(super) fn done(self) -> String {
        self.lines.iter().flat_map(|line| [line.as_str(), "\n"]).collect()
    }
}

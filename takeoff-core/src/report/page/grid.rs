//! A table of the page.
use super::super::markup::Markup;
use super::prose::{names, prose};

/// Rows of which more than so many are folded away.
const MANY: usize = 60;

/// A table that is filled column by column; a column with nothing in it is left out.
pub(super) struct Grid<'r, R> {
    caption: String,
    rows: &'r [R],
    columns: Vec<Column>,
    folded: bool,
}

struct Column {
    head: &'static str,
    look: Look,
    /// Markup, row by row.
    cells: Vec<String>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Look {
    /// The cell that names the row.
    Name,
    Words,
    Number,
    /// Short names that are not broken.
    Tiles,
}

impl<'r, R> Grid<'r, R> {
    /// A table with this caption, a row each of these.
    pub(super) fn new(caption: impl Into<String>, rows: &'r [R]) -> Grid<'r, R> {
        Grid { caption: caption.into(), rows, columns: Vec::new(), folded: rows.len() > MANY }
    }

    /// Folded away too where it tells of more than so many things.
    pub(super) fn folded_beyond(self, most: usize, things: usize) -> Grid<'r, R> {
        Grid { folded: self.folded || things > most, ..self }
    }

    /// The column that says what a row is about.
    pub(super) fn name(self, head: &'static str, cell: impl Fn(&R) -> String) -> Self {
        self.column(head, Look::Name, |html, row| prose(html, &cell(row)))
    }

    /// A column of words.
    pub(super) fn words(self, head: &'static str, cell: impl Fn(&R) -> String) -> Self {
        self.column(head, Look::Words, |html, row| html.say(&cell(row)))
    }

    /// A column of words, left out where all rows agree.
    pub(super) fn words_if_several(self, head: &'static str, cell: impl Fn(&R) -> String) -> Self {
        let several = self.rows.windows(2).any(|pair| cell(&pair[0]) != cell(&pair[1]));
        if several { self.words(head, cell) } else { self }
    }

    /// A column of quantities.
    pub(super) fn number(self, head: &'static str, cell: impl Fn(&R) -> String) -> Self {
        self.column(head, Look::Number, |html, row| html.say(&cell(row)))
    }

    /// A column of names from the job, several in a cell.
    pub(super) fn names(self, head: &'static str, cell: impl Fn(&R) -> &[String]) -> Self {
        self.column(head, Look::Words, |html, row| names(html, cell(row)))
    }

    /// A column of names of tiles, several in a cell.
    pub(super) fn tiles(self, head: &'static str, cell: impl Fn(&R) -> &[String]) -> Self {
        self.column(head, Look::Tiles, |html, row| names(html, cell(row)))
    }

    fn column(mut self, head: &'static str, look: Look, cell: impl Fn(&mut Markup, &R)) -> Self {
        let written = |row: &R| {
            let mut html = Markup::default();
            cell(&mut html, row);
            html.done()
        };
        let cells: Vec<String> = self.rows.iter().map(written).collect();
        if cells.iter().any(|cell| !cell.is_empty()) {
            self.columns.push(Column { head, look, cells });
        }
        self
    }

    /// Writes the table, if it has rows; a long one is folded away, and then prints only if it is opened.
    pub(super) fn write(&self, html: &mut Markup) {
        match self.rows.len() {
            0 => {}
            rows if self.folded => html.tag("details").with("class", "long").holds(|html| {
                html.tag("summary").text(&format!("{}: {rows} rows", self.caption));
                self.table(html);
            }),
            _ => self.table(html),
        }
    }

    fn table(&self, html: &mut Markup) {
        // A table wider than a telephone is moved sideways, by keys too.
        html.tag("div")
            .with("class", "wide")
            .with("role", "group")
            .with("aria-label", self.caption.as_str())
            .with("tabindex", "0")
            .holds(|html| html.tag("table").holds(|html| self.content(html)));
    }

    fn content(&self, html: &mut Markup) {
        html.tag("caption").text(&self.caption);
        html.tag("thead").holds(|html| {
            html.tag("tr").holds(|html| {
                for Column { head, look, .. } in &self.columns {
                    html.tag("th").with("scope", "col").with("class", look.class()).text(head);
                }
            });
        });
        html.tag("tbody").holds(|html| {
            for row in 0..self.rows.len() {
                html.tag("tr").holds(|html| {
                    for Column { look, cells, .. } in &self.columns {
                        let tag = match look {
                            Look::Name => html.tag("th").with("scope", "row"),
                            _ => html.tag("td"),
                        };
                        let cell = cells.get(row).map_or("", String::as_str);
                        tag.with("class", look.class()).holds(|html| html.put(cell));
                    }
                });
            }
        });
    }
}

impl Look {
    fn class(self) -> &'static str {
        match self {
            Look::Name => "name",
            Look::Words => "words",
            Look::Number => "number",
            Look::Tiles => "tiles",
        }
    }
}

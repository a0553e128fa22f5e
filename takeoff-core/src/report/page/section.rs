//! A section of the page.
use super::super::markup::Markup;

/// A part of the page that the contents name.
pub(super) struct Section {
    /// Its name in links.
    pub(super) id: &'static str,
    /// Its heading.
    pub(super) title: &'static str,
    /// Starts a new printed page.
    on_new_page: bool,
    body: String,
}

impl Section {
    /// A section that on paper follows the one before.
    pub(super) fn new(id: &'static str, title: &'static str, fill: impl FnOnce(&mut Markup)) -> Section {
        let mut body = Markup::default();
        fill(&mut body);
        Section { id, title, on_new_page: false, body: body.done() }
    }

    /// This section, starting a new printed page.
    pub(super) fn on_new_page(self) -> Section {
        Section { on_new_page: true, ..self }
    }

    /// Writes it with its heading.
    pub(super) fn write(&self, html: &mut Markup) {
        let title_id = format!("{}-title", self.id);
        html.tag("section")
            .with("id", self.id)
            .with("class", if self.on_new_page { "on-new-page" } else { "follows" })
            .with("aria-labelledby", title_id.as_str())
            .holds(|html| {
                html.tag("h2").with("id", title_id.as_str()).text(self.title);
                html.put(&self.body);
            });
    }
}

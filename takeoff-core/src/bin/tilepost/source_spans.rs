//! Spans of JSON Pointers in the text of a job file.
use std::collections::BTreeMap;
use std::ops::Range;

use serde_json::value::RawValue;
use toml::de::{DeTable, DeValue};

use crate::input::Notation;

/// Byte range of the value at each pointer; of a missing value, the range of the nearest value around it. `None` where
/// the text can't be parsed.
pub(crate) fn source_spans(text: &str, notation: Notation, pointers: &[&str]) -> Vec<Option<Range<usize>>> {
    let wanted = pointers.iter().enumerate().map(|(index, pointer)| (index, tokens(pointer))).collect();
    let mut spans = Spans { text, found: vec![None; pointers.len()] };
    match notation {
        Notation::Json => {
            if let Ok(raw) = serde_json::from_str(text) {
                spans.json(raw, wanted, 0);
            }
        }
        Notation::Toml => {
            if let Ok(root) = DeTable::parse(text) {
                let span = root.span();
                spans.toml(&DeValue::Table(root.into_inner()), span, wanted, 0);
            }
        }
    }
    spans.found
}

/// `/slopes/0/a~1b` as `slopes`, `0`, `a/b` (RFC 6901).
fn tokens(pointer: &str) -> Vec<String> {
    pointer.split('/').skip(1).map(|token| token.replace("~1", "/").replace("~0", "~")).collect()
}

/// Number of each pointer, and its tokens.
type Wanted = Vec<(usize, Vec<String>)>;

struct Spans<'a> {
    text: &'a str,
    found: Vec<Option<Range<usize>>>,
}

impl<'a> Spans<'a> {
    /// Notes the span for all wanted pointers; returns those that lead deeper, by next token.
    fn note(&mut self, span: Range<usize>, wanted: Wanted, depth: usize) -> BTreeMap<String, Wanted> {
        let mut deeper: BTreeMap<String, Wanted> = BTreeMap::new();
        for (index, tokens) in wanted {
            self.found[index] = Some(span.clone());
            if let Some(token) = tokens.get(depth).cloned() {
                deeper.entry(token).or_default().push((index, tokens));
            }
        }
        deeper
    }

    fn json(&mut self, raw: &'a RawValue, wanted: Wanted, depth: usize) {
        // A raw value borrows from the text, so the distance of the two addresses is its offset.
        let start = raw.get().as_ptr().addr() - self.text.as_ptr().addr();
        let deeper = self.note(start..start + raw.get().len(), wanted, depth);
        if deeper.is_empty() {
            return;
        }
        if let Ok(fields) = serde_json::from_str::<BTreeMap<String, &RawValue>>(raw.get()) {
            for (token, wanted) in deeper {
                if let Some(field) = fields.get(&token) {
                    self.json(field, wanted, depth + 1);
                }
            }
        } else if let Ok(items) = serde_json::from_str::<Vec<&RawValue>>(raw.get()) {
            for (token, wanted) in deeper {
                if let Some(item) = token.parse().ok().and_then(|index: usize| items.get(index)) {
                    self.json(item, wanted, depth + 1);
                }
            }
        }
    }

    fn toml(&mut self, value: &DeValue<'_>, span: Range<usize>, wanted: Wanted, depth: usize) {
        for (token, wanted) in self.note(span, wanted, depth) {
            let child = match value {
                DeValue::Table(table) => table.get(token.as_str()),
                DeValue::Array(items) => token.parse().ok().and_then(|index: usize| items.get(index)),
                _ => None,
            };
            if let Some(child) = child {
                self.toml(child.get_ref(), child.span(), wanted, depth + 1);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn source(text: &str, notation: Notation, pointer: &str) -> Option<String> {
        let [span] = <[_; 1]>::try_from(source_spans(text, notation, &[pointer])).ok()?;
        span.and_then(|span| text.get(span)).map(str::to_owned)
    }

    #[test]
    fn a_pointer_leads_to_its_value_in_json() {
        let text = r#" { "a/b": [1, {"c": "sí"} ], "d": null } "#;
        let json = |pointer| source(text, Notation::Json, pointer);
        assert_eq!(json("/a~1b/1/c").as_deref(), Some("\"sí\""));
        assert_eq!(json("/a~1b/0").as_deref(), Some("1"));
        assert_eq!(json("/d").as_deref(), Some("null"));
        assert_eq!(json("/a~1b/1/missing/deep").as_deref(), Some(r#"{"c": "sí"}"#));
        assert_eq!(json("").as_deref(), Some(text.trim()));
        assert_eq!(source("{", Notation::Json, "/a"), None);
    }

    #[test]
    fn a_pointer_leads_to_its_value_in_toml() {
        let text = "name = 'x'\n[[slopes]]\npitch = '5:12'\nat = [1, 2]\n";
        let toml = |pointer| source(text, Notation::Toml, pointer);
        assert_eq!(toml("/slopes/0/pitch").as_deref(), Some("'5:12'"));
        assert_eq!(toml("/slopes/0/at/1").as_deref(), Some("2"));
        assert_eq!(toml("/name").as_deref(), Some("'x'"));
    }
}

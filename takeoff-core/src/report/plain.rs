//! Plain text: numbers that every reader takes back, names without control characters, lines that fit.
use unicode_width::UnicodeWidthChar;

/// A number with at most 15 significant digits and no exponent.
///
/// Fifteen digits are what every reader of decimal text gives back exactly, the fast parsers of
/// spreadsheets and data frames included; lengths of whole nanometres up to 10 km take fourteen.
pub(super) fn number(value: f64) -> String {
    let digits = format!("{value:.14e}");
    // Adding zero turns −0 into 0.
    let rounded = digits.parse::<f64>().unwrap_or(value) + 0.0;
    rounded.to_string()
}

/// The text with control characters and marks that turn the writing direction shown as `�`: a name in
/// a job file must not drive a terminal or break a drawing.
pub(super) fn printable(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            '\t' | '\n' | '\r' => ' ',
            '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => '\u{fffd}',
            '\u{fffe}' | '\u{ffff}' => '\u{fffd}',
            c if c.is_control() => '\u{fffd}',
            c => c,
        })
        .collect()
}

/// Width of a text on a terminal, in columns.
pub(super) fn columns(text: &str) -> usize {
    text.chars().map(column_width).sum()
}

fn column_width(c: char) -> usize {
    c.width().unwrap_or(0)
}

/// The text, cut to so many columns with `…` at the end where it is longer.
pub(super) fn shortened(text: &str, width: usize) -> String {
    if columns(text) <= width {
        return text.to_owned();
    }
    let mut short = head(text, width.saturating_sub(1)).to_owned();
    short.push('…');
    short
}

/// Lines of at most `width` columns: the first begins with `first`, the others with `rest`. A word
/// longer than a line is broken.
pub(super) fn wrap(first: &str, rest: &str, text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = first.to_owned();
    let mut empty = true;
    for mut word in text.split_whitespace() {
        if !empty && columns(&line) + 1 + columns(word) > width {
            lines.push(std::mem::replace(&mut line, rest.to_owned()));
            empty = true;
        }
        while columns(&line) + columns(word) > width {
            let part = head(word, width.saturating_sub(columns(&line)));
            // A line too narrow for one letter holds it anyway.
            let part = if part.is_empty() { first_letter(word) } else { part };
            line.push_str(part);
            lines.push(std::mem::replace(&mut line, rest.to_owned()));
            word = &word[part.len()..];
        }
        if word.is_empty() {
            continue;
        }
        if !empty {
            line.push(' ');
        }
        line.push_str(word);
        empty = false;
    }
    if !empty || lines.is_empty() {
        lines.push(line.trim_end().to_owned());
    }
    lines
}

/// The longest prefix of a text at most `width` columns wide.
fn head(text: &str, width: usize) -> &str {
    let mut used = 0;
    let end = text.char_indices().find(|&(_, c)| {
        used += column_width(c);
        used > width
    });
    end.map_or(text, |(at, _)| &text[..at])
}

fn first_letter(text: &str) -> &str {
    let mut letters = text.chars();
    letters.next();
    &text[..text.len() - letters.as_str().len()]
}

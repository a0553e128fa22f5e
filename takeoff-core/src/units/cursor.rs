//! A place in what the user wrote, read a character at a time.
use super::error::{TRAILING_TEXT, UnitError, quoted};

/// A reader of one written quantity. It sees typographic characters as their plain forms, while the
/// slices it hands out are the user's own text, for error messages.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'a> {
    /// The whole text.
    pub(super) text: &'a str,
    /// What to write instead, for the help of an error that is not about a detail.
    pub(super) expected: &'static str,
    at: usize,
}

impl<'a> Cursor<'a> {
    pub(super) fn new(text: &'a str, expected: &'static str) -> Cursor<'a> {
        Cursor { text, expected, at: 0 }
    }

    /// What has not been read yet.
    pub(super) fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    /// What has been read since `start`, an earlier state of this cursor.
    pub(super) fn since(&self, start: Cursor<'a>) -> &'a str {
        self.text.get(start.at..self.at).unwrap_or_default().trim()
    }

    /// The next character in its plain form.
    pub(super) fn peek(&self) -> Option<char> {
        self.rest().chars().next().map(plain)
    }

    /// The next character in its plain form, read.
    pub(super) fn next(&mut self) -> Option<char> {
        let c = self.rest().chars().next()?;
        self.at += c.len_utf8();
        Some(plain(c))
    }

    /// Reads the next character if it is `wanted`.
    pub(super) fn eat(&mut self, wanted: char) -> bool {
        let found = self.peek() == Some(wanted);
        if found {
            self.next();
        }
        found
    }

    /// Reads the characters up to the first for which `belongs` does not hold.
    pub(super) fn take_while(&mut self, belongs: impl Fn(char) -> bool) -> &'a str {
        let start = *self;
        while self.peek().is_some_and(&belongs) {
            self.next();
        }
        self.text.get(start.at..self.at).unwrap_or_default()
    }

    pub(super) fn skip_spaces(&mut self) {
        self.take_while(|c| c == ' ');
    }

    /// Reads a leading minus sign.
    pub(super) fn minus(&mut self) -> bool {
        self.skip_spaces();
        let negative = self.eat('-');
        self.skip_spaces();
        negative
    }

    /// Nothing but spaces may follow.
    pub(super) fn end(mut self) -> Result<(), UnitError> {
        self.skip_spaces();
        if self.rest().is_empty() {
            return Ok(());
        }
        let message = format!("{} is left over at the end of {}", quoted(self.rest()), quoted(self.text));
        Err(UnitError::new(TRAILING_TEXT, message, self.expected))
    }
}

/// The plain form of a typographic character.
fn plain(c: char) -> char {
    match c {
        // hyphen, non-breaking hyphen, figure dash, en dash, minus sign
        '\u{2010}' | '\u{2011}' | '\u{2012}' | '\u{2013}' | '\u{2212}' => '-',
        '′' | '’' | '‘' | 'ʹ' => '\'',
        '″' | '”' | '“' | 'ʺ' => '"',
        '⁄' | '∕' => '/',
        '∶' => ':',
        c if c.is_whitespace() => ' ',
        c => c,
    }
}

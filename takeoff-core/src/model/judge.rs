//! Judgement of one noun: what its values have to keep to, whoever gives them.
//!
//! A noun's builder holds plain values. Its `judge` weighs them against each other and reports every problem with a path
//! from the noun (`/width`). The reader of job files judges with what somebody wrote, and puts the noun's own place in
//! front; `build` judges the values alone.
use super::{Assumptions, Code, Display, Problem, Problems};
use crate::model::range::Range;
use crate::units::Length;

/// A value on its way into a noun.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Input<T> {
    /// Nobody gives it.
    #[default]
    Missing,
    /// It is given and can't be read, and that is reported already.
    Unread,
    /// It is given.
    Given(T),
}

impl<T> Input<T> {
    /// The value, if it is given and readable.
    pub(crate) fn given(self) -> Option<T> {
        match self {
            Input::Given(value) => Some(value),
            Input::Missing | Input::Unread => None,
        }
    }

    /// Whether it is given, readable or not.
    pub(crate) fn is_given(&self) -> bool {
        !matches!(self, Input::Missing)
    }
}

/// Source of a noun's values.
pub(crate) trait Source {
    /// The text of a value in backticks; `None` where nobody wrote one.
    fn written(&self, path: &str) -> Option<String>;

    /// The JSON Pointer of a value, from its path in the noun.
    fn pointer(&self, path: &str) -> String;
}

/// Values that nobody wrote in a file.
struct Alone;

impl Source for Alone {
    fn written(&self, _: &str) -> Option<String> {
        None
    }

    fn pointer(&self, path: &str) -> String {
        path.to_owned()
    }
}

/// The judgement of one noun in progress.
pub(crate) struct Judge<'a> {
    source: &'a dyn Source,
    /// The values in force that somebody assumed.
    pub(crate) assumptions: &'a mut Assumptions,
    problems: Vec<Problem>,
}

impl<'a> Judge<'a> {
    pub(crate) fn new(source: &'a dyn Source, assumptions: &'a mut Assumptions) -> Judge<'a> {
        Judge { source, assumptions, problems: Vec::new() }
    }

    /// Judges values that nobody wrote in a file: the noun, or every problem with it.
    pub(crate) fn alone<T>(judged: impl FnOnce(&mut Judge<'_>) -> Option<T>) -> Result<T, Problems> {
        let mut assumptions = Assumptions::new(Display::default());
        let mut judge = Judge::new(&Alone, &mut assumptions);
        let noun = judged(&mut judge);
        match (noun, judge.problems) {
            (Some(noun), problems) if problems.is_empty() => Ok(noun),
            (_, problems) => Err(problems.into()),
        }
    }

    pub(crate) fn into_problems(self) -> Vec<Problem> {
        self.problems
    }

    /// Reports a problem at a path from the noun.
    pub(crate) fn report(
        &mut self,
        path: &str,
        code: Code,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.problems.push(Problem::new(code, message, help, path));
    }

    /// A length in backticks: as somebody wrote it, or as it prints.
    pub(crate) fn shown(&self, path: &str, length: Length) -> String {
        let printed = || format!("`{}`", self.assumptions.display().length(length));
        self.source.written(path).unwrap_or_else(printed)
    }

    /// The JSON Pointer of a value.
    pub(crate) fn pointer(&self, path: &str) -> String {
        self.source.pointer(path)
    }

    /// A value that has to be given: of the object at `path`, called `name`.
    pub(crate) fn needed<T>(&mut self, path: &str, name: &str, value: Input<T>, expects: &str) -> Option<T> {
        if let Input::Missing = value {
            let message = format!("`{name}` is missing");
            self.report(path, Code::MissingField, message, format!("add `{name}`: {expects}"));
        }
        value.given()
    }

    /// A length that has to be given and to lie in its range.
    pub(crate) fn length(
        &mut self,
        path: &str,
        name: &str,
        value: Input<Length>,
        range: Range,
    ) -> Option<Length> {
        let length = self.needed(path, name, value, LENGTH)?;
        self.in_range(path, name, length, range)
    }

    /// A length that lies in its range where it is given.
    pub(crate) fn optional_length(
        &mut self,
        path: &str,
        name: &str,
        value: Input<Length>,
        range: Range,
    ) -> Option<Length> {
        let length = value.given()?;
        self.in_range(path, name, length, range)
    }

    fn in_range(&mut self, path: &str, name: &str, length: Length, range: Range) -> Option<Length> {
        if range.contains(length) {
            return Some(length);
        }
        let path = format!("{path}/{name}");
        let (message, help) = range.refusal(Some(name), &self.shown(&path, length));
        self.report(&path, Code::OutOfRange, message, help);
        None
    }

    /// A name: not blank, and short enough for a table.
    pub(crate) fn name(&mut self, path: &str, name: &str) -> Option<String> {
        match refused_name(name) {
            None => Some(name.to_owned()),
            Some((code, message, help)) => {
                self.report(path, code, message, help);
                None
            }
        }
    }

    /// The one of several ways in which a thing is said; reports where `who` says it in none or in more than one.
    pub(crate) fn one_way<const N: usize>(
        &mut self,
        path: &str,
        who: &str,
        used: [bool; N],
        ways: &str,
    ) -> Option<usize> {
        let how_many = used.iter().filter(|used| **used).count();
        if how_many == 1 {
            return used.iter().position(|used| *used);
        }
        let message = match how_many {
            0 => format!("{who} does not say enough"),
            _ => format!("{who} says one thing in more than one way"),
        };
        self.report(path, Code::OneWay, message, format!("give either {ways}"));
        None
    }
}

/// A length as somebody writes it.
pub(crate) const LENGTH: &str = "a length with its unit in quotes, such as `\"16 1/2 in\"` or `\"420 mm\"`";

/// The most letters of a name.
pub(crate) const LONGEST_NAME: usize = 200;

/// Reason why a text is no name.
pub(crate) fn refused_name(name: &str) -> Option<(Code, String, &'static str)> {
    if name.trim().is_empty() {
        let message = "a name is empty".to_owned();
        return Some((Code::EmptyName, message, "give it a name, it is shown in every table"));
    }
    if name.chars().count() > LONGEST_NAME {
        let message = format!("the name {} has more than {LONGEST_NAME} letters", quoted(name));
        return Some((Code::OutOfRange, message, "give it a shorter one, it is shown in every table"));
    }
    if let Some(unseen) = name.chars().find(|&c| is_unseen(c)) {
        let shown: String = name.chars().map(|c| if is_unseen(c) { '□' } else { c }).collect();
        let message = format!(
            "the name {} has a character that nobody sees, U+{:04X}, where `□` stands",
            quoted(&shown),
            u32::from(unseen)
        );
        let help = "type the name again, with plain spaces and without line breaks";
        return Some((Code::UnseenCharacter, message, help));
    }
    if name.trim() != name {
        let message = format!("the name {} begins or ends with a space", quoted(name));
        return Some((Code::UnseenCharacter, message, "take the space away"));
    }
    None
}

/// Tells whether a character leaves no mark on paper, a plain space aside: with it, two names would look alike.
///
/// Those are control characters, all other spaces, and what Unicode calls default ignorable (Unicode Character
/// Database, `DerivedCoreProperties.txt`: zero-width spaces and joiners, soft hyphen, marks of direction, variation
/// selectors, fillers, tags), beside it the marks of annotation and of hieroglyphs' layout, and the empty Braille cell.
pub(crate) fn is_unseen(c: char) -> bool {
    let other = matches!(
        c,
        '\u{ad}'
            | '\u{34f}'
            | '\u{61c}'
            | '\u{115f}'..='\u{1160}'
            | '\u{17b4}'..='\u{17b5}'
            | '\u{180b}'..='\u{180f}'
            | '\u{200b}'..='\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{2800}'
            | '\u{3164}'
            | '\u{fe00}'..='\u{fe0f}'
            | '\u{feff}'
            | '\u{ffa0}'
            | '\u{fff0}'..='\u{fffb}'
            | '\u{13430}'..='\u{1343f}'
            | '\u{1bca0}'..='\u{1bca3}'
            | '\u{1d173}'..='\u{1d17a}'
            | '\u{e0000}'..='\u{e0fff}'
    );
    other || c.is_control() || c.is_whitespace() && c != ' '
}

/// Somebody's input in backticks, shortened to a line.
pub(crate) fn quoted(text: &str) -> String {
    const MOST: usize = 60;
    let mut shown: String = text
        .chars()
        .take(MOST)
        .flat_map(|c| match c {
            '`' => vec!['\''],
            c if c.is_control() => c.escape_debug().collect(),
            c => vec![c],
        })
        .collect();
    if text.chars().nth(MOST).is_some() {
        shown.push('…');
    }
    format!("`{shown}`")
}

//! From text to a [`Document`]: strict, in bounded memory, and every duplicate key found.
use std::borrow::Cow;
use std::collections::BTreeSet;
use std::fmt;

use serde::Deserializer;
use serde::de::{self, DeserializeSeed, MapAccess, SeqAccess, Visitor};
use serde_json::Number;

use super::decode::quoted;
use super::document::{At, Document, Key, Value};
use crate::model::{Code, Problem};

/// Largest job file or CSV file that is read, in bytes.
pub const MOST_BYTES: usize = 64 << 20;
/// The most values that a document may hold: enough for a slope with all the posts it may have.
const MOST_VALUES: usize = 6_000_000;
/// The deepest nesting of lists and objects; a job file has ten.
const MOST_DEEP: usize = 64;
/// The most duplicate keys that are worth listing.
const MOST_TWICE: usize = 100;

/// A tree with what is wrong inside it, or why there is none.
pub(crate) type Outcome<'a> = Result<(Document<'a>, Vec<(At, Problem)>), Problem>;

/// Text of a file, without its byte order mark.
///
/// # Errors
///
/// More than [`MOST_BYTES`], or bytes that are not UTF-8; the message begins with `file`.
///
/// # Example
///
/// ```
/// let problem = takeoff_core::job::utf8_text(b"M\xfcller", "`posts.csv`").unwrap_err();
/// assert_eq!(problem.message, "`posts.csv` is not UTF-8 text: byte 2 fits no character");
/// ```
pub fn utf8_text<'a>(bytes: &'a [u8], file: &str) -> Result<&'a str, Problem> {
    if bytes.len() > MOST_BYTES {
        return Err(too_large(format!("{} bytes", bytes.len())));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let message = format!("{file} is not UTF-8 text: byte {} fits no character", error.valid_up_to() + 1);
        Problem::new(Code::NotUtf8, message, "save the file as UTF-8", "")
    })?;
    Ok(text.strip_prefix('\u{feff}').unwrap_or(text))
}

/// A tree out of JSON text (RFC 8259), with a problem for each key that an object gives twice.
pub(crate) fn json(text: &str) -> Outcome<'_> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.len() > MOST_BYTES {
        return Err(too_large(format!("{} bytes", text.len())));
    }
    let mut build = Build::default();
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = build.value(At::ROOT, Key::Root, 0).deserialize(&mut reader).and_then(|_| reader.end());
    match read {
        Ok(()) => Ok(build.finish()),
        Err(error) => Err(build.stopped.unwrap_or_else(|| not_json(text, &error))),
    }
}

/// A tree out of TOML text, the other form in which the command takes a job.
#[cfg(feature = "command")]
pub(crate) fn toml(text: &str) -> Outcome<'_> {
    if text.len() > MOST_BYTES {
        return Err(too_large(format!("{} bytes", text.len())));
    }
    let mut build = Build::default();
    let read = toml::Deserializer::parse(text)
        .and_then(|reader| build.value(At::ROOT, Key::Root, 0).deserialize(reader));
    match read {
        Ok(_) => Ok(build.finish()),
        Err(error) => Err(build.stopped.unwrap_or_else(|| {
            let place = error.span().map(|span| line_and_column(text, span.start)).unwrap_or_default();
            let message = format!("not valid TOML: {}{place}", error.message().trim().replace('\n', ", "));
            Problem::new(Code::Syntax, message, "mend the text there, then check the job again", "")
        })),
    }
}

#[cfg(feature = "command")]
fn line_and_column(text: &str, at: usize) -> String {
    let before = text.get(..at).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
    format!(" at line {line} column {column}")
}

fn not_json(text: &str, error: &serde_json::Error) -> Problem {
    let line = text.lines().nth(error.line().saturating_sub(1)).unwrap_or_default();
    // serde_json points at the byte it could not take, counted from 1: of `-Infinity` the one behind the minus.
    let (before, rest) = line.split_at_checked(error.column().saturating_sub(1)).unwrap_or_default();
    let word = ["NaN", "Infinity", "nan", "inf"].into_iter().find(|word| rest.starts_with(word));
    if let Some(word) = word {
        let minus = if before.ends_with('-') { "-" } else { "" };
        let message =
            format!("`{minus}{word}` at line {} column {} is not a number", error.line(), error.column());
        return Problem::new(Code::NotANumber, message, "write a number, or leave the field out", "");
    }
    let message = format!("not valid JSON: {error}");
    Problem::new(Code::Syntax, message, "mend the text there, then check the job again", "")
}

fn too_large(size: String) -> Problem {
    let message = format!("the job is too large: {size}");
    let help = format!(
        "a job file has at most {} MB and {MOST_VALUES} values: make several jobs of it",
        MOST_BYTES >> 20
    );
    Problem::new(Code::TooLarge, message, help, "")
}

/// A tree in the making.
#[derive(Default)]
struct Build<'a> {
    tree: Document<'a>,
    /// Objects that give a key twice, with the value that came first.
    twice: Vec<At>,
    /// Why reading was given up, where it is not the text's grammar.
    stopped: Option<Problem>,
}

impl<'a> Build<'a> {
    fn value<'b>(&'b mut self, parent: At, key: Key<'a>, depth: usize) -> OneValue<'a, 'b> {
        OneValue { build: self, parent, key, depth }
    }

    fn finish(self) -> (Document<'a>, Vec<(At, Problem)>) {
        let problems = self.twice.iter().map(|&at| {
            let message = format!("{} is given twice", quoted(self.tree.name(at).unwrap_or_default()));
            let help = "only one can hold: take the other out";
            (at, Problem::new(Code::DuplicateKey, message, help, ""))
        });
        let problems = problems.collect();
        (self.tree, problems)
    }
}

/// Reads the next value of the text into the tree.
struct OneValue<'a, 'b> {
    build: &'b mut Build<'a>,
    parent: At,
    key: Key<'a>,
    depth: usize,
}

impl<'a> OneValue<'a, '_> {
    fn add<E: de::Error>(self, value: Value<'a>) -> Result<At, E> {
        if self.build.tree.len() >= MOST_VALUES {
            self.build.stopped = Some(too_large(format!("more than {MOST_VALUES} values")));
            return Err(E::custom("too many values"));
        }
        Ok(self.build.tree.open(self.parent, self.key, value))
    }

    fn enter<E: de::Error>(&mut self) -> Result<(), E> {
        self.depth += 1;
        if self.depth <= MOST_DEEP {
            return Ok(());
        }
        let message = format!("lists and objects are nested more than {MOST_DEEP} deep");
        let help = "a job file has ten levels at most: look for brackets too many";
        self.build.stopped =
            Some(Problem::new(Code::TooDeep, message, help, self.build.tree.pointer(self.parent)));
        Err(E::custom("nested too deep"))
    }
}

impl<'a> DeserializeSeed<'a> for OneValue<'a, '_> {
    type Value = At;

    fn deserialize<D: Deserializer<'a>>(self, reader: D) -> Result<At, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'a> Visitor<'a> for OneValue<'a, '_> {
    type Value = At;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E: de::Error>(self) -> Result<At, E> {
        self.add(Value::Null)
    }

    fn visit_bool<E: de::Error>(self, value: bool) -> Result<At, E> {
        self.add(Value::Bool(value))
    }

    fn visit_i64<E: de::Error>(self, value: i64) -> Result<At, E> {
        self.add(Value::Number(value.into()))
    }

    fn visit_u64<E: de::Error>(self, value: u64) -> Result<At, E> {
        self.add(Value::Number(value.into()))
    }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<At, E> {
        match Number::from_f64(value) {
            Some(number) => self.add(Value::Number(number)),
            None => {
                let message = format!("`{value}` is not a number");
                let path = self.build.tree.pointer(self.parent);
                let help = "write a number, or leave the field out";
                self.build.stopped = Some(Problem::new(Code::NotANumber, message, help, path));
                Err(E::custom("not a number"))
            }
        }
    }

    fn visit_borrowed_str<E: de::Error>(self, value: &'a str) -> Result<At, E> {
        self.add(Value::Text(Cow::Borrowed(value)))
    }

    fn visit_str<E: de::Error>(self, value: &str) -> Result<At, E> {
        self.add(Value::Text(Cow::Owned(value.to_owned())))
    }

    fn visit_string<E: de::Error>(self, value: String) -> Result<At, E> {
        self.add(Value::Text(Cow::Owned(value)))
    }

    fn visit_seq<A: SeqAccess<'a>>(mut self, mut items: A) -> Result<At, A::Error> {
        self.enter()?;
        let OneValue { build, parent, key, depth } = self;
        let list = build.value(parent, key, depth).add(Value::List)?;
        let mut index = 0;
        while items.next_element_seed(build.value(list, Key::Index(index), depth))?.is_some() {
            index = index.saturating_add(1);
        }
        build.tree.close(list);
        Ok(list)
    }

    fn visit_map<A: MapAccess<'a>>(mut self, mut fields: A) -> Result<At, A::Error> {
        self.enter()?;
        let OneValue { build, parent, key, depth } = self;
        let object = build.value(parent, key, depth).add(Value::Object)?;
        let mut names = BTreeSet::new();
        while let Some(name) = fields.next_key_seed(Name)? {
            if names.insert(name.clone()) {
                fields.next_value_seed(build.value(object, Key::Name(name), depth))?;
            } else {
                fields.next_value::<de::IgnoredAny>()?;
                build.tree.close(object);
                if build.twice.len() < MOST_TWICE {
                    build.twice.extend(build.tree.child(object, &name));
                }
            }
        }
        build.tree.close(object);
        Ok(object)
    }
}

/// Reads a key, without a copy where the text has it as it is.
struct Name;

impl<'a> DeserializeSeed<'a> for Name {
    type Value = Cow<'a, str>;

    fn deserialize<D: Deserializer<'a>>(self, reader: D) -> Result<Self::Value, D::Error> {
        reader.deserialize_str(self)
    }
}

impl<'a> Visitor<'a> for Name {
    type Value = Cow<'a, str>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a name")
    }

    fn visit_borrowed_str<E: de::Error>(self, name: &'a str) -> Result<Self::Value, E> {
        Ok(Cow::Borrowed(name))
    }

    fn visit_str<E: de::Error>(self, name: &str) -> Result<Self::Value, E> {
        Ok(Cow::Owned(name.to_owned()))
    }
}

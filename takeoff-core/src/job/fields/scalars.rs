//! The plain kinds of value that a job file holds: how each is read, its range, and its schema.
use schemars::json_schema;

use crate::job::parse::decode::{Read, Reader, quoted};
use crate::job::parse::document::{At, Value};
use crate::model::{Code, LONGEST_NAME, refused_name};

/// The schema of a kind: under the kind's own name where ranges and examples are worth a name, else in place.
macro_rules! schema {
    ($name:ident: $schema:expr) => {
        $crate::job::fields::scalars::schema!($name, true, $schema);
    };
    ($name:ident by name: $schema:expr) => {
        $crate::job::fields::scalars::schema!($name, false, $schema);
    };
    ($name:ident, $in_place:literal, $schema:expr) => {
        impl schemars::JsonSchema for $name {
            fn inline_schema() -> bool {
                $in_place
            }
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                $schema
            }
        }
    };
}
pub(crate) use schema;

/// Any text.
pub(crate) struct Text;
schema!(Text: json_schema!({ "type": "string" }));

impl Read for Text {
    type Value = String;
    const EXPECTS: &'static str = "a text";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<String> {
        reader.text(at, Self::EXPECTS).map(str::to_owned)
    }
}

/// A name: not blank, short enough for a table, and without a character that nobody sees.
pub(crate) struct Name;
schema!(Name: json_schema!({ "type": "string", "minLength": 1, "maxLength": LONGEST_NAME }));

impl Name {
    /// The name, if it may be one; what is wrong is reported.
    pub(crate) fn check(name: &str, at: At, reader: &mut Reader<'_>) -> Option<String> {
        if let Some((code, message, help)) = refused_name(name) {
            reader.report(at, code, message, help);
            return None;
        }
        Some(name.to_owned())
    }
}

impl Read for Name {
    type Value = String;
    const EXPECTS: &'static str = "a name";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<String> {
        let name = reader.text(at, Self::EXPECTS)?;
        Name::check(name, at, reader)
    }
}

/// Yes or no.
pub(crate) struct Flag;
schema!(Flag: json_schema!({ "type": "boolean" }));

impl Read for Flag {
    type Value = bool;
    const EXPECTS: &'static str = "`true` or `false`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<bool> {
        match reader.tree.value(at) {
            Value::Bool(value) => Some(*value),
            _ => {
                reader.report_type(at, Self::EXPECTS);
                None
            }
        }
    }
}

/// The most that is counted.
const MOST: u32 = 1_000_000;

/// A row per kind of count: its range.
macro_rules! counts {
    ($( $(#[$doc:meta])* $name:ident: $least:literal, $most:expr; )*) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        schema!($name: json_schema!({ "type": "integer", "minimum": $least, "maximum": $most }));

        impl Read for $name {
            type Value = u32;
            const EXPECTS: &'static str = "a whole number, such as `2`";

            fn read(at: At, reader: &mut Reader<'_>) -> Option<u32> {
                let Value::Number(number) = reader.tree.value(at) else {
                    reader.report_type(at, Self::EXPECTS);
                    return None;
                };
                let count = number.as_u64().and_then(|count| u32::try_from(count).ok());
                if count.is_none_or(|count| !($least..=$most).contains(&count)) {
                    let message = format!("`{number}` is not a count from {} to {}", $least, $most);
                    reader.report(at, Code::OutOfRange, message, format!("write {}", Self::EXPECTS));
                    return None;
                }
                count
            }
        }
    )*};
}

counts! {
    /// How many.
    Count: 0, MOST;
    /// How many, one or more.
    OneOrMore: 1, MOST;
    /// How many take turns.
    Turns: 1, 8;
}

/// A row per kind of number: its range in words, the code of a number outside it, the test.
macro_rules! numbers {
    ($( $(#[$doc:meta])* $name:ident: $words:literal, $code:ident, |$value:ident| $holds:expr, $schema:tt; )*) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        schema!($name: json_schema!($schema));

        impl Read for $name {
            type Value = f64;
            const EXPECTS: &'static str = concat!("a number ", $words);

            fn read(at: At, reader: &mut Reader<'_>) -> Option<f64> {
                let number = match reader.tree.value(at) {
                    Value::Number(number) => number.as_f64(),
                    _ => None,
                };
                let Some($value) = number else {
                    reader.report_type(at, Self::EXPECTS);
                    return None;
                };
                if $holds {
                    return Some($value);
                }
                let name = reader.tree.name(at).unwrap_or("the number");
                let message = format!("{} must be {}: `{}` is not", quoted(name), $words, $value);
                reader.report(at, Code::$code, message, concat!("write a number ", $words));
                None
            }
        }
    )*};
}

numbers! {
    /// How likely something is, certainty left out.
    Chance: "from 0 up to, not including, 1", OutOfRange, |p| (0.0..1.0).contains(&p),
        { "type": "number", "minimum": 0, "exclusiveMaximum": 1 };
    /// How sure one wants to be: never certain.
    ServiceLevel: "between 0 and 1, both left out", ServiceLevel, |q| 0.0 < q && q < 1.0,
        { "type": "number", "exclusiveMinimum": 0, "exclusiveMaximum": 1 };
    /// What is added for loss, as a share of the need.
    Share: "from 0 to 10", OutOfRange, |s| (0.0..=10.0).contains(&s),
        { "type": "number", "minimum": 0, "maximum": 10 };
    /// What a value is multiplied by.
    Factor: "above 0, at most 10", OutOfRange, |f| 0.0 < f && f <= 10.0,
        { "type": "number", "exclusiveMinimum": 0, "maximum": 10 };
    /// A pressure coefficient away from the roof.
    Suction: "below 0, at least -10", OutOfRange, |c| (-10.0..0.0).contains(&c),
        { "type": "number", "minimum": -10, "exclusiveMaximum": 0 };
    /// Specific gravity of oven-dry wood.
    SpecificGravity: "from 0.2 to 1", OutOfRange, |g| (0.2..=1.0).contains(&g),
        { "type": "number", "minimum": 0.2, "maximum": 1 };
}

/// Version of the job format.
pub(crate) struct Format;
schema!(Format: json_schema!({ "const": Format::KNOWN }));

impl Format {
    const KNOWN: &'static str = "tilepost-job/1";
}

impl Read for Format {
    type Value = ();
    const EXPECTS: &'static str = "`\"tilepost-job/1\"`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<()> {
        let text = reader.text(at, Self::EXPECTS)?;
        if text == Format::KNOWN {
            return Some(());
        }
        let message = format!("the format {} is not one that this version reads", quoted(text));
        reader.report(at, Code::UnknownFormat, message, format!("write {}", Self::EXPECTS));
        None
    }
}

/// Offsets of the joints course by course, as fractions of a tile, repeating.
pub(crate) struct Bond;
schema!(Bond: json_schema!({
    "anyOf": [
        { "enum": ["straight", "half"] },
        { "type": "array", "items": { "type": "string", "pattern": r"^(0|[0-9]+/[0-9]+)$" }, "minItems": 1 },
    ],
    "examples": ["half", ["0", "1/3", "2/3"]],
}));

impl Bond {
    /// The finest fraction of a tile that a bond is made of.
    const FINEST: u32 = 1_000;
    /// The longest bond, in courses.
    const LONGEST: usize = 10_000;

    fn fraction(text: &str) -> Option<(u32, u32)> {
        let (top, over) = text.split_once('/').unwrap_or((text, "1"));
        let whole = |text: &str| text.trim().parse().ok().filter(|_| !text.contains(['+', '-']));
        let (top, over) = (whole(top)?, whole(over)?);
        (top < over && over <= Bond::FINEST).then_some((top, over))
    }
}

impl Read for Bond {
    type Value = Vec<(u32, u32)>;
    const EXPECTS: &'static str =
        "`\"straight\"`, `\"half\"`, or fractions such as `[\"0\", \"1/3\", \"2/3\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Self::Value> {
        let tree = reader.tree;
        match tree.value(at) {
            Value::Text(word) if word == "straight" => Some(vec![(0, 1)]),
            Value::Text(word) if word == "half" => Some(vec![(0, 1), (1, 2)]),
            Value::List if tree.children(at).next().is_none() => {
                let help = format!("write {}", Self::EXPECTS);
                reader.report(at, Code::BadFraction, "`bond` is a list without a fraction", help);
                None
            }
            Value::List if tree.children(at).nth(Bond::LONGEST).is_some() => {
                let message = format!("`bond` has more than {} fractions", Bond::LONGEST);
                reader.report(at, Code::TooMany, message, "write those that repeat, once");
                None
            }
            Value::List => {
                let fractions: Vec<_> = tree
                    .children(at)
                    .map(|item| {
                        let text = reader.text(item, "a fraction in quotes, such as `\"1/3\"`")?;
                        let fraction = Bond::fraction(text);
                        if fraction.is_none() {
                            let message = format!(
                                "{} is not a fraction of a tile, 0 or more and below 1",
                                quoted(text)
                            );
                            let help = format!("write one such as `1/3`, over {} at most", Bond::FINEST);
                            reader.report(item, Code::BadFraction, message, help);
                        }
                        fraction
                    })
                    .collect();
                fractions.into_iter().collect()
            }
            Value::Text(word) => {
                let message = format!("{} is no bond known here", quoted(word));
                let words = ["straight", "half"];
                reader.report_unknown(
                    at,
                    Code::UnknownChoice,
                    message,
                    word,
                    "write a list of fractions, or one of",
                    &words,
                );
                None
            }
            _ => {
                reader.report_type(at, Self::EXPECTS);
                None
            }
        }
    }
}

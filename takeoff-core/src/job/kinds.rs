//! The kinds of value that a job file holds: how each is read, its range, and its schema.
use std::borrow::Cow;
use std::marker::PhantomData;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{DeserializeOwned, Deserializer, Visitor, value};
use serde::forward_to_deserialize_any;

use super::SlopePoint;
use super::codes::Code;
use super::nearest::nearest;
use super::reader::{Field, Read, Reader, listed, quoted};
use super::tree::{At, Value};
use crate::units::{self, Length};

/// A kind's schema stands where it is used, under no name of its own.
macro_rules! schema {
    ($name:ident: $schema:expr) => {
        impl JsonSchema for $name {
            fn inline_schema() -> bool {
                true
            }
            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                $schema
            }
        }
    };
}

impl<K: Read> Read for Option<K> {
    type Value = Option<K::Value>;
    const EXPECTS: &'static str = K::EXPECTS;

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Self::Value> {
        match reader.tree.value(at) {
            Value::Null => Some(None),
            _ => K::read(at, reader).map(Some),
        }
    }

    fn absent() -> Option<Self::Value> {
        Some(None)
    }
}

/// Any text.
pub(super) struct Text;
schema!(Text: json_schema!({ "type": "string" }));

impl Read for Text {
    type Value = String;
    const EXPECTS: &'static str = "a text";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<String> {
        reader.text(at, Self::EXPECTS).map(str::to_owned)
    }
}

/// What something is called: not blank, and short enough for a table.
pub(super) struct Name;
schema!(Name: json_schema!({ "type": "string", "minLength": 1, "maxLength": Name::LONGEST }));

impl Name {
    const LONGEST: usize = 200;

    /// The name, if it may be one; what is wrong is reported.
    pub(super) fn check(name: &str, at: At, reader: &mut Reader<'_>) -> Option<String> {
        if name.trim().is_empty() {
            reader.report(
                at,
                Code::EmptyName,
                "a name is empty",
                "give it a name, it is shown in every table",
            );
            return None;
        }
        if name.chars().count() > Name::LONGEST {
            let message = format!("the name {} has more than {} letters", quoted(name), Name::LONGEST);
            reader.report(at, Code::OutOfRange, message, "give it a shorter one, it is shown in every table");
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
pub(super) struct Flag;
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

/// How many.
pub(super) struct Count;
schema!(Count: json_schema!({ "type": "integer", "minimum": 0, "maximum": Count::MOST }));

impl Count {
    const MOST: u32 = 1_000_000;
}

impl Read for Count {
    type Value = u32;
    const EXPECTS: &'static str = "a whole number, such as `2`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<u32> {
        let Value::Number(number) = reader.tree.value(at) else {
            reader.report_type(at, Self::EXPECTS);
            return None;
        };
        let count = number.as_u64().and_then(|count| u32::try_from(count).ok());
        if count.is_none_or(|count| count > Count::MOST) {
            let message = format!("`{number}` is not a count from 0 to {}", Count::MOST);
            reader.report(at, Code::OutOfRange, message, format!("write {}", Self::EXPECTS));
            return None;
        }
        count
    }
}

/// A row a kind of number: what it must be in words, how that is tested, and the code of one that is not.
macro_rules! numbers {
    ($( $(#[$doc:meta])* $name:ident: $words:literal, $code:ident, |$value:ident| $holds:expr, $schema:tt; )*) => {$(
        $(#[$doc])*
        pub(super) struct $name;
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
}

/// A row a kind of length: its range in words and in nanometres.
macro_rules! lengths {
    ($( $(#[$doc:meta])* $name:ident: $words:literal, $least:expr, $greatest:expr; )*) => {$(
        $(#[$doc])*
        pub(super) struct $name;
        schema!($name: json_schema!({
            "type": "string",
            "description": concat!("A length with its unit, ", $words, "."),
            "examples": ["16 1/2 in", "3 ft 4 1/2 in", "168 mm"],
        }));

        impl $name {
            /// The length, if it is in range; what is wrong is reported.
            pub(super) fn check(length: Length, written: &str, at: At, reader: &mut Reader<'_>) -> Option<Length> {
                if ($least..=$greatest).contains(&length.nm()) {
                    return Some(length);
                }
                let name = reader.tree.name(at).map(|name| format!("{} ", quoted(name))).unwrap_or_default();
                let message = format!("{name}must be {}: {} is not", $words, quoted(written));
                reader.report(at, Code::OutOfRange, message, concat!("write a length that is ", $words));
                None
            }
        }

        impl Read for $name {
            type Value = Length;
            const EXPECTS: &'static str = "a length with its unit in quotes, such as `\"16 1/2 in\"` or `\"420 mm\"`";

            fn read(at: At, reader: &mut Reader<'_>) -> Option<Length> {
                let text = reader.text(at, Self::EXPECTS)?;
                match Length::parse(text) {
                    Ok(length) => $name::check(length, text, at, reader),
                    Err(error) => {
                        reader.report_unit(at, error);
                        None
                    }
                }
            }
        }
    )*};
}

const MM: i64 = 1_000_000;
const METRE: i64 = 1_000 * MM;
const KM: i64 = 1_000 * METRE;

lengths! {
    /// Where something is, from the slope's origin.
    Position: "within 10 km", -10 * KM, 10 * KM;
    /// From one thing on the roof to another.
    Distance: "0 or more, at most 10 km", 0, 10 * KM;
    /// The way a roll or a row runs.
    Run: "above 0, at most 10 km", 1, 10 * KM;
    /// The size of a part.
    Size: "above 0, at most 10 m", 1, 10 * METRE;
    /// A gap or a lap between parts.
    Gap: "0 or more, at most 10 m", 0, 10 * METRE;
    /// A tile's length, width and cover width.
    TileSize: "from 10 mm to 10 m", 10 * MM, 10 * METRE;
}

/// A quantity that is kept as a number, by way of its parser in [`units`].
macro_rules! quantities {
    ($( $(#[$doc:meta])* $name:ident -> $value:ty: $expects:literal, $example:literal, $parse:expr; )*) => {$(
        $(#[$doc])*
        pub(super) struct $name;
        schema!($name: json_schema!({ "type": "string", "description": concat!($expects, "."), "examples": [$example] }));

        impl Read for $name {
            type Value = $value;
            const EXPECTS: &'static str = concat!($expects, ", such as `\"", $example, "\"`");

            fn read(at: At, reader: &mut Reader<'_>) -> Option<$value> {
                let text = reader.text(at, Self::EXPECTS)?;
                $parse(text).map_err(|error| reader.report_unit(at, error)).ok()
            }
        }
    )*};
}

quantities! {
    /// How steep a slope is.
    Pitch -> units::Pitch: "A pitch as rise:run, in degrees or percent", "5:12", units::Pitch::parse;
    /// A direction on the ground.
    Azimuth -> units::Azimuth: "An azimuth in degrees clockwise from north", "135 deg", units::Azimuth::parse;
    /// How much room a thing takes.
    Volume -> units::Volume: "A volume with its unit", "10.1 fl oz", some_volume;
    /// How heavy a thing is.
    Weight -> units::Weight: "A weight with its unit", "9.6 lb", units::Weight::parse;
}

fn some_volume(text: &str) -> Result<units::Volume, units::UnitError> {
    let volume = units::Volume::parse(text)?;
    if volume.mm3() > 0.0 {
        return Ok(volume);
    }
    let message = format!("{} is no volume at all", quoted(text));
    Err(units::UnitError { code: Code::OutOfRange.text(), message, help: "write what it holds".to_owned() })
}

/// One of the words of an enumeration.
pub(super) struct Choice<T>(PhantomData<T>);

impl<T: JsonSchema> JsonSchema for Choice<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }
    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}

impl<T: DeserializeOwned + JsonSchema> Read for Choice<T> {
    type Value = T;
    const EXPECTS: &'static str = "one of its words";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<T> {
        let text = reader.text(at, Self::EXPECTS)?;
        let mut words: &[&str] = &[];
        let read = T::deserialize(Word { text, words: &mut words });
        if read.is_err() {
            let help = match nearest(text, words.iter().copied()) {
                Some(meant) => format!("did you mean `{meant}`?"),
                None => format!("write one of {}", listed(words)),
            };
            let message = format!("{} is none of {}", quoted(text), listed(words));
            reader.report(at, Code::UnknownChoice, message, help);
        }
        read.ok()
    }
}

/// A word on its way into an enumeration, which on the way tells all the words it knows.
struct Word<'a, 'b> {
    text: &'a str,
    words: &'b mut &'static [&'static str],
}

impl<'de> Deserializer<'de> for Word<'de, '_> {
    type Error = value::Error;

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        words: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, value::Error> {
        *self.words = words;
        visitor.visit_enum(value::BorrowedStrDeserializer::new(self.text))
    }

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, value::Error> {
        visitor.visit_borrowed_str(self.text)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct identifier ignored_any
    }
}

/// A list of one kind of value.
pub(super) struct List<K>(PhantomData<K>);

impl<K: JsonSchema> JsonSchema for List<K> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        format!("List of {}", K::schema_name()).into()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "array", "items": generator.subschema_for::<K>() })
    }
}

/// The most values of a list that a slope may have: as many as posts.
pub(super) const MOST_ITEMS: usize = 1_000_000;

impl<K: Read> Read for List<K> {
    type Value = Vec<Field<K>>;
    const EXPECTS: &'static str = "a list in square brackets";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Vec<Field<K>>> {
        if *reader.tree.value(at) != Value::List {
            reader.report_type(at, Self::EXPECTS);
            return None;
        }
        let tree = reader.tree;
        let count = tree.children(at).count();
        if count > MOST_ITEMS {
            let message = format!("{count} values in one list are more than {MOST_ITEMS}");
            reader.report(at, Code::TooMany, message, "make several slopes or several jobs of it");
            return None;
        }
        Some(tree.children(at).map(|item| reader.item(item)).collect())
    }
}

/// Things by their names, in the order of the text.
pub(super) struct Map<K>(PhantomData<K>);

impl<K: JsonSchema> JsonSchema for Map<K> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> Cow<'static, str> {
        format!("Map of {}", K::schema_name()).into()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "object", "additionalProperties": generator.subschema_for::<K>() })
    }
}

impl<K: Read> Read for Map<K> {
    type Value = Vec<(String, Field<K>)>;
    const EXPECTS: &'static str = "an object that holds each under its name";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<Self::Value> {
        if *reader.tree.value(at) != Value::Object {
            reader.report_type(at, Self::EXPECTS);
            return None;
        }
        let tree = reader.tree;
        let mut named = Vec::new();
        for child in tree.children(at) {
            let name = Name::check(tree.name(child).unwrap_or_default(), child, reader);
            let value = reader.item(child);
            named.extend(name.map(|name| (name, value)));
        }
        Some(named)
    }
}

/// A point of a slope, `["4 ft 8 in", "3 ft 1 in"]`.
pub(super) struct Point;
schema!(Point: json_schema!({
    "type": "array", "items": { "type": "string" }, "minItems": 2, "maxItems": 2,
    "description": "A point of the slope: along the eave and up the slope, each a length with its unit.",
    "examples": [["4 ft 8 in", "3 ft 1 in"]],
}));

impl Read for Point {
    type Value = SlopePoint;
    const EXPECTS: &'static str = "a point, such as `[\"4 ft 8 in\", \"3 ft 1 in\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<SlopePoint> {
        let [u, v] = coordinates(at, reader, Self::EXPECTS)?;
        Some(SlopePoint { u, v })
    }
}

/// A point of the world, east, north and up.
pub(super) struct WorldPoint;
schema!(WorldPoint: json_schema!({
    "type": "array", "items": { "type": "string" }, "minItems": 3, "maxItems": 3,
    "description": "A point of the world: east, north, up, each a length with its unit.",
    "examples": [["12.5 m", "-3.2 m", "4.1 m"]],
}));

impl Read for WorldPoint {
    type Value = [Length; 3];
    const EXPECTS: &'static str = "a point, such as `[\"12.5 m\", \"-3.2 m\", \"4.1 m\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<[Length; 3]> {
        coordinates(at, reader, Self::EXPECTS)
    }
}

fn coordinates<const N: usize>(at: At, reader: &mut Reader<'_>, expects: &str) -> Option<[Length; N]> {
    let tree = reader.tree;
    if *tree.value(at) != Value::List || tree.children(at).count() != N {
        reader.report_type(at, expects);
        return None;
    }
    let read: Vec<Option<Length>> = tree.children(at).map(|child| Position::read(child, reader)).collect();
    read.into_iter().collect::<Option<Vec<_>>>()?.try_into().ok()
}

/// Which job file it is.
pub(super) struct Format;
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

/// How the joints of each course are moved, as fractions of a tile, over and over.
pub(super) struct Bond;
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
            Value::List if (1..=Bond::LONGEST).contains(&tree.children(at).count()) => {
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
                let message = format!("{} is none of `straight`, `half`", quoted(word));
                let help = match nearest(word, ["straight", "half"]) {
                    Some(meant) => format!("did you mean `{meant}`?"),
                    None => format!("write {}", Self::EXPECTS),
                };
                reader.report(at, Code::UnknownChoice, message, help);
                None
            }
            _ => {
                reader.report_type(at, Self::EXPECTS);
                None
            }
        }
    }
}

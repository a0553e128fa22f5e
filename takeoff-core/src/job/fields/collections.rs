//! Kinds of value that hold others: what may be left out, words of an enumeration, lists, and things by name.
use std::borrow::Cow;
use std::marker::PhantomData;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{DeserializeOwned, Deserializer, Visitor, value};
use serde::forward_to_deserialize_any;

use super::scalars::Name;
use crate::job::parse::decode::{Field, Read, Reader, quoted};
use crate::job::parse::document::{At, Value};
use crate::model::Code;

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

/// One of the words of an enumeration.
pub(crate) struct Choice<T>(PhantomData<T>);

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
            let message = format!("{} is none of the words known here", quoted(text));
            reader.report_unknown(at, Code::UnknownChoice, message, text, "write one of", words);
        }
        read.ok()
    }
}

/// Deserializes a variant of an enumeration and records its valid names.
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
pub(crate) struct List<K>(PhantomData<K>);

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

/// The most values of a list: as many as a slope may have posts.
pub(crate) const MOST_ITEMS: usize = 1_000_000;

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
pub(crate) struct Map<K>(PhantomData<K>);

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

//! From a [`Document`] to typed fields, every problem on the way collected with its place.
use std::collections::BTreeMap;

use schemars::JsonSchema;

use super::document::{At, Document, Value};
use super::suggest::suggest;
pub(crate) use crate::model::quoted;
use crate::model::{Assumptions, Code, Input, Judge, Problem, Severity, Source};
use crate::units::UnitError;

/// The texts of the files that a job names, by the name it gives.
pub type Files = BTreeMap<String, String>;

/// The most problems, and the most findings, that are worth listing.
const MOST_PROBLEMS: usize = 1_000;

/// The most known words that a help lists.
const SHOWN: usize = 30;

/// Reads values of a tree and keeps what is wrong with them.
pub(crate) struct Reader<'a> {
    pub(crate) tree: &'a Document<'a>,
    pub(crate) files: &'a Files,
    /// Every file that the job names, in the order of the text.
    pub(crate) files_named: Vec<String>,
    errors: Reports,
    findings: Reports,
    /// Beginning of messages: the place in a CSV file.
    prefix: String,
}

#[derive(Default)]
struct Reports {
    kept: Vec<(At, Problem)>,
    left_off: usize,
}

impl Reports {
    fn is_full(&self) -> bool {
        self.kept.len() >= MOST_PROBLEMS
    }
}

/// A way to read one kind of value.
pub(crate) trait Read: JsonSchema {
    /// The decoded value.
    type Value;
    /// Expected form, in words.
    const EXPECTS: &'static str;

    /// The value at a place, or nothing when it is reported to be wrong.
    fn read(at: At, reader: &mut Reader<'_>) -> Option<Self::Value>;

    /// Value of a field that is left out, if it may be.
    fn absent() -> Option<Self::Value> {
        None
    }
}

/// A field as read, with the place that problems with it name.
pub(crate) struct Field<K: Read> {
    /// The value's place; the object's, where the field is left out.
    pub(crate) at: At,
    value: Option<K::Value>,
}

impl<K: Read> Field<K> {
    pub(crate) fn new(at: At, value: Option<K::Value>) -> Field<K> {
        Field { at, value }
    }

    /// The value, unless it is wrong, and then that is reported.
    pub(crate) fn get(&self) -> Option<&K::Value> {
        self.value.as_ref()
    }

    /// The value itself.
    pub(crate) fn take(self) -> Option<K::Value> {
        self.value
    }
}

impl<K: Read> Field<K>
where
    K::Value: Copy,
{
    /// The value as a builder takes it. Where it is missing, that is reported.
    pub(crate) fn input(&self) -> Input<K::Value> {
        self.value.map_or(Input::Unread, Input::Given)
    }
}

impl<K: Read> Field<Option<K>>
where
    K::Value: Copy,
{
    /// The value as a builder takes it.
    pub(crate) fn optional_input(&self) -> Input<K::Value> {
        match self.value {
            Some(Some(value)) => Input::Given(value),
            Some(None) => Input::Missing,
            None => Input::Unread,
        }
    }
}

impl<K: Read> Field<Option<K>> {
    /// The value, if the field is given and right.
    pub(crate) fn given(&self) -> Option<&K::Value> {
        self.optional().flatten()
    }

    /// The value, or none where the field is left out; nothing where it is wrong.
    pub(crate) fn optional(&self) -> Option<Option<&K::Value>> {
        self.value.as_ref().map(Option::as_ref)
    }

    /// Whether the field is given, right or wrong.
    pub(crate) fn is_given(&self) -> bool {
        !matches!(self.value, Some(None))
    }
}

impl<'a> Reader<'a> {
    pub(crate) fn new(tree: &'a Document<'a>, files: &'a Files) -> Reader<'a> {
        let (errors, findings) = (Reports::default(), Reports::default());
        Reader { tree, files, files_named: Vec::new(), errors, findings, prefix: String::new() }
    }

    /// Keeps a problem or a finding.
    pub(crate) fn report(&mut self, at: At, code: Code, message: impl Into<String>, help: impl Into<String>) {
        self.keep(at, Problem::new(code, message, help, ""));
    }

    /// Keeps that somebody wrote a word that is not among the known ones; the help names the nearest, or `these`
    /// known ones.
    pub(crate) fn report_unknown(
        &mut self,
        at: At,
        code: Code,
        message: String,
        word: &str,
        these: &str,
        known: &[&str],
    ) {
        // Looking for the nearest word takes time: not for what is not listed any more.
        let meant = if self.errors.is_full() { None } else { suggest(word, known) };
        let help = match meant {
            Some(meant) => format!("did you mean `{meant}`?"),
            None => format!("{these} {}", listed(known.get(..SHOWN).unwrap_or(known))),
        };
        self.report(at, code, message, help);
    }

    /// Keeps what is wrong with a written quantity.
    pub(crate) fn report_unit(&mut self, at: At, error: UnitError) {
        self.keep(at, Problem::new(Code::of_unit(&error), error.message, error.help, ""));
    }

    /// Keeps a problem made elsewhere; its path is set here.
    pub(crate) fn keep(&mut self, at: At, mut problem: Problem) {
        let reports = match problem.severity {
            Severity::Error => &mut self.errors,
            Severity::Finding => &mut self.findings,
        };
        if !reports.is_full() {
            problem.path = self.tree.pointer(at);
            problem.message.insert_str(0, &self.prefix);
            reports.kept.push((at, problem));
        } else {
            reports.left_off = reports.left_off.saturating_add(1);
        }
    }

    /// Reads something whose problems begin with where it stands.
    pub(crate) fn within<T>(&mut self, prefix: String, read: impl FnOnce(&mut Reader<'a>) -> T) -> T {
        self.prefix = prefix;
        let value = read(self);
        self.prefix.clear();
        value
    }

    /// Keeps that a value is not of the kind expected.
    pub(crate) fn report_type(&mut self, at: At, expects: &str) {
        let found = match self.tree.value(at) {
            Value::Null => "`null`".to_owned(),
            Value::Bool(value) => format!("`{value}`"),
            Value::Number(value) => format!("the bare number `{value}`"),
            Value::Text(value) => quoted(value),
            Value::List => "a list".to_owned(),
            Value::Object => "an object".to_owned(),
        };
        let name = self.tree.name(at).map(|name| format!("{}: ", quoted(name))).unwrap_or_default();
        self.report(
            at,
            Code::WrongType,
            format!("{name}expected {expects}, found {found}"),
            format!("write {expects}"),
        );
    }

    /// Everything reported, in the order of the text: errors, then findings.
    pub(crate) fn into_reports(self) -> (Vec<Problem>, Vec<Problem>) {
        let listed = |reports: Reports, more: Code, what: &str| {
            let Reports { mut kept, left_off } = reports;
            kept.sort_by_key(|(at, _)| *at);
            let mut listed: Vec<Problem> = kept.into_iter().map(|(_, problem)| problem).collect();
            if left_off > 0 {
                let message = format!("{left_off} more {what} are not listed");
                listed.push(Problem::new(more, message, "mend those listed, then check the job again", ""));
            }
            listed
        };
        let errors = listed(self.errors, Code::ManyProblems, "problems");
        let findings = listed(self.findings, Code::ManyFindings, "findings");
        (errors, findings)
    }

    /// Whether the value is an object; reports where it is not, and each field of it that is not known.
    pub(crate) fn object(&mut self, at: At, known: &[&str], expects: &str) -> bool {
        if *self.tree.value(at) != Value::Object {
            self.report_type(at, expects);
            return false;
        }
        let tree = self.tree;
        for child in tree.children(at) {
            let name = tree.name(child).unwrap_or_default();
            if !known.contains(&name) {
                let message = format!("unknown field {}", quoted(name));
                self.report_unknown(child, Code::UnknownField, message, name, "the fields here are", known);
            }
        }
        true
    }

    /// A field of an object; reports where it is missing.
    pub(crate) fn field<K: Read>(&mut self, object: At, name: &str) -> Field<K> {
        match self.tree.child(object, name) {
            Some(at) => Field { at, value: K::read(at, self) },
            None => {
                let value = K::absent();
                if value.is_none() {
                    self.report_missing(object, name, K::EXPECTS);
                }
                Field { at: object, value }
            }
        }
    }

    /// A value that stands for itself.
    pub(crate) fn item<K: Read>(&mut self, at: At) -> Field<K> {
        Field { at, value: K::read(at, self) }
    }

    /// A field that has to be given because of what else is given; reports where it is not.
    pub(crate) fn needed<'f, K: Read>(
        &mut self,
        object: At,
        name: &str,
        field: &'f Field<Option<K>>,
    ) -> Option<&'f K::Value> {
        if !field.is_given() {
            self.report_missing(object, name, K::EXPECTS);
        }
        field.given()
    }

    /// The one of several ways in which a thing is said; reports where it is none or more than one.
    pub(crate) fn one_way<const N: usize>(&mut self, at: At, used: [bool; N], ways: &str) -> Option<usize> {
        let how_many = used.iter().filter(|used| **used).count();
        if how_many == 1 {
            return used.iter().position(|used| *used);
        }
        let name = self.tree.name(at).map_or("this".to_owned(), quoted);
        let message = match how_many {
            0 => format!("{name} does not say enough"),
            _ => format!("{name} says one thing in more than one way"),
        };
        self.report(at, Code::OneWay, message, format!("give either {ways}"));
        None
    }

    /// The text at a place, in backticks.
    pub(crate) fn written(&self, at: At) -> String {
        written(self.tree, at).unwrap_or_default()
    }

    /// Lets a noun judge its values, which stand at a place; its problems get the place in front of their paths.
    pub(crate) fn judge<T>(
        &mut self,
        at: At,
        assumptions: &mut Assumptions,
        judged: impl FnOnce(&mut Judge<'_>) -> T,
    ) -> T {
        let source = Noun { document: self.tree, at };
        let mut judge = Judge::new(&source, assumptions);
        let noun = judged(&mut judge);
        for problem in judge.into_problems() {
            let at = self.tree.find(at, &problem.path);
            self.keep(at, problem);
        }
        noun
    }

    fn report_missing(&mut self, object: At, name: &str, expects: &str) {
        self.report(
            object,
            Code::MissingField,
            format!("`{name}` is missing"),
            format!("add `{name}`: {expects}"),
        );
    }

    /// The text at a place; reports where it is none.
    pub(crate) fn text(&mut self, at: At, expects: &str) -> Option<&'a str> {
        match self.tree.value(at) {
            Value::Text(text) => Some(text),
            _ => {
                self.report_type(at, expects);
                None
            }
        }
    }
}

fn written(document: &Document<'_>, at: At) -> Option<String> {
    match document.value(at) {
        Value::Text(text) => Some(quoted(text)),
        Value::Number(number) => Some(format!("`{number}`")),
        _ => None,
    }
}

/// A noun as a document has it.
struct Noun<'a> {
    document: &'a Document<'a>,
    at: At,
}

impl Source for Noun<'_> {
    fn written(&self, path: &str) -> Option<String> {
        written(self.document, self.document.find(self.at, path))
    }

    fn pointer(&self, path: &str) -> String {
        self.document.pointer(self.document.find(self.at, path))
    }
}

/// Words in backticks, with commas.
pub(crate) fn listed(words: &[&str]) -> String {
    words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
}

/// Declares the objects of a job file: for each a struct of [`Field`]s, how to read it, and its schema.
///
/// The list of fields stands once, as somebody writes them, with the documentation that the schema shows.
macro_rules! objects {
    ($( $(#[doc = $doc:literal])* $(#[schemars($($rule:tt)*)])? struct $name:ident { $( $(#[doc = $about:literal])* $field:ident: $kind:ty, )* } )*) => {$(
        $(#[doc = $doc])*
        pub(crate) struct $name {
            $( pub(crate) $field: $crate::job::parse::decode::Field<$kind>, )*
        }

        impl $crate::job::parse::decode::Read for $name {
            type Value = $name;
            const EXPECTS: &'static str = "an object";

            fn read(at: $crate::job::parse::document::At, reader: &mut $crate::job::parse::decode::Reader<'_>) -> Option<$name> {
                let known = [$( stringify!($field).trim_start_matches("r#") ),*];
                if !reader.object(at, &known, Self::EXPECTS) {
                    return None;
                }
                let mut names = known.into_iter();
                Some($name { $( $field: reader.field(at, names.next().unwrap_or_default()), )* })
            }
        }

        const _: () = {
            $(#[doc = $doc])*
            #[derive(schemars::JsonSchema)]
            #[schemars(deny_unknown_fields, $($($rule)*)?)]
            #[allow(dead_code, reason = "only its schema is used")]
            struct Written { $( $(#[doc = $about])* $field: $kind, )* }

            impl schemars::JsonSchema for $name {
                fn schema_name() -> std::borrow::Cow<'static, str> {
                    stringify!($name).into()
                }

                fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                    <Written as schemars::JsonSchema>::json_schema(generator)
                }
            }
        };
    )*};
}
pub(crate) use objects;

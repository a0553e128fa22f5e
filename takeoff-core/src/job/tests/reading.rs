//! Strict reading of text, and its limits.
use proptest::prelude::*;
use serde_json::{Value, json};

use super::super::parse::text as read;
use super::super::{EXAMPLE, Files, Job};
use super::{codes, good};
use crate::job::parse::document::{At, Document, Value as Node};
use crate::job::parse::suggest::suggest;
use crate::model::Problems;

/// The codes that have their case here.
pub(crate) const CASED: [&str; 8] = [
    "not-utf8",
    "syntax",
    "not-a-number",
    "too-large",
    "too-deep",
    "duplicate-key",
    "many-problems",
    "many-findings",
];

fn problems(text: &str) -> Problems {
    Job::read(text, &Files::new()).unwrap_err()
}

#[test]
fn bytes_have_to_be_utf8() {
    let found = Job::read_bytes(b"{\"name\": \"Caf\xe9\"}", &Files::new()).unwrap_err();
    assert_eq!(codes(&found), [("not-utf8", "")]);
    assert!(found[0].message.contains("byte 14"), "{}", found[0].message);
    let marked = format!("\u{feff}{EXAMPLE}");
    assert!(Job::read_bytes(marked.as_bytes(), &Files::new()).is_ok());
}

#[test]
fn syntax_errors_tell_line_and_column() {
    let found = problems("{\n  \"name\": \"x\"\n  \"format\": 1\n}");
    assert_eq!(codes(&found), [("syntax", "")]);
    assert!(found[0].message.ends_with("line 3 column 3"), "{}", found[0].message);
    for text in ["", "{", "{} x", "[1,]", "{\"a\":01}", "{'a':1}", "\"\\ud800\"", "{\"a\":1e999}", "// a\n{}"]
    {
        assert_eq!(codes(&problems(text)), [("syntax", "")], "{text}");
    }
}

#[test]
fn what_is_no_number_is_named() {
    for word in ["NaN", "Infinity", "-Infinity"] {
        let found = problems(&format!("{{\n \"practice\": {{ \"service_level\": {word} }} }}"));
        assert_eq!(codes(&found), [("not-a-number", "")], "{word}");
        assert!(found[0].message.starts_with(&format!("`{word}` at line 2")), "{}", found[0].message);
    }
}

#[test]
fn a_key_given_twice_is_found_with_everything_else() {
    let text = r#"{"format": "tilepost-job/1", "name": "a", "tiles": {"t/~": 1, "t/~": 2}, "name": "b",
        "underlayments": {}, "slopes": []}"#;
    assert_eq!(
        codes(&problems(text)),
        [
            ("duplicate-key", "/name"),
            ("duplicate-key", "/tiles/t~1~0"),
            ("wrong-type", "/tiles/t~1~0"),
            ("no-slopes", "/slopes")
        ]
    );
}

#[test]
fn nesting_has_a_limit_and_never_overflows() {
    for (open, deep) in [("[", 65), ("[", 10_000), ("{\"a\":", 10_000), ("[", 1_000_000)] {
        let text = open.repeat(deep);
        assert_eq!(problems(&text)[0].code, "too-deep", "{deep} × {open}");
    }
    let text = format!("{}{}", "[".repeat(64), "]".repeat(64));
    assert_eq!(codes(&problems(&text)), [("wrong-type", "")]);
    // Twice the same key: what comes second is passed over, however deep.
    let text = format!("{{\"a\":1,\"a\":{}{}}}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(!problems(&text).is_empty());
}

#[test]
fn size_has_a_limit() {
    assert_eq!(codes(&problems(&" ".repeat(read::MOST_BYTES + 1))), [("too-large", "")]);
    assert_eq!(
        Job::read_bytes(&vec![0xff; read::MOST_BYTES + 1], &Files::new()).unwrap_err()[0].code,
        "too-large"
    );
    let many = format!("[{}0]", "0,".repeat(6_000_000));
    assert_eq!(codes(&problems(&many)), [("too-large", "")]);
}

#[test]
fn only_so_many_problems_and_findings_are_listed() {
    let mut job = good();
    let post = job["slopes"][0]["posts"][0].clone();
    let posts: Vec<Value> = (0..1_500)
        .map(|i| {
            let mut post = post.clone();
            post["name"] = json!(format!("P{i}"));
            post["v"] = json!("16 ft");
            post
        })
        .collect();
    job["slopes"][0]["posts"] = json!(posts);
    let read = Job::read(&job.to_string(), &Files::new()).unwrap();
    assert_eq!(read.findings().len(), 1_001);
    assert_eq!(codes(&read.findings()[1_000..]), [("many-findings", "")]);
    assert_eq!(read.findings()[1_000].message, "500 more findings are not listed");

    for post in job["slopes"][0]["posts"].as_array_mut().unwrap() {
        post["assembly"] = json!("none");
    }
    let found = problems(&job.to_string());
    assert_eq!(found.len(), 1_001);
    assert_eq!(codes(&found[1_000..]), [("many-problems", "")]);
}

#[test]
fn files_named_are_listed_once_and_do_not_lead_out() {
    let text = json!({ "slopes": [
        { "posts": { "csv": "b.csv" }, "courses": { "noses": { "csv": "south/noses.csv" } } },
        { "posts": { "csv": "b.csv" }, "rafters": { "at": { "csv": "a.csv" } },
          "underlayment": { "lap_lines": { "csv": "/etc/passwd" } } },
        { "posts": { "csv": "c/../../keys" } }, { "posts": { "csv": "C:\\keys" } }, { "posts": { "csv": "" } },
    ] });
    assert_eq!(Job::files_named(&text.to_string()), ["a.csv", "b.csv", "south/noses.csv"]);
    assert_eq!(Job::files_named("{"), [""; 0]);
}

/// The pointers of RFC 6901, section 5.
#[test]
fn pointers_are_those_of_rfc_6901() {
    let text = r#"{"foo": ["bar", "baz"], "": 0, "a/b": 1, "c%d": 2, "e^f": 3, "g|h": 4, "i\\j": 5, "k\"l": 6, " ": 7, "m~n": 8}"#;
    let (tree, _) = read::json(text).unwrap();
    let pointers: Vec<String> = tree.children(At::ROOT).map(|at| tree.pointer(at)).collect();
    assert_eq!(pointers, ["/foo", "/", "/a~1b", "/c%d", "/e^f", "/g|h", "/i\\j", "/k\"l", "/ ", "/m~0n"]);
    let foo = tree.child(At::ROOT, "foo").unwrap();
    assert_eq!(tree.children(foo).map(|at| tree.pointer(at)).collect::<Vec<_>>(), ["/foo/0", "/foo/1"]);
    assert_eq!(tree.pointer(At::ROOT), "");
}

#[test]
fn the_nearest_word_is_the_one_meant() {
    let fields = ["length", "width", "cover", "least_head_lap", "lap_side", "laps"];
    assert_eq!(suggest("lenght", &fields), Some("length"));
    assert_eq!(suggest("Width", &fields), Some("width"));
    assert_eq!(suggest("leastHeadLap", &fields), Some("least_head_lap"));
    assert_eq!(suggest("lap", &fields), Some("laps"));
    assert_eq!(suggest("colour", &fields), None);
    assert_eq!(suggest("", &fields), None);
}

#[cfg(feature = "command")]
mod in_toml {
    use super::*;

    #[test]
    fn a_job_in_toml_is_the_same_job() {
        let text = toml::to_string(&good()).unwrap();
        let (json, toml) =
            (Job::read(&good().to_string(), &Files::new()), Job::read_toml(&text, &Files::new()));
        assert_eq!(format!("{:?}", json.unwrap()), format!("{:?}", toml.unwrap()));
    }

    #[test]
    fn toml_is_as_strict() {
        let problems = |text: &str| Job::read_toml(text, &Files::new()).unwrap_err();
        let found = problems("name = \"a\"\nname = \"b\"\n");
        assert_eq!(codes(&found), [("syntax", "")]);
        assert!(found[0].message.contains("line 2 column 1"), "{}", found[0].message);
        assert_eq!(codes(&problems("[practice]\nservice_level = nan\n")), [("not-a-number", "/practice")]);
        assert!(!problems(&format!("a = {}", "[".repeat(10_000))).is_empty());
        assert!(problems("name = 1979-05-27\n").iter().any(|problem| problem.path == "/name"));
        assert_eq!(Job::files_named_toml("[[slopes]]\nposts = { csv = \"p.csv\" }"), ["p.csv"]);
    }
}

fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        ".{0,8}".prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 64, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
            prop::collection::btree_map(".{0,4}", inner, 0..6)
                .prop_map(|map| Value::Object(map.into_iter().collect())),
        ]
    })
}

fn value(tree: &Document<'_>, at: At) -> Value {
    match tree.value(at) {
        Node::Null => Value::Null,
        Node::Bool(value) => Value::from(*value),
        Node::Number(value) => Value::Number(value.clone()),
        Node::Text(text) => Value::from(&**text),
        Node::List => tree.children(at).map(|item| value(tree, item)).collect(),
        Node::Object => Value::Object(
            tree.children(at).map(|item| (tree.name(item).unwrap().to_owned(), value(tree, item))).collect(),
        ),
    }
}

fn every_place(tree: &Document<'_>, at: At, places: &mut Vec<At>) {
    places.push(at);
    tree.children(at).for_each(|child| every_place(tree, child, places));
}

proptest! {
    /// The tree holds what serde_json reads, and its pointers lead where serde_json's do.
    #[test]
    fn the_tree_is_the_document(json in any_json(), pretty: bool) {
        let text = if pretty { serde_json::to_string_pretty(&json) } else { serde_json::to_string(&json) }.unwrap();
        // Its fast parser may lose the last digit of a number of many.
        let json: Value = serde_json::from_str(&text).unwrap();
        let (tree, twice) = read::json(&text).unwrap();
        prop_assert!(twice.is_empty());
        prop_assert_eq!(value(&tree, At::ROOT), json.clone());
        let mut places = Vec::new();
        every_place(&tree, At::ROOT, &mut places);
        prop_assert_eq!(places.len(), tree.len());
        prop_assert!(places.is_sorted());
        for at in places {
            prop_assert_eq!(json.pointer(&tree.pointer(at)), Some(&value(&tree, at)));
        }
    }

    /// What serde_json refuses is refused, and the other way round.
    #[test]
    fn any_text_is_read_or_refused(text in r#"[\[\]{}:,"\\a0-9eE+\-. \n]{0,24}"#) {
        let theirs = serde_json::from_str::<Value>(&text);
        let ours = read::json(&text);
        prop_assert_eq!(theirs.is_ok(), ours.is_ok());
    }
}

/// Unicode's general category `Cf` as another crate has it, but for the eight marks that enclose digits and are seen.
#[test]
fn no_format_character_gets_into_a_name() {
    use unicode_properties::{GeneralCategory, UnicodeGeneralCategory};
    let seen = |c: char| matches!(c, '\u{600}'..='\u{605}' | '\u{6dd}' | '\u{70f}' | '\u{890}'..='\u{891}' | '\u{8e2}' | '\u{110bd}' | '\u{110cd}');
    let unseen = [
        GeneralCategory::Control,
        GeneralCategory::Format,
        GeneralCategory::LineSeparator,
        GeneralCategory::ParagraphSeparator,
        GeneralCategory::SpaceSeparator,
    ];
    let mut refused = 0;
    for c in (0..=u32::from(char::MAX)).filter_map(char::from_u32) {
        if unseen.contains(&c.general_category()) && c != ' ' && !seen(c) {
            assert!(crate::model::is_unseen(c), "U+{:04X}", u32::from(c));
            refused += 1;
        }
    }
    assert!(refused > 200, "{refused}");
    for c in "aé' -–″½①日\u{301}🏠".chars() {
        assert!(!crate::model::is_unseen(c), "U+{:04X}", u32::from(c));
    }
}

#[test]
fn an_unseen_character_is_shown() {
    let job = super::with(good(), &json!({ "/slopes/0/posts/0/name": "A\u{200b}1" }));
    let found = super::read(&job).unwrap_err();
    assert_eq!(codes(&found), [("unseen-character", "/slopes/0/posts/0/name")]);
    assert_eq!(found[0].message, "the name `A□1` has a character that nobody sees, U+200B, where `□` stands");
}

//! The job file of a layout: arrays moved, posts set.
use serde::ser::{Serialize, Serializer};
use serde_json::Number;

use super::parse::document::{At, Document, Value};
use super::parse::text::{self, Outcome};
use crate::geometry::SlopePoint;
use crate::model::{Array, Display, Job, Post, Problems};
use crate::units::Length;

/// A job file, the fields of each object in the order in which somebody wrote them.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidJob(Written);

/// The job file of a layout: the `text` that `job` was read from, with arrays and posts where `laid` has them.
///
/// On a slope whose posts are others now, all of them stand in `posts`, and there are no `post_grids`. Lengths are written
/// to the nanometre. An array that was moved keeps what is left of its `shift`, so that another layout may move it to the
/// same places as before. Everything else stays as it is; files that the job names stay beside it.
///
/// # Errors
///
/// What is wrong with the text, if it is none that a job was read from.
///
/// # Example
///
/// ```
/// use takeoff_core::{EXAMPLE, Files, Job, report, write_back};
/// let moved = EXAMPLE.replace(r#""u": "4 ft 8 in""#, r#""u": "4 ft 8 1/64 in""#);
/// let [was, now] = [Job::read(EXAMPLE, &Files::new())?, Job::read(&moved, &Files::new())?];
/// let text = report::laid_document(&write_back(EXAMPLE, &was, &now)?);
/// assert!(text.contains(r#""u": "56 1/64 in""#));
/// # Ok::<(), takeoff_core::Problems>(())
/// ```
pub fn write_back(text: &str, job: &Job, laid: &Job) -> Result<LaidJob, Problems> {
    of_tree(text::json(text), job, laid)
}

/// As [`write_back`], of a job that was read from TOML; what comes out is JSON all the same.
///
/// # Errors
///
/// As [`write_back`].
#[cfg(feature = "command")]
pub fn write_back_toml(text: &str, job: &Job, laid: &Job) -> Result<LaidJob, Problems> {
    of_tree(text::toml(text), job, laid)
}

fn of_tree(read: Outcome<'_>, job: &Job, laid: &Job) -> Result<LaidJob, Problems> {
    let (tree, _) = read.map_err(Problems::from)?;
    let mut root = Written::from_document(&tree, At::ROOT);
    for (i, (was, now)) in job.slopes.iter().zip(&laid.slopes).enumerate() {
        let Some(slope) = root.item("slopes", i) else { continue };
        for (i, (was, now)) in was.arrays.iter().zip(&now.arrays).enumerate() {
            if let Some(array) = slope.item("arrays", i).filter(|_| now.at != was.at) {
                move_array(array, was, now.at, job.display);
            }
        }
        let told = |post: &Post| (post.name.clone(), post.assembly.name.clone(), post.at, post.fixed);
        if !was.posts.iter().map(told).eq(now.posts.iter().map(told)) {
            set_posts(slope, &now.posts, job.display);
        }
    }
    Ok(LaidJob(root))
}

fn move_array(written: &mut Written, array: &Array, to: SlopePoint, display: Display) {
    let exact = |length| Written::Text(display.exact(length));
    let (right, up) = (to.u - array.at.u, to.v - array.at.v);
    written.set("u", exact(to.u));
    written.set("v", exact(to.v));
    let Some(shift) = written.field("shift") else { return };
    for (way, was, used) in [
        ("left", array.shift.left, -right),
        ("right", array.shift.right, right),
        ("down", array.shift.down, -up),
        ("up", array.shift.up, up),
    ] {
        if used != Length::ZERO {
            shift.set(way, exact(was - used));
        }
    }
}

fn set_posts(slope: &mut Written, posts: &[Post], display: Display) {
    let post = |post: &Post| {
        let text = |text: &str| Written::Text(text.to_owned());
        let [u, v] = [post.at.u, post.at.v].map(|length| Written::Text(display.exact(length)));
        let fields =
            [("name", text(&post.name)), ("assembly", text(&post.assembly.name)), ("u", u), ("v", v)];
        let fixed = post.fixed.then_some(("fixed", Written::Bool(true)));
        Written::Object(
            fields.into_iter().chain(fixed).map(|(name, value)| (name.to_owned(), value)).collect(),
        )
    };
    slope.set("posts", Written::List(posts.iter().map(post).collect()));
    slope.remove("post_grids");
}

/// A value of a document, on its own.
#[derive(Clone, Debug, PartialEq)]
enum Written {
    Null,
    Bool(bool),
    Number(Number),
    Text(String),
    List(Vec<Written>),
    Object(Vec<(String, Written)>),
}

impl Written {
    fn from_document(tree: &Document<'_>, at: At) -> Written {
        let children = || tree.children(at);
        match tree.value(at) {
            Value::Null => Written::Null,
            Value::Bool(value) => Written::Bool(*value),
            Value::Number(number) => Written::Number(number.clone()),
            Value::Text(text) => Written::Text(text.clone().into_owned()),
            Value::List => Written::List(children().map(|item| Written::from_document(tree, item)).collect()),
            Value::Object => {
                let field =
                    |at| (tree.name(at).unwrap_or_default().to_owned(), Written::from_document(tree, at));
                Written::Object(children().map(field).collect())
            }
        }
    }

    /// A field of an object.
    fn field(&mut self, name: &str) -> Option<&mut Written> {
        match self {
            Written::Object(fields) => fields.iter_mut().find(|(of, _)| of == name).map(|(_, value)| value),
            _ => None,
        }
    }

    /// An item of a list that an object has.
    fn item(&mut self, list: &str, number: usize) -> Option<&mut Written> {
        match self.field(list)? {
            Written::List(items) => items.get_mut(number),
            _ => None,
        }
    }

    /// Gives an object a field: in the place of the one of that name, or behind all others.
    fn set(&mut self, name: &str, value: Written) {
        if let Some(field) = self.field(name) {
            *field = value;
        } else if let Written::Object(fields) = self {
            fields.push((name.to_owned(), value));
        }
    }

    fn remove(&mut self, name: &str) {
        if let Written::Object(fields) = self {
            fields.retain(|(of, _)| of != name);
        }
    }
}

impl Serialize for LaidJob {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

impl Serialize for Written {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Written::Null => serializer.serialize_unit(),
            Written::Bool(value) => serializer.serialize_bool(*value),
            Written::Number(number) => number.serialize(serializer),
            Written::Text(text) => serializer.serialize_str(text),
            Written::List(items) => serializer.collect_seq(items),
            Written::Object(fields) => {
                serializer.collect_map(fields.iter().map(|(name, value)| (name, value)))
            }
        }
    }
}

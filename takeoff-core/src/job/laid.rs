//! The job file of a layout: arrays moved, posts set.
use serde::ser::{Serialize, Serializer};
use serde_json::Number;

use super::read::{self, Outcome};
use super::tree::{At, Tree, Value};
use super::{Display, Job, Problem, SlopePoint};
use crate::slope::Array;
use crate::units::Length;

/// What a layout makes of a slope.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidSlope {
    /// Its place in the job's list.
    pub slope: usize,
    /// Where its arrays lie now, in the job's order.
    pub arrays: Vec<SlopePoint>,
    /// All posts that stand on it.
    pub posts: Vec<LaidPost>,
}

/// A post as a job file has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidPost {
    /// What it is called.
    pub name: String,
    /// Name of its assembly.
    pub assembly: String,
    /// Its point on the deck.
    pub at: SlopePoint,
    /// Whether another layout leaves it where it is.
    pub fixed: bool,
}

/// A job file, the fields of each object in the order in which somebody wrote them.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidJob(Written);

/// The job file of a layout: the one that the job was read from, with the arrays of the slopes where they lie now, their
/// posts in `posts`, and no `post_grids`.
///
/// Lengths are written to the nanometre. An array that was moved keeps what is left of its `shift`, so that another
/// layout may move it to the same places as before. Everything else stays as it is; files that the job names stay beside
/// it.
///
/// # Errors
///
/// What is wrong with the text, if it is none that a job was read from.
///
/// # Example
///
/// ```
/// use takeoff_core::job::{EXAMPLE, Files, Job, LaidPost, LaidSlope, Problem, SlopePoint, laid};
/// use takeoff_core::units::Length;
/// let job = Job::read(EXAMPLE, &Files::new())?;
/// let at = SlopePoint { u: Length::from_nm(1_511_300_000), v: Length::from_nm(768_350_000) };
/// let post = LaidPost { name: "A1".into(), assembly: "post-7".into(), at, fixed: false };
/// let laid = laid(EXAMPLE, &job, &[LaidSlope { slope: 0, arrays: vec![], posts: vec![post] }])?;
/// let text = takeoff_core::api::laid_document(&laid);
/// assert!(text.contains(r#"{"name": "A1", "assembly": "post-7", "u": "59 1/2 in", "v": "30 1/4 in"}"#));
/// # Ok::<(), Vec<Problem>>(())
/// ```
pub fn laid(text: &str, job: &Job, slopes: &[LaidSlope]) -> Result<LaidJob, Vec<Problem>> {
    of_tree(read::json(text), job, slopes)
}

/// As [`laid`], of a job that was read from TOML; what comes out is JSON all the same.
///
/// # Errors
///
/// As [`laid`].
#[cfg(feature = "command")]
pub fn laid_toml(text: &str, job: &Job, slopes: &[LaidSlope]) -> Result<LaidJob, Vec<Problem>> {
    of_tree(read::toml(text), job, slopes)
}

fn of_tree(read: Outcome<'_>, job: &Job, slopes: &[LaidSlope]) -> Result<LaidJob, Vec<Problem>> {
    let (tree, _) = read.map_err(|problem| vec![problem])?;
    let mut root = Written::of(&tree, At::ROOT);
    for laid in slopes {
        let of_job = job.slopes.get(laid.slope);
        if let (Some(slope), Some(of_job)) = (root.item("slopes", laid.slope), of_job) {
            for (i, (array, &at)) in of_job.arrays.iter().zip(&laid.arrays).enumerate() {
                if let Some(written) = slope.item("arrays", i).filter(|_| at != array.at) {
                    move_array(written, array, at, job.display);
                }
            }
            set_posts(slope, &laid.posts, job.display);
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

fn set_posts(slope: &mut Written, posts: &[LaidPost], display: Display) {
    let post = |post: &LaidPost| {
        let text = |text: &str| Written::Text(text.to_owned());
        let [u, v] = [post.at.u, post.at.v].map(|length| Written::Text(display.exact(length)));
        let fields = [("name", text(&post.name)), ("assembly", text(&post.assembly)), ("u", u), ("v", v)];
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
    fn of(tree: &Tree<'_>, at: At) -> Written {
        let children = || tree.children(at);
        match tree.value(at) {
            Value::Null => Written::Null,
            Value::Bool(value) => Written::Bool(*value),
            Value::Number(number) => Written::Number(number.clone()),
            Value::Text(text) => Written::Text(text.clone().into_owned()),
            Value::List => Written::List(children().map(|item| Written::of(tree, item)).collect()),
            Value::Object => {
                let field = |at| (tree.name(at).unwrap_or_default().to_owned(), Written::of(tree, at));
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

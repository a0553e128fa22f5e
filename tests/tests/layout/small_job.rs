//! SmallJob jobs with arrays on rails.
use serde_json::{Value, json};
use takeoff_core::{Files, Job};

/// Nanometres in a sixteenth of an inch: all lengths of a small job are whole sixteenths.
pub(crate) const SIXTEENTH: i64 = 1_587_500;

/// A job with one slope. Lengths are in sixteenths of an inch.
#[derive(Clone, Debug)]
pub(crate) struct SmallJob {
    /// The job without posts and arrays.
    pub(crate) base: Value,
    pub(crate) prices: Option<String>,
    /// Cost of one staple with its waste; 0 without a price.
    pub(crate) staple: f64,
    pub(crate) staple_spacing: i64,
    pub(crate) least_margin: i64,
    /// Price of a failing post; `None` ranks failing posts before all money.
    pub(crate) cost_of_failing: Option<f64>,
    pub(crate) height: i64,
    /// Centre lines of the rafters at the slope's lower and upper end.
    pub(crate) rafters: Vec<[i64; 2]>,
    pub(crate) rafter_width: i64,
    pub(crate) arrays: Vec<Array>,
    /// Posts that a layout leaves unchanged.
    pub(crate) kept: Vec<GivenPost>,
    /// Posts below an array, which a layout replaces.
    pub(crate) replaced: Vec<GivenPost>,
}

/// A post of the job.
#[derive(Clone, Debug)]
pub(crate) struct GivenPost {
    pub(crate) name: String,
    pub(crate) u: i64,
    pub(crate) v: i64,
    /// For a fixed post its array and its rail.
    pub(crate) fixed: Option<(usize, usize)>,
}

/// An array and its rails.
#[derive(Clone, Debug)]
pub(crate) struct Array {
    pub(crate) name: String,
    pub(crate) u: i64,
    pub(crate) v: i64,
    pub(crate) module: [i64; 2],
    pub(crate) columns: i64,
    pub(crate) rows: i64,
    pub(crate) gap: i64,
    /// Left, right, down, up.
    pub(crate) shift: [i64; 4],
    pub(crate) clamps: Vec<[i64; 2]>,
    pub(crate) span: i64,
    pub(crate) overhang: i64,
    pub(crate) zones: Vec<Zone>,
    pub(crate) least_distance: i64,
    pub(crate) stagger: i64,
    pub(crate) blocking: bool,
}

/// A zone of shorter spans.
#[derive(Clone, Debug)]
pub(crate) struct Zone {
    pub(crate) from: [i64; 2],
    pub(crate) to: [i64; 2],
    pub(crate) span: i64,
    pub(crate) overhang: i64,
}

impl Array {
    pub(crate) fn width(&self) -> i64 {
        self.columns * self.module[0] + (self.columns - 1) * self.gap
    }

    pub(crate) fn height(&self) -> i64 {
        self.rows * self.module[1] + (self.rows - 1) * self.gap
    }

    /// The clamp window of each rail above the array's lower edge, from the lowest up.
    pub(crate) fn windows(&self) -> Vec<[i64; 2]> {
        let rows = (0..self.rows).map(|row| row * (self.module[1] + self.gap));
        rows.flat_map(|lower| self.clamps.iter().map(move |clamp| clamp.map(|v| lower + v))).collect()
    }

    fn json(&self, u: i64, v: i64) -> Value {
        let [left, right, down, up] = self.shift.map(length);
        let zones = self.zones.iter().map(|zone| {
            json!({
                "from": zone.from.map(length), "to": zone.to.map(length), "greatest_span": length(zone.span),
                "greatest_overhang": length(zone.overhang),
            })
        });
        json!({
            "name": self.name, "u": length(u), "v": length(v), "module_width": length(self.module[0]),
            "module_height": length(self.module[1]), "columns": self.columns, "rows": self.rows,
            "column_gap": length(self.gap), "row_gap": length(self.gap),
            "shift": { "left": left, "right": right, "down": down, "up": up },
            "rails": {
                "assembly": "post", "clamps": self.clamps.iter().map(|clamp| clamp.map(length)).collect::<Vec<_>>(),
                "greatest_span": length(self.span), "greatest_overhang": length(self.overhang),
                "least_distance": length(self.least_distance), "stagger": self.stagger, "blocking": self.blocking,
                "zones": zones.collect::<Vec<_>>(),
            },
        })
    }
}

/// A length in sixteenths of an inch, as text.
pub(crate) fn length(sixteenths: i64) -> String {
    nanometres(sixteenths * SIXTEENTH)
}

/// A length in nanometres, as text: exact in millimetres with six decimals.
fn nanometres(nm: i64) -> String {
    let sign = if nm < 0 { "-" } else { "" };
    format!("{sign}{}.{:06} mm", nm.abs() / 1_000_000, nm.abs() % 1_000_000)
}

/// Whole inches in sixteenths.
pub(crate) const fn inches(inches: i64) -> i64 {
    16 * inches
}

/// The shift of an array: to the right and up.
pub(crate) type ArrayShift = [i64; 2];

impl SmallJob {
    /// The job before its layout.
    pub(crate) fn job(&self) -> Job {
        let given = self.kept.iter().chain(&self.replaced).map(GivenPost::json).collect();
        self.read(given, self.arrays.iter().map(|array| array.json(array.u, array.v)).collect())
    }

    /// The job with one post and no array; `None` where no post can be. `u` and `v` in nanometres.
    pub(crate) fn with_single_post(&self, u: i64, v: i64) -> Option<Job> {
        let post = json!({ "name": "P", "assembly": "post", "u": nanometres(u), "v": nanometres(v) });
        let (text, files) = self.written(vec![post], Vec::new());
        Job::read(&text, &files).ok()
    }

    /// The job with arrays shifted and posts set. `u` and `v` in nanometres.
    pub(crate) fn laid(&self, shifts: &[ArrayShift], set: &[(String, i64, i64)]) -> Job {
        let arrays =
            self.arrays.iter().zip(shifts).map(|(array, [u, v])| array.json(array.u + u, array.v + v));
        let set = set.iter().map(
            |(name, u, v)| json!({ "name": name, "assembly": "post", "u": nanometres(*u), "v": nanometres(*v) }),
        );
        self.read(self.kept.iter().map(GivenPost::json).chain(set).collect(), arrays.collect())
    }

    fn read(&self, posts: Vec<Value>, arrays: Vec<Value>) -> Job {
        let (text, files) = self.written(posts, arrays);
        Job::read(&text, &files).unwrap_or_else(|problems| panic!("{problems:#?}\n{text}"))
    }

    fn written(&self, posts: Vec<Value>, arrays: Vec<Value>) -> (String, Files) {
        let mut job = self.base.clone();
        job["slopes"][0]["posts"] = posts.into();
        job["slopes"][0]["arrays"] = arrays.into();
        let prices = self.prices.iter().map(|prices| ("prices.csv".to_owned(), prices.clone()));
        (job.to_string(), prices.collect())
    }
}

impl GivenPost {
    fn json(&self) -> Value {
        json!({
            "name": self.name, "assembly": "post", "u": length(self.u), "v": length(self.v),
            "fixed": self.fixed.is_some(),
        })
    }
}

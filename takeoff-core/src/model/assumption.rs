//! Assumptions in force.
use schemars::JsonSchema;
use serde::Serialize;

use std::collections::BTreeMap;

use super::Display;
use super::judge::quoted;
use crate::units::{Length, Volume};

/// A value in force that somebody assumed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Assumption {
    /// Meaning, in words.
    pub what: String,
    /// Its value with its unit, as shown.
    pub value: String,
    /// Whether the job file sets it (true) or it is a default (false).
    pub set_by_job: bool,
}

/// The assumptions in force, listed as they are made.
pub(crate) struct Assumptions {
    pub(crate) display: Display,
    list: Vec<Assumption>,
}

impl Assumptions {
    pub(crate) fn new(display: Display) -> Assumptions {
        Assumptions { display, list: Vec::new() }
    }

    /// Units that values are shown in.
    pub(crate) fn display(&self) -> Display {
        self.display
    }

    pub(crate) fn len(&self) -> usize {
        self.list.len()
    }

    /// Takes back those listed beyond a count.
    pub(crate) fn truncate(&mut self, count: usize) {
        self.list.truncate(count);
    }

    pub(crate) fn into_list(self) -> Vec<Assumption> {
        self.list
    }

    /// The length given, or else the usual one.
    pub(crate) fn length(&mut self, what: impl Into<String>, given: Option<Length>, usual: Length) -> Length {
        let length = given.unwrap_or(usual);
        self.add(what, self.display.length(length), given.is_some());
        length
    }

    /// The count given, or else the usual one.
    pub(crate) fn count(&mut self, what: impl Into<String>, given: Option<u32>, usual: u32) -> u32 {
        let count = given.unwrap_or(usual);
        self.add(what, count.to_string(), given.is_some());
        count
    }

    /// The number given, or else the usual one.
    pub(crate) fn number(&mut self, what: &str, given: Option<f64>, usual: f64) -> f64 {
        let number = given.unwrap_or(usual);
        self.add(what, number.to_string(), given.is_some());
        number
    }

    /// Yes or no as given, or else as usual.
    pub(crate) fn flag(&mut self, what: &str, given: Option<bool>, usual: bool) -> bool {
        let flag = given.unwrap_or(usual);
        self.add(what, if flag { "yes" } else { "no" }.to_owned(), given.is_some());
        flag
    }

    pub(crate) fn volume(&mut self, what: &str, given: Option<Volume>, usual: Volume) -> Volume {
        let volume = given.unwrap_or(usual);
        let value = match self.display {
            Display::Imperial => volume.imperial(1),
            Display::Metric => volume.metric(0),
        };
        self.add(what, value, given.is_some());
        volume
    }

    pub(crate) fn window(&mut self, given: Option<Length>) -> Option<Length> {
        let value = given.map_or("one exposure".to_owned(), |window| self.display.length(window));
        self.add("a better place for a post is looked for within", value, given.is_some());
        given
    }

    pub(crate) fn waste(&mut self, given: BTreeMap<String, f64>) -> BTreeMap<String, f64> {
        for (item, share) in &given {
            self.add(of("lost, as a share", item), share.to_string(), true);
        }
        given
    }

    /// One more assumption.
    pub(crate) fn add(&mut self, what: impl Into<String>, value: String, set_by_job: bool) {
        self.list.push(Assumption { what: what.into(), value, set_by_job });
    }
}

/// Inches and 64ths of an inch.
pub(crate) const fn inches_and_64ths(whole: i64, sixty_fourths: i64) -> Length {
    Length::from_nm((64 * whole + sixty_fourths) * Length::INCH.nm() / 64)
}

/// The assembly's or slope's own name, for what is assumed of it.
pub(crate) fn of(what: &str, name: &str) -> String {
    format!("{what}, {}", quoted(name))
}

//! The validated job.
use std::sync::Arc;

use super::{
    Assembly, Assumption, Display, Loads, Practice, PriceList, Problem, Slope, SurveyQuestion, Terms, Tile,
};

/// A whole job: the slopes of a roof, what lies on them and what goes through.
#[derive(Clone, Debug)]
pub struct Job {
    pub(crate) name: String,
    pub(crate) display: Display,
    pub(crate) tiles: Vec<Arc<Tile>>,
    pub(crate) assemblies: Vec<Arc<Assembly>>,
    pub(crate) slopes: Vec<Slope>,
    pub(crate) practice: Practice,
    /// Factors and loads of the screening, if the job asks for one.
    pub(crate) screening: Option<Loads>,
    pub(crate) prices: Option<PriceList>,
    /// Given where there are prices, too.
    pub(crate) bid: Option<Terms>,
    /// Answers of the survey, question by question; `None` is unanswered.
    pub(crate) survey: Vec<(SurveyQuestion, Option<String>)>,
    /// The assumptions in force: the defaults that the job file left alone and those that it set.
    pub(crate) assumptions: Vec<Assumption>,
    /// Findings about the job file itself.
    pub(crate) findings: Vec<Problem>,
}

impl Job {
    /// Its slopes, in its order.
    pub fn slopes(&self) -> &[Slope] {
        &self.slopes
    }

    /// Working practice of the crew.
    pub fn practice(&self) -> &Practice {
        &self.practice
    }
}

//! The whole takeoff of a job.
use schemars::JsonSchema;
use serde::Serialize;

use super::{Counts, RollPlan, Screening, SlopeTakeoff};
use crate::model::{Assumption, Display, Problem, SurveyQuestion};
use crate::pricing::Bid;
use crate::quantities::MaterialLine;
use crate::spares::TileSpares;
use crate::takeoff::{self, question};

/// The whole takeoff of a job.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Takeoff {
    /// `tilepost-takeoff/1`.
    pub format: String,
    /// The job's name.
    pub job: String,
    /// Which units reports show.
    pub display: Display,
    /// The totals in one glance.
    pub counts: Counts,
    /// What to buy, line by line, with the basis of each.
    pub materials: Vec<MaterialLine>,
    /// What it costs; `None` where the job has neither prices nor terms of a bid.
    pub bid: Option<Bid>,
    /// The probability with which the spares of each kind of piece are enough.
    pub service_level: f64,
    /// Spare tiles by kind of piece.
    pub spares: Vec<TileSpares>,
    /// Cutting plans of the patches, by underlayment.
    pub rolls: Vec<RollPlan>,
    /// Slope by slope, in the job's order.
    pub slopes: Vec<SlopeTakeoff>,
    /// Lags in withdrawal against wind uplift, where the job asks for it and gives enough.
    pub screening: Option<Screening>,
    /// What is odd but real.
    pub findings: Vec<Problem>,
    /// The assumptions in force.
    pub assumptions: Vec<Assumption>,
    /// The usual cautions of the trade.
    pub cautions: Vec<String>,
    /// What the survey asked, and what it left unasked.
    pub survey: Vec<SurveyAnswer>,
}

/// An answer of the survey.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SurveyAnswer {
    /// Which question.
    pub question: SurveyQuestion,
    /// The question in words.
    pub asks: String,
    /// The answer; `None` was left unasked.
    pub answer: Option<String>,
}

impl SurveyAnswer {
    /// Whether the question is still to be asked: a blank answer is none.
    pub fn is_open(&self) -> bool {
        self.answer.as_ref().is_none_or(|text| text.trim().is_empty())
    }
}

impl From<&takeoff::Takeoff> for Takeoff {
    fn from(takeoff: &takeoff::Takeoff) -> Takeoff {
        Takeoff {
            format: "tilepost-takeoff/1".to_owned(),
            job: takeoff.job.clone(),
            display: takeoff.display,
            counts: Counts::from(&takeoff.counts),
            materials: takeoff.materials.clone(),
            bid: takeoff.bid.clone(),
            service_level: takeoff.service_level,
            spares: takeoff.spares.clone(),
            rolls: takeoff.rolls.iter().map(RollPlan::from).collect(),
            slopes: takeoff.slopes.iter().map(SlopeTakeoff::from).collect(),
            screening: takeoff.screening.as_ref().map(|of| Screening::new(&takeoff.slopes, of)),
            findings: takeoff.findings.clone(),
            assumptions: takeoff.assumptions.clone(),
            cautions: takeoff.cautions.clone(),
            survey: takeoff.survey.iter().map(SurveyAnswer::from).collect(),
        }
    }
}

impl From<&takeoff::SurveyAnswer> for SurveyAnswer {
    fn from(answer: &takeoff::SurveyAnswer) -> SurveyAnswer {
        SurveyAnswer {
            question: answer.question,
            asks: question(answer.question).to_owned(),
            answer: answer.answer.clone(),
        }
    }
}

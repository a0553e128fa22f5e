//! The takeoff of a job. Every total carries its basis.
use crate::model::{Assumption, Display, Problem, SurveyQuestion};
use crate::pricing::Bid;
use crate::quantities::{Counts, MaterialLine, RollPlan};
use crate::screening::Screening;
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;

/// The whole takeoff of a job.
#[derive(Clone, Debug)]
pub struct Takeoff {
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
#[derive(Clone, Debug)]
pub struct SurveyAnswer {
    /// Which question.
    pub question: SurveyQuestion,
    /// The answer; `None` was left unasked.
    pub answer: Option<String>,
}

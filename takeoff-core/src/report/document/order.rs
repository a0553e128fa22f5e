//! One order for several jobs.
use schemars::JsonSchema;
use serde::Serialize;

use super::RollPlan;
use crate::model::Display;
use crate::order::{self, OrderSpares};
use crate::pricing::Purchase;
use crate::quantities::MaterialLine;

/// What is ordered for several jobs at once.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Order {
    /// `tilepost-order/1`.
    pub format: String,
    /// The jobs' names.
    pub jobs: Vec<String>,
    /// Which units reports show: those of the first job.
    pub display: Display,
    /// The probability with which the spares of each kind of piece are enough for all jobs together: the greatest that
    /// a job asks for.
    pub service_level: f64,
    /// What to buy, line by line; the basis of a line is what each job needs of it.
    pub materials: Vec<MaterialLine>,
    /// Spare tiles by kind of piece.
    pub spares: Vec<OrderSpares>,
    /// How the patches of all jobs are cut from rolls, an underlayment each; a patch is `job/slope/patch`.
    pub rolls: Vec<RollPlan>,
    /// In which packs, and what it costs; `None` where no job has a price list.
    pub purchase: Option<Purchase>,
}

impl From<&order::Order> for Order {
    fn from(order: &order::Order) -> Order {
        Order {
            format: "tilepost-order/1".to_owned(),
            jobs: order.jobs.clone(),
            display: order.display,
            service_level: order.service_level,
            materials: order.materials.clone(),
            spares: order.spares.clone(),
            rolls: order.rolls.iter().map(RollPlan::from).collect(),
            purchase: order.purchase.clone(),
        }
    }
}

//! What posts cost: one by one, as a layout adds them up, and all together.
use std::collections::BTreeSet;

use rust_decimal::prelude::ToPrimitive;

use crate::deck::Patch;
use crate::materials::Material;
use crate::model::{Action, Job, Post, Problem, Severity, Slope};
use crate::pricing::unit_cost;
use crate::quantities::{JobBill, Work, job_bill};
use crate::spares::{Demand, Handled, TileSpares, expected};
use crate::takeoff::{Takeoff, takeoff};

/// What posts cost, in the currency of the job, by what it is spent on. Nothing is rounded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cost {
    /// The assemblies' items, sealant, cement and mesh, what holds tiles laid back, batten nails.
    pub hardware: f64,
    /// The crew's minutes.
    pub labour: f64,
    /// Felt of the patches, and their staples.
    pub patches: f64,
    /// Blocking boards, and their items.
    pub blocking: f64,
    /// Tiles that break, in the mean, and the pieces for severed ones.
    pub breakage: f64,
    /// What is taken and has no price, by name: it is in no sum.
    pub unpriced: BTreeSet<String>,
}

impl Cost {
    /// All of it.
    pub fn total(&self) -> f64 {
        self.hardware + self.labour + self.patches + self.blocking + self.breakage
    }

    /// The part that the materials of some work belong to.
    fn of_work(&mut self, work: Work) -> &mut f64 {
        match work {
            Work::Post | Work::Batten | Work::Tile | Work::Saw => &mut self.hardware,
            Work::Blocking => &mut self.blocking,
            Work::Patch => &mut self.patches,
        }
    }

    fn add(&mut self, other: Cost) {
        self.hardware += other.hardware;
        self.labour += other.labour;
        self.patches += other.patches;
        self.blocking += other.blocking;
        self.breakage += other.breakage;
        self.unpriced.extend(other.unpriced);
    }
}

/// What the posts of a job cost together: tiles and patches that they share are counted once.
///
/// # Rule
///
/// Every need of the material list with its waste, at the unit price of its item: the least quotient of price and size
/// over the packs of that item in the price list. What stands in the list as a quantity and in packs is priced as it
/// would be bought; felt goes by its area, also where rolls have the price. Labour is minutes × rate. Of each kind of
/// tile, the mean number that breaks and the pieces for severed ones cost what a spare tile does. Not in it: blades,
/// what is left over of packs, tiles on hand, tiles walked on and harvested, and what a bid adds.
///
/// # Errors
///
/// `no-costs` where the job has neither prices nor labour; `breakage-without-mean` where a crew's record says so little
/// of cut tiles that the number broken has no mean.
///
/// # Example
///
/// A patch 18 × 33 in of felt at 0.40 a square foot, 102 in round about, with 26 staples at 2.00 a hundred:
/// 4.125 · 0.40 + 26 · 0.02 = 2.17.
pub fn cost(job: &Job, takeoff: &Takeoff) -> Result<Cost, Vec<Problem>> {
    Pricing { job, takeoff, staples: |patch, _| patch.staples as f64 }.cost()
}

/// The sum over the posts of a job of what each costs by itself, as though it alone stood on the roof: what a layout
/// makes least. It is the sum of [`cost`] of each, but with perimeter ÷ spacing staples, not up to whole ones.
///
/// # Errors
///
/// Those of [`cost`] and of [`takeoff`](fn@takeoff).
///
/// # Example
///
/// The patch above takes 25.5 staples: 4.125 · 0.40 + 25.5 · 0.02 = 2.16. Two posts that share a patch pay two here.
pub fn additive(job: &Job) -> Result<Cost, Vec<Problem>> {
    let mut sum = Cost::default();
    for (slope, post) in job.slopes.iter().flat_map(|slope| slope.posts.iter().map(move |post| (slope, post)))
    {
        let job = alone(job, slope, post);
        let takeoff = takeoff(&job)?;
        let staples = |patch: &Patch, spacing_mm: f64| patch.perimeter().mm() / spacing_mm;
        sum.add(Pricing { job: &job, takeoff: &takeoff, staples }.cost()?);
    }
    Ok(sum)
}

/// The job with one post and nothing else.
fn alone(job: &Job, slope: &Slope, post: &Post) -> Job {
    let slope = Slope { posts: vec![post.clone()], arrays: Vec::new(), ..slope.clone() };
    Job { slopes: vec![slope], screening: None, findings: Vec::new(), ..job.clone() }
}

/// What prices a takeoff.
struct Pricing<'a> {
    job: &'a Job,
    takeoff: &'a Takeoff,
    /// The staples of a patch, by the spacing in millimetres.
    staples: fn(&Patch, f64) -> f64,
}

impl Pricing<'_> {
    fn cost(&self) -> Result<Cost, Vec<Problem>> {
        let bill = job_bill(self.job, &self.takeoff.slopes, &self.takeoff.spares);
        let labour = self.labour(&bill);
        if self.job.prices.is_none() && labour.is_none() {
            let message = "the job has neither prices nor labour: there is nothing to weigh places by";
            let help = "give `prices`, or `labour` with its rate and minutes in `bid`";
            return Err(vec![error("no-costs", message, help, "")]);
        }
        let mut cost = Cost { labour: labour.unwrap_or_default(), ..Cost::default() };
        for entry in &bill.entries {
            match (entry.work, &entry.material) {
                // Staples of patches are counted below, in whole ones or not; blades are left out.
                (Work::Patch, Material::Staple) | (Work::Saw, _) => {}
                (work, material) => self.add(work, material, entry.amount(), &mut cost),
            }
        }
        let spacing_mm = self.job.practice.staple_spacing.mm();
        let patches = self.takeoff.slopes.iter().flat_map(|slope| &slope.patches);
        let staples = patches.map(|patch| (self.staples)(patch, spacing_mm)).sum();
        self.add(Work::Patch, &Material::Staple, staples, &mut cost);
        for tiles in &self.takeoff.spares {
            self.add_tiles(tiles, &mut cost)?;
        }
        Ok(cost)
    }

    /// Minutes × rate of all that is done; `None` where the job gives no labour.
    fn labour(&self, bill: &JobBill) -> Option<f64> {
        let labour = self.job.bid.as_ref()?.labour.as_ref()?;
        let minutes = bill
            .actions
            .iter()
            .filter(|(action, _)| **action != Action::Harvest)
            .filter_map(|(&action, &count)| Some(labour.minutes.of(action)?.to_f64()? * count as f64));
        Some(minutes.sum::<f64>() / 60.0 * labour.rate_per_hour.amount().to_f64()?)
    }

    /// Adds an amount of a material that some work takes.
    fn add(&self, work: Work, material: &Material, amount: f64, cost: &mut Cost) {
        if amount <= 0.0 {
            return;
        }
        match unit_cost(self.job, material) {
            Ok(unit) => *cost.of_work(work) += amount * unit,
            Err(bought_as) => drop(cost.unpriced.insert(bought_as.name())),
        }
    }

    /// Adds the tiles of one kind that break when posts are set, and those that severed ones are made up from.
    fn add_tiles(&self, tiles: &TileSpares, cost: &mut Cost) -> Result<(), Vec<Problem>> {
        let demand = Demand {
            handled: Handled { walked: 0, ..tiles.handled },
            breakage: self.job.practice.breakage,
            pieces_for_severed: self.job.practice.pieces_for_severed,
            on_hand: 0,
            harvested: 0,
        };
        let mean = expected(&[demand]).ok_or_else(|| {
            let message =
                format!("the crew's record says too little of cut tiles: of `{}` no mean breaks", tiles.tile);
            let help = "give the stated chances more weight";
            vec![error("breakage-without-mean", &message, help, "/practice/crew_record")]
        })?;
        let new = mean + tiles.spares.for_severed as f64;
        let spare_tile = Material::SpareTile(tiles.tile.clone());
        match unit_cost(self.job, &spare_tile) {
            Ok(unit) => cost.breakage += new * unit,
            Err(_) if new > 0.0 => drop(cost.unpriced.insert(spare_tile.name())),
            Err(_) => {}
        }
        Ok(())
    }
}

fn error(code: &str, message: &str, help: &str, path: &str) -> Problem {
    let [code, message, help, path] = [code, message, help, path].map(str::to_owned);
    Problem { code, message, help, path, severity: Severity::Error }
}

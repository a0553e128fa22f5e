//! Cost of the posts of a takeoff.
use crate::model::{Code, Problems};
use rust_decimal::prelude::ToPrimitive;

use super::cost::Cost;
use crate::deck::Patch;
use crate::materials::Material;
use crate::model::{Action, Job, Problem};
use crate::pricing::unit_cost;
use crate::quantities::{JobBill, Work, job_bill};
use crate::spares::{Demand, Handled, TileSpares, expected};
use crate::takeoff::Takeoff;

/// Cost of all posts of a job together: shared tiles and patches count once.
///
/// # Rule
///
/// Each need of the material list with its waste, at the unit price of its item: the least quotient of price and size
/// over the packs of that item in the price list. An item listed both as a quantity and in packs is priced as it would be
/// bought; felt is priced by its area, even where rolls have the price. Labour is minutes × rate. For each kind of tile,
/// the mean number of broken tiles and the pieces for severed ones cost as much as spare tiles. Left out: blades,
/// leftovers of packs, tiles on hand, tiles walked on or harvested, and the additions of a bid.
///
/// # Errors
///
/// `no-costs` for a job with neither prices nor labour; `breakage-without-mean` where a crew's record of cut tiles is so
/// short that the number of broken ones has no mean.
///
/// # Example
///
/// A patch 18 × 33 in of felt at 0.40 a square foot, 102 in around, with 26 staples at 2.00 a hundred:
/// 4.125 · 0.40 + 26 · 0.02 = 2.17.
pub fn cost(job: &Job, takeoff: &Takeoff) -> Result<Cost, Problems> {
    Pricing { job, takeoff, staples: |patch, _| patch.staples as f64 }.cost()
}

/// [`cost`] with the count of staples of a patch as a function of the patch and the staple spacing in millimetres.
pub(super) fn cost_with_staples(
    job: &Job,
    takeoff: &Takeoff,
    staples: fn(&Patch, f64) -> f64,
) -> Result<Cost, Problems> {
    Pricing { job, takeoff, staples }.cost()
}

/// A takeoff, and the prices for it.
struct Pricing<'a> {
    job: &'a Job,
    takeoff: &'a Takeoff,
    /// Staples of a patch, by their spacing in millimetres.
    staples: fn(&Patch, f64) -> f64,
}

impl Pricing<'_> {
    fn cost(&self) -> Result<Cost, Problems> {
        let bill = job_bill(self.job, &self.takeoff.slopes, &self.takeoff.spares);
        let labour = self.labour(&bill);
        if self.job.prices.is_none() && labour.is_none() {
            return Err(no_costs().into());
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

    /// Minutes × rate of all actions; `None` where the job gives no labour.
    fn labour(&self, bill: &JobBill) -> Option<f64> {
        let labour = self.job.bid.as_ref()?.labour.as_ref()?;
        let minutes = bill
            .actions
            .iter()
            .filter(|(action, _)| **action != Action::Harvest)
            .filter_map(|(&action, &count)| Some(labour.minutes.of(action)?.to_f64()? * count as f64));
        Some(minutes.sum::<f64>() / 60.0 * labour.rate_per_hour.amount().to_f64()?)
    }

    /// Adds an amount of a material to the part of the cost that the work belongs to.
    fn add(&self, work: Work, material: &Material, amount: f64, cost: &mut Cost) {
        if amount <= 0.0 {
            return;
        }
        match unit_cost(self.job, material) {
            Ok(unit) => *cost.of_work(work) += amount * unit,
            Err(bought_as) => drop(cost.unpriced.insert(bought_as.name())),
        }
    }

    /// Adds the expected breakage of one kind of tile, and the pieces for its severed ones.
    fn add_tiles(&self, tiles: &TileSpares, cost: &mut Cost) -> Result<(), Problems> {
        let demand = Demand {
            handled: Handled { walked: 0, ..tiles.handled },
            breakage: self.job.practice.breakage,
            pieces_for_severed: self.job.practice.pieces_for_severed,
            on_hand: 0,
            harvested: 0,
        };
        let mean = expected(&[demand]).ok_or_else(|| {
            let message = format!(
                "the crew's record has too few cut tiles: the number of broken `{}` has no mean",
                tiles.tile
            );
            let help = "give the stated breakage more weight";
            vec![Problem::new(Code::BreakageWithoutMean, message, help, "/practice/crew_record")]
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

/// The problem of a job with neither prices nor labour.
pub(crate) fn no_costs() -> Problem {
    let message = "the job has neither prices nor labour: places can't be compared by cost";
    let help = "give `prices`, or `labour` with its rate and minutes in `bid`";
    Problem::new(Code::NoCosts, message, help, "")
}

//! Cost of the posts of a takeoff.
use rust_decimal::prelude::ToPrimitive;

use super::cost::Cost;
use crate::deck::Patch;
use crate::layout::problem::error;
use crate::model::{Action, Job, PriceList, Problem};
use crate::pricing::{bought, counted};
use crate::quantities::{BLADE, MaterialLine};
use crate::spares::{Demand, Handled, TileSpares, expected};
use crate::takeoff::Takeoff;
use crate::units::Unit;

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
pub fn cost(job: &Job, takeoff: &Takeoff) -> Result<Cost, Vec<Problem>> {
    Pricing { job, takeoff, staples: |patch, _| patch.staples as f64 }.cost()
}

/// [`cost`] with the count of staples of a patch as a function of the patch and the staple spacing in millimetres.
pub(super) fn cost_with_staples(
    job: &Job,
    takeoff: &Takeoff,
    staples: fn(&Patch, f64) -> f64,
) -> Result<Cost, Vec<Problem>> {
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
    fn cost(&self) -> Result<Cost, Vec<Problem>> {
        let labour = self.labour();
        if self.job.prices.is_none() && labour.is_none() {
            return Err(vec![no_costs()]);
        }
        let mut cost = Cost { labour: labour.unwrap_or_default(), ..Cost::default() };
        let lines = &self.takeoff.materials;
        for line in bought(lines, self.job.prices.as_ref()).filter(|line| !self.is_left_out(line)) {
            self.add_line(line, &mut cost);
        }
        for tiles in &self.takeoff.spares {
            self.add_tiles(tiles, &mut cost)?;
        }
        Ok(cost)
    }

    fn is_left_out(&self, line: &MaterialLine) -> bool {
        line.item == BLADE || self.takeoff.spares.iter().any(|tiles| tiles.item() == line.item)
    }

    /// Minutes × rate of all actions; `None` where the job gives no labour.
    fn labour(&self) -> Option<f64> {
        let labour = self.job.bid.as_ref()?.labour.as_ref()?;
        let done = counted(&self.takeoff.counts, &self.takeoff.slopes).into_iter();
        let minutes = done
            .filter(|(action, ..)| *action != Action::Harvest)
            .filter_map(|(action, count, _)| Some(labour.minutes.of(action)?.to_f64()? * count as f64));
        Some(minutes.sum::<f64>() / 60.0 * labour.rate_per_hour.amount().to_f64()?)
    }

    /// Adds a line of the material list, split by purpose.
    fn add_line(&self, line: &MaterialLine, cost: &mut Cost) {
        let Some(price) = self.price(&line.item) else {
            cost.unpriced.insert(line.item.clone());
            return;
        };
        let price = price * (1.0 + line.waste);
        if let Some(felt) = self.felt(&line.item) {
            cost.patches += felt * price;
            return;
        }
        let patches = || self.takeoff.slopes.iter().flat_map(|slope| &slope.patches);
        let spacing_mm = self.job.practice.staple_spacing.mm();
        let is_staple = line.item == "staple";
        let [counted, staples] = [|patch: &Patch, _| patch.staples as f64, self.staples]
            .map(|of| if is_staple { patches().map(|patch| of(patch, spacing_mm)).sum() } else { 0.0 });
        let blocking = if line.unit == Unit::Mm && line.item == "blocking board" {
            line.need
        } else {
            self.blocking_items(&line.item)
        };
        cost.patches += staples * price;
        cost.blocking += blocking * price;
        cost.hardware += (line.need - counted - blocking) * price;
    }

    /// Felt of the patches in the unit of its line: area, or rolls by area. `None` for a line of anything else.
    fn felt(&self, item: &str) -> Option<f64> {
        let slopes = || self.job.slopes.iter().zip(&self.takeoff.slopes);
        let (name, by_roll) = match item.strip_suffix(", rolls") {
            Some(name) => (name, true),
            None => (item.strip_suffix(", patches")?, false),
        };
        let of = || slopes().filter(|(slope, _)| slope.underlayment.name == name);
        let sheet = &of().next()?.0.underlayment;
        let area: f64 = of().flat_map(|(_, taken)| &taken.patches).map(|patch| patch.area_mm2).sum();
        if by_roll { Some(area / (sheet.sheet_width.mm() * sheet.roll_length?.mm())) } else { Some(area) }
    }

    /// Count of an item on the blocking boards.
    fn blocking_items(&self, item: &str) -> f64 {
        let slopes = self.job.slopes.iter().zip(&self.takeoff.slopes);
        let posts = slopes.flat_map(|(slope, taken)| slope.posts.iter().zip(&taken.posts));
        let blocked = posts.filter(|(_, row)| row.support.as_ref().is_some_and(|support| support.blocked));
        let items = blocked.flat_map(|(post, _)| &post.assembly.blocking_items);
        items.filter(|of| of.item == item).map(|of| f64::from(of.count)).sum()
    }

    /// Adds the expected breakage of one kind of tile, and the pieces for its severed ones.
    fn add_tiles(&self, tiles: &TileSpares, cost: &mut Cost) -> Result<(), Vec<Problem>> {
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
            vec![error("breakage-without-mean", message, help, "/practice/crew_record")]
        })?;
        let new = mean + tiles.spares.for_severed as f64;
        match self.price(&tiles.item()) {
            Some(price) => cost.breakage += new * price,
            None if new > 0.0 => drop(cost.unpriced.insert(tiles.item())),
            None => {}
        }
        Ok(())
    }

    /// Price of one unit of an item in its cheapest pack.
    fn price(&self, item: &str) -> Option<f64> {
        let prices: &PriceList = self.job.prices.as_ref()?;
        let each = prices.of(item).filter_map(|row| Some(row.price.amount().to_f64()? / row.size.to_f64()?));
        each.reduce(f64::min)
    }
}

/// The problem of a job with neither prices nor labour.
pub(crate) fn no_costs() -> Problem {
    let message = "the job has neither prices nor labour: places can't be compared by cost";
    let help = "give `prices`, or `labour` with its rate and minutes in `bid`";
    error("no-costs", message, help, "")
}

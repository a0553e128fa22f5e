//! What posts cost: one by one, as a layout adds them up, and all together.
use std::collections::BTreeSet;

use rust_decimal::prelude::ToPrimitive;

use crate::deck::Patch;
use crate::model::{Action, Code, Job, Post, PriceList, Problem, Problems, Slope};
use crate::pricing::{bought, counted};
use crate::quantities::{BLADE, MaterialLine};
use crate::spares::{Demand, Handled, TileSpares, expected};
use crate::takeoff::{Takeoff, takeoff};
use crate::units::Unit;

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
pub fn cost(job: &Job, takeoff: &Takeoff) -> Result<Cost, Problems> {
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
pub fn additive(job: &Job) -> Result<Cost, Problems> {
    let mut sum = Cost::default();
    for (slope, post) in job.slopes.iter().flat_map(|slope| slope.posts.iter().map(move |post| (slope, post)))
    {
        let job = alone(job, slope, post);
        let takeoff = takeoff(&job)?;
        let staples = |patch: &Patch, spacing_mm: f64| patch.perimeter_mm / spacing_mm;
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
    fn cost(&self) -> Result<Cost, Problems> {
        let labour = self.labour();
        if self.job.prices.is_none() && labour.is_none() {
            let message = "the job has neither prices nor labour: there is nothing to weigh places by";
            let help = "give `prices`, or `labour` with its rate and minutes in `bid`";
            return Err(Problems::from(Problem::new(Code::NoCosts, message, help, "")));
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

    /// Minutes × rate of all that is done; `None` where the job gives no labour.
    fn labour(&self) -> Option<f64> {
        let labour = self.job.bid.as_ref()?.labour.as_ref()?;
        let done = counted(&self.takeoff.counts, &self.takeoff.slopes).into_iter();
        let minutes = done
            .filter(|(action, ..)| *action != Action::Harvest)
            .filter_map(|(action, count, _)| Some(labour.minutes.of(action)?.to_f64()? * count as f64));
        Some(minutes.sum::<f64>() / 60.0 * labour.rate_per_hour.amount().to_f64()?)
    }

    /// Adds a line of the material list, split by what it is for.
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

    /// How much of a felt the patches take, in the unit of its line: areas, or rolls by their area; `None` for a line
    /// that is not of felt.
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

    /// How many of an item the blocking boards take.
    fn blocking_items(&self, item: &str) -> f64 {
        let slopes = self.job.slopes.iter().zip(&self.takeoff.slopes);
        let posts = slopes.flat_map(|(slope, taken)| slope.posts.iter().zip(&taken.posts));
        let blocked = posts.filter(|(_, row)| row.support.as_ref().is_some_and(|support| support.blocked));
        let items = blocked.flat_map(|(post, _)| &post.assembly.blocking_items);
        items.filter(|of| of.item == item).map(|of| f64::from(of.count)).sum()
    }

    /// Adds the tiles of one kind that break when posts are set, and those that severed ones are made up from.
    fn add_tiles(&self, tiles: &TileSpares, cost: &mut Cost) -> Result<(), Problems> {
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
            Problems::from(Problem::new(Code::BreakageWithoutMean, message, help, "/practice/crew_record"))
        })?;
        let new = mean + tiles.spares.for_severed as f64;
        match self.price(&tiles.item()) {
            Some(price) => cost.breakage += new * price,
            None if new > 0.0 => drop(cost.unpriced.insert(tiles.item())),
            None => {}
        }
        Ok(())
    }

    /// What one unit of an item costs in its cheapest pack.
    fn price(&self, item: &str) -> Option<f64> {
        let prices: &PriceList = self.job.prices.as_ref()?;
        let each = prices.of(item).filter_map(|row| Some(row.price.amount().to_f64()? / row.size.to_f64()?));
        each.reduce(f64::min)
    }
}

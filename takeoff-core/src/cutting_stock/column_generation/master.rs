//! The master problem of column generation: sections that cover a demand at least length, cut fractional times.
use std::collections::BTreeSet;

use super::knapsack::{Knapsack, Solution};
use super::simplex::{Column, Simplex};
use crate::cutting_stock::item_types::Orientation;
use crate::cutting_stock::pattern::Pattern;

/// Price of one unit of length. The knapsack takes integer prices, so dual prices are scaled by this.
pub(in crate::cutting_stock) const PRICE_SCALE: f64 = (1_u64 << 30) as f64;
/// A section becomes a column if its value exceeds its length by this share.
const MIN_RELATIVE_GAIN: f64 = 1e-6;
/// Limit on pricing rounds; prices settle long before.
const MAX_ROUNDS: usize = 40;

/// A covering problem: sections of least total length that cover a demand.
///
/// `min Σ lengthₛ·xₛ` subject to `Σ coversₛᵢ·xₛ ≥ demandᵢ`, over all sections of a knapsack (Gilmore and Gomory 1961).
/// The dual prices make no known section worth more than its length. The knapsack, solved at these prices, gives new
/// sections that are.
pub(in crate::cutting_stock) struct Master<'k> {
    knapsack: &'k Knapsack,
    /// Unit of length of the linear program.
    unit: f64,
    /// Part of its item type's demand that one piece in each orientation covers.
    coverage: Vec<f64>,
    /// Content of each known section: orientations and their counts.
    known: BTreeSet<Vec<(usize, u64)>>,
    patterns: Vec<Pattern>,
    /// Cost and coverage of each pattern.
    columns: Vec<Column>,
}

/// An optimum of the linear program.
pub(in crate::cutting_stock) struct FractionalPlan {
    /// Dual price of each item type, in units of length.
    pub(in crate::cutting_stock) prices: Vec<f64>,
    /// Sections and the number of times that each is cut, highest number first.
    pub(in crate::cutting_stock) sections: Vec<(f64, Pattern)>,
}

impl<'k> Master<'k> {
    /// The problem without any section.
    pub(in crate::cutting_stock) fn new(
        knapsack: &'k Knapsack,
        unit: f64,
        coverage: impl Fn(usize, &Orientation) -> f64,
    ) -> Master<'k> {
        let orientations = knapsack.orientations().iter();
        let coverage = orientations.map(|(item, orientation)| coverage(*item, orientation)).collect();
        Master { knapsack, unit, coverage, known: BTreeSet::new(), patterns: Vec::new(), columns: Vec::new() }
    }

    /// The fractional optimum for a demand. Each item type must have an orientation in the knapsack.
    ///
    /// In floating point: the result guides the search and the bound, whose correctness does not depend on it.
    pub(in crate::cutting_stock) fn solve(&mut self, demand: &[f64]) -> FractionalPlan {
        if self.columns.is_empty() {
            self.add_single_pieces();
        }
        // Coverage of an item type without demand has no value.
        let restrict = |column: &Column| Column {
            cost: column.cost,
            covers: column.covers.iter().copied().filter(|&(item, _)| demand[item] > 0.0).collect(),
        };
        let mut columns: Vec<Column> = self.columns.iter().map(restrict).collect();
        let initial: Vec<usize> = (0..demand.len()).collect();
        let mut simplex = Simplex::new(&self.columns, &initial, demand);
        for _ in 0..MAX_ROUNDS {
            simplex.optimize(&columns);
            let orientations = self.knapsack.orientations().iter();
            let prices = orientations.zip(&self.coverage).map(|(&(item, _), coverage)| {
                let price = if demand[item] > 0.0 { simplex.prices[item] } else { 0.0 };
                (price * coverage * PRICE_SCALE).round().max(0.0) as i64
            });
            self.add_improving_sections(&self.knapsack.solve(prices.collect()));
            if self.columns.len() == columns.len() {
                break;
            }
            columns.extend(self.columns[columns.len()..].iter().map(restrict));
        }
        let mut sections: Vec<(f64, Pattern)> =
            simplex.solution().map(|(column, times)| (times, self.patterns[column].clone())).collect();
        sections.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
        FractionalPlan { prices: simplex.prices, sections }
    }

    /// For each item type in turn, a section of one piece, in the orientation that covers most per length. These are
    /// the initial basis, so column `i` covers item type `i`.
    fn add_single_pieces(&mut self) {
        let mut last = None;
        for (index, &(item, orientation)) in self.knapsack.orientations().iter().enumerate() {
            let coverage_per_length = self.coverage[index] / orientation.length as f64;
            match last {
                Some((same, most)) if same == item && most >= coverage_per_length => continue,
                Some((same, _)) if same == item => {
                    self.patterns.pop();
                    self.columns.pop();
                }
                _ => (),
            }
            last = Some((item, coverage_per_length));
            self.add(Pattern::Item { item, orientation });
        }
    }

    /// Adds the best section of each length and the best with each orientation, if worth more than their length.
    fn add_improving_sections(&mut self, solution: &Solution<'_>) {
        let unit = self.unit;
        let improves = |value: i64, length: i64| {
            value as f64 > length as f64 / unit * PRICE_SCALE * (1.0 + MIN_RELATIVE_GAIN)
        };
        for (position, (length, value)) in (1..).zip(solution.by_length()) {
            if improves(value, length) {
                solution.pattern(position).into_iter().for_each(|pattern| self.add(pattern));
            }
        }
        for index in 0..self.knapsack.orientations().len() {
            let (value, length) = solution.best_with(index);
            if improves(value, length) {
                self.add(solution.pattern_with(index));
            }
        }
    }

    /// Adds a section unless one with the same content is known.
    fn add(&mut self, pattern: Pattern) {
        let orientations = self.knapsack.orientations();
        let mut indices: Vec<usize> = Vec::new();
        pattern.for_each_item(&mut |item, orientation| {
            indices.extend(orientations.binary_search(&(item, orientation)).ok());
        });
        indices.sort_unstable();
        let content: Vec<(usize, u64)> =
            indices.chunk_by(|a, b| a == b).map(|equal| (equal[0], equal.len() as u64)).collect();
        if self.known.contains(&content) {
            return;
        }
        let mut covers: Vec<(usize, f64)> = Vec::new();
        for &(index, count) in &content {
            let (item, covered) = (orientations[index].0, self.coverage[index] * count as f64);
            match covers.last_mut() {
                Some((last, sum)) if *last == item => *sum += covered,
                _ => covers.push((item, covered)),
            }
        }
        self.known.insert(content);
        self.columns.push(Column { cost: pattern.size().0 as f64 / self.unit, covers });
        self.patterns.push(pattern);
    }
}

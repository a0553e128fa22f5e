//! Column generation: which sections, how often, would be best if sections could be cut by the fraction.
use std::collections::BTreeSet;

use super::guillotine::{Board, Values};
use super::kinds::Way;
use super::layout::Layout;
use super::simplex::{Column, Simplex};

/// Prices are whole numbers for the guillotine knapsack: this is the price of the unit of length.
pub(super) const PRICE_UNIT: f64 = (1_u64 << 30) as f64;
/// A section is worth adding when its value passes its length by this share.
const WORTH_ADDING: f64 = 1e-6;
/// More rounds than ever needed: prices settle long before.
const MOST_ROUNDS: usize = 40;

/// A covering problem: least length of sections that cover a demand.
///
/// `min Σ lengthₛ·xₛ` subject to `Σ coversₛᵢ·xₛ ≥ demandᵢ`, over all sections of a board (Gilmore and Gomory 1961).
/// Its dual prices pieces so that no section is worth more than its length; new sections come from the guillotine
/// knapsack at those prices.
pub(super) struct Master<'b> {
    board: &'b Board,
    /// The unit of length.
    unit: f64,
    /// What a piece cut in each way of the board covers of the demand for its kind.
    worth: Vec<f64>,
    known: BTreeSet<Vec<(usize, u64)>>,
    /// The sections known, and what each costs and covers.
    layouts: Vec<Layout>,
    columns: Vec<Column>,
}

/// A fractional optimum.
pub(super) struct Mix {
    /// The price of each kind in units of length.
    pub(super) prices: Vec<f64>,
    /// Sections and how often each is cut, most often first.
    pub(super) sections: Vec<(f64, Layout)>,
}

impl<'b> Master<'b> {
    /// The problem before any section is known.
    pub(super) fn new(board: &'b Board, unit: f64, worth: impl Fn(usize, &Way) -> f64) -> Master<'b> {
        let worth = board.ways().iter().map(|(kind, way)| worth(*kind, way)).collect();
        Master { board, unit, worth, known: BTreeSet::new(), layouts: Vec::new(), columns: Vec::new() }
    }

    /// The fractional optimum for a demand, of which no kind is without a way on the board.
    ///
    /// It steers only: nothing depends on how good it is.
    pub(super) fn solve(&mut self, demand: &[f64]) -> Mix {
        if self.columns.is_empty() {
            self.add_singles();
        }
        // Nothing is gained by covering what is not wanted.
        let wanted = |column: &Column| Column {
            cost: column.cost,
            covers: column.covers.iter().copied().filter(|&(kind, _)| demand[kind] > 0.0).collect(),
        };
        let mut columns: Vec<Column> = self.columns.iter().map(wanted).collect();
        let first: Vec<usize> = (0..demand.len()).collect();
        let mut simplex = Simplex::new(&self.columns, &first, demand);
        for _ in 0..MOST_ROUNDS {
            simplex.improve(&columns);
            let prices = self.board.ways().iter().zip(&self.worth).map(|(&(kind, _), worth)| {
                let price = if demand[kind] > 0.0 { simplex.prices[kind] } else { 0.0 };
                (price * worth * PRICE_UNIT).round().max(0.0) as i64
            });
            self.add_best(&self.board.values(prices.collect()));
            if self.columns.len() == columns.len() {
                break;
            }
            columns.extend(self.columns[columns.len()..].iter().map(wanted));
        }
        let used = simplex.used().map(|(column, times)| (times, self.layouts[column].clone()));
        let mut sections: Vec<(f64, Layout)> = used.collect();
        sections.sort_by(|a, b| b.0.total_cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
        Mix { prices: simplex.prices, sections }
    }

    /// For each kind in turn a section of one piece, cut in the way that covers most for its length.
    fn add_singles(&mut self) {
        let mut last = None;
        for (at, &(kind, way)) in self.board.ways().iter().enumerate() {
            let per_length = self.worth[at] / way.length as f64;
            match last {
                Some((same, most)) if same == kind && most >= per_length => continue,
                Some((same, _)) if same == kind => {
                    self.layouts.pop();
                    self.columns.pop();
                }
                _ => (),
            }
            last = Some((kind, per_length));
            self.add(Layout::Piece { kind, way });
        }
    }

    /// Adds the best section of each length, and with each way to cut a piece in it, where it is worth more than its
    /// length.
    fn add_best(&mut self, values: &Values<'_>) {
        let unit = self.unit;
        let worth_adding =
            |value: i64, length: i64| value as f64 > length as f64 / unit * PRICE_UNIT * (1.0 + WORTH_ADDING);
        for (step, (length, value)) in values.by_length().enumerate() {
            if worth_adding(value, length) {
                values.layout(step + 1).into_iter().for_each(|layout| self.add(layout));
            }
        }
        for way in 0..self.board.ways().len() {
            let (value, length) = values.with(way);
            if worth_adding(value, length) {
                self.add(values.layout_with(way));
            }
        }
    }

    fn add(&mut self, layout: Layout) {
        let mut pieces = Vec::new();
        ways_in(&layout, &mut pieces);
        pieces.sort_unstable();
        let ways: Vec<usize> =
            pieces.iter().filter_map(|piece| self.board.ways().binary_search(piece).ok()).collect();
        let mut counted: Vec<(usize, u64)> = Vec::new();
        for way in ways {
            match counted.last_mut() {
                Some((last, count)) if *last == way => *count += 1,
                _ => counted.push((way, 1)),
            }
        }
        if !self.known.insert(counted.clone()) {
            return;
        }
        let mut covers: Vec<(usize, f64)> = Vec::new();
        for (way, count) in counted {
            let (kind, part) = (self.board.ways()[way].0, self.worth[way] * count as f64);
            match covers.last_mut() {
                Some((last, all)) if *last == kind => *all += part,
                _ => covers.push((kind, part)),
            }
        }
        self.columns.push(Column { cost: layout.size().0 as f64 / self.unit, covers });
        self.layouts.push(layout);
    }
}

fn ways_in(layout: &Layout, ways: &mut Vec<(usize, Way)>) {
    match layout {
        Layout::Piece { kind, way } => ways.push((*kind, *way)),
        Layout::Beside(parts) | Layout::Over(parts) => parts.iter().for_each(|part| ways_in(part, ways)),
    }
}

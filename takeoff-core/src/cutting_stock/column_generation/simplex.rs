//! The revised simplex method for covering problems whose columns are generated on the way.

/// Magnitudes below this count as zero.
const ZERO: f64 = 1e-9;

/// A column of the linear program: its cost, and how much it covers of which rows.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) cost: f64,
    pub(super) covers: Vec<(usize, f64)>,
}

/// `min Σ costⱼ·xⱼ` subject to `Σ coversᵢⱼ·xⱼ ≥ demandᵢ`, `x ≥ 0`, at a feasible basis with its inverse (Dantzig and
/// Orchard-Hays 1954).
///
/// In floating point: its results guide a search, and no proof depends on them.
pub(super) struct Simplex {
    rows: usize,
    /// Inverse of the basis, row by row.
    inverse: Vec<f64>,
    /// Column of each basis row; `None` is the surplus of a row that is covered more than its demand.
    basis: Vec<Option<usize>>,
    costs: Vec<f64>,
    /// Value of each basis variable.
    values: Vec<f64>,
    /// Dual price of each row.
    pub(super) prices: Vec<f64>,
}

impl Simplex {
    /// Starts from one column per row, which covers that row only.
    pub(super) fn new(columns: &[Column], initial: &[usize], demand: &[f64]) -> Simplex {
        let rows = demand.len();
        let mut simplex = Simplex {
            rows,
            inverse: vec![0.0; rows * rows],
            basis: initial.iter().map(|&column| Some(column)).collect(),
            costs: initial.iter().map(|&column| columns[column].cost).collect(),
            values: Vec::new(),
            prices: Vec::new(),
        };
        for (row, &column) in initial.iter().enumerate() {
            let covers = columns[column].covers.first().map_or(1.0, |&(_, covers)| covers);
            simplex.inverse[row * rows + row] = 1.0 / covers;
            simplex.values.push(demand[row] / covers);
        }
        simplex.update_prices();
        simplex
    }

    /// Reduced cost of a column: its cost less the value of its coverage. A column below zero improves the basis.
    fn reduced_cost(&self, column: &Column) -> f64 {
        column.cost - column.covers.iter().map(|&(row, covers)| self.prices[row] * covers).sum::<f64>()
    }

    /// Pivots until none of these columns improves the basis.
    pub(super) fn optimize(&mut self, columns: &[Column]) {
        // Degenerate pivots could cycle, hence a limit.
        for _ in 0..20 * (self.rows + 10) {
            let best = columns
                .iter()
                .map(|column| self.reduced_cost(column))
                .enumerate()
                .min_by(|a, b| a.1.total_cmp(&b.1));
            let surplus = self.prices.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1));
            let pivoted = match (best, surplus) {
                (_, Some((row, &price))) if price < -ZERO => self.pivot(None, 0.0, &[(row, -1.0)]),
                (Some((index, reduced_cost)), _) if reduced_cost < -ZERO => {
                    self.pivot(Some(index), columns[index].cost, &columns[index].covers)
                }
                _ => false,
            };
            if !pivoted {
                return;
            }
        }
    }

    /// The columns of the basis and their values.
    pub(super) fn solution(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().zip(&self.values).filter_map(|(column, &value)| Some(((*column)?, value)))
    }

    /// Brings a column into the basis, in place of the first that reaches zero.
    fn pivot(&mut self, column: Option<usize>, cost: f64, covers: &[(usize, f64)]) -> bool {
        let rows = self.rows;
        let direction: Vec<f64> = (0..rows)
            .map(|row| covers.iter().map(|&(of, covers)| self.inverse[row * rows + of] * covers).sum())
            .collect();
        let ratio = |row: usize| self.values[row] / direction[row];
        // Of equal ratios the row with the larger pivot, for numerical stability.
        let leaving = (0..rows)
            .filter(|&row| direction[row] > ZERO)
            .min_by(|&a, &b| ratio(a).total_cmp(&ratio(b)).then(direction[b].total_cmp(&direction[a])));
        let Some(leaving) = leaving else { return false };
        let value = ratio(leaving).max(0.0);
        let pivot_row: Vec<f64> = self.inverse[leaving * rows..(leaving + 1) * rows]
            .iter()
            .map(|x| x / direction[leaving])
            .collect();
        for (row, inverse_row) in self.inverse.chunks_mut(rows).enumerate() {
            if row != leaving && direction[row] != 0.0 {
                self.values[row] = (self.values[row] - value * direction[row]).max(0.0);
                inverse_row.iter_mut().zip(&pivot_row).for_each(|(x, pivot)| *x -= direction[row] * pivot);
            }
        }
        self.inverse[leaving * rows..(leaving + 1) * rows].copy_from_slice(&pivot_row);
        (self.basis[leaving], self.costs[leaving], self.values[leaving]) = (column, cost, value);
        self.update_prices();
        true
    }

    fn update_prices(&mut self) {
        self.prices = vec![0.0; self.rows];
        for (row, &cost) in self.inverse.chunks(self.rows).zip(&self.costs) {
            self.prices.iter_mut().zip(row).for_each(|(price, x)| *price += cost * x);
        }
    }
}

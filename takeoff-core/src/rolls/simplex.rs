//! The revised simplex method for covering problems whose columns are found on the way.

/// Smaller numbers are taken for zero.
const ZERO: f64 = 1e-9;

/// A column: how much it covers of which rows, and what it costs.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) cost: f64,
    pub(super) covers: Vec<(usize, f64)>,
}

/// `min Σ costⱼ·xⱼ` subject to `Σ coversᵢⱼ·xⱼ ≥ demandᵢ`, `x ≥ 0`, at a feasible basis with its inverse (Dantzig and
/// Orchard-Hays 1954).
///
/// In floating point: what it says steers a plan and is proven elsewhere.
pub(super) struct Simplex {
    rows: usize,
    /// The inverse of the basis, row by row.
    inverse: Vec<f64>,
    /// The column of each row of the basis; `None` leaves a row more than covered.
    basis: Vec<Option<usize>>,
    costs: Vec<f64>,
    times: Vec<f64>,
    /// The dual price of each row.
    pub(super) prices: Vec<f64>,
}

impl Simplex {
    /// Begins with one column a row, which covers that row only.
    pub(super) fn new(columns: &[Column], first: &[usize], demand: &[f64]) -> Simplex {
        let rows = demand.len();
        let mut simplex = Simplex {
            rows,
            inverse: vec![0.0; rows * rows],
            basis: first.iter().map(|&column| Some(column)).collect(),
            costs: first.iter().map(|&column| columns[column].cost).collect(),
            times: Vec::new(),
            prices: Vec::new(),
        };
        for (row, &column) in first.iter().enumerate() {
            let covers = columns[column].covers.first().map_or(1.0, |&(_, covers)| covers);
            simplex.inverse[row * rows + row] = 1.0 / covers;
            simplex.times.push(demand[row] / covers);
        }
        simplex.price();
        simplex
    }

    /// What a column lacks of costing what it covers at the prices; below zero it improves the basis.
    pub(super) fn lacks(&self, column: &Column) -> f64 {
        column.cost - column.covers.iter().map(|&(row, covers)| self.prices[row] * covers).sum::<f64>()
    }

    /// Improves the basis with these columns until none of them does any more.
    pub(super) fn improve(&mut self, columns: &[Column]) {
        // A basis that only changes its name could go round for ever.
        for _ in 0..20 * (self.rows + 10) {
            let best = columns
                .iter()
                .map(|column| self.lacks(column))
                .enumerate()
                .min_by(|a, b| a.1.total_cmp(&b.1));
            let surplus = self.prices.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1));
            let entered = match (best, surplus) {
                (_, Some((row, &price))) if price < -ZERO => self.enter(None, 0.0, &[(row, -1.0)]),
                (Some((at, lacks)), _) if lacks < -ZERO => {
                    self.enter(Some(at), columns[at].cost, &columns[at].covers)
                }
                _ => false,
            };
            if !entered {
                return;
            }
        }
    }

    /// How often each column of the basis is used.
    pub(super) fn used(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().zip(&self.times).filter_map(|(column, &times)| Some(((*column)?, times)))
    }

    /// Takes a column into the basis for the one that it drives to zero first.
    fn enter(&mut self, column: Option<usize>, cost: f64, covers: &[(usize, f64)]) -> bool {
        let rows = self.rows;
        let way: Vec<f64> = (0..rows)
            .map(|row| covers.iter().map(|&(of, covers)| self.inverse[row * rows + of] * covers).sum())
            .collect();
        let ratio = |row: usize| self.times[row] / way[row];
        let leaving = (0..rows)
            .filter(|&row| way[row] > ZERO)
            .min_by(|&a, &b| ratio(a).total_cmp(&ratio(b)).then(way[b].total_cmp(&way[a])));
        let Some(leaving) = leaving else { return false };
        let times = ratio(leaving).max(0.0);
        let pivot: Vec<f64> =
            self.inverse[leaving * rows..(leaving + 1) * rows].iter().map(|x| x / way[leaving]).collect();
        for (row, of_row) in self.inverse.chunks_mut(rows).enumerate() {
            if row != leaving && way[row] != 0.0 {
                self.times[row] = (self.times[row] - times * way[row]).max(0.0);
                of_row.iter_mut().zip(&pivot).for_each(|(x, pivot)| *x -= way[row] * pivot);
            }
        }
        self.inverse[leaving * rows..(leaving + 1) * rows].copy_from_slice(&pivot);
        (self.basis[leaving], self.costs[leaving], self.times[leaving]) = (column, cost, times);
        self.price();
        true
    }

    fn price(&mut self) {
        self.prices = vec![0.0; self.rows];
        for (row, &cost) in self.inverse.chunks(self.rows).zip(&self.costs) {
            self.prices.iter_mut().zip(row).for_each(|(price, x)| *price += cost * x);
        }
    }
}

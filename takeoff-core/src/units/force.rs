//! Forces on posts and lags.

/// One pound-force in newtons: 0.45359237 kg × 9.80665 m/s².
pub(super) const POUND_FORCE: f64 = 4.448_221_615_260_5;

/// A force in newtons.
///
/// # Source
///
/// 1 lbf = 0.45359237 kg × 9.80665 m/s² = 4.4482216152605 N exactly (international pound, 1959; standard gravity,
/// 1901).
///
/// # Example
///
/// ```
/// use takeoff_core::units::Force;
/// assert_eq!(Force::from_lbf(954.98).metric(0), "4248 N"); // 954.98 × 4.44822
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Force(f64);

impl Force {
    /// From newtons.
    pub const fn from_n(n: f64) -> Force {
        Force(n)
    }

    /// From pounds-force.
    pub const fn from_lbf(lbf: f64) -> Force {
        Force(lbf * POUND_FORCE)
    }

    /// In newtons.
    pub const fn n(self) -> f64 {
        self.0
    }

    /// In pounds-force.
    pub const fn lbf(self) -> f64 {
        self.0 / POUND_FORCE
    }

    /// In pounds-force with so many decimals, as `955 lbf`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} lbf", self.lbf())
    }

    /// In newtons with so many decimals, as `4248 N`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} N", self.0)
    }
}

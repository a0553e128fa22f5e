//! Areas of openings, felt and mesh.
use std::cmp::Ordering;

/// One square foot: 304.8² mm².
const SQUARE_FOOT: f64 = 92_903.04;
const SQUARE_METRE: f64 = 1e6;

/// An area in square millimetres.
///
/// # Source
///
/// 1 ft = 304.8 mm, exact by definition.
///
/// # Example
///
/// ```
/// use takeoff_core::units::Area;
/// let square = Area::from_mm2(3048.0 * 3048.0); // 10 ft × 10 ft, a roofer's square
/// assert_eq!(square.imperial(1), "100.0 sq ft");
/// assert_eq!(square.metric(2), "9.29 m²");
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct Area(f64);

/// The total order of the numbers, so that areas can be sorted and looked up.
impl Ord for Area {
    fn cmp(&self, other: &Area) -> Ordering {
        self.0.total_cmp(&other.0)
    }
}

impl PartialOrd for Area {
    fn partial_cmp(&self, other: &Area) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Area {
    fn eq(&self, other: &Area) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Area {}

impl Area {
    /// From square millimetres.
    pub const fn from_mm2(mm2: f64) -> Area {
        Area(mm2)
    }

    /// In square millimetres.
    pub const fn mm2(self) -> f64 {
        self.0
    }

    /// In square feet.
    pub fn square_feet(self) -> f64 {
        self.0 / SQUARE_FOOT
    }

    /// In square metres.
    pub fn square_metres(self) -> f64 {
        self.0 / SQUARE_METRE
    }

    /// In square feet with so many decimals, as `12.5 sq ft`.
    pub fn imperial(self, decimals: usize) -> String {
        format!("{:.decimals$} sq ft", self.square_feet())
    }

    /// In square metres with so many decimals, as `1.16 m²`.
    pub fn metric(self, decimals: usize) -> String {
        format!("{:.decimals$} m²", self.square_metres())
    }
}

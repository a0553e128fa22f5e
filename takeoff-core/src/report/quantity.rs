//! Quantities in the units that the job shows.
use crate::model::Display;
use crate::units::{Area, Length, Unit, Volume};

/// Shows quantities in one system of units: lengths to 1/16 in or 1 mm.
///
/// Lengths come in millimetres, areas in mm² and volumes in mm³, as a takeoff holds them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Quantities(pub(super) Display);

impl Quantities {
    /// A length on the roof: `3 ft 4 1/2 in` or `1029 mm`.
    pub(super) fn length(self, mm: f64) -> String {
        match self.0 {
            Display::Imperial => whole_nm(mm).imperial(16),
            Display::Metric => whole_nm(mm).metric(0),
        }
    }

    /// A length on a tile, an exposure or a spacing: `13 1/4 in` or `337 mm`.
    pub(super) fn short_length(self, mm: f64) -> String {
        match self.0 {
            Display::Imperial => whole_nm(mm).inches(16),
            Display::Metric => whole_nm(mm).metric(0),
        }
    }

    /// A length that is small beside the others, such as the error of a fit: `11/64 in` or `4.37 mm`.
    pub(super) fn fine_length(self, mm: f64) -> String {
        self.0.length(whole_nm(mm))
    }

    /// A move to the right and up, `1 in right and 2 in up`; `None` for no move.
    pub(super) fn ways(self, [right, up]: [f64; 2]) -> Option<String> {
        let way = |by: f64, toward: &str, back: &str| match by {
            0.0 => None,
            by => Some(format!("{} {}", self.short_length(by.abs()), if by > 0.0 { toward } else { back })),
        };
        let ways: Vec<String> =
            [way(right, "right", "left"), way(up, "up", "down")].into_iter().flatten().collect();
        (!ways.is_empty()).then(|| ways.join(" and "))
    }

    /// The least and the greatest of some lengths, once if they show alike: `13 to 13 1/4 in`.
    pub(super) fn range(self, mm: impl Iterator<Item = f64> + Clone) -> Option<String> {
        let least = mm.clone().min_by(f64::total_cmp)?;
        let greatest = mm.max_by(f64::total_cmp)?;
        let (least, greatest) = (self.short_length(least), self.short_length(greatest));
        if least == greatest {
            return Some(least);
        }
        let least = least.trim_end_matches(" in").trim_end_matches(" mm");
        Some(format!("{least} to {greatest}"))
    }

    /// An area: `12.50 sq ft` or `1.161 m²`.
    pub(super) fn area(self, mm2: f64) -> String {
        match self.0 {
            Display::Imperial => Area::from_mm2(mm2).imperial(2),
            Display::Metric => Area::from_mm2(mm2).metric(3),
        }
    }

    /// A volume: `10.1 fl oz` or `299 mL`.
    pub(super) fn volume(self, mm3: f64) -> String {
        match self.0 {
            Display::Imperial => Volume::from_mm3(mm3).imperial(1),
            Display::Metric => Volume::from_mm3(mm3).metric(0),
        }
    }

    /// The number of a material line with its unit; what is counted stands bare, to a hundredth.
    pub(super) fn amount(self, amount: f64, unit: Unit) -> String {
        match unit {
            Unit::Each => super::plain::number((amount * 100.0).round() / 100.0),
            Unit::Mm2 => self.area(amount),
            Unit::Mm => self.length(amount),
            Unit::Mm3 => self.volume(amount),
        }
    }
}

/// The length nearest to so many millimetres; sums over a whole job may pass the limits of one length.
fn whole_nm(mm: f64) -> Length {
    Length::from_nm((mm * 1e6).round() as i64)
}

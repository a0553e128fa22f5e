//! Showing a length. What is shown is rounded to what was asked for, and no less than that.
use super::Length;
use super::number::gcd;
use crate::num::round_div;

impl Length {
    /// In feet and inches to the nearest `1/denominator` of an inch, half away from zero, the fraction
    /// reduced. A denominator of 0 is taken as 1.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::units::Length;
    /// let length = Length::from_nm(1_028_700_000); // 40.5 × 25.4 mm
    /// assert_eq!(length.imperial(16), "3 ft 4 1/2 in");
    /// assert_eq!((-Length::FOOT).imperial(16), "-1 ft");
    /// assert_eq!(Length::ZERO.imperial(16), "0 in");
    /// ```
    pub fn imperial(self, denominator: u32) -> String {
        self.in_feet_and_inches(denominator, true)
    }

    /// As [`Length::imperial`], in inches only: the way tile sizes, exposures and cuts are given.
    ///
    /// ```
    /// use takeoff_core::units::Length;
    /// assert_eq!(Length::from_nm(419_100_000).inches(16), "16 1/2 in"); // 16.5 × 25.4 mm
    /// ```
    pub fn inches(self, denominator: u32) -> String {
        self.in_feet_and_inches(denominator, false)
    }

    /// In millimetres with as many decimals as are needed, at most `decimals` (from the sixth on the
    /// length is exact), rounded half away from zero.
    ///
    /// ```
    /// use takeoff_core::units::Length;
    /// let length = Length::from_nm(168_275_000); // 6 5/8 in
    /// assert_eq!(length.metric(0), "168 mm");
    /// assert_eq!(length.metric(6), "168.275 mm");
    /// ```
    pub fn metric(self, decimals: u32) -> String {
        let decimals = decimals.min(6);
        let scale = 10_u64.pow(decimals);
        let steps = round_div(self.nm().into(), i128::from(Length::MM.nm()) / i128::from(scale));
        let sign = if steps < 0 { "-" } else { "" };
        let (whole, part) =
            (steps.unsigned_abs() / u128::from(scale), steps.unsigned_abs() % u128::from(scale));
        let text = format!("{whole}.{part:0width$}", width = decimals as usize);
        let text = text.trim_end_matches('0').trim_end_matches('.');
        format!("{sign}{text} mm")
    }

    fn in_feet_and_inches(self, denominator: u32, with_feet: bool) -> String {
        let denominator = i128::from(denominator.max(1));
        let steps = round_div(i128::from(self.nm()) * denominator, Length::INCH.nm().into());
        let sign = if steps < 0 { "-" } else { "" };
        let (inches, part) = (steps.abs() / denominator, steps.abs() % denominator);
        let (feet, inches) = if with_feet { (inches / 12, inches % 12) } else { (0, inches) };
        let divisor = gcd(part, denominator);
        let fraction = format!("{}/{}", part / divisor, denominator / divisor);
        let mut words = Vec::new();
        if feet > 0 {
            words.push(format!("{feet} ft"));
        }
        match (inches, part) {
            (0, 0) if feet > 0 => {}
            (inches, 0) => words.push(format!("{inches} in")),
            (0, _) => words.push(format!("{fraction} in")),
            (inches, _) => words.push(format!("{inches} {fraction} in")),
        }
        format!("{sign}{}", words.join(" "))
    }
}

//! Division that rounds.
use std::ops::{Add, Div, Mul, Neg, Rem};

/// The whole number nearest to `numerator / denominator`, half away from zero.
///
/// `T` is `i64`, `i128` or a wider signed integer; the denominator is not zero, and the remainder has room for a doubling.
///
/// # Example
///
/// `7/2 = 3.5` rounds to 4 and `−7/2` to −4; `7/3` rounds to 2.
///
/// ```
/// use takeoff_core::num::round_div;
/// assert_eq!([round_div(7, 2), round_div(-7, 2), round_div(7, -3)], [4, -4, -2]);
/// ```
pub fn round_div<T>(numerator: T, denominator: T) -> T
where
    T: Copy
        + Ord
        + From<i8>
        + Add<Output = T>
        + Div<Output = T>
        + Mul<Output = T>
        + Neg<Output = T>
        + Rem<Output = T>,
{
    let zero = T::from(0);
    let magnitude = |x: T| if x < zero { -x } else { x };
    let (quotient, rest) = (numerator / denominator, numerator % denominator);
    if T::from(2) * magnitude(rest) < magnitude(denominator) {
        return quotient;
    }
    let away = if (numerator < zero) == (denominator < zero) { 1 } else { -1 };
    quotient + T::from(away)
}

#[cfg(test)]
mod tests {
    use ethnum::I256;
    use proptest::prelude::*;

    use super::round_div;

    proptest! {
        #[test]
        fn no_whole_number_is_nearer(top in -1000_i64..1000, over in (1_i64..50).prop_union(-50_i64..-1)) {
            let rounded = round_div(top, over);
            prop_assert!((2 * (rounded * over - top)).abs() <= over.abs());
            let half = 2 * (rounded * over - top).abs() == over.abs();
            prop_assert!(!half || (rounded * over).abs() > top.abs(), "half goes away from zero");
        }

        #[test]
        fn all_widths_agree(top in any::<i32>(), over in any::<i32>().prop_filter("not zero", |over| *over != 0)) {
            let narrow = round_div(i64::from(top), i64::from(over));
            prop_assert_eq!(round_div(i128::from(top), i128::from(over)), i128::from(narrow));
            prop_assert_eq!(round_div(I256::from(top), I256::from(over)), I256::from(narrow));
        }
    }
}

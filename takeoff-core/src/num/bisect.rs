//! Bisection of whole numbers.

/// The last whole number from `holds` on, and before `fails`, for which `is_true` holds; at `holds` it is known to hold, at
/// `fails` known not to. In between it changes once.
///
/// `fails` may lie below `holds`: the search then goes down.
///
/// # Example
///
/// The last number whose square is at most 50 is 7.
///
/// ```
/// use takeoff_core::num::last_where;
/// assert_eq!(last_where(0, 51, |x| x * x <= 50), 7);
/// assert_eq!(last_where(0, -51, |x| x * x <= 50), -7);
/// ```
pub fn last_where(holds: i64, fails: i64, mut is_true: impl FnMut(i64) -> bool) -> i64 {
    let (mut holds, mut fails) = (holds, fails);
    while fails.abs_diff(holds) > 1 {
        let middle = holds + (fails - holds) / 2;
        if is_true(middle) { holds = middle } else { fails = middle }
    }
    holds
}

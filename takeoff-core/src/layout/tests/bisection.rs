//! Bisection on the grid, upward and downward, below zero too.
use crate::layout::bisection::{boundary, greatest};

#[test]
fn a_boundary_is_one_nanometre_wide() {
    for change in [-998, -2, 0, 4, 996] {
        assert_eq!(boundary(-1000, 1000, |v| v <= change), (change, change + 2), "{change}");
        assert_eq!(boundary(1000, -1000, |v| v > change), (change + 2, change), "{change}");
    }
}

#[test]
fn the_greatest_number_with_a_property() {
    for limit in [0, 1, 62, 99] {
        assert_eq!(greatest(0, 100, |n| n <= limit), limit);
    }
    assert_eq!(greatest(0, 1, |_| unreachable!()), 0);
}

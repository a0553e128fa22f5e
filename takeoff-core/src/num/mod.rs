//! Numbers: the door to `libm`, rounding division.
pub mod math;

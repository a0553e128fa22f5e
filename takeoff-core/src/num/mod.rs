//! Numbers: the door to `libm`, division that rounds, bisection of whole numbers.
mod bisect;
pub mod math;
mod round;

pub use bisect::last_where;
pub use round::round_div;

//! The only door to transcendental functions: `libm` on every target, so that native, Python and
//! WASM give the same bits (the standard library's differ between targets in the last place).
pub use libm::{
    acos, asin, atan, atan2, cos, exp, hypot, lgamma, log as ln, log1p as ln_1p, log10, pow, sin, sqrt, tan,
};

//! Carlson's symmetric elliptic integrals.
//!
//! # Source
//!
//! B. C. Carlson, Numerical computation of real or complex elliptic integrals, Numerical Algorithms
//! 10 (1995) 13–26; NIST Digital Library of Mathematical Functions, 19.16 and 19.36(i). Each
//! duplication brings the arguments four times nearer to each other; once they are within a
//! thousandth, a series of the fifth order is exact to the last digits.
use crate::num::math::sqrt;

/// How near the arguments must be for the series: its error is of the sixth power of this.
const NEAR: f64 = 1e-3;

/// `R_F(x, y, z) = ½ ∫₀^∞ dt / sqrt((t + x)(t + y)(t + z))`; none negative, at most one 0.
pub(super) fn rf(mut x: f64, mut y: f64, mut z: f64) -> f64 {
    loop {
        let mean = (x + y + z) / 3.0;
        let (dx, dy, dz) = (1.0 - x / mean, 1.0 - y / mean, 1.0 - z / mean);
        if dx.abs().max(dy.abs()).max(dz.abs()) < NEAR {
            let (e2, e3) = (dx * dy - dz * dz, dx * dy * dz);
            let series = 1.0 - e2 / 10.0 + e3 / 14.0 + e2 * e2 / 24.0 - 3.0 * e2 * e3 / 44.0;
            return series / sqrt(mean);
        }
        let lambda = doubled(x, y, z);
        (x, y, z) = ((x + lambda) / 4.0, (y + lambda) / 4.0, (z + lambda) / 4.0);
    }
}

/// `R_D(x, y, z) = 3/2 ∫₀^∞ dt / (sqrt((t + x)(t + y)) (t + z)^(3/2))`; none negative, `z` above 0,
/// at most one of the others 0.
pub(super) fn rd(mut x: f64, mut y: f64, mut z: f64) -> f64 {
    let (mut sum, mut scale) = (0.0, 1.0);
    loop {
        let mean = (x + y + 3.0 * z) / 5.0;
        let (dx, dy, dz) = (1.0 - x / mean, 1.0 - y / mean, 1.0 - z / mean);
        if dx.abs().max(dy.abs()).max(dz.abs()) < NEAR {
            let (xy, zz) = (dx * dy, dz * dz);
            let (e2, e3) = (xy - 6.0 * zz, (3.0 * xy - 8.0 * zz) * dz);
            let (e4, e5) = (3.0 * (xy - zz) * zz, xy * zz * dz);
            let series = 1.0 - 3.0 * e2 / 14.0 + e3 / 6.0 + 9.0 * e2 * e2 / 88.0
                - 3.0 * e4 / 22.0
                - 9.0 * e2 * e3 / 52.0
                + 3.0 * e5 / 26.0;
            return 3.0 * sum + scale * series / (mean * sqrt(mean));
        }
        let lambda = doubled(x, y, z);
        sum += scale / (sqrt(z) * (z + lambda));
        scale /= 4.0;
        (x, y, z) = ((x + lambda) / 4.0, (y + lambda) / 4.0, (z + lambda) / 4.0);
    }
}

/// The shift of a duplication.
fn doubled(x: f64, y: f64, z: f64) -> f64 {
    let (x, y, z) = (sqrt(x), sqrt(y), sqrt(z));
    x * y + y * z + z * x
}

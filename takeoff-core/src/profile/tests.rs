use std::f64::consts::{FRAC_PI_2, PI};

use proptest::prelude::*;

use super::carlson::{rd, rf};
use super::*;

fn nm(nm: i64) -> Length {
    Length::from_nm(nm)
}
fn assert_near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got} is not within {tolerance} of {want}");
}

// Carlson (1995), the paper's own check values; R_D(0, 2, 1) is also DLMF 19.20.22,
// 3 Γ(3/4)²/sqrt(2π).
#[test]
fn symmetric_integrals_have_their_published_values() {
    assert_near(rf(1.0, 2.0, 0.0), 1.311_028_777_146_1, 5e-14);
    assert_near(rf(0.5, 1.0, 0.0), 1.854_074_677_301_4, 5e-14);
    assert_near(rf(2.0, 3.0, 4.0), 0.584_082_841_677_15, 5e-15);
    assert_near(rd(0.0, 2.0, 1.0), 1.797_210_352_103_4, 5e-14);
    assert_near(rd(2.0, 3.0, 4.0), 0.165_105_272_942_61, 5e-15);
}

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.5: E(30° \ 30°).
#[test]
fn an_incomplete_integral_has_its_tabulated_value() {
    let (m, s) = (0.25, 0.5_f64);
    let (x, y) = (1.0 - s * s, 1.0 - m * s * s);
    assert_near(s * rf(x, y, 1.0) - m / 3.0 * s * s * s * rd(x, y, 1.0), 0.517_881_93, 5e-9);
}

// Abramowitz and Stegun, table 17.1: the complete integral E(m), ten digits. A wave is
// (2/π) sqrt(1 + k²) E(m) times as long as in plan, with k² = m/(1 − m).
#[test]
fn sine_arcs_follow_from_the_tabulated_complete_integral() {
    let wave = 10_000_000_000;
    for (m, e) in [(0.0, FRAC_PI_2), (0.1, 1.530_757_636_9), (0.5, 1.350_643_881_0), (0.9, 1.104_774_732_7)] {
        let k = f64::sqrt(m / (1.0 - m));
        // For m = 0 the least rise there is.
        let rise = ((k / PI * wave as f64).round() as i64).max(1);
        let sine = Profile::sine(nm(rise), nm(wave)).unwrap();
        assert_near(sine.arc_over_wave(), 2.0 / PI * f64::sqrt(1.0 + k * k) * e, 1e-9);
    }
    // E(1) = 1: a wave of great steepness goes straight up and down.
    let steep = Profile::sine(nm(10_000_000_000_000), nm(1_000_000)).unwrap();
    assert_near(steep.arc_over_wave() / 2e7, 1.0, 1e-12);
}

// Computed with mpmath at 30 digits: the sine by quadrature and by its elliptic integral, the arcs
// by the arc sine.
#[test]
fn developed_lengths_keep_thirteen_digits() {
    let mm = |n: i64| nm(n * 1_000_000);
    for (rise, wave, x, want) in [
        (50, 200, 30.0, 32.163_240_211_434_06),
        (50, 200, 77.0, 89.914_441_185_325_87),
        (120, 100, 30.0, 85.950_782_645_412_22),
        (8, 300, 290.0, 290.525_179_636_911_2),
    ] {
        let sine = Profile::sine(mm(rise), mm(wave)).unwrap();
        assert_near(sine.developed(x) / want, 1.0, 1e-13);
        assert_near(sine.developed(-x) / want, -1.0, 1e-13);
    }
    for (rise, wave, x, want) in [
        (50, 100, 10.0, 32.175_055_439_664_22),
        (30, 200, 77.0, 82.834_076_862_460_84),
        (30, 200, 150.0, 156.549_770_321_116_58),
    ] {
        let arcs = Profile::arcs(mm(rise), mm(wave)).unwrap();
        assert_near(arcs.developed(x) / want, 1.0, 1e-13);
    }
}

#[test]
fn a_half_round_roll_is_half_a_circle() {
    let rolls = Profile::arcs(nm(101_600_000), nm(203_200_000)).unwrap();
    assert_near(rolls.arc_over_wave(), FRAC_PI_2, 1e-15);
    for degrees in 0..=180 {
        let angle = f64::from(degrees).to_radians();
        let x = 101.6 * (1.0 - crate::num::math::cos(angle));
        assert_near(rolls.height(x), 101.6 * crate::num::math::sin(angle), 2e-6);
        assert_near(rolls.developed(x), 101.6 * angle, 2e-6);
    }
}

#[test]
fn a_flat_tile_has_no_wave() {
    let flat = Profile::Flat;
    assert_eq!((flat.height(3.0), flat.developed(3.0), flat.arc_over_wave()), (0.0, 3.0, 1.0));
    assert_eq!((flat.effective_width(nm(400_000_000)), flat.greatest_rise()), (400.0, Length::ZERO));
    for point in flat.trace(100.0, 30.0, 40.0, 60) {
        let (x, y) = ((point.developed_mm - 100.0) / 30.0, point.up_mm / 40.0);
        assert_near(x * x + y * y, 1.0, 1e-12);
    }
}

#[test]
fn what_is_no_profile_is_refused() {
    assert_eq!(Profile::sine(nm(1), nm(0)), Err(ProfileError::Wave));
    assert_eq!(Profile::sine(nm(0), nm(1)), Err(ProfileError::Rise));
    assert_eq!(Profile::arcs(nm(1), nm(-1)), Err(ProfileError::Wave));
    assert_eq!(Profile::arcs(nm(-1), nm(1)), Err(ProfileError::Rise));
    assert_eq!(Profile::arcs(nm(51), nm(101)), Err(ProfileError::Overhang));
    assert!(Profile::arcs(nm(50), nm(100)).is_ok() && Profile::sine(nm(51), nm(101)).is_ok());
    assert_eq!(ProfileError::Overhang.to_string(), "the rise of an arc must be at most half its wave");
}

/// Arc length by Simpson's rule on the numeric slope of `height`, with Richardson's correction.
fn length_by_simpson(profile: &Profile, from: f64, to: f64) -> f64 {
    const STEPS: i32 = 400;
    let h = (to - from) / f64::from(STEPS);
    let slope = |x: f64| {
        let d = 1e-3 * h;
        (8.0 * (profile.height(x + d) - profile.height(x - d))
            - (profile.height(x + 2.0 * d) - profile.height(x - 2.0 * d)))
            / (12.0 * d)
    };
    let sum: f64 = (0..=STEPS)
        .map(|i| {
            let weight = match i {
                0 | STEPS => 1.0,
                odd if odd % 2 == 1 => 4.0,
                _ => 2.0,
            };
            let slope = slope(from + f64::from(i) * h);
            weight * f64::sqrt(1.0 + slope * slope)
        })
        .sum();
    sum * h / 3.0
}

fn any_wave() -> impl Strategy<Value = Profile> {
    let wave = 50_000_000..600_000_000i64;
    let sine =
        (wave.clone(), 0.01..1.5f64).prop_map(|(w, r)| Profile::sine(nm((w as f64 * r) as i64), nm(w)));
    let arcs = (wave, 0.01..0.5f64).prop_map(|(w, r)| Profile::arcs(nm((w as f64 * r) as i64), nm(w)));
    prop_oneof![sine, arcs].prop_map(Result::unwrap)
}
fn wave_of(profile: &Profile) -> f64 {
    match profile {
        Profile::Flat => 0.0,
        Profile::Sine(sine) => sine.wave().mm(),
        Profile::Arcs(arcs) => arcs.wave().mm(),
    }
}

proptest! {
    #[test]
    fn developed_length_is_the_integral_of_the_slope(profile in any_wave(), a in 0.1..0.9f64, b in 0.1..0.9f64) {
        // Away from where the arcs of two rolls meet at an angle.
        let (from, to) = (a.min(b) * wave_of(&profile), a.max(b) * wave_of(&profile));
        let got = profile.developed(to) - profile.developed(from);
        prop_assert!((got - length_by_simpson(&profile, from, to)).abs() < 1e-6);
    }

    #[test]
    fn waves_repeat_and_read_the_same_backward(profile in any_wave(), part in 0.0..1.0f64, waves in -3..4i32) {
        let wave = wave_of(&profile);
        let (x, arc) = (part * wave, wave * profile.arc_over_wave());
        // Half-round rolls stand upright where they meet: there a last bit of x shows.
        let steep = 1e-9 + 1e-6 / (1.0 + 1e6 * part.min(1.0 - part));
        let shifted = x + f64::from(waves) * wave;
        prop_assert!((profile.height(shifted) - profile.height(x)).abs() < steep);
        prop_assert!((profile.developed(shifted) - profile.developed(x) - f64::from(waves) * arc).abs() < steep);
        prop_assert!((profile.height(wave - x) - profile.height(x)).abs() < steep);
        prop_assert!((profile.developed(wave - x) + profile.developed(x) - arc).abs() < steep);
    }

    #[test]
    fn the_face_is_longer_than_its_plan_and_stays_within_its_rise(
        profile in any_wave(), x in -900.0..900.0f64, run in 0.0..900.0f64,
    ) {
        let (start, end) = (profile.developed(x), profile.developed(x + run));
        let climb = profile.height(x + run) - profile.height(x);
        prop_assert!(end - start >= f64::sqrt(run * run + climb * climb) - 1e-9);
        prop_assert!(profile.height(x) >= -1e-9 && profile.height(x) <= profile.greatest_rise().mm() + 1e-9);
        prop_assert!(profile.arc_over_wave() > 1.0);
        prop_assert_eq!(profile.effective_width(nm(1_000_000)), 1.0 / profile.arc_over_wave());
    }

    #[test]
    fn ends_and_crests_are_where_they_should_be(profile in any_wave()) {
        let (wave, rise) = (wave_of(&profile), profile.greatest_rise().mm());
        prop_assert!(profile.height(0.0).abs() < 1e-9 && profile.developed(0.0).abs() < 1e-9);
        prop_assert!((profile.height(wave / 2.0) - rise).abs() < 1e-9);
        prop_assert!((profile.developed(wave / 2.0) * 2.0 / wave - profile.arc_over_wave()).abs() < 1e-12);
        prop_assert!((profile.developed(wave) / wave - profile.arc_over_wave()).abs() < 1e-12);
    }

    #[test]
    fn a_traced_hole_is_wider_on_the_face(profile in any_wave(), centre in 0.0..600.0f64, rx in 5.0..80.0f64) {
        let outline = profile.trace(centre, rx, rx, 64);
        prop_assert_eq!(outline.len(), 64);
        let across = |i: usize| outline[i].developed_mm;
        prop_assert!(across(0) - across(32) > 2.0 * rx);
        prop_assert!((0..64).all(|i| (across(32)..=across(0)).contains(&across(i))));
        prop_assert!((outline[16].up_mm - rx).abs() < 1e-12 && (outline[48].up_mm + rx).abs() < 1e-12);
    }
}

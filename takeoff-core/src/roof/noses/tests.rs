use proptest::prelude::*;

use super::*;

fn length(text: &str) -> Length {
    Length::parse(text).unwrap()
}

/// How many spaces, and the first of them, in mm.
fn spaces(span: &str, greatest: &str) -> (usize, f64) {
    let noses = noses_between(Length::ZERO, length(span), length(greatest), Laps::Single).unwrap();
    (noses.len() - 1, (noses[1] - noses[0]).mm())
}

/// Worked lay-outs that how-to pages on setting out tile battens publish: 204 in at 13 in at most makes 16 spaces of
/// 12 3/4 in; 450 cm in 14 spaces is 32.14 cm.
#[test]
fn published_gauges() {
    let (count, gauge) = spaces("204 in", "13 in");
    assert_eq!((count, gauge), (16, 323.85)); // 12.75 × 25.4
    let (count, gauge) = spaces("450 cm", "34 cm");
    assert_eq!(count, 14);
    assert!((gauge - 321.4).abs() <= 0.05, "{gauge}");
}

/// Greatest gauge of a 420 mm tile at 75 mm head lap, 345 mm (trade article), and spans reckoned by hand from it.
#[test]
fn gauges_by_hand() {
    let greatest = length("420 mm") - length("75 mm");
    assert_eq!(greatest, length("345 mm"));
    for (span, greatest, count, gauge_mm) in [
        ("5000 mm", "345 mm", 15, 333.333_333),
        ("4270 mm", "345 mm", 13, 328.461_538),
        ("192 in", "14 in", 14, 192.0 / 14.0 * 25.4),
        ("180 in", "13.5 in", 14, 180.0 / 14.0 * 25.4),
    ] {
        let (found, gauge) = spaces(span, greatest);
        assert_eq!(found, count, "{span}");
        assert!((gauge - gauge_mm).abs() < 1e-6, "{span}: {gauge}");
    }
}

#[test]
fn a_double_lap_tile_shows_half() {
    // Plain tile 265 mm at 65 mm head lap: 100 mm of gauge, so 1 m takes 10 spaces.
    let noses = noses_between(Length::ZERO, length("1 m"), length("200 mm"), Laps::Double).unwrap();
    assert_eq!(noses.len(), 11);
}

#[test]
fn a_whole_number_of_exposures_takes_no_course_more() {
    assert_eq!(spaces("130 in", "13 in").0, 10);
    let one_more =
        noses_between(Length::ZERO, length("130 in") + Length::from_nm(1), length("13 in"), Laps::Single);
    assert_eq!(one_more.unwrap().len() - 1, 11);
    assert_eq!(noses_at(Length::ZERO, length("13 in"), length("130 in")).unwrap().len(), 10);
}

#[test]
fn no_room_and_too_many() {
    let (zero, inch) = (Length::ZERO, Length::INCH);
    assert_eq!(noses_between(inch, inch, inch, Laps::Single), Err(NosesError::NoRoom));
    assert_eq!(noses_between(zero, inch, zero, Laps::Single), Err(NosesError::NoRoom));
    assert_eq!(noses_at(inch, inch, inch), Err(NosesError::NoRoom));
    assert_eq!(noses_at(zero, zero, inch), Err(NosesError::NoRoom));
    let nm = Length::from_nm(1);
    assert_eq!(noses_at(-Length::LIMIT, nm, Length::LIMIT), Err(NosesError::TooMany(20_000_000_000_000)));
    assert_eq!(noses_between(zero, Length::from_nm(9_999), nm, Laps::Single).unwrap().len(), MOST_COURSES);
    assert_eq!(
        noses_between(zero, Length::from_nm(10_000), nm, Laps::Single),
        Err(NosesError::TooMany(10_001))
    );
}

proptest! {
    /// Spread noses begin and end where they should, evenly to the nanometre, and with a course less they would be
    /// further apart than allowed.
    #[test]
    fn spread_noses_are_even_and_few(
        first in -1_000_000_000_i64..1_000_000_000, span in 1_i64..20_000_000_000, longest in 20_000_000_i64..900_000_000, double: bool,
    ) {
        let (laps, layers) = if double { (Laps::Double, 2) } else { (Laps::Single, 1) };
        let (first, last) = (Length::from_nm(first), Length::from_nm(first + span));
        let noses = noses_between(first, last, Length::from_nm(longest), laps).unwrap();
        let spaces = i64::try_from(noses.len() - 1).unwrap();
        prop_assert_eq!((noses[0], *noses.last().unwrap()), (first, last));
        for pair in noses.windows(2) {
            let exposure = (pair[1] - pair[0]).nm();
            prop_assert!((exposure - span / spaces).abs() <= 1 && exposure > 0);
        }
        prop_assert!(span * layers <= spaces * longest);
        prop_assert!(spaces == 1 || span * layers > (spaces - 1) * longest);
    }

    /// Constant noses: the last is below the top, one more would not be.
    #[test]
    fn constant_noses_end_below_the_top(first in -1_000_000_000_i64..0, exposure in 20_000_000_i64..900_000_000, top in 1_i64..20_000_000_000) {
        let noses = noses_at(Length::from_nm(first), Length::from_nm(exposure), Length::from_nm(top)).unwrap();
        let last = noses.last().unwrap().nm();
        prop_assert!(last < top && last + exposure >= top);
        prop_assert!(noses.windows(2).all(|pair| (pair[1] - pair[0]).nm() == exposure));
    }
}

use proptest::prelude::*;

use super::thresholds::Axis;
use super::{Situation, *};
use crate::cuts::{CutKind, cuts_of, cuts_of_each, opening_of};
use crate::geometry::{Ellipse, Point, Rect, grid};
use crate::model::{Assembly, Slope};
use crate::roof::Site;
use crate::testing::{assembly, at, gable, hip, len, practice, three_course_assembly};
use crate::units::Length;

const NM: i64 = 2;

struct Case<'a> {
    mover: Mover<'a>,
    neighbours: &'a Neighbours,
    at: Point,
}

impl Case<'_> {
    fn others(&self) -> Others<'_> {
        Others { neighbours: self.neighbours, post: 0 }
    }
}

/// Calls `check` with a post of the usual assembly at a place, alone on the slope or with others.
fn with_post(slope: &Slope, at: Point, others: &[Point], check: impl FnOnce(Case)) {
    with_assembly(&assembly(), slope, at, others, check);
}

/// The same with a post of another assembly.
fn with_assembly(assembly: &Assembly, slope: &Slope, at: Point, others: &[Point], check: impl FnOnce(Case)) {
    let practice = practice();
    let site = Site::of(slope, &practice);
    let opening = opening_of(assembly, slope);
    let openings: Vec<Ellipse> = std::iter::once(&at).chain(others).map(|&p| opening.at(p)).collect();
    let neighbours = Neighbours::of(&openings);
    let cuts = cuts_of(&site, &openings);
    let of_each = cuts_of_each(&cuts, openings.len());
    let bounds: Vec<Rect> = openings.iter().map(Ellipse::bounds).collect();
    let crowd = Crowd::new(&cuts, &of_each, &bounds, grid(practice.least_web));
    let partners = crowd.partners_of(0, &neighbours, &bounds[0]);
    let mover = Mover { site: &site, assembly, opening, partners };
    check(Case { mover, neighbours: &neighbours, at });
}

fn in_slope(slope: &Slope, u: f64, v: f64) -> Option<Point> {
    let practice = practice();
    let site = Site::of(slope, &practice);
    let bounds = site.field.bounds();
    let between = |low: i64, high: i64, t: f64| 2 * ((low + ((high - low) as f64 * t) as i64) / 2);
    let at = Point::new(between(bounds.left, bounds.right, u), between(0, bounds.upper, v));
    site.allows_post_at(at, &assembly()).then_some(at)
}

/// Up to its margin nothing changes; one nanometre beyond, something does, or the field ends, or another post's
/// opening is within the web.
fn check_margins(case: &Case, samples: &[f64]) -> Result<(), TestCaseError> {
    let Case { mover, at, .. } = case;
    let margins = margins(mover, *at, &case.others());
    let base = mover.state(*at);
    let reach = mover.site.field.reach_from(*at);
    let ways = [
        (Axis::U, -1, grid(margins.left), at.u - reach.left),
        (Axis::U, 1, grid(margins.right), reach.right - at.u),
        (Axis::V, -1, grid(margins.down), at.v - reach.lower),
        (Axis::V, 1, grid(margins.up), reach.upper - at.v),
    ];
    for (axis, sign, margin, limit) in ways {
        let state = |by: i64| mover.state(axis.moved(*at, sign * by));
        prop_assert!(margin % NM == 0 && 0 <= margin && margin <= limit);
        prop_assert_eq!(state(margin), base, "{:?} {} {}", axis, sign, margin);
        for t in samples {
            let by = NM * ((margin as f64 * t) as i64 / NM);
            prop_assert_eq!(state(by), base, "{:?} {} {} of {}", axis, sign, by, margin);
        }
        let beyond = axis.moved(*at, sign * (margin + NM));
        let near = case.others().any_near(&mover.opening_at(beyond).bounds(), grid(len("1 in")));
        prop_assert!(
            state(margin + NM) != base || margin + NM > limit || near,
            "{:?} {} {}: nothing changes beyond",
            axis,
            sign,
            margin
        );
    }
    Ok(())
}

/// The kinds of the cuts of a post are those of the takeoff with the post there.
fn check_crowd(case: &Case, others: &[Point]) -> Result<(), TestCaseError> {
    let Case { mover, at, .. } = case;
    let margins = margins(mover, *at, &case.others());
    let ways =
        [(Axis::U, -margins.left), (Axis::U, margins.right), (Axis::V, -margins.down), (Axis::V, margins.up)];
    let half = |by: i64| NM * (by / 2 / NM);
    let steps = ways.map(|(axis, by)| (axis, grid(by)));
    for (axis, by) in steps.into_iter().flat_map(|(axis, by)| [(axis, 0), (axis, half(by)), (axis, by)]) {
        let place = axis.moved(*at, by);
        let openings: Vec<Ellipse> =
            std::iter::once(&place).chain(others).map(|&place| mover.opening_at(place)).collect();
        let cuts = cuts_of(mover.site, &openings);
        let own = cuts.iter().filter(|cut| cut.posts.contains(&0));
        prop_assert_eq!(mover.kinds(place), own.map(|cut| cut.judged.kind()).collect::<Vec<_>>());
    }
    Ok(())
}

/// The nearest better place, found by looking at every sixteenth.
fn nearest_by_looking(case: &Case) -> Option<i64> {
    let Case { mover, at, .. } = case;
    let here = mover.state(*at);
    let good = here.passes() && here.severed == 0 && here.situation != Situation::None;
    if good && here.tiles == 1 {
        return None;
    }
    let step = grid(len("1/16 in"));
    let places = (1..=212).flat_map(|count| [count * step, -count * step]);
    let rank = |state: &State| (state.tiles, state.not_holes > 0);
    let allowed = places.filter_map(|up| {
        let place = Axis::V.moved(*at, up);
        let state = mover.state(place);
        let near = case.others().any_near(&mover.opening_at(place).bounds(), grid(len("1 in")));
        let fine = state.passes() && state.severed == 0 && state.situation != Situation::None;
        let better = !good || rank(&state) < rank(&here);
        (fine && better && !near && mover.site.allows_post_at(place, mover.assembly))
            .then_some((rank(&state), up))
    });
    allowed.min_by_key(|&(rank, up)| (rank, up.abs(), up < 0)).map(|(_, up)| up)
}

fn check_nearest(case: &Case) -> Result<(), TestCaseError> {
    let found = nearest(&case.mover, case.at, len("1/16 in"), len("13 1/4 in"), &case.others());
    prop_assert_eq!(found.map(|better| grid(better.up)), nearest_by_looking(case));
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn margins_are_exact(hipped in any::<bool>(), u in 0.0..1.0f64, v in 0.0..1.0f64, samples in prop::array::uniform8(0.0..1.0f64)) {
        let slope = if hipped { hip() } else { gable() };
        let Some(at) = in_slope(&slope, u, v) else { return Ok(()) };
        let mut checked = Ok(());
        with_post(&slope, at, &[], |case| checked = check_margins(&case, &samples));
        checked?;
    }

    #[test]
    fn margins_beside_others(hipped in any::<bool>(), u in 0.0..1.0f64, v in 0.0..1.0f64, du in -8_000_000i64..8_000_000, dv in -8_000_000i64..8_000_000, samples in prop::array::uniform8(0.0..1.0f64)) {
        let slope = if hipped { hip() } else { gable() };
        let Some(at) = in_slope(&slope, u, v) else { return Ok(()) };
        let other = Point::new(at.u + 50 * du, at.v + 50 * dv);
        let mut checked = Ok(());
        with_post(&slope, at, &[other], |case| checked = check_margins(&case, &samples));
        checked?;
    }

    /// In a crowd the kinds are those of the takeoff with the post where it has gone, up to the margin and half-way to it.
    #[test]
    fn as_the_takeoff_judges_a_crowd(
        hipped in any::<bool>(),
        (u, v) in (0.0..1.0f64, 0.0..1.0f64),
        offsets in prop::collection::vec((-5_000_000i64..5_000_000, -5_000_000i64..5_000_000), 1..7),
        samples in prop::array::uniform8(0.0..1.0f64),
    ) {
        let slope = if hipped { hip() } else { gable() };
        let Some(at) = in_slope(&slope, u, v) else { return Ok(()) };
        let others: Vec<Point> = offsets.iter().map(|(du, dv)| Point::new(at.u + 50 * du, at.v + 50 * dv)).collect();
        let mut checked = Ok(());
        with_post(&slope, at, &others, |case| {
            checked = check_margins(&case, &samples).and_then(|()| check_crowd(&case, &others));
        });
        checked?;
    }

    /// The way to the next opening as looking at each finds it.
    #[test]
    fn way_to_the_next_of_many(places in prop::collection::vec((-90i64..90, -90i64..90, 1i64..9, 1i64..9), 1..60), web in 0i64..12) {
        let openings: Vec<Ellipse> =
            places.iter().map(|&(u, v, a, b)| Ellipse { centre: Point::new(u, v), a, b }).collect();
        let neighbours = Neighbours::of(&openings);
        let own = openings[0].bounds();
        for (axis, sign) in [(Axis::U, 1), (Axis::U, -1), (Axis::V, 1), (Axis::V, -1)] {
            let gaps = openings[1..].iter().map(Ellipse::bounds).filter_map(|other| {
                let (low, high) = if sign > 0 { (0, 1000) } else { (-1000, 0) };
                let on_the_way = axis.swept(&own, low, high).nearer_than(&other, web);
                let gap = match (axis, sign) {
                    (Axis::U, 1) => other.left - own.right,
                    (Axis::U, _) => own.left - other.right,
                    (Axis::V, 1) => other.lower - own.upper,
                    (Axis::V, _) => own.lower - other.upper,
                };
                (on_the_way && !own.nearer_than(&other, web)).then_some(gap - web)
            });
            prop_assert_eq!(neighbours.way_to_next(&own, axis, sign, web, 0), gaps.min());
        }
        let any = openings[1..].iter().any(|other| own.nearer_than(&other.bounds(), web));
        prop_assert_eq!(neighbours.any_near(&own, web, 0), any);
    }

    /// With three-course work no lap line changes anything, so that no margin is less than with the underlayment.
    #[test]
    fn margins_with_three_course_work(hipped in any::<bool>(), u in 0.0..1.0f64, v in 0.0..1.0f64, samples in prop::array::uniform8(0.0..1.0f64)) {
        let slope = if hipped { hip() } else { gable() };
        let Some(at) = in_slope(&slope, u, v) else { return Ok(()) };
        let (mut checked, mut wide, mut usual) = (Ok(()), None, None);
        with_assembly(&three_course_assembly(), &slope, at, &[], |case| {
            checked = check_margins(&case, &samples).and_then(|()| check_nearest(&case));
            wide = Some(margins(&case.mover, at, &case.others()));
        });
        checked?;
        with_post(&slope, at, &[], |case| usual = Some(margins(&case.mover, at, &case.others())));
        let (wide, usual) = (wide.unwrap(), usual.unwrap());
        prop_assert!(wide.left >= usual.left && wide.right >= usual.right);
        prop_assert!(wide.down >= usual.down && wide.up >= usual.up);
    }

    #[test]
    fn nearest_place_is_the_nearest(hipped in any::<bool>(), u in 0.0..1.0f64, v in 0.0..1.0f64) {
        let slope = if hipped { hip() } else { gable() };
        let Some(at) = in_slope(&slope, u, v) else { return Ok(()) };
        let mut checked = Ok(());
        with_post(&slope, at, &[], |case| checked = check_nearest(&case));
        checked?;
    }
}

#[test]
fn a_post_in_the_middle_of_a_face() {
    let slope = gable();
    // Course 3 shows from 25 to 38 1/4 in, its tile's head lies at 41 1/2; joints at whole feet, strips 1 in.
    with_post(&slope, Point::from(at("4 ft 6 in", "31 1/2 in")), &[], |case| {
        let margins = margins(&case.mover, case.at, &case.others());
        // A disc of 1 in with a web of 1 in. On the right the neighbour's strip begins at 59 in; on the left the
        // neighbour's face ends at 48 in. Down, a flashing 11 in up from v ≥ 30 1/4 in reaches 3 in under the
        // nose at 38 1/4 in; up, the lap line at 34 in tucks as long as it is not below v − 4 + 1 in.
        assert_eq!(margins.right, len("4 in"));
        assert_eq!(margins.left, len("5 in"));
        assert_eq!(margins.down, len("1 1/4 in"));
        assert_eq!(margins.up, len("5 1/2 in"));
    });
    // With three-course work the lap line does not matter: up, until the opening meets the nose at 38 1/4 in.
    with_assembly(&three_course_assembly(), &slope, Point::from(at("4 ft 6 in", "31 1/2 in")), &[], |case| {
        let margins = margins(&case.mover, case.at, &case.others());
        assert_eq!([margins.down, margins.up], ["1 1/4 in", "5 3/4 in"].map(len));
    });
}

/// Openings of 1 in radius, web 1 in, in the tile from 47 to 60 and 25 to 41 1/2 in: A and B are 0.9 in apart along the eave,
/// C is 1 in or more from each in one way, but less than 1 in from the rectangle round both, which breaches the right edge.
#[test]
fn three_in_one_tile_are_judged_as_one() {
    let slope = gable();
    let [a, b, c] = [("55.15 in", "30 in"), ("58.05 in", "31.9 in"), ("54.65 in", "33.5 in")]
        .map(|(u, v)| Point::from(at(u, v)));
    with_post(&slope, c, &[a, b], |case| {
        assert_eq!(case.mover.kinds(c), [CutKind::Notch]);
        // B ends at 32.9 in, and from 33.9 in on C is a hole by itself.
        let margins = margins(&case.mover, c, &case.others());
        assert_eq!(margins.up, len("1.4 in") - Length::from_nm(1));
    });
}

/// Of a thousand posts on one spot each has the margins of one of two there.
#[test]
fn a_thousand_on_one_spot() {
    let slope = gable();
    let on_spot = Point::from(at("4 ft 6 in", "31 1/2 in"));
    let beside = Point::from(at("4 ft 8 1/2 in", "31 1/2 in"));
    let mut of_two = None;
    with_post(&slope, on_spot, &[on_spot, beside], |case| {
        of_two = Some(margins(&case.mover, on_spot, &case.others()));
    });

    let practice = practice();
    let site = Site::of(&slope, &practice);
    let assembly = assembly();
    let opening = opening_of(&assembly, &slope);
    let mut openings = vec![opening.at(on_spot); 1000];
    openings.push(opening.at(beside));
    let cuts = cuts_of(&site, &openings);
    let of_each = cuts_of_each(&cuts, openings.len());
    let bounds: Vec<Rect> = openings.iter().map(Ellipse::bounds).collect();
    let crowd = Crowd::new(&cuts, &of_each, &bounds, grid(practice.least_web));
    let neighbours = Neighbours::of(&openings);
    for (post, own) in bounds.iter().enumerate().take(1000) {
        let partners = crowd.partners_of(post, &neighbours, own);
        let mover = Mover { site: &site, assembly: &assembly, opening, partners };
        let others = Others { neighbours: &neighbours, post };
        assert_eq!(Some(margins(&mover, on_spot, &others)), of_two);
    }
}

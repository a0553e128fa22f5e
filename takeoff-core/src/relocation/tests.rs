use proptest::prelude::*;

use super::thresholds::Axis;
use super::{Situation, *};
use crate::cuts::opening_of;
use crate::geometry::{Ellipse, Point, grid};
use crate::model::{Assembly, Slope};
use crate::roof::Site;
use crate::testing::{assembly, at, gable, hip, len, practice, three_course_assembly};

const NM: i64 = 2;

struct Case<'a> {
    mover: Mover<'a>,
    neighbours: Neighbours,
    openings: Vec<Ellipse>,
    at: Point,
}

impl Case<'_> {
    fn others(&self) -> Others<'_> {
        Others { neighbours: &self.neighbours, openings: &self.openings, post: 0 }
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
    let partners = partners_of(&openings, &neighbours, 0, grid(practice.least_web));
    let mover = Mover { site: &site, assembly, opening, partners };
    check(Case { mover, neighbours, openings, at });
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
        let near = !case.others().near(&mover.opening_at(beyond).bounds(), grid(len("1 in"))).is_empty();
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
        let near = !case.others().near(&mover.opening_at(place).bounds(), grid(len("1 in"))).is_empty();
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

//! Limits to the nanometre, and what is said of them.
use super::*;
use crate::geometry::SlopePoint;

#[test]
fn limits_are_kept_to_the_nanometre() {
    // Right as they are, and each one nanometre the other way among the cases.
    accepted(|right| right.rails().clamps[0].from = len("9 in"));
    accepted(|right| right.rail_to(3, len("111 in")));
    accepted(|right| right.rails().greatest_span = len("72 in"));
    accepted(|right| right.rails().greatest_overhang = len("16 in"));
    accepted(|right| right.rails().least_distance = len("20 in"));
    accepted(|right| right.both(|slope| slope.arrays[1].at.u = len("203 in")));
}

/// A zone that allows a nanometre less than there is counts where the rail touches it, and not a nanometre off.
#[test]
fn a_zone_counts_where_it_is_met() {
    let zone = |from: SlopePoint, to: SlopePoint, span: Length, overhang: Length| {
        move |right: &mut Right| {
            let zone =
                SpanZone { name: "edge".into(), from, to, greatest_span: span, greatest_overhang: overhang };
            right.rails().zones = vec![zone];
        }
    };
    let (span, overhang) = (len("72 in"), len("16 in"));
    let moved = |u: &str, v: &str, by: Length, up: Length| {
        let SlopePoint { u, v } = at(u, v);
        SlopePoint { u: u + by, v: v + up }
    };
    let corner = at("240 in", "120 in");
    // From the third rail's last post on.
    accepted(zone(at("200 in", "90 in"), corner, span, overhang));
    let codes = |change: &dyn Fn(&mut Right)| {
        found(|right| change(right)).into_iter().map(|problem| problem.code).collect::<Vec<_>>()
    };
    assert_eq!(codes(&zone(at("200 in", "90 in"), corner, span - NM, overhang)), ["layout-span"]);
    assert_eq!(codes(&zone(at("200 in", "100 in"), corner, span - NM, overhang)), ["layout-span"]);
    accepted(zone(moved("200 in", "90 in", NM, Length::ZERO), corner, span - NM, overhang));
    accepted(zone(moved("200 in", "100 in", Length::ZERO, NM), corner, span - NM, overhang));
    // The first rail's left end, of 16 in; on the right it reaches 3 in.
    let low = at("30 in", "40 in");
    assert_eq!(codes(&zone(low, at("40 in", "46 in"), span, overhang - NM)), ["layout-overhang"]);
    accepted(zone(low, moved("40 in", "46 in", -NM, Length::ZERO), span, overhang - NM));
    accepted(zone(low, moved("40 in", "46 in", Length::ZERO, -NM), span, overhang - NM));
    accepted(zone(at("201 in", "40 in"), at("210 in", "50 in"), span - NM, len("3 in")));
    assert_eq!(
        codes(&zone(at("201 in", "40 in"), at("210 in", "50 in"), span, len("3 in") - NM)),
        ["layout-overhang"]
    );

    let message = message(zone(at("200 in", "90 in"), corner, len("4 ft"), overhang));
    assert_eq!(
        message,
        "array `field`: rail 3 spans 72 in from `field-3-2` to `field-3-3`, and may span 48 in in the zone `edge`"
    );
}

/// The bay from 104 to 128 in has its middle at 116 in; a lag may be 1/4 in off a rafter's centre line.
#[test]
fn a_post_in_a_bay_needs_leave_and_the_middle() {
    let in_bays = |right: &mut Right| {
        right.post("field-1-2").at.u = len("116 in");
        right.rails().greatest_span = len("7 ft");
    };
    let allowed = |right: &mut Right| {
        in_bays(right);
        right.rails().blocking = true;
    };
    accepted(allowed);
    let message = message(in_bays);
    assert_eq!(
        message,
        "array `field`: `field-1-2` at 116 in, 46 in stands in the bay right of rafter 5, and blocking is not allowed"
    );
    let off = found(|right| {
        allowed(right);
        right.post("field-1-2").at.u = len("116 in") + NM;
    });
    assert_eq!(off[0].code, "layout-rafter");
    // Beside the rafter at 104 in another: a sixteenth between them is a bay, if a narrow one; touching, they have none.
    let doubled = |apart: &'static str| {
        found(move |right| {
            allowed(right);
            let beside = len("104 in") + len(apart);
            right.both(|slope| slope.rafters.as_mut().unwrap().lines.insert(5, RafterLine::straight(beside)));
            right.post("field-1-2").at.u = len("104 in") + Length::from_nm(len(apart).nm() / 2);
            right.rails().greatest_span = len("96 in");
        })
    };
    assert_eq!(doubled("1 9/16 in"), []);
    assert_eq!(doubled("1 1/2 in")[0].code, "layout-rafter");
}

/// A rafter that leans by 1 nm an inch: 46 nm at 46 in, and at 72 1/2 in 73, half away from zero.
#[test]
fn a_crooked_rafter_is_where_it_is_at_its_height() {
    let crooked = |right: &mut Right, at_last_rail: i64| {
        right.both(|slope| {
            let line = &mut slope.rafters.as_mut().unwrap().lines[2];
            line.upper = line.lower + Length::from_nm(204);
        });
        for (name, by) in
            [("field-1-1", 46), ("field-2-1", 73), ("field-3-1", 100), ("field-4-1", at_last_rail)]
        {
            right.post(name).at.u = len("56 in") + Length::from_nm(by);
        }
        right.rails().greatest_overhang = len("17 in");
    };
    accepted(|right| crooked(right, 138));
    assert_eq!(found(|right| crooked(right, 137))[0].code, "layout-rafter");
    // The middle of a bay between that one and the next, at 80 in: half of 46 nm is 23, half of 73 is 36.5.
    for (rail, by) in [(1, 23), (2, 37)] {
        accepted(|right| {
            crooked(right, 138);
            right.post(&format!("field-{rail}-1")).at.u = len("68 in") + Length::from_nm(by);
            right.rails().greatest_overhang = len("29 in");
            right.rails().blocking = true;
        });
    }
}

/// Rafters 3, 6, 9 for the first and the fourth rail, 4 and 7 for the second, which has the fixed post on rafter 5, too,
/// 5 and 8 for the third.
#[test]
fn staggered_rails_take_turns() {
    let staggered = |right: &mut Right| {
        for (name, u) in [("2-1", 80.0), ("2-2", 152.0), ("3-1", 104.0), ("3-2", 176.0)] {
            right.post(&format!("field-{name}")).at.u = inches(u);
        }
        ["field-2-3", "field-3-3"].into_iter().for_each(|name| right.without(name));
        let rails = right.rails();
        (rails.stagger, rails.greatest_overhang) = (3, len("64 in"));
    };
    accepted(staggered);
    let message = message(|right| {
        staggered(right);
        right.post("field-3-1").at.u = inches(128.0);
        right.rails().greatest_overhang = len("88 in");
    });
    assert_eq!(
        message,
        "array `field`: `field-1-1` of rail 1 is at rafter 3, `field-3-1` of rail 3 at rafter 6, and rails take turns in 3"
    );
}

#[test]
fn what_is_said_names_the_place_and_the_limit() {
    assert_eq!(
        message(|right| right.job.slopes[0].arrays[0].shift.right = len("1 in")),
        "array `field`: moved right by 2 in, and may be by 1 in"
    );
    assert_eq!(
        message(|right| right.rail_to(3, len("111 1/4 in"))),
        "array `field`: rail 3 lies at 111 1/4 in, and may be clamped from 99 in to 111 in only"
    );
    assert_eq!(
        message(|right| right.rails().least_distance = len("21 in")),
        "array `field`: `field-4-3` and `K` are 20 in apart, and must be 21 in"
    );
    assert_eq!(
        message(|right| right.both(|slope| slope.posts[0].at.v = len("60 in"))),
        "array `field`: the fixed post `F` at 60 in is on none of its rails"
    );
    assert_eq!(
        message(|right| right.post("field-1-2").at.v = len("47 in")),
        "array `field`: its posts stand in 5 lines (46 in, 47 in, 72 1/2 in, 100 in, 138 in), and its rails are 4"
    );
}

/// Two arrays that touch: a post below the edge of both is whose its name says it is.
#[test]
fn a_post_below_an_edge_of_two_arrays_is_counted_once() {
    accepted(|right| {
        let mut second = right.job.slopes[0].arrays[0].clone();
        let laid_at = SlopePoint { u: len("203 in"), v: len("30 in") };
        (second.name, second.at, second.shift) = ("field-2".into(), laid_at, Shift::default());
        let second_rails = second.rails.as_mut().unwrap();
        (second_rails.greatest_overhang, second_rails.greatest_span) = (len("46 in"), len("96 in"));
        right.both(|slope| {
            // The rafter at 200 in is at 203 in, and a row of the second array's rails begins there.
            slope.rafters.as_mut().unwrap().lines[8] = RafterLine::straight(len("203 in"));
            slope.arrays[1] = second.clone();
            slope.posts.retain(|post| post.name != "K");
        });
        right.rails().greatest_span = len("75 in");
        right.rails().least_distance = Length::ZERO;
        for (rail, v) in RAILS.into_iter().enumerate() {
            right.post(&format!("field-{}-3", rail + 1)).at.u = len("203 in");
            for (i, u) in [224.0, 320.0].into_iter().enumerate() {
                let name = format!("field-2-{}-{}", rail + 1, i + 1);
                right.laid.slopes[0].posts.push(post(name, u, v));
            }
        }
    });
}

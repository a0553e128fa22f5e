//! Limits to the nanometre, and their messages.
use super::*;
use crate::geometry::SlopePoint;

#[test]
fn limits_are_kept_to_the_nanometre() {
    // At the limit; one nanometre beyond it is among the cases.
    accepted(|valid| valid.rails().clamps[0].from = len("9 in"));
    accepted(|valid| valid.rail_to(3, len("111 in")));
    accepted(|valid| valid.rails().greatest_span = len("72 in"));
    accepted(|valid| valid.rails().greatest_overhang = len("16 in"));
    accepted(|valid| valid.rails().least_distance = len("20 in"));
    accepted(|valid| valid.both(|slope| slope.arrays[1].at.u = len("203 in")));
}

/// A zone one nanometre too strict applies where the rail touches it, and not one nanometre off.
#[test]
fn a_zone_applies_where_a_rail_meets_it() {
    let zone = |from: SlopePoint, to: SlopePoint, span: Length, overhang: Length| {
        move |valid: &mut Valid| {
            let zone =
                SpanZone { name: "edge".into(), from, to, greatest_span: span, greatest_overhang: overhang };
            valid.rails().zones = vec![zone];
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
    let codes = |change: &dyn Fn(&mut Valid)| {
        found(|valid| change(valid)).into_iter().map(|problem| problem.code).collect::<Vec<_>>()
    };
    assert_eq!(codes(&zone(at("200 in", "90 in"), corner, span - NM, overhang)), ["layout-span"]);
    assert_eq!(codes(&zone(at("200 in", "100 in"), corner, span - NM, overhang)), ["layout-span"]);
    accepted(zone(moved("200 in", "90 in", NM, Length::ZERO), corner, span - NM, overhang));
    accepted(zone(moved("200 in", "100 in", Length::ZERO, NM), corner, span - NM, overhang));
    // The first rail overhangs 16 in on the left and 3 in on the valid.
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
        "array `field`: rail 3 spans 72 in from `field-3-2` to `field-3-3`; the limit is 48 in in the zone `edge`"
    );
}

/// The bay from 104 to 128 in has its middle at 116 in; a lag may be 1/4 in off a rafter's centre line.
#[test]
fn a_post_in_a_bay_needs_blocking_and_the_middle() {
    let in_bays = |valid: &mut Valid| {
        valid.post("field-1-2").at.u = len("116 in");
        valid.rails().greatest_span = len("7 ft");
    };
    let allowed = |valid: &mut Valid| {
        in_bays(valid);
        valid.rails().blocking = true;
    };
    accepted(allowed);
    let message = message(in_bays);
    assert_eq!(
        message,
        "array `field`: `field-1-2` at 116 in, 46 in stands in the bay right of rafter 5, without blocking allowed"
    );
    let off = found(|valid| {
        allowed(valid);
        valid.post("field-1-2").at.u = len("116 in") + NM;
    });
    assert_eq!(off[0].code, "layout-rafter");
    // Beside the rafter at 104 in a second one: with a sixteenth between them there is a bay; touching, there is none.
    let doubled = |apart: &'static str| {
        found(move |valid| {
            allowed(valid);
            let beside = len("104 in") + len(apart);
            valid.both(|slope| slope.rafters.as_mut().unwrap().lines.insert(5, RafterLine::straight(beside)));
            valid.post("field-1-2").at.u = len("104 in") + Length::from_nm(len(apart).nm() / 2);
            valid.rails().greatest_span = len("96 in");
        })
    };
    assert_eq!(doubled("1 9/16 in"), []);
    assert_eq!(doubled("1 1/2 in")[0].code, "layout-rafter");
}

/// A rafter that leans by 1 nm an inch: 46 nm at 46 in, and 73 nm at 72 1/2 in, half away from zero.
#[test]
fn a_crooked_rafter_is_measured_at_the_height_of_its_post() {
    let crooked = |valid: &mut Valid, at_last_rail: i64| {
        valid.both(|slope| {
            let line = &mut slope.rafters.as_mut().unwrap().lines[2];
            line.upper = line.lower + Length::from_nm(204);
        });
        for (name, by) in
            [("field-1-1", 46), ("field-2-1", 73), ("field-3-1", 100), ("field-4-1", at_last_rail)]
        {
            valid.post(name).at.u = len("56 in") + Length::from_nm(by);
        }
        valid.rails().greatest_overhang = len("17 in");
    };
    accepted(|valid| crooked(valid, 138));
    assert_eq!(found(|valid| crooked(valid, 137))[0].code, "layout-rafter");
    // The middle of a bay between that one and the next, at 80 in: half of 46 nm is 23, half of 73 is 36.5.
    for (rail, by) in [(1, 23), (2, 37)] {
        accepted(|valid| {
            crooked(valid, 138);
            valid.post(&format!("field-{rail}-1")).at.u = len("68 in") + Length::from_nm(by);
            valid.rails().greatest_overhang = len("29 in");
            valid.rails().blocking = true;
        });
    }
}

/// Rafters 3, 6 and 9 for the first and the fourth rail; 4 and 7 for the second, with the fixed post on rafter 5; 5 and 8
/// for the third.
#[test]
fn staggered_rails_take_turns() {
    let staggered = |valid: &mut Valid| {
        for (name, u) in [("2-1", 80.0), ("2-2", 152.0), ("3-1", 104.0), ("3-2", 176.0)] {
            valid.post(&format!("field-{name}")).at.u = inches(u);
        }
        ["field-2-3", "field-3-3"].into_iter().for_each(|name| valid.without(name));
        let rails = valid.rails();
        (rails.stagger, rails.greatest_overhang) = (3, len("64 in"));
    };
    accepted(staggered);
    let message = message(|valid| {
        staggered(valid);
        valid.post("field-3-1").at.u = inches(128.0);
        valid.rails().greatest_overhang = len("88 in");
    });
    assert_eq!(
        message,
        "array `field`: `field-1-1` of rail 1 is at rafter 3, `field-3-1` of rail 3 at rafter 6; the stagger is 3"
    );
}

#[test]
fn messages_name_the_place_and_the_limit() {
    assert_eq!(
        message(|valid| valid.job.slopes[0].arrays[0].shift.right = len("1 in")),
        "array `field`: moved right by 2 in; the limit is 1 in"
    );
    assert_eq!(
        message(|valid| valid.rail_to(3, len("111 1/4 in"))),
        "array `field`: rail 3 is at 111 1/4 in; its clamp window is from 99 in to 111 in"
    );
    assert_eq!(
        message(|valid| valid.rails().least_distance = len("21 in")),
        "array `field`: `field-4-3` and `K` are 20 in apart; the least distance is 21 in"
    );
    assert_eq!(
        message(|valid| valid.both(|slope| slope.posts[0].at.v = len("60 in"))),
        "array `field`: the fixed post `F` at 60 in is on none of its rails"
    );
    assert_eq!(
        message(|valid| valid.post("field-1-2").at.v = len("47 in")),
        "array `field`: its posts form 5 lines (46 in, 47 in, 72 1/2 in, 100 in, 138 in); its rails are 4"
    );
}

/// Two arrays that touch: the name of a post below the edge of both decides.
#[test]
fn a_post_below_the_edges_of_two_arrays_counts_once() {
    accepted(|valid| {
        let mut second = valid.job.slopes[0].arrays[0].clone();
        let laid_at = SlopePoint { u: len("203 in"), v: len("30 in") };
        (second.name, second.at, second.shift) = ("field-2".into(), laid_at, Shift::default());
        let second_rails = second.rails.as_mut().unwrap();
        (second_rails.greatest_overhang, second_rails.greatest_span) = (len("46 in"), len("96 in"));
        valid.both(|slope| {
            // The rafter moves from 200 to 203 in, where the second array begins.
            slope.rafters.as_mut().unwrap().lines[8] = RafterLine::straight(len("203 in"));
            slope.arrays[1] = second.clone();
            slope.posts.retain(|post| post.name != "K");
        });
        valid.rails().greatest_span = len("75 in");
        valid.rails().least_distance = Length::ZERO;
        for (rail, v) in RAILS.into_iter().enumerate() {
            valid.post(&format!("field-{}-3", rail + 1)).at.u = len("203 in");
            for (i, u) in [224.0, 320.0].into_iter().enumerate() {
                let name = format!("field-2-{}-{}", rail + 1, i + 1);
                valid.laid.slopes[0].posts.push(post(name, u, v));
            }
        }
    });
}

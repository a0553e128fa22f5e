//! A case for each code: what is changed in a right layout, and what comes of it.
use super::*;

/// One change, and the one code that comes of it.
type Case = (&'static str, fn(&mut Right));

const CASES: &[Case] = &[
    ("layout-job", |right| right.laid.practice.least_margin = len("1/8 in")),
    ("layout-job", |right| right.laid.slopes[0].noses[3] = inches(38.0)),
    ("layout-job", |right| drop(right.laid.slopes.pop())),
    ("layout-array", |right| right.laid.slopes[0].arrays[0].columns = 5),
    ("layout-array", |right| right.laid.slopes[0].arrays[1].at.u = inches(301.0)),
    ("layout-array", |right| drop(right.laid.slopes[0].arrays.pop())),
    ("layout-shift", |right| right.job.slopes[0].arrays[0].shift.right = len("2 in") - NM),
    ("layout-shift", |right| right.job.slopes[0].arrays[0].shift.down = len("3 in") - NM),
    ("layout-array-off-slope", |right| {
        let hole =
            vec![at("90 in", "55 in"), at("90 in", "57 in"), at("92 in", "57 in"), at("92 in", "55 in")];
        right.both(|slope| slope.holes = vec![hole.clone()]);
    }),
    ("layout-arrays-overlap", |right| right.both(|slope| slope.arrays[1].at.u = len("203 in") - NM)),
    ("layout-kept", |right| right.post("K").at.u = len("212 in") + NM),
    ("layout-kept", |right| right.without("K")),
    ("layout-kept", |right| {
        right.post("K").assembly = Arc::new(Assembly { clearance: len("1 in"), ..assembly() })
    }),
    ("layout-fixed", |right| right.post("F").at.u = len("104 in") + NM),
    ("layout-fixed", |right| right.without("F")),
    // Off its rail, and below the array only where the job has that.
    ("layout-fixed", |right| right.both(|slope| slope.posts[0].at.v = len("72 1/2 in") + NM)),
    ("layout-fixed", |right| right.both(|slope| slope.posts[0].at.v = len("60 in"))),
    ("layout-fixed", |right| right.both(|slope| slope.posts[0].at = at("39 in", "60 in"))),
    ("layout-stray", |right| right.laid.slopes[0].posts.push(post("field-1-4".into(), 248.0, 46.0))),
    ("layout-assembly", |right| {
        right.post("field-2-1").assembly = Arc::new(Assembly { name: "post-9".into(), ..assembly() });
    }),
    ("layout-rails", |right| right.post("field-2-1").at.v = len("72 1/2 in") + NM),
    ("layout-rails", |right| {
        RAFTERS.iter().enumerate().for_each(|(i, _)| right.without(&format!("field-3-{}", i + 1)))
    }),
    ("layout-clamp", |right| right.rails().clamps[0].from = len("9 in") + NM),
    ("layout-clamp", |right| right.rail_to(3, len("111 in") + NM)),
    ("layout-few-posts", |right| {
        right.rails().greatest_overhang = len("120 in");
        ["field-4-1", "field-4-3"].into_iter().for_each(|name| right.without(name));
    }),
    ("layout-span", |right| right.rails().greatest_span = len("72 in") - NM),
    ("layout-span", |right| right.without("field-1-2")),
    ("layout-overhang", |right| right.rails().greatest_overhang = len("16 in") - NM),
    ("layout-overhang", |right| right.without("field-1-3")),
    ("layout-distance", |right| right.rails().least_distance = len("20 in") + NM),
    ("layout-distance", |right| {
        right.both(|slope| {
            slope
                .posts
                .iter_mut()
                .filter(|post| post.name == "K")
                .for_each(|post| post.at.u = len("212 in") - NM);
        })
    }),
    ("layout-rafter", |right| {
        right.rails().greatest_span = len("73 in");
        right.post("field-1-2").at.u = len("128 in") + NM;
    }),
    ("layout-rafter", |right| right.post("field-2-2").at.u = len("140 in")),
    ("layout-rafter", |right| right.both(|slope| slope.rafters = None)),
    ("layout-stagger", |right| right.rails().stagger = 2),
    ("layout-off-slope", |right| {
        right.job.slopes[0].arrays[0].at = at("40 in", "30 in");
        let hole = vec![
            at("128 in", "136 in"),
            at("128 in", "140 in"),
            at("130 in", "140 in"),
            at("130 in", "136 in"),
        ];
        right.both(|slope| slope.holes = vec![hole.clone()]);
    }),
    ("layout-setback", |right| right.both(|slope| slope.setbacks[0].least = len("46 in") + NM)),
    ("layout-setback", |right| right.both(|slope| slope.setbacks[0].holds_flashing = true)),
    ("layout-no-tile", |right| right.both(|slope| slope.noses.truncate(9))),
    ("layout-severed", |right| {
        right.practice(|practice| {
            (practice.least_side_cover, practice.least_margin) = (Length::ZERO, Length::ZERO)
        });
        right.assemblies(|assembly| assembly.clearance = len("7 in"));
    }),
    ("layout-failing", |right| right.assemblies(|assembly| assembly.top_flashing.width = len("7 in"))),
    ("layout-failing", |right| {
        right.assemblies(|assembly| assembly.deck_flashing.cone_height = Some(len("1 in")))
    }),
    ("layout-failing", |right| right.assemblies(|assembly| assembly.post_height = Some(len("1 in")))),
    ("layout-thin", |right| right.practice(|practice| practice.least_margin = len("2 in"))),
];

#[test]
fn one_thing_wrong_gives_its_code_and_no_other() {
    for (place, (code, change)) in CASES.iter().enumerate() {
        let mut right = right();
        change(&mut right);
        assert_eq!(right.codes(), BTreeSet::from([(*code).to_owned()]), "case {place}");
    }
}

#[test]
fn every_code_is_listed_and_has_a_case() {
    assert!(CODES.is_sorted_by(|a, b| a.as_str() < b.as_str()), "codes are listed once, in order");
    let cases: BTreeSet<&str> = CASES.iter().map(|(code, _)| *code).collect();
    assert_eq!(cases, CODES.iter().map(|code| code.as_str()).collect());
}

/// What work.rs finds is for somebody to look at; all else breaks a rule.
#[test]
fn findings_are_no_errors() {
    for (code, change) in CASES {
        let finding = ["layout-failing", "layout-severed", "layout-thin"].contains(code);
        let severity = if finding { Severity::Finding } else { Severity::Error };
        assert!(found(change).iter().all(|problem| problem.severity == severity), "{code}");
    }
}

//! A case for each code: one change to the valid layout.
use super::*;

/// A code, and a change that gives that code only.
type Case = (&'static str, fn(&mut Valid));

const CASES: &[Case] = &[
    ("layout-job", |valid| valid.laid.practice.least_margin = len("1/8 in")),
    ("layout-job", |valid| valid.laid.slopes[0].noses[3] = inches(38.0)),
    ("layout-job", |valid| drop(valid.laid.slopes.pop())),
    ("layout-array", |valid| valid.laid.slopes[0].arrays[0].columns = 5),
    ("layout-array", |valid| valid.laid.slopes[0].arrays[1].at.u = inches(301.0)),
    ("layout-array", |valid| drop(valid.laid.slopes[0].arrays.pop())),
    ("layout-shift", |valid| valid.job.slopes[0].arrays[0].shift.right = len("2 in") - NM),
    ("layout-shift", |valid| valid.job.slopes[0].arrays[0].shift.down = len("3 in") - NM),
    ("layout-array-off-slope", |valid| {
        let hole =
            vec![at("90 in", "55 in"), at("90 in", "57 in"), at("92 in", "57 in"), at("92 in", "55 in")];
        valid.both(|slope| slope.holes = vec![hole.clone()]);
    }),
    ("layout-arrays-overlap", |valid| valid.both(|slope| slope.arrays[1].at.u = len("203 in") - NM)),
    ("layout-kept", |valid| valid.post("K").at.u = len("212 in") + NM),
    ("layout-kept", |valid| valid.without("K")),
    ("layout-kept", |valid| {
        valid.post("K").assembly = Arc::new(Assembly { clearance: len("1 in"), ..assembly() })
    }),
    ("layout-fixed", |valid| valid.post("F").at.u = len("104 in") + NM),
    ("layout-fixed", |valid| valid.without("F")),
    // Off its rail; then below the array only at the array's place in the job.
    ("layout-fixed", |valid| valid.both(|slope| slope.posts[0].at.v = len("72 1/2 in") + NM)),
    ("layout-fixed", |valid| valid.both(|slope| slope.posts[0].at.v = len("60 in"))),
    ("layout-fixed", |valid| valid.both(|slope| slope.posts[0].at = at("39 in", "60 in"))),
    ("layout-stray", |valid| valid.laid.slopes[0].posts.push(post("field-1-4".into(), 248.0, 46.0))),
    ("layout-assembly", |valid| {
        valid.post("field-2-1").assembly = Arc::new(Assembly { name: "post-9".into(), ..assembly() });
    }),
    ("layout-rails", |valid| valid.post("field-2-1").at.v = len("72 1/2 in") + NM),
    ("layout-rails", |valid| {
        RAFTERS.iter().enumerate().for_each(|(i, _)| valid.without(&format!("field-3-{}", i + 1)))
    }),
    ("layout-clamp", |valid| valid.rails().clamps[0].from = len("9 in") + NM),
    ("layout-clamp", |valid| valid.rail_to(3, len("111 in") + NM)),
    ("layout-few-posts", |valid| {
        valid.rails().greatest_overhang = len("120 in");
        ["field-4-1", "field-4-3"].into_iter().for_each(|name| valid.without(name));
    }),
    ("layout-span", |valid| valid.rails().greatest_span = len("72 in") - NM),
    ("layout-span", |valid| valid.without("field-1-2")),
    ("layout-overhang", |valid| valid.rails().greatest_overhang = len("16 in") - NM),
    ("layout-overhang", |valid| valid.without("field-1-3")),
    ("layout-distance", |valid| valid.rails().least_distance = len("20 in") + NM),
    ("layout-distance", |valid| {
        valid.both(|slope| {
            slope
                .posts
                .iter_mut()
                .filter(|post| post.name == "K")
                .for_each(|post| post.at.u = len("212 in") - NM);
        })
    }),
    ("layout-rafter", |valid| {
        valid.rails().greatest_span = len("73 in");
        valid.post("field-1-2").at.u = len("128 in") + NM;
    }),
    ("layout-rafter", |valid| valid.post("field-2-2").at.u = len("140 in")),
    ("layout-rafter", |valid| valid.both(|slope| slope.rafters = None)),
    ("layout-stagger", |valid| valid.rails().stagger = 2),
    ("layout-off-slope", |valid| {
        valid.job.slopes[0].arrays[0].at = at("40 in", "30 in");
        let hole = vec![
            at("128 in", "136 in"),
            at("128 in", "140 in"),
            at("130 in", "140 in"),
            at("130 in", "136 in"),
        ];
        valid.both(|slope| slope.holes = vec![hole.clone()]);
    }),
    ("layout-setback", |valid| valid.both(|slope| slope.setbacks[0].least = len("46 in") + NM)),
    ("layout-setback", |valid| valid.both(|slope| slope.setbacks[0].holds_flashing = true)),
    ("layout-no-tile", |valid| valid.both(|slope| slope.noses.truncate(9))),
    ("layout-severed", |valid| {
        valid.practice(|practice| {
            (practice.least_side_cover, practice.least_margin) = (Length::ZERO, Length::ZERO)
        });
        valid.assemblies(|assembly| assembly.clearance = len("7 in"));
    }),
    ("layout-failing", |valid| valid.assemblies(|assembly| assembly.top_flashing.width = len("7 in"))),
    ("layout-failing", |valid| {
        valid.assemblies(|assembly| assembly.deck_flashing.cone_height = Some(len("1 in")))
    }),
    ("layout-failing", |valid| valid.assemblies(|assembly| assembly.post_height = Some(len("1 in")))),
    ("layout-thin", |valid| valid.practice(|practice| practice.least_margin = len("2 in"))),
];

#[test]
fn one_change_gives_one_code() {
    for (place, (code, change)) in CASES.iter().enumerate() {
        let mut valid = valid();
        change(&mut valid);
        assert_eq!(valid.codes(), BTreeSet::from([(*code).to_owned()]), "case {place}");
    }
}

#[test]
fn every_code_is_listed_and_has_a_case() {
    assert!(CODES.is_sorted_by(|a, b| a.as_str() < b.as_str()), "codes are listed once, in order");
    let cases: BTreeSet<&str> = CASES.iter().map(|(code, _)| *code).collect();
    assert_eq!(cases, CODES.iter().map(|code| code.as_str()).collect());
}

/// The codes of `roof_work` are findings; all others are errors.
#[test]
fn severities() {
    for (code, change) in CASES {
        let finding = ["layout-failing", "layout-severed", "layout-thin"].contains(code);
        let severity = if finding { Severity::Finding } else { Severity::Error };
        assert!(found(change).iter().all(|problem| problem.severity == severity), "{code}");
    }
}

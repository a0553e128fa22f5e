//! Slopes for unit tests, built without a job file.
use crate::geometry::SlopePoint;
use std::collections::BTreeMap;
use std::sync::Arc;

use crate::model::{Breakage, *};
use crate::probability::Rate;
use crate::profile::Profile;
use crate::units::{Length, Pitch};

/// A length from its text.
pub(crate) fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

/// A length in inches; 64ths are exact.
pub(crate) fn inches(inches: f64) -> Length {
    Length::nearest(inches * 25.4e6).unwrap()
}

/// A point from two texts.
pub(crate) fn at(u: &str, v: &str) -> SlopePoint {
    SlopePoint { u: len(u), v: len(v) }
}

/// A flat tile 16 1/2 × 13 in, 12 in cover, left strip under.
pub(crate) fn flat_tile() -> Tile {
    Tile {
        name: "flat".into(),
        length: len("16 1/2 in"),
        cover: len("12 in"),
        pieces: Pieces::One { width: len("13 in"), lap_side: LapSide::Left, stock: Stock::default() },
        least_head_lap: len("3 in"),
        thickness: len("1 in"),
        weight_g: None,
        laps: Laps::Single,
        held: Held::Nailed,
        fasteners_each: 1,
        profile: Profile::Flat,
    }
}

/// A 1 1/2 in post with 1/4 in clearance.
pub(crate) fn assembly() -> Assembly {
    Assembly {
        name: "post-7".into(),
        post_diameter: len("1 1/2 in"),
        clearance: len("1/4 in"),
        axis: Axis::Normal,
        hole_saws: vec![],
        post_height: None,
        lap_surface_height: None,
        lag_edge_distance: len("1/2 in"),
        lags: None,
        deck_flashing: DeckFlashing {
            width: len("10 in"),
            down: len("4 in"),
            up: len("7 in"),
            cone_diameter: len("2 in"),
            cone_height: None,
            dried_in: DriedIn::Underlayment,
        },
        top_flashing: TopFlashing { width: len("16 in"), down: len("6 in"), up: len("11 in"), formed: true },
        beads: vec![],
        pilot_holes: vec![],
        dabs: vec![],
        items: vec![],
        blocking_items: vec![],
    }
}

/// The same, dried in with three-course work.
pub(crate) fn three_course_assembly() -> Assembly {
    let mut assembly = assembly();
    assembly.deck_flashing.dried_in = DriedIn::ThreeCourse;
    Assembly { name: "post-7, three-course".into(), ..assembly }
}

/// Practice with the defaults.
pub(crate) fn practice() -> Practice {
    Practice {
        least_web: len("1 in"),
        hand_clearance: len("2 in"),
        least_margin: len("1/4 in"),
        drain: len("1 in"),
        deck_tuck: len("2 in"),
        patch_underlap: len("4 in"),
        patch_side_margin: len("4 in"),
        least_top_tuck: len("3 in"),
        least_side_cover: len("3 in"),
        bead_inset: len("3/4 in"),
        staple_spacing: len("4 in"),
        window: None,
        breakage: Breakage {
            cut: Rate::Known(0.06),
            removed: Rate::Known(0.02),
            loosened: Rate::Known(0.01),
            walked: Rate::Known(0.005),
            recut: true,
        },
        service_level: 0.95,
        cost_of_short: None,
        cost_of_failing: None,
        pieces_for_severed: 2,
        cartridge_mm3: 298_690.0,
        sealant_waste: 0.1,
        waste: BTreeMap::new(),
        blade_life: None,
        three_course: MeshAndCement {
            mesh_width: len("4 in"),
            film: len("1/8 in"),
            coats: 2,
            container_mm3: 3_785_411.784,
            roll: len("150 ft"),
            cement_waste: 0.1,
            mesh_waste: 0.1,
        },
    }
}

/// A gable slope of 38 × 17 ft at 5:12: flat tile at 13 1/4 in, half bond, 36 in felt, rafters at 24 in.
pub(crate) fn gable() -> Slope {
    Slope {
        name: "south".into(),
        pitch: Pitch::parse("5:12").unwrap(),
        place: None,
        outline: vec![at("0", "0"), at("38 ft", "0"), at("38 ft", "17 ft"), at("0", "17 ft")],
        edges: vec![Some(EdgeKind::Eave), Some(EdgeKind::Rake), Some(EdgeKind::Ridge), Some(EdgeKind::Rake)],
        holes: vec![],
        tile: Arc::new(flat_tile()),
        noses: (0..16).map(|k| Length::from_nm(-38_100_000 + k * 336_550_000)).collect(),
        overhang: len("1 1/2 in"),
        first_joint: Length::ZERO,
        bond: vec![Length::ZERO, len("6 in")],
        underlayment: Arc::new(Underlayment {
            name: "felt-30".into(),
            sheet_width: len("36 in"),
            head_lap: len("2 in"),
            roll_length: None,
            turnable: false,
            never_tucked: false,
        }),
        lap_lines: LapLines::Regular { first: len("34 in") },
        rafters: Some(Rafters {
            lines: (0..19)
                .map(|i| RafterLine::straight(Length::from_nm(203_200_000 + i * 609_600_000)))
                .collect(),
            low: Length::ZERO,
            high: len("17 ft"),
            width: len("1 1/2 in"),
            depth: None,
            specific_gravity: None,
        }),
        deck_thickness: None,
        blocking: None,
        battens: None,
        perimeter: None,
        setbacks: vec![],
        walked: 0,
        posts: vec![],
        arrays: vec![],
    }
}

/// The gable with posts `A1`, `A2`… of one assembly at `u`, `v` in inches.
pub(crate) fn gable_with(assembly: Assembly, posts: &[(f64, f64)]) -> Slope {
    let assembly = Arc::new(assembly);
    let post = |(i, &(u, v)): (usize, &(f64, f64))| Post {
        name: format!("A{}", i + 1),
        assembly: assembly.clone(),
        at: SlopePoint { u: inches(u), v: inches(v) },
        fixed: false,
        path: format!("/slopes/0/posts/{i}"),
    };
    Slope { posts: posts.iter().enumerate().map(post).collect(), ..gable() }
}

/// A hip slope with a chimney: 30 ft along the eave, 12 ft up, hips at 45° on both sides, a chimney of 2 ft ×
/// 30 in that stands across joints and noses.
pub(crate) fn hip() -> Slope {
    Slope {
        name: "west".into(),
        outline: vec![at("0", "0"), at("30 ft", "0"), at("18 ft", "12 ft"), at("12 ft", "12 ft")],
        edges: vec![Some(EdgeKind::Eave), Some(EdgeKind::Hip), Some(EdgeKind::Ridge), Some(EdgeKind::Hip)],
        holes: vec![vec![
            at("13 ft 5 in", "5 ft"),
            at("13 ft 5 in", "7 ft 6 in"),
            at("15 ft 5 in", "7 ft 6 in"),
            at("15 ft 5 in", "5 ft"),
        ]],
        rafters: None,
        ..gable()
    }
}

/// A job of these slopes, all of one tile, without prices.
pub(crate) fn job(slopes: Vec<Slope>) -> Job {
    Job {
        screening: None,
        name: "test".to_owned(),
        display: Display::Imperial,
        assemblies: Vec::new(),
        tiles: slopes.iter().map(|slope| slope.tile.clone()).take(1).collect(),
        slopes,
        practice: practice(),
        prices: None,
        bid: None,
        survey: Vec::new(),
        assumptions: Vec::new(),
        findings: Vec::new(),
    }
}

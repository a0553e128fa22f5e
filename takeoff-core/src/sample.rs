//! A small job to test stages with: a plain gable, flat tile, one kind of post. All values are invented.
use std::sync::Arc;

use crate::job::*;
use crate::profile::Profile;
use crate::spares::Breakage;
use crate::units::{Length, Pitch};

/// A length in inches; a sixteenth is exact.
pub(crate) fn inches(inches: f64) -> Length {
    Length::nearest(inches * 25.4e6).unwrap()
}

/// In millimetres.
pub(crate) fn mm(inches: f64) -> f64 {
    self::inches(inches).mm()
}

pub(crate) fn practice() -> Practice {
    Practice {
        least_web: inches(1.0),
        hand_clearance: inches(2.0),
        least_margin: inches(0.25),
        drain: inches(1.0),
        deck_tuck: inches(2.0),
        patch_underlap: inches(4.0),
        patch_side_margin: inches(4.0),
        least_top_tuck: inches(3.0),
        least_side_cover: inches(3.0),
        bead_inset: inches(0.75),
        staple_spacing: inches(4.0),
        window: None,
        breakage: Breakage { cut: 0.06, removed: 0.02, loosened: 0.01, walked: 0.005, recut: true },
        service_level: 0.95,
        pieces_for_severed: 2,
        cartridge_mm3: 298_693.0,
        sealant_waste: 0.1,
    }
}

/// Flat tile, 16 1/2 × 13 in, 12 in from joint to joint, the left strip under its neighbour.
pub(crate) fn tile() -> Tile {
    Tile {
        name: "flat-13".to_owned(),
        length: inches(16.5),
        cover: inches(12.0),
        pieces: Pieces::One { width: inches(13.0), lap_side: LapSide::Left, on_hand: 0 },
        least_head_lap: inches(3.0),
        thickness: inches(1.0),
        weight_g: None,
        laps: Laps::Single,
        held: Held::Nailed,
        fasteners_each: 1,
        profile: Profile::Flat,
    }
}

/// A 1 1/2 in post; deck flashing 10 in wide, 4 in down, 7 in up, cone 2 in.
pub(crate) fn assembly() -> Assembly {
    Assembly {
        name: "post-7".to_owned(),
        post_diameter: inches(1.5),
        clearance: inches(0.25),
        axis: Axis::Normal,
        hole_saws: Vec::new(),
        post_height: Some(inches(7.0)),
        lap_surface_height: None,
        lag_edge_distance: inches(0.5),
        deck_flashing: DeckFlashing {
            width: inches(10.0),
            down: inches(4.0),
            up: inches(7.0),
            cone_diameter: inches(2.0),
            cone_height: Some(inches(5.0)),
        },
        top_flashing: TopFlashing { width: inches(16.0), down: inches(6.0), up: inches(11.0), formed: false },
        beads: vec![
            Bead { place: BeadPlace::DeckFlange, diameter: inches(0.375) },
            Bead { place: BeadPlace::Collar, diameter: inches(0.25) },
        ],
        pilot_holes: vec![PilotHoles { count: 2, diameter: inches(0.25), depth: inches(3.0) }],
        dabs: Vec::new(),
        items: vec![
            Item { item: "lag 5/16 x 3 1/2 in".to_owned(), count: 2 },
            Item { item: "storm collar".to_owned(), count: 1 },
        ],
        blocking_items: vec![Item { item: "screw 1/4 x 3 in".to_owned(), count: 4 }],
    }
}

/// A gable slope of 38 × 17 ft, noses at −1 1/2, 11 3/4, 25 in…, joints straight, lap lines at 34, 68… in, rafters
/// 1 1/2 in wide at 8, 32, 56… in, battens 3/4 × 1 1/2 in. Posts at `u`, `v` in inches are `A1`, `A2`…
pub(crate) fn slope(posts: &[(f64, f64)]) -> Slope {
    let assembly = Arc::new(assembly());
    let at = |u: f64, v: f64| SlopePoint { u: inches(u), v: inches(v) };
    let post = |(i, &(u, v)): (usize, &(f64, f64))| Post {
        name: format!("A{}", i + 1),
        assembly: assembly.clone(),
        at: at(u, v),
        path: format!("/slopes/0/posts/{i}"),
    };
    Slope {
        name: "south".to_owned(),
        pitch: Pitch::parse("5:12").unwrap(),
        place: None,
        outline: vec![at(0.0, 0.0), at(456.0, 0.0), at(456.0, 204.0), at(0.0, 204.0)],
        edges: vec![Some(EdgeKind::Eave), Some(EdgeKind::Rake), Some(EdgeKind::Ridge), Some(EdgeKind::Rake)],
        holes: Vec::new(),
        tile: Arc::new(tile()),
        noses: (0..15).map(|k| inches(-1.5 + 13.25 * f64::from(k))).collect(),
        overhang: inches(1.5),
        first_joint: Length::ZERO,
        bond: vec![Length::ZERO],
        underlayment: Arc::new(Underlayment {
            name: "felt-30".to_owned(),
            sheet_width: inches(36.0),
            head_lap: inches(2.0),
            roll_length: Some(inches(864.0)),
            never_tucked: false,
        }),
        lap_lines: LapLines::Regular { first: inches(34.0) },
        rafters: Some(Rafters {
            centres: (0..19).map(|i| inches(8.0 + 24.0 * f64::from(i))).collect(),
            width: inches(1.5),
        }),
        battens: Some(Battens { height: inches(0.75), width: inches(1.5), lug: inches(0.5) }),
        perimeter: None,
        setbacks: Vec::new(),
        setbacks_hold_flashing: false,
        walked: 0,
        posts: posts.iter().enumerate().map(post).collect(),
    }
}

/// The same slope with one hole in the field: a chimney.
pub(crate) fn with_chimney(mut slope: Slope, left: f64, lower: f64, right: f64, upper: f64) -> Slope {
    let corners = [(left, lower), (left, upper), (right, upper), (right, lower)];
    slope.holes.push(corners.iter().map(|&(u, v)| SlopePoint { u: inches(u), v: inches(v) }).collect());
    slope
}

//! Where an eave that is moved down meets the edges beside it.
use super::Field;
use crate::model::EdgeKind::{Eave, Rake, Ridge, Wall};
use crate::model::Slope;
use crate::testing::{at, gable, hip, len};

fn ring(slope: &Slope) -> Vec<[f64; 2]> {
    Field::of(slope).polygon().rings()[0].iter().map(|p| p.mm()).collect()
}

#[test]
fn both_ends_of_an_eave_move_down() {
    // 38 × 17 ft with 1 1/2 in over the eave: 11582.4 × (5181.6 + 38.1) mm.
    let [low, high] = [-38.1, 5181.6];
    assert_eq!(ring(&gable()), [[0.0, low], [11582.4, low], [11582.4, high], [0.0, high]]);
}

#[test]
fn hips_run_on_along_their_own_lines() {
    // Hips at 45°: as far out as down, on both sides.
    let slope = hip();
    let drop = slope.overhang.mm();
    let [left, right, ..] = ring(&slope)[..] else { panic!("a hip slope has corners") };
    assert_eq!((left, right), ([-drop, -drop], [9144.0 + drop, -drop]));
}

#[test]
fn each_eave_of_a_stepped_slope_moves_by_itself() {
    let stepped = Slope {
        outline: vec![
            at("0", "0"),
            at("5 m", "0"),
            at("5 m", "1 m"),
            at("9 m", "1 m"),
            at("9 m", "4 m"),
            at("0", "4 m"),
        ],
        edges: [Eave, Wall, Eave, Rake, Ridge, Rake].map(Some).to_vec(),
        overhang: len("50 mm"),
        ..gable()
    };
    let moved =
        [[0.0, -50.0], [5000.0, -50.0], [5000.0, 950.0], [9000.0, 950.0], [9000.0, 4000.0], [0.0, 4000.0]];
    assert_eq!(ring(&stepped), moved);
}

/// A post may stand on either rake: lap lines govern it there as they do beside it.
#[test]
fn both_rakes_belong_to_the_field() {
    let field = Field::of(&gable());
    let bounds = field.polygon().bounds();
    assert_eq!([bounds.left, bounds.right].map(|u| field.top_at(u)), [Some(bounds.upper); 2]);
    assert_eq!([bounds.left - 1, bounds.right + 1].map(|u| field.top_at(u)), [None; 2]);
}

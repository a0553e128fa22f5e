//! Jobs with arrays.
use std::sync::Arc;

use super::costs::priced;
use crate::model::*;
use crate::testing::*;

/// An array of two rows with two rails each on the gable, with a shift of 6 in on all sides.
pub(super) fn array(name: &str, u: &str, v: &str, columns: u32) -> Array {
    Array {
        name: name.into(),
        at: at(u, v),
        module_width: len("44 in"),
        module_height: len("68 in"),
        columns,
        rows: 2,
        column_gap: len("1 in"),
        row_gap: len("1 in"),
        shift: Shift { left: len("6 in"), right: len("6 in"), down: len("6 in"), up: len("6 in") },
        rails: Some(Rails {
            assembly: Arc::new(assembly()),
            clamps: vec![
                ClampWindow { from: len("10 in"), to: len("18 in") },
                ClampWindow { from: len("50 in"), to: len("58 in") },
            ],
            greatest_span: len("48 in"),
            greatest_overhang: len("20 in"),
            zones: vec![],
            least_distance: len("12 in"),
            stagger: 1,
            blocking: false,
        }),
    }
}

/// The gable with arrays, and with prices for all items of a post.
pub(super) fn with_arrays(arrays: Vec<Array>) -> Job {
    let mut job = priced(&[]);
    job.slopes[0].arrays = arrays;
    job
}

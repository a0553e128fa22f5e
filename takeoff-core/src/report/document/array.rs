//! An array of modules.
use schemars::JsonSchema;
use serde::Serialize;

use super::names::post_names;
use crate::slope_takeoff;

/// An array of modules.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ArrayTakeoff {
    /// Its name.
    pub name: String,
    /// The rectangle of all its modules, gaps included: left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// Modules along the eave.
    pub columns: u64,
    /// Modules up the slope.
    pub rows: u64,
    /// A module along the eave.
    pub module_width_mm: f64,
    /// A module up the slope.
    pub module_height_mm: f64,
    /// From module to module along the eave.
    pub column_gap_mm: f64,
    /// From module to module up the slope.
    pub row_gap_mm: f64,
    /// The posts below it.
    pub posts: Vec<String>,
}

impl ArrayTakeoff {
    /// An array of a slope.
    pub(super) fn new(slope: &slope_takeoff::SlopeTakeoff, of: &slope_takeoff::ArrayTakeoff) -> ArrayTakeoff {
        let array = &of.array;
        ArrayTakeoff {
            name: array.name.clone(),
            bounds_mm: array.bounds().mm(),
            columns: array.columns.into(),
            rows: array.rows.into(),
            module_width_mm: array.module_width.mm(),
            module_height_mm: array.module_height.mm(),
            column_gap_mm: array.column_gap.mm(),
            row_gap_mm: array.row_gap.mm(),
            posts: post_names(slope, &of.posts),
        }
    }
}

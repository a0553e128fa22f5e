//! The stable names of what can be wrong with a layout.

pub(super) const ARRAY: &str = "layout-array";
pub(super) const ARRAY_OFF_SLOPE: &str = "layout-array-off-slope";
pub(super) const ARRAYS_OVERLAP: &str = "layout-arrays-overlap";
pub(super) const ASSEMBLY: &str = "layout-assembly";
pub(super) const CLAMP: &str = "layout-clamp";
pub(super) const DISTANCE: &str = "layout-distance";
pub(super) const FAILING: &str = "layout-failing";
pub(super) const FEW_POSTS: &str = "layout-few-posts";
pub(super) const FIXED: &str = "layout-fixed";
pub(super) const JOB: &str = "layout-job";
pub(super) const KEPT: &str = "layout-kept";
pub(super) const NO_TILE: &str = "layout-no-tile";
pub(super) const OFF_SLOPE: &str = "layout-off-slope";
pub(super) const OVERHANG: &str = "layout-overhang";
pub(super) const RAFTER: &str = "layout-rafter";
pub(super) const RAILS: &str = "layout-rails";
pub(super) const SETBACK: &str = "layout-setback";
pub(super) const SEVERED: &str = "layout-severed";
pub(super) const SHIFT: &str = "layout-shift";
pub(super) const SPAN: &str = "layout-span";
pub(super) const STAGGER: &str = "layout-stagger";
pub(super) const STRAY: &str = "layout-stray";
pub(super) const THIN: &str = "layout-thin";

/// The code of every problem and finding that the checker of layouts can give.
pub const CODES: &[&str] = &[
    ARRAY,
    ARRAY_OFF_SLOPE,
    ARRAYS_OVERLAP,
    ASSEMBLY,
    CLAMP,
    DISTANCE,
    FAILING,
    FEW_POSTS,
    FIXED,
    JOB,
    KEPT,
    NO_TILE,
    OFF_SLOPE,
    OVERHANG,
    RAFTER,
    RAILS,
    SETBACK,
    SEVERED,
    SHIFT,
    SPAN,
    STAGGER,
    STRAY,
    THIN,
];

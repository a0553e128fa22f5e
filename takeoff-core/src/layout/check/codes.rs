//! Codes of the problems of a layout.
use crate::model::Code;

pub(super) const ARRAY: Code = Code::LayoutArray;
pub(super) const ARRAY_OFF_SLOPE: Code = Code::LayoutArrayOffSlope;
pub(super) const ARRAYS_OVERLAP: Code = Code::LayoutArraysOverlap;
pub(super) const ASSEMBLY: Code = Code::LayoutAssembly;
pub(super) const CLAMP: Code = Code::LayoutClamp;
pub(super) const DISTANCE: Code = Code::LayoutDistance;
pub(super) const FAILING: Code = Code::LayoutFailing;
pub(super) const FEW_POSTS: Code = Code::LayoutFewPosts;
pub(super) const FIXED: Code = Code::LayoutFixed;
pub(super) const JOB: Code = Code::LayoutJob;
pub(super) const KEPT: Code = Code::LayoutKept;
pub(super) const NO_TILE: Code = Code::LayoutNoTile;
pub(super) const OFF_SLOPE: Code = Code::LayoutOffSlope;
pub(super) const OVERHANG: Code = Code::LayoutOverhang;
pub(super) const RAFTER: Code = Code::LayoutRafter;
pub(super) const RAILS: Code = Code::LayoutRails;
pub(super) const SETBACK: Code = Code::LayoutSetback;
pub(super) const SEVERED: Code = Code::LayoutSevered;
pub(super) const SHIFT: Code = Code::LayoutShift;
pub(super) const SPAN: Code = Code::LayoutSpan;
pub(super) const STAGGER: Code = Code::LayoutStagger;
pub(super) const STRAY: Code = Code::LayoutStray;
pub(super) const THIN: Code = Code::LayoutThin;

/// The code of every problem and finding that the checker of layouts can give.
pub const CODES: &[Code] = &[
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

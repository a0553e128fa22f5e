//! Ridge, hip and rake trim taken up.
use schemars::JsonSchema;
use serde::Serialize;

use crate::deck;
use crate::model::EdgeKind;

/// Trim taken up along edges of one kind.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Trim {
    /// Ridge, hip or rake.
    pub edge: EdgeKind,
    /// Length inside the union of the work zones.
    pub length_mm: f64,
}

impl From<&deck::Trim> for Trim {
    fn from(trim: &deck::Trim) -> Trim {
        Trim { edge: trim.edge, length_mm: trim.length.mm() }
    }
}

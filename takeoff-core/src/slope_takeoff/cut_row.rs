//! One cut, and how much it takes away.
use super::Cut;
use crate::cuts::{SlopeCut, removed};
use crate::model::PostId;
use crate::roof::Site;
use crate::units::{Area, RealLength};

/// The row of one cut.
pub(super) fn cut_row(site: &Site, cut: &SlopeCut) -> Cut {
    let gone = removed(&cut.judged);
    Cut {
        judged: cut.judged.clone(),
        whole: site.grid.footprint(cut.judged.tile),
        posts: cut.posts.iter().copied().map(PostId::new).collect(),
        area: Area::from_mm2(gone.area_mm2),
        blade_path: RealLength::from_mm(gone.path_mm),
    }
}

//! Bill of one piece of work: a post set, a board of blocking, a patch, a batten piece, a tile laid back.
use super::cement::cement_and_mesh;
use super::sealant::sealant;
use crate::deck::Patch;
use crate::materials::Material;
use crate::model::{Action, Assembly, DriedIn, Item, Job, Tile, Underlayment};
use crate::units::Length;

/// Materials and actions of one piece of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bill {
    /// Materials.
    pub needs: Vec<Need>,
    /// Actions of the crew, each done once.
    pub actions: Vec<Action>,
}

/// Amount of a material that one piece of work takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Material.
    pub material: Material,
    /// Amount in the material's unit, waste not included.
    pub amount: f64,
    /// Rule in words, with the numbers that make up the amount.
    pub why: String,
}

/// Bill of a post wherever it stands: its assembly's items, sealant, and the cement and mesh of three-course work.
///
/// # Example
///
/// An assembly of two lags and a collar with a bead of 3/8 in, 29 in long: 2 lags, 1 collar and
/// π/4 · 0.375² · 29 = 3.203 in³ of sealant; the action `Set`.
pub fn bill_of_post(job: &Job, assembly: &Assembly) -> Bill {
    let items = items(job, &assembly.items, |item| format!("`{}`, {} a post", assembly.name, item.count));
    let three_course = assembly.deck_flashing.dried_in == DriedIn::ThreeCourse;
    Bill {
        needs: items
            .chain(sealant(assembly, &job.practice, job.display))
            .chain(three_course.then(|| cement_and_mesh(job, assembly)).into_iter().flatten())
            .collect(),
        actions: std::iter::once(Action::Set).chain(three_course.then_some(Action::ThreeCourse)).collect(),
    }
}

/// Bill of fixing one board of blocking for a post of an assembly, the board's length apart.
pub fn bill_of_blocking(job: &Job, assembly: &Assembly) -> Bill {
    let why = |item: &Item| format!("`{}`, {} a piece of blocking", assembly.name, item.count);
    Bill { needs: items(job, &assembly.blocking_items, why).collect(), actions: vec![Action::Block] }
}

fn items<'a>(
    job: &'a Job,
    items: &'a [Item],
    why: impl Fn(&Item) -> String + 'a,
) -> impl Iterator<Item = Need> + 'a {
    items.iter().map(move |item| Need {
        material: Material::from_item(&item.item, job),
        amount: f64::from(item.count),
        why: why(item),
    })
}

/// Length of one board of blocking: the clear distance between its rafters.
pub(super) fn board(job: &Job, clear: Length) -> Need {
    let why = format!("between rafters {} apart in the clear", job.display.length(clear));
    Need { material: Material::Blocking, amount: clear.mm(), why }
}

/// Bill of one patch, its staples apart: felt with the laps between its pieces; what is trimmed off at the field's edge
/// counts too.
pub(super) fn bill_of_patch(job: &Job, sheet: &Underlayment, patch: &Patch) -> Bill {
    let [width, height] = [patch.width(), patch.height()].map(|side| job.display.length(side));
    let mut why = format!("patch {width} × {height}");
    if patch.pieces > 1 {
        let lap = job.display.length(sheet.head_lap);
        why = format!("{why} in {} pieces that lap {lap}", patch.pieces);
    }
    let felt = Need { material: Material::Felt(sheet.name.clone()), amount: patch.area.mm2(), why };
    Bill { needs: vec![felt], actions: vec![Action::Patch] }
}

/// Staples of one patch: perimeter ÷ spacing, rounded up.
pub(super) fn staples(job: &Job, patch: &Patch) -> Need {
    let spacing = job.display.length(job.practice.staple_spacing);
    let perimeter = job.display.length(patch.perimeter());
    let why = format!("patch, {perimeter} round about, a staple every {spacing}");
    Need { material: Material::Staple, amount: patch.staples as f64, why }
}

/// Bill of one piece of batten cut out and reset with `nails` nails, half of them at each end.
pub fn bill_of_batten_piece(nails: u64) -> Bill {
    let why = format!("batten piece reset, {} nails an end", nails / 2);
    let nails = Need { material: Material::BattenNail, amount: nails as f64, why };
    Bill { needs: vec![nails], actions: vec![Action::Batten] }
}

/// How a tile is laid back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct LaidBack {
    /// Whether it is severed: made up from several pieces, each of which is held.
    pub(super) made_up: bool,
    /// Whether it lies in the perimeter strip, where every tile has at least one fastener (IRC R905.3.7).
    pub(super) in_strip: bool,
}

/// Bill of one tile taken up and laid back: as many fasteners as its kind takes, in the perimeter strip at least one;
/// for a severed tile so many for each new piece.
pub(super) fn bill_of_tile(job: &Job, tile: &Tile, laid: LaidBack) -> Bill {
    let own = u64::from(tile.fasteners_each).max(u64::from(laid.in_strip));
    let pieces = job.practice.pieces_for_severed;
    let each = if laid.made_up { pieces * own } else { own };
    let work = match (laid.made_up, laid.in_strip) {
        (false, false) => "tile reset".to_owned(),
        (false, true) => "tile refastened in the perimeter strip".to_owned(),
        (true, false) => format!("tile replaced by {pieces} new pieces"),
        (true, true) => format!("tile replaced by {pieces} new pieces in the perimeter strip"),
    };
    let fasteners = Need {
        material: Material::TileFastener(tile.name.clone()),
        amount: each as f64,
        why: format!("{work}, {each} each"),
    };
    Bill { needs: vec![fasteners], actions: vec![Action::Lift] }
}

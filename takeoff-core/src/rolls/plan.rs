//! A cutting plan: what is asked, what is answered.
use crate::units::Length;

use super::bound::{length_bound, rolls_bound};
use super::dive::dive_in_groups;
use super::exact::{exact, splits};
use super::fill::{Order, Split};
use super::improve::improved;
use super::kinds::{Counts, Kind, Way, counts, kinds};
use super::layout::{Layout, total_length};
use super::place::{Placed, Rectangle, on_rolls};

/// A piece to be cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// What it is called.
    pub name: String,
    /// Its side that lies along the sheet.
    pub along: Length,
    /// Its side across the sheet.
    pub across: Length,
    /// Whether it may be cut turned by 90°.
    pub turnable: bool,
}

/// What is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Width of the roll.
    pub width: Length,
    /// Length of a roll; `None` is one endless strip.
    pub roll_length: Option<Length>,
}

/// A rectangle of a roll.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// From the start of the roll.
    pub start: Length,
    /// From the edge of the roll.
    pub edge: Length,
    /// Along the roll.
    pub length: Length,
    /// Across the roll.
    pub width: Length,
}

/// A piece in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Which piece of the list.
    pub piece: usize,
    /// Where it is cut.
    pub place: Place,
    /// Whether it is cut turned by 90°.
    pub turned: bool,
}

/// A part of a roll between two cuts across its whole width.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// From the start of the roll.
    pub start: Length,
    /// Along the roll.
    pub length: Length,
    /// The pieces in it.
    pub cuts: Vec<Cut>,
    /// What is left over of it.
    pub offcuts: Vec<Place>,
}

/// A roll.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Roll {
    /// What it is cut into, from its start; the rest of it stays whole.
    pub sections: Vec<Section>,
}

impl Roll {
    /// What is cut off it.
    pub fn used(&self) -> Length {
        self.sections.iter().map(|section| section.length).sum()
    }
}

/// A cutting plan and how good it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The rolls.
    pub rolls: Vec<Roll>,
    /// Length of all sections together.
    pub length_used: Length,
    /// No plan uses less length.
    pub length_bound: Length,
    /// No plan takes fewer rolls.
    pub rolls_bound: u64,
}

/// Pieces that no sheet is large enough for, by their place in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misfit(pub Vec<usize>);

/// So few splits of all pieces, and all cuts are tried.
const FEW_SPLITS: u64 = 7_000;

impl Sheet {
    /// The ways in which a piece can be cut from it.
    pub(super) fn ways(&self, piece: &Piece) -> Vec<Way> {
        let (along, across) = (piece.along.nm(), piece.across.nm());
        let straight = Way { length: along, width: across, turned: false };
        let turned = Way { length: across, width: along, turned: true };
        let mut ways = vec![straight];
        if piece.turnable && along != across {
            ways.push(turned);
        }
        let longest = self.longest();
        ways.retain(|way| {
            0 < way.length && way.length <= longest && 0 < way.width && way.width <= self.width.nm()
        });
        ways.sort_unstable();
        ways
    }

    fn longest(&self) -> i64 {
        self.roll_length.map_or(i64::MAX, Length::nm)
    }
}

/// Cuts pieces from rolls: a plan of guillotine cuts of little length, and a length that no plan can be below.
///
/// # Method
///
/// Few pieces: all cuts are tried, and the plan is the shortest there is. Otherwise the shortest of several: sections
/// filled piece by piece in several orders, and sections from the fractional optimum of a linear program over all
/// guillotine patterns (Gilmore and Gomory 1961, 1966); then the sections that waste the most are cut anew, a few at a
/// time. The bound is that of a line across the roll.
///
/// The order of the pieces changes nothing but which of two alike is cut where.
///
/// # Errors
///
/// When there are pieces that the sheet is too small for.
///
/// # Example
///
/// ```
/// use takeoff_core::rolls::{Piece, Sheet, check, plan};
/// use takeoff_core::units::Length;
/// let inches = |n: i64| Length::from_nm(n * 25_400_000);
/// let piece = |name: &str| Piece { name: name.to_owned(), along: inches(10), across: inches(18), turnable: false };
/// let pieces = [piece("P1"), piece("P2"), piece("P3")];
/// let sheet = Sheet { width: inches(36), roll_length: Some(inches(864)) };
/// // Two side by side, then one: 20 in. By area it would be 15.
/// let plan = plan(&pieces, &sheet).unwrap();
/// assert_eq!((plan.length_used, plan.length_bound), (inches(20), inches(20)));
/// assert!(check(&pieces, &sheet, &plan).is_ok());
/// ```
pub fn plan(pieces: &[Piece], sheet: &Sheet) -> Result<Plan, Misfit> {
    let misfits: Vec<usize> = (0..pieces.len()).filter(|&at| sheet.ways(&pieces[at]).is_empty()).collect();
    if !misfits.is_empty() {
        return Err(Misfit(misfits));
    }
    let (kinds, members) = kinds(pieces, sheet);
    let wanted = counts(&members);
    let (width, longest) = (sheet.width.nm(), sheet.longest());
    let (sections, bound) = if splits(&wanted) <= FEW_SPLITS {
        let sections = exact(&kinds, &wanted, width, longest);
        let least = total_length(&sections);
        (sections, least)
    } else {
        let bound = length_bound(&kinds, &wanted, width);
        (shortest(&kinds, &wanted, width, longest, bound), bound)
    };
    Ok(Plan {
        length_used: Length::from_nm(total_length(&sections)),
        length_bound: Length::from_nm(bound),
        rolls_bound: match sheet.roll_length {
            Some(roll) => rolls_bound(&kinds, &wanted, bound, roll.nm()),
            None => 1.min(pieces.len() as u64),
        },
        rolls: rolls(sections, sheet, members),
    })
}

/// The rolls, with a piece of its kind in each place.
fn rolls(sections: Vec<Layout>, sheet: &Sheet, mut members: Vec<Vec<usize>>) -> Vec<Roll> {
    members.iter_mut().for_each(|members| members.reverse());
    let mut section = |layout: &Layout, start: i64| {
        let (length, _) = layout.size();
        let mut placed = Placed::default();
        placed.place(layout, [start, 0, length, sheet.width.nm()]);
        let cuts = placed.pieces.into_iter().filter_map(|(kind, way, at)| {
            Some(Cut { piece: members[kind].pop()?, place: place(at), turned: way.turned })
        });
        Section {
            start: Length::from_nm(start),
            length: Length::from_nm(length),
            cuts: cuts.collect(),
            offcuts: placed.offcuts.into_iter().map(place).collect(),
        }
    };
    let rolls = on_rolls(sections, sheet.roll_length.map(Length::nm));
    let roll = |layouts: Vec<Layout>| {
        let starts = layouts.iter().scan(0, |at, layout| {
            let start = *at;
            *at += layout.size().0;
            Some(start)
        });
        Roll { sections: layouts.iter().zip(starts).map(|(layout, start)| section(layout, start)).collect() }
    };
    rolls.into_iter().map(roll).collect()
}

fn place(rectangle: Rectangle) -> Place {
    let [start, edge, length, width] = rectangle.map(Length::from_nm);
    Place { start, edge, length, width }
}

/// The shortest of several plans, of equals the first; none is looked for once the bound is met.
pub(super) fn shortest(kinds: &[Kind], wanted: &Counts, width: i64, longest: i64, bound: i64) -> Vec<Layout> {
    let area = |way: &Way| i128::from(way.length) * i128::from(way.width);
    let orders = [
        Order::by(kinds, |way| (way.length, way.width)),
        Order::by(kinds, |way| (way.width, way.length)),
        Order::by(kinds, area),
    ];
    let splits = [Split::Along, Split::Across];
    let filled = orders.iter().flat_map(|order| splits.map(|split| (order, split)));
    let filled = filled.map(|(order, split)| order.sections(width, split, &mut wanted.clone()));
    let piece = kinds.iter().flat_map(|kind| &kind.ways).map(|way| way.length).max().unwrap_or(0);
    let reaches = [1, 3].into_iter().map(|times| piece.saturating_mul(times).min(longest));
    let dived = reaches.map(|reach| dive_in_groups(kinds, wanted, width, reach));
    let mut best: Option<(i64, Vec<Layout>)> = None;
    for sections in filled.chain(dived) {
        let length = total_length(&sections);
        if best.as_ref().is_none_or(|(least, _)| length < *least) {
            best = Some((length, sections));
        }
        if best.as_ref().is_some_and(|(least, _)| *least <= bound) {
            break;
        }
    }
    let (length, sections) = best.unwrap_or_default();
    if length > bound { improved(kinds, sections, width, longest) } else { sections }
}

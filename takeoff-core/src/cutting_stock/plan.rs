//! Entry of the planner: pieces and roll stock in, plan with bounds out.
use crate::units::Length;

use super::item_types::{ItemType, demand, item_types, orientations};
use super::lower_bound::{length_bound, rolls_bound};
use super::pattern::{Pattern, total_length};
use super::roll_packing::first_fit_decreasing;
use super::search::exact::{optimal_sections, split_count};
use super::search::shortest_sections;
use super::section_layout::{Bounds, SectionLayout};
use super::{OversizedPieces, Piece, PlacedPiece, Plan, Rectangle, Roll, RollStock, Section};

/// Up to this many splits of all pieces, the plan is found by exhaustive search.
const MAX_EXACT_SPLITS: u64 = 7_000;

/// Plans guillotine cuts of pieces from rolls: short total length, and a proven lower bound on it.
///
/// # Method
///
/// See the [module](super). The order of the pieces decides only which of several equal pieces is cut where.
///
/// # Errors
///
/// [`OversizedPieces`] if some pieces do not fit on the roll.
///
/// # Example
///
/// ```
/// use takeoff_core::cutting_stock::{Piece, RollStock, check, plan};
/// use takeoff_core::units::Length;
/// let inches = |n: i64| Length::from_nm(n * 25_400_000);
/// let piece = |name: &str| Piece { name: name.to_owned(), along: inches(10), across: inches(18), turnable: false };
/// let pieces = [piece("P1"), piece("P2"), piece("P3")];
/// let stock = RollStock { width: inches(36), roll_length: Some(inches(864)) };
/// // Two side by side, then one: 20 in. Area ÷ width is 15 in.
/// let plan = plan(&pieces, &stock).unwrap();
/// assert_eq!((plan.length_used, plan.length_bound), (inches(20), inches(20)));
/// assert!(check(&pieces, &stock, &plan).is_ok());
/// ```
pub fn plan(pieces: &[Piece], stock: &RollStock) -> Result<Plan, OversizedPieces> {
    let fits = |piece: &Piece| !orientations(piece, stock).is_empty();
    let oversized: Vec<usize> = (0..pieces.len()).filter(|&index| !fits(&pieces[index])).collect();
    if !oversized.is_empty() {
        return Err(OversizedPieces(oversized));
    }
    let (items, members) = item_types(pieces, stock);
    let demand = demand(&members);
    let (sections, bound) = sections_and_bound(&items, &demand, stock);
    Ok(Plan {
        length_used: Length::from_nm(total_length(&sections)),
        length_bound: Length::from_nm(bound),
        rolls_bound: match stock.roll_length {
            Some(roll) => rolls_bound(&items, &demand, bound, roll.nm()),
            None => 1.min(pieces.len() as u64),
        },
        rolls: rolls(sections, stock, members),
    })
}

/// The sections and the lower bound of their total length; with few pieces both are the optimum.
fn sections_and_bound(items: &[ItemType], demand: &[u64], stock: &RollStock) -> (Vec<Pattern>, i64) {
    let (width, max_length) = (stock.width.nm(), stock.max_section_length());
    if split_count(demand) <= MAX_EXACT_SPLITS {
        let sections = optimal_sections(items, demand, width, max_length);
        let optimum = total_length(&sections);
        return (sections, optimum);
    }
    let bound = length_bound(items, demand, width);
    (shortest_sections(items, demand, width, max_length, bound), bound)
}

/// The rolls, with each place in a pattern given to a piece of its item type, in the order of the list of pieces.
fn rolls(sections: Vec<Pattern>, stock: &RollStock, mut members: Vec<Vec<usize>>) -> Vec<Roll> {
    // Pieces are taken from the end.
    members.iter_mut().for_each(|members| members.reverse());
    let mut section = |pattern: &Pattern, start: i64| {
        let (length, _) = pattern.size();
        let mut layout = SectionLayout::default();
        layout.add(pattern, [start, 0, length, stock.width.nm()]);
        let pieces = layout.pieces.into_iter().filter_map(|(item, orientation, bounds)| {
            let piece = members[item].pop()?;
            Some(PlacedPiece { piece, rectangle: rectangle(bounds), turned: orientation.turned })
        });
        Section {
            start: Length::from_nm(start),
            length: Length::from_nm(length),
            pieces: pieces.collect(),
            offcuts: layout.offcuts.into_iter().map(rectangle).collect(),
        }
    };
    let mut roll = |patterns: Vec<Pattern>| {
        let mut start = 0;
        let mut sections = Vec::new();
        for pattern in &patterns {
            sections.push(section(pattern, start));
            start += pattern.size().0;
        }
        Roll { sections }
    };
    let rolls = first_fit_decreasing(sections, stock.roll_length.map(Length::nm));
    rolls.into_iter().map(&mut roll).collect()
}

fn rectangle(bounds: Bounds) -> Rectangle {
    let [start, edge, length, width] = bounds.map(Length::from_nm);
    Rectangle { start, edge, length, width }
}

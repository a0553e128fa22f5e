//! From sections by the fraction to whole ones.
use super::columns::Master;
use super::exact::{exact, splits};
use super::fill::Order;
use super::groups::Groups;
use super::guillotine::Board;
use super::kinds::{Counts, Kind};
use super::layout::Layout;
use super::sums::Rounding;

/// So few splits of what is left, and all cuts of it are tried.
const FEW_SPLITS: u64 = 1_000;
/// Places along a section where pieces may end; more make little difference.
const MOST_ALONG: usize = 24;

/// Sections for all pieces, none longer than `reach`.
///
/// The fractional optimum says how often each section would be cut; the whole part of that is cut, then the
/// same for what is left. Where no section would be cut a whole time, the one cut most is cut once, without what is no
/// longer wanted and with what else fits. The last few pieces are planned exactly.
fn dive(kinds: &[Kind], counts: &Counts, width: i64, reach: i64) -> Vec<Layout> {
    let mut wanted = counts.clone();
    let mut sections = Vec::new();
    let board = Board::new(kinds, reach, width, MOST_ALONG, Rounding::Up);
    let mut master = Master::new(&board, reach as f64, |_, _| 1.0);
    let order = Order::by(kinds, |way| way.width);
    while splits(&wanted) > FEW_SPLITS {
        let demand: Vec<f64> = wanted.iter().map(|&count| count as f64).collect();
        for (rank, (times, section)) in master.solve(&demand).sections.into_iter().enumerate() {
            // A whole number comes out a little off.
            let whole = (times + 1e-3) as u64;
            if whole == 0 && rank > 0 {
                break;
            }
            for _ in 0..whole.max(1) {
                let Some(section) = section.take(&mut wanted) else { break };
                sections.push(order.topped_up(section, width, &mut wanted));
            }
        }
    }
    sections.extend(exact(kinds, &wanted, width, reach));
    sections.into_iter().flat_map(Layout::sections).collect()
}

/// Sections for kinds that are planned in groups, by way of the groups.
///
/// Each piece of a group stands for one of its members, the largest first; what room that leaves is filled.
pub(super) fn dive_in_groups(kinds: &[Kind], counts: &Counts, width: i64, reach: i64) -> Vec<Layout> {
    let groups = Groups::of(kinds, counts);
    let grouped = groups.kinds(kinds, i64::max);
    let order = Order::by(kinds, |way| way.width);
    let mut wanted = counts.clone();
    let mut sections = Vec::new();
    for section in dive(&grouped, &groups.counts(counts), width, reach) {
        let real = section.replaced(&mut |group, way| {
            let at = grouped[group].ways.iter().position(|other| other == way)?;
            let member = groups.members[group].iter().copied().find(|&member| wanted[member] > 0)?;
            wanted[member] -= 1;
            Some((member, kinds[member].ways[at]))
        });
        if let Some(real) = real {
            sections.extend(order.topped_up(real, width, &mut wanted).sections());
        }
    }
    sections
}

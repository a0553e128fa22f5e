//! The worst sections of a plan planned anew.
use super::exact::{exact, splits};
use super::kinds::{Counts, Kind};
use super::layout::{Layout, total_length};

/// So few splits of the pieces of some sections, and all cuts of them are tried.
const FEW_SPLITS: u64 = 1_000;
/// How many times sections are taken together.
const MOST_TRIES: usize = 24;

/// The plan with sections that waste the most taken together, a few at a time, and cut anew where that is shorter.
pub(super) fn improved(kinds: &[Kind], mut sections: Vec<Layout>, width: i64, longest: i64) -> Vec<Layout> {
    let mut done = Vec::new();
    for _ in 0..MOST_TRIES {
        sections.sort_by_cached_key(|section| (wasted(section, width), section.clone()));
        let mut counts: Counts = vec![0; kinds.len()];
        let mut together = Vec::new();
        while let Some(section) = sections.pop() {
            section.count(&mut counts);
            together.push(section);
            if splits(&counts) > FEW_SPLITS {
                break;
            }
        }
        if together.len() > 1
            && let Some(section) = together.pop_if(|_| splits(&counts) > FEW_SPLITS)
        {
            let mut less: Counts = vec![0; kinds.len()];
            together.iter().for_each(|section| section.count(&mut less));
            counts = less;
            sections.push(section);
        }
        if together.len() < 2 || splits(&counts) > FEW_SPLITS {
            done.extend(together);
            continue;
        }
        let anew = exact(kinds, &counts, width, longest);
        if total_length(&anew) < total_length(&together) {
            sections.extend(anew);
        } else {
            done.extend(together);
        }
    }
    sections.extend(done);
    sections
}

/// The share of a section that is no piece, in millionths.
fn wasted(section: &Layout, width: i64) -> i128 {
    let all = i128::from(section.size().0) * i128::from(width);
    (all - section.area()) * 1_000_000 / all.max(1)
}

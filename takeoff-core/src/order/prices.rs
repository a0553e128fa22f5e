//! One price list of several jobs' lists.
use super::{Ordered, problem};
use crate::model::{Code, PriceList, Problems};

/// The lists of all jobs joined in their order, without duplicates; `None` where no job has one.
///
/// # Errors
///
/// Two currencies, or one pack at two prices.
pub(super) fn joined(jobs: &[Ordered<'_>]) -> Result<Option<PriceList>, Problems> {
    let mut lists = jobs.iter().filter_map(|ordered| Some((&ordered.job.name, ordered.job.prices.as_ref()?)));
    let Some((first, list)) = lists.next() else { return Ok(None) };
    let mut joined = list.clone();
    let mut problems = Problems::new();
    for (job, list) in lists {
        if list.currency != joined.currency {
            let (theirs, ours) = (list.currency.code(), joined.currency.code());
            let message = format!("`{job}` is priced in {theirs}, and `{first}` in {ours}");
            problems.push(problem(Code::TwoCurrencies, message, "order jobs of one currency together"));
            continue;
        }
        for row in &list.rows {
            let same = joined
                .rows
                .iter()
                .find(|known| known.item == row.item && known.unit == row.unit && known.size == row.size);
            match same {
                None => joined.rows.push(row.clone()),
                Some(known) if known.price != row.price || known.minimum_order != row.minimum_order => {
                    let message = format!(
                        "`{}` in packs of {} is priced otherwise for `{job}` (`{}` line {}) than before (line {})",
                        row.item, row.shown, list.file, row.line, known.line
                    );
                    problems.push(problem(Code::PricesDiffer, message, "give the jobs one price list"));
                }
                Some(_) => {}
            }
        }
    }
    if problems.is_empty() { Ok(Some(joined)) } else { Err(problems) }
}

//! The bid: materials in packs with their prices, labour, and what is added.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::purchase::{sum, too_much};
use super::{Bid, BidTotals, Purchase, labour, purchase};
use crate::model::{Job, Problems, Terms};
use crate::quantities::{JobBill, MaterialLine};
use crate::units::Money;

/// The bid of a job, where it has a price list or terms; `bill` and `materials` are its bill and material list.
///
/// Order: every material in its cheapest packs; tax on the materials; labour; contingency on all of that; markup on
/// all of that and the contingency. Each line and each of these is rounded once.
///
/// # Errors
///
/// A price whose unit does not fit its item, or packs that can't be mixed or paid.
pub fn bid(job: &Job, bill: &JobBill, materials: &[MaterialLine]) -> Result<Option<Bid>, Problems> {
    let Some(terms) = &job.bid else { return Ok(None) };
    let Purchase { currency, rounding, lines, unpriced, unused_prices, materials } =
        purchase(materials, job.prices.as_ref(), &terms.currency)?;
    let labour_lines = match &terms.labour {
        Some(labour) => labour::labour(labour, &terms.currency, bill).ok_or_else(too_much)?,
        None => Vec::new(),
    };
    let labour_cost = sum(labour_lines.iter().filter_map(|line| line.cost)).ok_or_else(too_much)?;
    Ok(Some(Bid {
        currency,
        rounding,
        totals: totals(terms, materials, labour_cost).ok_or_else(too_much)?,
        unused_prices,
        lines,
        unpriced,
        labour_rate_per_hour: terms.labour.as_ref().map(|labour| labour.rate_per_hour),
        labour: labour_lines,
    }))
}

/// Tax on the materials; contingency on materials, tax and labour; markup on all of that.
fn totals(terms: &Terms, materials: Money, labour: Money) -> Option<BidTotals> {
    let share = |of: Money, share: Decimal| Some(terms.currency.round(of.amount().checked_mul(share)?));
    let exact = |amount: Money| terms.currency.round(amount.amount());
    let tax = share(materials, terms.tax)?;
    let direct_cost = sum([materials, tax, labour].into_iter())?;
    let contingency = share(direct_cost, terms.contingency)?;
    let before_markup = sum([direct_cost, contingency].into_iter())?;
    let markup = share(before_markup, terms.markup)?;
    Some(BidTotals {
        materials: exact(materials),
        tax_share: terms.tax.to_f64()?,
        tax,
        labour: exact(labour),
        direct_cost: exact(direct_cost),
        contingency_share: terms.contingency.to_f64()?,
        contingency,
        markup_share: terms.markup.to_f64()?,
        markup,
        price: exact(sum([before_markup, markup].into_iter())?),
    })
}

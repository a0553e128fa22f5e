//! Purchase of material lines in the cheapest packs on offer.
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::pack_mix::gcd;
use super::{BidLine, BidPack, Offer, Purchase, Unpriced, UnusedPrice, cheapest_mix};
use crate::materials::Material;
use crate::model::{Code, PriceList, PriceRow, Problem, Problems};
use crate::quantities::{MaterialLine, least_covering};
use crate::units::{Currency, Money, dimension};

/// The most packs of one kind that are bought: more suggests a typo in the pack size.
const MOST_PACKS: i128 = 1_000_000_000;

/// Every material with a price in its cheapest packs, and the materials without one.
///
/// # Errors
///
/// A price whose unit does not fit its item, or packs that can't be mixed or paid.
pub fn purchase(
    materials: &[MaterialLine],
    prices: Option<&PriceList>,
    currency: &Currency,
) -> Result<Purchase, Problems> {
    check_units(prices, materials)?;
    let (mut lines, mut unpriced) = (Vec::new(), Vec::new());
    for line in bought(materials, prices) {
        let name = line.item.name();
        let rows: Vec<&PriceRow> = prices.into_iter().flat_map(|prices| prices.of(&name)).collect();
        if rows.is_empty() {
            let MaterialLine { item, unit, .. } = line;
            let need_with_waste = line.need * (1.0 + line.waste);
            unpriced.push(Unpriced { item: item.clone(), unit: *unit, need_with_waste });
        } else {
            lines.push(priced(line, &rows, currency)?);
        }
    }
    let materials = sum(lines.iter().map(|line| line.cost)).ok_or_else(too_much)?;
    let rows = prices.into_iter().flat_map(|prices| &prices.rows);
    let unused = rows.filter(|row| lines.iter().all(|line| line.item.name() != row.item));
    Ok(Purchase {
        currency: currency.code().to_owned(),
        rounding: currency.rule(),
        unused_prices: unused
            .map(|row| UnusedPrice { item: row.item.clone(), price_line: row.line })
            .collect(),
        lines,
        unpriced,
        materials: currency.round(materials.amount()),
    })
}

/// A sum beyond the range of a decimal.
pub(super) fn too_much() -> Problems {
    Problems::from(problem(
        Code::TooMuchMoney,
        "the cost of the job exceeds the supported range".to_owned(),
        "check the prices",
    ))
}

/// The lines to buy. A need with two lines, one as a quantity and one in packs, is bought once: in packs where they have
/// a price, else as a quantity where that has one.
fn bought<'a>(
    materials: &'a [MaterialLine],
    prices: Option<&'a PriceList>,
) -> impl Iterator<Item = &'a MaterialLine> {
    let has_price =
        move |item: &Material| prices.is_some_and(|prices| prices.of(&item.name()).next().is_some());
    materials.iter().filter(move |line| {
        let same = |other: &&MaterialLine| other.packs_of.as_ref() == Some(&line.item);
        let in_packs = materials.iter().find(same);
        let elsewhere = match (&line.packs_of, in_packs) {
            (Some(quantity), _) => !has_price(&line.item) && has_price(quantity),
            (None, Some(packs)) => has_price(&packs.item) || !has_price(&line.item),
            (None, None) => false,
        };
        line.need > 0.0 && !elsewhere
    })
}

/// Refuses prices in another dimension than the need, such as a price by the piece for an area.
fn check_units(prices: Option<&PriceList>, materials: &[MaterialLine]) -> Result<(), Problems> {
    let Some(prices) = prices else { return Ok(()) };
    let mut problems = Problems::new();
    for row in &prices.rows {
        let line = materials.iter().find(|line| line.unit != row.unit && line.item.name() == row.item);
        if let Some(line) = line {
            let message = format!(
                "`{}` line {}, column `unit`: `{}` is needed by {}, and priced by {}",
                prices.file,
                row.line,
                row.item,
                dimension(line.unit),
                dimension(row.unit)
            );
            problems.push(problem(Code::UnitOfItem, message, "give the pack in a unit of what is needed"));
        }
    }
    if problems.is_empty() { Ok(()) } else { Err(problems) }
}

fn problem(code: Code, message: String, help: &str) -> Problem {
    Problem::new(code, message, help, "/prices")
}

/// A material in the cheapest mix of its packs.
fn priced(line: &MaterialLine, rows: &[&PriceRow], currency: &Currency) -> Result<BidLine, Problems> {
    let refused = |code, message: String, help| Problems::from(problem(code, message, help));
    let need_with_waste = line.need * (1.0 + line.waste);
    let sizes = whole(rows.iter().map(|row| row.size));
    let amounts = whole(rows.iter().map(|row| row.price.amount()));
    let (Some((sizes, measure)), Some((amounts, _))) = (sizes, amounts) else {
        return Err(refused(
            Code::TooMany,
            format!("the packs of `{}` can't be compared", line.item),
            "write their sizes with fewer digits",
        ));
    };
    let need = least_covering(need_with_waste, measure);
    if sizes.iter().any(|&size| need / size > MOST_PACKS) {
        let message = format!("`{}` takes more than {MOST_PACKS} packs", line.item);
        return Err(refused(Code::TooMany, message, "look at the sizes of its packs"));
    }
    let offers: Vec<Offer> = sizes
        .iter()
        .zip(&amounts)
        .zip(rows)
        .map(|((&size, &price), row)| Offer { size, price, minimum: row.minimum_order })
        .collect();
    let mix = cheapest_mix(&offers, need).map_err(|_| {
        let message =
            format!("the packs of `{}` can be mixed in too many ways to compare them all", line.item);
        refused(Code::TooMany, message, "leave out packs that nobody buys")
    })?;
    let mut packs = Vec::new();
    for (row, &count) in rows.iter().zip(&mix) {
        let cost = row.price.amount().checked_mul(count.into()).ok_or_else(|| {
            refused(
                Code::TooMuchMoney,
                format!("`{}` costs more than can be told", line.item),
                "look at its price",
            )
        })?;
        packs.push(BidPack {
            pack: row.size.to_f64().unwrap_or_default(),
            pack_shown: row.shown.clone(),
            packs: count,
            minimum_order: row.minimum_order,
            unit_price: row.price,
            cost: currency.round(cost),
            vendor_part: row.vendor_part.clone(),
            price_line: row.line,
        });
    }
    let cost = sum(packs.iter().map(|pack| pack.cost)).ok_or_else(|| {
        refused(
            Code::TooMuchMoney,
            format!("`{}` costs more than can be told", line.item),
            "look at its price",
        )
    })?;
    Ok(BidLine {
        item: line.item.clone(),
        unit: line.unit,
        need: line.need,
        waste: line.waste,
        need_with_waste,
        measure,
        bought: packs.iter().map(|pack| pack.packs as f64 * pack.pack).sum(),
        basis: basis(&packs),
        packs,
        cost,
    })
}

fn basis(packs: &[BidPack]) -> String {
    match packs {
        [only] => format!("whole packs of {}, up (line {})", only.pack_shown, only.price_line),
        several => format!(
            "cheapest mix of {} packs on offer; of equally cheap ones the fewest packs, then the larger",
            several.len()
        ),
    }
}

/// Amounts as whole numbers of their greatest common measure, and that measure.
fn whole(amounts: impl Iterator<Item = Decimal> + Clone) -> Option<(Vec<i128>, f64)> {
    let scale = amounts.clone().map(|amount| amount.normalize().scale()).max()?;
    let digits = amounts.map(|amount| {
        let amount = amount.normalize();
        amount.mantissa().checked_mul(10_i128.checked_pow(scale - amount.scale())?)
    });
    let digits: Vec<i128> = digits.collect::<Option<_>>()?;
    let common = digits.iter().fold(0, |common, &digits| gcd(digits, common)).max(1);
    let measure = common as f64 / 10_i128.checked_pow(scale)? as f64;
    Some((digits.iter().map(|digits| digits / common).collect(), measure))
}

pub(super) fn sum(amounts: impl Iterator<Item = Money>) -> Option<Money> {
    amounts.map(Money::amount).try_fold(Decimal::ZERO, Decimal::checked_add).map(Money::new)
}

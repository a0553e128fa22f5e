//! Terms of a bid as a job file has them.
use rust_decimal::Decimal;

use crate::job::fields::money::Part;
use crate::job::fields::price_list::Prices;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::model::{Action, Assumptions, Code, Labour, Minutes, Terms};
use crate::units::Currency;

/// The terms of a bid: none where the job gives neither prices nor a bid.
pub(crate) fn terms(
    bid: &Field<Option<raw::Bid>>,
    prices: &Field<Option<Prices>>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Option<Terms>> {
    if !bid.is_given() && !prices.is_given() {
        return Some(None);
    }
    let currency = currency(bid, prices, reader);
    let bid = bid.optional()?;
    let labour = match bid.map(|bid| bid.labour.optional()) {
        Some(given) => given?.map(labour),
        None => None,
    };
    let mut part = |what: &str, field: fn(&raw::Bid) -> &Field<Option<Part>>| {
        let given = bid.and_then(|bid| field(bid).given().copied());
        assumptions.add(what, given.unwrap_or_default().normalize().to_string(), given.is_some());
        given.unwrap_or_default()
    };
    let tax = part("tax on materials, as a share", |bid| &bid.tax);
    let contingency = part("contingency on materials, tax and labour, as a share", |bid| &bid.contingency);
    let markup = part("markup on all that and the contingency, as a share", |bid| &bid.markup);
    let labour = match labour {
        Some(labour) => Some(labour?),
        None => None,
    };
    let currency = currency?;
    if let Some(labour) = &labour {
        assumptions.add("an hour of labour", format!("{} {}", labour.rate_per_hour, currency.code()), true);
        for (action, minutes) in &labour.minutes.0 {
            assumptions.add(format!("minutes for {}", action.words()), minutes.normalize().to_string(), true);
        }
    }
    Some(Some(Terms { currency, labour, tax, contingency, markup }))
}

/// The currency of the price list; the bid's own where there is no list.
fn currency(
    bid: &Field<Option<raw::Bid>>,
    prices: &Field<Option<Prices>>,
    reader: &mut Reader<'_>,
) -> Option<Currency> {
    let Some(prices) = prices.optional()? else {
        let written = bid.given()?;
        return reader.needed(bid.at, "currency", &written.currency).cloned();
    };
    if let Some(field) = bid.given().map(|bid| &bid.currency)
        && let Some(own) = field.given()
        && *own != prices.currency
    {
        let (own, theirs) = (quoted(own.code()), quoted(prices.currency.code()));
        let message = format!("the bid is in {own}, and the prices are in {theirs}");
        reader.report(
            field.at,
            Code::TwoCurrencies,
            message,
            "leave the bid's `currency` out, or give prices in it",
        );
    }
    Some(prices.currency.clone())
}

fn labour(written: &raw::Labour) -> Option<Labour> {
    let minutes = written.minutes.get()?;
    let given = [
        (Action::Lift, &minutes.lift),
        (Action::Loosen, &minutes.loosen),
        (Action::Harvest, &minutes.harvest),
        (Action::CutHole, &minutes.cut_hole),
        (Action::CutNotch, &minutes.cut_notch),
        (Action::MakeUp, &minutes.make_up),
        (Action::Patch, &minutes.patch),
        (Action::ThreeCourse, &minutes.three_course),
        (Action::Block, &minutes.block),
        (Action::Batten, &minutes.batten),
        (Action::Set, &minutes.set),
    ]
    .into_iter()
    .map(|(action, field)| Some((action, field.optional()?.copied())))
    .collect::<Option<Vec<(Action, Option<Decimal>)>>>()?;
    let timed = given.into_iter().filter_map(|(action, minutes)| Some((action, minutes?))).collect();
    Some(Labour { rate_per_hour: *written.rate_per_hour.get()?, minutes: Minutes(timed) })
}

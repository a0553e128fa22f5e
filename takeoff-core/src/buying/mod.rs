//! What the work costs: price lists, the cheapest packs, labour, and the bid.
mod bid;
mod currency;
mod labour;
mod measure;
mod pack_mix;
mod price_list;
mod purchase;
mod terms;
#[cfg(test)]
mod tests;

pub use bid::bid;
pub use currency::{Currency, Money};
pub use labour::Action;
pub(crate) use labour::counted;
pub use measure::Measure;
pub use pack_mix::{Mix, Offer, TooManyMixes, cheapest_mix};
pub use price_list::{PriceList, PriceRow};
pub(crate) use purchase::bought;
pub use purchase::purchase;
pub use terms::{Labour, Minutes, Terms};

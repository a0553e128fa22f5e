//! Cost of the work: the cheapest packs, labour, and the bid.
mod bid;
mod labour;
mod pack_mix;
mod purchase;
mod result;
#[cfg(test)]
mod tests;
mod unit_cost;

pub use bid::bid;
pub use pack_mix::{Mix, Offer, TooManyMixes, cheapest_mix};
pub use purchase::purchase;
pub use result::{Bid, BidLine, BidPack, BidTotals, LabourLine, Purchase, Unpriced, UnusedPrice};
pub(crate) use unit_cost::unit_cost;

//! What the work costs: price lists, the cheapest packs, labour, and the bid.
mod bid;
mod labour;
mod pack_mix;
mod purchase;
mod result;
#[cfg(test)]
mod tests;

pub use bid::bid;
pub(crate) use labour::counted;
pub use pack_mix::{Mix, Offer, TooManyMixes, cheapest_mix};
pub(crate) use purchase::bought;
pub use purchase::purchase;
pub use result::{Bid, BidLine, BidPack, BidTotals, LabourLine, Purchase, Unpriced, UnusedPrice};

//! Packs, money and labour.
mod bids;
mod mixes;
mod money;

//! Packs, money and labour.

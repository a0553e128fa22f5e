//! A reproducible random number generator.

/// SplitMix64 with a seed (Steele, Lea and Flood, 2014; from memory).
pub(crate) struct Rng(u64);

impl Rng {
    pub(crate) fn new(seed: u64) -> Rng {
        Rng(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A whole number from `from` to `to`, ends included.
    pub(crate) fn between(&mut self, from: i64, to: i64) -> i64 {
        from + (self.next() % (to - from + 1) as u64) as i64
    }

    /// True with probability 1 / `many`.
    pub(crate) fn one_in(&mut self, many: i64) -> bool {
        self.between(1, many) == 1
    }

    /// One of the choices.
    pub(crate) fn pick<T: Copy>(&mut self, choices: &[T]) -> T {
        choices[self.between(0, choices.len() as i64 - 1) as usize]
    }
}

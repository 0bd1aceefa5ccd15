//! A seeded source of numbers: splitmix64 (Steele, Lea, Flood 2014), the same everywhere.

/// The source's state.
#[derive(Clone, Debug)]
pub(crate) struct Chance(u64);

impl Chance {
    /// A source of its own for each `stream` of a seed.
    pub(crate) fn new(seed: u64, stream: u64) -> Chance {
        let mut chance = Chance(seed ^ stream.wrapping_mul(0xd134_2543_de82_ef95));
        chance.next();
        chance
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// In [0, 1).
    pub(crate) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// In 0..many; 0 where there are none.
    pub(crate) fn below(&mut self, many: usize) -> usize {
        ((self.share() * many as f64) as usize).min(many.saturating_sub(1))
    }
}

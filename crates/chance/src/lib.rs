//! Numbers that look random and are the same on every machine: splitmix64 (Steele, Lea and
//! Flood 2014).

/// A source of numbers: its state.
#[derive(Clone, Debug)]
pub struct Chance(u64);

impl Chance {
    /// The source of a seed.
    pub fn new(seed: u64) -> Chance {
        Chance(seed)
    }

    /// A source of its own for each `stream` of a seed.
    pub fn stream(seed: u64, stream: u64) -> Chance {
        let mut chance = Chance(seed ^ stream.wrapping_mul(0xd134_2543_de82_ef95));
        chance.bits();
        chance
    }

    /// 64 bits, each as likely 0 as 1.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// In [0, 1).
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// In 0..many; 0 where there are none.
    pub fn below(&mut self, many: usize) -> usize {
        ((self.share() * many as f64) as usize).min(many.saturating_sub(1))
    }

    /// Above 0, and at most 1: its logarithm is finite.
    pub fn above_zero(&mut self) -> f64 {
        ((self.bits() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Standard normal (Box and Muller).
    pub fn normal(&mut self) -> f64 {
        let (radius, turn) = (self.above_zero(), self.above_zero());
        libm::sqrt(-2.0 * libm::log(radius)) * libm::cos(std::f64::consts::TAU * turn)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first numbers of seed 1234567: as often printed beside the algorithm (from memory),
    /// and worked again from its three lines in Python 3.11.
    #[test]
    fn the_first_numbers_are_the_known_ones() {
        let mut chance = Chance::new(1_234_567);
        let wanted = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(wanted.map(|_: u64| chance.bits()), wanted);
    }

    #[test]
    fn shares_and_choices_stay_in_their_range() {
        let mut chance = Chance::stream(7, 3);
        for _ in 0..10_000 {
            assert!((0.0..1.0).contains(&chance.share()));
            assert!(chance.above_zero() > 0.0);
            assert!(chance.below(3) < 3);
            assert!(chance.normal().is_finite());
        }
        assert_eq!(chance.below(0), 0);
    }
}

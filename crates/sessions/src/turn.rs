//! One child's turn on a marking: contacts until one fails, and the time it takes.

use chance::Chance;

use crate::programme::Play;

/// What a child does when a contact does not come off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failing {
    /// Goes on to the end; what follows counts as no good contact. The plan's own view.
    GoOn,
    /// Leaves the marking there and walks back.
    GoBack,
    /// Walks back to the start and tries once more in the same turn.
    Retry,
}

/// A turn that was had.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Turn {
    /// Good contacts.
    pub good: u32,
    /// Whether a try went through to the end without a fault.
    pub through: bool,
    /// Seconds on the marking, a walk to the start before a second try among them.
    pub pass_s: f64,
    /// Seconds of the walk back into line, without what varies.
    pub back_s: f64,
}

/// The chance of one contact that makes `good` of `flights` expected: p + p² + ... = good.
pub fn contact(flights: u32, good: f64) -> f64 {
    let sum = |p: f64| {
        let mut sum = 0.0;
        let mut through = 1.0;
        for _ in 0..flights {
            through *= p;
            sum += through;
        }
        sum
    };
    let (mut low, mut high) = (0.0, 1.0);
    if good >= sum(high) {
        return 1.0;
    }
    // Each half is exact to the last bit in so many.
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if sum(middle) < good {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// One turn by chance.
///
/// - `p`: of each contact, from [`contact`]
/// - `varies_s`: the part of the way back that is not walked with the route's length
pub fn turn(play: &Play, p: f64, failing: Failing, varies_s: f64, chance: &mut Chance) -> Turn {
    let walk = (play.walk_back_s - varies_s).max(0.0);
    let (good, tried) = one(play.flights, p, chance);
    let through = good == play.flights;
    let share = f64::from(tried) / f64::from(play.flights.max(1));
    if through || failing == Failing::GoOn {
        return Turn {
            good,
            through,
            pass_s: play.pass_s,
            back_s: walk,
        };
    }
    if failing == Failing::GoBack {
        return Turn {
            good,
            through,
            pass_s: play.pass_s * share,
            back_s: walk * share,
        };
    }
    let (again, tried) = one(play.flights, p, chance);
    let second = f64::from(tried) / f64::from(play.flights.max(1));
    Turn {
        good: good + again,
        through: again == play.flights,
        pass_s: (play.pass_s + walk) * share + play.pass_s * second,
        back_s: walk * second,
    }
}

/// What [`turn`] gives on average: good contacts, seconds on the marking, seconds back.
pub fn mean_turn(play: &Play, p: f64, failing: Failing, varies_s: f64) -> (f64, f64, f64) {
    let walk = (play.walk_back_s - varies_s).max(0.0);
    let flights = play.flights.max(1);
    // Contacts tried: the j-th is tried when all before it came off.
    let (mut good, mut tried, mut before) = (0.0, 0.0, 1.0);
    for _ in 0..flights {
        tried += before;
        before *= p;
        good += before;
    }
    let fails = 1.0 - before;
    let share = tried / f64::from(flights);
    // Of a try that fails, times the chance that it does.
    let failed = share - before;
    match failing {
        Failing::GoOn => (good, play.pass_s, walk),
        Failing::GoBack => (good, play.pass_s * share, walk * share),
        Failing::Retry => (
            good * (1.0 + fails),
            play.pass_s * before + (play.pass_s + walk) * failed + play.pass_s * share * fails,
            walk * (before + share * fails),
        ),
    }
}

/// Contacts that came off, and contacts that were tried.
fn one(flights: u32, p: f64, chance: &mut Chance) -> (u32, u32) {
    for good in 0..flights {
        if chance.share() >= p {
            return (good, good + 1);
        }
    }
    (flights, flights)
}

//! Which form of a game a child plays.

use children::Means;
use footfall::Pitch;

use crate::text::Text;

/// A form of a game. The one for low vision goes beside any of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Form {
    /// Out of reach as it stands.
    Easier,
    /// As the steps say.
    AsIs,
    /// Too easy as it stands.
    Harder,
    /// In the same place on wheels or with a walker.
    Wheels,
}

impl Form {
    /// All of them.
    pub const ALL: [Form; 4] = [Form::Easier, Form::AsIs, Form::Harder, Form::Wheels];

    /// What a game says to this form; nothing beside its steps where it is played as it is.
    pub fn of(self, text: &Text) -> Option<&str> {
        match self {
            Form::Easier => Some(&text.easier),
            Form::AsIs => None,
            Form::Harder => Some(&text.harder),
            Form::Wheels => Some(&text.wheels),
        }
    }
}

/// The form for a child by the verdict of its feet on the figure.
///
/// Wheels and walkers have their own form whatever the shares. On foot, also held by a hand,
/// the greatest share decides; where two are equal, the game as it is before the easier form
/// before the harder one: a success comes first.
pub fn form_for(means: Means, shares: Pitch) -> Form {
    if matches!(means, Means::Wheels | Means::Walker) {
        return Form::Wheels;
    }
    if shares.well >= shares.easy.max(shares.hard) {
        Form::AsIs
    } else if shares.hard >= shares.easy {
        Form::Easier
    } else {
        Form::Harder
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_greatest_share_decides_and_success_comes_first() {
        let form = |well, easy, hard| form_for(Means::Feet, Pitch { well, easy, hard });
        assert_eq!(form(0.7, 0.2, 0.1), Form::AsIs);
        assert_eq!(form(0.2, 0.7, 0.1), Form::Harder);
        assert_eq!(form(0.2, 0.1, 0.7), Form::Easier);
        assert_eq!(form(0.0, 0.5, 0.5), Form::Easier);
        assert_eq!(form(0.4, 0.4, 0.2), Form::AsIs);
        assert_eq!(form(0.0, 0.0, 0.0), Form::AsIs);
    }

    #[test]
    fn wheels_and_a_walker_have_their_own_form_and_a_hand_has_not() {
        let hard = Pitch {
            well: 0.0,
            easy: 0.0,
            hard: 1.0,
        };
        assert_eq!(form_for(Means::Wheels, hard), Form::Wheels);
        assert_eq!(form_for(Means::Walker, hard), Form::Wheels);
        assert_eq!(form_for(Means::Held, hard), Form::Easier);
    }
}

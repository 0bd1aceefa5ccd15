//! Free play: which markings children use unled, and where one adult stands.

/// A marking as free play asks of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Unled {
    /// Its name in the plan.
    pub name: String,
    /// Whether it is travelled fast: run, leap, gallop, or wheels.
    pub fast: bool,
    /// Whether its end has the run-out that its speed asks for, free.
    pub run_out: bool,
    /// Whether its way meets or crosses another fast one.
    pub meets: bool,
    /// Whether it is out of reach for most without an adult's help: a brook at its wide end, a
    /// hop trail for children who do not hop yet.
    pub hard: bool,
}

/// A place where an adult can stand.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// What it is called: a set-out point, a bench, a door.
    pub name: String,
    /// By marking (in the list's order) and cell: whether it is seen from here. A marking
    /// without cells has its ends or corners in their stead.
    pub sees: Vec<Vec<bool>>,
}

/// Why a marking is left out of free play.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// Fast, and its way meets another fast one.
    Meets,
    /// Fast, and its run-out is not free.
    RunOut,
    /// Too hard without an adult.
    Hard,
    /// Not wholly seen from where the adult stands.
    Unseen,
}

impl Why {
    /// The word of sentences.
    pub fn word(self) -> &'static str {
        match self {
            Why::Meets => "meets",
            Why::RunOut => "run-out",
            Why::Hard => "hard",
            Why::Unseen => "unseen",
        }
    }
}

/// Free play with one adult.
#[derive(Clone, Debug, PartialEq)]
pub struct FreePlay {
    /// Number of the stand; `None` where none is given.
    pub stand: Option<usize>,
    /// Numbers of the markings that children use unled.
    pub open: Vec<usize>,
    /// Numbers of those left out, each with every reason.
    pub out: Vec<(usize, Vec<Why>)>,
}

/// Chooses what is open in free play, and where one adult stands to see all of it.
///
/// A fast marking is open only with its run-out and nothing in its way; a hard one is not. Of the
/// stands the one that sees most of the rest whole is taken, of equals the one that sees
/// more cells, then the first; what it does not see whole is left out. Without a stand nothing is
/// seen, and nothing is open. Common practice: no child plays out of an adult's sight.
pub fn free_play(markings: &[Unled], stands: &[Stand]) -> FreePlay {
    let reasons: Vec<Vec<Why>> = markings
        .iter()
        .map(|marking| {
            let mut why = Vec::new();
            if marking.fast && marking.meets {
                why.push(Why::Meets);
            }
            if marking.fast && !marking.run_out {
                why.push(Why::RunOut);
            }
            if marking.hard {
                why.push(Why::Hard);
            }
            why
        })
        .collect();
    let whole = |stand: &Stand, at: usize| {
        let cells = stand.sees.get(at);
        cells.is_some_and(|cells| !cells.is_empty() && cells.iter().all(|sees| *sees))
    };
    let safe: Vec<usize> = (0..markings.len())
        .filter(|at| reasons.get(*at).is_some_and(Vec::is_empty))
        .collect();
    let worth = |stand: &Stand| {
        let seen = safe.iter().filter(|at| whole(stand, **at)).count();
        let cells: usize = safe
            .iter()
            .filter_map(|at| stand.sees.get(*at))
            .map(|cells| cells.iter().filter(|sees| **sees).count())
            .sum();
        (seen, cells)
    };
    let stand = stands
        .iter()
        .enumerate()
        .rev()
        .max_by_key(|(_, stand)| worth(stand))
        .map(|(at, _)| at);
    let mut play = FreePlay {
        stand,
        open: Vec::new(),
        out: Vec::new(),
    };
    let here = stand.and_then(|at| stands.get(at));
    for (at, mut why) in reasons.into_iter().enumerate() {
        if !here.is_some_and(|stand| whole(stand, at)) {
            why.push(Why::Unseen);
        }
        if why.is_empty() {
            play.open.push(at);
        } else {
            play.out.push((at, why));
        }
    }
    play
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marking(name: &str, fast: bool, run_out: bool, meets: bool, hard: bool) -> Unled {
        Unled {
            name: name.into(),
            fast,
            run_out,
            meets,
            hard,
        }
    }

    fn stand(sees: &[&[bool]]) -> Stand {
        Stand {
            name: "door".into(),
            sees: sees.iter().map(|cells| cells.to_vec()).collect(),
        }
    }

    #[test]
    fn fast_ways_that_meet_and_what_is_unseen_stay_closed() {
        let yard = [
            marking("court", false, false, true, false),
            marking("lane", true, true, true, false),
            marking("trail", true, true, false, false),
            marking("brook", true, false, false, true),
            marking("spots", false, true, false, false),
        ];
        let (yes, no) = (true, false);
        let play = free_play(
            &yard,
            &[
                // sees the most cells, but most of them in part
                stand(&[
                    &[yes, yes, no],
                    &[yes; 9],
                    &[yes, yes, no],
                    &[yes; 9],
                    &[yes],
                ]),
                stand(&[&[yes, yes, yes], &[no], &[yes, yes, yes], &[no], &[no]]),
                stand(&[&[yes, yes, yes], &[no], &[yes, yes, yes], &[no], &[no]]),
            ],
        );
        assert_eq!(play.stand, Some(1));
        assert_eq!(play.open, [0, 2]);
        assert_eq!(
            play.out,
            [
                (1, vec![Why::Meets, Why::Unseen]),
                (3, vec![Why::RunOut, Why::Hard, Why::Unseen]),
                (4, vec![Why::Unseen]),
            ]
        );
    }

    #[test]
    fn without_an_adult_nothing_is_open() {
        let play = free_play(&[marking("court", false, true, false, false)], &[]);
        assert_eq!((play.stand, play.open.len(), play.out.len()), (None, 0, 1));
    }
}

//! The stretch from the painted yard to the weeks of play: games, groups, sessions, staff.

use std::collections::{BTreeMap, BTreeSet};

use children::Child;
use footfall::Footfall;
use games::{Available, Equipment, Game, Offered};
use jiff::ToSpan;
use layout::week::Target;
use note::{Note, msg};
use project::Project;
use project::read::lost::Lost;
use sessions::{Forecast, Manner, Mishap, Plan, Programme, Pupil, Station, When, Work};

use crate::outcome::Fault;
use crate::papers;
use crate::planning::Class;
use crate::verbs::plan::Told;

/// What teachers need.
pub struct Taught {
    /// Children one by one: their codes.
    pub codes: Vec<String>,
    /// What was asked.
    pub programme: Programme,
    /// Who is where when.
    pub plan: Plan,
    /// What a session will be like.
    pub forecast: Forecast,
    /// What typical years leave of the sessions, by weather file.
    pub fits: Vec<(String, days::Sessions)>,
    /// Games that this yard and this class can play, by name; the project's own among them.
    pub games: Vec<Game>,
}

impl Taught {
    /// For the open record.
    pub fn record(&self) -> plan::Teach {
        let games: Vec<String> = self.games.iter().map(|game| game.name.clone()).collect();
        plan::Teach::of(
            &self.programme,
            &self.plan,
            &self.forecast,
            &self.codes,
            &games,
        )
    }
}

/// A skill that comes off so often is there already.
const KNOWN: f64 = 0.8;

/// Plans the weeks.
pub fn teach(
    project: &Project,
    class: &Class,
    told: &Told,
    notes: &mut Vec<Note>,
) -> Result<Option<Taught>, Fault> {
    let (codes, of_class) = heads(class);
    if codes.is_empty() || told.markings.is_empty() {
        return Ok(None);
    }
    let games = playable(project, class, told, notes);
    let stations = stations(project, class, told, &of_class, &games);
    let programme = Programme {
        weeks: project.programme.weeks,
        week: class.week,
        children: codes
            .iter()
            .zip(&of_class)
            .filter_map(|(code, at)| {
                let child = class.children.get(*at)?;
                Some(Pupil {
                    code: code.clone(),
                    age: child.age,
                    known: child
                        .skills
                        .iter()
                        .filter(|(_, ability)| ability.can >= KNOWN)
                        .map(|(skill, _)| *skill)
                        .collect(),
                })
            })
            .collect(),
        targets: of_class
            .iter()
            .enumerate()
            .flat_map(|(head, at)| {
                let of = class
                    .targets
                    .iter()
                    .filter(move |target| target.child == *at);
                of.map(move |target| Target {
                    child: head,
                    ..*target
                })
            })
            .collect(),
        stations,
        order: sessions::usual_order(),
        seed: project.about.seed,
        work: Work::default(),
    };
    let plan = sessions::plan(&programme, &project.ledger)
        .map_err(|why| Fault(format!("{why:?}")))?
        .pour(notes);
    let plan = after_mishaps(project, &programme, plan, notes)?;
    let forecast = sessions::simulate(
        &programme,
        &plan,
        &Manner::usual(&project.ledger),
        &project.ledger,
    );
    Ok(Some(Taught {
        codes,
        programme,
        plan,
        forecast,
        fits: fits(project),
        games,
    }))
}

/// How many of the planned sessions fall on hours fit for play, by typical years.
fn fits(project: &Project) -> Vec<(String, days::Sessions)> {
    let ledger = &project.ledger;
    let programme = &project.programme;
    let Some(starts) = programme.starts else {
        return Vec::new();
    };
    let mut planned: BTreeMap<u8, f64> = BTreeMap::new();
    for week in 0..i64::from(programme.weeks) {
        if let Ok(date) = starts.checked_add((7 * week).days()) {
            let month = date.month().unsigned_abs();
            *planned.entry(month).or_default() += f64::from(programme.sessions_a_week);
        }
    }
    let planned: Vec<(u8, f64)> = planned.into_iter().collect();
    let (bands, air) = (days::Bands::of(ledger), weather::Air::of(ledger));
    // an hour is called by its end
    let hour = ledger.number(papers::HOUR).clamp(0.0, 23.0) as u8 + 1;
    project
        .skies
        .iter()
        .filter(|sky| sky.weather.span == weather::Span::TypicalYear)
        .map(|sky| {
            let months = days::fit_hours(&sky.weather, &[hour], &bands, &air);
            let place = sky.place(&project.about.name).to_owned();
            (place, days::sessions(&planned, &months))
        })
        .collect()
}

/// The plan again, where sessions fell out or markings cannot be used. What lies before the
/// first of them stays as it was.
fn after_mishaps(
    project: &Project,
    programme: &Programme,
    plan: Plan,
    notes: &mut Vec<Note>,
) -> Result<Plan, Fault> {
    let when = |lost: &Lost| When {
        week: lost.week,
        session: lost.session,
    };
    let mishaps: Vec<Mishap> = project
        .lost
        .iter()
        .filter_map(|lost| match &lost.marking {
            None => Some(Mishap::Lost(when(lost))),
            Some(name) => Some(Mishap::Broken {
                station: programme
                    .stations
                    .iter()
                    .position(|station| station.name == *name)?,
                from: when(lost),
                through: None,
            }),
        })
        .collect();
    let Some(from) = project.lost.iter().map(when).min() else {
        return Ok(plan);
    };
    let again = sessions::replan(programme, &plan, from, &mishaps, &project.ledger)
        .map_err(|why| Fault(format!("{why:?}")))?;
    Ok(again.pour(notes).plan)
}

/// Each child by itself: where only ages are counted, those of one age are numbered.
fn heads(class: &Class) -> (Vec<String>, Vec<usize>) {
    let mut codes = Vec::new();
    let mut of_class = Vec::new();
    for (at, (child, count)) in class.children.iter().zip(&class.counts).enumerate() {
        for number in 1..=*count {
            codes.push(match count {
                1 => child.name.clone(),
                _ => format!("{}-{number}", child.name),
            });
            of_class.push(at);
        }
    }
    (codes, of_class)
}

/// The games of the house and of the project that suit the yard and somebody in it.
fn playable(project: &Project, class: &Class, told: &Told, notes: &mut Vec<Note>) -> Vec<Game> {
    let all: Vec<Game> = games::shipped()
        .iter()
        .chain(&project.games)
        .cloned()
        .collect();
    let in_order = games::order(&all).pour(notes);
    let mut offered: Vec<Offered> = Vec::new();
    for (marking, activities) in told.markings.iter().zip(&told.footfall) {
        for row in activities {
            let best = row.iter().map(|one| one.pitch.well).fold(0.0, f64::max);
            if let Some(one) = row.first() {
                offered.push(Offered {
                    family: marking.family.clone(),
                    activity: one.gait.to_owned(),
                    well: best,
                });
            }
        }
    }
    let ages = class.children.iter().map(|child| child.age);
    let available = Available {
        offered,
        ages: [
            ages.clone().fold(f64::INFINITY, f64::min),
            ages.fold(0.0, f64::max),
        ],
        group: class.counts.iter().sum(),
        equipment: Equipment::ALL.iter().copied().collect::<BTreeSet<_>>(),
    };
    let mut fit: Vec<Game> = all
        .into_iter()
        .filter(|game| games::suits(game, &available, &project.ledger).is_empty())
        .collect();
    let place = |name: &str| {
        in_order
            .iter()
            .position(|node| matches!(node, games::Node::Game(known) if **known == *name))
    };
    fit.sort_by_key(|game| place(&game.name));
    if fit.is_empty() {
        notes.push(Note::advice(None, msg!("teach-no-game")).mend(msg!("teach-write-game")));
    }
    fit
}

/// The markings as stations with their games.
fn stations(
    project: &Project,
    class: &Class,
    told: &Told,
    of_class: &[usize],
    games: &[Game],
) -> Vec<Station> {
    let children: Vec<Child> = of_class
        .iter()
        .filter_map(|at| class.children.get(*at).cloned())
        .collect();
    let names: BTreeSet<&str> = games.iter().map(|game| game.name.as_str()).collect();
    let levels = levels(games, &names);
    told.markings
        .iter()
        .zip(&told.figures)
        .zip(&told.footfall)
        .filter_map(|((marking, figure), rows)| {
            let family = project.family(&marking.family)?;
            let gaits = layout::candidates::activities(family, &project.programme.weights);
            let rows: Vec<Vec<Footfall>> = rows
                .iter()
                .map(|row| {
                    of_class
                        .iter()
                        .filter_map(|at| row.get(*at).cloned())
                        .collect()
                })
                .collect();
            let mut station = Station::of(
                &marking.name,
                figure.tracks,
                &gaits,
                &rows,
                &children,
                &project.ledger,
            );
            station.games = games
                .iter()
                .filter(|game| game.families.contains(&marking.family))
                .map(|game| sessions::Game {
                    name: game.name.clone(),
                    gait: game.activity.clone(),
                    level: levels.get(game.name.as_str()).copied().unwrap_or(1),
                    after: after(game, &names),
                })
                .collect();
            Some(station)
        })
        .collect()
}

/// What a game waits for, of what this yard has.
fn after(game: &Game, names: &BTreeSet<&str>) -> Vec<String> {
    let before = game.after.iter().map(|before| before.name.clone());
    before
        .filter(|name| names.contains(name.as_str()))
        .collect()
}

/// 1 for a game that waits for none, else one more than the last that it waits for.
fn levels<'a>(games: &'a [Game], names: &BTreeSet<&str>) -> BTreeMap<&'a str, u8> {
    let mut levels: BTreeMap<&str, u8> = BTreeMap::new();
    // games stand in their order: what comes before is known before
    for game in games {
        let before = after(game, names);
        let last = before
            .iter()
            .filter_map(|name| levels.get(name.as_str()))
            .max()
            .copied();
        levels.insert(&game.name, last.unwrap_or(0).saturating_add(1));
    }
    levels
}

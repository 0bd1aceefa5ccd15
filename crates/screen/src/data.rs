//! Clips as the page's script reads them: whole milliseconds, millimetres (y down) and
//! degrees, and every sentence ready from the catalogue.

use children::Side;
use motion::{Clip, Down, Model, Role, Track, early};
use note::msg;
use serde_json::{Value, json};

use crate::Tongue;
use crate::svg::{Extent, aloft, foot, hops, letter, number, quad, ring, spot, turn};

/// A clip and where the page's choices find it.
pub struct Chosen {
    /// One value for each choice of the page, in their order.
    pub by: Vec<String>,
    /// What is shown.
    pub clip: Clip,
    /// Which of the page's grounds lies below it.
    pub ground: Option<usize>,
}

/// One group of alternatives on a page.
pub struct Choice {
    /// Its name in the form.
    pub name: &'static str,
    /// Its legend.
    pub legend: String,
    /// Value and label of each alternative.
    pub options: Vec<(String, String)>,
}

impl Choice {
    /// Offers an alternative, once.
    pub fn offer(&mut self, value: &str, label: impl FnOnce() -> String) {
        if self.options.iter().all(|(known, _)| known != value) {
            self.options.push((value.to_owned(), label()));
        }
    }
}

/// Sentences that clips share, each kept once.
#[derive(Default)]
pub struct Phrases(Vec<String>);

impl Phrases {
    pub fn number(&mut self, text: String) -> usize {
        match self.0.iter().position(|known| *known == text) {
            Some(at) => at,
            None => {
                self.0.push(text);
                self.0.len() - 1
            }
        }
    }

    pub fn value(self) -> Value {
        json!(self.0)
    }
}

fn ms(seconds: f64) -> i64 {
    (seconds * 1000.0).round() as i64
}

fn whole(value: f64) -> i64 {
    value.round() as i64
}

/// One clip. `room` is the ground that the page shows of it, millimetres.
pub fn clip(
    chosen: &Chosen,
    room: &Extent,
    phrases: &mut Phrases,
    tongue: &Tongue,
    model: &Model,
) -> Value {
    let clip = &chosen.clip;
    let track = |side: Side| -> Value {
        let keys = Track::of(clip, side, model).keys;
        keys.iter()
            .map(|key| {
                let [x, y] = spot(key.at);
                json!([
                    ms(key.time),
                    whole(x),
                    whole(y),
                    whole(turn(key.toes)),
                    whole(key.height * 1000.0)
                ])
            })
            .collect()
    };
    let prints: Vec<Value> = clip
        .prints
        .iter()
        .map(|print| {
            let [x, y] = spot(print.at);
            json!([
                letter(print.side).to_string(),
                whole(x),
                whole(y),
                whole(turn(print.toes)),
                ms(print.lands),
                print.lifts.map(ms),
                u8::from(print.role == Role::Stand),
                print.count
            ])
        })
        .collect();
    let rings: Vec<Value> = clip
        .prints
        .iter()
        .filter_map(|print| {
            ring(clip, print)
                .map(|[x, y]| json!([print.count, whole(x), whole(y), ms(print.lands)]))
        })
        .collect();
    let lines: Vec<Value> = hops(clip)
        .iter()
        .map(|hop| json!([quad(&hop.curve), u8::from(hop.flies)]))
        .collect();
    let events: Vec<Value> = clip
        .events()
        .iter()
        .map(|event| {
            let says = phrases.number(tongue.say(&event.message()));
            let foot = phrases.number(tongue.say(&msg!("motion-foot", foot = event.feet.word())));
            json!([
                ms(event.lands),
                event.feet.word(),
                says,
                event.count,
                foot,
                match event.role {
                    Role::Stand => 0,
                    Role::Closing | Role::Hop | Role::Tap => 1,
                    _ => 2,
                }
            ])
        })
        .collect();
    let row = early(clip.skill).find(|row| Some(row.name) == clip.early);
    let says = match row {
        Some(row) => format!(
            "{} {}",
            tongue.word(row.says),
            tongue.say(&msg!("screen-check", check = row.check))
        ),
        None => tongue.word("screen-well-says"),
    };
    let [width, height] = room.size();
    json!({
        "by": chosen.by,
        "ground": chosen.ground,
        "end": ms(clip.end),
        "foot": whole(clip.body.foot * 1000.0),
        "box": [number(room.low[0]), number(room.low[1]), number(width), number(height)],
        "R": track(Side::Right),
        "L": track(Side::Left),
        "prints": prints,
        "rings": rings,
        "lines": lines,
        "events": events,
        "flights": clip.flights().iter().map(|(from, to)| json!([ms(*from), ms(*to)])).collect::<Vec<_>>(),
        "says": phrases.number(says),
    })
}

/// The ground of several clips together.
pub fn ground<'a>(clips: impl Iterator<Item = &'a Clip>, model: &Model) -> Option<Extent> {
    clips
        .filter_map(|clip| aloft(clip, model))
        .reduce(Extent::with)
}

/// The sentences of what is down, by their words.
pub fn moments(tongue: &Tongue) -> Value {
    let pairs = Down::ALL.map(|down| {
        (
            down.word().to_owned(),
            json!(tongue.say(&motion::moment(down))),
        )
    });
    Value::Object(pairs.into_iter().collect())
}

/// Both feet as paths, thousandths of their length.
pub fn feet() -> Value {
    json!({ "R": foot(Side::Right, 1000.0), "L": foot(Side::Left, 1000.0) })
}

/// The label of a form.
pub fn form(name: Option<&str>, tongue: &Tongue) -> String {
    match name {
        Some(name) => tongue.say(&msg!("motion-form", name = name)),
        None => tongue.word("screen-well"),
    }
}

/// The value of a form among the choices.
pub const WELL: &str = "well";

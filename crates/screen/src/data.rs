//! Clips as the page's script reads them: whole milliseconds, millimetres (y down) and
//! degrees, and every sentence ready from the catalogue.

use children::Side;
use motion::{Aid, Clip, Down, Key, MOMENTS, Model, Role, Track, adapts, forms};
use note::msg;
use serde_json::{Map, Value, json};

use crate::Tongue;
use crate::aid::{means, pushed, rings, rolled, shape};
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
    let track = |side: Side| keys(&thinned(&Track::of(clip, side, model).keys));
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
                match print.role {
                    Role::Stand => 1,
                    Role::Still => 2,
                    _ => 0,
                },
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
        .chain(
            rings(clip)
                .into_iter()
                .map(|(count, [x, y], lands)| json!([count, whole(x), whole(y), ms(lands)])),
        )
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
            let foot = phrases.number(tongue.say(&event.word()));
            json!([
                ms(event.lands),
                event.feet.word(),
                says,
                event.count,
                foot,
                match event.role {
                    Role::Stand => 0,
                    Role::Closing | Role::Hop | Role::Tap | Role::Step => 1,
                    Role::Short | Role::Still | Role::Frame => 1,
                    Role::Glide | Role::Wait => 3,
                    _ => 2,
                }
            ])
        })
        .collect();
    let row = forms(clip).find(|row| Some(row.name) == clip.early);
    let says = match (row, &clip.aid) {
        (_, Some(aid)) => tongue.say(&adapts(clip.skill, aid.means)),
        (Some(row), _) => format!(
            "{} {}",
            tongue.word(row.says),
            tongue.say(&msg!("screen-check", check = row.check))
        ),
        (None, _) => tongue.word("screen-well-says"),
    };
    let [width, height] = room.size();
    let mut value = json!({
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
    });
    if let (Some(aid), Some(object)) = (&clip.aid, value.as_object_mut()) {
        carried(object, clip, aid);
    }
    value
}

/// What a clip of wheels or a walker has more: `A` is its way, `moments` say what is done
/// from when on, `stands` and `pushes` are its prints.
fn carried(object: &mut Map<String, Value>, clip: &Clip, aid: &Aid) {
    let moments: Vec<Value> = aid
        .moments(clip)
        .iter()
        .map(|(time, word)| json!([ms(*time), word]))
        .collect();
    let stands: Vec<Value> = aid
        .stands
        .iter()
        .map(|stand| {
            let [x, y] = spot(stand.at);
            json!([
                whole(x),
                whole(y),
                whole(turn(stand.toes)),
                ms(stand.lands),
                stand.lifts.map(ms)
            ])
        })
        .collect();
    let pushes: Vec<Value> = pushed(clip)
        .iter()
        .map(|push| {
            json!([
                letter(push.side).to_string(),
                push.path,
                ms(push.from),
                ms(push.to)
            ])
        })
        .collect();
    object.insert("means".into(), json!(means(clip)));
    object.insert("A".into(), keys(&thinned(&aid.keys)));
    object.insert("moments".into(), json!(moments));
    object.insert("stands".into(), json!(stands));
    object.insert("pushes".into(), json!(pushes));
    object.insert("rolled".into(), json!(rolled(clip)));
}

fn keys(keys: &[Key]) -> Value {
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
}

/// Metres and radians: a key that the line between its neighbours gives so well says nothing.
const NEAR: [f64; 2] = [5e-4, 5e-3];

/// The keys that a page needs of what goes evenly for long.
fn thinned(keys: &[Key]) -> Vec<Key> {
    let between = |from: &Key, to: &Key, key: &Key| {
        let share = (key.time - from.time) / (to.time - from.time);
        let at = from.at + (to.at - from.at) * share;
        let toes = from.toes + (to.toes - from.toes) * share;
        let height = from.height + (to.height - from.height) * share;
        libm::hypot(key.at.x - at.x, key.at.y - at.y) <= NEAR[0]
            && (key.height - height).abs() <= NEAR[0]
            && (key.toes - toes).abs() <= NEAR[1]
    };
    let mut kept: Vec<Key> = Vec::new();
    let mut from = 0;
    for (to, key) in keys.iter().enumerate() {
        let last = to + 1 == keys.len();
        let goes_on = keys.get(from).zip(keys.get(to + 1)).is_some_and(|(a, b)| {
            let inner = keys.get(from + 1..=to).unwrap_or_default();
            inner.iter().all(|key| between(a, b, key))
        });
        if to == 0 || last || !goes_on {
            kept.push(*key);
            from = to;
        }
    }
    kept
}

/// The shapes of what carries, by the words of the means; only those that clips show.
pub fn shapes<'a>(clips: impl Iterator<Item = &'a Clip>, model: &Model) -> Value {
    let mut shapes = Map::new();
    for clip in clips {
        if let Some(aid) = &clip.aid {
            shapes
                .entry(means(clip))
                .or_insert_with(|| json!(shape(aid, model.wheel, clip.body.foot * 1000.0)));
        }
    }
    Value::Object(shapes)
}

/// The ground of several clips together.
pub fn ground<'a>(clips: impl Iterator<Item = &'a Clip>, model: &Model) -> Option<Extent> {
    clips
        .filter_map(|clip| aloft(clip, model))
        .reduce(Extent::with)
}

/// The sentences of what is down or done, by their words.
pub fn moments(tongue: &Tongue) -> Value {
    let words = Down::ALL.map(Down::word).into_iter().chain(MOMENTS);
    let pairs = words.map(|word| (word.to_owned(), json!(tongue.say(&motion::moment(word)))));
    Value::Object(pairs.collect())
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

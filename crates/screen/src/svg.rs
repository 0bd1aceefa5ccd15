//! SVG text: numbers, escapes, feet and the lines between them, in millimetres, y down.

use std::fmt::Write;

use children::Side;
use footfall::Contact;
use geo::Coord;
use motion::{Clip, Model, Print, Role, Track, outline};

use crate::aid;

/// A number with at most two decimals and no tail.
pub fn number(value: f64) -> String {
    let hundredths = (value * 100.0).round();
    if hundredths == 0.0 {
        return "0".to_owned();
    }
    let text = format!("{:.2}", hundredths / 100.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Text as the content or an attribute of an element.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
    out
}

/// The path of a foot of this length, its middle at the origin, the toes along +x.
pub fn foot(side: Side, length: f64) -> String {
    let mut path = String::new();
    for ring in outline(side) {
        for (at, spot) in ring.iter().enumerate() {
            let pen = if at == 0 { 'M' } else { 'L' };
            _ = write!(
                path,
                "{pen}{} {}",
                number(spot.x * length),
                number(-spot.y * length)
            );
        }
        path.push('Z');
    }
    path
}

/// The letter of a side, as pages and style sheets have it.
pub fn letter(side: Side) -> char {
    match side {
        Side::Right => Contact::R.letter(),
        Side::Left => Contact::L.letter(),
    }
}

/// Ground in millimetres, y down.
#[derive(Clone, Copy, Debug)]
pub struct Extent {
    pub low: [f64; 2],
    pub high: [f64; 2],
}

impl Extent {
    pub fn round(at: Coord<f64>, reach: f64) -> Extent {
        let [x, y] = spot(at);
        Extent {
            low: [x - reach, y - reach],
            high: [x + reach, y + reach],
        }
    }

    pub fn with(self, other: Extent) -> Extent {
        let pick =
            |a: [f64; 2], b: [f64; 2], f: fn(f64, f64) -> f64| [f(a[0], b[0]), f(a[1], b[1])];
        Extent {
            low: pick(self.low, other.low, f64::min),
            high: pick(self.high, other.high, f64::max),
        }
    }

    /// With a margin all round.
    pub fn wider(self, by: f64) -> Extent {
        Extent {
            low: self.low.map(|low| low - by),
            high: self.high.map(|high| high + by),
        }
    }

    /// What both share.
    pub fn within(self, other: Extent) -> Extent {
        Extent {
            low: [0, 1].map(|axis| self.low[axis].max(other.low[axis])),
            high: [0, 1].map(|axis| self.high[axis].min(other.high[axis])),
        }
    }

    pub fn size(&self) -> [f64; 2] {
        [self.high[0] - self.low[0], self.high[1] - self.low[1]]
    }
}

/// Metres to millimetres, y down.
pub fn spot(at: Coord<f64>) -> [f64; 2] {
    [at.x * 1000.0, -at.y * 1000.0]
}

/// A turn in degrees, y down.
pub fn turn(toes: f64) -> f64 {
    -toes.to_degrees()
}

/// All that a clip's prints and their numbers take on a drawing, millimetres.
pub fn extent(clip: &Clip) -> Option<Extent> {
    let foot = clip.body.foot * 1000.0;
    clip.prints
        .iter()
        .map(|print| {
            let own = Extent::round(print.at, 0.62 * foot);
            match ring(clip, print) {
                Some([x, y]) => own.with(Extent {
                    low: [x - 0.34 * foot, y - 0.34 * foot],
                    high: [x + 0.34 * foot, y + 0.34 * foot],
                }),
                None => own,
            }
        })
        .chain(aid::extent(clip))
        .reduce(Extent::with)
}

/// The same with feet in the air, which are drawn as far up as they are high.
pub fn aloft(clip: &Clip, model: &Model) -> Option<Extent> {
    let raised = [Side::Right, Side::Left]
        .into_iter()
        .flat_map(|side| Track::of(clip, side, model).keys)
        .map(|key| {
            let up = Coord {
                x: 0.0,
                y: key.height,
            };
            Extent::round(key.at + up, 0.55 * clip.body.foot * 1000.0)
        });
    extent(clip).into_iter().chain(raised).reduce(Extent::with)
}

/// Where the number of a contact stands: outside its foot, behind the heel of one that goes
/// sideways. `None` for what is not numbered, as start, closing feet and the second foot of
/// a jump.
///
/// Marks that wheels or a walker come to have theirs beside the way ([`aid::rings`]).
pub fn ring(clip: &Clip, print: &Print) -> Option<[f64; 2]> {
    if clip.aid.is_some() || print.role != Role::Contact {
        return None;
    }
    let twin = clip.prints.iter().any(|other| {
        other.role == Role::Contact && other.count == print.count && other.side != print.side
    });
    if twin && print.side == Side::Left {
        return None;
    }
    let foot = clip.body.foot;
    let (sin, cos) = libm::sincos(print.toes);
    let sideways = libm::cos(print.travel - print.toes).abs() < 0.7;
    let at = if sideways {
        print.at - Coord { x: cos, y: sin } * (0.95 * foot)
    } else {
        let sign = if print.side == Side::Left { 1.0 } else { -1.0 };
        print.at + Coord { x: -sin, y: cos } * (sign * 0.62 * foot)
    };
    Some(spot(at))
}

/// The line of a foot from one print to its next, and whether it flies there.
pub struct Hop {
    /// Ends and knee of a quadratic curve, millimetres.
    pub curve: [[f64; 2]; 3],
    pub flies: bool,
}

/// One line a foot: solid for a flight, dotted on the ground (look, section 3).
pub fn hops(clip: &Clip) -> Vec<Hop> {
    let flights = clip.flights();
    let mut hops = Vec::new();
    if aid::means(clip) == "wheels" {
        return hops;
    }
    for side in [Side::Right, Side::Left] {
        let own: Vec<&Print> = clip
            .prints
            .iter()
            .filter(|print| print.side == side && print.role != Role::Stand)
            .collect();
        for pair in own.windows(2) {
            let [from, to] = pair else { continue };
            let flies = flights.iter().any(|(_, end)| (end - to.lands).abs() < 1e-9);
            if let Some(curve) = curve(from, to, clip.body.foot) {
                hops.push(Hop { curve, flies });
            }
        }
    }
    hops
}

/// Metres: a foot that comes down nearer than this has not moved on.
const MOVED: f64 = 0.03;

fn curve(from: &Print, to: &Print, foot: f64) -> Option<[[f64; 2]; 3]> {
    let way = to.at - from.at;
    let length = libm::hypot(way.x, way.y);
    let ahead = way / length;
    // clear of the feet: a half length along the toes, less across them
    let clear = |print: &Print| {
        let along = libm::cos(libm::atan2(way.y, way.x) - print.toes).abs();
        foot * (0.22 + 0.33 * along)
    };
    let (start, end) = (clear(from), clear(to));
    let sign = if to.side == Side::Left { 1.0 } else { -1.0 };
    let out = Coord {
        x: -ahead.y,
        y: ahead.x,
    } * sign;
    if length < MOVED {
        return None;
    }
    if length <= start + end {
        // too near for a line from toes to heel: it goes round inside, the number stands outside
        let (a, b) = (from.at - out * (0.24 * foot), to.at - out * (0.24 * foot));
        return Some([spot(a), spot((a + b) / 2.0 - out * (0.4 * foot)), spot(b)]);
    }
    let aside = out * (0.3 * length).min(0.55 * foot);
    let (a, b) = (from.at + ahead * start, to.at - ahead * end);
    Some([spot(a), spot((a + b) / 2.0 + aside), spot(b)])
}

/// A quadratic curve as a path.
pub fn quad([a, knee, b]: &[[f64; 2]; 3]) -> String {
    let pair = |at: &[f64; 2]| format!("{} {}", number(at[0]), number(at[1]));
    format!("M{}Q{} {}", pair(a), pair(knee), pair(b))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_minus_nought() {
        for (value, text) in [
            (0.0, "0"),
            (-0.001, "0"),
            (1.5, "1.5"),
            (-12.345, "-12.35"),
            (3.0, "3"),
        ] {
            assert_eq!(number(value), text);
        }
    }

    #[test]
    fn nothing_of_a_name_is_taken_for_markup() {
        assert_eq!(
            escape("<a b=\"c\">&'"),
            "&lt;a b=&quot;c&quot;&gt;&amp;&#39;"
        );
    }
}

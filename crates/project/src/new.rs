//! A fresh project folder: forms to fill in, with remarks in the project's language.
//!
//! The survey's form names the corners in the order walked, and the tape's form lists what
//! to tape: every side, and enough diagonals that each corner is checked.

use std::fmt::Write;

use jiff::civil::Date;
use ledger::Ledger;
use note::{Fact, Message, Note, Noted, msg};
use unit::Units;
use words::{Catalogue, Language};

use crate::read::about::Paper;
use crate::read::programme::Programme;
use crate::remark::{list, quoted, remark};
use crate::write::Output;

/// What a new project should know of itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Answers {
    /// The centre's name.
    pub name: String,
    /// Of bare numbers.
    pub units: Units,
    /// Of papers, messages and the remarks in the files.
    pub language: Language,
    /// In the printer.
    pub paper: Paper,
    /// An ISO 4217 code.
    pub currency: String,
    /// The day that ages are reckoned on.
    pub date: Option<Date>,
    /// Corners of the yard, where there is no traced survey.
    pub corners: usize,
    /// The text of a `survey.toml` that was traced on a map.
    pub traced: Option<String>,
}

/// Corners that a form can have.
pub const CORNERS: std::ops::RangeInclusive<usize> = 3..=60;

/// The files of a new project, to be written where nothing stands. `None` where the notes
/// tell of an empty name, or of corners that no yard has.
pub fn new_folder(answers: &Answers, ledger: &Ledger) -> Noted<Option<Vec<Output>>> {
    let mut notes = Vec::new();
    if answers.name.trim().is_empty() {
        notes.push(Note::error(None, msg!("name-empty")));
    }
    if !CORNERS.contains(&answers.corners) && answers.traced.is_none() {
        let number = |count: usize| Fact::Number(count as f64, 0);
        let expected = msg!(
            "want-between",
            low = number(*CORNERS.start()),
            high = number(*CORNERS.end())
        );
        notes.push(
            Note::error(None, msg!("new-corners", found = answers.corners)).expected(expected),
        );
    }
    if !notes.is_empty() {
        return Noted { value: None, notes };
    }
    let corners = corners(answers.corners);
    let form = Form {
        words: Catalogue::of(answers.language),
        units: answers.units,
    };
    let (survey, pairs) = match &answers.traced {
        Some(traced) => (traced.clone(), Vec::new()),
        None => (form.survey(&corners), pairs(&corners)),
    };
    Noted::quiet(Some(vec![
        Output::new("project.toml", form.project(answers)),
        Output::new("tape.csv", form.tape(&pairs)),
        Output::new("survey.toml", survey),
        Output::new("children.csv", form.children()),
        Output::new(
            "programme.toml",
            form.programme(&Programme::usual(form.units, ledger)),
        ),
    ]))
}

/// `A` to `Z`, or `P1` to as many as there are.
fn corners(count: usize) -> Vec<String> {
    let letters = count <= 26;
    (0..count)
        .map(|at| {
            if letters {
                char::from(b'A' + at as u8).to_string()
            } else {
                format!("P{}", at + 1)
            }
        })
        .collect()
}

/// All diagonals up to so many corners; past it, those from two corners.
const FEW: usize = 6;

/// Sides in the order walked, then diagonals. Two fans hold every corner with two tapes
/// besides its sides' one each.
fn pairs(corners: &[String]) -> Vec<[&str; 2]> {
    let count = corners.len();
    let name = |at: usize| corners.get(at % count).map_or("", String::as_str);
    let mut pairs: Vec<[&str; 2]> = (0..count).map(|at| [name(at), name(at + 1)]).collect();
    for from in 0..count {
        for to in from + 2..count {
            let side = from == 0 && to == count - 1;
            let fan = [from, to].iter().any(|end| *end == 0 || *end == count / 2);
            if !side && (count <= FEW || fan) {
                pairs.push([name(from), name(to)]);
            }
        }
    }
    pairs
}

struct Form {
    words: &'static Catalogue,
    units: Units,
}

impl Form {
    fn say(&self, out: &mut String, message: Message) {
        remark(out, &self.words.say(&message, self.units));
    }

    fn project(&self, answers: &Answers) -> String {
        let mut out = String::new();
        self.say(&mut out, msg!("new-project"));
        _ = writeln!(out, "name = {}", quoted(answers.name.trim()));
        let units = match answers.units {
            Units::Metres => "m",
            Units::Feet => "ft",
        };
        self.say(&mut out, msg!("new-project-units"));
        _ = writeln!(out, "units = \"{units}\"");
        _ = writeln!(out, "language = \"{}\"", answers.language.tag());
        let paper = match answers.paper {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
        };
        _ = writeln!(out, "paper = \"{paper}\"");
        self.say(&mut out, msg!("new-project-zones"));
        _ = writeln!(out, "clear_zones = \"us-handbook\"");
        self.say(&mut out, msg!("new-project-budget"));
        _ = writeln!(out, "currency = {}", quoted(&answers.currency));
        _ = writeln!(out, "# budget = 650");
        _ = writeln!(out, "seed = 1");
        self.say(&mut out, msg!("new-project-date"));
        match answers.date {
            Some(date) => _ = writeln!(out, "date = {date}"),
            None => _ = writeln!(out, "# date = 2026-09-01"),
        }
        out.push('\n');
        self.say(&mut out, msg!("new-project-figures"));
        out.push_str("# [figures]\n# \"paint.coats\" = 3\n");
        out
    }

    fn tape(&self, pairs: &[[&str; 2]]) -> String {
        let mut out = String::new();
        self.say(&mut out, msg!("new-tape"));
        let example = match self.units {
            Units::Metres => "A,B,23.997,",
            Units::Feet => "A,B,\"78 ft 8 3/4 in\",",
        };
        _ = writeln!(out, "# {example}");
        out.push_str("from,to,reading,note\n");
        for [from, to] in pairs {
            _ = writeln!(out, "{from},{to},,");
        }
        out
    }

    fn survey(&self, corners: &[String]) -> String {
        let mut out = String::new();
        self.say(&mut out, msg!("new-survey"));
        out.push_str("tape = \"fibreglass\"\n\n");
        self.say(&mut out, msg!("new-survey-boundary"));
        _ = writeln!(out, "boundary = {}", list(corners));
        out.push_str("walked = \"anticlockwise\"\n\n");
        self.say(&mut out, msg!("new-survey-north"));
        out.push_str("# north = 312\n\n");
        self.say(&mut out, msg!("new-survey-edges"));
        for (at, from) in corners.iter().enumerate() {
            let to = corners.get(at + 1).or(corners.first());
            let to = to.map_or("", String::as_str);
            _ = writeln!(
                out,
                "[[edge]]\nfrom = \"{from}\"\nto = \"{to}\"\nis = \"wall\"\n"
            );
        }
        self.say(&mut out, msg!("new-survey-surface"));
        _ = writeln!(
            out,
            "[[surface]]\noutline = {}\nis = \"asphalt\"\ncondition = \"sound\"",
            list(corners)
        );
        for (message, example) in self.examples() {
            out.push('\n');
            self.say(&mut out, message);
            for line in example.lines() {
                _ = writeln!(out, "# {line}");
            }
        }
        out
    }

    /// Blocks to take the `#` from, with the sentence above each.
    fn examples(&self) -> [(Message, String); 9] {
        let of = |metres: &'static str, feet: &'static str| match self.units {
            Units::Metres => metres.to_owned(),
            Units::Feet => quoted(feet),
        };
        let (along, left) = (of("5.20", "17 ft 1 in"), of("1.35", "4 ft 5 in"));
        let (radius, pivot, platform) = (
            of("0.35", "14 in"),
            of("2.0", "6 ft 6 in"),
            of("1.2", "4 ft"),
        );
        [
            (
                msg!("new-survey-offset"),
                format!("[[offset]]\nline = [\"A\", \"B\"]\nalong = {along}\nleft = {left}\npoint = \"T\""),
            ),
            (
                msg!("new-survey-fixture"),
                format!("[[fixture]]\nname = \"oak\"\nis = \"tree\"\nat = \"T\"\nradius = {radius}"),
            ),
            (
                msg!("new-survey-swing"),
                format!(
                    "[[fixture]]\nname = \"swing\"\nis = \"swing\"\nbeam = [\"R\", \"S\"]\n\
                     pivot = {pivot}\nseat = \"belt\""
                ),
            ),
            (
                msg!("new-survey-slide"),
                format!(
                    "[[fixture]]\nname = \"slide\"\nis = \"slide\"\n\
                     outline = [\"S1\", \"S2\", \"S3\", \"S4\"]\nexit = [\"S1\", \"S2\"]\nheight = {platform}"
                ),
            ),
            (
                msg!("new-survey-door"),
                "[[door]]\nname = \"hall\"\nfrom = \"U\"\nto = \"V\"\nhinge = \"U\"\nopens = \"out\"".to_owned(),
            ),
            (msg!("new-survey-gate"), "[[gate]]\nname = \"street\"\nfrom = \"W\"\nto = \"X\"".to_owned()),
            (msg!("new-survey-route"), "[[route]]\nfrom = \"hall\"\nto = \"street\"".to_owned()),
            (msg!("new-survey-stand"), "[[stand]]\nat = \"Y\"".to_owned()),
            (
                msg!("new-survey-place"),
                "[place]\nlatitude = 42.1\nlongitude = -75.9\nzone = \"America/New_York\"".to_owned(),
            ),
        ]
    }

    fn children(&self) -> String {
        let mut out = String::new();
        self.say(&mut out, msg!("new-children"));
        let (height, jump) = match self.units {
            Units::Metres => ("98 cm", "55 cm"),
            Units::Feet => ("3 ft 2 1/2 in", "21 3/4 in"),
        };
        _ = writeln!(out, "# wren,2023-03,f,small,{height},,{jump},,,,");
        out.push_str(
            "id,born,sex,group,height,foot,jump_best,hops_right,hops_left,less_used,means\n",
        );
        out
    }

    fn programme(&self, usual: &Programme) -> String {
        let mut out = String::new();
        self.say(&mut out, msg!("new-programme"));
        _ = writeln!(out, "sessions_a_week = {}", usual.sessions_a_week);
        _ = writeln!(out, "minutes = {}", usual.minutes);
        _ = writeln!(out, "weeks = {}", usual.weeks);
        out.push_str("# starts = 2026-09-14\n");
        _ = writeln!(out, "staff = {}\n", usual.staff);
        self.say(&mut out, msg!("new-programme-ages"));
        out.push_str("# ages = { 3 = 8, 4 = 10 }\n\n");
        self.say(&mut out, msg!("new-programme-words"));
        out.push_str(match self.words.language() {
            Language::En => "# words = [\"cat\", \"sun\", \"map\"]\n\n",
            Language::Es => "# words = [\"sol\", \"pan\", \"luna\"]\n\n",
        });
        self.say(&mut out, msg!("new-programme-families"));
        out.push_str(
            "# [families]\n# wanted = [\"court\", \"brook\"]\n# refused = [\"spots\"]\n\n",
        );
        self.say(&mut out, msg!("new-programme-prices"));
        out.push_str(match self.units {
            Units::Metres => "# [prices]\n# paint = { \"0.75 L\" = 14, \"2.5 L\" = 35 }\n\n",
            Units::Feet => "# [prices]\n# paint = { \"1 qt\" = 18, \"1 gal\" = 46 }\n\n",
        });
        self.say(&mut out, msg!("new-programme-weights"));
        out.push_str("[weights]\n");
        for (skill, weight) in &usual.weights {
            _ = writeln!(out, "{} = {weight}", skill.word());
        }
        out.push('\n');
        self.say(&mut out, msg!("new-programme-build"));
        let build = &usual.building;
        _ = writeln!(
            out,
            "# [build]\n# people = {}\n# days = {}\n# from = {}\n# until = {}",
            build.people, build.days, build.hours[0], build.hours[1]
        );
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::write::write_new;

    fn answers(corners: usize, units: Units, language: Language) -> Answers {
        Answers {
            name: "Centro \"La Ñ\" \\ 7\n".to_owned(),
            units,
            language,
            paper: Paper::Letter,
            currency: "USD".to_owned(),
            date: Some(jiff::civil::date(2026, 9, 1)),
            corners,
            traced: None,
        }
    }

    /// Readings of the form, filled in as a regular yard's.
    fn filled(form: &str, corners: usize) -> String {
        let names = super::corners(corners);
        let place = |name: &str| {
            let at = names
                .iter()
                .position(|corner| corner == name)
                .expect("a corner") as f64;
            let turn = std::f64::consts::TAU * at / corners as f64;
            (12.0 * libm::cos(turn), 12.0 * libm::sin(turn))
        };
        let line = |line: &str| match line
            .strip_suffix(",,")
            .and_then(|pair| pair.split_once(','))
        {
            Some((from, to)) if !line.starts_with('#') => {
                let (a, b) = (place(from), place(to));
                format!("{from},{to},{:.4} m,", libm::hypot(a.0 - b.0, a.1 - b.1))
            }
            _ => line.to_owned(),
        };
        form.lines().map(line).collect::<Vec<_>>().join("\n")
    }

    #[test]
    fn a_fresh_folder_is_read_and_filled_in_it_is_a_yard() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        for (corners, units, language) in [
            (3, Units::Metres, Language::En),
            (4, Units::Feet, Language::En),
            (6, Units::Metres, Language::Es),
            (9, Units::Metres, Language::En),
            (30, Units::Feet, Language::Es),
        ] {
            let dir = tempfile::tempdir().expect("a folder");
            let mut outputs = new_folder(&answers(corners, units, language), &ledger)
                .value
                .expect("files");
            write_new(dir.path(), &outputs).expect("written");
            let read = crate::read(dir.path());
            let keys: Vec<&str> = read.notes.iter().map(|note| note.what.key).collect();
            assert_eq!(keys, ["tape-blank"], "{corners} corners: {:?}", read.notes);
            let project = read.value.expect("a project");
            assert_eq!(project.about.name, "Centro \"La Ñ\" \\ 7");
            assert_eq!(
                (project.about.units, project.about.language),
                (units, language)
            );
            assert_eq!(project.surveyed.boundary.len(), corners);
            // Untaped, it is no yard yet, and the survey says what to tape.
            let network = project.network.as_ref().expect("a network");
            let untaped = survey::adjust(network, &project.ledger);
            assert!(untaped.value.is_none() && note::any_error(&untaped.notes));

            let tape = outputs
                .iter_mut()
                .find(|output| output.path == "tape.csv")
                .expect("a tape sheet");
            let form = String::from_utf8(tape.bytes.clone()).expect("UTF-8");
            tape.bytes = filled(&form, corners).into_bytes();
            let dir = tempfile::tempdir().expect("a folder");
            write_new(dir.path(), &outputs).expect("written");
            let read = crate::read(dir.path());
            assert!(read.notes.is_empty(), "{:?}", read.notes);
            let project = read.value.expect("a project");
            let surveyed = survey::adjust(
                project.network.as_ref().expect("a network"),
                &project.ledger,
            );
            assert!(
                !note::any_error(&surveyed.notes),
                "{corners} corners: {:?}",
                surveyed.notes
            );
            let surveyed = surveyed.value.expect("a survey");
            let yard = crate::yard(&project, &surveyed).value.expect("a yard");
            // A regular polygon about a circle of 12 m: n/2 r² sin(2π/n).
            let n = corners as f64;
            let area = n / 2.0 * 144.0 * libm::sin(std::f64::consts::TAU / n);
            let ours = geo::Area::unsigned_area(&yard.boundary);
            // Readings stand to a tenth of a millimetre, the perimeter is under 76 m.
            assert!(
                (ours - area).abs() < 0.01,
                "{corners} corners: {ours} m², not {area}"
            );
        }
    }

    /// Taking the `#` away is all that an example needs, but for its points.
    #[test]
    fn every_example_is_read_when_its_mark_is_taken_away() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let example = |line: &&str| {
            let plain = line.strip_prefix("# ").unwrap_or("");
            let key = plain.split(" = ").next().unwrap_or("");
            plain.starts_with('[')
                || plain.starts_with("wren,")
                || key != plain && !key.trim_matches('"').contains(' ')
        };
        for (units, language) in [(Units::Metres, Language::Es), (Units::Feet, Language::En)] {
            let dir = tempfile::tempdir().expect("a folder");
            let mut uncovered = 0;
            let mut outputs = new_folder(&answers(4, units, language), &ledger)
                .value
                .expect("files");
            for output in &mut outputs {
                let text = String::from_utf8(output.bytes.clone()).expect("UTF-8");
                let (mut lines, mut rows) = (Vec::new(), Vec::new());
                for line in text.lines() {
                    if example(&line) {
                        uncovered += 1;
                        let into = if line.starts_with("# wren,") {
                            &mut rows
                        } else {
                            &mut lines
                        };
                        into.push(&line[2..]);
                    } else {
                        lines.push(line);
                    }
                }
                lines.extend(rows);
                output.bytes = (lines.join("\n") + "\n").into_bytes();
            }
            assert!(uncovered > 40, "only {uncovered} lines");
            write_new(dir.path(), &outputs).expect("written");
            let read = crate::read(dir.path());
            for note in &read.notes {
                let known =
                    ["point-unknown", "tape-blank", "ages-and-class"].contains(&note.what.key);
                assert!(known, "{note:?}");
            }
            let project = read.value.expect("a project");
            assert_eq!(
                (project.children.len(), project.surveyed.fixtures.len()),
                (1, 3)
            );
            assert_eq!(
                (
                    project.programme.prices.paint.len(),
                    project.programme.wanted.len()
                ),
                (2, 2)
            );
            assert_eq!(project.about.budget, Some(650.0));
        }
    }

    #[test]
    fn a_traced_survey_takes_the_place_of_the_form() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let text = include_str!("../real/play-yard.geojson");
        let traced = crate::from_outline("play-yard.geojson", text, &ledger, Language::Es)
            .value
            .expect("a yard");
        let answers = Answers {
            traced: Some(traced.survey),
            corners: 0,
            ..answers(4, Units::Feet, Language::Es)
        };
        let dir = tempfile::tempdir().expect("a folder");
        write_new(
            dir.path(),
            &new_folder(&answers, &ledger).value.expect("files"),
        )
        .expect("written");
        let read = crate::read(dir.path());
        let keys: Vec<&str> = read.notes.iter().map(|note| note.what.key).collect();
        assert_eq!(keys, ["tape-no-rows"], "{:?}", read.notes);
    }

    #[test]
    fn what_no_yard_has_is_refused() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        for (answers, key) in [
            (answers(2, Units::Metres, Language::En), "new-corners"),
            (answers(61, Units::Metres, Language::En), "new-corners"),
            (
                Answers {
                    name: " ".into(),
                    ..answers(4, Units::Metres, Language::En)
                },
                "name-empty",
            ),
        ] {
            let noted = new_folder(&answers, &ledger);
            assert_eq!((noted.value, noted.notes[0].what.key), (None, key));
        }
    }

    #[test]
    fn the_form_asks_for_more_than_fixes_the_shape() {
        for count in CORNERS {
            let corners = corners(count);
            let pairs = pairs(&corners);
            // A triangle's three sides fix it and no tape checks them; all else is checked.
            let spare = pairs.len() as i64 - (2 * count as i64 - 3);
            assert!(
                spare >= i64::from(count > 3),
                "{count} corners: {} readings",
                pairs.len()
            );
            let mut once = pairs.clone();
            once.sort_unstable();
            once.dedup();
            assert_eq!(once.len(), pairs.len());
        }
    }
}

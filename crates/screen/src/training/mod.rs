//! The course for staff: one page that stands alone, keeps nothing, and prints its papers.

mod asked;
mod papers;
mod practice;
mod skills;

use std::fmt::Write;

use children::Skill;
use course::{Painted, Rule, Stand, Table, Unled, figures};
use jiff::civil::Date;
use ledger::Ledger;
use motion::Model;
use note::{Message, msg};
use serde_json::{Value, json};

use crate::Tongue;
use crate::data::{self, Phrases};
use crate::page;
use crate::player;
use crate::svg::escape;

/// What the page says of a skill, in the reader's language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SkillText {
    /// The skill.
    pub skill: Skill,
    /// What it is.
    pub what: String,
    /// What a beginner looks like.
    pub early: Vec<String>,
    /// What practice makes of it.
    pub later: Vec<String>,
    /// The cue for everyone.
    pub cue: String,
    /// Name of an early form (`motion::EARLY`), and the cue that answers it.
    pub cues: Vec<(String, String)>,
    /// A first step towards it.
    pub easier: String,
    /// A next step.
    pub harder: String,
    /// Markings of this yard that train it, by name.
    pub figures: Vec<String>,
}

/// What the course needs of a yard. Every list may be empty: its part then says so, or is left
/// out.
#[derive(Clone, Copy, Debug)]
pub struct Course<'a> {
    /// The yard's name.
    pub yard: &'a str,
    /// Draws the clips of the practice.
    pub seed: u64,
    /// A text for each skill, in the order shown.
    pub texts: &'a [SkillText],
    /// Markings, for the order in which they are introduced.
    pub markings: &'a [Painted],
    /// The same or others, for free play.
    pub unled: &'a [Unled],
    /// Where an adult can stand in free play.
    pub stands: &'a [Stand],
    /// First day of the programme, for the coach's visits.
    pub start: Option<Date>,
}

const STYLE: &str = include_str!("course.css");
const SCRIPT: &str = include_str!("course.js");
/// Where the page's script wants the one that reckons agreement.
const AGREEMENT: &str = "//AGREEMENT";

/// Parts of the page: id and title.
const PARTS: [(&str, &str); 6] = [
    ("before", "course-before"),
    ("skills", "course-skills"),
    ("practice", "course-practice"),
    ("after", "course-after"),
    ("certificate", "course-certificate"),
    ("papers", "course-papers"),
];

/// The course as a page. The same input gives the same bytes.
pub fn course_page(course: &Course, tongue: &Tongue, ledger: &Ledger) -> String {
    let model = Model::of(ledger);
    let say = |key| escape(&tongue.word(key));
    let title = tongue.say(&msg!("course-title", yard = course.yard));
    let mut phrases = Phrases::default();
    let taught = skills::clips(course.texts, &mut phrases, tongue, &model, ledger);
    let rounds = practice::rounds(course.seed, &mut phrases, tongue, &model, ledger);
    let mut out = String::new();
    page::head(&mut out, &title, STYLE, tongue);
    _ = writeln!(out, "<p>{}</p>", say("course-intro"));
    _ = write!(out, "<nav aria-label=\"{}\"><ul>", say("course-nav"));
    for (id, key) in PARTS {
        _ = write!(out, "<li><a href=\"#{id}\">{}</a></li>", say(key));
    }
    out.push_str("</ul></nav>\n");
    asked::before(&mut out, tongue);
    skills::section(&mut out, course.texts, tongue);
    practice::section(&mut out, tongue, ledger);
    asked::after(&mut out, tongue);
    papers::certificate(&mut out, course.yard, tongue);
    papers::section(&mut out, course, tongue, ledger);
    _ = write!(
        out,
        "<p class=\"row\"><button type=\"button\" id=\"save\" class=\"main\">{}</button></p>\n\
         <p id=\"saved\" role=\"status\"></p>\n",
        say("course-save")
    );
    _ = write!(
        out,
        "</main>\n<footer>\n<p>{}</p>\n<p>{}</p>\n<p>{}</p>\n<p id=\"keys\">{}</p>\n",
        say("screen-model"),
        say("course-footer"),
        say("screen-height"),
        say("screen-keys")
    );
    page::figures(
        &mut out,
        tongue,
        ledger,
        &["motion.", "footfall.rate.", "course."],
    );
    let data = json!({
        "taught": taught,
        "rounds": rounds,
        "phrases": phrases.value(),
        "moments": data::moments(tongue),
        "grounds": [],
        "feet": data::feet(),
        "words": words(tongue, ledger),
        "rule": rule(ledger),
        "right": course::KNOWLEDGE.iter().map(|item| item.right).collect::<Vec<_>>(),
        "checks": checks(),
    });
    let script = SCRIPT.replace(AGREEMENT, include_str!("agreement.js"));
    page::foot(&mut out, &data, &script);
    out
}

fn rule(ledger: &Ledger) -> Value {
    let rule = Rule::of(ledger);
    json!({
        "agreement": rule.agreement,
        "kappa": rule.kappa,
        "inRow": rule.in_row,
        "half": rule.half_width,
        "bands": ledger.list(figures::BANDS),
        "sessions": ledger.number(figures::BESIDE),
    })
}

/// Tables with what the Rust of `course` makes of them, against which the page's own
/// reckoning can be held: agreement, kappa and AC1 with their intervals, pairs needed.
fn checks() -> Value {
    let tables = [
        [40, 9, 6, 45],
        [80, 10, 5, 5],
        [25, 35, 5, 35],
        [20, 5, 10, 15],
        [12, 0, 0, 30],
        [18, 3, 2, 20],
        [30, 0, 0, 0],
        [0, 10, 10, 0],
        [1, 0, 3, 2],
    ];
    let told = |got: Option<course::Estimate>| {
        got.map(|got| [got.value, got.se, got.low, got.high].to_vec())
    };
    tables
        .iter()
        .map(|[both, first, second, neither]| {
            let table = Table {
                both: *both,
                first: *first,
                second: *second,
                neither: *neither,
            };
            let rule = Rule {
                agreement: 0.8,
                kappa: 0.6,
                in_row: 1,
                half_width: 0.15,
            };
            let ready = course::ready(&[table], &rule);
            json!({
                "table": [both, first, second, neither],
                "agreement": told(course::agreement(&table)),
                "kappa": told(course::kappa(&table)),
                "ac1": told(course::ac1(&table)),
                "ready": ready.ready,
                "more": ready.more_pairs,
            })
        })
        .collect()
}

/// The sentences that the script fills, and those of the player.
fn words(tongue: &Tongue, ledger: &Ledger) -> Value {
    let mut words = player::words(tongue);
    let say = |message: Message| tongue.say(&message);
    let bands = ["poor", "good", "excellent"].map(|band| say(msg!("course-band", band = band)));
    let spot = |side: &'static str, hand: &'static str| {
        say(msg!(
            "course-spot",
            side = side,
            hand = hand,
            from = "%1",
            to = "%2",
            along = "%3",
            aside = "%4",
            toes = "%5"
        ))
    };
    let own = json!({
        "spots": {
            "R": [spot("R", "left"), spot("R", "right")],
            "L": [spot("L", "left"), spot("L", "right")],
        },
        "lacking": say(msg!("course-lacking", count = "%1")),
        "kept": say(msg!("course-kept")),
        "noBefore": say(msg!("course-no-before")),
        "gain": say(msg!("course-gain", before = "%1", after = "%2", gain = "%3")),
        "gainThen": say(msg!("course-gain-then", gain = "%1")),
        "gainClaim": say(msg!("course-gain-claim", gain = "%1")),
        "known": say(msg!("course-known", before = "%1", after = "%2", of = "%3")),
        "round": say(msg!("course-round-of", round = "%1", of = "%2")),
        "clip": say(msg!("course-clip-of", clip = "%1", of = "%2", skill = "%3")),
        "yes": say(msg!("course-yes")),
        "no": say(msg!("course-no")),
        "next": say(msg!("course-next")),
        "finish": say(msg!("course-finish")),
        "unmarked": say(msg!("course-unmarked", count = "%1")),
        "result": say(msg!("course-result", round = "%1")),
        "agree": say(msg!("course-agree", met = "%1", of = "%2", share = "%3", low = "%4", high = "%5")),
        "kappa": say(msg!("course-kappa", kappa = "%1", low = "%2", high = "%3", band = "%4")),
        "kappaNone": say(msg!("course-kappa-none")),
        "ac1": say(msg!("course-ac1", ac1 = "%1", low = "%2", high = "%3")),
        "bands": bands,
        "ready": say(msg!(
            "course-ready",
            rounds = "%1",
            sessions = ledger.number(figures::BESIDE).to_string()
        )),
        "notReady": say(msg!("course-not-ready", rounds = "%1")),
        "wantAgreement": say(msg!("course-want-agreement", got = "%1", wanted = "%2")),
        "wantKappa": say(msg!("course-want-kappa", got = "%1", wanted = "%2")),
        "more": say(msg!("course-more-pairs", half = "%1", pairs = "%2")),
        "close": say(msg!("course-close", half = "%1")),
        "marks": say(msg!("course-marks")),
        "line": say(msg!("course-line")),
        "yours": say(msg!("course-yours")),
        "truth": say(msg!("course-truth")),
        "same": say(msg!("course-same")),
        "differs": say(msg!("course-differs")),
        "look": say(msg!("course-look", clip = "%1", skill = "%2")),
        "looking": say(msg!("course-looking", clip = "%1", says = "%2")),
        "nextRound": say(msg!("course-next-round")),
        "again": say(msg!("course-again")),
        "saved": say(msg!("course-saved")),
    });
    if let (Value::Object(words), Value::Object(own)) = (&mut words, own) {
        words.extend(own);
    }
    words
}

/// A section of the page with its heading, opened.
fn open(out: &mut String, id: &str, key: &'static str, tongue: &Tongue) {
    let title = escape(&tongue.word(key));
    _ = write!(
        out,
        "<section id=\"{id}\" class=\"part\" aria-labelledby=\"{id}-title\">\n\
         <h2 id=\"{id}-title\" tabindex=\"-1\">{title}</h2>\n"
    );
}

/// A skill's name as a heading or label has it.
fn skill(skill: Skill, tongue: &Tongue) -> String {
    page::capital(&tongue.say(&msg!("page-gait", gait = skill.word())))
}

#[cfg(test)]
mod tests {
    use words::{Catalogue, Language};

    use super::*;

    fn page(yard: &str, language: Language) -> String {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let tongue = Tongue {
            catalogue: Catalogue::of(language),
            units: unit::Units::Metres,
        };
        let text = SkillText {
            skill: Skill::Hop,
            what: yard.to_owned(),
            early: vec![yard.to_owned()],
            later: Vec::new(),
            cue: yard.to_owned(),
            cues: vec![("taps".to_owned(), yard.to_owned())],
            easier: String::new(),
            harder: String::new(),
            figures: vec![yard.to_owned()],
        };
        let painted = Painted {
            name: yard.to_owned(),
            skill: Skill::Hop,
            well_pitched: 0.5,
        };
        let unled = Unled {
            name: yard.to_owned(),
            fast: true,
            run_out: false,
            meets: false,
            hard: false,
        };
        let course = Course {
            yard,
            seed: 3,
            texts: &[text],
            markings: &[painted],
            unled: &[unled],
            stands: &[],
            start: None,
        };
        course_page(&course, &tongue, &ledger)
    }

    #[test]
    fn the_page_stands_alone_and_is_the_same_every_time() {
        for language in Language::ALL {
            let text = page("Tern Street", language);
            assert_eq!(text, page("Tern Street", language));
            // a name space is no request
            let asks = text.replace("http://www.w3.org/2000/svg", "");
            for way in ["http:", "https:", "src=\"", "@import", "url(h", "url(/"] {
                assert!(!asks.contains(way), "the page asks for {way}");
            }
            for keeps in [
                "localStorage",
                "sessionStorage",
                "document.cookie",
                "fetch(",
            ] {
                assert!(!text.contains(keeps), "{keeps}");
            }
            assert!(text.len() < 1_500_000, "{} bytes", text.len());
        }
    }

    #[test]
    fn no_sentence_is_missing() {
        for language in Language::ALL {
            let text = page("Tern Street", language);
            for key in [
                "course-sees",
                "course-fault",
                "course-can",
                "course-know",
                "motion-",
            ] {
                assert!(!text.contains(key), "{key}");
            }
            for key in ["course-", "screen-", "page-"] {
                for before in ['>', '"'] {
                    let found = text.find(&format!("{before}{key}"));
                    assert_eq!(found.map(|at| &text[at..at + 40]), None);
                }
            }
            // no gap of a sentence is left open
            assert!(!text.contains("{$") && !text.contains("{ $"));
        }
    }

    #[test]
    fn a_name_cannot_become_markup() {
        let text = page("</script><img src=x onerror=alert(1)>\"'&", Language::En);
        assert!(!text.contains("<img"));
        assert_eq!(text.matches("</script>").count(), 2, "ours alone");
    }

    #[test]
    fn an_empty_yard_still_has_a_course() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let tongue = Tongue {
            catalogue: Catalogue::of(Language::Es),
            units: unit::Units::Feet,
        };
        let course = Course {
            yard: "",
            seed: 0,
            texts: &[],
            markings: &[],
            unled: &[],
            stands: &[],
            start: None,
        };
        let text = course_page(&course, &tongue, &ledger);
        assert!(text.ends_with("</html>\n") && text.contains("id=\"visit\""));
        assert!(!text.contains("id=\"order\""));
    }
}

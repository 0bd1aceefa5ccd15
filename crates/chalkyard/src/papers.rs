//! What a run prints: papers and drawings, as files for the way out.

use document::drawing::yard::Plan;
use document::planned::taught::Teaching;
use document::planned::{self, AtBudget, Planned};
use document::sheet::{Paper, Sheet};
use jiff::ToSpan;
use marking::Figure;
use note::{Note, msg};
use plan::Plan as Record;
use project::write::Output;
use project::{About, Project};
use rayon::prelude::*;
use setout::SetOut;
use words::Catalogue;

use crate::building::Built;
use crate::outcome::Fault;
use crate::planning::{Class, Planned as Choice};
use crate::survey::Surveyed;
use crate::teaching::Taught;

/// The survey's report, drawing and tape sheet.
pub fn survey(walked: &Surveyed, notes: &[Note], large: bool) -> Result<Vec<Output>, Fault> {
    let project = &walked.project;
    let date = date(&project.about);
    let sheet = sheet(project, &date, large);
    let mut outputs = Vec::new();
    if let (Some(yard), Some(ground)) = (&walked.yard, &walked.ground) {
        let plan = Plan {
            yard,
            ground,
            survey: walked.survey.as_ref(),
        };
        let drawn = document::plan_sheet::draw(&sheet, &plan, &project.ledger);
        outputs.push(Output::new(
            "out/yard.svg",
            document::drawing::svg::alone(&drawn.scene, &drawn.told),
        ));
        let report = document::survey_report::survey_report(&sheet, &plan, notes, &project.ledger);
        outputs.push(Output::new("out/survey-report.pdf", report.map_err(fault)?));
    }
    if let Some(network) = &project.network {
        let tape = document::tape_sheet::tape_sheet(
            &sheet,
            network,
            walked.survey.as_ref(),
            &project.ledger,
        );
        outputs.push(Output::new("out/tape-sheet.pdf", tape.map_err(fault)?));
    }
    Ok(outputs)
}

fn sheet<'a>(project: &'a Project, date: &'a str, large: bool) -> Sheet<'a> {
    let about = &project.about;
    Sheet {
        name: &about.name,
        language: about.language,
        units: about.units,
        paper: match about.paper {
            project::Paper::A4 => Paper::A4,
            project::Paper::Letter => Paper::Letter,
        },
        date,
        large,
        north: project.surveyed.north,
        credit: project.surveyed.credit.as_deref(),
        assumed: &project.surveyed.assumed,
    }
}

/// The project's date; never the clock's, so that the same folder gives the same paper.
fn date(about: &About) -> String {
    about
        .date
        .map_or_else(|| "—".to_owned(), |date| date.to_string())
}

fn fault(fault: document::typeset::Fault) -> Fault {
    Fault(fault.to_string())
}

/// The plan's papers, its drawing, and what to try before paint.
pub fn plan(
    walked: &Surveyed,
    class: &Class,
    choice: &Choice,
    record: &Record,
    built: Option<&Built>,
    taught: Option<&Taught>,
    large: bool,
) -> Result<Vec<Output>, Fault> {
    let project = &walked.project;
    let date = date(&project.about);
    let sheet = sheet(project, &date, large);
    let (Some(yard), Some(ground)) = (&walked.yard, &walked.ground) else {
        return Ok(Vec::new());
    };
    let figures: Vec<Figure> = choice
        .plan
        .placed
        .iter()
        .filter_map(|placed| choice.candidates.get(placed.candidate))
        .map(|candidate| candidate.figure.clone())
        .collect();
    let curve: Vec<AtBudget> = choice
        .curve
        .iter()
        .map(|worth| AtBudget {
            budget: worth.budget,
            value: worth.value,
            bound: worth.bound,
        })
        .collect();
    let told = Planned {
        yard: Plan {
            yard,
            ground,
            survey: walked.survey.as_ref(),
        },
        record,
        figures: &figures,
        surface: class.look.palette.ground,
        money: &project.about.currency,
        budget: project.about.budget,
        sessions: (project.programme.sessions_a_week, project.programme.minutes),
        curve: &curve,
        in_colour: true,
        ledger: &project.ledger,
    };
    let drawn = planned::plan_drawing(&sheet, &told);
    let svg = document::drawing::svg::alone(&drawn.scene, &drawn.told);
    let mut outputs = vec![Output::new("out/plan.svg", svg)];
    let skies: Vec<planned::day::Sky> = built
        .into_iter()
        .flat_map(|built| &built.skies)
        .map(|sky| planned::day::Sky {
            place: &sky.place,
            year: sky.year.as_ref(),
            windows: &sky.windows,
        })
        .collect();
    let build = built.map(|built| planned::day::Build {
        setout: &built.setout,
        stencils: &built.stencils,
        sheets: built.sheets.len(),
        shopping: &built.shopping,
        upkeep: &built.upkeep,
        crew: built.crew.as_ref(),
        people: project.programme.building.people,
        skies: &skies,
    });
    let starts = project.programme.starts;
    let starts = starts.map_or_else(String::new, |date| date.to_string());
    let teaching = taught
        .zip(record.teach.as_ref())
        .map(|(taught, teach)| Teaching {
            teach,
            games: &taught.games,
            starts: &starts,
            fits: &taught.fits,
        });
    let mut presses: Vec<(&str, Press)> = vec![
        (
            "out/plan.pdf",
            Box::new(|| planned::plan_papers(&sheet, &told, &drawn)),
        ),
        (
            "out/trial.pdf",
            Box::new(|| planned::trial_papers(&sheet, &told)),
        ),
        (
            "out/office.pdf",
            Box::new(|| planned::office_papers(&sheet, &told, built.map(|built| &built.upkeep))),
        ),
    ];
    if let Some(build) = &build {
        presses.push((
            "out/set-out.pdf",
            Box::new(|| planned::setout_papers(&sheet, &told, &drawn, build.setout)),
        ));
        presses.push((
            "out/build-day.pdf",
            Box::new(|| planned::day_papers(&sheet, &told, &drawn, build)),
        ));
    }
    if let Some(teaching) = &teaching {
        presses.push((
            "out/cards.pdf",
            Box::new(|| planned::card_papers(&sheet, &told, teaching)),
        ));
        presses.push((
            "out/weeks.pdf",
            Box::new(|| planned::week_papers(&sheet, &told, &drawn, teaching)),
        ));
    }
    let printed: Result<Vec<Output>, document::typeset::Fault> = presses
        .into_par_iter()
        .map(|(path, press)| Ok(Output::new(path, press()?)))
        .collect();
    outputs.extend(printed.map_err(fault)?);
    Ok(outputs)
}

/// What sets one paper.
type Press<'a> = Box<dyn Fn() -> Result<Vec<u8>, document::typeset::Fault> + Send + Sync + 'a>;

/// The check readings that the set-out sheet asks for, to be copied and filled in. What they
/// should read stands on paper only: who knows it reads what he expects.
pub fn checks(project: &Project, setout: &SetOut) -> Output {
    let mut text = format!(
        "# {}\nfrom,to,reading,note\n",
        Catalogue::of(project.about.language).say(&msg!("checks-csv-head"), project.about.units)
    );
    for asked in setout::checks(setout) {
        text += &format!("{},{},,\n", asked.from, asked.to);
    }
    Output::new("out/checks.csv", text)
}

/// What a cutter reads: sheets and stencils, as DXF (R12 on demand, too) and as SVG.
pub fn cut(project: &Project, built: &Built, r12: bool) -> Vec<Output> {
    let catalogue = Catalogue::of(project.about.language);
    let units = project.about.units;
    let word = |key| catalogue.word(key);
    let names = built
        .stencils
        .stencils
        .iter()
        .map(|one| {
            let (motif, glyph) = match &one.motif {
                stencil::Motif::Glyph(text) => ("glyph", text.as_str()),
                other => (other.word(), ""),
            };
            let colours: Vec<String> = one
                .colours
                .iter()
                .map(|colour| word(document::planned::painter::paint_key(*colour)))
                .collect();
            let shows = catalogue.say(&msg!("day-motif", motif = motif, glyph = glyph), units);
            format!("{shows}, {}", colours.join(" + "))
        })
        .collect();
    let texts = cutfile::Texts {
        units: word("cut-units"),
        square: word("cut-square"),
        side_up: word("cut-side-up"),
        names,
    };
    let versions = [cutfile::Version::R2000, cutfile::Version::R12];
    let mut files: Vec<cutfile::CutFile> = versions
        .iter()
        .take(if r12 { 2 } else { 1 })
        .flat_map(|version| {
            let (stencils, sheets) = (&built.stencils, &built.sheets);
            cutfile::files(stencils, sheets, &texts, *version, &project.ledger)
        })
        .collect();
    // the SVG of both is the same file
    files.sort_by(|a, b| a.name.cmp(&b.name));
    files.dedup_by(|a, b| a.name == b.name);
    files
        .into_iter()
        .map(|file| Output::new(format!("out/cut/{}", file.name), file.bytes))
        .collect()
}

/// Each stencil at 1:1 on pages to be glued together, for who has no cutter.
pub fn tiled(project: &Project, built: &Built) -> Result<Vec<Output>, Fault> {
    let date = date(&project.about);
    let sheet = sheet(project, &date, false);
    let stencils = &built.stencils.stencils;
    let printed: Result<Vec<Output>, document::typeset::Fault> = stencils
        .par_iter()
        .map(|one| {
            let pdf = planned::tiled_papers(&sheet, one, &project.ledger)?;
            let path = format!("out/cut/stencil-{}-{}-1to1.pdf", one.id, one.motif.slug());
            Ok(Output::new(path, pdf))
        })
        .collect();
    printed.map_err(fault)
}

/// Windows of the forecasts as a calendar file; none where no forecast has any.
pub fn calendar(project: &Project, built: &Built) -> Option<Output> {
    let catalogue = Catalogue::of(project.about.language);
    let summary = catalogue.say(
        &msg!("cut-window", name = &project.about.name),
        project.about.units,
    );
    let description: Vec<String> = days::cautions(&project.ledger)
        .iter()
        .map(|caution| catalogue.say(caution, project.about.units))
        .collect();
    let entries: Vec<days::Entry> = built
        .skies
        .iter()
        .flat_map(|sky| &sky.windows)
        .filter(|window| window.verdict == days::Verdict::Fine)
        .map(|window| days::Entry {
            start: window.start,
            end: window.end,
            summary: summary.clone(),
            description: description.join("\n"),
        })
        .collect();
    let date = project.about.date.filter(|_| !entries.is_empty())?;
    let text = days::calendar(&project.about.name, date, &entries);
    Some(Output::new("out/painting-days.ics", text))
}

/// The sessions as a calendar file; none where nobody says when they start.
pub fn sessions(project: &Project, taught: &Taught) -> Option<Output> {
    let starts = project.programme.starts?;
    let catalogue = Catalogue::of(project.about.language);
    let units = project.about.units;
    let each = taught.programme.week.sessions.max(1);
    let entries: Vec<days::Entry> = taught
        .plan
        .sessions
        .iter()
        .filter(|session| session.outing == 0 && !session.slots.is_empty())
        .filter_map(|session| {
            /// Monday to Friday, from the first day of the week on.
            const LAST: u32 = 4;
            let day = (session.when.session - 1) * LAST / (each - 1).max(1);
            let days = i64::from((session.when.week - 1) * 7 + day.min(LAST));
            let date = starts.checked_add(days.days()).ok()?;
            let hour = project.ledger.number(HOUR).clamp(0.0, 23.0) as i8;
            let start = date.at(hour, 0, 0, 0);
            let minutes = taught.programme.week.minutes.round() as i64;
            let first = session.slots.first().map_or(0, Vec::len);
            Some(days::Entry {
                start,
                end: start.checked_add(minutes.minutes()).ok()?,
                summary: catalogue.say(
                    &msg!(
                        "teach-session",
                        name = &project.about.name,
                        week = u64::from(session.when.week),
                        session = u64::from(session.when.session)
                    ),
                    units,
                ),
                description: catalogue.say(&msg!("teach-session-told", groups = first), units),
            })
        })
        .collect();
    let date = project.about.date.filter(|_| !entries.is_empty())?;
    let text = days::calendar(&project.about.name, date, &entries);
    Some(Output::new("out/sessions.ics", text))
}

ledger::figures! {
    /// When a session begins, hours of the clock.
    pub HOUR = "programme.hour";
}

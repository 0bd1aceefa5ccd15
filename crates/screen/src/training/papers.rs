//! What goes on when the course is over: papers to print, each with a button of its own.

use std::fmt::Write;

use course::{CORE, Kind, figures, free_play, induction, introduce, visits};
use jiff::civil::Date;
use ledger::Ledger;
use note::msg;

use super::{Course, open, skill};
use crate::Tongue;
use crate::svg::escape;

/// Empty columns of the fidelity sheet.
const COLUMNS: usize = 6;

pub fn certificate(out: &mut String, yard: &str, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    open(out, "certificate", "course-certificate", tongue);
    _ = writeln!(out, "<p>{}</p>", say("course-certificate-says"));
    for (id, key) in [
        ("who", "course-name"),
        ("where", "course-place"),
        ("when", "course-day"),
    ] {
        // no name attribute: nothing that a browser could keep or send
        _ = writeln!(
            out,
            "<p class=\"field\"><label for=\"{id}\">{}</label><input type=\"text\" id=\"{id}\" autocomplete=\"off\" spellcheck=\"false\"></p>",
            say(key)
        );
    }
    _ = writeln!(
        out,
        "<div class=\"paper award\" id=\"award\"><h3>{}</h3><p class=\"said\" id=\"said-who\"></p><p>{}</p><p>{}</p>\
         <p class=\"signed\"><span>{}: <span id=\"said-where\"></span></span><span>{}: <span id=\"said-when\"></span></span>\
         <span>{}:</span></p><p>{}</p></div>",
        say("course-certificate"),
        escape(&tongue.say(&msg!("course-attended", yard = yard))),
        say("course-contents"),
        say("course-place"),
        say("course-day"),
        say("course-signature"),
        say("course-attended-only"),
    );
    print(out, "award", &tongue.word("course-certificate"), tongue);
    out.push_str("</section>\n");
}

fn print(out: &mut String, paper: &str, what: &str, tongue: &Tongue) {
    _ = writeln!(
        out,
        "<p class=\"row\"><button type=\"button\" class=\"print\" data-paper=\"{paper}\">{}</button></p>",
        escape(&tongue.say(&msg!("course-print-this", what = what)))
    );
}

/// A paper, opened; closed by [`close`].
fn paper(out: &mut String, id: &str, title: &str) {
    _ = writeln!(
        out,
        "<section class=\"paper\" id=\"{id}\" aria-labelledby=\"{id}-title\"><h3 id=\"{id}-title\">{}</h3>",
        escape(title)
    );
}

fn close(out: &mut String, id: &str, title: &str, tongue: &Tongue) {
    out.push_str("</section>\n");
    print(out, id, title, tongue);
}

pub fn section(out: &mut String, course: &Course, tongue: &Tongue, ledger: &Ledger) {
    open(out, "papers", "course-papers", tongue);
    starting(out, tongue, ledger);
    visit(out, course.start, tongue, ledger);
    fidelity(out, tongue, ledger);
    if !course.markings.is_empty() {
        order(out, course, tongue);
    }
    if !course.unled.is_empty() {
        free(out, course, tongue);
    }
    out.push_str("</section>\n");
}

fn starting(out: &mut String, tongue: &Tongue, ledger: &Ledger) {
    let steps = induction(ledger);
    let all: f64 = steps.iter().map(|step| step.minutes).sum();
    let title = tongue.say(&msg!("course-induction", minutes = all.to_string()));
    paper(out, "induction", &title);
    out.push_str("<ol>");
    for step in &steps {
        let minutes = tongue.say(&msg!("course-minutes", minutes = step.minutes.to_string()));
        _ = write!(
            out,
            "<li><strong>{}</strong> {}</li>",
            escape(&minutes),
            escape(&tongue.word(step.says))
        );
    }
    out.push_str("</ol>\n");
    close(out, "induction", &title, tongue);
}

/// A core item as a sentence.
fn item(at: usize, tongue: &Tongue, ledger: &Ledger) -> String {
    let Some(item) = CORE.get(at) else {
        return String::new();
    };
    let key = match item.name {
        "moving" => figures::MOVING,
        _ => figures::WAIT,
    };
    let seconds = ledger.number(key).to_string();
    escape(&tongue.say(&msg!(item.says, seconds = seconds)))
}

fn visit(out: &mut String, start: Option<Date>, tongue: &Tongue, ledger: &Ledger) {
    let say = |key| escape(&tongue.word(key));
    let title = tongue.word("course-visit-sheet");
    paper(out, "visit", &title);
    let minutes = |key| ledger.number(key).to_string();
    _ = writeln!(
        out,
        "<p>{}</p>",
        escape(&tongue.say(&msg!(
            "course-visit-says",
            watch = minutes(figures::COACH_WATCH),
            talk = minutes(figures::COACH_TALK)
        )))
    );
    _ = write!(
        out,
        "<table class=\"sheet\"><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th><th scope=\"col\">{}</th></tr></thead><tbody>",
        say("course-core"),
        say("course-seen-yes"),
        say("course-seen-no")
    );
    for at in 0..CORE.len() {
        _ = write!(
            out,
            "<tr><th scope=\"row\">{}</th><td class=\"box\"></td><td class=\"box\"></td></tr>",
            item(at, tongue, ledger)
        );
    }
    out.push_str("</tbody></table>\n<dl class=\"blanks\">");
    for key in [
        "course-done-last",
        "course-agreed",
        "course-next-date",
        "course-travel",
    ] {
        _ = write!(out, "<dt>{}</dt><dd></dd>", say(key));
    }
    _ = write!(out, "</dl>\n<h4>{}</h4>\n", say("course-visits"));
    // without a start the days are left open
    let any = Date::constant(2000, 1, 1);
    out.push_str("<ul>");
    for visit in visits(start.unwrap_or(any), ledger) {
        let (kind, count) = match visit.kind {
            Kind::Together => ("together", 0),
            Kind::Week(week) => ("week", week),
            Kind::Month(month) => ("month", month),
        };
        let what = tongue.say(&msg!(
            "course-visit-kind",
            kind = kind,
            count = count.to_string()
        ));
        let day = start.map_or_else(|| "____________".to_owned(), |_| day(visit.date, tongue));
        _ = write!(out, "<li>{}: {day}</li>", escape(&what));
    }
    out.push_str("</ul>\n");
    if start.is_none() {
        _ = writeln!(out, "<p>{}</p>", say("course-visit-no-date"));
    }
    close(out, "visit", &title, tongue);
}

fn day(date: Date, tongue: &Tongue) -> String {
    let part = |value: i8| u8::try_from(value).unwrap_or(1);
    words::number::date(
        i32::from(date.year()),
        part(date.month()),
        part(date.day()),
        tongue.catalogue.language(),
    )
}

fn fidelity(out: &mut String, tongue: &Tongue, ledger: &Ledger) {
    let say = |key| escape(&tongue.word(key));
    let title = tongue.word("course-fidelity");
    paper(out, "fidelity", &title);
    let share = |key| format!("{:.0}", 100.0 * ledger.number(key));
    _ = writeln!(
        out,
        "<p>{}</p>",
        escape(&tongue.say(&msg!(
            "course-fidelity-says",
            core = share(figures::GREEN_CORE),
            strict = share(figures::GREEN_STRICT)
        )))
    );
    _ = writeln!(
        out,
        "<p>{}</p>",
        escape(&tongue.say(&msg!(
            "course-fidelity-parts",
            reach = share(figures::GREEN_REACH),
            adherence = share(figures::GREEN_ADHERENCE)
        )))
    );
    _ = write!(
        out,
        "<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"{}\"><table class=\"sheet\"><thead><tr><th scope=\"col\">{}</th>",
        escape(&title),
        say("course-core")
    );
    for column in 1..=COLUMNS {
        _ = write!(
            out,
            "<th scope=\"col\">{} {column}</th>",
            say("course-session")
        );
    }
    out.push_str("</tr></thead><tbody>");
    for at in 0..CORE.len() {
        _ = write!(
            out,
            "<tr><th scope=\"row\">{}</th>{}</tr>",
            item(at, tongue, ledger),
            "<td class=\"box\"></td>".repeat(COLUMNS)
        );
    }
    out.push_str("</tbody></table></div>\n<dl class=\"blanks\">");
    for key in ["course-planned", "course-held", "course-designed"] {
        _ = write!(out, "<dt>{}</dt><dd></dd>", say(key));
    }
    _ = writeln!(out, "</dl>\n<p>{}</p>", say("course-fidelity-lost"));
    close(out, "fidelity", &title, tongue);
}

fn order(out: &mut String, course: &Course, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    let title = tongue.word("course-order");
    paper(out, "order", &title);
    _ = write!(
        out,
        "<p>{}</p>\n<table class=\"sheet\"><thead><tr><th scope=\"col\">{}</th><th scope=\"col\">{}</th><th scope=\"col\">{}</th></tr></thead><tbody>",
        say("course-order-says"),
        say("course-marking"),
        say("course-skill"),
        say("course-pitched")
    );
    for (at, turn) in introduce(course.markings).iter().enumerate() {
        let Some(marking) = course.markings.get(turn.marking) else {
            continue;
        };
        let mut what = skill(marking.skill, tongue);
        if !turn.first.is_empty() {
            let names: Vec<String> = turn
                .first
                .iter()
                .map(|one| tongue.say(&msg!("page-gait", gait = one.word())))
                .collect();
            _ = write!(
                what,
                " ({})",
                tongue.say(&msg!("course-order-first", skills = names))
            );
        }
        _ = write!(
            out,
            "<tr><th scope=\"row\">{}. {}</th><td>{}</td><td>{:.0} %</td></tr>",
            at + 1,
            escape(&marking.name),
            escape(&what),
            100.0 * marking.well_pitched
        );
    }
    out.push_str("</tbody></table>\n");
    close(out, "order", &title, tongue);
}

fn free(out: &mut String, course: &Course, tongue: &Tongue) {
    let say = |key| escape(&tongue.word(key));
    let title = tongue.word("course-free");
    paper(out, "free", &title);
    let play = free_play(course.unled, course.stands);
    let name = |at: usize| course.unled.get(at).map_or("", |marking| &marking.name);
    let stand = play.stand.and_then(|at| course.stands.get(at));
    match stand.filter(|_| !play.open.is_empty()) {
        Some(stand) => {
            _ = writeln!(
                out,
                "<p>{}</p>\n<h4>{}</h4>\n<ul>",
                escape(&tongue.say(&msg!("course-free-stand", stand = &stand.name))),
                say("course-free-open")
            );
            for at in &play.open {
                _ = write!(out, "<li>{}</li>", escape(name(*at)));
            }
            out.push_str("</ul>\n");
        }
        None => {
            _ = writeln!(out, "<p>{}</p>", say("course-free-none"));
        }
    }
    if !play.out.is_empty() {
        _ = write!(out, "<h4>{}</h4>\n<ul>", say("course-free-out"));
        for (at, why) in &play.out {
            let why: Vec<String> = why
                .iter()
                .map(|why| tongue.say(&msg!("course-free-why", why = why.word())))
                .collect();
            _ = write!(
                out,
                "<li>{}: {}</li>",
                escape(name(*at)),
                escape(&why.join("; "))
            );
        }
        out.push_str("</ul>\n");
    }
    _ = writeln!(out, "<p>{}</p>", say("course-free-care"));
    close(out, "free", &title, tongue);
}

//! From a tape measure to a painted yard.
//!
//! The rim of the house: parse, call, show. A verb reads the folder, walks the value
//! through the rooms, shows what was noticed, and lets all its files out in one go. No
//! rule of the trade lives here.

mod building;
mod command;
mod outcome;
mod papers;
mod planning;
mod screens;
mod setting;
mod survey;
mod teaching;
mod tell;
mod verbs;

use std::io::Write;
use std::process::ExitCode;

use clap::{CommandFactory, Parser};
use ledger::Ledger;

use crate::command::{Command, Verb};
use crate::outcome::{Fault, OUR_FAULT, Outcome};

/// The rooms make and drop small vectors by the million.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    let Command { verb, manner } = Command::parse();
    let done = match verb {
        Verb::New(asked) => verbs::new::new(&asked, manner),
        Verb::Check(folder) => verbs::check::check(&folder.dir, manner),
        Verb::Survey(asked) => verbs::survey::survey(&asked, manner),
        Verb::Plan(asked) => verbs::plan::plan(&asked, manner),
        Verb::Audit(folder) => verbs::audit::audit(&folder.dir, manner),
        Verb::Sources(asked) => verbs::sources::sources(&asked, manner),
        Verb::Completions { shell } => {
            clap_complete::generate(
                shell,
                &mut Command::command(),
                "chalkyard",
                &mut std::io::stdout(),
            );
            Ok(Outcome::Done)
        }
        Verb::Manual => clap_mangen::Man::new(Command::command())
            .render(&mut std::io::stdout())
            .map(|()| Outcome::Done)
            .map_err(|why| Fault(why.to_string())),
    };
    match done {
        Ok(outcome) => outcome.into(),
        Err(Fault(why)) => {
            let _ = writeln!(std::io::stderr(), "chalkyard: {why}");
            ExitCode::from(OUR_FAULT)
        }
    }
}

/// The ledger as shipped.
fn shipped() -> Result<Ledger, Fault> {
    Ledger::shipped().map_err(|why| {
        Fault(format!(
            "the ledger that came with the program is broken: {why}"
        ))
    })
}

//! The command line: one definition makes the parsing, the help, the completions and
//! the manual page.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use clap_complete::Shell;

/// From a tape measure to a painted yard that children learn on.
///
/// Survey a preschool yard with a tape, see what may be painted and why the rest may not,
/// and get it on paper. Nothing ever needs the internet.
#[derive(Debug, Parser)]
#[command(
    name = "chalkyard",
    version,
    after_help = "Exit status: 0 done; 1 done, and something does not hold; 2 the input is wrong; 3 our fault."
)]
pub struct Command {
    #[command(subcommand)]
    pub verb: Verb,
    #[command(flatten)]
    pub manner: Manner,
}

/// How to talk.
#[derive(Args, Clone, Copy, Debug)]
pub struct Manner {
    /// Print what was found as JSON, for programs
    #[arg(long, global = true)]
    pub json: bool,
    /// Print nothing but errors, for scripts
    #[arg(long, global = true)]
    pub quiet: bool,
}

#[derive(Debug, Subcommand)]
pub enum Verb {
    /// Make a project folder, from a few questions or from nothing
    New(New),
    /// Read everything; say what is wrong or missing
    Check(Folder),
    /// Adjust the readings; a report and a picture
    Survey(Survey),
    /// Every stage to out/: the plan, its drawings and papers
    Plan(Plan),
    /// Hold a layout that people moved against the rules
    Audit(Folder),
    /// Print and search the ledger: every figure, its unit, source and standing
    Sources(Sources),
    /// Print shell completions
    #[command(hide = true)]
    Completions {
        /// For which shell
        shell: Shell,
    },
    /// Print the manual page
    #[command(hide = true)]
    Manual,
}

/// A project folder.
#[derive(Args, Debug)]
pub struct Folder {
    /// The project folder
    #[arg(default_value = ".", value_name = "DIR")]
    pub dir: PathBuf,
}

#[derive(Args, Debug)]
pub struct New {
    /// The folder to make
    #[arg(value_name = "DIR")]
    pub dir: PathBuf,
    /// The centre's name; asked for when left out
    #[arg(long)]
    pub name: Option<String>,
    /// Lengths in metres (m) or feet (ft)
    #[arg(long)]
    pub units: Option<Unit>,
    /// The language of papers and messages
    #[arg(long)]
    pub language: Option<Tongue>,
    /// The paper in the printer
    #[arg(long)]
    pub paper: Option<Paper>,
    /// How many corners the yard has
    #[arg(long, value_name = "COUNT")]
    pub corners: Option<usize>,
    /// An outline in WGS 84 GeoJSON to start from: its points become `known`
    #[arg(long, value_name = "FILE")]
    pub outline: Option<PathBuf>,
    /// Ask nothing: take what is usual where nothing is said
    #[arg(long)]
    pub yes: bool,
}

#[derive(Args, Debug)]
pub struct Survey {
    #[command(flatten)]
    pub folder: Folder,
    /// Papers at 1.4 times the size
    #[arg(long)]
    pub large: bool,
}

#[derive(Args, Debug)]
pub struct Plan {
    #[command(flatten)]
    pub folder: Folder,
    /// Papers at 1.4 times the size
    #[arg(long)]
    pub large: bool,

    /// Also print each stencil at 1:1, tiled for the project's paper
    #[arg(long)]
    pub tiled: bool,

    /// Also write the cut files as DXF R12, for cutters that know nothing newer
    #[arg(long)]
    pub r12: bool,
    /// The most that may be spent, in place of the project's budget
    #[arg(long, value_name = "MONEY")]
    pub budget: Option<f64>,
}

#[derive(Args, Debug)]
pub struct Sources {
    /// Words to search for in keys, meanings and sources
    #[arg(value_name = "WORD")]
    pub words: Vec<String>,
    /// Show the figures as this project replaces them
    #[arg(long, value_name = "DIR")]
    pub project: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Unit {
    M,
    Ft,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Tongue {
    En,
    Es,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Paper {
    A4,
    Letter,
}

//! The plan of the days.

use marking::Colour;

/// What a task is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Sweep and wash.
    Sweep,
    /// Roll the primer.
    Prime,
    /// Set out.
    SetOut,
    /// Mask lines.
    Mask,
    /// One coat of one colour, with its stencil or its edges.
    Coat,
    /// Clean up at the end of a day.
    Clean,
}

impl Kind {
    /// The word of files; `crew-kind-` and this word is its name in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Kind::Sweep => "sweep",
            Kind::Prime => "prime",
            Kind::SetOut => "set-out",
            Kind::Mask => "mask",
            Kind::Coat => "coat",
            Kind::Clean => "clean",
        }
    }
}

/// A part of a coat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// Place and tape the stencil.
    Place,
    /// Cut in edges.
    Edge,
    /// Roll.
    Roll,
    /// Lift, wipe and carry the stencil.
    Lift,
    /// Pull the tape.
    Pull,
}

impl Step {
    /// The word of files; `crew-step-` and this word is its name in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Step::Place => "place",
            Step::Edge => "edge",
            Step::Roll => "roll",
            Step::Lift => "lift",
            Step::Pull => "pull",
        }
    }
}

/// Time for one step, over all placements of the stencil together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// The step.
    pub step: Step,
    /// Seconds at a practised pace.
    pub seconds: i64,
}

/// Why a task waits for another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// It comes after.
    Order,
    /// The paint, or the washed ground, has to dry.
    Drying,
    /// It would be done beside wet paint, or wet paint beside it.
    Beside,
    /// The people are busy.
    People,
    /// The measuring tapes are in use.
    Tapes,
    /// The stencil is in use.
    Stencil,
    /// Wet paint closes the way out.
    WayOut,
}

impl Why {
    /// The word of files; `crew-why-` and this word is its name in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Why::Order => "order",
            Why::Drying => "drying",
            Why::Beside => "beside",
            Why::People => "people",
            Why::Tapes => "tapes",
            Why::Stencil => "stencil",
            Why::WayOut => "way-out",
        }
    }
}

/// What a task waits for: that which ends, or dries, as it begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Waited {
    /// Number of the other task.
    pub task: usize,
    /// Why.
    pub why: Why,
}

/// One bar of the chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// What it is.
    pub kind: Kind,
    /// Number of the marking; none for cleaning up.
    pub marking: Option<usize>,
    /// The colour of a coat or of its masking.
    pub colour: Option<Colour>,
    /// Which coat, from 1; 0 for what is no coat.
    pub coat: u32,
    /// Number of the stencil.
    pub stencil: Option<usize>,
    /// Who does it: numbers from 0.
    pub people: Vec<usize>,
    /// Number of the day.
    pub day: usize,
    /// Seconds from the first midnight.
    pub start_s: i64,
    /// Seconds from the first midnight.
    pub end_s: i64,
    /// The steps of a coat.
    pub parts: Vec<Part>,
    /// What held it up.
    pub waits_for: Vec<Waited>,
}

/// Hours of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Day {
    /// Seconds from the first midnight.
    pub from_s: i64,
    /// Seconds from the first midnight.
    pub to_s: i64,
    /// Whether anything is done on it.
    pub used: bool,
    /// Whether it was added because those given did not suffice.
    pub added: bool,
}

/// What one person does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Load {
    /// Seconds of work.
    pub seconds: i64,
    /// Tasks.
    pub tasks: usize,
}

/// Wet paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wet {
    /// The task that made it.
    pub task: usize,
    /// Number of the marking.
    pub marking: usize,
    /// From when, seconds from the first midnight.
    pub from_s: i64,
    /// Dry to the touch.
    pub touch_s: i64,
    /// Ready for another coat.
    pub recoat_s: i64,
    /// Light feet may cross.
    pub foot_s: i64,
    /// Children may play.
    pub children_s: i64,
    /// Wheels may roll.
    pub wheels_s: i64,
}

/// The painting days.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The tasks, by start.
    pub tasks: Vec<Task>,
    /// The days.
    pub days: Vec<Day>,
    /// What each person does, by number.
    pub load: Vec<Load>,
    /// What is wet when, by start.
    pub wet: Vec<Wet>,
    /// The marking by the way out, whose last coat begins last.
    pub last: Option<usize>,
    /// When all is done and cleaned up, seconds from the first midnight.
    pub end_s: i64,
    /// No plan for these works, people and days is done before.
    pub bound_s: i64,
    /// Orders that were tried.
    pub tries: usize,
    /// Partial plans that the proof looked at.
    pub nodes: usize,
    /// From when children may play on all of it.
    pub children_s: Option<i64>,
    /// From when wheels may roll on all of it.
    pub wheels_s: Option<i64>,
}

impl Plan {
    /// Whether no plan is done sooner.
    pub fn proven(&self) -> bool {
        self.bound_s >= self.end_s
    }

    /// By how many seconds a better plan could at most be done sooner.
    pub fn gap_s(&self) -> i64 {
        (self.end_s - self.bound_s).max(0)
    }
}

//! The stretch from the plan to the ground: tapes, stencils, paint, people, days.

use crew::{Door, Hands, Way};
use geo::Coord;
use geo::{Area, Centroid, Contains, ConvexHull, Euclidean, Length, MultiPolygon};
use ground::yard::{Condition, SurfaceKind, Yard};
use ledger::Ledger;
use marking::{Colour, Figure};
use nest::{Budget, Part, Turns};
use note::{Note, msg};
use paint::{Painted, Shade, Surface, Wear};
use project::Project;
use project::read::package::Package;
use setout::SetOut;
use stencil::{Material, Numerals, Setting, Stencils};

use crate::setting::set_out;
use crate::survey::Surveyed;

/// All that the people who build need.
pub struct Built {
    /// Where to hook the tapes.
    pub setout: SetOut,
    /// What is painted through what.
    pub stencils: Stencils,
    /// The sheets that plates are cut from.
    pub sheets: Vec<cutfile::Sheet>,
    /// Area of the plates as a share of each sheet.
    pub densities: Vec<f64>,
    /// What is bought.
    pub shopping: paint::Shopping,
    /// What the years cost.
    pub upkeep: paint::Upkeep,
    /// Who does what when.
    pub crew: Option<crew::Plan>,
    /// When the weather lets paint dry, by weather file.
    pub skies: Vec<Judged>,
}

/// What one weather file says of painting.
pub struct Judged {
    /// The file.
    pub file: String,
    /// The place that it names.
    pub place: String,
    /// By month, of a typical year.
    pub year: Option<days::Year>,
    /// Of a forecast, the best first.
    pub windows: Vec<days::Window>,
}

/// Plans the build of figures that lie where they shall, each with its marking's name.
pub fn build(walked: &Surveyed, laid: &[(&str, &Figure)], notes: &mut Vec<Note>) -> Option<Built> {
    let project = &walked.project;
    let ledger = &project.ledger;
    let building = &project.programme.building;
    let setout = set_out(walked, laid, notes)?;
    let yard = walked.yard.as_ref()?;
    let setting = Setting {
        material: building.material,
        tool: building.tool,
        applied: building.applied,
        turn_over: building.turn_over,
        numerals: Numerals::Apart,
    };
    let placed: Vec<stencil::Laid> = laid
        .iter()
        .map(|(_, figure)| stencil::Laid { figure, turn: 0.0 })
        .collect();
    let stencils = stencil::stencils(&placed, &setting, ledger).pour(notes);
    let (sheets, densities) = nested(&stencils, &setting, project.about.seed, ledger, notes);
    let job = job(project, yard, laid, &setout, &stencils);
    let shopping = paint::shop(&job, ledger).pour(notes);
    let wear = if building.wheels {
        Wear::Wheels
    } else {
        Wear::Feet
    };
    let upkeep = paint::upkeep(&job, &shopping, wear, ledger);
    let skies = skies(project);
    let crew = crew::crew(&work(project, yard, laid, &stencils, &job), ledger).pour(notes);
    Some(Built {
        setout,
        stencils,
        sheets,
        densities,
        shopping,
        upkeep,
        crew,
        skies,
    })
}

/// Steps of the search for room on the sheets: the plates of a yard lie as well after these
/// as after many more.
const STEPS: u64 = 4_000;

/// The panels on sheets.
fn nested(
    stencils: &Stencils,
    setting: &Setting,
    seed: u64,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> (Vec<cutfile::Sheet>, Vec<f64>) {
    let of_panel: Vec<(usize, usize, &stencil::Panel)> = stencils
        .stencils
        .iter()
        .enumerate()
        .flat_map(|(number, one)| {
            let panels = one.panels.iter().enumerate();
            panels.map(move |(panel, of)| (number, panel, of))
        })
        .collect();
    // Flutes run along a sheet: a plate keeps its way on it, or is turned about.
    let turns = match setting.material {
        Material::Fluted => vec![0.0, 180.0],
        _ => vec![0.0, 90.0, 180.0, 270.0],
    };
    let parts: Vec<Part> = of_panel
        .iter()
        .map(|(_, _, panel)| Part {
            name: panel.id.clone(),
            outline: panel.plate.clone(),
            count: 1,
            turns: Turns::Listed(turns.clone()),
        })
        .collect();
    let [height, width] = match ledger.list(stencil::figures::SHEET) {
        [short, long] => [*short, *long],
        _ => return (Vec::new(), Vec::new()),
    };
    let sheet = nest::Sheet {
        width,
        height,
        margin: ledger.number(stencil::figures::TRIM),
        gap: setting.tool.kerf(ledger) + ledger.number(stencil::figures::PART_GAP),
    };
    let budget = Budget {
        steps: STEPS,
        walks: 1,
        seed,
    };
    let nesting = nest::nest(&parts, &sheet, &budget);
    let left: Vec<String> = nesting
        .left
        .iter()
        .filter_map(|left| Some(parts.get(left.part)?.name.clone()))
        .collect();
    if !left.is_empty() {
        notes.push(Note::warning(None, msg!("build-panel-left", panels = left)));
    }
    let millionth = |value: f64| (value * 1e6).round() / 1e6 + 0.0;
    let sheets = nesting
        .sheets
        .iter()
        .map(|laid| cutfile::Sheet {
            width,
            height,
            parts: laid
                .placements
                .iter()
                .filter_map(|placement| {
                    let (stencil, panel, _) = *of_panel.get(placement.part)?;
                    Some(cutfile::Placed {
                        stencil,
                        panel,
                        turn: placement.turn,
                        x: millionth(placement.x),
                        y: millionth(placement.y),
                    })
                })
                .collect(),
        })
        .collect();
    (
        sheets,
        nesting.sheets.iter().map(|laid| laid.density).collect(),
    )
}

/// What is painted, on what, and what the project knows of prices.
fn job(
    project: &Project,
    yard: &Yard,
    laid: &[(&str, &Figure)],
    setout: &SetOut,
    stencils: &Stencils,
) -> paint::Job {
    let building = &project.programme.building;
    let painted: Vec<Painted> = laid
        .iter()
        .enumerate()
        .map(|(number, (name, figure))| Painted {
            name: (*name).to_owned(),
            areas: figure.paint_area(),
            masked: taped(stencils, number).map(|taped| taped.outline).sum(),
            stencilled: uses(stencils, number).count() as u32,
            key_points: key_points(setout, number),
            surfaces: under(figure, yard),
        })
        .collect();
    let hulls: Vec<geo::Polygon<f64>> = laid.iter().map(|(_, figure)| hull(figure)).collect();
    paint::Job {
        painted,
        shade: Shade::Grey,
        coats: std::collections::BTreeMap::new(),
        system: building.cans,
        prices: prices(project),
        people: building.people,
        days: building.days,
        swept: hulls.iter().map(Area::unsigned_area).sum(),
        roped: hulls
            .iter()
            .map(|hull| Euclidean.length(hull.exterior()))
            .sum(),
        doors: (yard.doors.len() + yard.gates.len()) as u32,
    }
}

/// The shop's prices: cans and primer as they are sold; tape and grit where the shop has the
/// size that the list counts.
fn prices(project: &Project) -> paint::Prices {
    let known = &project.programme.prices;
    let ledger = &project.ledger;
    let sold = |packages: &[Package]| -> Vec<(f64, f64)> {
        packages
            .iter()
            .map(|package| (package.size, package.price))
            .collect()
    };
    let mut items = std::collections::BTreeMap::new();
    for (item, packages) in [
        (paint::Item::MaskingTape, &known.tape),
        (paint::Item::Grit, &known.grit),
    ] {
        /// Of a size: a roll of 50 m is one of 50.3 m.
        const NEAR: f64 = 0.02;
        let size = item.pack(ledger).unwrap_or(0.0);
        let fitting = packages
            .iter()
            .find(|package| (package.size - size).abs() <= NEAR * size);
        if let Some(package) = fitting {
            items.insert(item, package.price);
        }
    }
    paint::Prices {
        cans: sold(&known.paint),
        primer: sold(&known.primer),
        items,
        ..paint::Prices::default()
    }
}

fn taped(stencils: &Stencils, marking: usize) -> impl Iterator<Item = &stencil::Taped> {
    stencils
        .taped
        .iter()
        .filter(move |taped| taped.marking == marking)
}

fn uses(stencils: &Stencils, marking: usize) -> impl Iterator<Item = (usize, &stencil::Use)> {
    stencils
        .stencils
        .iter()
        .enumerate()
        .flat_map(|(number, one)| one.uses.iter().map(move |used| (number, used)))
        .filter(move |(_, used)| used.marking == marking)
}

fn key_points(setout: &SetOut, marking: usize) -> u32 {
    let points = setout
        .markings
        .get(marking)
        .map_or(0, |one| one.points.len());
    points as u32
}

/// Round all paint of a figure.
fn hull(figure: &Figure) -> geo::Polygon<f64> {
    let paint = figure.paint.iter().map(|paint| paint.polygon.clone());
    MultiPolygon::new(paint.collect()).convex_hull()
}

/// Shares of the ground under a figure's paint, by the surface under the middle of each
/// shape; later surfaces lie over earlier ones.
fn under(figure: &Figure, yard: &Yard) -> Vec<(Surface, f64)> {
    let mut shares: Vec<(Surface, f64)> = Vec::new();
    for paint in &figure.paint {
        let Some(middle) = paint.polygon.centroid() else {
            continue;
        };
        let ground = yard
            .surfaces
            .iter()
            .rev()
            .find(|surface| surface.outline.contains(&middle));
        let sound = ground.is_some_and(|ground| ground.condition == Some(Condition::Sound));
        let surface = match ground.map(|ground| ground.is) {
            Some(SurfaceKind::Concrete) => Surface::Concrete,
            Some(SurfaceKind::Asphalt) if sound => Surface::Dense,
            Some(_) => Surface::Worn,
            None => continue,
        };
        let area = paint.polygon.unsigned_area();
        match shares.iter_mut().find(|(known, _)| *known == surface) {
            Some((_, sum)) => *sum += area,
            None => shares.push((surface, area)),
        }
    }
    shares.sort_by_key(|(surface, _)| *surface);
    shares
}

/// Seconds of an hour.
const HOUR: f64 = 3600.0;
/// Seconds of a day.
const DAY: i64 = 86_400;

/// The same as work for people.
fn work(
    project: &Project,
    yard: &Yard,
    laid: &[(&str, &Figure)],
    stencils: &Stencils,
    job: &paint::Job,
) -> crew::Job {
    let building = &project.programme.building;
    let coats = |colour: Colour| {
        job.coats
            .get(&colour)
            .copied()
            .unwrap_or_else(|| paint::coats(colour, job.shade, &project.ledger))
    };
    let sets = sets(stencils, laid.len());
    let groups = bound_together(&sets, stencils.stencils.len());
    let markings = laid
        .iter()
        .zip(&job.painted)
        .enumerate()
        .map(|(number, ((name, figure), painted))| {
            let outline = hull(figure);
            crew::Marking {
                name: (*name).to_owned(),
                swept: outline.unsigned_area(),
                outline,
                primed: 0.0,
                key_points: painted.key_points,
                pieces: pieces(&sets, &groups, stencils, number, &coats),
            }
        })
        .collect();
    let [from, until] = building.hours.map(|hour| (hour * HOUR) as i64);
    let middle = |jambs: [Coord<f64>; 2]| Coord {
        x: (jambs[0].x + jambs[1].x) / 2.0,
        y: (jambs[0].y + jambs[1].y) / 2.0,
    };
    let doors = yard.doors.iter().map(|door| Door {
        name: door.name.clone(),
        at: middle(door.jambs),
    });
    let gates = yard.gates.iter().map(|gate| Door {
        name: gate.name.clone(),
        at: middle(gate.posts),
    });
    crew::Job {
        markings,
        // the first plate of those that are bound together stands for all of them
        stencils: stencils
            .stencils
            .iter()
            .map(|one| crew::Stencil {
                name: one.id.clone(),
                copies: 1,
            })
            .collect(),
        people: building.people,
        hands: if building.practised {
            Hands::Practised
        } else {
            Hands::New
        },
        tapes: 1,
        windows: (0..i64::from(building.days))
            .map(|day| crew::Window {
                from_s: day * DAY + from,
                to_s: day * DAY + until,
            })
            .collect(),
        air: Vec::new(),
        doors: gates.chain(doors).collect(),
        ground: Some(yard.boundary.clone()),
        children_s: None,
        seed: project.about.seed,
    }
}

/// Plates that are laid in one go, for one colour of one marking.
struct Set {
    /// Whether other markings want its one plate, too.
    shared: bool,
    marking: usize,
    colour: Colour,
    plates: Vec<usize>,
    placed: u32,
    area: f64,
}

/// A set has no more than so many placings, if it has more than one plate: a team is done
/// with it within some two hours, and others can work beside it.
const PLACINGS: u32 = 8;

/// By marking and colour, plate by plate.
fn sets(stencils: &Stencils, markings: usize) -> Vec<Set> {
    let mut sets: Vec<Set> = Vec::new();
    for marking in 0..markings {
        let first = sets.len();
        for (number, one) in stencils.stencils.iter().enumerate() {
            let uses = one.uses.iter().filter(|used| used.marking == marking);
            let placed = uses.count() as u32;
            for colour in one.colours.iter().filter(|_| placed > 0) {
                let openings = one.openings.iter().filter(|open| open.colour == *colour);
                let area: f64 = openings.map(|open| open.polygon.unsigned_area()).sum();
                // a plate that other markings want too goes from hand to hand by itself
                let shared = one.uses.iter().any(|used| used.marking != marking);
                let room = sets[first..].iter_mut().find(|set| {
                    !shared
                        && !set.shared
                        && set.colour == *colour
                        && set.placed + placed <= PLACINGS
                });
                match room {
                    Some(set) => {
                        set.plates.push(number);
                        set.placed += placed;
                        set.area += area * f64::from(placed);
                    }
                    None => sets.push(Set {
                        shared,
                        marking,
                        colour: *colour,
                        plates: vec![number],
                        placed,
                        area: area * f64::from(placed),
                    }),
                }
            }
        }
    }
    sets
}

/// Plates that cannot be in two teams' hands at once: sets that share one are bound together.
fn bound_together(sets: &[Set], plates: usize) -> Vec<usize> {
    let mut group: Vec<usize> = (0..plates).collect();
    loop {
        let mut changed = false;
        for set in sets {
            let least = set
                .plates
                .iter()
                .filter_map(|plate| group.get(*plate))
                .min();
            let Some(least) = least.copied() else {
                continue;
            };
            for plate in &set.plates {
                if group[*plate] != least {
                    group[*plate] = least;
                    changed = true;
                }
            }
        }
        if !changed {
            return group;
        }
    }
}

/// A marking's paint: its sets of plates, then what is taped, colour by colour.
fn pieces(
    sets: &[Set],
    groups: &[usize],
    stencils: &Stencils,
    marking: usize,
    coats: &impl Fn(Colour) -> u32,
) -> Vec<crew::Piece> {
    let mut pieces: Vec<crew::Piece> = sets
        .iter()
        .filter(|set| set.marking == marking)
        .filter_map(|set| {
            Some(crew::Piece {
                colour: set.colour,
                area: set.area,
                coats: coats(set.colour),
                way: Way::Stencil {
                    stencil: *groups.get(*set.plates.first()?)?,
                    placed: set.placed,
                },
            })
        })
        .collect();
    let mut colours: Vec<Colour> = taped(stencils, marking).map(|taped| taped.colour).collect();
    colours.sort();
    colours.dedup();
    for colour in colours {
        let of = || taped(stencils, marking).filter(move |taped| taped.colour == colour);
        pieces.push(crew::Piece {
            colour,
            area: of().map(|taped| taped.area).sum(),
            coats: coats(colour),
            way: Way::Masked {
                length: of().map(|taped| taped.outline).sum(),
            },
        });
    }
    pieces
}

/// What the weather files say.
fn skies(project: &Project) -> Vec<Judged> {
    let ledger = &project.ledger;
    let air = weather::Air::of(ledger);
    let limits = days::Limits::of(ledger);
    project
        .skies
        .iter()
        .map(|sky| {
            let hours = project.programme.building.hours;
            let work = (hours[1] - hours[0]).floor().clamp(1.0, 24.0) as usize;
            let mut job = days::Job::of(work, 1, ledger);
            job.clock = (hours[0] as u8).saturating_add(1)..=(hours[1] as u8).min(24);
            let (mut year, mut windows) = (None, Vec::new());
            match sky.weather.span {
                weather::Span::TypicalYear => {
                    let judged = days::judge(&sky.weather, &limits, &air);
                    year = Some(days::year(
                        &sky.weather,
                        &judged,
                        &days::Rule::DEMANDED,
                        job.clock.clone(),
                        work,
                        &air,
                    ));
                }
                weather::Span::Dated => {
                    windows = days::windows(&sky.weather, &limits, &job, &air, ledger).value;
                }
            }
            Judged {
                file: sky.file.clone(),
                place: sky.place(&project.about.name).to_owned(),
                year,
                windows,
            }
        })
        .collect()
}

/// For the open record; `names` are the markings'.
pub fn record(built: &Built, names: &[&str]) -> plan::Build {
    let stencils: Vec<&str> = built
        .stencils
        .stencils
        .iter()
        .map(|one| one.id.as_str())
        .collect();
    let panel = |placed: &cutfile::Placed| {
        let one = built.stencils.stencils.get(placed.stencil)?;
        Some(plan::CutLaid {
            panel: one.panels.get(placed.panel)?.id.clone(),
            turn: placed.turn,
            at: [placed.x, placed.y],
        })
    };
    plan::Build {
        setout: plan::SetOut::of(&built.setout),
        stencils: built
            .stencils
            .stencils
            .iter()
            .map(|one| plan::Stencil::of(one, names))
            .collect(),
        taped: built
            .stencils
            .taped
            .iter()
            .map(|one| plan::Taped::of(one, names))
            .collect(),
        sheets: built
            .sheets
            .iter()
            .zip(&built.densities)
            .map(|(sheet, density)| plan::CutSheet {
                width: sheet.width,
                height: sheet.height,
                density: plan::millionth(*density),
                parts: sheet.parts.iter().filter_map(panel).collect(),
            })
            .collect(),
        paint: plan::Shopping::of(&built.shopping, &built.upkeep),
        crew: built
            .crew
            .as_ref()
            .map(|plan| plan::Crew::of(plan, names, &stencils)),
        days: built
            .skies
            .iter()
            .map(|sky| plan::Days::of(&sky.file, &sky.place, sky.year.as_ref(), &sky.windows))
            .collect(),
    }
}

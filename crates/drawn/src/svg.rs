//! The drawing's shapes: groups, links, transforms and styles walked through, nothing
//! decided yet.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use geo::MultiPolygon;
use kurbo::{Affine, BezPath, Point};
use note::{Fact, Note, Place, msg};
use roxmltree::{Document, Node, ParsingOptions};
use svgtypes::{Length, Transform, ViewBox};

use crate::colour::{Ink, Stated, word};
use crate::name::{self, Meaning};
use crate::outline::{Ribbon, filled};
use crate::page::{Of, View, fit, page, view_box};
use crate::path;
use crate::pen::{Own, Pen, Wash};
use crate::style::Sheets;

/// One shape, in the order of painting.
#[derive(Clone, Debug)]
pub struct Shape {
    /// Its start tag.
    pub at: Place,
    /// Its outline in its own units.
    pub path: BezPath,
    /// Which points are inside.
    pub rule: i_overlay::core::fill_rule::FillRule,
    /// Its own units to metres, y up.
    pub to: Affine,
    /// Its colour inside.
    pub fill: Option<Stated>,
    /// Its colour along the outline.
    pub stroke: Option<(Stated, Ribbon)>,
    /// What it is called, itself or as a link.
    pub called: Option<Called>,
    /// The named group that it stands in, its number among the groups.
    pub group: Option<usize>,
    /// What it is cut to.
    pub clips: Vec<Arc<MultiPolygon<f64>>>,
}

/// A name with its meaning, and what else the element says of the cell.
#[derive(Clone, Debug, PartialEq)]
pub struct Called {
    /// What the name says.
    pub meaning: Meaning,
    /// Where the name stands.
    pub at: Place,
    /// The cells that may follow, as the drawing lists them.
    pub next: Option<(String, Place)>,
}

/// What the whole drawing says of itself.
#[derive(Clone, Debug, Default)]
pub struct Sayings {
    /// Degrees from rightwards, anticlockwise.
    pub facing: Option<f64>,
    /// Whether any cell may follow any other.
    pub free: bool,
    /// Whether it may be mirrored.
    pub mirror: bool,
    /// Children side by side.
    pub tracks: Option<u32>,
    /// The gaits that it is for.
    pub gaits: Option<Vec<String>>,
}

/// A drawing taken apart.
pub struct Taken {
    /// The document's start tag.
    pub root: Place,
    /// Shapes in the order of painting.
    pub shapes: Vec<Shape>,
    /// Named groups.
    pub groups: Vec<Called>,
    /// What the root says.
    pub sayings: Sayings,
}

/// Elements within one another, links followed among them.
const DEEP: usize = 64;
/// Elements visited, those of links each time.
const MANY: usize = 20_000;
/// Pieces of paths in all.
const LONG: usize = 200_000;
/// Metres. No yard is so wide: a shape that reaches farther is a slip.
const FAR: f64 = 1_000.0;
/// Nodes of the document.
const NODES: u32 = 200_000;

struct Reader<'a, 'i> {
    file: Arc<str>,
    /// Bytes before the document: a byte-order mark.
    before: usize,
    sheets: Sheets<'a>,
    ids: BTreeMap<&'a str, Node<'a, 'i>>,
    shapes: Vec<Shape>,
    groups: Vec<Called>,
    visited: usize,
    long: usize,
    full: bool,
    /// Things that are told once however often they come, with each place.
    tally: BTreeMap<&'static str, Vec<Place>>,
    odd: BTreeSet<Place>,
    flat: f64,
    notes: Vec<Note>,
}

/// What holds at a place of the walk.
#[derive(Clone)]
struct Here {
    pen: Pen,
    to: Affine,
    view: View,
    group: Option<usize>,
    clips: Vec<Arc<MultiPolygon<f64>>>,
    deep: usize,
    /// The name that a link gives to what it shows.
    called: Option<Called>,
    /// Within a clip path: colours do not matter.
    clipping: bool,
}

/// Takes a drawing apart. `None` where it is none.
pub fn take(file: &Arc<str>, text: &str, flat: f64, notes: &mut Vec<Note>) -> Option<Taken> {
    const MARK: &str = "\u{feff}";
    let before = if text.starts_with(MARK) {
        MARK.len()
    } else {
        0
    };
    let body = text.get(before..).unwrap_or_default();
    let options = ParsingOptions {
        allow_dtd: true,
        nodes_limit: NODES,
        ..ParsingOptions::default()
    };
    let document = match Document::parse_with_options(body, options) {
        Ok(document) => document,
        Err(roxmltree::Error::NodesLimitReached) => {
            notes.push(too_much(Place::whole(file)));
            return None;
        }
        Err(fault) => {
            use roxmltree::Error::{UnclosedRootNode, UnexpectedEndOfStream};
            let start = match fault {
                UnexpectedEndOfStream | UnclosedRootNode => text.trim_end().len(),
                _ => before + byte_of(body, fault.pos()),
            };
            let at = Place::new(file, start, start);
            notes.push(Note::error(at, msg!("drawn-not-xml")).mend(msg!("drawn-not-xml-mend")));
            return None;
        }
    };
    let root = document.root_element();
    let mut ids = BTreeMap::new();
    for node in document.descendants() {
        if let Some(id) = node.attribute("id") {
            ids.entry(id).or_insert(node);
        }
    }
    let mut reader = Reader {
        file: Arc::clone(file),
        before,
        sheets: Sheets::of(&document),
        ids,
        shapes: Vec::new(),
        groups: Vec::new(),
        visited: 0,
        long: 0,
        full: false,
        tally: BTreeMap::new(),
        odd: BTreeSet::new(),
        flat,
        notes: Vec::new(),
    };
    let tag = reader.tag(root);
    if root.tag_name().name() != "svg" {
        notes.push(
            Note::error(tag, msg!("drawn-not-svg", found = root.tag_name().name()))
                .mend(msg!("drawn-not-svg-mend")),
        );
        return None;
    }
    let mut told = Vec::new();
    let (to, view) = page(root, |name| reader.attribute(root, name), &mut told);
    reader.notes.append(&mut told);
    let sayings = reader.sayings(root);
    let declared = reader.sheets.declared(root);
    let (pen, _) = Pen::default().under(&declared, view);
    let here = Here {
        pen,
        to,
        view,
        group: None,
        clips: Vec::new(),
        deep: 0,
        called: None,
        clipping: false,
    };
    reader.children(root, &here);
    if reader.full {
        reader.notes.push(too_much(tag.clone()));
    }
    reader.tell();
    notes.append(&mut reader.notes);
    Some(Taken {
        root: tag,
        shapes: reader.shapes,
        groups: reader.groups,
        sayings,
    })
}

fn too_much(at: Place) -> Note {
    Note::error(at, msg!("drawn-too-much", most = MANY)).mend(msg!("drawn-too-much-mend"))
}

/// The byte of a row and column, both from 1, columns in characters.
fn byte_of(text: &str, at: roxmltree::TextPos) -> usize {
    let mut start = 0;
    for (row, line) in (1..).zip(text.split_inclusive('\n')) {
        if row == at.row {
            let column = at.col.saturating_sub(1) as usize;
            let within = line
                .char_indices()
                .nth(column)
                .map_or(line.len(), |(byte, _)| byte);
            return start + within;
        }
        start += line.len();
    }
    text.len()
}

impl<'a, 'i> Reader<'a, 'i> {
    fn place(&self, start: usize, end: usize) -> Place {
        Place::new(&self.file, self.before + start, self.before + end)
    }

    /// An element's start tag as far as its name.
    fn tag(&self, node: Node) -> Place {
        let start = node.range().start;
        let end = start + 1 + node.tag_name().name().len();
        self.place(start, end.min(node.range().end))
    }

    fn attribute(&self, node: Node, name: &str) -> Place {
        match node.attribute_node(name) {
            Some(attribute) => {
                let range = attribute.range_value();
                self.place(range.start, range.end)
            }
            None => self.tag(node),
        }
    }

    fn count(&mut self, key: &'static str, at: Place) {
        self.tally.entry(key).or_default().push(at);
    }

    fn odd(&mut self, at: Place, name: &str, value: &str) {
        if self.odd.insert(at.clone()) {
            let shown: String = value.chars().take(40).collect();
            self.notes.push(
                Note::warning(at, msg!("drawn-value-odd", name = name, value = shown))
                    .mend(msg!("drawn-value-odd-mend")),
            );
        }
    }

    /// What was counted, each in one note.
    fn tell(&mut self) {
        for (key, places) in std::mem::take(&mut self.tally) {
            let mend = match key {
                "drawn-text" => "drawn-text-mend",
                "drawn-image" => "drawn-image-mend",
                "drawn-gradient" => "drawn-gradient-mend",
                "drawn-hidden" => "drawn-hidden-mend",
                "drawn-far" => "drawn-far-mend",
                _ => "drawn-effect-mend",
            };
            let what = note::Message {
                key,
                facts: vec![("count", Fact::from(places.len()))],
            };
            let mut places = places.into_iter();
            let note = Note::warning(places.next(), what).mend(msg!(mend));
            self.notes.push(places.take(8).fold(note, Note::also));
        }
    }

    fn sayings(&mut self, root: Node) -> Sayings {
        let mut sayings = Sayings::default();
        let mut wrong = |name: &'static str, value: &str, expected: &'static str| {
            let at = self.attribute(root, name);
            self.notes.push(
                Note::error(at, msg!("drawn-saying", name = name, value = value))
                    .expected(msg!(expected)),
            );
        };
        if let Some(text) = root.attribute("data-facing") {
            match text.trim().parse::<f64>() {
                Ok(degrees) if degrees.abs() <= 360.0 => sayings.facing = Some(degrees),
                _ => wrong("data-facing", text, "drawn-saying-facing"),
            }
        }
        match root.attribute("data-order") {
            None | Some("numbers") => {}
            Some("free") => sayings.free = true,
            Some(text) => wrong("data-order", text, "drawn-saying-order"),
        }
        match root.attribute("data-mirror") {
            None | Some("no") => {}
            Some("yes") => sayings.mirror = true,
            Some(text) => wrong("data-mirror", text, "drawn-saying-mirror"),
        }
        if let Some(text) = root.attribute("data-tracks") {
            match text.trim().parse::<u32>() {
                Ok(tracks) if (1..=12).contains(&tracks) => sayings.tracks = Some(tracks),
                _ => wrong("data-tracks", text, "drawn-saying-tracks"),
            }
        }
        sayings.gaits = root.attribute("data-for").map(|text| {
            let all = text.split([' ', ',', ';']).filter(|word| !word.is_empty());
            all.map(str::to_lowercase).collect()
        });
        sayings
    }

    fn children(&mut self, node: Node<'a, 'i>, here: &Here) {
        for child in node.children().filter(Node::is_element) {
            self.visit(child, here);
        }
    }

    /// One element in the frame of its parent.
    fn visit(&mut self, node: Node<'a, 'i>, above: &Here) {
        let name = node.tag_name();
        if name
            .namespace()
            .is_some_and(|space| space != "http://www.w3.org/2000/svg")
        {
            return;
        }
        self.visited += 1;
        if self.visited > MANY || above.deep > DEEP || self.long > LONG {
            self.full = true;
            return;
        }
        match name.name() {
            "g" | "a" | "svg" | "switch" | "use" | "path" | "rect" | "circle" | "ellipse"
            | "line" | "polyline" | "polygon" => {}
            "text" => {
                let at = self.tag(node);
                return self.count("drawn-text", at);
            }
            "image" | "foreignObject" => {
                let at = self.tag(node);
                return self.count("drawn-image", at);
            }
            _ => return,
        }
        let declared = self.sheets.declared(node);
        let (pen, own) = above.pen.under(&declared, above.view);
        if own.gone {
            return self.hidden(node);
        }
        if let Some((property, value)) = own.odd {
            let at = if node.attribute(property).is_some() {
                self.attribute(node, property)
            } else if node.has_attribute("style") {
                self.attribute(node, "style")
            } else {
                self.tag(node)
            };
            self.odd(at, property, value);
        }
        let to = above.to * self.transform(node, &own);
        if !to.as_coeffs().iter().all(|part| part.is_finite()) {
            let at = self.tag(node);
            return self.count("drawn-far", at);
        }
        let mut here = Here {
            pen,
            to,
            deep: above.deep + 1,
            ..above.clone()
        };
        // a paint's word among the classes paints, as if it stood in `fill`
        for class in node
            .attribute("class")
            .unwrap_or_default()
            .split_whitespace()
        {
            if let Some(ink) = word(class) {
                here.recolour(ink);
            }
        }
        if own.effect {
            let at = self.tag(node);
            self.count("drawn-effect", at);
        }
        if let Some(clip) = own.clip {
            self.clip(clip, node, &mut here);
        }
        let called = self.called(node);
        match name.name() {
            "g" | "a" | "svg" | "switch" => {
                if let Some(called) = here.called.take().or(called) {
                    here.group = Some(self.groups.len());
                    self.groups.push(called);
                }
                if name.name() == "svg" {
                    self.nested(node, &mut here);
                }
                if name.name() == "switch" {
                    let first = node.children().find(|child| {
                        child.is_element() && child.tag_name().name() != "foreignObject"
                    });
                    if let Some(first) = first {
                        self.visit(first, &here);
                    }
                } else {
                    self.children(node, &here);
                }
            }
            "use" => {
                if called.is_some() {
                    here.called = called;
                }
                self.link(node, here);
            }
            _ => {
                if let Some(path) = self.geometry(node, here.view) {
                    let called = here.called.take().or(called);
                    self.shape(node, path, called, here);
                }
            }
        }
    }

    fn shape(&mut self, node: Node, path: BezPath, called: Option<Called>, here: Here) {
        self.long += path.elements().len();
        let at = self.tag(node);
        let size = largest(here.to);
        let far = path::farthest(&path) * size + path::farthest(&(here.to * path.clone()));
        // what is no number is far, too
        if !(far <= FAR && here.pen.width * size <= FAR) {
            return self.count("drawn-far", at);
        }
        if !here.pen.visible {
            if called.is_some() {
                self.count("drawn-hidden", at);
            }
            return;
        }
        let wash = |reader: &mut Self, wash: &Wash| match wash {
            Wash::None => None,
            Wash::Stated(stated) => Some(*stated),
            Wash::Server(id, instead) => {
                reader.count("drawn-gradient", at.clone());
                reader.first_stop(id).or(*instead)
            }
        };
        let fill = wash(self, &here.pen.fill);
        let ribbon = Ribbon {
            width: here.pen.width,
            cap: here.pen.cap,
            join: here.pen.join,
            miter: here.pen.miter,
            dashes: here.pen.dashes.clone(),
            dash_offset: here.pen.dash_offset,
        };
        let stroke = (here.pen.width > 0.0)
            .then(|| wash(self, &here.pen.stroke))
            .flatten();
        self.shapes.push(Shape {
            at,
            path,
            rule: if here.clipping {
                here.pen.clip_rule
            } else {
                here.pen.rule
            },
            to: here.to,
            fill,
            stroke: stroke.map(|colour| (colour, ribbon)),
            called,
            group: here.group,
            clips: here.clips,
        });
    }

    /// The first colour of a gradient, through its links.
    fn first_stop(&mut self, id: &str) -> Option<Stated> {
        let mut node = *self.ids.get(id)?;
        for _ in 0..DEEP {
            let stop = node
                .children()
                .find(|child| child.tag_name().name() == "stop");
            if let Some(stop) = stop {
                let declared = self.sheets.declared(stop);
                let (_, value) = declared.iter().rfind(|(name, _)| *name == "stop-color")?;
                let colour: svgtypes::Color = value.trim().parse().ok()?;
                return Some(Stated::Rgb([colour.red, colour.green, colour.blue]));
            }
            node = *self.ids.get(href(node)?)?;
        }
        None
    }

    /// Named shapes under an element that is not shown.
    fn hidden(&mut self, node: Node<'a, 'i>) {
        let named: Vec<Place> = node
            .descendants()
            .filter(|one| name::meaning(one.attribute("id"), one.attribute("class")).is_some())
            .map(|one| self.tag(one))
            .collect();
        for at in named {
            self.count("drawn-hidden", at);
        }
    }

    fn called(&mut self, node: Node) -> Option<Called> {
        let (id, class) = (node.attribute("id"), node.attribute("class"));
        let meaning = name::meaning(id, class)?;
        let by_id = id.is_some() && name::meaning(id, None).is_some();
        Some(Called {
            meaning,
            at: self.attribute(node, if by_id { "id" } else { "class" }),
            next: node
                .attribute("data-next")
                .map(|text| (text.to_owned(), self.attribute(node, "data-next"))),
        })
    }

    fn transform(&mut self, node: Node, own: &Own) -> Affine {
        let text = own.transform.or(node.attribute("transform"));
        let Some(text) = text else {
            return Affine::IDENTITY;
        };
        match text.parse::<Transform>() {
            Ok(to) => Affine::new([to.a, to.b, to.c, to.d, to.e, to.f]),
            Err(_) => {
                let at = self.attribute(node, "transform");
                self.odd(at, "transform", text);
                Affine::IDENTITY
            }
        }
    }

    fn length(&mut self, node: Node, name: &str, view: View, of: Of) -> Option<f64> {
        let text = node.attribute(name)?;
        let length = text.trim().parse::<Length>().ok();
        let units = length.map(|length| view.units(length, of));
        match units.filter(|units| units.is_finite()) {
            Some(units) => Some(units),
            None if text.trim() == "auto" => None,
            None => {
                let at = self.attribute(node, name);
                self.odd(at, name, text);
                None
            }
        }
    }

    fn geometry(&mut self, node: Node, view: View) -> Option<BezPath> {
        let mut get = |name: &str, of: Of| self.length(node, name, view, of);
        Some(match node.tag_name().name() {
            "path" => {
                let text = node.attribute("d")?;
                let (path, broken) = path::data(text);
                if broken {
                    let at = self.attribute(node, "d");
                    self.notes.push(
                        Note::warning(at, msg!("drawn-path-broken"))
                            .mend(msg!("drawn-path-broken-mend")),
                    );
                }
                path
            }
            "polygon" => path::points(node.attribute("points")?, true),
            "polyline" => path::points(node.attribute("points")?, false),
            "line" => {
                let from = (get("x1", Of::Width), get("y1", Of::Height));
                let to = (get("x2", Of::Width), get("y2", Of::Height));
                let point = |(x, y): (Option<f64>, Option<f64>)| {
                    Point::new(x.unwrap_or(0.0), y.unwrap_or(0.0))
                };
                path::line(point(from), point(to))
            }
            "circle" | "ellipse" => {
                let x = get("cx", Of::Width).unwrap_or(0.0);
                let y = get("cy", Of::Height).unwrap_or(0.0);
                let (rx, ry) = if node.tag_name().name() == "circle" {
                    let radius = get("r", Of::Both)?;
                    (radius, radius)
                } else {
                    let (rx, ry) = (get("rx", Of::Width), get("ry", Of::Height));
                    (rx.or(ry)?, ry.or(rx)?)
                };
                if !(rx > path::DOT && ry > path::DOT) {
                    return None;
                }
                path::ellipse(Point::new(x, y), rx, ry)
            }
            _ => {
                let (x, y) = (get("x", Of::Width), get("y", Of::Height));
                let (width, height) = (get("width", Of::Width)?, get("height", Of::Height)?);
                if !(width > path::DOT && height > path::DOT) {
                    return None;
                }
                let (rx, ry) = (get("rx", Of::Width), get("ry", Of::Height));
                path::rect(
                    x.unwrap_or(0.0),
                    y.unwrap_or(0.0),
                    width,
                    height,
                    rx.or(ry).unwrap_or(0.0).max(0.0),
                    ry.or(rx).unwrap_or(0.0).max(0.0),
                )
            }
        })
    }

    /// What a `use` shows.
    fn link(&mut self, node: Node<'a, 'i>, mut here: Here) {
        let target = href(node).and_then(|id| self.ids.get(id).copied());
        let Some(target) = target else {
            let at = self.tag(node);
            self.notes.push(
                Note::warning(at, msg!("drawn-link-lost")).mend(msg!("drawn-link-lost-mend")),
            );
            return;
        };
        let x = self.length(node, "x", here.view, Of::Width).unwrap_or(0.0);
        let y = self.length(node, "y", here.view, Of::Height).unwrap_or(0.0);
        here.to *= Affine::translate((x, y));
        if target.tag_name().name() == "symbol" {
            if let Some(called) = here.called.take() {
                here.group = Some(self.groups.len());
                self.groups.push(called);
            }
            if let Some(view) = view_box(target) {
                let width = self.length(node, "width", here.view, Of::Width);
                let height = self.length(node, "height", here.view, Of::Height);
                let (width, height) = match (width, height) {
                    (Some(width), Some(height)) => (width, height),
                    (Some(width), None) => (width, width * view.h / view.w),
                    (None, Some(height)) => (height * view.w / view.h, height),
                    (None, None) => (view.w, view.h),
                };
                here.enter(target, view, width, height);
            }
            self.children(target, &here);
        } else {
            self.visit(target, &here);
        }
    }

    fn nested(&mut self, node: Node, here: &mut Here) {
        let view = here.view;
        let x = self.length(node, "x", view, Of::Width).unwrap_or(0.0);
        let y = self.length(node, "y", view, Of::Height).unwrap_or(0.0);
        here.to *= Affine::translate((x, y));
        let width = self
            .length(node, "width", view, Of::Width)
            .unwrap_or(view.width);
        let height = self
            .length(node, "height", view, Of::Height)
            .unwrap_or(view.height);
        match view_box(node) {
            Some(inner) => here.enter(node, inner, width, height),
            None => here.view = View { width, height },
        }
    }

    /// Cuts what follows to a clip path.
    fn clip(&mut self, id: &str, node: Node<'a, 'i>, here: &mut Here) {
        let target = self.ids.get(id).copied();
        let target = target.filter(|target| target.tag_name().name() == "clipPath");
        let Some(target) = target else {
            return;
        };
        if here.clipping || target.attribute("clipPathUnits") == Some("objectBoundingBox") {
            let at = self.tag(node);
            return self.count("drawn-effect", at);
        }
        let outside = std::mem::take(&mut self.shapes);
        let groups = self.groups.len();
        let declared = self.sheets.declared(target);
        let (pen, own) = Pen::default().under(&declared, here.view);
        let inner = Here {
            pen,
            to: here.to * self.transform(target, &own),
            group: None,
            clips: Vec::new(),
            called: None,
            clipping: true,
            ..here.clone()
        };
        self.children(target, &inner);
        self.groups.truncate(groups);
        let shapes = std::mem::replace(&mut self.shapes, outside);
        let parts: Vec<geo::Polygon<f64>> = shapes
            .iter()
            .flat_map(|shape| filled(&shape.path, shape.to, shape.rule, self.flat).0)
            .collect();
        here.clips.push(Arc::new(geo::unary_union(&parts)));
    }
}

impl Here {
    /// Into a box of its own.
    fn enter(&mut self, node: Node, view: ViewBox, width: f64, height: f64) {
        self.to *= fit(node, view, width, height);
        self.view = View {
            width: view.w,
            height: view.h,
        };
    }

    /// A class says which paint: whatever is seen, takes it.
    fn recolour(&mut self, ink: Ink) {
        let wash = Wash::Stated(Stated::Ink(ink));
        let (fill, stroke) = (&mut self.pen.fill, &mut self.pen.stroke);
        if *stroke != Wash::None {
            *stroke = wash.clone();
        }
        if *fill != Wash::None {
            *fill = wash;
        }
    }
}

/// The most by which a frame stretches anything, to a factor of two.
pub fn largest(to: Affine) -> f64 {
    let [a, b, c, d, ..] = to.as_coeffs();
    libm::hypot(a, b).max(libm::hypot(c, d))
}

/// The id that an element links to.
fn href<'n>(node: Node<'n, '_>) -> Option<&'n str> {
    const XLINK: &str = "http://www.w3.org/1999/xlink";
    let text = node.attribute("href").or(node.attribute((XLINK, "href")))?;
    text.trim().strip_prefix('#')
}

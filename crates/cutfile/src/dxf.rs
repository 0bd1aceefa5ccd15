//! DXF of release 2000, and of release 12 for old machines.
//!
//! Written group by group: a code on one line, its value on the next. Handles count up from
//! one; no time and no GUID is written.

use crate::curve::Corner;
use crate::drawing::{Drawing, Layer, Mark, fine};
use crate::frame::MODEL;

/// Which DXF.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Version {
    /// AC1015: knows units.
    R2000,
    /// AC1009: knows none; every reader takes it.
    R12,
}

/// A drawing as DXF, millimetres. ASCII: other letters are written `\U+00F1`.
pub fn dxf(drawing: &Drawing, version: Version) -> Vec<u8> {
    let mut pen = Pen {
        text: String::new(),
        version,
        // fixed handles lie below
        next: 0x100,
    };
    let body = {
        let mut body = Pen {
            text: String::new(),
            ..pen
        };
        body.entities(drawing);
        pen.next = body.next;
        body.text
    };
    pen.comment(&drawing.title);
    pen.comment("units: millimetres, 1:1");
    pen.header(drawing);
    if version == Version::R2000 {
        pen.section("CLASSES");
        pen.end();
    }
    pen.tables();
    pen.blocks();
    pen.section("ENTITIES");
    pen.text.push_str(&body);
    pen.end();
    if version == Version::R2000 {
        pen.objects(drawing);
    }
    pen.put(0, "EOF");
    pen.text.into_bytes()
}

/// Writes groups.
pub(crate) struct Pen {
    text: String,
    version: Version,
    /// The last handle that was given away.
    pub(crate) next: u32,
}

impl Pen {
    pub(crate) fn put(&mut self, code: u16, value: &str) {
        self.text.push_str(&format!("{code}\n{value}\n"));
    }

    pub(crate) fn number(&mut self, code: u16, value: f64) {
        self.put(code, &format!("{:.4}", fine(value)));
    }

    pub(crate) fn whole(&mut self, code: u16, value: i32) {
        self.put(code, &value.to_string());
    }

    /// Only release 2000 has handles that something points at, and subclasses.
    pub(crate) fn late(&self) -> bool {
        self.version == Version::R2000
    }

    pub(crate) fn handle(&mut self, code: u16, handle: u32) {
        if self.late() {
            self.put(code, &format!("{handle:X}"));
        }
    }

    pub(crate) fn class(&mut self, name: &str) {
        if self.late() {
            self.put(100, name);
        }
    }

    fn fresh(&mut self) -> u32 {
        self.next += 1;
        self.next
    }

    fn comment(&mut self, text: &str) {
        self.put(999, &ascii(text));
    }

    pub(crate) fn section(&mut self, name: &str) {
        self.put(0, "SECTION");
        self.put(2, name);
    }

    pub(crate) fn end(&mut self) {
        self.put(0, "ENDSEC");
    }

    pub(crate) fn point(&mut self, code: u16, at: [f64; 2], depth: bool) {
        self.number(code, at[0]);
        self.number(code + 10, at[1]);
        if depth {
            self.number(code + 20, 0.0);
        }
    }

    fn entities(&mut self, drawing: &Drawing) {
        for cut in &drawing.cuts {
            self.polyline(Layer::Cut, cut, true);
        }
        let straight = |line: &[[f64; 2]]| -> Vec<Corner> {
            let corner = |at: &[f64; 2]| Corner {
                x: at[0],
                y: at[1],
                bulge: 0.0,
            };
            line.iter().map(corner).collect()
        };
        for mark in &drawing.marks {
            match mark {
                Mark::Line(layer, line) => self.polyline(*layer, &straight(line), false),
                Mark::Ring(layer, line) => self.polyline(*layer, &straight(line), true),
                Mark::Text {
                    layer,
                    at,
                    high,
                    turn,
                    text,
                } => self.words(*layer, *at, *high, *turn, text),
            }
        }
    }

    /// The head of an entity.
    fn entity(&mut self, kind: &str, layer: Layer) -> u32 {
        let handle = self.fresh();
        self.put(0, kind);
        self.handle(5, handle);
        self.handle(330, MODEL);
        self.class("AcDbEntity");
        self.put(8, layer.name());
        handle
    }

    fn polyline(&mut self, layer: Layer, corners: &[Corner], closed: bool) {
        if self.late() {
            self.entity("LWPOLYLINE", layer);
            self.class("AcDbPolyline");
            self.whole(90, corners.len() as i32);
            self.whole(70, i32::from(closed));
            for corner in corners {
                self.point(10, [corner.x, corner.y], false);
                self.bulge(corner);
            }
            return;
        }
        self.entity("POLYLINE", layer);
        // vertices follow; the polyline's own place is void but for its height
        self.whole(66, 1);
        self.point(10, [0.0, 0.0], true);
        self.whole(70, i32::from(closed));
        for corner in corners {
            self.put(0, "VERTEX");
            self.put(8, layer.name());
            self.point(10, [corner.x, corner.y], true);
            self.bulge(corner);
        }
        self.put(0, "SEQEND");
        self.put(8, layer.name());
    }

    fn bulge(&mut self, corner: &Corner) {
        if corner.bulge != 0.0 {
            // a bulge is a ratio: 1e-9 of a chord of 100 mm is nothing
            self.put(42, &format!("{:.9}", corner.bulge));
        }
    }

    fn words(&mut self, layer: Layer, at: [f64; 2], high: f64, turn: f64, text: &str) {
        self.entity("TEXT", layer);
        self.class("AcDbText");
        self.point(10, at, true);
        self.number(40, high);
        self.put(1, &ascii(text));
        self.number(50, turn);
        self.put(7, if self.late() { "Standard" } else { "STANDARD" });
        // centred at the second point
        self.whole(72, 1);
        self.point(11, at, true);
        self.class("AcDbText");
    }
}

/// ASCII as DXF writes other letters, without line ends, which would break the groups.
fn ascii(text: &str) -> String {
    let mut plain = String::new();
    for letter in text.chars() {
        if letter.is_ascii_graphic() || letter == ' ' {
            plain.push(letter);
        } else if letter.is_control() {
            plain.push(' ');
        } else {
            let mut units = [0; 2];
            for unit in letter.encode_utf16(&mut units) {
                plain.push_str(&format!("\\U+{unit:04X}"));
            }
        }
    }
    plain
}

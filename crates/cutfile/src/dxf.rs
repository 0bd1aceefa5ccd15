//! DXF of release 2000, and of release 12 for old machines.
//!
//! Written group by group: a code on one line, its value on the next. Handles count up from
//! one; no time and no GUID is written.

use crate::curve::Corner;
use crate::drawing::{Drawing, Layer, Mark, fine};

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

// Handles of what every file has.
const ROOT: u32 = 0x0C;
const GROUPS: u32 = 0x0D;
const LAYOUTS: u32 = 0x1A;
const MODEL_LAYOUT: u32 = 0x22;
const PAPER_LAYOUT: u32 = 0x1E;
const MODEL: u32 = 0x1F;
const PAPER: u32 = 0x1B;
const BLOCK_RECORDS: u32 = 0x01;

struct Pen {
    text: String,
    version: Version,
    next: u32,
}

impl Pen {
    fn put(&mut self, code: u16, value: &str) {
        self.text.push_str(&format!("{code}\n{value}\n"));
    }

    fn number(&mut self, code: u16, value: f64) {
        self.put(code, &format!("{:.4}", fine(value)));
    }

    fn whole(&mut self, code: u16, value: i32) {
        self.put(code, &value.to_string());
    }

    /// Only release 2000 has handles that something points at, and subclasses.
    fn late(&self) -> bool {
        self.version == Version::R2000
    }

    fn handle(&mut self, code: u16, handle: u32) {
        if self.late() {
            self.put(code, &format!("{handle:X}"));
        }
    }

    fn class(&mut self, name: &str) {
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

    fn section(&mut self, name: &str) {
        self.put(0, "SECTION");
        self.put(2, name);
    }

    fn end(&mut self) {
        self.put(0, "ENDSEC");
    }

    fn point(&mut self, code: u16, at: [f64; 2], depth: bool) {
        self.number(code, at[0]);
        self.number(code + 10, at[1]);
        if depth {
            self.number(code + 20, 0.0);
        }
    }

    fn header(&mut self, drawing: &Drawing) {
        let late = self.late();
        self.section("HEADER");
        self.put(9, "$ACADVER");
        self.put(1, if late { "AC1015" } else { "AC1009" });
        if late {
            self.put(9, "$DWGCODEPAGE");
            self.put(3, "ANSI_1252");
        }
        for (name, at) in [
            ("$INSBASE", [0.0, 0.0]),
            ("$EXTMIN", [0.0, 0.0]),
            ("$EXTMAX", drawing.size),
        ] {
            self.put(9, name);
            self.point(10, at, true);
        }
        for (name, at) in [("$LIMMIN", [0.0, 0.0]), ("$LIMMAX", drawing.size)] {
            self.put(9, name);
            self.point(10, at, false);
        }
        // decimal lengths of four places
        for (name, value) in [("$LUNITS", 2), ("$LUPREC", 4)] {
            self.put(9, name);
            self.whole(70, value);
        }
        if late {
            // millimetres, metric
            for (name, value) in [("$INSUNITS", 4), ("$MEASUREMENT", 1)] {
                self.put(9, name);
                self.whole(70, value);
            }
            self.put(9, "$HANDSEED");
            let seed = self.next + 0x100;
            self.put(5, &format!("{seed:X}"));
        }
        self.end();
    }

    fn table(&mut self, name: &str, handle: u32, count: i32) {
        self.put(0, "TABLE");
        self.put(2, name);
        self.handle(5, handle);
        self.handle(330, 0);
        self.class("AcDbSymbolTable");
        self.whole(70, count);
    }

    /// The head of a table's entry.
    fn entry(&mut self, kind: &str, handle: u32, table: u32, class: &str, name: &str) {
        self.put(0, kind);
        self.handle(if kind == "DIMSTYLE" { 105 } else { 5 }, handle);
        self.handle(330, table);
        self.class("AcDbSymbolTableRecord");
        self.class(class);
        self.put(2, name);
        if kind != "BLOCK_RECORD" {
            self.whole(70, 0);
        }
    }

    fn tables(&mut self) {
        self.section("TABLES");
        if self.late() {
            self.table("VPORT", 0x08, 0);
            self.put(0, "ENDTAB");
        }
        let lines = if self.late() { 3 } else { 1 };
        self.table("LTYPE", 0x05, lines);
        let names = [
            ("ByBlock", 0x14, ""),
            ("ByLayer", 0x15, ""),
            ("Continuous", 0x16, "Solid line"),
        ];
        for (name, handle, says) in names.into_iter().skip(3 - lines as usize) {
            let name = if self.late() { name } else { "CONTINUOUS" };
            self.entry("LTYPE", handle, 0x05, "AcDbLinetypeTableRecord", name);
            self.put(3, says);
            self.whole(72, 65);
            self.whole(73, 0);
            self.number(40, 0.0);
        }
        self.put(0, "ENDTAB");
        self.table("LAYER", 0x02, 1 + Layer::ALL.len() as i32);
        let layers = Layer::ALL.iter().zip(0x30..);
        let zero = [("0", 0x10, 7)];
        let layers = layers.map(|(layer, handle)| (layer.name(), handle, colour(*layer)));
        let all: Vec<(&str, u32, i32)> = zero.into_iter().chain(layers).collect();
        for (name, handle, colour) in all {
            self.entry("LAYER", handle, 0x02, "AcDbLayerTableRecord", name);
            self.whole(62, colour);
            self.put(
                6,
                if self.late() {
                    "Continuous"
                } else {
                    "CONTINUOUS"
                },
            );
        }
        self.put(0, "ENDTAB");
        self.table("STYLE", 0x03, 1);
        let name = if self.late() { "Standard" } else { "STANDARD" };
        self.entry("STYLE", 0x11, 0x03, "AcDbTextStyleTableRecord", name);
        self.number(40, 0.0);
        self.number(41, 1.0);
        self.number(50, 0.0);
        self.whole(71, 0);
        self.number(42, 2.5);
        self.put(3, "txt");
        self.put(4, "");
        self.put(0, "ENDTAB");
        if self.late() {
            for (name, handle) in [("VIEW", 0x06), ("UCS", 0x07)] {
                self.table(name, handle, 0);
                self.put(0, "ENDTAB");
            }
            self.table("APPID", 0x09, 1);
            self.entry("APPID", 0x12, 0x09, "AcDbRegAppTableRecord", "ACAD");
            self.put(0, "ENDTAB");
            self.table("DIMSTYLE", 0x0A, 1);
            self.put(100, "AcDbDimStyleTable");
            self.entry(
                "DIMSTYLE",
                0x27,
                0x0A,
                "AcDbDimStyleTableRecord",
                "Standard",
            );
            self.put(0, "ENDTAB");
            self.table("BLOCK_RECORD", BLOCK_RECORDS, 2);
            for (name, handle, layout) in [
                ("*Model_Space", MODEL, MODEL_LAYOUT),
                ("*Paper_Space", PAPER, PAPER_LAYOUT),
            ] {
                self.entry(
                    "BLOCK_RECORD",
                    handle,
                    BLOCK_RECORDS,
                    "AcDbBlockTableRecord",
                    name,
                );
                self.handle(340, layout);
            }
            self.put(0, "ENDTAB");
        }
        self.end();
    }

    fn blocks(&mut self) {
        self.section("BLOCKS");
        if self.late() {
            for (name, record, handle) in
                [("*Model_Space", MODEL, 0x20), ("*Paper_Space", PAPER, 0x1C)]
            {
                self.put(0, "BLOCK");
                self.handle(5, handle);
                self.handle(330, record);
                self.put(100, "AcDbEntity");
                if record == PAPER {
                    self.whole(67, 1);
                }
                self.put(8, "0");
                self.put(100, "AcDbBlockBegin");
                self.put(2, name);
                self.whole(70, 0);
                self.point(10, [0.0, 0.0], true);
                self.put(3, name);
                self.put(1, "");
                self.put(0, "ENDBLK");
                self.handle(5, handle + 1);
                self.handle(330, record);
                self.put(100, "AcDbEntity");
                if record == PAPER {
                    self.whole(67, 1);
                }
                self.put(8, "0");
                self.put(100, "AcDbBlockEnd");
            }
        }
        self.end();
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

    fn dictionary(&mut self, handle: u32, owner: u32, entries: &[(&str, u32)]) {
        self.put(0, "DICTIONARY");
        self.handle(5, handle);
        self.handle(330, owner);
        self.class("AcDbDictionary");
        self.whole(281, 1);
        for (name, handle) in entries {
            self.put(3, name);
            self.handle(350, *handle);
        }
    }

    fn objects(&mut self, drawing: &Drawing) {
        self.section("OBJECTS");
        self.dictionary(ROOT, 0, &[("ACAD_GROUP", GROUPS), ("ACAD_LAYOUT", LAYOUTS)]);
        self.dictionary(GROUPS, ROOT, &[]);
        self.dictionary(
            LAYOUTS,
            ROOT,
            &[("Model", MODEL_LAYOUT), ("Layout1", PAPER_LAYOUT)],
        );
        for (name, handle, record, flag, order) in [
            ("Model", MODEL_LAYOUT, MODEL, 1024, 0),
            ("Layout1", PAPER_LAYOUT, PAPER, 0, 1),
        ] {
            self.put(0, "LAYOUT");
            self.handle(5, handle);
            self.handle(330, LAYOUTS);
            self.put(100, "AcDbPlotSettings");
            for code in [1, 2, 4, 6] {
                self.put(code, "");
            }
            for code in 40..=49 {
                self.number(code, 0.0);
            }
            self.number(140, 0.0);
            self.number(141, 0.0);
            self.number(142, 1.0);
            self.number(143, 1.0);
            self.whole(70, flag);
            // millimetres, not turned, plotted by extents
            for (code, value) in [(72, 1), (73, 0), (74, 1)] {
                self.whole(code, value);
            }
            self.put(7, "");
            self.whole(75, 16);
            self.number(147, 1.0);
            self.number(148, 0.0);
            self.number(149, 0.0);
            self.put(100, "AcDbLayout");
            self.put(1, name);
            self.whole(70, 1);
            self.whole(71, order);
            self.point(10, [0.0, 0.0], false);
            self.point(11, drawing.size, false);
            self.point(12, [0.0, 0.0], true);
            self.point(14, [0.0, 0.0], true);
            self.point(15, drawing.size, true);
            self.number(146, 0.0);
            self.point(13, [0.0, 0.0], true);
            for (code, at) in [(16, [1.0, 0.0]), (17, [0.0, 1.0])] {
                self.point(code, at, true);
            }
            self.whole(76, 0);
            self.handle(330, record);
        }
        self.end();
    }
}

/// A layer's colour by the index of DXF: red is cut, blue is written.
fn colour(layer: Layer) -> i32 {
    match layer {
        Layer::Cut => 1,
        Layer::Mark => 5,
        Layer::Sheet => 8,
        Layer::Scale => 7,
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

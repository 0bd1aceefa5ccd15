//! What every DXF file has round its entities: header, tables, blocks and objects.

use crate::drawing::{Drawing, Layer};
use crate::dxf::Pen;

// Handles of what every file has.
const ROOT: u32 = 0x0C;
const GROUPS: u32 = 0x0D;
const LAYOUTS: u32 = 0x1A;
const MODEL_LAYOUT: u32 = 0x22;
const PAPER_LAYOUT: u32 = 0x1E;
pub(crate) const MODEL: u32 = 0x1F;
const PAPER: u32 = 0x1B;
const BLOCK_RECORDS: u32 = 0x01;

impl Pen {
    pub(crate) fn header(&mut self, drawing: &Drawing) {
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

    pub(crate) fn tables(&mut self) {
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

    pub(crate) fn blocks(&mut self) {
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

    pub(crate) fn objects(&mut self, drawing: &Drawing) {
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

//! A small writer of DXF (ASCII, AC1015, which is the first in which a drawing can say its
//! unit): sections, tables, blocks and the few entities that a plan needs. What is drawn is
//! said in `plan`.

use super::layers::{LAYERS, Layer};
use super::marks::{self, MARKS};
use super::text::{line, number};

/// The media type of a drawing for design programs.
pub const DXF: &str = "image/vnd.dxf";

/// Handles of what every drawing has.
mod fixed {
    pub const BLOCK_RECORDS: u32 = 0x1;
    pub const LAYER_TABLE: u32 = 0x2;
    pub const STYLES: u32 = 0x3;
    pub const LINE_TYPES: u32 = 0x5;
    pub const VIEWS: u32 = 0x6;
    pub const UCS: u32 = 0x7;
    pub const VIEWPORTS: u32 = 0x8;
    pub const APPS: u32 = 0x9;
    pub const DIM_STYLES: u32 = 0xA;
    pub const ROOT: u32 = 0xC;
    pub const GROUPS: u32 = 0xD;
    pub const LAYOUTS: u32 = 0xE;
    pub const MODEL: u32 = 0x10;
    pub const PAPER: u32 = 0x11;
    pub const MODEL_LAYOUT: u32 = 0x12;
    pub const PAPER_LAYOUT: u32 = 0x13;
    /// The first that is free.
    pub const FREE: u32 = 0x20;
}

/// A unit of length of a drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawingUnit {
    /// Its name.
    pub name: &'static str,
    /// Its number in `$INSUNITS`.
    pub code: u32,
    /// Whether it is a metric one.
    pub metric: bool,
    /// Metres in one of it.
    pub factor: f64,
}

/// Coordinates as they are written.
#[derive(Debug, Clone, PartialEq)]
pub struct At {
    /// Along the drawing's x.
    pub x: String,
    /// Along the drawing's y.
    pub y: String,
}

/// A drawing under way.
#[derive(Debug)]
pub struct Drawing {
    unit: DrawingUnit,
    notes: Vec<String>,
    layers: Vec<Layer>,
    entities: String,
    handle: u32,
    /// x from, to, y from, to.
    extent: Option<[f64; 4]>,
}

fn pair(out: &mut String, code: u32, value: &str) {
    out.push_str(&format!("{code}\n{value}\n"));
}

fn hex(handle: u32) -> String {
    format!("{handle:X}")
}

/// Pairs of a code and what has a text.
macro_rules! pairs {
    ($out:expr; $($code:literal $value:expr),+ $(,)?) => { $(pair($out, $code, &$value.to_string());)+ };
}

impl Drawing {
    /// An empty drawing in a unit; notes go to its head as comments.
    pub fn new(unit: DrawingUnit, notes: &[&str]) -> Self {
        Self {
            unit,
            notes: notes.iter().map(|n| line(n)).collect(),
            layers: LAYERS.to_vec(),
            entities: String::new(),
            handle: fixed::FREE,
            extent: None,
        }
    }

    /// Adds a layer unless there is one of that name.
    pub fn layer(&mut self, layer: Layer) {
        if self.layers.iter().all(|l| l.name != layer.name) {
            self.layers.push(layer);
        }
    }

    /// A length on the drawing from metres.
    pub fn size(&self, metres: f64) -> f64 {
        metres / self.unit.factor
    }

    /// The lower left corner of what is drawn so far.
    pub fn corner(&self) -> (f64, f64) {
        self.extent.map_or((0.0, 0.0), |e| (e[0], e[2]))
    }

    fn next(&mut self) -> String {
        self.handle += 1;
        hex(self.handle - 1)
    }

    fn seen(&mut self, at: &At) {
        let (Ok(x), Ok(y)) = (at.x.parse::<f64>(), at.y.parse::<f64>()) else {
            return;
        };
        let e = self.extent.get_or_insert([x, x, y, y]);
        *e = [e[0].min(x), e[1].max(x), e[2].min(y), e[3].max(y)];
    }

    fn entity(&mut self, kind: &str, layer: &str) {
        let handle = self.next();
        pairs!(&mut self.entities; 0 kind, 5 handle, 330 hex(fixed::MODEL), 100 "AcDbEntity", 8 layer);
    }

    fn point_pairs(&mut self, first: u32, at: &At) {
        pair(&mut self.entities, first, &at.x);
        pair(&mut self.entities, first + 10, &at.y);
        pair(&mut self.entities, first + 20, "0.0");
        self.seen(at);
    }

    /// A polyline; a closed one does not repeat its first point.
    pub fn polyline(&mut self, layer: &str, points: &[At], closed: bool) {
        self.entity("LWPOLYLINE", layer);
        let out = &mut self.entities;
        pairs!(out; 100 "AcDbPolyline", 90 points.len(), 70 i32::from(closed));
        for at in points {
            pairs!(out; 10 at.x, 20 at.y);
        }
        for at in points {
            self.seen(at);
        }
    }

    /// A point.
    pub fn point(&mut self, layer: &str, at: &At) {
        self.entity("POINT", layer);
        pair(&mut self.entities, 100, "AcDbPoint");
        self.point_pairs(10, at);
    }

    /// A circle with a radius in metres.
    pub fn circle(&mut self, layer: &str, at: &At, radius: f64) {
        self.entity("CIRCLE", layer);
        pair(&mut self.entities, 100, "AcDbCircle");
        self.point_pairs(10, at);
        let radius = number(self.size(radius));
        pair(&mut self.entities, 40, &radius);
    }

    /// A mark of `marks`, drawn around its place.
    pub fn mark(&mut self, layer: &str, mark: usize, at: &At) {
        self.entity("INSERT", layer);
        pairs!(&mut self.entities; 100 "AcDbBlockReference", 2 marks::name(mark));
        self.point_pairs(10, at);
    }

    /// A line of text with its lower left corner at a place, of a height in metres.
    pub fn text(&mut self, layer: &str, at: &At, height: f64, text: &str) {
        self.entity("TEXT", layer);
        pair(&mut self.entities, 100, "AcDbText");
        self.point_pairs(10, at);
        let height = number(self.size(height));
        pairs!(&mut self.entities; 40 height, 1 line(text), 100 "AcDbText");
    }

    /// The finished drawing.
    pub fn finish(mut self) -> String {
        let mut out = String::new();
        for note in &self.notes {
            pair(&mut out, 999, note);
        }
        // what follows takes handles, and the header tells the next free one
        let (tables, records) = self.tables();
        let blocks = self.blocks(&records);
        self.header(&mut out);
        section(&mut out, "CLASSES", "");
        section(&mut out, "TABLES", &tables);
        section(&mut out, "BLOCKS", &blocks);
        section(&mut out, "ENTITIES", &self.entities);
        section(&mut out, "OBJECTS", &self.objects());
        pair(&mut out, 0, "EOF");
        out
    }

    fn header(&self, out: &mut String) {
        let e = self.extent.unwrap_or_default();
        let mut body = String::new();
        let b = &mut body;
        pairs!(b; 9 "$ACADVER", 1 "AC1015", 9 "$DWGCODEPAGE", 3 "ANSI_1252");
        for (name, at) in [
            ("$INSBASE", [0.0, 0.0]),
            ("$EXTMIN", [e[0], e[2]]),
            ("$EXTMAX", [e[1], e[3]]),
        ] {
            pairs!(b; 9 name, 10 number(at[0]), 20 number(at[1]), 30 "0.0");
        }
        pairs!(b; 9 "$LUNITS", 70 2, 9 "$LUPREC", 70 4, 9 "$AUNITS", 70 0);
        // points as crosses
        pairs!(b; 9 "$PDMODE", 70 2, 9 "$PDSIZE", 40 number(self.size(0.1)));
        pairs!(b; 9 "$INSUNITS", 70 self.unit.code);
        pairs!(b; 9 "$MEASUREMENT", 70 i32::from(self.unit.metric));
        pairs!(b; 9 "$HANDSEED", 5 hex(self.handle));
        section(out, "HEADER", &body);
    }

    /// The tables, and the handle of the record of each mark.
    fn tables(&mut self) -> (String, Vec<String>) {
        let mut t = String::new();
        self.viewport(&mut t);
        let types = ["ByBlock", "ByLayer", "Continuous"];
        table(&mut t, "LTYPE", fixed::LINE_TYPES, types.len());
        for name in types {
            self.record(
                &mut t,
                "LTYPE",
                fixed::LINE_TYPES,
                "AcDbLinetypeTableRecord",
                name,
            );
            pairs!(&mut t; 3 "", 72 65, 73 0, 40 "0.0");
        }
        pair(&mut t, 0, "ENDTAB");
        let layers = std::mem::take(&mut self.layers);
        table(&mut t, "LAYER", fixed::LAYER_TABLE, layers.len());
        for layer in &layers {
            self.record(
                &mut t,
                "LAYER",
                fixed::LAYER_TABLE,
                "AcDbLayerTableRecord",
                &layer.name,
            );
            pairs!(&mut t; 62 layer.colour, 6 "Continuous");
        }
        pair(&mut t, 0, "ENDTAB");
        table(&mut t, "STYLE", fixed::STYLES, 1);
        self.record(
            &mut t,
            "STYLE",
            fixed::STYLES,
            "AcDbTextStyleTableRecord",
            "Standard",
        );
        pairs!(&mut t; 40 "0.0", 41 "1.0", 50 "0.0", 71 0, 42 "2.5", 3 "txt", 4 "");
        pair(&mut t, 0, "ENDTAB");
        for (name, handle) in [("VIEW", fixed::VIEWS), ("UCS", fixed::UCS)] {
            table(&mut t, name, handle, 0);
            pair(&mut t, 0, "ENDTAB");
        }
        table(&mut t, "APPID", fixed::APPS, 1);
        self.record(
            &mut t,
            "APPID",
            fixed::APPS,
            "AcDbRegAppTableRecord",
            "ACAD",
        );
        pair(&mut t, 0, "ENDTAB");
        table(&mut t, "DIMSTYLE", fixed::DIM_STYLES, 1);
        pair(&mut t, 100, "AcDbDimStyleTable");
        let style = self.next();
        pairs!(&mut t; 0 "DIMSTYLE", 105 style, 330 hex(fixed::DIM_STYLES));
        pairs!(&mut t; 100 "AcDbSymbolTableRecord", 100 "AcDbDimStyleTableRecord", 2 "Standard", 70 0);
        pair(&mut t, 0, "ENDTAB");
        table(
            &mut t,
            "BLOCK_RECORD",
            fixed::BLOCK_RECORDS,
            2 + MARKS.len(),
        );
        for (name, handle, layout) in [
            ("*Model_Space", fixed::MODEL, fixed::MODEL_LAYOUT),
            ("*Paper_Space", fixed::PAPER, fixed::PAPER_LAYOUT),
        ] {
            pairs!(&mut t; 0 "BLOCK_RECORD", 5 hex(handle), 330 hex(fixed::BLOCK_RECORDS));
            pairs!(&mut t; 100 "AcDbSymbolTableRecord", 100 "AcDbBlockTableRecord", 2 name, 340 hex(layout));
        }
        let mut records = Vec::new();
        for mark in 0..MARKS.len() {
            let record = self.next();
            pairs!(&mut t; 0 "BLOCK_RECORD", 5 record, 330 hex(fixed::BLOCK_RECORDS));
            pairs!(&mut t; 100 "AcDbSymbolTableRecord", 100 "AcDbBlockTableRecord", 2 marks::name(mark), 340 0);
            records.push(record);
        }
        pair(&mut t, 0, "ENDTAB");
        (t, records)
    }

    fn record(&mut self, out: &mut String, kind: &str, owner: u32, class: &str, name: &str) {
        let handle = self.next();
        pairs!(out; 0 kind, 5 handle, 330 hex(owner), 100 "AcDbSymbolTableRecord", 100 class, 2 name, 70 0);
    }

    /// The one view, onto the whole drawing.
    fn viewport(&mut self, out: &mut String) {
        table(out, "VPORT", fixed::VIEWPORTS, 1);
        self.record(
            out,
            "VPORT",
            fixed::VIEWPORTS,
            "AcDbViewportTableRecord",
            "*Active",
        );
        let e = self.extent.unwrap_or([0.0, 1.0, 0.0, 1.0]);
        let (x, y) = (0.5 * (e[0] + e[1]), 0.5 * (e[2] + e[3]));
        let height = 1.2 * (e[3] - e[2]).max((e[1] - e[0]) / 1.5).max(self.size(1.0));
        pairs!(out; 10 "0.0", 20 "0.0", 11 "1.0", 21 "1.0", 12 number(x), 22 number(y));
        pairs!(out; 13 "0.0", 23 "0.0", 14 "1.0", 24 "1.0", 15 "1.0", 25 "1.0");
        pairs!(out; 16 "0.0", 26 "0.0", 36 "1.0", 17 "0.0", 27 "0.0", 37 "0.0");
        pairs!(out; 40 number(height), 41 "1.5", 42 "50.0", 43 "0.0", 44 "0.0", 50 "0.0", 51 "0.0");
        pairs!(out; 71 0, 72 100, 73 1, 74 3, 75 0, 76 0, 77 0, 78 0);
        pair(out, 0, "ENDTAB");
    }

    fn blocks(&mut self, records: &[String]) -> String {
        let mut b = String::new();
        for (name, record) in [
            ("*Model_Space", fixed::MODEL),
            ("*Paper_Space", fixed::PAPER),
        ] {
            self.block(&mut b, name, &hex(record), |_, _| {});
        }
        for (i, (mark, record)) in MARKS.iter().zip(records).enumerate() {
            self.block(&mut b, &marks::name(i), record, |drawing, out| {
                for closed in mark.outlines {
                    drawing.stroke(out, record, closed, true);
                }
                for open in mark.strokes {
                    drawing.stroke(out, record, open, false);
                }
                if let Some(radius) = mark.circle {
                    let handle = drawing.next();
                    pairs!(out; 0 "CIRCLE", 5 handle, 330 record, 100 "AcDbEntity", 8 0, 100 "AcDbCircle");
                    pairs!(out; 10 "0.0", 20 "0.0", 30 "0.0", 40 number(drawing.size(radius)));
                }
            });
        }
        b
    }

    fn block(
        &mut self,
        out: &mut String,
        name: &str,
        record: &str,
        inside: impl FnOnce(&mut Self, &mut String),
    ) {
        let start = self.next();
        pairs!(out; 0 "BLOCK", 5 start, 330 record, 100 "AcDbEntity", 8 0, 100 "AcDbBlockBegin");
        pairs!(out; 2 name, 70 0, 10 "0.0", 20 "0.0", 30 "0.0", 3 name, 1 "");
        inside(self, out);
        let end = self.next();
        pairs!(out; 0 "ENDBLK", 5 end, 330 record, 100 "AcDbEntity", 8 0, 100 "AcDbBlockEnd");
    }

    fn stroke(&mut self, out: &mut String, record: &str, points: &[(f64, f64)], closed: bool) {
        let handle = self.next();
        pairs!(out; 0 "LWPOLYLINE", 5 handle, 330 record, 100 "AcDbEntity", 8 0);
        pairs!(out; 100 "AcDbPolyline", 90 points.len(), 70 i32::from(closed));
        for (x, y) in points {
            pairs!(out; 10 number(self.size(*x)), 20 number(self.size(*y)));
        }
    }

    fn objects(&self) -> String {
        let mut o = String::new();
        let root = [
            ("ACAD_GROUP", fixed::GROUPS),
            ("ACAD_LAYOUT", fixed::LAYOUTS),
        ];
        dictionary(&mut o, fixed::ROOT, 0, &root);
        dictionary(&mut o, fixed::GROUPS, fixed::ROOT, &[]);
        let layouts = [
            ("Model", fixed::MODEL_LAYOUT),
            ("Layout1", fixed::PAPER_LAYOUT),
        ];
        dictionary(&mut o, fixed::LAYOUTS, fixed::ROOT, &layouts);
        layout(&mut o, fixed::MODEL_LAYOUT, "Model", 0, fixed::MODEL);
        layout(&mut o, fixed::PAPER_LAYOUT, "Layout1", 1, fixed::PAPER);
        o
    }
}

fn section(out: &mut String, name: &str, body: &str) {
    pairs!(out; 0 "SECTION", 2 name);
    out.push_str(body);
    pair(out, 0, "ENDSEC");
}

fn table(out: &mut String, name: &str, handle: u32, entries: usize) {
    pairs!(out; 0 "TABLE", 2 name, 5 hex(handle), 330 0, 100 "AcDbSymbolTable", 70 entries);
}

fn dictionary(out: &mut String, handle: u32, owner: u32, entries: &[(&str, u32)]) {
    pairs!(out; 0 "DICTIONARY", 5 hex(handle), 330 hex(owner), 100 "AcDbDictionary", 281 1);
    for (name, entry) in entries {
        pairs!(out; 3 name, 350 hex(*entry));
    }
}

/// A layout with settings of no printer.
fn layout(out: &mut String, handle: u32, name: &str, order: u32, record: u32) {
    pairs!(out; 0 "LAYOUT", 5 hex(handle), 330 hex(fixed::LAYOUTS), 100 "AcDbPlotSettings");
    pairs!(out; 1 "", 4 "", 6 "", 40 "0.0", 41 "0.0", 42 "0.0", 43 "0.0", 44 "0.0", 45 "0.0");
    pairs!(out; 46 "0.0", 47 "0.0", 48 "0.0", 49 "0.0", 140 "0.0", 141 "0.0", 142 "1.0", 143 "1.0");
    let flags = if order == 0 { 1712 } else { 688 };
    pairs!(out; 70 flags, 72 1, 73 0, 74 5, 7 "", 75 16, 147 "1.0", 148 "0.0", 149 "0.0");
    pairs!(out; 100 "AcDbLayout", 1 name, 70 1, 71 order, 10 "0.0", 20 "0.0", 11 "420.0", 21 "297.0");
    pairs!(out; 12 "0.0", 22 "0.0", 32 "0.0", 14 "0.0", 24 "0.0", 34 "0.0", 15 "0.0", 25 "0.0", 35 "0.0");
    pairs!(out; 146 "0.0", 13 "0.0", 23 "0.0", 33 "0.0", 16 "1.0", 26 "0.0", 36 "0.0");
    pairs!(out; 17 "0.0", 27 "1.0", 37 "0.0", 76 0, 330 hex(record));
}

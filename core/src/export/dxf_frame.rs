//! What stands around the entities of a DXF drawing: header, tables, blocks and objects, with their handles.

use super::dxf::{DrawingUnit, Layer, LineType, Point};
use super::number::fixed;

/// Tags of group codes and values, with a counter of handles.
#[derive(Debug, Default)]
pub(super) struct Tags {
    out: String,
    next: u64,
}

impl Tags {
    pub(super) fn numbered_from(next: u64) -> Tags {
        Tags { out: String::new(), next }
    }

    pub(super) fn next_handle(&mut self) -> u64 {
        self.next += 1;
        self.next - 1
    }

    pub(super) fn peek_handle(&self) -> u64 {
        self.next
    }

    pub(super) fn as_str(&self) -> &str {
        &self.out
    }

    pub(super) fn text(&mut self, code: u16, value: &str) -> &mut Self {
        self.out.push_str(&format!("{code:>3}\n{value}\n"));
        self
    }

    pub(super) fn whole(&mut self, code: u16, value: i64) -> &mut Self {
        self.text(code, &value.to_string())
    }

    pub(super) fn real(&mut self, code: u16, value: f64) -> &mut Self {
        self.text(code, &fixed(value, 9))
    }

    pub(super) fn handle(&mut self, code: u16, value: u64) -> &mut Self {
        self.text(code, &format!("{value:X}"))
    }

    pub(super) fn point(&mut self, code: u16, p: Point, z: Option<f64>) -> &mut Self {
        self.real(code, p.0).real(code + 10, p.1);
        if let Some(z) = z {
            self.real(code + 20, z);
        }
        self
    }

    fn section(&mut self, name: &str) -> &mut Self {
        self.text(0, "SECTION").text(2, name)
    }

    fn variable(&mut self, name: &str) -> &mut Self {
        self.text(9, name)
    }

    /// The head of a table.
    fn table(&mut self, name: &str, handle: u64, count: usize) -> &mut Self {
        self.text(0, "TABLE").text(2, name).handle(5, handle).handle(330, 0).text(100, "AcDbSymbolTable");
        self.whole(70, i64::try_from(count).unwrap_or(i64::MAX))
    }

    /// The head of a record of a table.
    fn record(&mut self, kind: &str, handle: u64, table: u64, class: &str, name: &str) -> &mut Self {
        let code = if kind == "DIMSTYLE" { 105 } else { 5 };
        self.text(0, kind).handle(code, handle).handle(330, table).text(100, "AcDbSymbolTableRecord").text(100, class).text(2, name)
    }
}

const VPORT: u64 = 0x1;
const LTYPE: u64 = 0x2;
const LAYER: u64 = 0x3;
const STYLE: u64 = 0x4;
const VIEW: u64 = 0x5;
const UCS: u64 = 0x6;
const APPID: u64 = 0x7;
const DIMSTYLE: u64 = 0x8;
const BLOCK_RECORD: u64 = 0x9;
const ROOT: u64 = 0xA;
const GROUPS: u64 = 0xB;
const LAYOUTS: u64 = 0xC;
const PLOT_STYLES: u64 = 0xD;
const PLOT_NORMAL: u64 = 0xE;
const ACTIVE_PORT: u64 = 0x10;
const BY_BLOCK: u64 = 0x11;
const BY_LAYER: u64 = 0x12;
const CONTINUOUS: u64 = 0x13;
const DASHED: u64 = 0x14;
const DASH_DOT: u64 = 0x15;
const STANDARD_STYLE: u64 = 0x16;
const ACAD_ID: u64 = 0x17;
const STANDARD_DIM: u64 = 0x18;
/// The record of the block that holds the entities.
pub(super) const MODEL_RECORD: u64 = 0x19;
const PAPER_RECORD: u64 = 0x1A;
const MODEL_BLOCK: u64 = 0x1B;
const MODEL_END: u64 = 0x1C;
const PAPER_BLOCK: u64 = 0x1D;
const PAPER_END: u64 = 0x1E;
const MODEL_LAYOUT: u64 = 0x1F;
const PAPER_LAYOUT: u64 = 0x20;
const LAYER_ZERO: u64 = 0x21;
const FIRST_LAYER: u64 = 0x22;

/// The first handle that the frame leaves free.
pub(super) fn first_free(layers: usize) -> u64 {
    FIRST_LAYER + u64::try_from(layers).unwrap_or(u64::MAX - FIRST_LAYER)
}

/// Everything before the entities.
pub(super) fn before(unit: DrawingUnit, layers: &[Layer], low: Point, high: Point, seed: u64) -> String {
    let mut t = Tags::default();
    header(&mut t, unit, low, high, seed);
    t.section("CLASSES").text(0, "ENDSEC");
    t.section("TABLES");
    port_table(&mut t, low, high);
    line_types(&mut t, unit);
    t.table("LAYER", LAYER, layers.len() + 1);
    layer(&mut t, LAYER_ZERO, "0", 7, LineType::Continuous);
    for (l, handle) in layers.iter().zip(FIRST_LAYER..) {
        layer(&mut t, handle, l.name, l.colour, l.line_type);
    }
    t.text(0, "ENDTAB");
    other_tables(&mut t);
    t.text(0, "ENDSEC");
    t.section("BLOCKS");
    block(&mut t, "*Model_Space", MODEL_RECORD, MODEL_BLOCK, MODEL_END, false);
    block(&mut t, "*Paper_Space", PAPER_RECORD, PAPER_BLOCK, PAPER_END, true);
    t.text(0, "ENDSEC");
    t.section("ENTITIES");
    t.out
}

/// Everything after the entities.
pub(super) fn after() -> String {
    let mut t = Tags::default();
    t.text(0, "ENDSEC");
    t.section("OBJECTS");
    dictionary(&mut t, ROOT, 0, &[("ACAD_GROUP", GROUPS), ("ACAD_LAYOUT", LAYOUTS), ("ACAD_PLOTSTYLENAME", PLOT_STYLES)]);
    dictionary(&mut t, GROUPS, ROOT, &[]);
    dictionary(&mut t, LAYOUTS, ROOT, &[("Model", MODEL_LAYOUT), ("Layout1", PAPER_LAYOUT)]);
    t.text(0, "ACDBDICTIONARYWDFLT").handle(5, PLOT_STYLES).handle(330, ROOT).text(100, "AcDbDictionary").whole(281, 1);
    t.text(3, "Normal").handle(350, PLOT_NORMAL).text(100, "AcDbDictionaryWithDefault").handle(340, PLOT_NORMAL);
    t.text(0, "ACDBPLACEHOLDER").handle(5, PLOT_NORMAL).handle(330, PLOT_STYLES);
    layout(&mut t, MODEL_LAYOUT, "Model", 0, MODEL_RECORD);
    layout(&mut t, PAPER_LAYOUT, "Layout1", 1, PAPER_RECORD);
    t.text(0, "ENDSEC").text(0, "EOF");
    t.out
}

fn header(t: &mut Tags, unit: DrawingUnit, low: Point, high: Point, seed: u64) {
    let (code, metric) = match unit {
        DrawingUnit::Inch => (1, 0),
        DrawingUnit::Millimetre => (4, 1),
    };
    t.section("HEADER");
    t.variable("$ACADVER").text(1, "AC1015");
    t.variable("$DWGCODEPAGE").text(3, "ANSI_1252");
    t.variable("$INSBASE").point(10, (0.0, 0.0), Some(0.0));
    t.variable("$EXTMIN").point(10, low, Some(0.0));
    t.variable("$EXTMAX").point(10, high, Some(0.0));
    t.variable("$LUNITS").whole(70, 2);
    t.variable("$LUPREC").whole(70, 4);
    t.variable("$MEASUREMENT").whole(70, metric);
    t.variable("$INSUNITS").whole(70, code);
    t.variable("$CLAYER").text(8, "0");
    t.variable("$HANDSEED").handle(5, seed);
    t.text(0, "ENDSEC");
}

fn port_table(t: &mut Tags, low: Point, high: Point) {
    let height = (high.1 - low.1).max((high.0 - low.0) / 1.5).max(1.0);
    t.table("VPORT", VPORT, 1);
    t.record("VPORT", ACTIVE_PORT, VPORT, "AcDbViewportTableRecord", "*Active").whole(70, 0);
    t.point(10, (0.0, 0.0), None).point(11, (1.0, 1.0), None);
    t.point(12, ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0), None).point(13, (0.0, 0.0), None);
    t.point(14, (1.0, 1.0), None).point(15, (1.0, 1.0), None);
    t.point(16, (0.0, 0.0), Some(1.0)).point(17, (0.0, 0.0), Some(0.0));
    t.real(40, height).real(41, 1.5).real(42, 50.0).real(43, 0.0).real(44, 0.0).real(50, 0.0).real(51, 0.0);
    t.whole(71, 0).whole(72, 1000).whole(73, 1).whole(74, 3).whole(75, 0).whole(76, 0).whole(77, 0).whole(78, 0);
    t.text(0, "ENDTAB");
}

fn line_types(t: &mut Tags, unit: DrawingUnit) {
    // Dashes are for paper at full size: quarter-inch ones, or as long in millimetres.
    let dash = 6.35 / unit.millimetres();
    let patterns: [(u64, &str, &str, &[f64]); 5] = [
        (BY_BLOCK, "ByBlock", "", &[]),
        (BY_LAYER, "ByLayer", "", &[]),
        (CONTINUOUS, LineType::Continuous.name(), "full line", &[]),
        (DASHED, LineType::Dashed.name(), "long dashes", &[dash, -dash / 2.0]),
        (DASH_DOT, LineType::DashDot.name(), "a dash and a point", &[dash, -dash / 3.0, 0.0, -dash / 3.0]),
    ];
    t.table("LTYPE", LTYPE, patterns.len());
    for (handle, name, text, pattern) in patterns {
        t.record("LTYPE", handle, LTYPE, "AcDbLinetypeTableRecord", name).whole(70, 0).text(3, text).whole(72, 65);
        t.whole(73, i64::try_from(pattern.len()).unwrap_or(0)).real(40, pattern.iter().map(|d| d.abs()).sum());
        for d in pattern {
            t.real(49, *d).whole(74, 0);
        }
    }
    t.text(0, "ENDTAB");
}

fn layer(t: &mut Tags, handle: u64, name: &str, colour: i32, line_type: LineType) {
    t.record("LAYER", handle, LAYER, "AcDbLayerTableRecord", name).whole(70, 0).whole(62, i64::from(colour)).text(6, line_type.name());
    t.whole(370, -3).handle(390, PLOT_NORMAL);
}

fn other_tables(t: &mut Tags) {
    t.table("STYLE", STYLE, 1);
    t.record("STYLE", STANDARD_STYLE, STYLE, "AcDbTextStyleTableRecord", "Standard").whole(70, 0);
    t.real(40, 0.0).real(41, 1.0).real(50, 0.0).whole(71, 0).real(42, 2.5).text(3, "txt").text(4, "");
    t.text(0, "ENDTAB");
    t.table("VIEW", VIEW, 0).text(0, "ENDTAB");
    t.table("UCS", UCS, 0).text(0, "ENDTAB");
    t.table("APPID", APPID, 1);
    t.record("APPID", ACAD_ID, APPID, "AcDbRegAppTableRecord", "ACAD").whole(70, 0);
    t.text(0, "ENDTAB");
    t.table("DIMSTYLE", DIMSTYLE, 1).text(100, "AcDbDimStyleTable");
    t.record("DIMSTYLE", STANDARD_DIM, DIMSTYLE, "AcDbDimStyleTableRecord", "Standard").whole(70, 0).handle(340, STANDARD_STYLE);
    t.text(0, "ENDTAB");
    t.table("BLOCK_RECORD", BLOCK_RECORD, 2);
    for (handle, name, layout) in [(MODEL_RECORD, "*Model_Space", MODEL_LAYOUT), (PAPER_RECORD, "*Paper_Space", PAPER_LAYOUT)] {
        t.record("BLOCK_RECORD", handle, BLOCK_RECORD, "AcDbBlockTableRecord", name).handle(340, layout);
    }
    t.text(0, "ENDTAB");
}

fn block(t: &mut Tags, name: &str, record: u64, begin: u64, end: u64, paper: bool) {
    t.text(0, "BLOCK").handle(5, begin).handle(330, record).text(100, "AcDbEntity");
    if paper {
        t.whole(67, 1);
    }
    t.text(8, "0").text(100, "AcDbBlockBegin").text(2, name).whole(70, 0).point(10, (0.0, 0.0), Some(0.0)).text(3, name).text(1, "");
    t.text(0, "ENDBLK").handle(5, end).handle(330, record).text(100, "AcDbEntity");
    if paper {
        t.whole(67, 1);
    }
    t.text(8, "0").text(100, "AcDbBlockEnd");
}

fn dictionary(t: &mut Tags, handle: u64, owner: u64, entries: &[(&str, u64)]) {
    t.text(0, "DICTIONARY").handle(5, handle).handle(330, owner).text(100, "AcDbDictionary").whole(281, 1);
    for (name, entry) in entries {
        t.text(3, name).handle(350, *entry);
    }
}

fn layout(t: &mut Tags, handle: u64, name: &str, tab: i64, record: u64) {
    t.text(0, "LAYOUT").handle(5, handle).handle(330, LAYOUTS).text(100, "AcDbPlotSettings").text(1, "").text(2, "").text(4, "").text(6, "");
    for (code, value) in
        [(40, 7.5), (41, 20.0), (42, 7.5), (43, 20.0), (44, 420.0), (45, 297.0), (46, 0.0), (47, 0.0), (48, 0.0), (49, 0.0), (140, 0.0), (141, 0.0)]
    {
        t.real(code, value);
    }
    t.real(142, 1.0).real(143, 1.0).whole(70, if tab == 0 { 1024 } else { 0 }).whole(72, 1).whole(73, 0).whole(74, 5).text(7, "").whole(75, 16);
    t.real(147, 1.0).real(148, 0.0).real(149, 0.0);
    t.text(100, "AcDbLayout").text(1, name).whole(70, 1).whole(71, tab);
    t.point(10, (0.0, 0.0), None).point(11, (420.0, 297.0), None).point(12, (0.0, 0.0), Some(0.0));
    t.point(14, (0.0, 0.0), Some(0.0)).point(15, (0.0, 0.0), Some(0.0)).real(146, 0.0);
    t.point(13, (0.0, 0.0), Some(0.0)).point(16, (1.0, 0.0), Some(0.0)).point(17, (0.0, 1.0), Some(0.0)).whole(76, 0);
    t.handle(330, record);
}

//! A small DXF drawing of release 2000 (AC1015): layers, polylines with bulges, lines and text. There is no date and no name of a person in it.

use super::dxf_frame::{self, Tags};

/// A point of the drawing in its unit, y upwards.
pub(super) type Point = (f64, f64);

/// The unit of a drawing, said in its header.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum DrawingUnit {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
}

impl DrawingUnit {
    /// Millimetres in one unit.
    pub(super) const fn millimetres(self) -> f64 {
        match self {
            DrawingUnit::Millimetre => 1.0,
            DrawingUnit::Inch => 25.4,
        }
    }
}

/// The line types that a drawing has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LineType {
    Continuous,
    /// Long dashes.
    Dashed,
    /// A dash and a dot in turn.
    DashDot,
}

impl LineType {
    pub(super) const fn name(self) -> &'static str {
        match self {
            LineType::Continuous => "Continuous",
            LineType::Dashed => "LONG-DASH",
            LineType::DashDot => "DASH-POINT",
        }
    }
}

/// A layer: what lies on it has its colour, by the number of the colour index, and its line type.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layer {
    pub(super) name: &'static str,
    pub(super) colour: i32,
    pub(super) line_type: LineType,
}

/// A vertex of a polyline. The bulge belongs to the stretch that leaves it: the tangent of a quarter of the arc's angle, positive counter-clockwise.
#[derive(Debug, Clone, Copy)]
pub(super) struct Vertex {
    pub(super) at: Point,
    pub(super) bulge: f64,
}

/// A drawing under way. Every layer used must be among those given.
#[derive(Debug)]
pub(super) struct Dxf {
    unit: DrawingUnit,
    layers: &'static [Layer],
    entities: Tags,
    low: Point,
    high: Point,
}

impl Dxf {
    pub(super) fn new(unit: DrawingUnit, layers: &'static [Layer]) -> Dxf {
        let entities = Tags::numbered_from(dxf_frame::first_free(layers.len()));
        Dxf { unit, layers, entities, low: (f64::INFINITY, f64::INFINITY), high: (f64::NEG_INFINITY, f64::NEG_INFINITY) }
    }

    fn cover(&mut self, p: Point) {
        self.low = (self.low.0.min(p.0), self.low.1.min(p.1));
        self.high = (self.high.0.max(p.0), self.high.1.max(p.1));
    }

    fn entity(&mut self, kind: &str, layer: &Layer, class: &str) {
        let handle = self.entities.next_handle();
        self.entities.text(0, kind).handle(5, handle).handle(330, dxf_frame::MODEL_RECORD);
        self.entities.text(100, "AcDbEntity").text(8, layer.name).text(100, class);
    }

    /// A straight line.
    pub(super) fn line(&mut self, layer: &Layer, from: Point, to: Point) {
        self.cover(from);
        self.cover(to);
        self.entity("LINE", layer, "AcDbLine");
        self.entities.point(10, from, Some(0.0)).point(11, to, Some(0.0));
    }

    /// A polyline, closed or not; nothing of fewer than two vertices.
    pub(super) fn polyline(&mut self, layer: &Layer, vertices: &[Vertex], closed: bool) {
        if vertices.len() < 2 {
            return;
        }
        self.entity("LWPOLYLINE", layer, "AcDbPolyline");
        self.entities.whole(90, i64::try_from(vertices.len()).unwrap_or(i64::MAX)).whole(70, i64::from(closed));
        for v in vertices {
            self.cover(v.at);
            self.entities.point(10, v.at, None);
            if v.bulge != 0.0 {
                self.entities.real(42, v.bulge);
            }
        }
    }

    /// A text on its base line, turned counter-clockwise by these degrees about its left end.
    pub(super) fn text(&mut self, layer: &Layer, at: Point, height: f64, turned: f64, text: &str) {
        if text.is_empty() {
            return;
        }
        self.cover(at);
        self.entity("TEXT", layer, "AcDbText");
        self.entities.point(10, at, Some(0.0)).real(40, height).text(1, &encoded(text));
        if turned != 0.0 {
            self.entities.real(50, turned);
        }
        self.entities.text(100, "AcDbText");
    }

    /// The drawing.
    pub(super) fn finish(self) -> Vec<u8> {
        let (low, high) = if self.low.0 <= self.high.0 { (self.low, self.high) } else { ((0.0, 0.0), (0.0, 0.0)) };
        let mut out = dxf_frame::before(self.unit, self.layers, low, high, self.entities.peek_handle());
        out.push_str(self.entities.as_str());
        out.push_str(&dxf_frame::after());
        out.into_bytes()
    }
}

/// Text in plain ASCII: other characters by their number, as the format has it since before it had an encoding of its own.
fn encoded(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut units = [0_u16; 2];
    for c in text.chars() {
        match c {
            // A lone caret would be read as the start of a control code.
            '^' => out.push_str("^ "),
            ' '..='~' => out.push(c),
            c if c.is_control() => out.push(' '),
            c => {
                for unit in c.encode_utf16(&mut units) {
                    out.push_str(&format!("\\U+{unit:04X}"));
                }
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const LAYERS: &[Layer] =
        &[Layer { name: "ONE", colour: 1, line_type: LineType::Continuous }, Layer { name: "TWO", colour: 2, line_type: LineType::Dashed }];

    fn drawn() -> String {
        let mut dxf = Dxf::new(DrawingUnit::Inch, LAYERS);
        dxf.line(&LAYERS[0], (0.0, 0.0), (1.0, 2.0));
        dxf.polyline(&LAYERS[1], &[Vertex { at: (-1.0, 0.0), bulge: 1.0 }, Vertex { at: (1.0, 0.0), bulge: 0.0 }], true);
        dxf.text(&LAYERS[0], (0.0, 5.0), 0.1, 90.0, "3 5/8\" 90\u{b0}\n");
        String::from_utf8(dxf.finish()).unwrap()
    }

    /// Code and value of every tag.
    fn tags(text: &str) -> Vec<(i32, &str)> {
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines.len() % 2, 0);
        lines.chunks(2).map(|pair| (pair[0].trim().parse().unwrap(), pair[1])).collect()
    }

    #[test]
    fn handles_are_unique_and_below_the_seed() {
        let text = drawn();
        let tags = tags(&text);
        let seed = tags.windows(2).find(|w| w[0] == (9, "$HANDSEED")).map(|w| i64::from_str_radix(w[1].1, 16).unwrap()).unwrap();
        // A dimension style says its handle with code 105; 5 and 105 mean nothing else after the header.
        let start = tags.iter().position(|t| *t == (2, "TABLES")).unwrap();
        let mut handles: Vec<i64> = tags[start..].iter().filter(|t| t.0 == 5 || t.0 == 105).map(|t| i64::from_str_radix(t.1, 16).unwrap()).collect();
        let count = handles.len();
        handles.sort_unstable();
        handles.dedup();
        assert_eq!(handles.len(), count);
        assert!(handles.iter().all(|h| *h < seed));
        // Every owner exists; the root dictionary and the tables belong to the drawing itself, 0.
        for (_, owner) in tags[start..].iter().filter(|t| t.0 == 330) {
            let owner = i64::from_str_radix(owner, 16).unwrap();
            assert!(owner == 0 || handles.contains(&owner), "{owner:X}");
        }
    }

    #[test]
    fn the_header_says_release_unit_and_extent() {
        let text = drawn();
        let tags = tags(&text);
        let after = |name: &str| tags.iter().position(|t| *t == (9, name)).map(|i| tags[i + 1].1).unwrap();
        assert_eq!(after("$ACADVER"), "AC1015");
        assert_eq!(after("$INSUNITS"), "1");
        assert_eq!(after("$EXTMIN"), "-1.000000000");
        assert_eq!(tags.last(), Some(&(0, "EOF")));
        assert!(text.is_ascii());
        assert!(text.contains("3 5/8\" 90\\U+00B0 \n"));
    }

    #[test]
    fn the_same_drawing_is_the_same_bytes() {
        assert_eq!(drawn(), drawn());
    }

    #[test]
    fn an_empty_drawing_is_a_drawing() {
        let text = String::from_utf8(Dxf::new(DrawingUnit::Millimetre, LAYERS).finish()).unwrap();
        assert!(!text.contains("inf") && text.contains("$EXTMAX"));
    }

    #[test]
    fn carets_and_characters_beyond_the_first_plane_are_encoded() {
        assert_eq!(encoded("a^b\u{1f600}"), "a^ b\\U+D83D\\U+DE00");
    }
}

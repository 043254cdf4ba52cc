//! A small SVG document, in millimetres of paper, y downwards. The same calls give the same bytes.

use super::number::fixed;
use core::fmt::Write as _;

/// A point on paper in millimetres, y downwards.
pub(super) type Point = (f64, f64);

/// The unit in which a document says its physical size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum PaperUnit {
    /// Millimetres.
    Millimetre,
    /// Inches.
    Inch,
}

/// How lines and areas look. A group hands its look to what lies in it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Look {
    /// Colour of lines, or `none`.
    pub(super) stroke: &'static str,
    /// Width of lines.
    pub(super) width: f64,
    /// Dashes and gaps; empty for a full line.
    pub(super) dashes: &'static [f64],
    /// Colour of areas and of text, or `none`.
    pub(super) fill: &'static str,
}

impl Look {
    pub(super) const fn line(stroke: &'static str, width: f64) -> Look {
        Look { stroke, width, dashes: &[], fill: "none" }
    }

    pub(super) const fn dashed(stroke: &'static str, width: f64, dashes: &'static [f64]) -> Look {
        Look { stroke, width, dashes, fill: "none" }
    }

    pub(super) const fn area(fill: &'static str) -> Look {
        Look { stroke: "none", width: 0.0, dashes: &[], fill }
    }
}

/// One step of a path.
#[derive(Debug, Clone, Copy)]
pub(super) enum Go {
    /// To a point without a line.
    Move(Point),
    /// Straight to a point.
    Line(Point),
    /// To a point along a circle of this radius; `large` for more than half of it, `clockwise` as seen on paper.
    Arc { radius: f64, large: bool, clockwise: bool, to: Point },
    /// Back to where the path began.
    Close,
}

/// Which end of a text is put at its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// How wide a text is drawn, from its size: writers set it as the text's length, so that any font keeps to it.
pub(super) fn text_width(text: &str, size: f64) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|c| match c {
            ' ' | '.' | ',' | ':' | ';' | '\'' | '|' | 'i' | 'j' | 'l' | 'I' => 0.34,
            '"' | '-' | '/' | '(' | ')' | 'f' | 't' | 'r' | '\u{b0}' => 0.42,
            'm' | 'w' | 'M' | 'W' => 0.9,
            'A'..='Z' => 0.7,
            _ => 0.6,
        })
        .sum();
    ems * size
}

/// The width of a text that is set narrow, as print faces run.
pub(super) fn narrow_width(text: &str, size: f64) -> f64 {
    text_width(text, size) * 0.86
}

/// A document under way.
#[derive(Debug)]
pub(super) struct Svg {
    out: String,
    depth: usize,
}

impl Svg {
    /// A white page with a title, which readers show as its name.
    pub(super) fn new(width: f64, height: f64, unit: PaperUnit, title: &str) -> Svg {
        let size = |mm: f64| match unit {
            PaperUnit::Millimetre => format!("{}mm", fixed(mm, 3)),
            PaperUnit::Inch => format!("{}in", fixed(mm / 25.4, 4)),
        };
        let mut svg = Svg { out: String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"), depth: 0 };
        svg.push(&format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {} {}\" font-family=\"sans-serif\">",
            size(width),
            size(height),
            fixed(width, 3),
            fixed(height, 3)
        ));
        svg.depth = 1;
        svg.push(&format!("<title>{}</title>", escaped(title)));
        svg.push(&format!("<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>", fixed(width, 3), fixed(height, 3)));
        svg
    }

    fn push(&mut self, element: &str) {
        for _ in 0..self.depth {
            self.out.push(' ');
        }
        self.out.push_str(element);
        self.out.push('\n');
    }

    /// A group of one look, with its name as its title.
    pub(super) fn group(&mut self, name: &str, look: Look, inside: impl FnOnce(&mut Svg)) {
        let mut open = format!("<g stroke=\"{}\"", look.stroke);
        if look.stroke != "none" {
            let _ = write!(open, " stroke-width=\"{}\" stroke-linejoin=\"round\" stroke-linecap=\"round\"", fixed(look.width, 3));
        }
        if !look.dashes.is_empty() {
            let dashes: Vec<String> = look.dashes.iter().map(|d| fixed(*d, 2)).collect();
            let _ = write!(open, " stroke-dasharray=\"{}\"", dashes.join(" "));
        }
        let _ = write!(open, " fill=\"{}\">", look.fill);
        self.push(&open);
        self.depth += 1;
        self.push(&format!("<title>{}</title>", escaped(name)));
        inside(self);
        self.depth -= 1;
        self.push("</g>");
    }

    /// A straight line.
    pub(super) fn line(&mut self, from: Point, to: Point) {
        self.push(&format!("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"/>", at(from.0), at(from.1), at(to.0), at(to.1)));
    }

    /// Straight lines from point to point, closed or not.
    pub(super) fn polyline(&mut self, points: &[Point], closed: bool) {
        let list: Vec<String> = points.iter().map(|p| format!("{},{}", at(p.0), at(p.1))).collect();
        self.push(&format!("<{} points=\"{}\"/>", if closed { "polygon" } else { "polyline" }, list.join(" ")));
    }

    /// A circle.
    pub(super) fn circle(&mut self, centre: Point, radius: f64) {
        self.push(&format!("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>", at(centre.0), at(centre.1), at(radius)));
    }

    /// Lines and arcs.
    pub(super) fn path(&mut self, steps: &[Go]) {
        let mut d = String::new();
        for step in steps {
            if !d.is_empty() {
                d.push(' ');
            }
            let _ = match *step {
                Go::Move(p) => write!(d, "M{} {}", at(p.0), at(p.1)),
                Go::Line(p) => write!(d, "L{} {}", at(p.0), at(p.1)),
                Go::Arc { radius, large, clockwise, to } => {
                    write!(d, "A{r} {r} 0 {} {} {} {}", u8::from(large), u8::from(clockwise), at(to.0), at(to.1), r = at(radius))
                }
                Go::Close => write!(d, "Z"),
            };
        }
        self.push(&format!("<path d=\"{d}\"/>"));
    }

    /// A text of this size on its base line, turned clockwise by these degrees about its point.
    pub(super) fn text(&mut self, point: Point, size: f64, anchor: Anchor, turned: f64, text: &str) {
        self.text_as_wide_as(text_width(text, size), point, size, anchor, turned, text);
    }

    /// A text set narrow; else as [`Svg::text`].
    pub(super) fn narrow_text(&mut self, point: Point, size: f64, anchor: Anchor, turned: f64, text: &str) {
        self.text_as_wide_as(narrow_width(text, size), point, size, anchor, turned, text);
    }

    fn text_as_wide_as(&mut self, width: f64, point: Point, size: f64, anchor: Anchor, turned: f64, text: &str) {
        if text.is_empty() {
            return;
        }
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let mut open = format!("<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"", at(point.0), at(point.1), at(size));
        let _ = write!(open, " textLength=\"{}\" lengthAdjust=\"spacingAndGlyphs\"", at(width));
        if turned != 0.0 {
            let _ = write!(open, " transform=\"rotate({} {} {})\"", at(turned), at(point.0), at(point.1));
        }
        let _ = write!(open, ">{}</text>", escaped(text));
        self.push(&open);
    }

    /// The document.
    pub(super) fn finish(mut self) -> String {
        self.depth = 0;
        self.push("</svg>");
        self.out
    }
}

fn at(mm: f64) -> String {
    fixed(mm, 3)
}

/// Text as XML takes it; control characters, which XML does not have, become spaces.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_says_its_size_in_its_unit_and_draws_in_millimetres() {
        let mm = Svg::new(50.8, 25.4, PaperUnit::Millimetre, "a").finish();
        assert!(mm.contains("width=\"50.800mm\" height=\"25.400mm\" viewBox=\"0 0 50.800 25.400\""), "{mm}");
        let inch = Svg::new(50.8, 25.4, PaperUnit::Inch, "a").finish();
        assert!(inch.contains("width=\"2.0000in\" height=\"1.0000in\" viewBox=\"0 0 50.800 25.400\""), "{inch}");
    }

    #[test]
    fn text_cannot_break_the_document() {
        let mut svg = Svg::new(10.0, 10.0, PaperUnit::Millimetre, "<&\u{0}>");
        svg.group("\"", Look::area("#000000"), |svg| svg.text((1.0, 2.0), 3.0, Anchor::Middle, -90.0, "3 5/8\" <b> & 'x'"));
        let out = svg.finish();
        assert!(out.contains("<title>&lt;&amp; &gt;</title>"));
        assert!(out.contains(">3 5/8&quot; &lt;b&gt; &amp; &#39;x&#39;</text>"));
        assert!(out.contains("transform=\"rotate(-90.000 1.000 2.000)\""));
        assert_eq!(out.matches("<g ").count(), out.matches("</g>").count());
    }

    #[test]
    fn paths_are_written_step_by_step() {
        let mut svg = Svg::new(10.0, 10.0, PaperUnit::Millimetre, "a");
        svg.path(&[Go::Move((0.0, 0.0)), Go::Line((1.0, 0.0)), Go::Arc { radius: 2.0, large: false, clockwise: true, to: (3.0, 2.0) }, Go::Close]);
        assert!(svg.finish().contains("<path d=\"M0.000 0.000 L1.000 0.000 A2.000 2.000 0 0 1 3.000 2.000 Z\"/>"));
    }
}

//! The section of a junction as the crew reads it: what lies where, numbered, with the lines to strike.

use super::fold::Point;
use super::labels::Area;
use super::section_axis::{Axes, Other, SectionPlane};
use super::section_dims::LineRead;
use super::section_ink;
use super::section_scene::{Asked, LABEL, Numbered, Scene, Target};
use super::svg::{Anchor, Look, PaperUnit, Svg, narrow_width};
use crate::assembly::StruckLine;
use crate::error::{Error, ErrorKind};
use crate::junction::{Adjoining, Along, AlongLine, Bites, LayoutLine, Side, Solved};
use crate::units::{Length, LengthFormat};

const TITLE: f64 = 4.6;
const LEGEND: f64 = 3.9;
const ROW: f64 = 5.0;
const MARGIN: f64 = 2.0;
const INK: &str = "#000000";
const QUIET: &str = "#4a4a4a";

/// One entry of a drawing's key.
///
/// ```
/// use seamwright::export::KeyEntry;
/// let entry = KeyEntry { mark: "3".into(), text: "closures, 1 11/16\" high".into() };
/// assert_eq!(entry.mark, "3");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyEntry {
    /// The number or letter on the drawing.
    pub mark: String,
    /// What it marks.
    pub text: String,
}

/// The section of a junction drawn for the crew.
///
/// Parts are numbered, the lines to strike are lettered in the order of the work, and each line's distance is given from its datum. Trims lie at their
/// true place; sheet too thin to be seen is drawn thicker, and thin layers that lie on one another are drawn apart, as the drawing says.
///
/// ```
/// use seamwright::export::{JunctionDrawing, Other, SectionPlane};
/// use seamwright::junction::{Levels, Side, SideEnd, Solved};
/// use seamwright::panel::PanelEnd;
/// use seamwright::units::{Angle, Length, LengthFormat};
/// let solved = Solved {
///     ends: vec![SideEnd { side: Side::First, end: PanelEnd::hold_back(Length::inches(2)).with_turn_up(Length::inches(1)) }],
///     ..Solved::default()
/// };
/// let levels = Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() };
/// let plane = SectionPlane { rise: Angle::parse("18.4 deg")?, levels };
/// let drawing = JunctionDrawing::new("top of the porch", &solved, plane, Other::Wall, LengthFormat::parse("in/16")?)?;
/// assert_eq!(drawing.parts().first().map(|p| p.mark.as_str()), Some("1"));
/// assert!(drawing.svg()?.starts_with("<?xml"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct JunctionDrawing<'a> {
    title: &'a str,
    solved: &'a Solved,
    first: SectionPlane,
    other: Other,
    axes: Axes,
    format: LengthFormat,
    width: Length,
    height: Length,
    paper: PaperUnit,
    is_alone: bool,
    parts: Vec<KeyEntry>,
    numbered: Vec<Numbered>,
    reads: Vec<LineRead>,
    letters: Vec<String>,
}

impl<'a> JunctionDrawing<'a> {
    /// The drawing of a solved junction: its plane on the side of negative x, what is on the other side, and how lengths are written.
    /// The figure is at most 185 mm wide and 115 mm high, and sizes are said in millimetres, unless said otherwise.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a deck that is plumb or a face that does not go down, or a negative layer;
    /// [`ErrorKind::Conflict`](crate::error::ErrorKind::Conflict) where the junction has a second side and nothing is said to be there.
    pub fn new(title: &'a str, solved: &'a Solved, first: SectionPlane, other: Other, format: LengthFormat) -> Result<JunctionDrawing<'a>, Error> {
        let axes = Axes::of(solved, &first, &other)?;
        let (parts, numbered) = numbered(solved, format)?;
        let reads: Vec<LineRead> = solved.lines.iter().map(|l| LineRead { from_datum: l.from_datum, from_line: l.from_line }).collect();
        let letters = lettered(solved, format, &reads)?;
        Ok(JunctionDrawing {
            title,
            solved,
            first,
            other,
            axes,
            format,
            width: Length::micrometres(185_000),
            height: Length::micrometres(115_000),
            paper: PaperUnit::Millimetre,
            is_alone: true,
            parts,
            numbered,
            reads,
            letters,
        })
    }

    /// The same drawing with the figures of its lines as the crew reads them off its tape: those of [`Solved::lines`], in their order.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`](crate::error::ErrorKind::Conflict) where they are not as many.
    pub fn struck(mut self, struck: &[StruckLine]) -> Result<JunctionDrawing<'a>, Error> {
        let lines = self.solved.lines.len();
        if struck.len() != lines {
            let error = Error::new(ErrorKind::Conflict, "not a reading for each line of the section").at("struck");
            return Err(error.value_of(struck.len()).accepts(format!("{lines} of them")));
        }
        self.reads = struck.iter().map(|s| LineRead { from_datum: s.from_datum.read, from_line: s.from_line.read }).collect();
        self.letters = lettered(self.solved, self.format, &self.reads)?;
        Ok(self)
    }

    /// The greatest width and height of the figure on paper; the title and the key come around it.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for zero or less.
    pub fn figure(mut self, width: Length, height: Length) -> Result<JunctionDrawing<'a>, Error> {
        self.width = width.positive("width")?;
        self.height = height.positive("height")?;
        Ok(self)
    }

    /// The unit in which the drawing says its size.
    #[must_use]
    pub fn paper(mut self, unit: PaperUnit) -> JunctionDrawing<'a> {
        self.paper = unit;
        self
    }

    /// Without the title and the key of the lines, for a sheet that has both.
    #[must_use]
    pub fn for_sheet(mut self) -> JunctionDrawing<'a> {
        self.is_alone = false;
        self
    }

    /// The numbered parts, as the key names them. Parts of one name on both sides share a number.
    #[must_use]
    pub fn parts(&self) -> &[KeyEntry] {
        &self.parts
    }

    /// The letter of each of [`Solved::lines`], in their order. A line that is struck alike on both sides has one letter.
    #[must_use]
    pub fn lines(&self) -> Vec<KeyEntry> {
        self.letters.iter().zip(&self.solved.lines).map(|(mark, line)| KeyEntry { mark: mark.clone(), text: line.name.to_string() }).collect()
    }

    /// The drawing as SVG.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`](crate::error::ErrorKind::Missing) and [`ErrorKind::Geometry`](crate::error::ErrorKind::Geometry) for a trim without two
    /// corners apart; those of [`Profile::unfold`](crate::trim::Profile::unfold); [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) where a
    /// length cannot be rounded to the format.
    pub fn svg(&self) -> Result<String, Error> {
        let (scene, scale) = self.scene()?;
        Ok(self.write(&scene, scale))
    }

    /// Everything laid out at the largest of the usual scales at which it keeps to the figure, or else the smallest.
    pub(super) fn scene(&self) -> Result<(Scene, f64), Error> {
        const SCALES: [f64; 17] = [1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 100.0];
        let asked = Asked {
            solved: self.solved,
            first: &self.first,
            other: &self.other,
            axes: self.axes,
            format: self.format,
            reads: &self.reads,
            parts: &self.numbered,
            letters: &self.letters,
        };
        let (width, height) = (self.width.mm(), self.height.mm());
        let fits = |scene: &Scene| scene.area.high.0 - scene.area.low.0 <= width && scene.area.high.1 - scene.area.low.1 <= height;
        let bare = self.bare_extent();
        let mut smallest = 1.0;
        for n in SCALES {
            smallest = n;
            // Balloons take the most time: they are placed where the rest keeps to the figure.
            if bare.0 / n > width || bare.1 / n > height {
                continue;
            }
            let mut scene = asked.at_scale(1.0 / n).lay(1.0 / n)?;
            if fits(&scene) {
                asked.label(&mut scene, width, height);
                if fits(&scene) {
                    return Ok((scene, n));
                }
            }
        }
        let mut scene = asked.at_scale(1.0 / smallest).lay(1.0 / smallest)?;
        asked.label(&mut scene, width, height);
        Ok((scene, smallest))
    }

    /// Width and height of the trims in true millimetres.
    fn bare_extent(&self) -> Point {
        let mut area = Area::EMPTY;
        area.cover((0.0, 0.0));
        for c in self.solved.trims.iter().flat_map(|t| &t.corners) {
            area.cover((c.x.mm(), c.z.mm()));
        }
        (area.high.0 - area.low.0, area.high.1 - area.low.1)
    }

    pub(super) fn write(&self, scene: &Scene, scale: f64) -> String {
        let area = scene.area;
        let (figure_width, figure_height) = (area.high.0 - area.low.0, area.high.1 - area.low.1);
        let mut key: Vec<KeyEntry> = self.parts.clone();
        if self.is_alone {
            for line in self.lines() {
                if !key.contains(&line) {
                    key.push(line);
                }
            }
        }
        let note = format!("About 1:{scale}. Thin sheet is drawn thicker and thin layers apart; the figures are true.");
        let inner = self.width.mm().max(figure_width);
        let head = if self.is_alone { MARGIN + TITLE + 2.5 } else { 0.0 };
        // Beside a narrow figure, else under it.
        let beside = key_width(&key);
        let is_beside = figure_width + beside + 4.0 <= inner && key.iter().fold(ROW, |h, _| h + ROW) <= figure_height;
        let (columns, key_top) =
            if is_beside { (columns(&key, beside, inner - beside), head + 2.0) } else { (columns(&key, inner, 0.0), head + figure_height + 2.0) };
        let rows = columns.iter().map(|c| c.rows).fold(0.0, f64::max);
        let foot = if is_beside { head + figure_height + 1.0 } else { key_top + rows * ROW };
        let height = foot + ROW + if self.is_alone { MARGIN } else { 0.0 };
        let room = if is_beside { inner - beside } else { inner };
        let shift = MARGIN + (room - figure_width) / 2.0;
        let map = |p: Point| (p.0 - area.low.0 + shift, area.high.1 - p.1 + head);

        let mut svg = Svg::new(inner + 2.0 * MARGIN, height, self.paper, self.title);
        if self.is_alone {
            svg.group("title", Look::area(INK), |svg| svg.narrow_text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, self.title));
        }
        section_ink::draw(&mut svg, scene, |i| self.solved.trims.get(i).is_some_and(|t| is_cleat(self.solved, &t.name)), map);
        svg.group("key", Look::area(INK), |svg| {
            for column in &columns {
                let mut y = key_top + 0.75 * ROW;
                for entry in column.entries {
                    let x = MARGIN + column.at;
                    svg.narrow_text((x + 3.5, y), LEGEND, Anchor::Middle, 0.0, &entry.mark);
                    svg.narrow_text((x + 8.0, y), LEGEND, Anchor::Start, 0.0, &entry.text);
                    y += ROW;
                }
            }
        });
        svg.group("note", Look::area(QUIET), |svg| svg.narrow_text((MARGIN, foot + 0.75 * ROW), LABEL, Anchor::Start, 0.0, &note));
        svg.finish()
    }
}

/// A column of the key.
struct Column<'k> {
    entries: &'k [KeyEntry],
    at: f64,
    rows: f64,
}

/// The width of the key in one column.
fn key_width(entries: &[KeyEntry]) -> f64 {
    entries.iter().map(|k| narrow_width(&k.text, LEGEND)).fold(0.0, f64::max) + 12.0
}

/// The key in as many columns, up to four, as the width holds, from a place on.
fn columns(key: &[KeyEntry], width: f64, from: f64) -> Vec<Column<'_>> {
    for count in [4, 3, 2, 1] {
        let (mut out, mut at) = (Vec::new(), 0.0);
        for entries in key.chunks(key.len().div_ceil(count).max(1)) {
            out.push(Column { entries, at: from + at, rows: entries.iter().fold(0.0, |n, _| n + 1.0) });
            at += key_width(entries);
        }
        if at <= width || count == 1 {
            return out;
        }
    }
    Vec::new()
}

/// The letters of the lines; what reads alike on both sides, for one that walks away from the junction line, has one letter.
fn lettered(solved: &Solved, format: LengthFormat, reads: &[LineRead]) -> Result<Vec<String>, Error> {
    let mut out: Vec<String> = Vec::with_capacity(solved.lines.len());
    let mut read: Vec<(&LayoutLine, String, String)> = Vec::with_capacity(solved.lines.len());
    let mut next = 0;
    for (line, at) in solved.lines.iter().zip(reads) {
        let (from_datum, from_line) = (format.string(at.from_datum)?, format.string(at.from_line)?);
        let twin = read
            .iter()
            .position(|(l, datum, at)| l.side != line.side && l.name == line.name && l.datum == line.datum && *datum == from_datum && *at == from_line);
        let letter = match twin.and_then(|i| out.get(i)) {
            Some(letter) => letter.clone(),
            None => {
                next += 1;
                line_letter(next - 1)
            }
        };
        out.push(letter);
        read.push((line, from_datum, from_line));
    }
    Ok(out)
}

/// The letter of a line: A to Z without I and O, which read as figures, then A1 and so on.
fn line_letter(index: usize) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let letter = LETTERS.get(index % LETTERS.len()).map_or('?', |b| char::from(*b));
    match index / LETTERS.len() {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

/// Whether a trim is a cleat: something along the line of that kind bears its name.
fn is_cleat(solved: &Solved, name: &str) -> bool {
    solved.along.iter().any(|line| matches!(line.what, Along::ContinuousCleat | Along::OffsetCleat) && line.name.starts_with(name))
}

/// Trims, what lies along the line, and panels, in this order, each name with one number.
fn numbered(solved: &Solved, format: LengthFormat) -> Result<(Vec<KeyEntry>, Vec<Numbered>), Error> {
    let mut all: Vec<(String, Target)> = Vec::new();
    for (i, trim) in solved.trims.iter().enumerate() {
        all.push((trim.name.to_string(), Target::Trim(i)));
    }
    for (i, line) in solved.along.iter().enumerate() {
        let is_trim = matches!(line.what, Along::ContinuousCleat | Along::OffsetCleat) && solved.trims.iter().any(|t| line.name.starts_with(&*t.name));
        if !is_trim {
            let mut text = along_text(line, format)?;
            if let (Along::Closures { .. }, Some(ratio)) = (&line.what, open_ratio(solved)) {
                text = format!("{text}, perforated (open share {ratio})");
            }
            all.push((text, Target::Along(i)));
        }
    }
    for side in [Side::First, Side::Second] {
        if let Some(end) = solved.end(side) {
            let mut text = "panel".to_owned();
            for (what, length) in [("fold", end.fold), ("turned up", end.turn_up)] {
                if length.is_positive() {
                    text = format!("{text}, {what} {}", format.text(length)?.as_str());
                }
            }
            all.push((text, Target::Panel(side)));
        }
    }
    for (i, what) in solved.adjoining.iter().enumerate() {
        all.push((adjoining_text(what, format)?, Target::Adjoining(i)));
        if matches!(what, Adjoining::Pipe { .. }) {
            all.push(("boot, its base on the pan".to_owned(), Target::Boot(i)));
        }
    }
    let mut parts: Vec<KeyEntry> = Vec::new();
    let mut numbered: Vec<Numbered> = Vec::new();
    for (text, target) in all {
        match parts.iter().position(|p| p.text == text).and_then(|i| numbered.get_mut(i)) {
            Some(n) => n.targets.push(target),
            None => {
                let number = (parts.len() + 1).to_string();
                parts.push(KeyEntry { mark: number.clone(), text });
                numbered.push(Numbered { number, targets: vec![target] });
            }
        }
    }
    Ok((parts, numbered))
}

/// The open share of a vented ridge's closures.
fn open_ratio(solved: &Solved) -> Option<f64> {
    solved.adjoining.iter().find_map(|a| if let Adjoining::VentSlot { open_ratio, .. } = a { Some(*open_ratio) } else { None })
}

fn adjoining_text(what: &Adjoining, format: LengthFormat) -> Result<String, Error> {
    let text = |length: &Length| format.string(*length);
    Ok(match what {
        Adjoining::VentSlot { width, .. } => format!("slot in the deck, {} from the line", text(width)?),
        Adjoining::Gutter { back, front } => format!("gutter's opening, {} to {} off the line", text(back)?, text(front)?),
        Adjoining::Cladding { .. } => "cladding".to_owned(),
        Adjoining::BuiltUp { height, .. } => format!("deck built up by {}", text(height)?),
        Adjoining::Packing { height, .. } => format!("packing, {} thick, tapered off above", text(height)?),
        Adjoining::Pipe { diameter, .. } => format!("pipe of {}", text(diameter)?),
        Adjoining::JointCurbs { gap, width, height } => format!("curb, {} by {}, {} from the other", text(width)?, text(height)?, text(gap)?),
        Adjoining::Riser { height } => format!("riser, {} high", text(height)?),
        Adjoining::WallTop { thickness } => format!("wall, {} thick", text(thickness)?),
        Adjoining::Covered { top_edge, .. } if *top_edge == Length::ZERO => "what comes up the wall under the face, to the wall's top".to_owned(),
        Adjoining::Covered { top_edge, .. } => format!("what comes up the wall under the face, to {} below the top", text(&(-*top_edge).length()?)?),
    })
}

fn along_text(line: &AlongLine, format: LengthFormat) -> Result<String, Error> {
    let text = |length: Length| format.string(length);
    Ok(match &line.what {
        Along::Fasteners { bites, spacing, .. } => {
            let bites = if *bites == Bites::Slot { ", through slots" } else { "" };
            format!("{}, {} on centre{bites}", line.name, text(*spacing)?)
        }
        Along::Tape { width, .. } => format!("{}, {} wide", line.name, text(*width)?),
        Along::Bead { width, depth } => format!("{}, {} by {}", line.name, text(*width)?, text(*depth)?),
        Along::Closures { web } => format!("{}, {} high", line.name, text(*web)?),
        Along::ContinuousCleat | Along::OffsetCleat => line.name.to_string(),
    })
}

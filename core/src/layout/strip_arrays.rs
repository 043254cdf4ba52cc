//! Strips of many polygons in one call, as plain numbers: for a city of roofs, before ends and junctions are known.

use super::clip::{Clipper, Segment, between};
use super::grid::{Grid, Start};
use crate::error::{Error, ErrorKind, Faults};
use crate::roof::{Bounds, Point, RingCheck};
use crate::units::{Length, LengthArray, LengthUnit};
use core::ops::Range;

/// Polygons with holes in ragged arrays, laid out as GeoArrow lays out its polygons (GeoArrow 0.1, "Memory layout"): all vertices, where each ring starts
/// among them, and where each polygon starts among the rings.
///
/// ```
/// use seamwright::layout::PolygonArrays;
/// use seamwright::units::{LengthArray, LengthUnit};
/// // One triangle, closed as GeoArrow closes it.
/// let coordinates = LengthArray { values: &[0.0, 0.0, 3.0, 0.0, 3.0, 4.0, 0.0, 0.0], unit: LengthUnit::Metre };
/// assert_eq!(PolygonArrays { coordinates, rings: &[0, 4], polygons: &[0, 1] }.count(), 1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PolygonArrays<'a> {
    /// x and y of every vertex in turn: x across the slope, y up it, each rounded to the picometre. The last vertex of a ring may be the first again.
    pub coordinates: LengthArray<'a>,
    /// Where each ring starts, counted in vertices, and where the last one ends. A ring may run either way round.
    pub rings: &'a [usize],
    /// Where each polygon starts, counted in rings, and where the last one ends. The first ring of a polygon is the outer one, the others are holes.
    pub polygons: &'a [usize],
}

impl PolygonArrays<'_> {
    /// How many polygons there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.polygons.len().saturating_sub(1)
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let vertices = self.coordinates.values.len() / 2;
        if !self.coordinates.values.len().is_multiple_of(2) {
            let said = Error::new(ErrorKind::Conflict, "a vertex without its y").at("coordinates");
            faults.add(said.value_of(format_args!("{} numbers", self.coordinates.values.len())).accepts("two for each vertex"));
        }
        let counted = [("rings", self.rings, vertices, "vertices"), ("polygons", self.polygons, self.rings.len().saturating_sub(1), "rings")];
        for (path, offsets, end, of) in counted {
            if offsets.is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "without its end the last one has none").at(path).accepts("one number more than there are"));
            }
            if let Some((i, at)) = offsets.iter().enumerate().zip(offsets.iter().skip(1)).find(|((_, a), b)| a > b).map(|((i, _), b)| (i + 1, b)) {
                let said = Error::new(ErrorKind::Conflict, "it starts before the one before it").at(format!("{path}[{i}]")).value_of(at);
                faults.add(said.accepts("numbers that never fall"));
            }
            if let Some((i, at)) = offsets.iter().enumerate().find(|(_, at)| **at > end) {
                let said = Error::new(ErrorKind::Conflict, format!("there are not as many {of}")).at(format!("{path}[{i}]")).value_of(at);
                faults.add(said.accepts(format!("at most {end}")));
            }
        }
        faults.check()
    }
}

/// Runs that room is made for before they are found.
const AHEAD: usize = 1 << 16;

/// One polygon after the other, read and checked; the buffers are reused.
#[derive(Default)]
struct Polygon {
    points: Vec<Point>,
    /// The vertices of each ring among the points.
    rings: Vec<Range<usize>>,
    check: RingCheck,
    /// Of every run its strip, its number there, and left, right, foot, head, clear length and area.
    rows: Vec<(u32, u32, [f64; 6])>,
    /// The sides of the strips, and the heights there of the two lines that bound some of them.
    seams: Vec<f64>,
    heights: [Vec<f64>; 2],
    /// How many polygons are left, with this one.
    left: usize,
    /// Every corner in millimetres: from the middle of the bounds, and from their foot.
    corners: Vec<(f64, f64)>,
}

impl Polygon {
    fn read(&mut self, of: &PolygonArrays<'_>, first: usize, end: usize) -> Result<Bounds, Error> {
        self.points.clear();
        self.rings.clear();
        let offsets = of.rings.get(first..=end).unwrap_or_default();
        for (r, (&from, &to)) in offsets.iter().zip(offsets.iter().skip(1)).enumerate() {
            let under = || if r == 0 { "outer".to_owned() } else { format!("holes[{}]", r - 1) };
            self.ring(&of.coordinates, from, to).map_err(|e| e.under(&under()))?;
        }
        let points = &self.points;
        self.check.check(self.rings.iter().map(|r| points.get(r.clone()).unwrap_or_default()))
    }

    fn ring(&mut self, coordinates: &LengthArray<'_>, from: usize, to: usize) -> Result<(), Error> {
        let first = self.points.len();
        for (i, pair) in coordinates.values.get(2 * from..2 * to).unwrap_or_default().chunks_exact(2).enumerate() {
            let [x, y] = *pair else { continue };
            let one = |value: f64, axis: &str| Length::from_f64(value, coordinates.unit).map_err(|e| e.at(format!("[{i}].{axis}")));
            self.points.push(Point::new(one(x, "x")?, one(y, "y")?));
        }
        let ring = self.points.get(first..).unwrap_or_default();
        if ring.len() > 1 && ring.first() == ring.last() {
            self.points.pop();
        }
        self.rings.push(first..self.points.len());
        Ok(())
    }

    /// The edges that are not along the seams, by their left ends, and the x of every corner, both from the left.
    fn segments(&mut self, grid: &Grid) -> (Vec<Segment>, Vec<f64>) {
        let x = grid.mm_from_left();
        self.corners.clear();
        self.corners.extend(self.check.corners().map(|(across, up)| (x(across), up / 1e9)));
        let at = |corner: usize| self.corners.get(corner).copied().unwrap_or_default();
        let mut segments = Vec::with_capacity(self.corners.len());
        for (edge, (left, right)) in self.check.edges().enumerate() {
            if let Some(segment) = Segment::between(edge, at(left), at(right)) {
                segments.push(segment);
            }
        }
        (segments, self.check.order().map(|corner| at(corner).0).collect())
    }
}

/// The runs of the strips of many polygons, polygon by polygon, strip by strip from the left, in a strip from the foot up. All columns are equally long.
///
/// Nothing is rounded, and nothing is added at the ends: lengths are clear lengths.
#[derive(Debug, Clone, PartialEq, Default)]
#[non_exhaustive]
pub struct StripArrays {
    /// The polygon of each run, from 0.
    pub polygon: Vec<u32>,
    /// Its strip, from the left, from 0.
    pub strip: Vec<u32>,
    /// Its number in the strip, from the foot, from 0.
    pub run: Vec<u32>,
    /// The x of its left side.
    pub left: Vec<f64>,
    /// The x of its right side.
    pub right: Vec<f64>,
    /// The y of its lowest point.
    pub foot: Vec<f64>,
    /// The y of its highest point.
    pub head: Vec<f64>,
    /// The greatest clear length along the seams.
    pub clear: Vec<f64>,
    /// Its area, in the square of the unit.
    pub area: Vec<f64>,
}

/// The strips of many polygons, each laid with panels of one coverage from its own start; coordinates and lengths in `unit`.
///
/// Runs, sides and areas are those of a [`Layout`](super::Layout) of the same outline, before ends are added and lengths rounded.
///
/// # Errors
/// [`ErrorKind::Conflict`] for arrays that do not fit each other, [`ErrorKind::OutOfRange`] for a coverage that is not more than zero, and what
/// [`Outline::new`](crate::roof::Outline::new) and [`Start::seam`] refuse, at `polygons[i]`: every polygon at fault is named.
///
/// ```
/// use seamwright::layout::{strips, PolygonArrays, Start};
/// use seamwright::units::{Length, LengthArray, LengthUnit};
/// // A gable end of 4 m by 2 m, with a top that climbs 1 m to its middle.
/// let coordinates = LengthArray { values: &[0.0, 0.0, 4.0, 0.0, 4.0, 2.0, 2.0, 3.0, 0.0, 2.0], unit: LengthUnit::Metre };
/// let gable = PolygonArrays { coordinates, rings: &[0, 5], polygons: &[0, 1] };
/// let found = strips(gable, Length::parse("1 m")?, Start::Left, LengthUnit::Metre)?;
/// assert_eq!(found.strip, [0, 1, 2, 3]);
/// assert_eq!(found.clear, [2.5, 3.0, 3.0, 2.5]);
/// assert_eq!(found.area.iter().sum::<f64>(), 10.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn strips(polygons: PolygonArrays<'_>, coverage: Length, start: Start, unit: LengthUnit) -> Result<StripArrays, Error> {
    let mut faults = Faults::default();
    faults.keep(coverage.positive("coverage"));
    faults.keep(polygons.check());
    faults.check()?;
    let (mut out, mut polygon) = (StripArrays::default(), Polygon { left: polygons.count(), ..Polygon::default() });
    let mut faults = Faults::default();
    let back = 1.0 / mm_in(unit);
    for (k, (&first, &end)) in (0..).zip(polygons.polygons.iter().zip(polygons.polygons.iter().skip(1))) {
        let cut = polygon.read(&polygons, first, end).and_then(|bounds| {
            out.cut(k, &mut polygon, &bounds, Grid::new(&bounds, coverage, start)?, back);
            Ok(())
        });
        polygon.left -= 1;
        faults.keep(cut.map_err(|e| e.moved("panel.coverage", "coverage").under(&format!("polygons[{k}]"))));
    }
    faults.check()?;
    Ok(out)
}

impl StripArrays {
    /// Makes room for the runs of one polygon and, as far as that is not much, of as many like it as follow.
    fn reserve(&mut self, strips: usize, polygons: usize) {
        if self.area.capacity() - self.area.len() >= strips {
            return;
        }
        // Some strips hold several runs, and a column that must move costs more than room that is not used.
        let all = strips.saturating_mul(polygons).min(AHEAD);
        let runs = strips.max(all + all / 2);
        for column in [&mut self.polygon, &mut self.strip, &mut self.run] {
            column.reserve(runs);
        }
        for column in [&mut self.left, &mut self.right, &mut self.foot, &mut self.head, &mut self.clear, &mut self.area] {
            column.reserve(runs);
        }
    }

    fn cut(&mut self, polygon: u32, of: &mut Polygon, bounds: &Bounds, grid: Grid, back: f64) {
        let (segments, breaks) = of.segments(&grid);
        let (middle, low) = (grid.middle_mm(), bounds.low.y.mm());
        let mut clipper = Clipper::sorted(&segments, breaks, Vec::new());
        self.reserve(grid.count(), of.left);
        let rows = &mut of.rows;
        rows.clear();
        of.seams.clear();
        of.seams.extend(grid.sides());
        let (mut strip, mut rest) = (0, of.seams.as_slice());
        while let [left, right, ..] = *rest {
            // Mostly two lines bound several strips.
            let done = if let Some((count, lines)) = clipper.skip(rest) {
                let seams = rest.get(..=count).unwrap_or_default();
                for (heights, line) in of.heights.iter_mut().zip(lines) {
                    line.heights(seams, heights);
                }
                let [feet, heads] = &of.heights;
                let ends = pairs(seams).zip(pairs(feet).zip(pairs(heads)));
                rows.extend((strip..).zip(ends).map(|(strip, (sides, (foot, head)))| (strip, 0, between(sides, foot, head))));
                count
            } else {
                clipper.cut(left, right);
                rows.extend((0..).zip(clipper.spans()).map(|(run, r)| (strip, run, [r.left, r.right, r.foot, r.head, r.clear, r.area])));
                1
            };
            strip += u32::try_from(done).unwrap_or(u32::MAX);
            rest = rest.get(done..).unwrap_or_default();
        }
        // Column by column, which is quicker than row by row.
        self.polygon.extend(rows.iter().map(|_| polygon));
        self.strip.extend(rows.iter().map(|row| row.0));
        self.run.extend(rows.iter().map(|row| row.1));
        self.left.extend(rows.iter().map(|(.., [left, ..])| (middle + left) * back));
        self.right.extend(rows.iter().map(|(.., [_, right, ..])| (middle + right) * back));
        self.foot.extend(rows.iter().map(|(.., [_, _, foot, ..])| (low + foot) * back));
        self.head.extend(rows.iter().map(|(.., [.., head, _, _])| (low + head) * back));
        self.clear.extend(rows.iter().map(|(.., [.., clear, _])| clear * back));
        self.area.extend(rows.iter().map(|(.., [.., area])| area * (back * back)));
    }
}

/// Each number with the one after it.
fn pairs(of: &[f64]) -> impl Iterator<Item = [f64; 2]> {
    of.iter().zip(of.get(1..).unwrap_or_default()).map(|(&a, &b)| [a, b])
}

#[allow(clippy::cast_precision_loss, reason = "a unit's picometres are a whole number far below 2^53")]
fn mm_in(unit: LengthUnit) -> f64 {
    unit.picometres() as f64 / LengthUnit::Millimetre.picometres() as f64
}

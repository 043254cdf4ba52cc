//! The folded end of a panel that meets its line at a skew.

use super::shape::{BlankBend, BlankEdge, BlankFold, BlankLine, BlankSide, FlatBlank};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::size::to_length;
use crate::trim::{BendRule, BendSize, Edge, Point};
use crate::units::{Angle, Length};

/// How the ends of a panel's end fold are cut.
///
/// ```
/// use seamwright::trim::FoldEnds;
/// use seamwright::units::Length;
/// assert_ne!(FoldEnds::Mirrored, FoldEnds::Square { clear: Length::ZERO });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum FoldEnds {
    /// Along the mirror image of the seams in the fold line: folded, they lie along the seams.
    Mirrored,
    /// Square to the fold line, so far clear of the seams at every point of the fold, folded and flat.
    Square {
        /// How far clear, along the fold line.
        clear: Length,
    },
}

/// The end of a panel, folded under or over along its junction line, in the flat.
///
/// Left along the seams, the ends of a skew fold would overrun into the neighbouring seam, by twice the fold's depth times the cotangent of the
/// meeting angle; so they follow the mirror image of the seams, or are cut square and clear of them.
///
/// The blank has its seams along y, from x = 0 to the width, and the fold below: the panel lies above its finished end line, whose lower end is at y = 0.
///
/// # Errors
/// Computing refuses: a width, shown length or thickness of zero or less, a meeting angle that is not between 0 and 180 degrees
/// ([`ErrorKind::OutOfRange`]); a raw edge, which is no fold ([`ErrorKind::Conflict`]); a fold swallowed by its bend, square ends that leave nothing
/// ([`ErrorKind::Impossible`]); a bend that the rule does not cover.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Direction, Edge, EndFold, FoldEnds};
/// use seamwright::units::{Angle, Length};
/// // A panel that meets a hip at 45 degrees, with a 1 in fold; flat sums keep the figures plain.
/// let fold = EndFold {
///     width: Length::inches(16),
///     meeting: Angle::parse("45 deg")?,
///     hem: Edge::closed_hem(Length::inches(1), Direction::Down),
///     thickness: Length::mils(24),
///     rule: BendRule::SharpCorner,
///     ends: FoldEnds::Mirrored,
///     shown: Length::inches(12),
/// };
/// let made = fold.compute()?;
/// assert_eq!(made.overrun, Length::inches(2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct EndFold {
    /// Between the seams, square to them.
    pub width: Length,
    /// Between seams and line, in the panel's plane: 90 degrees is square. Below 90 the line rises towards x = width, beyond it falls.
    pub meeting: Angle,
    /// The fold, square to the line: its width from the outside of the fold to its edge.
    pub hem: Edge,
    /// Thickness of the sheet.
    pub thickness: Length,
    /// The rule of the fold, unless it has its own.
    pub rule: BendRule,
    /// How the fold's ends are cut.
    pub ends: FoldEnds,
    /// How much of the panel is shown above the finished end line, along the shorter of its sides.
    pub shown: Length,
}

/// A panel's folded end in the flat.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Direction, Edge, EndFold, FoldEnds};
/// use seamwright::units::{Angle, Length};
/// let fold = EndFold {
///     width: Length::inches(16),
///     meeting: Angle::SQUARE,
///     hem: Edge::closed_hem(Length::inches(1), Direction::Down),
///     thickness: Length::mils(24),
///     rule: BendRule::SharpCorner,
///     ends: FoldEnds::Mirrored,
///     shown: Length::inches(12),
/// };
/// let made = fold.compute()?;
/// // Square to the seams nothing overruns, and the flat is the panel and the fold.
/// assert_eq!((made.overrun, made.blank.bounds()?.size()?.1), (Length::ZERO, Length::inches(13)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FoldedEnd {
    /// The end of the panel in the flat.
    pub blank: FlatBlank,
    /// Beyond the finished end line, square to it: what the blank is longer for the fold.
    pub beyond: Length,
    /// From the bend line to the edge of the fold, square to the line.
    pub depth: Length,
    /// What each end would overrun, along the line, if it were left along the seam: 2 hem |cot(meeting)|.
    pub overrun: Length,
}

impl EndFold {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.width.positive("width"));
        faults.keep(self.shown.positive("shown"));
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.meeting.meeting());
        if let FoldEnds::Square { clear } = self.ends {
            faults.keep(clear.not_negative("ends.square.clear"));
        }
        faults.keep(self.hem.check(self.thickness).map_err(|e| e.under("hem")));
        if !matches!(self.hem, Edge::ClosedHem { .. } | Edge::OpenHem { .. }) {
            faults.add(Error::new(ErrorKind::Conflict, "no fold that hooks a panel's end").at("hem").value_of(self.hem.name()).accepts("closed-hem, open-hem"));
        }
        faults.check()
    }

    /// The corners of the fold below its bend line, towards x = 0 and towards the width: from the line's two ends, along it and beyond it.
    fn corners(&self, line: f64, depth: f64) -> Result<[(f64, f64); 4], Error> {
        let cot = num::cos_deg(self.meeting.degrees()) / num::sin_deg(self.meeting.degrees());
        match self.ends {
            FoldEnds::Mirrored => Ok([(0.0, 0.0), (depth * cot, depth), (line + depth * cot, depth), (line, 0.0)]),
            FoldEnds::Square { clear } => {
                // Flat, the seam beyond the line goes on by -depth cot; folded it comes back by as much the other way: both ends keep clear of both.
                let inset = clear.mm() + depth * cot.abs();
                if 2.0 * inset >= line {
                    return Err(Error::new(ErrorKind::Impossible, "square ends clear of the seams leave nothing of the fold")
                        .at("ends.square.clear")
                        .value_of(clear)
                        .accepts(format!("less than {}", to_length((line / 2.0 - depth * cot.abs()).max(0.0))?))
                        .cured_by("mirrored ends"));
                }
                Ok([(inset, 0.0), (inset, depth), (line - inset, depth), (line - inset, 0.0)])
            }
        }
    }
}

impl Calculation for EndFold {
    type Out = FoldedEnd;

    fn title(&self) -> String {
        "folded end of a panel".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<FoldedEnd, Error> {
        self.check()?;
        let Some(fold) = self.hem.fold(0, self.thickness) else {
            return Err(Error::new(ErrorKind::Internal, "a fault was lost"));
        };
        let size = BendSize { thickness: self.thickness, inside_radius: fold.inside_radius, angle: fold.angle };
        let setback = (fold.inside_radius + self.thickness).length()?;
        let allowance = fold.rule.unwrap_or(&self.rule).allowance(size).map_err(|e| e.at("rule"))?;
        if fold.width <= setback {
            return Err(Error::new(ErrorKind::Impossible, "the fold is swallowed by its bend")
                .at("hem.width")
                .value_of(fold.width)
                .accepts(format!("more than {setback}")));
        }
        let beyond = (fold.width + allowance - setback - setback).length()?;
        let to_line = (Length::from_pm(allowance.pm() / 2) - setback).length()?;
        let depth = (beyond - to_line).length()?;
        let (sin, cos) = (num::sin_deg(self.meeting.degrees()), num::cos_deg(self.meeting.degrees()));
        let overrun = to_length(2.0 * fold.width.mm() * (cos / sin).abs())?;
        r.step(|| {
            Step::new("what the blank is longer for the fold")
                .formula("hem + BA - 2 (R + T), square to the line")
                .with("hem", fold.width)
                .with("BA", allowance)
                .with("R + T", setback)
                .gives(beyond)
                .source(Source::geometry())
        });
        r.step(|| {
            Step::new("overrun of an end left along the seam")
                .formula("2 hem |cot(phi)|, along the line")
                .with("hem", fold.width)
                .with("phi", self.meeting)
                .gives(overrun)
                .source(Source::geometry())
        });

        // The finished end line from (0, y0) to (width, y1), its lower end at y = 0; along it (sin, cos), beyond it (cos, -sin).
        let rise = self.width.mm() * cos / sin;
        let (y0, y1) = ((-rise).max(0.0), rise.max(0.0));
        let top = y0.max(y1) + self.shown.mm();
        // The bend line lies beyond the finished end line by `to_line` (a negative figure is on the panel's side), between the seams.
        let on = |along: f64, by: f64| -> (f64, f64) {
            // The bend line starts on the seam x = 0, not square below the end line's start.
            let start = (0.0, y0 - to_line.mm() / sin);
            (start.0 + along * sin + by * cos, start.1 + along * cos - by * sin)
        };
        let put = |(x, y): (f64, f64)| -> Result<Point, Error> { Ok(Point { x: to_length(x)?, y: to_length(y)? }) };
        let line = self.width.mm() / sin;
        let [a, b, c, d] = self.corners(line, depth.mm())?;
        let (first, last) = (put(on(0.0, 0.0))?, Point { x: self.width, y: put(on(line, 0.0))?.y });
        let corner = |(along, by): (f64, f64)| put(on(along, by));
        let head = to_length(top)?;
        let points = [
            (Point { x: Length::ZERO, y: head }, BlankSide::StartEdge),
            (first, BlankSide::EndFold),
            (corner(a)?, BlankSide::EndFold),
            (corner(b)?, BlankSide::EndFold),
            (corner(c)?, BlankSide::EndFold),
            (if self.ends == FoldEnds::Mirrored { last } else { corner(d)? }, BlankSide::EndFold),
            (last, BlankSide::EndEdge),
            (Point { x: self.width, y: head }, BlankSide::FarEnd),
        ];
        let mut outline = Vec::with_capacity(points.len());
        for ((from, side), (to, _)) in points.iter().zip(points.iter().cycle().skip(1)) {
            if from != to {
                outline.push(BlankEdge { side: *side, from: *from, to: *to, arc: None });
            }
        }
        let mut blank = FlatBlank { thickness: self.thickness, outline, bends: Vec::new(), holes: Vec::new(), cautions: Vec::new() };
        blank.check()?;
        let half = allowance.mm() / 2.0;
        // Long enough to leave the metal on both sides.
        let over = depth.mm() + self.width.mm();
        let tangent = |by: f64| -> Result<BlankLine, Error> { Ok(BlankLine { from: put(on(-over, by))?, to: put(on(line + over, by))? }) };
        let mut tangents = blank.on_metal(tangent(-half)?)?;
        tangents.extend(blank.on_metal(tangent(half)?)?);
        let lines = match self.ends {
            FoldEnds::Mirrored => vec![BlankLine { from: first, to: last }],
            FoldEnds::Square { .. } => vec![BlankLine { from: corner(a)?, to: corner(d)? }],
        };
        blank.bends =
            vec![BlankBend { fold: BlankFold::EndFold, lines, tangents, angle: fold.angle, direction: fold.direction, inside_radius: fold.inside_radius }];
        Ok(FoldedEnd { blank, beyond, depth, overrun })
    }
}

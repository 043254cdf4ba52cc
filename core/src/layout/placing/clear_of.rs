//! What seams are kept clear of, and what a shift of them gives.

use super::super::grid::Start;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::Caution;
use crate::roof::{Bounds, Point};
use crate::units::{Length, Mass};

/// Something in the plane.
///
/// ```
/// use seamwright::layout::Obstacle;
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// let pipe = Obstacle::Round { centre: Point::new(Length::feet(9), Length::feet(6)), diameter: Length::inches(4) };
/// assert_eq!(pipe.across()?, (Length::inches(106), Length::inches(110)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum Obstacle {
    /// A point: a valley's foot, a hip's end.
    Point(Point),
    /// A straight line, such as the side of a curb.
    Line {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
    },
    /// A pipe, a mast, a flue.
    Round {
        /// Its centre.
        centre: Point,
        /// Across it.
        diameter: Length,
    },
}

impl Obstacle {
    /// How far it reaches across the slope: its least and its greatest x.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a diameter that is not more than zero, [`ErrorKind::Overflow`] beyond the range.
    pub fn across(&self) -> Result<(Length, Length), Error> {
        match *self {
            Obstacle::Point(p) => Ok((p.x, p.x)),
            Obstacle::Line { from, to } => Ok((from.x.min(to.x), from.x.max(to.x))),
            Obstacle::Round { centre, diameter } => {
                let half = diameter.positive("diameter")?.station(1, 2)?;
                Ok(((centre.x - half).length()?, (centre.x + half).length()?))
            }
        }
    }
}

/// Something that no seam shall come near.
///
/// ```
/// use seamwright::layout::{ClearOf, Obstacle};
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// let foot = ClearOf { name: "valley's foot".into(), what: Obstacle::Point(Point::default()), clearance: Length::inches(4) };
/// assert_eq!(foot.clearance, Length::inches(4));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ClearOf {
    /// What it is called.
    pub name: String,
    /// Where it is, in the plane.
    pub what: Obstacle,
    /// The least distance of a seam from it, across the slope.
    pub clearance: Length,
}

impl ClearOf {
    /// Its reach across the slope, where seams of this coverage can keep clear of it at all.
    pub(super) fn checked(&self, bounds: &Bounds, coverage: Length) -> Result<(Length, Length), Error> {
        let mut faults = Faults::default();
        faults.keep(self.clearance.not_negative("clearance"));
        let across = faults.keep(self.what.across().map_err(|e| e.under("what")));
        if let Some((left, right)) = across {
            if right < bounds.low.x || left > bounds.high.x {
                let accepts = format!("x from {} to {}", bounds.low.x, bounds.high.x);
                faults
                    .add(Error::new(ErrorKind::OutOfRange, "it lies beside the plane").at("what").value_of(format_args!("{left} to {right}")).accepts(accepts));
            }
            let needs = right - left + self.clearance * 2;
            if needs > coverage.into() && !self.clearance.is_negative() {
                faults.add(
                    Error::new(ErrorKind::Impossible, "a panel is narrower than this with its clearance on both sides: a seam always meets it")
                        .at("clearance")
                        .value_of(self.clearance)
                        .accepts(format!("what leaves it within {coverage}"))
                        .cured_by("a smaller clearance, or it left out"),
                );
            }
        }
        faults.check()?;
        across.ok_or_else(|| Error::new(ErrorKind::Internal, "an obstacle without a place"))
    }
}

/// Which of the shifts that keep clear is chosen.
///
/// ```
/// use seamwright::layout::Prefer;
/// assert_ne!(Prefer::Nearest, Prefer::Clearest);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum Prefer {
    /// The least move from the start asked for.
    Nearest,
    /// The greatest room beyond the clearances, at the place that has least.
    Clearest,
    /// The widest of the narrower end panel.
    WidestEnds,
    /// The least coil, of all shifts where something changes: where a clearance just holds, where a seam meets a corner of the outline, where both
    /// ends are equal.
    LeastCoil,
}

/// How far the seams are from one thing.
///
/// ```
/// use seamwright::layout::SeamDistance;
/// use seamwright::units::Length;
/// let pipe = SeamDistance { name: "pipe".into(), seam: Length::inches(16), distance: Length::inches(5), spare: Length::inches(2) };
/// assert!(pipe.spare.is_positive());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SeamDistance {
    /// What it is called.
    pub name: String,
    /// The x of the nearest seam line.
    pub seam: Length,
    /// How far that is from it; less than zero where the seam runs through it.
    pub distance: Length,
    /// What is left of the distance beyond the clearance; less than zero where it falls short.
    pub spare: Length,
}

/// Shifts that keep everything clear, both ends of the range among them.
///
/// ```
/// use seamwright::layout::ClearRange;
/// use seamwright::units::Length;
/// let range = ClearRange { from: Length::inches(3), to: Length::inches(7) };
/// assert!(range.from <= range.to);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ClearRange {
    /// The first, from the start asked for to the right; at least nothing and less than one coverage.
    pub from: Length,
    /// The last, at least the first.
    pub to: Length,
}

/// What a plane takes as it is laid.
///
/// ```
/// use seamwright::layout::LayCost;
/// use seamwright::units::Length;
/// let cost = LayCost { panels: 30, pieces: 30, lengths: 1, coil: Length::feet(600), mass: None };
/// assert_eq!(cost.panels, 30);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LayCost {
    /// Panels.
    pub panels: usize,
    /// Pieces to form.
    pub pieces: u64,
    /// Different marks.
    pub lengths: usize,
    /// The coil.
    pub coil: Length,
    /// Its mass, where the sheet's is known.
    pub mass: Option<Mass>,
}

/// The shift found, with what it costs.
///
/// ```
/// # use seamwright::layout::{ClearOf, EdgeUse, Layout, Obstacle, Prefer, SeamClearance, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 100), p(0, 100)], vec![])?;
/// # let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let pipe = ClearOf { name: "pipe".into(), what: Obstacle::Point(p(33, 50)), clearance: Length::inches(4) };
/// let found = SeamClearance { layout, clear_of: vec![pipe], prefer: Prefer::Nearest }.compute()?;
/// assert_eq!((found.shift, found.start), (Length::inches(-3), Start::Datum(Length::inches(-3))));
/// assert_eq!((found.asked.map(|c| c.panels), found.found.panels), (Some(4), 5));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SeamShift {
    /// The start to lay by: a datum on a seam.
    pub start: Start,
    /// How far the seams move from the start asked for, to the right; at most half a coverage either way.
    pub shift: Length,
    /// Whether every clearance holds.
    pub clear: bool,
    /// How far seams are from each thing, in the order given.
    pub distances: Vec<SeamDistance>,
    /// Every shift that keeps everything clear.
    pub ranges: Vec<ClearRange>,
    /// The width of the panel at the left bound of the plane.
    pub left_end: Length,
    /// The width of the panel at the right bound.
    pub right_end: Length,
    /// What the start asked for would take; none where it is refused.
    pub asked: Option<LayCost>,
    /// What the shift takes.
    pub found: LayCost,
    /// What to know before it is laid so.
    pub cautions: Vec<Caution>,
}

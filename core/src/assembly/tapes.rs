//! Tape and beads along a line.

use super::bay::{Bay, SideBays};
use super::closures::{alike, keep_once};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::sealant::{BeadOrder, BeadSection, SurfacePiece, TapeLine};
use crate::units::{Area, Length, Sum, Volume, VolumeUnit};

/// The panel's surface that tape follows over a seam.
///
/// ```
/// use seamwright::assembly::SeamSurface;
/// use seamwright::units::Length;
/// let seam = SeamSurface::upright(Length::inches(2), Length::inches(1))?;
/// assert_eq!((seam.side[0].rise, seam.side[1].across), (Length::inches(2), Length::inches_64(32)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SeamSurface {
    /// One side of a seam, piece after piece from its foot on the pan to the middle of its top; the other side is the same.
    pub side: Vec<SurfacePiece>,
    /// What ribs or beads add to the tape over one pan.
    #[cfg_attr(feature = "serde", serde(default))]
    pub ribs: Length,
}

impl SeamSurface {
    /// An upright seam of this height and this width, on a flat pan.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn upright(height: Length, width: Length) -> Result<SeamSurface, Error> {
        let half = width.station(1, 2)?;
        let side = vec![SurfacePiece { across: Length::ZERO, rise: height }, SurfacePiece { across: half, rise: Length::ZERO }];
        Ok(SeamSurface { side, ribs: Length::ZERO })
    }
}

/// How tape is lapped where it cannot follow the surface uncut.
///
/// ```
/// use seamwright::assembly::TapeChoice;
/// assert_eq!(TapeChoice::default().laps_per_seam_side, 0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TapeChoice {
    /// Length of one lap of tape on tape.
    #[cfg_attr(feature = "serde", serde(default))]
    pub lap: Length,
    /// Laps on each side of a seam: 2 for one at its foot and one at its top.
    #[cfg_attr(feature = "serde", serde(default))]
    pub laps_per_seam_side: u32,
}

/// Tape over the panels of one side of a line.
///
/// Each bay takes its pan and, for each end at a seam, one side of that seam; so a whole line takes every seam within it once, and of a seam at
/// its end the near side.
///
/// # Errors
/// Computing refuses what [`TapeLine`] refuses of surface and laps, under `surface`.
///
/// ```
/// use seamwright::assembly::{Bay, BayEnd, Flank, Hand, PanelEdge, SeamSurface, SideBays, TapeChoice, TapeOverPanels};
/// use seamwright::junction::Side;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let bay = |k: i16| Bay {
///     panel: 0, strip: 0, run: 0, mark: "A".into(), end: PanelEdge::Upper, from: Length::inches(16 * k), to: Length::inches(16 * (k + 1)),
///     length: Length::inches(16), width: Length::inches(16), meeting: Angle::SQUARE, hand: Hand::Square, notched: false, left: BayEnd::Seam, right: BayEnd::Seam,
/// };
/// let bays = SideBays {
///     side: Side::First, flank: Flank::Left, plane: 0, meeting: Angle::SQUARE, bays: (0..30).map(bay).collect(), gaps: vec![], beside: vec![],
///     seams: vec![], covered: Length::inches(480), cautions: vec![],
/// };
/// let surface = SeamSurface::upright(Length::inches(2), Length::inches(1))?;
/// let choice = TapeChoice { lap: Length::inches_64(32), laps_per_seam_side: 2 };
/// let tape = TapeOverPanels { bays: &bays, surface: &surface, choice }.compute()?;
/// // 15 in of pan, 2 + 1 + 2 in of seam and 2 in of laps in each of 30 bays.
/// assert_eq!(tape.length, Length::inches(660));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct TapeOverPanels<'a> {
    /// The bays.
    pub bays: &'a SideBays,
    /// The surface.
    pub surface: &'a SeamSurface,
    /// How the tape is lapped.
    pub choice: TapeChoice,
}

/// Tape developed over panels.
///
/// See [`TapeOverPanels`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct DevelopedTape {
    /// Straight along the bays.
    pub straight: Length,
    /// Developed over pans and seams, with its laps.
    pub length: Length,
    /// What to know before it is ordered.
    pub cautions: Vec<Caution>,
}

impl TapeOverPanels<'_> {
    /// The tape of bays alike, as the sealant's rule has it. Its rolls are of no use here: they are counted over all lines.
    fn line(&self, bay: &Bay, bays: usize) -> Result<TapeLine, Error> {
        let ends = bay.seam_ends();
        let across = Length::total(self.surface.side.iter().map(|p| &p.across))?;
        let pan = (bay.width - across.station(ends, 1)?).length()?;
        let mut section = vec![SurfacePiece { across: pan, rise: Length::ZERO }];
        if ends == 2 && self.surface.ribs.is_positive() {
            section.push(SurfacePiece { across: Length::ZERO, rise: self.surface.ribs });
        }
        for _ in 0..ends {
            section.extend(&self.surface.side);
        }
        Ok(TapeLine {
            section,
            bays: u32::try_from(bays).unwrap_or(u32::MAX),
            meeting: bay.meeting,
            lap: self.choice.lap,
            laps_per_bay: self.choice.laps_per_seam_side.saturating_mul(ends),
            waste_ratio: 0.0,
            roll: Length::MAX,
        })
    }
}

impl Calculation for TapeOverPanels<'_> {
    type Out = DevelopedTape;

    fn title(&self) -> String {
        "tape over the panels along a line".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<DevelopedTape, Error> {
        let mut faults = Faults::default();
        faults.keep(self.surface.ribs.not_negative("surface.ribs"));
        faults.keep(self.choice.lap.not_negative("choice.lap"));
        faults.check()?;
        let mut total = Sum::ZERO;
        let mut cautions = Vec::new();
        for bays in alike(&self.bays.bays) {
            let Some(bay) = bays.first().and_then(|k| self.bays.bays.get(*k)) else { continue };
            let line = self.line(bay, bays.len())?;
            let need = line.compute().map_err(|e| e.under("surface"))?;
            r.step(|| {
                Step::new("tape of bays alike")
                    .formula("bays (sum of sqrt((dx / sin phi)^2 + dz^2) + laps)")
                    .with("bays", bays.len())
                    .with("width", bay.width)
                    .with("seam sides", bay.seam_ends())
                    .with("phi", bay.meeting)
                    .with("one bay", need.per_bay)
                    .gives(need.total)
                    .source(Source::geometry())
            });
            total += need.total;
            for caution in need.cautions {
                keep_once(&mut cautions, caution);
            }
        }
        let length = total.length()?;
        r.step(|| Step::new("tape of the line").formula("all bays together").gives(length).source(Source::geometry()));
        Ok(DevelopedTape { straight: self.bays.covered, length, cautions })
    }
}

/// A bead along a line.
///
/// # Errors
/// Computing refuses a width, depth or length of zero or less ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::assembly::BeadAlong;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, VolumeUnit};
/// let bead = BeadAlong { width: Length::inches(1), depth: Length::inches(1), length: Length::inches(10) };
/// assert!((bead.compute()?.get(VolumeUnit::CubicInch) - 10.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BeadAlong {
    /// Width.
    pub width: Length,
    /// Depth.
    pub depth: Length,
    /// Length.
    pub length: Length,
}

impl Calculation for BeadAlong {
    type Out = Volume;

    fn title(&self) -> String {
        "bead along a line".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Volume, Error> {
        // Tubes are counted over all lines; here the cubic metre stands in for one.
        let tube = Volume::new(1.0, VolumeUnit::CubicMetre)?;
        let section = BeadSection::Rectangular { width: self.width, depth: self.depth };
        let need = BeadOrder { section, length: self.length, waste_ratio: 0.0, tube }.compute()?;
        let area: Area = need.area;
        r.step(|| {
            Step::new("volume of the bead")
                .formula("width depth length")
                .with("section", area)
                .with("length", self.length)
                .gives(need.volume)
                .source(Source::geometry())
        });
        Ok(need.volume)
    }
}

/// Refuses a tape over seams whose surface nobody gave.
pub(super) fn surface_missing(name: &str) -> Error {
    Error::new(ErrorKind::Missing, "tape crosses the seams, and their surface is not given")
        .at("sides.surface")
        .value_of(name)
        .accepts("the side of a seam, piece after piece")
}

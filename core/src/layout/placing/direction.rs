//! From which side panels are laid, and what each way costs.

use super::super::cautions;
use super::super::input::Layout;
use super::super::laid::LaidPlane;
use crate::error::Error;
use crate::panel::DevelopedWidth;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Area, Length, Mass, MassUnit, SurfaceMassUnit};

/// The way in which panels follow each other. The overlapping leg of each new panel closes on the open leg of the one before, so the open edge of
/// every lap looks back to where laying began.
///
/// ```
/// use seamwright::layout::LayDirection;
/// assert_eq!(LayDirection::LeftToRight.mirrored(), LayDirection::RightToLeft);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LayDirection {
    /// Overlapping leg on the left, open leg on the right.
    LeftToRight,
    /// Overlapping leg on the right, open leg on the left.
    RightToLeft,
}

impl LayDirection {
    /// The direction of the mirrored plane.
    #[must_use]
    pub const fn mirrored(self) -> LayDirection {
        match self {
            LayDirection::LeftToRight => LayDirection::RightToLeft,
            LayDirection::RightToLeft => LayDirection::LeftToRight,
        }
    }
}

/// A side of the plane, as seen looking up the slope.
///
/// ```
/// use seamwright::layout::PlaneSide;
/// assert_ne!(PlaneSide::Left, PlaneSide::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PlaneSide {
    /// The left.
    Left,
    /// The right.
    Right,
}

/// A layout whose direction is to be chosen.
///
/// ```
/// # use seamwright::layout::{DirectionOfLay, EdgeUse, Layout, PlaneSide, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let ways = DirectionOfLay { layout, wind_from: Some(PlaneSide::Left) }.compute()?;
/// // The 8 in rip at the right loses its right leg: the open one of 1 1/4 in, or the overlapping one of 1 1/2 in.
/// assert_eq!(ways.left_to_right.widest_offcut, Length::parse("9 1/4\"")?);
/// assert_eq!(ways.right_to_left.widest_offcut, Length::parse("9 1/2\"")?);
/// assert_eq!((ways.left_to_right.laps_face_wind, ways.right_to_left.laps_face_wind), (Some(true), Some(false)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DirectionOfLay {
    /// The layout.
    pub layout: Layout,
    /// The side that wind with rain mostly comes from, where that is known.
    #[cfg_attr(feature = "serde", serde(default))]
    pub wind_from: Option<PlaneSide>,
}

/// What one direction costs.
///
/// ```
/// use seamwright::layout::{DirectionCost, LayDirection};
/// use seamwright::units::{Area, Length};
/// let cost = DirectionCost {
///     direction: LayDirection::LeftToRight, starts_on_rip: false, ripped: 0, open_legs_cut: 0, overlapping_legs_cut: 0,
///     widest_offcut: Length::ZERO, offcut: Area::ZERO, offcut_mass: None, laps_face_wind: None,
/// };
/// assert_eq!(cost.ripped, 0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct DirectionCost {
    /// The direction.
    pub direction: LayDirection,
    /// Whether the first strip to be laid has a cut edge: the crew then starts from a line and not from a leg.
    pub starts_on_rip: bool,
    /// Panels with a cut edge beside the slope.
    pub ripped: usize,
    /// Ripped panels whose open leg is cut away.
    pub open_legs_cut: usize,
    /// Ripped panels whose overlapping leg is cut away.
    pub overlapping_legs_cut: usize,
    /// The widest strip that is ripped off a panel, its leg with it.
    pub widest_offcut: Length,
    /// Everything that is ripped off, before an edge is turned up at a rake or a wall.
    pub offcut: Area,
    /// Its mass, where the sheet's is known.
    pub offcut_mass: Option<Mass>,
    /// Whether the laps look into the wind, where its side is known.
    pub laps_face_wind: Option<bool>,
}

/// Both directions.
///
/// ```
/// # use seamwright::layout::{DirectionOfLay, EdgeUse, Layout, LayDirection, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(32, 0), p(32, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let ways = DirectionOfLay { layout, wind_from: None }.compute()?;
/// assert_eq!(ways.of(LayDirection::LeftToRight).ripped, 0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LayDirections {
    /// From left to right.
    pub left_to_right: DirectionCost,
    /// From right to left.
    pub right_to_left: DirectionCost,
    /// What to know of the choice.
    pub cautions: Vec<Caution>,
}

impl LayDirections {
    /// The cost of this direction.
    #[must_use]
    pub const fn of(&self, direction: LayDirection) -> &DirectionCost {
        match direction {
            LayDirection::LeftToRight => &self.left_to_right,
            LayDirection::RightToLeft => &self.right_to_left,
        }
    }
}

impl DirectionOfLay {
    fn cost(&self, laid: &LaidPlane, width: &DevelopedWidth, direction: LayDirection) -> Result<DirectionCost, Error> {
        let first = match direction {
            LayDirection::LeftToRight => laid.panels.iter().map(|p| p.strip).min(),
            LayDirection::RightToLeft => laid.panels.iter().map(|p| p.strip).max(),
        };
        let began = match direction {
            LayDirection::LeftToRight => PlaneSide::Left,
            LayDirection::RightToLeft => PlaneSide::Right,
        };
        let mut out = DirectionCost {
            direction,
            starts_on_rip: false,
            ripped: 0,
            open_legs_cut: 0,
            overlapping_legs_cut: 0,
            widest_offcut: Length::ZERO,
            offcut: Area::ZERO,
            offcut_mass: None,
            laps_face_wind: self.wind_from.map(|wind| wind == began),
        };
        let mut area = 0_i128;
        for p in &laid.panels {
            let cut = [(PlaneSide::Left, p.left_on_seam), (PlaneSide::Right, p.right_on_seam)];
            if cut.iter().all(|(_, on_seam)| *on_seam) {
                continue;
            }
            out.ripped += 1;
            let mut off = (self.layout.panel.coverage - p.width).length()?;
            for (side, _) in cut.into_iter().filter(|(_, on_seam)| !on_seam) {
                // The overlapping leg is on the side where laying began.
                let (count, leg) = if side == began { (&mut out.overlapping_legs_cut, width.high_leg) } else { (&mut out.open_legs_cut, width.low_leg) };
                *count += 1;
                off = (off + leg).length()?;
                out.starts_on_rip |= Some(p.strip) == first && side == began;
            }
            out.widest_offcut = out.widest_offcut.max(off);
            area += i128::from(off.pm()) * i128::from(p.order.pm()) * i128::from(p.pieces);
        }
        out.offcut = area_of(area);
        out.offcut_mass = self.layout.sheet.map(|m| {
            let kilograms = out.offcut.get(crate::units::AreaUnit::SquareMetre) * m.get(SurfaceMassUnit::KilogramPerSquareMetre);
            Mass::of(kilograms, MassUnit::Kilogram)
        });
        Ok(out)
    }
}

/// An area from whole square picometres, rounded once.
#[allow(clippy::cast_precision_loss, reason = "areas are floating point by design, rounded once here")]
pub(crate) fn area_of(square_picometres: i128) -> Area {
    Area::of(square_picometres as f64 / 1e24, crate::units::AreaUnit::SquareMetre)
}

impl Calculation for DirectionOfLay {
    type Out = LayDirections;

    fn title(&self) -> String {
        "the direction of laying".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LayDirections, Error> {
        let laid = self.layout.compute().map_err(|e| e.under("layout"))?;
        let width = self.layout.panel.compute().map_err(|e| e.under("layout.panel"))?;
        let [left_to_right, right_to_left] = [LayDirection::LeftToRight, LayDirection::RightToLeft].map(|d| self.cost(&laid, &width, d));
        let (left_to_right, right_to_left) = (left_to_right?, right_to_left?);
        for (what, cost) in [("ripped off, left to right", &left_to_right), ("ripped off, right to left", &right_to_left)] {
            r.step(|| {
                Step::new(what)
                    .formula("sum of (coverage - width + legs cut away) x order length")
                    .with("open leg", width.low_leg)
                    .with("overlapping leg", width.high_leg)
                    .with("panels", cost.ripped)
                    .gives(cost.offcut)
                    .source(Source::geometry())
            });
        }
        let mut cautions = Vec::new();
        if let Some(facing) = [&left_to_right, &right_to_left].into_iter().find(|c| c.laps_face_wind == Some(true)) {
            let way = if facing.direction == LayDirection::LeftToRight { "from left to right" } else { "from right to left" };
            cautions.push(Caution::new(cautions::LAPS_FACE_WIND, "wind_from", Source::CommonPractice).arg("way", way));
        }
        Ok(LayDirections { left_to_right, right_to_left, cautions })
    }
}

//! Whether the moving ends of the panels have the room that they need.

use super::bay::PanelEdge;
use super::cautions::{END_FAILS, END_NOT_CHECKED};
use super::clips::FixedZone;
use super::pins::{Fixing, PlanePins};
use super::plane_panels::PlanePanels;
use crate::error::{Error, ErrorKind};
use crate::layout::{EndPart, LaidPanel};
use crate::movement::{EndCheck, EndMovement, EndVerdict, MovingEnd};
use crate::panel::PanelEnd;
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::units::{Angle, Expansion, Length, Temperature};
use std::collections::BTreeMap;

/// The metal, its temperatures, and what its ends must keep in hand.
///
/// ```
/// use seamwright::assembly::MovementChoice;
/// use seamwright::practice;
/// use seamwright::units::{Expansion, Temperature};
/// let choice = MovementChoice {
///     expansion: Expansion::parse("12e-6 /K")?,
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
///     clearance: practice::movement::CLEARANCE,
///     engagement: practice::movement::ENGAGEMENT,
/// };
/// assert!(choice.coldest < choice.hottest);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MovementChoice {
    /// Coefficient of linear expansion of the panels.
    pub expansion: Expansion,
    /// The coldest that the metal gets.
    pub coldest: Temperature,
    /// Its temperature when it is laid.
    pub laid: Temperature,
    /// The hottest that it gets.
    pub hottest: Temperature,
    /// Least gap that must stay, square to the line.
    pub clearance: Length,
    /// Least length that must stay hooked, square to the line.
    pub engagement: Length,
}

/// The moving ends of a plane's panels, checked edge by edge.
///
/// A panel pinned at an end, or at an opening, is taken to move over its whole finished length, on the safe side. Panels with a fault of their pins are passed over:
/// the pins' cautions name them.
///
/// # Errors
/// Computing refuses pins of another plane ([`ErrorKind::Conflict`]) and what [`EndCheck`] refuses, under `choice`.
///
/// ```
/// use seamwright::assembly::{MovementChoice, MovementPlan, PinPlan, PlanePanels};
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Hold, Panel, PanelEnd, Seam};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::{Expansion, Length, Temperature};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 40), p(0, 40)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |e| match (e.from.x == e.to.x, e.from.y == Length::ZERO) {
///     (true, _) => EdgeUse::Side,
///     (false, true) => EdgeUse::End(PanelEnd::hold_back(Length::inches(1)).with_fold(Length::inches(1))),
///     (false, false) => EdgeUse::End(PanelEnd::hold_back(Length::ZERO).holding(Hold::Pins)),
/// })?;
/// let laid = layout.compute()?;
/// let panels = PlanePanels::new("south", &layout, &laid)?;
/// let pins = PinPlan { panels: &panels, pinned_along: &[], fixed: None, tolerance: None }.compute()?;
/// let choice = MovementChoice {
///     expansion: Expansion::parse("6.7e-6 /degF")?,
///     coldest: Temperature::parse("-20 degF")?,
///     laid: Temperature::parse("70 degF")?,
///     hottest: Temperature::parse("160 degF")?,
///     clearance: practice::movement::CLEARANCE,
///     engagement: practice::movement::ENGAGEMENT,
/// };
/// let moves = MovementPlan { panels: &panels, pins: &pins, fixed: None, choice: &choice }.compute()?;
/// // 40 ft of steel over 180 degF need a fold of 1.08 in; 1 in without a gap does not do.
/// assert_eq!((moves.ends.len(), moves.ends[0].failing), (1, 30));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct MovementPlan<'a> {
    /// The plane's panels.
    pub panels: &'a PlanePanels<'a>,
    /// What pins them.
    pub pins: &'a PlanePins,
    /// The band of fixed clips, as given to the pins.
    pub fixed: Option<FixedZone>,
    /// Metal, temperatures and what to keep.
    pub choice: &'a MovementChoice,
}

/// The panels that move at one edge.
///
/// See [`MovementPlan`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EdgeMovement {
    /// The edge, in the order of the outline's.
    pub edge: usize,
    /// Which end of the panels lies there.
    pub end: PanelEdge,
    /// The meeting angle.
    pub meeting: Angle,
    /// How many panels move there.
    pub panels: usize,
    /// The panel that moves most.
    pub worst: usize,
    /// The same in words.
    pub worst_name: String,
    /// From its moving end to its fixed line, along the seam.
    pub to_fixed: Length,
    /// The fold given.
    pub fold: Length,
    /// The gap given.
    pub gap: Length,
    /// How far that end moves over the year, square to the line.
    pub travel: Length,
    /// The verdict on fold and gap for that panel, with what would do; `None` where the end hooks nothing.
    pub verdict: Option<EndVerdict>,
    /// How many panels fail.
    pub failing: usize,
}

/// How the panels of a plane move.
///
/// See [`MovementPlan`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneMovement {
    /// Each edge at which panels move, in the order of the outline's.
    pub ends: Vec<EdgeMovement>,
    /// What fails, and what else to know.
    pub cautions: Vec<Caution>,
}

/// Panels that move at an edge, with the distance to the fixed line.
type Moving = Vec<(Length, usize)>;

/// Them edge by edge, with the meeting angle there.
type MovingAt = BTreeMap<(usize, PanelEdge), (Angle, Moving)>;

impl<'a> MovementPlan<'a> {
    fn end(&self, edge: usize) -> Option<&'a PanelEnd> {
        self.panels.layout().end_at(edge)
    }

    /// From the end of a panel that lies on this part to its fixed line.
    fn travel_length(&self, panel: &LaidPanel, fixing: Fixing, end: PanelEdge, part: &EndPart) -> Result<Length, Error> {
        let Some(zone) = self.fixed.filter(|_| fixing == Fixing::Zone) else { return Ok(panel.finished) };
        let beyond = match self.end(part.edge) {
            Some(e) => e.along_seam(part.meeting())?,
            None => Length::ZERO,
        };
        let (low, high) = (part.left.y.min(part.right.y), part.left.y.max(part.right.y));
        // The near edge of the band holds the panel.
        let clear = match end {
            PanelEdge::Lower => zone.from - low,
            PanelEdge::Upper => high - zone.to,
        };
        Ok((clear + beyond).length()?.max(Length::ZERO))
    }

    fn gather(&self) -> Result<MovingAt, Error> {
        let mut out = MovingAt::new();
        for (panel, pin) in self.panels.laid().panels.iter().zip(&self.pins.panels) {
            let lower = matches!(pin.fixing, Fixing::Upper | Fixing::Zone | Fixing::Opening);
            let upper = matches!(pin.fixing, Fixing::Lower | Fixing::Zone | Fixing::Opening);
            for (end, parts, moves) in [(PanelEdge::Lower, &panel.lower, lower), (PanelEdge::Upper, &panel.upper, upper)] {
                for part in parts.iter().filter(|p| moves && self.end(p.edge).is_some()) {
                    let to_fixed = self.travel_length(panel, pin.fixing, end, part)?;
                    out.entry((part.edge, end)).or_insert_with(|| (part.meeting(), Vec::new())).1.push((to_fixed, pin.panel));
                }
            }
        }
        Ok(out)
    }

    fn movement(&self, end: PanelEdge, meeting: Angle, to_fixed: Length) -> EndMovement {
        let c = self.choice;
        EndMovement {
            end: match end {
                PanelEdge::Lower => MovingEnd::LowerHooked,
                PanelEdge::Upper => MovingEnd::UpperSliding,
            },
            expansion: c.expansion,
            to_fixed,
            coldest: c.coldest,
            laid: c.laid,
            hottest: c.hottest,
            clearance: c.clearance,
            engagement: c.engagement,
            meeting,
        }
    }

    /// One edge; its panels from the one that moves least.
    fn edge<R: Recorder>(&self, (edge, end): (usize, PanelEdge), meeting: Angle, moving: &Moving, r: &mut R) -> Result<Option<EdgeMovement>, Error> {
        let (Some(given), Some(&(to_fixed, _))) = (self.end(edge), moving.last()) else { return Ok(None) };
        // Of panels that move alike the first by number.
        let worst = moving.get(moving.partition_point(|m| m.0 < to_fixed)).map_or(0, |m| m.1);
        let movement = self.movement(end, meeting, to_fixed);
        let check = |movement| EndCheck { movement, fold: given.fold, gap: given.gap };
        let under = |e: Error| e.under("choice");
        let (verdict, room, failing) = if given.fold.is_positive() {
            let verdict = r.part(|| format!("edge {edge}, {}", self.panels.panel_name(worst)), |r| check(movement).run(r)).map_err(under)?;
            let mut failing = 0;
            if !verdict.holds {
                // A panel that moves less needs no more room, so those that hold come first.
                let (mut low, mut high) = (0, moving.len());
                while low < high {
                    let middle = low.midpoint(high);
                    let at = moving.get(middle).map_or(to_fixed, |m| m.0);
                    if check(self.movement(end, meeting, at)).compute().map_err(under)?.holds { low = middle + 1 } else { high = middle }
                }
                failing = moving.len() - low;
            }
            let room = verdict.would_do;
            (Some(verdict), room, failing)
        } else {
            let room = r.part(|| format!("edge {edge}, {}", self.panels.panel_name(worst)), |r| movement.run(r)).map_err(under)?;
            (None, room, 0)
        };
        Ok(Some(EdgeMovement {
            edge,
            end,
            meeting,
            panels: moving.len(),
            worst,
            worst_name: self.panels.panel_name(worst),
            to_fixed,
            fold: given.fold,
            gap: given.gap,
            travel: (room.closing + room.opening).length()?,
            verdict,
            failing,
        }))
    }
}

/// What is said of an edge.
fn remarks(e: &EdgeMovement) -> Option<Caution> {
    let name = match e.end {
        PanelEdge::Lower => "lower",
        PanelEdge::Upper => "upper",
    };
    let caution = |code, count: usize| Caution::new(code, format!("ends[{}]", e.edge), Source::geometry()).arg("count", count).arg("end", name);
    match &e.verdict {
        Some(v) if !v.holds => Some(
            caution(END_FAILS, e.failing)
                .arg("panel", &e.worst_name)
                .arg("length", e.to_fixed)
                .arg("fold", e.fold)
                .arg("gap", e.gap)
                .arg("needs", format_args!("a fold of {} with a gap of {} would do", v.would_do.least_fold, v.would_do.gap_when_laid)),
        ),
        Some(_) => None,
        None => e.travel.is_positive().then(|| caution(END_NOT_CHECKED, e.panels).arg("travel", e.travel)),
    }
}

impl Calculation for MovementPlan<'_> {
    type Out = PlaneMovement;

    fn title(&self) -> String {
        format!("movement of the panels of {}", self.panels.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PlaneMovement, Error> {
        let (panels, pins) = (self.panels.laid().panels.len(), self.pins.panels.len());
        if panels != pins {
            return Err(Error::new(ErrorKind::Conflict, "the pins are not those of this plane").at("pins").value_of(pins).accepts(format!("{panels} panels")));
        }
        let mut out = PlaneMovement { ends: Vec::new(), cautions: Vec::new() };
        for (key, (meeting, mut moving)) in self.gather()? {
            moving.sort_unstable();
            out.ends.extend(self.edge(key, meeting, &moving, r)?);
        }
        for e in &out.ends {
            out.cautions.extend(remarks(e));
            // What the check says beside the failure itself: movement along the line.
            let along = e.verdict.iter().flat_map(|v| &v.cautions).filter(|c| c.code() == crate::movement::cautions::MOVES_ALONG_LINE);
            out.cautions.extend(along.cloned().map(|c| c.under(&format!("ends[{}]", e.edge))));
        }
        Ok(out)
    }
}

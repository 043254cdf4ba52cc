//! What pins each panel.

use super::cautions::{NO_PIN, PINNED_ALONG, TWO_PINS};
use super::clips::FixedZone;
use super::plane_panels::{PlanePanels, foot, head};
use crate::error::{Error, ErrorKind, Faults};
use crate::layout::{EndPart, LaidPanel};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Calculation, Caution, CautionCode, Recorder, Source, Step};
use crate::units::Length;

/// Where a panel is pinned.
///
/// ```
/// use seamwright::assembly::Fixing;
/// assert!(Fixing::Upper.lets_move() && !Fixing::Twice.lets_move());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Fixing {
    /// At its lower end.
    Lower,
    /// At its upper end.
    Upper,
    /// By the fixed clips of its seams.
    Zone,
    /// At the edge of an opening that it is cut around.
    Opening,
    /// At two levels: a fault.
    Twice,
    /// Along a side: a fault.
    Along,
    /// Nowhere: a fault.
    Nowhere,
}

impl Fixing {
    /// Whether the panel is held, and can move with heat.
    #[must_use]
    pub const fn lets_move(self) -> bool {
        matches!(self, Fixing::Lower | Fixing::Upper | Fixing::Zone | Fixing::Opening)
    }
}

/// What pins the panels of a plane.
///
/// An end pins as its junction's [`PanelEnd`] says; the layout's edges hold them. Pins no farther apart along a seam than the tolerance count as one.
///
/// # Errors
/// Computing refuses an edge that the outline has not ([`ErrorKind::OutOfRange`]), a negative tolerance, and a fixed zone that ends below its start
/// ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::assembly::{Fixing, PinPlan, PlanePanels};
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Hold, Panel, PanelEnd, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)], vec![])?;
/// let end = |hold| EdgeUse::End(PanelEnd::hold_back(Length::ZERO).holding(hold));
/// let layout = Layout::new(outline, panel, Start::Left, |e| match (e.from.x == e.to.x, e.from.y == Length::ZERO) {
///     (true, _) => EdgeUse::Side,
///     (false, eave) => end(if eave { Hold::Slides } else { Hold::Pins }),
/// })?;
/// let laid = layout.compute()?;
/// let panels = PlanePanels::new("south", &layout, &laid)?;
/// let pins = PinPlan { panels: &panels, pinned_along: &[], fixed: None, tolerance: None }.compute()?;
/// assert!(pins.panels.iter().all(|p| p.fixing == Fixing::Upper));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct PinPlan<'a> {
    /// The plane's panels.
    pub panels: &'a PlanePanels<'a>,
    /// Edges along the seams, in the order of the outline's, whose junction pins the panels beside them along their length, as a Z screwed through the
    /// pan does. An edge along the seams whose use says that it pins counts without being named.
    pub pinned_along: &'a [usize],
    /// The band of fixed clips, which pins every panel that crosses it.
    pub fixed: Option<FixedZone>,
    /// How far apart pins may be and still count as one; `None` for the drop over one panel at its skew pinned ends, coverage * |cot| of the meeting angle.
    pub tolerance: Option<Length>,
}

/// What pins one panel.
///
/// See [`PinPlan`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelPin {
    /// The panel, as a number in [`LaidPlane::panels`](crate::layout::LaidPlane::panels).
    pub panel: usize,
    /// Where it is pinned.
    pub fixing: Fixing,
    /// How far apart its pins are, where there are two levels.
    pub apart: Option<Length>,
}

/// What pins the panels of a plane.
///
/// See [`PinPlan`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlanePins {
    /// Each panel, in the order of the laid plane.
    pub panels: Vec<PanelPin>,
    /// The faults, each with its first panel.
    pub cautions: Vec<Caution>,
}

impl PlanePins {
    /// How many panels are pinned so.
    #[must_use]
    pub fn count(&self, fixing: Fixing) -> usize {
        self.panels.iter().filter(|p| p.fixing == fixing).count()
    }
}

/// The lowest and the highest place of pins.
type Band = (Length, Length);

/// Height of an end at this x.
fn height(parts: &[EndPart], x: Length) -> Option<f64> {
    let part = parts.iter().find(|p| p.left.x <= x && x <= p.right.x)?;
    let (x0, x1) = (part.left.x.mm(), part.right.x.mm());
    let share = if x1 > x0 { (x.mm() - x0) / (x1 - x0) } else { 0.0 };
    Some(part.left.y.mm() + (part.right.y.mm() - part.left.y.mm()) * share)
}

/// The greatest clear length of a panel between its ends, in millimetres.
fn greatest_clear(panel: &LaidPanel) -> f64 {
    let xs = panel.lower.iter().chain(&panel.upper).flat_map(|p| [p.left.x, p.right.x]);
    xs.filter_map(|x| Some(height(&panel.upper, x)? - height(&panel.lower, x)?)).fold(0.0, f64::max)
}

impl<'a> PinPlan<'a> {
    fn end(&self, edge: usize) -> Option<&'a PanelEnd> {
        self.panels.layout().end_at(edge)
    }

    /// The band of the parts that pin, and the drop over one panel at the most skew of them.
    fn pinned(&self, parts: &[EndPart]) -> Option<(Band, f64)> {
        let mut out: Option<(Band, f64)> = None;
        for part in parts.iter().filter(|p| self.end(p.edge).is_some_and(|e| e.hold == Hold::Pins)) {
            let (low, high) = (part.left.y.min(part.right.y), part.left.y.max(part.right.y));
            let drop = self.panels.layout().panel.coverage.mm() * part.skew.tan().abs();
            out = Some(out.map_or(((low, high), drop), |(band, d)| ((band.0.min(low), band.1.max(high)), d.max(drop))));
        }
        out
    }

    fn fixing(&self, panel: &LaidPanel, along: bool, opening: Option<Band>) -> Result<(Fixing, Option<Length>), Error> {
        if along {
            return Ok((Fixing::Along, None));
        }
        let (lower, upper) = (self.pinned(&panel.lower), self.pinned(&panel.upper));
        let zone = self.fixed.filter(|z| z.from <= head(panel) && z.to >= foot(panel)).map(|z| (z.from, z.to));
        let drop = lower.map_or(0.0, |l| l.1).max(upper.map_or(0.0, |u| u.1));
        let tolerance = match self.tolerance {
            Some(t) => t,
            None => Length::from_mm(drop)?,
        };
        let mut apart = match (lower, upper) {
            (Some(_), Some(_)) => Length::from_mm(greatest_clear(panel))?,
            _ => Length::ZERO,
        };
        // Between the others what counts is the room between their bands.
        let bands: Vec<Band> = [lower.map(|l| l.0), opening, zone, upper.map(|u| u.0)].into_iter().flatten().collect();
        let ends_only = opening.is_none() && zone.is_none();
        for (k, a) in bands.iter().enumerate().filter(|_| !ends_only) {
            for b in bands.iter().skip(k + 1) {
                apart = apart.max((a.0.max(b.0) - a.1.min(b.1)).length()?);
            }
        }
        let several = bands.len() > 1;
        let apart_at = several.then_some(apart);
        if several && apart > tolerance {
            return Ok((Fixing::Twice, apart_at));
        }
        let fixing = match (lower, upper, zone, opening) {
            (_, Some(_), ..) => Fixing::Upper,
            (Some(_), None, ..) => Fixing::Lower,
            (None, None, Some(_), _) => Fixing::Zone,
            (None, None, None, Some(_)) => Fixing::Opening,
            (None, None, None, None) => Fixing::Nowhere,
        };
        Ok((fixing, apart_at))
    }

    /// The heights at which the edges of openings pin each panel that is cut around them.
    fn openings(&self) -> Result<Vec<Option<Band>>, Error> {
        let mut out: Vec<Option<Band>> = vec![None; self.panels.laid().panels.len()];
        for (k, e) in self.panels.edges().iter().enumerate() {
            if e.from.x == e.to.x || self.end(k).is_none_or(|e| e.hold != Hold::Pins) {
                continue;
            }
            let ends = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            for (panel, (a, b)) in self.panels.passing(k, ends)? {
                if let Some(band) = out.get_mut(panel) {
                    let (low, high) = (a.y.min(b.y), a.y.max(b.y));
                    *band = Some(band.map_or((low, high), |o| (o.0.min(low), o.1.max(high))));
                }
            }
        }
        Ok(out)
    }

    /// Which panels an edge along the seams pins along their length.
    fn along(&self) -> Result<Vec<bool>, Error> {
        let mut along = vec![false; self.panels.laid().panels.len()];
        let said = self.panels.edges().iter().enumerate().filter(|(k, e)| e.from.x == e.to.x && self.end(*k).is_some_and(|e| e.hold == Hold::Pins));
        let edges: Vec<usize> = self.pinned_along.iter().copied().chain(said.map(|(k, _)| k)).collect();
        for edge in edges {
            for panel in self.panels.beside_edge(edge).ok_or_else(|| {
                Error::new(ErrorKind::OutOfRange, "the outline has no such edge")
                    .at("pinned_along")
                    .value_of(edge)
                    .accepts(format!("less than {}", self.panels.edges().len()))
            })? {
                if let Some(a) = along.get_mut(panel) {
                    *a = true;
                }
            }
        }
        Ok(along)
    }
}

impl Calculation for PinPlan<'_> {
    type Out = PlanePins;

    fn title(&self) -> String {
        format!("pins of the panels of {}", self.panels.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PlanePins, Error> {
        let mut faults = Faults::default();
        if let Some(t) = self.tolerance {
            faults.keep(t.not_negative("tolerance"));
        }
        if let Some(zone) = self.fixed {
            faults.keep(zone.check("fixed"));
        }
        faults.check()?;
        let (along, openings) = (self.along()?, self.openings()?);
        let mut out = PlanePins { panels: Vec::with_capacity(along.len()), cautions: Vec::new() };
        for (k, ((panel, along), opening)) in self.panels.laid().panels.iter().zip(along).zip(openings).enumerate() {
            let (fixing, apart) = self.fixing(panel, along, opening)?;
            out.panels.push(PanelPin { panel: k, fixing, apart });
        }
        r.step(|| {
            Step::new("panels by where they are pinned")
                .formula("pins farther apart along a seam than coverage |cot phi|, or the tolerance given, are two")
                .with("lower", out.count(Fixing::Lower))
                .with("upper", out.count(Fixing::Upper))
                .with("fixed clips", out.count(Fixing::Zone))
                .with("openings", out.count(Fixing::Opening))
                .with("twice", out.count(Fixing::Twice))
                .with("along a side", out.count(Fixing::Along))
                .with("nowhere", out.count(Fixing::Nowhere))
                .gives(out.panels.len())
                .source(Source::CommonPractice)
        });
        for (fixing, code) in [(Fixing::Twice, TWO_PINS), (Fixing::Along, PINNED_ALONG), (Fixing::Nowhere, NO_PIN)] {
            out.cautions.extend(self.fault(&out, fixing, code));
        }
        Ok(out)
    }
}

impl PinPlan<'_> {
    fn fault(&self, pins: &PlanePins, fixing: Fixing, code: CautionCode) -> Option<Caution> {
        let mut of = pins.panels.iter().filter(|p| p.fixing == fixing);
        let first = of.next()?;
        let caution = Caution::new(code, format!("panels[{}]", first.panel), Source::CommonPractice)
            .arg("count", of.count() + 1)
            .arg("panel", self.panels.panel_name(first.panel));
        Some(match first.apart {
            Some(apart) if fixing == Fixing::Twice => caution.arg("apart", apart),
            _ => caution,
        })
    }
}

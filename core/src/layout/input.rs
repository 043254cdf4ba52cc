//! What a layout is given.

use super::grid::Start;
use super::panel_break::PanelBreak;
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Panel, PanelEnd, ends_panels};
use crate::practice::layout as practice;
use crate::roof::{Edge, Outline};
use crate::units::{Angle, Length, ShopRounding, SurfaceMass};

/// What an edge of the outline is to the panels.
///
/// ```
/// use seamwright::layout::EdgeUse;
/// use seamwright::panel::PanelEnd;
/// use seamwright::units::Length;
/// let ridge = EdgeUse::End(PanelEnd::hold_back(Length::inches(3)));
/// assert_ne!(ridge, EdgeUse::Side);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum EdgeUse {
    /// Panels end there in this way. An edge along the seams ends no panel, whatever it says; one almost along them is refused, unless nothing is added there.
    End(PanelEnd),
    /// Panels run along it: a rake or a sidewall. Where it is out of parallel it cuts panels without any allowance.
    Side,
}

/// What sets the greatest length of a panel.
///
/// ```
/// use seamwright::layout::Governs;
/// assert_eq!(Governs::Lifting.name(), "lifting");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Governs {
    /// The stroke of clips or the room in the folds.
    Movement,
    /// The machine or its run-out.
    Forming,
    /// The lorry or the road.
    Shipping,
    /// The lift.
    Lifting,
}

impl Governs {
    /// The name in text.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Governs::Movement => "movement",
            Governs::Forming => "forming",
            Governs::Shipping => "shipping",
            Governs::Lifting => "lifting",
        }
    }
}

/// The greatest order length, and what to do beyond it.
///
/// ```
/// use seamwright::layout::{Governs, LengthLimit};
/// use seamwright::units::Length;
/// let limit = LengthLimit { length: Length::feet(45), governs: Governs::Shipping, end_lap: None };
/// assert_eq!(limit.governs.name(), "shipping");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LengthLimit {
    /// The greatest order length of a piece.
    pub length: Length,
    /// What sets it.
    pub governs: Governs,
    /// How far pieces lap at an end lap; `None` where end laps are refused.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_lap: Option<Length>,
}

impl LengthLimit {
    pub(crate) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.length.positive("length"));
        if let Some(lap) = self.end_lap {
            faults.keep(lap.positive("end_lap"));
            if lap >= self.length && self.length.is_positive() {
                faults.add(
                    Error::new(ErrorKind::Conflict, "an end lap takes the whole piece")
                        .at("end_lap")
                        .value_of(lap)
                        .accepts(format!("less than {}", self.length)),
                );
            }
        }
        faults.check()
    }
}

/// What happens to a panel narrower than the limit.
///
/// ```
/// use seamwright::layout::NarrowChoice;
/// assert_ne!(NarrowChoice::Report, NarrowChoice::Refuse);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum NarrowChoice {
    /// It is laid, with a caution.
    Report,
    /// The layout is refused.
    Refuse,
}

/// The least width of a panel.
///
/// ```
/// use seamwright::layout::{NarrowChoice, NarrowLimit};
/// use seamwright::units::Length;
/// let limit = NarrowLimit { least: Length::inches(6), choice: NarrowChoice::Report };
/// assert_eq!(limit.least, Length::inches(6));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NarrowLimit {
    /// The least width.
    pub least: Length,
    /// What happens under it.
    pub choice: NarrowChoice,
}

/// The shop's rounding of order lengths, by how many of the two ends are finished in the shop (have no field trim).
///
/// ```
/// use seamwright::layout::OrderRounding;
/// use seamwright::units::Length;
/// let rule = OrderRounding::common_practice()?;
/// assert_eq!(rule.one_finished.round(Length::mils(100_060))?, Length::mils(100_000));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderRounding {
    /// Both ends finished.
    pub both_finished: ShopRounding,
    /// One end finished, one cut on the roof.
    pub one_finished: ShopRounding,
    /// Both ends cut on the roof.
    pub field_cut: ShopRounding,
}

impl OrderRounding {
    /// The rule unless the caller gives another (common practice): nearest 1/16 in, nearest 1/8 in, up to the inch.
    ///
    /// # Errors
    /// None with the constants as they stand; the checks of [`ShopRounding`] apply to them too.
    pub fn common_practice() -> Result<OrderRounding, Error> {
        Ok(OrderRounding {
            both_finished: ShopRounding::new(practice::ORDER_STEP_BOTH_FINISHED, practice::ORDER_ROUNDING_FINISHED)?,
            one_finished: ShopRounding::new(practice::ORDER_STEP_ONE_FINISHED, practice::ORDER_ROUNDING_FINISHED)?,
            field_cut: ShopRounding::new(practice::ORDER_STEP_FIELD_CUT, practice::ORDER_ROUNDING_FIELD_CUT)?,
        })
    }

    /// One rule for every panel.
    #[must_use]
    pub const fn all(rule: ShopRounding) -> OrderRounding {
        OrderRounding { both_finished: rule, one_finished: rule, field_cut: rule }
    }
}

/// Panels to be laid on a plane.
///
/// Seams run up the slope, along y. [`Calculation::compute`](crate::record::Calculation::compute) gives the [`LaidPlane`](super::LaidPlane).
///
/// ```
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
///
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)], vec![])?;
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::parse("3/8\"")? })?;
/// let layout = Layout::new(outline, panel, Start::Left, |edge| {
///     if edge.from.x == edge.to.x {
///         EdgeUse::Side
///     } else if edge.from.y == Length::ZERO {
///         EdgeUse::End(PanelEnd::overhang(Length::inches(1)).with_fold(Length::inches(1)))
///     } else {
///         EdgeUse::End(PanelEnd::hold_back(Length::inches(3)).with_turn_up(Length::inches(1)))
///     }
/// })?;
/// let laid = layout.compute()?;
/// assert_eq!(laid.panels.len(), 30);
/// assert_eq!(laid.groups[0].order, Length::feet(20));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Layout {
    /// The plane's outline: x across, y up the slope.
    pub outline: Outline,
    /// The panel.
    pub panel: Panel,
    /// Where the seams lie.
    pub start: Start,
    /// What each edge is to the panels, in the order of [`Outline::edges`].
    pub edges: Vec<EdgeUse>,
    /// Where panels are broken in two; most planes have none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub breaks: Vec<PanelBreak>,
    /// The shop's rounding of order lengths.
    pub rounding: OrderRounding,
    /// The least width of a panel; `None` for no limit.
    #[cfg_attr(feature = "serde", serde(default))]
    pub narrow: Option<NarrowLimit>,
    /// The greatest length of a panel; `None` for no limit.
    #[cfg_attr(feature = "serde", serde(default))]
    pub limit: Option<LengthLimit>,
    /// Mass of the sheet for each area of it; `None` leaves the coil's mass out.
    #[cfg_attr(feature = "serde", serde(default))]
    pub sheet: Option<SurfaceMass>,
}

impl Layout {
    /// A layout with the common-practice rounding and without limits; `edge_use` is asked once for every edge of the outline.
    ///
    /// # Errors
    /// As [`Layout::check`].
    pub fn new(outline: Outline, panel: Panel, start: Start, edge_use: impl FnMut(&Edge) -> EdgeUse) -> Result<Layout, Error> {
        let mut edge_use = edge_use;
        let edges = outline.edges().map(|e| edge_use(&e)).collect();
        let layout =
            Layout { outline, panel, start, edges, breaks: Vec::new(), rounding: OrderRounding::common_practice()?, narrow: None, limit: None, sheet: None };
        layout.check()?;
        Ok(layout)
    }

    /// The same layout with this rounding.
    #[must_use]
    pub fn with_rounding(self, rounding: OrderRounding) -> Layout {
        Layout { rounding, ..self }
    }

    /// The same layout with this least width.
    #[must_use]
    pub fn with_narrow(self, narrow: NarrowLimit) -> Layout {
        Layout { narrow: Some(narrow), ..self }
    }

    /// The same layout with this greatest length.
    #[must_use]
    pub fn with_limit(self, limit: LengthLimit) -> Layout {
        Layout { limit: Some(limit), ..self }
    }

    /// The same layout with the sheet's mass for each area.
    #[must_use]
    pub fn with_sheet(self, sheet: SurfaceMass) -> Layout {
        Layout { sheet: Some(sheet), ..self }
    }

    /// Whether the inputs fit each other.
    ///
    /// # Errors
    /// Every fault at once: those of the panel and of each end, [`ErrorKind::Impossible`] for an end that adds something on an edge that is almost along the
    /// seams, nearer than [`LEAST_MEETING`](crate::practice::panel::LEAST_MEETING), [`ErrorKind::Conflict`] where the edges are not as many as the outline's or an
    /// end lap is as long as the greatest length, [`ErrorKind::OutOfRange`] for limits that are not more than zero and for a break without a length.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.panel.check().map_err(|e| e.under("panel")));
        if self.edges.len() != self.outline.edge_count() {
            faults.add(
                Error::new(ErrorKind::Conflict, "not as many edge uses as the outline has edges")
                    .at("edges")
                    .value_of(format_args!("{} edge uses", self.edges.len()))
                    .accepts(format!("{}, in the order of the outline's edges", self.outline.edge_count())),
            );
        }
        let mut lines = self.outline.edges();
        for (k, edge) in self.edges.iter().enumerate() {
            let line = lines.next();
            if let EdgeUse::End(end) = edge {
                faults.keep(end.check().map_err(|e| e.under(&format!("edges[{k}]"))));
                let meeting = line.map(|l| l.meeting()).filter(|m| *m > Angle::ZERO && !end.is_bare());
                let ends = meeting.map_or(Ok(()), ends_panels);
                faults.keep(ends.map_err(|e| e.at(format!("edges[{k}]")).cured_by("let panels run along that edge as along a side")));
            }
        }
        self.check_breaks(&mut faults);
        if let Some(narrow) = &self.narrow {
            faults.keep(narrow.least.positive("narrow.least"));
        }
        if let Some(limit) = &self.limit {
            faults.keep(limit.check().map_err(|e| e.under("limit")));
        }
        if let Some(sheet) = &self.sheet
            && *sheet <= SurfaceMass::ZERO
        {
            faults.add(Error::new(ErrorKind::OutOfRange, "must be more than zero").at("sheet").value_of(sheet).accepts("more than 0 kg/m2"));
        }
        faults.check()
    }
}

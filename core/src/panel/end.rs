//! What a junction tells the layout about the end of a panel.

use crate::error::{Error, ErrorKind, Faults};
use crate::practice::panel as practice;
use crate::record::Source;
use crate::units::{Angle, Length};

/// Where the fold line, or the cut edge without a fold, lies from the junction line.
///
/// ```
/// use seamwright::panel::{PanelEnd, Reach};
/// use seamwright::units::Length;
/// assert_eq!(PanelEnd::overhang(Length::inches(1)).reach, Reach::Overhang(Length::inches(1)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Reach {
    /// Short of the line by this much.
    HoldBack(Length),
    /// Past the line by this much.
    Overhang(Length),
}

/// How a hold-back grows along its line: by so much for each length of the line.
///
/// ```
/// use seamwright::panel::Growth;
/// use seamwright::units::Length;
/// let growth = Growth { by: Length::parse("1/2\"")?, over: Length::feet(8) };
/// assert_eq!(growth.along(Length::feet(20))?, Length::parse("1 1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Growth {
    /// By so much.
    pub by: Length,
    /// Over so much of the line.
    pub over: Length,
}

impl Growth {
    /// How much it comes to over a length of the line.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn along(&self, line: Length) -> Result<Length, Error> {
        Length::from_mm(line.mm() / self.over.mm() * self.by.mm())
    }

    /// Whether both have a meaning.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a length that is not more than zero.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.by.positive("by"));
        faults.keep(self.over.positive("over"));
        faults.check()
    }
}

/// What an end adds along the seams at an edge of a plane, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct OnEdge {
    /// At the edge's left and right end.
    pub(crate) ends: [f64; 2],
    /// For each unit square to the line.
    pub(crate) each: f64,
    /// The rise over run of the line that the panels end on.
    pub(crate) slope: f64,
}

/// Whether an end lets the panel move along its seams.
///
/// ```
/// use seamwright::panel::{Hold, PanelEnd};
/// use seamwright::units::Length;
/// let ridge = PanelEnd::hold_back(Length::inches(3));
/// assert_eq!((ridge.hold, ridge.clone().holding(Hold::Pins).hold), (Hold::Slides, Hold::Pins));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Hold {
    /// The panel moves with heat.
    Slides,
    /// A fastener through the panel bites the structure.
    Pins,
}

/// One end of a panel at a junction: distances **square to the junction line**, which the layout converts along the seams.
///
/// The metal beyond the junction line is overhang (or minus the hold-back) + gap + fold + turn-up; all of it lengthens the panel but the
/// hold-back. The gap is the room, at laying, between the fold and what it hooks: with a hold-back measured to a cleat's front, the fold lies
/// a gap past it. The field trim is no part of the finished panel; it is ordered and cut off on the roof.
///
/// ```
/// use seamwright::panel::PanelEnd;
/// use seamwright::units::{Angle, Length};
/// let end = PanelEnd::hold_back(Length::inches(3)).with_fold(Length::inches(1));
/// assert_eq!(end.allowance()?, Length::inches(-2));
/// assert_eq!(end.along_seam(Angle::parse("30 deg")?)?, Length::inches(-4));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelEnd {
    /// Hold-back or overhang.
    pub reach: Reach,
    /// How the end is held back farther down the line: then `reach` is that at the line's upper end, and all distances stay square to the line.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grows: Option<Growth>,
    /// Room between the fold and what it hooks, at laying.
    #[cfg_attr(feature = "serde", serde(default))]
    pub gap: Length,
    /// The fold around a cleat or a drip.
    #[cfg_attr(feature = "serde", serde(default))]
    pub fold: Length,
    /// The pan turned up behind a closure.
    #[cfg_attr(feature = "serde", serde(default))]
    pub turn_up: Length,
    /// Left on for a cut on the roof; zero for a shop-finished end.
    #[cfg_attr(feature = "serde", serde(default))]
    pub field_trim: Length,
    /// Whether the end pins the panel.
    pub hold: Hold,
    /// Where these figures come from.
    pub source: Source,
}

impl PanelEnd {
    /// An end short of the junction line by this much: sliding, shop-finished, without gap, fold or turn-up, given by the caller.
    #[must_use]
    pub const fn hold_back(distance: Length) -> PanelEnd {
        PanelEnd {
            reach: Reach::HoldBack(distance),
            grows: None,
            gap: Length::ZERO,
            fold: Length::ZERO,
            turn_up: Length::ZERO,
            field_trim: Length::ZERO,
            hold: Hold::Slides,
            source: Source::user(),
        }
    }

    /// An end past the junction line by this much; else as [`PanelEnd::hold_back`].
    #[must_use]
    pub fn overhang(distance: Length) -> PanelEnd {
        PanelEnd { reach: Reach::Overhang(distance), ..PanelEnd::hold_back(Length::ZERO) }
    }

    /// The same end with this gap.
    #[must_use]
    pub fn with_gap(self, gap: Length) -> PanelEnd {
        PanelEnd { gap, ..self }
    }

    /// The same end, held back farther down the line.
    #[must_use]
    pub fn growing(self, growth: Growth) -> PanelEnd {
        PanelEnd { grows: Some(growth), ..self }
    }

    /// The same end with this fold.
    #[must_use]
    pub fn with_fold(self, fold: Length) -> PanelEnd {
        PanelEnd { fold, ..self }
    }

    /// The same end with this turn-up.
    #[must_use]
    pub fn with_turn_up(self, turn_up: Length) -> PanelEnd {
        PanelEnd { turn_up, ..self }
    }

    /// The same end with this much to be cut off on the roof.
    #[must_use]
    pub fn with_field_trim(self, field_trim: Length) -> PanelEnd {
        PanelEnd { field_trim, ..self }
    }

    /// The same end, pinning the panel or letting it slide.
    #[must_use]
    pub fn holding(self, hold: Hold) -> PanelEnd {
        PanelEnd { hold, ..self }
    }

    /// The same end with the source of its figures.
    #[must_use]
    pub fn from_source(self, source: Source) -> PanelEnd {
        PanelEnd { source, ..self }
    }

    /// Whether every distance has a meaning.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for each distance that is negative. An overhang is not a negative hold-back.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let (Reach::HoldBack(reach) | Reach::Overhang(reach)) = self.reach;
        for (path, length) in [("reach", reach), ("gap", self.gap), ("fold", self.fold), ("turn_up", self.turn_up), ("field_trim", self.field_trim)] {
            faults.keep(length.not_negative(path));
        }
        if let Some(growth) = self.grows {
            faults.keep(growth.check().map_err(|e| e.under("grows")));
        }
        faults.check()
    }

    /// What a distance past the line, square to it at its upper end, adds along the seams at an edge that runs so far across and so far up, in millimetres; `outward` is 1 where the panels
    /// lie below the edge and -1 where they lie above it.
    ///
    /// Where the end is held back farther down the line, the panels end on a line of their own, through the distance at one end of the edge and that at the other.
    pub(crate) fn on_edge(&self, beyond: f64, (across, up): (f64, f64), outward: f64) -> OnEdge {
        let length = crate::num::hypot(across, up);
        let Some(growth) = self.grows else {
            // 1 / sin(meeting angle), exactly 1 for a square line.
            let each = length / across;
            return OnEdge { ends: [beyond * each; 2], each, slope: up / across };
        };
        let less = length / growth.over.mm() * growth.by.mm();
        let (left, right) = if up > 0.0 { (beyond - less, beyond) } else { (beyond, beyond - less) };
        let turned = outward * (right - left) / length;
        let slope = (up + turned * across) / (across - turned * up);
        let each = (across + slope * up) / length;
        OnEdge { ends: [left * each, right * each], each, slope }
    }

    /// What the finished panel has beyond the junction line, square to it and at its upper end; negative where it ends short.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn allowance(&self) -> Result<Length, Error> {
        let reach = match self.reach {
            Reach::HoldBack(d) => -d,
            Reach::Overhang(d) => d.into(),
        };
        (reach + self.gap + self.fold + self.turn_up).length()
    }

    /// Whether a panel ends on the junction line itself, whatever angle the line has.
    pub(crate) fn is_bare(&self) -> bool {
        let (Reach::HoldBack(reach) | Reach::Overhang(reach)) = self.reach;
        [reach, self.gap, self.fold, self.turn_up, self.field_trim].iter().all(|l| *l == Length::ZERO) && self.grows.is_none()
    }

    /// [`allowance`](Self::allowance) along a seam that meets the junction line at this angle.
    ///
    /// # Errors
    /// As [`along_seam`].
    pub fn along_seam(&self, meeting: Angle) -> Result<Length, Error> {
        along_seam(self.allowance()?, meeting)
    }

    /// The field trim along a seam that meets the junction line at this angle.
    ///
    /// # Errors
    /// As [`along_seam`].
    pub fn field_trim_along_seam(&self, meeting: Angle) -> Result<Length, Error> {
        along_seam(self.field_trim, meeting)
    }
}

/// Whether a panel can end on a line that its seams meet at this angle, 90 degrees being square.
pub(crate) fn ends_panels(meeting: Angle) -> Result<(), Error> {
    if meeting >= practice::LEAST_MEETING {
        return Ok(());
    }
    Err(Error::new(ErrorKind::Impossible, "the seams run along the line, and no panel ends there")
        .value_of(meeting)
        .accepts(format!("a meeting angle of {} or more", practice::LEAST_MEETING)))
}

/// A distance square to a junction line, measured along a seam that meets the line at this angle: d / sin(meeting).
///
/// # Errors
/// [`ErrorKind::OutOfRange`] for a meeting angle that is not between 0 and 180 degrees, where seam and line run alongside each other;
/// [`ErrorKind::Overflow`] beyond the range.
///
/// ```
/// use seamwright::panel::along_seam;
/// use seamwright::units::{Angle, Length};
/// assert_eq!(along_seam(Length::inches(3), Angle::SQUARE)?, Length::inches(3));
/// assert_eq!(along_seam(Length::inches(3), Angle::parse("150 deg")?)?, Length::inches(6));
/// assert!(along_seam(Length::inches(3), Angle::ZERO).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn along_seam(distance: Length, meeting: Angle) -> Result<Length, Error> {
    let degrees = meeting.degrees();
    if !(degrees > 0.0 && degrees < 180.0) {
        return Err(Error::new(ErrorKind::OutOfRange, "the seam runs along the junction line")
            .at("meeting")
            .value_of(meeting)
            .accepts("more than 0 deg and less than 180 deg; 90 deg is square"));
    }
    let sine = meeting.sin();
    if (sine - 1.0).abs() < f64::EPSILON {
        return Ok(distance);
    }
    Length::from_mm(distance.mm() / sine)
}

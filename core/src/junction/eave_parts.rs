//! What an eave is made of: its face, the trim's flange on the deck, the strip that the panels hook, and the panels' ends.

use super::draft::{FastenerRow, TrimSheet};
use crate::error::Error;
use crate::units::{Angle, Length};

/// How the face below an eave falls.
///
/// ```
/// use seamwright::junction::EaveFront;
/// use seamwright::units::Angle;
/// // Over a roof of 30 degrees, a fascia nailed to rafters cut square falls at 120 degrees from level: it leans back under the eave.
/// assert_eq!(EaveFront::SquareToRoof.fall(Angle::parse("30 deg")?)?, Angle::parse("120 deg")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum EaveFront {
    /// Plumb.
    Plumb,
    /// Square to the deck, as on rafters that are cut square.
    SquareToRoof,
    /// At this angle below the level, measured on the outside; 90 degrees is plumb, more leans back under the eave.
    BelowLevel(Angle),
}

impl EaveFront {
    /// The fall from level, for a roof of this slope angle.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`](crate::error::ErrorKind::NotFinite) for an angle beyond every number.
    pub fn fall(&self, slope: Angle) -> Result<Angle, Error> {
        match self {
            EaveFront::Plumb => Ok(Angle::SQUARE),
            EaveFront::SquareToRoof => Angle::degrees_from(90.0 + slope.degrees()),
            EaveFront::BelowLevel(fall) => Ok(*fall),
        }
    }
}

/// What an eave trim's deck flange lies on.
///
/// ```
/// use seamwright::junction::FlangeLies;
/// assert_ne!(FlangeLies::UnderUnderlayment, FlangeLies::OverUnderlayment);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FlangeLies {
    /// On the deck, the underlayment over it: water on the underlayment runs out over the trim.
    UnderUnderlayment,
    /// On the underlayment.
    OverUnderlayment,
}

/// The flange of an eave trim on the deck. Its lower edge is the corner over the face.
///
/// ```
/// use seamwright::junction::{DeckFlange, FlangeLies, FastenerRow};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let flange = DeckFlange {
///     width: Length::inches(4),
///     lies: FlangeLies::UnderUnderlayment,
///     fasteners: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     fasteners_from_edge: Length::inches(1),
/// };
/// assert!(flange.fasteners_from_edge < flange.width);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DeckFlange {
    /// From its upper edge to the corner over the face.
    pub width: Length,
    /// What it lies on.
    pub lies: FlangeLies,
    /// Its fasteners.
    pub fasteners: FastenerRow,
    /// From its upper edge down to them.
    pub fasteners_from_edge: Length,
}

/// The flat strip on the deck flange whose edge stands out past the face, for the panels' folds to hook.
///
/// ```
/// use seamwright::junction::{HookStrip, FastenerRow, TrimSheet};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let strip = HookStrip {
///     sheet: TrimSheet { thickness: Length::mils(40), inside_radius: Length::ZERO },
///     width: Length::inches(4),
///     fasteners: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     fasteners_from_edge: Length::inches(1),
/// };
/// assert_eq!(strip.width, Length::inches(4));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HookStrip {
    /// Its sheet.
    pub sheet: TrimSheet,
    /// From its upper edge to the edge that the folds hook.
    pub width: Length,
    /// Its fasteners, into the deck.
    pub fasteners: FastenerRow,
    /// From its upper edge down to them.
    pub fasteners_from_edge: Length,
}

/// Panels fastened at their lower end on purpose.
///
/// ```
/// use seamwright::junction::{EaveFixing, FastenerRow};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let fixing = EaveFixing { up_the_slope: Length::inches(2), fasteners: FastenerRow { spacing: Length::inches(6), source: Source::CommonPractice } };
/// assert!(fixing.up_the_slope.is_positive());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveFixing {
    /// From the junction line up the slope to the fasteners.
    pub up_the_slope: Length,
    /// The fasteners.
    pub fasteners: FastenerRow,
}

/// The lower ends of the panels: distances along the slope.
///
/// In a job file `fold` is [`END_FOLD`](crate::practice::panel::END_FOLD), `clearance` [`CLEARANCE`](crate::practice::movement::CLEARANCE) and
/// `engagement` [`ENGAGEMENT`](crate::practice::movement::ENGAGEMENT) unless given.
///
/// ```
/// use seamwright::junction::EavePanel;
/// use seamwright::practice;
/// use seamwright::units::Length;
/// let panel = EavePanel {
///     overhang: Length::parse("1 1/4\"")?,
///     gap: Length::parse("1/4\"")?,
///     fold: practice::panel::END_FOLD,
///     fold_opening: Length::parse("3/16\"")?,
///     clearance: practice::movement::CLEARANCE,
///     engagement: practice::movement::ENGAGEMENT,
///     fixed: None,
/// };
/// assert!(panel.fixed.is_none(), "it slides");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EavePanel {
    /// From the junction line to the edge of the strip that the fold hooks.
    pub overhang: Length,
    /// From that edge to the nose of the fold, at laying.
    pub gap: Length,
    /// The fold under the strip.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::end_fold"))]
    pub fold: Length,
    /// Clear inside the fold.
    pub fold_opening: Length,
    /// The least gap of the year.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::clearance"))]
    pub clearance: Length,
    /// The least length that must be hooked.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::engagement"))]
    pub engagement: Length,
    /// Fasteners that fix the panels here; none where they slide.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fixed: Option<EaveFixing>,
}

//! What a sidewall is made of: the last panel's edge, the flashing's flange, and the lower end.

use super::draft::FastenerRow;
use super::kick_out::KickOutDetail;
use super::parts::Bites;
use crate::units::Length;

/// The edge of the last panel, beside the wall.
///
/// ```
/// use seamwright::junction::PanelSide;
/// use seamwright::units::Length;
/// let edge = PanelSide::TurnedUp { height: Length::parse("1 3/4\"")? };
/// assert_ne!(edge, PanelSide::Flat);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PanelSide {
    /// Turned up, at least as high as the seams.
    TurnedUp {
        /// How high, from the pan.
        height: Length,
    },
    /// Ended flat, short of the wall.
    Flat,
}

/// What the wall flashing's flange lies on.
///
/// ```
/// use seamwright::junction::{Bites, FastenerRow, SidewallFlange};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let on_pan = SidewallFlange::OnPan {
///     width: Length::inches(5),
///     tape_width: Length::parse("7/8\"")?,
///     edge_to_fasteners: Length::parse("7/16\"")?,
///     bites: Bites::Panel,
///     fasteners: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
/// };
/// assert!(matches!(on_pan, SidewallFlange::OnPan { bites: Bites::Panel, .. }));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SidewallFlange {
    /// On a Z that stands on the pan, at the level of the seam tops; its foot points to the wall.
    OnZ {
        /// From the wall's face to the Z's web.
        web_from_wall: Length,
        /// Width of the Z's foot, from its web toward the wall.
        foot: Length,
        /// From the web to the screws through the foot.
        web_to_screws: Length,
        /// Width of the tape under the foot, centred on the screws.
        tape_width: Length,
        /// Thickness of that tape, compressed.
        tape_beneath: Length,
        /// What the screws bite.
        bites: Bites,
        /// The screws.
        screws: FastenerRow,
        /// How far the flange runs past the web to its edge.
        cover: Length,
        /// Width of the tape between the Z's top flange and the flashing, halfway over the cover; in a job file
        /// [`Z_TAPE_WIDTH`](crate::practice::junction::Z_TAPE_WIDTH) unless given.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::z_tape_width"))]
        trim_tape_width: Length,
        /// The rivets through the flange into the Z's top flange, halfway over the cover.
        rivets: FastenerRow,
    },
    /// On tape on the pan, this side of the first seam.
    OnPan {
        /// Width of the flange, from the flashing's bend.
        width: Length,
        /// Width of the tape, along the flange's edge.
        tape_width: Length,
        /// From the flange's edge to its fasteners.
        edge_to_fasteners: Length,
        /// What the fasteners bite.
        bites: Bites,
        /// The fasteners.
        fasteners: FastenerRow,
    },
}

impl SidewallFlange {
    /// The field that says how far the flange reaches over the roof, and its value.
    pub(super) const fn reach(&self) -> (&'static str, Length) {
        match self {
            SidewallFlange::OnZ { cover, .. } => ("detail.flange.on-z.cover", *cover),
            SidewallFlange::OnPan { width, .. } => ("detail.flange.on-pan.width", *width),
        }
    }
}

/// The lower end of a sidewall.
///
/// ```
/// use seamwright::junction::{KickOutDetail, SidewallFoot};
/// use seamwright::units::Length;
/// let foot = SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(Length::inches(4)).into()) };
/// assert_ne!(foot, SidewallFoot::EndsAtEave);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SidewallFoot {
    /// The wall ends with the eave, or before it.
    EndsAtEave,
    /// The eave dies into the wall.
    DiesIntoWall {
        /// The kick-out that turns the water off the wall there; none if there is no kick-out.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        kick_out: Option<Box<KickOutDetail>>,
    },
}

//! The gutter under an eave: what the panels' noses keep from it the year round, and its front lip below the plane of the roof.

use super::draft::{opposite_sign, refuse_short};
use super::eave_parts::EavePanel;
use super::support::Support;
use crate::error::{Error, Faults};
use crate::record::{Recorder, Source, Step};
use crate::units::{Angle, Length};

/// Where a gutter's opening lies, level and square to the eave, from the junction line.
///
/// In a job file `lip_clearance` is [`GUTTER_LIP_CLEARANCE`](crate::practice::junction::GUTTER_LIP_CLEARANCE) unless given.
///
/// ```
/// use seamwright::junction::GutterOpening;
/// use seamwright::practice::junction::GUTTER_LIP_CLEARANCE;
/// use seamwright::units::Length;
/// let opening = GutterOpening { back: Length::inches(0), front: Length::inches(5), lip_clearance: GUTTER_LIP_CLEARANCE, lip: None };
/// assert!(opening.back < opening.front);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GutterOpening {
    /// Its back edge.
    pub back: Length,
    /// Its front lip.
    pub front: Length,
    /// The nose of the panels keeps at least this far behind the front lip, at its farthest in the heat.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::gutter_lip_clearance"))]
    pub lip_clearance: Length,
    /// The height of the front lip, where it is to be checked.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lip: Option<GutterLip>,
}

/// How high a gutter's front lip stands: plumb distances, positive downward.
///
/// Snow and ice that slide down the roof pass over a lip that stands below its plane, and tear off one that stands into it.
/// In a job file `below_plane` is [`GUTTER_LIP_BELOW_PLANE`](crate::practice::junction::GUTTER_LIP_BELOW_PLANE) unless given.
///
/// ```
/// use seamwright::junction::GutterLip;
/// use seamwright::practice::junction::GUTTER_LIP_BELOW_PLANE;
/// use seamwright::units::Length;
/// let lip = GutterLip { below_line: Length::inches(3), below_plane: GUTTER_LIP_BELOW_PLANE };
/// assert!(lip.below_plane < lip.below_line);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GutterLip {
    /// From the junction line down to it.
    pub below_line: Length,
    /// It stands at least this far below the underside of the pans, drawn out down the slope.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::gutter_lip_below_plane"))]
    pub below_plane: Length,
}

impl EavePanel {
    /// The least and the greatest gap of the year that the detail lets the panels take: up to the clearance in the cold, down to the least engagement
    /// in the heat.
    fn gaps(&self) -> Result<(Length, Length), Error> {
        if self.fixed.is_some() {
            return Ok((self.gap, self.gap));
        }
        Ok((self.clearance.min(self.gap), (self.fold - self.engagement).length()?.max(self.gap)))
    }
}

impl GutterOpening {
    pub(super) fn check(&self, faults: &mut Faults) {
        faults.keep(self.lip_clearance.not_negative("detail.gutter.lip_clearance"));
        if let Some(lip) = self.lip {
            faults.keep(lip.below_plane.not_negative("detail.gutter.lip.below_plane"));
        }
    }

    /// The noses against the opening in the cold and in the heat, what drips off the trim, and the height of the lip.
    pub(super) fn check_under<R: Recorder>(&self, r: &mut R, faults: &mut Faults, panel: &EavePanel, pan: &Support, drip: Length) -> Result<(), Error> {
        let (least, greatest) = panel.gaps()?;
        let nose = |gap: Length| Ok::<_, Error>(pan.point((panel.overhang + gap).length()?)?.x);
        let (cold, heat) = (nose(least)?, nose(greatest)?);
        r.step(|| {
            Step::new("nose of the panel in the heat, level from the junction line")
                .formula("(overhang + fold - engagement) cos slope + pan sin slope")
                .with("overhang", panel.overhang)
                .with("greatest gap", greatest)
                .gives(heat)
                .source(Source::geometry())
        });
        r.step(|| Step::new("nose of the panel in the cold, level from the junction line").with("least gap", least).gives(cold).source(Source::geometry()));
        let (what, cure) = ("in the heat the panel's nose passes the clearance behind the gutter's front lip", "a shorter overhang or fold, or a wider gutter");
        refuse_short(faults, "detail.gutter.front", what, heat + self.lip_clearance - self.front, self.front, cure)?;
        let (what, cure) = ("in the cold the panel's nose stands behind the gutter's back", "a longer overhang, or a gutter nearer to the face");
        refuse_short(faults, "detail.gutter.back", what, self.back - cold, self.back, cure)?;
        // What runs back on the panels drips off the trim.
        let (what, cure) = ("the trim's drip stands behind the gutter's back", "a gutter nearer to the face, or a drip that clears it farther");
        refuse_short(faults, "detail.gutter.back", what, self.back - drip, self.back, cure)?;
        let Some(lip) = self.lip else { return Ok(()) };
        let plane = pan.meets(&Support { rise: opposite_sign(Angle::SQUARE)?, height: self.front })?.z;
        let below = (plane + lip.below_line).length()?;
        r.step(|| {
            Step::new("gutter's front lip below the plane of the roof, plumb")
                .formula("plane over the lip + lip below the line")
                .with("plane over the lip", plane)
                .with("lip below the line", lip.below_line)
                .gives(below)
                .source(Source::geometry())
        });
        let (what, cure) = ("the gutter's front lip stands too high against the plane of the roof", "a lower gutter, or one nearer to the face");
        refuse_short(faults, "detail.gutter.lip.below_line", what, lip.below_plane - below, lip.below_line, cure)
    }
}

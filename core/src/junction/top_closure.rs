//! The closures under a flange at the upper end of the panels.

use super::draft::{refuse_short, tape_too_thick};
use super::least::LeastRule;
use crate::closure::{ClosureSetting, Face};
use crate::error::{Error, Faults};
use crate::units::Length;

/// The closures between the seams under a cap or a flashing: a web standing on the pan, a lower flange that points uphill behind it, its screws and its
/// tape in the middle, and a top flange that points downhill under the trim.
///
/// In a job file `set_back` is [`SET_BACK`](crate::practice::closure::SET_BACK) and `panel_margin` [`LeastRule::PANEL_MARGIN`] unless given.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{LeastRule, TopClosure};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let closure = TopClosure {
///     set_back: practice::closure::SET_BACK,
///     face: Face::LeadingEdge,
///     lower_flange: Length::parse("2 1/2\"")?,
///     top_flange: Length::parse("1 1/8\"")?,
///     tape_width: Length::parse("7/8\"")?,
///     tape_beneath: Length::parse("1/16\"")?,
///     panel_margin: LeastRule::PANEL_MARGIN,
/// };
/// assert_eq!(closure.setting().compute()?.fasteners, Length::parse("2 7/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TopClosure {
    /// From the trim's edge back, up the slope, to the closures' face.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::set_back"))]
    pub set_back: Length,
    /// Which plane the face is.
    pub face: Face,
    /// Width of the lower flange, from the web.
    pub lower_flange: Length,
    /// Width of the top flange, from the web.
    pub top_flange: Length,
    /// Width of the tape under the lower flange.
    pub tape_width: Length,
    /// That tape's thickness, compressed.
    pub tape_beneath: Length,
    /// What the pan must still reach beyond the lower flange.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::panel_margin"))]
    pub panel_margin: LeastRule,
}

impl TopClosure {
    /// What its lines follow from.
    #[must_use]
    pub const fn setting(&self) -> ClosureSetting {
        ClosureSetting { set_back: self.set_back, face: self.face, lower_flange: self.lower_flange, top_flange: self.top_flange }
    }

    /// Height of the web under seams of this height: what the compressed tape leaves.
    ///
    /// # Errors
    /// [`Impossible`](crate::error::ErrorKind::Impossible) where the tape leaves nothing, [`Overflow`](crate::error::ErrorKind::Overflow) beyond the range.
    pub fn web(&self, seam_height: Length) -> Result<Length, Error> {
        let web = (seam_height - self.tape_beneath).length()?;
        if web.is_positive() {
            return Ok(web);
        }
        Err(tape_too_thick("tape_beneath", "the closures", self.tape_beneath, web)?)
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("lower_flange", self.lower_flange), ("tape_width", self.tape_width)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in
            [("set_back", self.set_back), ("top_flange", self.top_flange), ("tape_beneath", self.tape_beneath), ("panel_margin.least", self.panel_margin.least)]
        {
            faults.keep(length.not_negative(path));
        }
        core::mem::take(&mut faults).check()?;
        let cure = "narrower tape, or a wider flange";
        let what = "the tape runs out under the web and past the edge of the flange";
        refuse_short(&mut faults, "tape_width", what, self.tape_width - self.lower_flange, self.tape_width, cure)?;
        faults.check()
    }
}

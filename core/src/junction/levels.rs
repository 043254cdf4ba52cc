//! What lies between a deck and the underside of a trim.

use crate::error::Error;
use crate::pitch::Pitch;
use crate::record::{Calculation, Recorder, Step};
use crate::units::Length;

/// The layers under a trim that lies on the seam tops, each square to the roof plane, from the deck outward.
///
/// ```
/// use seamwright::junction::Levels;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let levels = Levels { underlayment: Length::parse("1/16\"")?, seam_height: Length::parse("1 3/4\"")?, tape: Length::parse("1/16\"")?, ..Levels::default() };
/// assert_eq!(levels.compute()?, Length::parse("1 7/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Levels {
    /// Packing over the deck under all of the plane, as above an expansion joint across the panels: its top is the deck to everything that follows.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "is_none"))]
    pub built_up: Length,
    /// Underlayment on the deck.
    pub underlayment: Length,
    /// From the underlayment to the underside of the pan, where clips stand the pan off.
    pub stand_off: Length,
    /// Thickness of the pan's sheet.
    pub pan: Length,
    /// From the pan to the top of the seam.
    pub seam_height: Length,
    /// Metal of a closure's top flange, where it runs over the seam top.
    pub closure_metal: Length,
    /// Compressed sealant tape under the trim.
    pub tape: Length,
}

#[cfg(feature = "serde")]
#[allow(clippy::trivially_copy_pass_by_ref, reason = "as serde asks")]
fn is_none(layer: &Length) -> bool {
    *layer == Length::ZERO
}

impl Levels {
    /// The layers by name, from the deck outward.
    #[must_use]
    pub fn layers(&self) -> [(&'static str, Length); 7] {
        [
            ("built_up", self.built_up),
            ("underlayment", self.underlayment),
            ("stand_off", self.stand_off),
            ("pan", self.pan),
            ("seam_height", self.seam_height),
            ("closure_metal", self.closure_metal),
            ("tape", self.tape),
        ]
    }

    /// The underlayment's upper face above the deck: what metal on the underlayment lies on.
    pub(super) fn bed(&self) -> Result<Length, Error> {
        (self.built_up + self.underlayment).length()
    }

    /// The pan's underside above the deck.
    pub(super) fn under_pan(&self) -> Result<Length, Error> {
        (self.bed()? + self.stand_off).length()
    }

    /// The pan's upper face above the deck: what drains.
    pub(crate) fn pan_face(&self) -> Result<Length, Error> {
        (self.under_pan()? + self.pan).length()
    }

    /// From the pan's upper face to the trim's underside.
    pub(super) fn over_pan(&self) -> Result<Length, Error> {
        (self.seam_height + self.closure_metal + self.tape).length()
    }
}

impl Calculation for Levels {
    /// The height of the trim's underside above the deck.
    type Out = Length;

    fn title(&self) -> String {
        "height of the trim's underside above the deck".into()
    }

    /// Refuses a layer that is negative.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        for (name, layer) in self.layers() {
            layer.not_negative(name)?;
        }
        let h = Length::total(self.layers().iter().map(|(_, l)| l))?;
        r.step(|| {
            let step = Step::new("h").formula("the sum of the layers");
            self.layers().iter().filter(|(_, l)| l.is_positive()).fold(step, |s, (name, l)| s.with(*name, l)).gives(h)
        });
        Ok(h)
    }
}

/// A roof plane at a junction: how steep it is, and what lies on its deck.
///
/// ```
/// use seamwright::junction::{Levels, RoofSide};
/// use seamwright::pitch::Pitch;
/// use seamwright::units::Length;
/// let roof = RoofSide { pitch: Pitch::parse("4:12")?, levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() } };
/// assert_eq!(roof.levels.tape, Length::ZERO);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RoofSide {
    /// The plane's pitch.
    pub pitch: Pitch,
    /// The layers between its deck and the underside of a trim on the seam tops.
    pub levels: Levels,
}

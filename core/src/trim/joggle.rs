//! An offset bend, or joggle: the sheet set over by a depth and led on as before.

use super::leg::{Bend, Direction, Leg, LegEnd};
use super::size::to_length;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{BendAngle, Length};
use std::borrow::Cow;

/// An offset bend by its depth and angle: two like bends, there and back, and the web between them.
///
/// The depth is from a face of the one leg to the same face of the other. Source: geometry.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{Direction, Joggle};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let joggle = Joggle {
///     name: "step".into(),
///     depth: Length::parse("1/2\"")?,
///     angle: BendAngle::from_flat(Angle::parse("30 deg")?)?,
///     direction: Direction::Up,
///     inside_radius: Length::mils(30),
///     thickness: Length::mils(24),
/// };
/// let parts = joggle.compute()?;
/// assert_eq!(parts.web.length, Length::inches(1)); // 1/2 in / sin 30
/// assert_eq!(parts.second.direction, Direction::Down);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Joggle {
    /// What the web is called.
    pub name: Cow<'static, str>,
    /// From a face of the one leg to the same face of the other.
    pub depth: Length,
    /// Of both bends, from flat; less than 180 degrees.
    pub angle: BendAngle,
    /// Which way the first bend turns; the second turns back.
    pub direction: Direction,
    /// Radius of the inside face at both bends.
    pub inside_radius: Length,
    /// Thickness of the sheet.
    pub thickness: Length,
}

/// What an offset bend stands for in a profile.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{Direction, Joggle};
/// use seamwright::units::{BendAngle, Length};
/// let (depth, inside_radius) = (Length::inches(1), Length::mils(30));
/// let square = Joggle { name: "web".into(), depth, angle: BendAngle::SQUARE, direction: Direction::Up, inside_radius, thickness: Length::mils(24) };
/// let parts = square.compute()?;
/// assert_eq!((parts.web.length, parts.run), (depth, Length::ZERO));
/// assert_eq!(parts.web_flat, Length::mils(1000 - 2 * 30 - 24));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct JoggleParts {
    /// The bend there.
    pub first: Bend,
    /// The web, from the outer corner of the first bend to the inner corner of the second: both on one face.
    pub web: Leg,
    /// The bend back.
    pub second: Bend,
    /// The flat part of the web.
    pub web_flat: Length,
    /// How far the web runs along the legs, corner to corner of one face: nothing for a square web, negative for one that leans back.
    pub run: Length,
}

impl Calculation for Joggle {
    type Out = JoggleParts;

    fn title(&self) -> String {
        format!("offset bend {}, {} deep at {}", self.name, self.depth, self.angle)
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a depth or a thickness of zero or less, a negative radius, an angle of 0 or of 180 degrees and more (all at once);
    /// [`ErrorKind::Impossible`] for a depth that the bends alone exceed.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<JoggleParts, Error> {
        let mut faults = Faults::default();
        faults.keep(self.depth.positive("depth"));
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.inside_radius.not_negative("inside_radius"));
        let degrees = self.angle.degrees();
        if degrees <= 0.0 || degrees >= 180.0 {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "an offset bend turns there and back by less than a fold")
                    .at("angle")
                    .value_of(self.angle)
                    .accepts("more than 0 deg, less than 180 deg from flat"),
            );
        }
        faults.check()?;
        let (sin, cos) = (self.angle.angle().sin(), self.angle.angle().cos());
        let both = 2.0 * self.inside_radius.mm() + self.thickness.mm();
        // Both bends together set the sheet over by this much without any web.
        let least = to_length(both * (1.0 - cos))?;
        r.step(|| {
            let step = Step::new("least depth").formula("(2 R + T)(1 - cos A): the bends without a web").with("R", self.inside_radius);
            step.with("T", self.thickness).with("A", self.angle).gives(least).source(Source::geometry())
        });
        if self.depth < least {
            return Err(Error::new(ErrorKind::Impossible, "the two bends alone are deeper than the offset")
                .at("depth")
                .value_of(self.depth)
                .accepts(format!("at least {least}"))
                .cured_by("a smaller angle or inside radius"));
        }
        let length = to_length(self.depth.mm() / sin)?;
        r.step(|| {
            let step = Step::new(format!("web {} from outer to inner corner", self.name)).formula("D / sin A").with("D", self.depth).with("A", self.angle);
            step.gives(length).source(Source::geometry())
        });
        let setbacks = to_length(both * self.angle.half_tangent())?;
        // Just deep enough, the web's flat is nothing; the roundings of its two terms may leave a picometre less than that.
        let web_flat = (length - setbacks).length()?.max(Length::ZERO);
        r.step(|| {
            let step = Step::new("flat part of the web").formula("web - (2 R + T) tan(A/2)").with("web", length).with("R", self.inside_radius);
            step.with("T", self.thickness).with("A", self.angle).gives(web_flat).source(Source::geometry())
        });
        let run = to_length(self.depth.mm() * cos / sin)?;
        r.step(|| Step::new("run along the legs").formula("D / tan A").with("D", self.depth).with("A", self.angle).gives(run).source(Source::geometry()));
        let bend = |direction| Bend { angle: self.angle, direction, inside_radius: self.inside_radius, rule: None };
        // At the least depth the web is what its setbacks take, to the picometre.
        let length = if web_flat == Length::ZERO { setbacks.max(length) } else { length };
        Ok(JoggleParts {
            first: bend(self.direction),
            web: Leg { name: self.name.clone(), length, start: LegEnd::OuterCorner, end: LegEnd::InnerCorner },
            second: bend(self.direction.opposite()),
            web_flat,
            run,
        })
    }
}

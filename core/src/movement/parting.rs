//! By how much the two sides under a cap that rides part, close, rise and fall over the year.

use super::change::across_line;
use super::range::HeatRange;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length};

#[cfg(feature = "serde")]
fn square() -> Angle {
    Angle::SQUARE
}

/// One side under a cap: panels that are fixed somewhere below it and move with heat at it.
///
/// See [`CapParting`] for an example.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PartingSide {
    /// The plane's angle from level, square to the line of the cap: its pitch at a ridge, its backing at a hip.
    pub slope: Angle,
    /// Between the seams and the line; square unless given.
    #[cfg_attr(feature = "serde", serde(default = "square"))]
    pub meeting: Angle,
    /// From the panels' ends under the cap to the line along which they are fixed, along the seams.
    pub to_fixed: Length,
}

/// A cap over panels that are fixed below it: what it must let pass. A side that is fixed at the cap is left out.
///
/// Each side's end moves by `alpha L dT` along its slope: square to the line and level by that times `sin(meeting) cos(slope)`, up by `sin(meeting) sin(slope)`.
/// The gap between the two changes by the sum of what is level.
///
/// # Errors
/// Computing refuses no side at all ([`ErrorKind::Missing`]), a slope below level or of 90 degrees and more, a negative length ([`ErrorKind::OutOfRange`]), a meeting
/// angle without meaning, and what [`HeatRange::check`] refuses.
///
/// ```
/// use seamwright::movement::{CapParting, HeatRange, PartingSide};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let range = HeatRange {
///     expansion: Expansion::parse("24e-6 /K")?,
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
/// };
/// let side = PartingSide { slope: Angle::parse("60 deg")?, meeting: Angle::SQUARE, to_fixed: Length::parse("10 m")? };
/// let moves = CapParting { first: Some(side), second: Some(side), range }.compute()?;
/// // 12 mm in the heat and 9.6 mm in the cold along either slope, half of it level at 60 degrees.
/// assert_eq!((moves.closes, moves.opens), (Length::parse("12 mm")?, Length::parse("9.6 mm")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CapParting {
    /// The first side, where it moves.
    #[cfg_attr(feature = "serde", serde(default))]
    pub first: Option<PartingSide>,
    /// The second side, where it moves.
    #[cfg_attr(feature = "serde", serde(default))]
    pub second: Option<PartingSide>,
    /// The year's temperatures.
    pub range: HeatRange,
}

/// What one side does. See [`CapParting`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SideParting {
    /// Level, toward the other side, in the heat.
    pub closes: Length,
    /// Level, away from it, in the cold.
    pub opens: Length,
    /// Up, in the heat.
    pub rises: Length,
    /// Down, in the cold.
    pub falls: Length,
}

/// What a cap must let pass. See [`CapParting`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CapMoves {
    /// By how much the gap between the sides closes in the heat, level.
    pub closes: Length,
    /// By how much it opens in the cold.
    pub opens: Length,
    /// The first side, where it moves.
    pub first: Option<SideParting>,
    /// The second side, where it moves.
    pub second: Option<SideParting>,
}

impl PartingSide {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if !(0.0..90.0).contains(&self.slope.degrees()) {
            let error = Error::new(ErrorKind::OutOfRange, "not the slope of a roof").at("slope").value_of(self.slope);
            faults.add(error.accepts("level to less than 90 deg"));
        }
        faults.keep(self.meeting.meeting().map_err(|e| e.at("meeting")));
        faults.keep(self.to_fixed.not_negative("to_fixed"));
        faults.check()
    }

    fn run<R: Recorder>(&self, range: &HeatRange, r: &mut R) -> Result<SideParting, Error> {
        let (sin, cos) = (self.slope.sin(), self.slope.cos());
        let mut parts = |along: Length, what: &'static str| -> Result<(Length, Length), Error> {
            let across = across_line(along, self.meeting)?.across;
            let (level, height) = (Length::from_mm(across.mm() * cos)?, Length::from_mm(across.mm() * sin)?);
            r.step(|| {
                let step = Step::new(what).formula("alpha L dT sin(phi) cos S level, and sin S in height").with("alpha L dT", along);
                step.with("phi", self.meeting).with("S", self.slope).gives(format_args!("{level} and {height}")).source(Source::geometry())
            });
            Ok((level, height))
        };
        let (heat, cold) = (range.warming(self.to_fixed, &mut crate::record::Off)?, range.cooling(self.to_fixed, &mut crate::record::Off)?);
        let ((closes, rises), (opens, falls)) = (parts(heat, "toward the other side, in the heat")?, parts(cold, "away from it, in the cold")?);
        Ok(SideParting { closes, opens, rises, falls })
    }
}

impl Calculation for CapParting {
    type Out = CapMoves;

    fn title(&self) -> String {
        "parting of the sides under a cap that rides".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CapMoves, Error> {
        let mut faults = Faults::default();
        faults.keep(self.range.check().map_err(|e| e.under("range")));
        if self.first.is_none() && self.second.is_none() {
            faults.add(Error::new(ErrorKind::Missing, "no side moves under the cap").at("first").accepts("a first or a second side"));
        }
        for (path, side) in [("first", &self.first), ("second", &self.second)] {
            faults.keep(side.as_ref().map_or(Ok(()), PartingSide::check).map_err(|e| e.under(path)));
        }
        faults.check()?;
        let mut solve = |side: Option<PartingSide>, name: &'static str| side.map(|s| r.part(|| name.into(), |r| s.run(&self.range, r))).transpose();
        let (first, second) = (solve(self.first, "first side")?, solve(self.second, "second side")?);
        let both = || first.iter().chain(&second);
        let (closes, opens) = (Length::total(both().map(|s| &s.closes))?, Length::total(both().map(|s| &s.opens))?);
        r.step(|| {
            let step = Step::new("gap between the sides, closing in the heat and opening in the cold").formula("sum of what is level");
            step.gives(format_args!("{closes} and {opens}")).source(Source::geometry())
        });
        Ok(CapMoves { closes, opens, first, second })
    }
}

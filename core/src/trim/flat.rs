//! The flat pattern: girth, flat parts, tangent lines and bend lines.

use super::leg::Direction;
use super::profile::Profile;
use super::rule::BendRule;
use super::solve::{self, Sink, Solved};
use super::walk::{Part, Walk, WalkBend, WalkLeg};
use super::{cautions, check};
use crate::error::Error;
use crate::record::{Calculation, Caution, Off, Recorder};
use crate::units::{BendAngle, Length, LineMass, LineMassUnit, SurfaceMass, SurfaceMassUnit};

/// The flat part of a leg, between tangent lines; stations from the start edge.
///
/// ```
/// use seamwright::trim::{BendRule, Face, Part, Profile};
/// use seamwright::units::Length;
/// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(6)).build()?;
/// let flat = strip.unfold(&BendRule::Din6935)?;
/// assert_eq!((flat.legs()[0].part, flat.legs()[0].length()), (Part::Body(0), Length::inches(6)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FlatLeg {
    /// Which leg of the profile.
    pub part: Part,
    /// Where it starts.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl FlatLeg {
    /// Its length; never negative.
    #[must_use]
    pub const fn length(self) -> Length {
        Length::from_pm(self.to.pm() - self.from.pm())
    }
}

/// A bend in the flat: two tangent lines and the bend line halfway between; stations from the start edge.
///
/// ```
/// use seamwright::trim::{BendRule, Direction, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::mils(50))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(50))
///     .leg("a", Length::inches(1))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(1))
///     .build()?;
/// let flat = l.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE))?;
/// let bend = &flat.bends()[0];
/// assert_eq!(bend.direction, Direction::Up);
/// assert_eq!(bend.from, Length::mils(900));
/// assert!(bend.from < bend.line && bend.line < bend.to);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FlatBend {
    /// Which bend of the profile, or which hem.
    pub part: Part,
    /// The tangent line towards the start edge.
    pub from: Length,
    /// The bend line, halfway between the tangent lines.
    pub line: Length,
    /// The tangent line towards the end edge.
    pub to: Length,
    /// How far, from flat.
    pub angle: BendAngle,
    /// Which way, with the upper face up.
    pub direction: Direction,
    /// Radius of the inside face.
    pub inside_radius: Length,
    /// The bend's own rule, where it had one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rule: Option<Box<BendRule>>,
}

impl FlatBend {
    /// The flat length that the bend takes.
    #[must_use]
    pub const fn allowance(&self) -> Length {
        Length::from_pm(self.to.pm() - self.from.pm())
    }
}

/// A flat pattern with the rule that made it.
///
/// All stations are measured from the start edge, with the upper face up; [`Flat::from_end`] gives them from the other. The girth is exactly the sum of the flat
/// parts and the bends, each of which was rounded to the picometre once.
///
/// ```
/// use seamwright::trim::{BendRule, Face, HandbookMetal, Profile};
/// use seamwright::units::{BendAngle, Length, LineMassUnit, SurfaceMass};
/// let l = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("a", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(3))
///     .build()?;
/// let flat = l.unfold(&BendRule::Handbook(HandbookMetal::SoftSteel))?;
/// let line = flat.bends()[0].line;
/// assert_eq!((line + flat.from_end(line)?).length()?, flat.girth());
/// assert_eq!(flat.rule().name(), "handbook");
/// let mass = flat.line_mass(SurfaceMass::parse("1 lb/ft2")?)?;
/// assert!((mass.get(LineMassUnit::PoundPerFoot) - 0.4131).abs() < 5e-5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Flat {
    girth: Length,
    thickness: Length,
    legs: Vec<FlatLeg>,
    bends: Vec<FlatBend>,
    rule: BendRule,
    cautions: Vec<Caution>,
}

impl Flat {
    /// The width of the blank: the stretch-out.
    #[must_use]
    pub fn girth(&self) -> Length {
        self.girth
    }

    /// Thickness of the sheet.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.thickness
    }

    /// The flat parts in order, returns of hems among them; one more than the bends.
    #[must_use]
    pub fn legs(&self) -> &[FlatLeg] {
        &self.legs
    }

    /// The bends in order, folds of hems among them.
    #[must_use]
    pub fn bends(&self) -> &[FlatBend] {
        &self.bends
    }

    /// The rule of every bend that has none of its own.
    #[must_use]
    pub fn rule(&self) -> &BendRule {
        &self.rule
    }

    /// The rule of one bend of this flat.
    #[must_use]
    pub fn rule_of<'a>(&'a self, bend: &'a FlatBend) -> &'a BendRule {
        bend.rule.as_deref().unwrap_or(&self.rule)
    }

    /// What must be known beside the numbers.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }

    /// A station measured from the end edge instead of from the start edge (or the other way).
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a station too far outside the sheet.
    pub fn from_end(&self, station: Length) -> Result<Length, Error> {
        (self.girth - station).length()
    }

    /// The mass of the trim per length, from the mass of its sheet per area.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`](crate::error::ErrorKind::NotFinite) where the product is too large.
    pub fn line_mass(&self, sheet: SurfaceMass) -> Result<LineMass, Error> {
        LineMass::new(sheet.get(SurfaceMassUnit::KilogramPerSquareMetre) * (self.girth.mm() / 1000.0), LineMassUnit::KilogramPerMetre)
    }
}

struct FlatSink {
    legs: Vec<FlatLeg>,
    bends: Vec<FlatBend>,
    cautions: Vec<Caution>,
}

impl Sink for FlatSink {
    #[inline]
    fn leg(&mut self, leg: &WalkLeg<'_>, from: Length, to: Length) {
        self.legs.push(FlatLeg { part: leg.part, from, to });
    }

    #[inline]
    fn bend(&mut self, bend: &WalkBend<'_>, solved: &Solved<'_>, from: Length, to: Length) {
        cautions::of_bend(bend, solved, &mut self.cautions);
        self.bends.push(FlatBend {
            part: bend.part,
            from,
            line: solve::halfway(from, solved.allowance),
            to,
            angle: bend.angle,
            direction: bend.direction,
            inside_radius: bend.inside_radius,
            rule: bend.rule.map(|rule| Box::new(rule.clone())),
        });
    }
}

/// The path that a fault takes is the caller's; it is put on here, so that the flat itself is not moved once more.
#[inline]
fn flatten<R: Recorder>(profile: &Profile, rule: &BendRule, r: &mut R, placed: impl FnOnce(Error) -> Error) -> Result<Flat, Error> {
    let walk = Walk::of(profile);
    let count = walk.bend_count();
    let mut sink = FlatSink { legs: Vec::with_capacity(count + 1), bends: Vec::with_capacity(count), cautions: Vec::new() };
    let girth = solve::unfold(profile, &walk, rule, r, &mut sink).map_err(|e| placed(all_faults(profile, rule, e)))?;
    let ruled = sink.bends.iter().filter(|b| b.rule.is_none()).count();
    cautions::of_rule(rule, "rule", ruled, &mut sink.cautions);
    Ok(Flat { girth, thickness: profile.thickness, legs: sink.legs, bends: sink.bends, rule: rule.clone(), cautions: sink.cautions })
}

#[cold]
fn all_faults(profile: &Profile, rule: &BendRule, first: Error) -> Error {
    check::profile(profile, Some(rule)).err().unwrap_or(first)
}

impl Profile {
    /// The flat pattern under a bend rule. [`FlatPattern`] gives the same with its working.
    ///
    /// # Errors
    /// Every fault that [`Profile::validate_with`] finds; [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) where the girth is too large.
    pub fn unfold(&self, rule: &BendRule) -> Result<Flat, Error> {
        flatten(self, rule, &mut Off, |e| e)
    }

    /// The girth alone, without the lines.
    ///
    /// # Errors
    /// As [`Profile::unfold`].
    pub fn girth(&self, rule: &BendRule) -> Result<Length, Error> {
        solve::unfold(self, &Walk::of(self), rule, &mut Off, &mut ()).map_err(|e| all_faults(self, rule, e))
    }
}

/// The flat pattern of a profile under a bend rule, as a calculation that can show each leg and bend.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, FlatPattern, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("a", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(3))
///     .build()?;
/// let pattern = FlatPattern { profile, rule: BendRule::neutral_axis(NeutralFactor::new(0.33)?) };
/// let (flat, sheet) = pattern.explain()?;
/// assert_eq!(flat, pattern.compute()?);
/// assert_eq!(sheet.steps().len(), 5); // two legs, the bend with its line, and the girth
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FlatPattern {
    /// What is unfolded.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
}

impl Calculation for FlatPattern {
    type Out = Flat;

    fn title(&self) -> String {
        format!("flat pattern, {}, sheet {}", self.rule, self.profile.thickness)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Flat, Error> {
        flatten(&self.profile, &self.rule, r, |e| e.under("profile"))
    }
}

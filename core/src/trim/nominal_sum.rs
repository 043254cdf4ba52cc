//! Nominal sums with a leg that takes up the difference, as shops do in thin sheet.

use super::cautions::TAKEN_UP;
use super::flat::{Flat, FlatPattern};
use super::profile::Profile;
use super::rule::BendRule;
use super::walk::Part;
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;

/// A blank cut to the sum of its nominal legs, with the leg that absorbs what the sum is too wide.
///
/// The blank is as wide as [`BendRule::SharpCorner`] says. Folded so that every other leg comes to its drawn length, the leg that takes up comes longer by
/// what the bends take less than nominal; it is shorter where a wide open hem takes more. The flat pattern is that of the piece so made: its girth is the nominal
/// sum to the picometre.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, NeutralFactor, NominalSum, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("flange", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let made = NominalSum { profile, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE), take_up: 0 }.compute()?;
/// assert_eq!(made.nominal, Length::inches(5));
/// // One bend deduction of 0.0395 in goes into the flange.
/// assert_eq!(made.flat.girth(), made.nominal);
/// assert!(made.difference > Length::parse("0.0394 in")? && made.difference < Length::parse("0.0396 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct NominalSum {
    /// What is made.
    pub profile: Profile,
    /// The rule by which it would be developed. A bend with a rule of its own keeps it in both sums.
    pub rule: BendRule,
    /// The leg that takes up the difference, by its index.
    pub take_up: usize,
}

/// What one bend takes nominally and as developed.
///
/// ```
/// # use seamwright::record::Calculation;
/// # use seamwright::trim::{BendRule, Face, NominalSum, Profile};
/// # use seamwright::units::{BendAngle, Length};
/// # let l = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(24)).leg("a", Length::inches(2)).up(BendAngle::SQUARE);
/// let made = NominalSum { profile: l.leg("b", Length::inches(3)).build()?, rule: BendRule::Aviation, take_up: 1 }.compute()?;
/// let bend = &made.bends[0];
/// assert_eq!((bend.nominal - bend.developed).length()?, bend.difference);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct NominalBend {
    /// Which bend of the profile, or which fold of an edge.
    pub part: Part,
    /// What it takes in the nominal sum.
    pub nominal: Length,
    /// What it takes as developed.
    pub developed: Length,
    /// Nominal less developed.
    pub difference: Length,
}

/// A nominal sum worked out.
///
/// ```
/// # use seamwright::record::Calculation;
/// # use seamwright::trim::{BendRule, Face, NominalSum, Profile};
/// # use seamwright::units::{BendAngle, Length};
/// # let l = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(24)).leg("a", Length::inches(2)).up(BendAngle::SQUARE);
/// let made = NominalSum { profile: l.leg("b", Length::inches(3)).build()?, rule: BendRule::Aviation, take_up: 1 }.compute()?;
/// assert_eq!((made.developed + made.difference).length()?, made.nominal);
/// assert_eq!((Length::inches(3) + made.difference).length()?, made.leg);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct NominalFlat {
    /// The width of the blank: the nominal sum.
    pub nominal: Length,
    /// The girth as developed, which the drawn piece needs.
    pub developed: Length,
    /// Nominal less developed: what the leg takes up.
    pub difference: Length,
    /// The same bend by bend.
    pub bends: Vec<NominalBend>,
    /// The length to which the leg that takes up is made.
    pub leg: Length,
    /// The flat pattern of the piece as made; its girth is the nominal sum.
    pub flat: Flat,
    /// What must be known beside the numbers, the flat's own among it.
    pub cautions: Vec<Caution>,
}

impl Calculation for NominalSum {
    type Out = NominalFlat;

    fn title(&self) -> String {
        format!("nominal sum taken up by leg {}, developed by {}", self.take_up + 1, self.rule)
    }

    /// # Errors
    /// [`ErrorKind::Unknown`] at `take_up` for a leg that there is not; the faults of the profile under either rule, at `profile`;
    /// [`ErrorKind::Impossible`] at `take_up` where the leg cannot give what a wide hem takes.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<NominalFlat, Error> {
        let Some(leg) = self.profile.legs.get(self.take_up) else {
            return Err(Error::new(ErrorKind::Unknown, "the profile has no such leg")
                .at("take_up")
                .value_of(self.take_up)
                .accepts(format!("less than {}, counted from 0", self.profile.legs.len())));
        };
        let nominal = self.profile.unfold(&BendRule::SharpCorner).map_err(|e| e.under("profile"))?;
        let developed = self.profile.unfold(&self.rule).map_err(|e| e.under("profile"))?;
        let difference = (nominal.girth() - developed.girth()).length()?;
        let mut bends = Vec::with_capacity(developed.bends().len());
        for (n, d) in nominal.bends().iter().zip(developed.bends()) {
            let bend = NominalBend { part: d.part, nominal: n.allowance(), developed: d.allowance(), difference: (n.allowance() - d.allowance()).length()? };
            r.step(|| {
                let what = match d.part {
                    Part::Body(i) => format!("difference of bend {}", i + 1),
                    part => format!("difference of {part}"),
                };
                let step = Step::new(what).formula("nominal - developed").with("nominal", bend.nominal).with("developed", bend.developed);
                step.gives(bend.difference).source(BendRule::SharpCorner.source().clone())
            });
            bends.push(bend);
        }
        r.step(|| {
            let step = Step::new("difference in all").formula("nominal sum - developed girth").with("nominal sum", nominal.girth());
            step.with("developed girth", developed.girth()).gives(difference).source(Source::geometry())
        });
        let length = (leg.length + difference).length()?;
        r.step(|| {
            let step = Step::new(format!("length of leg {}, which takes up", leg.name)).formula("as drawn + difference").with("as drawn", leg.length);
            step.with("difference", difference).gives(length).source(Source::CommonPractice)
        });
        let mut made = self.profile.clone();
        if let Some(leg) = made.legs.get_mut(self.take_up) {
            leg.length = length;
        }
        let pattern = FlatPattern { profile: made, rule: self.rule.clone() };
        let flat = r.part(|| pattern.title(), |r| pattern.run(r)).map_err(|e| {
            let least = e.allowed().map_or_else(|| "a longer leg".to_owned(), |a| format!("a leg that is {a} when it has given {difference}"));
            Error::new(ErrorKind::Impossible, "the leg cannot take up the difference").at("take_up").value_of(&leg.name).accepts(least)
        })?;
        let taken = Caution::new(TAKEN_UP, format!("profile.legs[{}]", self.take_up), BendRule::SharpCorner.source().clone())
            .arg("leg", &leg.name)
            .arg("made", length)
            .arg("drawn", leg.length);
        let cautions = core::iter::once(taken).chain(flat.cautions().iter().cloned()).collect();
        Ok(NominalFlat { nominal: nominal.girth(), developed: developed.girth(), difference, bends, leg: length, flat, cautions })
    }
}

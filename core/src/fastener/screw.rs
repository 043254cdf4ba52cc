//! Strength of a steel screw through two plies of sheet.

use super::cautions::{EDITION_NOT_CONFIRMED, HEAD_COUNTED_TO_LIMIT, HEAD_UNDER_MINIMUM, SCREW_STRENGTH_UNKNOWN};
use super::level::{AllowableResistance, DesignResistance, NominalResistance, ResistanceFactor, SafetyFactor, positive};
use super::screw_rules::{Group, ScrewEdition};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::units::{Force, ForceUnit, Length, LengthUnit, Pressure, PressureUnit};

/// A ply of sheet that a screw passes.
///
/// ```
/// use seamwright::fastener::Ply;
/// use seamwright::units::{Length, Pressure};
/// let p = Ply { thickness: Length::parse("0.0188 in")?, ultimate: Pressure::parse("33 ksi")? };
/// assert!(p.thickness.is_positive());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Ply {
    /// Base-metal design thickness, without coating.
    pub thickness: Length,
    /// Tensile strength Fu.
    pub ultimate: Pressure,
}

/// A separate washer under a screw's head.
///
/// ```
/// use seamwright::fastener::Washer;
/// use seamwright::units::Length;
/// let w = Washer { diameter: Length::inches_64(40), thickness: Length::mils(50) };
/// assert!(w.diameter > w.thickness);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Washer {
    /// Outside diameter.
    pub diameter: Length,
    /// Thickness of its steel.
    pub thickness: Length,
}

/// A steel screw.
///
/// ```
/// use seamwright::fastener::Screw;
/// use seamwright::units::Length;
/// let s = Screw { diameter: Length::mils(190), head: Length::mils(340), washer: None, shear: None, tension: None };
/// assert_eq!((s.least_spacing()?, s.least_edge()?), (Length::mils(570), Length::mils(285)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Screw {
    /// Nominal diameter.
    pub diameter: Length,
    /// Diameter of the head, or of the washer formed on it.
    pub head: Length,
    /// A separate washer.
    #[cfg_attr(feature = "serde", serde(default))]
    pub washer: Option<Washer>,
    /// The screw's own shear strength, from test.
    #[cfg_attr(feature = "serde", serde(default))]
    pub shear: Option<NominalResistance>,
    /// The screw's own tension strength, from test.
    #[cfg_attr(feature = "serde", serde(default))]
    pub tension: Option<NominalResistance>,
}

impl Screw {
    /// Least spacing on centre, 3 d (AISI S100, notes of a product guide's screw table; secondary).
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn least_spacing(&self) -> Result<Length, Error> {
        self.diameter.station(3, 1)
    }

    /// Least distance to an edge square to the force, 1.5 d (as above; the 1996 text has 3 d).
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn least_edge(&self) -> Result<Length, Error> {
        self.diameter.station(3, 2)
    }
}

/// A screw through the ply at its head into a far ply.
///
/// # Errors
/// Computing refuses, with the field: a thickness, strength or diameter of zero or less, a screw outside 0.08 to 0.25 in, a head that is not wider
/// than the screw ([`ErrorKind::OutOfRange`]); a penetration of more than the far ply or of nothing ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::fastener::{Ply, Screw, ScrewConnection, ScrewEdition};
/// use seamwright::record::Calculation;
/// use seamwright::units::{ForceUnit, Length, Pressure};
/// let ply = Ply { thickness: Length::parse("0.0188 in")?, ultimate: Pressure::parse("33 ksi")? };
/// let screw = Screw { diameter: Length::mils(190), head: Length::mils(340), washer: None, shear: None, tension: None };
/// let strength = ScrewConnection { edition: ScrewEdition::Y2012, head_ply: ply, far_ply: ply, penetration: None, screw }.compute()?;
/// assert_eq!(strength.allowable_shear.force.get(ForceUnit::PoundForce).round(), 52.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ScrewConnection {
    /// The edition to follow.
    pub edition: ScrewEdition,
    /// The ply in contact with the head or washer.
    pub head_ply: Ply,
    /// The ply into which the screw is driven.
    pub far_ply: Ply,
    /// Depth of full thread in the far ply, where it is less than the ply.
    #[cfg_attr(feature = "serde", serde(default))]
    pub penetration: Option<Length>,
    /// The screw.
    pub screw: Screw,
}

/// A way in which the connection can fail.
///
/// ```
/// use seamwright::fastener::{LimitState, Ply, Screw, ScrewConnection, ScrewEdition};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, Pressure};
/// let ply = Ply { thickness: Length::parse("0.0346 in")?, ultimate: Pressure::parse("45 ksi")? };
/// let screw = Screw { diameter: Length::mils(190), head: Length::mils(340), washer: None, shear: None, tension: None };
/// let strength = ScrewConnection { edition: ScrewEdition::Y2016, head_ply: ply, far_ply: ply, penetration: None, screw }.compute()?;
/// assert!(strength.nominal(LimitState::PullOut).is_some());
/// assert!(strength.nominal(LimitState::ScrewShear).is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum LimitState {
    /// The screw tilts in thin sheet, or a ply bears: shear of the sheet.
    SheetShear,
    /// The thread pulls out of the far ply.
    PullOut,
    /// The head ply pulls over the head.
    PullOver,
    /// The screw shears.
    ScrewShear,
    /// The screw breaks in tension.
    ScrewTension,
}

/// The strength in one limit state.
///
/// ```
/// use seamwright::fastener::{Ply, Screw, ScrewConnection, ScrewEdition};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, Pressure};
/// let ply = Ply { thickness: Length::parse("0.0346 in")?, ultimate: Pressure::parse("45 ksi")? };
/// let screw = Screw { diameter: Length::mils(190), head: Length::mils(340), washer: None, shear: None, tension: None };
/// let strength = ScrewConnection { edition: ScrewEdition::Y2016, head_ply: ply, far_ply: ply, penetration: None, screw }.compute()?;
/// let weakest = strength.states.iter().min_by_key(|s| s.nominal.force).unwrap();
/// assert_eq!(weakest.safety.factor, 3.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LimitStrength {
    /// The limit state.
    pub state: LimitState,
    /// Its nominal resistance.
    pub nominal: NominalResistance,
    /// Its safety factor.
    pub safety: SafetyFactor,
    /// Its resistance factor (LRFD).
    pub resistance: ResistanceFactor,
}

/// The strength of a screw in sheet.
///
/// ```
/// use seamwright::fastener::{Ply, Screw, ScrewConnection, ScrewEdition};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, Pressure};
/// let ply = Ply { thickness: Length::parse("0.0346 in")?, ultimate: Pressure::parse("45 ksi")? };
/// let screw = Screw { diameter: Length::mils(190), head: Length::mils(340), washer: None, shear: None, tension: None };
/// let strength = ScrewConnection { edition: ScrewEdition::Y2016, head_ply: ply, far_ply: ply, penetration: None, screw }.compute()?;
/// assert!(strength.allowable_shear.force < strength.design_shear.force);
/// assert_eq!(strength.cautions.len(), 2);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ScrewStrength {
    /// Every limit state that was worked out.
    pub states: Vec<LimitStrength>,
    /// Least allowable resistance in shear.
    pub allowable_shear: AllowableResistance,
    /// Least allowable resistance in tension.
    pub allowable_tension: AllowableResistance,
    /// Least design resistance in shear.
    pub design_shear: DesignResistance,
    /// Least design resistance in tension.
    pub design_tension: DesignResistance,
    /// What to know before it is relied on.
    pub cautions: Vec<Caution>,
}

impl ScrewStrength {
    /// The nominal resistance in one limit state, where it was worked out.
    #[must_use]
    pub fn nominal(&self, state: LimitState) -> Option<&NominalResistance> {
        self.states.iter().find(|s| s.state == state).map(|s| &s.nominal)
    }
}

/// Smallest and largest screw that the rules cover: 0.08 and 0.25 in, from memory.
const DIAMETERS: (Length, Length) = (Length::mils(80), Length::mils(250));
/// Least head or washer diameter for pull-over, and least washer thickness.
const LEAST_HEAD: Length = Length::inches_64(20);
const LEAST_WASHER: Length = Length::mils(50);
const HEADS: Source = Source::published("Structural Steel Designer's Handbook", "", "extract on screw connections", Seen::Text);

/// Newtons from square millimetres of a strength.
fn newtons(mm2: f64, ultimate: Pressure) -> f64 {
    mm2 * ultimate.get(PressureUnit::Megapascal)
}

fn force(value: f64, path: &str) -> Result<Force, Error> {
    Force::new(value, ForceUnit::Newton).map_err(|e| e.at(path.to_owned()))
}

impl ScrewConnection {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (name, ply) in [("head_ply", &self.head_ply), ("far_ply", &self.far_ply)] {
            faults.keep(ply.thickness.positive(&format!("{name}.thickness")));
            if ply.ultimate <= Pressure::ZERO {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, "a strength must be more than zero")
                        .at(format!("{name}.ultimate"))
                        .value_of(ply.ultimate)
                        .accepts("more than 0 Pa"),
                );
            }
        }
        let s = &self.screw;
        if s.diameter < DIAMETERS.0 || s.diameter > DIAMETERS.1 {
            faults.add(
                Error::new(ErrorKind::OutOfRange, format!("the rules do not cover this screw ({})", self.edition.diameter_source()))
                    .at("screw.diameter")
                    .value_of(s.diameter)
                    .accepts("0.08 in to 0.25 in"),
            );
        } else if s.head <= s.diameter {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "the head is not wider than the screw")
                    .at("screw.head")
                    .value_of(s.head)
                    .accepts(format!("more than {}", s.diameter)),
            );
        }
        if let Some(w) = &s.washer {
            faults.keep(w.thickness.positive("screw.washer.thickness"));
            if w.diameter < s.head {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, "the washer is narrower than the head")
                        .at("screw.washer.diameter")
                        .value_of(w.diameter)
                        .accepts(format!("at least {}", s.head)),
                );
            }
        }
        for (own, path) in [(&s.shear, "screw.shear.force"), (&s.tension, "screw.tension.force")] {
            if let Some(own) = own {
                faults.keep(positive(own.force, path));
            }
        }
        if let Some(p) = self.penetration
            && (!p.is_positive() || p > self.far_ply.thickness)
        {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "not a depth of thread in the far ply")
                    .at("penetration")
                    .value_of(p)
                    .accepts(format!("more than 0 mm, at most {}", self.far_ply.thickness)),
            );
        }
        faults.check()
    }

    /// Tilting and bearing, N.
    fn sheet_shear<R: Recorder>(&self, r: &mut R) -> Result<f64, Error> {
        let (t1, t2, d) = (self.head_ply.thickness.mm(), self.far_ply.thickness.mm(), self.screw.diameter.mm());
        let head = newtons(2.7 * t1 * d, self.head_ply.ultimate);
        let far = newtons(2.7 * t2 * d, self.far_ply.ultimate);
        let tilt = newtons(4.2 * (t2 * t2 * t2 * d).sqrt(), self.far_ply.ultimate);
        let (head_force, far_force, tilt_force) = (force(head, "head_ply")?, force(far, "far_ply")?, force(tilt, "far_ply")?);
        let source = || self.edition.shear_source();
        r.step(|| {
            Step::new("bearing of the head ply")
                .formula("2.7 t1 d Fu1")
                .with("t1", self.head_ply.thickness)
                .with("d", self.screw.diameter)
                .with("Fu1", self.head_ply.ultimate)
                .gives(head_force)
                .source(source())
        });
        r.step(|| {
            Step::new("bearing of the far ply")
                .formula("2.7 t2 d Fu2")
                .with("t2", self.far_ply.thickness)
                .with("d", self.screw.diameter)
                .with("Fu2", self.far_ply.ultimate)
                .gives(far_force)
                .source(source())
        });
        r.step(|| {
            Step::new("tilting")
                .formula("4.2 sqrt(t2^3 d) Fu2")
                .with("t2", self.far_ply.thickness)
                .with("d", self.screw.diameter)
                .with("Fu2", self.far_ply.ultimate)
                .gives(tilt_force)
                .source(source())
        });
        let ratio = t2 / t1;
        let (thin, thick) = (head.min(far).min(tilt), head.min(far));
        let nominal = if ratio <= 1.0 {
            thin
        } else if ratio >= 2.5 {
            thick
        } else {
            thin + (thick - thin) * (ratio - 1.0) / 1.5
        };
        let found = force(nominal, "far_ply")?;
        r.step(|| {
            Step::new("shear of the sheet")
                .formula("t2/t1 <= 1: least of the three; >= 2.5: least bearing; between: linear in t2/t1")
                .with("t2/t1", ratio)
                .gives(found)
                .source(source())
        });
        Ok(nominal)
    }

    fn pull_out<R: Recorder>(&self, r: &mut R) -> Result<f64, Error> {
        let tc = self.penetration.unwrap_or(self.far_ply.thickness);
        let base = newtons(0.85 * tc.mm() * self.screw.diameter.mm(), self.far_ply.ultimate);
        let by_thickness = if self.edition == ScrewEdition::Y2016S3 { 1.63 * num::pow(tc.get(LengthUnit::Inch), 0.18) } else { 1.0 };
        let nominal = base * by_thickness;
        let found = force(nominal, "far_ply")?;
        r.step(|| {
            let s = Step::new("pull-out");
            let s = if self.edition == ScrewEdition::Y2016S3 { s.formula("0.85 tc d Fu2 x 1.63 (tc in inches)^0.18") } else { s.formula("0.85 tc d Fu2") };
            s.with("tc", tc).with("d", self.screw.diameter).with("Fu2", self.far_ply.ultimate).gives(found).source(self.edition.pull_out_source())
        });
        Ok(nominal)
    }

    fn pull_over<R: Recorder>(&self, r: &mut R, cautions: &mut Vec<Caution>) -> Result<f64, Error> {
        let (t1, s) = (self.head_ply.thickness, &self.screw);
        let wide = match &s.washer {
            Some(w) => {
                let spread = (s.head + w.thickness * 2 + t1).length()?.min(w.diameter);
                r.step(|| {
                    Step::new("effective pull-over diameter")
                        .formula("least(dh + 2 tw + t1, dw)")
                        .with("dh", s.head)
                        .with("tw", w.thickness)
                        .with("t1", t1)
                        .with("dw", w.diameter)
                        .gives(spread)
                        .source(self.edition.washer_source())
                });
                spread
            }
            None => s.head,
        };
        let (limit, limit_source) = self.edition.greatest_head();
        let counted = wide.min(limit);
        if counted < wide {
            cautions.push(Caution::new(HEAD_COUNTED_TO_LIMIT, "screw", limit_source).arg("found", wide).arg("limit", limit));
        }
        let widest = s.washer.as_ref().map_or(s.head, |w| w.diameter);
        if widest < LEAST_HEAD {
            cautions.push(Caution::new(HEAD_UNDER_MINIMUM, "screw.head", HEADS).arg("which", "a head").arg("found", widest).arg("least", LEAST_HEAD));
        }
        if let Some(w) = &s.washer
            && w.thickness < LEAST_WASHER
        {
            cautions.push(
                Caution::new(HEAD_UNDER_MINIMUM, "screw.washer.thickness", HEADS)
                    .arg("which", "a washer thickness")
                    .arg("found", w.thickness)
                    .arg("least", LEAST_WASHER),
            );
        }
        let factor = self.edition.pull_over_factor();
        if self.edition == ScrewEdition::Y2016S3 {
            cautions.push(Caution::new(EDITION_NOT_CONFIRMED, "edition", self.edition.pull_over_source()).arg("which", "pull-over"));
        }
        let nominal = newtons(factor * t1.mm() * counted.mm(), self.head_ply.ultimate);
        let found = force(nominal, "head_ply")?;
        r.step(|| {
            Step::new("pull-over")
                .formula(format!("{factor} t1 d'w Fu1"))
                .with("t1", t1)
                .with("d'w", counted)
                .with("Fu1", self.head_ply.ultimate)
                .gives(found)
                .source(self.edition.pull_over_source())
        });
        Ok(nominal)
    }

    fn state(&self, state: LimitState, newtons: f64, document: Source, group: Group) -> Result<LimitStrength, Error> {
        let (safety, resistance) = self.edition.factors(group);
        Ok(LimitStrength { state, nominal: NominalResistance { force: Force::new(newtons, ForceUnit::Newton)?, document }, safety, resistance })
    }
}

/// The least of the allowable and of the design resistances of some limit states.
fn least<R: Recorder>(r: &mut R, what: &'static str, states: &[&LimitStrength]) -> Result<(AllowableResistance, DesignResistance), Error> {
    let mut found: Option<(AllowableResistance, DesignResistance)> = None;
    for s in states {
        let (a, d) = (s.nominal.allowable(&s.safety)?, s.nominal.design(&s.resistance)?);
        found = Some(match found {
            None => (a, d),
            Some((fa, fd)) => (if a.force < fa.force { a } else { fa }, if d.force < fd.force { d } else { fd }),
        });
    }
    let (a, d) = found.ok_or_else(|| Error::new(ErrorKind::Internal, "no limit state to take the least of"))?;
    r.step(|| {
        let step = Step::new(format!("allowable resistance in {what}")).formula("least of nominal / omega").gives(a.force);
        match &a.factor {
            Some(f) => step.with("omega", f.factor).source(f.source.clone()),
            None => step,
        }
    });
    r.step(|| {
        let step = Step::new(format!("design resistance in {what}")).formula("least of phi nominal").gives(d.force);
        match &d.factor {
            Some(f) => step.with("phi", f.factor).source(f.source.clone()),
            None => step,
        }
    });
    Ok((a, d))
}

impl Calculation for ScrewConnection {
    type Out = ScrewStrength;

    fn title(&self) -> String {
        format!("screw in sheet by AISI S100, {}", self.edition.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ScrewStrength, Error> {
        self.validate()?;
        let mut cautions = Vec::new();
        let sheet = self.sheet_shear(r)?;
        let out = self.pull_out(r)?;
        let over = self.pull_over(r, &mut cautions)?;
        let sheet = self.state(LimitState::SheetShear, sheet, self.edition.shear_source(), Group::Sheet)?;
        let out = self.state(LimitState::PullOut, out, self.edition.pull_out_source(), Group::PullOut)?;
        let over = self.state(LimitState::PullOver, over, self.edition.pull_over_source(), Group::PullOver)?;
        let mut own = |given: &Option<NominalResistance>, state, which: &'static str| match given {
            Some(n) => Ok::<_, Error>(Some(self.state(state, n.force.get(ForceUnit::Newton), n.document.clone(), Group::Screw)?)),
            None => {
                cautions.push(Caution::new(SCREW_STRENGTH_UNKNOWN, "screw", self.edition.shear_source()).arg("which", which));
                Ok(None)
            }
        };
        let screw_shear = own(&self.screw.shear, LimitState::ScrewShear, "shear")?;
        let screw_tension = own(&self.screw.tension, LimitState::ScrewTension, "tension")?;
        let in_shear: Vec<&LimitStrength> = core::iter::once(&sheet).chain(&screw_shear).collect();
        let (allowable_shear, design_shear) = least(r, "shear", &in_shear)?;
        let in_tension: Vec<&LimitStrength> = [&out, &over].into_iter().chain(&screw_tension).collect();
        let (allowable_tension, design_tension) = least(r, "tension", &in_tension)?;
        let states = [sheet, out, over].into_iter().chain(screw_shear).chain(screw_tension).collect();
        Ok(ScrewStrength { states, allowable_shear, allowable_tension, design_shear, design_tension, cautions })
    }
}

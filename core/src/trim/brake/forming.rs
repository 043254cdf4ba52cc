//! Whether a trim can be formed: every question that the shop's own limits and the published ones can answer, at once.

use super::order::OrderTrial;
use super::plan::FoldingPlan;
use super::report::StepFault;
use super::strip::{SKIN, SheetPart, Strip, finished};
use super::{BendOrder, forming_text};
use crate::error::{Error, ErrorKind, Faults};
use crate::metal::{Alloy, Grain, MinimumRadius, RadiusLimit, Temper};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::cautions::{NO_PUBLISHED_RADIUS, NOT_JUDGED};
use crate::trim::flat::Flat;
use crate::trim::profile::Profile;
use crate::trim::rule::BendRule;
use crate::trim::walk::Part;
use crate::units::Length;

/// The most holes of one check.
const MOST_HOLES: usize = 10_000;

/// The metal, as far as its least inside radius depends on it.
///
/// ```
/// use seamwright::metal::{Alloy, Grain, Temper};
/// use seamwright::trim::FormingMetal;
/// let m = FormingMetal { alloy: Alloy::Aluminium3105, temper: Temper::H25, grain: Grain::Along };
/// assert_eq!(m.temper, Temper::H25);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FormingMetal {
    /// The alloy.
    pub alloy: Alloy,
    /// Its temper.
    pub temper: Temper,
    /// How the bend lines lie to the direction of rolling: along it, where trims are cut from coil along its length.
    pub grain: Grain,
}

/// What a fold must take between its two sides: a cleat, an edge, another sheet.
///
/// ```
/// use seamwright::trim::{FoldTakes, Part};
/// use seamwright::units::Length;
/// let hooked = FoldTakes { fold: Part::EndHem, takes: Length::mils(40) };
/// assert_eq!(hooked.takes, Length::mils(40));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FoldTakes {
    /// The hem, or a bend of 180 degrees.
    pub fold: Part,
    /// How thick that is.
    pub takes: Length,
}

/// A hole, or a notch in an edge, in the flat blank.
///
/// ```
/// use seamwright::trim::Hole;
/// use seamwright::units::Length;
/// let slot = Hole { label: "nail slot".into(), station: Length::inches(1), size: Length::inches_64(16) };
/// assert_eq!(slot.size, Length::parse("1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Hole {
    /// Its mark.
    pub label: String,
    /// Its middle, from the start edge across the blank.
    pub station: Length,
    /// Its size across the blank.
    pub size: Length,
}

/// How near a hole may come to a bend.
///
/// ```
/// use seamwright::record::Source;
/// use seamwright::trim::HoleLimit;
/// use seamwright::units::Length;
/// let limit = HoleLimit { least: Length::inches_64(16), source: Source::User { note: "the punch's maker".into() } };
/// assert_eq!(limit.least, Length::parse("1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HoleLimit {
    /// The least distance from the hole's edge to a bend's tangent line.
    pub least: Length,
    /// Where the limit comes from.
    pub source: Source,
}

/// A trim, and the limits that it is to keep. No limit is made up: what is left out is not judged, and a caution says so.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, FormingCheck, FormingFault, NeutralFactor, Part, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(24));
/// let profile = l.leg("a", Length::inches(2)).up(BendAngle::SQUARE).leg("lip", Length::inches_64(24)).build()?;
/// let check = FormingCheck { least_leg: Some(Length::inches_64(32)), ..FormingCheck::new(profile, BendRule::neutral_axis(NeutralFactor::MIDDLE)) };
/// let report = check.compute()?;
/// assert!(!report.forms && matches!(report.faults[..], [FormingFault::LegTooShort { leg: Part::Body(1), .. }]));
/// // Nothing was said of the metal, the coil or the steps.
/// assert_eq!(report.cautions.iter().filter(|c| c.code().name == "not-judged").count(), 3);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FormingCheck {
    /// The profile.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The metal, for the least inside radius.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub metal: Option<FormingMetal>,
    /// The shortest flat part that the brake can clamp or swing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_leg: Option<Length>,
    /// The width of the coil or sheet that is left after its edges are trimmed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stock_width: Option<Length>,
    /// What its hems and folds must take.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub takes: Vec<FoldTakes>,
    /// Holes and notches.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub holes: Vec<Hole>,
    /// How near a hole may come to a bend.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub hole_limit: Option<HoleLimit>,
    /// The steps at the brake, to be followed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub plan: Option<FoldingPlan>,
}

impl FormingCheck {
    /// A check without any limit: only whether the folded trim crosses itself.
    #[must_use]
    pub const fn new(profile: Profile, rule: BendRule) -> FormingCheck {
        FormingCheck { profile, rule, metal: None, least_leg: None, stock_width: None, takes: Vec::new(), holes: Vec::new(), hole_limit: None, plan: None }
    }
}

/// Why a trim cannot be formed as asked.
///
/// ```
/// use seamwright::trim::FormingFault;
/// use seamwright::units::Length;
/// let wide = FormingFault::GirthOverStock { girth: Length::inches(50), stock: Length::inches(48) };
/// assert_eq!((wide.name(), wide.subject().as_str()), ("girth-over-stock", "profile"));
/// assert_eq!(wide.to_string(), "the blank is 1270 mm wide, the stock 1219.2 mm");
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum FormingFault {
    /// A flat part is shorter than the brake can hold.
    LegTooShort {
        /// The leg, or the return of a hem.
        leg: Part,
        /// Its flat part.
        flat: Length,
        /// What the brake needs.
        least: Length,
    },
    /// A bend is sharper than a published table allows for this metal.
    RadiusTooSmall {
        /// The bend.
        bend: Part,
        /// Its inside radius.
        radius: Length,
        /// The least.
        least: Length,
        /// The table.
        source: Source,
    },
    /// A fold is closed too tight for what it must take.
    FoldTooTight {
        /// The fold.
        fold: Part,
        /// Clear between its sides.
        gap: Length,
        /// What it must take.
        takes: Length,
    },
    /// The folded sheet crosses itself.
    Crosses {
        /// One of two parts that overlap.
        one: SheetPart,
        /// The other.
        other: SheetPart,
    },
    /// The blank is wider than the stock.
    GirthOverStock {
        /// Width of the blank.
        girth: Length,
        /// Width of the stock.
        stock: Length,
    },
    /// A hole lies in a bend, or nearer to it than the limit.
    HoleNearBend {
        /// The hole.
        hole: String,
        /// The bend.
        bend: Part,
        /// From the hole's edge to the bend's tangent line; negative where the hole reaches into the bend.
        distance: Length,
        /// The limit; 0 where none was given, for no hole is to lie in a bend.
        least: Length,
        /// Where the limit comes from.
        source: Source,
    },
    /// A step of the plan cannot be done.
    Step {
        /// Which step, from 0.
        step: usize,
        /// Why.
        fault: StepFault,
    },
}

impl FormingFault {
    /// Its kind, as its serial form names it.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            FormingFault::LegTooShort { .. } => "leg-too-short",
            FormingFault::RadiusTooSmall { .. } => "radius-too-small",
            FormingFault::FoldTooTight { .. } => "fold-too-tight",
            FormingFault::Crosses { .. } => "crosses",
            FormingFault::GirthOverStock { .. } => "girth-over-stock",
            FormingFault::HoleNearBend { .. } => "hole-near-bend",
            FormingFault::Step { .. } => "step",
        }
    }

    /// Where the fault lies, as a path into the check.
    #[must_use]
    pub fn subject(&self) -> String {
        match self {
            FormingFault::LegTooShort { leg, .. } => format!("profile.{}", leg.leg_path()),
            FormingFault::RadiusTooSmall { bend, .. } | FormingFault::FoldTooTight { fold: bend, .. } => format!("profile.{}", bend.bend_path()),
            FormingFault::Crosses { one, .. } => format!("profile.{}", one.path()),
            FormingFault::GirthOverStock { .. } => "profile".to_owned(),
            FormingFault::HoleNearBend { hole, .. } => format!("holes.{hole}"),
            FormingFault::Step { step, .. } => format!("plan.steps[{step}]"),
        }
    }
}

impl core::fmt::Display for FormingFault {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        forming_text::write(self, f)
    }
}

/// The least inside radius of one bend, as far as it is published.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct RadiusFinding {
    /// The bend.
    pub bend: Part,
    /// Its inside radius.
    pub radius: Length,
    /// The limit, with its table, or that none is published.
    pub limit: RadiusLimit,
}

/// A hole and the bend nearest to it.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HoleFinding {
    /// The hole.
    pub hole: String,
    /// The nearest bend.
    pub bend: Part,
    /// From the hole's edge to that bend's nearer tangent line; negative where the hole reaches into the bend.
    pub distance: Length,
}

/// What a [`FormingCheck`] finds.
///
/// ```
/// use seamwright::error::ErrorKind;
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, FormingCheck, NeutralFactor, Profile};
/// use seamwright::units::Length;
/// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(50)).build()?;
/// let check = FormingCheck { stock_width: Some(Length::inches(48)), ..FormingCheck::new(strip, BendRule::neutral_axis(NeutralFactor::MIDDLE)) };
/// let report = check.compute()?;
/// assert_eq!(report.require().unwrap_err().kind(), ErrorKind::Impossible);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FormingReport {
    /// Whether no fault was found. What was not judged stands in the cautions.
    pub forms: bool,
    /// Every fault.
    pub faults: Vec<FormingFault>,
    /// Width of the blank.
    pub girth: Length,
    /// The least inside radius of each bend, where the metal is given.
    pub radii: Vec<RadiusFinding>,
    /// Each hole with the bend nearest to it.
    pub holes: Vec<HoleFinding>,
    /// What was not judged, what no source limits, and what the flat pattern says.
    pub cautions: Vec<Caution>,
}

impl FormingReport {
    /// Refuses a trim that cannot be formed.
    ///
    /// # Errors
    /// [`ErrorKind::Impossible`] for each fault, at its subject.
    pub fn require(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for fault in &self.faults {
            let e = match fault {
                FormingFault::Step { fault, .. } => fault.error(),
                other => Error::new(ErrorKind::Impossible, other.to_string()),
            };
            faults.add(e.at(fault.subject()));
        }
        faults.check()
    }
}

/// What is found on the way.
#[derive(Default)]
struct Found {
    faults: Vec<FormingFault>,
    radii: Vec<RadiusFinding>,
    holes: Vec<HoleFinding>,
    cautions: Vec<Caution>,
}

impl Found {
    fn not_judged(&mut self, what: &'static str, lacks: &'static str) {
        self.cautions.push(Caution::new(NOT_JUDGED, lacks, Source::CommonPractice).arg("what", what).arg("lacks", lacks));
    }
}

impl FormingCheck {
    /// Faults of the check's own figures.
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (name, limit) in [("least_leg", self.least_leg), ("stock_width", self.stock_width)] {
            faults.keep(limit.map(|l| l.positive(name)).transpose());
        }
        for (i, t) in self.takes.iter().enumerate() {
            faults.keep(t.takes.positive(&format!("takes[{i}].takes")));
        }
        if self.holes.len() > MOST_HOLES {
            faults.add(Error::new(ErrorKind::TooLarge, "too many holes").at("holes").value_of(self.holes.len()).accepts(format!("at most {MOST_HOLES}")));
        }
        for (i, hole) in self.holes.iter().enumerate() {
            faults.keep(hole.size.positive(&format!("holes[{i}].size")));
        }
        if let Some(limit) = &self.hole_limit {
            faults.keep(limit.least.not_negative("hole_limit.least"));
        }
        faults.check()
    }

    fn legs(&self, flat: &Flat, found: &mut Found) {
        let Some(least) = self.least_leg else { return found.not_judged("the length of legs", "least_leg") };
        let short = flat.legs().iter().filter(|l| l.length() < least);
        found.faults.extend(short.map(|l| FormingFault::LegTooShort { leg: l.part, flat: l.length(), least }));
    }

    fn radii<R: Recorder>(&self, flat: &Flat, r: &mut R, found: &mut Found) -> Result<(), Error> {
        let Some(metal) = self.metal else {
            found.not_judged("the inside radii", "metal");
            return Ok(());
        };
        for bend in flat.bends() {
            let asked = MinimumRadius { alloy: metal.alloy, temper: metal.temper, thickness: flat.thickness(), bend: bend.angle, grain: metal.grain };
            let limit = r.part(|| asked.title(), |r| asked.run(r))?;
            match &limit {
                RadiusLimit::Published { radius, source, .. } if bend.inside_radius < *radius => {
                    found.faults.push(FormingFault::RadiusTooSmall { bend: bend.part, radius: bend.inside_radius, least: *radius, source: source.clone() });
                }
                RadiusLimit::Published { .. } => {}
                RadiusLimit::NoPublishedLimit => {
                    let caution = Caution::new(NO_PUBLISHED_RADIUS, format!("profile.{}", bend.part.bend_path()), Source::CommonPractice);
                    found.cautions.push(caution.arg("alloy", metal.alloy).arg("thickness", flat.thickness()).arg("angle", bend.angle));
                }
            }
            found.radii.push(RadiusFinding { bend: bend.part, radius: bend.inside_radius, limit });
        }
        Ok(())
    }

    fn folds(&self, flat: &Flat, found: &mut Found) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (i, t) in self.takes.iter().enumerate() {
            match flat.bends().iter().find(|b| b.part == t.fold).filter(|b| b.angle.degrees() >= 180.0) {
                Some(fold) => {
                    let gap = (fold.inside_radius * 2).length()?;
                    if gap < t.takes {
                        found.faults.push(FormingFault::FoldTooTight { fold: t.fold, gap, takes: t.takes });
                    }
                }
                None => faults.add(
                    Error::new(ErrorKind::Unknown, "the profile has no such fold")
                        .at(format!("takes[{i}].fold"))
                        .value_of(t.fold)
                        .accepts("a hem of the profile, or a bend of 180 deg"),
                ),
            }
        }
        faults.check()
    }

    fn holes(&self, flat: &Flat, found: &mut Found) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (i, hole) in self.holes.iter().enumerate() {
            let half = hole.size.station(1, 2)?;
            let (from, to) = ((hole.station - half).length()?, (hole.station + half).length()?);
            if to <= Length::ZERO || from >= flat.girth() {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, "the hole lies beside the sheet")
                        .at(format!("holes[{i}].station"))
                        .value_of(hole.station)
                        .accepts(format!("0 mm to {}, the girth", flat.girth())),
                );
                continue;
            }
            let mut nearest: Option<HoleFinding> = None;
            for bend in flat.bends() {
                let distance = (bend.from - to).length()?.max((from - bend.to).length()?);
                if nearest.as_ref().is_none_or(|n| distance < n.distance) {
                    nearest = Some(HoleFinding { hole: hole.label.clone(), bend: bend.part, distance });
                }
            }
            let Some(near) = nearest else { continue };
            let (least, source) = match &self.hole_limit {
                Some(limit) => (limit.least, limit.source.clone()),
                None => (Length::ZERO, Source::geometry()),
            };
            if near.distance < least {
                found.faults.push(FormingFault::HoleNearBend { hole: near.hole.clone(), bend: near.bend, distance: near.distance, least, source });
            }
            found.holes.push(near);
        }
        if !self.holes.is_empty() && self.hole_limit.is_none() {
            found.not_judged("how near holes come to bends, unless they reach into one,", "hole_limit");
        }
        faults.check()
    }

    fn steps<R: Recorder>(&self, r: &mut R, found: &mut Found) -> Result<(), Error> {
        let Some(plan) = &self.plan else {
            found.not_judged("whether anything hits while the trim is folded", "plan");
            return Ok(());
        };
        let trial = OrderTrial(BendOrder { profile: self.profile.clone(), rule: self.rule.clone(), plan: plan.clone() });
        let faults = r.part(|| trial.title(), |r| trial.0.faults(r))?;
        found.faults.extend(faults.into_iter().map(|(step, fault)| FormingFault::Step { step, fault }));
        Ok(())
    }
}

impl Calculation for FormingCheck {
    type Out = FormingReport;

    fn title(&self) -> String {
        format!("forming check, sheet {}", self.profile.thickness)
    }

    /// # Errors
    /// As [`Profile::unfold`], under `profile`: among them a leg swallowed by its bends, a hem that is longer than its leg, an open hem without a gap. A limit of zero or less, a
    /// hole beside the sheet ([`ErrorKind::OutOfRange`]); a fold that the profile does not have ([`ErrorKind::Unknown`]); those of the plan, as [`BendOrder`] has them, but
    /// for what hits. A plan is followed for up to [`MAX_STEPS`](super::MAX_STEPS) bends; all else knows no limit.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<FormingReport, Error> {
        let mut faults = Faults::default();
        faults.keep(self.check());
        let flat = faults.keep(self.profile.unfold(&self.rule).map_err(|e| e.under("profile")));
        faults.check()?;
        let flat = flat.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;
        let mut found = Found { cautions: flat.cautions().to_vec(), ..Found::default() };
        self.legs(&flat, &mut found);
        self.radii(&flat, r, &mut found)?;
        self.folds(&flat, &mut found)?;
        match self.stock_width {
            Some(stock) if flat.girth() > stock => found.faults.push(FormingFault::GirthOverStock { girth: flat.girth(), stock }),
            Some(_) => {}
            None => found.not_judged("whether the blank fits the stock", "stock_width"),
        }
        self.holes(&flat, &mut found)?;
        let crossing = Strip::fold(&flat, &finished(&flat), SKIN)?.contour().crossing();
        r.step(|| {
            let step = Step::new("the folded section crosses itself").formula("outline drawn in by half a micrometre, every piece against every other");
            step.gives(if crossing.is_some() { "yes" } else { "no" }).source(Source::geometry())
        });
        found.faults.extend(crossing.map(|(one, other)| FormingFault::Crosses { one, other }));
        self.steps(r, &mut found)?;
        let Found { faults, radii, holes, cautions } = found;
        Ok(FormingReport { forms: faults.is_empty(), faults, girth: flat.girth(), radii, holes, cautions })
    }
}

//! Folding plans as calculations: the gauge list of an order that works, and the verdict on any order.

use super::plan::FoldingPlan;
use super::report::{GaugeStep, StepFault};
use super::step::Work;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::flat::Flat;
use crate::trim::profile::Profile;
use crate::trim::rule::BendRule;

/// The most bends, and steps, of a plan that is followed swing by swing.
pub const MAX_STEPS: usize = 250;

/// The bends of a trim in the order in which the brake makes them.
///
/// Computing gives the gauge list, and refuses an order in which anything is in the way. Each swing is followed through, not looked at where it ends: the swung side turns as one
/// piece about the one axis that carries it from where it lies before to where it lies after, over the bend line, and the angle of the first contact is found from the
/// circles on which its corners and arcs run. Parts that overlap by less than a micrometre touch and do not hit. Within one outside radius of
/// the bend's tangent lines the sheet is not held against tools, for there they work; tools are not held against each other. The fold itself, which has no one shape while
/// it is made, is held against the rest of the sheet at the end of its step.
///
/// # Errors
/// Computing refuses every fault of the profile ([`Profile::unfold`], under `profile`) and of the brake; a bend that the profile does not have
/// ([`ErrorKind::Unknown`]), that is made twice, that closes on the face below where the brake folds upwards only ([`ErrorKind::Conflict`]), or is left unmade
/// ([`ErrorKind::Missing`]); a step that does not bring its bend on ([`ErrorKind::OutOfRange`]); more than [`MAX_STEPS`] steps or bends
/// ([`ErrorKind::TooLarge`]). Then, at each step, whatever hits or is too short, all at once ([`ErrorKind::Impossible`]): the message names the bend and what hits what,
/// the value the bend's angle when it does.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendOrder, BendRule, BendStep, Brake, ClampLine, Face, FoldingPlan, NeutralFactor, Part, Profile, SheetEdge, Tooling};
/// use seamwright::units::{BendAngle, Length};
/// let channel = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::ZERO);
/// let channel = channel.leg("a", Length::inches(2)).up(BendAngle::SQUARE).leg("b", Length::inches(3));
/// let profile = channel.up(BendAngle::SQUARE).leg("c", Length::inches(2)).build()?;
/// let brake = Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None };
/// let steps = vec![BendStep::new(Part::Body(0), SheetEdge::Start, Face::Upper), BendStep::new(Part::Body(1), SheetEdge::End, Face::Upper)];
/// let order = BendOrder { profile, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE), plan: FoldingPlan { brake, springback: None, steps } };
/// let sheet = order.compute()?;
/// assert_eq!((sheet.turns, sheet.flips), (1, 0));
/// assert_eq!(sheet.steps[0].gauge, sheet.steps[1].gauge); // both flanges alike
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BendOrder {
    /// What is bent.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The brake and the steps.
    pub plan: FoldingPlan,
}

/// The gauge list of an order that works.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderSheet {
    /// The steps in order.
    pub steps: Vec<GaugeStep>,
    /// How often the piece is turned end for end.
    pub turns: u32,
    /// How often its other face comes up.
    pub flips: u32,
}

/// Whether an order works: the same question as [`BendOrder`]'s, with what is in the way as a result instead of a refusal.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendOrder, BendRule, BendStep, Brake, ClampLine, Face, FoldingPlan, NeutralFactor, OrderTrial, Part, Profile, SheetEdge, Tooling};
/// use seamwright::units::{BendAngle, Length};
/// // A lip turned in that is closed over a web too narrow for it.
/// let box_ = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::ZERO).leg("lip", Length::inches(2)).up(BendAngle::SQUARE);
/// let box_ = box_.leg("side", Length::inches(2)).up(BendAngle::SQUARE).leg("web", Length::inches(1)).up(BendAngle::SQUARE);
/// let profile = box_.leg("other side", Length::inches(3)).build()?;
/// let brake = Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None };
/// let steps = [0, 1, 2].map(|i| BendStep::new(Part::Body(i), SheetEdge::Start, Face::Upper)).to_vec();
/// let order = BendOrder { profile, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE), plan: FoldingPlan { brake, springback: None, steps } };
/// let verdict = OrderTrial(order).compute()?;
/// assert!(!verdict.works && verdict.faults[0].to_string().starts_with("bend 3: leg 4 hits leg 1 at "));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(transparent))]
pub struct OrderTrial(pub BendOrder);

/// The verdict on an order.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderVerdict {
    /// Whether nothing is in the way.
    pub works: bool,
    /// What is in the way, step by step.
    pub faults: Vec<StepFault>,
    /// The steps, as if each could be done.
    pub steps: Vec<GaugeStep>,
    /// How often the piece is turned end for end.
    pub turns: u32,
    /// How often its other face comes up.
    pub flips: u32,
}

/// All steps, as if each could be done, and the faults with the step in which each arises.
struct Tried {
    steps: Vec<GaugeStep>,
    faults: Vec<(usize, StepFault)>,
}

impl Tried {
    fn times(&self, which: impl Fn(&GaugeStep) -> bool) -> u32 {
        u32::try_from(self.steps.iter().filter(|s| which(s)).count()).unwrap_or(u32::MAX)
    }

    fn turns(&self) -> u32 {
        self.times(|s| s.handling.turned)
    }

    fn flips(&self) -> u32 {
        self.times(|s| s.handling.flipped)
    }
}

/// Refuses more than can be followed.
pub(super) fn within(count: usize, most: usize, path: &str) -> Result<(), Error> {
    if count > most {
        return Err(Error::new(ErrorKind::TooLarge, "too many to follow swing by swing").at(path).value_of(count).accepts(format!("at most {most}")));
    }
    Ok(())
}

impl FoldingPlan {
    fn check(&self, flat: &Flat) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(within(flat.bends().len(), MAX_STEPS, "profile.bends"));
        faults.keep(within(self.steps.len(), MAX_STEPS, "plan.steps"));
        faults.keep(self.brake.check().map_err(|e| e.under("plan.brake")));
        if let Some(springback) = self.springback {
            springback.check(&mut faults, "plan.springback");
        }
        faults.check()
    }

    /// Follows every step.
    fn follow<R: Recorder>(&self, flat: &Flat, r: &mut R) -> Result<Tried, Error> {
        self.check(flat)?;
        let mut work = Work::new(flat, &self.brake, self.springback);
        let mut out = Tried { steps: Vec::with_capacity(self.steps.len()), faults: Vec::new() };
        for (i, step) in self.steps.iter().enumerate() {
            let done = work.take(*step).map_err(|e| e.under(&format!("plan.steps[{i}]")))?;
            r.step(|| worked(i, &done.step));
            out.faults.extend(done.faults.into_iter().map(|f| (i, f)));
            out.steps.push(done.step);
        }
        let mut faults = Faults::default();
        for (bend, made) in flat.bends().iter().zip(&work.made) {
            if *made < bend.angle.degrees() {
                faults.add(
                    Error::new(ErrorKind::Missing, "a bend is left unmade")
                        .at("plan.steps")
                        .value_of(format_args!("{}: {made} deg", bend.part.bend_path()))
                        .accepts(format!("a step that brings it to {}", bend.angle)),
                );
            }
        }
        faults.check()?;
        Ok(out)
    }
}

fn worked(i: usize, step: &GaugeStep) -> Step {
    Step::new(format!("gauge of step {}, {}", i + 1, step.bend))
        .formula("from the clamp line back to the outermost point of the clamped side")
        .with("from the edge to the bend line", step.from_edge)
        .with("from the edge to the clamp line", step.clamp_line)
        .with("at the gauge", step.stop)
        .with("folded to", step.folded_to)
        .gives(step.gauge)
        .source(Source::geometry())
}

impl BendOrder {
    fn follow<R: Recorder>(&self, r: &mut R) -> Result<Tried, Error> {
        let flat = self.profile.unfold(&self.rule).map_err(|e| e.under("profile"))?;
        self.plan.follow(&flat, r)
    }

    /// What is in the way, with the step in which it is.
    pub(super) fn faults<R: Recorder>(&self, r: &mut R) -> Result<Vec<(usize, StepFault)>, Error> {
        Ok(self.follow(r)?.faults)
    }
}

impl Calculation for BendOrder {
    type Out = OrderSheet;

    fn title(&self) -> String {
        format!("order of bends, {} steps", self.plan.steps.len())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<OrderSheet, Error> {
        let tried = self.follow(r)?;
        let mut faults = Faults::default();
        for (i, fault) in &tried.faults {
            faults.add(fault.error().at(format!("plan.steps[{i}]")));
        }
        faults.check()?;
        Ok(OrderSheet { turns: tried.turns(), flips: tried.flips(), steps: tried.steps })
    }
}

impl Calculation for OrderTrial {
    type Out = OrderVerdict;

    fn title(&self) -> String {
        format!("trial of an {}", self.0.title())
    }

    /// # Errors
    /// As [`BendOrder`], but for what hits or is too short, which is the verdict's.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<OrderVerdict, Error> {
        let tried = self.0.follow(r)?;
        let (turns, flips) = (tried.turns(), tried.flips());
        let faults: Vec<StepFault> = tried.faults.into_iter().map(|(_, f)| f).collect();
        Ok(OrderVerdict { works: faults.is_empty(), faults, steps: tried.steps, turns, flips })
    }
}

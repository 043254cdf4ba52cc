//! One junction from what is asked for to what the crew does: its section, its lines, the order of work, the water on it.

use super::parts::{Side, Solved};
use super::section_kind::SectionKind;
use super::section_sheets::WaterSide;
use super::section_water::{SectionWater, WaterCheck};
use super::water_rules::WaterRules;
use super::work::{SectionWork, WorkStep};
use super::{
    Coping, CurbBack, Eave, ExpansionAcross, ExpansionAlong, Headwall, HighSide, Hip, Levels, Pipe, PitchTransition, Rake, Ridge, RoofSide, Sidewall, Step,
    Valley,
};
use crate::error::Error;
use crate::record::{Calculation, Recorder};
use crate::roof::{LineKind, Water};
use crate::units::Angle;

/// A junction of any kind, as its own calculation asks for it. The front of a curb is a headwall, its side a sidewall.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[allow(missing_docs, reason = "each is named for the calculation that it holds")]
pub enum JunctionInput {
    Coping(Box<Coping>),
    CurbBack(Box<CurbBack>),
    Eave(Box<Eave>),
    ExpansionAcross(Box<ExpansionAcross>),
    ExpansionAlong(Box<ExpansionAlong>),
    Headwall(Box<Headwall>),
    HighSide(Box<HighSide>),
    Hip(Box<Hip>),
    Pipe(Box<Pipe>),
    PitchTransition(Box<PitchTransition>),
    Rake(Box<Rake>),
    Ridge(Box<Ridge>),
    Sidewall(Box<Sidewall>),
    Step(Box<Step>),
    Valley(Box<Valley>),
}

/// What comes of a junction.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct WorkedJunction {
    /// Its section, with the lines to strike.
    pub section: Solved,
    /// The order of work, with the lines that are struck for each step.
    pub work: Vec<WorkStep>,
    /// The water on it at two levels, metal and underlayment. A coping's second level is the membrane under it, where it has one and something comes up the
    /// wall. A pipe has the metal alone: what dresses the underlayment to it comes with its boot, and is no part of the section. A riser and the curbs of a
    /// joint have the metal alone too: the underlayment that runs up them is in the path of the plane that it comes from.
    pub water: WaterCheck,
}

/// A junction to be worked out whole: the section solved and checked for what runs into what, every line for what it is measured from, the work put in order,
/// the water followed.
///
/// Many at a time go to [`compute_all`](crate::record::compute_all).
///
/// # Errors
/// Computing refuses what the section's own calculation, [`SectionWork`] and [`SectionWater`] refuse.
///
/// ```
/// use seamwright::job::compute_json;
/// use seamwright::junction::WholeJunction;
/// use seamwright::record::{Calculation, compute_all, read_json};
/// let eave = include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/junctions/inputs/eave.json"));
/// let text = format!(r#"{{"of": {{"eave": {}}}}}"#, std::str::from_utf8(eave).unwrap());
/// let whole: WholeJunction = read_json(text.as_bytes(), 1 << 20)?;
/// let worked = whole.compute()?;
/// assert!(worked.work.iter().any(|step| step.gives == ["hook strip"]) && worked.water.holds());
/// assert_eq!(compute_all(&vec![whole; 3])?.len(), 3);
/// assert!(compute_json("junction.whole-junction", &text)?.contains("hook strip"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WholeJunction {
    /// What is asked for.
    pub of: JunctionInput,
    /// The laps that water asks for; in a job file those of [`WaterRules::default`] unless given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub water: WaterRules,
}

fn down(angle: Angle) -> Result<Angle, Error> {
    Angle::degrees_from(-angle.degrees())
}

fn side(side: Side, rise: Angle, water: Water, levels: &Levels) -> WaterSide {
    WaterSide { side, rise, water, levels: *levels }
}

/// A plane that lies on the first side and falls to the line or away from it.
fn first(roof: &RoofSide, water: Water) -> Result<Vec<WaterSide>, Error> {
    let rise = roof.pitch.angle();
    Ok(vec![side(Side::First, if water == Water::Toward { down(rise)? } else { rise }, water, &roof.levels)])
}

impl JunctionInput {
    /// What it is, and its name in serial form.
    fn named(&self) -> (SectionKind, &'static str) {
        use SectionKind::Line;
        match self {
            JunctionInput::Coping(_) => (SectionKind::Coping, "coping"),
            JunctionInput::CurbBack(_) => (Line(LineKind::CurbBack), "curb-back"),
            JunctionInput::Eave(_) => (Line(LineKind::Eave), "eave"),
            JunctionInput::ExpansionAcross(_) => (Line(LineKind::ExpansionAcross), "expansion-across"),
            JunctionInput::ExpansionAlong(_) => (Line(LineKind::ExpansionAlong), "expansion-along"),
            JunctionInput::Headwall(_) => (Line(LineKind::Headwall), "headwall"),
            JunctionInput::HighSide(_) => (Line(LineKind::HighEdge), "high-side"),
            JunctionInput::Hip(_) => (Line(LineKind::Hip), "hip"),
            JunctionInput::Pipe(_) => (SectionKind::Pipe, "pipe"),
            JunctionInput::PitchTransition(t) => {
                let is_steep_above = t.upper.pitch.angle().degrees() > t.lower.pitch.angle().degrees();
                (Line(if is_steep_above { LineKind::SteepToShallow } else { LineKind::ShallowToSteep }), "pitch-transition")
            }
            JunctionInput::Rake(_) => (Line(LineKind::Rake), "rake"),
            JunctionInput::Ridge(_) => (Line(LineKind::Ridge), "ridge"),
            JunctionInput::Sidewall(_) => (Line(LineKind::Sidewall), "sidewall"),
            JunctionInput::Step(_) => (Line(LineKind::Step), "step"),
            JunctionInput::Valley(_) => (Line(LineKind::Valley), "valley"),
        }
    }

    /// Its name in serial form.
    ///
    /// ```
    /// # use seamwright::junction::JunctionInput;
    /// # use seamwright::record::read_json;
    /// let eave = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/junctions/inputs/eave.json"));
    /// assert_eq!(read_json::<JunctionInput>(format!(r#"{{"eave": {eave}}}"#).as_bytes(), 1 << 20)?.name(), "eave");
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.named().1
    }

    /// What it is.
    #[must_use]
    pub fn kind(&self) -> SectionKind {
        self.named().0
    }

    /// Solves its section.
    pub(super) fn solve<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        match self {
            JunctionInput::Coping(c) => c.run(r),
            JunctionInput::CurbBack(c) => c.run(r),
            JunctionInput::Eave(c) => c.run(r),
            JunctionInput::ExpansionAcross(c) => c.run(r),
            JunctionInput::ExpansionAlong(c) => c.run(r),
            JunctionInput::Headwall(c) => c.run(r),
            JunctionInput::HighSide(c) => c.run(r),
            JunctionInput::Hip(c) => c.run(r),
            JunctionInput::Pipe(c) => c.run(r).map(|plan| plan.section),
            JunctionInput::PitchTransition(c) => c.run(r),
            JunctionInput::Rake(c) => c.run(r),
            JunctionInput::Ridge(c) => c.run(r),
            JunctionInput::Sidewall(c) => c.run(r),
            JunctionInput::Step(c) => c.run(r),
            JunctionInput::Valley(c) => c.run(r),
        }
    }

    /// The roof planes of its section as water meets them; those of a coping and a pipe are told by themselves.
    fn sides(&self) -> Result<Vec<WaterSide>, Error> {
        use Water::{Along, Away, Toward};
        Ok(match self {
            JunctionInput::Eave(c) => first(&c.roof, Toward)?,
            JunctionInput::CurbBack(c) => first(&c.roof, Toward)?,
            JunctionInput::HighSide(c) => first(&c.roof, Away)?,
            JunctionInput::Headwall(c) => first(&c.roof, Away)?,
            JunctionInput::Rake(c) => vec![side(Side::First, Angle::ZERO, Along, &c.levels)],
            JunctionInput::Sidewall(c) => vec![side(Side::First, Angle::ZERO, Along, &c.roof.levels)],
            JunctionInput::Ridge(c) => {
                let [one, two] = [&c.first, &c.second];
                vec![side(Side::First, one.pitch.angle(), Away, &one.levels), side(Side::Second, down(two.pitch.angle())?, Away, &two.levels)]
            }
            JunctionInput::PitchTransition(c) => {
                let [low, high] = [&c.lower, &c.upper];
                let built_up = c.upper_levels();
                vec![side(Side::First, low.pitch.angle(), Away, &low.levels), side(Side::Second, high.pitch.angle(), Toward, &built_up)]
            }
            JunctionInput::Step(c) => {
                let [low, high] = [&c.lower, &c.upper];
                vec![side(Side::First, low.pitch.angle(), Away, &low.levels), side(Side::Second, high.pitch.angle(), Toward, &high.levels)]
            }
            JunctionInput::Hip(c) => {
                let at = c.corner.compute()?;
                vec![side(Side::First, at.first.backing, Away, &c.first), side(Side::Second, down(at.second.backing)?, Away, &c.second)]
            }
            JunctionInput::Valley(c) => {
                let at = c.corner.compute()?;
                vec![side(Side::First, down(at.first.backing)?, Toward, &c.first), side(Side::Second, at.second.backing, Toward, &c.second)]
            }
            JunctionInput::ExpansionAcross(c) => {
                let rise = c.roof.pitch.angle();
                vec![side(Side::First, rise, Away, &c.roof.levels), side(Side::Second, rise, Toward, &c.upper().levels)]
            }
            JunctionInput::ExpansionAlong(c) => {
                vec![side(Side::First, Angle::ZERO, Along, &c.first.levels), side(Side::Second, Angle::ZERO, Along, &c.second.levels)]
            }
            JunctionInput::Coping(_) | JunctionInput::Pipe(_) => Vec::new(),
        })
    }
}

impl Calculation for WholeJunction {
    type Out = WorkedJunction;

    fn title(&self) -> String {
        format!("{} with its order of work and its water", self.of.kind())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<WorkedJunction, Error> {
        let (kind, name) = self.of.named();
        let section = r.part(|| "section".into(), |r| self.of.solve(r)).map_err(|e| e.under(&format!("of.{name}")))?;
        let order = SectionWork { kind, solved: &section };
        let work = r.part(|| order.title(), |r| order.run(r))?;
        let sides = self.of.sides()?;
        let water = SectionWater { solved: &section, sides: &sides, rules: &self.water };
        let followed = r.part(
            || water.title(),
            |r| match &self.of {
                JunctionInput::Coping(c) => c.water(r, &section, &self.water),
                JunctionInput::Pipe(c) => c.water(r, &section, &self.water),
                _ => water.run(r),
            },
        );
        let water = followed.map_err(|e| e.moved("rules", "water"))?;
        Ok(WorkedJunction { section, work, water })
    }
}

//! Underlayment and membranes of the whole roof, taken off.

use super::input::Job;
use super::packet::JunctionItem;
use crate::error::{Error, Faults};
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::roof::{Line, LineKind, Plane, Roof, Side};
use crate::underlayment::{Across, CourseLayout, CourseRule, EaveBand, EaveMembrane, EaveReach, LaidCourses, Roll, ValleyMembrane, ValleyStrip};
use crate::units::Length;

/// A membrane along eaves.
///
/// ```
/// use seamwright::job::EaveSupply;
/// let supply: EaveSupply = serde_json::from_str(
///     r#"{"roll": {"width": "36 in", "length": "66 ft", "rated": "121 degC"}, "overhang": "12 in", "head_lap": "4 in", "end_lap": "6 in"}"#,
/// ).unwrap();
/// assert_eq!(supply.reach, seamwright::underlayment::EaveReach::irc());
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveSupply {
    /// The rolls.
    pub roll: Roll,
    /// From the eave's edge in to the exterior wall line, level.
    pub overhang: Length,
    /// How far it must reach.
    #[cfg_attr(feature = "serde", serde(default = "EaveReach::irc"))]
    pub reach: EaveReach,
    /// How far a course laps over the one below.
    pub head_lap: Length,
    /// How far pieces of a course lap.
    pub end_lap: Length,
}

/// A membrane under valleys.
///
/// ```
/// use seamwright::job::ValleySupply;
/// use seamwright::underlayment::Roll;
/// use seamwright::units::Length;
/// let supply = ValleySupply { roll: Roll { width: Length::inches(36), length: Length::feet(66), rated: None }, end_lap: Length::inches(6) };
/// assert!(supply.end_lap < supply.roll.width);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleySupply {
    /// The rolls.
    pub roll: Roll,
    /// How far a piece laps over the one below.
    pub end_lap: Length,
}

/// Underlayment and membranes. The field's courses begin a head lap below the top of the membranes along the whole foot of their plane; where there are none, at the foot. The upper
/// edge of a step is an eave's.
///
/// ```
/// use seamwright::job::UnderlaymentSupply;
/// use seamwright::underlayment::{CourseRule, Roll};
/// use seamwright::units::Length;
/// let roll = Roll { width: Length::inches(48), length: Length::feet(250), rated: None };
/// let supply = UnderlaymentSupply { roll, rule: CourseRule::IRC_ONE_LAYER, eave: None, valley: None };
/// assert!(supply.eave.is_none());
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct UnderlaymentSupply {
    /// The field's rolls.
    pub roll: Roll,
    /// How its courses lap.
    #[cfg_attr(feature = "serde", serde(default = "CourseRule::irc_one_layer"))]
    pub rule: CourseRule,
    /// The membrane along eaves, where there is one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub eave: Option<EaveSupply>,
    /// The membrane under valleys, where there is one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub valley: Option<ValleySupply>,
}

/// The membrane along one eave, or along the upper edge of a step.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveUnderlayment {
    /// Number of the line in the roof.
    pub line: usize,
    /// Its name.
    pub name: String,
    /// How far it reaches, and its marks from the eave.
    pub band: EaveBand,
    /// Its courses; heights from the lowest point of the plane.
    pub laid: LaidCourses,
}

/// The underlayment of one plane.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneUnderlayment {
    /// The plane, by name.
    pub plane: String,
    /// Membranes along its eaves and above its steps.
    pub eaves: Vec<EaveUnderlayment>,
    /// The field; nothing where membranes along the eave take all of the plane.
    pub field: Option<LaidCourses>,
}

/// The membrane under one valley.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleyUnderlayment {
    /// Number of the line in the roof.
    pub line: usize,
    /// Its name.
    pub name: String,
    /// The strip.
    pub strip: ValleyStrip,
}

/// The underlayment of a roof.
///
/// ```
/// use seamwright::job::{Job, UnderlaymentSupply};
/// use seamwright::record::Calculation;
/// use seamwright::underlayment::{CourseRule, Roll};
/// use seamwright::units::Length;
/// let mut job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let roll = Roll { width: Length::inches(48), length: Length::feet(250), rated: None };
/// job.supplies.underlayment = Some(UnderlaymentSupply { roll, rule: CourseRule::IRC_ONE_LAYER, eave: None, valley: None });
/// let plan = job.compute()?.underlayment.expect("it was asked for");
/// assert_eq!(plan.planes.len(), job.roof.planes.len());
/// assert!(plan.field_rolls > 0 && plan.eave_rolls == 0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct UnderlaymentPlan {
    /// The planes, in the roof's order.
    pub planes: Vec<PlaneUnderlayment>,
    /// The valleys, in the roof's order.
    pub valleys: Vec<ValleyUnderlayment>,
    /// Whole rolls for the field of all planes: what is left of one goes on to the next.
    pub field_rolls: u32,
    /// Whole rolls along eaves.
    pub eave_rolls: u32,
    /// Whole rolls under valleys.
    pub valley_rolls: u32,
    /// What to know before they are ordered.
    pub cautions: Vec<Caution>,
}

impl UnderlaymentSupply {
    /// Refuses what the take-off cannot be made with before any roof is known.
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let point = |x, y| crate::roof::Point::new(Length::feet(x), Length::feet(y));
        // A plane of a foot takes any rolls and laps that a roof does.
        let outline = crate::roof::Outline::new(vec![point(0, 0), point(1, 0), point(1, 1), point(0, 1)], Vec::new())?;
        let courses =
            |roll, rule| CourseLayout { outline: outline.clone(), roll, rule, from: Length::ZERO, to: None, across: None, left: Length::ZERO }.compute();
        faults.keep(courses(self.roll, self.rule.clone()));
        if let Some(eave) = &self.eave {
            faults.keep(courses(eave.roll, eave.rule()).map_err(|e| e.moved("rule.head_lap", "head_lap").moved("rule.end_lap", "end_lap").under("eave")));
            let band = EaveMembrane {
                pitch: crate::pitch::Pitch::from_angle(crate::units::Angle::ZERO)?,
                overhang: eave.overhang,
                reach: eave.reach.clone(),
                width: Length::feet(1),
                head_lap: Length::ZERO,
            };
            faults.keep(band.compute().map_err(|e| e.under("eave")));
        }
        if let Some(valley) = &self.valley {
            let strip = ValleyMembrane { line: Length::feet(1), pan: Length::feet(1), roll: valley.roll, end_lap: valley.end_lap };
            faults.keep(strip.compute().map_err(|e| e.under("valley")));
        }
        faults.check()
    }
}

impl EaveSupply {
    fn rule(&self) -> CourseRule {
        CourseRule { head_lap: self.head_lap, end_lap: self.end_lap, stagger: Length::ZERO, starter: None, source: Source::user() }
    }
}

/// The side whose water leaves the roof over this line as over an eave: an eave's own, a step's upper one.
fn eave_of(line: &Line) -> Option<&Side> {
    match line.kind {
        LineKind::Eave => Some(&line.side),
        LineKind::Step => line.other(),
        _ => None,
    }
}

/// What the take-off is made from.
struct Plan<'a> {
    job: &'a Job,
    roof: &'a Roof,
    supply: &'a UnderlaymentSupply,
    /// What is left on the rolls in hand, and how many were opened.
    field: (Length, u32),
    eave: (Length, u32),
}

impl Plan<'_> {
    fn eave<R: Recorder>(&mut self, r: &mut R, plane: &Plane, of: &EaveSupply, (line, side): (usize, &Side)) -> Result<Option<EaveUnderlayment>, Error> {
        let Some(name) = self.roof.lines().get(line).map(|l| l.name.clone()) else { return Ok(None) };
        let asked = EaveMembrane { pitch: plane.pitch(), overhang: of.overhang, reach: of.reach.clone(), width: of.roll.width, head_lap: of.head_lap };
        let band = r.part(|| format!("{}, {name}", asked.title()), |r| asked.run(r))?;
        let bounds = plane.outline().bounds();
        let height = bounds.height()?;
        let from = (side.start.y.min(side.end.y) - bounds.low.y).length()?.max(Length::ZERO);
        let across = Across { from: (side.start.x.min(side.end.x) - bounds.low.x).length()?, to: (side.start.x.max(side.end.x) - bounds.low.x).length()? };
        let to = (from + band.covers).length()?.min(height);
        let courses =
            CourseLayout { outline: plane.outline().clone(), roll: of.roll, rule: of.rule(), from, to: Some(to), across: Some(across), left: self.eave.0 };
        let laid = r.part(|| format!("courses of membrane along {name}"), |r| courses.run(r))?;
        self.eave = (laid.left, self.eave.1.saturating_add(laid.rolls));
        Ok(Some(EaveUnderlayment { line, name, band, laid }))
    }

    fn plane<R: Recorder>(&mut self, r: &mut R, number: usize, plane: &Plane) -> Result<PlaneUnderlayment, Error> {
        let bounds = plane.outline().bounds();
        let (height, width) = (bounds.height()?, bounds.width()?);
        let mut eaves = Vec::new();
        if let Some(of) = &self.supply.eave {
            for (line, l) in self.roof.lines().iter().enumerate() {
                if let Some(side) = eave_of(l).filter(|side| side.plane == number) {
                    eaves.extend(self.eave(r, plane, of, (line, side))?);
                }
            }
        }
        // Membranes along the whole foot, one beside the other, take the place of the field's first courses.
        let (mut covered, mut least) = (0.0, None::<Length>);
        for eave in &eaves {
            let Some(of) = self.roof.lines().get(eave.line).and_then(eave_of) else { continue };
            if (of.start.y.min(of.end.y) - bounds.low.y).length()? <= self.roof.tolerance() {
                covered += (of.start.x - of.end.x).length()?.mm().abs();
                least = Some(least.map_or(eave.band.covers, |l| l.min(eave.band.covers)));
            }
        }
        let spans = covered + self.roof.tolerance().mm() >= width.mm();
        let from = match least.filter(|_| spans) {
            Some(covers) => (covers - self.supply.rule.head_lap).length()?.max(Length::ZERO),
            None => Length::ZERO,
        };
        let field = if from < height {
            let rule = CourseRule { starter: self.supply.rule.starter.filter(|_| from == Length::ZERO), ..self.supply.rule.clone() };
            let courses = CourseLayout { outline: plane.outline().clone(), roll: self.supply.roll, rule, from, to: None, across: None, left: self.field.0 };
            let laid = r.part(|| format!("courses of underlayment on {}", plane.name()), |r| courses.run(r))?;
            self.field = (laid.left, self.field.1.saturating_add(laid.rolls));
            Some(laid)
        } else {
            None
        };
        Ok(PlaneUnderlayment { plane: plane.name().to_owned(), eaves, field })
    }
}

/// The underlayment of the whole roof, where the job asks for it.
pub(super) fn plan<R: Recorder>(r: &mut R, job: &Job, roof: &Roof, junctions: &[JunctionItem]) -> Result<Option<UnderlaymentPlan>, Error> {
    let Some(supply) = &job.supplies.underlayment else { return Ok(None) };
    let mut plan = Plan { job, roof, supply, field: (Length::ZERO, 0), eave: (Length::ZERO, 0) };
    let mut planes = Vec::with_capacity(roof.planes().len());
    for (k, plane) in roof.planes().iter().enumerate() {
        planes.push(plan.plane(r, k, plane)?);
    }
    let mut valleys = Vec::new();
    let (mut used, mut rolls) = (Length::ZERO, 0_u32);
    if let Some(of) = &supply.valley {
        for junction in junctions.iter().filter(|j| j.kind == LineKind::Valley) {
            let Some(pan) = junction.section.trim("valley pan") else { continue };
            let across = pan.corners.iter().map(|c| c.x);
            let (left, right) = (across.clone().min().unwrap_or_default(), across.max().unwrap_or_default());
            let asked = ValleyMembrane { line: junction.along.length, pan: (right - left).length()?, roll: of.roll, end_lap: of.end_lap };
            let strip = r.part(|| format!("{}, {}", asked.title(), junction.name), |r| asked.run(r))?;
            // Strips of one roll after the other; a strip that does not fit on what is left begins another.
            let first = strip.length.min(of.roll.length);
            if used < first {
                rolls = rolls.saturating_add(strip.pieces);
                used = (of.roll.length.station(strip.pieces, 1)? - strip.length).length()?;
            } else {
                used = (used - strip.length).length()?;
            }
            valleys.push(ValleyUnderlayment { line: junction.line, name: junction.name.clone(), strip });
        }
    }
    let hottest = plan.job.temperatures.map(|t| t.hottest);
    let path = "supplies.underlayment";
    let mut cautions: Vec<Caution> = Vec::new();
    cautions.extend(supply.roll.hot_caution("underlayment", hottest).map(|c| c.under(&format!("{path}.roll"))));
    cautions.extend(supply.eave.as_ref().and_then(|e| e.roll.hot_caution("membrane along the eaves", hottest)).map(|c| c.under(&format!("{path}.eave.roll"))));
    cautions.extend(
        supply.valley.as_ref().and_then(|v| v.roll.hot_caution("membrane under the valleys", hottest)).map(|c| c.under(&format!("{path}.valley.roll"))),
    );
    for plane in &planes {
        let laid = plane.eaves.iter().map(|e| &e.laid).chain(&plane.field);
        cautions.extend(laid.flat_map(|l| &l.cautions).map(|c| c.clone().under(&format!("underlayment.{}", plane.plane))));
    }
    cautions.extend(valleys.iter().flat_map(|v| v.strip.cautions.iter().map(move |c| c.clone().under(&format!("underlayment.{}", v.name)))));
    Ok(Some(UnderlaymentPlan { planes, valleys, field_rolls: plan.field.1, eave_rolls: plan.eave.1, valley_rolls: rolls, cautions }))
}

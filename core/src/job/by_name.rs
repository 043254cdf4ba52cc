//! Any calculation by its name, from JSON to JSON: the door for callers that know names and documents and not Rust's types.
//!
//! A name is the room and the calculation's type in kebab case: [`closure::ClosureBay`](crate::closure::ClosureBay) is
//! `closure.closure-bay`. The input is the calculation as the serial form of the library writes it (fields in snake_case, choices in
//! kebab-case, quantities as text with their unit); the output is its result in the same form. Nothing is looked up or filled in on the
//! way, so that an answer by name is the answer of [`Calculation::compute`].

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Worksheet, read_json};
use crate::{assembly, closure, fastener, junction, layout, metal, movement, panel, pitch, roof, sealant, spacing, stock, trim, underlayment};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// The longest input that is read, in bytes: 16 MiB.
pub const LONGEST_INPUT: usize = 16 << 20;

/// A calculation that can be run by its name.
///
/// ```
/// use seamwright::job::named;
/// let depth = named("sealant.joint-depth")?;
/// assert_eq!(depth.compute_json(r#"{"rule": "half-width", "width": "3/4\""}"#)?, r#""9.525 mm""#);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct NamedCalculation {
    name: &'static str,
    #[cfg(test)]
    type_name: fn() -> &'static str,
    compute: fn(&str) -> Result<String, Error>,
    explain: fn(&str) -> Result<(String, Worksheet), Error>,
}

impl NamedCalculation {
    const fn of<C>(name: &'static str) -> NamedCalculation
    where
        C: Calculation<Out: Serialize> + DeserializeOwned,
    {
        NamedCalculation {
            name,
            #[cfg(test)]
            type_name: core::any::type_name::<C>,
            compute: |input| written(&read_json::<C>(input.as_bytes(), LONGEST_INPUT)?.compute()?),
            explain: |input| {
                let (out, sheet) = read_json::<C>(input.as_bytes(), LONGEST_INPUT)?.explain()?;
                Ok((written(&out)?, sheet))
            },
        }
    }

    /// Its name: the room and the type.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    #[cfg(test)]
    pub(super) fn type_name(&self) -> &'static str {
        (self.type_name)()
    }

    /// Computes: the result as JSON.
    ///
    /// # Errors
    /// Those of reading, by their [kind](ErrorKind): `TooLarge` for more than [`LONGEST_INPUT`], `Format` for text that is not JSON or for a
    /// value that does not belong where it stands, `Missing`, `Unknown` and `Conflict` for a field that is not there, not known or given
    /// twice; each with its path into the input. Then those of the calculation.
    pub fn compute_json(&self, input: &str) -> Result<String, Error> {
        (self.compute)(input)
    }

    /// Computes and records the working: the result as JSON, and the worksheet.
    ///
    /// # Errors
    /// As [`compute_json`](Self::compute_json).
    pub fn explain_json(&self, input: &str) -> Result<(String, Worksheet), Error> {
        (self.explain)(input)
    }

    /// Computes and records the working, as one JSON document: `{"out": ..., "worksheet": {"title": ..., "entries": [...]}}`, where an entry is
    /// `{"step": {...}}` or, with steps of its own, `{"part": {...}}`.
    ///
    /// # Errors
    /// As [`compute_json`](Self::compute_json).
    pub fn explained_json(&self, input: &str) -> Result<String, Error> {
        let (out, sheet) = self.explain_json(input)?;
        Ok(format!("{{\"out\":{out},\"worksheet\":{}}}", written(&sheet)?))
    }
}

fn written<T: Serialize>(out: &T) -> Result<String, Error> {
    serde_json::to_string(out).map_err(|e| Error::new(ErrorKind::Internal, "the result cannot be written as JSON").value_of(e))
}

macro_rules! calculations {
    ($($name:literal => $calculation:ty),+ $(,)?) => {
        /// Every calculation that can be run by its name, by floor and room.
        pub const CALCULATIONS: &[NamedCalculation] = &[$(NamedCalculation::of::<$calculation>($name)),+];
    };
}

calculations! {
    "metal.minimum-radius" => metal::MinimumRadius,
    "metal.metals-together" => metal::MetalsTogether,
    "metal.sheet" => metal::Sheet,
    "pitch.bend-at" => pitch::BendAt,
    "pitch.corner" => pitch::Corner,
    "pitch.framing" => pitch::Framing,
    "spacing.spacing" => spacing::Spacing,
    "spacing.support-spacing" => spacing::SupportSpacing,
    "stock.cutting" => stock::Cutting,
    "stock.lap-run" => stock::LapRun,
    "stock.slitting" => stock::Slitting,
    "fastener.fastener-check" => fastener::FastenerCheck,
    "fastener.screw-connection" => fastener::ScrewConnection,
    "fastener.spacing-from-load" => fastener::SpacingFromLoad,
    "movement.cap-parting" => movement::CapParting,
    "movement.end-check" => movement::EndCheck,
    "movement.end-movement" => movement::EndMovement,
    "movement.length-change" => movement::LengthChange,
    "roof.cricket" => roof::Cricket,
    "roof.joined-planes" => roof::JoinedPlanes,
    "roof.measured-plane" => roof::MeasuredPlane,
    "roof.roof-input" => roof::RoofInput,
    "roof.sketched-roof" => roof::SketchedRoof,
    "roof.snapping" => roof::Snapping,
    "trim.bend-figures" => trim::BendFigures,
    "trim.bend-order" => trim::BendOrder,
    "trim.blank-plan" => trim::BlankPlan,
    "trim.chain" => trim::Chain,
    "trim.course" => trim::Course,
    "trim.din-minimum-radius" => trim::DinMinimumRadius,
    "trim.end-fold" => trim::EndFold,
    "trim.flat-pattern" => trim::FlatPattern,
    "trim.forming-check" => trim::FormingCheck,
    "trim.joggle" => trim::Joggle,
    "trim.matching-section" => trim::MatchingSection,
    "trim.mitre" => trim::Mitre,
    "trim.nominal-seam" => trim::NominalSeam,
    "trim.nominal-sum" => trim::NominalSum,
    "trim.order-search" => trim::OrderSearch,
    "trim.order-trial" => trim::OrderTrial,
    "trim.over-bend" => trim::OverBend,
    "trim.relief-hole" => trim::ReliefHole,
    "trim.springback" => trim::Springback,
    "trim.taper" => trim::Taper,
    "trim.tapered-run" => trim::TaperedRun,
    "trim.trial-bend" => trim::TrialBend,
    "trim.trim-figures" => trim::TrimFigures,
    "trim.vertices" => trim::Vertices,
    "panel.panel" => panel::Panel,
    "closure.closure-bay" => closure::ClosureBay,
    "closure.closure-blank" => closure::ClosureBlank,
    "closure.closure-setting" => closure::ClosureSetting,
    "sealant.bead-order" => sealant::BeadOrder,
    "sealant.joint-depth" => sealant::JointDepth,
    "sealant.joint-width" => sealant::JointWidth,
    "sealant.tape-line" => sealant::TapeLine,
    "junction.coping" => junction::Coping,
    "junction.curb-back" => junction::CurbBack,
    "junction.eave" => junction::Eave,
    "junction.end-proposal" => junction::EndProposal,
    "junction.expansion-across" => junction::ExpansionAcross,
    "junction.expansion-along" => junction::ExpansionAlong,
    "junction.headwall" => junction::Headwall,
    "junction.high-side" => junction::HighSide,
    "junction.hip" => junction::Hip,
    "junction.cap-outline" => junction::CapOutline,
    "junction.kick-out" => junction::KickOut,
    "junction.levels" => junction::Levels,
    "junction.line-order" => junction::LineOrder,
    "junction.pipe" => junction::Pipe,
    "junction.pitch-transition" => junction::PitchTransition,
    "junction.rake" => junction::Rake,
    "junction.ridge" => junction::Ridge,
    "junction.rule-check" => junction::RuleCheck,
    "junction.section-fit" => junction::SectionFit,
    "junction.sidewall" => junction::Sidewall,
    "junction.step" => junction::Step,
    "junction.valley" => junction::Valley,
    "junction.water-path" => junction::WaterPath,
    "junction.whole-junction" => junction::WholeJunction,
    "junction.work-plan" => junction::WorkPlan,
    "underlayment.course-layout" => underlayment::CourseLayout,
    "underlayment.eave-membrane" => underlayment::EaveMembrane,
    "underlayment.valley-membrane" => underlayment::ValleyMembrane,
    "layout.coil-totals" => layout::CoilTotals,
    "layout.cut-shapes" => layout::CutShapes,
    "layout.direction-of-lay" => layout::DirectionOfLay,
    "layout.layout" => layout::Layout,
    "layout.panel-list" => layout::PanelList,
    "layout.revision" => layout::Revision,
    "layout.seam-clearance" => layout::SeamClearance,
    "layout.seam-marks" => layout::SeamMarks,
    "layout.tapered-lay" => layout::TaperedLay,
    "assembly.coping-run" => assembly::CopingRun,
    "assembly.coping-walls" => assembly::CopingWalls,
    "assembly.corner-plan" => assembly::CornerPlan,
    "assembly.pan-end" => assembly::PanEnd,
    "assembly.sealed-line" => assembly::SealedLine,
    "job.job-revision" => super::JobRevision,
    "job.job-rules" => super::JobRules,
}

/// The names of all calculations, by floor and room.
///
/// ```
/// assert!(seamwright::job::names().any(|name| name == "closure.closure-bay"));
/// ```
pub fn names() -> impl Iterator<Item = &'static str> {
    CALCULATIONS.iter().map(NamedCalculation::name)
}

/// The calculation with this name.
///
/// # Errors
/// [`ErrorKind::Unknown`] at `name`, with the names that there are.
///
/// ```
/// use seamwright::job::named;
/// assert_eq!(named("stock.cutting")?.name(), "stock.cutting");
/// assert!(named("stock.cuttings").unwrap_err().allowed().unwrap().contains("stock.cutting"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn named(name: &str) -> Result<&'static NamedCalculation, Error> {
    CALCULATIONS
        .iter()
        .find(|c| c.name == name)
        .ok_or_else(|| Error::new(ErrorKind::Unknown, "no calculation has this name").at("name").value_of(name).accepts(names().collect::<Vec<_>>().join(", ")))
}

/// Computes the calculation with this name: the result as JSON.
///
/// # Errors
/// As [`named`], then as [`NamedCalculation::compute_json`].
///
/// ```
/// use seamwright::job::compute_json;
/// let lines = compute_json(
///     "closure.closure-setting",
///     r#"{"set_back": "1/2\"", "face": "leading-edge", "lower_flange": "2 1/2\"", "top_flange": "1 1/8\""}"#,
/// )?;
/// assert!(lines.contains(r#""fasteners":"73.025 mm""#), "2 7/8 in: {lines}");
/// let e = compute_json("closure.closure-setting", r#"{"set_back": "1/2\"", "face": "front"}"#).unwrap_err();
/// assert_eq!(e.path(), "face");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn compute_json(name: &str, input: &str) -> Result<String, Error> {
    named(name)?.compute_json(input)
}

/// Computes the calculation with this name for many inputs in one call: the results as JSON, in their order.
///
/// # Errors
/// As [`named`], then those of every input that is refused, each at its number: `inputs[17].rule.spacing`.
///
/// ```
/// use seamwright::job::compute_all_json;
/// let depths = compute_all_json("sealant.joint-depth", &[r#"{"rule": "half-width", "width": "20 mm"}"#, r#"{"rule": "half-width", "width": "3/4\""}"#])?;
/// assert_eq!(depths, [r#""10 mm""#, r#""9.525 mm""#]);
/// let e = compute_all_json("sealant.joint-depth", &[r#"{"rule": "half-width", "width": "20 mm"}"#, r#"{"rule": "half-width"}"#]).unwrap_err();
/// assert_eq!(e.path(), "inputs[1].width");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn compute_all_json(name: &str, inputs: &[impl AsRef<str>]) -> Result<Vec<String>, Error> {
    let calculation = named(name)?;
    let mut faults = Faults::default();
    let mut out = Vec::with_capacity(inputs.len());
    for (i, input) in inputs.iter().enumerate() {
        out.extend(faults.keep(calculation.compute_json(input.as_ref()).map_err(|e| e.under(&format!("inputs[{i}]")))));
    }
    faults.check()?;
    Ok(out)
}

/// Computes the calculation with this name and records its working: the result as JSON, and the worksheet.
///
/// # Errors
/// As [`compute_json`].
///
/// ```
/// use seamwright::job::explain_json;
/// let input = r#"{"expansion": "12e-6 /K", "length": "10 m", "difference": "50 K"}"#;
/// let (change, sheet) = explain_json("movement.length-change", input)?;
/// assert_eq!((change.as_str(), sheet.steps().len()), (r#""6 mm""#, 1));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn explain_json(name: &str, input: &str) -> Result<(String, Worksheet), Error> {
    named(name)?.explain_json(input)
}

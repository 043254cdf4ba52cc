//! The junction choices of a job: one detail for each kind of line, and others for single lines.

use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{
    CurbBackDetail, EaveDetail, ExpansionAcrossDetail, ExpansionAlongDetail, HeadwallDetail, HighSideDetail, HipDetail, PitchTransitionDetail, RakeDetail,
    RidgeDetail, SidewallDetail, StepDetail, ValleyDetail,
};
use crate::roof::{Line, LineKind, Roof};

/// How one line is built. The name is that of the line's kind.
///
/// ```
/// use seamwright::job::{Detail, Job};
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert!(job.junctions.kinds.iter().any(|d| matches!(d, Detail::Valley(_))));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Detail {
    /// An eave.
    Eave(Box<EaveDetail>),
    /// A rake.
    Rake(Box<RakeDetail>),
    /// A ridge.
    Ridge(Box<RidgeDetail>),
    /// The top of a mono-slope.
    HighEdge(Box<HighSideDetail>),
    /// A hip.
    Hip(Box<HipDetail>),
    /// A valley.
    Valley(Box<ValleyDetail>),
    /// A wall above a roof.
    Headwall(Box<HeadwallDetail>),
    /// A wall beside a roof.
    Sidewall(Box<SidewallDetail>),
    /// A shallow roof above a steep one.
    ShallowToSteep(Box<PitchTransitionDetail>),
    /// A steep roof above a shallow one.
    SteepToShallow(Box<PitchTransitionDetail>),
    /// The lower side of a curb: a headwall to the panels below it.
    CurbFront(Box<HeadwallDetail>),
    /// A side of a curb.
    CurbSide(Box<SidewallDetail>),
    /// The upper side of a curb.
    CurbBack(Box<CurbBackDetail>),
    /// A step: a riser between the end of one plane and that of another under it.
    Step(Box<StepDetail>),
    /// An expansion joint along the panels.
    ExpansionAlong(Box<ExpansionAlongDetail>),
    /// An expansion joint across the panels.
    ExpansionAcross(Box<ExpansionAcrossDetail>),
}

impl Detail {
    /// The kind of line that it is for.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// use seamwright::roof::LineKind;
    /// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
    /// let eave = job.junctions.for_kind(LineKind::Eave).expect("the demo has eaves");
    /// assert_eq!(eave.kind(), LineKind::Eave);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub const fn kind(&self) -> LineKind {
        match self {
            Detail::Eave(_) => LineKind::Eave,
            Detail::Rake(_) => LineKind::Rake,
            Detail::Ridge(_) => LineKind::Ridge,
            Detail::HighEdge(_) => LineKind::HighEdge,
            Detail::Hip(_) => LineKind::Hip,
            Detail::Valley(_) => LineKind::Valley,
            Detail::Headwall(_) => LineKind::Headwall,
            Detail::Sidewall(_) => LineKind::Sidewall,
            Detail::ShallowToSteep(_) => LineKind::ShallowToSteep,
            Detail::SteepToShallow(_) => LineKind::SteepToShallow,
            Detail::CurbFront(_) => LineKind::CurbFront,
            Detail::CurbSide(_) => LineKind::CurbSide,
            Detail::CurbBack(_) => LineKind::CurbBack,
            Detail::Step(_) => LineKind::Step,
            Detail::ExpansionAlong(_) => LineKind::ExpansionAlong,
            Detail::ExpansionAcross(_) => LineKind::ExpansionAcross,
        }
    }

    /// Its name in a job's text.
    pub(super) const fn tag(&self) -> &'static str {
        match self {
            Detail::Eave(_) => "eave",
            Detail::Rake(_) => "rake",
            Detail::Ridge(_) => "ridge",
            Detail::HighEdge(_) => "high-edge",
            Detail::Hip(_) => "hip",
            Detail::Valley(_) => "valley",
            Detail::Headwall(_) => "headwall",
            Detail::Sidewall(_) => "sidewall",
            Detail::ShallowToSteep(_) => "shallow-to-steep",
            Detail::SteepToShallow(_) => "steep-to-shallow",
            Detail::CurbFront(_) => "curb-front",
            Detail::CurbSide(_) => "curb-side",
            Detail::CurbBack(_) => "curb-back",
            Detail::Step(_) => "step",
            Detail::ExpansionAlong(_) => "expansion-along",
            Detail::ExpansionAcross(_) => "expansion-across",
        }
    }
}

/// How one named line is built, other than the rest of its kind.
///
/// ```
/// use seamwright::job::{Job, LineChoice};
/// use seamwright::record::Calculation;
/// let mut job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let eave = job.junctions.kinds[0].clone();
/// job.junctions.lines.push(LineChoice { line: "eave 1".into(), detail: eave });
/// assert_eq!(job.compute()?.junction("eave 1").map(|j| j.detail.as_str()), Some("junctions.lines[0].detail.eave"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineChoice {
    /// The line, by the name that the roof gives it.
    pub line: String,
    /// How it is built.
    pub detail: Detail,
}

/// The junction choices of a job.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert_eq!((job.junctions.kinds.len(), job.junctions.lines.len()), (12, 0));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JunctionChoices {
    /// One detail for each kind of line that the roof has; kinds that it does not have may stand too, and serve no line.
    pub kinds: Vec<Detail>,
    /// Details of single lines, which stand before those of the kind.
    #[cfg_attr(feature = "serde", serde(default))]
    pub lines: Vec<LineChoice>,
}

/// A detail with the path to it.
pub(super) struct Chosen<'a> {
    pub(super) detail: &'a Detail,
    pub(super) path: String,
}

impl JunctionChoices {
    /// The detail for lines of this kind.
    #[must_use]
    pub fn for_kind(&self, kind: LineKind) -> Option<&Detail> {
        self.kinds.iter().find(|d| d.kind() == kind)
    }

    /// Whether the choices fit the roof: no kind twice, no line twice, no line that is not there or of another kind, and a detail for every line.
    pub(super) fn check(&self, roof: &Roof) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (i, detail) in self.kinds.iter().enumerate() {
            if self.kinds.iter().take(i).any(|other| other.kind() == detail.kind()) {
                faults.add(
                    Error::new(ErrorKind::Conflict, "two details for one kind of line")
                        .at(format!("junctions.kinds[{i}]"))
                        .value_of(detail.kind())
                        .accepts("one detail for each kind; others by the line's name under junctions.lines"),
                );
            }
        }
        for (i, choice) in self.lines.iter().enumerate() {
            let path = format!("junctions.lines[{i}]");
            if self.lines.iter().take(i).any(|other| other.line == choice.line) {
                faults.add(
                    Error::new(ErrorKind::Conflict, "two details for one line").at(format!("{path}.line")).value_of(&choice.line).accepts("each line once"),
                );
            }
            match roof.line(&choice.line) {
                Err(_) => faults.add(
                    Error::new(ErrorKind::Unknown, "the roof has no line of this name")
                        .at(format!("{path}.line"))
                        .value_of(&choice.line)
                        .accepts(roof.lines().iter().map(|l| l.name.as_str()).collect::<Vec<_>>().join(", ")),
                ),
                Ok(line) if line.kind == LineKind::Unknown => faults.add(
                    Error::new(ErrorKind::Conflict, "the roof cannot tell what this line is, so that no detail is for it")
                        .at(format!("{path}.line"))
                        .value_of(&choice.line)
                        .accepts("a line whose kind is known")
                        .cured_by("planes that make it a line of a known kind"),
                ),
                Ok(line) if line.kind != choice.detail.kind() => faults.add(
                    Error::new(ErrorKind::Conflict, "a detail for another kind of line")
                        .at(format!("{path}.detail"))
                        .value_of(choice.detail.kind())
                        .accepts(line.kind.name()),
                ),
                Ok(_) => {}
            }
        }
        for kind in LineKind::ALL.iter().filter(|k| **k != LineKind::Unknown && self.for_kind(**k).is_none()) {
            let without: Vec<&str> = roof.lines_of(*kind).filter(|l| !self.lines.iter().any(|c| c.line == l.name)).map(|l| l.name.as_str()).collect();
            if !without.is_empty() {
                faults.add(
                    Error::new(ErrorKind::Missing, "lines of the roof without a detail")
                        .at("junctions.kinds")
                        .value_of(without.join(", "))
                        .accepts(format!("a detail for the kind {kind}")),
                );
            }
        }
        faults.check()
    }

    /// The detail of a line; none where its kind is unknown.
    pub(super) fn of(&self, line: &Line) -> Option<Chosen<'_>> {
        let single = self
            .lines
            .iter()
            .enumerate()
            .find(|(_, c)| c.line == line.name)
            .map(|(i, c)| Chosen { detail: &c.detail, path: format!("junctions.lines[{i}].detail.{}", c.detail.tag()) });
        single.or_else(|| {
            let found = self.kinds.iter().enumerate().find(|(_, d)| d.kind() == line.kind);
            found.map(|(i, detail)| Chosen { detail, path: format!("junctions.kinds[{i}].{}", detail.tag()) })
        })
    }
}

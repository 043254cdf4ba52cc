//! Expansion joints of a job: what holds the planes beside them, and what moves there.

use super::choices::{Chosen, Detail};
use super::input::Job;
use super::lay::PlaneLay;
use super::plane_work::PlaneHeat;
use super::sections::{Sections, order, placed};
use crate::assembly::PanelEdge;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{ExpansionAcross, ExpansionAcrossDetail, JointMoves};
use crate::practice::movement::FAR_SIDE_TO_FIXED;
use crate::record::{Recorder, Source, Step};
use crate::roof::{Line, Roof};
use crate::units::Length;

/// How far from an expansion joint one of its planes is held, where that is other than taken: along the panels all of the plane's width, across them of the
/// upper panels what the layout gives, and of what lies below [`FAR_SIDE_TO_FIXED`](crate::practice::movement::FAR_SIDE_TO_FIXED).
///
/// ```
/// use seamwright::job::{Job, JointHold};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, LengthUnit};
/// let mut job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/ropewalk_job.json")))?;
/// let closes = |job: &Job| job.compute().map(|p| p.junction("expansion joint 1").and_then(|j| j.moves).map(|m| m.closes).unwrap_or_default());
/// let all = closes(&job)?.get(LengthUnit::Millimetre);
/// // Held in its middle, the plane on the east moves half as far: three quarters of both are left.
/// job.joint_holds = vec![JointHold { line: "expansion joint 1".into(), plane: "south east".into(), to_fixed: Length::parse("30' 6\"")? }];
/// assert!((closes(&job)?.get(LengthUnit::Millimetre) - 0.75 * all).abs() < 1e-6);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointHold {
    /// The joint, by the name that the roof gives its line.
    pub line: String,
    /// The plane on one side of it, by name.
    pub plane: String,
    /// From the joint to where that side is held; nothing where it does not move.
    pub to_fixed: Length,
}

impl Job {
    /// Whether what holds planes beside joints names those that the roof has.
    pub(super) fn check_joint_holds(&self, roof: &Roof) -> Result<(), Error> {
        let mut faults = Faults::default();
        let joints = || roof.lines().iter().filter(|l| l.kind.is_expansion_joint());
        let name = |plane: usize| roof.planes().get(plane).map_or("", |p| p.name());
        for (i, hold) in self.joint_holds.iter().enumerate() {
            let path = format!("joint_holds[{i}]");
            faults.keep(hold.to_fixed.not_negative(&format!("{path}.to_fixed")));
            if self.joint_holds.iter().take(i).any(|o| (&o.line, &o.plane) == (&hold.line, &hold.plane)) {
                let error = Error::new(ErrorKind::Conflict, "a side of a joint held twice").at(path).value_of(format!("{} on {}", hold.plane, hold.line));
                faults.add(error.accepts("each side of each joint once"));
                continue;
            }
            let Some(line) = joints().find(|l| l.name == hold.line) else {
                let names = joints().map(|l| l.name.as_str()).collect::<Vec<_>>().join(", ");
                let error = Error::new(ErrorKind::Unknown, "the roof has no expansion joint of this name").at(format!("{path}.line")).value_of(&hold.line);
                faults.add(error.accepts(if names.is_empty() { "none: the roof names no expansion joint".to_owned() } else { names }));
                continue;
            };
            if !line.sides().any(|s| name(s.plane) == hold.plane) {
                let error = Error::new(ErrorKind::Unknown, "the joint has no plane of this name beside it").at(format!("{path}.plane")).value_of(&hold.plane);
                faults.add(error.accepts(line.sides().map(|s| name(s.plane)).collect::<Vec<_>>().join(", ")));
            }
        }
        faults.check()
    }

    /// How far from a joint a plane is held, where the job says so.
    pub(super) fn held(&self, line: &Line, plane: &str) -> Option<Length> {
        self.joint_holds.iter().find(|h| h.line == line.name && h.plane == plane).map(|h| h.to_fixed)
    }
}

/// From the upper panels' lower ends at a joint across them to what holds them: of those that move the most, else of the longest.
fn laid_to_fixed(number: usize, lay: &PlaneLay, heat: &PlaneHeat) -> Length {
    let here = |edge: usize| lay.lines.get(edge) == Some(&number);
    let moving = heat.movement.iter().flat_map(|m| &m.ends).filter(|e| e.end == PanelEdge::Lower && here(e.edge)).map(|e| e.to_fixed).max();
    let longest = || lay.laid.panels.iter().filter(|p| p.lower.iter().any(|part| here(part.edge))).map(|p| p.finished).max();
    moving.or_else(longest).unwrap_or_default()
}

/// A joint across the panels, from those that were laid above it.
fn across<R: Recorder>(
    r: &mut R,
    drawn: &Sections<'_>,
    (number, line): (usize, &Line),
    detail: &ExpansionAcrossDetail,
    (planes, heat): (&[PlaneLay], &[PlaneHeat]),
) -> Result<JointMoves, Error> {
    let lost = || Error::new(ErrorKind::Internal, "an expansion joint without what it lies between").value_of(&line.name);
    let order = order(line);
    let t = drawn.job.temperatures.ok_or_else(lost)?;
    let (lay, heat) = order.second.and_then(|upper| planes.get(upper).zip(heat.get(upper))).ok_or_else(lost)?;
    let below = planes.get(order.first).ok_or_else(lost)?;
    let to_fixed = drawn.job.held(line, &lay.name).unwrap_or_else(|| laid_to_fixed(number, lay, heat));
    r.step(|| {
        let step = Step::new(format!("length of the panels of {} that moves at the joint", lay.name)).formula("from their lower ends to what holds them");
        step.gives(to_fixed).source(Source::geometry())
    });
    let below_to_fixed = drawn.job.held(line, &below.name).unwrap_or(FAR_SIDE_TO_FIXED);
    let roof = drawn.side(order.first)?;
    ExpansionAcross { roof, to_fixed, below_to_fixed, range: t.range(&drawn.job.metals.panel), detail: detail.clone() }.moves(r)
}

/// What moves at every expansion joint, by its line, against the room that its detail has for it: to those along the panels, which their sections have told, those across.
pub(super) fn moves<R: Recorder>(
    r: &mut R,
    drawn: &Sections<'_>,
    chosen: &[Option<Chosen<'_>>],
    laid: (&[PlaneLay], &[PlaneHeat]),
    along: Vec<(usize, JointMoves)>,
) -> Result<Vec<(usize, JointMoves)>, Error> {
    let mut out = along;
    let mut faults = Faults::default();
    for (number, (line, chosen)) in drawn.roof.lines().iter().zip(chosen).enumerate() {
        let Some((chosen, Detail::ExpansionAcross(d))) = chosen.as_ref().map(|c| (c, c.detail)) else { continue };
        let found = r.part(|| format!("movement at {}", line.name), |r| across(r, drawn, (number, line), d, laid));
        let found = found.map_err(|e| placed(e, line, chosen).about(&line.name));
        out.extend(faults.keep(found).map(|moves| (number, moves)));
    }
    faults.check()?;
    out.sort_unstable_by_key(|(number, _)| *number);
    Ok(out)
}

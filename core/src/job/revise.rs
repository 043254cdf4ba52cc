//! A job before and a job now: which panels change, and what becomes of those that are formed.

use super::input::Job;
use super::lay::PlaneLay;
use super::packet::Packet;
use crate::error::Error;
use crate::layout::{CutEdge, FormedRow, ListRow, Revised, Revision, RowState};
use crate::record::{Calculation, Recorder};
use crate::units::Length;
use std::collections::BTreeMap;

/// Two states of a job, and what is formed by the first.
///
/// ```
/// use seamwright::job::{Job, JobRevision};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let before = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let revised = JobRevision { now: before.clone(), before, formed: vec![], between_planes: false }.compute()?;
/// assert!(revised.panels.is_empty() && revised.revised.rows.iter().all(|r| r.before == r.count));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct JobRevision {
    /// The job before.
    pub before: Job,
    /// The job now.
    pub now: Job,
    /// What is formed, by the marks of the job before.
    #[cfg_attr(feature = "serde", serde(default))]
    pub formed: Vec<FormedRow>,
    /// Whether a panel formed for one plane may serve another.
    #[cfg_attr(feature = "serde", serde(default))]
    pub between_planes: bool,
}

/// A panel whose place has another piece than before.
///
/// ```
/// use seamwright::job::PanelChange;
/// let new = PanelChange { plane: "porch".into(), strip: 20, run: 0, before: None, now: Some("3B".into()) };
/// assert!(new.before.is_none()); // no panel lay there
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct PanelChange {
    /// The plane.
    pub plane: String,
    /// The strip, from the left.
    pub strip: usize,
    /// The run of the strip, from the foot.
    pub run: usize,
    /// The mark before; none for a place that is new.
    pub before: Option<String>,
    /// The mark now, as revised; none for a place that is gone.
    pub now: Option<String>,
}

/// A job's revised list.
///
/// ```
/// use seamwright::job::{Job, JobRevision};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let before = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let mut now = before.clone();
/// now.layout.rounding.one_finished = now.layout.rounding.field_cut;
/// let revised = JobRevision { before, now, formed: vec![], between_planes: false }.compute()?;
/// assert!(!revised.panels.is_empty());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct JobRevised {
    /// The list.
    pub revised: Revised,
    /// The places whose panel changes, is new or is gone, plane by plane from the left.
    pub panels: Vec<PanelChange>,
}

impl PlaneLay {
    /// The plane's length list as a revision reads it.
    #[must_use]
    pub fn list_rows(&self) -> Vec<ListRow> {
        match &self.listed {
            Some(list) => list.groups.iter().map(|g| ListRow::of(&self.name, g)).collect(),
            None => self.laid.groups.iter().map(|g| ListRow::of_group(&self.name, g, self.layout.panel.coverage)).collect(),
        }
    }

    /// Every place with what lies there: the meaning of its mark.
    fn places(&self) -> BTreeMap<(usize, usize), (Length, Length, CutEdge)> {
        let rows = self.list_rows();
        let of = |panel: &crate::layout::LaidPanel| rows.get(panel.group).map(|r| (r.order, r.width, r.cut));
        self.laid.panels.iter().filter_map(|p| Some(((p.strip, p.run), of(p)?))).collect()
    }
}

fn rows(packet: &Packet) -> Vec<ListRow> {
    packet.planes.iter().flat_map(PlaneLay::list_rows).collect()
}

impl JobRevision {
    fn changes(before: &Packet, now: &Packet, list: &Revised) -> Vec<PanelChange> {
        let mut names: Vec<&str> = now.planes.iter().map(|p| p.name.as_str()).collect();
        names.extend(before.planes.iter().map(|p| p.name.as_str()).filter(|n| now.plane(n).is_none()));
        let mark = |plane: &str, of: &(Length, Length, CutEdge), before: bool| {
            let row = list.rows.iter().find(|r| r.plane == plane && (r.order, r.width, r.cut) == *of && (before || r.state != RowState::Dropped));
            row.map(|r| r.mark.clone())
        };
        let mut out = Vec::new();
        for plane in names {
            let places = |packet: &Packet| packet.plane(plane).map(PlaneLay::places).unwrap_or_default();
            let (was, is) = (places(before), places(now));
            let mut all: Vec<(usize, usize)> = was.keys().chain(is.keys()).copied().collect();
            all.sort_unstable();
            all.dedup();
            for (strip, run) in all {
                let (old, new) = (was.get(&(strip, run)), is.get(&(strip, run)));
                if old != new {
                    let (before, now) = (old.and_then(|o| mark(plane, o, true)), new.and_then(|n| mark(plane, n, false)));
                    out.push(PanelChange { plane: plane.to_owned(), strip, run, before, now });
                }
            }
        }
        out
    }
}

impl Calculation for JobRevision {
    type Out = JobRevised;

    fn title(&self) -> String {
        format!("{}, revised", self.now.name)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<JobRevised, Error> {
        let before = r.part(|| "before".into(), |r| self.before.run(r)).map_err(|e| e.under("before"))?;
        let now = r.part(|| "now".into(), |r| self.now.run(r)).map_err(|e| e.under("now"))?;
        let revision = Revision { before: rows(&before), now: rows(&now), formed: self.formed.clone(), between_planes: self.between_planes };
        let revised = revision.run(r)?;
        let panels = JobRevision::changes(&before, &now, &revised);
        Ok(JobRevised { revised, panels })
    }
}

//! How far a job is, and a way to stop it.

use crate::error::{Error, ErrorKind};
use core::ops::ControlFlow;

/// The parts of the work, in their order.
///
/// ```
/// use seamwright::job::Stage;
/// assert!(Stage::Roof < Stage::Order);
/// assert_eq!(Stage::Clips.name(), "clips and movement");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum Stage {
    /// The planes and lines of the roof.
    Roof,
    /// The sections of the lines that end panels.
    Sections,
    /// The panels of the planes.
    Panels,
    /// What lies along the lines.
    Lines,
    /// Clips and movement of the planes.
    Clips,
    /// Trims, flat and cut to length.
    Trims,
    /// The order.
    Order,
}

impl Stage {
    /// All stages, in the order of the work.
    pub const ALL: &'static [Stage] = &[Stage::Roof, Stage::Sections, Stage::Panels, Stage::Lines, Stage::Clips, Stage::Trims, Stage::Order];

    /// The name for people.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Stage::Roof => "roof",
            Stage::Sections => "sections",
            Stage::Panels => "panels",
            Stage::Lines => "lines",
            Stage::Clips => "clips and movement",
            Stage::Trims => "trims",
            Stage::Order => "order",
        }
    }
}

/// How far the work is: so many things of a stage are done.
///
/// ```
/// use seamwright::job::{Progress, Stage};
/// let p = Progress { stage: Stage::Panels, done: 3, of: 8 };
/// assert_eq!(p.to_string(), "panels 3 of 8");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Progress {
    /// The stage.
    pub stage: Stage,
    /// How many of its things are done.
    pub done: usize,
    /// How many there are.
    pub of: usize,
}

impl core::fmt::Display for Progress {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} {} of {}", self.stage.name(), self.done, self.of)
    }
}

/// Tells the caller, who may stop the work.
pub(super) struct Teller<'a>(pub(super) &'a mut dyn FnMut(Progress) -> ControlFlow<()>);

impl Teller<'_> {
    pub(super) fn tell(&mut self, stage: Stage, done: usize, of: usize) -> Result<(), Error> {
        match (self.0)(Progress { stage, done, of }) {
            ControlFlow::Continue(()) => Ok(()),
            ControlFlow::Break(()) => {
                Err(Error::new(ErrorKind::Cancelled, "the work was stopped by its caller").at("progress").value_of(Progress { stage, done, of }))
            }
        }
    }
}

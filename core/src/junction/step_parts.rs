//! What a step in a roof is made of, below and above its riser.

use super::draft::{FastenerRow, TrimSheet, keep_under};
use super::drip::DripFace;
use super::eave_parts::{DeckFlange, EavePanel, HookStrip};
use super::least::LeastRule;
use super::top_end::TopEnd;
use crate::error::{Error, Faults};
use crate::units::Length;

/// The lower side of a step: the ends of its panels, and the flashing over them and up the riser. See [`Step`](super::Step) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StepLower {
    /// The ends of the panels, with the flange over them.
    pub end: TopEnd,
    /// The flashing's sheet.
    pub sheet: TrimSheet,
    /// How far the leg stands out from the riser: sheathing, barrier.
    pub stands_out: Length,
    /// From the edge of the upper deck down to the leg's top.
    pub below_edge: Length,
    /// How high its top must stand above the pan, square to it.
    pub upstand: LeastRule,
    /// The fasteners of the leg to the riser.
    pub fasteners: FastenerRow,
    /// From the leg's top down to them; the upper trim's face must cover them.
    pub fasteners_below_top: Length,
    /// How far the upper trim's face must come down over the leg, to the bend of its kick-out.
    pub lap: LeastRule,
    /// What must stay open between the upper trim's drip and the flange, square to it.
    pub clearance: Length,
}

impl StepLower {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "fasteners", self.fasteners.check());
        for (path, length) in [
            ("stands_out", self.stands_out),
            ("below_edge", self.below_edge),
            ("upstand.least", self.upstand.least),
            ("fasteners_below_top", self.fasteners_below_top),
            ("lap.least", self.lap.least),
            ("clearance", self.clearance),
        ] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }
}

/// The upper side of a step: a drip trim on the upper deck and down over the lower flashing's leg, and the panels that run past it and fold around a
/// strip, as at an eave. See [`Step`](super::Step) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StepUpper {
    /// The drip trim's sheet.
    pub sheet: TrimSheet,
    /// Its deck flange.
    pub flange: DeckFlange,
    /// Its face with the drip.
    pub face: DripFace,
    /// The strip that the panels hook.
    pub strip: HookStrip,
    /// The panels' ends.
    pub panel: EavePanel,
}

/// What is chosen at a step. See [`Step`](super::Step) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StepDetail {
    /// Below the riser.
    pub lower: StepLower,
    /// Above it.
    pub upper: StepUpper,
}

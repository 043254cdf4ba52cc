//! How the pieces of cleats and strips meet along their runs.

use crate::error::Faults;
use crate::junction::Holder;
use crate::practice::assembly as practice;
use crate::record::{Seen, Source};
use crate::units::Length;

/// How two pieces of one trim meet along its run.
///
/// ```
/// use seamwright::job::PieceMeet;
/// use seamwright::units::Length;
/// let butt = PieceMeet::Gap(Length::inches(1));
/// assert_eq!((butt.lap(), butt.gap()), (Length::ZERO, Length::inches(1)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PieceMeet {
    /// One laps over the other by so much.
    Lap(Length),
    /// They butt, with so much between them.
    Gap(Length),
}

impl PieceMeet {
    /// How far they lap; nothing where they butt.
    #[must_use]
    pub const fn lap(self) -> Length {
        match self {
            PieceMeet::Lap(lap) => lap,
            PieceMeet::Gap(_) => Length::ZERO,
        }
    }

    /// What is left between them; nothing where they lap.
    #[must_use]
    pub const fn gap(self) -> Length {
        match self {
            PieceMeet::Lap(_) => Length::ZERO,
            PieceMeet::Gap(gap) => gap,
        }
    }
}

/// How the pieces of one kind of cleat or strip meet, and whose rule it is.
///
/// See [`HolderJoints`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HolderJoint {
    /// Lapped or butted, and by how much.
    pub meet: PieceMeet,
    /// Whose rule it is.
    pub source: Source,
}

/// How the pieces of cleats and strips meet: they shed no water, and no lap of theirs is sealed.
///
/// ```
/// use seamwright::job::{HolderJoints, PieceMeet};
/// use seamwright::junction::Holder;
/// use seamwright::practice::assembly::{CLEAT_GAP, HOOK_STRIP_LAP};
/// let usual = HolderJoints::usual();
/// assert_eq!(usual.of(Holder::HookStrip).meet, PieceMeet::Lap(HOOK_STRIP_LAP));
/// assert_eq!(usual.of(Holder::OffsetCleat).meet, PieceMeet::Gap(CLEAT_GAP));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default = "HolderJoints::usual"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HolderJoints {
    /// Of cleats along a face, those of copings apart, whose coping says it.
    pub continuous_cleat: HolderJoint,
    /// Of cleats on flanges and pans.
    pub offset_cleat: HolderJoint,
    /// Of strips along eaves.
    pub hook_strip: HolderJoint,
    /// Of cleats on the curbs of expansion joints.
    pub joint_cleat: HolderJoint,
}

impl HolderJoints {
    /// Strips lap as a manual of copper flashings has it; cleats butt with a small gap, common practice, no published source.
    #[must_use]
    pub fn usual() -> HolderJoints {
        let butt = HolderJoint { meet: PieceMeet::Gap(practice::CLEAT_GAP), source: Source::CommonPractice };
        let manual = Source::published("Copper Flashings, a manual", "", "par. 52-55", Seen::Text);
        let strip = HolderJoint { meet: PieceMeet::Lap(practice::HOOK_STRIP_LAP), source: manual };
        HolderJoints { continuous_cleat: butt.clone(), offset_cleat: butt.clone(), hook_strip: strip, joint_cleat: butt }
    }

    /// That of a kind.
    #[must_use]
    pub const fn of(&self, holder: Holder) -> &HolderJoint {
        match holder {
            Holder::ContinuousCleat => &self.continuous_cleat,
            Holder::OffsetCleat => &self.offset_cleat,
            Holder::HookStrip => &self.hook_strip,
            Holder::JointCleat => &self.joint_cleat,
        }
    }

    /// Every length of them with its place.
    pub(super) fn lengths(&self) -> impl Iterator<Item = (String, PieceMeet)> + '_ {
        Holder::ALL.into_iter().map(|holder| {
            let meet = self.of(holder).meet;
            let what = if let PieceMeet::Lap(_) = meet { "lap" } else { "gap" };
            (format!("holders.{}.meet.{what}", holder.name().replace(' ', "_")), meet)
        })
    }

    pub(super) fn check(&self, faults: &mut Faults) {
        for (path, PieceMeet::Lap(length) | PieceMeet::Gap(length)) in self.lengths() {
            faults.keep(length.not_negative(&path));
        }
    }
}

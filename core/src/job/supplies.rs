//! What is bought, and in which sizes.

use super::holder_joints::{HolderJoints, PieceMeet};
use super::underlay::UnderlaymentSupply;
use crate::assembly::{CornerAllowances, SealChoices, TapeChoice};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Holder, WaterRules};
use crate::practice::{closure, movement};
use crate::record::Source;
use crate::stock::StockLength;
use crate::units::{Length, ShopRounding, Volume};
use std::collections::BTreeSet;

/// The lap of one trim, where it is not that of the rest.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::units::Length;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert_eq!(job.supplies.trims.laps[0].lap, Length::inches(8));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimLap {
    /// The trim, by its name in the packet: "valley pan".
    pub trim: String,
    /// How far its pieces lap.
    pub lap: Length,
}

/// How trims are bought and cut.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::units::Length;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let trims = &job.supplies.trims;
/// assert_eq!((trims.lap_of("valley pan"), trims.lap_of("eave trim")), (Length::inches(8), Length::inches(4)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimSupply {
    /// The lengths that the brake folds.
    pub stock: Vec<StockLength>,
    /// How far pieces lap.
    pub lap: Length,
    /// Trims with another lap; a name that no section of the job has is refused.
    #[cfg_attr(feature = "serde", serde(default))]
    pub laps: Vec<TrimLap>,
    /// How pieces of cleats and strips meet that `laps` does not name; common practice unless given.
    #[cfg_attr(feature = "serde", serde(default = "HolderJoints::usual"))]
    pub holders: HolderJoints,
    /// No piece of a run is shorter.
    pub least_piece: Length,
    /// Taken by one cut.
    #[cfg_attr(feature = "serde", serde(default))]
    pub kerf: Length,
    /// Lost at the ends of one stock length.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_loss: Length,
    /// What a trim takes on at corners; common practice unless given.
    #[cfg_attr(feature = "serde", serde(default = "CornerAllowances::usual"))]
    pub corners: CornerAllowances,
    /// The widest sheet that trims are slit from; none where the shop sets no limit.
    #[cfg_attr(feature = "serde", serde(default))]
    pub greatest_girth: Option<Length>,
}

impl TrimSupply {
    /// How pieces of this trim meet, and whose rule it is where that is not the job's own lap.
    #[must_use]
    pub fn meet_of(&self, trim: &str) -> (PieceMeet, Source) {
        if let Some(own) = self.laps.iter().find(|l| l.trim == trim) {
            return (PieceMeet::Lap(own.lap), Source::user());
        }
        match Holder::of(trim).map(|holder| self.holders.of(holder)) {
            Some(joint) => (joint.meet, joint.source.clone()),
            None => (PieceMeet::Lap(self.lap), Source::user()),
        }
    }

    /// How far pieces of this trim lap; nothing where they butt.
    #[must_use]
    pub fn lap_of(&self, trim: &str) -> Length {
        self.meet_of(trim).0.lap()
    }

    /// Refuses a lap of a trim that the job does not have: a slip of the pen must not leave a trim with the lap of the others.
    pub(super) fn check_laps(&self, trims: &BTreeSet<&str>) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (i, lap) in self.laps.iter().enumerate().filter(|(_, l)| !trims.contains(l.trim.as_str())) {
            faults.add(
                Error::new(ErrorKind::Unknown, "no section of the job has a trim of this name")
                    .at(format!("supplies.trims.laps[{i}].trim"))
                    .value_of(&lap.trim)
                    .accepts(trims.iter().copied().collect::<Vec<_>>().join(", ")),
            );
        }
        faults.check()
    }

    /// What the longest piece must hold: it is the same for every trim.
    fn check_pieces(&self, faults: &mut Faults) {
        let Some(longest) = self.stock.iter().map(|s| s.length).filter(|l| l.is_positive()).max() else { return };
        let loss = self.end_loss;
        if loss >= longest {
            faults.add(
                Error::new(ErrorKind::Conflict, "nothing is left of the longest stock length")
                    .at("end_loss")
                    .value_of(loss)
                    .accepts(format!("less than {longest}")),
            );
            return;
        }
        let laps = self.laps.iter().enumerate().map(|(i, l)| (format!("laps[{i}].lap"), PieceMeet::Lap(l.lap)));
        for (path, meet) in core::iter::once(("lap".to_owned(), PieceMeet::Lap(self.lap))).chain(laps).chain(self.holders.lengths()) {
            let (what, lap) = match meet {
                PieceMeet::Lap(lap) => ("lap", lap),
                PieceMeet::Gap(gap) => ("gap", gap),
            };
            if lap + loss >= longest.into() {
                faults.add(
                    Error::new(ErrorKind::Conflict, format!("the {what} is not shorter than the longest piece"))
                        .at(path)
                        .value_of(lap)
                        .accepts(format!("less than {longest} without its end loss of {loss}")),
                );
            }
        }
        if self.least_piece * 2 + loss > longest.into() {
            faults.add(
                Error::new(ErrorKind::Conflict, "two of the least pieces are longer than the longest piece")
                    .at("least_piece")
                    .value_of(self.least_piece)
                    .accepts(format!("at most half of {longest} without its end loss of {loss}")),
            );
        }
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.stock.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no length to fold trims in").at("stock").accepts("one stock length or more"));
        }
        for (i, stock) in self.stock.iter().enumerate() {
            faults.keep(stock.length.positive(&format!("stock[{i}].length")));
        }
        self.check_pieces(&mut faults);
        for (i, lap) in self.laps.iter().enumerate() {
            faults.keep(lap.lap.not_negative(&format!("laps[{i}].lap")));
            if self.laps.iter().take(i).any(|other| other.trim == lap.trim) {
                faults
                    .add(Error::new(ErrorKind::Conflict, "two laps for one trim").at(format!("laps[{i}].trim")).value_of(&lap.trim).accepts("each trim once"));
            }
        }
        self.holders.check(&mut faults);
        let lengths = [("lap", self.lap), ("least_piece", self.least_piece), ("kerf", self.kerf), ("end_loss", self.end_loss)];
        for (path, length) in lengths {
            faults.keep(length.not_negative(path));
        }
        if let Some(girth) = self.greatest_girth {
            faults.keep(girth.positive("greatest_girth"));
        }
        faults.check()
    }
}

/// The strips that closures are cut from: as wide as a closure's girth, so that only their length is cut.
///
/// ```
/// use seamwright::job::ClosureSticks;
/// use seamwright::stock::StockLength;
/// use seamwright::units::Length;
/// let ten_foot = StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None };
/// let sticks = ClosureSticks { stock: vec![ten_foot], kerf: Length::ZERO, end_loss: Length::ZERO };
/// assert_eq!(sticks.stock[0].length, Length::inches(120));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureSticks {
    /// The lengths that can be bought.
    pub stock: Vec<StockLength>,
    /// Taken by one cut.
    #[cfg_attr(feature = "serde", serde(default))]
    pub kerf: Length,
    /// Lost at the ends of one stick.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_loss: Length,
}

impl ClosureSticks {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.stock.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no length to cut closures from").at("stock").accepts("one stock length or more"));
        }
        for (i, stock) in self.stock.iter().enumerate() {
            faults.keep(stock.length.positive(&format!("stock[{i}].length")));
        }
        for (path, length) in [("kerf", self.kerf), ("end_loss", self.end_loss)] {
            faults.keep(length.not_negative(path));
        }
        if let Some(longest) = self.stock.iter().map(|s| s.length).filter(|l| l.is_positive()).max().filter(|longest| self.end_loss >= *longest) {
            let error = Error::new(ErrorKind::Conflict, "nothing is left of the longest stick").at("end_loss").value_of(self.end_loss);
            faults.add(error.accepts(format!("less than {longest}")));
        }
        faults.check()
    }
}

/// How closures are made for a bay.
///
/// ```
/// use seamwright::job::ClosureSupply;
/// use seamwright::units::Length;
/// let supply = ClosureSupply { tab: Length::inches(1), clearance: Length::ZERO, top_lap: Length::ZERO, from_tab: ClosureSupply::from_tab(), sticks: None };
/// assert_eq!(supply.from_tab, Length::parse("1 1/2 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureSupply {
    /// The tabs that turn up against the seams.
    pub tab: Length,
    /// What a piece is shorter than its bay.
    pub clearance: Length,
    /// How far top flanges run over the seam at each end; nothing where they stop at it.
    #[cfg_attr(feature = "serde", serde(default))]
    pub top_lap: Length,
    /// The end fasteners' distance from the tabs.
    #[cfg_attr(feature = "serde", serde(default = "ClosureSupply::from_tab"))]
    pub from_tab: Length,
    /// The strips that they are cut from; none where they are bought as pieces.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub sticks: Option<ClosureSticks>,
}

impl ClosureSupply {
    /// Common practice: 1 1/2 in.
    #[must_use]
    pub const fn from_tab() -> Length {
        closure::FASTENER_FROM_TAB
    }
}

/// Sealants.
///
/// ```
/// use seamwright::assembly::{SealChoices, TapeChoice};
/// use seamwright::job::SealantSupply;
/// use seamwright::units::{Length, Volume};
/// let tube = Volume::parse("300 mL")?;
/// let (tape_laps, line) = (TapeChoice::default(), SealChoices::default());
/// let supply = SealantSupply { roll: Length::feet(50), tape_laps, tape_waste_ratio: 0.05, tube, tube_waste_ratio: 0.1, line };
/// assert!(supply.tube > Volume::ZERO);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SealantSupply {
    /// Length of tape on one roll.
    pub roll: Length,
    /// How tape is lapped at the seams.
    #[cfg_attr(feature = "serde", serde(default))]
    pub tape_laps: TapeChoice,
    /// Share of tape ordered beyond what is needed: 0.1 is a tenth more.
    pub tape_waste_ratio: f64,
    /// What one tube of gun sealant holds.
    pub tube: Volume,
    /// Share of gun sealant ordered beyond what is needed.
    pub tube_waste_ratio: f64,
    /// What the crew does along a sealed line; common practice unless given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub line: SealChoices,
}

/// How clips are set along a seam.
///
/// ```
/// use seamwright::job::ClipSupply;
/// use seamwright::units::Length;
/// let clips = ClipSupply { spacing: Length::inches(24), end_distance: Length::inches(12), screws: 2 };
/// assert_eq!(clips.screws, 2);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClipSupply {
    /// The greatest spacing along a seam, until the engineer's schedule gives one.
    pub spacing: Length,
    /// The greatest distance of the first and last clip from the ends of a seam.
    pub end_distance: Length,
    /// Screws in each clip.
    pub screws: u32,
}

/// How the crew measures.
///
/// ```
/// use seamwright::job::CrewSupply;
/// use seamwright::units::{Length, Rounding, ShopRounding};
/// let sixteenth = Length::inches_64(4);
/// let crew = CrewSupply { tape: ShopRounding::new(sixteenth, Rounding::HalfAway)?, tolerance: sixteenth, end_distance: Length::inches(2) };
/// assert_eq!(crew.tape.increment(), sixteenth);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CrewSupply {
    /// What the tape is read to.
    pub tape: ShopRounding,
    /// How far a struck line may be off.
    pub tolerance: Length,
    /// How far from a line's ends its first and last fasteners stand.
    pub end_distance: Length,
}

/// The least room that moving ends keep.
///
/// ```
/// use seamwright::job::MovementSupply;
/// use seamwright::units::Length;
/// assert_eq!(MovementSupply::default().clearance, Length::parse("1/8 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MovementSupply {
    /// The least gap that stays open.
    #[cfg_attr(feature = "serde", serde(default = "MovementSupply::clearance"))]
    pub clearance: Length,
    /// The least length that stays hooked.
    #[cfg_attr(feature = "serde", serde(default = "MovementSupply::engagement"))]
    pub engagement: Length,
}

impl MovementSupply {
    /// Common practice: 1/8 in.
    #[must_use]
    pub const fn clearance() -> Length {
        movement::CLEARANCE
    }

    /// Common practice: 3/8 in.
    #[must_use]
    pub const fn engagement() -> Length {
        movement::ENGAGEMENT
    }
}

impl Default for MovementSupply {
    /// Common practice, no published source.
    fn default() -> MovementSupply {
        MovementSupply { clearance: Self::clearance(), engagement: Self::engagement() }
    }
}

/// What is bought, and in which sizes.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert_eq!(job.supplies.trims.stock[0].label, "10 ft");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Supplies {
    /// Trims.
    pub trims: TrimSupply,
    /// Closures.
    pub closures: ClosureSupply,
    /// Sealants.
    pub sealant: SealantSupply,
    /// Clips.
    pub clips: ClipSupply,
    /// The crew's tape.
    pub crew: CrewSupply,
    /// Moving ends.
    #[cfg_attr(feature = "serde", serde(default))]
    pub movement: MovementSupply,
    /// Underlayment and membranes; nothing is taken off where none are given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub underlayment: Option<UnderlaymentSupply>,
    /// The least laps of every path of water.
    #[cfg_attr(feature = "serde", serde(default))]
    pub water: WaterRules,
}

impl Supplies {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.trims.check().map_err(|e| e.under("trims")));
        if let Some(underlayment) = &self.underlayment {
            faults.keep(underlayment.check().map_err(|e| e.under("underlayment")));
        }
        if let Some(sticks) = &self.closures.sticks {
            faults.keep(sticks.check().map_err(|e| e.under("closures.sticks")));
        }
        faults.keep(self.water.check().map_err(|e| e.under("water")));
        faults.keep(self.sealant.line.check().map_err(|e| e.under("sealant.line")));
        let lengths = [
            ("closures.clearance", self.closures.clearance),
            ("closures.top_lap", self.closures.top_lap),
            ("closures.from_tab", self.closures.from_tab),
            ("sealant.tape_laps.lap", self.sealant.tape_laps.lap),
            ("clips.end_distance", self.clips.end_distance),
            ("crew.tolerance", self.crew.tolerance),
            ("crew.end_distance", self.crew.end_distance),
            ("movement.clearance", self.movement.clearance),
            ("movement.engagement", self.movement.engagement),
        ];
        for (path, length) in lengths {
            faults.keep(length.not_negative(path));
        }
        for (path, length) in [("closures.tab", self.closures.tab), ("sealant.roll", self.sealant.roll), ("clips.spacing", self.clips.spacing)] {
            faults.keep(length.positive(path));
        }
        if self.sealant.tube <= Volume::ZERO {
            faults
                .add(Error::new(ErrorKind::OutOfRange, "a tube must hold something").at("sealant.tube").value_of(self.sealant.tube).accepts("more than 0 m3"));
        }
        for (path, ratio) in [("sealant.tape_waste_ratio", self.sealant.tape_waste_ratio), ("sealant.tube_waste_ratio", self.sealant.tube_waste_ratio)] {
            if !(0.0..=10.0).contains(&ratio) {
                faults.add(Error::new(ErrorKind::OutOfRange, "not a share of waste").at(path).value_of(ratio).accepts("0 to 10, where 0.1 is a tenth more"));
            }
        }
        if self.clips.screws == 0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "a clip is held by screws").at("clips.screws").value_of(0).accepts("1 or more"));
        }
        faults.check()
    }
}

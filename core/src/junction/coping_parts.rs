//! What a coping's face is made of: how it is held, and what it covers.

use super::draft::{FastenerRow, TrimSheet, keep_under, refuse_short, within};
use super::drip::{ContinuousCleat, DripFace, DripHem};
use super::least::LeastRule;
use super::parts::{Adjoining, Bites, LayoutLine, Side, Solved};
use crate::error::{Error, Faults};
use crate::record::{Recorder, Step};
use crate::units::{Angle, Length};

/// Screws through slots in a face, with sealing washers: the face slides along the wall, and is held to it.
///
/// ```
/// use seamwright::junction::{FastenerRow, SlottedScrews};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let screws = SlottedScrews {
///     row: FastenerRow { spacing: Length::inches(24), source: Source::CommonPractice },
///     above_bend: Length::inches(1),
///     hem: practice::EDGE_HEM,
///     shank: Length::parse("1/4\"")?,
///     slot: Length::parse("1/2\"")?,
///     travel: Length::parse("0.2\"")?,
/// };
/// assert!(screws.slot > screws.shank);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlottedScrews {
    /// The row.
    pub row: FastenerRow,
    /// From the bend of the kick-out up to it.
    pub above_bend: Length,
    /// Width of the closed hem at the drip's edge; in a job file [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
    /// The screw's shank.
    pub shank: Length,
    /// Length of a slot, along the wall.
    pub slot: Length,
    /// How far the piece moves along the wall at its outermost slot over the year: `alpha L dT`, with the screw set in the middle of the slot.
    pub travel: Length,
}

impl SlottedScrews {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "row", self.row.check());
        for (path, length) in [("hem", self.hem), ("shank", self.shank), ("slot", self.slot)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [("above_bend", self.above_bend), ("travel", self.travel)] {
            faults.keep(length.not_negative(path));
        }
        core::mem::take(&mut faults).check()?;
        let short = self.shank + self.travel - self.slot;
        refuse_short(&mut faults, "slot", "the slot binds on its screw", short, self.slot, "a longer slot, or shorter pieces")?;
        faults.check()
    }
}

/// How a face of a coping is held.
///
/// ```
/// use seamwright::junction::{CopingHold, FastenerRow, SlottedScrews};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(24), source: Source::CommonPractice };
/// let (shank, slot, travel) = (Length::parse("1/4\"")?, Length::parse("1/2\"")?, Length::parse("1/8\"")?);
/// let hold = CopingHold::Screws(SlottedScrews { row, above_bend: Length::inches(1), hem: practice::EDGE_HEM, shank, slot, travel });
/// assert!(hold.cleat().is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CopingHold {
    /// Its open hem hooks a continuous cleat.
    Cleat(ContinuousCleat),
    /// It is screwed through slots.
    Screws(SlottedScrews),
}

impl CopingHold {
    /// The cleat, if there is one.
    #[must_use]
    pub const fn cleat(&self) -> Option<&ContinuousCleat> {
        match self {
            CopingHold::Cleat(cleat) => Some(cleat),
            CopingHold::Screws(_) => None,
        }
    }
}

/// What comes up a wall's face under its coping: the leg of the base flashing, or cladding.
///
/// ```
/// use seamwright::junction::{CopingLap, LeastRule};
/// use seamwright::units::Length;
/// let lap = CopingLap { below_top: Length::parse("1/2\"")?, rule: LeastRule::UFGS_BEHIND_CLADDING };
/// assert!(lap.below_top < lap.rule.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingLap {
    /// From the wall's top edge on this side down to its own top.
    pub below_top: Length,
    /// How far the face must come down over it, to the bend of the kick-out.
    pub rule: LeastRule,
}

/// One face of a coping.
///
/// ```
/// use seamwright::junction::{CopingHold, CopingLap, CopingSide, FastenerRow, SlottedScrews, LeastRule};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::{Angle, Length};
/// let row = FastenerRow { spacing: Length::inches(24), source: Source::CommonPractice };
/// let (shank, slot, travel) = (Length::parse("1/4\"")?, Length::parse("1/2\"")?, Length::parse("1/8\"")?);
/// let side = CopingSide {
///     behind: Length::mils(24),
///     depth: Length::inches(5),
///     kick: Angle::parse("45 deg")?,
///     clears: practice::DRIP_CLEARS_FACE,
///     hold: CopingHold::Screws(SlottedScrews { row, above_bend: Length::inches(1), hem: practice::EDGE_HEM, shank, slot, travel }),
///     over: Some(CopingLap { below_top: Length::inches(1), rule: LeastRule::LAP_OVER_LEG }),
/// };
/// assert_eq!(side.lap()?, Some(Length::inches(4)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingSide {
    /// What lies on the wall's face behind the cleat or the coping: sheathing, barrier, the leg of a base flashing.
    pub behind: Length,
    /// From the wall's top edge on this side, which is the top of what lies there, down to the bend of the kick-out.
    pub depth: Length,
    /// How far the drip turns out from the face.
    pub kick: Angle,
    /// How far the drip's edge stands out from the coping's face; in a job file
    /// [`DRIP_CLEARS_FACE`](crate::practice::junction::DRIP_CLEARS_FACE) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::drip_clears_face"))]
    pub clears: Length,
    /// How it is held.
    pub hold: CopingHold,
    /// What it covers; none where nothing comes up the wall there.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub over: Option<CopingLap>,
}

impl CopingSide {
    /// How far the face comes down over what it covers; negative where it misses it.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn lap(&self) -> Result<Option<Length>, Error> {
        self.over.as_ref().map(|over| (self.depth - over.below_top).length()).transpose()
    }

    /// The face as every drip is made.
    pub(super) fn face(&self) -> DripFace {
        let hem = match &self.hold {
            CopingHold::Cleat(cleat) => DripHem::Hooked(cleat.clone()),
            CopingHold::Screws(screws) => DripHem::Closed { width: screws.hem },
        };
        DripFace { depth: self.depth, kick: self.kick, clears: self.clears, hem }
    }

    pub(super) fn check(&self, sheet: TrimSheet) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.behind.not_negative("behind"));
        faults.keep(self.depth.positive("depth"));
        faults.keep(self.clears.positive("clears"));
        within(&mut faults, "kick", self.kick, 0.0, 90.0);
        match &self.hold {
            CopingHold::Cleat(cleat) => keep_under(&mut faults, "hold.cleat", cleat.check(sheet.thickness)),
            CopingHold::Screws(screws) => {
                keep_under(&mut faults, "hold.screws", screws.check());
                let cure = "a deeper face, or screws nearer to its bend";
                let short = screws.above_bend - self.depth;
                refuse_short(&mut faults, "hold.screws.above_bend", "the screws pass over the wall's top", short, screws.above_bend, cure)?;
            }
        }
        if let Some(over) = &self.over {
            faults.keep(over.below_top.not_negative("over.below_top"));
            faults.keep(over.rule.least.not_negative("over.rule.least"));
        }
        faults.check()
    }

    /// Whether it comes down far enough.
    pub(super) fn check_lap<R: Recorder>(&self, r: &mut R) -> Result<(), Error> {
        let (Some(over), Some(lap)) = (&self.over, self.lap()?) else { return Ok(()) };
        r.step(|| {
            let step = Step::new("lap over what comes up the wall").formula("depth - its top below the wall's");
            step.with("depth", self.depth)
                .with("below the wall's top", over.below_top)
                .with("least", over.rule.least)
                .gives(lap)
                .source(over.rule.source.clone())
        });
        let mut faults = Faults::default();
        let more = over.rule.least - lap;
        let cure = more.length().map_or_else(|_| "a deeper face".into(), |more| format!("a face deeper by {more}"));
        over.rule.check(&mut faults, "depth", lap, self.depth, cure)?;
        faults.check()
    }

    /// Adds the screws of a face without a cleat, and what the face covers.
    pub(super) fn give(&self, side: Side, solved: &mut Solved) -> Result<(), Error> {
        if let CopingHold::Screws(screws) = &self.hold {
            let (name, at) = ("face screws", screws.above_bend - self.depth);
            solved.along.push(screws.row.line(name, side, Bites::Slot, at.length()?));
            solved.lines.push(LayoutLine::from_junction(name, side, at)?);
        }
        if let (Some(over), true) = (&self.over, self.behind.is_positive()) {
            solved.adjoining.push(Adjoining::Covered { side, top_edge: (-over.below_top).length()?, thickness: self.behind });
        }
        Ok(())
    }
}

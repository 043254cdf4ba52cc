//! The water paths of a solved section, at two levels, and whether its fasteners stay out of running water.

use super::cautions::{FASTENERS_IN_WATER, FLANGE_OVER_UNDERLAYMENT, PIPE_AGAINST_WATER, RIVETS_ON_SLOPE, WATER_PATH_FAILS};
use super::expansion_along::JOINT_CAP;
use super::least::LeastRule;
use super::parts::{Adjoining, Along, Side, Solved};
use super::row_shelter::{self, RowShelter, Shelter};
use super::section_sheets::{CLADDING, FaceSheet, PANELS, WaterSide, on_deck, on_wall, panels};
use super::top_end::side_name;
use super::upright_water::uprights;
use super::water_path::{PathCheck, PathFailure, PathFault, PathLap, PathRule, PathSheet, WaterLevel, WaterPath};
use super::water_rules::WaterRules;
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::roof::Water;
use crate::units::Length;

/// The name of the underlayment among the sheets of a path.
pub(super) const UNDERLAYMENT: &str = "underlayment";

/// The face of a section that a path runs down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PathFace {
    /// The roof on the first side.
    First,
    /// The roof on the second side.
    Second,
    /// The wall at the line.
    Wall,
    /// The riser of a step.
    Riser,
    /// The upright face on the first side: of a curb at a joint, of a wall under its coping, where it is the roof side.
    FirstUpright,
    /// The upright face on the second side.
    SecondUpright,
}

/// A path of one face at one level.
///
/// See [`SectionWater`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FacePath {
    /// Which face.
    pub face: PathFace,
    /// Whether water runs down it to the line, away from it, or beside it.
    pub water: Water,
    /// At which level.
    pub level: WaterLevel,
    /// What laps what.
    pub check: PathCheck,
}

/// What a section does with water.
///
/// See [`SectionWater`] for an example.
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WaterCheck {
    /// The paths.
    pub paths: Vec<FacePath>,
    /// The rows of fasteners.
    pub rows: Vec<RowShelter>,
    /// What must be said of both.
    pub cautions: Vec<Caution>,
}

impl WaterCheck {
    /// Whether every path holds and every row is sheltered.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.paths.iter().all(|p| p.check.holds) && self.rows.iter().all(|r| r.shelter != Shelter::None)
    }
}

/// The water paths of a solved section: for each roof face, metal over metal and underlayment over or under metal; the cover of a leg on a wall, on the
/// riser of a step and on the curbs of a joint.
///
/// What laps what follows from where the section puts the sheets. Underlayment lies over metal on the deck unless the section says that it lies under it,
/// and reaches down to what is fixed on that metal; at a ridge, a wall or the lower side of a transition it runs past the line.
///
/// # Errors
/// Computing refuses two entries for one side ([`ErrorKind::Conflict`]) and a negative rule ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::junction::{PathFace, WaterLevel};
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let eave = &packet.junction("eave 1").expect("the demo has eaves").water;
/// assert!(eave.holds());
/// let metal = eave.paths.iter().find(|p| p.level == WaterLevel::Metal).unwrap();
/// assert_eq!((metal.face, metal.check.order[0].as_str(), metal.check.laps[0].lower.as_str()), (PathFace::First, "eave trim", "eave trim"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct SectionWater<'a> {
    /// The section.
    pub solved: &'a Solved,
    /// Its sides with a roof.
    pub sides: &'a [WaterSide],
    /// The least laps.
    pub rules: &'a WaterRules,
}

/// The sheets of a pile in the path's terms.
pub(super) fn numbered<'a>(pile: impl Iterator<Item = &'a FaceSheet<'a>>) -> Vec<PathSheet> {
    let numbers = 1_u32..;
    pile.zip(numbers).map(|(s, layer)| PathSheet { name: s.name.to_owned(), low: s.low, high: s.high, layer }).collect()
}

/// A level whose laps the crew makes.
pub(super) fn alone(lowest: &str, laps: Vec<PathLap>) -> PathCheck {
    PathCheck { holds: true, order: vec![lowest.to_owned()], laps, faults: Vec::new() }
}

fn rule(upper: &str, lower: &str, of: &LeastRule) -> PathRule {
    PathRule { upper: upper.to_owned(), lower: lower.to_owned(), least: of.least, source: of.source.clone() }
}

/// A lap that the crew makes as long as the rule asks.
pub(super) fn made(upper: &str, lower: &str, of: &LeastRule) -> PathLap {
    let (upper, lower) = (upper.to_owned(), lower.to_owned());
    PathLap { upper, lower, overlap: of.least, least: Some(of.least), source: Some(of.source.clone()), holds: true }
}

/// A level whose one lap the crew makes where the section leaves this much room for it, the lower edge of what covers it so far up: short where the rule asks for more.
pub(super) fn in_room((upper, lower): (&str, &str), of: &LeastRule, (room, at): (Length, Length)) -> Result<PathCheck, Error> {
    let holds = room >= of.least;
    let lap = PathLap { overlap: room, holds, ..made(upper, lower, of) };
    let mut faults = Vec::new();
    if !holds {
        let (upper, lower) = (upper.to_owned(), lower.to_owned());
        faults.push(PathFault { failure: PathFailure::ShortLap, upper, lower, at, short: (of.least - room).length()? });
    }
    Ok(PathCheck { holds, faults, ..alone(lower, vec![lap]) })
}

/// How high the curbs of a joint along the panels stand; nothing at another line.
fn curbs(solved: &Solved) -> Option<Length> {
    solved.adjoining.iter().find_map(|a| if let Adjoining::JointCurbs { height, .. } = a { Some(*height) } else { None })
}

impl SectionWater<'_> {
    fn check(&self) -> Result<(), Error> {
        self.rules.check().map_err(|e| e.under("rules"))?;
        for (k, side) in self.sides.iter().enumerate() {
            if self.sides.iter().take(k).any(|s| s.side == side.side) {
                let error = Error::new(ErrorKind::Conflict, "two entries for one side").at(format!("sides[{k}].side")).value_of(side_name(side.side));
                return Err(error.accepts("each side once"));
            }
        }
        Ok(())
    }

    /// Everything on a deck, from the lowest to the highest. Panels that hook metal lie over it, however it is bedded; metal on the seam tops lies over them.
    fn pile(&self, of: &WaterSide) -> Result<Vec<FaceSheet<'_>>, Error> {
        let other = self.sides.iter().find(|s| s.side != of.side).map(|s| s.rise);
        let mut pile = on_deck(self.solved, of, other)?;
        pile.extend(panels(self.solved, of)?);
        let l = &of.levels;
        let half_way = if of.water == Water::Toward { l.seam_height } else { l.pan };
        let rank = |s: &FaceSheet<'_>| if s.trim.is_none() { s.height() + half_way.mm() / 2.0 } else { s.height() };
        pile.sort_by(|a, b| rank(a).total_cmp(&rank(b)));
        Ok(pile)
    }

    fn metal<R: Recorder>(&self, r: &mut R, of: &WaterSide, pile: &[FaceSheet<'_>]) -> Result<Option<PathCheck>, Error> {
        let holder = |s: &&FaceSheet<'_>| s.trim.and_then(|k| self.solved.trims.get(k)).is_some_and(super::parts::JunctionTrim::is_holder);
        let sheets = numbered(pile.iter().filter(|s| !holder(s)));
        if sheets.is_empty() {
            return Ok(None);
        }
        let rules = match of.water {
            Water::Toward => sheets.iter().map(|s| rule(PANELS, &s.name, &self.rules.panels_over_metal)).collect(),
            Water::Away => sheets.iter().map(|s| rule(&s.name, PANELS, &self.rules.metal_over_panels)).collect(),
            Water::Along => Vec::new(),
        };
        let check = WaterPath { sheets, rules }.run(r)?;
        // Beside the slope no water runs across the laps.
        let across = of.water == Water::Along;
        Ok(Some(if across {
            PathCheck { holds: true, faults: Vec::new(), laps: check.laps.into_iter().map(|l| PathLap { holds: true, ..l }).collect(), ..check }
        } else {
            check
        }))
    }

    /// Where the underlayment above a line ends: at what is fixed on the metal there, or at the line.
    fn foot(&self, of: &WaterSide, pile: &[FaceSheet<'_>]) -> Result<Length, Error> {
        let cleat = pile.iter().filter(|s| s.name == "offset cleat").map(|s| s.high).max();
        let hooked = match self.solved.end(of.side) {
            Some(end) => pile.iter().find(|s| s.name == PANELS).map(|s| (s.low + end.fold).length()).transpose()?,
            None => None,
        };
        Ok([cleat, hooked].into_iter().flatten().fold(Length::ZERO, Length::max))
    }

    fn underlayment<R: Recorder>(&self, r: &mut R, of: &WaterSide, pile: &[FaceSheet<'_>]) -> Result<PathCheck, Error> {
        let trims = || pile.iter().filter(|s| s.trim.and_then(|k| self.solved.trims.get(k)).is_some_and(|t| !t.is_holder()));
        let past = &self.rules.underlayment_past_line;
        let walled = !self.solved.adjoining.is_empty() && on_wall(self.solved)?.iter().any(|s| s.name == CLADDING);
        let alone = |laps: Vec<PathLap>| alone(UNDERLAYMENT, laps);
        let slot = self.solved.adjoining.iter().find_map(|a| if let Adjoining::VentSlot { width, .. } = a { Some(*width) } else { None });
        let curbs = curbs(self.solved);
        match (of.water, slot) {
            // Air passes the slot, so that underlayment ends at its edge, under the trim.
            (Water::Away, Some(slot)) => {
                let high = (-slot).length()?;
                let mut sheets = numbered(trims().take(1));
                let low = sheets.iter().map(|s| s.low).fold(high, Length::min);
                let rules = sheets.iter().map(|s| rule(&s.name, UNDERLAYMENT, &self.rules.metal_over_panels)).collect();
                sheets.iter_mut().for_each(|s| s.layer += 1);
                sheets.push(PathSheet { name: UNDERLAYMENT.to_owned(), low: (low - Length::feet(1)).length()?, high, layer: 1 });
                WaterPath { sheets, rules }.run(r)
            }
            // Up the curb, under the cap: as far as the curb is high.
            (Water::Along, _) if curbs.is_some() => in_room((JOINT_CAP, UNDERLAYMENT), past, (curbs.unwrap_or_default(), Length::ZERO)),
            (Water::Away | Water::Along, _) if walled || self.solved.trim("counterflashing").is_some() => {
                Ok(alone(vec![made("wall barrier", UNDERLAYMENT, past)]))
            }
            (Water::Away, _) => Ok(alone(trims().take(1).map(|t| made(t.name, UNDERLAYMENT, past)).collect())),
            (Water::Along, _) => Ok(alone(
                trims().next_back().map(|t| made(t.name, UNDERLAYMENT, &LeastRule { least: t.high.max(Length::ZERO), ..past.clone() })).into_iter().collect(),
            )),
            (Water::Toward, _) => {
                let foot = self.foot(of, pile)?;
                let top = (foot + Length::feet(10)).length()?;
                let over = !self.solved.cautions.iter().any(|c| c.code() == FLANGE_OVER_UNDERLAYMENT);
                let mut sheets = numbered(trims().filter(|s| s.high > foot));
                for s in &mut sheets {
                    // What of it lies down the slope of the deck's edge turns away from the deck.
                    s.low = s.low.max(Length::ZERO);
                    s.layer += u32::from(!over);
                }
                let layer = if over { u32::try_from(sheets.len()).unwrap_or(u32::MAX).saturating_add(1) } else { 1 };
                let rules = sheets.iter().map(|s| rule(UNDERLAYMENT, &s.name, &self.rules.underlayment_over_metal)).collect();
                let high = sheets.iter().map(|s| s.high).fold(top, Length::max);
                sheets.push(PathSheet { name: UNDERLAYMENT.to_owned(), low: foot, high: (high + Length::feet(1)).length()?, layer });
                WaterPath { sheets, rules }.run(r)
            }
        }
    }

    fn wall<R: Recorder>(&self, r: &mut R) -> Result<Option<PathCheck>, Error> {
        let mut sheets = on_wall(self.solved)?;
        let covers = |s: &FaceSheet<'_>| s.name == CLADDING || s.name == "counterflashing";
        if !sheets.iter().any(covers) {
            return Ok(None);
        }
        sheets.sort_by(|a, b| a.height().total_cmp(&b.height()));
        // A reglet closes the top of a counterflashing: nothing above it is of this path.
        let top = sheets.iter().filter(|s| covers(s)).map(|s| s.high).fold(Length::ZERO, Length::max);
        let sheets: Vec<FaceSheet<'_>> = sheets.into_iter().map(|s| FaceSheet { high: s.high.min(top), ..s }).filter(|s| s.low < s.high).collect();
        WaterPath { sheets: numbered(sheets.iter()), rules: Vec::new() }.run(r).map(Some)
    }

    pub(super) fn cautions(&self, out: &mut WaterCheck) {
        let said = |code| self.solved.cautions.iter().any(|c| c.code() == code);
        for path in &out.paths {
            for fault in &path.check.faults {
                // The section says it itself.
                let code = if path.level == WaterLevel::Underlayment { FLANGE_OVER_UNDERLAYMENT } else { PIPE_AGAINST_WATER };
                if fault.failure == PathFailure::RunsBehind && said(code) {
                    continue;
                }
                let face = match path.face {
                    PathFace::First => "first side",
                    PathFace::Second => "second side",
                    PathFace::Wall => "wall",
                    PathFace::Riser => "riser",
                    PathFace::FirstUpright => "upright face, first side",
                    PathFace::SecondUpright => "upright face, second side",
                };
                let caution = Caution::new(WATER_PATH_FAILS, "water", Source::CommonPractice).arg("face", face).arg("what", fault.message());
                out.cautions.push(caution.arg("at", fault.at).arg("cure", fault.cure()));
            }
        }
        for row in out.rows.iter().filter(|r| r.shelter == Shelter::None) {
            let rivets = self.solved.along.iter().any(|a| a.name == row.name && matches!(a.what, Along::Fasteners { bites: super::parts::Bites::Trim, .. }));
            if !(rivets && said(RIVETS_ON_SLOPE)) {
                out.cautions.push(Caution::new(FASTENERS_IN_WATER, "water", Source::CommonPractice).arg("row", &row.name).arg("side", side_name(row.side)));
            }
        }
    }
}

impl Calculation for SectionWater<'_> {
    type Out = WaterCheck;

    fn title(&self) -> String {
        "water on a section".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<WaterCheck, Error> {
        self.check()?;
        let mut out = WaterCheck::default();
        for of in self.sides {
            let pile = self.pile(of)?;
            let face = if of.side == Side::First { PathFace::First } else { PathFace::Second };
            let path = |level, check| FacePath { face, water: of.water, level, check };
            let metal = r.part(|| format!("metal on the {}", side_name(of.side)), |r| self.metal(r, of, &pile))?;
            out.paths.extend(metal.map(|c| path(WaterLevel::Metal, c)));
            let under = r.part(|| format!("underlayment on the {}", side_name(of.side)), |r| self.underlayment(r, of, &pile))?;
            out.paths.push(path(WaterLevel::Underlayment, under));
            row_shelter::on_deck(self.solved, of, &pile, &mut out.rows)?;
        }
        if let Some(side) = [Side::First, Side::Second].into_iter().find(|s| !self.sides.iter().any(|of| of.side == *s)) {
            let wall = r.part(|| "metal on the wall".into(), |r| self.wall(r))?;
            out.paths.extend(wall.map(|check| FacePath { face: PathFace::Wall, water: Water::Toward, level: WaterLevel::Metal, check }));
            row_shelter::on_face(self.solved, side, &mut out.rows);
        }
        uprights(r, self.solved, self.sides, &mut out)?;
        self.cautions(&mut out);
        Ok(out)
    }
}

//! Rules that contradict each other: what some ask for, against what others, or the lengths chosen beside them, leave.

use super::least::LeastRule;
use super::water_rules::WaterRules;
use super::whole::JunctionInput;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Length, Sum};
use std::borrow::Cow;

/// A rule or a chosen length among those that are held against each other.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RulePart {
    /// Its field, by its path; "half of" before it where it is shared by two sides.
    pub name: String,
    /// What it asks for, or leaves.
    pub length: Length,
    /// Whose rule it is; nothing for a length that the caller chose.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub source: Option<Source>,
}

/// What some rules ask for together, and what is left for them.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RuleRoom {
    /// What asks.
    pub asks: Vec<RulePart>,
    /// What leaves room for it.
    pub leaves: Vec<RulePart>,
    /// What the asking leaves over.
    pub spare: Length,
}

/// A part of a demand before it has its path: the field, how long it is, whose rule it is, and whether half of it counts.
pub(crate) struct Part {
    field: Cow<'static, str>,
    length: Length,
    source: Option<Source>,
    is_half: bool,
    is_outside: bool,
}

/// A chosen length.
pub(crate) fn chosen(field: impl Into<Cow<'static, str>>, length: Length) -> Part {
    Part { field: field.into(), length, source: None, is_half: false, is_outside: false }
}

/// A rule.
pub(crate) fn rule(field: &'static str, rule: &LeastRule) -> Part {
    Part { source: Some(rule.source.clone()), ..chosen(field, rule.least) }
}

impl Part {
    /// Half of it counts.
    pub(crate) fn half(self) -> Part {
        Part { is_half: true, ..self }
    }

    /// Its field is a path from the outermost document, and stands in no part of it.
    pub(crate) fn outside(self) -> Part {
        Part { is_outside: true, ..self }
    }
}

/// What every rule of a document asks, and the contradictions found.
#[derive(Debug, Default)]
pub(crate) struct RuleBook {
    path: Vec<String>,
    /// The rules of the water's laps, and where they stand.
    pub(super) water: Option<(WaterRules, &'static str)>,
    /// The clearance and the engagement that a job keeps at every moving end.
    movement: Option<(Length, Length)>,
    rooms: Vec<RuleRoom>,
    /// Only contradictions are wanted.
    forgets: bool,
    faults: Faults,
    /// What kept a demand from being reckoned.
    broken: Option<Error>,
}

impl RuleBook {
    /// A book that knows what water asks, as the field of this name says, and what moving ends keep.
    pub(crate) fn new(water: (WaterRules, &'static str), movement: Option<(Length, Length)>) -> RuleBook {
        RuleBook { water: Some(water), movement, ..RuleBook::default() }
    }

    /// A book that knows what moving ends keep, and writes contradictions alone.
    pub(crate) fn for_faults(movement: Option<(Length, Length)>) -> RuleBook {
        RuleBook { movement, forgets: true, ..RuleBook::default() }
    }

    /// What is asked inside this part of the document.
    pub(crate) fn under(&mut self, part: impl Into<String>, of: impl FnOnce(&mut RuleBook)) {
        self.path.push(part.into());
        of(self);
        self.path.pop();
    }

    /// The path of a field of the part at hand.
    pub(crate) fn at(&self, field: &str) -> String {
        self.path.iter().map(String::as_str).chain([field]).collect::<Vec<_>>().join(".")
    }

    fn part(&self, part: Part) -> Result<RulePart, Error> {
        let name = if part.is_outside { part.field.into_owned() } else { self.at(&part.field) };
        let (name, length) = if part.is_half { (format!("half of {name}"), part.length.station(1, 2)?) } else { (name, part.length) };
        Ok(RulePart { name, length, source: part.source })
    }

    /// A demand: all that asks, together, must find room in all that leaves it, together. What contradicts is a fault that names every part.
    pub(crate) fn ask<const N: usize, const M: usize>(&mut self, asks: [Part; N], leaves: [Part; M], cure: &'static str) {
        if let Err(e) = self.reckon(asks, leaves, cure) {
            self.broken.get_or_insert(e);
        }
    }

    fn reckon<const N: usize, const M: usize>(&mut self, asks: [Part; N], leaves: [Part; M], cure: &'static str) -> Result<(), Error> {
        if self.forgets {
            let total = |of: &[Part]| -> Result<Length, Error> {
                let mut each = of.iter().map(|p| if p.is_half { p.length.station(1, 2) } else { Ok(p.length) });
                each.try_fold(Length::ZERO, |sum, length| (sum + length?).length())
            };
            if total(&asks)? <= total(&leaves)? {
                return Ok(());
            }
        }
        let at = asks.first().map(|p| if p.is_outside { p.field.to_string() } else { self.at(&p.field) }).unwrap_or_default();
        let parts = |of: Vec<Part>| of.into_iter().map(|p| self.part(p)).collect::<Result<Vec<_>, _>>();
        let (asks, leaves) = (parts(Vec::from(asks))?, parts(Vec::from(leaves))?);
        let total = |of: &[RulePart]| -> Sum { of.iter().fold(Sum::ZERO, |sum, p| sum + p.length) };
        let (wanted, room) = (total(&asks).length()?, total(&leaves).length()?);
        let spare = (room - wanted).length()?;
        if spare.is_negative() {
            let short = (-spare).length()?;
            let told = |of: &[RulePart]| {
                let one = |p: &RulePart| match &p.source {
                    Some(source) => format!("{} {} ({source})", p.name, p.length),
                    None => format!("{} {}", p.name, p.length),
                };
                of.iter().map(one).collect::<Vec<_>>().join(" + ")
            };
            let text = format!("no section keeps both: {} ask for {short} more than {} leave", told(&asks), told(&leaves));
            let text = if asks.len() == 1 { text.replace(" ask for ", " asks for ") } else { text };
            let text = if leaves.len() == 1 && text.ends_with(" leave") { format!("{text}s") } else { text };
            let error = Error::new(ErrorKind::Conflict, text).at(at).value_of(wanted).accepts(format!("at most {room}"));
            self.faults.add(error.cured_by(format!("{short} of room: {cure}")));
        }
        self.rooms.push(RuleRoom { asks, leaves, spare });
        Ok(())
    }

    /// What a job keeps at an end that moves, of the end's own fold and gap.
    pub(crate) fn keeps_moving(&mut self, fold: Part, gap: Part) {
        let Some((clearance, engagement)) = self.movement else { return };
        let clearance = || chosen("supplies.movement.clearance", clearance).outside();
        self.ask([clearance()], [gap], "a wider gap, or another clearance");
        self.ask([clearance(), chosen("supplies.movement.engagement", engagement).outside()], [fold], "a longer fold");
    }

    /// Every demand, or every contradiction.
    pub(crate) fn close<R: Recorder>(self, r: &mut R) -> Result<Vec<RuleRoom>, Error> {
        if let Some(e) = self.broken {
            return Err(e);
        }
        self.faults.check()?;
        for room in &self.rooms {
            r.step(|| {
                let (step, first) = (Step::new(room.asks.iter().map(|p| p.name.as_str()).collect::<Vec<_>>().join(" + ")), room.asks.first());
                let step = room.leaves.iter().fold(step.formula("what is left less what is asked"), |step, p| step.with(p.name.clone(), p.length));
                let step = room.asks.iter().fold(step, |step, p| step.with(p.name.clone(), p.length)).gives(room.spare);
                step.source(first.and_then(|p| p.source.clone()).unwrap_or_else(Source::user))
            });
        }
        Ok(self.rooms)
    }
}

/// Whether the rules of junctions can be kept together, whatever their roof.
///
/// A rule is held against the lengths chosen beside it and against other rules, each where they ask for the same room: covers and hooks within a valley's leg,
/// clearance within a gap, a fold's engagement and clearance within the fold, a row of fasteners within what it fastens, laps of water within a flange.
/// Only what no pitch can cure is a contradiction; the section itself has the rest. The result lists every demand with what it leaves over.
///
/// # Errors
/// Computing refuses every contradiction at once ([`ErrorKind::Conflict`]), each at the first field that asks, with every part by its path, its length and its source,
/// by how much, and what would cure it.
///
/// ```
/// use seamwright::junction::RuleCheck;
/// use seamwright::record::{Calculation, read_json};
/// let valley = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/junctions/inputs/valley-with-cleats.json"));
/// let check = |valley: &str| read_json::<RuleCheck>(format!(r#"{{"junctions": [{{"valley": {valley}}}]}}"#).as_bytes(), 1 << 20);
/// assert!(check(valley)?.compute()?.iter().all(|room| !room.spare.is_negative()));
/// let greedy = valley.replacen(r#""least": "101.6 mm""#, r#""least": "500 mm""#, 1);
/// let e = check(&greedy)?.compute().unwrap_err();
/// assert!(e.path().starts_with("junctions[0].valley.detail.first.least_beyond"), "{e}");
/// assert!(e.message().contains("detail.first.leg"), "{e}");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RuleCheck {
    /// The junctions whose rules are looked at.
    pub junctions: Vec<JunctionInput>,
    /// The laps that water asks for; in a job file those of [`WaterRules::default`] unless given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub water: WaterRules,
}

impl Calculation for RuleCheck {
    type Out = Vec<RuleRoom>;

    fn title(&self) -> String {
        format!("rules of {} junctions against each other", self.junctions.len())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<RuleRoom>, Error> {
        self.water.check().map_err(|e| e.under("water"))?;
        let mut book = RuleBook::new((self.water.clone(), "water"), None);
        for (i, junction) in self.junctions.iter().enumerate() {
            book.under(format!("junctions[{i}]"), |book| junction.asks(book));
        }
        book.close(r)
    }
}

//! Metals of a whole roof together: every two parts that touch, and every part that another's water reaches, however far down.

use super::cautions::UNLIKE_METALS_AT;
use super::{Alloy, MetalPair, PairVerdict, PairWay};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// A part of a roof and its metal.
///
/// ```
/// use seamwright::metal::{Alloy, MetalPart};
/// let cap = MetalPart { name: "ridge cap".into(), alloy: Alloy::Copper };
/// assert_eq!(cap.alloy, Alloy::Copper);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MetalPart {
    /// What it is called.
    pub name: String,
    /// Its metal.
    pub alloy: Alloy,
}

/// Two parts that meet, by their numbers.
///
/// ```
/// use seamwright::metal::PartsMeet;
/// let ridge = PartsMeet { first: 0, second: 1, at: "ridge 1".into() };
/// assert_ne!(ridge.first, ridge.second);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PartsMeet {
    /// The one; where water runs, the upper.
    pub first: usize,
    /// The other; where water runs, the lower.
    pub second: usize,
    /// Where: the line of the roof.
    pub at: String,
}

/// The metals of a roof.
///
/// Water that leaves a part is followed down: what it carries from a copper cap reaches the gutter below the panels too. Each two kinds of part are said once, with every
/// place. What goes together is not said.
///
/// # Errors
/// Computing refuses a meeting of a part that is not there ([`ErrorKind::OutOfRange`]) and of a part with itself ([`ErrorKind::Conflict`]), by its path.
///
/// ```
/// use seamwright::metal::{Alloy, MetalPart, MetalsTogether, PairWay, PartsMeet};
/// use seamwright::record::Calculation;
/// let part = |name: &str, alloy| MetalPart { name: name.into(), alloy };
/// let meet = |first, second, at: &str| PartsMeet { first, second, at: at.into() };
/// let roof = MetalsTogether {
///     parts: vec![part("copper flashing", Alloy::Copper), part("panels", Alloy::Copper), part("gutter", Alloy::AluminiumZincCoatedSteel)],
///     touches: vec![],
///     drains: vec![meet(0, 1, "headwall 1"), meet(1, 2, "eave 1")],
/// };
/// let found = roof.compute()?;
/// // Both coppers drain into the gutter, the flashing through the panels.
/// assert_eq!(found.iter().map(|m| (m.first.as_str(), m.second.as_str(), m.way)).collect::<Vec<_>>(), [
///     ("copper flashing", "gutter", PairWay::RunOff), ("panels", "gutter", PairWay::RunOff),
/// ]);
/// assert_eq!(found[0].places, ["headwall 1, eave 1"]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MetalsTogether {
    /// The parts.
    pub parts: Vec<MetalPart>,
    /// Those that touch.
    #[cfg_attr(feature = "serde", serde(default))]
    pub touches: Vec<PartsMeet>,
    /// Where water runs from one part straight onto another.
    #[cfg_attr(feature = "serde", serde(default))]
    pub drains: Vec<PartsMeet>,
}

/// Two kinds of part whose metals do not go together, or are not judged.
///
/// See [`MetalsTogether`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MetalMeeting {
    /// The one; by run-off, the upper.
    pub first: String,
    /// Its metal.
    pub first_alloy: Alloy,
    /// The other; by run-off, the lower.
    pub second: String,
    /// Its metal.
    pub second_alloy: Alloy,
    /// How they meet.
    pub way: PairWay,
    /// What the table says.
    pub verdict: PairVerdict,
    /// Where: each the line, or the lines that the water crosses one after the other.
    pub places: Vec<String>,
    /// What cures it.
    pub cure: &'static str,
}

impl MetalMeeting {
    /// The caution that belongs to it.
    #[must_use]
    pub fn caution(&self) -> Caution {
        let way = match (self.way, self.verdict) {
            (PairWay::Contact, PairVerdict::KeepApart) => "touches",
            (PairWay::Contact, _) => "touches (not in the table)",
            (PairWay::RunOff, PairVerdict::KeepApart) => "drains on",
            (PairWay::RunOff, _) => "drains on (not in the table)",
        };
        let more = self.places.len().saturating_sub(1);
        let place = self.places.first().map_or("", String::as_str);
        let place = if more == 0 { place.to_owned() } else { format!("{place} and {more} more") };
        let caution = Caution::new(UNLIKE_METALS_AT, "metals", self.pair().source()).arg("first", format_args!("{} ({})", self.first, self.first_alloy));
        let caution = caution.arg("way", way).arg("second", format_args!("{} ({})", self.second, self.second_alloy));
        caution.arg("place", place).arg("cure", self.cure)
    }

    const fn pair(&self) -> MetalPair {
        MetalPair { upper: self.first_alloy, lower: self.second_alloy, way: self.way }
    }
}

const fn cure(way: PairWay, verdict: PairVerdict) -> &'static str {
    match (verdict, way) {
        (PairVerdict::NotJudged, _) => "ask the supplier of both",
        (_, PairWay::Contact) => "put a separator between them, or make one of them of the other's metal",
        (_, PairWay::RunOff) => "make the upper of the lower's metal, or catch its water before it gets there",
    }
}

impl MetalsTogether {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (name, list) in [("touches", &self.touches), ("drains", &self.drains)] {
            for (i, meet) in list.iter().enumerate() {
                for (field, part) in [("first", meet.first), ("second", meet.second)] {
                    if part >= self.parts.len() {
                        let error = Error::new(ErrorKind::OutOfRange, "no part of this number").at(format!("{name}[{i}].{field}")).value_of(part);
                        faults.add(error.accepts(format!("less than {}", self.parts.len())));
                    }
                }
                if meet.first == meet.second {
                    let error = Error::new(ErrorKind::Conflict, "a part that meets itself").at(format!("{name}[{i}].second")).value_of(meet.second);
                    faults.add(error.accepts("another part"));
                }
            }
        }
        faults.check()
    }

    /// Every part that the water of this one reaches, with the lines on the shortest way.
    fn reached(&self, from: usize, down: &[Vec<&PartsMeet>]) -> Vec<(usize, String)> {
        let mut seen = BTreeSet::from([from]);
        let mut out = Vec::new();
        let mut next = VecDeque::from([(from, String::new())]);
        while let Some((part, way)) = next.pop_front() {
            for meet in down.get(part).into_iter().flatten() {
                if seen.insert(meet.second) {
                    let way = if way.is_empty() { meet.at.clone() } else { format!("{way}, {}", meet.at) };
                    out.push((meet.second, way.clone()));
                    next.push_back((meet.second, way));
                }
            }
        }
        out
    }
}

impl Calculation for MetalsTogether {
    type Out = Vec<MetalMeeting>;

    fn title(&self) -> String {
        "metals together".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<MetalMeeting>, Error> {
        self.check()?;
        let mut down: Vec<Vec<&PartsMeet>> = vec![Vec::new(); self.parts.len()];
        for meet in &self.drains {
            if let Some(list) = down.get_mut(meet.first) {
                list.push(meet);
            }
        }
        type Key<'a> = (&'a str, Alloy, &'a str, Alloy, PairWay);
        let mut found: BTreeMap<Key<'_>, Vec<String>> = BTreeMap::new();
        let mut add = |one: usize, other: usize, way: PairWay, at: String| {
            let (Some(a), Some(b)) = (self.parts.get(one), self.parts.get(other)) else { return };
            if (MetalPair { upper: a.alloy, lower: b.alloy, way }).verdict() != PairVerdict::Good {
                let places = found.entry((a.name.as_str(), a.alloy, b.name.as_str(), b.alloy, way)).or_default();
                if !places.contains(&at) {
                    places.push(at);
                }
            }
        };
        for meet in &self.touches {
            add(meet.first, meet.second, PairWay::Contact, meet.at.clone());
        }
        for part in 0..self.parts.len() {
            for (below, way) in self.reached(part, &down) {
                add(part, below, PairWay::RunOff, way);
            }
        }
        let mut out = Vec::with_capacity(found.len());
        for ((first, first_alloy, second, second_alloy, way), places) in found {
            let pair = MetalPair { upper: first_alloy, lower: second_alloy, way };
            let verdict = pair.verdict();
            r.step(|| {
                let step = Step::new(format!("{first} and {second}")).with("first", first_alloy).with("second", second_alloy).with("places", places.len());
                step.gives(format_args!("{verdict:?}")).source(pair.source())
            });
            let (first, second) = (first.to_owned(), second.to_owned());
            out.push(MetalMeeting { first, first_alloy, second, second_alloy, way, verdict, places, cure: cure(way, verdict) });
        }
        r.step(|| Step::new("pairs to keep apart or to ask about").with("parts", self.parts.len()).gives(out.len()).source(Source::CommonPractice));
        Ok(out)
    }
}

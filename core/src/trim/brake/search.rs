//! A search for an order that works: over the sets of bends that are made, fewest handlings first.

use super::order::within;
use super::plan::{BendStep, Brake, FoldWay, SheetEdge};
use super::report::Handling;
use super::step::Work;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::flat::{Flat, FlatBend};
use crate::trim::leg::Face;
use crate::trim::profile::Profile;
use crate::trim::rule::BendRule;
use crate::trim::springback::SpringbackBy;
use crate::units::BendAngle;
use std::collections::{BTreeMap, BTreeSet};

/// The most bends of a search: the sets of made bends are its states.
pub const MAX_SEARCHED: usize = 20;

/// A search for an order of bends in which nothing is in the way.
///
/// Each bend is swung to its full angle. Where `hem_begun` is given, a bend of 180 degrees or more is swung to that angle first and pressed shut right after. What a step needs
/// depends only on which bends are made, so that the search runs over sets of bends and over how the piece lies; it takes the way with the fewest
/// handlings first, a turn and a flip counting one each. Effort is counted in nodes: steps that are followed swing by swing.
///
/// # Errors
/// Computing refuses every fault of the profile, under `profile`, and of the brake; more than [`MAX_SEARCHED`] bends ([`ErrorKind::TooLarge`]); a hem that is
/// begun at 180 degrees or more, or at nothing, and a search without a node ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Brake, ClampLine, Face, NeutralFactor, OrderOutcome, OrderSearch, Profile, Tooling};
/// use seamwright::units::{BendAngle, Length};
/// let z = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::ZERO).leg("a", Length::inches(2));
/// let z = z.up(BendAngle::SQUARE).leg("b", Length::inches(3)).down(BendAngle::SQUARE).leg("c", Length::inches(2)).build()?;
/// let brake = Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None };
/// let search = OrderSearch { profile: z, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE), brake, springback: None, hem_begun: None, most_nodes: 1000 };
/// let found = search.compute()?;
/// assert_eq!((found.outcome, found.steps.len(), found.handlings), (OrderOutcome::Works, 2, Some(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct OrderSearch {
    /// What is bent.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The brake.
    pub brake: Brake,
    /// What the metal springs back; nothing, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub springback: Option<SpringbackBy>,
    /// How far a hem is swung before it is pressed shut; it is swung all the way, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub hem_begun: Option<BendAngle>,
    /// How many nodes may be looked at.
    pub most_nodes: u32,
}

/// What a search can say.
///
/// ```
/// use seamwright::trim::OrderOutcome;
/// assert_ne!(OrderOutcome::NoneWorks, OrderOutcome::EffortSpent);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum OrderOutcome {
    /// An order works, and none with fewer handlings does.
    Works,
    /// Every order was looked at, and none works.
    NoneWorks,
    /// The nodes were spent first: whether an order works is not known.
    EffortSpent,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderFound {
    /// What it can say.
    pub outcome: OrderOutcome,
    /// The steps, where an order works.
    pub steps: Vec<BendStep>,
    /// Turns and flips together, where an order works.
    pub handlings: Option<u32>,
    /// The nodes that were looked at.
    pub nodes: u32,
}

/// Which bends are made, and how the piece lies: nothing before the first step.
type State = (u32, Option<(SheetEdge, Face)>);

/// The fewest handlings to a state, and how it was last come to.
type Best = BTreeMap<State, (u32, Option<(State, Way)>)>;

/// A way to make one bend.
#[derive(Clone, Copy)]
struct Way {
    index: usize,
    gauged: SheetEdge,
    face_up: Face,
}

struct Search<'a> {
    flat: &'a Flat,
    asked: &'a OrderSearch,
    /// Whether a bend can be made so, with these made: looked at once.
    known: BTreeMap<(u32, usize, SheetEdge, Face), bool>,
    nodes: u32,
}

impl Search<'_> {
    /// The steps that make one bend.
    fn steps(&self, bend: &FlatBend, way: Way) -> Vec<BendStep> {
        let step = BendStep { bend: bend.part, gauged: way.gauged, face_up: way.face_up, to: None, way: FoldWay::Swing };
        match self.asked.hem_begun {
            Some(begun) if bend.angle.degrees() >= 180.0 => vec![step.until(begun), step.pressed()],
            _ => vec![step],
        }
    }

    /// Whether the bend can be made so; nothing where the effort is spent.
    fn works(&mut self, made: u32, bend: &FlatBend, way: Way) -> Result<Option<bool>, Error> {
        let key = (made, way.index, way.gauged, way.face_up);
        if let Some(known) = self.known.get(&key) {
            return Ok(Some(*known));
        }
        if self.nodes >= self.asked.most_nodes {
            return Ok(None);
        }
        self.nodes += 1;
        let mut work = Work::new(self.flat, &self.asked.brake, self.asked.springback);
        for (i, (done, b)) in work.made.iter_mut().zip(self.flat.bends()).enumerate() {
            if made >> i & 1 == 1 {
                *done = b.angle.degrees();
            }
        }
        let mut works = true;
        for step in self.steps(bend, way) {
            works = works && work.take(step)?.faults.is_empty();
        }
        self.known.insert(key, works);
        Ok(Some(works))
    }

    /// The ways to make the next bend.
    fn ways(&self, made: u32) -> Vec<Way> {
        let mut out = Vec::new();
        for (index, bend) in self.flat.bends().iter().enumerate().filter(|(i, _)| made >> i & 1 == 0) {
            let inside = bend.direction.inside();
            for face_up in [inside, inside.opposite()] {
                if face_up == inside || self.asked.brake.down.is_some() {
                    out.extend([SheetEdge::Start, SheetEdge::End].map(|gauged| Way { index, gauged, face_up }));
                }
            }
        }
        out
    }

    /// Fewest handlings first; of equal ones the state that comes first.
    fn run(&mut self) -> Result<OrderFound, Error> {
        let all = (1_u32 << self.flat.bends().len()) - 1;
        let mut open: BTreeSet<(u32, State)> = BTreeSet::from([(0, (0, None))]);
        let mut best: Best = BTreeMap::from([((0, None), (0, None))]);
        while let Some((cost, state)) = open.pop_first() {
            if best.get(&state).is_some_and(|b| b.0 < cost) {
                continue;
            }
            let (made, lay) = state;
            if made == all {
                return Ok(self.found(OrderOutcome::Works, self.walked(&best, state), Some(cost)));
            }
            for way in self.ways(made) {
                let Some(bend) = self.flat.bends().get(way.index) else { continue };
                let next: State = (made | 1 << way.index, Some((way.gauged, way.face_up)));
                let handling = lay.map_or(Handling::default(), |l| Handling::between(l, (way.gauged, way.face_up)));
                let cost = cost + u32::from(handling.turned) + u32::from(handling.flipped);
                if best.get(&next).is_some_and(|b| b.0 <= cost) {
                    continue;
                }
                match self.works(made, bend, way)? {
                    Some(true) => {
                        best.insert(next, (cost, Some((state, way))));
                        open.insert((cost, next));
                    }
                    Some(false) => {}
                    None => return Ok(self.found(OrderOutcome::EffortSpent, Vec::new(), None)),
                }
            }
        }
        Ok(self.found(OrderOutcome::NoneWorks, Vec::new(), None))
    }

    fn walked(&self, best: &Best, last: State) -> Vec<BendStep> {
        let mut ways = Vec::new();
        let mut state = last;
        while let Some((_, Some((before, way)))) = best.get(&state) {
            ways.push(*way);
            state = *before;
        }
        ways.iter().rev().filter_map(|way| Some(self.steps(self.flat.bends().get(way.index)?, *way))).flatten().collect()
    }

    fn found(&self, outcome: OrderOutcome, steps: Vec<BendStep>, handlings: Option<u32>) -> OrderFound {
        OrderFound { outcome, steps, handlings, nodes: self.nodes }
    }
}

impl OrderSearch {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.brake.check().map_err(|e| e.under("brake")));
        if let Some(springback) = self.springback {
            springback.check(&mut faults, "springback");
        }
        if let Some(begun) = self.hem_begun.filter(|b| b.degrees() <= 0.0 || b.degrees() >= 180.0) {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "not an angle to begin a hem at")
                    .at("hem_begun")
                    .value_of(begun)
                    .accepts("more than 0 deg, less than 180 deg"),
            );
        }
        if self.most_nodes == 0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "a search needs a node").at("most_nodes").value_of(self.most_nodes).accepts("1 or more"));
        }
        faults.check()
    }
}

impl Calculation for OrderSearch {
    type Out = OrderFound;

    fn title(&self) -> String {
        format!("search for an order of bends, {} nodes at most", self.most_nodes)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<OrderFound, Error> {
        let mut faults = Faults::default();
        faults.keep(self.check());
        let flat = faults.keep(self.profile.unfold(&self.rule).map_err(|e| e.under("profile")));
        if let Some(flat) = &flat {
            faults.keep(within(flat.bends().len(), MAX_SEARCHED, "profile.bends").map_err(|e| e.cured_by("an order of your own, tried as a plan")));
        }
        faults.check()?;
        let flat = flat.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;
        let found = Search { flat: &flat, asked: self, known: BTreeMap::new(), nodes: 0 }.run()?;
        r.step(|| {
            let step =
                Step::new("nodes looked at").formula("sets of made bends and how the piece lies, fewest handlings first").with("bends", flat.bends().len());
            step.gives(found.nodes).source(Source::geometry())
        });
        Ok(found)
    }
}

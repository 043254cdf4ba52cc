//! The parts of a solved section as convex pieces, and the refusal of what runs into what.
//!
//! What is meant to touch is not told apart by name but by depth: layers lie on each other, hems hook edges, bends nest. What is meant to cross is: a
//! reglet's tongue goes into the wall, a turned-down edge is notched at the seams that it crosses, closures stand between the seams.

use super::cautions::RUNS_INTO_FACE;
use super::convex::{Convex, P, Span};
use super::levels::Levels;
use super::parts::{Along, JunctionTrim, Side, Solved};
use super::section_fit::{TOUCH, deepest};
use super::top_end::TopEnd;
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::panel::{PanelEnd, Reach};
use crate::practice::junction as practice;
use crate::record::{Caution, Source};
use crate::trim::{Direction, Edge};
use crate::units::{Angle, Length};

/// How much of a panel, of a deck and of a wall is looked at, from the line.
const SEEN: f64 = 600.0;
/// How thick a deck, a wall or a fascia is taken to be: what runs into it runs into its face.
const SOLID: f64 = 20.0;
const FACE: &str = "face";

/// The panels of one side.
enum Panels<'a> {
    /// Held back and turned up behind closures.
    Turned(&'a TopEnd),
    /// Folded around metal between these heights over the deck.
    Hooked { low: Length, high: Length },
    /// Seen across the seams: the side edge turned up so high over the pan, and the nearest seam so far from it.
    Across { turned_up: Length, seam: Length },
}

/// One side of a section: its deck, and the panels on it.
pub(super) struct Deck<'a> {
    side: Side,
    /// Toward +x.
    rise: Angle,
    levels: &'a Levels,
    panels: Panels<'a>,
    /// From the line to where the deck begins: behind a riser that steps down from it.
    start: f64,
    /// How high over the line the deck starts: on a riser.
    up: f64,
    /// The input that sets the panels' end, and what to give instead.
    input: (&'static str, &'static str),
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Role {
    Solid,
    Trim,
    Closure,
    /// The turned-up pan, or the fold's lower layer.
    End,
    Seam,
}

struct Piece<'a> {
    convex: Convex,
    /// The leg that it is of; a bend has none.
    leg: Option<&'a str>,
    is_hem: bool,
}

struct Body<'a> {
    name: &'a str,
    role: Role,
    side: Option<Side>,
    pieces: Vec<Piece<'a>>,
}

/// A straight face of the section, which rises at an angle through the line.
#[derive(Clone, Copy)]
struct Line {
    sin: f64,
    cos: f64,
    /// How high over the line it starts.
    up: f64,
}

impl Line {
    fn at(rise: Angle) -> Line {
        Line { sin: rise.sin(), cos: rise.cos(), up: 0.0 }
    }

    fn point(self, along: f64, height: f64) -> P {
        (along * self.cos - height * self.sin, self.up + along * self.sin + height * self.cos)
    }

    /// What lies behind the face from the line onto it, so far, and packing of this height over it, cut off square or plumb, whichever is shorter; its back is
    /// cut off at the line, where it meets what stands beside it.
    fn solid(self, packing: f64, (start, to): (f64, f64)) -> Convex {
        let (back, plumb) = (start + 2.0 * SOLID * to.signum(), start + packing * self.sin / self.cos);
        let top = if to < 0.0 { start.min(plumb) } else { start.max(plumb) };
        Convex::four([self.point(if packing > 0.0 { top } else { start }, packing), self.point(to, packing), self.point(to, -SOLID), self.point(back, -SOLID)])
    }

    fn block(self, (from, to): (f64, f64), (low, high): (f64, f64)) -> Convex {
        Convex::four([self.point(from, low), self.point(to, low), self.point(to, high), self.point(from, high)])
    }
}

fn whole<'a>(name: &'a str, role: Role, side: Option<Side>, blocks: Vec<Convex>) -> Body<'a> {
    let pieces = blocks.into_iter().map(|convex| Piece { convex, leg: Some(name), is_hem: false }).collect();
    Body { name, role, side, pieces }
}

impl<'a> Deck<'a> {
    /// Panels that end behind closures, as the input at this path asks.
    pub(super) fn turned(side: Side, rise: Angle, levels: &'a Levels, end: &'a TopEnd, path: &'static str) -> Deck<'a> {
        Deck { side, rise, levels, panels: Panels::Turned(end), start: 0.0, up: 0.0, input: (path, "a greater hold-back, or a smaller turn-up") }
    }

    /// Panels that fold around metal between two heights over the deck.
    pub(super) fn hooked(side: Side, rise: Angle, levels: &'a Levels, (low, high): (Length, Length), input: (&'static str, &'static str)) -> Deck<'a> {
        Deck { side, rise, levels, panels: Panels::Hooked { low, high }, start: 0.0, up: 0.0, input }
    }

    /// Panels along the line: how high their edge is turned up, and how far from it the nearest seam is.
    pub(super) fn across(levels: &'a Levels, (turned_up, seam): (Length, Length), input: (&'static str, &'static str)) -> Deck<'a> {
        Deck { side: Side::First, rise: Angle::ZERO, levels, panels: Panels::Across { turned_up, seam }, start: 0.0, up: 0.0, input }
    }

    /// With a deck that begins so far from the line.
    pub(super) fn beginning(self, start: Length) -> Deck<'a> {
        Deck { start: start.mm(), ..self }
    }

    /// On this side.
    pub(super) fn on(self, side: Side) -> Deck<'a> {
        Deck { side, ..self }
    }

    /// With a deck that starts so high over the line.
    pub(super) fn raised(self, up: Length) -> Deck<'a> {
        Deck { up: up.mm(), ..self }
    }

    /// Along the rise, from the line onto the deck.
    fn onto(&self) -> f64 {
        if self.side == Side::First { -1.0 } else { 1.0 }
    }

    fn bodies(&self, solved: &Solved, out: &mut Vec<Body<'_>>) {
        let (line, onto, side) = (Line { up: self.up, ..Line::at(self.rise) }, self.onto(), Some(self.side));
        let block = |(from, to): (f64, f64), heights: (f64, f64)| line.block((from * onto, to * onto), heights);
        let nose = solved.end(self.side).map_or(0.0, onto_deck);
        let far = nose.max(0.0) + SEEN;
        out.push(whole("deck", Role::Solid, side, vec![line.solid(self.levels.built_up.mm(), (self.start * onto, far * onto))]));
        let Some(end) = solved.end(self.side) else { return };
        let l = self.levels;
        let under = l.built_up.mm() + l.underlayment.mm() + l.stand_off.mm();
        let (t, seam) = (l.pan.mm(), l.seam_height.mm());
        match &self.panels {
            Panels::Turned(asked) => {
                out.push(whole("turned-up pan", Role::End, side, vec![block((nose, nose + t), (under, under + t + end.turn_up.mm()))]));
                out.push(whole("seams", Role::Seam, side, vec![block((nose, far), (under + t, under + t + seam))]));
                out.extend(self.closures(solved, asked, under + t, &block));
            }
            Panels::Hooked { low, high } => {
                let (low, high) = (low.mm(), high.mm().max(under));
                let fold = end.fold.mm();
                out.push(whole("fold of the panels", Role::End, side, vec![block((nose, nose + fold), (low - t, low))]));
                // The seams are cut back so far that the pan folds.
                out.push(whole("seams", Role::Seam, side, vec![block((nose + fold, far), (high + t, high + t + seam))]));
            }
            Panels::Across { turned_up, seam: next } => {
                let to = nose + next.mm();
                out.push(whole("panel's edge", Role::End, side, vec![block((nose, nose + t), (under, under + t + turned_up.mm()))]));
                out.push(whole("seam", Role::Seam, side, vec![block((to, to + t), (under, under + t + seam))]));
            }
        }
    }

    fn closures(&self, solved: &Solved, asked: &TopEnd, pan: f64, block: &impl Fn((f64, f64), (f64, f64)) -> Convex) -> Option<Body<'static>> {
        let row = solved.along.iter().find(|a| a.side == self.side && matches!(a.what, Along::Closures { .. }))?;
        let Along::Closures { web } = row.what else { return None };
        let c = &asked.closure;
        let at = -row.from_line.mm();
        let (t, foot) = (self.levels.closure_metal.mm(), pan + c.tape_beneath.mm());
        let head = foot + web.mm();
        // The web's face, its lower flange up the slope on the tape, its top flange down it.
        let pieces = vec![
            block((at - t, at), (foot, head)),
            block((at - c.lower_flange.mm(), at), (foot, foot + t)),
            block((at, at + c.top_flange.mm()), (head, head + t)),
        ];
        Some(whole("closures", Role::Closure, Some(self.side), pieces))
    }
}

/// From the line onto the deck to the outermost point of the panels.
fn onto_deck(end: &PanelEnd) -> f64 {
    let reach = match end.reach {
        Reach::HoldBack(d) => d.mm(),
        Reach::Overhang(d) => -d.mm(),
    };
    reach - end.gap.mm()
}

fn less(a: P, b: P) -> P {
    (a.0 - b.0, a.1 - b.1)
}

/// A point so far along a direction and so far to its left.
fn from(p: P, d: P, along: f64, left: f64) -> P {
    (p.0 + along * d.0 - left * d.1, p.1 + along * d.1 + left * d.0)
}

/// The sheet of a trim: its legs between their tangent lines, its bends in chords, its hems.
fn metal(trim: &JunctionTrim) -> Body<'_> {
    let profile = &trim.profile;
    let t = profile.thickness.mm();
    let corners: Vec<P> = trim.corners.iter().map(|c| (c.x.mm(), c.z.mm())).collect();
    let mut pieces = Vec::with_capacity(4 * profile.legs.len());
    let is_folded = |i: usize| profile.bends.get(i).is_some_and(|b| b.angle.degrees() >= 180.0);
    // From a corner of the lower face to the tangent line of its bend.
    let back = |i: usize| {
        profile.bends.get(i).map_or(0.0, |b| {
            let r = b.inside_radius.mm();
            let lower = if b.direction == Direction::Up { r + t } else { r };
            if is_folded(i) { r + t } else { lower * num::tan_deg(b.angle.degrees() / 2.0) }
        })
    };
    let last = profile.legs.len().saturating_sub(1);
    let edge = |edge: &Edge| hem(edge, t).map_or(0.0, |(_, r, _)| r + t);
    let mut ended: Option<(P, P)> = None;
    for (i, (leg, pair)) in profile.legs.iter().zip(corners.windows(2)).enumerate() {
        let &[a, b] = pair else { continue };
        let way = less(b, a);
        let length = num::hypot(way.0, way.1);
        let before = i.checked_sub(1);
        // Between two folds a leg lies between the layers of the others, and has no corners of its own.
        if length == 0.0 || before.is_some_and(is_folded) && is_folded(i) {
            ended = None;
            continue;
        }
        let d = (way.0 / length, way.1 / length);
        let (start, end) = (before.map_or_else(|| edge(&profile.start_edge), back), if i == last { edge(&profile.end_edge) } else { back(i) });
        let (from_at, to_at) = (start, length - end);
        if let (Some((_, was)), Some(bend)) = (ended, before.and_then(|b| profile.bends.get(b)))
            && bend.angle.degrees() < 180.0
        {
            bend_pieces(from(a, d, from_at, 0.0), (was, d), (bend.inside_radius.mm(), t), bend.direction, &mut pieces);
        }
        let quad = |along: (f64, f64), left: (f64, f64)| {
            Convex::four([from(a, d, along.0, left.0), from(a, d, along.1, left.0), from(a, d, along.1, left.1), from(a, d, along.0, left.1)])
        };
        let name = Some(&*leg.name);
        if to_at > from_at {
            pieces.push(Piece { convex: quad((from_at, to_at), (0.0, t)), leg: name, is_hem: false });
        }
        for (own, at, way) in [(&profile.start_edge, 0.0, 1.0), (&profile.end_edge, length, -1.0)] {
            let is_there = if way > 0.0 { i == 0 } else { i == last };
            if let (true, Some((width, r, direction))) = (is_there, hem(own, t)) {
                let layer = if direction == Direction::Up { (t + 2.0 * r, 2.0 * (t + r)) } else { (-2.0 * r - t, -2.0 * r) };
                pieces.push(Piece { convex: quad((at + way * (r + t), at + way * width), layer), leg: name, is_hem: true });
            }
        }
        ended = Some((from(a, d, to_at, 0.0), d));
    }
    Body { name: &trim.name, role: Role::Trim, side: None, pieces }
}

/// Width, inside radius and direction of a hem in sheet of this thickness; round ones as the box around them.
fn hem(edge: &Edge, t: f64) -> Option<(f64, f64, Direction)> {
    match edge {
        Edge::Raw => None,
        Edge::ClosedHem { width, direction, .. } => Some((width.mm(), 0.0, *direction)),
        Edge::OpenHem { width, gap, direction, .. } => Some((width.mm(), gap.mm() / 2.0, *direction)),
        Edge::DoubleHem { width, direction, .. } => Some((width.mm(), t / 2.0, *direction)),
        Edge::TeardropHem { inside_radius, return_flat, direction, .. } => Some((inside_radius.mm() + t + return_flat.mm(), inside_radius.mm(), *direction)),
        Edge::WiredEdge { wire, direction, .. } => Some((wire.mm() + 2.0 * t, wire.mm() / 2.0, *direction)),
    }
}

/// A bend that ends at this point of the lower face, from one direction into another, as chords of at most 45 degrees.
fn bend_pieces<'a>(end: P, (before, after): (P, P), (r, t): (f64, f64), direction: Direction, out: &mut Vec<Piece<'a>>) {
    let up = direction == Direction::Up;
    let (lower, upper) = if up { (r + t, r) } else { (-r, -(r + t)) };
    let centre = from(end, after, 0.0, lower);
    let cos = before.0 * after.0 + before.1 * after.1;
    let chords = if cos > 0.71 {
        1
    } else if cos > 0.0 {
        2
    } else {
        4
    };
    let mut directions = vec![before, after];
    let mut count = 1;
    while count < chords {
        // Halfway between two directions.
        directions = directions
            .windows(2)
            .flat_map(|w| {
                let &[a, b] = w else { return Vec::new() };
                let (x, y) = (a.0 + b.0, a.1 + b.1);
                let n = num::hypot(x, y);
                vec![a, if n > 0.0 { (x / n, y / n) } else { b }]
            })
            .chain([after])
            .collect();
        count *= 2;
    }
    for w in directions.windows(2) {
        let &[a, b] = w else { continue };
        let on = |d: P, radius: f64| from(centre, d, 0.0, -radius);
        out.push(Piece { convex: Convex::four([on(a, lower), on(b, lower), on(b, upper), on(a, upper)]), leg: None, is_hem: false });
    }
}

/// Whether two bodies may run into each other at all.
fn is_pair(a: &Body<'_>, b: &Body<'_>) -> bool {
    use Role::{Closure, End, Seam, Solid, Trim};
    let same_side = a.side == b.side;
    match (a.role, b.role) {
        (Solid, Solid) => false,
        (Trim, _) | (_, Trim) => true,
        // On its own side each stands where its levels put it; closures stand between seams, and behind the turned-up pan by their margin.
        (Solid | Closure | End | Seam, Solid | Closure | End | Seam) => !same_side,
    }
}

/// Whether this piece of a trim is meant to go through such a body.
fn goes_through(trim: &str, leg: Option<&str>, other: Role, across: bool) -> bool {
    match other {
        // A bend is rounder than the edge of what it goes around.
        Role::Solid => leg.is_none() || (trim == "counterflashing" && leg == Some("tongue")),
        Role::Seam => !across && leg.is_none_or(|l| l.ends_with("drip")),
        _ => false,
    }
}

/// The input behind a part, and what to give instead.
fn input(body: &Body<'_>, is_hem: bool, decks: &[Deck<'_>]) -> (String, &'static str) {
    let deck = decks.iter().find(|d| Some(d.side) == body.side);
    let own = |(path, cure): (&'static str, &'static str)| (path.to_owned(), cure);
    match (body.role, deck) {
        (Role::Closure | Role::End | Role::Seam, Some(Deck { panels: Panels::Turned(_), input: (path, _), .. })) if is_hem => {
            (format!("{path}.drip.hem"), "a raw edge, an edge turned down, or thicker tape")
        }
        (Role::Closure, Some(Deck { input: (path, _), .. })) => (format!("{path}.closure.set_back"), "a greater set-back"),
        (Role::End | Role::Seam, Some(Deck { panels: Panels::Turned(_), input: (path, cure), .. })) => (format!("{path}.hold_back"), cure),
        (Role::End | Role::Seam, Some(deck)) => own(deck.input),
        _ => own(match body.name {
            "rake Z" | "rake cleat" | "rake trim" => ("detail.inner.cover", "a greater cover, or a narrower hem"),
            "Z" => ("detail.flange.on-z.cover", "a greater cover"),
            "counterflashing" => ("detail.wall.cover.reglet.above_leg", "a higher reglet"),
            "continuous cleat" => ("detail.face.hem.hooked", "a cleat that fits its trim"),
            "continuous cleat, roof side" => ("detail.roof_side.hold.cleat", "a cleat that fits its trim"),
            "continuous cleat, outside" => ("detail.outside.hold.cleat", "a cleat that fits its trim"),
            "joint cap" | "joint cleat, fixed side" | "joint cleat, sliding side" => ("detail.cleat_room", "more room, or a higher curb"),
            "lower flashing" => ("detail.lower", "other dimensions"),
            "eave trim" if decks.len() > 1 => ("detail.upper.face", "a face that stays off what is below it, or a higher riser"),
            "coping" => ("detail", "a narrower hem, a drip that stands farther out, or less kick"),
            "hook strip" => ("detail.panel.overhang", "a shorter overhang, or a deeper face"),
            _ => ("detail", "other dimensions"),
        }),
    }
}

/// What stands beside a deck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Beside {
    Nothing,
    /// A wall, which rises plumb.
    Wall,
    /// Two curbs so far apart, so wide and so high over level decks.
    Curbs {
        gap: Length,
        width: Length,
        height: Length,
    },
    /// A riser so high between two decks.
    Riser {
        height: Length,
    },
    /// The top of a wall so thick, its upper edge on the line, which rises toward it at this angle.
    WallTop {
        thickness: Length,
        rise: Angle,
    },
    /// A fascia or the outer face of a wall, which goes down from the line at this angle. Where it ends is not known.
    Face(Angle),
}

/// Refuses a section in which one part runs into another: the decks with their panels, and what stands beside them.
pub(super) fn check(solved: &Solved, decks: &[Deck<'_>], beside: Beside) -> Result<Vec<Caution>, Error> {
    let mut bodies = Vec::with_capacity(16);
    let solid = |name, rise| whole(name, Role::Solid, Some(Side::Second), vec![Line::at(rise).solid(0.0, (0.0, 2.0 * SEEN))]);
    match beside {
        Beside::Nothing => {}
        Beside::Wall => bodies.push(solid("wall", Angle::SQUARE)),
        Beside::Curbs { gap, width, height } => {
            let (level, near) = (Line::at(Angle::ZERO), gap.mm() / 2.0);
            let blocks = [-1.0, 1.0].map(|way| level.block((way * near, way * (near + width.mm())), (0.0, height.mm())));
            bodies.push(whole("curb", Role::Solid, None, blocks.to_vec()));
        }
        Beside::Riser { height } => {
            bodies.push(whole("riser", Role::Solid, None, vec![Line::at(Angle::ZERO).block((0.0, SOLID), (0.0, height.mm()))]));
        }
        Beside::WallTop { thickness, rise } => {
            let (t, low) = (thickness.mm(), -SEEN);
            let block = Convex::four([(0.0, 0.0), (-t, -t * rise.sin() / rise.cos()), (-t, low), (0.0, low)]);
            bodies.push(whole("wall", Role::Solid, Some(Side::Second), vec![block]));
        }
        Beside::Face(rise) => bodies.push(solid(FACE, rise)),
    }
    let mut cautions = Vec::new();
    decks.iter().for_each(|d| d.bodies(solved, &mut bodies));
    bodies.extend(solved.trims.iter().map(metal));
    let across = decks.iter().any(|d| matches!(d.panels, Panels::Across { .. }));
    let gives = practice::SHEET_GIVES.mm();
    let spans: Vec<Span> = bodies.iter().map(|b| b.pieces.iter().fold(Span::EMPTY, |s, p| s.and(p.convex.span()))).collect();
    for (j, (b, span)) in bodies.iter().zip(&spans).enumerate() {
        for (a, other) in bodies.iter().zip(&spans).take(j).filter(|(a, s)| is_pair(a, b) && !s.is_far(span, -gives)) {
            // What may not go through, and lies near the other body at all.
            let near = |own: &'_ Body<'_>, piece: &Piece<'_>, role: Role, span: &Span| {
                !piece.convex.span().is_far(span, -gives) && (own.role != Role::Trim || !goes_through(own.name, piece.leg, role, across))
            };
            let one: Vec<&Convex> = a.pieces.iter().filter(|p| near(a, p, b.role, span)).map(|p| &p.convex).collect();
            let two = b.pieces.iter().filter(|p| near(b, p, a.role, other)).map(|p| &p.convex);
            let Some((depth, piece)) = deepest(one.iter().copied(), two, gives).filter(|(depth, _)| *depth > gives) else { continue };
            let depth = Length::from_mm(depth)?;
            if a.name == FACE && b.role == Role::Trim {
                cautions.push(Caution::new(RUNS_INTO_FACE, "detail.face", Source::geometry()).arg("part", b.name).arg("depth", depth));
                continue;
            }
            let at = piece.centre();
            // What can be moved is named: the panels and closures before the metal, the metal before what it stands on.
            let mover = if a.role == Role::Solid || (a.role == Role::Trim && b.role != Role::Solid) { b } else { a };
            let is_hem = b.pieces.iter().any(|p| p.is_hem && core::ptr::eq(&raw const p.convex, piece));
            let (path, cure) = input(mover, is_hem, decks);
            let message = format!("{} and {} run into each other by {depth}", a.name, b.name);
            let place = format!("{} level and {} up from the line", Length::from_mm(at.0)?, Length::from_mm(at.1)?);
            return Err(Error::new(ErrorKind::Impossible, message).at(path).value_of(place).accepts(format!("{depth} more room")).cured_by(cure));
        }
    }
    Ok(cautions)
}

impl Solved {
    /// Every two of its trims that touch, by their numbers: metal on metal, with neither tape nor air between.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// use seamwright::record::Calculation;
    /// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
    /// let eave = &packet.junction("eave 1").expect("the demo has eaves").section;
    /// let names = |(a, b): (usize, usize)| (eave.trims[a].name.to_string(), eave.trims[b].name.to_string());
    /// assert!(eave.touching().into_iter().map(names).any(|n| n == ("eave trim".into(), "hook strip".into())));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn touching(&self) -> Vec<(usize, usize)> {
        let bodies: Vec<Body<'_>> = self.trims.iter().map(metal).collect();
        let mut out = Vec::new();
        for (j, b) in bodies.iter().enumerate() {
            for (i, a) in bodies.iter().enumerate().take(j) {
                if deepest(a.pieces.iter().map(|p| &p.convex), b.pieces.iter().map(|p| &p.convex), -TOUCH).is_some() {
                    out.push((i, j));
                }
            }
        }
        out
    }
}

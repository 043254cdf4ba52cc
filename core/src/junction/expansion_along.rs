//! The expansion joint along the panels: two curbs with a gap between them, the panels' edges turned up against them, and a cap that is riveted to the one
//! and slides on the other.
//!
//! The section is square to the joint, which runs with the slope: both decks are level in it. The junction line is the middle of the gap at deck level, and
//! distances from it are positive away from it on either side. [`Side::First`] is the side to which the cap is fixed; it slides on [`Side::Second`].

use super::draft::{FastenerRow, TrimSheet, Walk, keep_under, leg, refuse_short};
use super::drip::FacePlace;
use super::expansion_moves::JointMoves;
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::Levels;
use super::parts::{Adjoining, Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::support::SectionPoint;
use crate::error::{Error, Faults};
use crate::movement::HeatRange;
use crate::panel::{Hold, PanelEnd};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::{Angle, Length};

/// What is chosen at an expansion joint along the panels. Heights are above the decks.
///
/// ```
/// use seamwright::junction::{ExpansionAlongDetail, FastenerRow, TrimSheet, LeastRule};
/// use seamwright::practice::movement as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = ExpansionAlongDetail {
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     gap: inch("1\"")?,
///     clearance: practice::CLEARANCE,
///     curb_width: inch("1 1/2\"")?,
///     curb_height: inch("9\"")?,
///     edge_room: inch("1/8\"")?,
///     turn_up: inch("8\"")?,
///     upstand: LeastRule::UFC_UPSTAND,
///     cleat_room: inch("1/8\"")?,
///     cleat_fasteners: row.clone(),
///     fasteners_from_edge: inch("3/4\"")?,
///     drop: inch("5\"")?,
///     lap: LeastRule::LAP_OVER_LEG,
///     hook: inch("1 1/2\"")?,
///     engagement: practice::ENGAGEMENT,
///     play: inch("1/16\"")?,
///     rivets: row,
/// };
/// assert!(detail.turn_up > detail.upstand.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExpansionAlongDetail {
    /// The sheet of the cap and of its cleats.
    pub sheet: TrimSheet,
    /// Between the curbs, when laid.
    pub gap: Length,
    /// What of the gap, and between the cap's parts, must stay at the worst of the year; in a job file
    /// [`CLEARANCE`](crate::practice::movement::CLEARANCE) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::clearance"))]
    pub clearance: Length,
    /// Width of each curb.
    pub curb_width: Length,
    /// Height of each curb.
    pub curb_height: Length,
    /// From a curb's outer face to the turned-up edge of the panel.
    pub edge_room: Length,
    /// How high the panels' edges are turned up above the pan.
    pub turn_up: Length,
    /// How high they must be.
    pub upstand: LeastRule,
    /// From the turned-up edge to the cleat's leg.
    pub cleat_room: Length,
    /// The cleats' fasteners, down into the top of the curb.
    pub cleat_fasteners: FastenerRow,
    /// From the cleat's edge over the gap to them.
    pub fasteners_from_edge: Length,
    /// From the curb's top down to the foot of the cleats' legs.
    pub drop: Length,
    /// How far the cap must come down over the turned-up edges.
    pub lap: LeastRule,
    /// How far the sliding side's cleat reaches out from its leg, for the cap's return to slide on.
    pub hook: Length,
    /// How much of cleat and return must stay engaged; in a job file [`ENGAGEMENT`](crate::practice::movement::ENGAGEMENT) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::engagement"))]
    pub engagement: Length,
    /// Between the cleat's hook and the return under it.
    pub play: Length,
    /// Rivets through the cap's leg and its cleat's on the fixed side.
    pub rivets: FastenerRow,
}

impl ExpansionAlongDetail {
    /// From the junction line to the turned-up edge of the panels on either side: half the gap, the curb, and the room beside it.
    pub(crate) fn panel_edge(&self) -> Result<Length, Error> {
        (self.gap.station(1, 2)? + self.curb_width + self.edge_room).length()
    }
}

/// The roof on one side of an expansion joint along the panels.
///
/// ```
/// use seamwright::junction::{JointSide, Levels};
/// use seamwright::units::Length;
/// let side = JointSide { levels: Levels::default(), to_fixed: Length::feet(60), first_seam: Length::inches(12) };
/// assert!(side.to_fixed > side.first_seam);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointSide {
    /// The layers on its deck.
    pub levels: Levels,
    /// From the joint across the roof to where it is held: what moves at the joint.
    pub to_fixed: Length,
    /// From the turned-up edge to the nearest seam.
    pub first_seam: Length,
}

/// An expansion joint along the panels as asked for.
///
/// With `k` what closes from the laying temperature to the hottest and `o` what opens to the coldest, both sides together: the gap must be `clearance + k`
/// at the least; the cap's leg stands `hook + clearance + o` off the sliding cleat's leg, so that it does not bind in the cold; and of hook and return
/// `hook - sheet - clearance - o - k` stays engaged in the heat.
///
/// # Errors
/// Computing refuses a gap too narrow and a hook too short for the movement, edges turned up too low, a curb lower than they are, a cap that covers
/// them too little or comes onto a seam; each with by how much and the cure.
///
/// ```
/// use seamwright::junction::{ExpansionAlong, ExpansionAlongDetail, FastenerRow, JointSide, Levels, TrimSheet, LeastRule};
/// use seamwright::movement::HeatRange;
/// use seamwright::practice::movement as practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Expansion, Length, Temperature};
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let levels = Levels { pan: Length::mils(24), seam_height: inch("1 3/4\"")?, ..Levels::default() };
/// let side = JointSide { levels, to_fixed: Length::feet(50), first_seam: Length::inches(12) };
/// let joint = ExpansionAlong {
///     first: side,
///     second: side,
///     range: HeatRange {
///         expansion: Expansion::parse("12e-6 /K")?,
///         coldest: Temperature::parse("-20 degC")?,
///         laid: Temperature::parse("20 degC")?,
///         hottest: Temperature::parse("70 degC")?,
///     },
///     detail: ExpansionAlongDetail {
///         sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///         gap: inch("1\"")?,
///         clearance: practice::CLEARANCE,
///         curb_width: inch("1 1/2\"")?,
///         curb_height: inch("9\"")?,
///         edge_room: inch("1/8\"")?,
///         turn_up: inch("8\"")?,
///         upstand: LeastRule::UFC_UPSTAND,
///         cleat_room: inch("1/8\"")?,
///         cleat_fasteners: row.clone(),
///         fasteners_from_edge: inch("3/4\"")?,
///         drop: inch("5\"")?,
///         lap: LeastRule::LAP_OVER_LEG,
///         hook: inch("2\"")?,
///         engagement: practice::ENGAGEMENT,
///         play: inch("1/16\"")?,
///         rivets: row,
///     },
/// };
/// let solved = joint.compute()?;
/// assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["joint cleat, fixed side", "joint cleat, sliding side", "joint cap"]);
/// // 100 ft of steel grow by 18.288 mm in 50 K: with 1/8 in left, 21.463 mm.
/// assert_eq!(joint.wanted_gap()?, Length::parse("21.463 mm")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExpansionAlong {
    /// The side to which the cap is fixed.
    pub first: JointSide,
    /// The side on which it slides.
    pub second: JointSide,
    /// The temperatures of the roof.
    pub range: HeatRange,
    /// What is chosen.
    pub detail: ExpansionAlongDetail,
}

/// What its cap is called.
pub(super) const JOINT_CAP: &str = "joint cap";

const CLEATS: (&str, &str) = ("joint cleat, fixed side", "joint cleat, sliding side");

/// From the middle of the gap outward: a curb's faces, the turned-up edge, the cleat's leg.
struct Places {
    inner: Length,
    outer: Length,
    edge: Length,
    cleat: Length,
}

impl ExpansionAlong {
    /// What moves at the joint.
    fn moves<R: Recorder>(&self, r: &mut R) -> Result<JointMoves, Error> {
        JointMoves::of(&self.range, (self.first.to_fixed + self.second.to_fixed).length()?, r)
    }

    /// The least gap between the curbs at the laying temperature.
    ///
    /// # Errors
    /// Temperatures out of order, a negative length, [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range.
    pub fn wanted_gap(&self) -> Result<Length, Error> {
        self.range.check().map_err(|e| e.under("range"))?;
        (self.detail.clearance + self.moves(&mut crate::record::Off)?.closes).length()
    }

    fn sides(&self) -> [(Side, &'static str, &JointSide); 2] {
        [(Side::First, "first", &self.first), (Side::Second, "second", &self.second)]
    }

    fn check(&self) -> Result<(), Error> {
        let (d, mut faults) = (&self.detail, Faults::default());
        for (_, path, side) in self.sides() {
            for (layer, height) in side.levels.layers() {
                faults.keep(height.not_negative(&format!("{path}.levels.{layer}")));
            }
            faults.keep(side.to_fixed.not_negative(&format!("{path}.to_fixed")));
            faults.keep(side.first_seam.positive(&format!("{path}.first_seam")));
        }
        keep_under(&mut faults, "range", self.range.check());
        keep_under(&mut faults, "detail.sheet", d.sheet.check());
        keep_under(&mut faults, "detail.cleat_fasteners", d.cleat_fasteners.check());
        keep_under(&mut faults, "detail.rivets", d.rivets.check());
        for (path, length) in [
            ("detail.gap", d.gap),
            ("detail.curb_width", d.curb_width),
            ("detail.curb_height", d.curb_height),
            ("detail.turn_up", d.turn_up),
            ("detail.drop", d.drop),
            ("detail.hook", d.hook),
        ] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("detail.clearance", d.clearance),
            ("detail.edge_room", d.edge_room),
            ("detail.upstand.least", d.upstand.least),
            ("detail.cleat_room", d.cleat_room),
            ("detail.fasteners_from_edge", d.fasteners_from_edge),
            ("detail.lap.least", d.lap.least),
            ("detail.engagement", d.engagement),
            ("detail.play", d.play),
        ] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }

    fn places(&self, side: &JointSide) -> Result<Places, Error> {
        let d = &self.detail;
        let inner = d.gap.station(1, 2)?;
        let outer = (inner + d.curb_width).length()?;
        let edge = d.panel_edge()?;
        // The edge stands on its pan's sheet.
        Ok(Places { inner, outer, edge, cleat: (edge + side.levels.pan + d.cleat_room).length()? })
    }

    /// The movement against gap and hook, the heights of each side's edge and of what covers it.
    fn check_fit<R: Recorder>(&self, r: &mut R, moves: &JointMoves) -> Result<(), Error> {
        let (d, mut faults) = (&self.detail, Faults::default());
        let wanted = (d.clearance + moves.closes).length()?;
        r.step(|| {
            let step = Step::new("least gap when laid").formula("clearance + what closes").with("clearance", d.clearance).with("what closes", moves.closes);
            step.gives(wanted).source(Source::geometry())
        });
        let cure = "a wider gap, or joints nearer to each other";
        refuse_short(&mut faults, "detail.gap", "the gap closes in the heat", wanted - d.gap, d.gap, cure)?;
        let engaged = (d.hook - d.sheet.thickness - d.clearance - moves.opens - moves.closes).length()?;
        r.step(|| {
            let step = Step::new("engaged in the heat").formula("hook - sheet - clearance - what opens - what closes").with("hook", d.hook);
            step.with("sheet", d.sheet.thickness)
                .with("clearance", d.clearance)
                .with("what opens", moves.opens)
                .with("what closes", moves.closes)
                .gives(engaged)
                .source(Source::geometry())
        });
        let (what, cure) = ("the cap comes off its cleat in the heat: it is engaged too little", "a longer hook, or joints nearer to each other");
        refuse_short(&mut faults, "detail.hook", what, d.engagement - engaged, d.hook, cure)?;
        let wide = d.fasteners_from_edge - d.curb_width;
        refuse_short(&mut faults, "detail.fasteners_from_edge", "the cleat's fasteners miss the curb", wide, d.fasteners_from_edge, "a wider curb")?;
        for (_, path, side) in self.sides() {
            let pan = side.levels.pan_face()?;
            let more = (d.upstand.least - d.turn_up).length()?;
            d.upstand.check(&mut faults, "detail.turn_up", d.turn_up, d.turn_up, format!("an edge turned up higher by {more}"))?;
            let seam = side.levels.seam_height - d.turn_up;
            refuse_short(&mut faults, "detail.turn_up", "the turned-up edge is lower than the seams", seam, d.turn_up, "an edge turned up higher")?;
            let high = pan + d.turn_up - d.curb_height;
            refuse_short(&mut faults, "detail.curb_height", "the turned-up edge stands over its curb", high, d.curb_height, "a higher curb")?;
            let lap = (pan + d.turn_up - d.curb_height + d.drop).length()?;
            r.step(|| {
                let step = Step::new(format!("lap of the cap over the turned-up edge, {path} side")).formula("pan + turn-up - curb + drop").with("pan", pan);
                step.with("turn-up", d.turn_up).with("curb", d.curb_height).with("drop", d.drop).gives(lap).source(d.lap.source.clone())
            });
            let more = (d.lap.least - lap).length()?;
            d.lap.check(&mut faults, "detail.drop", lap, d.drop, format!("a drop greater by {more}"))?;
            let low = pan + side.levels.seam_height + d.drop + d.play + d.sheet.thickness - d.curb_height;
            let cure = "a smaller drop, or a higher curb";
            refuse_short(&mut faults, "detail.drop", "the cap reaches below the seam tops", low, d.drop, cure)?;
        }
        faults.check()
    }

    /// A cleat on the side of positive x: over the curb's top, down before the turned-up edge, and out to its hook where it has one.
    fn cleat(&self, name: &'static str, places: &Places, has_hook: bool) -> Result<JunctionTrim, Error> {
        let d = &self.detail;
        let (top, foot) = (d.curb_height, (d.curb_height - d.drop).length()?);
        let at = |x: Length, z: Length| SectionPoint { x, z };
        let mut legs = vec![leg("top", at(places.cleat, top)), leg("leg", at(places.cleat, foot)).bent(Angle::SQUARE)];
        if has_hook {
            legs.push(leg("hook", at((places.cleat + d.hook).length()?, foot)).bent(Angle::SQUARE));
        }
        Walk { name, sheet: d.sheet, start: at(places.inner, top), legs: &legs, start_edge: Edge::Raw, end_edge: Edge::Raw, painted: Face::Upper }.lay()
    }
}

impl Calculation for ExpansionAlong {
    type Out = Solved;

    fn title(&self) -> String {
        "expansion joint along the panels".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.solve(r).map(|(solved, _)| solved)
    }
}

impl ExpansionAlong {
    /// The section, and what moves at the joint.
    pub(crate) fn solve<R: Recorder>(&self, r: &mut R) -> Result<(Solved, JointMoves), Error> {
        self.check()?;
        let d = &self.detail;
        let moves = self.moves(r)?;
        self.check_fit(r, &moves)?;
        let t = d.sheet.thickness;
        let (one, two) = (self.places(&self.first)?, self.places(&self.second)?);
        let mut solved = Solved::default();
        solved.adjoining.push(Adjoining::JointCurbs { gap: d.gap, width: d.curb_width, height: d.curb_height });
        let other = FacePlace { origin: SectionPoint { x: Length::ZERO, z: Length::ZERO }, is_mirrored: true };
        solved.trims.push(other.trim(self.cleat(CLEATS.0, &one, false)?)?);
        solved.trims.push(self.cleat(CLEATS.1, &two, true)?);

        let off = (d.hook + d.clearance + moves.opens).length()?;
        r.step(|| {
            let step = Step::new("cap's leg off the sliding cleat's").formula("hook + clearance + what opens").with("hook", d.hook);
            step.with("clearance", d.clearance).with("what opens", moves.opens).gives(off).source(Source::geometry())
        });
        let (near, far) = ((-(one.cleat + t)).length()?, (two.cleat + off).length()?);
        let top = (d.curb_height + t).length()?;
        let foot = (d.curb_height - d.drop).length()?;
        let under = (foot - d.play).length()?;
        let at = |x: Length, z: Length| SectionPoint { x, z };
        let back = (far - d.hook + t).length()?;
        solved.trims.push(
            Walk {
                name: JOINT_CAP,
                sheet: d.sheet,
                start: at(near, foot),
                legs: &[
                    leg("fixed leg", at(near, top)),
                    leg("top", at(far, top)).bent(Angle::SQUARE),
                    leg("sliding leg", at(far, under)).bent(Angle::SQUARE),
                    leg("return", at(back, under)).bent(Angle::SQUARE),
                ],
                start_edge: Edge::Raw,
                end_edge: Edge::Raw,
                painted: Face::Upper,
            }
            .lay()?,
        );
        for ((side, _, _), places, name) in self.sides().into_iter().zip([&one, &two]).zip([CLEATS.0, CLEATS.1]).map(|((s, p), n)| (s, p, n)) {
            let row = "cleat fasteners";
            let at = (places.inner + d.fasteners_from_edge).length()?;
            solved.lines.push(LayoutLine::from_junction("curb, face to the gap", side, places.inner.into())?);
            solved.lines.push(LayoutLine::from_junction("curb, outer face", side, places.outer.into())?);
            solved.lines.push(LayoutLine::from_junction("panel edge", side, places.edge.into())?);
            solved.lines.push(LayoutLine::from_line(row, side, "curb, face to the gap", places.inner, d.fasteners_from_edge.into())?);
            solved.along.push(AlongLine { name: name.into(), side, what: Along::ContinuousCleat, from_line: places.cleat });
            solved.along.push(d.cleat_fasteners.line(row, side, Bites::Structure, at));
            let end = PanelEnd::hold_back(places.edge).with_turn_up(d.turn_up).holding(Hold::Slides);
            solved.ends.push(SideEnd { side, end });
        }
        solved.along.push(d.rivets.line("rivets of the fixed leg", Side::First, Bites::Trim, (one.cleat + t).length()?));
        let cure = ("detail.hook", "a shorter hook, or a seam farther from the joint");
        let deck = |side: &'_ JointSide| (d.turn_up, side.first_seam);
        let start = one.inner;
        fit::check(
            &solved,
            &[
                Deck::across(&self.first.levels, deck(&self.first), cure).beginning(start),
                Deck::across(&self.second.levels, deck(&self.second), cure).on(Side::Second).beginning(start),
            ],
            Beside::Curbs { gap: d.gap, width: d.curb_width, height: d.curb_height },
        )?;
        Ok((solved, moves))
    }
}

//! The kick-out: the piece at the foot of a wall's flashing, where an eave dies into the wall, that turns the water off the wall.

use super::draft::{TrimSheet, keep_under};
use super::least::LeastRule;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::pitch::Pitch;
use crate::practice::junction as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::{BlankBend, BlankEdge, BlankFold, BlankLine, BlankSide, Direction, FlatBlank, Part, Point};
use crate::units::{Angle, BendAngle, Length};
use std::borrow::Cow;

/// On which hand the wall stands, for one who looks up the slope.
///
/// ```
/// use seamwright::junction::WallHand;
/// assert_eq!(WallHand::default(), WallHand::Right); // as a sidewall's section is drawn
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WallHand {
    /// On the left.
    Left,
    /// On the right.
    #[default]
    Right,
}

impl WallHand {
    /// The word for it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            WallHand::Left => "left",
            WallHand::Right => "right",
        }
    }
}

/// What is chosen of a kick-out.
///
/// In a job file `past_eave` is [`KICK_OUT_PAST_EAVE`](crate::practice::junction::KICK_OUT_PAST_EAVE), `lap` [`TRIM_LAP`](crate::practice::assembly::TRIM_LAP), `tab`
/// [`KICK_OUT_TAB`](crate::practice::junction::KICK_OUT_TAB), `least_throw` [`LeastRule::KICK_OUT_THROW`] and `least_lap` [`LeastRule::UFGS_UNSOLDERED`] unless given.
///
/// ```
/// use seamwright::junction::KickOutDetail;
/// use seamwright::units::Length;
/// let detail = KickOutDetail::thrown(Length::inches(4));
/// assert!(detail.throw >= detail.least_throw.least && detail.lap > detail.least_lap.least);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KickOutDetail {
    /// How far from the wall its outer end stands, square to the wall.
    pub throw: Length,
    /// How far it must.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::kick_out_throw"))]
    pub least_throw: LeastRule,
    /// How far past the turn, which stands at the panels' lower ends, the outer end stands: level, along the wall. Between a gutter's back and its lip.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::kick_out_past_eave"))]
    pub past_eave: Length,
    /// How far it reaches up under the wall flashing, along the slope, where that is least: at the leg's top.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::trim_lap"))]
    pub lap: Length,
    /// How far it must.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::flange_over_panels"))]
    pub least_lap: LeastRule,
    /// Width of the tab of the apron that is lapped under the flange, riveted and sealed; nothing where the two edges only meet and are sealed.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::kick_out_tab"))]
    pub tab: Length,
}

impl KickOutDetail {
    /// Thrown so far from the wall, all else by common practice.
    #[must_use]
    pub const fn thrown(throw: Length) -> KickOutDetail {
        KickOutDetail {
            throw,
            least_throw: LeastRule::KICK_OUT_THROW,
            past_eave: practice::KICK_OUT_PAST_EAVE,
            lap: crate::practice::assembly::TRIM_LAP,
            least_lap: LeastRule::UFGS_UNSOLDERED,
            tab: practice::KICK_OUT_TAB,
        }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.throw.positive("throw"));
        faults.keep(self.past_eave.positive("past_eave"));
        faults.keep(self.lap.positive("lap"));
        for (path, length) in [("least_throw.least", self.least_throw.least), ("least_lap.least", self.least_lap.least), ("tab", self.tab)] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }
}

/// A kick-out: an angle along the wall, a flange on the roof and a leg up the wall, whose lower end is turned off the wall in one piece of sheet.
///
/// At the **turn**, at the panels' lower ends, the leg is bent along a plumb line, so that what lies beyond it stands plumb and runs out from the wall; on the leg in the flat
/// that line leans up the slope, from square to the fold, by the roof's own slope. Below the turned leg goes on what was the flange: the **apron**, which falls more steeply
/// than the roof, its lower edge level and parallel with the eave. Between the flange and the apron a V is cut out, with its point at the turn; folded, its two sides close
/// on the level line square to the wall. A tab of the apron lies under the flange there, so that the upper laps over the lower.
///
/// Three folds, the turn and the V meet in one point, so that all follows from the slope S and the turn T = atan(throw / past the eave) alone:
/// sin V = sin T cos S; the apron is bent to the turned leg by 90 degrees and atan(tan T sin S) more, falls by tan S / cos T, and its tab is bent by what that is steeper
/// than the roof. The source is geometry; the blank's bends are sharp, its widths nominal sums.
///
/// # Errors
/// Computing refuses lengths of zero or less, a throw or a lap under its rule, and a tab wider than the V leaves room for ([`ErrorKind::Impossible`]).
///
/// ```
/// use seamwright::junction::{KickOut, KickOutDetail, TrimSheet, WallHand};
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let kick_out = KickOut {
///     pitch: Pitch::FLAT,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     flange: Length::inches(4),
///     leg: Length::inches(8),
///     wall: WallHand::Right,
///     detail: KickOutDetail { past_eave: Length::inches(4), ..KickOutDetail::thrown(Length::inches(4)) },
/// };
/// let made = kick_out.compute()?;
/// // On a level roof the V is the turn itself, and the apron is bent to the leg as the flange is.
/// assert!((made.notch.degrees() - 45.0).abs() < 1e-9 && (made.turn.degrees() - 45.0).abs() < 1e-9);
/// assert!((made.apron_bend.degrees() - 90.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KickOut {
    /// The roof's pitch along the wall.
    pub pitch: Pitch,
    /// Its sheet.
    pub sheet: TrimSheet,
    /// Width of its flange on the roof, from the fold.
    pub flange: Length,
    /// Height of its leg up the wall, from the fold and square to the slope.
    pub leg: Length,
    /// On which hand the wall stands.
    #[cfg_attr(feature = "serde", serde(default))]
    pub wall: WallHand,
    /// What is chosen.
    pub detail: KickOutDetail,
}

/// A corner of a kick-out, in the flat and folded.
///
/// See [`KickOutPiece`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KickOutCorner {
    /// What it is.
    pub name: Cow<'static, str>,
    /// On the blank.
    pub flat: Point,
    /// Folded: out from the wall, level, over the roof; the wall flashing's own leg is at nothing.
    pub from_wall: Length,
    /// Down the slope along the wall, level, from the turn: past the eave.
    pub past_turn: Length,
    /// Plumb, up from the turn at the fold.
    pub up: Length,
}

/// A kick-out as the shop makes it.
///
/// ```
/// use seamwright::junction::{KickOut, KickOutDetail, TrimSheet, WallHand};
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Length, LengthUnit};
/// let kick_out = KickOut {
///     pitch: Pitch::parse("4:12")?,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     flange: Length::parse("3 1/2\"")?,
///     leg: Length::inches(8),
///     wall: WallHand::Right,
///     detail: KickOutDetail::thrown(Length::inches(4)),
/// };
/// let made = kick_out.compute()?;
/// let end = made.corners.iter().find(|c| c.name == "outer end, at the fold").expect("it has an outer end");
/// // 4 in out and 3 in past the eave; down by what the roof falls in the 5 in between: 4 in 12.
/// let near = |l: Length, inches: f64| (l.get(LengthUnit::Millimetre) / 25.4 - inches).abs() < 1e-9;
/// assert!(near(end.from_wall, 4.0) && near(end.past_turn, 3.0) && near(end.up, -5.0 / 3.0));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KickOutPiece {
    /// What was asked.
    pub asked: KickOut,
    /// How far the leg is turned off the wall, in plan.
    pub turn: Angle,
    /// The V cut out of the flange.
    pub notch: Angle,
    /// How far the line of the turn leans up the slope, on the leg, from square to the fold.
    pub lean: Angle,
    /// How far the apron is bent to the turned leg, from flat.
    pub apron_bend: Angle,
    /// How far the tab is bent to the apron, from flat.
    pub tab_bend: Angle,
    /// How far the apron falls from level, down the slope.
    pub apron_fall: Angle,
    /// Along the fold, from the turn up to the upper end.
    pub upper: Length,
    /// Along the fold, from the turn out to the outer end.
    pub turned: Length,
    /// How far that end lies below the turn.
    pub drop: Length,
    /// The blank, x across from the flange's edge; y up the slope where the wall is on the right, down it where it is on the left.
    pub blank: FlatBlank,
    /// Its corners, in the flat and folded.
    pub corners: Vec<KickOutCorner>,
}

/// The angles of a kick-out as sines and cosines.
struct Shape {
    /// Of the roof's slope.
    slope: (f64, f64),
    /// Of the turn.
    turn: (f64, f64),
    /// Of the V.
    notch: (f64, f64),
}

type P2 = (f64, f64);
type P3 = [f64; 3];

/// A corner before it is rounded: its name, where it lies flat and folded.
struct Corner(&'static str, P2, P3);

impl KickOut {
    fn shape(&self) -> Shape {
        let (throw, past) = (self.detail.throw.mm(), self.detail.past_eave.mm());
        let reach = num::hypot(throw, past);
        let s = self.pitch.angle();
        let (slope, turn) = ((s.sin(), s.cos()), (throw / reach, past / reach));
        let notch = turn.0 * slope.1;
        Shape { slope, turn, notch: (notch, ((1.0 - notch) * (1.0 + notch)).sqrt()) }
    }

    fn check<R: Recorder>(&self, r: &mut R) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        faults.keep(self.flange.positive("flange"));
        faults.keep(self.leg.positive("leg"));
        keep_under(&mut faults, "detail", self.detail.check());
        faults.check()?;
        let (d, mut faults) = (&self.detail, Faults::default());
        for (path, rule, have, cure) in
            [("detail.throw", &d.least_throw, d.throw, "thrown farther by"), ("detail.lap", &d.least_lap, d.lap, "reaching farther up by")]
        {
            r.step(|| Step::new(rule.what.to_string()).with("least", rule.least).gives(have).source(rule.source.clone()));
            let more = (rule.least - have).length()?;
            rule.check(&mut faults, path, have, have, format!("a kick-out {cure} {more}"))?;
        }
        // Beside the cut on both sides, the tab stays within the V at the flange's edge.
        let (sin, cos) = self.shape().notch;
        let room = (self.flange.mm() * sin - practice::SNIPS_CLEARANCE.mm()) / cos;
        if d.tab.is_positive() && d.tab.mm() >= room {
            let error = Error::new(ErrorKind::Impossible, "the tab is wider than the notch beside it").at("detail.tab").value_of(d.tab);
            let room = Length::from_mm(room.max(0.0))?;
            faults.add(error.accepts(format!("less than {room}")).cured_by("a narrower tab, a wider flange, or a greater throw"));
        }
        faults.check()
    }

    /// The corners around, from the flange's edge at the upper end; the blank's lowest point is at y = 0 and the turn at this height.
    fn corners(&self, shape: &Shape) -> (f64, Vec<Corner>) {
        let ((ss, cs), (st, ct), (sn, cn)) = (shape.slope, shape.turn, shape.notch);
        let (f, leg, tab) = (self.flange.mm(), self.leg.mm(), self.detail.tab.mm());
        let rise = leg * ss / cs;
        let upper = self.detail.lap.mm() + rise;
        let turned = num::hypot(self.detail.throw.mm(), self.detail.past_eave.mm()) / cs;
        let turn_at = turned + f * sn;
        // In space: out from the wall, down along it, up. On the roof the flange goes out level, the fold down the slope.
        let up_slope = |by: f64| [0.0, -by * cs, by * ss];
        let end = [turned * st * cs, turned * ct * cs, -turned * ss];
        let plumb = leg / cs;
        let add = |a: P3, b: P3| [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
        let out = [f, 0.0, 0.0];
        let mut all = vec![
            Corner("flange's edge, upper end", (0.0, turn_at + upper), add(out, up_slope(upper))),
            Corner("flange's edge, at the notch", (0.0, turn_at), out),
            Corner("turn, at the fold", (f, turn_at), [0.0; 3]),
        ];
        // Along the apron's side of the notch, and square to it towards the flange's side.
        let notch = |along: f64, aside: f64| (f - along * cn - aside * sn, turn_at - along * sn + aside * cn);
        if tab > 0.0 {
            let start = practice::SNIPS_CLEARANCE.mm() / sn;
            let inner = start + tab * cn / sn;
            all.extend([
                Corner("tab, inner end at its bend", notch(start, 0.0), [start, 0.0, 0.0]),
                Corner("tab, inner end", notch(inner, tab), add([inner, 0.0, 0.0], up_slope(tab))),
                Corner("tab, outer end", notch(f, tab), add(out, up_slope(tab))),
            ]);
        }
        let apron = notch(f, 0.0);
        all.extend([
            Corner("apron's edge, at the notch", apron, out),
            Corner("apron's edge, lower end", (apron.0, apron.1 - turned), add(out, end)),
            Corner("outer end, at the fold", (f, turn_at - turned), end),
            Corner("outer end, top", (f + leg, turn_at - turned + rise), add(end, [0.0, 0.0, plumb])),
            Corner("turn, top", (f + leg, turn_at + rise), [0.0, 0.0, plumb]),
            Corner("leg, upper end", (f + leg, turn_at + upper), add(up_slope(upper), [0.0, leg * ss, leg * cs])),
            Corner("fold, upper end", (f, turn_at + upper), up_slope(upper)),
        ]);
        (turn_at + upper, all)
    }

    /// The blank of its corners.
    fn blank(&self, corners: &[KickOutCorner], bends: [Angle; 3]) -> Result<FlatBlank, Error> {
        let at = |name: &str| -> Result<Point, Error> {
            let found = corners.iter().find(|c| c.name == name);
            found.map(|c| c.flat).ok_or_else(|| Error::new(ErrorKind::Internal, "a corner of the kick-out is missing").value_of(name))
        };
        let (near, far) = match self.wall {
            WallHand::Right => (BlankSide::NearEnd, BlankSide::FarEnd),
            WallHand::Left => (BlankSide::FarEnd, BlankSide::NearEnd),
        };
        // The top of the turn and the fold's upper end lie on straight sides.
        let around = corners.iter().filter(|c| c.name != "turn, top" && c.name != "fold, upper end");
        let side = |from: &str| match from {
            "flange's edge, upper end" | "apron's edge, at the notch" => BlankSide::StartEdge,
            "flange's edge, at the notch" | "turn, at the fold" => BlankSide::Notch,
            "apron's edge, lower end" | "outer end, at the fold" => near,
            "outer end, top" => BlankSide::EndEdge,
            "leg, upper end" => far,
            _ => BlankSide::Tab,
        };
        let mut outline: Vec<BlankEdge> = Vec::with_capacity(corners.len());
        for (from, to) in around.clone().zip(around.clone().cycle().skip(1)) {
            outline.push(BlankEdge { side: side(&from.name), from: from.flat, to: to.flat, arc: None });
        }
        if self.wall == WallHand::Left {
            // Mirrored, it runs the other way round.
            outline = outline.into_iter().rev().map(|e| BlankEdge { from: e.to, to: e.from, ..e }).collect();
        }
        let bend = |fold: BlankFold, (from, to): (&str, &str), angle: Angle, direction: Direction| -> Result<BlankBend, Error> {
            let line = BlankLine { from: at(from)?, to: at(to)? };
            let angle = BendAngle::from_flat(angle)?;
            // Sharp: the tangent lines are the bend line.
            Ok(BlankBend { fold, lines: vec![line], tangents: vec![line, line], angle, direction, inside_radius: self.sheet.inside_radius })
        };
        let [turn, apron, tab] = bends;
        let point = "turn, at the fold";
        let mut bends = vec![
            bend(BlankFold::Bend(Part::Body(0)), (point, "fold, upper end"), Angle::SQUARE, Direction::Up)?,
            bend(BlankFold::Bend(Part::Body(1)), (point, "turn, top"), turn, Direction::Up)?,
            bend(BlankFold::Bend(Part::Body(2)), (point, "outer end, at the fold"), apron, Direction::Up)?,
        ];
        if self.detail.tab.is_positive() && tab > Angle::ZERO {
            bends.push(bend(BlankFold::Tab(0), ("tab, inner end at its bend", "apron's edge, at the notch"), tab, Direction::Down)?);
        }
        let blank = FlatBlank { thickness: self.sheet.thickness, outline, bends, holes: Vec::new(), cautions: Vec::new() };
        blank.check()?;
        Ok(blank)
    }
}

impl Calculation for KickOut {
    type Out = KickOutPiece;

    fn title(&self) -> String {
        format!("kick-out at the foot of a wall on the {}, roof of {}", self.wall.name(), self.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<KickOutPiece, Error> {
        self.check(r)?;
        let shape = self.shape();
        let ((ss, cs), (st, ct), (sn, cn)) = (shape.slope, shape.turn, shape.notch);
        let degrees = |sin: f64, cos: f64| Angle::degrees_from(num::atan2_deg(sin, cos));
        let (slope, turn, notch) = (self.pitch.angle(), degrees(st, ct)?, degrees(sn, cn)?);
        let apron_bend = Angle::degrees_from(90.0 + num::atan2_deg(st * ss, ct))?;
        let apron_fall = degrees(ss, cs * ct)?;
        let tab_bend = Angle::degrees_from((apron_fall.degrees() - slope.degrees()).max(0.0))?;
        let (height, corners) = self.corners(&shape);
        let corners = corners
            .into_iter()
            .map(|Corner(name, (x, y), [from_wall, past_turn, up])| {
                let y = if self.wall == WallHand::Left { height - y } else { y };
                let mm = Length::from_mm;
                Ok(KickOutCorner { name: name.into(), flat: Point { x: mm(x)?, y: mm(y)? }, from_wall: mm(from_wall)?, past_turn: mm(past_turn)?, up: mm(up)? })
            })
            .collect::<Result<Vec<_>, Error>>()?;
        let blank = self.blank(&corners, [turn, apron_bend, tab_bend])?;
        let turned = Length::from_mm(num::hypot(self.detail.throw.mm(), self.detail.past_eave.mm()) / cs)?;
        let drop = Length::from_mm(turned.mm() * ss)?;
        let upper = Length::from_mm(self.detail.lap.mm() + self.leg.mm() * ss / cs)?;
        let geometry = |step: Step| step.source(Source::geometry());
        let (throw, past) = (self.detail.throw, self.detail.past_eave);
        r.step(|| geometry(Step::new("turn off the wall, in plan").formula("atan(throw / past the eave)").with("throw", throw).with("past", past).gives(turn)));
        r.step(|| geometry(Step::new("notch in the flange").formula("asin(sin T cos S)").with("T", turn).with("S", slope).gives(notch)));
        r.step(|| {
            let step = Step::new("bend of the apron to the turned leg").formula("90 deg + atan(tan T sin S)");
            geometry(step.with("T", turn).with("S", slope).gives(apron_bend))
        });
        r.step(|| geometry(Step::new("bend of the tab").formula("atan(tan S / cos T) - S").with("T", turn).with("S", slope).gives(tab_bend)));
        r.step(|| {
            let step = Step::new("from the turn to the outer end, along the fold").formula("hypot(throw, past the eave) / cos S");
            geometry(step.with("throw", throw).with("past", past).with("S", slope).gives(turned))
        });
        r.step(|| {
            let step = Step::new("from the turn to the upper end").formula("lap + leg tan S");
            geometry(step.with("lap", self.detail.lap).with("leg", self.leg).with("S", slope).gives(upper))
        });
        Ok(KickOutPiece { asked: self.clone(), turn, notch, lean: slope, apron_bend, tab_bend, apron_fall, upper, turned, drop, blank, corners })
    }
}

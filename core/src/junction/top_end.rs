//! The upper end of the panels under the flange of a cap or a flashing: the pan held back and turned up, the closures behind the flange's edge.
//!
//! Every cap and flashing on seam tops ends its panels so: a ridge, a high side, a hip, a headwall, the lower side of a pitch transition. Distances are
//! along the plane, square to the junction line.

use super::cautions::{CAP_NOT_HELD, CAP_RIDES, DRIP_CROSSES_SEAMS, RIVETS_ON_SLOPE, SEAM_HOLLOWS, SKEW_END_WITHOUT_TRIM, TOP_SLIDES};
use super::draft::{FastenerRow, LegTo, TrimSheet, Walk, keep_under, leg, refuse_short, tape, thick_tape};
use super::drip_edge::DripEdge;
use super::least::LeastRule;
use super::levels::Levels;
use super::parts::{Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::support::{SectionPoint, Support};
use super::top_closure::TopClosure;
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd, ends_panels};
use crate::practice::junction as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::Face;
use crate::units::{Angle, Length, Sum};

/// The chosen upper end of panels under a flange on their seam tops.
///
/// In a job file `screws` are at [`ON_CENTRE`](crate::practice::closure::ON_CENTRE), `turn_up` is [`TURN_UP`](crate::practice::panel::TURN_UP) and `cover`
/// [`LeastRule::UFGS_UNSOLDERED`] unless given.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, TopClosure, TopEnd, LeastRule};
/// use seamwright::panel::Hold;
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge {
///         leg: inch("3/4\"")?,
///         turn: practice::junction::DRIP_TURN,
///         hem: practice::junction::EDGE_HEM,
///         above_pan: inch("1/4\"")?,
///     },
///     closure: TopClosure {
///         set_back: practice::closure::SET_BACK,
///         face: Face::Web,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         tape_beneath: inch("1/16\"")?,
///         panel_margin: LeastRule::PANEL_MARGIN,
///     },
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: Some(row),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: practice::panel::SKEW_FIELD_TRIM,
/// };
/// assert_eq!(end.hold(), Hold::Pins);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TopEnd {
    /// From the trim's bend down to the edge of the flange, along the plane.
    pub flange: Length,
    /// How far the flange must reach over the panels, from its edge to their ends.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::flange_over_panels"))]
    pub cover: LeastRule,
    /// The flange's edge.
    pub drip: DripEdge,
    /// The closures.
    pub closure: TopClosure,
    /// What the closures' screws bite; in structure they pin the panels.
    pub bites: Bites,
    /// The closures' screws.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::closure_screws"))]
    pub screws: FastenerRow,
    /// Rivets into the closures: through the turned-down edge, or, where nothing is turned down, through the flange into their top flanges. None where the
    /// trim is held in another way.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rivets: Option<FastenerRow>,
    /// Whether the seams are hollow where the closures cross them.
    pub hollow_seams: bool,
    /// Width of the tape between the closures' top flange and the trim.
    pub cap_tape_width: Length,
    /// From the junction line down to the panels' fold line, or cut edge without a turn-up.
    pub hold_back: Length,
    /// What must stay free between the panels' ends and the trim or wall that they face.
    pub clearance: Length,
    /// How high the pan is turned up behind the closures; zero where it is cut flat.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::turn_up"))]
    pub turn_up: Length,
    /// Left on for a cut on the roof.
    pub field_trim: Length,
}

/// Where a junction puts an end: positions along the plane from the junction line, positive up the slope.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub(super) side: Side,
    pub(super) levels: Levels,
    /// The trim's bend.
    pub(super) bend: Length,
    /// What the panels' ends face, and must stay clear of.
    pub(super) limit: Length,
    /// Between the seams and the line.
    pub(super) meeting: Angle,
    /// The plane that the flange lies in, rising toward +x, and which way is down it: 1 for +x, -1 for -x.
    pub(super) seam_tops: Support,
    pub(super) down: i32,
}

/// What an end gives to its junction.
pub(super) struct Ended {
    /// The drip's outermost corner, and the edge of the flange where it turns down.
    pub(super) corners: Corners,
    pub(super) along: Vec<AlongLine>,
    pub(super) lines: Vec<LayoutLine>,
    pub(super) end: SideEnd,
    pub(super) cautions: Vec<Caution>,
}

impl Ended {
    /// Adds the end to its junction, the cautions under the end's path.
    pub(super) fn give(self, path: &str, solved: &mut Solved) {
        solved.along.extend(self.along);
        solved.lines.extend(self.lines);
        solved.ends.push(self.end);
        solved.cautions.extend(self.cautions.into_iter().map(|c| c.under(path)));
    }
}

type Corners = (SectionPoint, Option<SectionPoint>);

/// A cap with a bend between two flanges, each with the corners that its end gave.
pub(super) fn cap(
    name: &'static str,
    sheet: TrimSheet,
    one: (Corners, &TopEnd),
    (bend, by): (SectionPoint, Angle),
    two: (Corners, &TopEnd),
) -> Result<JunctionTrim, Error> {
    let ((start, first), (end, second)) = (one.0, two.0);
    let mut legs = Vec::with_capacity(4);
    legs.extend(first.map(|p| one.1.drip.leg_to("first drip", p)));
    legs.push(one.1.flange_to("first flange", bend));
    legs.push(leg("second flange", second.unwrap_or(end)).long(two.1.flange).bent(by));
    legs.extend(second.map(|_| two.1.drip.leg_to("second drip", end).bent(two.1.drip.turn)));
    Walk { name, sheet, start, legs: &legs, start_edge: one.1.drip.edge(), end_edge: two.1.drip.edge(), painted: Face::Upper }.lay()
}

impl TopEnd {
    /// The flange's leg, walked from its edge, or from the edge that turns down, to its bend.
    pub(super) const fn flange_to(&self, name: &'static str, bend: SectionPoint) -> LegTo {
        leg(name, bend).long(self.flange).bent(self.drip.turn)
    }

    /// Whether the closures pin the panels.
    #[must_use]
    pub fn hold(&self) -> Hold {
        if self.bites == Bites::Structure { Hold::Pins } else { Hold::Slides }
    }

    pub(super) fn check(&self, levels: &Levels) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "drip", self.drip.check());
        keep_under(&mut faults, "closure", self.closure.check());
        keep_under(&mut faults, "screws", self.screws.check());
        for (path, length) in [("flange", self.flange), ("cap_tape_width", self.cap_tape_width)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [("hold_back", self.hold_back), ("clearance", self.clearance), ("turn_up", self.turn_up), ("field_trim", self.field_trim)] {
            faults.keep(length.not_negative(path));
        }
        faults.keep(self.cover.least.not_negative("cover.least"));
        if self.bites == Bites::Trim {
            let error = Error::new(ErrorKind::Conflict, "the screws of a closure go through the pan").at("bites").value_of("trim");
            faults.add(error.accepts("structure, panel, slot"));
        }
        if let Some(rivets) = &self.rivets {
            keep_under(&mut faults, "rivets", rivets.check());
            // Through slots the closures stand still; through the pan alone they go with the panels, and a riveted trim with them.
            if self.bites == Bites::Panel {
                faults.add(
                    Error::new(ErrorKind::Conflict, "rivets tie the trim to panels that move")
                        .at("rivets")
                        .value_of("rivets")
                        .accepts("none where the closures ride with the panels")
                        .cured_by("closures screwed into the structure, or a trim held by a cleat"),
                );
            }
        }
        core::mem::take(&mut faults).check()?;
        self.check_heights(&mut faults, levels)?;
        self.check_cover(&mut faults)?;
        faults.check()
    }

    /// What must fit between the pan and the flange.
    fn check_heights(&self, faults: &mut Faults, levels: &Levels) -> Result<(), Error> {
        faults.keep(self.closure.web(levels.seam_height).map_err(|e| e.under("closure")));
        let room = levels.over_pan()?;
        refuse_short(faults, "turn_up", "the turned-up pan lifts the flange", self.turn_up - room, self.turn_up, "a smaller turn-up")?;
        let depth = self.drip.depth()?;
        refuse_short(faults, "drip.leg", "the drip comes too near the pan", depth + self.drip.above_pan - room, self.drip.leg, "a shorter drip")
    }

    /// What the flange must cover, whatever its place.
    fn check_cover(&self, faults: &mut Faults) -> Result<(), Error> {
        let lines = self.closure.setting().compute().map_err(|e| e.under("closure"))?;
        let path = "closure.set_back";
        let set_back = self.closure.set_back;
        let cure = "a greater set-back, or a narrower top flange";
        refuse_short(faults, path, "the flange does not cover the closures", -lines.leading_edge, set_back, cure)?;
        if self.rivets.is_some() && self.drip.leg.is_positive() {
            let what = "the drip stands too far from the closures for rivets through its face,";
            let cure = "a top flange that reaches the drip";
            refuse_short(faults, path, what, lines.leading_edge - practice::RIVET_REACH, set_back, cure)?;
        }
        let (width, cure) = (self.cap_tape_width, "narrower tape");
        refuse_short(faults, "cap_tape_width", "the tape is wider than the flange under it", width - self.closure.top_flange, width, cure)?;
        refuse_short(faults, "flange", "the closures' web passes the trim's bend", lines.web - self.flange, self.flange, "a longer flange")
    }

    /// Solves the end at its place.
    pub(super) fn solve<R: Recorder>(&self, r: &mut R, place: &Place) -> Result<Ended, Error> {
        self.check(&place.levels)?;
        let c = &self.closure;
        let web = c.web(place.levels.seam_height).map_err(|e| e.under("closure"))?;
        let setting = c.setting();
        let lines = r.part(|| setting.title(), |r| setting.run(r))?;
        let edge = (place.bend - self.flange).length()?;
        r.step(|| {
            let step = Step::new("flange's edge from the line").formula("bend - flange").with("bend", place.bend).with("flange", self.flange);
            step.gives(edge).source(Source::geometry())
        });
        r.step(|| Step::new("height of the closures' web").formula("seam height - tape beneath").with("tape", c.tape_beneath).gives(web));
        let up = |from_edge: Sum| (from_edge + edge).length();
        let (web_at, screws) = (up(lines.web.into())?, up(lines.fasteners.into())?);
        let over = up(lines.leading_edge + c.top_flange.station(1, 2)?)?;

        let mut faults = Faults::default();
        let panel_end = -self.hold_back;
        let what = if place.bend <= place.limit { "the seams pierce the trim's other flange" } else { "the panels reach what stands above them" };
        let cure = "a greater hold-back, or seam tops at one level on both sides";
        refuse_short(&mut faults, "hold_back", what, panel_end + self.clearance - place.limit, self.hold_back, cure)?;
        // Less than nothing where the flange hangs off the panels.
        let margin = (panel_end - edge - lines.back).length()?;
        r.step(|| {
            let step = Step::new("pan beyond the closures' lower flange").formula("-hold-back - back of the closures").with("hold-back", self.hold_back);
            step.with("least", c.panel_margin.least).gives(margin).source(c.panel_margin.source.clone())
        });
        let more = (c.panel_margin.least - margin).length()?;
        let cure = format!("a hold-back smaller by {more}, or a flange so much longer");
        c.panel_margin.check(&mut faults, "hold_back", margin, self.hold_back, cure)?;
        let cover = (panel_end - edge).length()?;
        r.step(|| {
            let step = Step::new("flange over the panels").formula("-hold-back - flange's edge").with("hold-back", self.hold_back);
            step.with("flange's edge", edge).with("least", self.cover.least).gives(cover).source(self.cover.source.clone())
        });
        let more = (self.cover.least - cover).length()?;
        self.cover.check(&mut faults, "flange", cover, self.flange, format!("a flange longer by {more}, or a hold-back so much smaller"))?;
        faults.check()?;

        let side = place.side;
        let mut along = vec![
            tape("tape under the closures", side, c.tape_width, true, screws),
            AlongLine { name: "closures".into(), side, what: Along::Closures { web }, from_line: web_at },
            self.screws.line("closure screws", side, self.bites, screws),
            tape("tape over the closures", side, self.cap_tape_width, false, over),
        ];
        let rivets_at = if self.drip.leg.is_positive() { edge } else { over };
        along.extend(self.rivets.as_ref().map(|row| row.line("rivets", side, Bites::Trim, rivets_at)));
        let end = PanelEnd::hold_back(self.hold_back).with_turn_up(self.turn_up).with_field_trim(self.field_trim).holding(self.hold());
        Ok(Ended {
            corners: self.drip.corners(&place.seam_tops, (edge * -place.down).length()?, place.down)?,
            along,
            lines: self.lines(side, edge)?,
            end: SideEnd { side, end },
            cautions: self.cautions(place)?,
        })
    }

    /// The panels are laid first, then the closures are set, then the trim is put on: all are measured from the line, or from the closures' face.
    fn lines(&self, side: Side, edge: Length) -> Result<Vec<LayoutLine>, Error> {
        let c = &self.closure;
        let lines = c.setting().compute()?;
        let face = (edge + c.set_back).length()?;
        let half = c.tape_width.station(1, 2)?;
        let from_face = |name: &'static str, from_edge: Sum| LayoutLine::from_line(name, side, "closure face", face, from_edge - c.set_back);
        Ok(vec![
            LayoutLine::from_junction("panel end", side, -self.hold_back)?,
            LayoutLine::from_junction("closure face", side, face.into())?,
            from_face("closure tape, lower edge", lines.fasteners - half)?,
            from_face("closure screws", lines.fasteners.into())?,
            from_face("closure tape, upper edge", lines.fasteners + half)?,
            from_face("trim lower edge", Sum::ZERO)?,
        ])
    }

    fn cautions(&self, place: &Place) -> Result<Vec<Caution>, Error> {
        let mut out = Vec::new();
        if self.hollow_seams {
            out.push(Caution::new(SEAM_HOLLOWS, "hollow_seams", Source::CommonPractice));
        }
        let moves = match self.bites {
            Bites::Structure | Bites::Trim => None,
            Bites::Panel => Some(CAP_RIDES),
            Bites::Slot => Some(TOP_SLIDES),
        };
        out.extend(moves.map(|code| Caution::new(code, "bites", Source::CommonPractice).arg("side", side_name(place.side))));
        let below = (self.drip.depth()? - place.levels.closure_metal - place.levels.tape).length()?;
        if below.is_positive() {
            out.push(Caution::new(DRIP_CROSSES_SEAMS, "drip", Source::geometry()).arg("depth", below));
        }
        if self.rivets.is_some() && self.drip.leg == Length::ZERO {
            out.push(Caution::new(RIVETS_ON_SLOPE, "rivets", Source::CommonPractice));
        }
        out.extend(thick_tape("closure.tape_beneath", "under the closures", self.closure.tape_beneath)?);
        out.extend(thick_tape("cap_tape_width", "over the closures", place.levels.tape)?);
        out.extend(skew_caution(place.meeting, self.field_trim));
        Ok(out)
    }
}

/// What is said of a cap over two ends that no fastener ties to anything.
pub(super) fn cap_not_held(subject: &'static str, one: &TopEnd, two: &TopEnd) -> Option<Caution> {
    (one.rivets.is_none() && two.rivets.is_none()).then(|| Caution::new(CAP_NOT_HELD, subject, Source::CommonPractice))
}

pub(super) const fn side_name(side: Side) -> &'static str {
    match side {
        Side::First => "first side",
        Side::Second => "second side",
        Side::Riser => "riser",
    }
}

/// Said where a skew end has no metal to be cut on the roof.
pub(super) fn skew_caution(meeting: Angle, field_trim: Length) -> Option<Caution> {
    let skew = 90.0 - meeting.degrees();
    (field_trim == Length::ZERO && skew > 0.0)
        .then(|| Caution::new(SKEW_END_WITHOUT_TRIM, "field_trim", Source::CommonPractice).arg("meeting", format_args!("{:.1} deg", meeting.degrees())))
}

/// A side whose seams run along the line has no panel end there.
pub(super) fn meets_seams(meeting: Angle, path: &str) -> Result<(), Error> {
    ends_panels(meeting).map_err(|e| e.at(path).cured_by("finish that side as a rake is finished"))
}

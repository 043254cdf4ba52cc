//! The upper end of the panels under the flange of a cap or a flashing, on one side of its bend.

use super::folded::{DripEdge, FastenerRow, at_least};
use super::parts::{Along, AlongLine, Bites, Side, SideEnd};
use super::{Levels, cautions};
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Caution, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// The closures under a flange on the seam tops.
///
/// ```
/// use seamwright::junction::Closure;
/// use seamwright::practice::{closure, junction as practice};
/// use seamwright::units::Length;
/// let pieces = Closure {
///     setback: closure::SET_BACK,
///     face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
///     screws_to_edge: Length::parse("1/2\"")?,
///     tape_width: Length::parse("7/8\"")?,
///     panel_margin: Length::parse("1/2\"")?,
/// };
/// assert_eq!((pieces.setback + pieces.face_to_screws).length()?, Length::parse("2 7/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Closure {
    /// From the trim's lower edge up the slope to the closure's face.
    pub setback: Length,
    /// From the face to the centre of the lower flange, where its screws go.
    pub face_to_screws: Length,
    /// From the screws to the upper edge of that flange.
    pub screws_to_edge: Length,
    /// Width of the tape under that flange, centred on the screws.
    pub tape_width: Length,
    /// What the panel must still reach beyond the flange.
    pub panel_margin: Length,
}

/// What lies under a flange on the seam tops: closures on their tape, and the panels that end behind them.
///
/// Distances are square to the junction line, along the plane of the roof.
///
/// ```
/// use seamwright::junction::{Bites, Closure, CoveredEnd, DripEdge, FastenerRow, Levels};
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = CoveredEnd {
///     levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///     flange: Length::inches(9),
///     drip: DripEdge { depth: Length::parse("3/4\"")?, hem: practice::EDGE_HEM },
///     closure: Closure {
///         setback: seamwright::practice::closure::SET_BACK,
///         face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
///         screws_to_edge: Length::parse("1/2\"")?,
///         tape_width: Length::parse("7/8\"")?,
///         panel_margin: Length::parse("1/2\"")?,
///     },
///     tape_beneath: Length::parse("1/16\"")?,
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: row,
///     hold_back: Length::inches(2),
///     clearance: Length::parse("1/4\"")?,
///     turn_up: panel::TURN_UP,
///     field_trim: panel::SKEW_FIELD_TRIM,
/// };
/// assert_eq!(end.closure_web()?, Length::parse("1 11/16\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CoveredEnd {
    /// The layers between the deck and the underside of the flange.
    pub levels: Levels,
    /// From the trim's bend down to the flange's lower edge.
    pub flange: Length,
    /// The flange's lower edge.
    pub drip: DripEdge,
    /// The closures.
    pub closure: Closure,
    /// Thickness of the compressed tape beneath the closures.
    pub tape_beneath: Length,
    /// What the closures' screws bite; in structure they pin the panels.
    pub bites: Bites,
    /// The closures' screws.
    pub screws: FastenerRow,
    /// The rivets through the flange's turned-down edge into the closures.
    pub rivets: FastenerRow,
    /// From the junction line down to the panels' fold line, or cut edge without a turn-up.
    pub hold_back: Length,
    /// What must stay free between the panels' ends and the trim or wall that they face.
    pub clearance: Length,
    /// The pan turned up behind the closures; zero for none.
    pub turn_up: Length,
    /// Left on for a cut on the roof.
    pub field_trim: Length,
}

/// What a covered end gives to its junction.
pub(super) struct Covered {
    pub(super) along: Vec<AlongLine>,
    pub(super) end: SideEnd,
    pub(super) cautions: Vec<Caution>,
}

impl CoveredEnd {
    /// Height of the closures' web: the seam's less the compressed tape beneath.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn closure_web(&self) -> Result<Length, Error> {
        (self.levels.seam_height - self.tape_beneath).length()
    }

    /// From the pan's underside to the flange.
    fn room_over_pan(&self) -> Result<Length, Error> {
        (self.levels.seam_height + self.levels.pan + self.levels.closure_metal + self.levels.tape).length()
    }

    fn check(&self) -> Result<(), Error> {
        let c = &self.closure;
        let mut faults = Faults::default();
        for (path, length) in [("flange", self.flange), ("screws.spacing", self.screws.spacing), ("rivets.spacing", self.rivets.spacing)] {
            faults.keep(length.positive(path));
        }
        self.drip.check(&mut faults);
        for (path, length) in [
            ("closure.setback", c.setback),
            ("closure.face_to_screws", c.face_to_screws),
            ("closure.screws_to_edge", c.screws_to_edge),
            ("closure.tape_width", c.tape_width),
            ("closure.panel_margin", c.panel_margin),
            ("tape_beneath", self.tape_beneath),
            ("hold_back", self.hold_back),
            ("clearance", self.clearance),
            ("turn_up", self.turn_up),
            ("field_trim", self.field_trim),
        ] {
            faults.keep(length.not_negative(path));
        }
        if self.bites == Bites::Trim {
            let error = Error::new(ErrorKind::Conflict, "a closure's screws go through the panel").at("bites").value_of("trim");
            faults.add(error.accepts("structure, panel, slot"));
        }
        faults.check()
    }

    /// Solves the end for a trim whose bend lies at `bend`, for panels that may reach as far as `limit` less the clearance; both along the plane from the
    /// junction line, positive up the slope.
    pub(super) fn solve<R: Recorder>(&self, r: &mut R, side: Side, bend: Length, limit: Length, meeting: Angle) -> Result<Covered, Error> {
        self.check()?;
        let c = &self.closure;
        let web = self.closure_web()?;
        let edge = (bend - self.flange).length()?;
        let face = (edge + c.setback).length()?;
        let screws = (face + c.face_to_screws).length()?;
        let flange_edge = (screws + c.screws_to_edge).length()?;
        let panel_end = (-self.hold_back).length()?;
        r.step(|| Step::new("flange's lower edge from the line").formula("bend - flange").with("bend", bend).with("flange", self.flange).gives(edge));
        r.step(|| Step::new("closure face").formula("edge + setback").with("edge", edge).with("setback", c.setback).gives(face));
        r.step(|| Step::new("closure screws").formula("face + face to screws").with("face", face).with("face to screws", c.face_to_screws).gives(screws));
        r.step(|| Step::new("height of the closure's web").formula("seam height - tape beneath").with("tape", self.tape_beneath).gives(web));

        let mut faults = Faults::default();
        faults.keep(web.positive("tape_beneath").map_err(|e| e.accepts("tape thinner than the seam is high")));
        at_least(&mut faults, "hold_back", "the seams reach what stands above them", limit - self.clearance, panel_end, self.hold_back, "a greater hold-back")?;
        at_least(
            &mut faults,
            "closure",
            "the closure's flange falls off the panel",
            panel_end,
            flange_edge + c.panel_margin,
            self.hold_back,
            "a longer flange, or a smaller hold-back",
        )?;
        at_least(&mut faults, "flange", "the closure's face passes the trim's bend", self.flange, c.setback, self.flange, "a longer flange")?;
        at_least(&mut faults, "turn_up", "the turned-up pan lifts the flange", self.room_over_pan()?, self.turn_up, self.turn_up, "a smaller turn-up")?;
        at_least(&mut faults, "drip.depth", "the drip stands on the pan", self.room_over_pan()?, self.drip.depth, self.drip.depth, "a shallower drip")?;
        let half = c.tape_width.station(1, 2)?;
        at_least(&mut faults, "closure.tape_width", "the closure's tape falls off the panel", panel_end, screws + half, c.tape_width, "narrower tape")?;
        faults.check()?;

        let row = |row: &FastenerRow, bites: Bites| Along::Fasteners { bites, spacing: row.spacing, source: row.source.clone() };
        let at = |name: &'static str, what: Along, from_line: Length| AlongLine { name: name.into(), side, what, from_line };
        let along = vec![
            at("tape under the closures", Along::Tape { width: c.tape_width, over_seams: true }, screws),
            at("closures", Along::Closures { web }, face),
            at("closure screws", row(&self.screws, self.bites), screws),
            at("tape over the closures", Along::Tape { width: c.tape_width, over_seams: false }, (face + half).length()?),
            at("rivets", row(&self.rivets, Bites::Trim), edge),
        ];
        let hold = if self.bites == Bites::Structure { Hold::Pins } else { Hold::Slides };
        let end = PanelEnd::hold_back(self.hold_back).with_turn_up(self.turn_up).with_field_trim(self.field_trim).holding(hold);
        let mut cautions = Vec::new();
        if self.drip.depth == Length::ZERO {
            cautions.push(Caution::new(cautions::RIVETS_ON_SLOPE, "rivets", Source::CommonPractice));
        } else {
            cautions.push(Caution::new(cautions::DRIP_CROSSES_SEAMS, "drip", Source::geometry()).arg("depth", self.drip.depth));
        }
        cautions.extend(skew_caution(meeting, self.field_trim));
        Ok(Covered { along, end: SideEnd { side, end }, cautions })
    }
}

/// Said where a skew end has no metal to be cut on the roof.
pub(super) fn skew_caution(meeting: Angle, field_trim: Length) -> Option<Caution> {
    let skew = 90.0 - meeting.degrees();
    (field_trim == Length::ZERO && skew > 0.0)
        .then(|| Caution::new(cautions::SKEW_END_WITHOUT_TRIM, "field_trim", Source::CommonPractice).arg("meeting", format_args!("{meeting:.1}")))
}

/// A side whose seams run along the line has no panel end there.
pub(super) fn meets_seams(meeting: Angle, path: &str) -> Result<(), Error> {
    if meeting.degrees() > 0.0 {
        return Ok(());
    }
    Err(Error::new(ErrorKind::Impossible, "the seams run along the line, and no panel ends there")
        .at(path)
        .value_of(meeting)
        .accepts("a meeting angle of more than 0 deg")
        .cured_by("finish that side as a rake is finished"))
}

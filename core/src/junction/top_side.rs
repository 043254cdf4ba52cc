//! One side of a ridge, or the only side of a mono-slope's top: the pan held back and turned up, the closures under the cap, the cap's flange past them.
//!
//! Distances are along the slope from the junction line down it, unless said otherwise.

use super::Levels;
use super::cautions::{CAP_RIDES, SEAM_HOLLOWS, TOP_SLIDES};
use super::draft::{Row, along, keep_under, refuse_short, step, turned, within};
use super::parts::{Along, AlongLine, Bites, Side, SideEnd};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::pitch::Pitch;
use crate::practice::junction as practice;
use crate::record::{Caution, Recorder, Source, Step};
use crate::trim::{Direction, Edge};
use crate::units::{Angle, Length};

/// The closures between the seams under a cap: a web standing on the pan, a lower flange that points uphill behind it, and a top flange that points
/// downhill under the cap and turns down behind the cap's drip.
///
/// ```
/// use seamwright::junction::{Bites, Row, TopClosure};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let closure = TopClosure {
///     face: Length::inches(6),
///     lower_flange: Length::parse("1 1/4\"")?,
///     top_flange: Length::inches(1),
///     face_to_screws: Length::parse("5/8\"")?,
///     tape_width: Length::parse("7/8\"")?,
///     tape: Length::parse("1/16\"")?,
///     bites: Bites::Structure,
///     screws: Row { spacing: Length::inches(6), source: Source::CommonPractice },
/// };
/// assert!(closure.face_to_screws < closure.lower_flange);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TopClosure {
    /// From the junction line down the slope to the face: the downhill side of the web.
    pub face: Length,
    /// From the face uphill to the edge of the lower flange.
    pub lower_flange: Length,
    /// From the face downhill to the front of the top flange.
    pub top_flange: Length,
    /// From the face uphill to the screws through the lower flange.
    pub face_to_screws: Length,
    /// Width of the tape under the lower flange, the screws on its centreline.
    pub tape_width: Length,
    /// That tape's thickness, compressed.
    pub tape: Length,
    /// What the screws bite.
    pub bites: Bites,
    /// The screws.
    pub screws: Row,
}

impl TopClosure {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "screws", self.screws.check());
        for (path, length) in [("lower_flange", self.lower_flange), ("tape_width", self.tape_width)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [("face", self.face), ("top_flange", self.top_flange), ("face_to_screws", self.face_to_screws), ("tape", self.tape)] {
            faults.keep(length.not_negative(path));
        }
        if self.bites == Bites::Trim {
            faults.add(
                Error::new(ErrorKind::Conflict, "the screws of a closure go through the pan").at("bites").value_of("trim").accepts("structure, panel, slot"),
            );
        }
        core::mem::take(&mut faults).check()?;
        let half = self.tape_width.station(1, 2)?;
        let cure = "narrower tape, a wider flange, or screws in the middle of it";
        refuse_short(&mut faults, "tape_width", "the tape runs out under the web", half - self.face_to_screws, self.tape_width, cure)?;
        refuse_short(
            &mut faults,
            "tape_width",
            "the tape runs past the edge of the flange",
            self.face_to_screws + half - self.lower_flange,
            self.tape_width,
            cure,
        )?;
        faults.check()
    }
}

/// The turned-down edge of a cap.
///
/// ```
/// use seamwright::junction::CapDrip;
/// use seamwright::practice::junction as practice;
/// use seamwright::units::{Angle, Length};
/// let drip = CapDrip { leg: Length::inches(1), turn: Angle::SQUARE, hem: practice::EDGE_HEM, above_pan: Length::parse("1/4\"")? };
/// assert!(drip.hem < drip.leg);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CapDrip {
    /// From the flange down to the outside of the hem.
    pub leg: Length,
    /// How far it turns down from the flange; 90 degrees is square to the slope, less kicks out.
    pub turn: Angle,
    /// Width of the closed hem.
    pub hem: Length,
    /// What must stay free between the hem and the pan.
    pub above_pan: Length,
}

/// One side of the top of a roof.
///
/// ```
/// use seamwright::junction::{Bites, CapDrip, Levels, Row, TopClosure, TopSide};
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let row = Row { spacing: Length::inches(6), source: Source::CommonPractice };
/// let side = TopSide {
///     pitch: Pitch::parse("6:12")?,
///     levels: Levels { underlayment: Length::mils(40), seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() },
///     hold_back: inch("2\"")?,
///     turn_up: practice::panel::TURN_UP,
///     panel_margin: inch("1/2\"")?,
///     closure: TopClosure {
///         face: inch("5\"")?,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1\"")?,
///         face_to_screws: inch("5/8\"")?,
///         tape_width: inch("7/8\"")?,
///         tape: inch("1/16\"")?,
///         bites: Bites::Structure,
///         screws: row.clone(),
///     },
///     hollow_seams: true,
///     cap_tape_width: inch("7/8\"")?,
///     cover: inch("1\"")?,
///     drip: CapDrip { leg: inch("1\"")?, turn: Angle::SQUARE, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     rivets: Some(row),
/// };
/// assert_eq!(side.closure_web()?, inch("1 11/16\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TopSide {
    /// Pitch of the plane.
    pub pitch: Pitch,
    /// The layers between its deck and the underside of the cap.
    pub levels: Levels,
    /// From the junction line to the panels' ends, turned up or cut.
    pub hold_back: Length,
    /// How high the pan is turned up there; zero where it is cut flat.
    pub turn_up: Length,
    /// What the pan must still reach beyond the lower flange of the closures.
    pub panel_margin: Length,
    /// The closures.
    pub closure: TopClosure,
    /// Whether the seams are hollow where the closures cross them.
    pub hollow_seams: bool,
    /// Width of the tape between the closures' top flange and the cap.
    pub cap_tape_width: Length,
    /// How far the cap's flange runs past the face of the closures.
    pub cover: Length,
    /// The cap's turned-down edge.
    pub drip: CapDrip,
    /// Rivets through the face of the drip into the closures; none where the cap is held in another way.
    #[cfg_attr(feature = "serde", serde(default))]
    pub rivets: Option<Row>,
}

/// A side as drawn.
pub(super) struct LaidSide {
    /// The bend over the drip, then the drip's edge.
    pub(super) edge: SectionPoint,
    pub(super) drip: SectionPoint,
    pub(super) end: SideEnd,
    pub(super) along: Vec<AlongLine>,
    pub(super) cautions: Vec<Caution>,
}

impl TopSide {
    /// Height of the closures' web: seam height and the metal of their own top flange where it runs over the seams, less the tape beneath.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn closure_web(&self) -> Result<Length, Error> {
        (self.levels.seam_height + self.levels.closure_metal - self.closure.tape).length()
    }

    /// Whether the closures pin the panels.
    #[must_use]
    pub fn hold(&self) -> Hold {
        if self.closure.bites == Bites::Structure { Hold::Pins } else { Hold::Slides }
    }

    /// The hem at the end of the drip.
    pub(super) fn hem(&self) -> Edge {
        Edge::closed_hem(self.drip.hem, Direction::Down)
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "levels", self.levels_height().map(|_| ()));
        keep_under(&mut faults, "closure", self.closure.check());
        for (path, length) in [("cap_tape_width", self.cap_tape_width), ("drip.leg", self.drip.leg), ("drip.hem", self.drip.hem)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("hold_back", self.hold_back),
            ("turn_up", self.turn_up),
            ("panel_margin", self.panel_margin),
            ("cover", self.cover),
            ("drip.above_pan", self.drip.above_pan),
        ] {
            faults.keep(length.not_negative(path));
        }
        // A drip that turns back under its flange would shed onto the closures.
        if !(self.drip.turn.degrees() > 0.0 && self.drip.turn.degrees() <= 90.0) {
            within(&mut faults, "drip.turn", self.drip.turn, 0.0, 90.0);
        }
        if let Some(rivets) = &self.rivets {
            keep_under(&mut faults, "rivets", rivets.check());
            // Through slots the closures stand still; through the pan alone they go with the panels, and a riveted cap with them.
            if self.closure.bites == Bites::Panel {
                faults.add(
                    Error::new(ErrorKind::Conflict, "rivets tie the cap to panels that move")
                        .at("rivets")
                        .value_of("rivets")
                        .accepts("none where the closures ride with the panels")
                        .cured_by("closures screwed into the structure, or a cap held by a cleat"),
                );
            }
        }
        core::mem::take(&mut faults).check()?;
        self.check_fit(&mut faults)?;
        faults.check()
    }

    fn levels_height(&self) -> Result<Length, Error> {
        use crate::record::Calculation;
        self.levels.compute()
    }

    /// Height of the pan's upper face above the deck.
    fn pan(&self) -> Result<Length, Error> {
        (self.levels.underlayment + self.levels.stand_off + self.levels.pan).length()
    }

    /// What can be told without knowing where the cap bends.
    fn check_fit(&self, faults: &mut Faults) -> Result<(), Error> {
        let (c, h, pan) = (&self.closure, self.levels_height()?, self.pan()?);
        let web = self.closure_web()?;
        if !web.is_positive() {
            faults.add(
                Error::new(ErrorKind::Impossible, "nothing of the seam height is left for the closures above their tape")
                    .at("closure.tape")
                    .value_of(c.tape)
                    .accepts("tape thinner than the seam height"),
            );
        }
        refuse_short(
            faults,
            "hold_back",
            "the closures' lower flange falls off the panels",
            self.hold_back + self.panel_margin + c.lower_flange - c.face,
            self.hold_back,
            "a smaller hold-back, or closures farther down",
        )?;
        refuse_short(faults, "turn_up", "the turned-up pan lifts the cap", pan + self.turn_up - h, self.turn_up, "a pan turned up to the seam height")?;
        refuse_short(
            faults,
            "cover",
            "the cap does not cover the closures",
            c.top_flange - self.cover,
            self.cover,
            "a greater cover, or a narrower top flange",
        )?;
        if self.rivets.is_some() {
            refuse_short(
                faults,
                "rivets",
                "the drip stands too far from the closures for rivets through its face,",
                self.cover - c.top_flange - practice::RIVET_REACH,
                self.cover,
                "a top flange that reaches the drip",
            )?;
        }
        refuse_short(
            faults,
            "cap_tape_width",
            "the tape is wider than the flange under it",
            self.cap_tape_width - c.top_flange,
            self.cap_tape_width,
            "narrower tape",
        )?;
        let drop = Length::from_mm(self.drip.leg.mm() * self.drip.turn.sin())?;
        refuse_short(faults, "drip.leg", "the cap's drip comes too near the pan", pan + self.drip.above_pan + drop - h, self.drip.leg, "a shorter drip")
    }

    /// Draws the side of a cap whose bend stands at `apex`.
    pub(super) fn lay<R: Recorder>(&self, r: &mut R, side: Side, apex: SectionPoint) -> Result<LaidSide, Error> {
        let h = r.part(|| "levels".into(), |r| crate::record::Calculation::run(&self.levels, r))?;
        let slope = self.pitch.angle();
        // The first plane rises toward +x, the second falls; `down` is the sign of a step down the slope in the walk.
        let (rise, down) = match side {
            Side::First => (slope, -1),
            Side::Second => (Angle::degrees_from(-slope.degrees())?, 1),
        };
        let bend_down = (along(apex, rise)? * down).length()?;
        let edge_down = (self.closure.face + self.cover).length()?;
        let flange = (edge_down - bend_down).length()?;
        r.step(|| {
            Step::new("flange of the cap")
                .formula("closure face + cover - place of the bend")
                .with("closure face", self.closure.face)
                .with("cover", self.cover)
                .with("place of the bend", bend_down)
                .gives(flange)
                .source(Source::geometry())
        });
        let mut faults = Faults::default();
        refuse_short(
            &mut faults,
            "hold_back",
            "the seams pierce the other flange of the cap",
            bend_down - self.hold_back,
            self.hold_back,
            "a greater hold-back, or seam tops at one level on both sides",
        )?;
        faults.check()?;
        let seam_tops = Support { rise, height: h };
        let edge = seam_tops.point((edge_down * down).length()?)?;
        let out = match side {
            Side::First => turned(rise, 180.0 + self.drip.turn.degrees())?,
            Side::Second => turned(rise, -self.drip.turn.degrees())?,
        };
        let drip = step(edge, out, self.drip.leg)?;

        let c = &self.closure;
        let up = |at: crate::units::Sum| (-at).length();
        let screws = up(c.face - c.face_to_screws)?;
        let tape = |name: &'static str, width, over_seams, from_line| AlongLine { name: name.into(), side, what: Along::Tape { width, over_seams }, from_line };
        let web = self.closure_web()?;
        let mut along = vec![
            tape("tape under the closures", c.tape_width, true, screws),
            AlongLine { name: "closures".into(), side, what: Along::Closures { web }, from_line: up(c.face.into())? },
            c.screws.line("closure screws", side, c.bites, screws),
            tape("tape under the cap", self.cap_tape_width, false, up(c.face + c.top_flange.station(1, 2)?)?),
        ];
        along.extend(self.rivets.as_ref().map(|row| up(edge_down.into()).map(|at| row.line("rivets through the drip", side, Bites::Trim, at))).transpose()?);
        let end = PanelEnd::hold_back(self.hold_back).with_turn_up(self.turn_up).holding(self.hold());
        let mut cautions = Vec::new();
        if self.hollow_seams {
            cautions.push(Caution::new(SEAM_HOLLOWS, "hollow_seams", Source::CommonPractice));
        }
        let code = match c.bites {
            Bites::Structure | Bites::Trim => None,
            Bites::Panel => Some(CAP_RIDES),
            Bites::Slot => Some(TOP_SLIDES),
        };
        cautions.extend(code.map(|code| Caution::new(code, "closure.bites", Source::CommonPractice).arg("side", side_name(side))));
        Ok(LaidSide { edge, drip, end: SideEnd { side, end }, along, cautions })
    }
}

pub(super) const fn side_name(side: Side) -> &'static str {
    match side {
        Side::First => "first side",
        Side::Second => "second side",
    }
}

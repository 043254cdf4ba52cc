//! The ridge: two planes that fall away from a level line, and a cap on the seam tops of both.
//!
//! The first plane lies on the side of negative x. The cap's two flanges lie in the planes of the seam tops, h above each deck, and meet where these
//! planes meet: over the ridge line only where pitches and heights are alike.

use super::cautions::{CAP_OFF_LINE, VENT_CHOKED};
use super::draft::{TrimSheet, along, keep_under, opposite_sign, refuse_short, turned};
use super::fit::{self, Beside, Deck};
use super::levels::RoofSide;
use super::parts::{Adjoining, LayoutLine, Side, Solved};
use super::support::{SectionPoint, Support};
use super::top_end::{Place, TopEnd, cap, cap_not_held, side_name};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::BendAt;
use crate::practice::junction as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// Whether air goes out at a ridge.
///
/// ```
/// use seamwright::junction::RidgeVent;
/// use seamwright::units::Length;
/// let vent = RidgeVent::Vented { slot: Length::inches(1), open_ratio: 0.4 };
/// assert_ne!(vent, RidgeVent::Closed);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RidgeVent {
    /// A deck without a slot, and solid closures.
    #[default]
    Closed,
    /// A slot in the deck and perforated closures.
    Vented {
        /// Width of the slot on each side, along the slope from the ridge line.
        slot: Length,
        /// The share of a closure's web that is open, more than 0 and at most 1.
        open_ratio: f64,
    },
}

impl RidgeVent {
    /// Whether a slot is open, and so wide that the pans of each side leave it free.
    pub(super) fn check(self, faults: &mut Faults, path: &str, ends: &[(&str, &TopEnd)]) -> Result<(), Error> {
        let RidgeVent::Vented { slot, open_ratio } = self else { return Ok(()) };
        faults.keep(slot.positive(&format!("{path}.vented.slot")));
        if !(open_ratio > 0.0 && open_ratio <= 1.0) {
            let error = Error::new(ErrorKind::OutOfRange, "not a share of the web").at(format!("{path}.vented.open_ratio")).value_of(open_ratio);
            faults.add(error.accepts("more than 0 and at most 1"));
        }
        for (end_path, end) in ends {
            let (path, cure) = (format!("{end_path}.hold_back"), "a greater hold-back, or a narrower slot");
            refuse_short(faults, &path, "the pan covers the slot in the deck", slot - end.hold_back, end.hold_back, cure)?;
        }
        Ok(())
    }

    /// What it lets through, for webs that are so high on all sides together, each side with its slot.
    pub(super) fn opening(self, webs: Length, sides: i32) -> Result<Option<VentOpening>, Error> {
        let RidgeVent::Vented { slot, open_ratio } = self else { return Ok(None) };
        Ok(Some(VentOpening { slot: (slot * sides).length()?, closures: Length::from_mm(webs.mm() * open_ratio)? }))
    }

    /// Adds the slot and the line of its edge on these sides.
    pub(super) fn give(self, sides: &[Side], solved: &mut Solved) -> Result<(), Error> {
        let RidgeVent::Vented { slot, open_ratio } = self else { return Ok(()) };
        solved.adjoining.push(Adjoining::VentSlot { width: slot, open_ratio });
        for side in sides {
            solved.lines.push(LayoutLine::from_junction("edge of the slot", *side, -slot)?);
        }
        Ok(())
    }
}

impl VentOpening {
    /// Says what comes through, and where the closures let through less than the slot.
    pub(super) fn tell<R: Recorder>(&self, r: &mut R, subject: &'static str, solved: &mut Solved) {
        r.step(|| {
            Step::new("free opening per length of ridge")
                .formula("the lesser of slot and open webs, all sides")
                .with("slot", self.slot)
                .with("open webs", self.closures)
                .gives(self.free())
                .source(Source::geometry())
        });
        if self.closures < self.slot {
            solved.cautions.push(Caution::new(VENT_CHOKED, subject, Source::geometry()).arg("opening", self.closures).arg("slot", self.slot));
        }
    }
}

/// What a vented ridge, or a vented headwall, lets through, per length of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct VentOpening {
    /// Width of the slot, both sides together.
    pub slot: Length,
    /// Open height of the closures, both sides together.
    pub closures: Length,
}

impl VentOpening {
    /// The lesser of the two: open area per length of ridge, the seams and the deck's thickness left out.
    ///
    /// ```
    /// use seamwright::junction::VentOpening;
    /// use seamwright::units::Length;
    /// let opening = VentOpening { slot: Length::inches(2), closures: Length::inches(1) };
    /// assert_eq!(opening.free(), Length::inches(1));
    /// ```
    #[must_use]
    pub fn free(&self) -> Length {
        self.slot.min(self.closures)
    }
}

/// What is chosen at a ridge.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, RidgeDetail, RidgeVent, TopClosure, TopEnd, TrimSheet, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
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
///     field_trim: Length::ZERO,
/// };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let detail = RidgeDetail { first: end.clone(), second: end, sheet, vent: RidgeVent::Closed };
/// assert_eq!(detail.first, detail.second);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RidgeDetail {
    /// The ends of the panels of the first plane.
    pub first: TopEnd,
    /// The ends of the panels of the second plane.
    pub second: TopEnd,
    /// The cap's sheet.
    pub sheet: TrimSheet,
    /// Closed or vented.
    pub vent: RidgeVent,
}

/// A ridge as asked for. It is the fixed line of a side whose closures bite the structure; else that side slides.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: closures off the panels, a cap that does not cover them, seams that
/// pierce the other flange, a slot under the pans, rivets into panels that move; and every figure without meaning.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, Levels, Ridge, RidgeDetail, RidgeVent, RoofSide, Side, TopClosure, TopEnd, TrimSheet, LeastRule};
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
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
///     field_trim: Length::ZERO,
/// };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let roof = RoofSide { pitch: Pitch::parse("12:12")?, levels: Levels { seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() } };
/// let ridge = Ridge { first: roof, second: roof, detail: RidgeDetail { first: end.clone(), second: end, sheet, vent: RidgeVent::Closed } };
/// let solved = ridge.compute()?;
/// let cap = solved.trim("ridge cap").unwrap();
/// assert!((cap.profile.bends[1].angle.degrees() - 90.0).abs() < 1e-6);
/// assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Pins);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Ridge {
    /// The plane on the side of negative x.
    pub first: RoofSide,
    /// The plane on the side of positive x.
    pub second: RoofSide,
    /// What is chosen.
    pub detail: RidgeDetail,
}

impl Ridge {
    /// The planes of the seam tops: the first rises toward +x, the second falls.
    fn seam_tops(&self) -> Result<(Support, Support), Error> {
        Ok((
            Support { rise: self.first.pitch.angle(), height: self.first.levels.compute().map_err(|e| e.under("first.levels"))? },
            Support { rise: opposite_sign(self.second.pitch.angle())?, height: self.second.levels.compute().map_err(|e| e.under("second.levels"))? },
        ))
    }

    /// Where the planes of the seam tops meet: the bend of the cap. Its x is how far it stands off the ridge line.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`] where both planes are level and never meet; a negative layer; [`ErrorKind::Overflow`] beyond the range.
    pub fn bend(&self) -> Result<SectionPoint, Error> {
        let (first, second) = self.seam_tops()?;
        first.meets(&second).map_err(|e| e.at("second.pitch"))
    }

    /// What a vented ridge lets through; none where it is closed.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for an open ratio that is no share, closures without height, [`ErrorKind::Overflow`] beyond the range.
    pub fn opening(&self) -> Result<Option<VentOpening>, Error> {
        let mut faults = Faults::default();
        self.detail.vent.check(&mut faults, "detail.vent", &[])?;
        faults.check()?;
        let first = self.detail.first.closure.web(self.first.levels.seam_height).map_err(|e| e.under("detail.first.closure"))?;
        let second = self.detail.second.closure.web(self.second.levels.seam_height).map_err(|e| e.under("detail.second.closure"))?;
        let webs = (first + second).length()?;
        self.detail.vent.opening(webs, 2)
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let detail = &self.detail;
        keep_under(&mut faults, "first.levels", self.first.levels.compute().map(|_| ()));
        keep_under(&mut faults, "second.levels", self.second.levels.compute().map(|_| ()));
        keep_under(&mut faults, "detail.first", detail.first.check(&self.first.levels));
        keep_under(&mut faults, "detail.second", detail.second.check(&self.second.levels));
        keep_under(&mut faults, "detail.sheet", detail.sheet.check());
        detail.vent.check(&mut faults, "detail.vent", &[("detail.first", &detail.first), ("detail.second", &detail.second)])?;
        faults.check()
    }
}

impl Calculation for Ridge {
    type Out = Solved;

    fn title(&self) -> String {
        format!("ridge, {} and {}", self.first.pitch, self.second.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let bend = BendAt::Ridge { first: self.first.pitch, second: self.second.pitch };
        r.part(|| bend.title(), |r| bend.run(r))?;
        for (side, roof) in [(Side::First, &self.first), (Side::Second, &self.second)] {
            r.part(|| side_name(side).into(), |r| roof.levels.run(r))?;
        }
        let (one, two) = self.seam_tops()?;
        let apex = self.bend()?;
        r.step(|| {
            Step::new("bend of the cap")
                .formula("where the planes of the seam tops meet")
                .gives(format_args!("{} above the ridge line, {} toward the second side", apex.z, apex.x))
                .source(Source::geometry())
        });
        let detail = &self.detail;
        let mut solved = Solved::default();
        detail.vent.give(&[Side::First, Side::Second], &mut solved)?;
        let mut corners = Vec::with_capacity(2);
        let mut faults = Faults::default();
        for (side, path, end, roof, seam_tops) in
            [(Side::First, "detail.first", &detail.first, &self.first, one), (Side::Second, "detail.second", &detail.second, &self.second, two)]
        {
            // Up the second slope is toward -x.
            let down = if side == Side::First { -1 } else { 1 };
            let bend = (along(apex, seam_tops.rise)? * -down).length()?;
            let place = Place { side, levels: roof.levels, bend, limit: bend.min(Length::ZERO), meeting: Angle::SQUARE, seam_tops, down };
            let ended = r.part(|| side_name(side).into(), |r| end.solve(r, &place)).map_err(|e| e.under(path));
            if let Some(ended) = faults.keep(ended) {
                corners.push(ended.corners);
                ended.give(path, &mut solved);
            }
        }
        faults.check()?;
        let [first, second] = corners[..] else { return Ok(solved) };
        let by = turned(one.rise, -two.rise.degrees())?;
        solved.trims.push(cap("ridge cap", detail.sheet, (first, &detail.first), (apex, by), (second, &detail.second))?);
        fit::check(
            &solved,
            &[
                Deck::turned(Side::First, one.rise, &self.first.levels, &detail.first, "detail.first"),
                Deck::turned(Side::Second, two.rise, &self.second.levels, &detail.second, "detail.second"),
            ],
            Beside::Nothing,
        )?;
        let off = apex.x.max((-apex.x).length()?);
        if off > practice::CAP_ON_LINE {
            let toward = if apex.x.is_negative() { Side::First } else { Side::Second };
            solved.cautions.push(Caution::new(CAP_OFF_LINE, "ridge cap", Source::geometry()).arg("offset", off).arg("side", side_name(toward)));
        }
        solved.cautions.extend(cap_not_held("ridge cap", &detail.first, &detail.second));
        if let Some(opening) = self.opening()? {
            opening.tell(r, "detail.vent", &mut solved);
        }
        Ok(solved)
    }
}

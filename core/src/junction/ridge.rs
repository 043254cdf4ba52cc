//! The ridge: two planes that fall away from a level line, and a cap on the seam tops of both.
//!
//! The first plane lies on the side of negative x. The cap's two flanges lie in the planes of the seam tops, h above each deck, and meet where these
//! planes meet: over the ridge line only where pitches and heights are alike.

use super::cautions::{CAP_OFF_LINE, VENT_CHOKED};
use super::draft::{TrimSheet, Walk, keep_under, opposite_sign, refuse_short};
use super::parts::{Side, Solved};
use super::support::{SectionPoint, Support};
use super::top_side::{TopSide, side_name};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::BendAt;
use crate::practice::junction as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::Face;
use crate::units::Length;

/// Whether air goes out at a ridge.
///
/// ```
/// use seamwright::junction::RidgeVent;
/// use seamwright::units::Length;
/// let vent = RidgeVent::Vented { slot: Length::inches(1), open_ratio: 0.4 };
/// assert_ne!(vent, RidgeVent::Closed);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum RidgeVent {
    /// A deck without a slot, and solid closures.
    Closed,
    /// A slot in the deck and perforated closures.
    Vented {
        /// Width of the slot on each side, along the slope from the ridge line.
        slot: Length,
        /// The share of a closure's web that is open, more than 0 and at most 1.
        open_ratio: f64,
    },
}

/// What a vented ridge lets through, per length of ridge.
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

/// A ridge as asked for. It is the fixed line of a side whose closures bite the structure; else that side slides.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: closures off the panels, a cap that does not cover them, seams that
/// pierce the other flange, a slot under the pans, rivets into panels that move; and every figure without meaning.
///
/// ```
/// use seamwright::junction::{Bites, CapDrip, Levels, Ridge, RidgeVent, Row, Side, TopClosure, TopSide, TrimSheet};
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let row = Row { spacing: Length::inches(6), source: Source::CommonPractice };
/// let side = TopSide {
///     pitch: Pitch::parse("12:12")?,
///     levels: Levels { seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() },
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
///     hollow_seams: false,
///     cap_tape_width: inch("7/8\"")?,
///     cover: inch("1\"")?,
///     drip: CapDrip { leg: inch("1\"")?, turn: Angle::SQUARE, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     rivets: Some(row),
/// };
/// let ridge = Ridge {
///     first: side.clone(),
///     second: side,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     vent: RidgeVent::Closed,
/// };
/// let solved = ridge.compute()?;
/// let cap = solved.trim("ridge cap").unwrap();
/// assert!((cap.profile.bends[1].angle.degrees() - 90.0).abs() < 1e-6);
/// assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Pins);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Ridge {
    /// The plane on the side of negative x.
    pub first: TopSide,
    /// The plane on the side of positive x.
    pub second: TopSide,
    /// The cap's sheet.
    pub sheet: TrimSheet,
    /// Closed or vented.
    pub vent: RidgeVent,
}

impl Ridge {
    /// Where the planes of the seam tops meet: the bend of the cap. Its x is how far it stands off the ridge line.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`] where both planes are level and never meet; a negative layer; [`ErrorKind::Overflow`] beyond the range.
    pub fn bend(&self) -> Result<SectionPoint, Error> {
        let first = Support { rise: self.first.pitch.angle(), height: self.first.levels.compute().map_err(|e| e.under("first.levels"))? };
        let second = Support { rise: opposite_sign(self.second.pitch.angle())?, height: self.second.levels.compute().map_err(|e| e.under("second.levels"))? };
        first.meets(&second).map_err(|e| e.at("second.pitch"))
    }

    /// What a vented ridge lets through; none where it is closed.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for an open ratio that is no share, [`ErrorKind::Overflow`] beyond the range.
    pub fn opening(&self) -> Result<Option<VentOpening>, Error> {
        let RidgeVent::Vented { slot, open_ratio } = self.vent else { return Ok(None) };
        if !(open_ratio > 0.0 && open_ratio <= 1.0) {
            return Err(Error::new(ErrorKind::OutOfRange, "not a share of the web")
                .at("vent.vented.open_ratio")
                .value_of(open_ratio)
                .accepts("more than 0 and at most 1"));
        }
        let webs = (self.first.closure_web()? + self.second.closure_web()?).length()?;
        Ok(Some(VentOpening { slot: (slot * 2).length()?, closures: Length::from_mm(webs.mm() * open_ratio)? }))
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "first", self.first.check());
        keep_under(&mut faults, "second", self.second.check());
        keep_under(&mut faults, "sheet", self.sheet.check());
        if let RidgeVent::Vented { slot, .. } = self.vent {
            faults.keep(slot.positive("vent.vented.slot"));
            faults.keep(self.opening());
            for (path, side) in [("first.hold_back", &self.first), ("second.hold_back", &self.second)] {
                refuse_short(
                    &mut faults,
                    path,
                    "the pan covers the slot in the deck",
                    slot - side.hold_back,
                    side.hold_back,
                    "a greater hold-back, or a narrower slot",
                )?;
            }
        }
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
        let apex = self.bend()?;
        r.step(|| {
            Step::new("bend of the cap")
                .formula("where the planes of the seam tops meet")
                .gives(format_args!("{} above the ridge line, {} toward the second side", apex.z, apex.x))
                .source(Source::geometry())
        });
        let first = r.part(|| side_name(Side::First).into(), |r| self.first.lay(r, Side::First, apex).map_err(|e| e.under("first")))?;
        let second = r.part(|| side_name(Side::Second).into(), |r| self.second.lay(r, Side::Second, apex).map_err(|e| e.under("second")))?;
        let cap = Walk {
            name: "ridge cap",
            sheet: self.sheet,
            start: first.drip,
            legs: &[("first drip", first.edge), ("first flange", apex), ("second flange", second.edge), ("second drip", second.drip)],
            start_edge: self.first.hem(),
            end_edge: self.second.hem(),
            painted: Face::Upper,
        }
        .lay()?;
        let mut solved = Solved { trims: vec![cap], ends: vec![first.end, second.end], along: first.along, ..Solved::default() };
        solved.along.extend(second.along);
        solved.cautions.extend(first.cautions.into_iter().map(|c| c.under("first")));
        solved.cautions.extend(second.cautions.into_iter().map(|c| c.under("second")));
        let off = apex.x.max((-apex.x).length()?);
        if off > practice::CAP_ON_LINE {
            let toward = if apex.x.is_negative() { Side::First } else { Side::Second };
            solved.cautions.push(Caution::new(CAP_OFF_LINE, "ridge cap", Source::geometry()).arg("offset", off).arg("side", side_name(toward)));
        }
        if let Some(opening) = self.opening()? {
            r.step(|| {
                Step::new("free opening per length of ridge")
                    .formula("the lesser of slot and open webs, both sides")
                    .with("slot", opening.slot)
                    .with("open webs", opening.closures)
                    .gives(opening.free())
                    .source(Source::geometry())
            });
            if opening.closures < opening.slot {
                solved.cautions.push(Caution::new(VENT_CHOKED, "vent", Source::geometry()).arg("opening", opening.closures).arg("slot", opening.slot));
            }
        }
        Ok(solved)
    }
}

//! The offset cleat: the Z that the folds of panels' lower ends hook, on its tape, screwed through what it stands on.

use super::Levels;
use super::cautions::CLEAT_OFF_LEVEL;
use super::draft::{FastenerRow, TrimSheet, Walk, keep_under, leg, refuse_short, tape, thick_tape};
use super::parts::{Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::support::Support;
use crate::error::{Error, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Caution, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::{Angle, Length, Sum};

/// An offset cleat, and the fold that hooks it. Distances along the slope run from its front, the edge of its tongue, up to its back, the edge of its foot.
///
/// In a job file `width` is [`CLEAT_WIDTH`](crate::practice::junction::CLEAT_WIDTH), `screws_below_tape_edge`
/// [`CLEAT_SCREWS_BELOW_TAPE_EDGE`](crate::practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE), `fold` [`END_FOLD`](crate::practice::panel::END_FOLD) and
/// `least_engagement` [`ENGAGEMENT`](crate::practice::movement::ENGAGEMENT) unless given.
///
/// ```
/// use seamwright::junction::{FastenerRow, OffsetCleat, TrimSheet};
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let cleat = OffsetCleat {
///     sheet: TrimSheet { thickness: Length::mils(40), inside_radius: Length::mils(40) },
///     width: practice::CLEAT_WIDTH,
///     tongue: Length::parse("1 1/4\"")?,
///     rise: Length::parse("1/4\"")?,
///     tape_width: Length::parse("1 1/2\"")?,
///     tape: Length::parse("1/16\"")?,
///     screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///     screws: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     gap: Length::parse("1/4\"")?,
///     fold: panel::END_FOLD,
///     least_engagement: Length::parse("3/8\"")?,
/// };
/// assert_eq!(cleat.panel_addition()?, Length::parse("1 1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OffsetCleat {
    /// Its sheet.
    pub sheet: TrimSheet,
    /// From its front up to its back.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::cleat_width"))]
    pub width: Length,
    /// From its front up to its web: the room for the fold.
    pub tongue: Length,
    /// From the underside of its foot to the underside of its tongue.
    pub rise: Length,
    /// Width of the tape under its foot, whose upper edge lies at its back.
    pub tape_width: Length,
    /// That tape's thickness, compressed.
    pub tape: Length,
    /// From the tape's upper edge down to the screws.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::cleat_screws_below_tape_edge"))]
    pub screws_below_tape_edge: Length,
    /// The screws.
    pub screws: FastenerRow,
    /// From its front down to the nose of the fold, at the laying temperature.
    pub gap: Length,
    /// The fold of the panels' ends under its tongue.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::end_fold"))]
    pub fold: Length,
    /// How much of the fold must be engaged at the laying temperature.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::engagement"))]
    pub least_engagement: Length,
}

/// The line that its front is held to.
const FRONT: &str = "offset cleat, front";
const SCREWS: &str = "cleat screws";
const TAPE_EDGE: &str = "cleat tape, lower edge";

/// What a cleat's lines are measured from.
#[derive(Debug, Clone, Copy)]
pub(super) enum StruckFrom {
    /// The top edge of what it stands on, down the slope.
    TopEdge,
    /// A line struck before it and where that lies, up the slope.
    Line(&'static str, Length),
}

/// Where a cleat stands, and which panels hook it.
#[derive(Debug, Clone, Copy)]
pub(super) struct CleatPlace {
    pub(super) side: Side,
    /// The face that its tape lies on.
    pub(super) on: Support,
    /// 1 where the slope rises toward +x, -1 where it falls.
    pub(super) up: i32,
    /// From the junction line up the slope to its front.
    pub(super) front: Length,
    /// From the top edge of what it stands on down to its front.
    pub(super) front_below_top: Length,
    pub(super) struck: StruckFrom,
    /// The layers of the panels that hook it.
    pub(super) panels: Levels,
}

/// A cleat in its place.
pub(super) struct LaidCleat {
    pub(super) trim: JunctionTrim,
    pub(super) along: Vec<AlongLine>,
    pub(super) lines: Vec<LayoutLine>,
    pub(super) end: SideEnd,
    /// How far the top of its tongue stands above the underside of the pan on its own supports; negative where it stands below.
    pub(super) lift: Length,
}

impl LaidCleat {
    /// Adds the cleat to its junction.
    pub(super) fn give(self, solved: &mut Solved) {
        solved.trims.push(self.trim);
        solved.along.extend(self.along);
        solved.lines.extend(self.lines);
        solved.ends.push(self.end);
    }

    /// What is said of a cleat that stands off the panels' own level.
    pub(super) fn off_level(&self, subject: &'static str) -> Result<Option<Caution>, Error> {
        if self.lift == Length::ZERO {
            return Ok(None);
        }
        let (off, way) = if self.lift.is_negative() { ((-self.lift).length()?, "below") } else { (self.lift, "above") };
        Ok(Some(Caution::new(CLEAT_OFF_LEVEL, subject, Source::geometry()).arg("off", off).arg("way", way)))
    }
}

impl OffsetCleat {
    /// What a panel adds beyond its length to the cleat's front: the gap and the fold, the bend itself left out.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn panel_addition(&self) -> Result<Length, Error> {
        (self.gap + self.fold).length()
    }

    /// What is said of its tape.
    pub(super) fn thick_tape(&self, subject: &'static str) -> Result<Option<Caution>, Error> {
        thick_tape(subject, "under the cleat", self.tape)
    }

    /// The underside and the top of its tongue over the deck, standing on a face at this height.
    pub(super) fn tongue_heights(&self, on: Length) -> Result<(Length, Length), Error> {
        let low = on + self.tape + self.rise;
        Ok((low.length()?, (low + self.sheet.thickness).length()?))
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "screws", self.screws.check());
        for (path, length) in [("width", self.width), ("tongue", self.tongue), ("rise", self.rise), ("fold", self.fold)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("tape_width", self.tape_width),
            ("tape", self.tape),
            ("screws_below_tape_edge", self.screws_below_tape_edge),
            ("gap", self.gap),
            ("least_engagement", self.least_engagement),
        ] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }

    /// The cleat in its place, its lines, and the end that it sets; every fault of it at once.
    pub(super) fn lay<R: Recorder>(&self, r: &mut R, place: &CleatPlace) -> Result<LaidCleat, Error> {
        self.check()?;
        let back = place.front_below_top - self.width;
        let mut faults = Faults::default();
        refuse_short(&mut faults, "width", "the cleat passes the top edge of what it stands on", -back, self.width, "a narrower cleat, or a lower front")?;
        refuse_short(
            &mut faults,
            "tape_width",
            "the cleat's tape is wider than its foot",
            self.tape_width + self.tongue - self.width,
            self.tape_width,
            "narrower tape, or a wider cleat",
        )?;
        let misses = self.screws_below_tape_edge - self.tape_width;
        refuse_short(&mut faults, "screws_below_tape_edge", "the cleat's screws miss their tape", misses, self.screws_below_tape_edge, "wider tape")?;
        let loose = self.gap + self.least_engagement - self.fold;
        refuse_short(&mut faults, "fold", "the fold engages too little", loose, self.fold, "a longer fold, or a smaller gap")?;
        // The cold draws the nose up against the front, and the whole fold under the tongue.
        let strikes = self.fold - self.tongue;
        refuse_short(&mut faults, "fold", "the fold strikes the cleat's web in the cold", strikes, self.fold, "a shorter fold, or a longer tongue")?;
        let tight = place.panels.pan - self.rise - self.tape;
        refuse_short(&mut faults, "rise", "the fold does not fit under the cleat's tongue", tight, self.rise, "a greater rise")?;
        faults.check()?;

        let screws = back + self.screws_below_tape_edge;
        let top = (place.front + place.front_below_top).length()?;
        let from_line = |below: Sum| (top - below).length();
        let lines = self.lines(place, top)?;
        for line in &lines {
            r.step(|| {
                let step = Step::new(line.name.clone()).formula(format!("measured from {}", line.datum));
                step.with("from the junction line", line.from_line).gives(line.from_datum).source(Source::user())
            });
        }
        let along = vec![
            tape("cleat tape", place.side, self.tape_width, false, from_line(back + self.tape_width.station(1, 2)?)?),
            AlongLine { name: FRONT.into(), side: place.side, what: Along::OffsetCleat, from_line: place.front },
            self.screws.line(SCREWS, place.side, Bites::Structure, from_line(screws)?),
        ];
        let addition = self.panel_addition()?;
        r.step(|| Step::new("a panel adds beyond the cleat's front").formula("gap + fold").with("gap", self.gap).with("fold", self.fold).gives(addition));
        let (_, top) = self.tongue_heights(place.on.height)?;
        let lift = (top - place.panels.under_pan()?).length()?;
        r.step(|| {
            let step = Step::new("top of the cleat above the panels' own level").formula("tape + rise + its metal + what it stands on - level of the pan");
            step.with("tape", self.tape).with("rise", self.rise).with("stands on", place.on.height).gives(lift).source(Source::geometry())
        });
        let reach = if place.front.is_negative() { PanelEnd::overhang((-place.front).length()?) } else { PanelEnd::hold_back(place.front) };
        let end = SideEnd { side: place.side, end: reach.with_gap(self.gap).with_fold(self.fold).holding(Hold::Slides) };
        Ok(LaidCleat { trim: self.trim(place)?, along, lines, end, lift })
    }

    fn lines(&self, place: &CleatPlace, top: Length) -> Result<Vec<LayoutLine>, Error> {
        let side = place.side;
        let (back, edge, screws) =
            (("cleat back", self.width.into()), (TAPE_EDGE, self.width - self.tape_width), (SCREWS, self.width - self.screws_below_tape_edge));
        let nose = "panel nose";
        match place.struck {
            StruckFrom::TopEdge => {
                let below = |name: &'static str, up: Sum| LayoutLine::below_top_edge(name, side, top, (place.front_below_top - up).length()?);
                [back, edge, screws, (FRONT, Sum::ZERO), (nose, -self.gap)].into_iter().map(|(name, up)| below(name, up)).collect()
            }
            StruckFrom::Line(datum, at) => {
                let mut out = vec![LayoutLine::from_line(FRONT, side, datum, at, place.front - at)?];
                for (name, up) in [edge, screws, back] {
                    out.push(LayoutLine::from_line(name, side, FRONT, place.front, up)?);
                }
                out.push(LayoutLine::from_line(nose, side, datum, at, place.front - self.gap - at)?);
                Ok(out)
            }
        }
    }

    /// The Z, its lower face on the tape; walked toward +x.
    fn trim(&self, place: &CleatPlace) -> Result<JunctionTrim, Error> {
        let low = Support { rise: place.on.rise, height: (place.on.height + self.tape).length()? };
        let high = Support { rise: place.on.rise, height: (low.height + self.rise).length()? };
        let at = |support: Support, up: Length| support.point(((place.front + up).length()? * place.up).length()?);
        let (front, web, foot, back) = (at(high, Length::ZERO)?, at(high, self.tongue)?, at(low, self.tongue)?, at(low, self.width)?);
        let reach = (self.width - self.tongue).length()?;
        let step = |to| leg("web", to).long(self.rise).bent(Angle::SQUARE);
        let walk = |start, legs: &[_]| {
            Walk { name: "offset cleat", sheet: self.sheet, start, legs, start_edge: Edge::Raw, end_edge: Edge::Raw, painted: Face::Upper }.lay()
        };
        if place.up < 0 {
            return walk(back, &[leg("foot", foot).long(reach), step(web), leg("tongue", front).long(self.tongue).bent(Angle::SQUARE)]);
        }
        walk(front, &[leg("tongue", web).long(self.tongue), step(foot), leg("foot", back).long(reach).bent(Angle::SQUARE)])
    }
}

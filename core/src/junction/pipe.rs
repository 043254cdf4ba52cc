//! A round pipe through the roof: the hole in the pan, the base over it, and the seams beside it.
//!
//! The pipe stands plumb and does not move; the panel moves under it. The base is screwed and taped to the pan alone, so that it rides, and its boot or
//! collar gives. The section lies along the seams through the pipe's middle, which is the junction line at deck level: [`Side::First`] is down the slope
//! from it, [`Side::Second`] up, and distances are positive up the slope.

use super::cautions::{PIPE_AGAINST_WATER, PIPE_CROSSES_SEAMS};
use super::draft::{keep_under, tape};
use super::parts::{Adjoining, Bites, LayoutLine, Side, Solved};
use super::pipe_parts::{FixedLine, PipeBase, PipeShape, PipeSpacing, UpperEdge};
use crate::error::{Error, ErrorKind, Faults};
use crate::movement::HeatRange;
use crate::pitch::Pitch;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;

/// A pipe as asked for.
///
/// In the plane of the pan it cuts an ellipse, its diameter across and `D / cos S` along the slope. From the laying temperature the pan at the pipe moves away
/// from the fixed line by `alpha L dT` in the heat and toward it in the cold, and the hole has room for both beside the clearance.
///
/// # Errors
/// Computing refuses a base that comes too near to a seam, by how much and with the shift that clears it; one that fits between no two seams, unless it may cross
/// them; screws or tape that miss the base; a pipe nearer to another than its rule; temperatures out of order.
///
/// ```
/// use seamwright::junction::{FastenerRow, FixedLine, Pipe, PipeBase, PipeShape, UpperEdge};
/// use seamwright::movement::HeatRange;
/// use seamwright::pitch::Pitch;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Expansion, Length, Temperature};
/// let inch = |text: &str| Length::parse(text);
/// let mut pipe = Pipe {
///     diameter: inch("3 1/2\"")?,
///     pitch: Pitch::parse("4:12")?,
///     coverage: Length::inches(18),
///     seam_width: inch("1\"")?,
///     from_seam: Length::inches(9),
///     least_to_seam: Length::inches(2),
///     clearance: inch("1/4\"")?,
///     fixed: FixedLine::Above,
///     to_fixed: Length::feet(20),
///     range: HeatRange {
///         expansion: Expansion::parse("12e-6 /K")?,
///         coldest: Temperature::parse("-20 degC")?,
///         laid: Temperature::parse("20 degC")?,
///         hottest: Temperature::parse("70 degC")?,
///     },
///     base: PipeBase {
///         shape: PipeShape::Rectangular,
///         seal: Length::inches(2),
///         tape_width: inch("7/8\"")?,
///         tape_lap: Length::inches(1),
///         screws: FastenerRow { spacing: inch("1 1/2\"")?, source: Source::CommonPractice },
///         screws_from_edge: inch("1/2\"")?,
///     },
///     upper_edge: UpperEdge::OnPan,
///     may_cross_seams: false,
///     next: None,
/// };
/// let made = pipe.compute()?;
/// // 3 1/2 in, 1/4 in on each side of it and 2 in of base on each side of that.
/// assert_eq!((made.hole_across, made.base_across), (Length::inches(4), Length::inches(8)));
/// assert_eq!(made.to_seam, [inch("4 1/2\"")?; 2]);
/// // Nearer to a seam than its base allows: by how much, and where to.
/// pipe.from_seam = Length::inches(5);
/// let refused = pipe.compute().unwrap_err();
/// assert_eq!((refused.path(), refused.cure().map(|c| c.contains("shift of 38.1 mm to the right"))), ("from_seam", Some(true)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Pipe {
    /// Its outside diameter.
    pub diameter: Length,
    /// The roof's pitch.
    pub pitch: Pitch,
    /// From seam to seam.
    pub coverage: Length,
    /// Width of a seam at its foot.
    pub seam_width: Length,
    /// From the middle of the seam on its left, looking up the slope, to the pipe's middle.
    pub from_seam: Length,
    /// From the edge of the base to the foot of a seam, at the least.
    pub least_to_seam: Length,
    /// Between the pipe and the hole's edge at the worst of the year.
    pub clearance: Length,
    /// Where the panel is fixed.
    pub fixed: FixedLine,
    /// From the pipe to that line, along the seams.
    pub to_fixed: Length,
    /// The temperatures of the panels.
    pub range: HeatRange,
    /// Its base.
    pub base: PipeBase,
    /// What the base's upper edge does.
    pub upper_edge: UpperEdge,
    /// Whether a base that fits between no two seams may cross them.
    pub may_cross_seams: bool,
    /// The nearest other pipe or curb, and how far it must be; none where there is none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub next: Option<PipeSpacing>,
}

/// What a pipe takes. See [`Pipe`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipePlan {
    /// The hole in the pan, across the slope.
    pub hole_across: Length,
    /// From the pipe's middle to the hole's lower edge, along the slope.
    pub hole_down: Length,
    /// From the pipe's middle to its upper edge.
    pub hole_up: Length,
    /// The base, across the slope.
    pub base_across: Length,
    /// From the pipe's middle to its lower edge.
    pub base_down: Length,
    /// From the pipe's middle to its upper edge.
    pub base_up: Length,
    /// From the base's left and right edge to the foot of the seam there; negative where it covers it.
    pub to_seam: [Length; 2],
    /// Seams that the base crosses.
    pub seams_crossed: u64,
    /// Screws around the base.
    pub screws: u64,
    /// Whether an engineer gave their spacing.
    pub engineered: bool,
    /// Tape around the base, its lap with it.
    pub tape: Length,
    /// The collar's bead and its clamp: the pipe's circumference.
    pub collar: Length,
    /// The section along the seams.
    pub section: Solved,
}

impl Pipe {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("diameter", self.diameter), ("coverage", self.coverage)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("seam_width", self.seam_width),
            ("from_seam", self.from_seam),
            ("least_to_seam", self.least_to_seam),
            ("clearance", self.clearance),
            ("to_fixed", self.to_fixed),
        ] {
            faults.keep(length.not_negative(path));
        }
        if self.coverage.is_positive() && self.from_seam > self.coverage {
            let error = Error::new(ErrorKind::OutOfRange, "the pipe stands in another panel").at("from_seam").value_of(self.from_seam);
            faults.add(error.accepts(format!("0 to {}", self.coverage)));
        }
        if self.pitch.angle().degrees() >= 90.0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the pipe").at("pitch").value_of(self.pitch).accepts("less than 90 deg"));
        }
        keep_under(&mut faults, "range", self.range.check());
        keep_under(&mut faults, "base", self.base.check());
        if let Some(next) = &self.next {
            let cure = format!("a place farther from it by {}", (next.rule.least - next.distance).length()?);
            next.rule.check(&mut faults, "next.distance", next.distance, next.distance, cure)?;
        }
        faults.check()
    }

    /// The sides of the line of screws, for a base so wide and so long.
    fn screw_line(&self, (across, along): (Length, Length)) -> Result<Vec<Length>, Error> {
        let twice = self.base.screws_from_edge * 2;
        let (w, l) = ((across - twice).length()?, (along - twice).length()?);
        Ok(match self.base.shape {
            PipeShape::Rectangular => vec![w, l, w, l],
            PipeShape::Round => vec![Length::from_mm(w.mm() * core::f64::consts::PI)?],
        })
    }

    /// The fewest screws on a closed line of these sides, one at each corner, none farther from the next than the spacing.
    fn screws(&self, sides: &[Length]) -> Result<u64, Error> {
        const MOST: i128 = 100_000;
        // A round base is held at four places at the least.
        let least = if self.base.shape == PipeShape::Round { 4 } else { 1 };
        let step = i128::from(self.base.screws.spacing.pm());
        let count: i128 = sides.iter().map(|side| (i128::from(side.pm()) + step - 1).div_euclid(step).max(least)).sum();
        u64::try_from(count).ok().filter(|_| count <= MOST).ok_or_else(|| {
            let error = Error::new(ErrorKind::TooLarge, "too many screws around one base").at("base.screws.spacing").value_of(self.base.screws.spacing);
            error.accepts(format!("at most {MOST} screws"))
        })
    }

    /// From the base's edges to the feet of the seams beside it: refused where that is too little and the base need not cross them.
    fn beside_seams<R: Recorder>(&self, r: &mut R, across: Length) -> Result<([Length; 2], u64), Error> {
        let half = across.station(1, 2)?;
        let foot = self.seam_width.station(1, 2)?;
        let left = (self.from_seam - half - foot).length()?;
        let right = (self.coverage - self.from_seam - half - foot).length()?;
        r.step(|| {
            let step = Step::new("from the base to the seams").formula("distance to the seam - half the base - half the seam").with("base", across);
            step.with("seam", self.seam_width).with("least", self.least_to_seam).gives(format_args!("{left} and {right}")).source(Source::geometry())
        });
        let room = (left + right - self.least_to_seam - self.least_to_seam).length()?;
        if room.is_negative() {
            if self.may_cross_seams {
                return Ok(([left, right], self.crossed(half, foot)));
            }
            let short = (-room).length()?;
            return Err(Error::new(ErrorKind::Impossible, format!("the base fits between no two seams by {short}"))
                .at("base.seal")
                .value_of(self.base.seal)
                .accepts(format!("a base {short} narrower"))
                .cured_by("a narrower flange, or a base that crosses a seam, with a diverter above it"));
        }
        for (name, other, have) in [("left", "right", left), ("right", "left", right)] {
            let short = (self.least_to_seam - have).length()?;
            if short.is_positive() {
                return Err(Error::new(ErrorKind::Impossible, format!("the base comes too near to the seam on its {name} by {short}"))
                    .at("from_seam")
                    .value_of(self.from_seam)
                    .accepts(format!("{} to {}", self.nearest(half, foot)?, (self.coverage - self.nearest(half, foot)?).length()?))
                    .cured_by(format!("the pipe's shift of {short} to the {other}, or that of all seams to the {name}, as layout.seam-clearance finds for all that stands in the plane")));
            }
        }
        Ok(([left, right], 0))
    }

    /// The least distance of the pipe's middle from a seam's.
    fn nearest(&self, half: Length, foot: Length) -> Result<Length, Error> {
        (half + foot + self.least_to_seam).length()
    }

    /// Seams whose feet lie under the base.
    fn crossed(&self, half: Length, foot: Length) -> u64 {
        let (reach, step, at) = (i128::from((half.pm()).saturating_add(foot.pm())), i128::from(self.coverage.pm()), i128::from(self.from_seam.pm()));
        // Seams lie at k coverage - from_seam: those nearer than the reach.
        let (low, high) = ((at - reach).div_euclid(step) + 1, (at + reach - 1).div_euclid(step));
        u64::try_from((high - low + 1).max(0)).unwrap_or(u64::MAX)
    }
}

impl Calculation for Pipe {
    type Out = PipePlan;

    fn title(&self) -> String {
        format!("pipe of {} through a roof of {}", self.diameter, self.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PipePlan, Error> {
        self.check()?;
        let b = &self.base;
        let slope = self.pitch.angle();
        let (heat, cold) = (self.range.warming(self.to_fixed, r)?, self.range.cooling(self.to_fixed, r)?);
        let half = Length::from_mm(self.diameter.mm() / slope.cos() / 2.0)?;
        r.step(|| {
            Step::new("half the pipe along the slope").formula("D / (2 cos S)").with("D", self.diameter).with("S", slope).gives(half).source(Source::geometry())
        });
        // A panel fixed above moves down in the heat, its hole's upper edge toward the pipe.
        let (down, up) = match self.fixed {
            FixedLine::Above => (cold, heat),
            FixedLine::Below => (heat, cold),
        };
        let hole_down = (half + self.clearance + down).length()?;
        let hole_up = (half + self.clearance + up).length()?;
        r.step(|| {
            let step = Step::new("hole's edges from the pipe's middle, down and up").formula("half the pipe + clearance + movement");
            step.with("clearance", self.clearance).with("down", down).with("up", up).gives(format_args!("{hole_down} and {hole_up}")).source(Source::geometry())
        });
        let hole_across = (self.diameter + self.clearance * 2).length()?;
        let (mut base_down, mut base_up) = ((hole_down + b.seal).length()?, (hole_up + b.seal).length()?);
        let mut base_across = (hole_across + b.seal * 2).length()?;
        if b.shape == PipeShape::Round {
            // One diameter, about the middle of the hole.
            let length = (base_down + base_up).length()?.max(base_across);
            let more = (length - base_down - base_up).length()?.station(1, 2)?;
            (base_down, base_up, base_across) = ((base_down + more).length()?, (base_up + more).length()?, length);
        }
        let size = (base_across, (base_down + base_up).length()?);
        r.step(|| {
            Step::new("base, across and along").formula("hole + seal on each side").with("seal", b.seal).gives(format_args!("{} and {}", size.0, size.1))
        });
        let (to_seam, seams_crossed) = self.beside_seams(r, base_across)?;
        let sides = self.screw_line(size)?;
        let around = Length::total(&sides)?;
        let screws = self.screws(&sides)?;
        r.step(|| {
            let step = Step::new("screws").formula("on each side, its length / spacing, upward").with("around", around);
            step.with("spacing", b.screws.spacing).gives(screws).source(b.screws.source.clone())
        });
        let tape_length = (around + b.tape_lap).length()?;
        let collar = Length::from_mm(self.diameter.mm() * core::f64::consts::PI)?;
        r.step(|| Step::new("collar").formula("pi D").with("D", self.diameter).gives(collar).source(Source::geometry()));

        let mut section = Solved::default();
        section.adjoining.push(Adjoining::Pipe { diameter: self.diameter, hole: (hole_down, hole_up), base: (base_down, base_up) });
        for (side, way, hole, base) in [(Side::First, -1, hole_down, base_down), (Side::Second, 1, hole_up, base_up)] {
            let at = |from: Length| -> Result<Length, Error> { (from * way).length() };
            let screws_at = at((base - b.screws_from_edge).length()?)?;
            let names = if side == Side::First { ("hole, lower edge", "base, lower edge") } else { ("hole, upper edge", "base, upper edge") };
            section.along.push(tape("tape under the base", side, b.tape_width, true, screws_at));
            section.along.push(b.screws.line("screws of the base", side, Bites::Panel, screws_at));
            section.lines.push(LayoutLine::from_junction(names.0, side, at(hole)?.into())?);
            section.lines.push(LayoutLine::from_junction(names.1, side, at(base)?.into())?);
            section.lines.push(LayoutLine::from_line("screws of the base", side, names.1, at(base)?, screws_at - at(base)?)?);
        }
        if self.upper_edge == UpperEdge::OnPan {
            section.cautions.push(Caution::new(PIPE_AGAINST_WATER, "upper_edge", Source::CommonPractice).arg("width", base_across));
        }
        if seams_crossed > 0 {
            let caution = Caution::new(PIPE_CROSSES_SEAMS, "may_cross_seams", Source::CommonPractice);
            section.cautions.push(caution.arg("width", base_across).arg("count", seams_crossed));
        }
        let engineered = matches!(b.screws.source, Source::Engineer { .. });
        Ok(PipePlan {
            hole_across,
            hole_down,
            hole_up,
            base_across,
            base_down,
            base_up,
            to_seam,
            seams_crossed,
            screws,
            engineered,
            tape: tape_length,
            collar,
            section,
        })
    }
}

//! One tapered piece.

use super::develop::{Flat2, Ruling, Sweep, ruling_length};
use super::ends::{self, HeldLine};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::size::to_length;
use crate::trim::{BendRule, BendSize, BlankBend, BlankEdge, BlankFold, BlankLine, BlankSide, Flat, FlatBend, FlatBlank, Part, Point, Profile, cautions};
use crate::units::{Angle, Area, BendAngle, Length};

/// A tapered trim: two profiles in parallel planes, leg by leg the same but for their lengths.
///
/// Each leg is a plane quadrilateral from the one section to the other; laid flat one after another they are the blank, with bend lines that converge.
/// A leg stays plane only if it is parallel at both ends, so every bend has the same angle in both sections; where the line of a bend leans, what the
/// brake turns is not quite that angle, and the result gives it.
///
/// The allowance of a bend is that of its angle in the sections, so that along each end the blank is as wide as the profile's girth there. Across a line
/// that leans the bend is then a little elliptical; how much a bend that is round across its line would change the blank is in
/// [`TaperBend::round_bend`].
///
/// # Errors
/// Computing refuses, with the field: a length or tolerance of zero or less; every fault of [`Profile::validate_with`] at `near` and `far`; profiles that
/// differ in legs, bends, hems or their directions ([`ErrorKind::Conflict`]); angles that differ, by how much ([`ErrorKind::Geometry`]); a held
/// line that the profile does not have ([`ErrorKind::Unknown`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Part, Point, Profile, Taper};
/// use seamwright::units::{BendAngle, Length};
/// let angle = |face: i16| {
///     Profile::builder(Length::mils(24))
///         .painted(Face::Upper)
///         .inside_radius(Length::mils(24))
///         .leg("flange", Length::inches(4))
///         .down(BendAngle::SQUARE)
///         .leg("face", Length::inches(face))
///         .build()
/// };
/// let (near, far) = (angle(2)?, angle(3)?);
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let girth = near.girth(&rule)?;
/// let taper = Taper {
///     near,
///     far,
///     length: Length::feet(10),
///     rule,
///     held: HeldLine::Bend(Part::Body(0)),
///     offset: Point::ORIGIN,
///     tolerance: Length::micrometres(10),
/// };
/// let made = taper.compute()?;
/// assert_eq!(made.near.girth(), girth);
/// // The lower edge drops by an inch over ten feet.
/// assert_eq!(made.blank.bends[0].lines[0].length()?, Length::feet(10));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Taper {
    /// The profile at the near end.
    pub near: Profile,
    /// The profile at the far end.
    pub far: Profile,
    /// From the one section to the other, square to both.
    pub length: Length,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The line that runs straight along.
    pub held: HeldLine,
    /// How far the held line goes aside after all, from the near section to the far one, with the profile's first leg along x.
    #[cfg_attr(feature = "serde", serde(default))]
    pub offset: Point,
    /// How far a chord of the blank's ends may stray from the curve in a bend.
    pub tolerance: Length,
}

/// A leg of a tapered trim in the flat.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, Taper};
/// use seamwright::units::Length;
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let (near, far) = (strip(4)?, strip(7)?);
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let (held, offset, tolerance) = (HeldLine::StartEdge, Point::ORIGIN, Length::micrometres(10));
/// let made = Taper { near, far, length: Length::inches(4), rule, held, offset, tolerance }.compute()?;
/// let leg = &made.legs[0];
/// assert_eq!((leg.slant, leg.end.length()?), (Length::inches(4), Length::inches(5)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperLeg {
    /// Which leg of the profile.
    pub part: Part,
    /// Its side towards the start edge, from the near end to the far one.
    pub start: BlankLine,
    /// Its side towards the end edge.
    pub end: BlankLine,
    /// From end to end in the leg's own plane, square to both ends.
    pub slant: Length,
}

/// A bend of a tapered trim.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Direction, Face, HeldLine, NeutralFactor, Point, Profile, Taper};
/// use seamwright::units::{BendAngle, Length};
/// let angle = |face: i16| {
///     Profile::builder(Length::mils(24))
///         .painted(Face::Upper)
///         .inside_radius(Length::mils(24))
///         .leg("flange", Length::inches(4))
///         .down(BendAngle::SQUARE)
///         .leg("face", Length::inches(face))
///         .build()
/// };
/// let (near, far) = (angle(2)?, angle(3)?);
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// // The lower edge is held level, so the bend line rises.
/// let (held, offset, tolerance) = (HeldLine::EndEdge, Point::ORIGIN, Length::micrometres(10));
/// let made = Taper { near, far, length: Length::feet(10), rule, held, offset, tolerance }.compute()?;
/// let bend = &made.bends[0];
/// assert_eq!(bend.near_station, made.near.bends()[0].line);
/// // The line leans within the face's plane only, so the brake still turns it square.
/// assert!((bend.turn.degrees() - 90.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperBend {
    /// Which bend of the profile, or which hem.
    pub part: Part,
    /// The bend line, from the near end to the far one.
    pub line: BlankLine,
    /// Where it leaves the near end, measured along that end from the start edge.
    pub near_station: Length,
    /// Where it comes to the far end, measured along that end from the start edge.
    pub far_station: Length,
    /// What the brake turns it by, square across the line.
    pub turn: BendAngle,
    /// From tangent line to tangent line, square across.
    pub across: Length,
    /// How much wider the blank would be across this line if the bend were round across it; nothing for a hem, or where the rule does not cover that bend.
    pub round_bend: Option<Length>,
}

/// A tapered trim in the flat.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, Taper};
/// use seamwright::units::Length;
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let (near, far) = (strip(4)?, strip(7)?);
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let (held, offset, tolerance) = (HeldLine::StartEdge, Point::ORIGIN, Length::micrometres(10));
/// let made = Taper { near, far, length: Length::inches(4), rule, held, offset, tolerance }.compute()?;
/// assert_eq!((made.near.girth(), made.far.girth()), (Length::inches(4), Length::inches(7)));
/// assert_eq!(made.blank.bounds()?.size()?, (Length::inches(7), Length::inches(4)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperedTrim {
    /// The flat pattern of the near end: girth and stations along that end.
    pub near: Flat,
    /// The flat pattern of the far end.
    pub far: Flat,
    /// The legs, returns of hems among them.
    pub legs: Vec<TaperLeg>,
    /// The bends, folds of hems among them.
    pub bends: Vec<TaperBend>,
    /// The blank, its start edge on the y axis.
    pub blank: FlatBlank,
    /// Whether its near end is cut askew, as the lower end of a valley's pan: then a bend's station there is told square to the start edge, where its line meets the cut.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "core::ops::Not::not"))]
    pub near_is_cut: bool,
    /// The area of its metal.
    pub area: Area,
}

/// The near and far line of the blank's ends as they are laid, and what lies between.
struct Laying {
    near: Vec<Point>,
    far: Vec<Point>,
    legs: Vec<TaperLeg>,
    bends: Vec<TaperBend>,
    folds: Vec<BlankBend>,
    cautions: Vec<Caution>,
}

fn point((x, y): Flat2) -> Result<Point, Error> {
    Ok(Point { x: to_length(x)?, y: to_length(y)? })
}

fn line(ruling: &Ruling) -> Result<BlankLine, Error> {
    Ok(BlankLine { from: point(ruling.at)?, to: point(ruling.far())? })
}

/// What the brake turns a bend by: between the planes of its legs, square across its line.
fn turn_across(bend: &FlatBend, heading: f64, (x, y): Flat2, length: f64) -> Result<BendAngle, Error> {
    let flat = bend.angle.degrees();
    if flat.to_bits() == 180.0_f64.to_bits() {
        return Ok(bend.angle);
    }
    // The normal of a leg that heads this way along the ruling (x, y, length).
    let normal = |degrees: f64| {
        let (sin, cos) = (num::sin_deg(degrees), num::cos_deg(degrees));
        [sin * length, -cos * length, cos * y - sin * x]
    };
    let (a, b) = (normal(heading), normal(heading + bend.direction.sign() * flat));
    let cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    let between = num::atan2_deg((cross[0] * cross[0] + cross[1] * cross[1] + cross[2] * cross[2]).sqrt(), a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
    BendAngle::from_flat(Angle::degrees_from(if flat > 180.0 { 360.0 - between } else { between })?)
}

impl Taper {
    fn flats(&self) -> Result<(Flat, Flat), Error> {
        let mut faults = Faults::default();
        faults.keep(self.length.positive("length"));
        faults.keep(self.tolerance.positive("tolerance"));
        let near = faults.keep(self.near.unfold(&self.rule).map_err(|e| e.under("near")));
        let far = faults.keep(self.far.unfold(&self.rule).map_err(|e| e.under("far")));
        faults.keep(ends::same_build(&self.near, &self.far));
        faults.check()?;
        near.zip(far).ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))
    }

    /// What a bend that is round across its line would add to the blank, from corner line to corner line.
    fn round_bend(&self, flat: &Flat, bend: &FlatBend, turn: BendAngle, sines: (f64, f64), across: f64) -> Option<Length> {
        let setback = |angle: BendAngle| BendSize { thickness: flat.thickness(), inside_radius: bend.inside_radius, angle }.outside_setback().ok();
        let laid = setback(bend.angle)?.mm() * (sines.0 + sines.1) - across;
        let size = BendSize { thickness: flat.thickness(), inside_radius: bend.inside_radius, angle: turn };
        let round = flat.rule_of(bend).deduction(size).ok()?.mm();
        to_length(laid - round).ok()
    }

    fn lay<R: Recorder>(&self, r: &mut R, near: &Flat, far: &Flat) -> Result<Laying, Error> {
        let length = self.length.mm();
        let first_turn = near.bends().first().filter(|b| b.part == Part::StartHem).map_or(0.0, |b| b.direction.sign() * b.angle.degrees());
        let mut headings = vec![-first_turn];
        for bend in near.bends() {
            headings.push(headings.last().copied().unwrap_or(0.0) + bend.direction.sign() * bend.angle.degrees());
        }
        let shifts = ends::shifts(self, near, far, &headings)?;
        let mut out = Laying { near: Vec::new(), far: Vec::new(), legs: Vec::new(), bends: Vec::new(), folds: Vec::new(), cautions: Vec::new() };
        let mut ruling = Ruling::first(shifts.first().copied().unwrap_or_default(), length);
        out.near.push(point(ruling.at)?);
        out.far.push(point(ruling.far())?);
        for (i, ((a, b), heading)) in near.legs().iter().zip(far.legs()).zip(&headings).enumerate() {
            let shift = shifts.get(i).copied().unwrap_or_default();
            let start = line(&ruling)?;
            let (next, slant) = ruling.across_leg(shift, *heading, (a.length().mm(), b.length().mm()))?;
            ruling = next;
            let leg = TaperLeg { part: a.part, start, end: line(&ruling)?, slant: to_length(slant)? };
            let aside = (length * length - slant * slant).abs().sqrt();
            r.step(|| {
                Step::new(format!("slant height of leg {}", leg.part))
                    .formula("sqrt(length^2 + (shift square to the leg)^2)")
                    .with("length", self.length)
                    .with("shift square to the leg", format_args!("{aside} mm"))
                    .with("width at the near end", a.length())
                    .with("width at the far end", b.length())
                    .gives(leg.slant)
                    .source(Source::geometry())
            });
            out.legs.push(leg);
            out.near.push(point(ruling.at)?);
            out.far.push(point(ruling.far())?);
            if let (Some(bend), Some(end)) = (near.bends().get(i), far.bends().get(i)) {
                let shift = shifts.get(i + 1).copied().unwrap_or_default();
                ruling = self.bend(r, near, (bend, end), (*heading, shift), ruling, &mut out)?;
            }
        }
        Ok(out)
    }

    fn bend<R: Recorder>(
        &self,
        r: &mut R,
        near: &Flat,
        (bend, end): (&FlatBend, &FlatBend),
        (heading, shift): (f64, Flat2),
        ruling: Ruling,
        out: &mut Laying,
    ) -> Result<Ruling, Error> {
        let length = self.length.mm();
        let turn = bend.direction.sign() * bend.angle.degrees();
        let radius = bend.allowance().mm() / bend.angle.angle().radians();
        let lean = (shift.0 / ruling.length, shift.1 / ruling.length);
        let sweep = Sweep { heading, turn, radius, lean };
        let count = sweep.chords(self.tolerance.mm())?;
        let mut across = 0.0;
        let mut middle = ruling;
        let mut here = ruling;
        for i in 1..=count {
            let (from, to) = (f64::from(i - 1) / f64::from(count), f64::from(i) / f64::from(count));
            across += sweep.across(from, to);
            here = Ruling { at: ruling.point(sweep.along(to), across), ..ruling };
            if 2 * i == count {
                middle = here;
            }
            // A bend that takes no metal has no width.
            if across > 0.0 {
                out.near.push(point(here.at)?);
                out.far.push(point(here.far())?);
            }
        }
        let turn_here = turn_across(bend, heading, shift, length)?;
        let sine = |degrees: f64| {
            let along = shift.0 * num::cos_deg(degrees) + shift.1 * num::sin_deg(degrees);
            (1.0 - along * along / (ruling.length * ruling.length)).max(0.0).sqrt()
        };
        let round_bend = self.round_bend(near, bend, turn_here, (sine(heading), sine(heading + turn)), across);
        let made = TaperBend {
            part: bend.part,
            line: line(&middle)?,
            near_station: bend.line,
            far_station: end.line,
            turn: turn_here,
            across: to_length(across)?,
            round_bend,
        };
        r.step(|| {
            Step::new(format!("line of bend {}", BlankFold::Bend(made.part)))
                .formula("length: sqrt(length^2 + shift^2); its stations are those of the two end sections")
                .with("length", self.length)
                .with("shift", format_args!("{} mm", num::hypot(shift.0, shift.1)))
                .with("near station", made.near_station)
                .with("far station", made.far_station)
                .with("turned on the brake by", made.turn)
                .gives(format!("{} mm", ruling_length(shift, length)))
                .source(Source::geometry())
        });
        if let Some(by) = round_bend.filter(|by| by.pm().saturating_abs() > practice::trim::ROUND_BEND.pm()) {
            out.cautions.push(
                Caution::new(cautions::TAPER_BEND_OBLIQUE, bend.part.bend_path(), Source::geometry())
                    .arg("section", bend.angle)
                    .arg("turn", turn_here)
                    .arg("by", by),
            );
        }
        out.folds.push(BlankBend {
            fold: BlankFold::Bend(bend.part),
            lines: vec![made.line],
            tangents: vec![line(&ruling)?, line(&here)?],
            angle: turn_here,
            direction: bend.direction,
            inside_radius: bend.inside_radius,
        });
        out.bends.push(made);
        Ok(here)
    }
}

/// The stretches from point to point, those of no length left out.
pub(super) fn stretches(points: &[Point], side: BlankSide, out: &mut Vec<BlankEdge>) {
    for pair in points.windows(2) {
        if let [from, to] = pair
            && from != to
        {
            out.push(BlankEdge { side, from: *from, to: *to, arc: None });
        }
    }
}

impl Calculation for Taper {
    type Out = TaperedTrim;

    fn title(&self) -> String {
        format!("tapered trim, {}, sheet {}", self.rule, self.near.thickness)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<TaperedTrim, Error> {
        let (near, far) = self.flats()?;
        ends::same_angles(&near, &far)?;
        for (end, flat) in [("near", &near), ("far", &far)] {
            r.step(|| {
                Step::new(format!("girth at the {end} end")).formula("sum of the flat parts and the bends").gives(flat.girth()).source(Source::geometry())
            });
        }
        let laid = self.lay(r, &near, &far)?;
        let mut outline = Vec::with_capacity(2 * laid.near.len());
        stretches(&laid.near, BlankSide::NearEnd, &mut outline);
        let last = [laid.near.last(), laid.far.last()].map(|p| p.copied().unwrap_or(Point::ORIGIN));
        stretches(&last, BlankSide::EndEdge, &mut outline);
        let back: Vec<Point> = laid.far.iter().rev().copied().collect();
        stretches(&back, BlankSide::FarEnd, &mut outline);
        let first = [laid.far.first(), laid.near.first()].map(|p| p.copied().unwrap_or(Point::ORIGIN));
        stretches(&first, BlankSide::StartEdge, &mut outline);
        let mut all = near.cautions().to_vec();
        all.extend(laid.cautions);
        let blank = FlatBlank { thickness: near.thickness(), outline, bends: laid.folds, holes: Vec::new(), cautions: all };
        blank.check().map_err(|e| e.under("blank"))?;
        let area = blank.area()?;
        Ok(TaperedTrim { near, far, legs: laid.legs, bends: laid.bends, blank, near_is_cut: false, area })
    }
}

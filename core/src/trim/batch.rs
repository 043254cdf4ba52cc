//! Girths of one profile over many thicknesses and inside radii.
//!
//! With the angles fixed, every setback and every allowance is a number times the radius plus a number times the thickness, under DIN 6935 plus a
//! number times `k t`, and a table's is looked up. So the profile is walked once on those numbers, which the rules themselves give for a radius or a
//! thickness of one, and each element costs a few products. Nothing is rounded. Whether an element can be folded at all is the scalar path's
//! verdict wherever that is not clear by a margin: both refuse the same elements.

use super::deductions::DeductionTable;
use super::edge::Edge;
use super::factors::DinFactor;
use super::leg::LegEnd;
use super::profile::Profile;
use super::rule::BendRule;
use super::size::{BendMm, BendSize, QUICK_MM, to_length};
use super::walk::{Part, Walk, WalkBend};
use super::{deductions, din, solve};
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{BendAngle, Length, LengthArray, LengthUnit};

/// Elements that are worked on together: they stay in the nearest cache.
const BLOCK: usize = 256;

/// What is nearer to a limit than this, in millimetres, is left to the scalar path: far more than its rounding to the picometre moves.
const MARGIN: f64 = 1e-6;

/// A girth below this, in millimetres, is surely within the range of a length.
const MOST_MM: f64 = 1e9;

/// The girths of a profile, each with a thickness and an inside radius of its own, unrounded.
///
/// Every bend of the profile takes the element's radius in place of its own; hems keep theirs. All else stays as the profile has it: legs, angles,
/// and rules that bends have of their own. Each result is what [`Profile::girth`] gives for the element before it rounds to the picometre; after it, where an
/// edge is shaped by the thickness (teardrop, double, wired) or a rule stands in for another.
///
/// # Errors
/// [`ErrorKind::Conflict`] for arrays that are not equally long; the first element that [`Profile::girth`] refuses, at `elements[i]` with the
/// field behind it.
///
/// ```
/// use seamwright::trim::{girths, BendRule, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length, LengthArray, LengthUnit};
/// let l = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("a", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(3))
///     .build()?;
/// let rule = BendRule::neutral_axis(NeutralFactor::new(0.33)?);
/// let thickness = LengthArray { values: &[0.6, 0.7], unit: LengthUnit::Millimetre };
/// let radius = LengthArray { values: &[0.03, 0.03], unit: LengthUnit::Inch };
/// let found = girths(&l, &rule, thickness, radius, LengthUnit::Inch)?;
/// // 5 in less two setbacks of R + T, plus pi/2 (R + 0.33 T).
/// let t = 0.7 / 25.4;
/// assert!((found[1] - (5.0 - 2.0 * (0.03 + t) + core::f64::consts::FRAC_PI_2 * (0.03 + 0.33 * t))).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn girths(profile: &Profile, rule: &BendRule, thickness: LengthArray<'_>, inside_radius: LengthArray<'_>, unit: LengthUnit) -> Result<Vec<f64>, Error> {
    let mut out = vec![0.0; thickness.values.len()];
    girths_into(profile, rule, thickness, inside_radius, &mut out, unit)?;
    Ok(out)
}

/// As [`girths`], into an array that the caller has. What it holds after a refusal has no meaning.
///
/// # Errors
/// As [`girths`].
///
/// ```
/// use seamwright::trim::{girths_into, BendRule, Face, Profile};
/// use seamwright::units::{Length, LengthArray, LengthUnit};
/// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(6)).build()?;
/// let one = LengthArray { values: &[0.6], unit: LengthUnit::Millimetre };
/// let mut found = [0.0];
/// girths_into(&strip, &BendRule::Din6935, one, one, &mut found, LengthUnit::Inch)?;
/// assert!((found[0] - 6.0).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn girths_into(
    profile: &Profile,
    rule: &BendRule,
    thickness: LengthArray<'_>,
    inside_radius: LengthArray<'_>,
    out: &mut [f64],
    unit: LengthUnit,
) -> Result<(), Error> {
    let count = thickness.values.len();
    let mut faults = Faults::default();
    for (path, found) in [("inside_radius", inside_radius.values.len()), ("girths", out.len())] {
        if found != count {
            faults.add(
                Error::new(ErrorKind::Conflict, "the arrays are not equally long")
                    .at(path)
                    .value_of(format_args!("{found} elements"))
                    .accepts(format!("{count}, as many as thicknesses")),
            );
        }
    }
    faults.check()?;
    let mut single = Single { profile: profile.clone(), rule, thickness, inside_radius };
    let (t_mm, r_mm, back) = (mm_in(thickness.unit), mm_in(inside_radius.unit), 1.0 / mm_in(unit));
    if !is_straight(profile, rule) {
        for (index, out) in out.iter_mut().enumerate() {
            *out = single.girth(index)?.mm() * back;
        }
        return Ok(());
    }
    let folded = match Folded::of(profile, rule) {
        Ok(folded) => folded,
        // A fault of the profile itself, which every element has; where there is none, nothing is asked.
        Err(_) if count == 0 => return Ok(()),
        Err(first) => return Err(single.check(0).err().unwrap_or(first)),
    };
    let mut block = Block { t: [0.0; BLOCK], r: [0.0; BLOCK], girth: [0.0; BLOCK] };
    let inputs = thickness.values.chunks(BLOCK).zip(inside_radius.values.chunks(BLOCK));
    for (start, ((t, r), out)) in (0..).step_by(BLOCK).zip(inputs.zip(out.chunks_mut(BLOCK))) {
        if !block.fill(&folded, t.iter().map(|t| t * t_mm), r.iter().map(|r| r * r_mm)) {
            (start..start + t.len()).try_for_each(|index| single.check(index))?;
        }
        if !folded.looked.is_empty() {
            for (index, girth) in (start..).zip(block.girth.iter_mut().take(t.len())) {
                match single.looked(&folded.looked, index) {
                    Ok(allowances) => *girth += allowances,
                    Err(first) => return Err(single.check(index).err().unwrap_or(first)),
                }
            }
        }
        for (out, girth) in out.iter_mut().zip(&block.girth) {
            *out = girth * back;
        }
    }
    Ok(())
}

#[allow(clippy::cast_precision_loss, reason = "a unit's picometres are a whole number far below 2^53")]
fn mm_in(unit: LengthUnit) -> f64 {
    unit.picometres() as f64 / LengthUnit::Millimetre.picometres() as f64
}

/// Whether every figure follows thickness and radius in a straight line, DIN's factor and tables apart.
fn is_straight(profile: &Profile, rule: &BendRule) -> bool {
    let edges = [&profile.start_edge, &profile.end_edge];
    let mut rules = profile.bends.iter().filter_map(|bend| bend.rule.as_deref()).chain(edges.into_iter().filter_map(Edge::rule)).chain([rule]);
    edges.into_iter().all(|edge| matches!(edge, Edge::Raw | Edge::ClosedHem { .. } | Edge::OpenHem { .. }))
        && !rules.any(|r| matches!(r, BendRule::Din6935Or(_)))
}

/// One element as the scalar path has it, rounded to the picometre.
struct Single<'a> {
    profile: Profile,
    rule: &'a BendRule,
    thickness: LengthArray<'a>,
    inside_radius: LengthArray<'a>,
}

impl Single<'_> {
    /// The scalar path's verdict.
    fn check(&mut self, index: usize) -> Result<(), Error> {
        self.girth(index).map(drop)
    }

    fn girth(&mut self, index: usize) -> Result<Length, Error> {
        self.size(index)
            .and_then(|(thickness, radius)| {
                self.profile.thickness = thickness;
                for bend in &mut self.profile.bends {
                    bend.inside_radius = radius;
                }
                self.profile.girth(self.rule)
            })
            .map_err(|e| e.under(&format!("elements[{index}]")))
    }

    /// Thickness and radius; [`Length::from_f64`] refuses what is none.
    fn size(&self, index: usize) -> Result<(Length, Length), Error> {
        let mut faults = Faults::default();
        let mut length = |array: LengthArray<'_>, path: &str| {
            let value = array.values.get(index).copied().unwrap_or(f64::NAN);
            faults.keep(Length::from_f64(value, array.unit).map_err(|e| e.at(path))).unwrap_or_default()
        };
        let size = (length(self.thickness, "thickness"), length(self.inside_radius, "inside_radius"));
        faults.check().map(|()| size)
    }

    /// The allowances of the bends that stand in tables, whose rows are found by exact size.
    fn looked(&self, bends: &[Looked<'_>], index: usize) -> Result<f64, Error> {
        let (thickness, radius) = self.size(index)?;
        let mut sum = 0.0;
        for bend in bends {
            let size = BendSize { thickness, inside_radius: bend.own_radius.unwrap_or(radius), angle: bend.angle };
            let allowance = deductions::allowance_mm(bend.table, &BendMm::of(size, thickness.mm())?)?;
            if to_length(allowance)?.is_negative() {
                return Err(solve::negative_allowance(to_length(allowance)?));
            }
            sum += allowance;
        }
        Ok(sum)
    }
}

/// A length in millimetres that follows the element: `fixed + radius r + thickness t + factor k t`, with the factor k of DIN 6935.
#[derive(Debug, Clone, Copy, Default)]
struct Form {
    fixed: f64,
    radius: f64,
    thickness: f64,
    factor: f64,
}

impl Form {
    /// What is linear in the radius and the thickness of this bend. A hem's radius is its own, so that its share is fixed.
    fn linear(bend: &WalkBend<'_>, of: impl Fn(&BendMm) -> Result<f64, Error>) -> Result<Form, Error> {
        let (radius, thickness) = (of(&BendMm::unit(bend.angle, 1.0, 0.0))?, of(&BendMm::unit(bend.angle, 0.0, 1.0))?);
        Ok(match bend.part {
            Part::Body(_) => Form { radius, thickness, ..Form::default() },
            _ => Form { fixed: radius * bend.inside_radius.mm(), thickness, ..Form::default() },
        })
    }

    fn plus(self, other: Form, times: f64) -> Form {
        Form {
            fixed: self.fixed + times * other.fixed,
            radius: self.radius + times * other.radius,
            thickness: self.thickness + times * other.thickness,
            factor: self.factor + times * other.factor,
        }
    }

    /// Its value without the factor's share.
    #[inline(always)]
    fn at(&self, t: f64, r: f64) -> f64 {
        self.fixed + self.radius * r + self.thickness * t
    }

    /// Whether it is at least the other for every radius and thickness; neither has a factor's share.
    fn is_never_less(&self, other: &Form) -> bool {
        self.fixed >= other.fixed && self.radius >= other.radius && self.thickness >= other.thickness
    }
}

/// A bend whose deduction stands in a table.
struct Looked<'a> {
    angle: BendAngle,
    table: &'a DeductionTable,
    /// The radius of a hem; a bend of the body has the element's.
    own_radius: Option<Length>,
}

/// The walk over the profile, for every thickness and radius at once.
struct Folded<'a> {
    girth: Form,
    /// What must not be negative: flats of legs, and what hems leave of the flats that they lie on.
    limits: Vec<Form>,
    looked: Vec<Looked<'a>>,
    /// Whether a bend is under DIN 6935, which refuses what is too sharp in all its ranges.
    din: bool,
}

impl<'a> Folded<'a> {
    fn of(profile: &'a Profile, rule: &'a BendRule) -> Result<Folded<'a>, Error> {
        if !solve::is_whole(profile) {
            return Err(solve::not_a_profile());
        }
        let walk = Walk::of(profile);
        let mut out = Folded { girth: Form::default(), limits: Vec::with_capacity(walk.bend_count() + 1), looked: Vec::new(), din: false };
        let mut before: Option<WalkBend<'_>> = None;
        let mut last: Option<(Part, Form)> = None;
        for (at, leg) in walk.legs().enumerate() {
            let after = walk.bend(at);
            let mut flat = Form { fixed: leg.length.positive("length")?.mm(), ..Form::default() };
            for (end, bend) in [(leg.start, &before), (leg.end, &after)] {
                flat = flat.plus(setback(end, bend.as_ref())?, -1.0);
            }
            match (last, leg.part) {
                (Some((Part::StartHem, hem)), _) => out.limit(flat.plus(hem, -1.0)),
                (Some((_, body)), Part::EndHem) => out.limit(body.plus(flat, -1.0)),
                _ => {}
            }
            out.limit(flat);
            out.girth = out.girth.plus(flat, 1.0);
            last = Some((leg.part, flat));
            if let Some(bend) = &after {
                out.bend(bend, bend.rule.unwrap_or(rule))?;
            }
            before = after;
        }
        Ok(out)
    }

    /// Keeps a limit, unless another already holds it; those that it holds itself go.
    fn limit(&mut self, form: Form) {
        if !self.limits.iter().any(|kept| form.is_never_less(kept)) {
            self.limits.retain(|kept| !kept.is_never_less(&form));
            self.limits.push(form);
        }
    }

    fn bend(&mut self, bend: &WalkBend<'_>, rule: &'a BendRule) -> Result<(), Error> {
        // The size is the element's; here the angle alone is asked.
        BendSize { thickness: Length::micrometres(1), inside_radius: Length::ZERO, angle: bend.angle }.check()?;
        let allowance = match rule {
            BendRule::Deductions(table) => {
                let own_radius = (!matches!(bend.part, Part::Body(_))).then_some(bend.inside_radius);
                self.looked.push(Looked { angle: bend.angle, table, own_radius });
                return Ok(());
            }
            BendRule::Din6935 => {
                self.din = true;
                let unit = BendMm::unit(bend.angle, 0.0, 1.0);
                din::no_hem(&unit)?;
                let form = Form::linear(bend, |bend| din::allowance_with(bend, 1.0))?;
                if din::takes_factor(&unit) { Form { thickness: 0.0, factor: form.thickness, ..form } } else { form }
            }
            rule => Form::linear(bend, |bend| rule.allowance_mm(bend))?,
        };
        self.girth = self.girth.plus(allowance, 1.0);
        Ok(())
    }
}

fn setback(end: LegEnd, bend: Option<&WalkBend<'_>>) -> Result<Form, Error> {
    match (end, bend) {
        (LegEnd::SheetEdge, None) => Ok(Form::default()),
        (end, Some(bend)) => Form::linear(bend, |bend| end.beyond_mm(bend)),
        (_, None) => Err(solve::not_an_edge()),
    }
}

/// One block of elements in millimetres.
struct Block {
    t: [f64; BLOCK],
    r: [f64; BLOCK],
    girth: [f64; BLOCK],
}

impl Block {
    /// Works out the girths of as many elements as come, at most a block, and whether all of them are clear of every limit.
    ///
    /// Each pass is a plain loop over arrays that counts what is in doubt, with no way out of it, so that it runs several elements at a time.
    #[inline(always)]
    fn fill(&mut self, folded: &Folded<'_>, t: impl ExactSizeIterator<Item = f64>, r: impl Iterator<Item = f64>) -> bool {
        let count = t.len();
        for (((own_t, own_r), t), r) in self.t.iter_mut().zip(&mut self.r).zip(t).zip(r) {
            (*own_t, *own_r) = (t, r);
        }
        let (Some(t), Some(r), Some(girth)) = (self.t.get(..count), self.r.get(..count), self.girth.get_mut(..count)) else { return false };
        // NaN is in doubt too, so what is asked is whether it is clear.
        let doubt = |clear: bool| u64::from(!clear);
        let mut doubts = 0;
        for ((girth, t), r) in girth.iter_mut().zip(t).zip(r) {
            *girth = folded.girth.at(*t, *r);
            doubts += doubt((*t >= MARGIN) & (*t <= QUICK_MM) & (*r >= 0.0) & (*r <= QUICK_MM) & (*girth <= MOST_MM));
        }
        for limit in &folded.limits {
            for (t, r) in t.iter().zip(r) {
                doubts += doubt(limit.at(*t, *r) >= MARGIN);
            }
        }
        if folded.din {
            for ((girth, t), r) in girth.iter_mut().zip(t).zip(r) {
                let k = DinFactor::formula(r / t);
                *girth += folded.girth.factor * (k * t);
                doubts += doubt(k >= MARGIN);
            }
        }
        doubts == 0
    }
}

//! Shapes to start from, and the one that fits.

use super::least_squares::{Fit, fit};
use super::observations::{Known, Observed, Spot, V2, check_fixed, length, sub};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::roof::{Outline, Point};
use crate::units::Length;

/// Steps of a search before it is given up.
const MOST_STEPS: u32 = 200;
/// Shapes that are tried where corners can lie on either side of what they are measured from.
const MOST_SHAPES: usize = 4096;
/// Two shapes are one if no distance differs by more than this, in millimetres.
const SAME_MM: f64 = 1e-3;

pub(super) type Fitted = Fit<Vec<V2>>;

fn searched(known: &Known, start: Vec<V2>) -> Fitted {
    // The first corner stays, and the corner farthest from it stays in its direction, so that the shape cannot drift.
    let first = start.first().copied().unwrap_or_default();
    let far = (1..start.len()).max_by(|a, b| {
        let to = |i: &usize| start.get(*i).map_or(0.0, |p| length(sub(*p, first)));
        to(a).total_cmp(&to(b))
    });
    let far = far.unwrap_or(1);
    let d = sub(start.get(far).copied().unwrap_or_default(), first);
    // That corner's coordinate across is the one that is kept; the axis nearer to the direction is the one that moves.
    let kept = 2 * far + usize::from(d[0].abs() >= d[1].abs());
    let held = move |unknown: usize| unknown < 2 || unknown == kept;
    fit(
        start,
        MOST_STEPS,
        |at| {
            let mut linear = known.linear(at);
            let mut number = 0;
            linear.columns.retain(|_| {
                number += 1;
                !held(number - 1)
            });
            linear
        },
        |at, step| {
            let mut step = step.iter();
            let mut number = 0;
            at.iter()
                .map(|p| {
                    p.map(|c| {
                        number += 1;
                        if held(number - 1) { c } else { c + step.next().copied().unwrap_or(0.0) }
                    })
                })
                .collect()
        },
    )
}

/// How far the worst observation is off, in tolerances.
fn worst(fitted: &Fitted) -> f64 {
    fitted.linear.residuals.iter().fold(0.0, |m: f64, r| m.max(r.abs()))
}

fn twice_area(at: &[V2]) -> f64 {
    at.iter().zip(at.iter().cycle().skip(1)).map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum()
}

/// The corners as a plane, if its ring is one and runs the right way, with its openings in it.
fn is_ring(known: &Known, at: &[V2]) -> bool {
    let points: Result<Vec<Point>, Error> = at.iter().map(|p| Ok(Point::new(Length::from_mm(p[0])?, Length::from_mm(p[1])?))).collect();
    let holds = |p: Vec<Point>| Outline::new(known.outer(&p).to_vec(), known.openings(&p).map(<[Point]>::to_vec).collect()).is_ok();
    twice_area(known.outer(at)) > 0.0 && points.is_ok_and(holds)
}

/// The pair of corners whose distance differs most between two shapes, and by how much.
fn difference(a: &[V2], b: &[V2]) -> (f64, [usize; 2]) {
    let apart = |at: &[V2], i: usize, j: usize| at.get(i).zip(at.get(j)).map_or(0.0, |(p, q)| length(sub(*p, *q)));
    let mut most = (0.0, [0, 0]);
    for i in 0..a.len() {
        for j in i + 1..a.len() {
            let by = (apart(a, i, j) - apart(b, i, j)).abs();
            if by > most.0 {
                most = (by, [i, j]);
            }
        }
    }
    most
}

/// The one shape that fits the observations within their tolerances.
pub(super) fn best_shape(known: &Known, sketch: Option<&[Point]>) -> Result<Fitted, Error> {
    let starts = match sketch {
        Some(points) => vec![points.iter().map(|p| [p.x.mm(), p.y.mm()]).collect()],
        None => starts(known)?,
    };
    let (mut good, mut best): (Vec<Fitted>, Option<Fitted>) = (Vec::new(), None);
    let (mut crossed, mut lost): (Option<Fitted>, Option<Fitted>) = (None, None);
    for start in starts {
        let fitted = searched(known, start);
        if !fitted.settled {
            lost = lost.filter(|l| worst(l) <= worst(&fitted)).or(Some(fitted));
        } else if !is_ring(known, &fitted.state) {
            crossed = crossed.filter(|c| worst(c) <= worst(&fitted)).or(Some(fitted));
        } else if worst(&fitted) > 1.0 {
            best = best.filter(|b| worst(b) <= worst(&fitted)).or(Some(fitted));
        } else if good.iter().all(|g| difference(&g.state, &fitted.state).0 > SAME_MM) {
            good.push(fitted);
        }
    }
    if let [one, two, ..] = good.as_slice() {
        let (by, pair) = difference(&one.state, &two.state);
        let said = Error::new(ErrorKind::Conflict, format!("more than one shape fits the measurements ({} do)", good.len())).at("lengths");
        let said = said.value_of(format_args!("{} differs by {} between two of them", known.pair(pair), Length::from_mm(by)?));
        return Err(said.accepts("measurements that one shape fits").cured_by(format!("measure {}, or give a sketch", known.pair(pair))));
    }
    if let Some(one) = good.pop() {
        let all = known.linear(&one.state);
        check_fixed(known, &one.state, &all.factored())?;
        return Ok(one);
    }
    if let Some(best) = best {
        check_fixed(known, &best.state, &known.linear(&best.state).factored())?;
        return Err(no_fit(known, &best)?);
    }
    if let Some(crossed) = crossed {
        if worst(&crossed) > 1.0 {
            return Err(no_fit(known, &crossed)?);
        }
        return Err(Error::new(ErrorKind::Geometry, "the only shape that fits crosses itself or runs clockwise")
            .at("corners")
            .accepts("the corners in order, counter-clockwise seen from above")
            .cured_by("check the order of the corners, or give a sketch"));
    }
    let (steps, step) = lost.map_or((0, 0.0), |l| (l.steps, l.last_mm));
    let said = Error::new(ErrorKind::Impossible, "the search for the shape did not settle").at("lengths");
    let step = Length::from_mm(step).map_or_else(|_| "no bound".to_owned(), |l| l.to_string());
    Err(said.value_of(format_args!("after {steps} steps the last still moved a corner by {step}")).cured_by("give a sketch, or measure one more diagonal"))
}

/// The refusal of measurements that no shape satisfies: the worst, judged by how well the rest check it.
fn no_fit(known: &Known, fitted: &Fitted) -> Result<Error, Error> {
    let leverage = fitted.linear.factored().leverage();
    let checked = known.observed.iter().zip(&fitted.linear.residuals).zip(&leverage);
    let judged: Vec<(f64, f64, f64)> = checked.map(|((_, r), h)| (r.abs() / (1.0 - h).max(1e-6).sqrt(), *r, 1.0 - h)).collect();
    let most = judged.iter().fold(0.0, |m: f64, j| m.max(j.0));
    // Alike within a thousandth: then nothing tells which of them is wrong.
    let suspects: Vec<&str> = known.observed.iter().zip(&judged).filter(|(_, j)| j.0 >= most * 0.999).map(|(o, _)| o.what.as_str()).collect();
    let Some((number, (_, residual, free))) = judged.iter().enumerate().find(|(_, j)| j.0 >= most * 0.999) else {
        return Ok(Error::new(ErrorKind::Internal, "no observation is off"));
    };
    let Some(o) = known.observed.get(number) else { return Ok(Error::new(ErrorKind::Internal, "an observation is missing")) };
    let off = residual * o.tolerance.mm();
    let message = format!("no shape fits: {} is off by {} from what the rest say", o.what, Length::from_mm((off / free.max(1e-6)).abs())?);
    let cure = if suspects.len() > 1 {
        format!("measure {} again, one of which is wrong, or one more diagonal, which would tell which", suspects.join(", "))
    } else {
        format!("measure {} again", o.what)
    };
    Ok(Error::new(ErrorKind::Impossible, message)
        .at(o.path.clone())
        .value_of(format_args!("{} is left of it when all are adjusted", Length::from_mm(off.abs())?))
        .accepts(format!("at most its tolerance, {}", o.tolerance))
        .cured_by(cure))
}

/// A distance to start from: measured, or worked out of a square corner or of marks at one corner.
#[derive(Debug, Clone, Copy)]
struct Chord {
    ends: [usize; 2],
    length: f64,
}

fn chords(known: &Known) -> Vec<Chord> {
    let mut out: Vec<Chord> = known.between_corners().map(|(_, a, b, length, _)| Chord { ends: [a, b], length }).collect();
    let measured = |a: usize, b: usize, out: &[Chord]| out.iter().find(|c| c.ends == [a, b] || c.ends == [b, a]).map(|c| c.length);
    for o in &known.observed {
        let found = match o.observed {
            Observed::Square { at, arms: [a, b] } => {
                measured(at, a, &out).zip(measured(at, b, &out)).map(|(p, q)| Chord { ends: [a, b], length: num::hypot(p, q) })
            }
            Observed::Distance { from: Spot::Mark { from: f, toward: a, at: p }, to: Spot::Mark { from: g, toward: b, at: q }, length } if f == g && a != b => {
                let (arm_a, arm_b) = (measured(f, a, &out), measured(f, b, &out));
                arm_a.zip(arm_b).map(|(x, y)| {
                    let cosine = (p * p + q * q - length.mm() * length.mm()) / (2.0 * p * q);
                    Chord { ends: [a, b], length: (x * x + y * y - 2.0 * x * y * cosine.clamp(-1.0, 1.0)).max(0.0).sqrt() }
                })
            }
            // Stewart's theorem: a cevian gives the third side.
            Observed::Distance { from: Spot::Mark { from: f, toward: t, at: p }, to: Spot::Corner(c), length }
            | Observed::Distance { from: Spot::Corner(c), to: Spot::Mark { from: f, toward: t, at: p }, length } => {
                let (base, first) = (measured(f, t, &out), measured(f, c, &out));
                base.zip(first).filter(|_| c != f && c != t && measured(c, t, &out).is_none()).map(|(base, first)| {
                    let square = base * (length.mm() * length.mm() + p * (base - p)) / p - first * first * (base - p) / p;
                    Chord { ends: [c, t], length: square.max(0.0).sqrt() }
                })
            }
            _ => None,
        };
        out.extend(found.filter(|c| measured(c.ends[0], c.ends[1], &out).is_none()));
    }
    out
}

fn starts(known: &Known) -> Result<Vec<Vec<V2>>, Error> {
    let n = known.count();
    let chords = chords(known);
    let of = |a: usize, b: usize| chords.iter().find(|c| c.ends == [a, b] || c.ends == [b, a]).map(|c| c.length);
    for base in &chords {
        let mut placed = vec![base.ends[0], base.ends[1]];
        let mut order: Vec<(usize, [usize; 2])> = Vec::new();
        while placed.len() < n {
            // The corner seen from the two placed corners that stand farthest apart is placed best.
            let mut next: Option<(f64, usize, [usize; 2])> = None;
            for corner in (0..n).filter(|c| !placed.contains(c)) {
                for (i, &p) in placed.iter().enumerate() {
                    for &q in placed.iter().skip(i + 1) {
                        let (Some(to_p), Some(to_q)) = (of(corner, p), of(corner, q)) else { continue };
                        let quality = to_p.min(to_q);
                        if next.is_none_or(|(best, ..)| quality > best) {
                            next = Some((quality, corner, [p, q]));
                        }
                    }
                }
            }
            let Some((_, corner, from)) = next else { break };
            placed.push(corner);
            order.push((corner, from));
        }
        if placed.len() == n {
            return built(known, base, &order, &of);
        }
    }
    Ok(rounds(known))
}

/// Every way to place the corners, each on either side of what it is measured from, that the other lengths allow.
fn built(known: &Known, base: &Chord, order: &[(usize, [usize; 2])], of: &impl Fn(usize, usize) -> Option<f64>) -> Result<Vec<Vec<V2>>, Error> {
    let n = known.count();
    let slack = known.observed.iter().map(|o| o.tolerance.mm()).fold(0.0, f64::max);
    let mut open: Vec<Vec<Option<V2>>> = vec![vec![None; n]];
    for (corner, place) in [(base.ends[0], [0.0, 0.0]), (base.ends[1], [base.length, 0.0])] {
        for shape in &mut open {
            if let Some(at) = shape.get_mut(corner) {
                *at = Some(place);
            }
        }
    }
    for (corner, [p, q]) in order {
        let (Some(to_p), Some(to_q)) = (of(*corner, *p), of(*corner, *q)) else { continue };
        let mut next = Vec::new();
        for shape in &open {
            let at = |i: usize| shape.get(i).copied().flatten().unwrap_or_default();
            let d = sub(at(*q), at(*p));
            let apart = length(d).max(f64::MIN_POSITIVE);
            let foot = (apart * apart + to_p * to_p - to_q * to_q) / (2.0 * apart);
            let height = (to_p * to_p - foot * foot).max(0.0).sqrt();
            for side in [1.0, -1.0] {
                let (u, v) = ([d[0] / apart, d[1] / apart], [-d[1] / apart * side, d[0] / apart * side]);
                let place = [at(*p)[0] + u[0] * foot + v[0] * height, at(*p)[1] + u[1] * foot + v[1] * height];
                // A length that is off by far more than the tape rules this side out; errors grow from corner to corner.
                let fits = shape.iter().enumerate().all(|(other, seen)| match (seen, of(*corner, other)) {
                    (Some(seen), Some(measured)) => (length(sub(place, *seen)) - measured).abs() <= 50.0 * slack + 0.05 * measured,
                    _ => true,
                });
                if fits {
                    let mut with = shape.clone();
                    if let Some(at) = with.get_mut(*corner) {
                        *at = Some(place);
                    }
                    next.push(with);
                }
            }
        }
        // With every side ruled out the lengths contradict each other: the search then shows which.
        if next.is_empty() {
            return Ok(rounds(known));
        }
        if next.len() > MOST_SHAPES {
            return Err(Error::new(ErrorKind::TooLarge, "the corners can lie on too many sides of what they are measured from")
                .at("sketch")
                .value_of(format_args!("more than {MOST_SHAPES} shapes"))
                .accepts("a sketch, or more diagonals")
                .cured_by("give a sketch"));
        }
        open = next;
    }
    let shapes =
        open.into_iter().map(|shape| shape.into_iter().map(Option::unwrap_or_default).collect::<Vec<V2>>()).filter(|s| twice_area(known.outer(s)) > 0.0);
    Ok(shapes.collect())
}

/// Round shapes, where no corner after corner can be placed.
fn rounds(known: &Known) -> Vec<Vec<V2>> {
    let n = known.count();
    let lengths: Vec<f64> =
        known.observed.iter().filter_map(|o| if let Observed::Distance { length, .. } = o.observed { Some(length.mm()) } else { None }).collect();
    let radius = lengths.iter().fold(0.0, |m: f64, l| m.max(*l)) / 2.0;
    let place = |i: usize, flat: f64, turn: f64| {
        let t = 360.0 * f64::from(u32::try_from(i).unwrap_or(0)) / f64::from(u32::try_from(n).unwrap_or(1)) + turn;
        [radius * num::cos_deg(t), flat * radius * num::sin_deg(t)]
    };
    let shapes = [(1.0, 0.0), (0.5, 225.0), (0.5, 15.0), (0.3, 100.0), (0.8, 300.0)];
    shapes.iter().map(|&(flat, turn)| (0..n).map(|i| place(i, flat, turn)).collect()).collect()
}

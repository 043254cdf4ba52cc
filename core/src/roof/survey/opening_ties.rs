//! The lengths that place and shape the openings of a plane.

use super::observations::{V2, length, sub};
use super::triangles::lies_within;
use crate::practice::roof as practice;

/// What is left of a length's row when all that is known is taken off it: less than this and it would say too little.
const LEAST_NEW: f64 = 0.05;

/// Lengths within a plane and its openings, by corners: those of the plane and then those of its openings.
#[derive(Default)]
pub(super) struct OpeningTies {
    /// What the shape needs beyond all sides and the given diagonals.
    pub(super) needed: Vec<[usize; 2]>,
    /// For each opening the lengths that check it.
    pub(super) checks: Vec<Vec<[usize; 2]>>,
    /// Lengths that a tape can be laid along and nothing asks for: those between corners of the plane itself, the longest first, and then the
    /// others, the shortest first.
    pub(super) spare: Vec<[usize; 2]>,
}

/// How a length grows with every corner, less what the lengths that are known already say.
struct Candidate {
    ends: [usize; 2],
    row: Vec<f64>,
    /// Its part of the longest.
    long: f64,
}

fn row(at: &[V2], [a, b]: [usize; 2]) -> Vec<f64> {
    let place = |i: usize| at.get(i).copied().unwrap_or_default();
    let d = sub(place(b), place(a));
    let long = length(d).max(f64::MIN_POSITIVE);
    let mut out = vec![0.0; 2 * at.len()];
    for (i, part) in [(2 * a, -d[0]), (2 * a + 1, -d[1]), (2 * b, d[0]), (2 * b + 1, d[1])] {
        if let Some(place) = out.get_mut(i) {
            *place = part / long / core::f64::consts::SQRT_2;
        }
    }
    out
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn without(row: &mut [f64], known: &[f64]) {
    let by = dot(row, known);
    row.iter_mut().zip(known).for_each(|(r, k)| *r -= by * k);
}

/// The least set that makes the plane with its openings rigid: 2 x corners - 3 lengths with the sides and the diagonals given. Of what a tape can be laid
/// along, the length that says most beyond those before it comes next, a shorter one before a longer. None where no tape reaches a corner.
///
/// `rings` are the plane's own, counter-clockwise, and the openings'.
pub(super) fn opening_ties(rings: &[Vec<V2>], diagonals: &[[usize; 2]]) -> Option<OpeningTies> {
    let at: Vec<V2> = rings.iter().flatten().copied().collect();
    let own = rings.first().map_or(0, Vec::len);
    let mut known: Vec<Vec<f64>> = Vec::new();
    let mut taken: Vec<[usize; 2]> = Vec::new();
    let take = |ends: [usize; 2], mut row: Vec<f64>, known: &mut Vec<Vec<f64>>| {
        // Twice, as rounding leaves a little of the first time.
        for _ in 0..2 {
            known.iter().for_each(|k| without(&mut row, k));
        }
        let rest = dot(&row, &row).sqrt();
        if rest > LEAST_NEW * LEAST_NEW {
            row.iter_mut().for_each(|r| *r /= rest);
            known.push(row);
        }
        ends
    };
    let mut first = 0;
    for ring in rings {
        for i in 0..ring.len() {
            let side = [first + i, first + (i + 1) % ring.len()];
            taken.push(take(side, row(&at, side), &mut known));
        }
        first += ring.len();
    }
    for diagonal in diagonals {
        taken.push(take(*diagonal, row(&at, *diagonal), &mut known));
    }
    let is_taken = |[a, b]: [usize; 2], taken: &[[usize; 2]]| taken.contains(&[a, b]) || taken.contains(&[b, a]);
    let long = |[a, b]: [usize; 2]| at.get(a).zip(at.get(b)).map_or(0.0, |(p, q)| length(sub(*p, *q)));
    let pairs = (0..at.len()).flat_map(|i| (i + 1..at.len()).map(move |j| [i, j]));
    let free: Vec<[usize; 2]> = pairs.filter(|p| !is_taken(*p, &taken) && lies_within(rings, p[0], p[1])).collect();
    let longest = free.iter().map(|p| long(*p)).fold(f64::MIN_POSITIVE, f64::max);
    let mut open: Vec<Candidate> = free.iter().map(|p| Candidate { ends: *p, row: row(&at, *p), long: long(*p) / longest }).collect();
    for candidate in &mut open {
        known.iter().for_each(|k| without(&mut candidate.row, k));
    }
    let mut needed = Vec::new();
    let most = (2 * at.len()).saturating_sub(3);
    while known.len() < most {
        let says = |c: &Candidate| dot(&c.row, &c.row).sqrt() / (1.0 + c.long);
        // Of two alike the first, so that the same sketch gives the same sheet.
        let best = open.iter().enumerate().fold(None, |best: Option<(usize, f64)>, (i, c)| match best {
            Some((_, most)) if says(c) <= most * 1.000_001 => best,
            _ => Some((i, says(c))),
        })?;
        let chosen = open.swap_remove(best.0);
        let rest = dot(&chosen.row, &chosen.row).sqrt();
        if rest < LEAST_NEW {
            return None;
        }
        let new: Vec<f64> = chosen.row.iter().map(|r| r / rest).collect();
        open.iter_mut().for_each(|c| without(&mut c.row, &new));
        known.push(new);
        needed.push(chosen.ends);
        taken.push(chosen.ends);
    }
    needed.sort_unstable_by_key(|[a, b]| (*b, *a));
    let mut rest: Vec<[usize; 2]> = free.into_iter().filter(|p| !is_taken(*p, &taken)).collect();
    rest.sort_by(|a, b| long(*a).total_cmp(&long(*b)).then(a.cmp(b)));
    let mut checks = Vec::new();
    let mut first = own;
    for ring in rings.iter().skip(1) {
        let of_it = first..first + ring.len();
        // The shortest, each from another corner of it where there are such.
        let mut own_checks: Vec<[usize; 2]> = Vec::new();
        for fresh in [true, false] {
            for pair in rest.iter().filter(|p| of_it.contains(&p[1])) {
                let seen = own_checks.contains(pair) || (fresh && own_checks.iter().any(|c| c[1] == pair[1]));
                if own_checks.len() < practice::CHECKS && !seen {
                    own_checks.push(*pair);
                }
            }
        }
        rest.retain(|p| !own_checks.contains(p));
        checks.push(own_checks);
        first += ring.len();
    }
    let (mut spare, others): (Vec<_>, Vec<_>) = rest.into_iter().partition(|p| p[1] < own);
    spare.reverse();
    spare.extend(others);
    Some(OpeningTies { needed, checks, spare })
}

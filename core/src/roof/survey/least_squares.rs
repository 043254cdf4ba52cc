//! Least squares on small dense systems: orthogonal factors with the columns in the order of their weight, so that what is not fixed shows.

/// Below this part of the weightiest column a column counts as not fixed.
const NEGLIGIBLE: f64 = 1e-7;
/// A step below this, in millimetres, ends the search: 10 pm, a hundredth of what is promised.
const SETTLED_MM: f64 = 1e-8;

/// Equations made linear at a place: the residuals there, and how each grows with each unknown.
#[derive(Debug, Clone)]
pub(super) struct Linear {
    pub(super) columns: Vec<Vec<f64>>,
    pub(super) residuals: Vec<f64>,
}

impl Linear {
    pub(super) fn new(unknowns: usize) -> Linear {
        Linear { columns: vec![Vec::new(); unknowns], residuals: Vec::new() }
    }

    /// One more equation, by its residual and what it has of the unknowns.
    pub(super) fn add(&mut self, residual: f64, slopes: &[(usize, f64)]) {
        let row = self.residuals.len();
        self.residuals.push(residual);
        for column in &mut self.columns {
            column.push(0.0);
        }
        for &(unknown, slope) in slopes {
            if let Some(place) = self.columns.get_mut(unknown).and_then(|c| c.get_mut(row)) {
                *place += slope;
            }
        }
    }

    fn cost(&self) -> f64 {
        self.residuals.iter().map(|r| r * r).sum()
    }

    pub(super) fn factored(&self) -> Factored {
        Factored::new(self.columns.clone(), self.residuals.len())
    }

    /// The same with each unknown held back by so much.
    fn held(&self, by: f64) -> Linear {
        let mut held = self.clone();
        for unknown in 0..self.columns.len() {
            held.add(0.0, &[(unknown, by)]);
        }
        held
    }

    fn step(&self, factored: &Factored) -> Vec<f64> {
        factored.solve(&self.residuals.iter().map(|r| -r).collect::<Vec<_>>())
    }
}

pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn from(column: &[f64], row: usize) -> &[f64] {
    column.get(row..).unwrap_or_default()
}

fn add_multiple(to: &mut [f64], by: f64, of: &[f64]) {
    for (t, o) in to.iter_mut().zip(of) {
        *t += by * o;
    }
}

/// Householder's factors of a matrix, the weightiest of the columns that are left first (Businger and Golub).
#[derive(Debug, Clone)]
pub(super) struct Factored {
    rows: usize,
    /// The upper triangle by columns, in the order taken.
    columns: Vec<Vec<f64>>,
    order: Vec<usize>,
    mirrors: Vec<Vec<f64>>,
}

impl Factored {
    pub(super) fn new(mut columns: Vec<Vec<f64>>, rows: usize) -> Factored {
        let mut order: Vec<usize> = (0..columns.len()).collect();
        let mut mirrors: Vec<Vec<f64>> = Vec::new();
        let mut weightiest = 0.0_f64;
        for k in 0..columns.len().min(rows) {
            let (mut best, mut weight) = (k, -1.0_f64);
            for (j, column) in columns.iter().enumerate().skip(k) {
                let rest = from(column, k);
                let w = dot(rest, rest).sqrt();
                if w > weight {
                    (best, weight) = (j, w);
                }
            }
            weightiest = weightiest.max(weight);
            if weight <= weightiest * NEGLIGIBLE {
                break;
            }
            columns.swap(k, best);
            order.swap(k, best);
            let (taken, left) = columns.split_at_mut(k + 1);
            let Some(pivot) = taken.last_mut() else { break };
            let mut mirror = from(pivot, k).to_vec();
            let Some(head) = mirror.first_mut() else { break };
            let diagonal = if *head > 0.0 { -weight } else { weight };
            *head -= diagonal;
            let square = dot(&mirror, &mirror);
            if square > 0.0 {
                mirror.iter_mut().for_each(|m| *m /= (square / 2.0).sqrt());
            }
            for column in left {
                reflect(column, &mirror, k);
            }
            for (row, value) in pivot.iter_mut().enumerate().skip(k) {
                *value = if row == k { diagonal } else { 0.0 };
            }
            mirrors.push(mirror);
        }
        Factored { rows, columns, order, mirrors }
    }

    /// How many of the unknowns are fixed.
    pub(super) fn rank(&self) -> usize {
        self.mirrors.len()
    }

    /// Back up the triangle: what the fixed unknowns are for this right side.
    fn back(&self, mut right: Vec<f64>) -> Vec<f64> {
        let rank = self.rank();
        let mut out = vec![0.0; self.order.len()];
        for k in (0..rank).rev() {
            let Some(column) = self.columns.get(k) else { continue };
            let value = right.get(k).copied().unwrap_or(0.0) / column.get(k).copied().unwrap_or(1.0);
            add_multiple(right.get_mut(..k).unwrap_or_default(), -value, column);
            if let Some(place) = self.order.get(k).and_then(|&unknown| out.get_mut(unknown)) {
                *place = value;
            }
        }
        out
    }

    /// The unknowns of the least squares; those that are not fixed are 0.
    pub(super) fn solve(&self, right: &[f64]) -> Vec<f64> {
        let mut right = right.to_vec();
        for (k, mirror) in self.mirrors.iter().enumerate() {
            reflect(&mut right, mirror, k);
        }
        self.back(right)
    }

    /// Ways in which the unknowns can move that no equation sees, one for each that is not fixed.
    pub(super) fn free(&self) -> Vec<Vec<f64>> {
        let rank = self.rank();
        self.order
            .iter()
            .zip(&self.columns)
            .skip(rank)
            .map(|(&unknown, column)| {
                let mut way = self.back(column.iter().take(rank).map(|c| -c).collect());
                if let Some(place) = way.get_mut(unknown) {
                    *place = 1.0;
                }
                way
            })
            .collect()
    }

    /// For every equation how much of it the unknowns take up: 1 where nothing else checks it, 0 where it adds nothing.
    pub(super) fn leverage(&self) -> Vec<f64> {
        let mut out = vec![0.0; self.rows];
        for k in 0..self.rank() {
            let mut column = vec![0.0; self.rows];
            if let Some(one) = column.get_mut(k) {
                *one = 1.0;
            }
            for (j, mirror) in self.mirrors.iter().enumerate().rev() {
                reflect(&mut column, mirror, j);
            }
            out.iter_mut().zip(&column).for_each(|(o, q)| *o += q * q);
        }
        out
    }
}

/// Mirrors a column from row `k` on; the mirror's square is 2.
fn reflect(column: &mut [f64], mirror: &[f64], k: usize) {
    let by = -dot(from(column, k), mirror);
    add_multiple(column.get_mut(k..).unwrap_or_default(), by, mirror);
}

/// What a search came to.
#[derive(Debug, Clone)]
pub(super) struct Fit<S> {
    pub(super) state: S,
    pub(super) linear: Linear,
    pub(super) steps: u32,
    /// The greatest move of an unknown in the last step, in millimetres.
    pub(super) last_mm: f64,
    /// Whether that was no more than rounding.
    pub(super) settled: bool,
}

/// Gauss and Newton's search from a start, held back (Levenberg) where a full step makes things worse. Unknowns are in millimetres.
pub(super) fn fit<S: Clone>(start: S, most_steps: u32, linear: impl Fn(&S) -> Linear, moved: impl Fn(&S, &[f64]) -> S) -> Fit<S> {
    let mut state = start;
    let mut here = linear(&state);
    let (mut steps, mut last_mm) = (0, f64::INFINITY);
    while steps < most_steps {
        steps += 1;
        let full = here.step(&here.factored());
        let weight = here.columns.iter().map(|c| dot(c, c)).fold(0.0, f64::max).sqrt();
        let mut held_by = 0.0;
        let taken = loop {
            let step = if held_by > 0.0 {
                let held = here.held(held_by);
                held.step(&held.factored())
            } else {
                full.clone()
            };
            let next = moved(&state, &step);
            let there = linear(&next);
            if there.cost() <= here.cost() * (1.0 + 1e-12) + 1e-24 {
                break Some((next, there, step));
            }
            held_by = if held_by > 0.0 { held_by * 4.0 } else { weight * 1e-3 };
            if held_by > weight * 1e6 {
                break None;
            }
        };
        let largest = |step: &[f64]| step.iter().fold(0.0, |m: f64, s| m.max(s.abs()));
        let Some((next, there, step)) = taken else {
            // Nothing nearby is better: this is the bottom, as far as rounding shows it.
            last_mm = largest(&full);
            return Fit { settled: last_mm <= SETTLED_MM * 1e3, state, linear: here, steps, last_mm };
        };
        last_mm = largest(&step);
        (state, here) = (next, there);
        if last_mm <= SETTLED_MM {
            return Fit { settled: true, state, linear: here, steps, last_mm };
        }
    }
    Fit { settled: false, state, linear: here, steps, last_mm }
}

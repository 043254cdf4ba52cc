//! A polygon cut into triangles by diagonals within it, as near to even as can be.

use super::observations::{V2, length, sub};
use crate::roof::Point;

/// A corner stands this part of the longest side off it at least, or the triangle is none.
const LEAST_HEIGHT: f64 = 1e-3;

pub(super) struct Cut {
    /// The diagonals that cut it, each from the lower corner.
    pub(super) diagonals: Vec<[usize; 2]>,
    /// Its triangles.
    pub(super) triangles: Vec<[usize; 3]>,
    /// Other diagonals that lie within it, the longest first.
    pub(super) others: Vec<[usize; 2]>,
}

fn turn(a: V2, b: V2, c: V2) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

fn corner(ring: &[V2], i: usize) -> V2 {
    ring.get(i % ring.len().max(1)).copied().unwrap_or_default()
}

/// Whether the straight line between two corners that are no neighbours lies within the polygon, touching it nowhere else.
fn lies_within(ring: &[V2], i: usize, j: usize) -> bool {
    let (a, b) = (corner(ring, i), corner(ring, j));
    let long = length(sub(b, a));
    let n = ring.len();
    for k in 0..n {
        let (c, d) = (corner(ring, k), corner(ring, k + 1));
        let beside = k == i || k == j || (k + 1) % n == i || (k + 1) % n == j;
        if !beside && turn(a, b, c) * turn(a, b, d) <= 0.0 && turn(c, d, a) * turn(c, d, b) <= 0.0 {
            return false;
        }
        // A corner on the line stops the tape.
        let along = ((c[0] - a[0]) * (b[0] - a[0]) + (c[1] - a[1]) * (b[1] - a[1])) / long;
        if k != i && k != j && along > 0.0 && along < long && turn(a, b, c).abs() / long < LEAST_HEIGHT * long {
            return false;
        }
    }
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    let mut inside = false;
    for k in 0..n {
        let (c, d) = (corner(ring, k), corner(ring, k + 1));
        if (c[1] > middle[1]) != (d[1] > middle[1]) && middle[0] < c[0] + (middle[1] - c[1]) / (d[1] - c[1]) * (d[0] - c[0]) {
            inside = !inside;
        }
    }
    inside
}

/// How far a triangle is from flat: its least height over its longest side; 0 where it is none.
fn evenness(ring: &[V2], [i, j, k]: [usize; 3]) -> f64 {
    let [a, b, c] = [i, j, k].map(|x| corner(ring, x));
    let longest = [sub(b, a), sub(c, b), sub(a, c)].map(length).into_iter().fold(0.0, f64::max);
    let even = turn(a, b, c) / (longest * longest).max(f64::MIN_POSITIVE);
    if even > LEAST_HEIGHT { even } else { 0.0 }
}

/// The cut whose flattest triangle is least flat; none where the polygon has no cut. The ring is counter-clockwise.
pub(super) fn cut(points: &[Point]) -> Option<Cut> {
    let ring: Vec<V2> = points.iter().map(|p| [p.x.mm(), p.y.mm()]).collect();
    let n = ring.len();
    let chord = |i: usize, j: usize| j == i + 1 || (i == 0 && j + 1 == n) || lies_within(&ring, i, j);
    // best[i][j]: for the part from corner i to corner j, its evenness and the corner that is cut off with i and j.
    let mut best: Vec<Vec<(f64, usize)>> = vec![vec![(0.0, 0); n]; n];
    let at = |best: &[Vec<(f64, usize)>], i: usize, j: usize| best.get(i).and_then(|r| r.get(j)).copied().unwrap_or((0.0, 0));
    for apart in 1..n {
        for i in 0..n - apart {
            let j = i + apart;
            let mut here = if apart == 1 { (f64::INFINITY, i) } else { (0.0, i) };
            if apart > 1 && chord(i, j) {
                for k in i + 1..j {
                    let even = evenness(&ring, [i, k, j]).min(at(&best, i, k).0).min(at(&best, k, j).0);
                    if even > here.0 * 1.000_001 {
                        here = (even, k);
                    }
                }
            }
            if let Some(place) = best.get_mut(i).and_then(|r| r.get_mut(j)) {
                *place = here;
            }
        }
    }
    if n < 3 || at(&best, 0, n - 1).0 <= 0.0 {
        return None;
    }
    let (mut diagonals, mut triangles) = (Vec::new(), Vec::new());
    let mut open = vec![(0, n - 1)];
    while let Some((i, j)) = open.pop() {
        if j == i + 1 {
            continue;
        }
        if !(i == 0 && j == n - 1) {
            diagonals.push([i, j]);
        }
        let k = at(&best, i, j).1;
        triangles.push([i, k, j]);
        open.extend([(k, j), (i, k)]);
    }
    diagonals.sort_unstable();
    let mut others: Vec<[usize; 2]> = (0..n).flat_map(|i| (i + 2..n).map(move |j| [i, j])).collect();
    let is_side = |d: &[usize; 2]| d[0] == 0 && d[1] + 1 == n;
    others.retain(|d| !is_side(d) && !diagonals.contains(d) && lies_within(&ring, d[0], d[1]));
    let long = |d: &[usize; 2]| length(sub(corner(&ring, d[1]), corner(&ring, d[0])));
    others.sort_by(|a, b| long(b).total_cmp(&long(a)).then(a.cmp(b)));
    Some(Cut { diagonals, triangles, others })
}

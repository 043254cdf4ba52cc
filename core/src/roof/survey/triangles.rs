//! A polygon cut into triangles by diagonals within it and clear of its openings, as near to even as can be.

use super::observations::{V2, length, sub};

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

/// Whether the straight line between two corners that are no neighbours lies within the polygon and outside its openings, touching them nowhere else. Corners
/// are numbered ring by ring, the plane's own first.
pub(super) fn lies_within(rings: &[Vec<V2>], i: usize, j: usize) -> bool {
    let all = |number: usize| rings.iter().flatten().nth(number).copied().unwrap_or_default();
    let (a, b) = (all(i), all(j));
    let long = length(sub(b, a));
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    let mut inside = false;
    let mut first = 0;
    for ring in rings {
        let n = ring.len();
        for k in 0..n {
            let (c, d) = (corner(ring, k), corner(ring, k + 1));
            let (from, to) = (first + k, first + (k + 1) % n);
            let beside = from == i || from == j || to == i || to == j;
            if !beside && turn(a, b, c) * turn(a, b, d) <= 0.0 && turn(c, d, a) * turn(c, d, b) <= 0.0 {
                return false;
            }
            // A corner on the line stops the tape.
            let along = ((c[0] - a[0]) * (b[0] - a[0]) + (c[1] - a[1]) * (b[1] - a[1])) / long;
            if from != i && from != j && along > 0.0 && along < long && turn(a, b, c).abs() / long < LEAST_HEIGHT * long {
                return false;
            }
            if (c[1] > middle[1]) != (d[1] > middle[1]) && middle[0] < c[0] + (middle[1] - c[1]) / (d[1] - c[1]) * (d[0] - c[0]) {
                inside = !inside;
            }
        }
        first += n;
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

/// The cut whose flattest triangle is least flat; none where the polygon has no cut by lines that keep clear of its openings. The first ring is its own,
/// counter-clockwise.
pub(super) fn cut(rings: &[Vec<V2>]) -> Option<Cut> {
    let ring = rings.first()?;
    let n = ring.len();
    let chord = |i: usize, j: usize| j == i + 1 || (i == 0 && j + 1 == n) || lies_within(rings, i, j);
    // best[i][j]: for the part from corner i to corner j, its evenness and the corner that is cut off with i and j.
    let mut best: Vec<Vec<(f64, usize)>> = vec![vec![(0.0, 0); n]; n];
    let at = |best: &[Vec<(f64, usize)>], i: usize, j: usize| best.get(i).and_then(|r| r.get(j)).copied().unwrap_or((0.0, 0));
    for apart in 1..n {
        for i in 0..n - apart {
            let j = i + apart;
            let mut here = if apart == 1 { (f64::INFINITY, i) } else { (0.0, i) };
            if apart > 1 && chord(i, j) {
                for k in i + 1..j {
                    let even = evenness(ring, [i, k, j]).min(at(&best, i, k).0).min(at(&best, k, j).0);
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
    others.retain(|d| !is_side(d) && !diagonals.contains(d) && lies_within(rings, d[0], d[1]));
    let long = |d: &[usize; 2]| length(sub(corner(ring, d[1]), corner(ring, d[0])));
    others.sort_by(|a, b| long(b).total_cmp(&long(a)).then(a.cmp(b)));
    Some(Cut { diagonals, triangles, others })
}

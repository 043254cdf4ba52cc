//! The packing heuristic: several constructions, improved, the best kept. No chance in it: the same input gives the same plan.

use super::input::Problem;
use std::collections::BTreeSet;

/// One stick: its stock length, its pieces by kind, and the size that they take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Load {
    pub(super) stock: usize,
    /// Kind of each piece, largest first.
    pub(super) kinds: Vec<usize>,
    pub(super) used: i64,
}

/// Effort of one search for a full stick.
const SEARCH_NODES: u32 = 4_000;
/// Deepest such search, in kinds of piece.
const SEARCH_DEPTH: usize = 48;
/// Effort of the repacking of pairs, in pairs.
const PAIRS: u32 = 5_000;

/// The best plan found.
pub(super) fn pack(p: &Problem) -> Vec<Load> {
    let mut order: Vec<usize> = (0..p.sizes.len()).collect();
    order.sort_by_key(|&k| (core::cmp::Reverse(size(p, k)), k));
    let mut best: Option<(u128, usize, Vec<Load>)> = None;
    let mut offer = |loads: Vec<Load>| {
        let key = (cost(p, &loads), loads.len());
        if best.as_ref().is_none_or(|b| key < (b.0, b.1)) {
            best = Some((key.0, key.1, loads));
        }
    };
    for target in 0..p.bins.len() {
        offer(improved(p, best_fit(p, &order, target)));
        offer(improved(p, fullest(p, &order, Some(target))));
    }
    offer(improved(p, fullest(p, &order, None)));
    best.map(|b| b.2).unwrap_or_default()
}

fn size(p: &Problem, kind: usize) -> i64 {
    p.sizes.get(kind).map_or(0, |s| s.0)
}

fn room(p: &Problem, stock: usize) -> i64 {
    p.bins.get(stock).map_or(0, |b| b.room)
}

fn price(p: &Problem, stock: usize) -> u64 {
    p.bins.get(stock).map_or(0, |b| b.cost)
}

fn cost(p: &Problem, loads: &[Load]) -> u128 {
    loads.iter().map(|l| u128::from(price(p, l.stock))).sum()
}

/// The cheapest stock length with this much room; the shorter, then the first, of equals.
fn cheapest(p: &Problem, used: i64) -> Option<usize> {
    (0..p.bins.len()).filter(|&s| room(p, s) >= used).min_by_key(|&s| (price(p, s), room(p, s), s))
}

/// Best-fit decreasing: each piece goes where it leaves least, else into a new stick of the target length.
fn best_fit(p: &Problem, order: &[usize], target: usize) -> Vec<Load> {
    let mut loads: Vec<Load> = Vec::new();
    let mut open: BTreeSet<(i64, usize)> = BTreeSet::new();
    for &kind in order {
        let (piece, count) = p.sizes.get(kind).copied().unwrap_or_default();
        for _ in 0..count {
            let found = open.range((piece, 0)..).next().copied();
            let (index, left) = match found {
                Some((left, index)) => {
                    open.remove(&(left, index));
                    (index, left)
                }
                None => {
                    let stock = if room(p, target) >= piece { target } else { cheapest(p, piece).unwrap_or(target) };
                    loads.push(Load { stock, kinds: Vec::new(), used: 0 });
                    (loads.len() - 1, room(p, stock))
                }
            };
            if let Some(load) = loads.get_mut(index) {
                load.kinds.push(kind);
                load.used += piece;
            }
            open.insert((left - piece, index));
        }
    }
    loads
}

/// Fills one stick after another as full as a bounded search can, starting from the largest piece left.
fn fullest(p: &Problem, order: &[usize], target: Option<usize>) -> Vec<Load> {
    let mut left: Vec<u32> = p.sizes.iter().map(|s| s.1).collect();
    let mut loads = Vec::new();
    while let Some(seed) = order.iter().copied().find(|&k| left.get(k).is_some_and(|&n| n > 0)) {
        let least = size(p, seed);
        let mut candidates: Vec<usize> = match target {
            Some(t) if room(p, t) >= least => vec![t],
            Some(_) => cheapest(p, least).into_iter().collect(),
            None => (0..p.bins.len()).filter(|&s| room(p, s) >= least).collect(),
        };
        candidates.dedup();
        let mut chosen: Option<Load> = None;
        for stock in candidates {
            let kinds = fill(p, order, &left, seed, room(p, stock));
            let used: i64 = kinds.iter().map(|&k| size(p, k)).sum();
            let stock = cheapest(p, used).unwrap_or(stock);
            // Least cost for what it holds, compared without division.
            let better = chosen.as_ref().is_none_or(|c| {
                let (new, old) = (u128::from(price(p, stock)) * wide(c.used), u128::from(price(p, c.stock)) * wide(used));
                new < old || (new == old && used > c.used)
            });
            if better {
                chosen = Some(Load { stock, kinds, used });
            }
        }
        let Some(load) = chosen else { break };
        // The same filling again as long as there are pieces for it.
        let mut each = vec![0_u32; left.len()];
        for &k in &load.kinds {
            if let Some(n) = each.get_mut(k) {
                *n += 1;
            }
        }
        let times = each.iter().zip(&left).filter(|(n, _)| **n > 0).map(|(n, have)| have / n).min().unwrap_or(0).max(1);
        for (have, n) in left.iter_mut().zip(&each) {
            *have = have.saturating_sub(n * times);
        }
        for _ in 0..times {
            loads.push(load.clone());
        }
    }
    loads
}

fn wide(size: i64) -> u128 {
    u128::from(size.unsigned_abs())
}

/// The fullest set of pieces found that fits in the room and holds the seed.
fn fill(p: &Problem, order: &[usize], left: &[u32], seed: usize, room: i64) -> Vec<usize> {
    // Kinds that are there, largest first, with how many are left beside the seed.
    let kinds: Vec<(usize, i64, u32)> = order
        .iter()
        .filter_map(|&k| {
            let n = left.get(k).copied().unwrap_or(0).saturating_sub(u32::from(k == seed));
            (n > 0).then(|| (k, size(p, k), n))
        })
        .collect();
    let mut search = Search { kinds: &kinds, nodes: SEARCH_NODES, taken: Vec::new(), best: Vec::new(), best_left: i64::MAX, cut_short: false };
    search.go(0, room - size(p, seed));
    let mut out = vec![seed];
    let mut rest = room - size(p, seed);
    let mut have: Vec<u32> = kinds.iter().map(|k| k.2).collect();
    for &(i, n) in &search.best {
        if let (Some(&(kind, piece, _)), Some(h)) = (kinds.get(i), have.get_mut(i)) {
            *h -= n;
            rest -= piece * i64::from(n);
            out.extend(core::iter::repeat_n(kind, n as usize));
        }
    }
    // What the bounded search left undone.
    for (&(kind, piece, _), h) in kinds.iter().zip(have) {
        for _ in 0..h {
            if piece <= rest {
                rest -= piece;
                out.push(kind);
            }
        }
    }
    out
}

struct Search<'a> {
    kinds: &'a [(usize, i64, u32)],
    nodes: u32,
    taken: Vec<(usize, u32)>,
    best: Vec<(usize, u32)>,
    best_left: i64,
    /// Whether something was left untried.
    cut_short: bool,
}

impl Search<'_> {
    /// Tries each next kind in each number, most first.
    fn go(&mut self, from: usize, left: i64) {
        if left < self.best_left {
            self.best_left = left;
            self.best.clone_from(&self.taken);
        }
        // Largest first, so that those too large come first.
        let fitting = self.kinds.partition_point(|k| k.1 > left).max(from);
        if self.taken.len() >= SEARCH_DEPTH {
            self.cut_short |= fitting < self.kinds.len();
            return;
        }
        for i in fitting..self.kinds.len() {
            let Some(&(_, piece, have)) = self.kinds.get(i) else { return };
            let fits = u32::try_from(left / piece.max(1)).unwrap_or(u32::MAX).min(have);
            for n in (1..=fits).rev() {
                if self.best_left == 0 {
                    return;
                }
                if self.nodes == 0 {
                    self.cut_short = true;
                    return;
                }
                self.nodes -= 1;
                self.taken.push((i, n));
                self.go(i + 1, left - piece * i64::from(n));
                self.taken.pop();
            }
        }
    }
}

/// The most of a stick's room that pieces can fill, or the room itself where a bounded search cannot tell.
pub(super) fn usable_room(p: &Problem, stock: usize) -> i64 {
    let room = room(p, stock);
    let mut kinds: Vec<(usize, i64, u32)> = p.sizes.iter().enumerate().map(|(k, &(size, n))| (k, size, n)).collect();
    kinds.sort_by_key(|k| (core::cmp::Reverse(k.1), k.0));
    let mut search = Search { kinds: &kinds, nodes: 10 * SEARCH_NODES, taken: Vec::new(), best: Vec::new(), best_left: i64::MAX, cut_short: false };
    search.go(0, room);
    if search.cut_short { room } else { room - search.best_left }
}

/// The plan after moving pieces: sticks emptied, pairs repacked, each stick as cheap as its pieces allow.
fn improved(p: &Problem, mut loads: Vec<Load>) -> Vec<Load> {
    shrink(p, &mut loads);
    empty_sticks(p, &mut loads);
    repack_pairs(p, &mut loads);
    shrink(p, &mut loads);
    loads
}

fn shrink(p: &Problem, loads: &mut [Load]) {
    for load in loads {
        if let Some(stock) = cheapest(p, load.used)
            && price(p, stock) <= price(p, load.stock)
        {
            load.stock = stock;
        }
    }
}

/// Takes sticks, least filled first, whose pieces all fit into what the others leave.
fn empty_sticks(p: &Problem, loads: &mut Vec<Load>) {
    loads.sort_by_key(|l| core::cmp::Reverse(l.used));
    while let Some(last) = loads.pop() {
        let mut open: BTreeSet<(i64, usize)> = loads.iter().enumerate().map(|(i, l)| (room(p, l.stock) - l.used, i)).collect();
        let mut moves = Vec::new();
        let fits = last.kinds.iter().all(|&kind| {
            let piece = size(p, kind);
            let Some((left, index)) = open.range((piece, 0)..).next().copied() else { return false };
            open.remove(&(left, index));
            open.insert((left - piece, index));
            moves.push((index, kind));
            true
        });
        if !fits {
            loads.push(last);
            return;
        }
        for (index, kind) in moves {
            if let Some(load) = loads.get_mut(index) {
                load.kinds.push(kind);
                load.used += size(p, kind);
            }
        }
    }
}

/// Puts the pieces of two sticks together anew: one as full as can be, the other as cheap as then can be.
fn repack_pairs(p: &Problem, loads: &mut Vec<Load>) {
    if p.bins.len() < 2 {
        // With one stock length a pair can only turn into one stick, which emptying has tried.
        return;
    }
    let mut pairs = PAIRS;
    let mut i = 0;
    while i < loads.len() {
        let mut j = i + 1;
        while j < loads.len() {
            if pairs == 0 {
                return;
            }
            pairs -= 1;
            let (Some(a), Some(b)) = (loads.get(i), loads.get(j)) else { return };
            if let Some((x, y)) = repacked(p, a, b) {
                if let Some(slot) = loads.get_mut(i) {
                    *slot = x;
                }
                match y {
                    Some(y) => {
                        if let Some(slot) = loads.get_mut(j) {
                            *slot = y;
                        }
                    }
                    None => {
                        loads.remove(j);
                        continue;
                    }
                }
            }
            j += 1;
        }
        i += 1;
    }
}

fn repacked(p: &Problem, a: &Load, b: &Load) -> Option<(Load, Option<Load>)> {
    let before = u128::from(price(p, a.stock)) + u128::from(price(p, b.stock));
    let mut pool: Vec<usize> = a.kinds.iter().chain(&b.kinds).copied().collect();
    pool.sort_by_key(|&k| (core::cmp::Reverse(size(p, k)), k));
    let mut counts = vec![0_u32; p.sizes.len()];
    for &k in &pool {
        if let Some(n) = counts.get_mut(k) {
            *n += 1;
        }
    }
    let mut order = pool.clone();
    order.dedup();
    let seed = *pool.first()?;
    let mut found = None;
    let mut least = before;
    for stock in (0..p.bins.len()).filter(|&s| room(p, s) >= size(p, seed)) {
        let kinds = fill(p, &order, &counts, seed, room(p, stock));
        let used: i64 = kinds.iter().map(|&k| size(p, k)).sum();
        let mut rest = pool.clone();
        for k in &kinds {
            if let Some(at) = rest.iter().position(|r| r == k) {
                rest.remove(at);
            }
        }
        let Ok(rest_used) = i64::try_from(rest.iter().map(|&k| i128::from(size(p, k))).sum::<i128>()) else { continue };
        let first = Load { stock: cheapest(p, used)?, kinds, used };
        let second = if rest.is_empty() {
            None
        } else {
            let Some(stock) = cheapest(p, rest_used) else { continue };
            Some(Load { stock, kinds: rest, used: rest_used })
        };
        let after = u128::from(price(p, first.stock)) + second.as_ref().map_or(0, |s| u128::from(price(p, s.stock)));
        if after < least {
            least = after;
            found = Some((first, second));
        }
    }
    found
}

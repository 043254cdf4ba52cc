//! Cuttings of more pieces than are packed at once: like sticks are found on a part of them and counted.

use super::input::Problem;
use super::pack::{Load, pack};

/// The most pieces that are packed at once.
const AT_ONCE: u64 = 10_000;
/// The most kinds of piece among which parts of a larger cutting are taken, so that what is left over after each part is at most a quarter.
const KINDS: usize = 2_500;

/// The loads, each with how many sticks are filled so. Time and memory go with the kinds of piece and, beyond [`AT_ONCE`], hardly with their counts.
pub(super) fn pack_all(p: &Problem) -> Vec<(Load, u32)> {
    if pieces(&counts(p)) <= AT_ONCE {
        return pack(p).into_iter().map(|load| (load, 1)).collect();
    }
    let mut order: Vec<usize> = (0..p.sizes.len()).collect();
    order.sort_by_key(|&k| (core::cmp::Reverse(p.sizes.get(k).map_or(0, |s| s.0)), k));
    // Large and small in each group.
    let groups = order.len().div_ceil(KINDS);
    let mut out = Vec::new();
    for group in 0..groups {
        let mut left = vec![0; p.sizes.len()];
        for &k in order.iter().skip(group).step_by(groups) {
            if let (Some(n), Some(have)) = (left.get_mut(k), p.sizes.get(k)) {
                *n = have.1;
            }
        }
        fill(p, left, &mut out);
    }
    out
}

/// Packs an equal part of what is left and fills as many sticks alike as it has parts, until the rest is packed at once.
fn fill(p: &Problem, mut left: Vec<u32>, out: &mut Vec<(Load, u32)>) {
    loop {
        let total = pieces(&left);
        if total <= AT_ONCE {
            out.extend(part(p, &left).into_iter().map(|load| (load, 1)));
            return;
        }
        let parts = u32::try_from(total / AT_ONCE + 1).unwrap_or(u32::MAX);
        let share: Vec<u32> = left.iter().map(|n| n / parts).collect();
        let loads = part(p, &share);
        let smallest = share.iter().zip(&p.sizes).filter(|(n, _)| **n > 0).map(|(_, s)| s.0).min().unwrap_or(0);
        // A stick with room for more is not repeated: its pieces go to the rest. Where no stick is full each is repeated.
        let is_full = |load: &Load| p.bins.get(load.stock).is_some_and(|b| b.room - load.used < smallest);
        let all = !loads.iter().any(is_full);
        for load in loads.into_iter().filter(|load| all || is_full(load)) {
            for &k in &load.kinds {
                if let Some(n) = left.get_mut(k) {
                    *n = n.saturating_sub(parts);
                }
            }
            out.push((load, parts));
        }
    }
}

fn counts(p: &Problem) -> Vec<u32> {
    p.sizes.iter().map(|s| s.1).collect()
}

fn pieces(counts: &[u32]) -> u64 {
    counts.iter().map(|n| u64::from(*n)).sum()
}

/// The packing of so many of each kind, its kinds by their numbers in the whole.
fn part(p: &Problem, counts: &[u32]) -> Vec<Load> {
    let kinds: Vec<usize> = counts.iter().enumerate().filter(|(_, n)| **n > 0).map(|(k, _)| k).collect();
    if kinds.is_empty() {
        return Vec::new();
    }
    let sizes = kinds.iter().filter_map(|&k| Some((p.sizes.get(k)?.0, *counts.get(k)?))).collect();
    let mut loads = pack(&Problem { bins: p.bins.clone(), sizes });
    for load in &mut loads {
        for k in &mut load.kinds {
            *k = kinds.get(*k).copied().unwrap_or(*k);
        }
    }
    loads
}

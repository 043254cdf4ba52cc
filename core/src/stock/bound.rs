//! Lower bounds: what no plan can beat.
//!
//! Three bounds, the greatest of which stands. The first spreads all sizes over the stick that gives room at the least cost,
//! counting only as much of a stick's room as pieces can fill.
//! The second counts pieces over half the longest stick, no two of which share one. The third is the bound of Martello and
//! Toth for bin packing (Knapsack Problems, 1990, chapter 8; from memory), on the room of the longest stick at the least cost of
//! any. Since a plan's cost is a sum of stick costs, each bound goes up to a multiple of their greatest common divisor.

use super::input::Problem;
use super::pack::usable_room;

/// The greatest bound, in the unit of the bins' costs.
pub(super) fn lower_bound(p: &Problem) -> u128 {
    let found = spread(p).max(large_pieces(p)).max(threshold(p));
    let divisor = p.bins.iter().fold(0_u64, |a, b| gcd(a, b.cost));
    if divisor == 0 { found } else { found.div_ceil(u128::from(divisor)) * u128::from(divisor) }
}

fn gcd(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// Positive sizes as unsigned.
fn wide(size: i64) -> u128 {
    u128::from(size.unsigned_abs())
}

/// All sizes at the least cost for each unit of room.
fn spread(p: &Problem) -> u128 {
    let total: u128 = p.sizes.iter().map(|&(size, count)| wide(size) * u128::from(count)).sum();
    p.bins
        .iter()
        .enumerate()
        .map(|(i, b)| (usable_room(p, i), b.cost))
        .filter(|b| b.0 > 0)
        .map(|(room, cost)| {
            let (room, cost) = (wide(room), u128::from(cost));
            // Where the exact product is too wide, whole sticks alone give a smaller bound, which is valid too.
            total.checked_mul(cost).map_or_else(|| (total / room).saturating_mul(cost), |product| product.div_ceil(room))
        })
        .min()
        .unwrap_or(0)
}

/// Pieces over half the longest room sit in a stick each.
fn large_pieces(p: &Problem) -> u128 {
    let most = p.bins.iter().map(|b| b.room).max().unwrap_or(0);
    p.sizes
        .iter()
        .filter(|&&(size, _)| wide(size) * 2 > wide(most))
        .map(|&(size, count)| {
            let least = p.bins.iter().filter(|b| b.room >= size).map(|b| b.cost).min().unwrap_or(0);
            u128::from(least) * u128::from(count)
        })
        .sum()
}

/// The number of sticks of the longest room, by thresholds, at the least cost of any stick.
fn threshold(p: &Problem) -> u128 {
    let room = p.bins.iter().map(|b| b.room).max().unwrap_or(0);
    let least = p.bins.iter().map(|b| b.cost).min().unwrap_or(0);
    if room <= 0 {
        return 0;
    }
    let room = wide(room);
    let mut sizes: Vec<(u128, u128)> = p.sizes.iter().map(|&(s, n)| (wide(s), u128::from(n))).collect();
    sizes.sort_unstable();
    // Running count and total of the sizes below each index.
    let mut below = vec![(0_u128, 0_u128)];
    for &(s, n) in &sizes {
        let (count, total) = below.last().copied().unwrap_or_default();
        below.push((count + n, total + s * n));
    }
    let at = |i: usize| below.get(i).copied().unwrap_or_default();
    let all = at(sizes.len());
    let half = sizes.partition_point(|&(s, _)| s * 2 <= room);
    let mut sticks = 0;
    for k in 0..=half {
        let small = if k == 0 { 0 } else { sizes.get(k - 1).map_or(0, |x| x.0) };
        if small * 2 > room {
            continue;
        }
        // Pieces over room - small share with none that counts; the middle ones leave room that small pieces may fill.
        let alone_from = sizes.partition_point(|&(s, _)| s <= room - small);
        let first_small = sizes.partition_point(|&(s, _)| s < small);
        let alone = all.0 - at(alone_from).0;
        let (middle, middle_total) = (at(alone_from).0 - at(half.min(alone_from)).0, at(alone_from).1 - at(half.min(alone_from)).1);
        let small_total = at(half).1 - at(first_small).1;
        let free = middle * room - middle_total;
        let more = small_total.saturating_sub(free).div_ceil(room);
        sticks = sticks.max(alone + middle + more);
    }
    sticks * u128::from(least)
}

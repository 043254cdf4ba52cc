//! Which needs can be served by which offers: a matching that serves the needs of greatest weight.

use std::collections::VecDeque;

/// For every need the offer that serves it. Needs come by falling weight; no other matching serves needs of a greater total weight.
///
/// Sets of needs that can be served together form a matroid (the transversal one), for which taking the heaviest that still fits is best. A need is taken
/// whenever a chain of exchanges makes room for it. What a search in vain has reached can make room for nothing later either, and is left out from then on.
pub(super) fn matched(needs: usize, offers: usize, fits: impl Fn(usize, usize) -> bool) -> Vec<Option<usize>> {
    let mut of_need: Vec<Option<usize>> = vec![None; needs];
    let mut of_offer: Vec<Option<usize>> = vec![None; offers];
    let mut dead = vec![false; offers];
    let mut untaken: Vec<usize> = (0..offers).rev().collect();
    for need in 0..needs {
        // The first free offer that fits needs no exchange, and is what the search would find first.
        if let Some(at) = untaken.iter().rposition(|&offer| fits(need, offer)) {
            let offer = untaken.remove(at);
            if let (Some(of_need), Some(of_offer)) = (of_need.get_mut(need), of_offer.get_mut(offer)) {
                (*of_need, *of_offer) = (Some(offer), Some(need));
            }
            continue;
        }
        // Breadth first from the need over offers that fit, and from a taken offer on over the need that has it.
        let mut reached_by: Vec<Option<usize>> = vec![None; offers];
        let mut queue = VecDeque::from([need]);
        let mut unreached: Vec<usize> = (0..offers).filter(|&o| !dead.get(o).copied().unwrap_or(true)).collect();
        let mut free = None;
        while let Some(at) = queue.pop_front().filter(|_| free.is_none()) {
            unreached.retain(|&offer| {
                if free.is_some() || !fits(at, offer) {
                    return true;
                }
                if let Some(by) = reached_by.get_mut(offer) {
                    *by = Some(at);
                }
                match of_offer.get(offer).copied().flatten() {
                    None => free = Some(offer),
                    Some(holder) => queue.push_back(holder),
                }
                false
            });
        }
        untaken.retain(|&o| Some(o) != free);
        let Some(mut offer) = free else {
            for (dead, by) in dead.iter_mut().zip(&reached_by) {
                *dead |= by.is_some();
            }
            continue;
        };
        // Back along the chain, each need takes the offer that it reached.
        while let Some(by) = reached_by.get(offer).copied().flatten() {
            let before = of_need.get_mut(by).and_then(|slot| slot.replace(offer));
            if let Some(slot) = of_offer.get_mut(offer) {
                *slot = Some(by);
            }
            match before {
                Some(left) if by != need => offer = left,
                _ => break,
            }
        }
    }
    of_need
}

#[cfg(test)]
mod tests {
    use super::matched;
    use proptest::prelude::*;

    /// The greatest weight of any matching, by trying every offer for every need.
    fn best(weights: &[u32], fits: &[Vec<bool>], need: usize, used: u32) -> u32 {
        if need == weights.len() {
            return 0;
        }
        let without = best(weights, fits, need + 1, used);
        let with = (0..fits[need].len())
            .filter(|&o| fits[need][o] && used & (1 << o) == 0)
            .map(|o| weights[need] + best(weights, fits, need + 1, used | (1 << o)))
            .max()
            .unwrap_or(0);
        with.max(without)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(300))]
        #[test]
        fn no_matching_serves_a_greater_weight(
            mut weights in prop::collection::vec(0..50_u32, 1..7), table in prop::collection::vec(prop::collection::vec(any::<bool>(), 5), 7)
        ) {
            weights.sort_by(|a, b| b.cmp(a));
            let found = matched(weights.len(), 5, |n, o| table[n][o]);
            let mut used = [false; 5];
            let mut weight = 0;
            for (n, o) in found.iter().enumerate() {
                if let Some(o) = *o {
                    prop_assert!(table[n][o] && !used[o]);
                    used[o] = true;
                    weight += weights[n];
                }
            }
            prop_assert_eq!(weight, best(&weights, &table, 0, 0));
        }
    }
}

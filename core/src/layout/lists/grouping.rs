//! Lengths that are near enough are formed as the longest of them.

use crate::units::Length;

/// For distinct lengths, the longest first, each with how many pieces have it: the length that each is formed to.
///
/// The fewest different lengths that the tolerance allows, and of those groupings the one that adds least metal. No length is made shorter.
pub(super) fn raised(lengths: &[(Length, u64)], tolerance: Length) -> Vec<Length> {
    // Best of the first k lengths: groups, metal added, and where the last group begins.
    let mut best: Vec<(usize, i128, usize)> = vec![(0, 0, 0)];
    for end in 1..=lengths.len() {
        let mut found: Option<(usize, i128, usize)> = None;
        for begin in (0..end).rev() {
            let (Some(&(longest, _)), Some(&(shortest, _)), Some(&(groups, metal, _))) = (lengths.get(begin), lengths.get(end - 1), best.get(begin)) else {
                break;
            };
            if longest - shortest > tolerance.into() {
                break;
            }
            let more: i128 = lengths.iter().take(end).skip(begin).map(|&(l, n)| (i128::from(longest.pm()) - i128::from(l.pm())) * i128::from(n)).sum();
            let this = (groups + 1, metal + more, begin);
            if found.is_none_or(|f| (this.0, this.1) < (f.0, f.1)) {
                found = Some(this);
            }
        }
        best.push(found.unwrap_or((end, 0, end - 1)));
    }
    let mut out: Vec<Length> = lengths.iter().map(|l| l.0).collect();
    let mut end = lengths.len();
    while let Some(&(_, _, begin)) = best.get(end).filter(|_| end > 0) {
        if let Some(&(longest, _)) = lengths.get(begin) {
            out.iter_mut().take(end).skip(begin).for_each(|l| *l = longest);
        }
        end = begin;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::raised;
    use crate::units::Length;
    use proptest::prelude::*;

    /// Every way to cut the row into groups.
    fn brute(lengths: &[(Length, u64)], tolerance: Length) -> (u32, i128) {
        let n = lengths.len();
        (0..1_u32 << (n - 1))
            .filter_map(|cuts| {
                let (mut metal, mut longest) = (0_i128, lengths[0].0);
                for (k, &(l, count)) in lengths.iter().enumerate() {
                    if k > 0 && cuts & (1 << (k - 1)) != 0 {
                        longest = l;
                    }
                    let more = longest.pm() - l.pm();
                    if more > tolerance.pm() {
                        return None;
                    }
                    metal += i128::from(more) * i128::from(count);
                }
                Some((cuts.count_ones() + 1, metal))
            })
            .min()
            .unwrap()
    }

    proptest! {
        #[test]
        fn fewest_lengths_then_least_metal_and_none_shorter(lengths in prop::collection::btree_map(1..60_i64, 1..5_u64, 1..9), tolerance in 0..20_i64) {
            let lengths: Vec<(Length, u64)> = lengths.into_iter().rev().map(|(l, n)| (Length::from_pm(l), n)).collect();
            let tolerance = Length::from_pm(tolerance);
            let to = raised(&lengths, tolerance);
            let metal: i128 = lengths.iter().zip(&to).map(|(&(l, n), r)| i128::from(r.pm() - l.pm()) * i128::from(n)).sum();
            prop_assert!(lengths.iter().zip(&to).all(|(&(l, _), r)| *r >= l && r.pm() - l.pm() <= tolerance.pm()));
            let mut groups = to;
            groups.dedup();
            prop_assert_eq!((u32::try_from(groups.len()).unwrap(), metal), brute(&lengths, tolerance));
        }
    }
}

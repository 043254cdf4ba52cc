//! Places that are one within a tolerance.

use crate::num::space::{V3, norm, sub};

/// For every place the number of the first place of its cluster: places within the tolerance of each other, directly or by others between.
pub(super) fn clusters(places: &[V3], tolerance: f64) -> Vec<usize> {
    let mut parent: Vec<usize> = (0..places.len()).collect();
    let mut order: Vec<(usize, V3)> = places.iter().copied().enumerate().collect();
    let axis = widest(places);
    let along = |p: &V3| p.get(axis).copied().unwrap_or(0.0);
    order.sort_by(|a, b| along(&a.1).total_cmp(&along(&b.1)).then(a.0.cmp(&b.0)));
    for (k, (i, p)) in order.iter().enumerate() {
        for (j, q) in order.iter().skip(k + 1).take_while(|(_, q)| along(q) - along(p) <= tolerance) {
            if norm(sub(*p, *q)) <= tolerance {
                let (a, b) = (root(&parent, *i), root(&parent, *j));
                if let Some(above) = parent.get_mut(a.max(b)) {
                    *above = a.min(b);
                }
            }
        }
    }
    (0..places.len()).map(|i| root(&parent, i)).collect()
}

/// The axis along which the places reach farthest: sorted along it, the fewest stand beside each other.
pub(super) fn widest(places: &[V3]) -> usize {
    let reach = |axis: usize| {
        let along = || places.iter().filter_map(|p| p.get(axis).copied());
        along().fold(f64::NEG_INFINITY, f64::max) - along().fold(f64::INFINITY, f64::min)
    };
    let reaches = [reach(0), reach(1), reach(2)];
    (0..3).fold(0, |best, axis| if reaches.get(axis) > reaches.get(best) { axis } else { best })
}

fn root(parent: &[usize], mut place: usize) -> usize {
    while let Some(&above) = parent.get(place).filter(|p| **p != place) {
        place = above;
    }
    place
}

#[cfg(test)]
mod tests {
    use super::clusters;

    #[test]
    fn places_chain_and_others_stay_apart() {
        let places = [[0.0, 0.0, 0.0], [5.0, 0.0, 0.0], [0.9, 0.0, 0.0], [5.0, 0.0, 1.1], [1.8, 0.0, 0.0]];
        assert_eq!(clusters(&places, 1.0), [0, 1, 0, 3, 0]);
        assert_eq!(clusters(&places, 1.2), [0, 1, 0, 1, 0]);
    }
}

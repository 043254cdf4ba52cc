//! The polygons whose strips are timed: the same in `benches/peers/polygons.py`, so that both sides cut the same shapes.

use core::f64::consts::PI;

/// How many there are of each form.
pub const COUNT: usize = 1000;
/// How many panels each is wide.
pub const PANELS: u32 = 50;
/// The coverage of a panel in millimetres.
pub const COVERAGE: u32 = 400;

/// Vertices of the outer ring, and of a hole.
pub const FORMS: [(usize, usize); 4] = [(4, 0), (12, 0), (12, 4), (99, 0)];

/// The name of a form.
#[must_use]
pub fn name((outer, hole): (usize, usize)) -> String {
    format!("{COUNT} polygons of {outer} vertices{}, {PANELS} strips each", if hole > 0 { " and a hole" } else { "" })
}

/// Polygons in ragged arrays, in millimetres: coordinates, rings, polygons.
pub type Ragged = (Vec<f64>, Vec<usize>, Vec<usize>);

/// [`COUNT`] rings about a centre, seldom convex, each exactly [`PANELS`] wide.
#[must_use]
pub fn polygons(form: (usize, usize)) -> Ragged {
    polygons_of(form, COUNT)
}

/// The first so many of such polygons.
#[must_use]
pub fn polygons_of((outer, hole): (usize, usize), count: usize) -> Ragged {
    let mut state = 20_240_229_u64;
    let mut draw = move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(state >> 32).unwrap_or(0)) / 4_294_967_296.0
    };
    let (mut coordinates, mut rings, mut polygons) = (Vec::new(), vec![0], vec![0]);
    for _ in 0..count {
        let mut ring = star(outer, 600.0, 1000.0, &mut draw);
        let low = ring.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
        let high = ring.iter().map(|p| p[0]).fold(f64::NEG_INFINITY, f64::max);
        let by = f64::from(PANELS * COVERAGE) / (high - low);
        let all = [core::mem::take(&mut ring), if hole > 0 { star(hole, 100.0, 300.0, &mut draw) } else { Vec::new() }];
        for ring in all.iter().filter(|r| !r.is_empty()) {
            // Tenths of a millimetre, so that both sides start from the same figures.
            let placed = ring.iter().map(|p| [((p[0] - low) * by * 10.0).round() / 10.0, (p[1] * 100.0).round() / 10.0]);
            coordinates.extend(placed.clone().chain(placed.take(1)).flatten());
            rings.push(coordinates.len() / 2);
        }
        polygons.push(rings.len() - 1);
    }
    (coordinates, rings, polygons)
}

fn star(count: usize, least: f64, greatest: f64, draw: &mut impl FnMut() -> f64) -> Vec<[f64; 2]> {
    (0..count)
        .map(|k| {
            #[allow(clippy::cast_precision_loss, reason = "a hundred at most")]
            let angle = 2.0 * PI * (k as f64 + 0.6 * draw()) / count as f64;
            let radius = least + (greatest - least) * draw();
            [radius * cosine(angle), radius * cosine(angle - PI / 2.0)]
        })
        .collect()
}

#[allow(clippy::disallowed_methods, reason = "a shape to be timed; nothing comes of its last bit")]
fn cosine(angle: f64) -> f64 {
    angle.cos()
}

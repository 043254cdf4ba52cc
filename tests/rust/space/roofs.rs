//! Small roofs of drawn sizes, pitches and corners.

use super::draws::{job, plane};
use super::read::mm;
use super::vector::Draw;
use serde_json::{Value, json};

type P2 = (f64, f64);

fn degrees(draw: &mut Draw, low: f64, high: f64) -> f64 {
    (draw.between(low, high) * 1e4).round() / 1e4
}

/// Whole tenths of a millimetre, as a surveyor would have them.
fn size(draw: &mut Draw, low: f64, high: f64) -> f64 {
    (draw.between(low, high) * 10.0).round() / 10.0
}

fn along(p: P2, way: P2, by: f64) -> P2 {
    (p.0 + way.0 * by, p.1 + way.1 * by)
}

fn dot(a: P2, b: P2) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

fn counter_clockwise(mut ring: Vec<P2>) -> Vec<P2> {
    let twice: f64 = ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum();
    if twice < 0.0 {
        ring.reverse();
    }
    ring
}

/// Two planes that meet in a hip or a valley: pitches and plan corner drawn, rakes at the far ends, high edges on top.
pub(crate) fn corner(demo: &Value, is_hip: bool, draw: &mut Draw) -> Value {
    let (low, high) = if is_hip { (12.0, 45.0) } else { (22.0, 50.0) };
    let (a, b, corner) = (degrees(draw, low, high), degrees(draw, low, high), degrees(draw, 75.0, 120.0));
    let down = [degrees(draw, 0.0, 360.0), 0.0];
    let down = [down[0], (down[0] + 180.0 - corner) % 360.0];
    // Into each plane, level.
    let into = down.map(|d| (-d.to_radians().cos(), -d.to_radians().sin()));
    let rise = size(draw, 900.0, 1600.0);
    let runs = [rise / a.to_radians().tan(), rise / b.to_radians().tan()];
    // Where both planes are as high: V . into = run, for both.
    let area = into[0].0 * into[1].1 - into[0].1 * into[1].0;
    let top = ((runs[0] * into[1].1 - runs[1] * into[0].1) / area, (runs[1] * into[0].0 - runs[0] * into[1].0) / area);
    let origin = (size(draw, -5000.0, 5000.0), size(draw, -5000.0, 5000.0));
    let mut planes = Vec::new();
    for (i, pitch) in [a, b].into_iter().enumerate() {
        let side = (-into[i].1, into[i].0);
        // At a hip the eave runs to where the other plane lies, at a valley away from it.
        let side = if (dot(side, into[1 - i]) > 0.0) == is_hip { side } else { (-side.0, -side.1) };
        let far = dot(top, side).max(0.0) + size(draw, 2200.0, 3500.0);
        let ring = [(0.0, 0.0), (side.0 * far, side.1 * far), along((side.0 * far, side.1 * far), into[i], runs[i]), top];
        let ring = counter_clockwise(ring.iter().map(|p| (p.0 + origin.0, p.1 + origin.1)).collect());
        planes.push(plane(["one", "two"][i], &ring, pitch, down[i], (origin.0, origin.1, 3000.0)));
    }
    job(demo, Value::Array(planes), json!([]), draw)
}

/// A gable of two pitches.
pub(crate) fn gable(demo: &Value, draw: &mut Draw) -> Value {
    let (a, b) = (degrees(draw, 5.0, 50.0), degrees(draw, 5.0, 50.0));
    let (w, d1, d2) = (size(draw, 2500.0, 4500.0), size(draw, 1500.0, 3000.0), size(draw, 1500.0, 3000.0));
    let foot = 3000.0 + d1 * a.to_radians().tan() - d2 * b.to_radians().tan();
    let south = [(0.0, 0.0), (w, 0.0), (w, d1), (0.0, d1)];
    let north = [(w, d1 + d2), (0.0, d1 + d2), (0.0, d1), (w, d1)];
    let planes = json!([plane("south", &south, a, 270.0, (0.0, 0.0, 3000.0)), plane("north", &north, b, 90.0, (0.0, d1 + d2, foot))]);
    job(demo, planes, json!([]), draw)
}

/// Two pitches above one another, against walls at the top and along a side.
pub(crate) fn transition(demo: &Value, draw: &mut Draw) -> Value {
    let (a, b) = (degrees(draw, 8.0, 50.0), degrees(draw, 8.0, 50.0));
    let (w, d1, d2) = (size(draw, 2500.0, 4500.0), size(draw, 1500.0, 3000.0), size(draw, 1500.0, 3000.0));
    let lower = [(0.0, 0.0), (w, 0.0), (w, d1), (0.0, d1)];
    let upper = [(0.0, d1), (w, d1), (w, d1 + d2), (0.0, d1 + d2)];
    let at = 3000.0 + d1 * a.to_radians().tan();
    let planes = json!([plane("lower", &lower, a, 270.0, (0.0, 0.0, 3000.0)), plane("upper", &upper, b, 270.0, (0.0, d1, at))]);
    let wall =
        |name: &str, from: P2, to: P2| json!({"name": name, "from": {"x": mm(from.0), "y": mm(from.1)}, "to": {"x": mm(to.0), "y": mm(to.1)}, "top": "20 m"});
    let top = wall("back", (0.0, d1 + d2), (w, d1 + d2));
    let walls = if draw.toss() { json!([top]) } else { json!([top, wall("side", (0.0, 0.0), (0.0, d1 + d2))]) };
    job(demo, planes, walls, draw)
}

/// A mono-slope with a curb in it.
pub(crate) fn curb(demo: &Value, draw: &mut Draw) -> Value {
    let a = degrees(draw, 12.0, 40.0);
    let (w, d) = (size(draw, 3500.0, 4500.0), size(draw, 3500.0, 4500.0));
    let ring = [(0.0, 0.0), (w, 0.0), (w, d), (0.0, d)];
    let mut shed = plane("shed", &ring, a, 270.0, (0.0, 0.0, 3000.0));
    let (x, y) = (size(draw, 1200.0, 1800.0), size(draw, 1200.0, 1500.0));
    let (cw, cd) = (size(draw, 500.0, 1000.0), size(draw, 500.0, 900.0));
    let hole: Vec<Value> = [(x, y), (x + cw, y), (x + cw, y + cd), (x, y + cd)].iter().map(|p| json!({"x": mm(p.0), "y": mm(p.1)})).collect();
    shed["shape"]["plan"]["holes"] = json!([{"name": "curb", "ring": hole}]);
    job(demo, json!([shed]), json!([]), draw)
}

/// A mono-slope with a wide curb in it and a cricket behind that, its ridge level.
pub(crate) fn cricket(demo: &Value, draw: &mut Draw) -> Value {
    let (a, own) = (degrees(draw, 20.0, 40.0), degrees(draw, 20.0, 40.0));
    let (w, d) = (size(draw, 6000.0, 7000.0), size(draw, 5500.0, 6500.0));
    let ring = [(0.0, 0.0), (w, 0.0), (w, d), (0.0, d)];
    let mut shed = plane("shed", &ring, a, 270.0, (0.0, 0.0, 3000.0));
    let (x, y) = (size(draw, 1500.0, 1800.0), size(draw, 1200.0, 1500.0));
    let (cw, cd) = (size(draw, 1800.0, 2600.0), size(draw, 500.0, 900.0));
    let hole: Vec<Value> = [(x, y), (x + cw, y), (x + cw, y + cd), (x, y + cd)].iter().map(|p| json!({"x": mm(p.0), "y": mm(p.1)})).collect();
    shed["shape"]["plan"]["holes"] = json!([{"name": "curb", "ring": hole}]);
    let mut out = job(demo, json!([shed]), json!([]), draw);
    out["roof"]["crickets"] = json!([{"plane": "shed", "hole": "curb", "shape": {"pitch": format!("{own} deg")}}]);
    out
}

/// A valley whose open width grows downhill.
pub(crate) fn widening(demo: &Value, draw: &mut Draw) -> Value {
    let mut out = corner(demo, false, draw);
    for kind in out["junctions"]["kinds"].as_array_mut().into_iter().flatten() {
        if let Some(valley) = kind.get_mut("valley") {
            let tapered = draw.toss();
            if !tapered {
                // The fold of a parallel pan cannot turn.
                valley["second"]["hook"] = valley["first"]["hook"].clone();
            }
            let pan = if tapered { "tapered" } else { "parallel" };
            valley["widens"] = json!({"growth": {"by": mm(size(draw, 4.0, 25.0)), "over": "8 ft"}, "source": "common-practice", "pan": pan});
        }
    }
    out
}

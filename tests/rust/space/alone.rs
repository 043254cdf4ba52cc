//! Junctions alone, by name, on planes made by hand.

use super::draws::{drawn, levels, turned_up};
use super::frame::{Frame, Layers, Side};
use super::read::{length, mm};
use super::section::Section;
use super::vector::{Draw, UP, V3, v};
use serde_json::{Value, json};

/// A junction as it is asked for, and the frame that its planes give.
struct Asked {
    name: &'static str,
    input: Value,
    frame: Frame,
}

/// The sign of distances from the line: up a slope, whatever way it happens to run; along a rake toward the roof, along a sidewall from it.
pub(crate) fn sign(kind: &str, is_first: bool) -> f64 {
    match kind {
        "eave" | "curb-back" | "rake" | "valley" => 1.0,
        "steep-to-shallow" | "shallow-to-steep" if !is_first => 1.0,
        _ => -1.0,
    }
}

fn pitch(degrees: f64) -> Value {
    Value::String(format!("{degrees} deg"))
}

/// A deck that rises toward x at so many degrees, on one side of a level line.
fn deck(kind: &str, (x, rise): (V3, f64), is_first: bool, layers: &Value) -> Side {
    let (sin, cos) = rise.to_radians().sin_cos();
    let way = (x * cos + UP * sin) * if is_first { -1.0 } else { 1.0 };
    Side { normal: UP * cos - x * sin, way, sign: sign(kind, is_first), layers: Some(Layers::read(layers)) }
}

/// What stands beside the one plane of a line: a wall, or a fascia that falls at so many degrees from level.
pub(crate) fn beside(kind: &str, x: V3, z: V3, fall: f64) -> Option<Side> {
    let (sin, cos) = fall.to_radians().sin_cos();
    match kind {
        "eave" | "rake" | "high-edge" => Some(Side { normal: x * sin + z * cos, way: x * cos - z * sin, sign: -1.0, layers: None }),
        "headwall" | "curb-front" | "sidewall" | "curb-side" | "curb-back" => Some(Side { normal: -x, way: z, sign: 1.0, layers: None }),
        _ => None,
    }
}

/// A plane that falls at this angle toward this azimuth: its upward normal.
fn falling(degrees: f64, toward: f64) -> V3 {
    let ((sin, cos), (sa, ca)) = (degrees.to_radians().sin_cos(), toward.to_radians().sin_cos());
    v(sin * ca, sin * sa, cos)
}

fn asked(demo: &Value, kind: &str, draw: &mut Draw) -> Asked {
    let sheets = (draw.between(0.45, 0.9), draw.between(0.8, 1.2));
    let mut detail = drawn(demo, kind, draw, sheets);
    let (l1, l2) = (levels(draw), levels(draw));
    let azimuth = draw.between(0.0, 360.0).to_radians();
    let x = v(azimuth.cos(), azimuth.sin(), 0.0);
    let along = UP.cross(x);
    let origin = v(draw.between(-1e4, 1e4), draw.between(-1e4, 1e4), draw.between(0.0, 1e4));
    let least = if kind == "valley" { 15.0 } else { 3.0 };
    let (a, b) = ((draw.between(least, 55.0) * 1e6).round() / 1e6, (draw.between(least, 55.0) * 1e6).round() / 1e6);
    let roof = |a: f64, l: &Value| json!({"pitch": pitch(a), "levels": l});
    let level = |first: Side, second: Option<Side>| Frame::new(origin, along, first, second);
    match kind {
        "eave" => {
            let fall = if detail["front"] == "plumb" { 90.0 } else { 90.0 + a };
            let frame = level(deck(kind, (x, -a), true, &l1), beside(kind, x, UP, fall));
            Asked { name: "junction.eave", input: json!({"roof": roof(a, &l1), "detail": detail}), frame }
        }
        "high-edge" => {
            let frame = level(deck(kind, (x, a), true, &l1), beside(kind, x, UP, 90.0));
            Asked { name: "junction.high-side", input: json!({"roof": roof(a, &l1), "detail": detail}), frame }
        }
        "headwall" => {
            let frame = level(deck(kind, (x, a), true, &l1), beside(kind, x, UP, 90.0));
            Asked { name: "junction.headwall", input: json!({"roof": roof(a, &l1), "detail": detail}), frame }
        }
        "curb-back" => {
            let frame = level(deck(kind, (x, -a), true, &l1), beside(kind, x, UP, 90.0));
            Asked { name: "junction.curb-back", input: json!({"roof": roof(a, &l1), "width": "500 mm", "detail": detail}), frame }
        }
        "ridge" => {
            let frame = level(deck(kind, (x, a), true, &l1), Some(deck(kind, (x, -b), false, &l2)));
            Asked { name: "junction.ridge", input: json!({"first": roof(a, &l1), "second": roof(b, &l2), "detail": detail}), frame }
        }
        "steep-to-shallow" | "shallow-to-steep" => {
            // By where the water comes from: the first plane is the lower one.
            let (low, high) = if (kind == "steep-to-shallow") == (a < b) { (a, b) } else { (b, a) };
            let frame = level(deck(kind, (x, low), true, &l1), Some(deck(kind, (x, high), false, &l2)));
            Asked { name: "junction.pitch-transition", input: json!({"lower": roof(low, &l1), "upper": roof(high, &l2), "detail": detail}), frame }
        }
        "rake" | "sidewall" => {
            turned_up(kind, &mut detail, length(&l1["seam_height"]));
            // The line runs up the slope; across it the deck is level.
            let (sin, cos) = a.to_radians().sin_cos();
            let up = along * cos + UP * sin;
            let first = Side { normal: UP * cos - along * sin, way: -x, sign: sign(kind, true), layers: Some(Layers::read(&l1)) };
            let mut frame = Frame::new(origin, up, first, None);
            frame.second = beside(kind, frame.x, frame.z, 90.0);
            let width = mm(draw.between(250.0, 400.0));
            if kind == "rake" {
                let edge = draw.one_of(&["seam", "ripped"]);
                return Asked { name: "junction.rake", input: json!({"levels": l1, "edge": edge, "end_panel": width, "detail": detail}), frame };
            }
            Asked { name: "junction.sidewall", input: json!({"roof": roof(a, &l1), "first_seam_from_wall": width, "detail": detail}), frame }
        }
        "hip" | "valley" => {
            let plan = (draw.between(60.0, 130.0) * 1e6).round() / 1e6;
            let (n1, n2) = (falling(a, azimuth.to_degrees()), falling(b, azimuth.to_degrees() + 180.0 - plan));
            let u = n1.cross(n2).unit();
            let u = if u.z < 0.0 { -u } else { u };
            let side = |n: V3, other: V3, l: &Value, is_first: bool| {
                let way = n.cross(u).unit();
                // A hip's plane lies under the other plane drawn on, a valley's over it.
                let is_under = way.dot(other) < 0.0;
                let way = if is_under == (kind == "hip") { way } else { -way };
                Side { normal: n, way, sign: sign(kind, is_first), layers: Some(Layers::read(l)) }
            };
            let frame = Frame::new(origin, u, side(n1, n2, &l1, true), Some(side(n2, n1, &l2, false)));
            let corner = json!({"first": pitch(a), "second": pitch(b), "plan": format!("{plan} deg")});
            let name = if kind == "hip" { "junction.hip" } else { "junction.valley" };
            Asked { name, input: json!({"corner": corner, "first": l1, "second": l2, "detail": detail}), frame }
        }
        other => panic!("no way to draw a {other}"),
    }
}

/// Draws so many junctions of a kind, checks those that can be built, and gives how many those are, with the first reason of each kind of refusal.
pub(crate) fn check(demo: &Value, kind: &str, cases: u64) -> (u64, Vec<String>) {
    let mut built = 0;
    let mut refused: Vec<String> = Vec::new();
    for seed in 0..cases {
        let asked = asked(demo, kind, &mut Draw::seeded(seed));
        match seamwright::job::compute_json(asked.name, &asked.input.to_string()) {
            Ok(text) => {
                let solved: Value = serde_json::from_str(&text).expect("JSON");
                let name = format!("{kind} {seed}");
                let off = Section::new(&name, kind, &asked.frame, &solved, &asked.input["detail"]).check();
                assert!(off.is_empty(), "{off:#?}");
                built += 1;
            }
            Err(e) => {
                let told = e.to_string();
                let path = told.split(" by ").next().unwrap_or_default().split(':').take(2).collect::<Vec<_>>().join(":");
                if !refused.contains(&path) {
                    refused.push(path);
                }
            }
        }
    }
    (built, refused)
}

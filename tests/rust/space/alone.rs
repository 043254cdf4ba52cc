//! Junctions alone, by name, on planes made by hand.

use super::draws::{drawn, levels, other, turned_up};
use super::frame::{Frame, Layers, Side};
use super::others::as_transition;
use super::read::{length, list, mm};
use super::section::Section;
use super::vector::{Draw, UP, V3, v};
use serde_json::{Value, json};

/// A junction as it is asked for, and the frame that its planes give.
struct Asked {
    name: &'static str,
    input: Value,
    frame: Frame,
}

impl Asked {
    /// What of its answer does not lie where it says.
    fn off(&self, name: &str, kind: &str, out: &Value) -> Vec<String> {
        let detail = &self.input["detail"];
        let section = |kind: &str, solved: &Value, asked: &Value| Section::new(name, kind, &self.frame, solved, asked).check();
        match kind {
            "coping" | "step" | "expansion-along" => section(kind, out, &self.input),
            "pipe" => {
                let mut off = section(kind, &out["section"], &self.input);
                off.extend(Section::new(name, kind, &self.frame, &out["section"], &self.input).also(|s| s.pipe(out)));
                off
            }
            "expansion-across" => {
                let flashing = &detail["flashing"];
                let solved = as_transition(out, length(&flashing["end"]["flange"]));
                let mut off = section("steep-to-shallow", &solved, flashing);
                off.extend(Section::new(name, kind, &self.frame, out, flashing).also(|s| s.expansion_across(&self.input)));
                off
            }
            _ => section(kind, out, detail),
        }
    }
}

/// The sign of distances from the line: up a slope, whatever way it happens to run; along a rake toward the roof, along a sidewall from it.
pub(crate) fn sign(kind: &str, is_first: bool) -> f64 {
    match kind {
        "eave" | "curb-back" | "rake" | "valley" => 1.0,
        "expansion-along" => 1.0,
        "steep-to-shallow" | "shallow-to-steep" | "step" | "pipe" if !is_first => 1.0,
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

/// What is no line of the roof, drawn from the guide's input of it.
fn asked_other(kind: &str, draw: &mut Draw) -> Asked {
    let (l1, l2) = (levels(draw), levels(draw));
    let mut input = other(kind, draw, (&l1, &l2));
    let azimuth = draw.between(0.0, 360.0).to_radians();
    let x = v(azimuth.cos(), azimuth.sin(), 0.0);
    let along = UP.cross(x);
    let origin = v(draw.between(-1e4, 1e4), draw.between(-1e4, 1e4), draw.between(0.0, 1e4));
    let (a, b) = ((draw.between(3.0, 45.0) * 1e6).round() / 1e6, (draw.between(3.0, 45.0) * 1e6).round() / 1e6);
    match kind {
        "coping" => {
            // On either face what lies there is measured from its top edge, and up is positive.
            let face = |normal: V3| Side { normal, way: -UP, sign: -1.0, layers: None };
            let frame = Frame { origin, x, z: UP, first: face(-x), second: Some(face(x)) };
            Asked { name: "junction.coping", input, frame }
        }
        "step" => {
            input["lower"] = json!({"pitch": pitch(a), "levels": l1});
            input["upper"] = json!({"pitch": pitch(b), "levels": l2});
            let frame = Frame::new(origin, along, deck(kind, (x, a), true, &l1), Some(deck(kind, (x, b), false, &l2)));
            Asked { name: "junction.step", input, frame }
        }
        "expansion-across" => {
            input["roof"] = json!({"pitch": pitch(a), "levels": l1});
            let mut upper = l1.clone();
            upper["built_up"] = input["detail"]["flashing"]["packing"].clone();
            let like = "steep-to-shallow";
            let frame = Frame::new(origin, along, deck(like, (x, a), true, &l1), Some(deck(like, (x, a), false, &upper)));
            Asked { name: "junction.expansion-across", input, frame }
        }
        "expansion-along" => {
            input["first"]["levels"] = l1.clone();
            input["second"]["levels"] = l2.clone();
            // The joint runs up the slope; across it both decks are level.
            let (sin, cos) = a.to_radians().sin_cos();
            let normal = UP * cos - along * sin;
            let side = |way: V3, l: &Value| Side { normal, way, sign: 1.0, layers: Some(Layers::read(l)) };
            let frame = Frame::new(origin, along * cos + UP * sin, side(-x, &l1), Some(side(x, &l2)));
            Asked { name: "junction.expansion-along", input, frame }
        }
        "pipe" => {
            input["pitch"] = pitch(a);
            let frame = Frame::new(origin, along, deck(kind, (x, a), true, &l1), Some(deck(kind, (x, a), false, &l1)));
            Asked { name: "junction.pipe", input, frame }
        }
        other => panic!("no way to draw a {other}"),
    }
}

fn asked(demo: &Value, kind: &str, draw: &mut Draw) -> Asked {
    if ["coping", "step", "expansion-across", "expansion-along", "pipe"].contains(&kind) {
        return asked_other(kind, draw);
    }
    let sheets = (draw.between(0.45, 0.9), draw.between(0.8, 1.2));
    let mut detail = drawn(demo, kind, draw, sheets);
    let (mut l1, mut l2) = (levels(draw), levels(draw));
    // Packing under all of both planes; a transition has packing of its own.
    if !kind.contains("-to-") && draw.toss() {
        let packing = draw.between(0.0, 60.0);
        l1["built_up"] = mm(packing);
        l2["built_up"] = mm(packing + draw.between(0.0, 2.0));
    }
    if detail["packing_reach"] == "under-panels" {
        l2["built_up"] = detail["packing"].clone();
    }
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

/// Draws junctions of a kind until so many of them can be built, checks those, and gives how many those are and were drawn, with the first reason of each
/// kind of refusal.
pub(crate) fn check(demo: &Value, kind: &str, cases: u64) -> (u64, u64, Vec<String>) {
    let (mut built, mut drawn) = (0, 0);
    let mut refused: Vec<String> = Vec::new();
    while built < cases && drawn < 6 * cases {
        let asked = asked(demo, kind, &mut Draw::seeded(drawn));
        match seamwright::job::compute_json(asked.name, &asked.input.to_string()) {
            Ok(text) => {
                let out: Value = serde_json::from_str(&text).expect("JSON");
                let off = asked.off(&format!("{kind} {drawn}"), kind, &out);
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
        drawn += 1;
    }
    (built, drawn, refused)
}

/// What of the first junctions of a kind that can be built can be moved by a micrometre without being seen, and how many things there are to move.
pub(crate) fn unseen(demo: &Value, kind: &str, cases: usize) -> (Vec<String>, usize) {
    let (mut unseen, mut moved) = (Vec::new(), 0);
    let built = (0..1000).filter_map(|seed| {
        let asked = asked(demo, kind, &mut Draw::seeded(seed));
        let text = seamwright::job::compute_json(asked.name, &asked.input.to_string()).ok()?;
        Some((asked, serde_json::from_str::<Value>(&text).expect("JSON")))
    });
    for (asked, out) in built.take(cases) {
        let under = if kind == "pipe" { "/section" } else { "" };
        let section = out.pointer(under).unwrap_or(&Value::Null);
        let mut places = Vec::new();
        for (i, trim) in list(&section["trims"]).iter().enumerate() {
            let corners = list(&trim["corners"]).len();
            places.extend((0..corners).flat_map(|k| ["x", "z"].map(|axis| format!("{under}/trims/{i}/corners/{k}/{axis}"))));
            places.extend((0..list(&trim["profile"]["legs"]).len()).map(|k| format!("{under}/trims/{i}/profile/legs/{k}/length")));
        }
        for (of, many) in [("along", list(&section["along"]).len()), ("lines", list(&section["lines"]).len())] {
            places.extend((0..many).map(|i| format!("{under}/{of}/{i}/from_line")));
        }
        places.extend((0..list(&section["ends"]).len()).map(|i| format!("{under}/ends/{i}/end/gap")));
        for place in places {
            let mut other = out.clone();
            let value = other.pointer_mut(&place).unwrap_or_else(|| panic!("{place}"));
            *value = mm(length(&value.clone()) + 0.001);
            moved += 1;
            if asked.off("", kind, &other).is_empty() {
                let part = place.rsplit_once('/').and_then(|(parent, _)| other.pointer(parent)).map(|v| v["name"].as_str().map(str::to_owned));
                unseen.push(format!("{kind} {place} {}", part.flatten().unwrap_or_default()));
            }
        }
    }
    assert!(moved > 0, "no {kind} was built");
    (unseen, moved)
}

//! Jobs and details as the demo has them, with every length of them drawn anew around what it is there.

use super::read::{length, list, mm};
use super::vector::Draw;
use serde_json::{Value, json};

/// The demo's detail for a kind, without its name.
pub(crate) fn detail(job: &Value, kind: &str) -> Value {
    let kinds = list(&job["junctions"]["kinds"]);
    kinds.iter().find_map(|k| k.get(kind)).unwrap_or_else(|| panic!("the demo has no {kind}")).clone()
}

/// A high edge, which the demo has not: a ridge's end and a rake's face.
pub(crate) fn high_edge(job: &Value) -> Value {
    json!({"end": detail(job, "ridge")["first"], "sheet": detail(job, "ridge")["sheet"], "face": detail(job, "rake")["face"]})
}

/// Layers as a job draws them, in the order of the deck.
pub(crate) fn levels(draw: &mut Draw) -> Value {
    let stand_off = if draw.toss() { 0.0 } else { draw.between(0.0, 20.0) };
    json!({
        "underlayment": mm(draw.between(0.0, 3.0)),
        "stand_off": mm(stand_off),
        "pan": mm(draw.between(0.4, 0.9)),
        "seam_height": mm(draw.between(38.0, 65.0)),
        "closure_metal": mm(draw.between(0.0, 1.0)),
        "tape": mm(draw.between(0.0, 2.5)),
    })
}

/// What must not be drawn: what a rule asks for, and what others are measured against.
fn is_fixed(name: &str) -> bool {
    name.starts_with("least")
        || ["thickness", "clearance", "rule", "upstand", "under_panels", "panel_margin", "above_pan", "cricket", "minimum"].contains(&name)
}

/// Every length of a detail between 0.9 and 1.15 times what it is, and every angle likewise.
fn spread(json: &mut Value, name: &str, draw: &mut Draw) {
    match json {
        Value::Object(members) => members.iter_mut().filter(|(n, _)| !is_fixed(n)).for_each(|(n, v)| spread(v, n, draw)),
        Value::Array(all) => all.iter_mut().for_each(|v| spread(v, name, draw)),
        Value::String(s) if s.ends_with("deg") => {
            let degrees: f64 = s.trim_end_matches("deg").trim().parse().unwrap_or_else(|e| panic!("{s}: {e}"));
            *json = Value::String(format!("{} deg", (degrees * draw.between(0.8, 1.2) * 1e6).round() / 1e6));
        }
        Value::String(s) if s.ends_with('"') || s.ends_with(" in") || s.ends_with(" mm") => {
            let (low, high) = match name {
                "set_back" => (0.0, 1.0),
                "clear_width" | "tongue" | "face" | "lap" | "leg" => (1.0, 1.15),
                "reach" => (1.1, 1.3),
                "flange" => (1.1, 1.6),
                "width" | "overhang" => (1.1, 1.3),
                "fold" => (0.9, 1.0),
                "hem" => (1.0, 1.1),
                "tape_width" | "trim_tape_width" => (0.7, 0.9),
                _ => (0.9, 1.15),
            };
            *json = mm(length(&json.clone()) * draw.between(low, high));
        }
        _ => {}
    }
}

/// The end of the panels under a flange, by one of the ways to build it.
fn top_end(end: &mut Value, draw: &mut Draw) {
    let top = length(&end["closure"]["top_flange"]);
    if draw.toss() {
        end["closure"]["face"] = json!("web");
        end["closure"]["set_back"] = mm(top + draw.between(0.0, 3.0));
    }
    end["cap_tape_width"] = mm(top * draw.between(0.5, 1.0));
    end["closure"]["tape_width"] = mm(length(&end["closure"]["lower_flange"]) * draw.between(0.4, 1.0));
    match draw.between(0.0, 3.0) {
        d if d < 1.0 => end["drip"] = json!({"leg": "0 mm", "hem": "0 mm", "above_pan": "5 mm"}),
        d if d < 2.0 => end["drip"]["turn"] = json!(format!("{} deg", draw.between(50.0, 90.0).round())),
        _ => {}
    }
    end["hold_back"] = mm(length(&end["hold_back"]) * draw.between(0.9, 1.4));
}

/// A detail of this kind drawn from the demo's, of sheets of these two thicknesses: trims, and cleats.
pub(crate) fn drawn(job: &Value, kind: &str, draw: &mut Draw, (sheet, cleat): (f64, f64)) -> Value {
    let mut out = if kind == "high-edge" { high_edge(job) } else { detail(job, kind) };
    spread(&mut out, kind, draw);
    for name in ["first", "second", "end"] {
        if out[name].get("closure").is_some() {
            top_end(&mut out[name], draw);
        }
    }
    if kind == "eave" {
        out["front"] = json!(draw.one_of(&["plumb", "square-to-roof"]));
        out["flange"]["lies"] = json!(draw.one_of(&["over-underlayment", "under-underlayment"]));
        out.as_object_mut().map(|o| o.remove("gutter"));
    }
    if ["eave", "rake", "high-edge"].contains(&kind) {
        out["face"]["clears"] = mm(draw.between(17.0, 22.0));
    }
    if ["eave", "rake", "high-edge"].contains(&kind) && draw.toss() {
        out["face"]["hem"] = json!({"closed": {"width": mm(draw.between(8.0, 14.0))}});
    }
    if kind.contains("-to-") {
        // A bend, or packing that brings the flange up to the seam tops' level, or more and a riser.
        out["packing"] = mm(draw.between(0.0, 30.0));
        if draw.toss() {
            out["bending"] = json!({"riser": {"distance": mm(draw.between(100.0, 600.0))}});
        }
        out["unsupported_limit"] = mm(1e4);
        let is_steep_below = kind == "shallow-to-steep";
        out["upper_flange"] = mm(draw.between(if is_steep_below { 400.0 } else { 200.0 }, 700.0));
        out["end"]["flange"] = mm(draw.between(400.0, 900.0));
        out["end"]["hold_back"] = mm(if is_steep_below { draw.between(100.0, 450.0) } else { draw.between(30.0, 60.0) });
    }
    if kind == "valley" {
        if draw.toss() {
            let receiver =
                json!({"depth": mm(draw.between(34.0, 45.0)), "opening": mm(draw.between(2.0, 5.0)), "gap": mm(draw.between(3.0, 9.0)), "fold": "28 mm"});
            out["second"]["hook"] = json!({"receiver-fold": receiver});
        }
        if draw.toss() {
            out["rib"] = json!({"height": mm(draw.between(15.0, 30.0)), "half_width": mm(draw.between(5.0, 15.0))});
        }
    }
    if kind == "curb-back" && draw.toss() {
        let fold = json!({"depth": mm(draw.between(34.0, 45.0)), "opening": mm(draw.between(2.0, 5.0)), "gap": mm(draw.between(3.0, 9.0)), "fold": "28 mm"});
        out["hook"] = json!({"receiver-fold": fold});
    }
    if kind == "sidewall" && draw.toss() {
        out["flange"] = json!({"on-pan": {"width": mm(draw.between(90.0, 120.0)), "tape_width": "25 mm", "edge_to_fasteners": "12 mm", "bites": "panel",
            "fasteners": {"spacing": "300 mm", "source": "common-practice"}}});
        out["drip"] = json!({"leg": "0 mm", "hem": "0 mm", "above_pan": "5 mm"});
        out["edge_from_wall"] = mm(draw.between(14.0, 30.0));
        out["edge"] = json!("flat");
    }
    sheets(&mut out, sheet, cleat, false);
    out
}

fn sheets(json: &mut Value, sheet: f64, cleat: f64, is_cleat: bool) {
    match json {
        Value::Object(members) => {
            for (name, value) in members.iter_mut() {
                if name == "thickness" {
                    *value = mm(if is_cleat { cleat } else { sheet });
                } else {
                    sheets(value, sheet, cleat, is_cleat || ["cleat", "strip", "hooked"].contains(&name.as_str()));
                }
            }
        }
        Value::Array(all) => all.iter_mut().for_each(|v| sheets(v, sheet, cleat, is_cleat)),
        _ => {}
    }
}

/// The demo's job with its details, layers, panel and sheets drawn anew, over other planes.
pub(crate) fn job(demo: &Value, planes: Value, walls: Value, draw: &mut Draw) -> Value {
    let mut out = demo.clone();
    let l = levels(draw);
    let (sheet, cleat) = (draw.between(0.5, 0.8), draw.between(0.8, 1.1));
    out["name"] = json!("drawn");
    out["roof"] = json!({"planes": planes, "walls": walls});
    out["layout"]["planes"] = json!([]);
    out["layout"]["start"] = json!(draw.one_of(&["left", "right", "centre-seam", "centre-panel"]));
    out["supplies"]["trims"]["laps"] = json!([]);
    out["supplies"]["trims"]["greatest_girth"] = json!("100 in");
    out["engineer"] = Value::Null;
    for name in ["underlayment", "stand_off", "closure_metal", "tape"] {
        out["levels"][name] = l[name].clone();
    }
    out["metals"]["panel"]["thickness"] = l["pan"].clone();
    (out["metals"]["trims"][0]["thickness"], out["metals"]["trims"][1]["thickness"]) = (mm(sheet), mm(cleat));
    out["panel"]["seam_height"] = l["seam_height"].clone();
    let lock = &mut out["panel"]["seam"]["snap-lock"];
    (lock["male"]["upstand"], lock["female"]["upstand"]) = (l["seam_height"].clone(), l["seam_height"].clone());
    let mut kinds = Vec::new();
    for kind in list(&demo["junctions"]["kinds"]) {
        let name = kind.as_object().and_then(|k| k.keys().next()).unwrap_or_else(|| panic!("a kind without a name"));
        kinds.push(json!({name: drawn(demo, name, draw, (sheet, cleat))}));
    }
    kinds.push(json!({"high-edge": drawn(demo, "high-edge", draw, (sheet, cleat))}));
    for kind in &mut kinds {
        // A sidewall's Z follows the seams, whose height is drawn; an edge turned up must be as high as they are.
        for name in ["rake", "sidewall", "curb-side"] {
            if let Some(detail) = kind.get_mut(name) {
                turned_up(name, detail, length(&l["seam_height"]));
            }
        }
        if let Some(eave) = kind.get_mut("eave") {
            eave["front"] = json!("plumb");
        }
    }
    out["junctions"] = json!({"kinds": kinds, "lines": []});
    out
}

/// The side edge of the last panel turned up as high as the seams.
pub(crate) fn turned_up(kind: &str, detail: &mut Value, seam: f64) {
    if kind == "rake" {
        detail["turn_up"] = mm(seam);
        detail["inner"]["drop"] = mm(seam * 0.6);
    } else if detail["edge"] != json!("flat") {
        detail["edge"] = json!({"turned-up": {"height": mm(seam)}});
    }
}

pub(crate) fn plane(name: &str, outer: &[(f64, f64)], pitch: f64, down: f64, anchor: (f64, f64, f64)) -> Value {
    let outer: Vec<Value> = outer.iter().map(|(x, y)| json!({"x": mm(*x), "y": mm(*y)})).collect();
    let anchor = json!({"x": mm(anchor.0), "y": mm(anchor.1), "z": mm(anchor.2)});
    let shape = json!({"outer": outer, "holes": [], "pitch": format!("{pitch} deg"), "down_slope": format!("{down} deg"), "anchor": anchor});
    json!({"name": name, "shape": {"plan": shape}})
}

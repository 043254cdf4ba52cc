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
        || ["thickness", "clearance", "rule", "upstand", "under_panels", "panel_margin", "head_lap", "above_pan", "cricket", "minimum"].contains(&name)
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
                "clear_width" | "tongue" | "face" | "lap" | "leg" | "cover" => (1.0, 1.15),
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
        out["packing_reach"] = json!(draw.one_of(&["under-panels", "under-flange"]));
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
    if ["ridge", "headwall"].contains(&kind) && draw.toss() {
        out["vent"] = json!({"vented": {"slot": mm(draw.between(8.0, 30.0)), "open_ratio": 0.4}});
    }
    sheets(&mut out, sheet, cleat, false);
    out
}

/// What is no line of a job's roof: its input in the guide drawn anew. Its levels and pitches are the caller's.
pub(crate) fn other(kind: &str, draw: &mut Draw, (l1, l2): (&Value, &Value)) -> Value {
    let file = match kind {
        "coping" if draw.toss() => "coping-on-cleats",
        "coping" => "coping-screwed-at-the-roof-side",
        "expansion-across" => "expansion-joint-across-the-panels",
        "expansion-along" => "expansion-joint-along-the-panels",
        other => other,
    };
    let path = seamwright_tests::root().join("docs/junctions/inputs").join(file).with_extension("json");
    let mut out: Value = serde_json::from_slice(&std::fs::read(path).expect("an input of the guide")).expect("JSON");
    let (sheet, cleat) = (draw.between(0.45, 0.9), draw.between(0.8, 1.2));
    let temperature = |low: f64, high: f64, draw: &mut Draw| Value::String(format!("{} degC", draw.between(low, high).round()));
    if !out["range"].is_null() {
        out["range"]["coldest"] = temperature(-30.0, -10.0, draw);
        out["range"]["laid"] = temperature(5.0, 30.0, draw);
        out["range"]["hottest"] = temperature(50.0, 80.0, draw);
    }
    let top = |l: &Value| super::frame::Layers::read(l).top();
    let pan = |l: &Value| super::frame::Layers::read(l).pan_face();
    if kind != "pipe" {
        spread(&mut out["detail"], kind, draw);
        sheets(&mut out["detail"], sheet, cleat, false);
    }
    match kind {
        "coping" => {
            out["thickness"] = mm(draw.between(120.0, 500.0));
            let d = &mut out["detail"];
            d["bed"] = mm(draw.between(0.0, 3.0));
            d["fall"] = json!(format!("{} deg", (draw.between(0.0, 20.0) * 1e6).round() / 1e6));
            for side in ["roof_side", "outside"] {
                d[side]["behind"] = mm(draw.between(0.0, 4.0));
                d[side]["clears"] = mm(draw.between(19.0, 24.0));
            }
        }
        "step" => {
            out["riser"] = mm(draw.between(380.0, 900.0));
            let d = &mut out["detail"];
            top_end(&mut d["lower"]["end"], draw);
            d["lower"]["stands_out"] = mm(draw.between(0.0, 20.0));
            d["upper"]["face"]["depth"] = mm(draw.between(130.0, 170.0));
            d["upper"]["face"]["clears"] = mm(draw.between(17.0, 22.0));
            d["upper"]["flange"]["lies"] = json!(draw.one_of(&["over-underlayment", "under-underlayment"]));
            if draw.toss() {
                d["upper"]["face"]["hem"] = json!({"closed": {"width": mm(draw.between(8.0, 14.0))}});
            }
        }
        "expansion-across" => {
            out["to_fixed"] = mm(draw.between(2000.0, 9000.0));
            out["below_to_fixed"] = mm(draw.between(0.0, 1000.0));
            let d = &mut out["detail"]["flashing"];
            d["packing"] = mm(top(l1));
            d["upper_flange"] = mm(draw.between(300.0, 380.0));
            d["end"]["flange"] = mm(draw.between(250.0, 350.0));
            d["unsupported_limit"] = mm(1e4);
        }
        "expansion-along" => {
            for side in ["first", "second"] {
                out[side]["to_fixed"] = mm(draw.between(1000.0, 12000.0));
                out[side]["first_seam"] = mm(draw.between(200.0, 500.0));
            }
            let d = &mut out["detail"];
            d["gap"] = mm(draw.between(25.0, 45.0));
            d["hook"] = mm(draw.between(55.0, 80.0));
            let turn_up = draw.between(180.0, 240.0);
            d["turn_up"] = mm(turn_up);
            d["curb_height"] = mm(turn_up + pan(l1).max(pan(l2)) + draw.between(0.0, 4.0));
            d["drop"] = mm(draw.between(125.0, 140.0));
        }
        "pipe" => {
            out["diameter"] = mm(draw.between(40.0, 150.0));
            out["to_fixed"] = mm(draw.between(0.0, 9000.0));
            out["clearance"] = mm(draw.between(3.0, 10.0));
            out["coverage"] = mm(draw.between(420.0, 600.0));
            out["from_seam"] = mm(draw.between(200.0, 300.0));
            out["fixed"] = json!(draw.one_of(&["above", "below"]));
            spread(&mut out["base"], kind, draw);
            out["base"]["shape"] = json!(draw.one_of(&["rectangular", "round"]));
        }
        other => panic!("no way to draw a {other}"),
    }
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

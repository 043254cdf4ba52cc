//! Sections of what is no line of the roof: copings, steps, expansion joints, pipes. What was asked for is the whole input of their calculation.

use super::read::{degrees, length, length_or, list, text};
use super::section::{Section, Trim};
use super::vector::{UP, V3};
use serde_json::{Value, json};

/// What a drip's face hangs before: in the section, the face itself and the top edge from which all on it is measured.
struct Face<'a> {
    side: &'a str,
    /// 1 where it looks toward +x.
    way: f64,
    x: f64,
    z: f64,
}

/// How far a length moves from the laying temperature to another.
pub(crate) fn moves(range: &Value, length_mm: f64, to: &str) -> f64 {
    let kelvin = |name: &str| -> f64 {
        let t = text(&range[name]);
        t.trim_end_matches("degC").trim().parse().unwrap_or_else(|e| panic!("{t}: {e}"))
    };
    let per = text(&range["expansion"]);
    let per: f64 = per.trim_end_matches("/K").trim().parse().unwrap_or_else(|e| panic!("{per}: {e}"));
    (per * length_mm * (kelvin(to) - kelvin("laid"))).abs()
}

/// The flashing of a joint across the panels as the transition trim that it is: cut in two where its flange crosses the line.
pub(crate) fn as_transition(solved: &Value, lower_flange: f64) -> Value {
    let mut out = solved.clone();
    for trim in out["trims"].as_array_mut().into_iter().flatten().filter(|t| t["name"] == "transition trim") {
        let legs = list(&trim["profile"]["legs"]).to_vec();
        let at = legs.iter().position(|l| l["name"] == "flange").unwrap_or_else(|| panic!("no flange"));
        let whole = length(&legs[at]["length"]);
        let named = |name: &str, by: f64| json!({"name": name, "length": super::read::mm(by), "dimension": legs[at]["dimension"].clone()});
        let (a, b) = (trim["corners"][at].clone(), trim["corners"][at + 1].clone());
        let share = lower_flange / whole;
        let between = |axis: &str| super::read::mm(length(&a[axis]) + (length(&b[axis]) - length(&a[axis])) * share);
        let mid = json!({"x": between("x"), "z": between("z")});
        if let Some(all) = trim["profile"]["legs"].as_array_mut() {
            all.splice(at..=at, [named("lower flange", lower_flange), named("upper flange", whole - lower_flange)]);
        }
        if let Some(all) = trim["profile"]["bends"].as_array_mut() {
            all.insert(at, json!({"angle": "0 deg", "direction": "up"}));
        }
        if let Some(all) = trim["corners"].as_array_mut() {
            all.insert(at + 1, mid);
        }
    }
    out
}

impl Section<'_> {
    fn flat(&self, p: V3) -> (f64, f64) {
        ((p - self.frame.origin).dot(self.frame.x), (p - self.frame.origin).dot(self.frame.z))
    }

    /// A face with its drip before another face, and the cleat that it hooks.
    fn drip_on(&self, trim: &Trim<'_>, (face, drip): (&str, &str), cleat: Option<(&Trim<'_>, &str)>, on: &Face<'_>, asked: &Value) {
        let t = cleat.map_or(0.0, |(c, _)| c.thickness());
        let (high, low) = trim.ends(face);
        for p in [high, low] {
            self.near(&format!("{face} before what it covers"), (self.flat(p).0 - on.x) * on.way, t);
        }
        let (one, other) = trim.ends(drip);
        let is_bend = |p: V3| (p - high).norm() < 1e-9 || (p - low).norm() < 1e-9;
        let (bend, edge) = if is_bend(one) { (one, other) } else { (other, one) };
        let ((bx, bz), (ex, ez)) = (self.flat(bend), self.flat(edge));
        self.near(&format!("the depth of the {face}"), on.z - bz, length(&asked["depth"]));
        let clears = length_or(&asked["clears"], 12.7);
        self.near(&format!("how far the {drip} clears"), (ex - bx) * on.way, clears);
        self.near(&format!("the kick of the {drip}"), (bz - ez) * degrees(&asked["kick"]).to_radians().tan(), clears);
        let Some((cleat, name)) = cleat else { return };
        let hooked = &asked["hem"]["hooked"];
        let (a, b) = cleat.ends("face");
        let (top, foot) = if self.flat(a).1 > self.flat(b).1 { (a, b) } else { (b, a) };
        for p in [top, foot] {
            self.near(&format!("the {name} on its face"), (self.flat(p).0 - on.x) * on.way, 0.0);
        }
        let out = (edge - bend).unit();
        let (a, b) = cleat.ends("hook");
        let to = if (a - bend).norm() > (b - bend).norm() { a } else { b };
        for p in [a, b] {
            let off = (p - bend) - out * (p - bend).dot(out);
            self.near(&format!("the hook of the {name} behind the drip"), off.norm(), cleat.thickness());
        }
        let legs = list(&trim.json["profile"]["legs"]);
        let hem = if text(&legs[0]["name"]) == drip { &trim.json["profile"]["start_edge"]["open-hem"] } else { &trim.json["profile"]["end_edge"]["open-hem"] };
        let short = (edge - to).dot(out);
        self.least("the hem holds the cleat", length(&hem["width"]) - short, length(&hooked["engagement"]));
        self.least("the cleat stops short of the hem's fold", short, trim.thickness());
        self.least("the hem's gap", length(&hem["gap"]), cleat.thickness());
        let (top, foot) = (self.flat(top).1 - on.z, self.flat(foot).1 - on.z);
        self.near("the height of the cleat", top - foot, length(&hooked["height"]));
        self.near(&format!("the {name}"), self.at(on.side, name), top);
        self.near("the line of its top edge", self.struck(on.side, "continuous cleat, top edge"), top);
        let row = self.at(on.side, "continuous cleat's fasteners");
        self.near("the cleat's fasteners", row, foot + length(&hooked["fasteners_above_bend"]));
        self.near("the line of the cleat's fasteners", self.struck(on.side, "continuous cleat's fasteners"), row);
        self.least("the cleat's fasteners under its top", top, row);
    }

    pub(crate) fn coping(&self) {
        let d = &self.detail["detail"];
        let (wall, fall) = (length(&self.detail["thickness"]), degrees(&d["fall"]).to_radians());
        let cap = self.trim("coping");
        let (a, b) = cap.ends("top");
        for p in [a, b] {
            let (x, z) = self.flat(p);
            self.near("the top over the wall's", z * fall.cos() - x * fall.sin(), length(&d["bed"]));
        }
        for (side, path, way, names, name) in [
            ("first", "roof_side", -1.0, ("roof-side face", "roof-side drip"), "continuous cleat, roof side"),
            ("second", "outside", 1.0, ("outside face", "outside drip"), "continuous cleat, outside"),
        ] {
            let asked = &d[path];
            let (x, z) = if way < 0.0 { (-wall - length(&asked["behind"]), -wall * fall.tan()) } else { (length(&asked["behind"]), 0.0) };
            let on = Face { side, way, x, z };
            let cleat = self.trims(name).into_iter().next();
            let mut face = asked.clone();
            face["hem"] = json!({"hooked": asked["hold"]["cleat"]});
            self.drip_on(&cap, names, cleat.as_ref().map(|c| (c, name)), &on, &face);
            let screws = &asked["hold"]["screws"];
            assert_eq!(screws.is_null(), cleat.is_some(), "{}: a cleat or screws", self.name);
            if !screws.is_null() {
                let at = self.at(side, "face screws");
                self.near("the face's screws", at, length(&screws["above_bend"]) - length(&asked["depth"]));
                self.near("the line of the face's screws", self.struck(side, "face screws"), at);
                self.least("the screws in the wall", 0.0, at);
            }
            if !asked["over"].is_null() {
                let lap = length(&asked["depth"]) - length(&asked["over"]["below_top"]);
                self.least("the lap over what comes up the wall", lap, length(&asked["over"]["rule"]["least"]));
            }
        }
    }

    pub(crate) fn step(&self) {
        let (riser, d) = (length(&self.detail["riser"]), &self.detail["detail"]);
        let (lower, upper) = (&d["lower"], &d["upper"]);
        let (frame, below, above) = (self.frame, &self.frame.first, self.frame.side("second"));
        let l = self.layers("first");
        let flashing = self.trim("lower flashing");
        self.top_end("first", &flashing, "flange", &lower["end"]);
        let (a, b) = flashing.ends("leg");
        for p in [a, b] {
            self.near("the leg off the riser", -self.flat(p).0, length(&lower["stands_out"]));
        }
        let top = if self.flat(a).1 > self.flat(b).1 { a } else { b };
        let leg_top = self.flat(top).1 - riser;
        self.near("the leg's top", leg_top, -length(&lower["below_edge"]));
        self.near("the line of the leg's top", self.struck("riser", "leg, top edge"), leg_top);
        let row = self.at("riser", "leg fasteners");
        self.near("the leg's fasteners", row, leg_top - length(&lower["fasteners_below_top"]));
        self.near("the line of the leg's fasteners", self.struck("riser", "leg fasteners"), row);
        self.least("the upstand", frame.height(below, top) - l.pan_face(), length(&lower["upstand"]["least"]));
        let trim = self.trim("eave trim");
        let cleat = self.trims("continuous cleat").into_iter().next();
        let on = Face { side: "riser", way: -1.0, x: -length(&lower["stands_out"]) - flashing.thickness(), z: riser };
        self.drip_on(&trim, ("face", "drip"), cleat.as_ref().map(|c| (c, "continuous cleat")), &on, &upper["face"]);
        let depth = length(&upper["face"]["depth"]);
        self.least("the face over the leg", depth + leg_top, length(&lower["lap"]["least"]));
        self.least("the leg's fasteners behind the face", row, -depth);
        for p in &trim.corners {
            self.least("clear under the drip", frame.height(below, *p) - l.top() - flashing.thickness(), length(&lower["clearance"]));
        }
        // On the upper deck, from its edge.
        let edge = UP * riser;
        let (high, out) = (|p: V3| frame.height(above, p) - edge.dot(above.normal), |p: V3| frame.along(above, p) - edge.dot(above.way) * above.sign);
        let level = if upper["flange"]["lies"] == "over-underlayment" { self.layers("second").underlayment } else { 0.0 };
        let strip = self.trim("hook strip");
        let far = |(a, b): (V3, V3)| if out(a) > out(b) { (out(a), out(b)) } else { (out(b), out(a)) };
        for (part, leg, at) in [(&trim, "deck flange", level), (&strip, "strip", level + trim.thickness())] {
            let (a, b) = part.ends(leg);
            for p in [a, b] {
                self.near(&format!("{leg} over the upper deck"), high(p), at);
            }
        }
        let ((trim_top, _), (strip_top, front)) = (far(trim.ends("deck flange")), far(strip.ends("strip")));
        self.near("the trim's top edge", self.struck("second", "trim top edge"), trim_top);
        self.near("the strip's top edge", self.struck("second", "hook strip, top edge"), strip_top);
        self.near("the strip's lower edge", self.struck("second", "hook strip, lower edge"), front);
        self.near("the strip's width", strip_top - front, length(&upper["strip"]["width"]));
        let end = self.end("second").unwrap_or(&Value::Null);
        let gap = front - self.struck("second", "panel nose");
        self.near("the gap at the strip", gap, length(&end["gap"]));
        self.least("the fold hooks the strip", length(&end["fold"]) - gap, length_or(&upper["panel"]["engagement"], 9.525));
        for (row, edge, of) in [("deck flange's fasteners", trim_top, "flange"), ("hook strip's fasteners", strip_top, "strip")] {
            self.near(row, self.at("second", row), edge - length(&upper[of]["fasteners_from_edge"]));
        }
    }

    /// What is beside that of a transition: the upper panels move, and neither strike the cleat nor come off it.
    pub(crate) fn expansion_across(&self, asked: &Value) {
        let (range, to_fixed) = (&asked["range"], length(&asked["to_fixed"]) + length_or(&asked["below_to_fixed"], 0.0));
        let (heat, cold) = (moves(range, to_fixed, "hottest"), moves(range, to_fixed, "coldest"));
        let end = self.end("second").unwrap_or(&Value::Null);
        let front = self.at("second", "offset cleat, front");
        let gap = front - self.struck("second", "panel nose");
        let clearance = length_or(&asked["detail"]["clearance"], 3.175);
        self.least("the gap in the cold", gap - cold, clearance);
        let engaged = length_or(&asked["detail"]["flashing"]["cleat"]["least_engagement"], 9.525);
        self.least("the fold engaged in the heat", length(&end["fold"]) - gap - heat, engaged);
        let top = self.struck("second", "trim top edge");
        self.least("the lap beside the movement", top - (front - gap) - heat - cold, length(&asked["detail"]["lap"]["least"]));
    }

    pub(crate) fn expansion_along(&self) {
        let d = &self.detail["detail"];
        let of = |name: &str| length(&d[name]);
        let (range, apart) = (&self.detail["range"], length(&self.detail["first"]["to_fixed"]) + length(&self.detail["second"]["to_fixed"]));
        let (closes, opens) = (moves(range, apart, "hottest"), moves(range, apart, "coldest"));
        let (clearance, top, foot) = (length_or(&d["clearance"], 3.175), of("curb_height"), of("curb_height") - of("drop"));
        self.least("the gap in the heat", of("gap") - closes, clearance);
        let cap = self.trim("joint cap");
        let t = cap.thickness();
        let box_of = |trim: &Trim<'_>, leg: &str| {
            let (a, b) = trim.ends(leg);
            let (a, b) = (self.flat(a), self.flat(b));
            (a.0.min(b.0), a.0.max(b.0), a.1.min(b.1), a.1.max(b.1))
        };
        let mut legs = [0.0; 2];
        for (k, (side, way, name)) in [("first", -1.0, "joint cleat, fixed side"), ("second", 1.0, "joint cleat, sliding side")].into_iter().enumerate() {
            let l = self.layers(side);
            let cleat = self.trim(name);
            let inner = of("gap") / 2.0;
            let outer = inner + of("curb_width");
            let edge = self.struck(side, "panel edge");
            self.near("the curb's face", self.struck(side, "curb, face to the gap"), inner);
            self.near("the curb's outer face", self.struck(side, "curb, outer face"), outer);
            self.near("the panels' edge", edge, outer + of("edge_room"));
            let leg = edge + l.pan + of("cleat_room");
            legs[k] = leg;
            let (x0, x1, z0, z1) = box_of(&cleat, "top");
            let (near, far) = if way > 0.0 { (x0, x1) } else { (-x1, -x0) };
            for (what, got, want) in [("from", near, inner), ("to", far, leg), ("low", z0, top), ("high", z1, top)] {
                self.near(&format!("the top of the {name}, {what}"), got, want);
            }
            let (x0, x1, z0, z1) = box_of(&cleat, "leg");
            for (what, got, want) in [("inside", x0 * way, leg), ("outside", x1 * way, leg), ("low", z0, foot), ("high", z1, top)] {
                self.near(&format!("the leg of the {name}, {what}"), got, want);
            }
            let row = self.at(side, "cleat fasteners");
            self.near("the cleat's fasteners", row, inner + of("fasteners_from_edge"));
            self.near("the cleat", self.at(side, name), leg);
            self.least("the cleat's fasteners in the curb", outer, row);
            let edge_top = l.pan_face() + of("turn_up");
            self.near("the turned-up edge", length(&self.end(side).unwrap_or(&Value::Null)["turn_up"]), of("turn_up"));
            self.least("the edge is as high as the seams", of("turn_up"), l.seam);
            self.least("the upstand", of("turn_up"), length(&d["upstand"]["least"]));
            self.least("the edge under the curb's top", top, edge_top);
            self.least("the lap over the edge", edge_top - foot, length(&d["lap"]["least"]));
        }
        let [one, two] = legs;
        self.near("the rivets", self.at("first", "rivets of the fixed leg"), one + t);
        let (x0, x1, z0, z1) = box_of(&cap, "fixed leg");
        for (what, got, want) in [("inside", x0, -one - t), ("outside", x1, -one - t), ("low", z0, foot), ("high", z1, top + t)] {
            self.near(&format!("the cap's fixed leg, {what}"), got, want);
        }
        let (_, far, low, high) = box_of(&cap, "sliding leg");
        self.near("the cap's top on the cleats", high, top + t);
        self.near("the play under the hook", foot - low, of("play"));
        let hook = box_of(&self.trim("joint cleat, sliding side"), "hook");
        for (what, got, want) in [("from", hook.0, two), ("to", hook.1, two + of("hook")), ("low", hook.2, foot), ("high", hook.3, foot)] {
            self.near(&format!("the hook, {what}"), got, want);
        }
        let back = box_of(&cap, "return");
        self.near("the return's outer end", back.1, far);
        self.near("the return's level", back.2, low);
        self.near("the return's level", back.3, low);
        // In the cold the cleat comes toward the cap's leg, in the heat it draws away.
        self.near("clear of the leg in the cold", far - (two + of("hook") + opens), clearance);
        self.near("the return is as long as lets the cleat's leg pass", back.0 - (two + t + opens), clearance);
        self.least("engaged in the heat", hook.1 - closes - back.0, length_or(&d["engagement"], 9.525));
    }

    /// The pipe stands plumb, and its plan on the pan is an ellipse: all of it lies in the hole wherever the panel has moved.
    pub(crate) fn pipe(&self, plan: &Value) {
        let asked = self.detail;
        let slope = degrees(&asked["pitch"]).to_radians();
        let (radius, clearance) = (length(&asked["diameter"]) / 2.0, length(&asked["clearance"]));
        let to_fixed = length(&asked["to_fixed"]);
        let (heat, cold) = (moves(&asked["range"], to_fixed, "hottest"), moves(&asked["range"], to_fixed, "coldest"));
        // Up the slope at the hottest and at the coldest.
        let shifts = if asked["fixed"] == "above" { [-heat, cold] } else { [heat, -cold] };
        let (up, down, across) = (length(&plan["hole_up"]), length(&plan["hole_down"]), length(&plan["hole_across"]));
        let mut least = [f64::INFINITY; 3];
        let on = &self.frame.first;
        for k in 0..720 {
            let (sin, cos) = (f64::from(k) / 2.0).to_radians().sin_cos();
            // A line of the pipe, plumb through its plan, met with the deck's plane.
            let level = self.frame.x * (radius * sin) + UP.cross(self.frame.x).unit() * (radius * cos);
            let p = level - UP * (level.dot(on.normal) / UP.dot(on.normal));
            let (v, u) = (p.dot(-on.way), p.dot(UP.cross(self.frame.x).unit()));
            for shift in shifts {
                least[0] = least[0].min(up + shift - v);
                least[1] = least[1].min(v + down - shift);
            }
            least[2] = least[2].min(across / 2.0 - u.abs());
        }
        for (what, got) in [("above", least[0]), ("below", least[1]), ("beside", least[2])] {
            self.near(&format!("the hole {what} the pipe at the worst of the year"), got, clearance);
        }
        assert!(slope < 1.5, "{}", self.name);
        let b = &asked["base"];
        let (seal, inset) = (length(&b["seal"]), length(&b["screws_from_edge"]));
        for (side, way, hole, base) in [("first", -1.0, down, "base_down"), ("second", 1.0, up, "base_up")] {
            let names = if way < 0.0 { ("hole, lower edge", "base, lower edge") } else { ("hole, upper edge", "base, upper edge") };
            let edge = length(&plan[base]);
            self.near("the hole's edge", self.struck(side, names.0), way * hole);
            self.near("the base's edge", self.struck(side, names.1), way * edge);
            self.least("the base over the hole", edge - hole, seal);
            for row in ["screws of the base", "tape under the base"] {
                self.near(row, self.at(side, row), way * (edge - inset));
            }
            self.near("the line of the screws", self.struck(side, "screws of the base"), way * (edge - inset));
            self.least("the tape beside the hole", edge - inset - length(&b["tape_width"]) / 2.0, hole);
        }
        let half = length(&plan["base_across"]) / 2.0;
        self.least("the base beside the hole", half - across / 2.0, seal);
        let (from, foot) = (length(&asked["from_seam"]), length(&asked["seam_width"]) / 2.0);
        self.near("the seam on the left", length(&plan["to_seam"][0]), from - half - foot);
        self.near("the seam on the right", length(&plan["to_seam"][1]), length(&asked["coverage"]) - from - half - foot);
    }
}

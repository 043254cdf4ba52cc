//! A section laid out in space: every trim, line and row must be where its supports are.

use super::frame::{Frame, Layers, Side};
use super::read::{degrees, length, length_or, list, text};
use super::vector::V3;
use core::cell::RefCell;
use serde_json::Value;

/// How far a point may lie from where it belongs, in millimetres.
pub(crate) const NEAR: f64 = 1e-6;
/// Room at a rivet between the drip and the closures, as the library's practice has it: 1/8 in.
const RIVET_REACH: f64 = 3.175;

pub(crate) struct Section<'a> {
    pub(crate) name: &'a str,
    kind: &'a str,
    pub(crate) frame: &'a Frame,
    solved: &'a Value,
    /// What was asked for.
    pub(crate) detail: &'a Value,
    /// What does not lie where it says.
    off: RefCell<Vec<String>>,
}

/// A trim's corners in space, with the names of its legs.
pub(crate) struct Trim<'a> {
    pub(crate) json: &'a Value,
    pub(crate) corners: Vec<V3>,
}

impl Trim<'_> {
    pub(crate) fn thickness(&self) -> f64 {
        length(&self.json["profile"]["thickness"])
    }

    pub(crate) fn ends(&self, leg: &str) -> (V3, V3) {
        let legs = list(&self.json["profile"]["legs"]);
        let i = legs.iter().position(|l| text(&l["name"]) == leg).unwrap_or_else(|| panic!("{} has no {leg}", self.json["name"]));
        (self.corners[i], self.corners[i + 1])
    }

    fn has(&self, leg: &str) -> bool {
        list(&self.json["profile"]["legs"]).iter().any(|l| text(&l["name"]) == leg)
    }
}

impl<'a> Section<'a> {
    pub(crate) fn new(name: &'a str, kind: &'a str, frame: &'a Frame, solved: &'a Value, detail: &'a Value) -> Section<'a> {
        Section { name, kind, frame, solved, detail, off: RefCell::default() }
    }

    pub(crate) fn near(&self, what: &str, got: f64, want: f64) {
        // What is not a number is off too.
        let is_near = (got - want).abs() < NEAR;
        if !is_near {
            self.off.borrow_mut().push(format!("{} ({}): {what}: {got} is not {want}", self.name, self.kind));
        }
    }

    pub(crate) fn least(&self, what: &str, got: f64, least: f64) {
        let is_enough = got >= least - NEAR;
        if !is_enough {
            self.off.borrow_mut().push(format!("{} ({}): {what}: {got} is less than {least}", self.name, self.kind));
        }
    }

    pub(crate) fn trims(&self, name: &str) -> Vec<Trim<'a>> {
        let all = list(&self.solved["trims"]).iter().filter(|t| text(&t["name"]) == name);
        all.map(|json| Trim { json, corners: list(&json["corners"]).iter().map(|c| self.frame.at(c)).collect() }).collect()
    }

    pub(crate) fn trim(&self, name: &str) -> Trim<'a> {
        self.trims(name).into_iter().next().unwrap_or_else(|| panic!("{}: no {name}", self.name))
    }

    fn along(&self, side: &str, name: &str) -> Option<&'a Value> {
        list(&self.solved["along"]).iter().find(|a| text(&a["side"]) == side && text(&a["name"]) == name)
    }

    pub(crate) fn at(&self, side: &str, name: &str) -> f64 {
        length(&self.along(side, name).unwrap_or_else(|| panic!("{}: no {name} on the {side} side", self.name))["from_line"])
    }

    pub(crate) fn line(&self, side: &str, name: &str) -> Option<f64> {
        list(&self.solved["lines"]).iter().find(|l| text(&l["side"]) == side && text(&l["name"]) == name).map(|l| length(&l["from_line"]))
    }

    pub(crate) fn struck(&self, side: &str, name: &str) -> f64 {
        self.line(side, name).unwrap_or_else(|| panic!("{}: no line {name} on the {side} side", self.name))
    }

    pub(crate) fn end(&self, side: &str) -> Option<&'a Value> {
        list(&self.solved["ends"]).iter().find(|e| text(&e["side"]) == side).map(|e| &e["end"])
    }

    pub(crate) fn layers(&self, side: &str) -> Layers {
        self.frame.side(side).layers.unwrap_or_else(|| panic!("{}: no layers", self.name))
    }

    /// Both ends of a leg lie at this height over a side's face.
    fn lies(&self, trim: &Trim<'_>, leg: &str, side: &str, height: f64) {
        let (a, b) = trim.ends(leg);
        for p in [a, b] {
            self.near(&format!("{} of {} over the {side} side", leg, trim.json["name"]), self.frame.height(self.frame.side(side), p), height);
        }
    }

    /// Where a panel's end is, from the line onto its plane: its outermost point at the laying temperature.
    fn nose(&self, end: &Value) -> f64 {
        let reach = &end["reach"];
        let onto = if reach["overhang"].is_null() { length(&reach["hold-back"]) } else { -length(&reach["overhang"]) };
        onto - length(&end["gap"])
    }

    /// What another look finds.
    pub(crate) fn also(self, look: impl FnOnce(&Self)) -> Vec<String> {
        look(&self);
        self.off.into_inner()
    }

    /// What does not lie where it says; nothing where all does.
    pub(crate) fn check(self) -> Vec<String> {
        self.look();
        self.off.into_inner()
    }

    fn look(&self) {
        list(&self.solved["trims"]).iter().for_each(|t| self.folds(t));
        self.slot();
        for side in ["first", "second"] {
            self.backed(side);
            // What lies along the line under the name of a struck line lies on it.
            for row in list(&self.solved["along"]).iter().filter(|a| text(&a["side"]) == side) {
                if let Some(struck) = self.line(side, text(&row["name"])) {
                    self.near(&format!("{} on its line", row["name"]), length(&row["from_line"]), struck);
                }
            }
            let Some(end) = self.end(side) else { continue };
            let name = ["panel nose", "panel end", "panel edge"].into_iter().find(|n| self.line(side, n).is_some());
            let struck = self.struck(side, name.unwrap_or_else(|| panic!("{}: no line for the panels' end", self.name)));
            self.near("the panels' end", struck * self.frame.side(side).sign, self.nose(end));
        }
        match self.kind {
            "eave" => self.eave(),
            "rake" => self.rake(),
            "ridge" | "hip" => {
                let cap = self.trim(if self.kind == "ridge" { "ridge cap" } else { "hip cap" });
                self.top_end("first", &cap, "first flange", &self.detail["first"]);
                self.top_end("second", &cap, "second flange", &self.detail["second"]);
            }
            "high-edge" => {
                let cap = self.trim("high-side cap");
                self.top_end("first", &cap, "roof flange", &self.detail["end"]);
                self.face(&cap, "wall leg", "wall drip");
            }
            "headwall" | "curb-front" => {
                let flashing = self.trim("headwall flashing");
                self.top_end("first", &flashing, "flange", &self.detail["end"]);
                self.wall(&flashing);
            }
            "sidewall" | "curb-side" => self.sidewall(),
            "valley" => self.valley(),
            "steep-to-shallow" | "shallow-to-steep" => self.transition(),
            "curb-back" => self.curb_back(),
            "coping" => self.coping(),
            "step" => self.step(),
            "expansion-along" => self.expansion_along(),
            // Its plan is checked beside its section.
            "pipe" => {}
            other => panic!("{}: a kind without a check: {other}", self.name),
        }
    }

    /// Where air goes out, the pans and all that is fastened to the deck leave the slot free.
    fn slot(&self) {
        let slot = &self.detail["vent"]["vented"]["slot"];
        for side in ["first", "second"] {
            let edge = self.line(side, "edge of the slot");
            assert!(edge.is_none() || !slot.is_null(), "{}: a slot that nobody asked for", self.name);
            let Some(edge) = edge else { continue };
            self.near("the edge of the slot", edge, -length(slot));
            self.least("the pans leave the slot free", self.nose(self.end(side).unwrap_or(&Value::Null)), length(slot));
            for row in list(&self.solved["along"]).iter().filter(|a| text(&a["side"]) == side && a["what"]["fasteners"]["bites"] == "structure") {
                self.least("what bites the deck leaves the slot free", -length(&row["from_line"]), length(slot));
            }
        }
        assert!(slot.is_null() || self.line("first", "edge of the slot").is_some(), "{}: a slot without a line", self.name);
    }

    /// The corners are those of the profile: its legs walked one by one, turned at each bend.
    fn folds(&self, json: &Value) {
        let corners = list(&json["corners"]);
        let flat = |i: usize| (length(&corners[i]["x"]), length(&corners[i]["z"]));
        let (legs, bends) = (list(&json["profile"]["legs"]), list(&json["profile"]["bends"]));
        assert_eq!(corners.len(), legs.len() + 1);
        // A fold of 180 degrees has no corner to walk to.
        if bends.iter().any(|b| (degrees(&b["angle"]) - 180.0).abs() < 1e-9) {
            return;
        }
        let (start, next) = (flat(0), flat(1));
        let mut heading = (next.1 - start.1).atan2(next.0 - start.0);
        let mut p = start;
        for (i, leg) in legs.iter().enumerate() {
            if let Some(bend) = i.checked_sub(1).map(|b| &bends[b]) {
                heading += degrees(&bend["angle"]).to_radians() * if text(&bend["direction"]) == "up" { 1.0 } else { -1.0 };
            }
            let by = length(&leg["length"]);
            p = (p.0 + by * heading.cos(), p.1 + by * heading.sin());
            let want = flat(i + 1);
            let off = (p.0 - want.0).hypot(p.1 - want.1);
            // The first heading is taken from corners that are whole picometres.
            self.least(&format!("{} walked to its corner {}", json["name"], i + 1), 0.0, off);
        }
    }

    /// Fasteners that bite the structure are over the deck, the wall or the fascia that backs them.
    fn backed(&self, side: &str) {
        for row in list(&self.solved["along"]).iter().filter(|a| text(&a["side"]) == side) {
            if row["what"]["fasteners"]["bites"] == "structure" {
                let side = self.frame.side(side);
                self.least(&format!("{} on what backs them", row["name"]), length(&row["from_line"]) * side.sign, 0.0);
            }
        }
    }

    /// A flange on the seam tops, the closures under it, the panels that end there.
    pub(crate) fn top_end(&self, side: &str, trim: &Trim<'_>, flange: &str, asked: &Value) {
        let (frame, on, l) = (self.frame, self.frame.side(side), self.layers(side));
        self.lies(trim, flange, side, l.top());
        let (mut edge, mut bend) = trim.ends(flange);
        if side == "second" {
            (edge, bend) = (bend, edge);
        }
        let (a_edge, a_bend) = (frame.along(on, edge), frame.along(on, bend));
        self.near("the flange", a_bend - a_edge, length(&asked["flange"]));
        self.near("the trim's lower edge", self.struck(side, "trim lower edge"), a_edge);
        let c = &asked["closure"];
        let top_flange = length(&c["top_flange"]);
        let web = self.at(side, "closures");
        let leading = web - top_flange;
        let face = if c["face"] == "web" { web } else { leading };
        self.near("the closures' face", self.struck(side, "closure face"), face);
        self.near("the set-back", face - a_edge, length(&c["set_back"]));
        self.least("the flange covers the closures", leading, a_edge);
        // The web from its tape on the pan up to the seam tops, under the flange and short of its bend.
        let tall = length(&self.along(side, "closures").unwrap_or(&Value::Null)["what"]["closures"]["web"]);
        let foot = frame.on(on, web, l.pan_face() + length(&c["tape_beneath"]));
        let head = foot + on.normal * tall;
        let normal_of_flange = (bend - edge).unit();
        let under = (head - edge) - normal_of_flange * (head - edge).dot(normal_of_flange);
        self.near("from the web's head to the flange", under.norm(), l.closure + l.tape);
        self.least("the web is short of the bend", a_bend, web);
        // The screws in the middle of the lower flange and of its tape, the flange on the panels.
        let screws = self.at(side, "closure screws");
        let lower = length(&c["lower_flange"]);
        self.near("the closures' screws", screws, web + lower / 2.0);
        self.near("the tape under the closures", self.at(side, "tape under the closures"), screws);
        self.least("the tape lies under the flange", lower, length(&c["tape_width"]));
        let half = length(&c["tape_width"]) / 2.0;
        self.near("the tape's lower edge", self.struck(side, "closure tape, lower edge"), screws - half);
        self.near("the tape's upper edge", self.struck(side, "closure tape, upper edge"), screws + half);
        let end = self.end(side).unwrap_or(&Value::Null);
        let panel_end = self.nose(end) * on.sign;
        self.least("the closures stand on the panels", panel_end - length_or(&c["panel_margin"]["least"], 12.7), web + lower);
        let over = self.at(side, "tape over the closures");
        self.near("the tape over the closures", over, leading + top_flange / 2.0);
        self.least("the tape lies on the top flange", top_flange, length(&asked["cap_tape_width"]));
        if self.along(side, "rivets").is_some() {
            let rivets = self.at(side, "rivets");
            if length(&asked["drip"]["leg"]) > 0.0 {
                self.near("the rivets in the turned-down face", rivets, a_edge);
                self.least("the rivets reach the closures", RIVET_REACH, leading - rivets);
            } else {
                self.near("the rivets in the top flange", rivets, over);
            }
        }
        let drip = trim.corners[if side == "first" { 0 } else { trim.corners.len() - 1 }];
        self.least("the drip over the pan", frame.height(on, drip) - l.pan_face(), length(&asked["drip"]["above_pan"]));
        // The turned-up pan and the seams fit under the flange and clear what stands above them.
        self.least("the turned-up pan", l.top() - l.pan_face(), length(&end["turn_up"]));
        self.clears(side, on, &l, panel_end, trim, flange);
    }

    /// The tops of the seams at the panels' end lie under the rest of the trim, or stop short of it.
    fn clears(&self, side: &str, on: &Side, l: &Layers, panel_end: f64, trim: &Trim<'_>, flange: &str) {
        let top = self.frame.on(on, panel_end, l.pan_face() + l.seam);
        let other = match (self.kind, side) {
            ("ridge" | "hip", "first") => Some("second flange"),
            ("ridge" | "hip", _) => Some("first flange"),
            ("headwall" | "curb-front" | "step", _) => Some("leg"),
            ("high-edge", _) => Some("wall leg"),
            _ if flange == "lower flange" && trim.has("upper flange") && !trim.has("riser") => Some("upper flange"),
            _ => None,
        };
        let Some(other) = other else { return };
        let (a, b) = trim.ends(other);
        // Under its lower face: on the side where its supports are, on the right of the walk in the section.
        let (dx, dz) = ((b - a).dot(self.frame.x), (b - a).dot(self.frame.z));
        let (px, pz) = ((top - a).dot(self.frame.x), (top - a).dot(self.frame.z));
        // A trim that bends up from the flange leaves the seams under the flange alone.
        let (from, to) = trim.ends(flange);
        let (fx, fz) = ((to - from).dot(self.frame.x), (to - from).dot(self.frame.z));
        if side == "first" && self.kind.contains("-to-") && fx * dz - fz * dx > 0.0 {
            return;
        }
        let right = (dz * px - dx * pz) / dx.hypot(dz);
        // A wall's leg has the roof on its left.
        let clear = if other == "leg" { -right } else { right };
        self.least(&format!("the {side} panels' seams clear of the {other}"), clear, 0.0);
    }

    /// A face down a fascia or a wall, its drip, and the cleat that it hooks.
    fn face(&self, trim: &Trim<'_>, face: &str, drip: &str) {
        let asked = &self.detail["face"];
        let cleat = self.trims("continuous cleat").into_iter().next();
        self.lies(trim, face, "second", cleat.as_ref().map_or(0.0, Trim::thickness));
        let fascia = self.frame.side("second");
        let (bend, edge) = trim.ends(drip);
        self.near("how far the drip clears", self.frame.height(fascia, edge) - self.frame.height(fascia, bend), length_or(&asked["clears"], 12.7));
        self.near("the depth of the face", self.frame.along(fascia, bend), -length(&asked["depth"]));
        let Some(cleat) = cleat else { return };
        self.lies(&cleat, "face", "second", 0.0);
        // The hook lies on the back of the drip and ends in the hem.
        let (from, to) = cleat.ends("hook");
        let out = (edge - bend).unit();
        for p in [from, to] {
            let off = (p - bend) - out * (p - bend).dot(out);
            self.near("the hook behind the drip", off.norm(), cleat.thickness());
        }
        let hem = &trim.json["profile"]["end_edge"]["open-hem"];
        let short = (edge - to).dot(out);
        let engaged = length(&hem["width"]) - short;
        self.least("the hem holds the cleat", engaged, length(&asked["hem"]["hooked"]["engagement"]));
        self.least("the cleat stops short of the hem's fold", short, trim.thickness());
        self.least("the hem's gap", length(&hem["gap"]), cleat.thickness());
        let fasteners = self.at("second", "continuous cleat's fasteners");
        let (top, low) = cleat.ends("face");
        self.near("the cleat's top edge", self.at("second", "continuous cleat"), self.frame.along(fascia, top));
        self.near("the line of its top edge", self.struck("second", "continuous cleat, top edge"), self.frame.along(fascia, top));
        let above = length(&asked["hem"]["hooked"]["fasteners_above_bend"]);
        self.near("the cleat's fasteners", fasteners, self.frame.along(fascia, low) + above);
        self.least("the cleat's fasteners under its top", self.frame.along(fascia, top), fasteners);
    }

    fn eave(&self) {
        let (frame, on, l) = (self.frame, &self.frame.first, self.layers("first"));
        let (trim, strip) = (self.trim("eave trim"), self.trim("hook strip"));
        let level = if self.detail["flange"]["lies"] == "over-underlayment" { l.bed() } else { l.built_up };
        self.lies(&trim, "deck flange", "first", level);
        self.face(&trim, "face", "drip");
        self.lies(&strip, "strip", "first", level + trim.thickness());
        let (top, front) = strip.ends("strip");
        self.near("the strip's lower edge", self.struck("first", "hook strip, lower edge"), frame.along(on, front));
        self.near("the strip's top edge", self.struck("first", "hook strip, top edge"), frame.along(on, top));
        self.near("the trim's top edge", self.struck("first", "trim top edge"), frame.along(on, trim.ends("deck flange").0));
        let end = self.end("first").unwrap_or(&Value::Null);
        let gap = frame.along(on, front) - self.struck("first", "panel nose");
        self.near("the gap at the strip", gap, length(&end["gap"]));
        self.least("the fold hooks the strip", length(&end["fold"]) - gap, length_or(&self.detail["panel"]["engagement"], 9.525));
        for (row, part, leg, of) in [("deck flange's fasteners", &trim, "deck flange", "flange"), ("hook strip's fasteners", &strip, "strip", "strip")] {
            let (a, b) = part.ends(leg);
            let at = self.at("first", row);
            self.near(row, at, frame.along(on, a) - length(&self.detail[of]["fasteners_from_edge"]));
            self.least(row, at, frame.along(on, b));
        }
    }

    fn rake(&self) {
        let (frame, on, l) = (self.frame, &self.frame.first, self.layers("first"));
        let (z, trim) = (self.trim("rake Z"), self.trim("rake trim"));
        let asked = &self.detail["z"];
        self.lies(&trim, "top", "first", l.top());
        self.face(&trim, "face", "drip");
        self.lies(&z, "lower flange", "first", l.pan_face() + length(&asked["tape"]));
        self.lies(&z, "top flange", "first", l.top() - l.tape - z.thickness());
        let edge = self.struck("first", "panel edge");
        let (web, low) = z.ends("lower flange");
        self.near("the Z beside the turned-up edge", frame.along(on, low) - edge, length(&asked["from_turned_up_edge"]));
        self.near("the web of the Z", self.struck("first", "web of the Z"), frame.along(on, web));
        for (row, leg) in [("screws of the Z", "lower flange"), ("rivets into the Z", "top flange")] {
            let (a, b) = z.ends(leg);
            self.near(row, self.at("first", row), f64::midpoint(frame.along(on, a), frame.along(on, b)));
        }
        let screws = self.at("first", "screws of the Z");
        self.near("the tape under the Z", self.at("first", "tape under the Z"), screws);
        self.near("the tape under the trim", self.at("first", "tape under the trim"), self.at("first", "rivets into the Z"));
        self.beside("rake", screws, -length(&asked["tape_width"]) / 2.0);
        let inner = trim.ends("inner edge");
        self.near("the trim's edge", self.struck("first", "trim's edge"), frame.along(on, inner.1));
        self.least("the trim's edge over the Z", frame.along(on, inner.1), frame.along(on, z.ends("top flange").0));
        self.least("the trim's edge over the pan", frame.height(on, inner.0) - l.pan_face(), length(&self.detail["inner"]["above_pan"]));
    }

    /// The edges of the tape under a Z: the one on this side lies so far along from its screws, the other as far on the roof's.
    fn beside(&self, side: &str, screws: f64, by: f64) {
        self.near("the tape's edge", self.struck("first", &format!("tape under the Z, edge on the {side}'s side")), screws + by);
        self.near("the tape's edge", self.struck("first", "tape under the Z, edge on the roof's side"), screws - by);
    }

    /// A flashing's leg on a wall, and what covers it.
    fn wall(&self, flashing: &Trim<'_>) {
        let asked = &self.detail["wall"];
        let stands_out = length(&asked["stands_out"]);
        let wall = self.frame.side("second");
        self.lies(flashing, "leg", "second", stands_out);
        let (low, top) = flashing.ends("leg");
        let (low, top) = (self.frame.along(wall, low), self.frame.along(wall, top));
        self.near("the leg", top - low, length(&asked["leg"]));
        self.near("the leg's top edge", self.struck("second", "leg, top edge"), top);
        // A leg that goes with the panels stands free, and is behind its cover with its top.
        let fastened = !asked["fasteners"].is_null();
        let fasteners = if fastened { self.at("second", "leg fasteners") } else { top };
        if fastened {
            self.near("the leg's fasteners", fasteners, top - length(&asked["fasteners_below_top"]));
            self.least("the leg's fasteners over its bend", fasteners, low);
        } else {
            assert!(
                self.along("second", "leg fasteners").is_none() && self.line("second", "leg fasteners").is_none(),
                "{}: a free leg has fasteners",
                self.name
            );
        }
        if let Some(lower) = self.line("second", "cladding, lower edge") {
            self.near("the cladding", lower, top - length(&asked["cover"]["cladding"]["lap"]));
            self.least("the leg's fasteners behind the cladding", fasteners, lower);
        }
        let reglet = &asked["cover"]["reglet"];
        if !reglet.is_null() {
            let cover = self.trim("counterflashing");
            let layers = if length(&reglet["hem"]) > 0.0 { 2.0 } else { 1.0 };
            self.lies(&cover, "counterflashing face", "second", stands_out + layers * flashing.thickness());
            let (foot, corner) = cover.ends("counterflashing face");
            self.near("the reglet", self.frame.along(wall, corner), top + length(&reglet["above_leg"]));
            self.near("the reglet's line", self.struck("second", "reglet"), self.frame.along(wall, corner));
            self.near("the reglet's bead", self.at("second", "reglet bead"), self.frame.along(wall, corner));
            if let Some(wedges) = self.along("second", "reglet wedges") {
                self.near("the reglet's wedges", length(&wedges["from_line"]), self.frame.along(wall, corner));
            }
            self.least("the lap over the leg", top - self.frame.along(wall, foot), length_or(&reglet["least_lap"]["least"], 101.6));
            self.least("the leg's fasteners behind the counterflashing", fasteners, self.frame.along(wall, foot));
        }
    }

    fn sidewall(&self) {
        let (frame, on, l) = (self.frame, &self.frame.first, self.layers("first"));
        let flashing = self.trim("sidewall flashing");
        self.wall(&flashing);
        let edge = self.struck("first", "panel edge");
        let asked = &self.detail["flange"]["on-z"];
        if asked.is_null() {
            self.lies(&flashing, "flange", "first", l.pan_face() + l.tape);
            let (outer, _) = flashing.ends("flange");
            let outer = frame.along(on, outer);
            let on_pan = &self.detail["flange"]["on-pan"];
            self.near("the flange's edge", outer, -length(&self.detail["wall"]["stands_out"]) - length(&on_pan["width"]));
            self.near("the trim's edge", self.struck("first", "trim's edge"), outer);
            self.least("the tape on the panel", edge, outer + length(&on_pan["tape_width"]));
            return;
        }
        self.lies(&flashing, "flange", "first", l.top());
        let z = self.trim("Z");
        self.lies(&z, "foot", "first", l.pan_face() + length(&asked["tape_beneath"]));
        self.lies(&z, "top flange", "first", l.top() - l.tape - z.thickness());
        let (web, foot) = z.ends("foot");
        self.near("the web of the Z", self.struck("first", "web of the Z"), frame.along(on, web));
        self.least("the foot on the panel", edge, frame.along(on, foot));
        let screws = self.at("first", "screws of the Z");
        self.near("the screws on the foot", screws, frame.along(on, web) + length(&asked["web_to_screws"]));
        self.least("the screws on the foot", frame.along(on, foot), screws);
        self.near("the tape under the Z", self.at("first", "tape under the Z"), screws);
        self.beside("wall", screws, length(&asked["tape_width"]) / 2.0);
        let outer = frame.along(on, flashing.ends("flange").0);
        self.near("the trim's edge", self.struck("first", "trim's edge"), outer);
        self.near("the rivets in the middle of the Z's top flange", self.at("first", "rivets"), f64::midpoint(outer, frame.along(on, web)));
        self.near("the tape over the Z", self.at("first", "tape over the Z"), self.at("first", "rivets"));
        let half = length_or(&asked["trim_tape_width"], 12.7) / 2.0;
        self.least("the tape on the Z's top flange", self.at("first", "rivets") - half, outer + flashing.thickness());
        let (top, _) = z.ends("top flange");
        self.near("the Z's top flange inside the drip", frame.along(on, top) - outer, flashing.thickness());
    }

    /// An offset cleat on this height over a side, and the panels that hook it.
    fn cleat(&self, side: &str, cleat: &Trim<'_>, asked: &Value, base: f64) {
        let (frame, on) = (self.frame, self.frame.side(side));
        let low = base + length(&asked["tape"]);
        self.lies(cleat, "foot", side, low);
        self.lies(cleat, "tongue", side, low + length(&asked["rise"]));
        let onto = |p: V3| frame.along(on, p) * on.sign;
        let sorted = |(a, b): (V3, V3)| if onto(a) < onto(b) { (onto(a), onto(b)) } else { (onto(b), onto(a)) };
        let ((front, web), (heel, back)) = (sorted(cleat.ends("tongue")), sorted(cleat.ends("foot")));
        self.near("the web of the cleat", web, heel);
        self.near("the cleat's front", self.at(side, "offset cleat, front"), front);
        self.near("the line of the cleat's front", self.struck(side, "offset cleat, front"), front);
        self.near("the line of the cleat's back", self.struck(side, "cleat back"), back);
        let (tape, screws) = (self.at(side, "cleat tape"), self.at(side, "cleat screws"));
        let half = length(&asked["tape_width"]) / 2.0;
        self.near("the cleat's tape, at its back", tape + half, back);
        self.least("the cleat's tape under its foot", tape - half, heel);
        self.near("the tape's line", self.struck(side, "cleat tape, lower edge"), tape - half);
        self.near("the screws' line", self.struck(side, "cleat screws"), screws);
        self.least("the screws in the tape", screws, tape - half);
        self.least("the screws in the tape", tape + half, screws);
        let end = self.end(side).unwrap_or(&Value::Null);
        let (gap, fold) = (length(&end["gap"]), length(&end["fold"]));
        self.near("the gap at the cleat", front - self.nose(end), gap);
        self.near("the gap at the cleat", front - self.struck(side, "panel nose"), gap);
        self.least("the fold engages", fold - gap, length_or(&asked["least_engagement"], 9.525));
        self.least("the fold is short of the web", web - front, fold - gap);
        let pan = frame.side(side).layers.map_or(0.0, |l| l.pan);
        self.least("the fold fits under the tongue", length(&asked["rise"]) + length(&asked["tape"]), pan);
    }

    fn valley(&self) {
        let pan = self.trim("valley pan");
        let bed = |side: &str| length(&self.detail["bed"]) + self.layers(side).built_up;
        for (side, leg) in [("first", "leg 1"), ("second", "leg 2")] {
            self.lies(&pan, leg, side, bed(side));
        }
        let mut cleats = self.trims("offset cleat").into_iter();
        // The open width runs from nose to nose along the pan, half of it on each side of the pan's centreline.
        let half = length_or(&self.detail["open_width"], 152.4) / 2.0;
        for side in ["first", "second"] {
            let on = self.frame.side(side);
            let (a, b) = pan.ends(if side == "first" { "leg 1" } else { "leg 2" });
            let (edge, inner) = if side == "first" { (a, b) } else { (b, a) };
            let centre = self.struck(side, "pan centreline");
            if self.detail["rib"].is_null() {
                self.near("the pan's centreline", self.frame.along(on, inner), centre);
            }
            let outer = list(&pan.json["profile"]["legs"])[0]["name"] == "outer part 1" && side == "first"
                || text(&list(&pan.json["profile"]["legs"])[pan.corners.len() - 2]["name"]) == "outer part 2" && side == "second";
            if !outer {
                self.near("the pan's edge", self.frame.along(on, edge), self.struck(side, "pan edge"));
            }
            self.near("half the open width", self.struck(side, "panel nose") - centre, half);
            let asked = &self.detail[side]["hook"]["offset-cleat"]["cleat"];
            if !asked.is_null() {
                let cleat = cleats.next().unwrap_or_else(|| panic!("{}: no cleat", self.name));
                self.cleat(side, &cleat, asked, bed(side) + pan.thickness());
                self.least(
                    "the pan beyond the cleat",
                    self.struck(side, "pan edge"),
                    self.struck(side, "cleat back") + length_or(&self.detail[side]["least_beyond"]["least"], 101.6),
                );
            }
        }
        assert!(cleats.next().is_none());
    }

    /// The screws along the top edge of a trim, above the cleat.
    fn top_edge(&self, side: &str, top: f64) {
        let screws = self.at(side, "screws along the top edge");
        self.near("the screws along the top edge", screws, top - length(&self.detail["top_edge"]["screws_below"]));
        if let Some(back) = self.line(side, "cleat back") {
            self.least("the screws along the top edge above the cleat", screws, back);
        }
    }

    fn transition(&self) {
        let trim = self.trim("transition trim");
        let packing = length(&self.detail["packing"]);
        if trim.has("upper flange") {
            self.top_end("first", &trim, "lower flange", &self.detail["end"]);
            if let Some(bead) = self.along("first", "bead behind the seams") {
                self.near("the bead behind the seams", length(&bead["from_line"]), self.struck("first", "panel end"));
            }
            self.lies(&trim, "upper flange", "second", packing);
            let (bend, top) = trim.ends("upper flange");
            let on = self.frame.side("second");
            let (bend, top) = (self.frame.along(on, bend), self.frame.along(on, top));
            self.near("the trim's top edge", self.struck("second", "trim top edge"), top);
            let front = self.struck("second", "offset cleat, front");
            self.near("the front below the top", top - front, length_or(&self.detail["front_below_top"], 152.4));
            self.least("the head-lap", front - bend, length_or(&self.detail["head_lap"]["least"], 25.4));
            self.least("the cleat short of the top", top, self.struck("second", "cleat back"));
            self.top_edge("second", top);
        }
        self.cleat("second", &self.trim("offset cleat"), &self.detail["cleat"], packing + trim.thickness());
    }

    fn curb_back(&self) {
        let (pan, l) = (self.trim("back pan"), self.layers("first"));
        self.lies(&pan, "pan", "first", l.bed());
        self.wall(&pan);
        let on = &self.frame.first;
        let (on_bed, low) = pan.ends("pan");
        let low = self.frame.along(on, low);
        let top = if pan.has("outer part 1") { pan.ends("outer part 1").0 } else { on_bed };
        self.near("the pan's top edge", self.struck("first", "trim top edge"), self.frame.along(on, top));
        self.near("the clear width", self.struck("first", "panel nose") - low, length(&self.detail["clear_width"]));
        self.top_edge("first", self.frame.along(on, top));
        let ends = self.struck("first", "seam ends");
        self.near("the seams' ends", ends, self.struck("first", "panel nose") + length(&self.detail["seam_cut_back"]));
        let cleat = &self.detail["hook"]["offset-cleat"]["cleat"];
        if !cleat.is_null() {
            return self.cleat("first", &self.trim("offset cleat"), cleat, l.bed() + pan.thickness());
        }
        // A fold of the pan: its back where the pan leaves the bed, its front where the outer part begins, so high over it that the fold has its opening.
        let fold = &self.detail["hook"]["receiver-fold"];
        let (edge, front) = pan.ends("outer part 1");
        let higher = l.bed() + 2.0 * pan.thickness() + length(&fold["opening"]);
        for p in [edge, front] {
            self.near("the outer part over the deck", self.frame.height(on, p), higher);
        }
        let front = self.frame.along(on, front);
        self.near("the fold's depth", self.frame.along(on, on_bed) - front, length(&fold["depth"]));
        self.near("the gap at the fold", front - self.struck("first", "panel nose"), length(&fold["gap"]));
        self.least("the screws along the top edge above the fold", self.at("first", "screws along the top edge"), self.frame.along(on, on_bed));
    }
}

//! Valleys in space: the lower end of one that widens, the pieces of a tapered pan, and how a pan ends at an eave, in the roof or against a curb.

use super::frame::Frame;
use super::read::{at, degrees, index, length, length_or, list, mm, point, text};
use super::roof::Roof;
use super::section::{NEAR, Section};
use super::vector::{UP, V3};
use super::{demo, packet, roofs};
use crate::vector::Draw;
use serde_json::{Value, json};

/// What was looked at, so that a test can say that it looked at something.
#[derive(Debug, Default, Clone, Copy)]
struct Seen {
    feet: usize,
    pieces: usize,
    eaves: usize,
    roofs: usize,
    curbs: usize,
}

struct Valley<'a> {
    packet: &'a Value,
    junction: &'a Value,
    detail: &'a Value,
    frame: Frame,
    low: V3,
    /// Up the line.
    up: V3,
    long: f64,
}

const SIDES: [&str; 2] = ["first", "second"];

fn struck(lines: &Value, side: &str, name: &str) -> f64 {
    let line = list(lines).iter().find(|l| text(&l["side"]) == side && text(&l["name"]) == name);
    length(&line.unwrap_or_else(|| panic!("no {name} on the {side} side"))["from_line"])
}

fn near(what: &str, got: f64, want: f64) {
    assert!((got - want).abs() < NEAR, "{what}: {got} is not {want}");
}

impl<'a> Valley<'a> {
    fn read(packet: &'a Value, job: &'a Value, roof: &Roof<'_>, junction: &'a Value) -> Valley<'a> {
        let line = &packet["roof"]["lines"][index(&junction["line"])];
        let (start, end) = (point(&line["start"]), point(&line["end"]));
        let (low, high) = if start.z <= end.z { (start, end) } else { (end, start) };
        let detail = at(job, text(&junction["detail"]));
        Valley { packet, junction, detail, frame: roof.frame(junction), low, up: (high - low).unit(), long: (high - low).norm() }
    }

    fn section(&self) -> &'a Value {
        &self.junction["section"]
    }

    /// The lines where they are struck at the lower end.
    fn foot(&self) -> &'a Value {
        let lower = &self.section()["lower_lines"];
        if lower.is_null() { &self.section()["lines"] } else { lower }
    }

    /// The lower end as a section of its own: everything on it must lie where that of a parallel valley of its width would.
    fn lower_end(&self) -> bool {
        let widens = &self.detail["widens"];
        if widens.is_null() {
            assert!(self.section()["lower_trims"].is_null());
            return false;
        }
        let half = length(&widens["growth"]["by"]) / 2.0 * self.long / (8.0 * 304.8);
        let mut solved = self.section().clone();
        (solved["trims"], solved["lines"]) = (self.section()["lower_trims"].clone(), self.section()["lower_lines"].clone());
        for along in solved["along"].as_array_mut().into_iter().flatten() {
            along["from_line"] = mm(length(&along["from_line"].clone()) + half);
        }
        for end in solved["ends"].as_array_mut().into_iter().flatten() {
            let reach = &mut end["end"]["reach"]["hold-back"];
            *reach = mm(length(&reach.clone()) + half);
        }
        let mut detail = self.detail.clone();
        detail["open_width"] = mm(length_or(&self.detail["open_width"], 152.4) + 2.0 * half);
        let off = Section::new(text(&self.junction["name"]), "valley", &self.frame, &solved, &detail).check();
        assert!(off.is_empty(), "{off:#?}");
        // The edge turns with the line that the panels end on, or not at all.
        for side in SIDES {
            let reaches = |lines: &Value| struck(lines, side, "pan edge") - struck(lines, side, "pan centreline");
            let tapers = widens["pan"] == json!("tapered");
            near("how much wider the pan is", reaches(self.foot()) - reaches(&self.section()["lines"]), if tapers { half } else { 0.0 });
        }
        true
    }

    /// Every piece of a tapered pan, laid where it says that it goes: its edges lie on the straight lines between those of the two sections.
    fn pieces(&self) -> usize {
        let number = index(&self.junction["line"]);
        let runs = |t: &&Value| text(&t["name"]) == "valley pan" && list(&t["runs"]).iter().any(|r| index(&r["line"]) == number);
        let item = list(&self.packet["trims"]).iter().find(runs).expect("its pan among the trims");
        let run = list(&item["runs"]).iter().find(|r| index(&r["line"]) == number).expect("its run");
        let length_of = |v: &Value| length(v);
        let covered: f64 = list(&run["pieces"]).iter().map(length_of).sum::<f64>() - length(&item["lap"]) * (list(&run["pieces"]).len() - 1) as f64;
        near("what the pieces cover", covered, length(&run["run"]));
        let line = &self.packet["roof"]["lines"][number];
        let starts_low = point(&line["start"]).z <= point(&line["end"]).z;
        let ends = &self.packet["corners"]["ends"][number];
        let (below, above) = if starts_low { (&ends["at_start"], &ends["at_end"]) } else { (&ends["at_end"], &ends["at_start"]) };
        near("the run of the pan", length(&run["run"]), self.long + length(below) + length(above));
        if item["tapered"].is_null() {
            return 0;
        }
        let half_rib = length_or(&self.detail["rib"]["half_width"], 0.0);
        let pieces = list(&item["tapered"]["pieces"]);
        let mut last: Option<f64> = None;
        for piece in pieces {
            if let Some(to) = last {
                near("the lap", to - length(&piece["from"]), length(&item["lap"]));
            }
            last = Some(length(&piece["to"]));
            for (profile, station) in [(&piece["near"], length(&piece["from"])), (&piece["far"], length(&piece["to"]))] {
                let leg = |name: String| list(&profile["legs"]).iter().find(|l| text(&l["name"]) == name).map(|l| length(&l["length"]));
                let up = station - length(below);
                for (k, side) in SIDES.iter().enumerate() {
                    let k = k + 1;
                    let inner = leg(format!("leg {k}")).expect("a leg") + half_rib;
                    let out = inner - leg(format!("return {k}")).unwrap_or(0.0) + leg(format!("outer part {k}")).unwrap_or(0.0);
                    let on = self.frame.side(side);
                    let edge = |lines: &Value, at: f64| self.frame.on(on, struck(lines, side, "pan edge"), 0.0) - self.frame.origin + self.low + self.up * at;
                    let (a, b) = (edge(self.foot(), 0.0), edge(&self.section()["lines"], self.long));
                    let laid = self.low + self.up * up + on.way * ((struck(&self.section()["lines"], side, "pan centreline") + out) * on.sign);
                    let along = (b - a).unit();
                    let off = (laid - a) - along * (laid - a).dot(along);
                    assert!(off.norm() < NEAR, "{}: the {side} edge of a piece at {station} lies {} off", self.junction["name"], off.norm());
                }
                // The left leg is that of the plane on the left of one who looks up the line.
                let left = self.frame.first.way.cross(self.up).z < 0.0;
                let starts = text(&list(&profile["legs"])[0]["name"]).ends_with('1');
                assert_eq!(starts, left, "{}: the hand of its pieces", self.junction["name"]);
            }
        }
        near("the pieces' end", last.unwrap_or(0.0), length(&run["run"]));
        pieces.len()
    }

    /// Each leg's cut, laid in its plane: over an eave as far past it as the panels' folded ends, level in the roof, along a curb's own line.
    fn ends(&self, seen: &mut Seen) {
        let cut = &self.junction["pan_end"];
        assert!(!cut.is_null(), "{}: its lower end", self.junction["name"]);
        let mut beads = 0.0;
        for side in SIDES {
            let (leg, on) = (&cut[side], self.frame.side(side));
            // The edge of a tapered pan goes on outward beyond the line's end.
            let widens = &self.detail["widens"];
            let lean = if widens["pan"] == json!("tapered") { length(&widens["growth"]["by"]) / 2.0 / (8.0 * 304.8) } else { 0.0 };
            let place = |name: &str, down: f64, lean: f64| self.low + on.way * ((struck(self.foot(), side, name) + lean * down) * on.sign) - self.up * down;
            let (a, b) = (place("pan centreline", length(&leg["at_centre"]), 0.0), place("pan edge", length(&leg["at_edge"]), lean));
            near("the cut", (b - a).norm(), length(&leg["cut"]));
            let across = (b - a).unit();
            near("the angle of the cut", across.dot(self.up).acos().to_degrees(), degrees(&leg["angle"]));
            let (down, plane) = ((UP - on.normal * on.normal.dot(UP)).unit() * -1.0, index(&self.junction[side]["plane"]));
            match text(&leg["on"]) {
                "eave" => {
                    // The plane's own eave at this corner, and what its panels have past it, folds and all.
                    let eave = list(&self.packet["junctions"]).iter().find(|j| {
                        let line = &self.packet["roof"]["lines"][index(&j["line"])];
                        let touches = |v: &Value| (point(v) - self.low).norm() < 1e-3;
                        text(&j["kind"]) == "eave" && index(&j["first"]["plane"]) == plane && (touches(&line["start"]) || touches(&line["end"]))
                    });
                    let end = &list(&eave.expect("an eave")["section"]["ends"])[0]["end"];
                    let reach = &end["reach"];
                    let over = if reach["overhang"].is_null() { -length(&reach["hold-back"]) } else { length(&reach["overhang"]) };
                    let past = over + length(&end["gap"]) + length(&end["fold"]);
                    for p in [a, b] {
                        near("the cut past the eave", (p - self.low).dot(down), past);
                    }
                    (seen.eaves, beads) = (seen.eaves + 1, beads + length(&leg["cut"]));
                }
                "roof" => {
                    near("a level cut", across.z, 0.0);
                    near("the cut below the corner", (a - self.low).dot(down), 203.2);
                    (seen.roofs, beads) = (seen.roofs + 1, beads + length(&leg["cut"]));
                }
                "against" => {
                    let rings = list(&self.packet["roof"]["planes"][plane]["rings"]);
                    let ring: Vec<V3> = rings.iter().flat_map(list).map(point).collect();
                    // Some edge of the plane leaves the corner along the cut.
                    let along = |p: &V3| {
                        let way = *p - self.low;
                        way.norm() > 1.0 && [a, b].iter().all(|q| (*q - self.low).cross(way.unit()).norm() < NEAR)
                    };
                    assert!(ring.iter().any(along), "{}: the cut lies along no edge of its plane", self.junction["name"]);
                    seen.curbs += 1;
                }
                other => panic!("a leg that comes to {other}"),
            }
        }
        near("the beads", length(&cut["bead_length"]), beads * cut["beads"].as_f64().unwrap_or(0.0));
    }
}

fn look(packet: &Value, job: &Value, seen: &mut Seen) {
    let roof = Roof::read(packet, job);
    for junction in list(&packet["junctions"]).iter().filter(|j| text(&j["kind"]) == "valley") {
        let valley = Valley::read(packet, job, &roof, junction);
        seen.feet += usize::from(valley.lower_end());
        seen.pieces += valley.pieces();
        valley.ends(seen);
        // Sealed from end to end, its own end among it.
        for side in list(&junction["sealed"]) {
            assert_eq!(side["check"]["continuous"], json!(true), "{}: {side}", junction["name"]);
        }
    }
}

fn drawn(cases: u64, roof: impl Fn(&Value, &mut Draw) -> Value) -> (Seen, usize) {
    let demo = demo();
    let (mut seen, mut built) = (Seen::default(), 0);
    for seed in 0..cases {
        let job = roof(&demo, &mut Draw::seeded(seed));
        if let Ok(packet) = packet(&job) {
            look(&packet, &job, &mut seen);
            built += 1;
        }
    }
    (seen, built)
}

#[test]
fn the_valleys_of_the_demo() {
    let job = demo();
    let mut seen = Seen::default();
    look(&packet(&job).expect("the demo"), &job, &mut seen);
    assert!(seen.eaves > 0, "{seen:?}");
}

#[test]
fn drawn_valleys_that_widen_with_parallel_and_tapered_pans() {
    let (seen, built) = drawn(160, roofs::widening);
    assert!(built > 60 && seen.feet > 60 && seen.pieces > 30 && seen.eaves > 120, "{built}: {seen:?}");
}

#[test]
fn drawn_crickets_die_into_the_roof_beside_their_curb() {
    let (seen, built) = drawn(120, roofs::cricket);
    assert!(built > 40 && seen.roofs == 2 * built && seen.curbs == 2 * built, "{built}: {seen:?}");
}

//! A whole packet in space: the frame of every line from the planes' own vertices, the panels as laid between them.

use super::alone::{beside, sign};
use super::frame::{Frame, Layers, Side};
use super::read::{at, degrees, index, length, list, point, text};
use super::section::{NEAR, Section};
use super::vector::{UP, V3, ring_normal};
use serde_json::Value;

/// A plane of the packet: its rings in space, its normal, and how its own axes lie in space.
struct Plane {
    rings: Vec<Vec<V3>>,
    normal: V3,
    origin: V3,
    across: V3,
    up: V3,
}

impl Plane {
    fn read(json: &Value) -> Plane {
        let rings: Vec<Vec<V3>> = list(&json["rings"]).iter().map(|r| list(r).iter().map(point).collect()).collect();
        let (normal, _) = ring_normal(&rings[0]);
        // Up the slope, and level to the right of one who looks up it.
        let up = (UP - normal * normal.dot(UP)).unit();
        let across = up.cross(normal);
        let own = |p: &Value| (length(&p["x"]), length(&p["y"]));
        let outline = &json["outline"];
        let flat: Vec<Vec<(f64, f64)>> = std::iter::once(&outline["outer"]).chain(list(&outline["holes"])).map(|r| list(r).iter().map(own).collect()).collect();
        let (x, y) = flat[0][0];
        let origin = rings[0][0] - across * x - up * y;
        let plane = Plane { rings, normal, origin, across, up };
        for (p, q) in plane.rings.iter().flatten().zip(flat.iter().flatten()) {
            let off = (plane.at(q.0, q.1) - *p).norm();
            assert!(off < NEAR, "{}: its own axes miss its vertices by {off}", json["name"]);
        }
        plane
    }

    fn at(&self, x: f64, y: f64) -> V3 {
        self.origin + self.across * x + self.up * y
    }

    /// The way from a line onto this plane: to the left of an edge that runs counter-clockwise, and contains it.
    fn way(&self, start: V3, end: V3) -> V3 {
        let along = (end - start).unit();
        let middle = (start + end) * 0.5;
        for ring in &self.rings {
            let (_, is_left) = ring_normal(ring);
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                let edge = (*b - *a).unit();
                let off = (middle - *a) - edge * (middle - *a).dot(edge);
                let within = (middle - *a).dot(edge);
                if edge.cross(along).norm() < 1e-7 && off.norm() < 1e-3 && within > 0.0 && within < (*b - *a).norm() {
                    let left = self.normal.cross(edge);
                    // The ring of a hole may be given either way about; the plane lies outside it.
                    let is_hole = !std::ptr::eq(ring, &raw const self.rings[0]);
                    return if is_left == is_hole { -left } else { left };
                }
            }
        }
        panic!("no edge of the plane on its line")
    }
}

/// The side of a junction on which the plane of this number lies.
fn name_of(junction: &Value, number: usize) -> &'static str {
    if index(&junction["first"]["plane"]) == number { "first" } else { "second" }
}

/// What was found on a roof, so that a test can say that it looked at something.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct Seen {
    pub(crate) lines: usize,
    pub(crate) panels: usize,
    pub(crate) bays: usize,
}

pub(crate) struct Roof<'a> {
    packet: &'a Value,
    job: &'a Value,
    planes: Vec<Plane>,
}

impl<'a> Roof<'a> {
    pub(crate) fn read(packet: &'a Value, job: &'a Value) -> Roof<'a> {
        Roof { packet, job, planes: list(&packet["roof"]["planes"]).iter().map(Plane::read).collect() }
    }

    pub(crate) fn frame(&self, junction: &Value) -> Frame {
        let line = &self.packet["roof"]["lines"][index(&junction["line"])];
        let (start, end) = (point(&line["start"]), point(&line["end"]));
        assert!(((end - start).norm() - length(&line["length"])).abs() < NEAR, "{}: its length", line["name"]);
        let along = (end - start).unit();
        let kind = text(&junction["kind"]);
        let deck = |of: &Value, is_first: bool| {
            let plane = &self.planes[index(&of["plane"])];
            let way = plane.way(start, end);
            Side { normal: plane.normal, way, sign: sign(kind, is_first), layers: Some(Layers::read(&of["levels"])) }
        };
        let first = deck(&junction["first"], true);
        let mut frame = Frame::new(start, along, first, None);
        frame.second = if junction["second"].is_null() { beside(kind, frame.x, frame.z, 90.0) } else { Some(deck(&junction["second"], false)) };
        // The section says how each plane rises from -x to +x.
        for (side, of) in [(Some(&frame.first), &junction["first"]), (frame.second.as_ref(), &junction["second"])] {
            if let (Some(side), false) = (side, of.is_null()) {
                let rise = -side.normal.dot(frame.x).atan2(side.normal.dot(frame.z)).to_degrees();
                assert!((rise - degrees(&of["rise"])).abs() < 1e-7, "{}: rises {rise} and not {}", junction["name"], of["rise"]);
            }
        }
        frame
    }

    fn section(&self, junction: &Value, frame: &Frame) -> Vec<String> {
        let detail = at(self.job, text(&junction["detail"]));
        Section::new(text(&junction["name"]), text(&junction["kind"]), frame, &junction["section"], detail).check()
    }

    /// What of a junction's section can be moved by a micrometre without being seen, and how many things there are to move.
    pub(crate) fn unseen(&self, junction: &Value) -> (Vec<String>, usize) {
        let frame = self.frame(junction);
        let (mut unseen, mut moved) = (Vec::new(), 0);
        let section = &junction["section"];
        let mut places = Vec::new();
        for (i, trim) in list(&section["trims"]).iter().enumerate() {
            let corners = list(&trim["corners"]).len();
            places.extend((0..corners).flat_map(|k| ["x", "z"].map(|axis| format!("/section/trims/{i}/corners/{k}/{axis}"))));
            places.extend((0..list(&trim["profile"]["legs"]).len()).map(|k| format!("/section/trims/{i}/profile/legs/{k}/length")));
        }
        for (of, many) in [("along", list(&section["along"]).len()), ("lines", list(&section["lines"]).len())] {
            places.extend((0..many).map(|i| format!("/section/{of}/{i}/from_line")));
        }
        places.extend((0..list(&section["ends"]).len()).map(|i| format!("/section/ends/{i}/end/gap")));
        for place in places {
            let mut other = junction.clone();
            let value = other.pointer_mut(&place).unwrap_or_else(|| panic!("{place}"));
            *value = super::read::mm(length(&value.clone()) + 0.001);
            moved += 1;
            if self.section(&other, &frame).is_empty() {
                let part = place.rsplit_once('/').and_then(|(parent, _)| other.pointer(parent)).map(|v| v["name"].to_string());
                unseen.push(format!("{} {place} {}", junction["kind"], part.unwrap_or_default()));
            }
        }
        (unseen, moved)
    }

    pub(crate) fn check(&self) -> Seen {
        let mut seen = Seen::default();
        let mut frames: Vec<Option<(Frame, &Value)>> = vec![None; list(&self.packet["roof"]["lines"]).len()];
        for junction in list(&self.packet["junctions"]) {
            let frame = self.frame(junction);
            let off = self.section(junction, &frame);
            assert!(off.is_empty(), "{off:#?}");
            self.struck(junction);
            seen.bays += self.bays(junction, &frame);
            seen.lines += 1;
            frames[index(&junction["line"])] = Some((frame, junction));
        }
        for lay in list(&self.packet["planes"]) {
            seen.panels += self.panels(lay, &frames);
        }
        seen
    }

    /// The lines that the crew strikes lie where the section has them.
    fn struck(&self, junction: &Value) {
        let own = list(&junction["section"]["lines"]);
        for struck in list(&junction["along"]["struck"]) {
            let line = own.iter().find(|l| l["side"] == struck["side"] && l["name"] == struck["name"]);
            let line = line.unwrap_or_else(|| panic!("{}: {} is struck and in no section", junction["name"], struck["name"]));
            assert_eq!(struck["from_line"]["exact"], line["from_line"], "{}: {}", junction["name"], struck["name"]);
        }
    }

    /// Every bay runs from where one side of its panel meets the line to where the other does.
    fn bays(&self, junction: &Value, frame: &Frame) -> usize {
        let mut seen = 0;
        let line = &self.packet["roof"]["lines"][index(&junction["line"])];
        let along = (point(&line["end"]) - point(&line["start"])).unit();
        for side in list(&junction["along"]["sides"]) {
            let number = index(&side["plane"]);
            let lay = list(&self.packet["planes"]).iter().find(|l| index(&l["plane"]) == number);
            let lay = lay.unwrap_or_else(|| panic!("{}: a plane without a layout", junction["name"]));
            // A panel that an opening is cut out of ends elsewhere too.
            for bay in list(&side["bays"]).iter().filter(|b| b["notched"] == false) {
                let panel = &lay["laid"]["panels"][index(&bay["panel"])];
                let parts = list(&panel[text(&bay["end"])]);
                // The edges of breaks come after those of the outline, and are no line's.
                let part = parts.iter().find(|p| lay["lines"][index(&p["edge"])] == junction["line"]);
                let part = part.unwrap_or_else(|| panic!("{}: a bay of a panel that does not end there", junction["name"]));
                let on = |p: &Value| {
                    let p = self.planes[number].at(length(&p["x"]), length(&p["y"])) - frame.origin;
                    let off = (p - along * p.dot(along)).norm();
                    assert!(off < NEAR, "{}: a panel's end lies {off} off its line", junction["name"]);
                    p.dot(along)
                };
                let (a, b) = (on(&part["left"]), on(&part["right"]));
                let (from, to) = (length(&bay["from"]), length(&bay["to"]));
                assert!((a.min(b) - from).abs() < NEAR && (a.max(b) - to).abs() < NEAR, "{}: bay {from} to {to}, not {a} and {b}", junction["name"]);
                seen += 1;
            }
        }
        seen
    }

    /// How far along a seam an end reaches up or down: the seam met with the line struck for the panels' end, and what is folded on there.
    fn reach(&self, plane: &Plane, x: f64, junction: &(Frame, &Value), number: usize) -> Option<(f64, f64)> {
        let (frame, json) = junction;
        let section = Section::new("", "", frame, &json["section"], &Value::Null);
        let end = section.end(name_of(json, number))?;
        let name = ["panel nose", "panel end"].into_iter().find(|n| section.line(name_of(json, number), n).is_some())?;
        let struck = section.line(name_of(json, number), name)?;
        let side = frame.side(name_of(json, number));
        let climb = plane.up.dot(side.way);
        let folded = length(&end["fold"]) + length(&end["turn_up"]);
        // Where the lines turn away from the junction line, they run from their place at its upper end to that at its lower.
        let mut lower = json["section"]["lower_lines"].as_array().into_iter().flatten();
        if let Some(lower) = lower.find(|l| text(&l["side"]) == name_of(json, number) && text(&l["name"]) == name) {
            let line = &self.packet["roof"]["lines"][index(&json["line"])];
            let (start, end) = (point(&line["start"]), point(&line["end"]));
            let (high, low) = if start.z > end.z { (start, end) } else { (end, start) };
            let lower = length(&lower["from_line"]);
            let met = |less: f64| {
                let on = |p: V3, d: f64| p + side.way * (d * side.sign - less) - plane.origin;
                let (a, b) = (on(high, struck), on(low, lower));
                let (ax, bx) = (a.dot(plane.across), b.dot(plane.across));
                a.dot(plane.up) + (b - a).dot(plane.up) * (x - ax) / (bx - ax)
            };
            return Some((met(0.0), (met(folded) - met(0.0)).abs()));
        }
        let to = (struck * side.sign - (plane.at(x, 0.0) - frame.origin).dot(side.way)) / climb;
        Some((to, folded / climb.abs()))
    }

    fn panels(&self, lay: &Value, frames: &[Option<(Frame, &Value)>]) -> usize {
        let mut seen = 0;
        let number = index(&lay["plane"]);
        let plane = &self.planes[number];
        let coverage = length(&lay["layout"]["panel"]["coverage"]);
        let outline = &lay["layout"]["outline"];
        let rings = || std::iter::once(&outline["outer"]).chain(list(&outline["holes"])).flat_map(list);
        let corners: Vec<f64> = rings().map(|p| length(&p["x"])).collect();
        for edge in list(&lay["layout"]["edges"]).iter().zip(list(&lay["lines"])) {
            // What the layout was given is what the junction sets.
            if let (end, Some(Some((_, junction)))) = (&edge.0["end"], frames.get(index(edge.1))) {
                let name = if index(&junction["first"]["plane"]) == number { "first" } else { "second" };
                let set = list(&junction["section"]["ends"]).iter().find(|e| text(&e["side"]) == name);
                if let (false, Some(set)) = (end.is_null(), set) {
                    assert_eq!(end, &set["end"], "{}", junction["name"]);
                }
            }
        }
        for panel in list(&lay["laid"]["panels"]) {
            let (lower, upper) = (list(&panel["lower"]), list(&panel["upper"]));
            let ([low], [high]) = (lower, upper) else { continue };
            let line = |part: &Value| Some(&lay["lines"][index(&part["edge"])]).filter(|n| n.is_u64()).and_then(|n| frames[index(n)].as_ref());
            let (Some(below), Some(above)) = (line(low), line(high)) else { continue };
            let (left, right) = (length(&panel["left"]), length(&panel["right"]));
            // Beside a corner the next line, shifted by its own end, may reach back and cut the panel.
            let is_beside = corners.iter().any(|x| (0.0..coverage).contains(&(x - right)) || (0.0..coverage).contains(&(left - x)));
            for (x, given) in [(left, &panel["left_length"]), (right, &panel["right_length"])] {
                let (Some(foot), Some(head)) = (self.reach(plane, x, below, number), self.reach(plane, x, above, number)) else { continue };
                let laid = head.0 - foot.0 + head.1 + foot.1;
                let given = if given.is_null() { 0.0 } else { length(given) };
                let what = format!("{} strip {} at {x}: laid out it is {laid} long and not {given}", lay["name"], panel["strip"]);
                if is_beside {
                    assert!(given < laid.max(0.0) + NEAR, "{what}");
                } else {
                    assert!((given - laid.max(0.0)).abs() < NEAR, "{what}");
                    seen += 1;
                }
            }
        }
        seen
    }
}

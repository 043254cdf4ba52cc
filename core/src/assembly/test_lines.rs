//! Roofs with their panels laid, and sections by hand, that the tests share.

use super::{
    ClosureChoice, CornerAllowances, Corners, Flank, JunctionLine, JunctionSide, LineAssembly, LineBays, LineChoices, LineEnds, PlanePanels, SeamSurface,
    SideBays, StrikeChoice, TapeChoice, TrimChoice,
};
use crate::error::Error;
use crate::junction::{Along, AlongLine, Bites, Datum, LayoutLine, Side, Solved};
use crate::layout::{EdgeUse, LaidPlane, Layout, Start};
use crate::panel::{Hold, Panel, PanelEnd, Seam};
use crate::record::{Calculation, Source};
use crate::roof::{Line, LineKind, Opening, PlaneInput, Point, Roof, RoofInput, Shape, Vertex};
use crate::units::{Angle, Length, Rounding, ShopRounding};

pub(super) fn ft(n: f64) -> Length {
    Length::from_mm(n * 304.8).unwrap()
}

pub(super) fn inch(n: f64) -> Length {
    Length::from_mm(n * 25.4).unwrap()
}

fn pt(x: f64, y: f64) -> Point {
    Point::new(ft(x), ft(y))
}

/// A plane in plan, in feet.
pub(super) fn plane(name: &str, outer: &[(f64, f64)], holes: &[&[(f64, f64)]], pitch: &str, fall: f64, anchor: (f64, f64, f64)) -> PlaneInput {
    let ring = |r: &[(f64, f64)]| r.iter().map(|&(x, y)| pt(x, y)).collect::<Vec<_>>();
    let shape = Shape::Plan {
        outer: ring(outer),
        holes: holes.iter().enumerate().map(|(k, h)| Opening { name: format!("curb {k}"), ring: ring(h) }).collect(),
        pitch: pitch.parse().unwrap(),
        down_slope: Angle::degrees_from(fall).unwrap(),
        anchor: Vertex::new(ft(anchor.0), ft(anchor.1), ft(anchor.2)),
    };
    PlaneInput { name: name.into(), shape }
}

/// 40 by 20, ridge along x.
pub(super) fn gable() -> Vec<PlaneInput> {
    vec![
        plane("south", &[(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (0.0, 10.0)], &[], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("north", &[(40.0, 20.0), (0.0, 20.0), (0.0, 10.0), (40.0, 10.0)], &[], "6:12", 90.0, (0.0, 20.0, 9.0)),
    ]
}

/// A hip roof of this length and half width; its ridge is as long as they differ by twice.
pub(super) fn hip(long: f64, half: f64) -> Vec<PlaneInput> {
    let (wide, right) = (2.0 * half, long - half);
    vec![
        plane("south", &[(0.0, 0.0), (long, 0.0), (right, half), (half, half)], &[], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("east", &[(long, 0.0), (long, wide), (right, half)], &[], "6:12", 0.0, (long, 0.0, 9.0)),
        plane("north", &[(long, wide), (0.0, wide), (half, half), (right, half)], &[], "6:12", 90.0, (0.0, wide, 9.0)),
        plane("west", &[(0.0, wide), (0.0, 0.0), (half, half)], &[], "6:12", 180.0, (0.0, 0.0, 9.0)),
    ]
}

/// A main gable whose ridge is one edge of its north plane and two of the planes south of it, where a wing sticks out.
pub(super) fn tee() -> Vec<PlaneInput> {
    vec![
        plane("north", &[(0.0, 10.0), (50.0, 10.0), (50.0, 20.0), (0.0, 20.0)], &[], "6:12", 90.0, (0.0, 20.0, 9.0)),
        plane("south west", &[(0.0, 0.0), (15.0, 0.0), (25.0, 10.0), (0.0, 10.0)], &[], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("south east", &[(35.0, 0.0), (50.0, 0.0), (50.0, 10.0), (25.0, 10.0)], &[], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("wing west", &[(15.0, -12.0), (25.0, -12.0), (25.0, 10.0), (15.0, 0.0)], &[], "6:12", 180.0, (15.0, 0.0, 9.0)),
        plane("wing east", &[(25.0, -12.0), (35.0, -12.0), (35.0, 0.0), (25.0, 10.0)], &[], "6:12", 0.0, (35.0, 0.0, 9.0)),
    ]
}

/// A shed with an opening that cuts through strips.
pub(super) fn shed_with_curb() -> Vec<PlaneInput> {
    let hole: &[(f64, f64)] = &[(10.0, 5.0), (15.0, 5.0), (15.0, 9.0), (10.0, 9.0)];
    vec![plane("shed", &[(0.0, 0.0), (40.0, 0.0), (40.0, 16.0), (0.0, 16.0)], &[hole], "3:12", 270.0, (0.0, 0.0, 9.0))]
}

pub(super) fn panel() -> Panel {
    Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) }).unwrap()
}

/// The ends that a kind of line gives its panels.
pub(super) fn usual_end(kind: LineKind) -> EdgeUse {
    match kind {
        LineKind::Rake | LineKind::Sidewall | LineKind::CurbSide => EdgeUse::Side,
        LineKind::Eave => EdgeUse::End(PanelEnd::overhang(Length::inches(1)).with_gap(inch(0.25)).with_fold(Length::inches(1))),
        LineKind::Ridge | LineKind::Hip | LineKind::HighEdge | LineKind::Headwall => {
            EdgeUse::End(PanelEnd::hold_back(Length::inches(2)).with_turn_up(Length::inches(1)).holding(Hold::Pins))
        }
        _ => EdgeUse::End(PanelEnd::hold_back(Length::inches(3)).with_fold(Length::inches(1))),
    }
}

/// A roof with every plane laid.
pub(super) struct Laid {
    pub(super) roof: Roof,
    pub(super) layouts: Vec<Layout>,
    pub(super) planes: Vec<LaidPlane>,
}

impl Laid {
    pub(super) fn new(planes: Vec<PlaneInput>, start: Start) -> Laid {
        Laid::with_ends(planes, start, usual_end)
    }

    pub(super) fn with_ends(planes: Vec<PlaneInput>, start: Start, end: impl Fn(LineKind) -> EdgeUse) -> Laid {
        let roof = RoofInput::new(planes).compute().unwrap();
        let mut layouts = Vec::new();
        for (k, plane) in roof.planes().iter().enumerate() {
            let layout = Layout::new(plane.outline().clone(), panel(), start, |edge| {
                let sides = roof.lines().iter().flat_map(|l| l.sides().map(move |s| (l.kind, s)));
                let on_edge = |s: &&crate::roof::Side| s.plane == k && (s.ring, s.edge) == (edge.ring, edge.index);
                let kind = sides.filter(|(_, s)| on_edge(s)).map(|(kind, _)| kind).next().unwrap();
                end(kind)
            });
            layouts.push(layout.unwrap());
        }
        let planes = layouts.iter().map(|l| l.compute().unwrap()).collect();
        Laid { roof, layouts, planes }
    }

    pub(super) fn panels(&self) -> Vec<PlanePanels<'_>> {
        let of = |((p, l), d)| PlanePanels::new(crate::roof::Plane::name(p), l, d).unwrap();
        self.roof.planes().iter().zip(&self.layouts).zip(&self.planes).map(of).collect()
    }

    /// The bays on every side of every line.
    pub(super) fn all_bays(&self) -> Vec<(&Line, Flank, SideBays)> {
        let panels = self.panels();
        let mut out = Vec::new();
        for line in self.roof.lines() {
            for (flank, side, of) in core::iter::once((Flank::Left, Side::First, &line.side)).chain(line.other().map(|o| (Flank::Right, Side::Second, o))) {
                out.push((line, flank, LineBays { line, flank, side, panels: &panels[of.plane] }.compute().unwrap()));
            }
        }
        out
    }

    /// Everything along a line of this name, both its sides closed and taped.
    pub(super) fn line(&self, name: &str, solved: &Solved, hollow_seams: bool) -> Result<LineAssembly, Error> {
        let panels = self.panels();
        let line = self.roof.line(name).unwrap();
        let (closure, surface) = (closure(), surface());
        let at =
            |side, flank, plane: usize| JunctionSide { side, flank, panels: &panels[plane], closure: Some(&closure), surface: Some(&surface), hollow_seams };
        let mut sides = vec![at(Side::First, Flank::Left, line.side.plane)];
        sides.extend(line.other().map(|o| at(Side::Second, Flank::Right, o.plane)));
        let allowances = CornerAllowances::usual();
        let corners =
            Corners { lines: self.roof.lines(), tolerance: self.roof.tolerance(), allowances: &allowances, joints: &[], stands: &[] }.compute().unwrap();
        let number = self.roof.lines().iter().position(|l| l.name == name).unwrap();
        let junction = JunctionLine {
            line,
            solved,
            sides: &sides,
            ends: corners.ends[number],
            upper_ends: corners.upper_ends[number],
            pan_end: None,
            choices: &choices(),
        };
        let (out, sheet) = junction.explain()?;
        assert_eq!(junction.compute().unwrap(), out);
        assert!(!sheet.steps().is_empty());
        Ok(out)
    }
}

pub(super) fn closure() -> ClosureChoice {
    ClosureChoice { clearance: inch(0.25), top_flange: Length::inches(1), ..ClosureChoice::usual(inch(0.5), inch(2.5)) }
}

pub(super) fn surface() -> SeamSurface {
    SeamSurface::upright(Length::inches(2), inch(0.5)).unwrap()
}

pub(super) fn strike() -> StrikeChoice {
    StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway).unwrap(), tolerance: Length::inches_64(4) }
}

pub(super) fn choices() -> LineChoices {
    LineChoices { row_end_distance: Length::inches(1), tape: TapeChoice::default(), trim: TrimChoice::usual(), named: vec![], strike: strike() }
}

pub(super) fn no_ends() -> LineEnds {
    LineEnds::default()
}

pub(super) fn engineer() -> Source {
    Source::Engineer { name: "of record".into(), document: "sheet S-4".into() }
}

/// One side of a covered end: tape, closures and their screws, and rivets through the cap.
pub(super) fn covered(side: Side, source: Source) -> Solved {
    let at = |name: &'static str, inches: f64, what| AlongLine { name: name.into(), side, what, from_line: inch(inches) };
    let line = |name: &'static str, datum, from_datum: f64, from_line: f64| LayoutLine {
        name: name.into(),
        side,
        datum,
        from_datum: inch(from_datum),
        from_line: inch(from_line),
    };
    let row = |bites, spacing| Along::Fasteners { bites, spacing: Length::inches(spacing), source: source.clone() };
    Solved {
        along: vec![
            at("tape under the closures", -3.625, Along::Tape { width: Length::inches(1), over_seams: true }),
            at("closures", -6.0, Along::Closures { web: Length::inches(2) }),
            at("closure screws", -3.625, row(Bites::Structure, 12)),
            at("tape under the cap", -6.5, Along::Tape { width: Length::inches(1), over_seams: false }),
            at("bead", -6.0, Along::Bead { width: inch(0.25), depth: inch(0.25) }),
            at("rivets", -7.0, row(Bites::Trim, 8)),
        ],
        lines: vec![line("closure face", Datum::JunctionLine, -6.0, -6.0), line("closure screws", Datum::Line("closure face".into()), 2.375, -3.625)],
        ..Solved::default()
    }
}

/// Both sides of a ridge or hip.
pub(super) fn ridge() -> Solved {
    let mut out = covered(Side::First, Source::CommonPractice);
    let other = covered(Side::Second, Source::CommonPractice);
    out.along.extend(other.along);
    out.lines.extend(other.lines);
    out
}

//! Draws four blanks into the folder given as the argument, as SVG and as DXF, with their areas and points in a file beside them.

#![allow(clippy::print_stdout, reason = "the list of files is what the example is for")]

use seamwright::error::Error;
use seamwright::export::{BlankDrawing, DrawingUnit, GaugeEdge};
use seamwright::record::Calculation;
use seamwright::trim::{
    BendRule, BlankEnd, BlankPlan, Direction, Edge, EndCut, EndFold, Face, FlatBlank, FoldEnds, HeldLine, HolePlace, MitreCorner, MitredEnd, NeutralFactor,
    Notch, NotchShape, Part, Placement, PlannedHole, Point, Profile, SheetSurface, Tab, Taper,
};
use seamwright::units::{Angle, AreaUnit, BendAngle, Length, LengthFormat, LengthUnit};
use std::fmt::Write as _;
use std::path::Path;

fn cap(right: &str) -> Result<Profile, Error> {
    Profile::builder(Length::mils(24))
        .painted(Face::Upper)
        .inside_radius(Length::mils(30))
        .start(Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down))
        .leg("left turn-down", Length::parse("1 1/2\"")?)
        .down(BendAngle::from_flat(Angle::parse("71.57 deg")?)?)
        .leg("left flange", Length::parse("6\"")?)
        .down(BendAngle::from_flat(Angle::parse("36.86 deg")?)?)
        .leg("right flange", Length::parse(right)?)
        .down(BendAngle::from_flat(Angle::parse("71.57 deg")?)?)
        .leg("right turn-down", Length::parse("1 1/2\"")?)
        .end(Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down))
        .build()
}

fn gutter(front: &str) -> Result<Profile, Error> {
    Profile::builder(Length::micrometres(700))
        .painted(Face::Lower)
        .inside_radius(Length::micrometres(2_000))
        .start(Edge::closed_hem(Length::parse("15 mm")?, Direction::Up))
        .leg("front", Length::parse(front)?)
        .up(BendAngle::SQUARE)
        .leg("sole", Length::parse("120 mm")?)
        .up(BendAngle::SQUARE)
        .leg("back", Length::parse(front)?)
        .build()
}

fn points(blank: &FlatBlank) -> Result<String, Error> {
    let mut out = format!("area {:?}\n", blank.area()?.get(AreaUnit::SquareMillimetre));
    for p in blank.points(Length::micrometres(1))? {
        let _ = writeln!(out, "{:?} {:?}", p.x.get(LengthUnit::Millimetre), p.y.get(LengthUnit::Millimetre));
    }
    for hole in &blank.holes {
        let mm = |l: Length| l.get(LengthUnit::Millimetre);
        let _ = writeln!(out, "hole {:?} {:?} {:?}", mm(hole.centre.x), mm(hole.centre.y), mm(hole.diameter));
    }
    Ok(out)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    let rule = BendRule::neutral_axis(NeutralFactor::new(0.4)?);
    let write = |drawing: &BlankDrawing<'_>, blank: &FlatBlank, file: &str, unit: DrawingUnit| -> Result<(), Box<dyn std::error::Error>> {
        for (ending, bytes) in [("svg", drawing.svg()?.into_bytes()), ("dxf", drawing.dxf(unit)?), ("points", points(blank)?.into_bytes())] {
            let name = format!("{file}.{ending}");
            println!("{name}");
            std::fs::write(Path::new(&folder).join(name), bytes)?;
        }
        Ok(())
    };
    let inches = LengthFormat::parse("in/16")?;

    // A ridge cap that turns the corner of a building in plan, its far end notched around its bends.
    let corner = MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO };
    let placement = Placement { heading: Angle::parse("108.43 deg")?, ..Placement::default() };
    let mitred = EndCut::Mitred(MitredEnd { corner, placement, closes_on: SheetSurface::Upper });
    let notch = |bend: usize, shape: NotchShape| Notch { bend: Part::Body(bend), depth: Length::inches(1), shape };
    let vee = NotchShape::Vee { width: Length::parse("3/4\"")?, round: Some(Length::parse("1/8\"")?) };
    let slot = NotchShape::Slot { width: Length::parse("1/4\"")?, round: Some(Length::parse("1/4\"")?) };
    let hem = Notch { bend: Part::StartHem, depth: Length::inches(4), shape: NotchShape::FromStartEdge };
    let cap_end = BlankEnd { notches: vec![hem, notch(0, vee), notch(1, slot), notch(2, vee)], ..BlankEnd::default() };
    let near = BlankEnd { cut: mitred, ..BlankEnd::default() };
    let tolerance = Length::micrometres(10);
    let plan = BlankPlan { profile: cap("6\"")?, rule: rule.clone(), length: Length::feet(10), near, far: cap_end, holes: vec![], tolerance }.compute()?;
    write(&BlankDrawing::of_plan("ridge cap, mitred", &plan, inches), &plan.blank, "ridge-cap", DrawingUnit::Inch)?;

    // A box gutter that deepens, its upper edges level.
    let taper = Taper {
        near: gutter("90 mm")?,
        far: gutter("140 mm")?,
        length: Length::parse("3 m")?,
        rule: rule.clone(),
        held: HeldLine::StartEdge,
        offset: Point::ORIGIN,
        tolerance,
    }
    .compute()?;
    let drawing = BlankDrawing::of_taper("box gutter, tapered", &taper, LengthFormat::parse("mm.1")?).gauged_from(GaugeEdge::End);
    write(&drawing, &taper.blank, "box-gutter", DrawingUnit::Millimetre)?;

    // A gutter end with a tab on its sole, relief holes in its corners and an outlet.
    let radius = Length::parse("6 mm")?;
    let tab = Tab {
        leg: Part::Body(1),
        from: Length::ZERO,
        width: Length::parse("114.6 mm")?,
        length: Length::parse("25 mm")?,
        angle: BendAngle::SQUARE,
        direction: Direction::Up,
        inside_radius: radius,
        relief: Length::ZERO,
    };
    let hole = |place: HolePlace, diameter: &str| -> Result<PlannedHole, Error> { Ok(PlannedHole { place, diameter: Length::parse(diameter)? }) };
    let crossing = |bend: usize| HolePlace::Crossing { bend: Part::Body(bend), end: seamwright::trim::PieceEnd::Far, tab: 0 };
    let outlet = HolePlace::At(Point { x: Length::parse("165 mm")?, y: Length::parse("200 mm")? });
    let holes = vec![hole(crossing(0), "3 mm")?, hole(crossing(1), "3 mm")?, hole(outlet, "80 mm")?];
    let end = BlankEnd { tabs: vec![tab], ..BlankEnd::default() };
    let plan =
        BlankPlan { profile: gutter("90 mm")?, rule: rule.clone(), length: Length::parse("400 mm")?, near: BlankEnd::default(), far: end, holes, tolerance }
            .compute()?;
    write(&BlankDrawing::of_plan("gutter end", &plan, LengthFormat::parse("mm.1")?), &plan.blank, "gutter-end", DrawingUnit::Millimetre)?;

    // The folded end of a panel at a hip.
    let hem = Edge::open_hem(Length::parse("1 1/4\"")?, Length::parse("3/16\"")?, Direction::Down);
    let fold = EndFold {
        width: Length::inches(16),
        meeting: Angle::parse("43.5 deg")?,
        hem,
        thickness: Length::mils(24),
        rule,
        ends: FoldEnds::Mirrored,
        shown: Length::inches(12),
    }
    .compute()?;
    write(&BlankDrawing::new("panel end at a hip", &fold.blank, inches), &fold.blank, "panel-end", DrawingUnit::Inch)?;
    Ok(())
}

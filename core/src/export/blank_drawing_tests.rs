use super::*;
use crate::record::Calculation;
use crate::trim::{
    BendRule, BlankEnd, BlankPlan, Direction, EndCut, Face, FlatBlank, HeldLine, MitreCorner, MitredEnd, NearCut, NeutralFactor, Notch, NotchShape, Part,
    Placement, PlannedBlank, Point, Profile, SheetSurface, Tab, Taper,
};
use crate::units::{Angle, BendAngle, Length, LengthFormat};

fn mm(v: f64) -> Length {
    Length::from_mm(v).unwrap()
}

fn angle(face: f64) -> Profile {
    Profile::builder(mm(0.6))
        .painted(Face::Upper)
        .inside_radius(mm(0.8))
        .leg("flange", mm(100.0))
        .down(BendAngle::SQUARE)
        .leg("face", mm(face))
        .build()
        .unwrap()
}

fn rule() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(0.4).unwrap())
}

fn planned(length: f64) -> PlannedBlank {
    let corner = MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO };
    let mitred = EndCut::Mitred(MitredEnd { corner, placement: Placement::default(), closes_on: SheetSurface::Upper });
    let notch = Notch { bend: Part::Body(0), depth: mm(15.0), shape: NotchShape::Slot { width: mm(4.0), round: Some(mm(6.0)) } };
    let tab = Tab {
        leg: Part::Body(1),
        from: mm(10.0),
        width: mm(40.0),
        length: mm(20.0),
        angle: BendAngle::SQUARE,
        direction: Direction::Up,
        inside_radius: mm(0.8),
        relief: mm(3.0),
    };
    BlankPlan {
        profile: angle(80.0),
        rule: rule(),
        length: mm(length),
        near: BlankEnd { notches: vec![notch], tabs: vec![tab], ..BlankEnd::default() },
        far: BlankEnd { cut: mitred, ..BlankEnd::default() },
        holes: vec![],
        tolerance: mm(0.1),
    }
    .compute()
    .unwrap()
}

/// What a tag of this code says, in order.
fn tags<'a>(text: &'a str, code: &str) -> Vec<&'a str> {
    let lines: Vec<&str> = text.lines().collect();
    lines.chunks(2).filter(|pair| pair[0].trim() == code).map(|pair| pair[1]).collect()
}

#[test]
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn dxf_is_true_and_has_its_arcs_as_bulges() {
    let made = planned(3000.0);
    let drawing = BlankDrawing::of_plan("corner", &made, LengthFormat::parse("mm.1").unwrap());
    let text = String::from_utf8(drawing.dxf(DrawingUnit::Inch).unwrap()).unwrap();
    let arc = made.blank.outline.iter().find_map(|e| e.arc).unwrap();
    let bulge = format!("{:.9}", (arc.turn.degrees().to_radians() / 4.0).tan());
    assert!(tags(&text, "42").contains(&bulge.as_str()), "{bulge}");
    // One vertex of the outline for each of its stretches, at its place in inches.
    let far = made.blank.bounds().unwrap().greatest.y.mm() / 25.4;
    assert!(tags(&text, "20").contains(&format!("{far:.9}").as_str()));
    for layer in ["BLANK-EDGE", "BEND-UP", "BEND-DOWN", "BEND-TANGENT", "NOTES"] {
        assert!(tags(&text, "8").contains(&layer), "{layer}");
    }
    assert_eq!(drawing.dxf(DrawingUnit::Inch).unwrap(), text.as_bytes());
}

#[test]
fn a_long_blank_is_broken_and_a_short_one_is_whole() {
    let (long, short) = (planned(3000.0), planned(60.0));
    let svg = |p: &PlannedBlank| BlankDrawing::of_plan("corner", p, LengthFormat::parse("mm.1").unwrap()).svg().unwrap();
    assert!(svg(&long).contains("broken out") && svg(&long).contains("<title>break</title>"));
    assert!(!svg(&short).contains("broken out"));
    assert_eq!(svg(&long), svg(&long));
}

#[test]
fn distances_run_from_the_gauging_edge() {
    let made = planned(3000.0);
    let drawing = BlankDrawing::of_plan("corner", &made, LengthFormat::EXACT);
    let line = made.flat.bends()[0].line;
    let from_end = made.flat.from_end(line).unwrap();
    assert!(drawing.svg().unwrap().contains(&format!(">{line}</text>")));
    let turned = drawing.gauged_from(GaugeEdge::End);
    assert!(turned.svg().unwrap().contains(&format!(">{from_end}</text>")) && !turned.svg().unwrap().contains(&format!(">{line}</text>")));
}

#[test]
fn a_tapered_blank_says_its_stations_at_both_ends() {
    let taper =
        Taper { near: angle(80.0), far: angle(140.0), length: mm(2000.0), rule: rule(), held: HeldLine::EndEdge, offset: Point::ORIGIN, tolerance: mm(0.01) }
            .compute()
            .unwrap();
    let svg = BlankDrawing::of_taper("taper", &taper, LengthFormat::parse("mm.1").unwrap()).svg().unwrap();
    let format = LengthFormat::parse("mm.1").unwrap();
    for girth in [taper.near.girth(), taper.far.girth()] {
        assert!(svg.contains(&format.string(girth).unwrap()), "{girth}");
    }
}

/// A flange of 100 mm and a face that grows from 80 mm to 140 mm over 2 m, the near end cut at 120 degrees on both sides of the bend: the flange's edge begins 100 cot 60 mm lower than the bend, but
/// for the bend's own width.
#[test]
fn a_cut_end_says_where_its_lines_begin() {
    let taper = Taper {
        near: angle(80.0),
        far: angle(140.0),
        length: mm(2000.0),
        rule: rule(),
        held: HeldLine::Bend(Part::Body(0)),
        offset: Point::ORIGIN,
        tolerance: mm(0.01),
    };
    let cut = NearCut { at: mm(60.0), angle: Angle::parse("120 deg").unwrap() };
    let made = taper.compute().unwrap().with_near_cut(Part::Body(0), mm(2000.0), [cut; 2]).unwrap();
    let format = LengthFormat::parse("mm.1").unwrap();
    let svg = BlankDrawing::of_taper("cut", &made, format).svg().unwrap();
    for x in [made.bends[0].line.from.x, made.legs[1].end.from.x] {
        assert!(svg.contains(&format.string(x).unwrap()), "{x}");
    }
    assert!(made.near_is_cut && made.area < taper.compute().unwrap().area);
    // The bend is cut 60 mm up, the edges so much lower.
    let up = |line: &crate::trim::BlankLine| (line.to.y - line.from.y).length().unwrap().mm();
    assert!((made.bends[0].line.length().unwrap().mm() - 1940.0).abs() < 1e-6);
    assert!((up(&made.legs[0].start) - up(&made.legs[0].end) - 100.0 / 3.0_f64.sqrt()).abs() < 3.0);
    let e = taper.compute().unwrap().with_near_cut(Part::Body(0), mm(50.0), [cut; 2]).unwrap_err();
    assert_eq!((e.path(), e.cure().is_some()), ("least_piece", true));
}

#[test]
fn nothing_cannot_be_drawn() {
    let none = FlatBlank { thickness: mm(1.0), outline: vec![], bends: vec![], holes: vec![], cautions: vec![] };
    let drawing = BlankDrawing::new("none", &none, LengthFormat::EXACT);
    assert_eq!(drawing.svg().unwrap_err().path(), "outline");
    assert_eq!(drawing.dxf(DrawingUnit::Inch).unwrap_err().path(), "outline");
    assert_eq!(drawing.figure(Length::ZERO).unwrap_err().path(), "figure");
}

#[cfg(feature = "serde")]
#[test]
fn a_drawing_in_job_form_is_the_drawing() {
    use crate::export::{BlankOf, BlankView, DrawnBlank};
    use crate::record::read_json;
    let taper =
        Taper { near: angle(70.0), far: angle(120.0), length: mm(2000.0), rule: rule(), held: HeldLine::StartEdge, offset: Point::ORIGIN, tolerance: mm(0.01) };
    let (made, format) = (taper.compute().unwrap(), LengthFormat::parse("mm.1").unwrap());
    let drawing = BlankDrawing::of_taper("taper", &made, format).gauged_from(GaugeEdge::End);
    let drawn =
        |view, taper| DrawnBlank { of: BlankOf::Taper(taper), name: "taper".to_owned(), format, view, figure: None, paper: None, gauge: Some(GaugeEdge::End) };
    let through_json = |d: DrawnBlank| read_json::<DrawnBlank>(serde_json::to_string(&d).unwrap().as_bytes(), 1 << 20).and_then(|d| d.compute());
    assert_eq!(through_json(drawn(BlankView::Svg, taper.clone())).unwrap(), drawing.svg().unwrap());
    let dxf = drawn(BlankView::Dxf { unit: DrawingUnit::Inch }, taper.clone());
    assert_eq!(through_json(dxf).unwrap().into_bytes(), drawing.dxf(DrawingUnit::Inch).unwrap());
    let e = through_json(drawn(BlankView::Svg, Taper { length: mm(0.0), ..taper.clone() })).unwrap_err();
    assert_eq!(e.path(), "of.taper.length");
    let e = through_json(DrawnBlank { figure: Some(mm(0.0)), ..drawn(BlankView::Svg, taper) }).unwrap_err();
    assert_eq!(e.path(), "figure");
}

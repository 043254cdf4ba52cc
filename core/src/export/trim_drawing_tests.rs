use super::fold::{Drawn, Fold, Stretch, Trace};
use super::labels::Area;
use super::*;
use crate::error::ErrorKind;
use crate::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Part, Profile};
use crate::units::{Angle, BendAngle, Length, LengthFormat};
use proptest::prelude::*;

fn rule() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::MIDDLE)
}

fn sharp_square(radius: Length) -> Profile {
    Profile::builder(Length::micrometres(1000))
        .painted(Face::Lower)
        .inside_radius(radius)
        .leg("a", Length::micrometres(40_000))
        .up(BendAngle::SQUARE)
        .leg("b", Length::micrometres(30_000))
        .build()
        .unwrap()
}

/// Twice the area within traces.
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn area_within(start: (f64, f64), traces: &[Trace]) -> f64 {
    let mut points = vec![start];
    for trace in traces {
        let from = *points.last().unwrap();
        match *trace {
            Trace::Line { to } => points.push(to),
            Trace::Arc { radius, sweep, to } => {
                // The segment between chord and arc, by its closed form, goes in as a triangle of the same area on the chord's outer side.
                let a = sweep.abs().to_radians();
                let segment = radius * radius * (a - a.sin()) / 2.0;
                let (dx, dy) = (to.0 - from.0, to.1 - from.1);
                let chord = dx.hypot(dy);
                let height = 2.0 * segment / chord * sweep.signum();
                points.push((from.0 + dx / 2.0 + dy / chord * height, from.1 + dy / 2.0 - dx / chord * height));
                points.push(to);
            }
        }
    }
    points.iter().zip(points.iter().cycle().skip(1)).map(|(p, q)| p.0 * q.1 - q.0 * p.1).sum()
}

#[test]
fn the_true_outline_of_an_angle_is_that_of_its_dimensions() {
    let profile = sharp_square(Length::micrometres(3000));
    let flat = profile.unfold(&rule()).unwrap();
    let fold = Fold::of(&flat, Drawn::truly(1.0, 0.0));
    assert!(fold.is_true);
    let extent = fold.extent();
    // The outer corner is at 40 mm, and the lower face half a thickness below the middle line.
    assert!((extent.high.0 - 40.0).abs() < 0.6 && (extent.high.1 - 29.5).abs() < 1e-9 + 0.5, "{extent:?}");
    // Area: the middle line's length times the thickness. With the neutral line in the middle that is the girth.
    let (start, outline) = fold.outline();
    let area = area_within(start, &outline).abs() / 2.0;
    assert!((area - flat.girth().mm()).abs() < 1e-6, "{area}");
}

#[test]
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn bulges_are_quarter_tangents() {
    let profile = sharp_square(Length::micrometres(3000));
    let drawing = TrimDrawing::new("angle", &profile, &rule(), LengthFormat::EXACT).unwrap();
    let text = String::from_utf8(drawing.section_dxf(DrawingUnit::Millimetre)).unwrap();
    let bulges: Vec<&str> = text.lines().zip(text.lines().skip(1)).filter(|(code, _)| *code == " 42").map(|(_, v)| v).collect();
    let quarter = format!("{:.9}", (std::f64::consts::PI / 8.0).tan());
    for wanted in [quarter.clone(), format!("-{quarter}")] {
        assert!(bulges.contains(&wanted.as_str()), "{bulges:?}");
    }
}

#[test]
fn a_sharp_inside_has_no_arc() {
    let profile = sharp_square(Length::ZERO);
    let drawing = TrimDrawing::new("angle", &profile, &rule(), LengthFormat::EXACT).unwrap();
    let fold = Fold::of(drawing.flat(), Drawn::truly(1.0, 0.0));
    let arcs = fold.outline().1.iter().filter(|t| matches!(t, Trace::Arc { .. })).count();
    assert_eq!(arcs, 1);
}

#[test]
fn a_thin_sheet_is_drawn_thicker_and_says_so() {
    let thin = Profile::builder(Length::micrometres(600)).painted(Face::Upper).leg("strip", Length::micrometres(900_000)).build().unwrap();
    let svg = TrimDrawing::new("strip", &thin, &rule(), LengthFormat::EXACT).unwrap().section_svg().unwrap();
    assert!(svg.contains("drawn thicker"));
    let thick = Profile::builder(Length::micrometres(1000)).painted(Face::Upper).leg("strip", Length::micrometres(100_000)).build().unwrap();
    let svg = TrimDrawing::new("strip", &thick, &rule(), LengthFormat::EXACT).unwrap().section_svg().unwrap();
    assert!(!svg.contains("drawn thicker"));
}

#[test]
fn running_distances_follow_the_gauging_edge() {
    let profile = sharp_square(Length::micrometres(3000));
    let drawing = TrimDrawing::new("angle", &profile, &rule(), LengthFormat::EXACT).unwrap();
    let line = drawing.flat().bends()[0].line;
    let from_end = drawing.flat().from_end(line).unwrap();
    assert!(drawing.flat_svg().unwrap().contains(&format!(">{line}</text>")));
    let turned = drawing.gauged_from(GaugeEdge::End);
    assert!(turned.flat_svg().unwrap().contains(&format!(">{from_end}</text>")));
    assert!(!turned.flat_svg().unwrap().contains(&format!(">{line}</text>")));
    let dxf = String::from_utf8(turned.flat_dxf(DrawingUnit::Inch, Length::feet(10)).unwrap()).unwrap();
    assert!(dxf.contains(&format!("\n{from_end}\n")));
    // The line itself stays where it is in the sheet, in inches.
    assert!(dxf.contains(&format!("\n{:.9}\n", line.mm() / 25.4)));
    assert!(dxf.contains("\n120.000000000\n"));
}

#[test]
fn sizes_of_nothing_are_refused() {
    let profile = sharp_square(Length::ZERO);
    let drawing = TrimDrawing::new("angle", &profile, &rule(), LengthFormat::EXACT).unwrap();
    assert_eq!(drawing.flat_dxf(DrawingUnit::Inch, Length::ZERO).unwrap_err().path(), "piece");
    assert_eq!(drawing.figure(Length::ZERO).unwrap_err().path(), "figure");
}

#[test]
fn a_huge_trim_still_keeps_to_the_figure() {
    let profile = Profile::builder(Length::micrometres(1000)).painted(Face::Upper).leg("strip", Length::parse("9000 m").unwrap()).build().unwrap();
    let drawing = TrimDrawing::new("strip", &profile, &rule(), LengthFormat::EXACT).unwrap();
    assert!(drawing.section_svg().unwrap().contains("Scale 1:60001"));
}

/// A corrugation of so many bends.
fn corrugation(bends: usize) -> Profile {
    let mut b = Profile::builder(Length::micrometres(600)).painted(Face::Upper).inside_radius(Length::micrometres(600)).leg("leg", Length::micrometres(20_000));
    for i in 0..bends {
        b = if i % 4 < 2 { b.up(BendAngle::SQUARE) } else { b.down(BendAngle::SQUARE) }.leg("leg", Length::micrometres(20_000));
    }
    b.build().unwrap()
}

#[test]
fn hundreds_of_bends_are_drawn_and_more_than_can_be_labelled_are_refused() {
    let profile = corrugation(300);
    let drawing = TrimDrawing::new("corrugation", &profile, &rule(), LengthFormat::EXACT).unwrap();
    let laid = trim_section::lay(&drawing).unwrap();
    assert_eq!(laid.labels.len(), 301 + 300 + 2);
    for (i, a) in laid.labels.iter().enumerate() {
        assert!(laid.labels.iter().take(i).all(|b| !a.area.meets(&b.area)), "{}", a.text);
    }
    let many = corrugation(10_000);
    let drawing = TrimDrawing::new("corrugation", &many, &rule(), LengthFormat::EXACT).unwrap();
    let e = drawing.section_svg().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::TooLarge, "profile.bends", Some("at most 500")));
    // The flat, and what a machine reads, know no limit.
    let lines = |text: &str, what: &str| text.matches(what).count();
    let dxf = String::from_utf8(drawing.flat_dxf(DrawingUnit::Millimetre, Length::feet(10)).unwrap()).unwrap();
    // Twenty thousand lines, and the layer's own entry.
    assert_eq!(lines(&dxf, "BEND-TANGENT"), 20_001);
    assert!(drawing.flat_svg().unwrap().contains(">10000 down 90") && !drawing.section_dxf(DrawingUnit::Millimetre).is_empty());
}

fn profiles() -> impl Strategy<Value = Profile> {
    let bends = proptest::collection::vec((2_i32..200, 1.0_f64..150.0, any::<bool>()), 0..12);
    (bends, 0_u8..6, 0_u8..6, any::<bool>(), 200_i32..3000).prop_map(|(bends, first, last, up, thickness)| {
        let edge = |kind: u8, direction: Direction| match kind {
            0 => Edge::Raw,
            1 => Edge::closed_hem(Length::micrometres(12_000), direction),
            2 => Edge::open_hem(Length::micrometres(12_000), Length::micrometres(3_000), direction),
            3 => Edge::double_hem(Length::micrometres(12_000), direction),
            4 => Edge::teardrop_hem(Length::micrometres(2_000), Length::micrometres(8_000), Length::micrometres(500), direction),
            _ => Edge::wired_edge(Length::micrometres(6_000), direction),
        };
        let way = if up { Direction::Up } else { Direction::Down };
        let mut builder = Profile::builder(Length::micrometres(thickness))
            .painted(if up { Face::Lower } else { Face::Upper })
            .inside_radius(Length::micrometres(1_000))
            .measured_to(crate::trim::LegEnd::Tangent)
            .start(edge(first, way))
            .leg("first", Length::micrometres(40_000));
        for (length, angle, up) in bends {
            let angle = BendAngle::from_flat(Angle::degrees_from(angle.round()).unwrap()).unwrap();
            builder = if up { builder.up(angle) } else { builder.down(angle) }.leg("next", Length::micrometres(length * 1000));
        }
        // Room for a hem on the last leg.
        builder.up(BendAngle::SQUARE).leg("last", Length::micrometres(40_000)).end(edge(last, way.opposite())).build().unwrap()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_label_lies_on_another_or_on_the_sheet(profile in profiles(), turned in 0.0_f64..360.0) {
        let drawing = TrimDrawing::new("random", &profile, &rule(), LengthFormat::parse("in/16").unwrap()).unwrap();
        let drawing = drawing.turned(Angle::degrees_from(turned).unwrap());
        let laid = trim_section::lay(&drawing).unwrap();
        // Legs and hems, bends that are no hems, the start and the painted face. A lip lies inside its hem, which speaks for it.
        let said = drawing.flat().legs().iter().filter(|l| !matches!(l.part, Part::StartLip | Part::EndLip)).count();
        prop_assert_eq!(laid.labels.len(), said + profile.bends.len() + 2);
        for (i, a) in laid.labels.iter().enumerate() {
            if a.text == "painted face" {
                // Its leader starts on the painted face of some leg and leaves the sheet there.
                let (from, to) = a.leader.unwrap();
                let side = if profile.painted == Face::Upper { 1.0 } else { -1.0 };
                let leaves = laid.fold.stretches.iter().any(|stretch| match *stretch {
                    Stretch::Leg { from: p, to: q, .. } => {
                        let length = crate::num::hypot(q.0 - p.0, q.1 - p.1);
                        let left = |r: (f64, f64)| ((q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0)) / length * side;
                        (left(from) - laid.fold.half).abs() < 1e-9 && left(to) > laid.fold.half
                    }
                    Stretch::Bend { .. } => false,
                });
                prop_assert!(leaves);
            }
            for b in &laid.labels[..i] {
                prop_assert!(!a.area.meets(&b.area), "{} on {}", a.text, b.text);
                if let Some((from, to)) = b.leader {
                    prop_assert!(!a.area.is_hit_by(from, to), "{} on the leader of {}", a.text, b.text);
                }
            }
            // No corner of a label comes nearer to the middle line than the face.
            for (from, to) in laid.fold.chords() {
                prop_assert!(!a.area.grown(laid.fold.half).is_hit_by(from, to), "{} on the sheet", a.text);
            }
        }
        prop_assert_eq!(drawing.section_svg().unwrap(), drawing.section_svg().unwrap());
    }

    #[test]
    fn every_stretch_is_drawn_where_the_one_before_ends(profile in profiles()) {
        let flat = profile.unfold(&rule()).unwrap();
        for drawn in [Drawn::truly(1.0, 0.0), Drawn { scale: 0.2, least_thickness: 0.7, least_radius: 0.3, turned: 15.0 }] {
            let fold = Fold::of(&flat, drawn);
            for face in [Face::Upper, Face::Lower] {
                let (mut from, traces) = fold.face(face);
                for trace in traces {
                    match trace {
                        Trace::Line { to } => from = to,
                        Trace::Arc { radius, sweep, to } => {
                            let chord = crate::num::hypot(to.0 - from.0, to.1 - from.1);
                            prop_assert!((chord - 2.0 * radius * crate::num::sin_deg(sweep.abs() / 2.0)).abs() < 1e-6);
                            from = to;
                        }
                    }
                }
            }
            let mut area = Area::EMPTY;
            area.cover(fold.outline().0);
            prop_assert!(area.low.0.is_finite());
        }
    }
}

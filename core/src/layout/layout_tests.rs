use super::{EdgeUse, Governs, LaidPlane, Layout, LengthLimit, NarrowChoice, NarrowLimit, OrderRounding, Start, cautions};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Hold, Panel, PanelEnd, Seam, along_seam};
use crate::record::Calculation;
use crate::roof::{Edge, Outline, Point};
use crate::units::{AreaUnit, Length, LengthUnit, MassUnit, Rounding, ShopRounding, SurfaceMass};

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

fn inch(v: i16) -> Length {
    Length::inches(v)
}

fn p(x: i16, y: i16) -> Point {
    Point::new(inch(x), inch(y))
}

fn rectangle(x: i16, y: i16, width: i16, height: i16) -> Vec<Point> {
    vec![p(x, y), p(x + width, y), p(x + width, y + height), p(x, y + height)]
}

fn panel(coverage: i16) -> Panel {
    Panel::new(inch(coverage), inch(1), Seam::DoubleLock { lock: Length::inches_64(16) }).unwrap()
}

/// Ends on the junction lines, without any allowance.
fn bare(edge: &Edge) -> EdgeUse {
    if edge.from.x == edge.to.x { EdgeUse::Side } else { EdgeUse::End(PanelEnd::hold_back(Length::ZERO)) }
}

fn laid(outer: Vec<Point>, holes: Vec<Vec<Point>>, coverage: i16, start: Start) -> LaidPlane {
    Layout::new(Outline::new(outer, holes).unwrap(), panel(coverage), start, bare).unwrap().compute().unwrap()
}

fn widths(l: &LaidPlane) -> Vec<f64> {
    l.panels.iter().map(|p| p.width.get(LengthUnit::Inch)).collect()
}

/// Common practice, no published source: 39 in to the cleat, a 1 in fold, no gap and the bend ignored, is cut at 40 in.
#[test]
fn a_39_in_panel_with_a_1_in_fold_is_cut_at_40_in() {
    let outline = Outline::new(rectangle(0, 0, 48, 45), vec![]).unwrap();
    // The cleat's front lies 6 in from the line.
    let layout = Layout::new(outline, panel(16), Start::Left, |e| {
        if e.from.y == Length::ZERO && e.to.y == Length::ZERO { EdgeUse::End(PanelEnd::hold_back(inch(6)).with_fold(inch(1))) } else { bare(e) }
    })
    .unwrap();
    for panel in layout.compute().unwrap().panels {
        assert_eq!((panel.finished, panel.blank, panel.order), (inch(40), inch(40), inch(40)));
    }
}

/// Jacks of an equal-pitch hip on a square corner: the framing square's rows, difference in length at 16 and 24 in on centre.
#[test]
fn strips_of_a_hip_differ_by_the_jack_difference() {
    for (rise, at_16, at_24) in [
        (2, 16.220_700, 24.331_050),
        (4, 16.865_481, 25.298_221),
        (5, 17.333_333, 26.0),
        (9, 20.0, 30.0),
        (12, 22.627_417, 33.941_125),
        (18, 28.844_410, 43.266_615),
    ] {
        let slope_factor = f64::from(144 + rise * rise).sqrt() / 12.0;
        let apex = Point::new(inch(240), Length::from_mm(240.0 * 25.4 * slope_factor).unwrap());
        for (coverage, difference) in [(16, at_16), (24, at_24)] {
            // Hip on the left, hip on the right; the seam on the middle.
            let l = laid(vec![p(0, 0), p(480, 0), apex], vec![], coverage, Start::Left);
            let half = l.panels.len() / 2;
            for pair in l.panels[..half].windows(2) {
                let step = pair[1].right_length.unwrap().get(LengthUnit::Inch) - pair[0].right_length.unwrap().get(LengthUnit::Inch);
                assert!((step - difference).abs() < 6e-7, "{rise} in 12 at {coverage}: {step}");
                assert_eq!(pair[0].right_length, pair[1].left_length);
                assert_eq!(pair[1].finished, pair[1].right_length.unwrap());
            }
            assert_eq!(l.panels[0].left_length, None);
            // Its law: coverage * |cot(meeting angle)|.
            let meeting = l.panels[1].upper[0].meeting();
            assert!((f64::from(coverage) / meeting.tan() - difference).abs() < 6e-7);
        }
    }
}

/// Hips of unequal pitches: T, the angle in the plane between eave and hip, as the derived table has it to ten decimals.
#[test]
fn meets_unequal_hips_at_90_less_t() {
    for (pitch, other, t) in [(10.0, 8.0, 46.160_893_182_0), (10.0, 7.0, 42.339_650_341_9), (7.0, 12.0, 63.257_788_964_6), (3.0, 8.0, 70.008_439_272_9)] {
        // Plan: the hip runs at tan D = other / pitch from the eave; up the slope by the slope factor.
        let up = 240.0 * 25.4 * (other / pitch) * (144.0_f64 + pitch * pitch).sqrt() / 12.0;
        let apex = Point::new(inch(240), Length::from_mm(up).unwrap());
        let l = laid(vec![p(0, 0), p(240, 0), apex], vec![], 16, Start::Right);
        let part = &l.panels[1].upper[0];
        assert!((part.meeting().degrees() - (90.0 - t)).abs() < 1e-9);
        assert!((part.skew.degrees() - t).abs() < 1e-9);
        // On the other side of the roof the skew has the other sign.
        let mirrored = laid(vec![p(0, 0), p(240, 0), Point::new(Length::ZERO, apex.y)], vec![], 16, Start::Left);
        assert!((mirrored.panels[1].upper[0].skew.degrees() + t).abs() < 1e-9);
    }
}

#[test]
fn converts_every_part_of_a_skew_end() {
    // The line rises by 3 in 4: sin(meeting angle) = 4/5.
    let outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 148), p(0, 100)], vec![]).unwrap();
    let hip = PanelEnd::hold_back(inch(4)).with_turn_up(inch(1)).with_field_trim(inch(2));
    let eave = PanelEnd::overhang(inch(1)).with_gap(len("1/8\"")).with_fold(len("7/8\""));
    let layout = Layout::new(outline, panel(16), Start::Left, |e| match (e.from.x == e.to.x, e.from.y == Length::ZERO) {
        (true, _) => EdgeUse::Side,
        (_, true) => EdgeUse::End(eave.clone()),
        _ => EdgeUse::End(hip.clone()),
    })
    .unwrap();
    let l = layout.compute().unwrap();
    // 2 in below; 3 in held back is 3.75 in along the seam; 2 in of trim are 2.5 in.
    let expected = [(98.25, 110.25, 112.75), (110.25, 122.25, 124.75), (122.25, 134.25, 136.75), (134.25, 146.25, 148.75)];
    for (laid, (left, right, order)) in l.panels.iter().zip(expected) {
        assert!((laid.left_length.unwrap().get(LengthUnit::Inch) - left).abs() < 1e-9);
        assert!((laid.right_length.unwrap().get(LengthUnit::Inch) - right).abs() < 1e-9);
        assert_eq!(laid.finished, laid.right_length.unwrap());
        assert_eq!(laid.blank, laid.finished);
        assert!((laid.order.get(LengthUnit::Inch) - order).abs() < 1e-9, "one finished end: nearest 1/8 in");
        let meeting = laid.upper[0].meeting();
        assert!((along_seam(inch(3), meeting).unwrap().get(LengthUnit::Inch) - 3.75).abs() < 1e-9);
    }
    let sheet = layout.explain().unwrap().1;
    assert!(sheet.steps().iter().any(|s| s.what == "finished length" && s.with.iter().any(|(k, v)| k == "upper end" && v == "-95.25 mm")));
}

#[test]
fn starts_where_it_is_told() {
    for (start, expected) in [
        (Start::Left, vec![16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 8.0]),
        (Start::Right, vec![8.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0]),
        (Start::CentreSeam, vec![12.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 12.0]),
        (Start::CentrePanel, vec![4.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 4.0]),
        (Start::Datum(inch(1000)), vec![2.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 6.0]),
        (Start::Datum(inch(-1001)), vec![1.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 16.0, 7.0]),
    ] {
        // From 6 in to 126 in.
        let l = laid(rectangle(6, 0, 120, 90), vec![], 16, start);
        assert_eq!(widths(&l), expected, "{start:?}");
        assert_eq!(l.panels[0].left, inch(6));
        assert_eq!(l.panels.last().unwrap().right, inch(126));
        assert!(l.panels.windows(2).all(|w| w[0].right == w[1].left && w[0].right_on_seam && w[1].left_on_seam));
        assert_eq!(l.panels[0].left_on_seam, start == Start::Left);
        assert!(l.seams.windows(2).all(|w| (w[1] - w[0]).length().unwrap() == inch(16)));
    }
    // Two planes on one datum have their seams in line.
    let (below, above) =
        (laid(rectangle(-30, 0, 100, 90), vec![], 16, Start::Datum(inch(3))), laid(rectangle(7, 90, 81, 50), vec![], 16, Start::Datum(inch(3))));
    assert!(above.seams.iter().filter(|s| **s <= inch(70)).all(|s| below.seams.contains(s)));
    // A plane of whole panels has no rip, whatever side it starts from.
    assert_eq!(laid(rectangle(0, 0, 48, 90), vec![], 16, Start::Left), laid(rectangle(0, 0, 48, 90), vec![], 16, Start::Right));
}

#[test]
fn an_opening_splits_or_notches() {
    // Strips at 0, 16, 32, 48, 64; the opening from 16 to 40, 100 to 140 up.
    let l = laid(rectangle(0, 0, 64, 240), vec![rectangle(16, 100, 24, 40)], 16, Start::Left);
    let seen: Vec<_> = l.panels.iter().map(|p| (p.strip, p.run, p.finished.get(LengthUnit::Inch), p.notched)).collect();
    assert_eq!(
        seen,
        [(0, 0, 240.0, false), (1, 0, 100.0, false), (1, 1, 100.0, false), (2, 0, 240.0, true), (3, 0, 240.0, false)],
        "one opening spans strip 1 and bites into strip 2"
    );
    assert_eq!((l.panels[1].lower[0].edge, l.panels[1].upper[0].edge), (0, 7));
    assert!((l.covered.get(AreaUnit::SquareInch) - (64.0 * 240.0 - 24.0 * 40.0)).abs() < 1e-6);
    assert!(l.cautions.iter().any(|c| c.code() == cautions::NOTCHED && c.subject() == "strips[2].runs[0]"));
    // A pipe within a strip leaves one panel with a hole in it.
    let l = laid(rectangle(0, 0, 32, 240), vec![rectangle(4, 100, 3, 3)], 16, Start::Left);
    assert_eq!(l.panels.iter().map(|p| p.notched).collect::<Vec<_>>(), [true, false]);
}

#[test]
fn lays_outlines_that_are_not_convex() {
    // A U: 16 in wide arms on a 40 in foot.
    let u = vec![p(0, 0), p(64, 0), p(64, 200), p(48, 200), p(48, 40), p(16, 40), p(16, 180), p(0, 180)];
    let l = laid(u, vec![], 16, Start::Left);
    assert_eq!(l.panels.iter().map(|p| p.finished.get(LengthUnit::Inch)).collect::<Vec<_>>(), [180.0, 40.0, 40.0, 200.0]);
    // The same on a datum that puts the arm's edge within a strip: the panel is as long as the arm, and notched.
    let u = vec![p(0, 0), p(64, 0), p(64, 200), p(48, 200), p(48, 40), p(16, 40), p(16, 180), p(0, 180)];
    let l = laid(u, vec![], 16, Start::Datum(inch(8)));
    assert_eq!(l.panels.iter().map(|p| p.finished.get(LengthUnit::Inch)).collect::<Vec<_>>(), [180.0, 180.0, 40.0, 200.0, 200.0]);
    assert_eq!(l.panels.iter().map(|p| p.notched).collect::<Vec<_>>(), [false, true, false, true, false]);
    assert_eq!(l.panels[1].upper.len(), 2);
    // A C lying open to the left: two runs in a strip, joined further right.
    let c = vec![p(0, 0), p(48, 0), p(48, 100), p(0, 100), p(0, 70), p(32, 70), p(32, 20), p(0, 20)];
    let l = laid(c, vec![], 16, Start::Left);
    assert_eq!(
        l.panels.iter().map(|p| (p.strip, p.finished.get(LengthUnit::Inch))).collect::<Vec<_>>(),
        [(0, 20.0), (0, 30.0), (1, 20.0), (1, 30.0), (2, 100.0)]
    );
}

#[test]
fn an_end_on_two_lines_is_as_long_as_its_longest_seam() {
    // A ridge from the middle of the strip, a hip up to it.
    let outline = Outline::new(vec![p(0, 0), p(16, 0), p(16, 108), p(8, 108), p(0, 100)], vec![]).unwrap();
    let l = Layout::new(outline, panel(16), Start::Left, |e| match (e.from.x == e.to.x, e.from.y == e.to.y, e.from.y == Length::ZERO) {
        (true, ..) => EdgeUse::Side,
        (_, true, false) => EdgeUse::End(PanelEnd::hold_back(inch(5))),
        _ => bare(e),
    })
    .unwrap()
    .compute()
    .unwrap();
    let one = &l.panels[0];
    assert_eq!((one.upper.len(), one.left_length, one.right_length), (2, Some(inch(100)), Some(inch(103))));
    // The hip's line, struck on, meets the ridge's at 103 in; the corner itself lies beyond.
    assert_eq!((one.finished, one.blank, one.notched), (inch(103), inch(103), false));
    // With the hold-back on the hip instead (5 in across 45 degrees) the cut turns further right, at full height.
    let outline = Outline::new(vec![p(0, 0), p(24, 0), p(24, 108), p(8, 108), p(0, 100)], vec![]).unwrap();
    let l = Layout::new(outline, panel(24), Start::Left, |e| match (e.from.x == e.to.x, e.from.y == e.to.y) {
        (false, false) => EdgeUse::End(PanelEnd::hold_back(inch(5))),
        _ => bare(e),
    })
    .unwrap()
    .compute()
    .unwrap();
    let one = &l.panels[0];
    assert!((one.left_length.unwrap().get(LengthUnit::Inch) - (100.0 - 50.0_f64.sqrt())).abs() < 1e-9);
    assert_eq!((one.right_length, one.finished), (Some(inch(108)), inch(108)));
}

#[test]
fn at_an_inward_corner_the_further_line_is_struck_on() {
    // Above, two lines fall to a corner at 16 in, the left one with 8 in along the seam over it: they cross at 20 in. Below, a point at 18 in.
    let outline = Outline::new(vec![p(0, 54), p(18, 0), p(36, 54), p(36, 204), p(16, 184), p(0, 200)], vec![]).unwrap();
    let over = Length::from_mm(8.0 * 25.4 / 2.0_f64.sqrt()).unwrap();
    let l = Layout::new(outline, panel(36), Start::Left, |e| if e.index == 4 { EdgeUse::End(PanelEnd::overhang(over)) } else { bare(e) })
        .unwrap()
        .compute()
        .unwrap();
    let one = &l.panels[0];
    assert!((one.finished.get(LengthUnit::Inch) - 190.0).abs() < 1e-9);
    assert!((one.left_length.unwrap().get(LengthUnit::Inch) - 154.0).abs() < 1e-9);
    assert!((one.blank.get(LengthUnit::Inch) - 208.0).abs() < 1e-9);
}

/// A ridge that ends half an inch into a panel, where the hip that begins there holds back further: the two struck lines cross beside the panel,
/// and the hip's alone cuts it. The panel before meets the ridge alone, and the hip's line reaches back over its right side.
#[test]
fn a_corner_struck_beside_a_panel_cuts_it_too() {
    let half = |n: i32| Length::inches_64(32 * n);
    // The hip falls 45 in over 30 in.
    let outer = vec![p(0, 0), Point::new(half(93), Length::ZERO), Point::new(half(93), inch(55)), Point::new(half(33), inch(100)), p(0, 100)];
    let finished = |hold_back: Length| {
        let layout = Layout::new(Outline::new(outer.clone(), vec![]).unwrap(), panel(16), Start::Left, |e| {
            let hip = e.from.x != e.to.x && e.from.y != e.to.y;
            if hip {
                EdgeUse::End(PanelEnd::hold_back(hold_back))
            } else if e.from.y == inch(100) && e.to.y == inch(100) {
                EdgeUse::End(PanelEnd::hold_back(inch(1)))
            } else {
                bare(e)
            }
        });
        let laid = layout.unwrap().compute().unwrap();
        let inches = |l: Length| l.get(LengthUnit::Inch);
        let (before, one) = (&laid.panels[0], &laid.panels[1]);
        assert_eq!((before.upper.len(), one.upper.len()), (1, 2));
        (inches(one.finished), inches(one.left_length.unwrap()), inches(before.right_length.unwrap()))
    };
    for hold_back in [1, 2, 4] {
        // At the panel's left side the hip's line lies at 100.75 in, and its hold-back takes h / sin(meeting angle) off.
        let expected = 100.75 - f64::from(hold_back) * 3.25_f64.sqrt();
        let (longest, left, before) = finished(inch(hold_back));
        assert!((longest - expected).abs() < 1e-9 && (left - expected).abs() < 1e-9, "{hold_back} in: {longest} and {left}, not {expected}");
        assert!((before - expected).abs() < 1e-9, "{hold_back} in: the panel before is {before} on its right, not {expected}");
    }
}

#[test]
fn a_blank_between_two_skew_lines_is_longer_than_its_seams() {
    // A parallelogram: both ends rise 8 in over the coverage of 16.
    let l = laid(vec![p(0, 0), p(16, 8), p(16, 108), p(0, 100)], vec![], 16, Start::Left);
    let one = &l.panels[0];
    assert_eq!((one.left_length, one.right_length, one.finished), (Some(inch(100)), Some(inch(100)), inch(100)));
    assert_eq!((one.blank, one.order), (inch(108), inch(108)));
    assert!(l.cautions.iter().any(|c| c.code() == cautions::BOTH_ENDS_SKEW));
}

#[test]
fn rounds_by_the_finished_ends() {
    let trim = |e: PanelEnd, trimmed: bool| if trimmed { e.with_field_trim(inch(1)) } else { e };
    for (below, above, order) in [(false, false, "100 1/16\""), (true, false, "101 1/8\""), (false, true, "101 1/8\""), (true, true, "103\"")] {
        let outer = vec![p(0, 0), p(16, 0), Point::new(inch(16), len("100 1/16\"")), Point::new(Length::ZERO, len("100 1/16\""))];
        let l = Layout::new(Outline::new(outer, vec![]).unwrap(), panel(16), Start::Left, |e| {
            EdgeUse::End(trim(PanelEnd::hold_back(Length::ZERO), if e.index == 0 { below } else { above }))
        })
        .unwrap()
        .compute()
        .unwrap();
        assert_eq!(l.panels[0].order, len(order));
        assert_eq!(l.panels[0].finished, len("100 1/16\""));
    }
}

#[test]
fn too_long_a_panel_is_lapped_or_refused() {
    let outline = || Outline::new(rectangle(0, 0, 32, 240), vec![]).unwrap();
    let layout = |end_lap| {
        Layout::new(outline(), panel(16), Start::Left, bare).unwrap().with_limit(LengthLimit { length: inch(144), governs: Governs::Shipping, end_lap })
    };
    let e = layout(None).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others().len()), (ErrorKind::Impossible, "strips[0].runs[0]", 1));
    assert!(e.message().contains("shipping") && e.allowed().unwrap().contains("3657.6 mm"), "{e}");
    let l = layout(Some(inch(6))).compute().unwrap();
    assert_eq!((l.panels[0].order, l.panels[0].pieces, l.groups[0].count), (inch(123), 2, 4));
    assert_eq!(l.panels[0].finished, inch(240));
    assert_eq!(l.coil.length, inch(492));
    assert!(l.cautions.iter().any(|c| c.code() == cautions::END_LAPPED));
    // Rounding up over the limit asks for one piece more; where that cannot help, it is refused.
    let step = |inches, length, lap| {
        let rule = OrderRounding::all(ShopRounding::new(inch(inches), Rounding::Ceil).unwrap());
        let limit = LengthLimit { length: inch(length), governs: Governs::Forming, end_lap: Some(inch(lap)) };
        Layout::new(outline(), panel(16), Start::Left, bare).unwrap().with_rounding(rule).with_limit(limit).compute()
    };
    let l = step(50, 149, 5).unwrap();
    assert_eq!((l.panels[0].order, l.panels[0].pieces), (inch(100), 3));
    assert!(step(50, 49, 5).is_err());
    assert_eq!(step(1, 12, 11).unwrap().panels[0].pieces, 229);
}

#[test]
fn narrow_panels_are_reported_or_refused() {
    let layout = |choice| {
        let outline = Outline::new(rectangle(0, 0, 36, 90), vec![]).unwrap();
        Layout::new(outline, panel(16), Start::Left, bare).unwrap().with_narrow(NarrowLimit { least: inch(6), choice })
    };
    let l = layout(NarrowChoice::Report).compute().unwrap();
    assert!(l.cautions.iter().any(|c| c.code() == cautions::NARROW_PANEL && c.subject() == "strips[2].runs[0]"));
    let e = layout(NarrowChoice::Refuse).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, "strips[2].runs[0]", Some("101.6 mm")));
    let wide = NarrowLimit { least: inch(4), choice: NarrowChoice::Refuse };
    assert!(layout(NarrowChoice::Report).with_narrow(wide).compute().is_ok());
}

#[test]
fn says_where_nothing_is_left() {
    // The first strip of a hip is shorter than its hold-back.
    let outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 64)], vec![]).unwrap();
    let l = Layout::new(outline, panel(16), Start::Left, |e| if e.from.y == e.to.y { bare(e) } else { EdgeUse::End(PanelEnd::hold_back(inch(12))) })
        .unwrap()
        .compute()
        .unwrap();
    assert_eq!(l.panels.iter().map(|p| p.strip).collect::<Vec<_>>(), [1, 2, 3]);
    assert!((l.uncovered.get(AreaUnit::SquareInch) - 128.0).abs() < 1e-9);
    assert!(l.cautions.iter().any(|c| c.code() == cautions::NO_PANEL && c.subject() == "strips[0].runs[0]"));
    assert_eq!(l.panels[0].left_length, None);
}

#[test]
fn groups_marks_and_coil() {
    // 4 full panels at 100 in, one rip of 8 in, and 4 at 140.
    let l = laid(vec![p(0, 0), p(136, 0), p(136, 100), p(64, 100), p(64, 140), p(0, 140)], vec![], 16, Start::Left);
    let list: Vec<_> = l.groups.iter().map(|g| (g.mark.as_str(), g.order.get(LengthUnit::Inch), g.width.get(LengthUnit::Inch), g.count)).collect();
    assert_eq!(list, [("A", 140.0, 16.0, 4), ("B", 100.0, 16.0, 4), ("C", 100.0, 8.0, 1)]);
    assert_eq!(l.mark_of(&l.panels[8]), Some("C"));
    // 1 in double-lock seams take 2 3/4 in more than the coverage (Copper Roofings: A Manual, p. 6).
    assert_eq!((l.coil.width, l.coil.length, l.coil.mass), (len("18 3/4\""), inch(1060), None));
    let outline = Outline::new(rectangle(0, 0, 48, 144), vec![]).unwrap();
    let sheet = SurfaceMass::parse("1 lb/ft2").unwrap();
    let l = Layout::new(outline, panel(16), Start::Left, bare).unwrap().with_sheet(sheet).compute().unwrap();
    assert!((l.coil.mass.unwrap().get(MassUnit::Pound) - 36.0 * 18.75 / 12.0).abs() < 1e-9);
}

#[test]
fn names_panels_that_cannot_move() {
    let outline = Outline::new(rectangle(0, 0, 32, 100), vec![]).unwrap();
    let l = Layout::new(outline, panel(16), Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO).holding(Hold::Pins))).unwrap().compute().unwrap();
    assert!(l.panels.iter().all(|p| p.pinned_twice));
    let caution = l.cautions.iter().find(|c| c.code() == cautions::PINNED_TWICE).unwrap();
    assert!(caution.message().starts_with("2 panel(s)"));
}

#[test]
fn a_rake_out_of_parallel_cuts_without_allowance() {
    let outline = Outline::new(vec![p(0, 0), p(32, 0), p(30, 100), p(0, 100)], vec![]).unwrap();
    let l = Layout::new(outline, panel(16), Start::Left, |e| if e.from.y == e.to.y { EdgeUse::End(PanelEnd::hold_back(inch(1))) } else { EdgeUse::Side })
        .unwrap()
        .compute()
        .unwrap();
    let last = &l.panels[1];
    assert_eq!((last.width, last.left_length, last.finished), (inch(16), Some(inch(98)), inch(98)));
    assert!((last.upper[1].skew.degrees() - num::atan_deg(-50.0)).abs() < 1e-9);
}

#[test]
fn refuses_bad_input() {
    let outline = || Outline::new(rectangle(0, 0, 32, 100), vec![]).unwrap();
    let good = Layout::new(outline(), panel(16), Start::Left, bare).unwrap();
    let mut bad = good.clone();
    bad.edges.pop();
    bad.panel.coverage = Length::ZERO;
    bad.limit = Some(LengthLimit { length: inch(6), governs: Governs::Forming, end_lap: Some(inch(6)) });
    bad.narrow = Some(NarrowLimit { least: Length::ZERO, choice: NarrowChoice::Report });
    bad.sheet = Some(SurfaceMass::ZERO);
    let e = bad.compute().unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| e.path()).collect();
    assert_eq!(paths, ["panel.coverage", "edges", "narrow.least", "limit.end_lap", "sheet"]);

    let e = Layout::new(outline(), panel(16), Start::Left, |_| EdgeUse::End(PanelEnd::overhang(inch(-1)))).unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("edges[0].reach", 3));

    let mut tiny = good.clone();
    tiny.panel.coverage = Length::micrometres(0).max(Length::from_pm(1));
    tiny.panel.seam_height = inch(1);
    assert_eq!(tiny.compute().unwrap_err().kind(), ErrorKind::TooLarge);
}

#[test]
fn an_end_almost_along_the_seams_is_refused_as_a_junction_refuses_it() {
    let slanted = |off: Length| Outline::new(vec![p(0, 0), p(32, 0), Point::new((inch(32) - off).length().unwrap(), inch(9000)), p(0, 9000)], vec![]).unwrap();
    let laid = |off: Length, end: PanelEnd| Layout::new(slanted(off), panel(16), Start::Left, move |_| EdgeUse::End(end.clone()));
    // 9000 in up and from a picometre to 16 in across: at most a tenth of a degree from the seams.
    for off in [Length::from_pm(1), inch(1), inch(16)] {
        let e = laid(off, PanelEnd::overhang(inch(1))).unwrap_err();
        assert_eq!((e.kind(), e.path(), e.others().len()), (ErrorKind::Impossible, "edges[1]", 0));
        let text = e.to_string();
        assert!(text.contains("a meeting angle of 1 deg or more") && e.cure().is_some(), "{text}");
        for end in [PanelEnd::hold_back(Length::ZERO).with_field_trim(inch(2)), PanelEnd::hold_back(inch(3)).with_turn_up(inch(3))] {
            assert_eq!(laid(off, end).unwrap_err().path(), "edges[1]");
        }
        // Nothing added is nothing multiplied.
        assert!(laid(off, PanelEnd::hold_back(Length::ZERO)).unwrap().compute().is_ok());
    }
    // The limit: 1000 in across and 57 289.96 in up, by tan 1 deg = 0.0174550649.
    let at = |up: i16, by: i32| {
        let far = (inch(up) * by).length().unwrap();
        let outline = Outline::new(vec![p(0, 0), p(1016, 0), Point::new(inch(16), far), Point::new(Length::ZERO, far)], vec![]).unwrap();
        Layout::new(outline, panel(16), Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(inch(3))))
    };
    assert!(at(5728, 10).is_ok());
    assert_eq!(at(5730, 10).unwrap_err().path(), "edges[1]");
}

#[cfg(feature = "serde")]
#[test]
fn reads_and_writes_text() {
    let outline = Outline::new(rectangle(0, 0, 32, 100), vec![rectangle(2, 2, 3, 3)]).unwrap();
    let layout = Layout::new(outline, panel(16), Start::Datum(inch(3)), bare).unwrap();
    let text = serde_json::to_string(&layout).unwrap();
    let back: Layout = serde_json::from_str(&text).unwrap();
    assert_eq!(back, layout);
    assert_eq!(back.compute().unwrap(), layout.compute().unwrap());
    assert!(serde_json::to_string(&layout.compute().unwrap()).unwrap().contains("\"mark\":\"A\""));
    assert!(serde_json::from_str::<Layout>(&text.replace("\"start\"", "\"begin\"")).is_err());
}

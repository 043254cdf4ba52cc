use super::test_shapes::{Shape, bare, by_length, mirrored, outline, panel, shapes};
use super::{EdgeUse, LaidPlane, Layout, Start};
use crate::error::ErrorKind;
use crate::panel::{Growth, PanelEnd};
use crate::record::Calculation;
use crate::roof::{Edge, Outline, Point};
use crate::units::{AreaUnit, Length, LengthUnit};
use proptest::prelude::*;

/// What must not change: lengths, widths and marks, in an order of their own.
fn list(l: &LaidPlane) -> Vec<(Length, Length, Length, Length, usize)> {
    let mut out: Vec<_> = l.panels.iter().map(|p| (p.finished, p.blank, p.order, p.width, p.group)).collect();
    out.sort();
    out
}

fn lay(shape: &Shape, by: (i64, i64), coverage: i32, start: Start) -> LaidPlane {
    Layout::new(outline(shape, by), panel(coverage), start, by_length).unwrap().compute().unwrap()
}

/// Area under the outline's edges between two x, by the integral of y dx: knows nothing of runs.
fn integral(o: &Outline, left: f64, right: f64) -> f64 {
    let mm = |l: Length| l.get(LengthUnit::Millimetre);
    o.edges()
        .map(|e| {
            let (ax, ay, bx, by) = (mm(e.from.x), mm(e.from.y), mm(e.to.x), mm(e.to.y));
            let (x0, x1) = (ax.clamp(left, right), bx.clamp(left, right));
            if (x1 - x0).abs() <= 0.0 {
                return 0.0;
            }
            let y = |x: f64| ay + (x - ax) * (by - ay) / (bx - ax);
            -(y(x0) + y(x1)) / 2.0 * (x1 - x0)
        })
        .sum()
}

/// Heights at which the upright line at this x crosses the outline, from the foot up.
fn crossings(o: &Outline, x: f64) -> Vec<f64> {
    let mm = |l: Length| l.get(LengthUnit::Millimetre);
    let mut out: Vec<f64> = o
        .edges()
        .map(|e| (mm(e.from.x), mm(e.from.y), mm(e.to.x), mm(e.to.y)))
        .filter(|&(ax, _, bx, _)| (ax > x) != (bx > x))
        .map(|(ax, ay, bx, by)| ay + (x - ax) * (by - ay) / (bx - ax))
        .collect();
    out.sort_by(f64::total_cmp);
    out
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn covered_areas_sum_to_the_plane(shape in shapes(), coverage in 150_000..900_000_i32, start in 0..5_u8, datum in -9_000_000..9_000_000_i32) {
        let start = match start { 0 => Start::Left, 1 => Start::Right, 2 => Start::CentreSeam, 3 => Start::CentrePanel, _ => Start::Datum(Length::micrometres(datum)) };
        let o = outline(&shape, (0, 0));
        let l = Layout::new(o.clone(), panel(coverage), start, bare).unwrap().compute().unwrap();
        let whole = o.area().get(AreaUnit::SquareMillimetre);
        approx::assert_relative_eq!(l.covered.get(AreaUnit::SquareMillimetre), whole, max_relative = 1e-9);
        // Strip by strip too.
        let strips = l.panels.iter().map(|p| p.strip).max().unwrap_or(0);
        for s in 0..=strips {
            let of: Vec<_> = l.panels.iter().filter(|p| p.strip == s).collect();
            let covered: f64 = of.iter().map(|p| p.covered.get(AreaUnit::SquareMillimetre)).sum();
            let left = of.iter().map(|p| p.left.get(LengthUnit::Millimetre)).fold(f64::INFINITY, f64::min);
            let right = of.iter().map(|p| p.right.get(LengthUnit::Millimetre)).fold(f64::NEG_INFINITY, f64::max);
            prop_assert!((covered - integral(&o, left, right)).abs() < 1e-9 * whole, "strip {}", s);
        }
    }

    #[test]
    fn no_seam_line_is_longer_than_its_panel(shape in shapes(), coverage in 150_000..900_000_i32) {
        let o = outline(&shape, (0, 0));
        let l = Layout::new(o.clone(), panel(coverage), Start::Left, bare).unwrap().compute().unwrap();
        for p in &l.panels {
            let (left, right) = (p.left.get(LengthUnit::Millimetre), p.right.get(LengthUnit::Millimetre));
            let alone = l.panels.iter().filter(|q| q.strip == p.strip).count() == 1;
            let mut at: Vec<f64> = (1..20).map(|k| left + (right - left) * f64::from(k) / 20.0).collect();
            // The greatest is at a side or at a vertex: look a hair beside them.
            at.extend(o.rings().flatten().map(|v| v.x.get(LengthUnit::Millimetre)).chain([left, right]).flat_map(|x| [x - 1e-6, x + 1e-6]));
            at.retain(|&x| x > left && x < right);
            let mut longest: f64 = 0.0;
            for x in at {
                let ys = crossings(&o, x);
                prop_assert_eq!(ys.len() % 2, 0);
                if let (true, Some(low), Some(high)) = (alone, ys.first(), ys.last()) {
                    longest = longest.max(high - low);
                }
            }
            if alone {
                let finished = p.finished.get(LengthUnit::Millimetre);
                prop_assert!(longest <= finished + 1e-6, "{} over {}", longest, finished);
                prop_assert!(finished - longest < 1e-2, "{} under {}", longest, finished);
            }
        }
    }

    #[test]
    fn a_moved_plane_has_the_same_panels(
        shape in shapes(), coverage in 150_000..900_000_i32, dx in -4_000_000_000_000_000_000_i64..4_000_000_000_000_000_000, dy in -4_000_000_000_000_000_000_i64..4_000_000_000_000_000_000
    ) {
        for (here, there) in [
            (Start::Left, Start::Left),
            (Start::CentrePanel, Start::CentrePanel),
            (Start::Datum(Length::inches(5)), Start::Datum((Length::inches(5) + Length::from_pm(dx)).length().unwrap())),
        ] {
            let (a, b) = (lay(&shape, (0, 0), coverage, here), lay(&shape, (dx, dy), coverage, there));
            prop_assert_eq!(&a.groups, &b.groups);
            prop_assert_eq!(a.panels.len(), b.panels.len());
            for (p, q) in a.panels.iter().zip(&b.panels) {
                prop_assert_eq!((p.finished, p.blank, p.order, p.left_length, p.right_length), (q.finished, q.blank, q.order, q.left_length, q.right_length));
                prop_assert_eq!(q.left, (p.left + Length::from_pm(dx)).length().unwrap());
            }
        }
    }

    #[test]
    fn a_mirrored_plane_has_the_same_panels(shape in shapes(), coverage in 150_000..900_000_i32, datum in -9_000_000..9_000_000_i32) {
        for (start, opposite) in [
            (Start::Left, Start::Right),
            (Start::Right, Start::Left),
            (Start::CentreSeam, Start::CentreSeam),
            (Start::CentrePanel, Start::CentrePanel),
            (Start::Datum(Length::micrometres(datum)), Start::Datum(Length::micrometres(-datum))),
        ] {
            let (a, b) = (lay(&shape, (0, 0), coverage, start), lay(&mirrored(&shape), (0, 0), coverage, opposite));
            prop_assert_eq!(list(&a), list(&b));
            prop_assert_eq!(&a.groups, &b.groups);
            let sides = |l: &LaidPlane| l.panels.iter().map(|p| (p.left_length, p.right_length)).collect::<Vec<_>>();
            let (mut here, mut there) = (sides(&a), sides(&b).into_iter().map(|(l, r)| (r, l)).collect::<Vec<_>>());
            here.sort();
            there.sort();
            // A cut is rounded to the picometre where it lies, and of two mirrored ones half a picometre may go either way.
            let near = |a: Option<Length>, b: Option<Length>| a.zip(b).map_or(a == b, |(a, b)| (a.pm() - b.pm()).abs() <= 1);
            prop_assert_eq!(here.len(), there.len());
            prop_assert!(here.iter().zip(&there).all(|(a, b)| near(a.0, b.0) && near(a.1, b.1)), "{:?} {:?}", here, there);
        }
    }

    #[test]
    fn a_renumbered_or_turned_plane_has_the_same_panels(shape in shapes(), coverage in 150_000..900_000_i32, first in 0..20_usize) {
        let mut other = shape.clone();
        let n = other.outer.len();
        other.outer.rotate_left(first % n);
        other.outer.reverse();
        other.hole.reverse();
        let (a, b) = (lay(&shape, (0, 0), coverage, Start::Left), lay(&other, (0, 0), coverage, Start::Left));
        prop_assert_eq!(list(&a), list(&b));
        prop_assert_eq!(a.covered, b.covered);
    }

    #[test]
    fn computing_and_explaining_agree(shape in shapes(), coverage in 150_000..900_000_i32) {
        let layout = Layout::new(outline(&shape, (0, 0)), panel(coverage), Start::Left, by_length).unwrap();
        let (out, sheet) = layout.explain().unwrap();
        prop_assert_eq!(&out, &layout.compute().unwrap());
        let orders = sheet.steps().iter().filter(|s| s.what == "order length").count();
        prop_assert_eq!(orders, out.panels.len());
    }

    /// Stepped outlines with openings against flood fill on a board of 4 in by 1 in fields: runs, areas and longest columns.
    #[test]
    fn runs_are_what_hangs_together_between_two_seams(
        columns in prop::collection::vec((0..10_i16, 20..30_i16), 2..14), openings in prop::collection::vec((0..14_usize, 1..5_usize), 0..3), datum in 0..6_i16
    ) {
        let (board, outer, holes) = stepped(&columns, &openings);
        let outline = Outline::new(outer, holes).unwrap();
        let l = Layout::new(outline, panel(24 * 25_400), Start::Datum(Length::inches(4 * datum)), bare).unwrap().compute().unwrap();
        let mut found: Vec<_> = l.panels.iter().map(|p| {
            let fields = p.covered.get(AreaUnit::SquareInch) / 4.0;
            #[allow(clippy::cast_possible_truncation, reason = "a few hundred fields")]
            let fields = (fields + 0.5) as i64;
            (p.left, p.right, fields, p.finished)
        }).collect();
        found.sort();
        prop_assert_eq!(found, flooded(&board, usize::try_from(datum).unwrap()));
    }
}

/// Fields by column (4 in wide) and row (1 in high), and the same as rings. Every opening lies in rows 12 to 18, apart from the others.
#[allow(clippy::type_complexity, reason = "a test's fixture")]
fn stepped(columns: &[(i16, i16)], openings: &[(usize, usize)]) -> (Vec<Vec<bool>>, Vec<Point>, Vec<Vec<Point>>) {
    let at = |column: usize, y: i16| Point::new(Length::inches(4 * i16::try_from(column).unwrap()), Length::inches(y));
    let mut board: Vec<Vec<bool>> = columns.iter().map(|&(b, t)| (0..30).map(|y| y >= b && y < t).collect()).collect();
    let mut outer: Vec<Point> = columns.iter().enumerate().flat_map(|(i, &(b, _))| [at(i, b), at(i + 1, b)]).collect();
    outer.extend(columns.iter().enumerate().rev().flat_map(|(i, &(_, t))| [at(i + 1, t), at(i, t)]));
    outer.dedup();
    let (mut holes, mut from) = (Vec::new(), 1);
    for &(gap, wide) in openings {
        let (a, b) = (from + gap % 4, from + gap % 4 + wide);
        if b + 1 > columns.len() {
            break;
        }
        for column in &mut board[a..b] {
            column[12..18].fill(false);
        }
        holes.push(vec![at(a, 12), at(b, 12), at(b, 18), at(a, 18)]);
        from = b + 1;
    }
    (board, outer, holes)
}

/// Connected fields between seams at the datum and every sixth column from it: left, right, fields, longest column from foot to top.
fn flooded(board: &[Vec<bool>], datum: usize) -> Vec<(Length, Length, i64, Length)> {
    let strip = |c: usize| (c + 6 - datum) / 6;
    let mut seen = vec![vec![false; 30]; board.len()];
    let mut out = Vec::new();
    for c in 0..board.len() {
        for y in 0..30 {
            if !board[c][y] || seen[c][y] {
                continue;
            }
            let (mut stack, mut fields) = (vec![(c, y)], Vec::new());
            seen[c][y] = true;
            while let Some((c, y)) = stack.pop() {
                fields.push((c, y));
                for (d, z) in [(c + 1, y), (c.wrapping_sub(1), y), (c, y + 1), (c, y.wrapping_sub(1))] {
                    if d < board.len() && z < 30 && strip(d) == strip(c) && board[d][z] && !seen[d][z] {
                        seen[d][z] = true;
                        stack.push((d, z));
                    }
                }
            }
            let (left, right) = (fields.iter().map(|f| f.0).min().unwrap(), fields.iter().map(|f| f.0).max().unwrap() + 1);
            let longest = (left..right)
                .map(|c| {
                    let rows = || fields.iter().filter(|f| f.0 == c).map(|f| f.1);
                    rows().max().unwrap() + 1 - rows().min().unwrap()
                })
                .max()
                .unwrap();
            let inches = |n: usize| Length::inches(i16::try_from(n).unwrap());
            out.push((inches(4 * left), inches(4 * right), i64::try_from(fields.len()).unwrap(), inches(longest)));
        }
    }
    out.sort();
    out
}

/// The upright place of a line through two points at this x.
fn through((ax, ay): (f64, f64), (bx, by): (f64, f64), x: f64) -> f64 {
    ay + (by - ay) * (x - ax) / (bx - ax)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Panels that end on a line which turns away from their junction's: its two ends laid out by vectors, and each seam met with what lies between them.
    #[test]
    fn panels_end_on_a_line_that_turns(
        width in 1500_i32..9000, rise in 300_i32..6000, rising in any::<bool>(), lower in any::<bool>(), coverage in 200_i32..700,
        hold in 20_i32..300, gap in 0_i32..20, fold in 0_i32..40, by in 1_i32..300, over in 1000_i32..4000
    ) {
        let um = |mm: i32| Length::micrometres(mm * 1000);
        let (low, high) = if rising { (0, rise) } else { (rise, 0) };
        let (flat, p) = (rise + 9000, |x: i32, y: i32| Point::new(um(x), um(y)));
        let ring = if lower { vec![p(0, low), p(width, high), p(width, flat), p(0, flat)] } else { vec![p(0, 0), p(width, 0), p(width, flat - low), p(0, flat - high)] };
        let o = Outline::new(ring, vec![]).unwrap();
        let growth = Growth { by: um(by), over: um(over) };
        let end = PanelEnd::hold_back(um(hold)).with_gap(um(gap)).with_fold(um(fold)).growing(growth);
        let skew = |e: &Edge| e.from.x != e.to.x && e.from.y != e.to.y;
        let edge_use = |e: &Edge| if skew(e) { EdgeUse::End(end.clone()) } else { EdgeUse::End(PanelEnd::hold_back(Length::ZERO)) };
        let laid = Layout::new(o.clone(), panel(coverage * 1000), Start::Left, edge_use).unwrap().compute().unwrap();
        let mm = |l: Length| l.get(LengthUnit::Millimetre);
        let e = o.edges().find(skew).unwrap();
        let (a, b) = ((mm(e.from.x), mm(e.from.y)), (mm(e.to.x), mm(e.to.y)));
        let length = crate::num::hypot(b.0 - a.0, b.1 - a.1);
        // Into the plane, which lies on the left of its edges; farther at the lower of the two ends.
        let into = (-(b.1 - a.1) / length, (b.0 - a.0) / length);
        let top = f64::from(hold - gap - fold);
        let foot = top + length * f64::from(by) / f64::from(over);
        let (of_a, of_b) = if a.1 > b.1 { (top, foot) } else { (foot, top) };
        let on = |p: (f64, f64), d: f64| (p.0 + into.0 * d, p.1 + into.1 * d);
        let (from, to) = (on(a, of_a), on(b, of_b));
        let turned = crate::num::atan_deg((to.1 - from.1) / (to.0 - from.0));
        for p in &laid.panels {
            for (x, found) in [(p.left, p.left_length), (p.right, p.right_length)] {
                let end = through(from, to, mm(x));
                let expected = if lower { f64::from(flat) - end } else { end };
                let found = found.map_or(0.0, mm);
                prop_assert!((found - expected.max(0.0)).abs() < 1e-6, "at {x}: {found} and not {expected}");
            }
            let part = if lower { &p.lower[0] } else { &p.upper[0] };
            prop_assert!((part.skew.degrees() - turned).abs() < 1e-9);
        }
        // The mirrored plane has the mirrored panels, bit for bit.
        let other = |x: Length| (um(width) - x).length().unwrap();
        let turned_ring = o.outer().iter().map(|q| Point::new(other(q.x), q.y)).collect();
        let mirrored = Layout::new(Outline::new(turned_ring, vec![]).unwrap(), panel(coverage * 1000), Start::Right, edge_use).unwrap().compute().unwrap();
        prop_assert_eq!(list(&mirrored), list(&laid));
    }
}

#[test]
fn a_hold_back_cannot_grow_along_a_level_edge() {
    let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
    let o = Outline::new(vec![p(0, 0), p(10, 0), p(10, 10), p(0, 10)], vec![]).unwrap();
    let growth = Growth { by: Length::inches(1), over: Length::feet(8) };
    let e =
        Layout::new(o, panel(400_000), Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO).growing(growth))).and_then(|l| l.compute()).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "edges[0]"));
}

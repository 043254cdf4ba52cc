//! Slitting lists: by hand, against every packing tried out, and bad input.

use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{AreaUnit, Length};
use proptest::prelude::*;

fn blank(girth: Length, length: Length, count: u32) -> Blank {
    Blank { label: format!("{girth}"), girth, length, count }
}

fn inches(girth: i16, feet: i16, count: u32) -> Blank {
    blank(Length::inches(girth), Length::feet(feet), count)
}

/// By hand: 47 in between the trims. Of 10 ft: 20 + 20 + 7, 20 + 20 + 7, then 7 + 7 + 7. Of 8 ft: 30, 30.
#[test]
fn a_list_by_hand() {
    let slitting =
        Slitting { coil_width: Length::inches(48), edge_trim: Length::inches_64(32), blanks: vec![inches(20, 10, 4), inches(30, 8, 2), inches(7, 10, 5)] };
    let (plan, sheet) = slitting.explain().unwrap();
    assert_eq!(plan, slitting.compute().unwrap());
    assert_eq!((plan.drop_count(), plan.coil_length, plan.bound, plan.proven), (5, Length::feet(46), Length::feet(46), true));
    assert_eq!(plan.across.iter().map(|a| (a.count, a.left)).collect::<Vec<_>>(), [(2, Length::inches(7)), (1, Length::inches(17)), (6, Length::inches(5))]);
    let offcuts: Length = Length::total(&plan.drops.iter().map(|d| d.offcut.station(d.count, 1).unwrap()).collect::<Vec<_>>()).unwrap();
    assert_eq!(offcuts, Length::inches(3 * 47 - 4 * 20 - 5 * 7 + 2 * 17));
    assert_eq!((plan.drops[3 - 1].length, plan.drops[3 - 1].strips[0].piece), (Length::feet(8), 1));
    assert!(sheet.steps().len() > 4);
}

#[test]
fn every_fault_is_told_with_its_place() {
    let bad =
        Slitting { coil_width: Length::inches(48), edge_trim: Length::inches(-1), blanks: vec![blank(Length::ZERO, Length::ZERO, 0), inches(10, 10, 10_000)] };
    let e = bad.compute().unwrap_err();
    let mut paths = vec![e.path()];
    paths.extend(e.others().iter().map(crate::error::Error::path));
    assert_eq!(paths, ["edge_trim", "blanks[0].girth", "blanks[0].length", "blanks[0].count"]);
    let e = Slitting { edge_trim: Length::inches(24), ..bad.clone() }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "edge_trim"));
    let e = Slitting { edge_trim: Length::inches(1), blanks: vec![inches(46, 1, 1), inches(47, 1, 1)], ..bad.clone() }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed().unwrap().starts_with("at most 1168.4 mm")), (ErrorKind::Impossible, "blanks[1].girth", true));
    let e = Slitting { edge_trim: Length::ZERO, blanks: vec![inches(10, 10, 10_001)], ..bad.clone() }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::TooLarge, "blanks"));
    assert_eq!(Slitting { edge_trim: Length::ZERO, blanks: vec![], ..bad.clone() }.compute().unwrap_err().kind(), ErrorKind::Missing);
    assert_eq!(Slitting { coil_width: Length::ZERO, ..bad.clone() }.compute().unwrap_err().path(), "coil_width");
    let far = Slitting { coil_width: Length::MAX, edge_trim: Length::ZERO, blanks: vec![blank(Length::MAX, Length::MAX, 2)] };
    assert_eq!(far.compute().unwrap_err().kind(), ErrorKind::Overflow);
}

/// The fewest coils for these widths, every way to fill them tried out.
fn fewest(room: i64, widths: &[i64]) -> usize {
    fn place(rest: &[i64], free: &mut Vec<i64>, room: i64, best: &mut usize) {
        let Some((&first, rest)) = rest.split_first() else {
            *best = free.len().min(*best);
            return;
        };
        if free.len() >= *best {
            return;
        }
        for i in 0..free.len() {
            if free[i] >= first {
                free[i] -= first;
                place(rest, free, room, best);
                free[i] += first;
            }
        }
        free.push(room - first);
        place(rest, free, room, best);
        free.pop();
    }
    let mut best = widths.len();
    place(widths, &mut Vec::new(), room, &mut best);
    best
}

proptest! {
    /// All blanks are there, no strip reaches past the trimmed width, the areas add up, and no plan that is called proven is beaten.
    #[test]
    fn a_list_holds_all_and_is_no_worse_than_it_says(
        girths in prop::collection::vec((20_i32..900, 1_i16..4, 1_u32..3), 1..5),
        trim in 0_i32..40,
    ) {
        let blanks: Vec<Blank> = girths.iter().map(|&(g, l, n)| blank(Length::micrometres(g * 1000), Length::feet(l), n)).collect();
        let slitting = Slitting { coil_width: Length::micrometres(1_000_000), edge_trim: Length::micrometres(trim * 1000), blanks };
        let plan = slitting.compute().unwrap();
        let room = 1000 - i64::from(2 * trim);
        let mut made = vec![0; slitting.blanks.len()];
        for drop in &plan.drops {
            let mut width = drop.offcut.pm();
            for strip in &drop.strips {
                prop_assert_eq!(slitting.blanks[strip.piece].length, drop.length);
                made[strip.piece] += strip.count * drop.count;
                width += slitting.blanks[strip.piece].girth.pm() * i64::from(strip.count);
            }
            prop_assert_eq!(width, room * 1_000_000_000);
        }
        prop_assert_eq!(made, slitting.blanks.iter().map(|b| b.count).collect::<Vec<_>>());
        let s = &plan.scrap;
        let m2 = AreaUnit::SquareMetre;
        prop_assert!((s.blanks.get(m2) + s.edge_trim.get(m2) + s.offcuts.get(m2) - s.coil.get(m2)).abs() < 1e-9 * s.coil.get(m2));
        let mut least = 0;
        for feet in 1..4 {
            let widths: Vec<i64> = girths.iter().filter(|g| g.1 == feet).flat_map(|g| std::iter::repeat_n(i64::from(g.0), g.2 as usize)).collect();
            least += i64::try_from(fewest(room, &widths)).unwrap() * Length::feet(feet).pm();
        }
        prop_assert!(plan.bound.pm() <= least && plan.coil_length.pm() >= least);
        prop_assert!(!plan.proven || plan.coil_length.pm() == least);
        prop_assert_eq!(plan.proven, plan.cautions.is_empty());
    }
}

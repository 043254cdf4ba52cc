use super::TaperedLay;
use crate::error::ErrorKind;
use crate::num;
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

fn lay(foot: &str, head: &str, off: &str, panels: Option<u32>) -> TaperedLay {
    let l = |text: &str| Length::parse(text).unwrap();
    TaperedLay { foot: l(foot), head: l(head), run: Length::feet(20), coverage: Length::inches(16), wider: l(off), narrower: l(off), panels }
}

#[test]
fn a_rake_an_inch_out_over_twenty_panels_takes_a_twentieth_each() {
    let t = lay("320 in", "319 in", "1/16 in", None).compute().unwrap();
    assert_eq!((t.panels, t.fewest, t.most, t.taper), (20, 20, 20, Length::parse("-0.05 in").unwrap()));
    assert_eq!((t.foot_off, t.head_off), (Length::ZERO, Length::parse("-0.05 in").unwrap()));
    assert!((t.out_of_square.degrees() + num::atan_deg(1.0 / 240.0)).abs() < 1e-12);
    assert_eq!((t.marks.len(), t.marks[20].foot, t.marks[20].head), (21, Length::inches(320), Length::inches(319)));
    assert_eq!(t.marks[7].head, Length::parse("111.65 in").unwrap());
}

#[test]
fn what_the_panel_does_not_allow_is_refused_with_what_it_would_take() {
    let e = lay("320 in", "324 in", "1/8 in", None).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, "wider", Some("3.175 mm")));
    // 322 / 16 is 20.1: with 20 panels each is 0.2 in wider at the head.
    assert_eq!(e.allowed(), Some("at least 5.08 mm, with 20 panels"));
    let e = lay("320 in", "320 in", "1/8 in", Some(19)).compute().unwrap_err();
    assert_eq!((e.path(), e.allowed()), ("panels", Some("20 to 20")));
    let e = lay("320 in", "324 in", "1/8 in", Some(25)).compute().unwrap_err();
    assert_eq!(e.path(), "narrower");
}

#[test]
fn every_fault_is_named() {
    let mut bad = lay("320 in", "320 in", "1/8 in", Some(0));
    (bad.foot, bad.run, bad.wider, bad.narrower) = (Length::ZERO, Length::ZERO, Length::inches(-1), Length::inches(16));
    let e = bad.compute().unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| e.path()).collect();
    assert_eq!(paths, ["foot", "run", "wider", "narrower", "panels"]);
    let tiny = TaperedLay { coverage: Length::from_pm(1), narrower: Length::ZERO, ..lay("320 in", "320 in", "0 in", None) };
    assert_eq!(tiny.compute().unwrap_err().kind(), ErrorKind::TooLarge);
}

proptest! {
    #[test]
    fn the_number_found_departs_least(foot in 2_000..40_000_i32, more in -600..600_i32, off in 1..60_i32) {
        let (foot, head) = (Length::micrometres(foot * 1000), Length::micrometres((foot + more).max(1) * 1000));
        let off = Length::micrometres(off * 1000);
        let t = TaperedLay { foot, head, run: Length::feet(20), coverage: Length::micrometres(406_400), wider: off, narrower: off, panels: None };
        let worst = |n: u32| {
            let of = |w: Length| (w.pm() as f64 / f64::from(n) - 406_400e6).abs();
            of(foot).max(of(head))
        };
        let best = (1..400).map(worst).fold(f64::INFINITY, f64::min);
        match t.compute() {
            Ok(found) => {
                prop_assert!((worst(found.panels) - best).abs() < 2.0, "{} panels: {} over {}", found.panels, worst(found.panels), best);
                prop_assert!(found.fewest <= found.panels && found.panels <= found.most);
                for n in [found.fewest, found.most] {
                    prop_assert!(worst(n) <= off.pm() as f64 + 1.0);
                }
            }
            Err(e) => {
                prop_assert_eq!(e.kind(), ErrorKind::Impossible);
                prop_assert!(best > off.pm() as f64 - 1.0);
            }
        }
    }
}

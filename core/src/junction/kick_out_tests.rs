//! Kick-outs folded up again from their blanks, by the lines and angles that stand on these and nothing else.

use super::sidewall_tests::{on_pan, raised};
use super::test_sections::{len, paths, slope};
use super::{KickOut, KickOutDetail, KickOutPiece, Sidewall, SidewallFoot, TrimSheet, WallHand};
use crate::num::space::{V3, add, cross, dot, scale, sub, unit};
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::trim::{BlankBend, Direction, Point};
use crate::units::Length;
use proptest::prelude::*;

fn mm(n: f64) -> Length {
    Length::from_mm(n).unwrap()
}

pub(super) fn kick_out() -> KickOut {
    KickOut {
        pitch: Pitch::parse("4:12").unwrap(),
        sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
        flange: len("3 1/2\""),
        leg: len("8\""),
        wall: WallHand::Right,
        detail: KickOutDetail::thrown(len("4\"")),
    }
}

fn flat(p: Point) -> V3 {
    [p.x.mm(), p.y.mm(), 0.0]
}

/// A turn about a bend line that lifts what lies beyond it, as `beyond` does, toward the upper face, or lowers it.
fn turned(bend: &BlankBend, beyond: V3) -> impl Fn(V3) -> V3 + use<> {
    let (a, b) = (flat(bend.lines[0].from), flat(bend.lines[0].to));
    let axis = unit(sub(b, a)).unwrap();
    let side = cross(axis, sub(beyond, a))[2].signum();
    let way = if bend.direction == Direction::Up { side } else { -side };
    let angle = way * bend.angle.degrees();
    move |p| {
        // Rodrigues.
        let v = sub(p, a);
        let (sin, cos) = (crate::num::sin_deg(angle), crate::num::cos_deg(angle));
        add(a, add(add(scale(v, cos), scale(cross(axis, v), sin)), scale(axis, dot(axis, v) * (1.0 - cos))))
    }
}

fn corner<'a>(made: &'a KickOutPiece, name: &str) -> &'a super::KickOutCorner {
    made.corners.iter().find(|c| c.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// Every corner of the blank as its faces carry it: out from the wall, past the turn, up.
fn folded(made: &KickOutPiece) -> Vec<(String, V3)> {
    let at = |name: &str| flat(corner(made, name).flat);
    let bends = &made.blank.bends;
    let leg = turned(&bends[0], at("leg, upper end"));
    let off = turned(&bends[1], at("outer end, top"));
    let apron = turned(&bends[2], at("apron's edge, lower end"));
    let tab = bends.get(3).map(|b| turned(b, at("tab, inner end")));
    let (s, turn) = (made.asked.pitch.angle(), at("turn, at the fold"));
    let up_slope = if made.asked.wall == WallHand::Right { 1.0 } else { -1.0 };
    made.corners
        .iter()
        .map(|c| {
            let p = flat(c.flat);
            let local = match &*c.name {
                "flange's edge, upper end" | "flange's edge, at the notch" | "turn, at the fold" | "fold, upper end" => p,
                "leg, upper end" | "turn, top" => leg(p),
                "outer end, top" | "outer end, at the fold" => leg(off(p)),
                "apron's edge, at the notch" | "apron's edge, lower end" => leg(off(apron(p))),
                _ => leg(off(apron(tab.as_ref().map_or(p, |t| t(p))))),
            };
            let [x, y, z] = sub(local, turn);
            let y = y * up_slope;
            (c.name.to_string(), [-x, -y * s.cos() + z * s.sin(), y * s.sin() + z * s.cos()])
        })
        .collect()
}

fn near(a: V3, b: V3) -> bool {
    a.iter().zip(b).all(|(x, y)| (x - y).abs() < 1e-6)
}

fn space(c: &super::KickOutCorner) -> V3 {
    [c.from_wall.mm(), c.past_turn.mm(), c.up.mm()]
}

/// On a level roof with a turn of 45 degrees everything follows from the square: 4 in of flange, 8 in of leg, thrown 4 in and 4 in past the eave.
#[test]
fn a_level_roof_by_hand() {
    let mut asked = KickOut { pitch: Pitch::FLAT, flange: len("4\""), ..kick_out() };
    asked.detail.past_eave = len("4\"");
    let made = asked.compute().unwrap();
    let root = 2.0_f64.sqrt() * 101.6;
    assert!((made.turned.mm() - root).abs() < 1e-6 && made.drop == Length::ZERO && made.upper == len("4\""));
    assert_eq!(made.tab_bend, crate::units::Angle::ZERO);
    // The apron lies level beside the flange: three bends, and none at the tab.
    assert_eq!(made.blank.bends.len(), 3);
    // 12 in across. Along: 4 in of lap, the turned length, and the apron's corner 4 sin 45 in lower.
    let (width, height) = made.blank.bounds().unwrap().size().unwrap();
    assert!((width.mm() - 304.8).abs() < 1e-6 && (height.mm() - (101.6 + root + root / 2.0)).abs() < 1e-6);
    for (name, p) in folded(&made) {
        assert!(near(p, space(corner(&made, &name))), "{name}: {p:?}");
    }
    assert!(near(space(corner(&made, "apron's edge, lower end")), [203.2, 101.6, 0.0]));
}

/// Folding tells: a bend that is off by a thousandth of a degree no longer ends where the piece says.
#[test]
fn a_wrong_bend_would_be_seen() {
    let made = kick_out().compute().unwrap();
    assert!(folded(&made).iter().all(|(name, p)| near(*p, space(corner(&made, name)))));
    for bend in 0..3 {
        let mut off = made.clone();
        let angle = &mut off.blank.bends[bend].angle;
        *angle = crate::units::BendAngle::from_flat(crate::units::Angle::degrees_from(angle.degrees() + 0.001).unwrap()).unwrap();
        assert!(folded(&off).iter().any(|(name, p)| !near(*p, space(corner(&made, name)))), "{bend}");
    }
}

/// Both hands are mirror images: the same corners in space, the blank turned end for end.
#[test]
fn the_left_hand_mirrors_the_right() {
    let right = kick_out().compute().unwrap();
    let left = KickOut { wall: WallHand::Left, ..kick_out() }.compute().unwrap();
    let height = right.blank.bounds().unwrap().size().unwrap().1;
    for (a, b) in right.corners.iter().zip(&left.corners) {
        assert_eq!((&a.name, space(a), a.flat.x), (&b.name, space(b), b.flat.x));
        assert!((a.flat.y.mm() + b.flat.y.mm() - height.mm()).abs() < 1e-6);
    }
    assert!(
        (right.blank.area().unwrap().get(crate::units::AreaUnit::SquareMetre) - left.blank.area().unwrap().get(crate::units::AreaUnit::SquareMetre)).abs()
            < 1e-12
    );
    // A left hand's blank is no right hand's turned around: cut alike, its bends would go the wrong way.
    assert_eq!(right.blank.bends.iter().map(|b| b.direction).collect::<Vec<_>>(), left.blank.bends.iter().map(|b| b.direction).collect::<Vec<_>>());
}

#[test]
fn what_no_kick_out_can_be_is_refused() {
    let mut asked = kick_out();
    (asked.flange, asked.leg, asked.detail.throw, asked.detail.past_eave) = (Length::ZERO, Length::ZERO, Length::ZERO, Length::ZERO);
    assert_eq!(paths(&asked.compute().unwrap_err()), ["flange", "leg", "detail.throw", "detail.past_eave"]);
    let mut asked = kick_out();
    (asked.detail.throw, asked.detail.lap, asked.detail.tab) = (len("3\""), len("2\""), len("4\""));
    let e = asked.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.throw", "detail.lap", "detail.tab"]);
    assert!(e.message().contains("too little by 25.4 mm") && e.cure().unwrap().contains("25.4 mm"), "{e}");
    // The tab that is accepted at most is refused, and a hair less is made.
    let tab = e.others().last().unwrap();
    let most = len(tab.allowed().unwrap().strip_prefix("less than ").unwrap());
    let with = |tab: Length| KickOut {
        detail: KickOutDetail {
            tab,
            throw: len("3\""),
            least_throw: super::LeastRule { least: len("1\""), ..super::LeastRule::KICK_OUT_THROW },
            ..kick_out().detail
        },
        ..kick_out()
    };
    assert_eq!(with(most).compute().unwrap_err().path(), "detail.tab");
    assert!(with((most - mm(0.001)).length().unwrap()).compute().is_ok());
}

fn dies(mut s: Sidewall, detail: KickOutDetail) -> Sidewall {
    s.detail.foot = SidewallFoot::DiesIntoWall { kick_out: Some(detail.into()) };
    s
}

/// It goes under the wall flashing: as high as that's leg, and within its drip, or short of the hem that is folded under its flange.
#[test]
fn a_sidewall_gives_its_kick_out() {
    let solved = dies(raised(), KickOutDetail::thrown(len("4\""))).compute().unwrap();
    let made = solved.kick_out.unwrap();
    let flange = solved.trims.iter().find(|t| t.name == "sidewall flashing").unwrap().profile.legs[1].length;
    assert_eq!((flange - made.asked.flange).length().unwrap(), Length::mils(54));
    assert_eq!((made.asked.leg, made.asked.wall), (len("8\""), WallHand::Right));
    let made = dies(on_pan(), KickOutDetail::thrown(len("4\""))).compute().unwrap().kick_out.unwrap();
    assert_eq!(made.asked.flange, (len("5\"") - len("1/2\"") - Length::mils(24)).length().unwrap());
    assert!(raised().compute().unwrap().kick_out.is_none());
    let e = dies(raised(), KickOutDetail { lap: len("1\""), ..KickOutDetail::thrown(len("2\"")) }).compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.foot.dies-into-wall.kick_out.throw", "detail.foot.dies-into-wall.kick_out.lap"]);
    let (out, sheet) = dies(raised(), KickOutDetail::thrown(len("4\""))).explain().unwrap();
    assert!(out.kick_out.is_some() && sheet.steps().iter().any(|s| s.what.contains("notch")));
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_is_common_practice() {
    let own = KickOutDetail::thrown(len("4\""));
    assert_eq!(crate::record::read_json::<KickOutDetail>(br#"{"throw": "4 in"}"#, 1 << 10).unwrap(), own);
    let text = serde_json::to_string(&kick_out()).unwrap();
    assert_eq!(serde_json::from_str::<KickOut>(&text).unwrap(), kick_out());
}

proptest! {
    #[test]
    fn every_blank_folds_to_its_corners(s in 0.0_f64..60.0, f in 60.0_f64..200.0, leg in 100.0_f64..300.0, throw in 102.0_f64..250.0, past in 20.0_f64..300.0, tab in 0.0_f64..30.0, is_left: bool) {
        let wall = if is_left { WallHand::Left } else { WallHand::Right };
        let mut asked = KickOut { pitch: slope(s), flange: mm(f), leg: mm(leg), wall, ..kick_out() };
        (asked.detail.throw, asked.detail.past_eave, asked.detail.tab) = (mm(throw), mm(past), mm(tab));
        let made = match asked.compute() {
            Err(e) => {
                prop_assert_eq!(paths(&e), ["detail.tab"]);
                return Ok(());
            }
            Ok(made) => made,
        };
        for (name, p) in folded(&made) {
            prop_assert!(near(p, space(corner(&made, &name))), "{}: {:?} {:?}", name, p, space(corner(&made, &name)));
        }
        let at = |name: &str| space(corner(&made, name));
        // It throws as far as asked, the turned leg stands plumb, and the lower edge of the apron is level and parallel with the eave.
        let (end, top, edge) = (at("outer end, at the fold"), at("outer end, top"), at("apron's edge, lower end"));
        prop_assert!((end[0] - throw).abs() < 1e-6 && (end[1] - past).abs() < 1e-6 && (end[2] + made.drop.mm()).abs() < 1e-6);
        prop_assert!((top[0] - end[0]).abs() < 1e-6 && (top[1] - end[1]).abs() < 1e-6 && top[2] > end[2]);
        prop_assert!((edge[1] - end[1]).abs() < 1e-6 && (edge[2] - end[2]).abs() < 1e-6 && edge[0] > end[0]);
        // The two sides of the notch close, and the tab lies in the flange's plane, under it.
        prop_assert!(near(at("apron's edge, at the notch"), at("flange's edge, at the notch")));
        if made.asked.detail.tab.is_positive() {
            for name in ["tab, inner end", "tab, outer end"] {
                let p = at(name);
                let up = -p[1] * slope(s).angle().cos() + p[2] * slope(s).angle().sin();
                let off = p[1] * slope(s).angle().sin() + p[2] * slope(s).angle().cos();
                prop_assert!(off.abs() < 1e-6 && (up - tab).abs() < 1e-6 && p[0] > 0.0 && p[0] < f + 1e-6);
            }
        }
        let (out, sheet) = asked.explain().unwrap();
        prop_assert!(out == made && sheet.steps().len() > 5);
    }
}

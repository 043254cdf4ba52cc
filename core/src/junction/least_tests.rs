//! Every least of every kind: what is just enough passes, and a millimetre more is refused with the part, the line, the distance, the source and the cure.

use super::test_sections::{len, slope};
use super::{
    KickOutDetail, LeastBySlope, LeastRule, PanelSide, PipeSpacing, SidewallFlange, SidewallFoot, Solved, WallCover, coping_tests, covered_tests,
    curb_back_tests, eave_tests, expansion_tests, high_side_tests, pipe_tests, rake_tests, ridge_tests, sidewall_tests, step_tests, transition_tests,
    valley_tests,
};
use crate::error::{Error, ErrorKind};
use crate::pitch::{Pitch, SlopeRule};
use crate::record::{Calculation, Source};
use crate::units::Length;

/// A rule of a kind: where a section that breaks it is refused, the rule as the kind has it, and the section with another in its place.
struct Case {
    kind: &'static str,
    path: &'static str,
    own: LeastRule,
    with: Box<dyn Fn(LeastRule) -> Result<Solved, Error>>,
}

macro_rules! cases {
    ($out:ident: $($kind:literal, $path:literal, $asked:expr, $($rule:ident).+;)+) => {$(
        let asked = $asked;
        let own = asked.$($rule).+.clone();
        $out.push(Case { kind: $kind, path: $path, own, with: Box::new(move |rule| {
            let mut asked = asked.clone();
            asked.$($rule).+ = rule;
            asked.compute()
        }) });
    )+};
}

fn cases() -> Vec<Case> {
    let mut out = Vec::new();
    let s = slope(30.0);
    cases! { out:
        "eave", "detail.flange.width", eave_tests::asked(s), detail.on_deck;
        "eave", "detail.face.depth", eave_tests::asked(s), detail.below_deck;
        "rake", "detail.inner.cover", rake_tests::asked(), detail.z_cover;
        "rake", "detail.face.depth", rake_tests::asked(), detail.below_deck;
        "ridge", "detail.first.flange", ridge_tests::asked(s, s), detail.first.cover;
        "ridge", "detail.second.flange", ridge_tests::asked(s, slope(20.0)), detail.second.cover;
        "hip", "detail.first.flange", covered_tests::hip("6:12", "8:12", 90.0), detail.first.cover;
        "hip", "detail.second.flange", covered_tests::hip("6:12", "8:12", 90.0), detail.second.cover;
        "high side", "detail.end.flange", high_side_tests::asked(s), detail.end.cover;
        "high side", "detail.face.depth", high_side_tests::asked(s), detail.below_deck;
        "headwall and curb front", "detail.end.flange", covered_tests::headwall("4:12"), detail.end.cover;
        "headwall and curb front", "detail.wall.leg", covered_tests::headwall("4:12"), detail.wall.upstand;
        "sidewall and curb side", "detail.flange.on-z.cover", sidewall_tests::raised(), detail.cover;
        "sidewall and curb side", "detail.flange.on-pan.width", sidewall_tests::on_pan(), detail.cover;
        "sidewall and curb side", "detail.wall.leg", sidewall_tests::raised(), detail.wall.upstand;
        "valley", "detail.first.leg", valley_tests::valley("6:12", "6:12"), detail.first.least_leg.rule;
        "valley", "detail.second.leg", valley_tests::valley("6:12", "6:12"), detail.second.least_beyond;
        "valley", "detail.open_width", valley_tests::valley("6:12", "6:12"), detail.least_open_width;
        "transition", "detail.end.flange", transition_tests::transition("3:12", "8:12"), detail.end.cover;
        "curb back", "detail.reach", curb_back_tests::curb(slope(20.0)), detail.under_panels;
        "curb back", "detail.reach", curb_back_tests::curb(slope(20.0)), detail.least_beyond;
        "curb back", "detail.clear_width", curb_back_tests::curb(slope(20.0)), detail.least_clear_width;
        "curb back", "detail.seam_cut_back", curb_back_tests::curb(slope(20.0)), detail.least_to_seams;
        "ridge", "detail.first.hold_back", ridge_tests::asked(s, s), detail.first.closure.panel_margin;
        "transition", "detail.front_below_top", transition_tests::transition("3:12", "8:12"), detail.head_lap;
        "curb back", "detail.wall.leg", curb_back_tests::curb(slope(20.0)), detail.wall.upstand;
        "step", "riser", step_tests::step(15.0, 0.0), detail.lower.upstand;
        "step", "detail.lower.end.flange", step_tests::step(15.0, 0.0), detail.lower.end.cover;
        "step", "detail.upper.face.depth", step_tests::step(15.0, 0.0), detail.lower.lap;
        "expansion along", "detail.turn_up", expansion_tests::along(), detail.upstand;
        "expansion along", "detail.drop", expansion_tests::along(), detail.lap;
    }
    // Rules inside a choice.
    let on_wall = |cover: WallCover, set: fn(&mut WallCover, LeastRule)| {
        move |rule: LeastRule| {
            let mut wall = covered_tests::headwall("4:12");
            wall.detail.wall.cover = cover.clone();
            set(&mut wall.detail.wall.cover, rule);
            wall.compute()
        }
    };
    let lap = |cover: &mut WallCover, rule: LeastRule| {
        if let WallCover::Cladding { rule: own, .. } = cover {
            *own = rule;
        }
    };
    let reglet = || WallCover::Reglet(Box::new(covered_tests::reglet()));
    let least_lap = |cover: &mut WallCover, rule: LeastRule| {
        if let WallCover::Reglet(c) = cover {
            c.least_lap = rule;
        }
    };
    let tongue = |cover: &mut WallCover, rule: LeastRule| {
        if let WallCover::Reglet(c) = cover {
            c.rule = rule;
        }
    };
    let cladding = covered_tests::headwall("4:12").detail.wall.cover;
    for (path, own, with) in [
        ("detail.wall.cover.cladding.lap", LeastRule::UFGS_BEHIND_CLADDING, on_wall(cladding, lap)),
        ("detail.wall.cover.reglet.face", LeastRule::LAP_OVER_LEG, on_wall(reglet(), least_lap)),
        ("detail.wall.cover.reglet.tongue", LeastRule::UFGS_INTO_WALL, on_wall(reglet(), tongue)),
    ] {
        out.push(Case { kind: "headwall and curb front", path, own, with: Box::new(with) });
    }
    for (path, own, is_throw) in [
        ("detail.foot.dies-into-wall.kick_out.throw", LeastRule::KICK_OUT_THROW, true),
        ("detail.foot.dies-into-wall.kick_out.lap", LeastRule::UFGS_UNSOLDERED, false),
    ] {
        let with = move |rule: LeastRule| {
            let mut s = sidewall_tests::raised();
            let mut k = KickOutDetail::thrown(len("5 in"));
            *if is_throw { &mut k.least_throw } else { &mut k.least_lap } = rule;
            s.detail.foot = SidewallFoot::DiesIntoWall { kick_out: Some(k.into()) };
            s.compute()
        };
        out.push(Case { kind: "sidewall and curb side", path, own, with: Box::new(with) });
    }
    let over = coping_tests::coping().detail.roof_side.over.unwrap().rule;
    let coping = |rule| {
        let mut coping = coping_tests::coping();
        coping.detail.roof_side.over.as_mut().unwrap().rule = rule;
        coping.compute()
    };
    out.push(Case { kind: "coping", path: "detail.roof_side.depth", own: over, with: Box::new(coping) });
    out
}

/// What a refusal says there is, and by how much it is too little.
fn told(message: &str) -> (Length, Length) {
    let (_, figures) = message.rsplit_once(": ").unwrap();
    let (have, short) = figures.split_once(", too little by ").unwrap();
    (len(have), len(short))
}

#[test]
fn what_is_just_enough_passes_and_a_millimetre_more_is_refused() {
    for Case { kind, path, own, with } in cases() {
        let asks = |least: Length| with(LeastRule { least, ..own.clone() });
        asks(own.least).unwrap_or_else(|e| panic!("{kind} at its own rule: {e}"));
        let all =
            |e: &Error| std::iter::once(e).chain(e.others()).filter(|e| e.path() == path && e.message().contains("too little")).cloned().collect::<Vec<_>>();
        let refused = asks(len("100 m")).unwrap_err();
        let found = all(&refused);
        let (have, _) = told(found.first().unwrap_or_else(|| panic!("{kind}, {path}: {refused}")).message());
        let just = asks(have);
        assert!(just.is_ok(), "{kind}, {path}: {have} of {have}: {}", just.unwrap_err());
        let more = (have + len("1 mm")).length().unwrap();
        let e = asks(more).unwrap_err();
        let [e, ..] = &all(&e)[..] else { panic!("{kind}, {path}: {e}") };
        assert_eq!((e.kind(), told(e.message())), (ErrorKind::Impossible, (have, len("1 mm"))), "{kind}: {e}");
        assert!(e.message().contains(&*own.what), "{kind}: {e}");
        assert!(e.allowed().unwrap().contains(&own.source.to_string()), "{kind}: {e}");
        assert!(e.cure().unwrap().contains("mm"), "{kind}: {e}");
    }
}

#[test]
fn a_pipe_keeps_off_the_next_by_its_rule() {
    let mut pipe = pipe_tests::pipe();
    let rule = LeastRule::NAVFAC_APART;
    pipe.next = Some(PipeSpacing { distance: rule.least, rule: rule.clone() });
    assert!(pipe.compute().is_ok());
    pipe.next = Some(PipeSpacing { distance: (rule.least - len("1 mm")).length().unwrap(), rule });
    let e = pipe.compute().unwrap_err();
    assert_eq!((e.path(), told(e.message()).1), ("next.distance", len("1 mm")));
}

#[test]
fn a_joint_across_laps_its_movement_by_its_rule() {
    let mut joint = expansion_tests::across();
    let e = {
        let mut all = joint.clone();
        all.detail.lap.least = len("100 m");
        all.compute().unwrap_err()
    };
    let (have, _) = told(e.message());
    joint.detail.lap.least = have;
    assert!(joint.compute().is_ok());
    joint.detail.lap.least = (have + len("1 mm")).length().unwrap();
    assert_eq!(told(joint.compute().unwrap_err().message()), (have, len("1 mm")));
}

/// The clauses themselves: UFGS-07600 3.1.6.2 (3 in for a lap without solder), the residential code's R905.2.8.5 (2 in up the deck, 1/4 in below it) and R905.2.8.3
/// (4 in by 4 in), the copper association's manuals (3 in on the roof, 4 in open).
#[test]
fn clauses_by_their_figures() {
    for (rule, inches, place) in [
        (LeastRule::UFGS_UNSOLDERED, "3 in", "3.1.6.2"),
        (LeastRule::IRC_OVER_EDGE_METAL, "2 in", "R905.2.8.5"),
        (LeastRule::IRC_BELOW_DECK, "1/4 in", "R905.2.8.5"),
        (LeastRule::IRC_BASE_WIDTH, "4 in", "R905.2.8.3"),
        (LeastRule::IRC_BASE_HEIGHT, "4 in", "R905.2.8.3"),
        (LeastRule::COPPER_EAVE_STRIP, "3 in", "par. 52-55"),
        (LeastRule::COPPER_VALLEY_OPEN, "4 in", "par. 29"),
    ] {
        assert!(LeastRule::ALL.contains(&rule), "{rule:?}");
        assert_eq!(rule.least, len(inches));
        assert!(rule.source.to_string().contains(place), "{rule:?}");
    }
    assert!(LeastRule::ALL.iter().all(|r| r.source != Source::CommonPractice));
}

/// 500 mm asked beyond what the panels hook is refused with the rule that asks it.
#[test]
fn a_rule_that_no_pan_keeps_is_named() {
    let mut v = valley_tests::valley("6:12", "6:12");
    v.detail.first.least_beyond = LeastRule::given("snow country", len("500 mm"), Source::user());
    let e = v.compute().unwrap_err();
    assert_eq!(e.path(), "detail.first.leg");
    assert!(e.message().starts_with("snow country: "), "{e}");
    assert!(e.allowed().unwrap().starts_with("500 mm or more"), "{e}");
    assert!(e.cure().unwrap().ends_with("or another rule as least_beyond"), "{e}");
}

/// 8 in, 10 in under 4:12 and 12 in under 2 1/2:12, by the flatter plane on both sides: common practice.
#[test]
fn a_valley_pan_reaches_farther_at_low_slopes() {
    let of = |one: &str, other: &str, leg: &str| {
        let mut v = valley_tests::valley(one, other);
        (v.detail.first.leg, v.detail.second.leg) = (len(leg), len(leg));
        (v.detail.first.least_beyond.least, v.detail.second.least_beyond.least) = (Length::ZERO, Length::ZERO);
        v.detail.minimum = SlopeRule { limit: Pitch::FLAT, ..v.detail.minimum };
        let short =
            |e: &Error| std::iter::once(e).chain(e.others()).filter(|e| e.message().starts_with("valley pan from its centreline")).cloned().collect::<Vec<_>>();
        v.compute().map_or_else(|e| short(&e), |_| Vec::new())
    };
    for (one, other, least) in
        [("6:12", "6:12", 8), ("4:12", "12:12", 8), ("3.99:12", "6:12", 10), ("2 1/2:12", "3:12", 10), ("2:12", "9:12", 12), ("9:12", "2.4:12", 12)]
    {
        let short = of(one, other, &format!("{} in", f64::from(least) - 0.5));
        assert_eq!(short.iter().map(Error::path).collect::<Vec<_>>(), ["detail.first.leg", "detail.second.leg"], "{one} {other}");
        assert!(short[0].message().ends_with("too little by 12.7 mm") && short[0].cure().unwrap().contains("another rule as least_leg"), "{}", short[0]);
        assert!(of(one, other, &format!("{least} in")).is_empty(), "{one} {other}");
    }
    // One's own rule at every slope, and rules out of order.
    let mut v = valley_tests::valley("2:12", "9:12");
    v.detail.first.least_leg = LeastBySlope::everywhere(LeastRule::given("snow country", len("14 in"), Source::user()));
    assert!(v.compute().unwrap_err().message().starts_with("snow country: "));
    v.detail.first.least_leg.flatter = LeastBySlope::VALLEY_LEG.flatter.iter().rev().cloned().collect();
    let e = v.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "detail.first.least_leg.flatter[1].under", Some("2 1/2:12")), "{e}");
}

/// Tape thicker than a seal is said wherever a section has tape of a thickness.
#[test]
fn thick_tape_is_said_at_every_kind() {
    let said = |solved: Result<Solved, Error>| -> Vec<(String, String)> {
        let solved = solved.unwrap();
        let thick = solved.cautions.iter().filter(|c| c.code() == super::TAPE_TOO_THICK);
        thick.map(|c| (c.subject().to_owned(), c.to_string())).collect()
    };
    let mut rake = rake_tests::asked();
    assert!(said(rake.compute()).is_empty());
    rake.detail.z.tape = len("20 mm");
    rake.levels.tape = len("10 mm");
    let out = said(rake.compute());
    assert_eq!(out.iter().map(|s| s.0.as_str()).collect::<Vec<_>>(), ["detail.z.tape", "levels.tape"]);
    assert!(out[0].1.contains("20 mm") && out[0].1.contains("13.65 mm"), "{}", out[0].1);
    let mut t = transition_tests::transition("3:12", "8:12");
    t.detail.cleat.tape = len("20 mm");
    assert_eq!(said(t.compute())[0].0, "detail.cleat.tape");
    let mut s = sidewall_tests::raised();
    if let SidewallFlange::OnZ { tape_beneath, .. } = &mut s.detail.flange {
        *tape_beneath = len("7 mm");
    }
    assert!(matches!(s.detail.edge, PanelSide::TurnedUp { .. }));
    assert_eq!(said(s.compute())[0].0, "detail.flange.on-z.tape_beneath");
    let mut ridge = ridge_tests::asked(slope(30.0), slope(30.0));
    ridge.detail.first.closure.tape_beneath = len("7 mm");
    assert_eq!(said(ridge.compute())[0].0, "detail.first.closure.tape_beneath");
    let mut v = valley_tests::valley("6:12", "6:12");
    if let super::ValleyHook::OffsetCleat { cleat, .. } = &mut v.detail.second.hook {
        cleat.tape = len("7 mm");
    }
    assert_eq!(said(v.compute())[0].0, "detail.second.hook.offset-cleat.cleat.tape");
    let mut c = curb_back_tests::curb(slope(20.0));
    if let super::ValleyHook::OffsetCleat { cleat, .. } = &mut c.detail.hook {
        cleat.tape = len("7 mm");
    }
    assert_eq!(said(c.compute())[0].0, "detail.hook.offset-cleat.cleat.tape");
}

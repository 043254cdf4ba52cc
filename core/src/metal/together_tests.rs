//! Metals together, by hand.

use super::{Alloy, MetalPart, MetalsTogether, PairVerdict, PairWay, PartsMeet};
use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use proptest::prelude::*;

fn part(name: &str, alloy: Alloy) -> MetalPart {
    MetalPart { name: name.into(), alloy }
}

fn meet(first: usize, second: usize, at: &str) -> PartsMeet {
    PartsMeet { first, second, at: at.into() }
}

#[test]
fn water_is_followed_down_and_touch_goes_both_ways() {
    // Common practice, no published source: copper is kept from aluminium by touch and above it; below it, it may lie.
    let parts = vec![
        part("panels above", Alloy::Copper),
        part("panels below", Alloy::TitaniumZinc),
        part("gutter", Alloy::Aluminium3003),
        part("eave trim", Alloy::Copper),
        part("strip", Alloy::Stainless304),
    ];
    let roof = MetalsTogether {
        parts,
        touches: vec![meet(2, 3, "eave 1"), meet(3, 4, "eave 1"), meet(1, 2, "eave 1")],
        drains: vec![meet(0, 1, "steep-to-shallow 1"), meet(1, 2, "eave 1"), meet(1, 2, "eave 2"), meet(1, 3, "eave 1")],
    };
    let (found, sheet) = roof.explain().unwrap();
    assert!(!sheet.steps().is_empty());
    let told: Vec<_> = found.iter().map(|m| (m.first.as_str(), m.second.as_str(), m.way, m.verdict, m.places.join(" / "))).collect();
    use PairVerdict::{KeepApart, NotJudged};
    use PairWay::{Contact, RunOff};
    let expected = [
        ("eave trim", "strip", Contact, NotJudged, "eave 1"),
        ("gutter", "eave trim", Contact, KeepApart, "eave 1"),
        ("panels above", "gutter", RunOff, KeepApart, "steep-to-shallow 1, eave 1"),
        ("panels above", "panels below", RunOff, KeepApart, "steep-to-shallow 1"),
    ];
    assert_eq!(told, expected.map(|(a, b, w, v, p)| (a, b, w, v, p.to_owned())));
    let caution = found[3].caution();
    assert_eq!(caution.code().number, 2104);
    let message = caution.message();
    assert!(
        message.contains("panels above") && message.contains("drains on") && message.contains("steep-to-shallow 1") && message.contains("catch its water"),
        "{message}"
    );
}

#[test]
fn parts_that_are_not_there_are_refused() {
    let roof = MetalsTogether { parts: vec![part("a", Alloy::Copper)], touches: vec![meet(0, 0, "x")], drains: vec![meet(0, 1, "x"), meet(7, 0, "x")] };
    let e = roof.compute().unwrap_err();
    let all: Vec<(ErrorKind, &str)> = std::iter::once(&e).chain(e.others()).map(|e: &Error| (e.kind(), e.path())).collect();
    assert_eq!(all, [(ErrorKind::Conflict, "touches[0].second"), (ErrorKind::OutOfRange, "drains[0].second"), (ErrorKind::OutOfRange, "drains[1].first")]);
}

proptest! {
    /// Copper anywhere upstream of the one aluminium part is found, and nothing else; water that runs in a circle ends.
    #[test]
    fn what_lies_upstream_is_found(drains in proptest::collection::vec((0_usize..7, 0_usize..7), 0..14)) {
        let mut parts: Vec<MetalPart> = (0..6).map(|k| part(&format!("copper {k}"), Alloy::Copper)).collect();
        parts.push(part("gutter", Alloy::Aluminium3003));
        let drains: Vec<PartsMeet> = drains.into_iter().filter(|(a, b)| a != b).map(|(a, b)| meet(a, b, "line")).collect();
        let found = MetalsTogether { parts, touches: vec![], drains: drains.clone() }.compute().unwrap();
        // By repeated steps: what reaches the gutter.
        let mut reaches = [false, false, false, false, false, false, true];
        for _ in 0..7 {
            for d in &drains {
                reaches[d.first] |= reaches[d.second];
            }
        }
        let upstream: Vec<String> = (0..6).filter(|k| reaches[*k]).map(|k| format!("copper {k}")).collect();
        let got: Vec<String> = found.iter().filter(|m| m.second == "gutter").map(|m| m.first.clone()).collect();
        prop_assert_eq!(got, upstream);
    }
}

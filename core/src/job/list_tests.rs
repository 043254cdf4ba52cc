//! Lists, marks and shared seams in a whole job.

#![cfg(feature = "serde")]

use super::JobRevision;
use super::test_jobs::{demo_laid, packet_laid, sharing};
use crate::error::ErrorKind;
use crate::layout::{FormedRow, RowState, Start};
use crate::record::Calculation;
use crate::roof::{Beyond, LineKind};
use crate::units::{Length, MassUnit, Sum};

#[test]
fn shared_seams_meet_at_the_ridge_and_the_transitions() {
    let p = packet_laid(sharing(&["main south", "main north", "porch"]));
    let mut met = 0;
    for line in p.roof.lines() {
        let Beyond::Plane(other) = &line.beyond else { continue };
        let pair = [&line.side, other].map(|s| &p.planes[s.plane]);
        if !pair.iter().all(|l| ["main south", "main north", "porch"].contains(&l.name.as_str())) {
            continue;
        }
        assert!(matches!(line.kind, LineKind::Ridge | LineKind::SteepToShallow), "{}", line.name);
        // Along the line from its start, on both sides.
        let along = |lay: &super::PlaneLay, from: Length, to: Length| {
            let mut out: Vec<i64> =
                lay.laid.seams.iter().filter(|s| (from.min(to)..=from.max(to)).contains(s)).map(|s| (*s - from).length().unwrap().pm().abs()).collect();
            out.sort_unstable();
            out
        };
        let (here, there) = (along(pair[0], line.side.start.x, line.side.end.x), along(pair[1], other.end.x, other.start.x));
        assert!(here.len() > 10 && here.len() == there.len(), "{}", line.name);
        assert!(here.iter().zip(&there).all(|(a, b)| (a - b).abs() <= 2), "{}: {here:?} {there:?}", line.name);
        met += 1;
    }
    assert_eq!(met, 2);
    // The first lies by its own start.
    assert_eq!(p.plane("main south").unwrap().layout.start, Start::CentrePanel);
}

#[test]
fn shared_seams_that_cannot_be_are_refused_with_their_place() {
    let check = |shared: serde_json::Value, kind: ErrorKind, path: &str| {
        let e = demo_laid(serde_json::json!({ "planes": [], "shared": shared })).compute().unwrap_err();
        assert_eq!((e.kind(), e.path()), (kind, path), "{e}");
    };
    check(serde_json::json!([{ "planes": ["main south"] }]), ErrorKind::OutOfRange, "layout.shared[0].planes");
    check(serde_json::json!([{ "planes": ["main south", "nave"] }]), ErrorKind::Unknown, "layout.shared[0].planes[1]");
    check(
        serde_json::json!([{ "planes": ["main south", "main north"] }, { "planes": ["porch", "main north"] }]),
        ErrorKind::Conflict,
        "layout.shared[1].planes[1]",
    );
    check(serde_json::json!([{ "planes": ["porch", "main north"] }]), ErrorKind::Impossible, "layout.shared[0].planes[1]");
    let own = serde_json::json!({ "planes": [{ "plane": "main north", "start": "left" }], "shared": [{ "planes": ["main south", "main north"] }] });
    assert_eq!(demo_laid(own).compute().unwrap_err().kind(), ErrorKind::Conflict);
}

#[test]
fn a_list_and_its_order_say_the_same() {
    let list = serde_json::json!({ "direction": "left-to-right", "marks": "as-laid", "tolerance": "1/2 in", "pairs": { "kerf": "0 in" },
        "laps": { "limits": [{ "length": "12 ft", "governs": "lifting" }], "lap": "6 in", "arrangement": { "staggered": { "by": "12 in" } }, "least_piece": "24 in" },
        "bundles": { "mass": "400 lb", "count": 12 } });
    let p = packet_laid(serde_json::json!({ "limit": null, "list": list }));
    let panels: u64 = p.order.iter().filter(|l| l.group == super::OrderGroup::Panels).map(|l| l.count).sum();
    let pieces: usize = p.planes.iter().map(|l| l.listed.as_ref().unwrap().pieces.len()).sum();
    assert_eq!((panels, p.summary.pieces), (pieces as u64, pieces as u64));
    assert!(pieces > p.summary.panels && p.summary.longest <= Length::feet(12));
    for lay in &p.planes {
        let l = lay.listed.as_ref().unwrap();
        assert_eq!(lay.laid.coil, l.coil);
        assert!(l.groups.iter().zip(&lay.laid.groups).all(|(a, b)| a.mark == b.mark && a.mark.starts_with(&(lay.plane + 1).to_string())));
        assert!(l.bundles.iter().all(|b| b.mass.unwrap().get(MassUnit::Pound) <= 400.0 && b.pieces.len() <= 12));
        let saved: Sum = l.pairs.iter().map(|x| x.saved).sum();
        assert_eq!((l.groups.iter().map(|g| g.total).sum::<Sum>() - saved).length().unwrap(), l.coil.length);
    }
    // The demo's east slopes have a hip above and valleys below of both hands.
    let both = demo_laid(
        serde_json::json!({ "list": { "direction": "left-to-right", "laps": { "limits": [{ "length": "12 ft", "governs": "lifting" }], "lap": "6 in", "arrangement": "in-line", "least_piece": "0 in" } } }),
    );
    assert_eq!(both.compute().unwrap_err().path(), "layout.list.laps");
}

#[test]
fn the_order_s_coil_says_which_of_it_is_shared_by_two_pieces() {
    let job = demo_laid(serde_json::json!({ "list": { "direction": "left-to-right", "pairs": { "kerf": "0 in" } } }));
    let p = job.compute().unwrap();
    let spec = |pairs: usize| {
        let mut planes = p.planes.clone();
        let one = crate::layout::BlankPair { below: 0, above: 1, blank: Length::feet(20), saved: Length::inches(16) };
        planes[0].listed.as_mut().unwrap().pairs = vec![one; pairs];
        let order = super::order::Bought {
            job: &job,
            planes: &planes,
            trims: &p.trims,
            junctions: &p.junctions,
            copings: &super::copings::Copings::default(),
            kick_outs: &[],
            pipes: &[],
            end_caps: &[],
            cap_pieces: &[],
            clips: &p.clips,
            underlayment: None,
            built_up: &[],
        }
        .lines()
        .unwrap();
        order.into_iter().find(|l| l.group == super::OrderGroup::Coil).unwrap().spec
    };
    // Hips and valleys of the demo are of different pitches: no two cuts are alike, and nothing is said.
    assert!(p.planes.iter().all(|l| l.listed.as_ref().unwrap().pairs.is_empty()) && !spec(0).contains("blank"));
    assert_eq!(spec(1), format!("{}, 1 pair of skew pieces from one blank each, which saves 1'-4\"", spec(0)));
    assert_eq!(spec(3), format!("{}, 3 pairs of skew pieces from one blank each, which saves 4'-0\"", spec(0)));
}

#[test]
fn a_job_says_which_planes_are_too_shallow_for_its_panel() {
    // The demo's panel wants 3:12, and no plane is shallower: its porch has just that.
    let said = |p: &super::Packet| -> Vec<(String, String)> {
        let of = |c: &crate::record::Caution| (c.code().name.to_owned(), c.subject().to_owned());
        p.cautions.iter().filter(|c| c.code().name.contains("slope")).map(of).collect()
    };
    let with = |minimum: serde_json::Value, pitch: &str| {
        let mut job: serde_json::Value = serde_json::from_str(include_str!("../../examples/demo_job.json")).unwrap();
        job["roof"]["minimum_slope"] = minimum;
        job["roof"]["planes"][5]["shape"]["plan"]["pitch"] = pitch.into();
        super::Job::from_json(job.to_string().as_bytes()).unwrap().compute()
    };
    assert_eq!(said(&with("3:12".into(), "3:12").unwrap()), []);
    let own = with("3 1/2:12".into(), "3:12").unwrap();
    assert!(said(&own).contains(&("below-minimum-slope".into(), "roof.planes[5]".into())), "{:?}", said(&own));
    // A job without a minimum is held to the code's 1/4:12 for standing seams (IBC 1507.4.2), and says so.
    let unknown = ("slope-of-panel-unknown".to_owned(), "roof.minimum_slope".to_owned());
    assert_eq!(said(&with(serde_json::Value::Null, "3:12").unwrap()), std::slice::from_ref(&unknown));
}

#[test]
fn a_revised_job_renumbers_nothing() {
    let before = demo_laid(serde_json::json!({}));
    let now = demo_laid(
        serde_json::json!({ "rounding": { "both_finished": { "increment": "1 in", "rounding": "ceil" }, "one_finished": { "increment": "1 in", "rounding": "ceil" }, "field_cut": { "increment": "1 in", "rounding": "ceil" } } }),
    );
    let was = before.compute().unwrap();
    let first = &was.planes[0].laid.groups[0];
    let formed = vec![FormedRow { mark: first.mark.clone(), count: first.count }];
    let revised = JobRevision { before, now, formed, between_planes: false }.compute().unwrap();
    let known: Vec<&str> = was.planes.iter().flat_map(|p| &p.laid.groups).map(|g| g.mark.as_str()).collect();
    assert!(revised.revised.rows.iter().all(|r| (r.state == RowState::New) != known.contains(&r.mark.as_str())));
    assert!(revised.panels.iter().all(|c| c.before.is_some() && c.now.is_some() && c.before != c.now));
    assert!(!revised.panels.is_empty());
    // What was formed is as long as before or too short for the longer length: used as it is, or void.
    let used: u64 = revised.revised.rows.iter().flat_map(|r| &r.from_formed).map(|u| u.count).sum();
    let void: u64 = revised.revised.void.iter().map(|v| v.count).sum();
    assert_eq!(used + void, first.count);
}

//! The lists among the files of a packet.

#![cfg(feature = "serde")]

use super::{ListColumn, ListField, PanelRow, packet_files, panel_rows_csv};
use crate::error::ErrorKind;
use crate::job::test_jobs::{demo_laid, packet_laid, sharing};
use crate::job::{Job, Packet};
use crate::record::Calculation;
use crate::units::{Length, LengthFormat, Rounding, ShopRounding};

#[test]
fn the_packet_shows_what_the_job_asks_for_and_nothing_more() {
    let names = |p: &Packet| packet_files(p, None).unwrap().into_iter().map(|f| f.name).filter(|n| n.starts_with("lists/")).collect::<Vec<_>>();
    let plain = packet_laid(serde_json::json!({}));
    assert_eq!(names(&plain), ["lists/panels.csv", "lists/order.csv"]);
    assert!(plain.planes.iter().all(|l| l.listed.is_none() && l.marks.is_none()));
    let mut fields = serde_json::json!({
        "list": { "direction": "right-to-left", "bundles": { "count": 10 } },
        "marks": { "from": "right", "creep": { "each": "1/32 in", "every": 10, "meets_within": "1/8 in" } },
        "columns": [{ "heading": "=n", "field": "count" }, { "heading": "mm", "field": { "order-length": "mm.0 ceil" } }, { "heading": "edge", "field": "edge" }],
    });
    fields.as_object_mut().unwrap().append(sharing(&["main south", "porch"]).as_object_mut().unwrap());
    let p = packet_laid(fields);
    assert_eq!(names(&p), ["lists/panels.csv", "lists/panels.json", "lists/pieces.csv", "lists/seam-marks.csv", "lists/creep-checks.csv", "lists/order.csv"]);
    let files = packet_files(&p, None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap().bytes.clone()).unwrap();
    assert!(text("lists/panels.csv").starts_with("'=n,mm,edge\r\n"));
    let json: serde_json::Value = serde_json::from_str(&text("lists/panels.json")).unwrap();
    assert_eq!(json.as_array().unwrap().len(), p.planes.iter().map(|l| l.laid.groups.len()).sum::<usize>());
    let pieces: usize = p.planes.iter().map(|l| l.listed.as_ref().unwrap().pieces.len()).sum();
    assert_eq!(text("lists/pieces.csv").lines().count(), pieces + 1);
    let seams: usize = p.planes.iter().map(|l| l.marks.as_ref().unwrap().seams.len()).sum();
    assert_eq!(text("lists/seam-marks.csv").lines().count(), seams + 1);
    // Only planes that share their seams can part: ten panels of 1/32 in on both are 5/8 in.
    let parting: Vec<_> = p.cautions.iter().filter(|c| c.code().name == "creep-parts-seams").map(|c| c.subject().to_owned()).collect();
    assert!(parting.iter().all(|s| s.starts_with("planes.main south") || s.starts_with("planes.porch")) && parting.len() >= 2, "{parting:?}");
    let e = demo_laid(serde_json::json!({ "columns": [{ "heading": "b", "field": "bundle" }] })).compute().and_then(|p| packet_files(&p, None)).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "columns[0].field"));
    let twice = serde_json::json!({ "columns": [{ "heading": "b", "field": "mark" }, { "heading": "b", "field": "mark" }] });
    assert_eq!(demo_laid(twice).compute().unwrap_err().path(), "layout.columns[1].heading");
}

#[test]
fn the_list_of_pieces_has_the_lengths_that_the_crew_measures() {
    let p = packet_laid(serde_json::json!({ "list": { "direction": "left-to-right" } }));
    let inch = LengthFormat::parse("in.4").unwrap();
    let column = |heading: &'static str, field| ListColumn { heading: heading.into(), field };
    let columns = [
        column("no", ListField::Panel),
        column("right", ListField::RightSeam(inch)),
        column("left", ListField::LeftSeam(inch)),
        column("mark", ListField::Mark),
    ];
    let lay = p.plane("east hip").unwrap();
    let csv = String::from_utf8(panel_rows_csv(PanelRow::pieces(lay), &columns).unwrap()).unwrap();
    let rows: Vec<Vec<&str>> = csv.lines().map(|l| l.split(',').collect()).collect();
    assert_eq!(rows[0], ["no", "right", "left", "mark"]);
    let shown = |l: Option<Length>| l.map_or(String::new(), |l| inch.string(l).unwrap());
    let mut skew = 0;
    for (row, piece) in rows.iter().skip(1).zip(&lay.listed.as_ref().unwrap().pieces) {
        let panel = &lay.laid.panels[piece.panel];
        let plain = |cell: &str| cell.trim_matches('"').replace("\"\"", "\"");
        assert_eq!((plain(row[1]), plain(row[2])), (shown(panel.right_length), shown(panel.left_length)));
        skew += usize::from(panel.right_length != panel.left_length);
    }
    assert_eq!(rows.len(), 1 + lay.laid.panels.len());
    assert!(skew > 10);
}

#[test]
fn the_annexe_has_sheets_for_its_copings_and_its_pipe() {
    let json = include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json"));
    let (packet, worksheet) = Job::from_json(json).unwrap().explain().unwrap();
    let files = packet_files(&packet, Some(&worksheet)).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("{name}")).bytes.clone()).unwrap();
    let coping = text("crew/coping-1.html");
    for said in ["the wall&#39;s top edge", "coping corner 1, outside corner with coping 2", "joint plate", "end cap", "Gap at each: 1/4"] {
        assert!(coping.contains(said) || coping.contains(&said.replace("&#39;", "'")), "{said}");
    }
    let flue = text("crew/pipe-boiler-flue.html");
    for said in ["panel 10", "the left seam of the panel", "boot with a round base", "No screw reaches the deck"] {
        assert!(flue.contains(said), "{said}");
    }
    // The ends of ordinary trims too: which cap, of which hand, and where a wall stands across the end instead.
    let (headwall, rake) = (text("crew/headwall-1.html"), text("crew/rake-1.html"));
    let cap = |of: &str| {
        let cap = packet.end_caps.iter().find(|c| c.name == of).unwrap();
        (cap.piece.clone().unwrap(), cap.mark.clone())
    };
    let ((piece, mark), (rake_piece, rake_mark)) = (cap("headwall 1"), cap("rake 1"));
    assert!(headwall.contains("turned up against the wall") && headwall.contains(&format!("end cap {piece} to {mark}, opposite hand")));
    assert!(text(&format!("trims/{piece}-end-cap.svg")).contains("tab 1"));
    assert!(rake.contains(&format!("{rake_piece} end cap to {rake_mark} rake trim, opposite hand")) && rake.contains("continuous cleat, butted, gap 1/4"));
    let plan = text("plan.svg");
    assert!(plan.contains(">coping 1<") && plan.contains(">boiler flue<") && plan.contains("<circle"));
    assert!(text("office/lines/coping-1.md").contains("gap when laid") && text("office/lines/boiler-flue.md").contains("hole"));
}

#[test]
fn a_joint_along_the_panels_has_its_sheet_and_its_place_on_the_plan() {
    let json = include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/ropewalk_job.json"));
    let files = packet_files(&Job::from_json(json).unwrap().compute().unwrap(), None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("{name}")).bytes.clone()).unwrap();
    let sheet = text("crew/expansion-joint-1.html");
    for said in ["south west to south east", "joint cap", "2 3/16&quot; from joint", "panel edge", "under the sliding cleat", "curb, outer face"] {
        assert!(sheet.contains(said) || sheet.contains(&said.replace("&quot;", "\"")), "{said}");
    }
    assert!(!sheet.contains("laps of the joint cleat"), "cleats butt");
    assert!(text("plan.svg").contains(">expansion joint<"));
    // 122 ft over 90 degF both ways at 6.7e-6 /degF: 0.883 in, beside the 4 in of a corner.
    assert!(sheet.contains("closes by 7/8") && sheet.contains("in the cold from metal at 70 degF"));
    let (west, east) = (text("crew/eave-1.html"), text("crew/eave-2.html"));
    assert!(west.contains("At expansion joint 1 run the trim 4 7/8") && west.contains("on over that of eave 2, loose"));
    assert!(east.contains("under that of eave 1: no fastener in its last 5 3/4"));
}

#[test]
fn a_joint_across_the_panels_has_its_sheet_and_its_packing_in_the_order() {
    let json = include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/maltings_job.json"));
    let files = packet_files(&Job::from_json(json).unwrap().compute().unwrap(), None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap_or_else(|| panic!("{name}")).bytes.clone()).unwrap();
    let sheet = text("crew/expansion-joint-across-1.html");
    for said in ["south lower to south upper", "deck built up by 1 15/16", "panel nose", "Build the deck above the joint up", "The joint closes by 5/16"] {
        assert!(sheet.contains(said), "{said}");
    }
    assert!(text("plan.svg").contains(">expansion joint across<"));
    assert!(text("lists/order.csv").contains("packing over the deck"));
    // The ridge stands on packing on both sides, and a rake above the joint higher than the one below it.
    assert_eq!(text("crew/ridge-1.html").matches("built-up deck").count(), 2);
    assert!(text("crew/rake-3.html").contains("It lies 1 15/16") && text("crew/rake-1.html").contains("so that both slide"));
}

/// 17/32 in lies half way between two sixteenths: the demo's tape reads 9/16, and no paper says 1/2.
#[test]
fn a_tie_reads_alike_in_the_drawing_on_the_plan_and_in_the_table() {
    let mut job = demo_laid(serde_json::json!({}));
    for kind in &mut job.junctions.kinds {
        if let crate::job::Detail::Eave(eave) = kind {
            eave.panel.overhang = Length::parse("1 17/32\"").unwrap();
        }
    }
    assert_eq!(job.paperwork.small().to_string(), "in/16");
    let packet = job.compute().unwrap();
    let files = packet_files(&packet, None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap().bytes.clone()).unwrap();
    let (section, sheet) = (text("junctions/eave-1.svg"), text("crew/eave-1.html"));
    let letter =
        section.split("hook strip, lower edge").next().and_then(|s| s.rsplit("<text").nth(1)).and_then(|t| t.split('>').nth(1)?.chars().next()).unwrap();
    for (what, shown, text) in [
        ("the section's figure", &section, format!("{letter}  1 9/16&quot;")),
        ("the line's plan", &sheet, format!("{letter} 1 9/16%26quot%3B")),
        ("the table", &sheet, "1 9/16&quot; down".to_owned()),
    ] {
        assert!(shown.contains(&text), "{what}: {text}");
    }
    // A tape that goes to the even step reads 1 1/2 in, and so do they all.
    job.supplies.crew.tape = ShopRounding::new(Length::inches_64(4), Rounding::HalfEven).unwrap();
    let files = packet_files(&job.compute().unwrap(), None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap().bytes.clone()).unwrap();
    assert!(text("junctions/eave-1.svg").contains(&format!("{letter}  1 1/2&quot;")) && text("crew/eave-1.html").contains("1 1/2&quot; down"));
}

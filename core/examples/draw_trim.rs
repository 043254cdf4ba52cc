//! Draws the guide's six trims, and one trim for each kind of edge, into the folder given as the argument: each one's section and flat, as SVG and as DXF.

#![allow(clippy::print_stdout, reason = "the list of files is what the example is for")]

use seamwright::error::Error;
use seamwright::export::{DrawingUnit, GaugeEdge, PaperUnit, TrimDrawing, worksheet_markdown};
use seamwright::record::Calculation;
use seamwright::trim::{BendRule, Direction, Edge, Face, FlatPattern, NeutralFactor, Profile, ProfileBuilder};
use seamwright::units::{Angle, BendAngle, Length, LengthFormat};
use std::path::Path;

fn bend(degrees: f64) -> Result<BendAngle, Error> {
    BendAngle::from_flat(Angle::degrees_from(degrees)?)
}

/// A length in inches.
fn inches(text: &str) -> Result<Length, Error> {
    Length::parse(text)
}

fn sheet() -> ProfileBuilder {
    Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(30))
}

/// The six trims that the guide works by hand, as they are installed.
fn trims() -> Result<Vec<(&'static str, Profile, Angle)>, Error> {
    let closed = |direction| Ok::<_, Error>(Edge::closed_hem(inches("1/2\"")?, direction));
    let drip = sheet().leg("deck flange", inches("4\"")?).down(BendAngle::SQUARE).leg("face", inches("3 1/4\"")?).up(bend(30.0)?);
    let drip = drip.leg("kick", inches("3/4\"")?).end(closed(Direction::Down)?).build()?;
    let hem = || Ok::<_, Error>(Edge::open_hem(inches("1/2\"")?, inches("5/32\"")?, Direction::Down));
    let ridge = sheet().start(hem()?).leg("left turn-down", inches("1 1/2\"")?).down(bend(71.57)?).leg("left flange", inches("6\"")?).down(bend(36.86)?);
    let ridge = ridge.leg("right flange", inches("6\"")?).down(bend(71.57)?).leg("right turn-down", inches("1 1/2\"")?).end(hem()?).build()?;
    let valley = sheet().start(closed(Direction::Up)?).leg("left", inches("12\"")?).up(bend(36.87)?).leg("right", inches("12\"")?);
    let valley = valley.end(closed(Direction::Up)?).build()?;
    let z = sheet()
        .leg("foot", inches("1 1/2\"")?)
        .up(BendAngle::SQUARE)
        .leg("web", inches("2\"")?)
        .down(BendAngle::SQUARE)
        .leg("top", inches("1 1/2\"")?)
        .build()?;
    let gutter = Profile::builder(Length::micrometres(700))
        .painted(Face::Lower)
        .inside_radius(Length::micrometres(2_000))
        .start(Edge::closed_hem(Length::micrometres(15_000), Direction::Up))
        .leg("front bead", Length::micrometres(25_000))
        .down(BendAngle::SQUARE)
        .leg("front", Length::micrometres(90_000))
        .up(BendAngle::SQUARE)
        .leg("sole", Length::micrometres(120_000))
        .up(BendAngle::SQUARE)
        .leg("back", Length::micrometres(130_000))
        .down(bend(60.0)?)
        .leg("apron", Length::micrometres(60_000))
        .build()?;
    let coping = sheet().start(closed(Direction::Down)?).leg("outer drip", inches("2\"")?).down(BendAngle::SQUARE).leg("top", inches("8\"")?);
    let coping = coping.down(BendAngle::SQUARE).leg("inner drip", inches("2\"")?).end(closed(Direction::Down)?).build()?;
    let turned = [Angle::ZERO, Angle::SQUARE, Angle::degrees_from(-18.435)?, Angle::ZERO, Angle::ZERO, Angle::SQUARE];
    let named = [("eave drip", drip), ("ridge cap", ridge), ("valley pan", valley), ("z section", z), ("box gutter", gutter), ("coping", coping)];
    Ok(named.into_iter().zip(turned).map(|((name, profile), turned)| (name, profile, turned)).collect())
}

/// Each kind of edge, and an offset bend, at a wide leg, where the sheet is too thin to be drawn true, and at a short one of heavier sheet.
fn edges() -> Result<Vec<(&'static str, Profile, Angle)>, Error> {
    let (up, down) = (Direction::Up, Direction::Down);
    let teardrop = |way| Ok::<_, Error>(Edge::teardrop_hem(Length::mils(60), inches("3/8\"")?, Length::mils(20), way));
    let double = |way| Ok::<_, Error>(Edge::double_hem(inches("3/8\"")?, way));
    let wired = |way| Ok::<_, Error>(Edge::wired_edge(inches("1/8\"")?, way));
    let wide = |edge: Edge| sheet().leg("flange", inches("8\"")?).down(BendAngle::SQUARE).leg("face", inches("5\"")?).end(edge).build();
    let short = |edge: Edge| {
        let heavy = Profile::builder(Length::mils(50)).painted(Face::Lower).inside_radius(Length::mils(60)).start(edge);
        heavy.leg("face", inches("1 1/4\"")?).up(BendAngle::SQUARE).leg("flange", inches("2\"")?).build()
    };
    let joggle = |b: ProfileBuilder, lap: &str, depth, degrees, rest: &str| {
        b.leg("lap", inches(lap)?).joggle("step", depth, bend(degrees)?, up).leg("apron", inches(rest)?).build()
    };
    let heavy = Profile::builder(Length::mils(50)).painted(Face::Lower).inside_radius(Length::mils(60));
    Ok(vec![
        ("teardrop wide", wide(teardrop(up)?)?, Angle::ZERO),
        ("teardrop heavy", short(teardrop(down)?)?, Angle::ZERO),
        ("double hem wide", wide(double(up)?)?, Angle::ZERO),
        ("double hem heavy", short(double(down)?)?, Angle::ZERO),
        ("wired edge wide", wide(wired(up)?)?, Angle::ZERO),
        ("wired edge heavy", short(wired(down)?)?, Angle::ZERO),
        ("offset bend wide", joggle(sheet(), "6\"", Length::mils(125), 45.0, "8\"")?, Angle::ZERO),
        ("offset bend heavy", joggle(heavy, "1\"", Length::mils(250), 60.0, "1 1/2\"")?, Angle::ZERO),
    ])
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    let write = |name: String, bytes: &[u8]| -> std::io::Result<()> {
        println!("{name}");
        std::fs::write(Path::new(&folder).join(name), bytes)
    };
    let rule = BendRule::neutral_axis(NeutralFactor::new(0.4)?);
    for (name, profile, turned) in trims()?.into_iter().chain(edges()?) {
        let metric = name == "box gutter";
        let (format, paper, unit, gauge) = if metric {
            ("mm.1", PaperUnit::Millimetre, DrawingUnit::Millimetre, GaugeEdge::End)
        } else {
            ("in/16", PaperUnit::Inch, DrawingUnit::Inch, GaugeEdge::Start)
        };
        let drawing = TrimDrawing::new(name, &profile, &rule, LengthFormat::parse(format)?)?.paper(paper).turned(turned).gauged_from(gauge);
        let file = name.replace(' ', "-");
        write(format!("{file}-section.svg"), drawing.section_svg()?.as_bytes())?;
        write(format!("{file}-flat.svg"), drawing.flat_svg()?.as_bytes())?;
        write(format!("{file}-section.dxf"), &drawing.section_dxf(unit))?;
        write(format!("{file}-flat.dxf"), &drawing.flat_dxf(unit, Length::feet(10))?)?;
        let (_, sheet) = FlatPattern { profile: profile.clone(), rule: rule.clone() }.explain()?;
        write(format!("{file}-flat.md"), worksheet_markdown(&sheet).as_bytes())?;
    }
    Ok(())
}

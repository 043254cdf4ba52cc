//! Draws three trims into the folder given as the argument: each one's section and flat, as SVG and as DXF.

#![allow(clippy::print_stdout, reason = "the list of files is what the example is for")]

use seamwright::error::Error;
use seamwright::export::{DrawingUnit, GaugeEdge, PaperUnit, TrimDrawing, worksheet_markdown};
use seamwright::record::Calculation;
use seamwright::trim::{BendRule, Direction, Edge, Face, FlatPattern, NeutralFactor, Profile};
use seamwright::units::{Angle, BendAngle, Length, LengthFormat};
use std::path::Path;

fn bend(degrees: f64) -> Result<BendAngle, Error> {
    BendAngle::from_flat(Angle::degrees_from(degrees)?)
}

fn trims() -> Result<Vec<(&'static str, Profile, Angle)>, Error> {
    let drip = Profile::builder(Length::mils(24))
        .painted(Face::Upper)
        .inside_radius(Length::mils(30))
        .leg("deck flange", Length::parse("4\"")?)
        .down(BendAngle::SQUARE)
        .leg("face", Length::parse("3 1/4\"")?)
        .up(bend(30.0)?)
        .leg("kick", Length::parse("3/4\"")?)
        .end(Edge::closed_hem(Length::parse("1/2\"")?, Direction::Down))
        .build()?;
    let ridge = Profile::builder(Length::mils(24))
        .painted(Face::Upper)
        .inside_radius(Length::mils(30))
        .start(Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down))
        .leg("left turn-down", Length::parse("1 1/2\"")?)
        .down(bend(71.57)?)
        .leg("left flange", Length::parse("6\"")?)
        .down(bend(36.86)?)
        .leg("right flange", Length::parse("6\"")?)
        .down(bend(71.57)?)
        .leg("right turn-down", Length::parse("1 1/2\"")?)
        .end(Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down))
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
    Ok(vec![("eave drip", drip, Angle::ZERO), ("ridge cap", ridge, Angle::SQUARE), ("box gutter", gutter, Angle::ZERO)])
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    let write = |name: String, bytes: &[u8]| -> std::io::Result<()> {
        println!("{name}");
        std::fs::write(Path::new(&folder).join(name), bytes)
    };
    let rule = BendRule::neutral_axis(NeutralFactor::new(0.4)?);
    for (name, profile, turned) in trims()? {
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

//! Writes the measuring sheet of a rough sketch, a hip roof with a chimney and a lower porch beside it, into the file given as the argument.

use seamwright::error::Error;
use seamwright::export::measuring_sheet_html;
use seamwright::job::Paper;
use seamwright::record::Calculation;
use seamwright::roof::{Opening, Point, SketchedPlane, SketchedRoof, SketchedWall};
use seamwright::units::{Angle, Length, LengthFormat};

fn sheet() -> Result<Vec<u8>, Error> {
    let ring = |corners: &[(i16, i16)]| corners.iter().map(|&(x, y)| Point::new(Length::feet(x), Length::feet(y))).collect();
    let plane = |name: &str, falls: Angle, outer: &[(i16, i16)]| SketchedPlane { down_slope: Some(falls), ..SketchedPlane::new(name, ring(outer)) };
    let [south, east, north, west] = [Angle::parse("270 deg")?, Angle::ZERO, Angle::parse("90 deg")?, Angle::parse("180 deg")?];
    let chimney = Opening { name: "chimney".into(), ring: ring(&[(21, 5), (25, 5), (25, 8), (21, 8)]) };
    let planes = vec![
        SketchedPlane { holes: vec![chimney], ..plane("south", south, &[(0, 0), (40, 0), (30, 10), (10, 10)]) },
        plane("east", east, &[(40, 0), (40, 20), (30, 10)]),
        plane("north", north, &[(40, 20), (0, 20), (10, 10), (30, 10)]),
        plane("west", west, &[(0, 20), (0, 0), (10, 10)]),
        plane("porch", south, &[(8, -14), (24, -14), (24, -6), (32, -6), (32, 0), (8, 0)]),
    ];
    // The porch stands lower, against the wall below the south eave.
    let wall = SketchedWall { from: Point::default(), to: Point::new(Length::feet(40), Length::ZERO) };
    let sheet = SketchedRoof { walls: vec![wall], ..SketchedRoof::new(planes) }.compute()?;
    measuring_sheet_html(&sheet, "a house by the lake", Paper::Letter, LengthFormat::parse("ft-in/16")?)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args().nth(1).ok_or("give the file to write")?;
    std::fs::write(file, sheet()?)?;
    Ok(())
}

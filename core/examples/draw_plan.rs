//! Draws the plan of a hip roof with its panels into the file given as the argument.

use seamwright::error::Error;
use seamwright::export::{PaperUnit, roof_plan_svg};
use seamwright::layout::{EdgeUse, LaidPlane, Layout, Start};
use seamwright::panel::{Panel, PanelEnd, Seam};
use seamwright::pitch::Pitch;
use seamwright::record::Calculation;
use seamwright::roof::{Plane, PlaneInput, Point, RoofInput, Shape, Vertex};
use seamwright::units::{Angle, Length, LengthFormat};

fn plan() -> Result<String, Error> {
    let plane = |name: &str, outer: &[(i16, i16)], fall: f64| -> Result<PlaneInput, Error> {
        let corner = |&(x, y): &(i16, i16)| Point::new(Length::feet(x), Length::feet(y));
        let (x, y) = outer.first().copied().unwrap_or_default();
        Ok(PlaneInput {
            name: name.into(),
            shape: Shape::Plan {
                outer: outer.iter().map(corner).collect(),
                holes: vec![],
                pitch: Pitch::parse("6:12")?,
                down_slope: Angle::degrees_from(fall)?,
                anchor: Vertex::new(Length::feet(x), Length::feet(y), Length::feet(9)),
            },
        })
    };
    let roof = RoofInput::new(vec![
        plane("south", &[(0, 0), (40, 0), (30, 10), (10, 10)], 270.0)?,
        plane("east", &[(40, 0), (40, 20), (30, 10)], 0.0)?,
        plane("north", &[(40, 20), (0, 20), (10, 10), (30, 10)], 90.0)?,
        plane("west", &[(0, 20), (0, 0), (10, 10)], 180.0)?,
    ])
    .compute()?;
    let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
    let lay = |plane: &Plane| -> Result<LaidPlane, Error> {
        let end = |_: &_| EdgeUse::End(PanelEnd::hold_back(Length::inches(1)));
        Layout::new(plane.outline().clone(), panel, Start::Left, end)?.compute()
    };
    let laid: Vec<LaidPlane> = roof.planes().iter().map(lay).collect::<Result<_, _>>()?;
    let shown: Vec<Option<&LaidPlane>> = laid.iter().map(Some).collect();
    roof_plan_svg("hip house", &roof, &shown, Length::micrometres(240_000), PaperUnit::Millimetre, LengthFormat::parse("ft-in/16")?)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args().nth(1).ok_or("give the file to write")?;
    std::fs::write(file, plan()?)?;
    Ok(())
}

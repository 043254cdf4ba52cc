//! Draws the plan of roofs with their panels: the files of the roofs, each a `roof.roof-input` as in `roofs`, then the folder for the drawings.
//!
//!     cargo run --example draw_plan -- core/examples/roofs/*.json target/plans

use seamwright::error::Error;
use seamwright::export::{PaperUnit, roof_plan_svg};
use seamwright::layout::{EdgeUse, LaidPlane, Layout, Start};
use seamwright::panel::{Panel, PanelEnd, Seam};
use seamwright::record::Calculation;
use seamwright::roof::{Plane, RoofInput};
use seamwright::units::{Length, LengthFormat};
use std::path::Path;

fn plan(name: &str, json: &[u8]) -> Result<String, Error> {
    let roof = RoofInput::from_json(json)?.compute()?;
    let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
    let lay = |plane: &Plane| -> Result<LaidPlane, Error> {
        let end = |_: &_| EdgeUse::End(PanelEnd::hold_back(Length::inches(1)));
        Layout::new(plane.outline().clone(), panel, Start::CentrePanel, end)?.compute()
    };
    let laid: Vec<LaidPlane> = roof.planes().iter().map(lay).collect::<Result<_, _>>()?;
    let shown: Vec<Option<&LaidPlane>> = laid.iter().map(Some).collect();
    roof_plan_svg(name, &roof, &shown, Length::micrometres(240_000), PaperUnit::Millimetre, LengthFormat::parse("ft-in/16")?)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut files: Vec<String> = std::env::args().skip(1).collect();
    let folder = files.pop().ok_or("give the files of the roofs and the folder for the drawings")?;
    std::fs::create_dir_all(&folder)?;
    for file in &files {
        let stem = Path::new(file).file_stem().and_then(|s| s.to_str()).ok_or("a file of a roof has no name")?;
        let svg = plan(&stem.replace('-', " "), &std::fs::read(file)?).map_err(|e| format!("{file}: {e:?}"))?;
        std::fs::write(Path::new(&folder).join(format!("{stem}.svg")), svg)?;
    }
    Ok(())
}

//! Drawings of the guide that are no sections: the end of a pan, the blank of a tapered one, a cricket from above.

use crate::junction_samples::Sample;
use seamwright::assembly::{PanEnd, PanEndOn, PanEndSide};
use seamwright::error::{Error, ErrorKind};
use seamwright::export::{BlankDrawing, PanPlan, drawing_json};
use seamwright::junction::{BeadSize, Side, Solved};
use seamwright::pitch::{Corner, Pitch};
use seamwright::practice::{assembly as assembly_practice, junction as practice};
use seamwright::record::Calculation;
use seamwright::roof::{Cricket, CricketShape};
use seamwright::stock::LapMode;
use seamwright::trim::{BendRule, HeldLine, NeutralFactor, Part, Point, TaperedRun};
use seamwright::units::{Angle, Length, LengthFormat};
use serde_json::{Value, json};

/// A drawing with what gave it.
pub(crate) struct Plan {
    pub(crate) name: &'static str,
    /// The calculation by its name and its document; none for a second look at what another page gives.
    pub(crate) given: Option<(&'static str, Value)>,
    pub(crate) svg: String,
}

fn written<C: serde::Serialize>(input: &C) -> Result<Value, Error> {
    serde_json::to_value(input).map_err(|e| Error::new(ErrorKind::Internal, "a document that cannot be written").value_of(e))
}

fn format() -> Result<LengthFormat, Error> {
    LengthFormat::parse("in/16")
}

fn inch(text: &str) -> Result<Length, Error> {
    Length::parse(&format!("{text}\""))
}

fn solved<'a>(samples: &'a [Sample], name: &str) -> Result<&'a Solved, Error> {
    samples.iter().find(|s| s.name == name).map(|s| &s.solved).ok_or_else(|| Error::new(ErrorKind::Unknown, "no such sample").value_of(name))
}

/// A leg of the pan of this section, its line leaving the valley at this angle.
fn leg(solved: &Solved, side: Side, on: PanEndOn, angle: f64, (beyond, fold): (Length, Length)) -> Result<PanEndSide, Error> {
    let place = |name: &str| {
        let line = solved.lines.iter().find(|l| l.side == side && l.name == name);
        line.map(|l| l.from_line).ok_or_else(|| Error::new(ErrorKind::Missing, "no such line").value_of(name))
    };
    Ok(PanEndSide { on, angle: Angle::degrees_from(angle)?, centre: place("pan centreline")?, edge: place("pan edge")?, beyond, fold, grows: None })
}

fn pan_end(name: &'static str, solved: &Solved, first: PanEndSide, second: PanEndSide) -> Result<Plan, Error> {
    let bead = BeadSize { width: practice::VALLEY_END_BEAD, depth: practice::VALLEY_END_BEAD };
    let asked = PanEnd { first, second, beads: practice::VALLEY_END_BEADS, bead };
    let cut = asked.compute()?;
    let svg = PanPlan { title: name, solved, end: Some(&cut), first_on_left: true, format: format()? }.svg()?;
    Ok(Plan { name, given: Some(("assembly.pan-end", written(&asked)?)), svg })
}

/// The roof of the guide's cricket, from above.
fn cricket(asked: &Cricket) -> Result<Plan, Error> {
    let at = |x: i32, y: i32| json!({"x": format!("{x} in"), "y": format!("{y} in")});
    let outer = [at(0, 0), at(168, 0), at(168, 144), at(0, 144)];
    let hole = [at(60, 36), at(108, 36), at(108, 60), at(60, 60)];
    let plan = json!({"outer": outer, "holes": [{"name": "curb", "ring": hole}], "pitch": asked.roof, "down_slope": "270 deg",
        "anchor": {"x": "0 in", "y": "0 in", "z": "120 in"}});
    let roof = json!({"planes": [{"name": "roof", "shape": {"plan": plan}}], "crickets": [{"plane": "roof", "hole": "curb", "shape": written(&asked.shape)?}]});
    let drawing = json!({"name": "cricket", "roof": roof, "figure": "150 mm", "paper": "millimetre", "lengths": "in/16"});
    Ok(Plan { name: "cricket", given: Some(("roof.cricket", written(asked)?)), svg: drawing_json("roof.roof-plan", &drawing.to_string())? })
}

/// The lowest piece of the pan of the guide's widening valley.
fn blank(solved: &Solved) -> Result<Plan, Error> {
    let (Some(top), Some(foot)) = (solved.trims.first(), solved.lower_trims.first()) else {
        return Err(Error::new(ErrorKind::Missing, "no pan that tapers"));
    };
    let asked = TaperedRun {
        near: foot.profile.clone(),
        far: top.profile.clone(),
        run: Length::feet(24),
        longest: Length::feet(10),
        lap: assembly_practice::VALLEY_LAP,
        mode: LapMode::FullThenRest,
        least_piece: Length::ZERO,
        rule: BendRule::neutral_axis(NeutralFactor::new(0.44)?),
        held: HeldLine::Bend(Part::Body(2)),
        offset: Point::ORIGIN,
        tolerance: Length::micrometres(10),
    };
    let made = asked.compute()?;
    let piece = made.pieces.first().ok_or_else(|| Error::new(ErrorKind::Missing, "no piece"))?;
    let svg = BlankDrawing::of_taper("valley pan, lowest piece", &piece.trim, format()?).svg()?;
    Ok(Plan { name: "blank of a tapered valley pan", given: Some(("trim.tapered-run", written(&asked)?)), svg })
}

pub(crate) fn all(samples: &[Sample]) -> Result<Vec<Plan>, Error> {
    let valley = solved(samples, "valley with receiver folds")?;
    let corner = Corner { first: Pitch::parse("6:12")?, second: Pitch::parse("8:12")?, plan: Angle::SQUARE }.compute()?;
    let over = (inch("1 1/2")?, inch("1")?);
    let eave = |side, meeting: Angle| leg(valley, side, PanEndOn::Eave, 90.0 + meeting.degrees().abs(), over);
    let eaves = (eave(Side::First, corner.first.meeting())?, eave(Side::Second, corner.second.meeting())?);

    let asked = Cricket { roof: Pitch::parse("4:12")?, width: inch("48")?, shape: CricketShape::of(Pitch::parse("8:12")?) };
    let figures = asked.compute()?;
    let section = solved(samples, "valley of a cricket")?;
    let none = (Length::ZERO, Length::ZERO);
    // Cut level in the roof, 8 in down the slope from the curb's corner; along the curb in the cricket, whose seams run up beside it.
    let run = (assembly_practice::VALLEY_CORNER_ALLOWANCE, Length::ZERO);
    let roof = leg(section, Side::First, PanEndOn::Roof, 90.0 + figures.roof_meeting.degrees(), run)?;
    let small = leg(section, Side::Second, PanEndOn::Against, figures.cricket_meeting.degrees(), none)?;

    let widening = solved(samples, "valley that widens")?;
    let from_above = PanPlan { title: "valley that widens", solved: widening, end: None, first_on_left: true, format: format()? }.svg()?;
    Ok(vec![
        pan_end("valley over two eaves", valley, eaves.0, eaves.1)?,
        pan_end("valley that dies into a plane", section, roof, small)?,
        cricket(&asked)?,
        blank(widening)?,
        Plan { name: "valley that widens, from above", given: None, svg: from_above },
    ])
}

//! Drawings of the guide that are no sections: the end of a pan, the blanks of a tapered one and of a kick-out, a cricket and the corners of a roof from above.

use crate::junction_samples::Sample;
use seamwright::assembly::{
    Corner as RoofCorner, CornerAllowances, CornerLine, CornerPair, CornerPlan, CornerSchedule, LineStands, PairRule, PanEnd, PanEndOn, PanEndSide,
};
use seamwright::error::{Error, ErrorKind};
use seamwright::export::{BlankDrawing, PanPlan, drawing_json};
use seamwright::junction::{BeadSize, Side, Solved};
use seamwright::pitch::{Corner, Pitch};
use seamwright::practice::{assembly as assembly_practice, junction as practice};
use seamwright::record::Calculation;
use seamwright::roof::{self, Cricket, CricketShape, PlaneInput, RoofInput, Shape, Vertex, Wall};
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
    /// What the calculation says, as Markdown under the drawing.
    pub(crate) shows: String,
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
    Ok(Plan { name, given: Some(("assembly.pan-end", written(&asked)?)), svg, shows: String::new() })
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
    Ok(Plan {
        name: "cricket",
        given: Some(("roof.cricket", written(asked)?)),
        svg: drawing_json("roof.roof-plan", &drawing.to_string())?,
        shows: String::new(),
    })
}

/// A cottage against a tower's wall: a hip end, a gabled wing, and a porch under the north eave.
fn cottage() -> Result<RoofInput, Error> {
    let steep = Pitch::parse("9:12")?;
    let at = |(x, y): (i16, i16)| roof::Point::new(Length::inches(x), Length::inches(y));
    let plane = |name: &str, pitch: Pitch, down: i32, foot: (i16, i16), outer: &[(i16, i16)]| {
        let anchor = Vertex::new(Length::inches(foot.0), Length::inches(foot.1), Length::inches(120));
        let outer = outer.iter().copied().map(at).collect();
        Ok::<_, Error>(PlaneInput {
            name: name.into(),
            shape: Shape::Plan { outer, holes: vec![], pitch, down_slope: Angle::degrees_from(down.into())?, anchor },
        })
    };
    let mut roof = RoofInput::new(vec![
        plane("south", steep, 270, (0, 0), &[(0, 0), (168, 0), (264, 96), (360, 0), (528, 0), (384, 144), (0, 144)])?,
        plane("east", steep, 0, (528, 0), &[(528, 0), (528, 288), (384, 144)])?,
        plane("north", steep, 90, (0, 288), &[(0, 144), (384, 144), (528, 288), (0, 288)])?,
        plane("wing west", steep, 180, (168, 0), &[(168, -96), (264, -96), (264, 96), (168, 0)])?,
        plane("wing east", steep, 0, (360, 0), &[(360, -96), (360, 0), (264, 96), (264, -96)])?,
        // Its top is the north plane's foot, 40 in over its own.
        plane("porch", Pitch::parse("5:12")?, 90, (72, 288), &[(72, 288), (216, 288), (216, 384), (72, 384)])?,
    ]);
    roof.walls = vec![Wall::new("tower", at((0, 0)), at((0, 288)))];
    Ok(roof)
}

/// How a trim meets the others at its corner.
fn meets(corner: &RoofCorner, here: &CornerLine) -> String {
    let is_square = |a: Angle| (a.degrees() - 90.0).abs() < 1e-9;
    let angle = |p: &CornerPair| match (p.cut, p.cut_plan) {
        (Some(cut), plan) if is_square(cut) && plan.is_none_or(is_square) => ", square".to_owned(),
        (Some(cut), Some(plan)) => format!(" at {:.1}\u{b0}, {:.1}\u{b0} from above", cut.degrees(), plan.degrees()),
        (Some(cut), None) => format!(" at {:.1}\u{b0}", cut.degrees()),
        _ => String::new(),
    };
    let own = corner.pairs.iter().filter(|p| p.first == here.name || p.second == here.name);
    let said = own.map(|p| {
        let other = if p.first == here.name { &p.second } else { &p.first };
        match &p.rule {
            PairRule::Laps { over, .. } if *over == here.name => format!("over {other}{}", angle(p)),
            PairRule::Laps { .. } => format!("under {other}"),
            PairRule::Mitred => format!("mitred to {other}{}", angle(p)),
            PairRule::RunsOn | PairRule::Slides { .. } => format!("goes on as {other}"),
            PairRule::Covered { by } => format!("beside {other} under {by}"),
            PairRule::NoRule => format!("undecided with {other}"),
        }
    });
    said.collect::<Vec<_>>().join("; ")
}

/// Every end at every corner, and the runs by kind.
fn corner_tables(made: &CornerSchedule) -> Result<String, Error> {
    let text = |length: Length| Ok::<_, Error>(format()?.text(length)?.as_str().to_owned());
    let mut out = "\n| corner | trim of | runs on | its end | how |\n|---|---|---|---|---|\n".to_owned();
    for (number, corner) in made.corners.iter().enumerate() {
        for here in &corner.lines {
            let closed = written(&here.closed)?;
            let closed = closed.as_str().unwrap_or_default();
            out += &format!("| {number} | {} | {} | {closed} | {} |\n", here.name, text(here.allowance)?, meets(corner, here));
        }
    }
    out += "\n| kind | lines | true length | run |\n|---|---|---|---|\n";
    for k in &made.kinds {
        out += &format!("| {} | {} | {} | {} |\n", k.name, k.count, text(k.length)?, text(k.run)?);
    }
    Ok(out)
}

fn corners() -> Result<Plan, Error> {
    let wall = |name: &str| LineStands { line: name.into(), height: Length::inches(8) };
    let stands = vec![wall("sidewall 1"), wall("sidewall 2")];
    let asked = CornerPlan { roof: cottage()?, allowances: CornerAllowances::usual(), joints: vec![], stands };
    let shows = corner_tables(&asked.compute()?)?;
    let drawing = json!({"name": "cottage", "roof": written(&asked.roof)?, "figure": "190 mm", "paper": "millimetre", "lengths": "in/16"});
    let svg = drawing_json("roof.roof-plan", &drawing.to_string())?;
    Ok(Plan { name: "corners", given: Some(("assembly.corner-plan", written(&asked)?)), svg, shows })
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
    Ok(Plan { name: "blank of a tapered valley pan", given: Some(("trim.tapered-run", written(&asked)?)), svg, shows: String::new() })
}

/// The blank of the kick-out at the foot of the guide's sidewall.
fn kick_out(solved: &Solved) -> Result<Plan, Error> {
    let made = solved.kick_out.as_ref().ok_or_else(|| Error::new(ErrorKind::Missing, "no kick-out"))?;
    let svg = BlankDrawing::new("kick-out, wall on the right", &made.blank, format()?).svg()?;
    Ok(Plan { name: "blank of a kick-out", given: Some(("junction.kick-out", written(&made.asked)?)), svg, shows: String::new() })
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
        corners()?,
        blank(widening)?,
        kick_out(solved(samples, "sidewall on a Z")?)?,
        Plan { name: "valley that widens, from above", given: None, svg: from_above, shows: String::new() },
    ])
}

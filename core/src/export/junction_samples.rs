//! Sections of every kind of junction, for drawings of them.

use crate::closure::Face;
use crate::error::{Error, ErrorKind};
use crate::export::{Other, SectionPlane};
use crate::junction::{
    BeadSize, Bending, Bites, ContinuousCleat, Coping, CopingDetail, CopingHold, CopingLap, CopingSide, Counterflashing, CricketRule, CurbBack, CurbBackDetail,
    DeckFlange, DripEdge, DripFace, DripHem, Eave, EaveDetail, EaveFront, EavePanel, ExpansionAcross, ExpansionAcrossDetail, ExpansionAlong,
    ExpansionAlongDetail, FastenerRow, FixedLine, FlangeLies, GutterOpening, Headwall, HeadwallDetail, HighSide, HighSideDetail, Hip, HipDetail, HookStrip,
    JointSide, KickOutDetail, LeastBySlope, LeastRule, Levels, OffsetCleat, PackingReach, PanelEdge, PanelSide, Pipe, PipeBase, PipeShape, PitchTransition,
    PitchTransitionDetail, Rake, RakeDetail, RakeInnerEdge, RakeStand, RakeZ, Ridge, RidgeDetail, RidgeVent, RoofSide, Sidewall, SidewallDetail,
    SidewallFlange, SidewallFoot, SlottedScrews, Solved, SplashRib, Step, StepDetail, StepLower, StepUpper, TopClosure, TopEdge, TopEnd, TrimSheet, UpperEdge,
    Valley, ValleyDetail, ValleyEndSeal, ValleyHook, ValleySide, ValleyWidening, WallCover, WallHand, WallLeg, WideningPan,
};
use crate::movement::HeatRange;
use crate::pitch::{Corner, Pitch, SlopeRule};
use crate::practice::{self, junction as jp, panel as pp};
use crate::record::{Calculation, Source};
use crate::roof::LineKind;
use crate::units::{Angle, Expansion, Length, Temperature};

/// A junction to be drawn.
#[derive(Clone)]
pub(super) struct Sample {
    pub(super) name: &'static str,
    /// The calculation that solves it, by its name.
    pub(super) calculation: &'static str,
    /// What the calculation is given, in serial form.
    pub(super) input: serde_json::Value,
    pub(super) solved: Solved,
    pub(super) first: SectionPlane,
    pub(super) other: Other,
    /// The kind of line that says its distances' ways: along or across the fall.
    pub(super) line: LineKind,
}

fn sample<C>(name: &'static str, calculation: &'static str, input: &C, first: SectionPlane, other: Other) -> Result<Sample, Error>
where
    C: Calculation<Out = Solved> + serde::Serialize,
{
    given(name, calculation, input, input.compute()?, first, other)
}

/// A sample whose calculation gives more than its section.
fn given<C: serde::Serialize>(
    name: &'static str,
    calculation: &'static str,
    input: &C,
    solved: Solved,
    first: SectionPlane,
    other: Other,
) -> Result<Sample, Error> {
    let input = serde_json::to_value(input).map_err(|e| Error::new(ErrorKind::Internal, "a sample that cannot be written").value_of(e))?;
    let line = match calculation {
        "junction.rake" => LineKind::Rake,
        "junction.sidewall" => LineKind::Sidewall,
        "junction.expansion-along" => LineKind::ExpansionAlong,
        _ => LineKind::Ridge,
    };
    Ok(Sample { name, calculation, input, solved, first, other, line })
}

const SHEET: TrimSheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };

fn inch(text: &str) -> Result<Length, Error> {
    Length::parse(&format!("{text}\""))
}

fn row() -> FastenerRow {
    FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice }
}

fn levels() -> Result<Levels, Error> {
    Ok(Levels { underlayment: Length::mils(40), pan: Length::mils(24), seam_height: inch("1 3/4")?, tape: inch("1/16")?, ..Levels::default() })
}

fn roof(pitch: &str) -> Result<RoofSide, Error> {
    Ok(RoofSide { pitch: Pitch::parse(pitch)?, levels: levels()? })
}

fn plane(rise: f64) -> Result<SectionPlane, Error> {
    Ok(SectionPlane { rise: Angle::degrees_from(rise)?, levels: levels()? })
}

fn face(depth: &str) -> Result<DripFace, Error> {
    Ok(DripFace {
        depth: inch(depth)?,
        kick: Angle::degrees_from(40.0)?,
        clears: inch("5/8")?,
        hem: DripHem::Hooked(ContinuousCleat {
            sheet: TrimSheet { thickness: Length::mils(28), inside_radius: Length::mils(28) },
            height: inch("2")?,
            fasteners_above_bend: inch("1")?,
            fasteners: row(),
            hem: jp::EDGE_HEM,
            hem_gap: (Length::mils(28) + jp::HOOKED_HEM_ROOM).length()?,
            short_of_fold: inch("1/16")?,
            engagement: inch("3/8")?,
        }),
    })
}

fn top_end(flange: &str, hold_back: &str) -> Result<TopEnd, Error> {
    Ok(TopEnd {
        flange: inch(flange)?,
        cover: LeastRule::UFGS_UNSOLDERED,
        drip: DripEdge { leg: inch("3/4")?, turn: jp::DRIP_TURN, hem: jp::EDGE_HEM, above_pan: inch("1/4")? },
        closure: TopClosure {
            set_back: practice::closure::SET_BACK,
            face: Face::LeadingEdge,
            lower_flange: inch("2 1/2")?,
            top_flange: inch("1 1/8")?,
            tape_width: inch("7/8")?,
            tape_beneath: inch("1/16")?,
            panel_margin: LeastRule::PANEL_MARGIN,
        },
        bites: Bites::Structure,
        screws: row(),
        rivets: None,
        hollow_seams: false,
        cap_tape_width: inch("7/8")?,
        hold_back: inch(hold_back)?,
        clearance: inch("1/4")?,
        turn_up: pp::TURN_UP,
        field_trim: Length::ZERO,
    })
}

fn riveted(flange: &str) -> Result<TopEnd, Error> {
    let mut end = top_end(flange, "2")?;
    end.closure = TopClosure { face: Face::Web, set_back: inch("1")?, top_flange: inch("1")?, lower_flange: inch("1 1/4")?, ..end.closure };
    Ok(TopEnd { rivets: Some(row()), ..end })
}

fn offset_cleat() -> Result<OffsetCleat, Error> {
    Ok(OffsetCleat {
        sheet: SHEET,
        width: jp::CLEAT_WIDTH,
        tongue: inch("1 1/4")?,
        rise: inch("1/4")?,
        tape_width: inch("1 1/2")?,
        tape: inch("1/16")?,
        screws_below_tape_edge: jp::CLEAT_SCREWS_BELOW_TAPE_EDGE,
        screws: row(),
        gap: inch("1/4")?,
        fold: pp::END_FOLD,
        least_engagement: inch("3/8")?,
    })
}

fn wall(is_let_in: bool) -> Result<WallLeg, Error> {
    let cover = if is_let_in {
        WallCover::Reglet(Box::new(Counterflashing {
            tongue: inch("2")?,
            rule: LeastRule::UFGS_INTO_WALL,
            above_leg: inch("1")?,
            face: inch("5")?,
            least_lap: LeastRule::LAP_OVER_LEG,
            hem: jp::EDGE_HEM,
            wedges: Some(FastenerRow::UFGS_WEDGES),
            bead_width: inch("1/4")?,
            bead_depth: inch("1/4")?,
        }))
    } else {
        WallCover::Cladding { lap: inch("7")?, rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: inch("1")? }
    };
    Ok(WallLeg {
        leg: inch("10")?,
        stands_out: inch("1/8")?,
        upstand: LeastRule::UFGS_UPSTAND,
        fasteners: Some(FastenerRow::UFGS_WALL_LEG),
        fasteners_below_top: inch("1")?,
        cover,
    })
}

/// One of every kind, and more where a kind has more than one look.
pub(super) fn all() -> Result<Vec<Sample>, Error> {
    let mut out = vec![eave()?, rake("rake", RakeStand::OnPan)?, rake("rake on a cleat", RakeStand::OnDeck)?];
    out.push(ridge("vented ridge", "6:12", "6:12", RidgeVent::Vented { slot: inch("1")?, open_ratio: 0.4 })?);
    for (name, first, second) in [("ridge", "6:12", "6:12"), ("ridge of unequal pitches", "3:12", "9:12"), ("ridge of steep pitches", "12:12", "12:12")] {
        out.push(ridge(name, first, second, RidgeVent::Closed)?);
    }
    out.push(high_side()?);
    out.extend([hip()?, valley("valley with cleats", true)?, valley("valley with receiver folds", false)?]);
    out.extend([widening()?, cricket_valley()?]);
    out.extend([headwall("headwall behind cladding", "3:12", false)?, headwall("headwall with a reglet", "8:12", true)?]);
    out.push(headwall("vented headwall", "4:12", false)?);
    out.extend([sidewall("sidewall on a Z", true)?, sidewall("sidewall on the pan", false)?, curb_back("back of a curb", true)?]);
    out.push(curb_back("back of a curb with a receiver fold", false)?);
    out.extend([coping("coping on cleats", false)?, coping("coping screwed at the roof side", true)?]);
    out.extend([step()?, expansion_along()?, expansion_across()?, pipe()?]);
    let under_panels = PackingReach::UnderPanels;
    let (none, direct) = ((Length::ZERO, under_panels), Bending::Direct);
    let riser = |from: &str| inch(from).map(|distance| Bending::Riser { distance });
    out.push(transition("transition, shallow below", ("3:12", "8:12"), "1", none, direct)?);
    out.push(transition("transition on packing", ("3:12", "8:12"), "1", (inch("1")?, under_panels), direct)?);
    out.push(transition("transition on packing under its flange", ("3:12", "8:12"), "1", (inch("1")?, PackingReach::UnderFlange), direct)?);
    out.push(transition("transition with a riser", ("3:12", "8:12"), "1", none, riser("7")?)?);
    out.push(transition("transition, steep below", ("10:12", "4:12"), "6", none, direct)?);
    out.push(transition("transition, steep below, with a riser", ("10:12", "4:12"), "6", none, riser("6")?)?);
    Ok(out)
}

fn rise(pitch: &str) -> Result<f64, Error> {
    Ok(Pitch::parse(pitch)?.angle().degrees())
}

fn eave() -> Result<Sample, Error> {
    let detail = EaveDetail {
        sheet: SHEET,
        flange: DeckFlange { width: inch("4")?, lies: FlangeLies::UnderUnderlayment, fasteners: row(), fasteners_from_edge: inch("1")? },
        on_deck: LeastRule::IRC_OVER_EDGE_METAL,
        below_deck: LeastRule::IRC_BELOW_DECK,
        front: EaveFront::Plumb,
        face: face("4")?,
        strip: HookStrip { sheet: SHEET, width: inch("4")?, fasteners: row(), fasteners_from_edge: inch("1")? },
        panel: EavePanel {
            overhang: inch("1 1/4")?,
            gap: inch("1/4")?,
            fold: pp::END_FOLD,
            fold_opening: inch("3/16")?,
            clearance: practice::movement::CLEARANCE,
            engagement: practice::movement::ENGAGEMENT,
            fixed: None,
        },
        gutter: Some(GutterOpening { back: Length::ZERO, front: inch("5")?, lip_clearance: practice::junction::GUTTER_LIP_CLEARANCE, lip: None }),
    };
    let input = Eave { roof: roof("4:12")?, detail };
    sample("eave", "junction.eave", &input, plane(-rise("4:12")?)?, Other::Fascia { fall: Angle::SQUARE })
}

fn rake(name: &'static str, stands: RakeStand) -> Result<Sample, Error> {
    let on_deck = stands == RakeStand::OnDeck;
    let (tape_width, tape) = if on_deck { (Length::ZERO, Length::ZERO) } else { (inch("7/8")?, inch("1/16")?) };
    let detail = RakeDetail {
        below_deck: LeastRule::IRC_BELOW_DECK,
        edge_from_line: if on_deck { inch("1 1/4")? } else { inch("1/2")? },
        turn_up: inch("1 3/4")?,
        seam_room: inch("1")?,
        z: RakeZ {
            stands,
            sheet: SHEET,
            from_turned_up_edge: inch("1/8")?,
            lower_flange: inch("1")?,
            top_flange: inch("1")?,
            tape_width,
            tape,
            bites: if on_deck { Bites::Structure } else { Bites::Panel },
            screws: row(),
        },
        sheet: SHEET,
        inner: RakeInnerEdge { cover: inch("1/8")?, drop: inch("1")?, hem: jp::EDGE_HEM, above_pan: inch("1/4")? },
        z_cover: LeastRule::COVER_OF_Z,
        rivets: row(),
        trim_tape_width: inch("7/8")?,
        face: face("3")?,
    };
    let input = Rake { levels: levels()?, edge: PanelEdge::Ripped, end_panel: inch("12")?, detail };
    sample(name, "junction.rake", &input, plane(0.0)?, Other::Fascia { fall: Angle::SQUARE })
}

fn ridge(name: &'static str, first: &str, second: &str, vent: RidgeVent) -> Result<Sample, Error> {
    let detail = RidgeDetail { first: riveted("8")?, second: riveted("8")?, sheet: SHEET, vent };
    let input = Ridge { first: roof(first)?, second: roof(second)?, detail };
    sample(name, "junction.ridge", &input, plane(rise(first)?)?, Other::Plane(plane(-rise(second)?)?))
}

fn high_side() -> Result<Sample, Error> {
    let input =
        HighSide { roof: roof("2:12")?, detail: HighSideDetail { end: riveted("8")?, sheet: SHEET, face: face("4")?, below_deck: LeastRule::IRC_BELOW_DECK } };
    sample("high side", "junction.high-side", &input, plane(rise("2:12")?)?, Other::Fascia { fall: Angle::SQUARE })
}

fn hip() -> Result<Sample, Error> {
    let corner = Corner { first: Pitch::parse("6:12")?, second: Pitch::parse("8:12")?, plan: Angle::SQUARE };
    let seen = corner.compute()?;
    // The closures reach the drip, so that rivets through it hold the cap.
    let mut end = top_end("9", "2")?;
    (end.closure.set_back, end.rivets) = (jp::RIVET_REACH, Some(row()));
    let detail = HipDetail { first: end.clone(), second: end, sheet: SHEET };
    let input = Hip { corner, first: levels()?, second: levels()?, detail };
    sample("hip", "junction.hip", &input, plane(seen.first.backing.degrees())?, Other::Plane(plane(-seen.second.backing.degrees())?))
}

fn valley(name: &'static str, on_cleats: bool) -> Result<Sample, Error> {
    let corner = Corner { first: Pitch::parse("6:12")?, second: Pitch::parse("8:12")?, plan: Angle::SQUARE };
    let hook = if on_cleats { ValleyHook::OffsetCleat { cleat: offset_cleat()?, least_screw_height: jp::VALLEY_SCREW_HEIGHT_LEAST } } else { receiver()? };
    let mut detail = valley_detail(hook, inch("12")?)?;
    detail.rib = on_cleats.then_some(SplashRib { height: inch("1")?, half_width: inch("1/2")? });
    valley_of(name, corner, None, detail)
}

fn valley_detail(hook: ValleyHook, leg: Length) -> Result<ValleyDetail, Error> {
    // A pan without a hole is held by its hems.
    let edge_cleats = matches!(hook, ValleyHook::ReceiverFold { .. }).then_some(FastenerRow::UFGS_CLEATS);
    let side = ValleySide { leg, least_leg: LeastBySlope::VALLEY_LEG, least_beyond: LeastRule::BEYOND_HOOK, hook, field_trim: inch("2")? };
    Ok(ValleyDetail {
        sheet: SHEET,
        bed: inch("1/8")?,
        open_width: jp::VALLEY_OPEN_WIDTH,
        least_open_width: LeastRule::VALLEY_OPEN,
        widens: None,
        rib: None,
        edge_hem: jp::EDGE_HEM,
        edge_cleats,
        first: side.clone(),
        second: side,
        minimum: SlopeRule::IBC_STANDING_SEAM,
        end: ValleyEndSeal::default(),
    })
}

fn valley_of(name: &'static str, corner: Corner, length: Option<Length>, detail: ValleyDetail) -> Result<Sample, Error> {
    let seen = corner.compute()?;
    let input = Valley { corner, first: levels()?, second: levels()?, length, detail };
    sample(name, "junction.valley", &input, plane(-seen.first.backing.degrees())?, Other::Plane(plane(seen.second.backing.degrees())?))
}

/// Its pan tapers, so that its folds turn with the line that the panels end on.
fn widening() -> Result<Sample, Error> {
    let corner = Corner { first: Pitch::parse("6:12")?, second: Pitch::parse("8:12")?, plan: Angle::SQUARE };
    let mut detail = valley_detail(receiver()?, inch("9")?)?;
    detail.open_width = inch("4")?;
    detail.widens = Some(ValleyWidening { pan: WideningPan::Tapered, ..ValleyWidening::COPPER_ROOFINGS });
    valley_of("valley that widens", corner, Some(Length::feet(24)), detail)
}

/// Where a cricket of 8:12 lies in a roof of 4:12, its ridge square to the curb and level.
fn cricket_valley() -> Result<Sample, Error> {
    let corner = Corner { first: Pitch::parse("4:12")?, second: Pitch::parse("8:12")?, plan: Angle::SQUARE };
    valley_of("valley of a cricket", corner, None, valley_detail(receiver()?, inch("12")?)?)
}

fn headwall(name: &'static str, pitch: &str, is_let_in: bool) -> Result<Sample, Error> {
    let vent = if name.contains("vented") { RidgeVent::Vented { slot: inch("1 1/2")?, open_ratio: 0.4 } } else { RidgeVent::Closed };
    let detail = HeadwallDetail { end: top_end("9", "2")?, sheet: SHEET, wall: wall(is_let_in)?, vent };
    let input = Headwall { roof: roof(pitch)?, detail };
    sample(name, "junction.headwall", &input, plane(rise(pitch)?)?, Other::Wall)
}

fn sidewall(name: &'static str, on_z: bool) -> Result<Sample, Error> {
    let (edge, flange, leg) = if on_z {
        let flange = SidewallFlange::OnZ {
            web_from_wall: inch("3")?,
            foot: inch("2")?,
            web_to_screws: inch("1")?,
            tape_width: inch("7/8")?,
            tape_beneath: inch("1/16")?,
            bites: Bites::Panel,
            screws: row(),
            cover: inch("3/4")?,
            trim_tape_width: jp::Z_TAPE_WIDTH,
            rivets: row(),
        };
        (PanelSide::TurnedUp { height: inch("1 3/4")? }, flange, inch("3/4")?)
    } else {
        let flange =
            SidewallFlange::OnPan { width: inch("5")?, tape_width: inch("1")?, edge_to_fasteners: inch("1/2")?, bites: Bites::Panel, fasteners: row() };
        (PanelSide::Flat, flange, Length::ZERO)
    };
    let detail = SidewallDetail {
        cover: LeastRule::SIDE_COVER,
        sheet: SHEET,
        edge,
        edge_from_wall: inch("1/2")?,
        flange,
        drip: DripEdge { leg, turn: jp::DRIP_TURN, hem: jp::EDGE_HEM, above_pan: inch("1/4")? },
        // It goes with the panel, so its leg stands free behind its cover.
        wall: WallLeg { fasteners: None, ..wall(on_z)? },
        foot: if on_z { SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(inch("4")?).into()) } } else { SidewallFoot::EndsAtEave },
    };
    let input = Sidewall { roof: roof("4:12")?, first_seam_from_wall: inch("12")?, wall: WallHand::Right, detail };
    sample(name, "junction.sidewall", &input, plane(0.0)?, Other::Wall)
}

fn receiver() -> Result<ValleyHook, Error> {
    Ok(ValleyHook::ReceiverFold { depth: inch("1 1/2")?, opening: inch("1/8")?, gap: inch("1/4")?, fold: pp::END_FOLD, least_engagement: inch("3/8")? })
}

fn curb_back(name: &'static str, on_cleat: bool) -> Result<Sample, Error> {
    let hook = if on_cleat { ValleyHook::OffsetCleat { cleat: offset_cleat()?, least_screw_height: jp::VALLEY_SCREW_HEIGHT_LEAST } } else { receiver()? };
    let detail = CurbBackDetail {
        sheet: SHEET,
        wall: WallLeg { cover: WallCover::Cladding { lap: inch("7")?, rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: inch("2")? }, ..wall(false)? },
        reach: inch("18")?,
        top_edge: TopEdge { hem: jp::EDGE_HEM, screws_below: inch("1")?, screws: row() },
        under_panels: LeastRule::UFGS_UNDER_COVERING,
        least_beyond: LeastRule::BEYOND_HOOK,
        clear_width: inch("6")?,
        least_clear_width: LeastRule::CLEAR_BEHIND_CURB,
        seam_cut_back: inch("1 1/4")?,
        least_to_seams: LeastRule::SEAMS_FROM_CURB,
        hook,
        cricket: CricketRule::IRC,
    };
    let input = CurbBack { roof: roof("4:12")?, width: inch("24")?, detail };
    sample(name, "junction.curb-back", &input, plane(-rise("4:12")?)?, Other::Wall)
}

fn coping_side(hold: CopingHold) -> Result<CopingSide, Error> {
    Ok(CopingSide { behind: Length::ZERO, depth: inch("5")?, kick: Angle::degrees_from(40.0)?, clears: inch("3/4")?, hold, over: None })
}

fn coping(name: &'static str, is_screwed: bool) -> Result<Sample, Error> {
    let cleat = CopingHold::Cleat(ContinuousCleat {
        sheet: TrimSheet { thickness: Length::mils(28), inside_radius: Length::mils(28) },
        height: inch("3")?,
        fasteners_above_bend: inch("1 1/2")?,
        fasteners: FastenerRow::UFGS_EDGE_STRIP,
        hem: inch("7/8")?,
        hem_gap: (Length::mils(28) + jp::HOOKED_HEM_ROOM).length()?,
        short_of_fold: inch("1/16")?,
        engagement: LeastRule::UFGS_HOOK.least,
    });
    let screws = CopingHold::Screws(SlottedScrews {
        row: FastenerRow { spacing: inch("24")?, source: Source::CommonPractice },
        above_bend: inch("1")?,
        hem: jp::EDGE_HEM,
        shank: inch("1/4")?,
        slot: inch("1/2")?,
        travel: inch("1/8")?,
    });
    let over = Some(CopingLap { below_top: inch("1/2")?, rule: LeastRule::LAP_OVER_LEG });
    let roof_side = CopingSide { behind: Length::mils(24), over, ..coping_side(if is_screwed { screws } else { cleat.clone() })? };
    let fall = Pitch::parse("1:12")?;
    let detail = CopingDetail { sheet: SHEET, bed: Length::mils(40), fall, roof_side, outside: coping_side(cleat)? };
    let input = Coping { thickness: inch(if is_screwed { "12" } else { "8" })?, detail };
    sample(name, "junction.coping", &input, SectionPlane { rise: fall.angle(), levels: Levels::default() }, Other::WallTop)
}

fn step() -> Result<Sample, Error> {
    let lower = StepLower {
        end: riveted("9")?,
        sheet: SHEET,
        stands_out: inch("1/8")?,
        below_edge: inch("1")?,
        upstand: LeastRule::UFGS_UPSTAND,
        fasteners: FastenerRow::UFGS_WALL_LEG,
        fasteners_below_top: inch("1")?,
        lap: LeastRule::LAP_OVER_LEG,
        clearance: inch("1")?,
    };
    let upper = StepUpper {
        sheet: SHEET,
        flange: DeckFlange { width: inch("4")?, lies: FlangeLies::UnderUnderlayment, fasteners: row(), fasteners_from_edge: inch("1")? },
        face: face("5")?,
        strip: HookStrip { sheet: SHEET, width: inch("4")?, fasteners: row(), fasteners_from_edge: inch("1")? },
        panel: EavePanel {
            overhang: inch("1 1/2")?,
            gap: inch("1/4")?,
            fold: pp::END_FOLD,
            fold_opening: inch("3/16")?,
            clearance: practice::movement::CLEARANCE,
            engagement: practice::movement::ENGAGEMENT,
            fixed: None,
        },
    };
    let input = Step { lower: roof("3:12")?, upper: roof("4:12")?, riser: inch("13")?, detail: StepDetail { lower, upper } };
    sample("step", "junction.step", &input, plane(rise("3:12")?)?, Other::Plane(plane(rise("4:12")?)?))
}

fn range() -> Result<HeatRange, Error> {
    let at = |text: &str| Temperature::parse(text);
    Ok(HeatRange { expansion: Expansion::parse("12e-6 /K")?, coldest: at("-20 degC")?, laid: at("20 degC")?, hottest: at("70 degC")? })
}

fn expansion_along() -> Result<Sample, Error> {
    let side = JointSide { levels: levels()?, to_fixed: Length::feet(50), first_seam: inch("12")? };
    let detail = ExpansionAlongDetail {
        sheet: SHEET,
        gap: inch("1")?,
        clearance: practice::movement::CLEARANCE,
        curb_width: inch("1 1/2")?,
        curb_height: inch("8 1/2")?,
        edge_room: inch("1/8")?,
        turn_up: inch("8")?,
        upstand: LeastRule::UFC_UPSTAND,
        cleat_room: inch("1/8")?,
        cleat_fasteners: row(),
        fasteners_from_edge: inch("3/4")?,
        drop: inch("5")?,
        lap: LeastRule::LAP_OVER_LEG,
        hook: inch("2")?,
        engagement: practice::movement::ENGAGEMENT,
        play: inch("1/16")?,
        rivets: row(),
    };
    let input = ExpansionAlong { first: side, second: side, range: range()?, detail };
    sample("expansion joint along the panels", "junction.expansion-along", &input, plane(0.0)?, Other::Plane(plane(0.0)?))
}

fn expansion_across() -> Result<Sample, Error> {
    let side = roof("3:12")?;
    let flashing = PitchTransitionDetail {
        sheet: SHEET,
        end: top_end("10", "1")?,
        seam_bead: None,
        packing: side.levels.compute()?,
        packing_reach: PackingReach::UnderPanels,
        bending: Bending::Direct,
        unsupported_limit: inch("2")?,
        upper_flange: inch("11")?,
        top_edge: TopEdge { hem: Length::ZERO, screws_below: inch("1")?, screws: row() },
        cleat: OffsetCleat { width: inch("5")?, tongue: inch("2")?, gap: inch("1/2")?, fold: inch("1 3/4")?, ..offset_cleat()? },
        front_below_top: inch("8")?,
        head_lap: LeastRule::HEAD_LAP,
    };
    let joint = ExpansionAcross {
        roof: side,
        to_fixed: Length::feet(50),
        below_to_fixed: practice::movement::FAR_SIDE_TO_FIXED,
        range: range()?,
        detail: ExpansionAcrossDetail { clearance: practice::movement::CLEARANCE, lap: LeastRule::SLIDING_LAP, flashing },
    };
    let plane = plane(rise("3:12")?)?;
    sample("expansion joint across the panels", "junction.expansion-across", &joint, plane, Other::Plane(plane))
}

fn pipe() -> Result<Sample, Error> {
    let pipe = Pipe {
        diameter: inch("3 1/2")?,
        pitch: Pitch::parse("4:12")?,
        coverage: inch("18")?,
        seam_width: inch("1")?,
        from_seam: inch("9")?,
        least_to_seam: inch("2")?,
        clearance: inch("1/4")?,
        fixed: FixedLine::Above,
        to_fixed: Length::feet(20),
        range: range()?,
        base: PipeBase {
            shape: PipeShape::Rectangular,
            seal: inch("2")?,
            tape_width: inch("7/8")?,
            tape_lap: inch("1")?,
            screws: FastenerRow { spacing: inch("1 1/2")?, source: Source::CommonPractice },
            screws_from_edge: inch("1/2")?,
        },
        upper_edge: UpperEdge::OnPan,
        may_cross_seams: false,
        next: None,
    };
    let plane = plane(rise("4:12")?)?;
    given("pipe", "junction.pipe", &pipe, pipe.compute()?.section, plane, Other::Plane(plane))
}

fn transition(
    name: &'static str,
    (lower, upper): (&str, &str),
    hold_back: &str,
    (packing, packing_reach): (Length, PackingReach),
    bending: Bending,
) -> Result<Sample, Error> {
    let detail = PitchTransitionDetail {
        sheet: SHEET,
        end: top_end("14", hold_back)?,
        seam_bead: Some(BeadSize { width: inch("3/8")?, depth: inch("1/4")? }),
        packing,
        packing_reach,
        bending,
        unsupported_limit: inch("24")?,
        upper_flange: inch("14")?,
        top_edge: TopEdge { hem: Length::ZERO, screws_below: inch("1")?, screws: row() },
        cleat: OffsetCleat { gap: Length::ZERO, ..offset_cleat()? },
        front_below_top: jp::CLEAT_FRONT_BELOW_TOP,
        head_lap: LeastRule::HEAD_LAP,
    };
    let input = PitchTransition { lower: roof(lower)?, upper: roof(upper)?, detail };
    sample(name, "junction.pitch-transition", &input, plane(rise(lower)?)?, Other::Plane(plane(rise(upper)?)?))
}

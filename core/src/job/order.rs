//! The order: everything that is bought, in whole units, with what each line rests on.

use super::copings::{CopingItem, Copings};
use super::end_caps::{CapHand, CapItem, EndCap};
use super::input::Job;
use super::kick_outs::KickOutItem;
use super::lay::PlaneLay;
use super::packet::JunctionItem;
use super::pipes::PipeItem;
use super::plane_work::PlaneClips;
use super::supplies::ClosureSticks;
use super::trims::TrimItem;
use super::underlay::UnderlaymentPlan;
use crate::assembly::sealant_totals;
use crate::error::Error;
use crate::junction::{Adjoining, Bites};
use crate::metal::{Sheet, Thickness};
use crate::record::{Calculation, Source};
use crate::stock::{Cutting, Piece};
use crate::underlayment::Roll;
use crate::units::{AreaUnit, Length, LengthFormat, Mass, MassUnit};
use std::collections::BTreeMap;

/// What kind of thing a line of the order buys.
///
/// ```
/// use seamwright::job::OrderGroup;
/// assert!(OrderGroup::Panels < OrderGroup::Trims);
/// assert_eq!(OrderGroup::Sealant.name(), "sealant");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum OrderGroup {
    /// Panels from the roll former.
    Panels,
    /// The coil that they take.
    Coil,
    /// Stock lengths of trim.
    Trims,
    /// Boots and collars of pipes.
    Pipes,
    /// Closure pieces.
    Closures,
    /// Tape, gun sealant and plugs.
    Sealant,
    /// What builds decks up.
    Packing,
    /// Underlayment and membranes.
    Underlayment,
    /// Clips.
    Clips,
    /// Screws and rivets.
    Fasteners,
}

impl OrderGroup {
    /// The name in lists.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            OrderGroup::Panels => "panels",
            OrderGroup::Coil => "coil",
            OrderGroup::Trims => "trims",
            OrderGroup::Pipes => "pipes",
            OrderGroup::Closures => "closures",
            OrderGroup::Sealant => "sealant",
            OrderGroup::Packing => "packing",
            OrderGroup::Underlayment => "underlayment",
            OrderGroup::Clips => "clips",
            OrderGroup::Fasteners => "fasteners",
        }
    }
}

/// One line of the order.
///
/// ```
/// use seamwright::job::{Job, OrderGroup};
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let panels: u64 = packet.order.iter().filter(|l| l.group == OrderGroup::Panels).map(|l| l.count).sum();
/// assert_eq!(panels, packet.summary.pieces);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderLine {
    /// What kind of thing it is.
    pub group: OrderGroup,
    /// Its mark in the packet; empty where it has none.
    pub mark: String,
    /// What it is.
    pub item: String,
    /// Its sheet, size or use.
    pub spec: String,
    /// How many.
    pub count: u64,
    /// Of what: "each", "stick", "roll", "tube", "coil", "lot".
    pub unit: &'static str,
    /// The length of each; of a coil the whole.
    pub length: Option<Length>,
    /// The net length that is needed of it.
    pub net: Option<Length>,
    /// Its mass, where it follows.
    pub mass: Option<Mass>,
    /// For fasteners and clips, whether an engineer gave the spacing behind the count.
    pub engineered: Option<bool>,
    /// What the count rests on.
    pub source: Option<Source>,
}

impl OrderLine {
    fn new(group: OrderGroup, item: impl Into<String>, spec: impl Into<String>, count: u64, unit: &'static str) -> OrderLine {
        let (mark, item, spec) = (String::new(), item.into(), spec.into());
        OrderLine { group, mark, item, spec, count, unit, length: None, net: None, mass: None, engineered: None, source: None }
    }
}

/// The coil of all planes together: one width a job, as every plane takes the same. Its mass where that of every plane is known.
pub(super) fn coil(planes: &[PlaneLay]) -> Result<(Length, Option<Mass>), Error> {
    let length = Length::total(planes.iter().map(|p| &p.laid.coil.length))?;
    let masses = planes.iter().map(|p| p.laid.coil.mass).collect::<Option<Vec<Mass>>>();
    let mass = masses.map(|all| Mass::new(all.iter().map(|m| m.get(MassUnit::Kilogram)).sum(), MassUnit::Kilogram)).transpose()?;
    Ok((length, mass))
}

/// A row of fasteners, of whatever it holds.
pub(super) struct BoughtRow<'a> {
    pub(super) name: &'a str,
    pub(super) bites: Bites,
    pub(super) engineered: bool,
    pub(super) spacing: Length,
    pub(super) source: &'a Source,
    pub(super) count: u64,
}

/// All rows: those along the lines, those of the copings' cleats, and those of the pipes' bases.
pub(super) fn fastener_rows<'a>(junctions: &'a [JunctionItem], copings: &'a [CopingItem], pipes: &'a [PipeItem]) -> impl Iterator<Item = BoughtRow<'a>> {
    let along = junctions.iter().flat_map(|j| &j.along.rows).map(|r| BoughtRow {
        name: &r.name,
        bites: r.bites,
        engineered: r.engineered,
        spacing: r.spacing,
        source: &r.source,
        count: count(r.count),
    });
    let cleats = copings.iter().flat_map(|c| &c.pieces.screws).map(|s| BoughtRow {
        name: &s.name,
        bites: s.bites,
        engineered: s.engineered,
        spacing: s.spacing,
        source: &s.source,
        count: s.count,
    });
    let bases = pipes.iter().map(|p| BoughtRow {
        name: "screws of a pipe's base",
        bites: Bites::Panel,
        engineered: p.made.engineered,
        spacing: p.pipe.base.screws.spacing,
        source: &p.pipe.base.screws.source,
        count: p.made.screws,
    });
    along.chain(cleats).chain(bases)
}

/// Where the strips of closures stand in a job.
const STICKS: &str = "supplies.closures.sticks";

fn count(n: usize) -> u64 {
    u64::try_from(n).unwrap_or(u64::MAX)
}

/// A refusal of the sealant's order, in the job's own terms.
fn placed(e: Error, waste: &str) -> Error {
    e.moved("waste_ratio", waste).under("supplies.sealant")
}

/// What makes a row of fasteners another line of the order: its name, what it bites, whether it is engineered, its spacing and its source.
type RowKey<'a> = (&'a str, &'a str, bool, String, String);

/// What the order is made from.
pub(super) struct Bought<'a> {
    pub(super) job: &'a Job,
    pub(super) planes: &'a [PlaneLay],
    pub(super) trims: &'a [TrimItem],
    pub(super) junctions: &'a [JunctionItem],
    pub(super) copings: &'a Copings,
    pub(super) kick_outs: &'a [KickOutItem],
    pub(super) pipes: &'a [PipeItem],
    pub(super) end_caps: &'a [EndCap],
    pub(super) cap_pieces: &'a [CapItem],
    pub(super) clips: &'a [PlaneClips],
    pub(super) underlayment: Option<&'a UnderlaymentPlan>,
    /// What builds the deck of each plane up.
    pub(super) built_up: &'a [Length],
}

impl Bought<'_> {
    /// The order, in the order of [`OrderGroup`].
    pub(super) fn lines(&self) -> Result<Vec<OrderLine>, Error> {
        let mut out = Vec::new();
        self.panels(&mut out)?;
        self.trims(&mut out)?;
        self.coping_pieces(&mut out)?;
        self.end_caps(&mut out)?;
        self.kick_outs(&mut out)?;
        self.boots(&mut out)?;
        self.closures(&mut out)?;
        self.sealant(&mut out)?;
        self.packing(&mut out)?;
        self.underlayment(&mut out)?;
        self.clips(&mut out);
        self.fasteners(&mut out)?;
        Ok(out)
    }

    /// The notation of what is small; lengths of things stand in columns of their own.
    fn format(&self) -> LengthFormat {
        self.job.papers().small()
    }

    /// A sheet with its thickness in the job's system.
    fn sheet(&self, sheet: Sheet) -> Result<String, Error> {
        let thickness = match sheet.thickness_as_given() {
            Thickness::Gauge(gauge) => gauge.to_string(),
            Thickness::Length(length) => self.format().fine()?.string(length)?,
        };
        Ok(match sheet.coating() {
            Some(coating) => format!("{thickness} {} {coating}", sheet.alloy()),
            None => format!("{thickness} {}", sheet.alloy()),
        })
    }

    fn panels(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let sheet = self.sheet(self.job.metals.panel)?;
        let panel = &self.job.panel;
        for plane in self.planes {
            for group in &plane.laid.groups {
                let mut spec = format!("{}, {} {} seams, {sheet}", plane.name, self.format().string(panel.coverage)?, panel.seam.name());
                if group.width != panel.coverage {
                    spec.push_str(&format!(", to be ripped to cover {}", self.format().string(group.width)?));
                }
                let line = OrderLine::new(OrderGroup::Panels, "panel", spec, group.count, "each");
                out.push(OrderLine { mark: group.mark.clone(), length: Some(group.order), net: Some(group.total), ..line });
            }
        }
        let (length, mass) = coil(self.planes)?;
        if let Some(first) = self.planes.first() {
            let mut spec = format!("{} wide, {sheet}", self.format().string(first.laid.coil.width)?);
            let pairs = || self.planes.iter().flat_map(|p| &p.listed).flat_map(|l| &l.pairs);
            let saved = Length::total(pairs().map(|pair| &pair.saved))?;
            match pairs().count() {
                0 => {}
                n => spec.push_str(&format!(
                    ", {n} pair{} of skew pieces from one blank each, which saves {}",
                    if n == 1 { "" } else { "s" },
                    self.job.papers().lengths.string(saved)?
                )),
            }
            let line = OrderLine::new(OrderGroup::Coil, "coil for the panels", spec, 1, "coil");
            out.push(OrderLine { length: Some(length), net: Some(length), mass, ..line });
        }
        Ok(())
    }

    fn trims(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        for trim in self.trims {
            // Said once, on the first length that is bought of it.
            let mut net = Some(trim.total()?);
            for (stock, buy) in self.job.supplies.trims.stock.iter().zip(&trim.cutting.buy).filter(|(_, buy)| **buy > 0) {
                let narrow = match trim.tapered.as_ref().and_then(|t| t.pieces.last()) {
                    Some(top) => format!(" tapering to {}", self.format().string(top.trim.far.girth())?),
                    None => String::new(),
                };
                let spec = format!("girth {}{narrow}, {}, in {}", self.format().string(trim.flat.girth())?, self.sheet(trim.sheet)?, stock.label);
                let line = OrderLine::new(OrderGroup::Trims, trim.name.clone(), spec, u64::from(*buy), "stick");
                let source = Some(trim.flat.rule().source().clone());
                out.push(OrderLine { mark: trim.mark.clone(), length: Some(stock.length), net: net.take(), source, ..line });
            }
        }
        Ok(())
    }

    /// What the shop makes of the sticks at corners and ends of copings.
    fn coping_pieces(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let mark = |run: &str| {
            let is = |t: &&TrimItem| t.name == "coping" && t.runs.iter().any(|r| r.name == run);
            self.trims.iter().find(is).map_or(String::new(), |t| t.mark.clone())
        };
        let mut pieces: BTreeMap<(String, String, String), u64> = BTreeMap::new();
        for corner in &self.copings.corners {
            let legs = corner.legs.map(|leg| self.format().string(leg));
            let [first, second] = legs;
            let spec = format!("turns by {:.1} deg, legs {} and {}, mitred and sealed", corner.corner.turn.degrees().abs(), first?, second?);
            let entry = pieces.entry((format!("coping, {}", corner.corner.kind.name()), mark(&corner.runs[0]), spec)).or_default();
            *entry += 1;
        }
        for coping in &self.copings.items {
            let thick = self.format().string(coping.coping.thickness)?;
            for (item, n) in [("coping, end cap", coping.pieces.end_caps), ("coping, end turned up against a wall", coping.pieces.wall_ends)] {
                if n > 0 {
                    *pieces.entry((item.to_owned(), mark(&coping.name), format!("on a wall {thick} thick"))).or_default() += n;
                }
            }
        }
        for ((item, mark, spec), n) in pieces {
            out.push(OrderLine { mark, ..OrderLine::new(OrderGroup::Trims, item, spec, n, "each") });
        }
        Ok(())
    }

    /// What closes the ends of the other trims, like caps together; which goes where stands on the sheets of the lines.
    fn end_caps(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let mut caps: Vec<(&EndCap, u64)> = Vec::new();
        for cap in self.end_caps {
            match caps.iter_mut().find(|(first, _)| (&first.mark, &first.piece, first.hand) == (&cap.mark, &cap.piece, cap.hand)) {
                Some((_, n)) => *n += 1,
                None => caps.push((cap, 1)),
            }
        }
        caps.sort_by_key(|(cap, _)| (self.trims.iter().position(|t| t.mark == cap.mark), cap.hand));
        for (cap, n) in caps {
            let seen = if cap.hand == CapHand::Either { "" } else { ", seen from outside" };
            let made = self.cap_pieces.iter().find(|p| Some(&p.mark) == cap.piece.as_ref());
            let how = match made {
                Some(piece) => {
                    let (width, height) = piece.made.blank.bounds()?.size()?;
                    format!("blank {} by {}, {}", self.format().string(width)?, self.format().string(height)?, self.sheet(piece.sheet)?)
                }
                None => "no hollow: the end folded down".to_owned(),
            };
            let spec = format!("{}{seen}, {how}", cap.hand.name());
            let line = OrderLine::new(OrderGroup::Trims, format!("{}, end cap", cap.trim), spec, n, "each");
            out.push(OrderLine { mark: made.map_or_else(String::new, |p| p.mark.clone()), ..line });
        }
        Ok(())
    }

    /// The kick-outs, each with the least sheet that it is cut from.
    fn kick_outs(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        for item in self.kick_outs {
            let (asked, length) = (&item.piece.asked, |l: Length| self.format().string(l));
            let (width, height) = item.piece.blank.bounds()?.size()?;
            let (thrown, past, high) = (length(asked.detail.throw)?, length(asked.detail.past_eave)?, length(asked.leg)?);
            let blank = format!("blank {} by {}, {}", length(width)?, length(height)?, self.sheet(item.sheet)?);
            let spec = format!("wall on the {} up the slope, thrown {thrown} from the wall and {past} past the eave, {high} high, {blank}", asked.wall.name());
            let line = OrderLine::new(OrderGroup::Trims, "kick-out", spec, count(item.lines.len()), "each");
            out.push(OrderLine { mark: item.mark.clone(), ..line });
        }
        Ok(())
    }

    /// A boot for each pipe, like ones together.
    fn boots(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let mut boots: BTreeMap<String, u64> = BTreeMap::new();
        for item in self.pipes {
            let (pipe, made) = (&item.pipe, &item.made);
            let shape = pipe.base.shape.word();
            let (across, along) = (self.format().string(made.base_across)?, self.format().string((made.base_down + made.base_up).length()?)?);
            let spec = format!("for a pipe of {}, pitch {}, {shape} base {across} by {along}", self.format().string(pipe.diameter)?, pipe.pitch);
            *boots.entry(spec).or_default() += 1;
        }
        out.extend(boots.into_iter().map(|(spec, n)| OrderLine::new(OrderGroup::Pipes, "pipe boot with its clamp", spec, n, "each")));
        Ok(())
    }

    fn closures(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        // Like pieces of all lines together; which goes where stands on the sheets of the lines.
        let mut pieces: BTreeMap<(String, String), (u64, Length)> = BTreeMap::new();
        // Blanks of one section are cut from one strip: girth, web and flanges, and the lengths with their counts.
        let mut strips: BTreeMap<[Length; 4], BTreeMap<Length, u32>> = BTreeMap::new();
        for row in self.junctions.iter().flat_map(|j| &j.along.closures) {
            for group in &row.list.groups {
                let piece = &group.piece;
                let mut item = "closure".to_owned();
                let skew = piece.flange_cut.degrees() - 90.0;
                if skew.abs() > 1e-9 {
                    item.push_str(if skew > 0.0 { ", left hand" } else { ", right hand" });
                }
                let spec = format!(
                    "between seams {}, web {}, tabs bent {:.1} and {:.1} deg, blank {} by {}",
                    self.format().string(piece.length)?,
                    self.format().string(piece.web_height)?,
                    piece.tab_bends.0.degrees(),
                    piece.tab_bends.1.degrees(),
                    self.format().string(piece.blank.length)?,
                    self.format().string(piece.blank.width)?,
                );
                let entry = pieces.entry((item, spec)).or_insert((0, piece.blank.length));
                entry.0 += count(group.count);
                let section = [piece.blank.width, piece.web_height, group.bay.lower_flange, group.bay.top_flange];
                let of = strips.entry(section).or_default().entry(piece.blank.length).or_default();
                *of = of.saturating_add(u32::try_from(group.count).unwrap_or(u32::MAX));
            }
        }
        for ((item, spec), (n, length)) in pieces {
            out.push(OrderLine { length: Some(length), ..OrderLine::new(OrderGroup::Closures, item, spec, n, "each") });
        }
        match &self.job.supplies.closures.sticks {
            Some(sticks) => self.closure_sticks(sticks, strips, out),
            None => Ok(()),
        }
    }

    /// The sticks that the pieces are cut from.
    fn closure_sticks(&self, sticks: &ClosureSticks, strips: BTreeMap<[Length; 4], BTreeMap<Length, u32>>, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        for (section, blanks) in strips {
            let [girth, web, lower, top] = section.map(|l| self.format().string(l));
            let (girth, web, lower, top) = (girth?, web?, lower?, top?);
            let pieces: Vec<Piece> = blanks.into_iter().map(|(length, count)| Piece { label: "closure".into(), length, count }).collect();
            let cutting = Cutting { stock: sticks.stock.clone(), pieces, kerf: sticks.kerf, end_loss: sticks.end_loss };
            // A piece too long, or too many of them, is cured by what is chosen here.
            let plan = cutting.compute().map_err(|e| e.under(STICKS).moved(&format!("{STICKS}.pieces"), &format!("{STICKS}.stock")))?;
            let mut net = Some(plan.scrap.pieces);
            for (stock, buy) in sticks.stock.iter().zip(&plan.buy).filter(|(_, buy)| **buy > 0) {
                let spec = format!("girth {girth}, for webs of {web} and flanges of {lower} and {top}, in {}", stock.label);
                let line = OrderLine::new(OrderGroup::Closures, "closure strip", spec, u64::from(*buy), "stick");
                out.push(OrderLine { length: Some(stock.length), net: net.take(), ..line });
            }
        }
        Ok(())
    }

    fn sealant(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let supply = &self.job.supplies.sealant;
        let mut totals = sealant_totals(self.junctions.iter().map(|j| &j.along))?;
        for coping in &self.copings.items {
            let joint = self.job.copings.get(coping.run.coping).map(|c| &c.joint);
            if let Some(joint) = joint {
                totals.add_bead(joint.bead_width, joint.bead_depth, (coping.pieces.bead + coping.pieces.end_bead).length()?)?;
            }
        }
        for pipe in self.pipes {
            totals.add_tape(pipe.pipe.base.tape_width, pipe.made.tape)?;
            totals.add_bead(pipe.collar_bead.width, pipe.collar_bead.depth, pipe.made.collar)?;
        }
        for tape in &totals.tapes {
            let need = tape.order(supply.roll, supply.tape_laps.lap, supply.tape_waste_ratio).map_err(|e| placed(e, "tape_waste_ratio"))?;
            let mut spec = format!("{} wide, rolls of {}", self.format().string(tape.width)?, self.job.papers().lengths.string(supply.roll)?);
            match need.splices {
                0 => {}
                1 => spec.push_str(", 1 splice"),
                n => spec.push_str(&format!(", {n} splices")),
            }
            let line = OrderLine::new(OrderGroup::Sealant, "sealant tape", spec, u64::from(need.rolls), "roll");
            out.push(OrderLine { length: Some(supply.roll), net: Some(tape.length), ..line });
        }
        for bead in &totals.beads {
            let need = bead.order(supply.tube, supply.tube_waste_ratio).map_err(|e| placed(e, "tube_waste_ratio"))?;
            let spec = format!("bead {} by {}", self.format().string(bead.width)?, self.format().string(bead.depth)?);
            let line = OrderLine::new(OrderGroup::Sealant, "gun sealant", spec, u64::from(need.tubes), "tube");
            out.push(OrderLine { net: Some(bead.length), ..line });
        }
        if totals.plugs > 0 && supply.line.plugs {
            out.push(OrderLine::new(OrderGroup::Sealant, "seam plug", "hollow of a seam under a closure", count(totals.plugs), "each"));
        }
        Ok(())
    }

    /// What builds decks up under all of a plane, and what lies under the flange of a transition alone.
    fn packing(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        for plane in self.planes {
            let Some(thick) = self.built_up.get(plane.plane).filter(|t| t.is_positive()) else { continue };
            let area = plane.layout.outline.area();
            let area = match self.format().is_inch() {
                true => format!("{:.0} sq ft", area.get(AreaUnit::SquareFoot)),
                false => format!("{:.1} m2", area.get(AreaUnit::SquareMetre)),
            };
            let spec = format!("all of {}, {} thick, {area}", plane.name, self.format().fine()?.string(*thick)?);
            out.push(OrderLine::new(OrderGroup::Packing, "packing over the deck", spec, 1, "lot"));
        }
        for junction in self.junctions {
            for (height, reach) in
                junction.section.adjoining.iter().filter_map(|a| if let Adjoining::Packing { height, reach } = a { Some((*height, *reach)) } else { None })
            {
                let (thick, wide) = (self.format().fine()?.string(height)?, self.format().string((reach.1 - reach.0).length()?)?);
                let spec = format!("under the upper flange of {}, {thick} thick, {wide} wide, tapered off above", junction.name);
                let line = OrderLine::new(OrderGroup::Packing, "packing under a flange", spec, 1, "lot");
                out.push(OrderLine { net: Some(junction.along.length), ..line });
            }
        }
        Ok(())
    }

    /// Rolls of underlayment and membranes, with what is net laid of each.
    fn underlayment(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        let (Some(plan), Some(supply)) = (self.underlayment, &self.job.supplies.underlayment) else { return Ok(()) };
        let mut add = |item: &str, roll: Roll, rolls: u32, net: Length, source: Option<Source>| -> Result<(), Error> {
            if rolls > 0 {
                let spec = format!("{} wide, rolls of {}", self.format().string(roll.width)?, self.job.papers().lengths.string(roll.length)?);
                let line = OrderLine::new(OrderGroup::Underlayment, item, spec, u64::from(rolls), "roll");
                out.push(OrderLine { length: Some(roll.length), net: Some(net), source, ..line });
            }
            Ok(())
        };
        let field = Length::total(plan.planes.iter().filter_map(|p| p.field.as_ref()).map(|f| &f.length))?;
        add("underlayment", supply.roll, plan.field_rolls, field, Some(supply.rule.source.clone()))?;
        if let Some(eave) = &supply.eave {
            let net = Length::total(plan.planes.iter().flat_map(|p| &p.eaves).map(|e| &e.laid.length))?;
            add("membrane along eaves", eave.roll, plan.eave_rolls, net, Some(eave.reach.source.clone()))?;
        }
        if let Some(valley) = &supply.valley {
            add("membrane under valleys", valley.roll, plan.valley_rolls, Length::total(plan.valleys.iter().map(|v| &v.strip.length))?, None)?;
        }
        Ok(())
    }

    fn clips(&self, out: &mut Vec<OrderLine>) {
        for engineered in [true, false] {
            let schedules = || self.clips.iter().filter(move |c| c.schedule.engineered == engineered);
            let Some(first) = schedules().next() else { continue };
            let marked = |line: OrderLine| OrderLine { engineered: Some(engineered), source: Some(first.rule.source().clone()), ..line };
            let clips = count(schedules().map(|c| c.schedule.clips).sum());
            let screws = count(schedules().map(|c| c.schedule.screws).sum());
            out.push(marked(OrderLine::new(OrderGroup::Clips, "clip", format!("{} seam", self.job.panel.seam.name()), clips, "each")));
            out.push(marked(OrderLine::new(OrderGroup::Fasteners, "clip screw", "low-profile head, into the structure", screws, "each")));
        }
    }

    fn fasteners(&self, out: &mut Vec<OrderLine>) -> Result<(), Error> {
        // Rows alike in all but their source stay apart: each line of the order says what it rests on.
        let mut rows: BTreeMap<RowKey<'_>, (u64, Source)> = BTreeMap::new();
        for row in fastener_rows(self.junctions, &self.copings.items, self.pipes) {
            let bites = match row.bites {
                Bites::Structure => "into the structure",
                Bites::Panel => "into the panel alone",
                Bites::Slot => "through a slot",
                Bites::Trim => "through sheets",
            };
            let key = (row.name, bites, row.engineered, self.format().string(row.spacing)?, row.source.to_string());
            rows.entry(key).or_insert((0, row.source.clone())).0 += row.count;
        }
        for ((name, bites, engineered, spacing, _), (n, source)) in rows {
            let line = OrderLine::new(OrderGroup::Fasteners, name, format!("{bites}, {spacing} on centre"), n, "each");
            out.push(OrderLine { engineered: Some(engineered), source: Some(source), ..line });
        }
        Ok(())
    }
}

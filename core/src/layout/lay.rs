//! The laying itself.

use super::cautions;
use super::clip::{Clipper, Part, Run, Segment};
use super::extent::Extent;
use super::grid::Grid;
use super::input::{EdgeUse, Layout, LengthLimit, NarrowChoice};
use super::laid::{Coil, EndPart, Group, LaidPanel, LaidPlane, Notch, mark};
use super::measure::{Measured, measure};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::panel::Hold;
use crate::record::{Calculation, Caution, CautionCode, Recorder, Source, Step};
use crate::roof::Point;
use crate::units::{Angle, Area, AreaUnit, Length, Mass, MassUnit, ShopRounding, Sum, SurfaceMassUnit};

/// Pieces that one panel may be lapped from.
const PIECES: i64 = 1000;

/// How often something happened, and where first.
#[derive(Default)]
struct Count {
    times: usize,
    first: String,
}

impl Count {
    fn add(&mut self, path: impl FnOnce() -> String) {
        if self.times == 0 {
            self.first = path();
        }
        self.times += 1;
    }

    fn caution(self, code: CautionCode, source: Source, out: &mut Vec<Caution>, with: impl FnOnce(Caution) -> Caution) {
        if self.times > 0 {
            out.push(with(Caution::new(code, self.first, source).arg("count", self.times)));
        }
    }
}

#[derive(Default)]
struct Seen {
    vanished: Count,
    notched: Count,
    lapped: Count,
    both_skew: Count,
    pinned_twice: Count,
}

/// The two sides of a run, at which most of its points lie: each in millimetres from the middle, and its x.
struct Sides<'a> {
    grid: &'a Grid,
    left: (f64, Length),
    right: (f64, Length),
}

impl Sides<'_> {
    fn x(&self, mm: f64) -> Result<Length, Error> {
        match mm.to_bits() {
            bits if bits == self.left.0.to_bits() => Ok(self.left.1),
            bits if bits == self.right.0.to_bits() => Ok(self.right.1),
            _ => self.grid.x(mm),
        }
    }
}

fn path(strip: usize, run: usize) -> String {
    format!("strips[{strip}].runs[{run}]")
}

impl Layout {
    /// The outline's edges that can end a panel, and those of its breaks, with what their ends add along a seam; and the skew of every edge.
    #[allow(clippy::cast_precision_loss, reason = "an outline's differences are exact in floating point")]
    pub(super) fn segments(&self, grid: &Grid) -> Result<(Vec<Segment>, Vec<Angle>), Error> {
        let foot = self.outline.bounds().low.y;
        let mut out = Vec::with_capacity(self.edges.len());
        let mut skews = Vec::with_capacity(self.edges.len());
        for ((edge, e), edge_use) in self.outline.edges().enumerate().zip(&self.edges) {
            let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            let (across, up) = ((b.x - a.x).pm() as f64, (b.y - a.y).pm() as f64);
            let Some(mut segment) = Segment::of(edge, &e, grid, foot)? else {
                skews.push(Angle::degrees_from(num::atan2_deg(up, across))?);
                continue;
            };
            let mut skew = (up, across);
            if let EdgeUse::End(end) = edge_use {
                let path = || format!("edges[{edge}]");
                let beyond = end.allowance().map_err(|e| e.under(&path()))?.mm();
                let on = match end.grows {
                    None => end.on_edge(beyond, (across, up), 1.0),
                    Some(_) if up == 0.0 => {
                        let fault = Error::new(ErrorKind::Geometry, "a hold-back that grows down its line lies at a level edge").at(path());
                        return Err(fault.accepts("an edge with an upper and a lower end"));
                    }
                    Some(_) => {
                        // The plane lies on the left of its edges: below one that runs to the left.
                        let outward = if e.from.x < e.to.x { -1.0 } else { 1.0 };
                        let on = end.on_edge(beyond, (across / 1e9, up / 1e9), outward);
                        skew = (on.slope, 1.0);
                        on
                    }
                };
                (segment.allowance, segment.trim, segment.pins) = (on.ends, end.field_trim.mm() * on.each, end.hold == Hold::Pins);
            }
            skews.push(Angle::degrees_from(num::atan2_deg(skew.0, skew.1))?);
            out.push(segment);
        }
        self.break_segments(&mut out, grid)?;
        Ok((out, skews))
    }

    fn rule(&self, m: &Measured) -> ShopRounding {
        match (m.lower_finished, m.upper_finished) {
            (true, true) => self.rounding.both_finished,
            (false, false) => self.rounding.field_cut,
            _ => self.rounding.one_finished,
        }
    }

    fn end_parts(&self, parts: &[Part<'_>], sides: &Sides<'_>, skews: &[Angle]) -> Result<Vec<EndPart>, Error> {
        let foot = self.outline.bounds().low.y;
        let point = |p: &Part<'_>, x: f64| -> Result<Point, Error> { Ok(Point::new(sides.x(x)?, (foot + Length::from_mm(p.line.y(x))?).length()?)) };
        let mut out = Vec::with_capacity(parts.len());
        for p in parts {
            let skew = skews.get(p.line.edge).copied().unwrap_or_default();
            out.push(EndPart { edge: p.line.edge, left: point(p, p.x0)?, right: point(p, p.x1)?, skew });
        }
        Ok(out)
    }

    /// One run's panel; `None` where hold-backs leave nothing of it.
    fn panel_of<R: Recorder>(&self, run: &Run<'_>, m: &Measured, grid: &Grid, skews: &[Angle], r: &mut R) -> Result<Option<LaidPanel>, Error> {
        let finished = Length::from_mm(m.finished)?;
        r.step(|| {
            let show = |mm: f64| Length::from_mm(mm).map_or_else(|_| format!("{mm} mm"), |l| l.to_string());
            Step::new("finished length")
                .formula("clear + lower end + upper end, each d / sin(meeting angle), where it is greatest")
                .with("clear", show(m.clear))
                .with("lower end", show(m.lower_allowance))
                .with("upper end", show(m.upper_allowance))
                .with("at x", grid.x(m.at).map_or_else(|_| show(m.at), |x| x.to_string()))
                .gives(finished)
                .source(Source::geometry())
        });
        if !finished.is_positive() {
            return Ok(None);
        }
        let blank = Length::from_mm(m.blank)?;
        let ordered = Length::from_mm(m.ordered)?;
        r.step(|| Step::new("blank").formula("highest - lowest point of the finished panel").gives(blank).source(Source::geometry()));
        let rule = self.rule(m);
        let (order, pieces) = cut_to_limit(ordered, rule, self.limit.as_ref())?;
        r.step(|| {
            Step::new("order length")
                .formula("blank with the field trim of both ends, in pieces, rounded")
                .with("untrimmed", ordered)
                .with("pieces", pieces)
                .with("step", rule.increment())
                .with("rounding", rule.rounding().name())
                .gives(order)
                .source(Source::CommonPractice)
        });
        let sides = Sides { grid, left: (run.left, grid.x(run.left)?), right: (run.right, grid.x(run.right)?) };
        let side = |mm: f64| -> Result<Option<Length>, Error> { Ok(Some(Length::from_mm(mm)?).filter(|l| l.is_positive())) };
        Ok(Some(LaidPanel {
            strip: 0,
            run: 0,
            left: sides.left.1,
            right: sides.right.1,
            width: Length::from_mm(run.right - run.left)?,
            left_on_seam: grid.is_seam(run.left)?,
            right_on_seam: grid.is_seam(run.right)?,
            lower: self.end_parts(run.lower, &sides, skews)?,
            upper: self.end_parts(run.upper, &sides, skews)?,
            left_length: side(m.left)?,
            right_length: side(m.right)?,
            finished,
            blank,
            order,
            pieces,
            group: 0,
            covered: Area::of(run.area, AreaUnit::SquareMillimetre),
            notched: !run.notches.is_empty() || m.stepped,
            notches: run
                .notches
                .iter()
                .map(|n| Ok(Notch { lower: self.end_parts(&n.lower, &sides, skews)?, upper: self.end_parts(&n.upper, &sides, skews)? }))
                .collect::<Result<_, Error>>()?,
            pinned_twice: m.pinned_twice,
        }))
    }

    fn narrow_panel(&self, panel: &LaidPanel, cautions: &mut Vec<Caution>, faults: &mut Faults) {
        let Some(limit) = self.narrow.filter(|n| panel.width < n.least) else { return };
        let path = path(panel.strip, panel.run);
        match limit.choice {
            NarrowChoice::Report => {
                cautions.push(Caution::new(cautions::NARROW_PANEL, path, Source::user()).arg("width", panel.width).arg("least", limit.least));
            }
            NarrowChoice::Refuse => faults.add(
                Error::new(ErrorKind::Impossible, "a panel is narrower than the limit")
                    .at(path)
                    .value_of(panel.width)
                    .accepts(format!("at least {}", limit.least))
                    .cured_by("another start or datum"),
            ),
        }
    }
}

/// The order length of each piece, and how many pieces.
fn cut_to_limit(ordered: Length, rule: ShopRounding, limit: Option<&LengthLimit>) -> Result<(Length, u32), Error> {
    let whole = rule.round(ordered)?;
    let Some(limit) = limit.filter(|l| whole > l.length) else { return Ok((whole, 1)) };
    let Some(lap) = limit.end_lap else {
        return Err(Error::new(ErrorKind::Impossible, format!("a panel is longer than {} allows", limit.governs.name()))
            .value_of(whole)
            .accepts(format!("at most {}", limit.length))
            .cured_by("allow end laps"));
    };
    // n pieces with n - 1 laps of equal length; rounding up may ask for one piece more.
    let (net, room) = ((ordered - lap).pm(), (limit.length - lap).pm());
    let least = i64::try_from((net + room - 1).div_euclid(room)).unwrap_or(i64::MAX).max(2);
    for n in [least, least.saturating_add(1)].into_iter().filter(|&n| n <= PIECES) {
        let (Ok(pieces), Ok(laps)) = (u32::try_from(n), i32::try_from(n - 1)) else { continue };
        let piece = rule.round((ordered + lap * laps).length()?.station(1, pieces)?)?;
        if piece <= limit.length {
            return Ok((piece, pieces));
        }
    }
    Err(Error::new(ErrorKind::Impossible, "no number of lapped pieces keeps to the limit")
        .value_of(whole)
        .accepts(format!("pieces of at most {} with laps of {lap}, at most {PIECES} of them", limit.length))
        .cured_by("a limit that is a whole number of rounding steps, a finer step, or a shorter lap"))
}

/// Groups panels by order length and width, the longest and then the widest first, and tells each panel its group.
fn group(panels: &mut [LaidPanel]) -> Result<Vec<Group>, Error> {
    let mut keys: Vec<(Length, Length)> = panels.iter().map(|p| (p.order, p.width)).collect();
    keys.sort_unstable_by(|a, b| b.cmp(a));
    keys.dedup();
    let mut counts: Vec<u64> = vec![0; keys.len()];
    for panel in panels {
        if let Ok(k) = keys.binary_search_by(|key| (panel.order, panel.width).cmp(key))
            && let Some(count) = counts.get_mut(k)
        {
            panel.group = k;
            *count += u64::from(panel.pieces);
        }
    }
    keys.into_iter()
        .zip(counts)
        .enumerate()
        .map(|(k, ((order, width), count))| {
            let total = i128::from(order.pm()) * i128::from(count);
            let total = i64::try_from(total).map(Length::from_pm).map_err(|_| {
                Error::new(ErrorKind::Overflow, "a total of order lengths is too large").at(format!("groups[{k}]")).accepts("at most 9 223 372 m")
            })?;
            Ok(Group { mark: mark(k), order, width, count, total })
        })
        .collect()
}

impl Calculation for Layout {
    type Out = LaidPlane;

    fn title(&self) -> String {
        format!("panels of a plane, coverage {}", self.panel.coverage)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LaidPlane, Error> {
        self.lay(r).map(|(laid, _)| laid)
    }
}

impl Layout {
    /// The plane with its panels, and where each lies along the seams.
    pub(super) fn lay<R: Recorder>(&self, r: &mut R) -> Result<(LaidPlane, Vec<Extent>), Error> {
        self.check()?;
        let developed = r.part(|| self.panel.title(), |r| self.panel.run(r))?;
        let grid = Grid::new(&self.outline.bounds(), self.panel.coverage, self.start)?;
        let (mut segments, skews) = self.segments(&grid)?;
        let mut clipper = Clipper::new(&mut segments);
        let (mut panels, mut extents) = (Vec::with_capacity(grid.count()), Vec::with_capacity(grid.count()));
        let mut cautions = developed.cautions;
        let mut faults = Faults::default();
        let mut seen = Seen::default();
        let (mut covered, mut uncovered) = (0.0, 0.0);
        for (s, strip) in grid.strips().enumerate() {
            clipper.cut(strip.left, strip.right);
            for (k, run) in clipper.runs().enumerate() {
                let Some(m) = measure(&run) else { continue };
                let laid = r.part(|| format!("strip {}, run {}", s + 1, k + 1), |r| self.panel_of(&run, &m, &grid, &skews, r));
                let Some(laid) = faults.keep(laid.map_err(|e| e.under(&path(s, k)))) else { continue };
                let Some(mut panel) = laid else {
                    uncovered += run.area;
                    seen.vanished.add(|| path(s, k));
                    continue;
                };
                (panel.strip, panel.run) = (s, k);
                if let Some(fault) = self.unbroken(panel.notches.iter().flat_map(|n| n.lower.iter().chain(&n.upper)).map(|part| part.edge)) {
                    faults.add(fault.value_of(path(s, k)));
                    continue;
                }
                covered += run.area;
                for (count, is) in [
                    (&mut seen.notched, panel.notched),
                    (&mut seen.lapped, panel.pieces > 1),
                    (&mut seen.both_skew, m.both_skew && panel.blank > panel.finished),
                    (&mut seen.pinned_twice, panel.pinned_twice),
                ] {
                    if is {
                        count.add(|| path(s, k));
                    }
                }
                self.narrow_panel(&panel, &mut cautions, &mut faults);
                panels.push(panel);
                extents.extend(faults.keep(Extent::of(&m)));
            }
        }
        faults.check()?;
        seen.vanished.caution(cautions::NO_PANEL, Source::geometry(), &mut cautions, |c| c);
        seen.notched.caution(cautions::NOTCHED, Source::geometry(), &mut cautions, |c| c);
        if let Some(limit) = self.limit {
            let lap = limit.end_lap.unwrap_or_default();
            seen.lapped.caution(cautions::END_LAPPED, Source::user(), &mut cautions, |c| {
                c.arg("limit", limit.length).arg("governs", limit.governs.name()).arg("lap", lap)
            });
        }
        seen.both_skew.caution(cautions::BOTH_ENDS_SKEW, Source::geometry(), &mut cautions, |c| c);
        seen.pinned_twice.caution(cautions::PINNED_TWICE, Source::CommonPractice, &mut cautions, |c| c);

        let groups = group(&mut panels)?;
        let length = groups.iter().map(|g| g.total).sum::<Sum>().length().map_err(|e| e.under("coil.length"))?;
        let width = developed.total;
        let area = length.times(width);
        let mass = self.sheet.map(|m| Mass::of(area.get(AreaUnit::SquareMetre) * m.get(SurfaceMassUnit::KilogramPerSquareMetre), MassUnit::Kilogram));
        r.step(|| {
            let step = Step::new("coil").formula("all order lengths x developed width").with("length", length).with("width", width);
            let step = if let Some(sheet) = self.sheet { step.with("sheet", sheet) } else { step };
            match mass {
                Some(mass) => step.gives(format_args!("{area}, {mass}")),
                None => step.gives(area),
            }
        });
        let laid = LaidPlane {
            panels,
            groups,
            seams: grid.seams().collect::<Result<_, _>>()?,
            coil: Coil { width, length, area, mass },
            covered: Area::of(covered, AreaUnit::SquareMillimetre),
            uncovered: Area::of(uncovered, AreaUnit::SquareMillimetre),
            cautions,
        };
        Ok((laid, extents))
    }
}

//! The shift of the seams that keeps them clear, with what it costs.

use super::super::cautions;
use super::super::grid::{Grid, Start};
use super::super::input::Layout;
use super::super::laid::LaidPlane;
use super::clear_of::{ClearOf, ClearRange, LayCost, Prefer, SeamDistance, SeamShift};
use super::clear_search::{Circle, Wave};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;
use std::collections::BTreeSet;

/// Things that one search may keep clear of.
const THINGS: usize = 200;
/// Whole layouts that one search may try.
const LAYOUTS: usize = 1000;

/// The seams of a plane moved as a whole, so that they keep clear of what stands in it.
///
/// Seams are taken as lines through the whole plane, and those that would lie beyond its bounds count as well. Where no shift keeps clear of everything, the one
/// with the least shortfall is given, with a caution for each thing that it is too near to. A least width of the layout holds for its two end panels, if
/// some shift that keeps clear allows it.
///
/// ```
/// # use seamwright::layout::{ClearOf, EdgeUse, Layout, Obstacle, Prefer, SeamClearance, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 100), p(0, 100)], vec![])?;
/// # let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let pipe = |x: i16| ClearOf { name: "pipe".into(), what: Obstacle::Round { centre: p(x, 50), diameter: Length::inches(4) }, clearance: Length::inches(1) };
/// let found = SeamClearance { layout, clear_of: vec![pipe(17), pipe(28)], prefer: Prefer::Clearest }.compute()?;
/// // Between the two, as far from the one as from the other.
/// assert_eq!(found.distances[0].distance, Length::parse("3 1/2\"")?);
/// assert_eq!(found.distances[1].distance, Length::parse("3 1/2\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SeamClearance {
    /// The layout, with the start asked for.
    pub layout: Layout,
    /// What seams keep clear of.
    pub clear_of: Vec<ClearOf>,
    /// Which of the shifts that keep clear is chosen.
    pub prefer: Prefer,
}

impl SeamClearance {
    fn waves(&self) -> Result<Vec<Wave>, Error> {
        if self.clear_of.len() > THINGS {
            return Err(Error::new(ErrorKind::TooLarge, "too many things to keep clear of")
                .at("clear_of")
                .value_of(self.clear_of.len())
                .accepts(format!("at most {THINGS} on a plane")));
        }
        let (bounds, coverage) = (self.layout.outline.bounds(), self.layout.panel.coverage);
        let mut faults = Faults::default();
        let mut out = Vec::with_capacity(self.clear_of.len());
        for (i, thing) in self.clear_of.iter().enumerate() {
            let across = faults.keep(thing.checked(&bounds, coverage).map_err(|e| e.under(&format!("clear_of[{i}]")).about(&thing.name)));
            out.extend(across.map(|(left, right)| Wave { left: left.pm().into(), right: right.pm().into(), clearance: thing.clearance.pm().into() }));
        }
        faults.check()?;
        Ok(out)
    }

    fn circle(&self) -> Result<Circle, Error> {
        self.layout.check().map_err(|e| e.under("layout"))?;
        let (bounds, coverage) = (self.layout.outline.bounds(), self.layout.panel.coverage);
        let asked = Grid::new(&bounds, coverage, self.layout.start).and_then(|g| g.seam()).map_err(|e| e.under("layout"))?;
        let (low, high) = (bounds.low.x.pm().into(), bounds.high.x.pm().into());
        Ok(Circle { coverage: coverage.pm().into(), asked: asked.pm().into(), waves: self.waves()?, low, high })
    }

    /// The layout with its seams moved so far.
    fn moved(&self, circle: &Circle, shift: i128) -> Result<Layout, Error> {
        let seam = (Length::from_pm(i64::try_from(circle.asked).unwrap_or(i64::MAX)) + length(shift)?).length()?;
        Ok(Layout { start: if shift == 0 { self.layout.start } else { Start::Datum(seam) }, ..self.layout.clone() })
    }

    /// The shift with the least coil, of those that keep clear.
    fn least_coil(&self, circle: &Circle, allowed: &BTreeSet<i128>) -> Result<Option<i128>, Error> {
        if allowed.len() > LAYOUTS {
            return Err(Error::new(ErrorKind::TooLarge, "the outline has too many corners to lay the plane for each")
                .at("prefer")
                .value_of("least-coil")
                .accepts(format!("another preference, or an outline that asks for at most {LAYOUTS} layouts")));
        }
        let mut best: Option<((i64, usize, i128), i128)> = None;
        for &shift in allowed {
            // A shift that the layout's own limits refuse is none to choose.
            let Ok(laid) = self.moved(circle, shift)?.compute() else { continue };
            let key = (laid.coil.length.pm(), laid.panels.len(), shift.abs());
            if best.as_ref().is_none_or(|(least, _)| key < *least) {
                best = Some((key, shift));
            }
        }
        Ok(best.map(|(_, shift)| shift))
    }

    fn choose(&self, circle: &Circle) -> Result<i128, Error> {
        let least = self.layout.narrow.map(|n| i128::from(n.least.pm()));
        let mut tried: BTreeSet<i128> = circle.edges().chain(circle.end_shifts(least)).collect();
        tried.insert(0);
        if self.prefer == Prefer::LeastCoil {
            tried.extend(self.layout.outline.rings().flatten().map(|p| circle.turned(i128::from(p.x.pm()) - circle.asked)));
        } else {
            tried.extend(circle.balances());
        }
        let wide = |t: i128| least.is_none_or(|least| circle.ends(t).0.min(circle.ends(t).1) >= least);
        let clear: BTreeSet<i128> = tried.iter().copied().filter(|&t| circle.is_clear(t)).collect();
        let wide: BTreeSet<i128> = clear.iter().copied().filter(|&t| wide(t)).collect();
        let allowed = if wide.is_empty() { clear } else { wide };
        if allowed.is_empty() {
            let all: BTreeSet<i128> = tried.into_iter().chain(circle.balances()).collect();
            return Ok(all.into_iter().min_by_key(|&t| (core::cmp::Reverse(circle.worst(t)), t.abs())).unwrap_or(0));
        }
        let room = |t: i128| core::cmp::Reverse(circle.worst(t));
        let found = match self.prefer {
            Prefer::Nearest => allowed.iter().copied().min_by_key(|&t| (t.abs(), room(t))),
            Prefer::Clearest => allowed.iter().copied().min_by_key(|&t| (room(t), t.abs())),
            Prefer::WidestEnds => allowed.iter().copied().min_by_key(|&t| (core::cmp::Reverse(circle.ends(t).0.min(circle.ends(t).1)), t.abs())),
            Prefer::LeastCoil => self.least_coil(circle, &allowed)?,
        };
        Ok(found.unwrap_or(0))
    }
}

fn length(pm: i128) -> Result<Length, Error> {
    i64::try_from(pm).map(Length::from_pm).map_err(|_| Error::new(ErrorKind::Overflow, "a shift is too large").accepts("at most 9 223 372 m"))
}

fn cost(laid: &LaidPlane) -> LayCost {
    LayCost {
        panels: laid.panels.len(),
        pieces: laid.groups.iter().map(|g| g.count).sum(),
        lengths: laid.groups.len(),
        coil: laid.coil.length,
        mass: laid.coil.mass,
    }
}

impl Calculation for SeamClearance {
    type Out = SeamShift;

    fn title(&self) -> String {
        format!("seams kept clear of {} thing(s)", self.clear_of.len())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SeamShift, Error> {
        let circle = self.circle()?;
        let shift = self.choose(&circle)?;
        let layout = self.moved(&circle, shift)?;
        let seam = length(circle.asked + shift)?;
        let mut distances = Vec::with_capacity(self.clear_of.len());
        let mut cautions = Vec::new();
        for (i, (thing, wave)) in self.clear_of.iter().zip(&circle.waves).enumerate() {
            let (at, distance) = circle.nearest(wave, shift);
            let found = SeamDistance { name: thing.name.clone(), seam: length(at)?, distance: length(distance)?, spare: length(distance - wave.clearance)? };
            r.step(|| {
                Step::new("nearest seam")
                    .formula("distance across the slope - clearance")
                    .with("of", &found.name)
                    .with("seam at x", found.seam)
                    .with("distance", found.distance)
                    .with("clearance", thing.clearance)
                    .gives(found.spare)
                    .source(Source::geometry())
            });
            if found.spare.is_negative() {
                let caution = Caution::new(cautions::SEAM_NOT_CLEAR, format!("clear_of[{i}]"), Source::user());
                cautions.push(caution.arg("name", &found.name).arg("distance", found.distance).arg("clearance", thing.clearance));
            }
            distances.push(found);
        }
        let asked = self.layout.compute().ok().as_ref().map(cost);
        let laid = r.part(|| layout.title(), |r| layout.run(r)).map_err(|e| e.under("layout"))?;
        let found = cost(&laid);
        cautions.extend(laid.cautions);
        r.step(|| {
            let asked = asked.map_or_else(|| "refused".to_owned(), |c| format!("{} panels, {} of coil", c.panels, c.coil));
            Step::new("cost").with("as asked", asked).gives(format_args!("{} panels, {} of coil", found.panels, found.coil))
        });
        let (left, right) = circle.ends(shift);
        let ranges = circle.ranges().into_iter().map(|(from, to)| Ok(ClearRange { from: length(from)?, to: length(to)? })).collect::<Result<_, Error>>()?;
        Ok(SeamShift {
            start: Start::Datum(seam),
            shift: length(shift)?,
            clear: circle.is_clear(shift),
            distances,
            ranges,
            left_end: length(left)?,
            right_end: length(right)?,
            asked,
            found,
            cautions,
        })
    }
}

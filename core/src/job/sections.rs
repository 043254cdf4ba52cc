//! The section of every line: the detail chosen for it met with the planes beside it.

use super::cautions::JOINT_EDGE_SHEET;
use super::choices::{Chosen, Detail};
use super::input::Job;
use super::lay::PlaneLay;
use crate::error::{Error, ErrorKind};
use crate::junction::{
    CurbBack, Eave, ExpansionAlong, ExpansionAlongDetail, Headwall, HighSide, Hip, JointMoves, JointSide, Levels, PanelEdge, PitchTransition, Rake, Ridge,
    RoofSide, Sidewall, Solved, Step, Valley, WallHand,
};
use crate::pitch::Corner;
use crate::record::{self, Calculation, Caution, Recorder, Source};
use crate::roof::{Line, LineKind, Plane, Roof, Side};
use crate::units::{Angle, Length};

/// Which sides of a line are the first and the second of its section.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Order {
    pub(super) first: usize,
    pub(super) second: Option<usize>,
}

/// The first side of a transition, of a step and of a joint across the panels is the lower plane; elsewhere the order is the roof's own.
pub(super) fn order(line: &Line) -> Order {
    match line.crossing().filter(|_| line.kind.parts_a_slope()) {
        Some((upper, lower)) => Order { first: lower, second: Some(upper) },
        None => Order { first: line.side.plane, second: line.other().map(|s| s.plane) },
    }
}

/// Whether the line's section needs the laid panels, and sets no panel end.
pub(super) const fn along_the_seams(kind: LineKind) -> bool {
    matches!(kind, LineKind::Rake | LineKind::Sidewall | LineKind::CurbSide | LineKind::ExpansionAlong)
}

/// What every section is drawn with.
pub(super) struct Sections<'a> {
    pub(super) job: &'a Job,
    pub(super) roof: &'a Roof,
    /// What builds each plane's deck up.
    pub(super) built_up: Vec<Length>,
}

impl Sections<'_> {
    /// The layers on the deck of a plane.
    pub(super) fn levels(&self, plane: usize) -> Levels {
        Levels { built_up: self.built_up.get(plane).copied().unwrap_or_default(), ..self.job.layers() }
    }

    fn plane(&self, number: usize) -> Result<&Plane, Error> {
        self.roof.planes().get(number).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(number))
    }

    pub(super) fn side(&self, plane: usize) -> Result<RoofSide, Error> {
        Ok(RoofSide { pitch: self.plane(plane)?.pitch(), levels: self.levels(plane) })
    }

    fn second(order: Order) -> Result<usize, Error> {
        order.second.ok_or_else(|| Error::new(ErrorKind::Internal, "a line between two planes has one"))
    }

    fn corner(&self, order: Order) -> Result<Corner, Error> {
        let (first, second) = (self.plane(order.first)?, self.plane(Self::second(order)?)?);
        // Between the eaves: 180 less the turn between the ways that water runs, from 0 to 180.
        let turn = (first.down_slope().degrees() - second.down_slope().degrees()).abs();
        let turn = if turn > 180.0 { 360.0 - turn } else { turn };
        Ok(Corner { first: first.pitch(), second: second.pitch(), plan: Angle::degrees_from(180.0 - turn)? })
    }

    /// The section of a line that sets panel ends.
    pub(super) fn across<R: Recorder>(&self, r: &mut R, line: &Line, chosen: &Chosen<'_>) -> Result<Solved, Error> {
        let order = order(line);
        let first = || self.side(order.first);
        let second = || self.side(Self::second(order)?);
        let solved = match chosen.detail {
            Detail::Eave(d) => Eave { roof: first()?, detail: (**d).clone() }.run(r),
            Detail::Ridge(d) => Ridge { first: first()?, second: second()?, detail: (**d).clone() }.run(r),
            Detail::HighEdge(d) => HighSide { roof: first()?, detail: (**d).clone() }.run(r),
            Detail::Hip(d) => {
                let (first, second) = (self.levels(order.first), self.levels(Self::second(order)?));
                Hip { corner: self.corner(order)?, first, second, detail: (**d).clone() }.run(r)
            }
            Detail::Valley(d) => {
                let (first, second) = (self.levels(order.first), self.levels(Self::second(order)?));
                Valley { corner: self.corner(order)?, first, second, length: Some(line.length), detail: (**d).clone() }.run(r)
            }
            Detail::Headwall(d) | Detail::CurbFront(d) => Headwall { roof: first()?, detail: (**d).clone() }.run(r),
            Detail::ShallowToSteep(d) | Detail::SteepToShallow(d) => PitchTransition { lower: first()?, upper: second()?, detail: (**d).clone() }.run(r),
            Detail::Step(d) => {
                let riser = line.riser.ok_or_else(|| Error::new(ErrorKind::Internal, "a step without a riser").value_of(&line.name))?;
                Step { lower: first()?, upper: second()?, riser, detail: (**d).clone() }.run(r)
            }
            // What moves there is known once the panels are laid.
            Detail::ExpansionAcross(d) => d.solve(first()?, r),
            Detail::CurbBack(d) => CurbBack { roof: first()?, width: line.length, detail: (**d).clone() }.run(r),
            Detail::Rake(_) | Detail::Sidewall(_) | Detail::CurbSide(_) | Detail::ExpansionAlong(_) => {
                Err(Error::new(ErrorKind::Internal, "a line along the seams sets no panel end").value_of(line.kind))
            }
        };
        solved.map_err(|e| placed(e, line, chosen))
    }

    /// The section of a line along the seams, from the panels beside it, with what moves there where it is an expansion joint.
    pub(super) fn beside<R: Recorder>(&self, r: &mut R, line: &Line, chosen: &Chosen<'_>, planes: &[PlaneLay]) -> Result<(Solved, Option<JointMoves>), Error> {
        let (width, on_seam) = edge_panel(planes, &line.side, line, chosen)?;
        let solved = match chosen.detail {
            Detail::Rake(d) => {
                let edge = if on_seam { PanelEdge::Seam } else { PanelEdge::Ripped };
                Rake { levels: self.levels(line.side.plane), edge, end_panel: width, detail: (**d).clone() }.run(r).map(|solved| (solved, None))
            }
            Detail::Sidewall(d) | Detail::CurbSide(d) => {
                // The plane lies on the left of its side, walked from start to end.
                let wall = if line.side.start.y <= line.side.end.y { WallHand::Right } else { WallHand::Left };
                Sidewall { roof: self.side(line.side.plane)?, first_seam_from_wall: width, wall, detail: (**d).clone() }.run(r).map(|solved| (solved, None))
            }
            Detail::ExpansionAlong(d) => self.joint(r, line, d, planes, chosen).map(|(solved, moves)| (solved, Some(moves))),
            _ => Err(Error::new(ErrorKind::Internal, "a line across the seams needs no panels").value_of(line.kind)),
        };
        solved.map_err(|e| placed(e, line, chosen))
    }
}

impl Sections<'_> {
    /// An expansion joint along the panels, from those on both sides of it. Unless the job says where it is held, each plane is taken as held at its side away
    /// from the joint, so that all of its width moves there: the greatest movement that it can have.
    fn along(&self, line: &Line, detail: &ExpansionAlongDetail, planes: &[PlaneLay], chosen: &Chosen<'_>) -> Result<ExpansionAlong, Error> {
        let lost = || Error::new(ErrorKind::Internal, "an expansion joint without what it lies between").value_of(&line.name);
        let t = self.job.temperatures.ok_or_else(lost)?;
        let edge = detail.panel_edge()?;
        let side = |path: &'static str, of: &Side| -> Result<JointSide, Error> {
            let width = edge_panel(planes, of, line, chosen)?.0;
            let bounds = planes.get(of.plane).ok_or_else(lost)?.layout.outline.bounds();
            let (left, right) = ((of.start.x - bounds.low.x).length()?, (bounds.high.x - of.start.x).length()?);
            let first_seam = (width - edge).length()?;
            if !first_seam.is_positive() {
                return Err(Error::new(
                    ErrorKind::Impossible,
                    format!("the first seam beside the joint stands short of the panel's edge by {}", (edge - width).length()?),
                )
                .at(format!("{path}.first_seam"))
                .value_of(width)
                .accepts(format!("more than {edge} from the joint"))
                .cured_by("another start of the seams on that plane, under layout.planes")
                .about(self.plane(of.plane)?.name()));
            }
            let held = self.job.held(line, self.plane(of.plane)?.name());
            Ok(JointSide { levels: self.levels(of.plane), to_fixed: held.unwrap_or_else(|| left.max(right)), first_seam })
        };
        let other = line.other().ok_or_else(lost)?;
        let (first, second) = (side("first", &line.side)?, side("second", other)?);
        Ok(ExpansionAlong { first, second, range: t.range(&self.job.metals.panel), detail: detail.clone() })
    }

    fn joint<R: Recorder>(
        &self,
        r: &mut R,
        line: &Line,
        detail: &ExpansionAlongDetail,
        planes: &[PlaneLay],
        chosen: &Chosen<'_>,
    ) -> Result<(Solved, JointMoves), Error> {
        let lost = || Error::new(ErrorKind::Internal, "an expansion joint without what it lies between").value_of(&line.name);
        let joint = self.along(line, detail, planes, chosen)?;
        let other = line.other().ok_or_else(lost)?;
        for (of, side) in [(&line.side, &joint.first), (other, &joint.second)] {
            let name = self.plane(of.plane)?.name();
            r.step(|| {
                let step = record::Step::new(format!("width of {name} that moves at the joint"))
                    .formula("from the joint to where the plane is held: its side away from the joint, unless the job says another place");
                step.gives(side.to_fixed).source(Source::geometry())
            });
        }
        let (mut solved, moves) = joint.solve(r)?;
        // One leg stays at the seam; the rest of the sheet is the pan and the edge. Which leg it is hangs on the way of laying: the wider one is safe.
        let sheet = self.job.panel.compute().map_err(|e| e.under("panel"))?;
        let flat = (sheet.total - sheet.low_leg.max(sheet.high_leg)).length()?;
        for (of, side) in [(&line.side, &joint.first), (other, &joint.second)] {
            let needed = (side.first_seam + detail.turn_up).length()?;
            if needed > flat {
                let caution = Caution::new(JOINT_EDGE_SHEET, "detail.turn_up", Source::geometry());
                solved.cautions.push(caution.arg("plane", self.plane(of.plane)?.name()).arg("needed", needed).arg("flat", flat).arg("coil", sheet.total));
            }
        }
        Ok((solved, moves))
    }
}

/// An error's path from the section's own terms to the job's: to the detail, or to the line where the roof or its panels are what does not fit.
pub(super) fn placed(e: Error, line: &Line, chosen: &Chosen<'_>) -> Error {
    let line = format!("lines.{}", line.name);
    e.under(&line).moved(&format!("{line}.detail"), &chosen.path).moved(&format!("{line}.range"), "temperatures")
}

/// The narrowest panel along a line, and whether every panel there has its seam on the line.
fn edge_panel(planes: &[PlaneLay], side: &Side, line: &Line, chosen: &Chosen<'_>) -> Result<(Length, bool), Error> {
    let panels = planes.get(side.plane).into_iter().flat_map(|lay| lay.beside(side));
    let found = panels.fold(None, |out, (panel, seam)| {
        let (width, on_seam) = out.unwrap_or((panel.width, true));
        Some((width.min(panel.width), on_seam && seam))
    });
    found.ok_or_else(|| Error::new(ErrorKind::Impossible, "no panel lies along the line").at(chosen.path.as_str()).value_of(&line.name))
}

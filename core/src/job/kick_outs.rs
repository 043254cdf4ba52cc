//! The kick-outs of the whole roof: those alike are one piece to make, with its mark and its lines.

use super::alike::alike_corners;
use super::cautions::KICK_OUT_MISSES_GUTTER;
use super::input::Job;
use super::packet::JunctionItem;
use super::trims::sheet_of;
use crate::assembly::{RoofCorners, TrimEnd};
use crate::error::Error;
use crate::junction::{Adjoining, KickOutPiece, Side};
use crate::metal::Sheet;
use crate::panel::Reach;
use crate::record::{Caution, Recorder, Source, Step};
use crate::roof::{LineKind, Roof};
use crate::units::Length;

/// A kick-out as the shop makes it, and where it goes.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let item = &packet.kick_outs[0];
/// assert_eq!((item.mark.as_str(), item.lines.len()), ("K1", 1));
/// assert_eq!(item.piece.blank.bends.len(), 4);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KickOutItem {
    /// Its mark: K1, K2 and so on.
    pub mark: String,
    /// Its sheet.
    pub sheet: Sheet,
    /// The names of the lines that have one at their foot.
    pub lines: Vec<String>,
    /// The piece.
    pub piece: KickOutPiece,
}

/// Where the outer end of each kick-out stands against the gutter of the eave at its foot; what misses it is said.
pub(super) fn misses_gutter<R: Recorder>(r: &mut R, roof: &Roof, junctions: &[JunctionItem], corners: &RoofCorners) -> Result<Vec<Caution>, Error> {
    let junction = |line: usize| junctions.iter().find(|j| j.line == line);
    let mut out = Vec::new();
    for corner in &corners.corners {
        let feet = corner.lines.iter().filter(|l| l.closed == TrimEnd::KickOut).filter_map(|l| junction(l.line));
        for (foot, piece) in feet.filter_map(|j| Some((j, j.section.kick_out.as_ref()?))) {
            for eave in corner.lines.iter().filter_map(|l| junction(l.line)).filter(|j| j.kind == LineKind::Eave && j.first.plane == foot.first.plane) {
                let gutter = eave.section.adjoining.iter().find_map(|a| if let Adjoining::Gutter { back, front } = a { Some((*back, *front)) } else { None });
                let (Some((back, front)), Some(end), Some(plane)) = (gutter, eave.section.end(Side::First), roof.planes().get(eave.first.plane)) else {
                    continue;
                };
                let nose = match end.reach {
                    Reach::Overhang(l) => (l + end.gap).length()?,
                    Reach::HoldBack(l) => (end.gap - l).length()?,
                };
                let from_line = Length::from_mm(nose.mm() * plane.slope().cos() + piece.asked.detail.past_eave.mm())?;
                r.step(|| {
                    let step = Step::new(format!("outer end of the kick-out of {} past the line of {}", foot.name, eave.name));
                    let step = step.formula("nose cos S + past the eave").with("nose", nose).with("past the eave", piece.asked.detail.past_eave);
                    step.with("back", back).with("front", front).gives(from_line).source(Source::geometry())
                });
                if from_line < back || from_line > front {
                    let said = Caution::new(KICK_OUT_MISSES_GUTTER, format!("lines.{}", foot.name), Source::geometry());
                    out.push(said.arg("out", from_line).arg("eave", &eave.name).arg("back", back).arg("front", front));
                }
            }
        }
    }
    Ok(out)
}

fn alike(a: &KickOutPiece, b: &KickOutPiece) -> bool {
    let corners = |of: &KickOutPiece| of.corners.iter().map(|c| c.flat).collect::<Vec<_>>();
    (a.asked.sheet, a.asked.wall) == (b.asked.sheet, b.asked.wall) && alike_corners(&corners(a), &corners(b))
}

/// The kick-outs of the job, in the order in which they are first met.
pub(super) fn items(job: &Job, junctions: &[JunctionItem]) -> Result<Vec<KickOutItem>, Error> {
    let mut out: Vec<KickOutItem> = Vec::new();
    for junction in junctions {
        let Some(piece) = &junction.section.kick_out else { continue };
        if let Some(same) = out.iter_mut().find(|k| alike(&k.piece, piece)) {
            same.lines.push(junction.name.clone());
            continue;
        }
        let sheet = sheet_of(job, piece.asked.sheet.thickness, &junction.detail)?;
        out.push(KickOutItem { mark: format!("K{}", out.len() + 1), sheet, lines: vec![junction.name.clone()], piece: piece.clone() });
    }
    Ok(out)
}

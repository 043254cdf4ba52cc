//! The kick-outs of the whole roof: those alike are one piece to make, with its mark and its lines.

use super::input::Job;
use super::packet::JunctionItem;
use super::trims::sheet_of;
use crate::error::Error;
use crate::junction::KickOutPiece;
use crate::metal::Sheet;
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

/// Corners apart by no more than this are one: what the geometry of two like planes may differ by.
const ALIKE: Length = Length::micrometres(1);

fn alike(a: &KickOutPiece, b: &KickOutPiece) -> bool {
    let near = |p: Length, q: Length| (p - q).length().is_ok_and(|d| d <= ALIKE && -d.pm() <= ALIKE.pm());
    (a.asked.sheet, a.asked.wall) == (b.asked.sheet, b.asked.wall)
        && a.corners.len() == b.corners.len()
        && a.corners.iter().zip(&b.corners).all(|(p, q)| near(p.flat.x, q.flat.x) && near(p.flat.y, q.flat.y))
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

//! Whether each row of fasteners stays out of running water.

use super::draft::along;
use super::parts::{Along, Bites, JunctionTrim, Side, Solved};
use super::section_sheets::{FaceSheet, PANELS, WaterSide};
use crate::error::Error;
use crate::num;
use crate::roof::Water;
use crate::units::Length;

/// What keeps a row of fasteners out of running water.
///
/// ```
/// use seamwright::junction::Shelter;
/// assert_ne!(Shelter::Under("ridge cap".into()), Shelter::None);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Shelter {
    /// A sheet lies over it.
    Under(String),
    /// It goes through a face that is turned down or stands plumb.
    Face,
    /// It stands on a flange that is raised so far over the pan, beside the slope.
    Raised(Length),
    /// Nothing: water runs over it.
    None,
}

/// A row of fasteners and its shelter.
///
/// See [`SectionWater`](super::SectionWater) for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RowShelter {
    /// The row, by its name in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// What keeps it dry.
    pub shelter: Shelter,
}

/// Whether a trim turns away from the deck at this place: a drip, the web of a Z.
fn turns_down(trim: &JunctionTrim, of: &WaterSide, at: Length) -> Result<bool, Error> {
    for pair in trim.corners.windows(2) {
        let &[a, b] = pair else { continue };
        let heading = num::atan2_deg((b.z - a.z).length()?.mm(), (b.x - a.x).length()?.mm()) - of.rise.degrees();
        let turned = num::sin_deg(heading).abs();
        for end in [a, b] {
            // A nanometre: corners are rounded to picometres.
            let off = (along(end, of.rise)? * of.way() - at).length()?;
            if turned > 0.7 && off.mm().abs() < 1e-6 {
                return Ok(true);
            }
        }
    }
    Ok(false)
}

/// The sheet that the heads of a row lie on, by its number in the pile; none for a row on the deck, beside every trim.
fn head(bites: Bites, there: &[(usize, &FaceSheet<'_>)], through: bool) -> Option<usize> {
    let trims = || there.iter().filter(|(_, s)| s.trim.is_some()).map(|(k, _)| *k);
    let panels = there.iter().find(|(_, s)| s.name == PANELS).map(|(k, _)| *k);
    match bites {
        Bites::Trim => trims().max(),
        // Closures stand on the panels, under every trim that lies over those.
        _ if through => panels,
        _ => trims().min(),
    }
}

/// The rows of a side with a deck, against its pile of sheets from the lowest to the highest.
pub(super) fn on_deck(solved: &Solved, of: &WaterSide, pile: &[FaceSheet<'_>], out: &mut Vec<RowShelter>) -> Result<(), Error> {
    let mine = || solved.along.iter().filter(|a| a.side == of.side);
    // Beside the slope a sidewall counts away from the roof, a rake onto it.
    let counts_away = of.water == Water::Along && mine().all(|a| a.from_line <= Length::ZERO);
    let pan = of.levels.pan_face()?;
    for row in mine() {
        let Along::Fasteners { bites, .. } = row.what else { continue };
        let at = if counts_away { (-row.from_line).length()? } else { row.from_line };
        let there: Vec<(usize, &FaceSheet<'_>)> = pile.iter().enumerate().filter(|(_, s)| s.is_at(at)).collect();
        let through = row.name.starts_with("closure") || row.name.starts_with("panel");
        let head = head(bites, &there, through);
        let cover = match head {
            Some(head) => there.iter().rev().find(|(k, _)| *k > head),
            // Beside every trim, on the deck.
            None => there.iter().find(|(_, s)| s.name == PANELS && !through),
        };
        let cover = cover.map(|(_, s)| s.name);
        let on = head.and_then(|h| pile.get(h));
        let trim = on.and_then(|s| s.trim).and_then(|k| solved.trims.get(k));
        let shelter = match (cover, trim) {
            (Some(name), _) => Shelter::Under(name.to_owned()),
            (None, Some(trim)) if bites == Bites::Trim && turns_down(trim, of, at)? => Shelter::Face,
            (None, Some(_)) if of.water == Water::Along => {
                // The pile holds a sheet's middle; a Z's or a rake trim's top lies at its highest.
                let top = on.map_or(Length::ZERO, |s| s.heights.0.max(s.heights.1));
                let over = (top - pan).length()?;
                if over >= of.levels.seam_height.station(1, 2)? && over.is_positive() { Shelter::Raised(over) } else { Shelter::None }
            }
            // Beyond every sheet of this face it goes through what turns away from it.
            (None, None) if head.is_none() => Shelter::Face,
            (None, _) => Shelter::None,
        };
        out.push(RowShelter { name: row.name.clone().into_owned(), side: of.side, shelter });
    }
    Ok(())
}

/// The rows on a wall, a fascia or the outer face of a wall.
pub(super) fn on_face(solved: &Solved, side: Side, out: &mut Vec<RowShelter>) {
    for row in solved.along.iter().filter(|a| a.side == side && matches!(a.what, Along::Fasteners { .. })) {
        out.push(RowShelter { name: row.name.clone().into_owned(), side, shelter: Shelter::Face });
    }
}

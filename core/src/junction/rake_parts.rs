//! What a rake is made of: the last panel's edge, the Z beside it, and the trim's edge on the roof.

use super::draft::{FastenerRow, TrimSheet, keep_under, refuse_short};
use super::parts::Bites;
use crate::error::{Error, ErrorKind, Faults};
use crate::units::Length;

/// How the layout ends the last panel beside a rake.
///
/// ```
/// use seamwright::junction::PanelEdge;
/// assert_ne!(PanelEdge::Ripped, PanelEdge::Seam);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PanelEdge {
    /// On a seam: its leg stands there as it came.
    Seam,
    /// Ripped to width and turned up.
    Ripped,
}

/// What the piece under the rake trim stands on.
///
/// ```
/// use seamwright::junction::RakeStand;
/// assert_eq!(RakeStand::default(), RakeStand::OnPan);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RakeStand {
    /// A Z on tape on the pan, on the roof's side of the turned-up edge.
    #[default]
    OnPan,
    /// A cleat on the deck, between the turned-up edge and the rake: its top flange reaches over the edge and holds it down, its foot is fastened to the
    /// structure beside the panel, and no fastener goes through the pan, which slides.
    OnDeck,
}

/// The Z beside the turned-up edge: its web stands away from the rake, its lower flange points to the turned-up edge, dry behind the web, and its top
/// flange away from it, under the trim.
///
/// ```
/// use seamwright::junction::{Bites, FastenerRow, RakeStand, RakeZ, TrimSheet};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let z = RakeZ {
///     stands: RakeStand::OnPan,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(24) },
///     from_turned_up_edge: Length::parse("1/8\"")?,
///     lower_flange: Length::inches(1),
///     top_flange: Length::inches(1),
///     tape_width: Length::parse("7/8\"")?,
///     tape: Length::parse("1/16\"")?,
///     bites: Bites::Panel,
///     screws: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
/// };
/// assert_eq!(z.web_from_turned_up_edge()?, Length::parse("1 1/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RakeZ {
    /// What it stands on; a cleat on the deck has its lower flange toward the rake, no tape under it, and screws in the structure.
    #[cfg_attr(feature = "serde", serde(default))]
    pub stands: RakeStand,
    /// Its sheet.
    pub sheet: TrimSheet,
    /// From the turned-up edge to the edge of the lower flange; to the web of a cleat.
    pub from_turned_up_edge: Length,
    /// Width of the lower flange, from the face of the web to its edge.
    pub lower_flange: Length,
    /// Width of the top flange, from the face of the web to its edge.
    pub top_flange: Length,
    /// Width of the tape under the lower flange.
    pub tape_width: Length,
    /// That tape's thickness, compressed.
    pub tape: Length,
    /// What the screws through the lower flange bite.
    pub bites: Bites,
    /// Those screws, on the centreline of the tape in the middle of the lower flange.
    pub screws: FastenerRow,
}

impl RakeZ {
    /// From the turned-up edge to the face of the web, positive toward the roof.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn web_from_turned_up_edge(&self) -> Result<Length, Error> {
        match self.stands {
            RakeStand::OnPan => (self.from_turned_up_edge + self.lower_flange).length(),
            RakeStand::OnDeck => (-self.from_turned_up_edge).length(),
        }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "screws", self.screws.check());
        for (path, length) in [("lower_flange", self.lower_flange), ("top_flange", self.top_flange)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [("from_turned_up_edge", self.from_turned_up_edge), ("tape", self.tape)] {
            faults.keep(length.not_negative(path));
        }
        if self.stands == RakeStand::OnDeck {
            for (path, length) in [("tape_width", self.tape_width), ("tape", self.tape)] {
                if length != Length::ZERO {
                    let error = Error::new(ErrorKind::Conflict, "a cleat on the deck has no tape under it").at(path).value_of(length).accepts("0");
                    faults.add(error.cured_by("no tape, or a Z on the pan"));
                }
            }
            if self.bites != Bites::Structure {
                let error = Error::new(ErrorKind::Conflict, "the screws of a cleat on the deck go through no panel")
                    .at("bites")
                    .value_of(format_args!("{:?}", self.bites));
                faults.add(error.accepts("structure"));
            }
            return faults.check();
        }
        faults.keep(self.tape_width.positive("tape_width"));
        if self.bites == Bites::Trim {
            faults
                .add(Error::new(ErrorKind::Conflict, "the screws of the Z go through the pan").at("bites").value_of("trim").accepts("structure, panel, slot"));
        }
        refuse_short(
            &mut faults,
            "tape_width",
            "the tape is wider than the flange above it",
            self.tape_width - self.lower_flange,
            self.tape_width,
            "narrower tape",
        )?;
        faults.check()
    }
}

/// The edge of the rake trim on the roof: it runs past the top flange of the Z and turns down.
///
/// ```
/// use seamwright::junction::RakeInnerEdge;
/// use seamwright::practice::junction as practice;
/// use seamwright::units::Length;
/// let edge = RakeInnerEdge { cover: Length::parse("1/8\"")?, drop: Length::inches(1), hem: practice::EDGE_HEM, above_pan: Length::parse("1/4\"")? };
/// assert!(edge.drop > edge.hem);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RakeInnerEdge {
    /// How far the trim runs past the edge of the top flange of the Z.
    pub cover: Length,
    /// How far it turns down.
    pub drop: Length,
    /// Width of the closed hem at its edge; in a job file [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
    /// What must stay free between its edge and the pan.
    pub above_pan: Length,
}

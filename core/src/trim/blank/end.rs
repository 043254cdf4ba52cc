//! The ends of a planned blank, as the caller says them.

use crate::trim::{BendSize, MitreCorner, Part, Placement, SheetSurface};
use crate::units::{Angle, BendAngle, Length};

/// A mitred end: which corner the piece comes to, and where its section lies there.
///
/// ```
/// use seamwright::trim::{MitreCorner, MitredEnd, Placement, SheetSurface};
/// use seamwright::units::Angle;
/// let corner = MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO };
/// let end = MitredEnd { corner, placement: Placement::default(), closes_on: SheetSurface::Upper };
/// assert_eq!(end.placement, Placement::default());
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MitredEnd {
    /// The corner, walked through in the direction of the run: at its far end the piece arrives there, at its near end it leaves.
    pub corner: MitreCorner,
    /// Where the profile's section is put beside the run.
    #[cfg_attr(feature = "serde", serde(default))]
    pub placement: Placement,
    /// The surface on which the two halves close.
    pub closes_on: SheetSurface,
}

/// How an end of a blank is cut.
///
/// ```
/// use seamwright::trim::EndCut;
/// assert_eq!(EndCut::default(), EndCut::Square);
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum EndCut {
    /// Square across.
    #[default]
    Square,
    /// To a corner, mitred.
    Mitred(MitredEnd),
    /// Each leg at its own angle, as a valley's lower end follows two eaves: from the start edge, leg after leg. The return of a hem is cut as the mirror
    /// image of its leg; in a bend the cut goes straight on halfway between the slopes beside it.
    Legs {
        /// How far along the run the cut starts at the start edge, from the end's own station; onward positive.
        start: Length,
        /// Of each leg of the profile, hems aside: from the bend lines, onward, to the cut; 90 degrees is square.
        angles: Vec<Angle>,
        /// After each bend of the profile, how far the cut steps on along the run where the next leg starts; none where it is left out.
        #[cfg_attr(feature = "serde", serde(default))]
        steps: Vec<Length>,
    },
}

/// The shape of a notch.
///
/// ```
/// use seamwright::trim::NotchShape;
/// use seamwright::units::Length;
/// let plain = NotchShape::Vee { width: Length::inches(1), round: None };
/// assert_ne!(plain, NotchShape::Vee { width: Length::inches(1), round: Some(Length::inches_64(8)) });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum NotchShape {
    /// Two straight sides that meet on the bend line.
    Vee {
        /// Between the sides at the end.
        width: Length,
        /// The diameter of a round hole about the point where they would meet, so that nothing tears from there.
        #[cfg_attr(feature = "serde", serde(default))]
        round: Option<Length>,
    },
    /// Two sides along the bend line, on either side of it.
    Slot {
        /// Between the sides.
        width: Length,
        /// The diameter of a round bottom: at least the width.
        #[cfg_attr(feature = "serde", serde(default))]
        round: Option<Length>,
    },
    /// All that lies between the start edge and the far tangent line of the bend, so that a hem or a leg stops short of the end.
    FromStartEdge,
    /// All that lies between the bend's first tangent line and the end edge.
    FromEndEdge,
}

/// A notch in an end, at a bend line.
///
/// ```
/// use seamwright::trim::{Notch, NotchShape, Part};
/// use seamwright::units::Length;
/// let notch = Notch { bend: Part::Body(0), depth: Length::inches(1), shape: NotchShape::Slot { width: Length::inches_64(8), round: None } };
/// assert_eq!(notch.bend, Part::Body(0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Notch {
    /// At which bend, or which hem.
    pub bend: Part,
    /// How far it reaches into the blank from the end, along the bend line: to where its sides meet, to its bottom, or to the centre of its round.
    pub depth: Length,
    /// Its shape.
    pub shape: NotchShape,
}

/// A tab at an end: a strip that runs on past the end of one leg and is bent about a line of its own.
///
/// ```
/// use seamwright::trim::{Direction, Part, Tab};
/// use seamwright::units::{BendAngle, Length};
/// let tab = Tab {
///     leg: Part::Body(0),
///     from: Length::inches_64(16),
///     width: Length::inches(3),
///     length: Length::inches(1),
///     angle: BendAngle::SQUARE,
///     direction: Direction::Down,
///     inside_radius: Length::mils(30),
///     relief: Length::inches_64(8),
/// };
/// assert_eq!(tab.leg, Part::Body(0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tab {
    /// At which leg, or at the return of which hem.
    pub leg: Part,
    /// From the start of that leg's flat part to the tab.
    pub from: Length,
    /// Its width.
    pub width: Length,
    /// From the outside of its bend, which lies at the end of the piece, to its tip.
    pub length: Length,
    /// How far it is bent, from flat: at most 180 degrees.
    pub angle: crate::units::BendAngle,
    /// Which way.
    pub direction: crate::trim::Direction,
    /// Radius of its inside face.
    pub inside_radius: Length,
    /// Width of the slot on each side of it, from the end to the bend's tangent line; 0 for none.
    /// At the edge of the blank there is none.
    pub relief: Length,
}

impl Tab {
    pub(super) fn size(&self, thickness: Length) -> BendSize {
        BendSize { thickness, inside_radius: self.inside_radius, angle: self.angle }
    }

    /// From the outside of the bend back to its tangent line.
    pub(super) fn setback(&self, thickness: Length) -> Result<Length, crate::error::Error> {
        if self.angle == BendAngle::FOLDED { (self.inside_radius + thickness).length() } else { self.size(thickness).outside_setback() }
    }
}

/// One end of a planned blank.
///
/// ```
/// use seamwright::trim::{BlankEnd, EndCut};
/// assert_eq!(BlankEnd::default(), BlankEnd { cut: EndCut::Square, notches: vec![], tabs: vec![] });
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default))]
pub struct BlankEnd {
    /// How it is cut.
    pub cut: EndCut,
    /// Its notches.
    pub notches: Vec<Notch>,
    /// Its tabs.
    pub tabs: Vec<Tab>,
}

/// The two ends of a piece.
///
/// ```
/// use seamwright::trim::PieceEnd;
/// assert_eq!(PieceEnd::Near.to_string(), "near");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum PieceEnd {
    /// Where the piece begins along its run.
    Near,
    /// Where it stops.
    Far,
}

impl core::fmt::Display for PieceEnd {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(match self {
            PieceEnd::Near => "near",
            PieceEnd::Far => "far",
        })
    }
}

/// Where a hole of a planned blank lies.
///
/// ```
/// use seamwright::trim::{HolePlace, Part, PieceEnd};
/// let relief = HolePlace::Crossing { bend: Part::Body(0), end: PieceEnd::Far, tab: 0 };
/// assert_ne!(relief, HolePlace::Crossing { bend: Part::Body(1), end: PieceEnd::Far, tab: 0 });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum HolePlace {
    /// At a point of the blank.
    At(crate::trim::Point),
    /// Where a bend line of the profile crosses the bend line of a tab: a relief hole.
    Crossing {
        /// Which bend, or which hem.
        bend: Part,
        /// At which end.
        end: PieceEnd,
        /// Which of that end's tabs, counted from 0.
        tab: usize,
    },
}

/// A hole of a planned blank.
///
/// ```
/// use seamwright::trim::{HolePlace, PlannedHole, Point};
/// use seamwright::units::Length;
/// let hole = PlannedHole { place: HolePlace::At(Point::ORIGIN), diameter: Length::inches_64(8) };
/// assert_eq!(hole.diameter, Length::inches_64(8));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PlannedHole {
    /// Where.
    pub place: HolePlace,
    /// Its diameter.
    pub diameter: Length,
}

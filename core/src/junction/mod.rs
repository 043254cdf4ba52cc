//! The section of each kind of junction, solved in the plane square to its line.
//!
//! In that plane the supports are lines: the deck, the plane of the seam tops, a flange on its packing. A trim's legs are what lies
//! between successive intersections of its supports. [`Levels`] stacks what lies between a deck and the underside of a trim;
//! [`Support`] is one line of the section; each kind has a file of its own.
//!
//! Signs: along a slope, positions are measured from the junction line and are positive **up** the slope, on either side; heights are square to the
//! plane that they belong to, from its deck, positive outward.

mod cautions;
mod draft;
mod drip;
mod eave;
mod eave_parts;
mod high_side;
mod levels;
mod parts;
mod rake;
mod ridge;
mod support;
mod top_side;
mod transition;
mod transition_lines;

#[cfg(test)]
mod eave_tests;
#[cfg(test)]
mod high_side_tests;
#[cfg(test)]
mod rake_tests;
#[cfg(test)]
mod ridge_tests;
#[cfg(test)]
mod test_sections;
#[cfg(test)]
mod transition_tests;

pub use cautions::{
    ALL as CAUTIONS, CAP_OFF_LINE, CAP_RIDES, DRIP_NEAR_FACE, EAVE_PINNED, FLANGE_OVER_UNDERLAYMENT, NOSE_BEHIND_DRIP, RAKE_EDGE_PINNED, RAKE_TRIM_RIDES,
    SEAM_HOLLOWS, TOP_SLIDES, UNSUPPORTED_FLANGE, VENT_CHOKED,
};
pub use draft::{Row, TrimSheet};
pub use drip::{ContinuousCleat, DripFace, DripHem};
pub use eave::Eave;
pub use eave_parts::{DeckFlange, EaveFixing, EaveFront, EavePanel, FlangeLies, GutterOpening, HookStrip};
pub use high_side::HighSide;
pub use levels::Levels;
pub use parts::{Along, AlongLine, Bites, JunctionTrim, Side, SideEnd, Solved};
pub use rake::{Rake, RakeEdge, RakeInnerEdge, RakeZ};
pub use ridge::{Ridge, RidgeVent, VentOpening};
pub use support::{SectionPoint, Support};
pub use top_side::{CapDrip, TopClosure, TopSide};
pub use transition::{Bending, PitchTransition, TransitionSection, WaterStep};
pub use transition_lines::{Cleat, Closure, Datum, LayoutLine, TransitionLines, TransitionLinesOut};

//! Panels laid on a plane: strips of one coverage, the runs in each, their lengths, marks, and the coil that they take.
//!
//! The layout knows no junctions. Each edge of the outline brings a [`PanelEnd`](crate::panel::PanelEnd), or is a side that panels run
//! along; the angle at which seams meet the edge follows from the outline itself, so that the two cannot disagree.
//!
//! | length | meaning |
//! |---|---|
//! | clear | along a seam, between the two junction lines |
//! | finished | the greatest over the panel's width of clear - hold-backs + overhang + gap + folds + turn-ups, each converted across its skew |
//! | blank | the upright extent of the finished panel: longer than finished where both ends are skew |
//! | order | blank with the field trim of both ends, rounded by the shop's rule |

pub mod cautions;
mod clip;
mod cut_shapes;
mod extent;
mod grid;
mod input;
mod laid;
mod lay;
mod lists;
mod marks;
mod matching;
mod measure;
mod panel_break;
mod placing;
mod revision;
mod strip_arrays;

#[cfg(test)]
mod break_tests;
#[cfg(test)]
mod cut_shape_tests;
#[cfg(test)]
mod demo_tests;
#[cfg(test)]
mod law_tests;
#[cfg(test)]
mod layout_tests;
#[cfg(test)]
mod notch_tests;
#[cfg(test)]
mod roof_law_tests;
#[cfg(test)]
mod strip_arrays_tests;
#[cfg(test)]
mod test_shapes;

pub use cut_shapes::{CutShapes, EndShape, NotchShape, PanelShape};
pub use grid::Start;
pub use input::{EdgeUse, Governs, Layout, LengthLimit, NarrowChoice, NarrowLimit, OrderRounding};
pub use laid::{Coil, EndPart, Group, LaidPanel, LaidPlane, Notch, mark};
pub use lists::{
    BlankPair, Bundle, BundleLimits, CoilTotal, CoilTotals, CoilUse, CutEdge, EndLaps, GreatestLength, LapArrangement, ListChoices, ListGroup, ListedPiece,
    ListedPlane, MarkOrder, PairChoice, PanelList, Waste,
};
pub use marks::{Creep, CreepCheck, EndMark, MarkFrom, MarkedSeams, SeamMark, SeamMarks};
pub use panel_break::PanelBreak;
pub use placing::{
    ClearOf, ClearRange, DirectionCost, DirectionOfLay, LayCost, LayDirection, LayDirections, Obstacle, PlaneSide, Prefer, SeamClearance, SeamDistance,
    SeamShift, TaperMark, TaperedLay, TaperedPanels,
};
pub use revision::{FormedRow, FormedUse, ListRow, Revised, RevisedRow, Revision, RowState, VoidRow};
pub use strip_arrays::{PolygonArrays, StripArrays, strips};

//! The classes of `seamwright.layout`.

mod cut_shapes;
mod input;
mod laid;
mod limits;
mod lists;
mod panel_break;
mod placing;
mod strips;

pub(crate) use cut_shapes::{CutShapes, EndShape, NotchShape, PanelShape};
pub(crate) use input::{EdgeUse, Layout, Start};
pub(crate) use laid::{Coil, EndPart, Group, LaidPanel, LaidPlane, Notch, mark};
pub(crate) use limits::{LengthLimit, NarrowLimit, OrderRounding};
pub(crate) use lists::{
    BlankPair, Bundle, CoilTotal, CoilTotals, FormedUse, ListGroup, ListedPiece, ListedPlane, PanelList, Revised, RevisedRow, Revision, VoidRow, Waste,
};
pub(crate) use panel_break::PanelBreak;
pub(crate) use placing::{
    CreepCheck, DirectionCost, DirectionOfLay, EndMark, LayCost, LayDirections, MarkedSeams, SeamClearance, SeamDistance, SeamMark, SeamMarks, SeamShift,
    TaperedLay, TaperedPanels,
};
pub(crate) use strips::_strips;

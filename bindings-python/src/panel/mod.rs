//! The classes of `seamwright.panel`.

mod end;
mod section;

pub(crate) use end::{PanelEnd, Reach, along_seam};
pub(crate) use section::{DevelopedWidth, Leg, Levels, Panel, Seam};

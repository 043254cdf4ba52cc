//! Standing-seam panels: the cross-section, the coil that it takes, and how an end meets a junction.
//!
//! | word | meaning |
//! |---|---|
//! | coverage | seam to seam, across the slope |
//! | seam height | from the pan to the top of the seam |
//! | low leg, male | the upstand that the neighbour laps over |
//! | high leg, female | the upstand that laps over the neighbour |
//! | developed width | pan and both legs with every fold: the coil width |
//! | meeting angle | in the plane, between seam and junction line: 90 degrees is square |

pub mod cautions;
mod end;
mod section;

#[cfg(test)]
mod panel_tests;

pub(crate) use end::ends_panels;
pub use end::{Growth, Hold, PanelEnd, Reach, along_seam};
pub use section::{DevelopedWidth, Leg, Levels, Panel, Seam};

//! Which trim of a section is seen from outside.

use super::parts::{JunctionTrim, Side, Solved};
use super::section_water::{PathFace, WaterCheck};
use super::water_path::WaterLevel;

impl Solved {
    /// The trim that is seen on the roof of a side, as the paths of its metal have it: no other trim laps over it there. A cap at the line's end closes this one,
    /// and what lies under it with it: the Z of a rake, the cleats. None where no trim lies on that side.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// use seamwright::junction::Side;
    /// use seamwright::record::Calculation;
    /// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
    /// let outer = |line: &str| packet.junction(line).and_then(|j| j.section.outer_trim(&j.water, Side::First)).map(|t| &*t.name);
    /// assert_eq!((outer("rake 1"), outer("headwall 1"), outer("ridge 1")), (Some("rake trim"), Some("headwall flashing"), Some("ridge cap")));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn outer_trim(&self, water: &WaterCheck, side: Side) -> Option<&JunctionTrim> {
        let face = match side {
            Side::First => PathFace::First,
            Side::Second => PathFace::Second,
            Side::Riser => PathFace::Riser,
        };
        let path = &water.paths.iter().find(|p| p.face == face && p.level == WaterLevel::Metal)?.check;
        let is_under = |trim: &JunctionTrim| path.laps.iter().any(|lap| lap.lower == trim.name && self.trim(&lap.upper).is_some());
        path.order.iter().rev().filter_map(|name| self.trim(name)).find(|trim| !is_under(trim))
    }
}

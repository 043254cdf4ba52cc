//! The classes of `seamwright.spacing`.

use crate::error::Raise;
use crate::given::Given;
use crate::place::{cautions, lengths, part};
use crate::record::Caution;
use crate::units::{Length, LengthFormat};
use pyo3::prelude::*;
use seamwright::spacing as core_spacing;

part! {
    /// Stations along a run, in order from its start.
    Stations(core_spacing::Stations) in "seamwright.spacing",
    shown stations: format_args!("{} along a run", stations.count());

    /// Distance of each station from the start of the run.
    positions(stations) -> Vec<Length> = lengths(&stations.positions);
    /// How many stations there are.
    count(stations) -> usize = stations.count();
    /// Distance of the first station from the start of the run.
    start(stations) -> Length = Length(stations.start());
    /// The common spacing on centre, the first one as laid out; ``None`` where there is a single station.
    spacing(stations) -> Option<Length> = stations.spacing.map(Length);
    /// The last spacing, where it differs from the common one.
    last_spacing(stations) -> Option<Length> = stations.last_spacing.map(Length);
    /// Distance of the last station from the end of the run.
    last_end_distance(stations) -> Length = Length(stations.last_end_distance);
    /// What to know before it is built.
    cautions(stations) -> Vec<Caution> = cautions(&stations.cautions);
    {
        /// What the crew works from, in words: start, spacing, count and end distance, with lengths in this format.
        fn crew(&self, format: Given<LengthFormat>) -> PyResult<String> {
            self.core.crew().text(format.at("format")?).raise()
        }
    }
}

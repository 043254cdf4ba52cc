//! The blank of an end cap.

use crate::document::document;
use crate::place::part;
use crate::trim::FlatBlank;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;

document! {
    /// The cap at the end of a trim, as its section gives it: the hollow between the trim and what it lies over, with tabs along the trim.
    ///
    /// >>> from seamwright.junction import CapOutline
    /// >>> sheet = {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> corners = [{"x": f"{x} in", "z": f"{z} in"} for x, z in [(-6, 2), (0, 2), (0, -4)]]
    /// >>> made = CapOutline.from_dict({"corners": corners, "sheet": sheet, "on": [{"rise": "0 deg", "height": "0 in"}], "tab": "1 in"}).compute()
    /// >>> format(made.height, "in/16"), made.tabs
    /// ('2"', 1)
    CapOutline(core_junction::CapOutline) in "seamwright.junction" gives CapBlank
}

part! {
    /// An end cap as the shop makes it.
    CapBlank(core_junction::CapBlank) in "seamwright.junction",
    shown made: format_args!("{} high, {} tabs", made.height, made.tabs);

    /// The face of the cap in the section, counter-clockwise, without its tabs: each corner level from the junction line and up from it.
    face(made) -> Vec<(Length, Length)> = made.face.iter().map(|p| (Length(p.x), Length(p.z))).collect();
    /// The greatest height of the hollow over what the cap stands on, plumb.
    height(made) -> Length = Length(made.height);
    /// How many tabs it has.
    tabs(made) -> usize = made.tabs;
    /// The blank: across as in the section from its leftmost point, up from its lowest.
    blank(made, here) -> FlatBlank = here.one("blank", &made.blank);
}

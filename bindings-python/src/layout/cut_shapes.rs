//! Panels as they are cut: `seamwright.layout.CutShapes` and what it gives.

use crate::document::document;
use crate::place::part;
use crate::roof::Point;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::layout as core_layout;

fn points(all: &[seamwright::roof::Point]) -> Vec<Point> {
    all.iter().copied().map(Point).collect()
}

document! {
    /// Each panel of a plane as it is cut: its skew cuts, notches round holes, and folds.
    ///
    /// >>> from seamwright.layout import CutShapes
    /// >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    /// >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("16 in", "0 in"), ("16 in", "112 in"), ("0 in", "100 in")]]
    /// >>> step = {"increment": '1/16"', "rounding": "half-away"}
    /// >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    /// ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    /// ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    /// >>> [shape] = CutShapes.from_dict({"layout": layout}).compute()
    /// >>> [format(p.y, "in/16") for p in shape.upper.cut], format(shape.width, "in/16"), shape.notches
    /// (['100"', '112"'], '16"', [])
    CutShapes(core_layout::CutShapes) in "seamwright.layout" gives [PanelShape]
}

part! {
    /// The shape of one panel's pan: x from the left side of what it covers, y up the slope from the foot of its blank.
    PanelShape(core_layout::PanelShape) in "seamwright.layout",
    shown p: format_args!("strip {}, run {}: {} by {}", p.strip, p.run, p.width, p.length);

    /// Its strip, from the left, from 0.
    strip(p) -> usize = p.strip;
    /// Its run in the strip, from the foot, from 0.
    run(p) -> usize = p.run;
    /// The width that it covers: that of the rectangle.
    width(p) -> Length = Length(p.width);
    /// The length of the rectangle that just holds it, field trims included, before the shop rounds it.
    length(p) -> Length = Length(p.length);
    /// Its lower end.
    lower(p, here) -> EndShape = here.one("lower", &p.lower);
    /// Its upper end.
    upper(p, here) -> EndShape = here.one("upper", &p.upper);
    /// What is cut out of it.
    notches(p, here) -> Vec<NotchShape> = here.all("notches", &p.notches);
}

part! {
    /// Lines across a panel where it ends, each from left to right. Where an end steps, two points stand over each other.
    EndShape(core_layout::EndShape) in "seamwright.layout",
    shown e: format_args!("{} points of the cut", e.cut.len());

    /// Where the finished metal ends, its fold or turn-up laid flat: the skew cut.
    cut(e) -> Vec<Point> = points(&e.cut);
    /// Where it is folded over, or the pan is turned up; empty for an end without either.
    fold(e) -> Vec<Point> = points(&e.fold);
    /// Where the metal ends as ordered, what is cut off on the roof with it; empty for an end without field trim.
    trim(e) -> Vec<Point> = points(&e.trim);
}

part! {
    /// What is cut out of a panel between its ends, down to the metal: its folds and turn-ups stand in it.
    NotchShape(core_layout::NotchShape) in "seamwright.layout",
    shown n: format_args!("{} points below, {} above", n.lower.cut.len(), n.upper.cut.len());

    /// Its lower edge: the metal below it ends upward there.
    lower(n, here) -> EndShape = here.one("lower", &n.lower);
    /// Its upper edge.
    upper(n, here) -> EndShape = here.one("upper", &n.upper);
}

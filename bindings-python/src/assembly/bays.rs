//! The real bays along a line.

use crate::names::name_of;
use crate::place::{cautions, lengths, part};
use crate::record::Caution;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// One side of a line with its real bays. Stations run along the line from its start; left and right are as seen looking up the slope.
    SideBays(core_assembly::SideBays) in "seamwright.assembly",
    shown side: format_args!("{} side, {} bays", name_of(&side.side)?, side.bays.len());

    /// Which side of the junction: ``first`` or ``second``.
    side(side) -> String = name_of(&side.side)?;
    /// On which flank of the line it lies: ``left`` or ``right``.
    flank(side) -> String = name_of(&side.flank)?;
    /// Number of the plane in the roof.
    plane(side) -> usize = side.plane;
    /// The meeting angle, without sign: 90 degrees is square, 0 is along the seams.
    meeting(side) -> Angle = Angle(side.meeting);
    /// The bays in order along the line.
    bays(side, here) -> Vec<Bay> = here.all("bays", &side.bays);
    /// The stretches without a panel.
    gaps(side, here) -> Vec<Stretch> = here.all("gaps", &side.gaps);
    /// The panels that run along the line, where it lies along the seams.
    beside(side, here) -> Vec<Beside> = here.all("beside", &side.beside);
    /// Where seams cross the line or end at it, each once.
    seams(side) -> Vec<Length> = lengths(&side.seams);
    /// All bays together, along the line.
    covered(side) -> Length = Length(side.covered);
    /// What to know before pieces are cut.
    cautions(side) -> Vec<Caution> = cautions(&side.cautions);
}

part! {
    /// One bay: the stretch of a line that ends one panel.
    Bay(core_assembly::Bay) in "seamwright.assembly",
    shown bay: format_args!("panel {} {}, {} wide", bay.panel, bay.mark, bay.width);

    /// The panel, as its number among the panels of its plane.
    panel(bay) -> usize = bay.panel;
    /// Its strip, from the left, from 0.
    strip(bay) -> usize = bay.strip;
    /// Its run in the strip.
    run(bay) -> usize = bay.run;
    /// Its mark.
    mark(bay) -> String = bay.mark.clone();
    /// Which end of it lies here: ``lower`` or ``upper``.
    end(bay) -> String = name_of(&bay.end)?;
    /// Where the bay starts along the line. (In Rust this is ``from``, which is a word of Python's own.)
    start(bay) -> Length = Length(bay.from);
    /// Where it stops along the line. (In Rust this is ``to``.)
    stop(bay) -> Length = Length(bay.to);
    /// Its length along the line.
    length(bay) -> Length = Length(bay.length);
    /// Its width across, square to the seams.
    width(bay) -> Length = Length(bay.width);
    /// From the line's right-hand direction to the seams: 90 degrees is square, less where the line rises to the right, more where it falls.
    meeting(bay) -> Angle = Angle(bay.meeting);
    /// The hand: ``square``, ``left`` or ``right``.
    hand(bay) -> String = name_of(&bay.hand)?;
    /// Whether the panel goes on past the line beside the bay: it is cut around an opening or a notch there.
    notched(bay) -> bool = bay.notched;
    /// What it ends at on the left: ``seam``, ``rip`` or ``corner``.
    left(bay) -> String = name_of(&bay.left)?;
    /// What it ends at on the right: ``seam``, ``rip`` or ``corner``.
    right(bay) -> String = name_of(&bay.right)?;
}

part! {
    /// A stretch of a line, from station to station.
    Stretch(core_assembly::Stretch) in "seamwright.assembly",
    shown stretch: format_args!("{} to {}", stretch.from, stretch.to);

    /// Where it starts along the line. (In Rust this is ``from``, which is a word of Python's own.)
    start(stretch) -> Length = Length(stretch.from);
    /// Where it stops along the line. (In Rust this is ``to``.)
    stop(stretch) -> Length = Length(stretch.to);
}

part! {
    /// A panel that runs along a line: at a rake, a sidewall, the side of a curb.
    Beside(core_assembly::Beside) in "seamwright.assembly",
    shown of: format_args!("panel {} {}", of.panel, of.mark);

    /// The panel, as its number among the panels of its plane.
    panel(of) -> usize = of.panel;
    /// Its mark.
    mark(of) -> String = of.mark.clone();
    /// Its width.
    width(of) -> Length = Length(of.width);
    /// Along which stretch of the line.
    stretch(of, here) -> Stretch = here.one("stretch", &of.stretch);
    /// What stands at the line: a ``seam``, or the panel's ripped side, ``rip``.
    at(of) -> String = name_of(&of.at)?;
}

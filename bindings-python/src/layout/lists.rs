//! The list of a plane, and what a revision makes of lists.

use crate::document::document;
use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Area, Length, Mass};
use pyo3::prelude::*;
use seamwright::layout as core_layout;

document! {
    /// The panels of a plane as a list for shop and crew: pieces in the order of laying, marks, end laps, pairs from one blank, bundles, coil and waste.
    ///
    /// >>> from seamwright.layout import PanelList
    /// >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    /// >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    /// >>> step = {"increment": '1/16"', "rounding": "half-away"}
    /// >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    /// ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    /// ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    /// >>> choices = {"direction": "right-to-left", "bundles": {"count": 3}}
    /// >>> listed = PanelList.from_dict({"layout": layout, "choices": choices}).compute()
    /// >>> [(group.mark, group.count, group.cut) for group in listed.groups], [bundle.pieces for bundle in listed.bundles]
    /// ([('A', 4, 'none'), ('B', 1, 'right')], [[0, 1, 2], [3, 4]])
    PanelList(core_layout::PanelList) in "seamwright.layout" gives ListedPlane
}

part! {
    /// The list of a plane.
    ListedPlane(core_layout::ListedPlane) in "seamwright.layout",
    shown list: format_args!("{} pieces in {} groups", list.pieces.len(), list.groups.len());

    /// The way in which panels follow each other: left-to-right or right-to-left.
    direction(list) -> String = name_of(&list.direction)?;
    /// Every piece, in the order of laying.
    pieces(list, here) -> Vec<ListedPiece> = here.all("pieces", &list.pieces);
    /// The grouped list, in the order of its marks.
    groups(list, here) -> Vec<ListGroup> = here.all("groups", &list.groups);
    /// Pairs from one blank.
    pairs(list, here) -> Vec<BlankPair> = here.all("pairs", &list.pairs);
    /// Bundles, in the order in which the crew opens them.
    bundles(list, here) -> Vec<Bundle> = here.all("bundles", &list.bundles);
    /// The coil's width.
    coil_width(list) -> Length = Length(list.coil.width);
    /// The coil's length: all order lengths less what pairs save.
    coil_length(list) -> Length = Length(list.coil.length);
    /// The coil's mass, where the sheet's is known.
    coil_mass(list) -> Option<Mass> = list.coil.mass.map(Mass);
    /// Where the coil goes that covers nothing.
    waste(list, here) -> Waste = here.one("waste", &list.waste);
    /// What to know before metal is formed.
    cautions(list) -> Vec<Caution> = cautions(&list.cautions);
}

part! {
    /// One piece, in the order of laying.
    ListedPiece(core_layout::ListedPiece) in "seamwright.layout",
    shown piece: format_args!("panel {}, piece {}, {}", piece.number, piece.piece, piece.order);

    /// The panel's number in the order of laying, from 1.
    number(piece) -> usize = piece.number;
    /// The panel, by its number in the laid plane.
    panel(piece) -> usize = piece.panel;
    /// The piece of the panel from the foot, from 1.
    piece(piece) -> u32 = piece.piece;
    /// From the lowest point of the plane's outline to the piece's lower end.
    low(piece) -> Length = Length(piece.low);
    /// Its own order length.
    own(piece) -> Length = Length(piece.own);
    /// The length that it is formed to.
    order(piece) -> Length = Length(piece.order);
    /// Its group, by number.
    group(piece) -> usize = piece.group;
    /// Its pair, by number, where it shares a blank.
    pair(piece) -> Option<usize> = piece.pair;
    /// Its bundle, by number, where there are bundles.
    bundle(piece) -> Option<usize> = piece.bundle;
}

part! {
    /// Pieces of one order length, width and cut edge.
    ListGroup(core_layout::ListGroup) in "seamwright.layout",
    shown group: format_args!("{}, {} of {}", group.mark, group.count, group.order);

    /// The mark.
    mark(group) -> String = group.mark.clone();
    /// The order length.
    order(group) -> Length = Length(group.order);
    /// The width that they cover.
    width(group) -> Length = Length(group.width);
    /// Which edge is cut: none, left, right or both.
    cut(group) -> String = name_of(&group.cut)?;
    /// How many pieces.
    count(group) -> u64 = group.count;
    /// Their order lengths together.
    total(group) -> Length = Length(group.total);
}

part! {
    /// Two skew pieces from one blank.
    BlankPair(core_layout::BlankPair) in "seamwright.layout",
    shown pair: format_args!("{}, saves {}", pair.blank, pair.saved);

    /// The piece whose upper end is skew, by number.
    below(pair) -> usize = pair.below;
    /// The piece whose lower end is skew, by number.
    above(pair) -> usize = pair.above;
    /// The length of the blank.
    blank(pair) -> Length = Length(pair.blank);
    /// What it saves beside two blanks.
    saved(pair) -> Length = Length(pair.saved);
}

part! {
    /// A bundle, opened from the top in the order of its pieces.
    Bundle(core_layout::Bundle) in "seamwright.layout",
    shown bundle: format_args!("{}, {} pieces", bundle.number, bundle.pieces.len());

    /// Its number in the order in which the crew opens them, from 1.
    number(bundle) -> usize = bundle.number;
    /// Its pieces from the top, by number.
    pieces(bundle) -> Vec<usize> = bundle.pieces.clone();
    /// Its longest piece.
    length(bundle) -> Length = Length(bundle.length);
    /// Its mass, where the sheet's is known.
    mass(bundle) -> Option<Mass> = bundle.mass.map(Mass);
}

part! {
    /// Where the coil goes that covers nothing. The last four parts are together the coil less what is covered.
    Waste(core_layout::Waste) in "seamwright.layout",
    shown waste: format_args!("{} of {}", waste.covered, waste.coil);

    /// The coil.
    coil(waste) -> Area = Area(waste.coil);
    /// What panels cover of the plane.
    covered(waste) -> Area = Area(waste.covered);
    /// The legs of the seams.
    seams(waste) -> Area = Area(waste.seams);
    /// Ripped off beside the width that is covered.
    rips(waste) -> Area = Area(waste.rips);
    /// Skew ends, openings and notches, less what pairs save.
    skew_cuts(waste) -> Area = Area(waste.skew_cuts);
    /// Beyond the junction lines: folds, turn-ups, overhangs, laps, field trim and rounding, less hold-backs.
    ends(waste) -> Area = Area(waste.ends);
}

document! {
    /// A list before and a list now, and what is formed by the list before.
    ///
    /// >>> from seamwright.layout import Revision
    /// >>> row = {"plane": "south", "mark": "A", "order": "20 ft", "width": "16 in", "count": 3}
    /// >>> now = [row | {"order": "21 ft", "count": 1}, row | {"mark": "B", "count": 2}]
    /// >>> revised = Revision.from_dict({"before": [row], "now": now, "formed": [{"mark": "A", "count": 3}]}).compute()
    /// >>> [(r.mark, r.state, r.to_form) for r in revised.rows], [(v.mark, v.count) for v in revised.void]
    /// ([('B', 'new', 1), ('A', 'recounted', 0)], [('A', 1)])
    Revision(core_layout::Revision) in "seamwright.layout" gives Revised
}

part! {
    /// A revised list.
    Revised(core_layout::Revised) in "seamwright.layout",
    shown list: format_args!("{} rows, {} to form", list.rows.len(), list.to_form);

    /// The rows, those of the list now in its order and then those that are dropped.
    rows(list, here) -> Vec<RevisedRow> = here.all("rows", &list.rows);
    /// Formed pieces that serve nothing.
    void(list, here) -> Vec<VoidRow> = here.all("void", &list.void);
    /// What is still to be formed, all lengths together.
    to_form(list) -> Length = Length(list.to_form);
    /// What is formed and serves nothing; no other use of the formed pieces leaves less.
    scrap(list) -> Area = Area(list.scrap);
    /// What to know before anything is cut down.
    cautions(list) -> Vec<Caution> = cautions(&list.cautions);
}

part! {
    /// A row of the list as revised.
    RevisedRow(core_layout::RevisedRow) in "seamwright.layout",
    shown row: format_args!("{} {}, {}", row.plane, row.mark, row.state.name());

    /// The plane.
    plane(row) -> String = row.plane.clone();
    /// The mark: that of the list before wherever there is one, and else one that was never used.
    mark(row) -> String = row.mark.clone();
    /// The order length.
    order(row) -> Length = Length(row.order);
    /// The width that a piece covers.
    width(row) -> Length = Length(row.width);
    /// Which edge is cut: none, left, right or both.
    cut(row) -> String = name_of(&row.cut)?;
    /// What became of it: kept, recounted, new or dropped.
    state(row) -> String = name_of(&row.state)?;
    /// How many there were.
    before(row) -> u64 = row.before;
    /// How many there are.
    count(row) -> u64 = row.count;
    /// Formed pieces that serve it.
    from_formed(row, here) -> Vec<FormedUse> = here.all("from_formed", &row.from_formed);
    /// How many are still to be formed.
    to_form(row) -> u64 = row.to_form;
}

part! {
    /// Formed pieces that serve a row.
    FormedUse(core_layout::FormedUse) in "seamwright.layout",
    shown of: format_args!("{} of {}", of.count, of.mark);

    /// The mark under which they were formed.
    mark(of) -> String = of.mark.clone();
    /// How many.
    count(of) -> u64 = of.count;
    /// What is cut off each one's length.
    cut_off(of) -> Length = Length(of.cut_off);
    /// What is ripped off each one's width.
    rip_off(of) -> Length = Length(of.rip_off);
}

part! {
    /// Formed pieces that serve nothing.
    VoidRow(core_layout::VoidRow) in "seamwright.layout",
    shown row: format_args!("{} of {}", row.count, row.mark);

    /// The mark under which they were formed.
    mark(row) -> String = row.mark.clone();
    /// Their order length.
    order(row) -> Length = Length(row.order);
    /// The width that they cover.
    width(row) -> Length = Length(row.width);
    /// How many.
    count(row) -> u64 = row.count;
}

document! {
    /// Coil added up by colour, sheet and width, over any number of planes and trims.
    ///
    /// >>> from seamwright.layout import CoilTotals
    /// >>> sheet = {"alloy": "aluminium-3003", "thickness": "0.032 in"}
    /// >>> use = lambda colour, length: {"colour": colour, "sheet": sheet, "width": "20 in", "length": length}
    /// >>> totals = CoilTotals.from_dict({"uses": [use("slate", "900 ft"), use("white", "10 ft"), use("slate", "100 ft")]}).compute()
    /// >>> [(total.colour, format(total.length, "ft-in/16")) for total in totals]
    /// [('slate', '1000\'-0"'), ('white', '10\'-0"')]
    CoilTotals(core_layout::CoilTotals) in "seamwright.layout" gives [CoilTotal]
}

part! {
    /// The coil of one colour, sheet and width.
    CoilTotal(core_layout::CoilTotal) in "seamwright.layout",
    shown total: format_args!("{}, {} of {}", total.colour, total.length, total.width);

    /// The colour, as the caller calls it; empty for bare metal.
    colour(total) -> String = total.colour.clone();
    /// The metal of its sheet.
    alloy(total) -> String = name_of(&total.sheet.alloy())?;
    /// The thickness of its sheet.
    thickness(total) -> Length = Length(total.sheet.thickness());
    /// The width.
    width(total) -> Length = Length(total.width);
    /// The length.
    length(total) -> Length = Length(total.length);
    /// The area.
    area(total) -> Area = Area(total.area);
    /// The mass, coating and all.
    mass(total) -> Mass = Mass(total.mass);
}

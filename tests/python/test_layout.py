"""The classes of seamwright.panel and layout as Python sees them. Strips of any polygon stand in test_layout_strips.py."""

import copy
import math
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from seamwright import InputError, job, layout, panel
from seamwright.layout import EdgeUse, LaidPlane, Layout, LengthLimit, NarrowLimit, OrderRounding, PanelBreak, Start, mark
from seamwright.panel import Leg, Panel, PanelEnd, Reach, Seam, along_seam
from seamwright.record import Source, Worksheet
from seamwright.roof import Outline, Point, Roof
from seamwright.units import Angle, Length, Mass, ShopRounding

SNAP = Seam.snap_lock(Leg('1 3/4"', '3/8"'), Leg('1 7/8"', '7/8"'), '1/2"')
SINGLE = Seam.single_lock('3/8"')
DOUBLE = Seam.double_lock('3/8"')
BATTEN = Seam.batten('1 3/4"', Leg('1 1/2"', '1/4"'), '1 3/4"')
PANELS = [Panel('16"', '1 3/4"', seam) for seam in (SNAP, SINGLE, DOUBLE, BATTEN)]
RIBBED = Panel('16"', '1 3/4"', SINGLE, '1/4"')

EAVE = PanelEnd.overhang('1"', fold='1"')
RIDGE = PanelEnd.hold_back('3"', turn_up='1"')
FIELD = PanelEnd.hold_back(
    '2"', gap='1/4"', fold='1"', turn_up='1/2"', field_trim='3"', hold="pins", source=Source.engineer("of record", "calculation 12")
)

RECTANGLE = Outline([("0 ft", "0 ft"), ("41 ft", "0 ft"), ("41 ft", "20 ft"), ("0 ft", "20 ft")])
EDGES = [EdgeUse.end(EAVE), EdgeUse.SIDE, EdgeUse.end(RIDGE), EdgeUse.SIDE]
PLAIN = Layout(RECTANGLE, PANELS[2], "left", EDGES)
FULL = Layout(
    RECTANGLE,
    PANELS[2],
    Start.datum('8"'),
    [EdgeUse.end(EAVE), EdgeUse.SIDE, EdgeUse.end(FIELD), EdgeUse.SIDE],
    rounding=OrderRounding.all(ShopRounding('1/4"', "ceil")),
    narrow=NarrowLimit('9"', "report"),
    limit=LengthLimit("12'", "shipping", '6"'),
    sheet="1.156 lb/ft2",
)
BREAK = PanelBreak('40"', '20"', '24"', PanelEnd.hold_back("0 in"), PanelEnd.overhang('8"'))
BROKEN = Layout(RECTANGLE, PANELS[2], "left", EDGES, breaks=[BREAK])
LAID = PLAIN.compute()
LAPPED = FULL.compute()

END = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
STEP = {"increment": '1/16"', "rounding": "half-away"}
# Between a hip and a valley that rise together.
RING = [("0 in", "0 in"), ("32 in", "0 in"), ("64 in", "32 in"), ("64 in", "112 in"), ("32 in", "112 in"), ("0 in", "80 in")]
SKEWED = {
    "outline": {"outer": [{"x": x, "y": y} for x, y in RING]},
    "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    "start": "left",
    "edges": [END, END, "side", END, END, "side"],
    "rounding": {"both_finished": STEP, "one_finished": STEP, "field_cut": STEP},
}
LIST = layout.PanelList.from_dict(
    {"layout": SKEWED, "choices": {"direction": "left-to-right", "pairs": {"kerf": "0 in"}, "bundles": {"count": 3}}}
)
LISTED = LIST.compute()
ROW = {"plane": "south", "mark": "A", "order": "20 ft", "width": "16 in", "count": 3}
REVISION = layout.Revision.from_dict({"before": [ROW], "now": [ROW | {"order": "19 ft", "count": 2}], "formed": [{"mark": "A", "count": 3}]})
REVISED = REVISION.compute()
PIPE = {"name": "pipe", "what": {"point": {"x": "33 in", "y": "40 in"}}, "clearance": "4 in"}
CLEARANCE = layout.SeamClearance.from_dict({"layout": SKEWED, "clear_of": [PIPE], "prefer": "nearest"})
SHIFT = CLEARANCE.compute()
DIRECTION = layout.DirectionOfLay.from_dict({"layout": SKEWED})
TAPERED = layout.TaperedLay.from_dict(
    {"foot": "320 in", "head": "321 in", "run": "20 ft", "coverage": "16 in", "wider": '1/8"', "narrower": '1/8"'}
)
MARKS = layout.SeamMarks.from_dict({"layout": SKEWED, "from": "left", "tape": STEP, "creep": {"each": '1/32"', "every": 2}})
MARKED = MARKS.compute()
SHEET = {"alloy": "aluminium-3003", "thickness": "0.032 in"}
COIL = layout.CoilTotals.from_dict({"uses": [{"colour": "slate", "sheet": SHEET, "width": "20 in", "length": "900 ft"}]})
# A curb of 4 in within the first panel.
CURB = [Point(x, y) for x, y in [("6 in", "40 in"), ("10 in", "40 in"), ("10 in", "44 in"), ("6 in", "44 in")]]
PIERCED = Layout(Outline(RECTANGLE.outer, [CURB]), PANELS[2], "left", [*EDGES, *[EdgeUse.SIDE] * 4]).compute()
NOTCHES = [notch for panel in PIERCED.panels for notch in panel.notches]
OUTER = [{"x": x, "y": y} for x, y in [("0 ft", "0 ft"), ("41 ft", "0 ft"), ("41 ft", "20 ft"), ("0 ft", "20 ft")]]
HOLE = [{"x": str(p.x), "y": str(p.y)} for p in CURB]
CUT_SHAPES = layout.CutShapes.from_dict(
    {"layout": SKEWED | {"outline": {"outer": OUTER, "holes": [HOLE]}, "edges": [END, "side", END, "side", *["side"] * 4]}}
)
CUT = CUT_SHAPES.compute()

VALUES: list[Any] = [
    *[Leg('1 3/4"', '7/8"'), Leg('1 3/4"', '3/8"'), SNAP, SINGLE, DOUBLE, Seam.double_lock('1/2"'), BATTEN],
    *PANELS,
    *[RIBBED, RIBBED.compute(), PANELS[0].compute(), PANELS[0].levels('1/2"', "0.024 in"), PANELS[0].levels('1/4"', "0.024 in")],
    *[Reach.hold_back('1"'), Reach.hold_back('2"'), Reach.overhang('1"')],
    *[EAVE, RIDGE, FIELD, PanelEnd.hold_back('3"')],
    *[Start.LEFT, Start.RIGHT, Start.CENTRE_SEAM, Start.CENTRE_PANEL, Start.datum('8"'), Start.datum('9"')],
    *[EdgeUse.SIDE, EdgeUse.end(EAVE), EdgeUse.end(RIDGE)],
    *[OrderRounding.common_practice(), OrderRounding.all(ShopRounding('1"', "ceil"))],
    *[NarrowLimit('6"', "report"), NarrowLimit('6"', "refuse"), LengthLimit("45'", "shipping"), LengthLimit("45'", "forming", '6"')],
    *[PLAIN, FULL, LAID, LAPPED, BREAK, BROKEN, BROKEN.compute()],
    *[LAID.panels[0], LAID.panels[1], LAPPED.panels[0], LAID.panels[1].lower[0], LAID.panels[1].upper[0], LAPPED.panels[2].upper[0]],
    *[LAID.groups[0], LAPPED.groups[0], LAID.coil, LAPPED.coil],
    *[LIST, LISTED, LISTED.pieces[0], LISTED.pieces[1], LISTED.groups[0], LISTED.pairs[0], LISTED.bundles[0], LISTED.waste],
    *[REVISION, REVISED, REVISED.rows[0], REVISED.rows[0].from_formed[0], REVISED.void[0]],
    *[CLEARANCE, SHIFT, SHIFT.distances[0], SHIFT.found, DIRECTION, DIRECTION.compute(), DIRECTION.compute().left_to_right],
    *[COIL, COIL.compute()[0], NOTCHES[0]],
    *[CUT_SHAPES, CUT[0], CUT[0].lower, CUT[0].upper, CUT[0].notches[0]],
    *[TAPERED, TAPERED.compute(), MARKS, MARKED, MARKED.seams[0], MARKED.seams[1].foot, MARKED.checks[0]],
    *[Start.EQUAL_RIPS, Start.left_unless_narrow("4 in"), Start.right_unless_narrow("4 in")],
]


def kind_of(value: Any) -> str:
    return type(value).__name__


def test_every_class_stands_in_the_list() -> None:
    assert {kind_of(v) for v in VALUES} == {*panel.__all__, *layout.__all__} - {"along_seam", "mark", "StripArrays", "strips"}


def test_values_are_told_apart() -> None:
    for i, a in enumerate(VALUES):
        for j, b in enumerate(VALUES):
            assert (a == b) is (i == j), (a, b)
    assert len(set(VALUES)) == len(VALUES)


@pytest.mark.parametrize("value", VALUES, ids=kind_of)
def test_value_semantics(value: Any) -> None:
    again = [pickle.loads(pickle.dumps(value, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)]
    for other in (*again, copy.copy(value), copy.deepcopy(value)):
        assert type(other) is type(value) and other == value and hash(other) == hash(value)
        assert repr(other) == repr(value) and str(other) == str(value)
    assert value != "text" and value is not None
    with pytest.raises(AttributeError):
        value.anything = 1
    with pytest.raises(TypeError):
        type("Derived", (type(value),), {})
    if not repr(value).startswith("<"):
        names = {**vars(panel), **vars(layout), "ShopRounding": ShopRounding}
        assert eval(repr(value), names) == value


def test_parts_pickle_their_plane_once() -> None:
    alone, all_of_them = len(pickle.dumps(LAID.panels[0])), len(pickle.dumps(LAID.panels))
    assert all_of_them < alone + 60 * len(LAID.panels)


def test_seams_say_what_they_have() -> None:
    assert [p.seam.name for p in PANELS] == ["snap-lock", "single-lock", "double-lock", "batten"]
    assert (SNAP.male, SNAP.female, SNAP.foot) == (Leg('1 3/4"', '3/8"'), Leg('1 7/8"', '7/8"'), Length('1/2"'))
    assert SINGLE.lock == DOUBLE.lock == Length('3/8"') and SNAP.lock is None and BATTEN.lock is None
    assert (BATTEN.width, BATTEN.leg, BATTEN.cap_leg) == (Length('1 3/4"'), Leg('1 1/2"', '1/4"'), Length('1 3/4"'))
    assert (SINGLE.male, SINGLE.female, SINGLE.foot, SINGLE.width, SINGLE.leg, SINGLE.cap_leg) == (None,) * 6
    assert Leg('1 3/4"', '7/8"').developed() == Length('2 5/8"')


def test_a_developed_width_adds_up() -> None:
    for p in [*PANELS, RIBBED]:
        width, sheet = p.explain()
        assert width == p.compute() and width.total == Length.total([width.pan, width.low_leg, width.high_leg])
        assert [s.what for s in sheet.steps()][:1] == ["pan"] and [c.name for c in width.cautions] == ["thickness-ignored"]
    assert RIBBED.compute().total - PANELS[1].compute().total == RIBBED.ribs == Length('1/4"')
    assert PANELS[0].compute().cap is None and PANELS[3].compute().cap == Length('5 1/4"')
    # The legs of a snap-lock panel, its foot within the coverage.
    assert PANELS[0].compute().total == Length('16"') - Length('1/2"') + Length('2 1/8"') + Length('2 3/4"')


@given(st.integers(300, 600), st.integers(20, 70), st.sampled_from([Seam.single_lock("9 mm"), Seam.double_lock("9 mm")]))
def test_a_panel_from_a_coil_uses_it_up(coil: int, height: int, seam: Seam) -> None:
    made = Panel.from_coil(f"{coil} mm", f"{height} mm", seam)
    assert made.compute().total == Length(f"{coil} mm") and made == Panel(made.coverage, made.seam_height, made.seam)


def test_levels() -> None:
    levels = PANELS[2].levels('1/2"', "0.024 in")
    assert (levels.underside, levels.pan) == (Length('1/2"'), Length("0.524 in")) and levels.seam_top - levels.pan == PANELS[2].seam_height
    assert PANELS[2].seam_foot("0.024 in") == Length("0.048 in") and PANELS[0].seam_foot("0.024 in") == Length('1/2"')


def test_an_end_gives_back_its_parts() -> None:
    assert (EAVE.reach, RIDGE.reach) == (Reach.overhang('1"'), Reach.hold_back('3"'))
    assert (Reach.overhang('1"').kind, Reach.hold_back('3"').distance) == ("overhang", Length('3"'))
    assert (FIELD.gap, FIELD.fold, FIELD.turn_up, FIELD.field_trim) == (Length('1/4"'), Length('1"'), Length('1/2"'), Length('3"'))
    assert (FIELD.hold, EAVE.hold) == ("pins", "slides") and FIELD.source == Source.engineer("of record", "calculation 12")
    assert FIELD.allowance() == Length('-1/4"') and EAVE.allowance() == Length('2"') and RIDGE.allowance() == Length('-2"')
    assert RIDGE.along_seam(Angle("30 deg")) == Length('-4"') and FIELD.field_trim_along_seam("150 deg") == Length('6"')
    assert FIELD.field_trim_along_seam(Angle.SQUARE) == FIELD.field_trim


@given(st.floats(0.5, 179.5), st.integers(-(10**9), 10**9))
def test_an_allowance_is_stretched_by_the_sine(degrees: float, micrometres: int) -> None:
    distance = Length.from_pm(micrometres * 10**6)
    stretched = along_seam(distance, Angle.degrees_from(degrees)).get("mm")
    assert math.isclose(stretched, distance.get("mm") / math.sin(math.radians(degrees)), rel_tol=1e-12, abs_tol=1e-9)


def test_a_rectangle() -> None:
    assert LAID == PLAIN.explain()[0] and LAID.layout == PLAIN
    # 41 ft is thirty panels of 16 in and a rip of 12 in; 20 ft between the lines, 2 in more at the eave, 2 in less at the ridge.
    assert [(g.mark, g.count, g.order, g.width) for g in LAID.groups] == [("A", 30, Length("20'"), Length('16"')), ("B", 1, Length("20'"), Length('12"'))]
    assert LAID.groups[0].total == Length("600'") and LAID.coil.length == Length("620'")
    assert len(LAID.panels) == 31 and LAID.seams == [Length('16"') * k for k in range(31)]
    assert LAID.coil.width == PANELS[2].compute().total and LAID.coil.mass is None
    assert LAID.coil.area.get("ft2") == pytest.approx(620 * LAID.coil.width.get("ft"), rel=1e-14)
    assert LAID.covered.get("ft2") == pytest.approx(820, rel=1e-14) and LAID.uncovered.get("ft2") == 0.0
    first, rip = LAID.panels[0], LAID.panels[30]
    assert (first.strip, first.run, first.left, first.right, first.width) == (0, 0, Length.ZERO, Length('16"'), Length('16"'))
    assert (rip.width, rip.left_on_seam, rip.right_on_seam, rip.group, rip.mark) == (Length('12"'), True, False, 1, "B")
    assert LAID.mark_of(first) == first.mark == "A"
    assert first.left_length == first.right_length == first.finished == first.blank == first.order == Length("20'")
    assert (first.pieces, first.notched, first.pinned_twice) == (1, False, False)
    assert first.covered.get("ft2") == pytest.approx(20 * 16 / 12, rel=1e-14)
    (eave,) = first.lower
    assert (eave.edge, eave.left, eave.right, eave.skew, eave.meeting) == (0, Point('0"', '0"'), Point('16"', '0"'), Angle.ZERO, Angle.SQUARE)


def test_everything_that_a_layout_can_be_given() -> None:
    assert (FULL.outline, FULL.panel, FULL.start, FULL.edges[2].panel_end) == (RECTANGLE, PANELS[2], Start.datum('8"'), FIELD)
    assert FULL.rounding.one_finished == ShopRounding('1/4"', "ceil") and FULL.sheet is not None
    assert FULL.narrow == NarrowLimit('9"', "report") and FULL.narrow.least == Length('9"') and FULL.narrow.choice == "report"
    assert FULL.limit is not None and (FULL.limit.length, FULL.limit.governs, FULL.limit.end_lap) == (Length("12'"), "shipping", Length('6"'))
    assert PLAIN.narrow is None and PLAIN.limit is None and PLAIN.sheet is None and PLAIN.rounding == OrderRounding.common_practice()
    # 20 ft + 2 in - 1/4 in + 3 in of field trim, in two pieces that lap 6 in.
    assert {(p.pieces, p.order) for p in LAPPED.panels} == {(2, Length("10'-5 1/2\""))}
    assert [c.name for c in LAPPED.cautions] == ["thickness-ignored", "narrow-panel", "narrow-panel", "end-lapped"]
    assert isinstance(LAPPED.coil.mass, Mass)
    assert LAPPED.coil.mass.get("lb") == pytest.approx(LAPPED.coil.area.get("ft2") * 1.156, rel=1e-12)
    assert [LAPPED.panels[k].width for k in (0, 1, -1)] == [Length('8"'), Length('16"'), Length('4"')]


def test_a_skew_end_is_stretched() -> None:
    # A ridge that rises 12 in over the 16 in of one panel: the seam meets it at atan(16/12).
    outline = Outline([('0"', '0"'), ('16"', '0"'), ('16"', '112"'), ('0"', '100"')])
    (one,) = Layout(outline, PANELS[2], "left", EDGES).compute().panels
    (ridge,) = one.upper
    assert ridge.skew.degrees == pytest.approx(math.degrees(math.atan2(12, 16)), rel=1e-14)
    assert ridge.meeting.degrees == pytest.approx(90 - ridge.skew.degrees, rel=1e-14)
    assert one.left_length is not None and one.right_length is not None
    assert one.left_length == Length('100"') + EAVE.allowance() + RIDGE.along_seam(ridge.meeting)
    assert one.right_length - one.left_length == Length('12"') and one.finished == one.blank == one.right_length


def test_the_worksheet_shows_each_panel() -> None:
    _, sheet = PLAIN.explain()
    first = sheet.entries[0]
    assert isinstance(first, Worksheet) and first.title.startswith("developed width")
    finished = [s for s in sheet.steps() if s.what == "finished length"]
    assert len(finished) == 31 and dict(finished[0].inputs)["clear"] == str(Length("20'"))


def test_a_plane_of_a_roof_is_laid() -> None:
    corners = [(0, 0, 10), (40, 0, 10), (40, 20, 20), (0, 20, 20)]
    outer = [dict(zip("xyz", (f"{c} ft" for c in corner), strict=True)) for corner in corners]
    plane = Roof.from_dict({"planes": [{"name": "shed", "shape": {"space": {"outer": outer}}}]}).planes[0]
    laid = Layout(plane.outline, PANELS[0], Start.CENTRE_PANEL, [EdgeUse.end(PanelEnd.hold_back("0 mm"))] * 4).compute()
    assert laid.covered.get("ft2") == pytest.approx(plane.area.get("ft2"), rel=1e-11)
    assert laid.panels[0].finished == plane.outline.bounds.height()


def test_a_layout_by_its_name_gives_the_same() -> None:
    end = {"gap": Length.ZERO, "fold": Length('1"'), "turn_up": Length.ZERO, "hold": "slides", "source": {"user": {"note": ""}}}
    rule = {"increment": Length('1/16"'), "rounding": "half-even"}
    document = {
        "outline": {"outer": [{"x": p.x, "y": p.y} for p in RECTANGLE.outer]},
        "panel": {"coverage": Length('16"'), "seam_height": Length('1 3/4"'), "seam": {"double-lock": {"lock": Length('3/8"')}}},
        "start": "left",
        "edges": [{"end": {"reach": {"overhang": Length('1"')}, **end}}, "side", {"end": {"reach": {"hold-back": Length('3"')}, **end}}, "side"],
        "rounding": {name: rule for name in ("both_finished", "one_finished", "field_cut")},
    }
    named = job.compute("layout.layout", document)
    edges = [EdgeUse.end(EAVE), EdgeUse.SIDE, EdgeUse.end(PanelEnd.hold_back('3"', fold='1"')), EdgeUse.SIDE]
    typed = Layout(RECTANGLE, PANELS[2], "left", edges, rounding=OrderRounding.all(ShopRounding('1/16"', "half-even"))).compute()
    assert [p["finished"] for p in named["panels"]] == [str(p.finished) for p in typed.panels]
    assert [(g["mark"], g["count"], g["order"], g["width"]) for g in named["groups"]] == [
        (g.mark, g.count, str(g.order), str(g.width)) for g in typed.groups
    ]
    assert named["seams"] == [str(x) for x in typed.seams] and named["coil"]["length"] == str(typed.coil.length)


def test_starts() -> None:
    names = ["left", "right", "centre-seam", "centre-panel"]
    assert [Start(n) for n in names] == [Start.LEFT, Start.RIGHT, Start.CENTRE_SEAM, Start.CENTRE_PANEL]
    assert [Start(n).name for n in names] == names and Start(Start.LEFT) == Start.LEFT and Start.LEFT.x is None
    assert (Start.datum('8"').name, Start.datum('8"').x) == ("datum", Length('8"'))
    widths: Callable[[LaidPlane], list[Length]] = lambda laid: [laid.panels[0].width, laid.panels[-1].width]
    for start, expected in [("right", ['12"', '16"']), ("centre-seam", ['6"', '6"']), ("centre-panel", ['14"', '14"'])]:
        assert widths(Layout(RECTANGLE, PANELS[2], start, EDGES).compute()) == [Length(w) for w in expected]


@given(st.integers(0, 2**32 - 1))
def test_marks_count_in_letters(number: int) -> None:
    value = 0
    for letter in mark(number):
        value = value * 26 + ord(letter) - ord("A") + 1
    assert value == number + 1


def lay(**changes: Any) -> LaidPlane:
    arguments: dict[str, Any] = {"outline": RECTANGLE, "panel": PANELS[2], "start": "left", "edges": EDGES}
    return Layout(**{**arguments, **changes}).compute()


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Panel("16", '1"', SINGLE), "unit", "coverage"),
    (lambda: Panel('0"', '1"', SINGLE), "out of range", "coverage"),
    (lambda: Panel('16"', '-1"', SINGLE), "out of range", "seam_height"),
    (lambda: Panel('16"', '1"', SINGLE, '-1"'), "out of range", "ribs"),
    (lambda: Panel('16"', '1/4"', SINGLE), "conflict", "seam.lock"),
    (lambda: Panel('16"', '1"', Seam.double_lock('0"')), "out of range", "seam.lock"),
    (lambda: Panel('1/2"', '1 3/4"', SNAP), "conflict", "seam.foot"),
    (lambda: Panel('16"', '4"', SNAP), "conflict", "seam.female"),
    (lambda: Panel.from_coil('3"', '1 3/4"', DOUBLE), "impossible", "coil_width"),
    (lambda: PANELS[0].levels('-1"', '0"'), "out of range", "stand_off"),
    (lambda: PANELS[0].seam_foot('0"'), "out of range", "thickness"),
    (lambda: PanelEnd.hold_back('-1"'), "out of range", "reach"),
    (lambda: PanelEnd.overhang('1"', fold='-1"'), "out of range", "fold"),
    (lambda: PanelEnd.overhang('1"', hold="glued"), "unknown", "hold"),
    (lambda: PanelEnd.overhang('1"', gap="1"), "unit", "gap"),
    (lambda: along_seam('1"', "0 deg"), "out of range", "meeting"),
    (lambda: EAVE.along_seam("180 deg"), "out of range", "meeting"),
    (lambda: Start("middle"), "unknown", "start"),
    (lambda: Start("datum"), "unknown", "start"),
    (lambda: Start.datum("8"), "unit", "x"),
    (lambda: lay(start="centre"), "unknown", "start"),
    (lambda: lay(edges=EDGES[:3]), "conflict", "edges"),
    (lambda: lay(edges=[]), "conflict", "edges"),
    (lambda: lay(sheet="0 kg/m2"), "out of range", "sheet"),
    (lambda: lay(limit=LengthLimit("19'", "lifting")), "impossible", "strips[0].runs[0]"),
    (lambda: lay(limit=LengthLimit("0 mm", "lifting")), "out of range", "limit.length"),
    (lambda: lay(breaks=[PanelBreak("4 ft", "8 in", "8 in", EAVE, EAVE)]), "out of range", "breaks[0].to"),
    (lambda: lay(breaks=[PanelBreak("40 ft", "7 in", "8 in", EAVE, EAVE)]), "out of range", "breaks[0]"),
    (lambda: lay(limit=LengthLimit("5'", "lifting", "6'")), "conflict", "limit.end_lap"),
    (lambda: lay(narrow=NarrowLimit('13"', "refuse")), "impossible", "strips[30].runs[0]"),
    (lambda: lay(panel=Panel("0.002 mm", "0.002 mm", Seam.single_lock("0.001 mm"))), "too large", "panel.coverage"),
    (lambda: NarrowLimit('6"', "ignore"), "unknown", "choice"),
    (lambda: LengthLimit("45'", "weather"), "unknown", "governs"),
    (lambda: mark(-1), "overflow", "number"),
]


@pytest.mark.parametrize("number", range(len(REFUSED)))
def test_bad_input_names_its_kind_and_place(number: int) -> None:
    call, kind, path = REFUSED[number]
    with pytest.raises(InputError) as caught:
        call()
    every = [(e.kind, e.path) for e in (caught.value, *caught.value.others)]
    assert (kind, path) in every, (every, str(caught.value))


@pytest.mark.parametrize(
    "call",
    [
        lambda: Panel(16, '1"', SINGLE),  # type: ignore[arg-type]
        lambda: Panel('16"', '1"', "single-lock"),  # type: ignore[arg-type]
        lambda: PanelEnd.hold_back('1"', '1"'),  # type: ignore[call-arg]
        lambda: PanelEnd(),
        lambda: Seam(),
        lambda: Start(1),  # type: ignore[arg-type]
        lambda: lay(edges=[EAVE] * 4),
        lambda: lay(outline=[("0 ft", "0 ft")]),
        lambda: LaidPlane(),
        lambda: mark(1.0),  # type: ignore[arg-type]
    ],
)
def test_what_is_of_another_type_is_a_type_error(call: Callable[[], object]) -> None:
    with pytest.raises(TypeError):
        call()

"""The classes of seamwright.trim, metal and movement as Python sees them. Figures stand in the reference cases."""

import copy
import pickle
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from seamwright import InputError, metal, movement, trim
from seamwright.metal import Gauge, GaugeSystem
from seamwright.movement import LengthChange
from seamwright.record import Source
from seamwright.trim import (
    Bend,
    BendFigures,
    BendRule,
    BendSize,
    Chain,
    Course,
    BlankPlan,
    Deduction,
    DeductionTable,
    DinFactor,
    DinMinimumRadius,
    DrawnTrim,
    Edge,
    EndFold,
    FlatBend,
    FlatLeg,
    FlatPattern,
    Joggle,
    Leg,
    MatchingSection,
    Mitre,
    NeutralFactor,
    NominalBend,
    NominalSeam,
    NominalSum,
    OverBend,
    Profile,
    ReliefHole,
    SetbackFactor,
    Springback,
    TrialBend,
    Vertices,
    Taper,
    TaperedRun,
    din_compensation,
)
from seamwright.units import BendAngle, Length
from test_brake import BRAKE
from test_water_and_work import METALS

TABLE = DeductionTable([Deduction("0.05 in", "0.032 in", "90 deg", "0.079 in")], Source.user("trial bends"))
RULES = [
    BendRule.neutral_axis(NeutralFactor(0.4)),
    BendRule.neutral_axis(NeutralFactor(0.4), Source.user("trial bend of 3 May")),
    BendRule.din_6935(),
    BendRule.handbook("soft-steel"),
    BendRule.handbook("soft-copper"),
    BendRule.aviation(),
    BendRule.deductions(TABLE),
    BendRule.sharp_corner(),
    BendRule.din_6935_linear(),
    BendRule.din_6935_or(BendRule.aviation()),
    BendRule.din_6935_or(BendRule.deductions(TABLE)),
]
EDGES = [
    Edge.raw(),
    Edge.closed_hem('1/2"', "up"),
    Edge.closed_hem('1/2"', "down"),
    Edge.closed_hem('1/2"', "down", BendRule.sharp_corner()),
    Edge.open_hem('1/2"', '5/32"', "down"),
    Edge.double_hem('1/2"', "up"),
    Edge.teardrop_hem('1/8"', '3/8"', "0 in", "down"),
    Edge.teardrop_hem('1/8"', '3/8"', '1/16"', "down", BendRule.aviation()),
    Edge.wired_edge('1/8"', "up"),
]
LEGS = [Leg("deck flange", '4"', "sheet-edge", "outer-corner"), Leg("face", '3"', "outer-corner", "outer-tangent")]
BENDS = [Bend("90 deg", "down", "0.03 in"), Bend("90 deg", "down", "0.03 in", BendRule.din_6935())]
DRIP = Profile("0.024 in", LEGS, BENDS[:1], painted="upper", end_edge=EDGES[4])
FLAT = DRIP.unfold(RULES[0])
SQUARE = {"thickness": "0.024 in", "inside_radius": "0.024 in", "angle": "90 deg"}
STEP = {"name": "step", "depth": '1/2"', "angle": "30 deg", "direction": "up", "inside_radius": "0.03 in"}
FLANGE, FACE = {"name": "flange", "to": {"x": "4 in", "y": "0 in"}}, {"name": "face", "to": {"x": "4 in", "y": "-3 in"}}
LINE = {"thickness": "0.024 in", "inside_radius": "0.03 in", "start": {"x": "0 in", "y": "0 in"}, "legs": [FLANGE, FACE], "painted": "upper"}
COURSE = {
    "thickness": "0.024 in",
    "items": [{"leg": {"name": "lap", "length": "1 in"}}, {"joggle": STEP}, {"leg": {"name": "apron", "length": "6 in"}}],
    "measured_to": "outer-corner",
    "painted": "upper",
}
ELL = {
    "thickness": "0.024 in",
    "legs": [
        {"name": "a", "length": "2 in", "start": "sheet-edge", "end": "outer-corner"},
        {"name": "b", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"},
    ],
    "bends": [{"angle": "90 deg", "direction": "up", "inside_radius": "0.024 in"}],
    "painted": "upper",
}
HALF = {"neutral-axis": {"factor": 0.5}}
TRIAL = {"thickness": "0.05 in", "inside_radius": "0.032 in", "angle": "90 deg", "blank": "1.921 in", "legs": ["1 in", "1 in"]}
ELASTIC = {"yield_strength": "40 ksi", "modulus": "29000 ksi"}
WANTED = {"thickness": "0.0359 in", "inside_radius": "0.5 in", "angle": "90 deg"}
STEEL = {"thickness": "0.6 mm", "tensile_strength": "330 MPa", "angle": "90 deg", "grain": "across"}
CALCULATIONS: list[Any] = [
    *[Joggle.from_dict(STEP | {"thickness": "0.024 in"}), Course.from_dict(COURSE), Chain.from_dict(LINE | {"face": "lower"})],
    *[Vertices.from_dict(LINE | {"drawn_to": "outside"}), Vertices.from_dict(LINE | {"drawn_to": "inside"})],
    *[NominalSeam.from_dict({"hem": {"width": '1/4"'}}), NominalSeam.from_dict({"grooved-seam": {"lock": '1/4"'}})],
    *[NominalSum.from_dict({"profile": ELL, "rule": HALF, "take_up": leg}) for leg in (0, 1)],
    *[BendFigures.from_dict({"size": SQUARE, "rule": "aviation"}), TrialBend.from_dict(TRIAL | {"measured_to": "outer-corner"})],
    Springback.from_dict({"thickness": "0.0359 in", "forming_radius": "0.5 in", "forming_angle": "90 deg"} | ELASTIC),
    *[OverBend.from_dict(WANTED | {"by": by}) for by in ({"elastic": ELASTIC}, {"table": "dc01"}, {"factor": 0.9}, {"angle": "2 deg"})],
    DinMinimumRadius.from_dict(STEEL),
    ReliefHole.from_dict({"habit": "radius", "inside_radius": "0.2 in", "thickness": "0.04 in"}),
    MatchingSection.from_dict({"profile": ELL, "corner": {"plan": {"turn": "90 deg", "first_rise": "0 deg", "second_rise": "20 deg"}}, "closes_on": "upper"}),
]
FOUND: list[Any] = [c.compute() for c in CALCULATIONS if not isinstance(c, (Course, Chain, Vertices, DinMinimumRadius, ReliefHole))]
# A profile in job form, and what is asked of it.
ANGLE: dict[str, Any] = {
    "thickness": "0.024 in",
    "legs": [
        {"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
        {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"},
    ],
    "bends": [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}],
    "painted": "upper",
}
ASKED: dict[str, Any] = {"rule": "aviation", "tolerance": "0.01 mm"}
CORNER = {"plan": {"turn": "90 deg", "first_rise": "0 deg", "second_rise": "0 deg"}}
ENDS = {"near": ANGLE, "far": {**ANGLE, "legs": [ANGLE["legs"][0], {**ANGLE["legs"][1], "length": "5 in"}]}, "held": "start-edge"}
PLAN = BlankPlan.from_dict({**ASKED, "profile": ANGLE, "length": "10 ft"})
HEM = {"closed-hem": {"width": "1 in", "direction": "down"}}
FOLD = EndFold.from_dict(
    {"width": "16 in", "meeting": "45 deg", "hem": HEM, "thickness": "0.024 in", "rule": "aviation", "ends": "mirrored", "shown": "1 ft"}
)
MITRE = Mitre.from_dict({**ASKED, "profile": ANGLE, "corner": CORNER, "second": "turned", "closes_on": "upper"})
TAPER = Taper.from_dict({**ASKED, **ENDS, "length": "10 ft"})
RUN = TaperedRun.from_dict({**ASKED, **ENDS, "run": "25 ft", "longest": "10 ft", "lap": "4 in", "mode": "equal"})
VALUES: list[Any] = [
    *[*CALCULATIONS, *FOUND],
    *[PLAN, FOLD, MITRE, TAPER, RUN],
    *[DrawnTrim.from_dict({"profile": ANGLE, "rule": "aviation", "name": "angle", "format": "in/16", "view": view}) for view in ("flat-svg", "section-svg")],
    *[NeutralFactor.MIDDLE, NeutralFactor(0.4), DinFactor.of("6 mm", "5 mm"), SetbackFactor.of("90 deg")],
    *[BendSize("5 mm", "6 mm", "120 deg"), TABLE.rows[0], TABLE],
    *RULES,
    *EDGES,
    *LEGS,
    *BENDS,
    *[DRIP, DRIP.reversed(), FlatPattern(DRIP, RULES[0]), FLAT, DRIP.unfold(RULES[3])],
    *[Gauge("24 ga galvanized"), Gauge("24 ga manufacturers-standard"), Gauge.new("copper", 16), *GaugeSystem.all()],
    *[LengthChange("9.5e-6 /degF", "40'", "100 degF"), LengthChange("9.5e-6 /degF", "40'", "-100 degF")],
]
# Read from a flat pattern, which is what pickles.
ASKED_PARTS: list[Any] = [
    *[PLAN.compute(), PLAN.compute().blank, PLAN.compute().blank.outline[1], PLAN.compute().blank.bends[0], FOLD.compute()],
    *[MITRE.compute(), MITRE.compute().first, MITRE.compute().second.legs[0]],
    *[TAPER.compute(), TAPER.compute().legs[1], TAPER.compute().bends[0], RUN.compute(), RUN.compute().pieces[1]],
]
PARTS: list[Any] = [*FLAT.legs, *FLAT.bends, *NominalSum.from_dict({"profile": ELL, "rule": HALF, "take_up": 0}).compute().bends, *ASKED_PARTS]


@pytest.mark.parametrize("part", ASKED_PARTS, ids=lambda v: type(v).__name__)
def test_parts_of_what_was_asked_pickle_by_their_place(part: Any) -> None:
    again = pickle.loads(pickle.dumps(part))
    assert type(again) is type(part) and again == part and hash(again) == hash(part) and repr(again) == repr(part)


# Parts of a packet, which are tested with it.
OF_A_PACKET = {"CapMoves", "EndVerdict", "Sheet", "SideParting"}


def test_every_class_stands_in_the_list() -> None:
    public = {*trim.__all__, *metal.__all__, *movement.__all__} - {"din_compensation", "girths"}
    assert {type(v).__name__ for v in [*VALUES, *PARTS]} == public - OF_A_PACKET - BRAKE - METALS


def test_values_are_told_apart() -> None:
    values = [*VALUES, *PARTS]
    for i, a in enumerate(values):
        for j, b in enumerate(values):
            assert (a == b) is (i == j), (a, b)
    assert len(set(values)) == len(values)


@pytest.mark.parametrize("value", VALUES, ids=lambda v: type(v).__name__)
def test_value_semantics(value: Any) -> None:
    again = [pickle.loads(pickle.dumps(value, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)]
    for other in (*again, copy.copy(value), copy.deepcopy(value)):
        assert type(other) is type(value) and other == value and hash(other) == hash(value)
        assert repr(other) == repr(value) and str(other) == str(value)
    with pytest.raises(AttributeError):
        value.anything = 1
    if not repr(value).startswith("<"):
        assert eval(repr(value), {**vars(trim), **vars(metal), **vars(movement)}) == value


def test_a_flat_pattern_adds_up() -> None:
    for rule in (RULES[0], RULES[3], RULES[5], RULES[7]):
        flat = DRIP.unfold(rule)
        assert flat == FlatPattern(DRIP, rule).compute() == FlatPattern(DRIP, rule).explain()[0]
        assert flat.girth == DRIP.girth(rule) == DRIP.reversed().girth(rule)
        assert flat.girth == Length.total([leg.length for leg in flat.legs] + [bend.allowance for bend in flat.bends])
        assert flat.rule == rule and flat.thickness == DRIP.thickness
        parts: list[FlatLeg | FlatBend] = [flat.legs[0], flat.bends[0], flat.legs[1], flat.bends[1], flat.legs[2]]
        assert parts[0].start == Length.ZERO and parts[-1].end == flat.girth
        assert all(a.end == b.start for a, b in zip(parts, parts[1:], strict=False))
        for bend in flat.bends:
            assert abs(((bend.line - bend.start) - (bend.end - bend.line)).pm) <= 1 and bend.rule == rule
            assert flat.from_end(flat.from_end(bend.line)) == bend.line
    assert [leg.part for leg in FLAT.legs] == [0, 1, "end-hem"] and [bend.part for bend in FLAT.bends] == [0, "end-hem"]
    assert [b.direction for b in FLAT.bends] == ["down", "down"]
    assert FLAT.bends[0].angle == BendAngle.SQUARE and FLAT.bends[0].inside_radius == Length("0.03 in")
    assert FLAT.line_mass("1 lb/ft2").get("lb/ft") == pytest.approx(FLAT.girth.get("ft"), rel=1e-12)


def test_calculations_are_documents_and_explain_themselves() -> None:
    for c in CALCULATIONS:
        assert type(c).from_dict(c.to_dict()) == type(c).from_json(c.to_json()) == c
        out, sheet = c.explain()
        assert out == c.compute() and sheet.steps()
        with pytest.raises(InputError) as caught:
            type(c).from_json("{}")
        assert caught.value.kind in ("missing", "format")


def test_three_ways_make_one_profile() -> None:
    legs = [Leg("flange", "4 in", "sheet-edge", "outer-corner"), Leg("face", "3 in", "outer-corner", "sheet-edge")]
    said = Profile("0.024 in", legs, [Bend("90 deg", "down", "0.03 in")], "upper")
    assert Vertices.from_dict(LINE | {"drawn_to": "outside"}).compute() == said
    assert Chain.from_dict(LINE | {"face": "upper"}).compute() == said
    # Along the lower face, which is the inside of the bend, each leg is a thickness shorter.
    within: list[Any] = [FLANGE | {"to": {"x": "3.976 in", "y": "0 in"}}, FACE | {"to": {"x": "3.976 in", "y": "-2.976 in"}}]
    for inside in (Chain.from_dict(LINE | {"legs": within, "face": "lower"}), Vertices.from_dict(LINE | {"legs": within, "drawn_to": "inside"})):
        assert inside.compute().unfold(RULES[0]) == inside.compute().unfold(RULES[0])
        assert inside.compute().girth(RULES[0]) == said.girth(RULES[0])
    assert [leg.name for leg in Course.from_dict(COURSE).compute().legs] == ["lap", "step", "apron"]


def test_edges_of_several_folds() -> None:
    for edge, folds in ((EDGES[5], ["end-hem", "end-lip"]), (EDGES[6], ["end-hem"]), (EDGES[8], ["end-hem"])):
        profile = Profile("0.024 in", [Leg("face", "4 in", "sheet-edge", "outer-tangent")], [], "upper", end_edge=edge)
        flat = profile.unfold(RULES[0])
        assert [bend.part for bend in flat.bends] == folds and flat.girth == profile.reversed().girth(RULES[0])
        assert edge.rule is None
    assert EDGES[7].rule == BendRule.aviation()
    assert FLAT.bends[0].angle == BendAngle.SQUARE
    curled = Profile("0.024 in", [Leg("side", "6 in", "sheet-edge", "outer-tangent")], [], "upper", end_edge=EDGES[8])
    assert curled.girth(BendRule.sharp_corner()) == Length('6 5/16"')


def test_a_nominal_sum_is_taken_up() -> None:
    made = NominalSum.from_dict({"profile": ELL, "rule": HALF, "take_up": 1}).compute()
    assert made.nominal == Length("5 in") == made.flat.girth and made.nominal - made.developed == made.difference
    bend: NominalBend = made.bends[0]
    assert bend.part == 0 and bend.nominal - bend.developed == bend.difference == made.difference
    assert made.leg == Length("3 in") + made.difference and made.flat.legs[1].length > made.flat.legs[0].length
    assert [c.name for c in made.cautions][0] == "taken-up"


def test_din_says_where_another_rule_was_used() -> None:
    flat = DRIP.unfold(RULES[-2])
    assert [c.name for c in flat.cautions] == ["outside-din-6935"] or flat.bends[1].angle == BendAngle("180 deg")
    assert flat.bends[1].allowance == DRIP.unfold(BendRule.aviation()).bends[1].allowance
    assert flat.bends[0].allowance == DRIP.reversed().unfold(RULES[-2]).bends[1].allowance


def test_a_sharp_corner_says_that_it_is_nominal() -> None:
    assert "nominal-sum" in [c.name for c in DRIP.unfold(BendRule.sharp_corner()).cautions]


def test_a_profile_gives_back_its_parts() -> None:
    assert (DRIP.legs, DRIP.bends, DRIP.painted) == (LEGS, BENDS[:1], "upper")
    assert DRIP.closes_on_paint("up") and not DRIP.closes_on_paint("down")
    assert DRIP.start_edge.is_raw and DRIP.end_edge == EDGES[4] and DRIP.thickness == Length("0.024 in")
    assert (LEGS[0].name, LEGS[0].length, LEGS[0].start, LEGS[0].end) == ("deck flange", Length('4"'), "sheet-edge", "outer-corner")
    assert BENDS[1].rule == BendRule.din_6935() and BENDS[0].rule is None
    assert DRIP.reversed().reversed() == DRIP
    own = Profile("0.024 in", LEGS, [Bend("90 deg", "down", "0.03 in", RULES[3])], "upper", end_edge=EDGES[4])
    assert own.unfold(RULES[0]).bends[0].rule == RULES[3]


def test_rules_and_factors() -> None:
    size = BendSize("0.05 in", "0.032 in", "90 deg")
    assert BendRule.deductions(TABLE).deduction(size) == Length("0.079 in") and TABLE.source == BendRule.deductions(TABLE).source
    assert size.outside_setback() == Length("0.082 in") and size.inside_setback() == Length("0.032 in")
    for rule in (RULES[0], RULES[3], RULES[5]):
        both = rule.allowance(size) + rule.deduction(size)
        assert abs((both - size.outside_setback() * 2).pm) <= 2
    assert [r.name for r in RULES[2:6]] == ["DIN 6935", "handbook", "handbook", "aviation"]
    k = DinFactor.of("6 mm", "5 mm")
    assert k.neutral.value == k.value / 2
    assert isinstance(din_compensation(BendSize("5 mm", "6 mm", "90 deg")), Length)


def test_gauges() -> None:
    g = Gauge("24 ga galvanized")
    assert (g.system, g.number) == (GaugeSystem("galvanized"), 24) and Gauge.new("galvanized", 24) == g
    assert g.least_thickness is None and Gauge.new("copper", 16).least_thickness is not None
    for system in GaugeSystem.all():
        assert system.numbers
    assert str(g.source)


def test_length_change() -> None:
    change = LengthChange("9.5e-6 /degF", "40'", "100 degF")
    out, sheet = change.explain()
    assert out == change.compute() and [s.formula for s in sheet.steps()] == ["alpha L dT"]
    assert LengthChange("9.5e-6 /degF", "40'", "-100 degF").compute() == -out


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Gauge("24 ga"), "unit", ""),
    (lambda: Gauge("24"), "unit", ""),
    (lambda: Gauge.new("galvanized", 99), "out of range", "number"),
    (lambda: GaugeSystem("wire"), "unknown", ""),
    (lambda: GaugeSystem("galvanized").nearest("0 mm"), "out of range", "thickness"),
    (lambda: LengthChange("9.5e-6", "40'", "100 degF"), "unit", "expansion"),
    (lambda: LengthChange("9.5e-6 /degF", "-40'", "100 degF").compute(), "out of range", "length"),
    (lambda: NeutralFactor(float("nan")), "not finite", ""),
    (lambda: BendRule.handbook("brass"), "unknown", "metal"),
    (lambda: BendRule.aviation().allowance(BendSize('0"', '0"', "90 deg")), "out of range", "thickness"),
    (lambda: Leg("a", '1"', "corner", "tangent"), "unknown", "start"),
    (lambda: Leg("a", "1", "tangent", "tangent"), "unit", "length"),
    (lambda: Bend("90 deg", "left", '0"'), "unknown", "direction"),
    (lambda: DeductionTable([], Source.user("none")), "missing", "rows"),
    (lambda: Profile('0"', LEGS[:1], [], "upper"), "out of range", "thickness"),
    (lambda: Profile("0.024 in", LEGS, BENDS[:1], "inner"), "unknown", "painted"),
    (lambda: Profile("0.024 in", [], [], "upper"), "missing", "legs"),
    (lambda: BendRule.din_6935_or(BendRule.din_6935()), "conflict", "otherwise"),
    (lambda: BendSize("1 mm", "-1 mm", "90 deg").outside_setback(), "out of range", "inside_radius"),
    (lambda: BendSize("1 mm", "1 mm", "180 deg").outside_setback(), "out of range", "angle"),
    (lambda: BendRule.sharp_corner().deduction(BendSize("1 mm", "1 mm", "180 deg")), "out of range", "angle"),
    (lambda: BendSize("nan mm", "1 mm", "90 deg"), "parse", "thickness"),
    (lambda: BendSize("1e300 km", "1 mm", "90 deg"), "unit", "thickness"),
    (lambda: BendAngle("nan deg"), "parse", ""),
    (lambda: edged(Edge.double_hem("1 mm", "up")), "impossible", "end_edge.width"),
    (lambda: edged(Edge.closed_hem("4 in", "up")), "impossible", "end_edge.width"),
    (lambda: edged(Edge.wired_edge("0 mm", "up")), "out of range", "end_edge.wire"),
    (lambda: edged(Edge.teardrop_hem("1 mm", "5 mm", "2 mm", "up")), "conflict", "end_edge.gap"),
    (lambda: edged(Edge.teardrop_hem("1 mm", "5 mm", "0 mm", "up")).girth(BendRule.sharp_corner()), "out of range", "end_edge"),
    (lambda: Joggle.from_dict(STEP | {"thickness": "0.024 in", "depth": "0.001 in"}).compute(), "impossible", "depth"),
    (lambda: NominalSum.from_dict({"profile": ELL, "rule": HALF, "take_up": 2}).compute(), "unknown", "take_up"),
    (lambda: OverBend.from_dict(WANTED | {"inside_radius": "0 in", "by": {"table": "dc01"}}).compute(), "out of range", "inside_radius"),
    (lambda: OverBend.from_dict(WANTED | {"by": {"table": "tin"}}), "unknown", "by.table"),
    (lambda: TrialBend.from_dict(TRIAL | {"measured_to": "outer-corner", "blank": "2 in"}).compute(), "impossible", "blank"),
    (lambda: BendRule.din_6935_linear().allowance(BendSize("1 mm", "1 mm", "80 deg")), "out of range", "angle"),
]


def edged(edge: Edge) -> Profile:
    return Profile("0.024 in", [Leg("face", "3 in", "sheet-edge", "outer-tangent")], [], "upper", end_edge=edge)


def test_ten_thousand_bends() -> None:
    end = ["outer-corner"]
    ends = zip(["sheet-edge", *end * 10_000], [*end * 10_000, "sheet-edge"], strict=True)
    legs = [Leg("n", "4 mm", start, stop) for start, stop in ends]
    bends = [Bend("90 deg", "up" if i % 2 else "down", "0.5 mm") for i in range(10_000)]
    flat = Profile("0.5 mm", legs, bends, "upper").unfold(BendRule.neutral_axis(NeutralFactor(0.5)))
    assert len(flat.bends) == 10_000 and flat.girth == Length.total([leg.length for leg in flat.legs] + [bend.allowance for bend in flat.bends])
    with pytest.raises(InputError) as caught:
        Profile("0.5 mm", [Leg("n", "1 mm", leg.start, leg.end) for leg in legs], bends, "upper")
    # Every inner leg is swallowed by its two setbacks of 1 mm, and every one is told.
    assert caught.value.path == "legs[1].length" and len(caught.value.others) == 9_998


@pytest.mark.parametrize(("call", "kind", "path"), REFUSED, ids=[str(i) for i in range(len(REFUSED))])
def test_bad_input_names_its_kind_and_place(call: Callable[[], object], kind: str, path: str) -> None:
    with pytest.raises(InputError) as caught:
        call()
    every = [(e.kind, e.path) for e in (caught.value, *caught.value.others)]
    assert (kind, path) in every, str(caught.value)


def test_names_are_listed_in_the_refusal() -> None:
    with pytest.raises(InputError) as caught:
        Bend("90 deg", "left", '0"')
    assert caught.value.allowed == "up or down" and caught.value.value == "left"


def test_the_guide_s_trims_come_out_as_by_hand() -> None:
    page = (Path(__file__).parents[2] / "docs" / "trims.md").read_text(encoding="utf-8")
    (example,) = re.findall(r"^```python\n(.*?)^```$", page, re.DOTALL | re.MULTILINE)
    found: dict[str, Any] = {}
    exec(compile(example, "docs/trims.md", "exec"), found)
    assert {"eave", "ridge", "valley", "z", "gutter", "coping"} <= found.keys()

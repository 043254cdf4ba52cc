"""The classes of seamwright.pitch and seamwright.record as Python sees them. Figures stand in the reference cases."""

import copy
import math
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from seamwright import InputError, pitch, record
from seamwright.pitch import BendAt, Corner, Framing, Pitch, SlopeRule
from seamwright.record import Source, Step, Worksheet
from seamwright.units import Angle, BendAngle, Length

SQUARE = Corner("6:12", "8:12", "90 deg")
BENDS = [
    BendAt.ridge("6:12", "30 deg"),
    BendAt.hip(SQUARE),
    BendAt.valley(SQUARE),
    BendAt.pitch_transition("3:12", "9:12"),
    BendAt.eave("6:12"),
    BendAt.high_eave("6:12"),
    BendAt.headwall("6:12"),
    BendAt.rake(),
    BendAt.sidewall(),
]
SOURCES = [
    Source.COMMON_PRACTICE,
    Source.published("IBC", "2012", "1507.4.2", "secondary"),
    Source.published("a table", "", "", "memory"),
    Source.engineer("of record", "calculation 12"),
    Source.user("given"),
]
# Values of every class, all different.
VALUES: list[Any] = [
    *[Pitch("6 1/2:12"), Pitch("26.5 deg"), Pitch("33.3 %"), Pitch("150 mm:301 mm"), Pitch("1/7\":12\"")],
    *[SQUARE, Corner("6:12", "8:12", "135 deg")],
    *[SQUARE.compute(), SQUARE.compute().first, SQUARE.compute().second],
    *[Framing("6:12", '16"'), Framing("6:12", '16"').compute()],
    *BENDS,
    *[b.compute() for b in BENDS],
    *SlopeRule.all(),
    SlopeRule.given("double-lock seams", "1/2:12", Source.user("the panel's report")),
    *[SlopeRule.IBC_STANDING_SEAM.check("2 %"), SlopeRule.IBC_STANDING_SEAM.check("3:12")],
    *SlopeRule.IBC_STANDING_SEAM.check("2 %").cautions,
    *SOURCES,
    *[SQUARE.explain()[1], BendAt.hip(SQUARE).explain()[1], *SQUARE.explain()[1].steps()[:2]],
]


def test_every_class_stands_in_the_list() -> None:
    assert {type(v).__name__ for v in VALUES} == {*pitch.__all__, *record.__all__}


def test_values_are_told_apart() -> None:
    for i, a in enumerate(VALUES):
        for j, b in enumerate(VALUES):
            assert (a == b) is (i == j), (a, b)
    assert len(set(VALUES)) == len(VALUES)


@pytest.mark.parametrize("value", VALUES, ids=lambda v: type(v).__name__)
def test_value_semantics(value: Any) -> None:
    again = [pickle.loads(pickle.dumps(value, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)]
    for other in (*again, copy.copy(value), copy.deepcopy(value)):
        assert type(other) is type(value) and other == value and hash(other) == hash(value)
        assert repr(other) == repr(value) and str(other) == str(value)
    with pytest.raises(AttributeError):
        value.anything = 1
    if not repr(value).startswith("<"):
        assert eval(repr(value), {**vars(pitch), **vars(record)}) == value


def test_equal_slopes_are_one_in_a_set() -> None:
    assert len({Pitch("6:12"), Pitch("1:2"), Pitch("50 %"), Pitch("6 in:1 ft")}) == 1
    assert Pitch("12:12") != Pitch("45 deg") and Pitch("12:12").compare("45 deg") == 0
    with pytest.raises(TypeError):
        _ = Pitch("1:12") < Pitch("2:12")  # type: ignore[operator]


ratios = st.tuples(st.integers(0, 10**13), st.integers(10**8, 10**13))


@given(ratios, ratios)
def test_ratios_compare_by_cross_multiplication(a: tuple[int, int], b: tuple[int, int]) -> None:
    p, q = (Pitch.rise_run(Length.from_pm(rise), Length.from_pm(run)) for rise, run in (a, b))
    left, right = a[0] * b[1], b[0] * a[1]
    assert p.compare(q) == (left > right) - (left < right)
    assert p.at_least(q) is (left >= right)
    assert (p == q) is (left == right)
    assert p != q or hash(p) == hash(q)
    assert Pitch(str(p)) == p
    rise_run = Pitch(str(p)).as_rise_run
    assert rise_run is not None and rise_run[0].pm == a[0] and rise_run[1].pm == a[1]


@given(st.floats(0.01, 89.99))
def test_a_pitch_in_degrees_follows_the_circle(degrees: float) -> None:
    p = Pitch.from_angle(Angle.degrees_from(degrees))
    assert p.is_in_degrees and p.as_rise_run is None and p.angle.degrees == degrees
    radians = math.radians(degrees)
    for got, expected in ((p.ratio, math.tan(radians)), (p.sine, math.sin(radians)), (p.cosine, math.cos(radians)), (p.slope_factor, 1 / math.cos(radians))):
        assert math.isclose(got, expected, rel_tol=1e-12)
    assert math.isclose(p.percent, 100 * p.ratio, rel_tol=1e-15)


def test_pitch() -> None:
    p = Pitch("5:12")
    assert p.slope_length("12'") == Length("13'") and p.rise_over("8'") == Length('40"')
    assert Pitch.in_twelve('5"') == p and Pitch.rise_run("5 mm", "12 mm") == p
    assert Pitch.FLAT.is_flat and not p.is_flat and not p.is_in_degrees


@given(st.floats(1, 80), st.floats(1, 80), st.floats(5, 175))
def test_a_corner_s_geometry_agrees_with_vectors(a: float, b: float, w: float) -> None:
    corner = Corner(Pitch.from_angle(Angle.degrees_from(a)), Pitch.from_angle(Angle.degrees_from(b)), Angle.degrees_from(w))
    g = corner.compute()
    assert math.isclose(g.first.plan.degrees + g.second.plan.degrees, w, rel_tol=1e-9)
    # Upward normals of the two planes: the eaves run at 0 and at w degrees from the corner, the planes rise between them.
    ra, rb, rw = math.radians(a), math.radians(b), math.radians(w)
    n1 = (0.0, -math.sin(ra), math.cos(ra))
    n2 = (-math.sin(rb) * math.sin(rw), math.sin(rb) * math.cos(rw), math.cos(rb))
    line = (n1[1] * n2[2] - n1[2] * n2[1], n1[2] * n2[0] - n1[0] * n2[2], n1[0] * n2[1] - n1[1] * n2[0])
    length = math.sqrt(sum(x * x for x in line))
    assert math.isclose(math.sin(math.radians(g.slope.degrees)), abs(line[2]) / length, rel_tol=1e-6, abs_tol=1e-9)
    # With acos the smallest angles lose half their digits.
    between = math.degrees(math.atan2(length, sum(x * y for x, y in zip(n1, n2, strict=True))))
    assert math.isclose(180 - between, g.dihedral.degrees, abs_tol=1e-6)
    along = line if line[2] > 0 else tuple(-x for x in line)
    assert math.isclose(math.degrees(math.atan2(math.hypot(along[1], along[2]), along[0])), g.first.in_plane.degrees, abs_tol=1e-6)


def test_corner_sides() -> None:
    side = Corner("4:12", "4:12", "90 deg").compute().first
    assert math.isclose(side.drop_over('16"').get("in"), Pitch("4:12").slope_length('16"').get("in"), rel_tol=1e-12)
    assert math.isclose(side.meeting.degrees + side.skew.degrees, 90)
    assert side.meeting == Angle.degrees_from(abs(side.signed_meeting.degrees))
    assert (SQUARE.first, SQUARE.second, SQUARE.plan) == (Pitch("6:12"), Pitch("8:12"), Angle.SQUARE)


@pytest.mark.parametrize("calculation", [SQUARE, Framing("6:12", '16"'), *BENDS], ids=repr)
def test_explaining_gives_what_computing_gives(calculation: Any) -> None:
    out, sheet = calculation.explain()
    assert out == calculation.compute()
    assert isinstance(sheet, Worksheet) and sheet.title and sheet.steps()
    assert str(sheet.steps()[-1].source)


def test_worksheets_nest() -> None:
    sheet = BendAt.hip(SQUARE).explain()[1]
    part, step = sheet.entries
    assert isinstance(part, Worksheet) and isinstance(step, Step)
    assert part == SQUARE.explain()[1]
    assert sheet.steps() == [*part.steps(), step]
    assert step.what == "bend from flat" and step.formula == "C1 + C2" and [symbol for symbol, _ in step.inputs] == ["C1", "C2"]
    assert step.result == str(BendAt.hip(SQUARE).compute().bend)


def test_bends() -> None:
    assert BendAt.headwall("12:12").compute().bend == BendAngle("45 deg")
    turns = {b.name: b.compute().turn for b in BENDS}
    assert turns == {
        "ridge": "down",
        "hip": "down",
        "valley": "up",
        "pitch transition": "up",
        "eave": "down",
        "high eave": "down",
        "headwall": "up",
        "rake": "down",
        "sidewall": "up",
    }
    assert BendAt.pitch_transition("6:12", "6:12").compute().turn == "none"
    assert BendAt.pitch_transition("9:12", "3:12").compute().turn != BendAt.pitch_transition("3:12", "9:12").compute().turn


def test_slope_rules() -> None:
    named = {name: getattr(SlopeRule, name) for name in dir(SlopeRule) if name.isupper()}
    assert set(named.values()) == set(SlopeRule.all())
    check = SlopeRule.IBC_STANDING_SEAM.check("2 %")
    assert not check.passes and check.pitch == Pitch("2 %") and check.rule == SlopeRule.IBC_STANDING_SEAM and check.source == check.rule.source
    assert [(c.number, c.name, c.subject) for c in check.cautions] == [(2000, "below-minimum-slope", "pitch"), (2001, "rounded-percentage", "pitch")]
    assert check.cautions[1].arguments["printed"] == "2" and "2 %" in check.cautions[1].message and check.cautions[1].message in str(check.cautions[1])
    assert SlopeRule.IRC_STANDING_SEAM.check("3:12").cautions[0].source.rests_on_memory
    rule = SlopeRule.IBC_STANDING_SEAM
    assert (rule.limit, rule.covering, rule.printed_percentage) == (Pitch("1/4:12"), "standing seams", 2)
    assert SlopeRule(rule.covering, rule.limit, rule.source, rule.printed_percentage) == rule


def test_sources() -> None:
    s = SOURCES[1]
    assert (s.document, s.edition, s.place, s.seen, s.rests_on_memory) == ("IBC", "2012", "1507.4.2", "secondary", False)
    assert str(s) == "IBC (2012), 1507.4.2 [secondary]"
    assert Source.COMMON_PRACTICE.document is None and SOURCES[3].document == "calculation 12" and SOURCES[4].seen is None


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Pitch("90 deg"), "out of range", "angle"),
    (lambda: Pitch("6"), "unit", ""),
    (lambda: Pitch("-1:12"), "out of range", "rise"),
    (lambda: Pitch("6:0"), "out of range", "run"),
    (lambda: Pitch("150 mm:12"), "unit", ""),
    (lambda: Pitch.rise_run("6", "1'"), "unit", "rise"),
    (lambda: Pitch("6:12").at_least("3"), "unit", "limit"),
    (lambda: Corner("6:12", "0:12", "90 deg").compute(), "out of range", "second"),
    (lambda: Corner("6:12", "6:12", "180 deg").compute(), "out of range", "plan"),
    (lambda: Corner("6:12", "6:12", "90"), "unit", "plan"),
    (lambda: Framing("6:12", '0"').compute(), "out of range", "spacing"),
    (lambda: SlopeRule.IBC_STANDING_SEAM.check("2"), "unit", "pitch"),
    (lambda: Source.published("a", "b", "c", "heard"), "unknown", "seen"),
]


@pytest.mark.parametrize(("call", "kind", "path"), REFUSED, ids=[str(i) for i in range(len(REFUSED))])
def test_bad_input_names_its_kind_and_place(call: Callable[[], object], kind: str, path: str) -> None:
    with pytest.raises(InputError) as caught:
        call()
    assert (caught.value.kind, caught.value.path) == (kind, path), str(caught.value)


def test_all_faults_are_told_at_once() -> None:
    with pytest.raises(InputError) as caught:
        Corner("0:12", "0:12", "0 deg").compute()
    assert [e.path for e in (caught.value, *caught.value.others)] == ["first", "second", "plan"]


@pytest.mark.parametrize("bare", [6, 0.5, None])
def test_a_bare_number_is_no_pitch(bare: Any) -> None:
    with pytest.raises(TypeError, match="a pitch, such as '6:12'"):
        Pitch(bare)
    with pytest.raises(TypeError):
        BendAt.hip(bare)

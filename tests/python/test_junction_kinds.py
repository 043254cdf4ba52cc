"""Coping, step, expansion joints and pipe: classes and names give the same, and their sections hold when rebuilt in shapely."""

import json
import math
import pickle
from pathlib import Path
from typing import Any

import pytest
import shapely  # type: ignore[import-untyped]
import shapely.affinity  # type: ignore[import-untyped]
from seamwright import job
from seamwright.error import InputError
from seamwright.junction import Coping, ExpansionAcross, ExpansionAlong, Pipe, Step
from test_section_overlap import GIVES, TOUCH, half_plane, middle, strip

INPUTS = Path(__file__).resolve().parents[2] / "docs" / "junctions" / "inputs"
KINDS: dict[str, tuple[Any, str]] = {
    "coping-on-cleats": (Coping, "junction.coping"),
    "coping-screwed-at-the-roof-side": (Coping, "junction.coping"),
    "step": (Step, "junction.step"),
    "expansion-joint-along-the-panels": (ExpansionAlong, "junction.expansion-along"),
    "expansion-joint-across-the-panels": (ExpansionAcross, "junction.expansion-across"),
    "pipe": (Pipe, "junction.pipe"),
}


def document(name: str) -> dict[str, Any]:
    read: dict[str, Any] = json.loads((INPUTS / f"{name}.json").read_text(encoding="utf-8"))
    return read


@pytest.mark.parametrize("name", KINDS)
def test_class_and_name_give_the_same(name: str) -> None:
    cls, calculation = KINDS[name]
    made = cls.from_dict(document(name))
    assert cls.from_json(made.to_json()) == made and pickle.loads(pickle.dumps(made)) == made
    result = made.compute()
    assert pickle.loads(pickle.dumps(result)) == result
    plain = job.compute(calculation, made.to_json())
    section, own = (plain["section"], result.section) if cls is Pipe else (plain, result)
    assert [t["name"] for t in section["trims"]] == [t.name for t in own.trims]
    assert [line["from_line"] for line in section["lines"]] == [str(line.from_line) for line in own.lines]
    bad = document(name) | {"hue": "red"}
    with pytest.raises(InputError) as caught:
        cls.from_dict(bad)
    assert (caught.value.kind, caught.value.path) == ("unknown", "hue")


def apart(trims: Any, solids: list[Any], what: str) -> None:
    for trim in trims:
        for solid in solids:
            assert strip(trim).intersection(solid.buffer(-GIVES)).area < TOUCH, f"{what}: {trim.name} in what it stands on"
    for i, one in enumerate(trims):
        for other in trims[i + 1 :]:
            assert not middle(one).crosses(middle(other)), f"{what}: {one.name} and {other.name} cross"
            assert strip(one).intersection(strip(other)).buffer(-GIVES / 2).is_empty, f"{what}: {one.name} and {other.name} lie in each other"


@pytest.mark.parametrize("fall", ["0:12", "1/2:12", "1:12", "3:12"])
@pytest.mark.parametrize("thickness", [90.0, 200.0, 400.0])
def test_a_coping_lies_on_its_wall_and_reaches_into_nothing(fall: str, thickness: float) -> None:
    for name in ("coping-on-cleats", "coping-screwed-at-the-roof-side"):
        solved = Coping.from_dict(document(name) | {"thickness": f"{thickness} mm", "detail": document(name)["detail"] | {"fall": fall}}).compute()
        rise, _, run = fall.partition(":")
        fraction = (0.5 if rise == "1/2" else float(rise)) / float(run)
        wall = shapely.Polygon([(0, 0), (-thickness, -thickness * fraction), (-thickness, -500), (0, -500)])
        apart(solved.trims, [wall], f"{name} {fall}")
        cap = solved.trim("coping")
        assert cap is not None
        # Nearest to the wall is the face that stands off it least: by the cleat's sheet, or by the leg of the flashing that it covers.
        off = 0.028 if name == "coping-on-cleats" else 0.024
        assert abs(strip(cap).distance(wall) - off * 25.4) < TOUCH


@pytest.mark.parametrize(("lower", "upper"), [("1:12", "3:12"), ("3:12", "4:12"), ("6:12", "3:12"), ("8:12", "5:12")])
def test_a_step_clears_its_riser_and_its_decks(lower: str, upper: str) -> None:
    given = document("step")
    given["lower"]["pitch"], given["upper"]["pitch"], given["riser"] = lower, upper, "500 mm"
    given["detail"]["upper"]["panel"]["overhang"] = "60 mm"
    solved = Step.from_dict(given).compute()

    def angle(pitch: str) -> float:
        rise, run = pitch.split(":")
        return math.degrees(math.atan(float(rise) / float(run)))

    raised = shapely.affinity.translate(half_plane(angle(upper), 1.0), 0, 500)
    riser = shapely.Polygon([(0, 0), (20, 0), (20, 500), (0, 500)])
    apart(solved.trims, [half_plane(angle(lower), -1.0), raised, riser], f"{lower} {upper}")
    assert {line.side for line in solved.lines} == {"first", "second", "riser"}


@pytest.mark.parametrize("laid", ["-20 degC", "0 degC", "20 degC", "70 degC"])
def test_the_cap_of_a_joint_neither_binds_nor_comes_off(laid: str) -> None:
    given = document("expansion-joint-along-the-panels")
    given["range"]["laid"], given["detail"]["gap"], given["detail"]["hook"] = laid, "40 mm", "60 mm"
    solved = ExpansionAlong.from_dict(given).compute()
    apart(solved.trims, [], laid)
    cap, hook = solved.trim("joint cap"), solved.trim("joint cleat, sliding side")
    assert cap is not None and hook is not None
    length, at = 30480.0, float(laid.split()[0])
    closes, opens = 12e-6 * length * (70 - at), 12e-6 * length * (at + 20)
    # The cleat moves against the cap: by what opens away from the fixed side, by what closes toward it.
    for by in (opens, -closes):
        moved = shapely.affinity.translate(strip(hook), by, 0)
        assert moved.intersection(strip(cap)).area < TOUCH
    tip = max(c.x.get("mm") for c in hook.corners) - closes
    back = cap.corners[-1].x.get("mm")
    assert tip - back >= 25.4 * 3 / 8 - TOUCH

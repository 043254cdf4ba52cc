"""The kinds of junctions in Python: each alone gives what the demo job gives for its lines, and figures of its own."""

import copy
import json
import math
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from demo import DOCUMENT, changed, detail, packet
from seamwright import InputError, job
from seamwright.junction import (
    CurbBack,
    Eave,
    Headwall,
    HighSide,
    Hip,
    Levels,
    PitchTransition,
    Rake,
    Ridge,
    SectionPoint,
    Sidewall,
    Solved,
    Valley,
)
from seamwright.units import Length


# What the job says of its decks, as each junction takes it.
LEVELS = {**DOCUMENT["levels"], "pan": DOCUMENT["metals"]["panel"]["thickness"], "seam_height": DOCUMENT["panel"]["seam_height"]}


def roof(pitch: Any) -> dict[str, Any]:
    return {"pitch": pitch, "levels": LEVELS}


def of_the_demo() -> list[tuple[str, type[Any], dict[str, Any]]]:
    """A junction of every kind that the demo has, made by hand from its planes, panels and details."""
    p = packet()
    made: list[tuple[str, type[Any], dict[str, Any]]] = []
    pitches = [plane.pitch for plane in p.roof.planes]
    for junction in p.junctions:
        first = junction.first.plane
        second = None if junction.second is None else junction.second.plane
        chosen = detail(junction.kind)
        if junction.kind == "eave":
            made.append((junction.name, Eave, {"roof": roof(pitches[first]), "detail": chosen}))
        elif junction.kind == "headwall" or junction.kind == "curb-front":
            made.append((junction.name, Headwall, {"roof": roof(pitches[first]), "detail": chosen}))
        elif junction.kind == "ridge" and second is not None:
            made.append((junction.name, Ridge, {"first": roof(pitches[first]), "second": roof(pitches[second]), "detail": chosen}))
        elif junction.kind in ("steep-to-shallow", "shallow-to-steep") and second is not None:
            made.append((junction.name, PitchTransition, {"lower": roof(pitches[first]), "upper": roof(pitches[second]), "detail": chosen}))
        elif junction.kind in ("hip", "valley") and second is not None:
            turn = abs(p.roof.planes[first].down_slope.degrees - p.roof.planes[second].down_slope.degrees)
            plan = f"{180 - min(turn, 360 - turn)} deg"
            corner = {"first": pitches[first], "second": pitches[second], "plan": plan}
            made.append((junction.name, Valley if junction.kind == "valley" else Hip, {"corner": corner, "first": LEVELS, "second": LEVELS, "detail": chosen}))
        elif junction.kind in ("rake", "sidewall", "curb-side"):
            (side,) = junction.along.sides
            width = min(panel.width for panel in side.beside)
            if junction.kind == "rake":
                edge = "seam" if all(panel.at == "seam" for panel in side.beside) else "ripped"
                made.append((junction.name, Rake, {"levels": LEVELS, "edge": edge, "end_panel": width, "detail": chosen}))
            else:
                made.append((junction.name, Sidewall, {"roof": roof(pitches[first]), "first_seam_from_wall": width, "detail": chosen}))
        elif junction.kind == "curb-back":
            width = junction.along.length
            made.append((junction.name, CurbBack, {"roof": roof(pitches[first]), "width": width, "detail": chosen}))
    return made


MADE = of_the_demo()
ONE_OF_EACH = list({cls: (name, cls, document) for name, cls, document in MADE}.values())


def same(one: Solved, other: Solved, schedule: bool) -> None:
    """All of two sections, but for spacings that the engineer's schedule has put in the place of the detail's."""
    assert one.trims == other.trims and one.ends == other.ends and one.lines == other.lines and one.cautions == other.cautions
    assert [(a.name, a.what, a.from_line, a.width) for a in one.along] == [(a.name, a.what, a.from_line, a.width) for a in other.along]
    assert schedule or one.along == other.along


@pytest.mark.parametrize(("name", "cls", "document"), MADE, ids=[name for name, _, _ in MADE])
def test_a_junction_alone_gives_what_the_job_gives(name: str, cls: type[Any], document: dict[str, Any]) -> None:
    junction = packet().junction(name)
    assert junction is not None
    made = cls.from_dict(document)
    solved = made.compute()
    same(solved, junction.section, schedule="engineer" in DOCUMENT)
    explained, sheet = made.explain()
    assert explained == solved and sheet.steps() and sheet.title == made.title


def test_the_demo_has_every_kind_but_the_high_side() -> None:
    assert {cls for _, cls, _ in MADE} == {Eave, Rake, Ridge, Hip, Valley, Headwall, Sidewall, PitchTransition, CurbBack}


@pytest.mark.parametrize(("name", "cls", "document"), ONE_OF_EACH, ids=[cls.__name__ for _, cls, _ in ONE_OF_EACH])
def test_json_goes_round_and_values_pickle(name: str, cls: type[Any], document: dict[str, Any]) -> None:
    made = cls.from_dict(document)
    for other in (cls.from_json(made.to_json()), cls.from_dict(made.to_dict()), cls.from_json(made.to_json().encode()), copy.deepcopy(made)):
        assert type(other) is cls and other == made and hash(other) == hash(made)
    assert json.loads(made.to_json()) == made.to_dict()
    assert made.to_json() == cls.from_json(made.to_json()).to_json()
    solved = made.compute()
    both = pickle.loads(pickle.dumps([made, solved, solved.trims[0], solved.lines[-1]]))
    assert both == [made, solved, solved.trims[0], solved.lines[-1]] and repr(both[1]) == repr(solved)
    # The same calculation by its name.
    by_name = {"HighSide": "high-side", "PitchTransition": "pitch-transition", "CurbBack": "curb-back"}.get(cls.__name__, cls.__name__.lower())
    plain = job.compute(f"junction.{by_name}", made.to_json())
    assert [trim["name"] for trim in plain["trims"]] == [trim.name for trim in solved.trims]
    assert [line["from_line"] for line in plain["lines"]] == [str(line.from_line) for line in solved.lines]


@pytest.mark.parametrize(("name", "cls", "document"), ONE_OF_EACH, ids=[cls.__name__ for _, cls, _ in ONE_OF_EACH])
def test_each_bad_junction_is_refused_with_its_path(name: str, cls: type[Any], document: dict[str, Any]) -> None:
    plain = cls.from_dict(document).to_dict()
    cls.from_dict(plain)

    def refused(read: Callable[[Any], Any], given: Any) -> InputError:
        with pytest.raises(InputError) as caught:
            read(given)
        return caught.value

    for way, value, kind in [(("detail", "hue"), "red", "unknown"), (("detail",), ..., "missing"), (("detail", "sheet", "thickness"), ..., "missing")]:
        bad = changed(plain, *way, value=value)
        for refusal in (refused(cls.from_dict, bad), refused(cls.from_json, json.dumps(bad))):
            assert (refusal.kind, refusal.path) == (kind, ".".join(way))
    bad = changed(plain, "detail", "sheet", "thickness", value=float("nan"))
    assert (refused(cls.from_dict, bad).kind, refused(cls.from_dict, bad).path) == ("not finite", "detail.sheet.thickness")
    assert refused(cls.from_json, json.dumps(bad)).kind == "format"
    assert refused(cls.from_json, "not JSON").kind == "format"
    assert refused(cls.from_json, "[" * 100_000).kind == "format"
    assert refused(cls.from_json, " " * (17 << 20)).kind == "too large"
    zero = cls.from_dict(changed(plain, "detail", "sheet", "thickness", value="0 in"))
    assert refused(lambda junction: junction.compute(), zero).path.startswith("detail")
    with pytest.raises(TypeError):
        cls.from_json(plain)
    with pytest.raises(TypeError):
        cls()


def test_corner_points_lie_a_leg_apart() -> None:
    # The corners are those of the face on the supports: their distances are the legs', where these are measured along that face.
    checked = 0
    for junction in packet().junctions:
        for trim in junction.section.trims:
            for leg, a, b in zip(trim.profile.legs, trim.corners, trim.corners[1:], strict=False):
                if leg.start in ("sheet-edge", "outer-corner") and leg.end in ("sheet-edge", "outer-corner") and len(trim.corners) == 2:
                    apart = math.hypot((b.x - a.x).get("mm"), (b.z - a.z).get("mm"))
                    assert apart == pytest.approx(leg.length.get("mm"), abs=1e-6)
                    checked += 1
    assert checked >= 5


def test_a_side_has_its_end_and_a_trim_its_name() -> None:
    ridge = next(cls.from_dict(document) for _, cls, document in MADE if cls is Ridge).compute()
    assert [end.side for end in ridge.ends] == ["first", "second"]
    assert ridge.end("second") == ridge.ends[1].end
    assert ridge.trim("ridge cap") == ridge.trims[0] and ridge.trim("cap") is None
    with pytest.raises(InputError) as caught:
        ridge.end("third")
    assert (caught.value.path, caught.value.kind) == ("side", "unknown")
    eave = next(cls.from_dict(document) for _, cls, document in MADE if cls is Eave).compute()
    assert eave.end("second") is None


def test_what_lies_along_says_only_what_it_has() -> None:
    seen: dict[str, set[str]] = {}
    fields = ("bites", "spacing", "source", "width", "depth", "over_seams", "web")
    for junction in packet().junctions:
        for line in junction.section.along:
            seen.setdefault(line.what, set()).update(name for name in fields if getattr(line, name) is not None)
            assert line.what != "fasteners" or line.bites in ("structure", "panel", "slot", "trim")
    assert seen["fasteners"] == {"bites", "spacing", "source"}
    assert seen["tape"] == {"width", "over_seams"}
    assert seen["bead"] == {"width", "depth"}
    assert seen["closures"] == {"web"}
    assert seen["continuous-cleat"] == seen["offset-cleat"] == set()


def test_levels_add_up() -> None:
    levels = Levels(built_up="2 in", underlayment='1/16"', stand_off='1/8"', pan=Length("0.024 in"), seam_height='1 3/4"', closure_metal="0.024 in", tape='1/16"')
    parts = [levels.built_up, levels.underlayment, levels.stand_off, levels.pan, levels.seam_height, levels.closure_metal, levels.tape]
    assert levels.compute() == Length.total(parts)
    height, sheet = levels.explain()
    assert height == levels.compute() and len(sheet.steps()) == 1
    assert pickle.loads(pickle.dumps(levels)) == levels == eval(repr(levels)) and hash(eval(repr(levels))) == hash(levels)
    assert repr(Levels()) == "Levels()" and Levels().compute() == Length("0 in")
    with pytest.raises(InputError) as caught:
        Levels(tape='-1/16"').compute()
    assert (caught.value.path, caught.value.kind) == ("tape", "out of range")
    with pytest.raises(InputError) as parse:
        Levels(seam_height="1 3/4")
    assert parse.value.path == "seam_height"
    point = SectionPoint('1"', '-2"')
    assert pickle.loads(pickle.dumps(point)) == point == eval(repr(point)) and (point.x, point.z) == (Length('1"'), Length('-2"'))

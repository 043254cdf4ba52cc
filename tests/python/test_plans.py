"""Plans of roofs of every common kind, their panels against shapely, and what only these roofs show."""

import json
import pickle
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
import shapely  # type: ignore[import-untyped]
from seamwright import InputError
from seamwright.layout import CoilTotal, CoilTotals, EdgeUse, EndPart, LaidPanel, LaidPlane, Layout, Notch, Start
from seamwright.panel import Panel, PanelEnd, Seam
from seamwright.roof import Plane, Roof
from seamwright.units import Length, LengthFormat

ROOFS = sorted((Path(__file__).parents[2] / "core" / "examples" / "roofs").glob("*.json"))
PANEL = Panel(Length.parse("16 in"), Length.parse("2 in"), Seam.double_lock(Length.parse("3/8 in")))
SVG = "{http://www.w3.org/2000/svg}"


def lay(plane: Plane) -> LaidPlane:
    end = EdgeUse.end(PanelEnd.hold_back(Length.parse("1 in")))
    return Layout(plane.outline, PANEL, Start.CENTRE_PANEL, [end] * len(plane.outline.edges)).compute()


def xy(part: EndPart) -> list[tuple[float, float]]:
    return [(point.x.get("mm"), point.y.get("mm")) for point in (part.left, part.right)]


def between(of: LaidPanel | Notch) -> shapely.Polygon:
    """What lies between the lower and the upper lines of a panel or a notch, in the plane."""
    low = [p for part in of.lower for p in xy(part)]
    high = [p for part in reversed(of.upper) for p in reversed(xy(part))]
    return shapely.Polygon(low + high)


@pytest.mark.parametrize("path", ROOFS, ids=lambda p: p.stem)
def test_a_plan_shows_what_is_laid(path: Path) -> None:
    roof = Roof.from_json(path.read_text())
    laid = [lay(plane) for plane in roof.planes]
    svg = roof.plan_svg("a roof", "180 mm", "ft-in/16", "millimetre", laid)
    texts = [element.text for element in ET.fromstring(svg).iter(f"{SVG}text")]
    for plane in laid:
        for number, panel in enumerate(plane.panels, 1):
            assert f"{number} {panel.mark}" in texts
    for kind in {line.kind for line in roof.lines}:
        name = next(line.name for line in roof.lines if line.kind == kind)
        assert name.rsplit(" ", 1)[0] in texts, kind
    bare = roof.plan_svg("a roof", "180 mm", "ft-in/16", "millimetre")
    assert len(bare) < len(svg)


@pytest.mark.parametrize("path", ROOFS, ids=lambda p: p.stem)
def test_panels_less_their_notches_are_the_plane(path: Path) -> None:
    for plane in Roof.from_json(path.read_text()).planes:
        rings = [[(p.x.get("mm"), p.y.get("mm")) for p in ring] for ring in plane.outline.rings]
        whole = shapely.Polygon(rings[0], rings[1:])
        panels = []
        for panel in lay(plane).panels:
            cut = shapely.union_all([between(notch) for notch in panel.notches]) if panel.notches else shapely.Polygon()
            shape = between(panel).difference(cut)
            assert shape.area * 1e-6 == pytest.approx(panel.covered.get("m2"), rel=1e-9)
            panels.append(shape)
        covered = shapely.union_all(panels)
        assert covered.symmetric_difference(whole).area <= 1e-6 * whole.area
        assert sum(p.area for p in panels) == pytest.approx(whole.area, rel=1e-9)


def test_a_notch_and_its_lines_pickle_as_parts() -> None:
    roof = Roof.from_json(next(p for p in ROOFS if p.stem == "curbs").read_text())
    panel = next(p for plane in roof.planes for p in lay(plane).panels if p.notches)
    notch = panel.notches[0]
    assert isinstance(notch, Notch) and pickle.loads(pickle.dumps(notch)) == notch
    assert pickle.loads(pickle.dumps(notch.lower[0])) == notch.lower[0] and hash(notch) == hash(pickle.loads(pickle.dumps(notch)))


def test_a_wall_carries_planes() -> None:
    text = next(p for p in ROOFS if p.stem == "stepped-gable").read_text()
    roof = Roof.from_json(text)
    assert roof.walls[0].carries == ["high south", "high north"]
    assert (len(roof.lines_of("sidewall")), len(roof.lines_of("rake"))) == (2, 6)
    document = json.loads(text)
    document["walls"][0]["carries"][1] = "tower"
    with pytest.raises(InputError) as caught:
        Roof.from_dict(document)
    assert (caught.value.path, caught.value.value) == ("walls[0].carries[1]", "tower")


def test_a_plan_is_refused_with_what_is_wrong() -> None:
    roof = Roof.from_json(ROOFS[0].read_text())
    with pytest.raises(InputError) as caught:
        roof.plan_svg("a roof", "180 mm", "ft-in/16", "millimetre", [None] * (len(roof.planes) + 1))
    assert caught.value.path == "laid"
    with pytest.raises(InputError):
        roof.plan_svg("a roof", "0 mm", LengthFormat.parse("mm.0"), "inch")
    with pytest.raises(InputError):
        roof.plan_svg("a roof", "180 mm", "mm.0", "cubit")


def test_coil_is_added_up_by_colour_and_gauge() -> None:
    def use(colour: str, thickness: str, length: str) -> dict[str, object]:
        return {"colour": colour, "sheet": {"alloy": "aluminium-3003", "thickness": thickness}, "width": "20 in", "length": length}

    totals = CoilTotals.from_dict({"uses": [use("slate", "0.032 in", "900 ft"), use("slate", "0.04 in", "50 ft"), use("slate", "0.032 in", "100 ft")]})
    made, sheet = totals.explain()
    assert made == totals.compute() and len(sheet.steps) == 2
    assert all(isinstance(total, CoilTotal) for total in made)
    assert [(t.colour, t.alloy, t.thickness, t.length) for t in made] == [
        ("slate", "aluminium-3003", Length.parse("0.032 in"), Length.parse("1000 ft")),
        ("slate", "aluminium-3003", Length.parse("0.04 in"), Length.parse("50 ft")),
    ]
    assert pickle.loads(pickle.dumps(made[1])) == made[1]
    with pytest.raises(InputError) as caught:
        CoilTotals.from_dict({"uses": []}).compute()
    assert caught.value.path == "uses"

"""Drawings read by readers that are not ours: DXF by ezdxf, SVG by the XML parser of the standard library."""

import math
import pathlib
import subprocess
import xml.etree.ElementTree as ElementTree

import ezdxf
import ezdxf.recover
import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]


def draw(folder):
    command = ["cargo", "run", "--locked", "--quiet", "-p", "seamwright", "--example", "draw_trim", "--", str(folder)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True)
    return sorted(folder.iterdir())


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    return draw(tmp_path_factory.mktemp("drawings"))


def of_kind(files, ending):
    found = [f for f in files if f.name.endswith(ending)]
    assert len(found) >= 3, f"no drawings that end in {ending}"
    return found


def test_every_dxf_passes_the_audit_without_error_or_fix(files):
    for path in of_kind(files, ".dxf"):
        for document, audit in [(d := ezdxf.readfile(path), d.audit()), ezdxf.recover.readfile(path)]:
            assert document.dxfversion == "AC1015"
            assert [e.message for e in audit.errors] == [], path.name
            assert [e.message for e in audit.fixes] == [], path.name


def test_the_header_says_the_unit(files):
    units = {path.name: ezdxf.readfile(path).header["$INSUNITS"] for path in of_kind(files, ".dxf")}
    assert units["eave-drip-flat.dxf"] == 1
    assert units["box-gutter-flat.dxf"] == 4


def test_a_flat_has_its_bend_lines_within_its_blank(files):
    for path in of_kind(files, "-flat.dxf"):
        space = ezdxf.readfile(path).modelspace()
        (blank,) = space.query('LWPOLYLINE[layer=="BLANK-EDGE"]')
        width = max(p[0] for p in blank.get_points())
        lines = sorted(e.dxf.start.x for e in space.query("LINE") if e.dxf.layer in ("BEND-UP", "BEND-DOWN"))
        tangents = sorted(e.dxf.start.x for e in space.query('LINE[layer=="BEND-TANGENT"]'))
        assert lines and all(0 < x < width for x in lines)
        assert len(tangents) == 2 * len(lines)
        for i, x in enumerate(lines):
            assert x == pytest.approx((tangents[2 * i] + tangents[2 * i + 1]) / 2, abs=1e-6)


def test_a_section_has_the_area_of_its_sheet(files):
    """The outline of a bent strip holds its thickness times the length of its middle line, arcs and all."""
    for path in of_kind(files, "-section.dxf"):
        space = ezdxf.readfile(path).modelspace()
        (outline,) = space.query('LWPOLYLINE[layer=="SHEET-OUTLINE"]')
        points = outline.get_points("xyb")
        assert outline.closed
        area = length = 0.0
        for (x1, y1, bulge), (x2, y2, _) in zip(points, points[1:] + points[:1]):
            chord = math.hypot(x2 - x1, y2 - y1)
            area += (x1 * y2 - x2 * y1) / 2
            if bulge:
                angle = 4 * math.atan(abs(bulge))
                radius = chord / (2 * math.sin(angle / 2))
                area += math.copysign(radius * radius * (angle - math.sin(angle)) / 2, bulge)
                length += radius * angle
            else:
                length += chord
        thickness = 0.7 if path.name.startswith("box") else 0.05 if "heavy" in path.name else 0.024
        # Round the outline is two faces, whose mean is the middle line, and two edges.
        assert abs(area) == pytest.approx(thickness * (length / 2 - thickness), rel=1e-6)


def test_drawings_are_the_same_bytes_every_time(files, tmp_path):
    again = draw(tmp_path)
    assert [f.name for f in again] == [f.name for f in files]
    for first, second in zip(files, again):
        assert first.read_bytes() == second.read_bytes(), first.name


def test_every_svg_says_its_size_and_lies_within_it(files):
    for path in of_kind(files, ".svg"):
        page = ElementTree.parse(path).getroot()
        _, _, width, height = (float(v) for v in page.attrib["viewBox"].split())
        factor = {"mm": 1.0, "in": 25.4}[page.attrib["width"][-2:]]
        assert float(page.attrib["width"][:-2]) * factor == pytest.approx(width, abs=2e-3)
        for line in page.iter("{http://www.w3.org/2000/svg}line"):
            for name, limit in [("x1", width), ("x2", width), ("y1", height), ("y2", height)]:
                assert 0 <= float(line.attrib[name]) <= limit
        for text in page.iter("{http://www.w3.org/2000/svg}text"):
            length = float(text.attrib["textLength"])
            if "transform" not in text.attrib:
                start = float(text.attrib["x"]) - {"start": 0, "middle": length / 2, "end": length}[text.attrib["text-anchor"]]
                assert start >= 0 and start + length <= width, (path.name, text.text)

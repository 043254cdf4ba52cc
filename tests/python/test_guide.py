"""The figures worked by hand in the guide's pages on junctions are reckoned again, and held against what the library gives."""

import json
import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from seamwright import job

FOLDER = Path(__file__).resolve().parents[2] / "docs" / "junctions"
PAGES = sorted(p for p in FOLDER.glob("*.md") if p.name != "README.md")
DEGREES: dict[str, Any] = {
    "sin": lambda a: math.sin(math.radians(a)),
    "cos": lambda a: math.cos(math.radians(a)),
    "tan": lambda a: math.tan(math.radians(a)),
    "asin": lambda x: math.degrees(math.asin(x)),
    "acos": lambda x: math.degrees(math.acos(x)),
    "atan": lambda x: math.degrees(math.atan(x)),
    "sqrt": math.sqrt,
    "__builtins__": {},
}


def within(document: Any, path: str) -> Any:
    """A value by its path: fields by a dot, entries by their number, or by name and where need be side: `lines[closure face@second].from_line`."""
    for field, entry in re.findall(r"([a-z_-]+)|\[([^\]]+)\]", path):
        if field:
            document = document[field]
        elif entry.isdigit():
            document = document[int(entry)]
        else:
            name, _, side = entry.partition("@")
            document = next(x for x in document if x["name"] == name and side in ("", x.get("side")))
    return document


def number(quantity: str | float) -> tuple[float, str]:
    """A quantity as inches, degrees or a pure number, with its unit."""
    value, _, unit = str(quantity).partition(" ")
    if unit == "mm":
        return float(value) / 25.4, "in"
    if ":" in value:
        rise, run = value.split(":")
        return math.degrees(math.atan(float(rise) / float(run))), "deg"
    return float(value), unit


def rows(page: str) -> Iterator[list[str]]:
    """The rows of the tables worked by hand: symbol, sum, figure, place in the document that is given or in the result."""
    for line in page.split("\n## Worked by hand\n", 1)[1].splitlines():
        cells = [c.strip() for c in line.strip().strip("|").split("|")]
        if line.startswith("| ") and len(cells) == 4 and cells[1] != "by hand":
            yield cells


@pytest.mark.parametrize("path", PAGES, ids=lambda p: p.stem)
def test_what_is_worked_by_hand_is_what_the_library_gives(path: Path) -> None:
    page = path.read_text(encoding="utf-8")
    worked = page.split("\n## Worked by hand\n", 1)[1]
    given = re.search(r"\(inputs/([^)]+\.json)\), to the calculation `([^`]+)`", page)
    assert given is not None
    document = json.loads((FOLDER / "inputs" / given[1]).read_text(encoding="utf-8"))
    result = job.compute(given[2], document)
    known: dict[str, float] = {}
    of_the_result = 0
    for symbol, by_hand, figure, place in rows(page):
        printed, unit = number(figure)
        places = len(figure.split()[0].partition(".")[2])
        if by_hand == "given":
            value, of = number(within(document, place.strip("`")))
            assert of == unit, (symbol, place)
        else:
            value = eval(by_hand.strip("`").replace("^", "**"), dict(DEGREES), known)  # noqa: S307
            if place:
                out, of = number(within(result, place.strip("`")))
                assert of == unit and abs(out - value) < 5e-7, (symbol, place, out, value)
                of_the_result += 1
        assert abs(value - printed) <= 0.5 * 10.0**-places * (1 + 1e-9), (symbol, value, printed)
        known[symbol.strip("`")] = value
    assert of_the_result >= 3, "a worked example reaches the result"
    assert worked.count("| by hand |") >= 1

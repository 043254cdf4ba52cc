"""Draws counted instructions over the size of the work, on logarithmic axes. Arguments: the counts as CSV, the SVG to be written."""

import csv
import math
import sys
from pathlib import Path

WIDTH, HEIGHT, LEFT, RIGHT, TOP, BOTTOM = 760, 500, 84, 210, 24, 56
NAMES = {
    "lines-square": "lines, houses in a square",
    "lines-row": "lines, houses in a row",
    "lines-comb": "lines, a slope and its teeth",
    "lines-corners": "the same, with corners",
    "panels": "panels, listed and marked",
}
COLOURS = {"lines-square": "#1b6ca8", "lines-row": "#c4551a", "lines-comb": "#7a3e9d", "lines-corners": "#b08900", "panels": "#2f7d32"}
MARKS = {"lines-square": "circle", "lines-row": "square", "lines-comb": "diamond", "lines-corners": "square", "panels": "diamond"}
Point = tuple[float, float]


def read(path: str) -> dict[str, list[Point]]:
    found: dict[str, list[Point]] = {}
    with open(path, encoding="utf-8") as file:
        for row in csv.DictReader(file):
            found.setdefault(row["work"], []).append((float(row["count"]), float(row["instructions"])))
    return found


class Axes:
    def __init__(self, points: list[Point]) -> None:
        self.x = [math.floor(math.log10(min(x for x, _ in points))), math.ceil(math.log10(max(x for x, _ in points)))]
        self.y = [math.floor(math.log10(min(y for _, y in points))), math.ceil(math.log10(max(y for _, y in points)))]

    def at(self, point: Point) -> Point:
        x, y = math.log10(point[0]), math.log10(point[1])
        across = LEFT + (x - self.x[0]) / (self.x[1] - self.x[0]) * (WIDTH - LEFT - RIGHT)
        return across, HEIGHT - BOTTOM - (y - self.y[0]) / (self.y[1] - self.y[0]) * (HEIGHT - TOP - BOTTOM)


def text(at: Point, words: str, anchor: str = "start", colour: str = "#222", turn: str = "") -> str:
    return f'<text x="{at[0]:.1f}" y="{at[1]:.1f}" text-anchor="{anchor}" fill="{colour}"{turn}>{words}</text>'


def line(points: list[Point], colour: str, dash: str = "", width: float = 1.6) -> str:
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<polyline points="{" ".join(f"{x:.1f},{y:.1f}" for x, y in points)}" fill="none" stroke="{colour}" stroke-width="{width}"{dashes}/>'


def mark(kind: str, at: Point, colour: str) -> str:
    x, y = at
    if kind == "circle":
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4" fill="{colour}"/>'
    turn = f' transform="rotate(45 {x:.1f} {y:.1f})"' if kind == "diamond" else ""
    return f'<rect x="{x - 3.6:.1f}" y="{y - 3.6:.1f}" width="7.2" height="7.2" fill="{colour}"{turn}/>'


def power(exponent: int) -> str:
    return f'10<tspan dy="-5" font-size="9">{exponent}</tspan>'


def grid(axes: Axes) -> list[str]:
    out = []
    for e in range(axes.x[0], axes.x[1] + 1):
        low, high = axes.at((10.0**e, 10.0 ** axes.y[0])), axes.at((10.0**e, 10.0 ** axes.y[1]))
        out += [line([low, high], "#ddd", width=1), text((low[0], low[1] + 18), power(e), "middle")]
    for e in range(axes.y[0], axes.y[1] + 1):
        low, high = axes.at((10.0 ** axes.x[0], 10.0**e)), axes.at((10.0 ** axes.x[1], 10.0**e))
        out += [line([low, high], "#ddd", width=1), text((low[0] - 8, low[1] + 4), power(e), "end")]
    middle = (TOP + HEIGHT - BOTTOM) / 2
    out.append(text(((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 14), "faces, or panels", "middle"))
    out.append(text((22, middle), "instructions", "middle", turn=f' transform="rotate(-90 22 {middle:.1f})"'))
    return out


def against(points: list[Point], axes: Axes) -> list[str]:
    """What n log n and n squared would be from the first work on."""
    out, (x0, y0) = [], points[0]
    for name, grows, dash in (("n log n", lambda n: n * math.log(n), "6 4"), ("n squared", lambda n: n * n, "2 4")):
        steps = [(x, y0 * grows(x) / grows(x0)) for x in (x0 * (points[-1][0] / x0) ** (k / 60) for k in range(61))]
        shown = [axes.at(p) for p in steps if p[1] <= 10.0 ** axes.y[1]]
        out += [line(shown, "#888", dash, 1.2), text((shown[-1][0] + 6, shown[-1][1] + 12), name, colour="#555")]
    return out


def main() -> None:
    works = read(sys.argv[1])
    axes = Axes([p for points in works.values() for p in points])
    out = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" font-family="sans-serif" font-size="12">']
    out += [f'<rect width="{WIDTH}" height="{HEIGHT}" fill="#fff"/>', *grid(axes), *against(works["lines-square"], axes)]
    for k, (name, points) in enumerate(works.items()):
        placed = [axes.at(p) for p in points]
        out += [line(placed, COLOURS[name]), *(mark(MARKS[name], at, COLOURS[name]) for at in placed)]
        key = (WIDTH - RIGHT + 26.0, TOP + 16.0 + 22 * k)
        out += [mark(MARKS[name], key, COLOURS[name]), text((key[0] + 12, key[1] + 4), NAMES[name])]
    Path(sys.argv[2]).write_text("\n".join([*out, "</svg>", ""]), encoding="utf-8")


if __name__ == "__main__":
    main()

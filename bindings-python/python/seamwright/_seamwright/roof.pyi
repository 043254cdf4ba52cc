"""
The classes of `seamwright.roof`.
"""

from .pitch import Pitch
from .record import Caution, Worksheet
from .units import Angle, Area, Length
from _typeshed import SupportsGetItem
from collections.abc import Iterable
from typing import Any, SupportsIndex, final

__all__ = ["Bounds", "Drain", "Edge", "Line", "Outline", "Plane", "Point", "Roof", "RoofInput", "Side", "Vertex", "Wall"]

@final
class Bounds:
    """
    The upright rectangle that just holds an outline.

    >>> from seamwright.roof import Outline
    >>> bounds = Outline([("0 ft", "0 ft"), ("4 ft", "0 ft"), ("0 ft", "3 ft")]).bounds
    >>> format(bounds.width(), "ft-in/16"), format(bounds.height(), "ft-in/16")
    ('4\\'-0"', '3\\'-0"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, low: Point | tuple[Length | str, Length | str], high: Point | tuple[Length | str, Length | str]) -> Bounds: ...
    def __reduce__(self, /) -> tuple[type, tuple[Point, Point]]: ...
    def __repr__(self, /) -> str: ...
    def height(self, /) -> Length:
        """
        How far it reaches up the slope.
        """
    @property
    def high(self, /) -> Point:
        """
        Its upper right corner.
        """
    @property
    def low(self, /) -> Point:
        """
        Its lower left corner.
        """
    def width(self, /) -> Length:
        """
        How far it reaches across the slope.
        """

@final
class Drain:
    """
    Water of one plane that reaches one line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Roof, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def line(self, /) -> int:
        """
        The line that its water reaches, by number.
        """
    @property
    def onto(self, /) -> int | None:
        """
        The number of the plane that the water runs onto, if it does.
        """
    @property
    def plane(self, /) -> int:
        """
        The plane that drains, by number.
        """
    @property
    def to(self, /) -> str:
        """
        Where the water goes from there: onto a ``plane``, into a ``valley``, ``off`` the roof, against a ``wall`` or a ``curb``, or ``unknown``.
        """

@final
class Edge:
    """
    One edge of an outline, from a vertex to the next; the plane lies on its left.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Outline, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> Point:
        """
        Where it ends.
        """
    @property
    def given(self, /) -> int:
        """
        Its number in the ring as it was given, which differs where the winding was turned.
        """
    @property
    def index(self, /) -> int:
        """
        Its number in the ring as stored: the edge that leaves the vertex of this number.
        """
    @property
    def ring(self, /) -> int:
        """
        The ring: 0 is the outer one, the holes follow from 1.
        """
    @property
    def start(self, /) -> Point:
        """
        Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
        """

@final
class Line:
    """
    A line of a roof: ridge, hip, valley, eave and so on. It pickles as its name in its roof.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bend(self, /) -> Angle | None:
        """
        The bend of a trim that lies on both planes, from flat: more than 0 where they bend down from the line (ridge, hip), less than 0
        where they bend up (valley).
        """
    @property
    def beyond(self, /) -> str:
        """
        What is on its right: ``plane``, ``wall``, ``hole`` or ``open``.
        """
    @property
    def crossing(self, /) -> tuple[int, int] | None:
        """
        The upper and the lower plane, by number, where water runs over the line from one onto the other.
        """
    @property
    def dihedral(self, /) -> Angle | None:
        """
        Between the two planes where there are two: below them at a ridge or hip, above them at a valley, 180 degrees or less.
        """
    @property
    def end(self, /) -> Vertex:
        """
        Where it ends.
        """
    @property
    def hole(self, /) -> str | None:
        """
        The name of the hole that it bounds, if there is one.
        """
    @property
    def kind(self, /) -> str:
        """
        What it is: ridge, hip, valley, steep-to-shallow, shallow-to-steep, eave, rake, high-edge, headwall, sidewall, curb-front,
        curb-side, curb-back or unknown.
        """
    @property
    def length(self, /) -> Length:
        """
        True length.
        """
    @property
    def name(self, /) -> str:
        """
        Its kind and a number among those of its kind, in the order of planes and edges: ``hip 2``.
        """
    @property
    def other(self, /) -> Side | None:
        """
        The other plane, where there is one.
        """
    @property
    def plan_length(self, /) -> Length:
        """
        Length in plan.
        """
    @property
    def side(self, /) -> Side:
        """
        The plane that it belongs to, the first by number, as seen from the line.
        """
    @property
    def sides(self, /) -> list[Side]:
        """
        Its sides that are planes: one or two.
        """
    @property
    def slope(self, /) -> Angle:
        """
        Its own slope from level, 0 or more.
        """
    @property
    def start(self, /) -> Vertex:
        """
        Where it starts; ``side`` lies on its left.
        """
    @property
    def wall(self, /) -> str | None:
        """
        The name of the wall that it runs along, if there is one.
        """

@final
class Outline:
    """
    The shape of a plane: a simple polygon, convex or not, with holes. A vertex is a Point or a tuple of two lengths.

    A ring may wind either way; it is stored with the outer ring counter-clockwise and the holes clockwise, each from the vertex that was given
    first, so that the plane always lies on the left of an edge. All checks are exact: nothing is snapped.

    >>> from seamwright.roof import Outline, Point
    >>> curb = [("10 ft", "5 ft"), ("14 ft", "5 ft"), ("14 ft", "9 ft"), ("10 ft", "9 ft")]
    >>> slope = Outline([("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "20 ft"), ("0 ft", "20 ft")], [curb])
    >>> round(slope.area.get("ft2"), 9), slope.contains(Point("12 ft", "7 ft"))
    (784.0, False)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, outer: Iterable[Point | tuple[Length | str, Length | str]], holes: SupportsGetItem[int, Iterable[Point | tuple[Length | str, Length | str]]] | None = None) -> Outline: ...
    def __reduce__(self, /) -> tuple[type, tuple[list[Point], list[list[Point]]]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        The area within the outer ring and outside the holes.
        """
    @property
    def bounds(self, /) -> Bounds:
        """
        The upright rectangle that just holds it.
        """
    def contains(self, /, point: Point | tuple[Length | str, Length | str]) -> bool:
        """
        Whether the point lies in the plane: within the outer ring and not within a hole; a point on an edge does.
        """
    @property
    def edges(self, /) -> list[Edge]:
        """
        Every edge, ring by ring, the outer one first.
        """
    @property
    def holes(self, /) -> list[list[Point]]:
        """
        The holes, each clockwise.
        """
    @property
    def outer(self, /) -> list[Point]:
        """
        The outer ring, counter-clockwise.
        """

@final
class Plane:
    """
    A plane of a roof, checked. Places in it are Points: x across the slope, to the right when looking up it, y up the slope; the outline
    touches x = 0 and y = 0. It pickles as its name in its roof.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def across(self, /) -> tuple[float, float, float]:
        """
        The level axis x of the plane, as a unit vector: to the right when looking up the slope.
        """
    @property
    def area(self, /) -> Area:
        """
        Its true area.
        """
    def at_plan(self, /, plan: Point | tuple[Length | str, Length | str]) -> Vertex:
        """
        The point of the plane above or below a place in plan.
        """
    @property
    def down_slope(self, /) -> Angle:
        """
        The direction in plan that water runs in, counter-clockwise from x; from 0 to less than 360 degrees.
        """
    @property
    def hole_names(self, /) -> list[str]:
        """
        The names of its holes, in the order of the hole rings.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def normal(self, /) -> tuple[float, float, float]:
        """
        The upward unit normal: its parts along x and y in plan and upward.
        """
    @property
    def off_plane(self, /) -> Length:
        """
        The farthest that a vertex lies from the plane; zero for a plane given in plan.
        """
    def origin(self, /) -> Vertex:
        """
        The origin of the plane's axes in space.
        """
    @property
    def outline(self, /) -> Outline:
        """
        Its true shape in its own axes, edge by edge the same as in plan: what a layout takes.
        """
    @property
    def pitch(self, /) -> Pitch:
        """
        Its pitch: as given, or in degrees where it follows from vertices.
        """
    @property
    def plan(self, /) -> Outline:
        """
        Its shape in plan.
        """
    @property
    def plan_area(self, /) -> Area:
        """
        Its area in plan.
        """
    @property
    def rings(self, /) -> list[list[Vertex]]:
        """
        Its vertices in space: the outer ring, then the holes, in the order of the outline.
        """
    @property
    def slope(self, /) -> Angle:
        """
        Its slope from level.
        """
    def to_plane(self, /, vertex: Vertex) -> Point:
        """
        The place in the plane's own axes of a point in space, taken square to the plane.
        """
    def to_space(self, /, point: Point | tuple[Length | str, Length | str]) -> Vertex:
        """
        The point in space of a place in the plane's own axes.
        """
    @property
    def up(self, /) -> tuple[float, float, float]:
        """
        The axis y of the plane, as a unit vector: straight up the slope.
        """

@final
class Point:
    """
    A point in a plane: x across the slope to the right as seen from below, y up the slope.

    >>> from seamwright.roof import Point
    >>> format(Point("3 ft", "0 ft").x, "in/16")
    '36"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, x: Length | str, y: Length | str) -> Point: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def x(self, /) -> Length:
        """
        Across the slope, to the right.
        """
    @property
    def y(self, /) -> Length:
        """
        Up the slope.
        """

@final
class Roof:
    """
    A roof with its lines named and measured. It pickles as its input, which computes it again.

    >>> from seamwright.roof import Roof
    >>> shape = '{"outer": [%s, %s, %s, %s], "pitch": "6:12", "down_slope": "270 deg", "anchor": {"x": "0 ft", "y": "0 ft", "z": "9 ft"}}'
    >>> shape %= tuple('{"x": "%s ft", "y": "%s ft"}' % xy for xy in [(0, 0), (40, 0), (40, 20), (0, 20)])
    >>> roof = Roof.from_json('{"planes": [{"name": "south", "shape": {"plan": %s}}]}' % shape)
    >>> format(roof.line("rake 1").length, "ft-in/16"), str(roof.planes[0].pitch)
    ('22\\'-4 5/16"', '6:12')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        The true area of all planes.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What the reader must know before metal is cut.
        """
    @property
    def drains(self, /) -> list[Drain]:
        """
        Where the water of each plane goes, in the order of planes and lines.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Roof:
        """
        The roof of this dict: ``RoofInput.from_dict(mapping).compute()``.
        """
    @staticmethod
    def from_json(text: str) -> Roof:
        """
        The roof of this JSON text: ``RoofInput.from_json(text).compute()``.
        """
    @property
    def input(self, /) -> RoofInput:
        """
        What it was made from.
        """
    def line(self, /, name: str) -> Line:
        """
        The line of this name.
        """
    @property
    def lines(self, /) -> list[Line]:
        """
        Every line, in the order of planes and edges; their numbers count from 0.
        """
    def lines_of(self, /, kind: str) -> list[Line]:
        """
        The lines of this kind, in order.
        """
    def lines_round(self, /, plane: SupportsIndex) -> list[Line]:
        """
        The lines round the plane of this number, in the order of the roof's lines.
        """
    def plane(self, /, name: str) -> Plane:
        """
        The plane of this name.
        """
    @property
    def planes(self, /) -> list[Plane]:
        """
        The planes, in the order given; their numbers count from 0.
        """
    @property
    def tolerance(self, /) -> Length:
        """
        How far apart edges were allowed to lie.
        """
    @property
    def walls(self, /) -> list[Wall]:
        """
        The walls, in the order given.
        """

@final
class RoofInput:
    """
    A roof as it is given: planes in plan with pitch and direction, or by vertices in space, and walls.

    It is read from JSON text or from a dict of the same form, in which quantities may stand as themselves.

    >>> from seamwright.roof import RoofInput
    >>> corners = [("0 ft", "0 ft", "10 ft"), ("40 ft", "0 ft", "10 ft"), ("40 ft", "20 ft", "20 ft"), ("0 ft", "20 ft", "20 ft")]
    >>> outer = [dict(zip("xyz", corner)) for corner in corners]
    >>> shed = RoofInput.from_dict({"planes": [{"name": "shed", "shape": {"space": {"outer": outer}}}]})
    >>> [line.name for line in shed.compute().lines]
    ['eave 1', 'rake 1', 'high edge 1', 'rake 2']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> RoofInput:
        """
        For unpickling: without a limit of size, which guards against text from elsewhere.
        """
    def compute(self, /) -> Roof:
        """
        The roof with its lines named and measured.
        """
    def explain(self, /) -> tuple[Roof, Worksheet]:
        """
        The roof with its lines named and measured, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> RoofInput:
        """
        Reads a roof from a dict.
        """
    @staticmethod
    def from_json(text: str) -> RoofInput:
        """
        Reads a roof from JSON text.
        """
    def to_dict(self, /) -> dict:
        """
        The roof as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        The roof as JSON text, with every quantity in its canonical form.
        """

@final
class Side:
    """
    A plane on one side of a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Line, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def backing(self, /) -> Angle:
        """
        How steeply the plane falls away from the line, in the section square to the line; less than 0 where it rises from it.
        """
    @property
    def edge(self, /) -> int:
        """
        The edge of that ring, as the outline stores it.
        """
    @property
    def end(self, /) -> Point:
        """
        Where it ends in the plane's own axes.
        """
    @property
    def given_edge(self, /) -> int:
        """
        The edge's number in the ring as it was given.
        """
    @property
    def meeting_angle(self, /) -> Angle:
        """
        Between seams and line in the plane: 90 degrees is square, 0 is along the seams.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of the plane in the roof.
        """
    @property
    def ring(self, /) -> int:
        """
        The ring of the plane's outline: 0 is the outer one, the holes follow from 1.
        """
    @property
    def skew(self, /) -> Angle:
        """
        The angle in the plane between the line and the level: more than 0 where, looking up the slope, the line rises to the right.
        """
    @property
    def start(self, /) -> Point:
        """
        Where the line starts in the plane's own axes. From start to end the plane lies on its left.
        """
    @property
    def water(self, /) -> str:
        """
        Which way water on this side runs: ``toward`` the line, ``away`` or ``along``.
        """

@final
class Vertex:
    """
    A point in space: x and y in plan, z upward.

    >>> from seamwright.roof import Vertex
    >>> format(Vertex("3 ft", "0 ft", "9 ft").z, "in/16")
    '108"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, x: Length | str, y: Length | str, z: Length | str) -> Vertex: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def x(self, /) -> Length:
        """
        In plan, to the right.
        """
    @property
    def y(self, /) -> Length:
        """
        In plan, away.
        """
    @property
    def z(self, /) -> Length:
        """
        Upward.
        """

@final
class Wall:
    """
    A wall that the roof runs into: a vertical face over a straight line in plan.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Roof, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> Point:
        """
        Where it ends in plan.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def start(self, /) -> Point:
        """
        Where it starts in plan. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def top(self, /) -> Length | None:
        """
        The height of its top; ``None`` where it is higher than every plane.
        """

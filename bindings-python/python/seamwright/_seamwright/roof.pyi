"""
The classes of `seamwright.roof`.
"""

from .layout import LaidPlane
from .pitch import Pitch
from .record import Caution, Worksheet
from .units import Angle, Area, Length, LengthFormat
from _typeshed import SupportsGetItem
from collections.abc import Iterable
from typing import Any, SupportsIndex, final

__all__ = ["Bounds", "Cricket", "CricketFigures", "Drain", "DroppedVertex", "Edge", "FlattenedFace", "JoinedPlanes", "JoinedRoof", "JointFit", "Line", "MeasuredPlane", "MeasuringSheet", "MergedFaces", "NamedCorner", "NamedOpening", "OutOfTrue", "Outline", "PlacedCricket", "PlacedPlane", "Plane", "PlaneShape", "PlaneSheet", "Point", "Reading", "Roof", "RoofInput", "SheetLine", "Side", "SketchedRoof", "SnapMove", "SnappedRoof", "Snapping", "SplitEdge", "Vertex", "Wall"]

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
class Cricket:
    """
    A cricket behind a curb: two small planes with a ridge square to the curb and two valleys. A roof takes them as ``crickets``, each behind a named hole.

    >>> from seamwright.roof import Cricket
    >>> cricket = Cricket.from_dict({"roof": "4:12", "width": "48 in", "shape": {"pitch": "4:12"}}).compute()
    >>> str(cricket.ridge), str(cricket.height), round(cricket.valley_plan.degrees, 9)
    ('609.6 mm', '203.2 mm', 45.0)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Cricket:
        """
        For unpickling.
        """
    def compute(self, /) -> CricketFigures:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[CricketFigures, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Cricket:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Cricket:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class CricketFigures:
    """
    The measures of a cricket. Each plane and each valley stands once on either side.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        True area of each plane.
        """
    @property
    def covers(self, /) -> Area:
        """
        True area of the roof that it covers.
        """
    @property
    def cricket_backing(self, /) -> Angle:
        """
        How the cricket does.
        """
    @property
    def cricket_meeting(self, /) -> Angle:
        """
        Between the cricket's seams and the valley.
        """
    @property
    def end_height(self, /) -> Length:
        """
        How high each end of it stands over the roof beside the curb.
        """
    @property
    def half_width(self, /) -> Length:
        """
        Half its width, level.
        """
    @property
    def height(self, /) -> Length:
        """
        How high the ridge stands at the curb over the curb's back line.
        """
    @property
    def pitch(self, /) -> Pitch:
        """
        True slope of each plane.
        """
    @property
    def reach(self, /) -> Length:
        """
        From the curb's back up the roof to its top, along the roof's slope.
        """
    @property
    def reach_plan(self, /) -> Length:
        """
        The same in plan.
        """
    @property
    def ridge(self, /) -> Length:
        """
        Length of the ridge.
        """
    @property
    def ridge_slope(self, /) -> Angle:
        """
        Its slope: 0 where it is level.
        """
    @property
    def roof_backing(self, /) -> Angle:
        """
        How the roof rises from the valley, in the section square to it.
        """
    @property
    def roof_meeting(self, /) -> Angle:
        """
        Between the roof's seams and the valley.
        """
    @property
    def valley(self, /) -> Length:
        """
        Length of each valley.
        """
    @property
    def valley_plan(self, /) -> Angle:
        """
        In plan, from the curb's back to the valley.
        """
    @property
    def valley_slope(self, /) -> Angle:
        """
        Slope of the valley itself.
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
class DroppedVertex:
    """
    A vertex that was left out, because it came to lie on its neighbour or to run straight back.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def plane(self, /) -> str:
        """
        Its plane.
        """
    @property
    def ring(self, /) -> int:
        """
        Its ring.
        """
    @property
    def vertex(self, /) -> int:
        """
        Its number in the ring as given.
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
class FlattenedFace:
    """
    A face that was not flat, and how flat it is now.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def off_after(self, /) -> Length:
        """
        The farthest that one lies from it now.
        """
    @property
    def off_before(self, /) -> Length:
        """
        The farthest that a vertex lay from its plane, after the vertices were brought together.
        """
    @property
    def plane(self, /) -> str:
        """
        Its plane.
        """

@final
class JoinedPlanes:
    """
    Planes measured on the slope, joined edge to edge into a roof in space.

    >>> from seamwright.roof import JoinedPlanes
    >>> outer = [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in [(0, 0), (40, 0), (40, 20), (0, 20)]]
    >>> planes = [{"name": name, "outer": outer, "pitch": "9:12"} for name in ("south", "north")]
    >>> ridge = {"first": {"plane": "south", "edge": 2}, "second": {"plane": "north", "edge": 2}}
    >>> anchor = {"plane": "south", "corner": 0, "at": {"x": "0 ft", "y": "0 ft", "z": "10 ft"}, "down_slope": "270 deg"}
    >>> joined = JoinedPlanes.from_dict({"planes": planes, "joints": [ridge], "anchor": anchor}).compute()
    >>> format(joined.roof.compute().line("ridge 1").start.z, "ft-in/16"), joined.misclosure < joined.roof.compute().tolerance
    ('22\\'-0"', True)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> JoinedPlanes:
        """
        For unpickling.
        """
    def compute(self, /) -> JoinedRoof:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[JoinedRoof, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> JoinedPlanes:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> JoinedPlanes:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class JoinedRoof:
    """
    A roof in space from planes on the slope.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What the reader must know before metal is cut.
        """
    @property
    def checks(self, /) -> int:
        """
        How many measures more than needed the joints and pitches held.
        """
    @property
    def joints(self, /) -> list[JointFit]:
        """
        How each joint closes, in the order given.
        """
    @property
    def misclosure(self, /) -> Length:
        """
        The largest gap of all.
        """
    @property
    def planes(self, /) -> list[PlacedPlane]:
        """
        How the planes lie, in the order given.
        """
    @property
    def roof(self, /) -> RoofInput:
        """
        The roof, its planes by their vertices in space.
        """
    @property
    def steps(self, /) -> int:
        """
        Steps that the search took.
        """
    @property
    def ties(self, /) -> list[dict]:
        """
        How each tie closes, in the order given: ``plane``, ``corner``, ``from`` and ``gap``.
        """

@final
class JointFit:
    """
    How well two joined edges close.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end_gap(self, /) -> Length:
        """
        How far apart they lie where it ends.
        """
    @property
    def first(self, /) -> tuple[str, int]:
        """
        The plane and the edge of the first.
        """
    @property
    def longer_by(self, /) -> Length:
        """
        How much longer the first was measured than the second; with an offset, 0.
        """
    @property
    def misclosure(self, /) -> Length:
        """
        The larger of the two gaps.
        """
    @property
    def second(self, /) -> tuple[str, int]:
        """
        The plane and the edge of the second.
        """
    @property
    def start_gap(self, /) -> Length:
        """
        How far apart the two edges lie in space where the first starts.
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
    def riser(self, /) -> Length | None:
        """
        At a step, from the line up to the edge of the plane above; ``None`` at any other line.
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
class MeasuredPlane:
    """
    One plane of a roof by the lengths measured between its corners, more than are needed; the shape is solved by least squares.

    >>> from seamwright.roof import MeasuredPlane
    >>> read = [("A", "B", "40'"), ("B", "C", "24'"), ("C", "D", "40'"), ("D", "A", "24'"), ("A", "C", "46'-7 3/4\\""), ("B", "D", "46'-7 3/4\\"")]
    >>> lengths = [{"from": a, "to": b, "length": length} for a, b, length in read]
    >>> level = [{"side": ["A", "B"], "end": "foot"}]
    >>> plane = MeasuredPlane.from_dict({"name": "south", "corners": list("ABCD"), "lengths": lengths, "level": level, "notation": "ft-in/16"})
    >>> shape = plane.compute()
    >>> shape.line, shape.checks, shape.corners[2].name
    ('south: square and parallel within 1/8"', 1, 'C')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> MeasuredPlane:
        """
        For unpickling.
        """
    def compute(self, /) -> PlaneShape:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[PlaneShape, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> MeasuredPlane:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> MeasuredPlane:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class MeasuringSheet:
    """
    What to measure on a roof, in the order of the walk round it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def filled(self, /, lengths: Iterable[Length | str]) -> list[MeasuredPlane]:
        """
        The planes with these readings, by the number of their lines.
        """
    def html(self, /, job: str, paper: str, notation: LengthFormat | str) -> bytes:
        """
        The sheet as one HTML page for print, with a blank for every length. ``paper`` is ``letter`` or ``a4``.
        """
    @property
    def joints(self, /) -> list[dict]:
        """
        The sides that two planes share from end to end, as ``JoinedPlanes`` takes them.
        """
    @property
    def lines(self, /) -> int:
        """
        How many lengths there are in all.
        """
    @property
    def marks(self, /) -> int:
        """
        How many marks there are in all.
        """
    @property
    def planes(self, /) -> list[PlaneSheet]:
        """
        The planes in the order of the walk: along the free sides counter-clockwise, then those within.
        """
    @property
    def ties(self, /) -> list[dict]:
        """
        What ties planes that no line joins to those before them, two for each group of them. ``plane``, ``corner`` and ``from`` go with the readings
        ``along``, ``out`` and ``up`` into the ``ties`` of ``JoinedPlanes``.
        """

@final
class MergedFaces:
    """
    Two faces of one plane that became one.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def gone(self, /) -> str:
        """
        The face that went into it. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def into(self, /) -> str:
        """
        The face that stays.
        """

@final
class NamedCorner:
    """
    A corner of a measured or sketched plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Point:
        """
        Where it lies.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """

@final
class NamedOpening:
    """
    An opening with its corners where they lie.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def corners(self, /) -> list[NamedCorner]:
        """
        Its corners, in order.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """

@final
class OutOfTrue:
    """
    A side that ought to be square or parallel to the level one, and how far it is off.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> str:
        """
        The corner where it ends.
        """
    @property
    def off(self, /) -> Length:
        """
        How far it is off from one end to the other: a rake to the right as it rises, a foot or head upward as it runs to the right.
        """
    @property
    def over(self, /) -> Length:
        """
        Over this length square to that.
        """
    @property
    def side(self, /) -> str:
        """
        What it is: ``foot``, ``head``, ``left-rake`` or ``right-rake``.
        """
    @property
    def start(self, /) -> str:
        """
        The corner where the side starts, counter-clockwise. (In Rust this is ``from``, which is a word of Python's own.)
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
class PlacedCricket:
    """
    A cricket of a roof.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def figures(self, /) -> CricketFigures:
        """
        Its measures.
        """
    @property
    def hole(self, /) -> str:
        """
        The hole behind which it stands.
        """
    @property
    def left(self, /) -> int:
        """
        Number of its left plane, looking up the slope.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of the plane in which it stands.
        """
    @property
    def right(self, /) -> int:
        """
        Number of its right plane.
        """

@final
class PlacedPlane:
    """
    A plane as it was set in space.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def down_slope(self, /) -> Angle:
        """
        The direction in plan that water runs in, counter-clockwise from x.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def slope(self, /) -> Angle:
        """
        Its slope from level.
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
class PlaneShape:
    """
    The shape of a measured plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What the reader must know before metal is cut.
        """
    @property
    def checks(self, /) -> int:
        """
        How many more were given.
        """
    @property
    def corners(self, /) -> list[NamedCorner]:
        """
        Its corners, in the order given; the shape touches x = 0 and y = 0.
        """
    @property
    def fit_ratio(self, /) -> float | None:
        """
        The root of the mean square of the residuals over their tolerances, for each check; ``None`` without a check.
        """
    @property
    def last_step(self, /) -> Length:
        """
        The greatest move of its last step.
        """
    @property
    def line(self, /) -> str:
        """
        How true the plane is and where the difference goes, in one line.
        """
    @property
    def misclosure(self, /) -> Length | None:
        """
        The greatest that a reading is off what the rest say; ``None`` where nothing is checked.
        """
    @property
    def name(self, /) -> str:
        """
        The plane's name.
        """
    @property
    def needed(self, /) -> int:
        """
        How many lengths the shape needs: two for each corner, those of the openings among them, less three.
        """
    @property
    def openings(self, /) -> list[NamedOpening]:
        """
        Its openings, in the order given, in the same axes.
        """
    @property
    def out_of_true(self, /) -> list[OutOfTrue]:
        """
        The sides that should be square or parallel to the level side and how far they are off.
        """
    @property
    def readings(self, /) -> list[Reading]:
        """
        Every observation with its residual: lengths, squares, parallels, each in the order given.
        """
    @property
    def slope_plane(self, /) -> dict:
        """
        The plane as ``JoinedPlanes`` takes it: edge i runs from corner i to the next.
        """
    @property
    def steps(self, /) -> int:
        """
        Steps that the search took.
        """

@final
class PlaneSheet:
    """
    The sheet of one plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def corners(self, /) -> list[NamedCorner]:
        """
        Its corners, counter-clockwise, from the side that the walk comes to first; where they lie in the sketch.
        """
    @property
    def lines(self, /) -> list[SheetLine]:
        """
        What to measure: sides round the plane, then diagonals, then checks; then for each opening its sides, what ties it to the plane, and its checks.
        """
    @property
    def marks(self, /) -> list[dict]:
        """
        Marks to strike for its checks, as ``MeasuredPlane`` takes them.
        """
    @property
    def number(self, /) -> int:
        """
        Its number in the sketch.
        """
    @property
    def openings(self, /) -> list[NamedOpening]:
        """
        Its openings, the corners of each clockwise; where they lie in the sketch.
        """
    @property
    def pitch_follows(self, /) -> list[str]:
        """
        The planes that its pitch follows from; empty where it must be measured.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane's name.
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
class Reading:
    """
    One observation after the shape was solved.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def against_the_rest(self, /) -> Length | None:
        """
        How far the reading is off what the other readings alone say; ``None`` where nothing checks it.
        """
    @property
    def measured(self, /) -> Length | None:
        """
        What the tape said; ``None`` for a square corner or a parallel side.
        """
    @property
    def residual(self, /) -> Length:
        """
        Solved less measured; for a square or a parallel how far the end of the shorter arm stands off.
        """
    @property
    def solved(self, /) -> Length | None:
        """
        What the solved shape gives.
        """
    @property
    def tolerance(self, /) -> Length:
        """
        How far it may be off.
        """
    @property
    def what(self, /) -> str:
        """
        What was observed: ``A-C``, ``square at B to A and C``, ``C-D parallel to A-B``.
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
    def crickets(self, /) -> list[PlacedCricket]:
        """
        The crickets, in the order given.
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
    def plan_svg(self, /, name: str, figure: Length | str, lengths: LengthFormat | str, paper: str, laid: SupportsGetItem[int, LaidPlane | None] | None = None) -> str:
        """
        The plan as SVG: planes with an arrow down each slope, their panels numbered and marked, lines by kind with names, true lengths and a legend.

        ``laid`` has one entry for each plane, ``None`` for one that is not laid; without it no panels are shown. ``figure`` is the greatest width and height of the
        roof on paper, ``paper`` the unit in which the drawing says its size, ``millimetre`` or ``inch``.
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
class SheetLine:
    """
    One length to measure.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def about(self, /) -> Length:
        """
        Its length in the sketch, in plan: a slope makes it longer.
        """
    @property
    def end(self, /) -> str:
        """
        The corner or mark that it is measured to.
        """
    @property
    def number(self, /) -> int:
        """
        Its number on the sheet, from 1. A side that two planes share has one number.
        """
    @property
    def part(self, /) -> str:
        """
        What it is for: ``side``, ``diagonal``, ``opening``, ``tie`` or ``check``.
        """
    @property
    def shared(self, /) -> str | None:
        """
        The plane on whose sheet it was measured already.
        """
    @property
    def start(self, /) -> str:
        """
        The corner or mark that it is measured from. (In Rust this is ``from``, which is a word of Python's own.)
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
class SketchedRoof:
    """
    A rough sketch of a roof, from which the measuring sheet is made.

    >>> from seamwright.roof import SketchedRoof
    >>> def plane(name, *corners):
    ...     return {"name": name, "outer": [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in corners]}
    >>> south, north = plane("south", (0, 0), (40, 0), (40, 12), (0, 12)), plane("north", (40, 24), (0, 24), (0, 12), (40, 12))
    >>> sheet = SketchedRoof.from_dict({"planes": [south, north]}).compute()
    >>> [(line.number, line.start + line.end, line.part) for line in sheet.planes[0].lines][3:5], sheet.lines
    ([(4, 'DA', 'side'), (5, 'BD', 'diagonal')], 13)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> SketchedRoof:
        """
        For unpickling.
        """
    def compute(self, /) -> MeasuringSheet:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[MeasuringSheet, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> SketchedRoof:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> SketchedRoof:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class SnapMove:
    """
    A vertex that was moved.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def by(self, /) -> Length:
        """
        How far it was moved, in all.
        """
    @property
    def plane(self, /) -> str:
        """
        Its plane.
        """
    @property
    def ring(self, /) -> int:
        """
        Its ring: 0 is the outer one, the holes follow from 1.
        """
    @property
    def vertex(self, /) -> int:
        """
        Its number in the ring as given.
        """

@final
class SnappedRoof:
    """
    A roof whose planes meet, and what was done to it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def dropped(self, /) -> list[DroppedVertex]:
        """
        The vertices that were left out.
        """
    @property
    def flattened(self, /) -> list[FlattenedFace]:
        """
        The faces that were made flat.
        """
    @property
    def merged(self, /) -> list[MergedFaces]:
        """
        The faces that became one.
        """
    @property
    def moves(self, /) -> list[SnapMove]:
        """
        The vertices that were moved, in the order given.
        """
    @property
    def roof(self, /) -> RoofInput:
        """
        The roof, every plane by its vertices in space.
        """
    @property
    def splits(self, /) -> list[SplitEdge]:
        """
        The edges that were split.
        """

@final
class Snapping:
    """
    Planes that almost meet, brought together within stated tolerances: vertices made one, edges split where a neighbour ends, faces made flat, and,
    where ``merge_coplanar`` is asked, neighbouring faces of one plane made one.

    >>> from seamwright.roof import Snapping
    >>> def plane(name, *corners):
    ...     outer = [dict(zip("xyz", (f"{c} ft" for c in corner))) for corner in corners]
    ...     return {"name": name, "shape": {"space": {"outer": outer}}}
    >>> south = plane("south", (0, 0, 10), (40, 0, 10), (40, 20, 20), (0, 20, 20))
    >>> north = plane("north", (40, 40, 10), (0, 40, 10), (0, 20, 20.002), (40, 20, 20))
    >>> snapped = Snapping.from_dict({"roof": {"planes": [south, north]}}).compute()
    >>> [(m.plane, m.vertex) for m in snapped.moves][0], [f.plane for f in snapped.flattened]
    (('south', 0), ['south', 'north'])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Snapping:
        """
        For unpickling.
        """
    def compute(self, /) -> SnappedRoof:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[SnappedRoof, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Snapping:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Snapping:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class SplitEdge:
    """
    An edge that was given a vertex where a neighbour has one.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Vertex:
        """
        Where.
        """
    @property
    def edge(self, /) -> int:
        """
        The number of the vertex that it leaves, as given.
        """
    @property
    def off(self, /) -> Length:
        """
        How far off the straight edge that is.
        """
    @property
    def plane(self, /) -> str:
        """
        Its plane.
        """
    @property
    def ring(self, /) -> int:
        """
        Its ring.
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
    def carries(self, /) -> list[str]:
        """
        The planes that stand on it, by name.
        """
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

"""
The classes of `seamwright.underlayment`.
"""

from .record import Caution, Worksheet
from .units import Area, Length
from typing import Any, final

__all__ = ["Course", "CourseLayout", "CoursePiece", "EaveBand", "EaveMembrane", "LaidCourses", "ValleyMembrane", "ValleyStrip"]

@final
class Course:
    """
    A course of underlayment.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def exposure(self, /) -> Length:
        """
        What shows of it above the next course's lap, up the slope; the whole of it at the top.
        """
    @property
    def foot(self, /) -> Length:
        """
        Its lower edge, up the slope from the plane's lowest point.
        """
    @property
    def pieces(self, /) -> list[CoursePiece]:
        """
        Its pieces from left to right.
        """
    @property
    def top(self, /) -> Length:
        """
        Its upper edge from there: the running mark.
        """
    @property
    def width(self, /) -> Length:
        """
        The width of the strip: the roll's, or the starter's.
        """

@final
class CourseLayout:
    """
    Courses of underlayment up a plane, from rolls, each lapping the one below.

    >>> from seamwright.underlayment import CourseLayout
    >>> corners = [("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "14 ft"), ("0 ft", "14 ft")]
    >>> plane = {"outer": [{"x": x, "y": y} for x, y in corners]}
    >>> rule = {"head_lap": "2 in", "end_lap": "4 in", "stagger": "6 ft", "source": "common-practice"}
    >>> laid = CourseLayout.from_dict({"outline": plane, "roll": {"width": "36 in", "length": "72 ft"}, "rule": rule}).compute()
    >>> [format(course.top, "in/16") for course in laid.courses], laid.rolls
    (['36"', '70"', '104"', '138"', '168"'], 3)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CourseLayout:
        """
        For unpickling.
        """
    def compute(self, /) -> LaidCourses:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[LaidCourses, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CourseLayout:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CourseLayout:
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
class CoursePiece:
    """
    A piece of a course.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def length(self, /) -> Length:
        """
        Its length, laps and all.
        """
    @property
    def start(self, /) -> Length:
        """
        Where it starts, across the slope.
        """
    @property
    def stop(self, /) -> Length:
        """
        Where it ends.
        """

@final
class EaveBand:
    """
    A band of membrane along an eave.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def courses(self, /) -> int:
        """
        Courses.
        """
    @property
    def covers(self, /) -> Length:
        """
        How far up the slope they reach.
        """
    @property
    def least(self, /) -> Length:
        """
        How far up the slope from the eave it must reach.
        """
    @property
    def marks(self, /) -> list[Length]:
        """
        The running marks of their top edges, from the eave.
        """
    @property
    def steep(self, /) -> bool:
        """
        Whether the least of steep roofs governs, and not the wall line.
        """

@final
class EaveMembrane:
    """
    The membrane along an eave, up to where it must reach inside the wall.

    >>> from seamwright.underlayment import EaveMembrane
    >>> reach = {"inside": "24 in", "source": "common-practice"}
    >>> eave = EaveMembrane.from_dict({"pitch": "12:12", "overhang": "12 in", "reach": reach, "width": "36 in", "head_lap": "4 in"})
    >>> band = eave.compute()
    >>> format(band.least, "in.3"), band.courses, format(band.covers, "in/16")
    ('50.912 in', 2, '68"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> EaveMembrane:
        """
        For unpickling.
        """
    def compute(self, /) -> EaveBand:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[EaveBand, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> EaveMembrane:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> EaveMembrane:
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
class LaidCourses:
    """
    Courses as they are laid.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is ordered.
        """
    @property
    def courses(self, /) -> list[Course]:
        """
        The courses, from the foot up, the starter strip first.
        """
    @property
    def covered(self, /) -> Area:
        """
        The area that is covered, of the plane itself.
        """
    @property
    def laid(self, /) -> Area:
        """
        The area of all pieces.
        """
    @property
    def left(self, /) -> Length:
        """
        What is left on the last roll.
        """
    @property
    def length(self, /) -> Length:
        """
        All pieces together.
        """
    @property
    def rolls(self, /) -> int:
        """
        Whole rolls that are opened, beside the one in hand.
        """
    @property
    def waste_ratio(self, /) -> float:
        """
        The share of the rolls, what is left on the last of them left out, that covers nothing.
        """

@final
class ValleyMembrane:
    """
    The membrane under a valley's pan, its full length and centred on it.

    >>> from seamwright.underlayment import ValleyMembrane
    >>> roll = {"width": "36 in", "length": "66 ft"}
    >>> strip = ValleyMembrane.from_dict({"line": "20 ft", "pan": "24 in", "roll": roll, "end_lap": "6 in"}).compute()
    >>> strip.pieces, format(strip.length, "in/16"), format(strip.beyond, "in/16")
    (1, '240"', '6"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> ValleyMembrane:
        """
        For unpickling.
        """
    def compute(self, /) -> ValleyStrip:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[ValleyStrip, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> ValleyMembrane:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> ValleyMembrane:
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
class ValleyStrip:
    """
    A membrane under a valley.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def beyond(self, /) -> Length:
        """
        How far it reaches beyond the pan on each side; less than nothing where it is narrower.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is ordered.
        """
    @property
    def length(self, /) -> Length:
        """
        All of them, laps and all.
        """
    @property
    def pieces(self, /) -> int:
        """
        Pieces, from the bottom up.
        """

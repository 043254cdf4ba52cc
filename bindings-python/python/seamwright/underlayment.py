"""Underlayment and membranes taken off: courses up each plane, the membrane along eaves and under valleys."""

from ._start import open_room

open_room("underlayment")
from ._seamwright.underlayment import (
    Course,
    CourseLayout,
    CoursePiece,
    EaveBand,
    EaveMembrane,
    LaidCourses,
    ValleyMembrane,
    ValleyStrip,
)

__all__ = [
    "Course",
    "CourseLayout",
    "CoursePiece",
    "EaveBand",
    "EaveMembrane",
    "LaidCourses",
    "ValleyMembrane",
    "ValleyStrip",
]

"""
The compiled part of `seamwright`; use `seamwright` and its rooms instead.
"""

from . import assembly as assembly, closure as closure, job as job, junction as junction, layout as layout, metal as metal, movement as movement, panel as panel, pitch as pitch, record as record, roof as roof, spacing as spacing, stock as stock, trim as trim, underlayment as underlayment, units as units
from .record import Worksheet
from types import ModuleType
from typing import Final, SupportsIndex

__all__ = ["VERSION", "_calculation_names", "_compute_all_json", "_compute_json", "_error_kinds", "_explain_json", "_panic_class", "_raise_kind", "_room", "assembly", "closure", "job", "junction", "layout", "metal", "movement", "panel", "pitch", "record", "roof", "spacing", "stock", "trim", "underlayment", "units"]

VERSION: Final[str]
"""
The version of the library.
"""

def _calculation_names() -> list[str]:
    """
    The names of all calculations.
    """

def _compute_all_json(name: str, inputs: list) -> str:
    """
    The results of a calculation for many inputs as one list in JSON.
    """

def _compute_json(name: str, inputs: object) -> str:
    """
    The result of a calculation as JSON.
    """

def _error_kinds() -> list[tuple[int, str]]:
    """
    Every kind of fault: its fixed number and its name.
    """

def _explain_json(name: str, inputs: object) -> tuple[str, Worksheet]:
    """
    The result of a calculation as JSON, and its worksheet.
    """

def _panic_class() -> type:
    """
    The class in which a panic of this extension arrives in Python. The package makes it a `SeamwrightError`.
    """

def _raise_kind(code: SupportsIndex) -> None:
    """
    Raises a fault of the kind with this number, to test what arrives in Python.
    """

def _room(name: str) -> ModuleType:
    """
    The compiled part of the room with this name.
    """

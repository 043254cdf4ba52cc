"""
The classes of `seamwright.record`.
"""

from _typeshed import SupportsGetItem
from typing import Any, Final, SupportsIndex, final

__all__ = ["Caution", "Source", "Step", "Worksheet"]

@final
class Caution:
    """
    Something that the reader must know before metal is cut by the result.

    >>> from seamwright.pitch import SlopeRule
    >>> [caution.name for caution in SlopeRule.IBC_STANDING_SEAM.check("2 %").cautions]
    ['below-minimum-slope', 'rounded-percentage']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, number: SupportsIndex, name: str, subject: str, message: str, arguments: dict[str, str], source: Source, text: str) -> Caution: ...
    def __reduce__(self, /) -> tuple[type, tuple[int, str, str, str, dict[str, str], Source, str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def arguments(self, /) -> dict[str, str]:
        """
        Its arguments by name.
        """
    @property
    def message(self, /) -> str:
        """
        The sentence.
        """
    @property
    def name(self, /) -> str:
        """
        The short name of its kind.
        """
    @property
    def number(self, /) -> int:
        """
        The fixed number of its kind.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the rule behind it comes from.
        """
    @property
    def subject(self, /) -> str:
        """
        What it is about, as a path.
        """

@final
class Source:
    """
    Where a rule, a figure or a choice comes from: a published document, common practice, the engineer or the user.

    >>> from seamwright.record import Source
    >>> str(Source.engineer("of record", "calculation 12"))
    'engineer of record, calculation 12'
    """
    COMMON_PRACTICE: Final[Source]
    """
    A habit of the trade without a published source.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def _common_practice() -> Source:
        """
        For unpickling.
        """
    @property
    def document(self, /) -> str | None:
        """
        The document of a published source or of the engineer.
        """
    @property
    def edition(self, /) -> str | None:
        """
        The edition of a published source; empty where the copy did not show one.
        """
    @staticmethod
    def engineer(name: str, document: str) -> Source:
        """
        The engineer's own figure.
        """
    @property
    def place(self, /) -> str | None:
        """
        Clause, table or page of a published source.
        """
    @staticmethod
    def published(document: str, edition: str, place: str, seen: str) -> Source:
        """
        A published place; ``seen`` says how it was seen: text, secondary, memory or derived.
        """
    @property
    def rests_on_memory(self, /) -> bool:
        """
        Whether the figure was recalled and not read: to be confirmed before metal is cut by it.
        """
    @property
    def seen(self, /) -> str | None:
        """
        How a published source was seen: text, secondary, memory or derived.
        """
    @staticmethod
    def user(note: str) -> Source:
        """
        The user's own figure, with what is said of it.
        """

@final
class Step:
    """
    One step of a worksheet, as a foreman would check it by hand.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, what: str, formula: str, inputs: SupportsGetItem[int, tuple[str, str]], result: str, source: Source | None) -> Step: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, str, list[tuple[str, str]], str, Source | None]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def formula(self, /) -> str:
        """
        The formula in words and symbols.
        """
    @property
    def inputs(self, /) -> list[tuple[str, str]]:
        """
        The values put in, each with its symbol. (In Rust this is ``with``, which is a word of Python's own.)
        """
    @property
    def result(self, /) -> str:
        """
        The result.
        """
    @property
    def source(self, /) -> Source | None:
        """
        The source of the rule, where it is more than arithmetic.
        """
    @property
    def what(self, /) -> str:
        """
        What is computed.
        """

@final
class Worksheet:
    """
    The recorded working of a calculation.

    >>> from seamwright.pitch import Corner
    >>> geometry, sheet = Corner("12:12", "12:12", "90 deg").explain()
    >>> print(sheet.steps()[0])
    plan angle D1 from eave 1 to the line = atan(sin W / (m1/m2 + cos W)) with W = 90 deg, m1 = 1, m2 = 1 = 45 deg (geometry [derived])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, title: str, entries: SupportsGetItem[int, Step | Worksheet]) -> Worksheet: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, list[Step | Worksheet]]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def entries(self, /) -> list[Step | Worksheet]:
        """
        Steps and parts in the order of the work.
        """
    def steps(self, /) -> list[Step]:
        """
        Every step of this sheet and of its parts, in order.
        """
    @property
    def title(self, /) -> str:
        """
        What the sheet, or this part of it, works out.
        """

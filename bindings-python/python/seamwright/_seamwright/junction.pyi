"""
The classes of `seamwright.junction`.
"""

from .panel import PanelEnd
from .record import Caution, Source, Worksheet
from .trim import Profile
from .units import Length
from typing import Any, final

__all__ = ["AlongLine", "CurbBack", "Eave", "Headwall", "HighSide", "Hip", "JunctionTrim", "LayoutLine", "Levels", "PitchTransition", "Rake", "Ridge", "SectionPoint", "SideEnd", "Sidewall", "Solved", "Valley"]

@final
class AlongLine:
    """
    Something along the line, with where it lies in the section. What it has not is ``None``: only fasteners bite, only a bead has a depth.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bites(self, /) -> str | None:
        """
        What fasteners bite: structure, panel, slot or trim.
        """
    @property
    def depth(self, /) -> Length | None:
        """
        The depth of a bead.
        """
    @property
    def from_line(self, /) -> Length:
        """
        Its distance from the junction line, along its own plane and square to the line. On a roof and on a wall or a fascia, positive is up;
        across the slope, at a rake positive is toward the roof, and at a sidewall negative is.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called.
        """
    @property
    def over_seams(self, /) -> bool | None:
        """
        Whether tape crosses the seams, and so follows the panels' surface.
        """
    @property
    def side(self, /) -> str:
        """
        On which side of the junction: ``first`` or ``second``.
        """
    @property
    def source(self, /) -> Source | None:
        """
        Whose spacing it is.
        """
    @property
    def spacing(self, /) -> Length | None:
        """
        The spacing of fasteners, on centre.
        """
    @property
    def web(self, /) -> Length | None:
        """
        The height of a closure's web.
        """
    @property
    def what(self, /) -> str:
        """
        What it is: fasteners, tape, bead, closures, continuous-cleat or offset-cleat.
        """
    @property
    def width(self, /) -> Length | None:
        """
        The width of tape or of a bead.
        """

@final
class CurbBack:
    """
    The upper side of a curb: a pan under the panels and up the curb.

    >>> from seamwright.junction import CurbBack
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners": row, "fasteners_below_top": "1 in", "cover": cover}
    >>> top_edge = {"hem": '1/2"', "screws_below": "1 in", "screws": row}
    >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    >>> under = {"what": "pan under the panels", "least": "4 in", "source": "common-practice"}
    >>> detail = {"sheet": sheet, "wall": wall, "reach": "18 in", "top_edge": top_edge, "under_panels": under, "least_beyond": "4 in",
    ...     "clear_width": "6 in", "least_clear_width": "6 in", "seam_cut_back": '1 1/4"', "least_to_seams": "6 in", "cleat": cleat,
    ...     "least_screw_height": '3/4"', "cricket": {"widest": "30 in", "source": "common-practice"}}
    >>> roof = {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    >>> curb = CurbBack.from_dict({"roof": roof, "width": "36 in", "detail": detail})
    >>> [caution.name for caution in curb.compute().cautions]
    ['water-dams-behind', 'cricket-required']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CurbBack:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CurbBack:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CurbBack:
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
class Eave:
    """
    The eave: a drip trim on the deck and down the fascia, and the panels that run past it and fold around a strip.

    >>> from seamwright.junction import Eave
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    >>> flange = {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"}
    >>> strip = {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"}
    >>> panel = {"overhang": '1 1/2"', "gap": '3/8"', "fold": '1 1/4"', "fold_opening": '3/16"'}
    >>> detail = {"sheet": sheet, "flange": flange, "front": "plumb", "face": face, "strip": strip, "panel": panel}
    >>> roof = {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    >>> eave = Eave.from_dict({"roof": roof, "detail": detail})
    >>> [format(end.end.allowance(), "in/16") for end in eave.compute().ends]
    ['3 1/8"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Eave:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Eave:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Eave:
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
class Headwall:
    """
    A wall above a roof: a flashing over the closures and up the wall.

    >>> from seamwright.junction import Headwall
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"',
    ...     "panel_margin": '1/2"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners": row, "fasteners_below_top": "1 in", "cover": cover}
    >>> headwall = Headwall.from_dict({"roof": {"pitch": "4:12", "levels": levels}, "detail": {"end": end, "sheet": sheet, "wall": wall}})
    >>> [trim.name for trim in headwall.compute().trims]
    ['headwall flashing']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Headwall:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Headwall:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Headwall:
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
class HighSide:
    """
    The top of a mono-slope: a cap over the closures and down the wall.

    >>> from seamwright.junction import HighSide
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"',
    ...     "panel_margin": '1/2"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> high = HighSide.from_dict({"roof": {"pitch": "2:12", "levels": levels}, "detail": {"end": end, "sheet": sheet, "face": face}})
    >>> [trim.name for trim in high.compute().trims]
    ['continuous cleat', 'high-side cap']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> HighSide:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> HighSide:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> HighSide:
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
class Hip:
    """
    The hip: a cap over the closures of both sides, which the seams meet at a skew.

    >>> from seamwright.junction import Hip
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"',
    ...     "panel_margin": '1/2"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> corner = {"first": "12:12", "second": "12:12", "plan": "90 deg"}
    >>> detail = {"first": end, "second": end, "sheet": sheet}
    >>> hip = Hip.from_dict({"corner": corner, "first": levels, "second": levels, "detail": detail})
    >>> round(hip.compute().trim("hip cap").profile.bends[1].angle.degrees)
    60
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Hip:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Hip:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Hip:
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
class JunctionTrim:
    """
    A trim of the section, with where it lies.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def corners(self, /) -> list[SectionPoint]:
        """
        The corners of the face that lies on the supports, in the order of the legs; the first is the start edge.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called.
        """
    @property
    def profile(self, /) -> Profile:
        """
        Its profile.
        """

@final
class LayoutLine:
    """
    A line to strike, parallel to the junction line; or, where it lies over the edge of the deck, to gauge.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def datum(self, /) -> str:
        """
        What it is measured from, in words: the junction line, the trim's lower or top edge, or the name of a line.
        """
    @property
    def datum_line(self, /) -> str | None:
        """
        The name of the line that it is measured from; ``None`` where it is no struck line.
        """
    @property
    def from_datum(self, /) -> Length:
        """
        How far from its datum, along the slope and square to the line: up it from the junction line, a lower edge and a struck line (negative
        is down), down it from a top edge.
        """
    @property
    def from_line(self, /) -> Length:
        """
        Where it is, along its own plane from the junction line.
        """
    @property
    def name(self, /) -> str:
        """
        What goes on it.
        """
    @property
    def side(self, /) -> str:
        """
        On which side of the junction it is struck: ``first`` or ``second``.
        """

@final
class Levels:
    """
    The layers under a trim that lies on the seam tops, each square to the roof plane, from the deck outward; one that is not given is not there.

    >>> from seamwright.junction import Levels
    >>> levels = Levels(underlayment='1/16"', seam_height='1 3/4"', tape='1/16"')
    >>> format(levels.compute(), "in/16")
    '1 7/8"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, underlayment: Length | str | None = None, stand_off: Length | str | None = None, pan: Length | str | None = None, seam_height: Length | str | None = None, closure_metal: Length | str | None = None, tape: Length | str | None = None) -> Levels: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Length, Length, Length, Length, Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(underlayment: Length | str, stand_off: Length | str, pan: Length | str, seam_height: Length | str, closure_metal: Length | str, tape: Length | str) -> Levels:
        """
        For unpickling.
        """
    @property
    def closure_metal(self, /) -> Length:
        """
        Metal of a closure's top flange, where it runs over the seam top.
        """
    def compute(self, /) -> Length:
        """
        The height of the trim's underside above the deck; a negative layer is refused.
        """
    def explain(self, /) -> tuple[Length, Worksheet]:
        """
        The height of the trim's underside above the deck, and the worksheet.
        """
    @property
    def pan(self, /) -> Length:
        """
        Thickness of the pan's sheet.
        """
    @property
    def seam_height(self, /) -> Length:
        """
        From the pan to the top of the seam.
        """
    @property
    def stand_off(self, /) -> Length:
        """
        From the underlayment to the underside of the pan, where clips stand the pan off.
        """
    @property
    def tape(self, /) -> Length:
        """
        Compressed sealant tape under the trim.
        """
    @property
    def underlayment(self, /) -> Length:
        """
        Underlayment on the deck.
        """

@final
class PitchTransition:
    """
    A change of pitch, steep above shallow or shallow above steep: a trim on the seam tops of the lower roof, and on the upper deck.

    >>> from seamwright.junction import PitchTransition
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"',
    ...     "panel_margin": '1/2"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> top_edge = {"hem": '1/2"', "screws_below": "1 in", "screws": row}
    >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    >>> end |= {"flange": "12 in", "hold_back": '1 1/2"'}
    >>> detail = {"sheet": sheet, "end": end, "packing": "0 in", "bending": "direct", "unsupported_limit": "8 in", "upper_flange": "9 in",
    ...     "top_edge": top_edge, "cleat": cleat, "head_lap": "1 in"}
    >>> lower, upper = {"pitch": "3:12", "levels": levels}, {"pitch": "8:12", "levels": levels}
    >>> transition = PitchTransition.from_dict({"lower": lower, "upper": upper, "detail": detail})
    >>> [format(end.end.allowance(), "in/16") for end in transition.compute().ends]
    ['-1/2"', '-6 15/16"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> PitchTransition:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> PitchTransition:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> PitchTransition:
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
class Rake:
    """
    The rake: a Z beside the last seam, and the trim over it and down the face.

    >>> from seamwright.junction import Rake
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    >>> face = {"depth": "5 in", "kick": "45 deg", "hem": hem}
    >>> z = {"sheet": sheet, "from_turned_up_edge": '1/2"', "lower_flange": '1 1/4"', "top_flange": "1 in", "tape_width": '7/8"', "tape": '1/16"',
    ...     "bites": "panel", "screws": row}
    >>> inner = {"cover": '1/8"', "drop": "1 in", "hem": '1/2"', "above_pan": '1/4"'}
    >>> detail = {"edge_from_line": '1/2"', "turn_up": '1 3/4"', "seam_room": '1/2"', "z": z, "sheet": sheet, "inner": inner, "rivets": row,
    ...     "trim_tape_width": '7/8"', "face": face}
    >>> levels = {"pan": "0.024 in", "seam_height": '1 3/4"', "tape": '1/16"'}
    >>> rake = Rake.from_dict({"levels": levels, "edge": "ripped", "end_panel": "12 in", "detail": detail})
    >>> [trim.name for trim in rake.compute().trims]
    ['continuous cleat', 'rake Z', 'rake trim']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Rake:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Rake:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Rake:
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
class Ridge:
    """
    The ridge: a cap over the closures of both sides.

    >>> from seamwright.junction import Ridge
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"',
    ...     "panel_margin": '1/2"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> side = {"pitch": "6:12", "levels": levels}
    >>> detail = {"first": end, "second": end, "sheet": sheet, "vent": "closed"}
    >>> ridge = Ridge.from_dict({"first": side, "second": side, "detail": detail})
    >>> [format(end.end.allowance(), "in/16") for end in ridge.compute().ends]
    ['-1"', '-1"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Ridge:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Ridge:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Ridge:
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
class SectionPoint:
    """
    A point of a section: ``x`` level and square to the junction line, positive toward the second side; ``z`` up, from the line at deck level.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, x: Length | str, z: Length | str) -> SectionPoint: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def x(self, /) -> Length:
        """
        Level distance from the junction line.
        """
    @property
    def z(self, /) -> Length:
        """
        Height above the junction line.
        """

@final
class SideEnd:
    """
    The end that a junction sets for the panels of one side.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> PanelEnd:
        """
        The end.
        """
    @property
    def side(self, /) -> str:
        """
        Which side: ``first`` or ``second``.
        """

@final
class Sidewall:
    """
    A wall beside a roof: a flashing over the panel at the wall and up the wall.

    >>> from seamwright.junction import Sidewall
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners": row, "fasteners_below_top": "1 in", "cover": cover}
    >>> on_z = {"web_from_wall": "3 in", "foot": '1 1/4"', "web_to_screws": '5/8"', "tape_width": '7/8"', "tape_beneath": '1/16"', "bites": "panel",
    ...     "screws": row, "cover": '1/8"', "rivets": row}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> detail = {"sheet": sheet, "edge": {"turned-up": {"height": '1 3/4"'}}, "edge_from_wall": '1/2"', "flange": {"on-z": on_z}, "drip": drip,
    ...     "wall": wall, "foot": {"dies-into-wall": {"kick_out": "4 in"}}}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> sidewall = Sidewall.from_dict({"roof": {"pitch": "4:12", "levels": levels}, "first_seam_from_wall": "12 in", "detail": detail})
    >>> [trim.name for trim in sidewall.compute().trims]
    ['Z', 'sidewall flashing']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Sidewall:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Sidewall:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Sidewall:
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
class Solved:
    """
    A junction as solved in its section. It pickles as its place in what gave it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def along(self, /) -> list[AlongLine]:
        """
        What lies along the line, in the order of the work.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be said beside it.
        """
    def end(self, /, side: str) -> PanelEnd | None:
        """
        The end for the panels of this side, ``first`` or ``second``; ``None`` if none end there.
        """
    @property
    def ends(self, /) -> list[SideEnd]:
        """
        The panel ends.
        """
    @property
    def lines(self, /) -> list[LayoutLine]:
        """
        The lines that the crew strikes, in the order of the work; each refers to what is there by then.
        """
    def trim(self, /, name: str) -> JunctionTrim | None:
        """
        The trim of this name, if there is one.
        """
    @property
    def trims(self, /) -> list[JunctionTrim]:
        """
        The trims, in the order in which they are set.
        """

@final
class Valley:
    """
    The valley: a pan in the trough, and panels that hook it on both sides.

    >>> from seamwright.junction import Valley
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> hook = {"offset-cleat": {"tongue": '1 1/4"', "tape_width": '1 1/2"', "screws": row}}
    >>> side = {"leg": "12 in", "hook": hook, "gap": '1/4"'}
    >>> minimum = {"covering": "metal valley", "limit": "2:12", "printed_percentage": None, "source": "common-practice"}
    >>> detail = {"sheet": sheet, "bed": "0 in", "first": side, "second": side, "minimum": minimum}
    >>> corner = {"first": "6:12", "second": "6:12", "plan": "90 deg"}
    >>> valley = Valley.from_dict({"corner": corner, "detail": detail})
    >>> [format(end.end.allowance(), "in/16") for end in valley.compute().ends]
    ['-2"', '-2"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Valley:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        Computes it.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        Computes it, and gives the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Valley:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Valley:
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

"""
The classes of `seamwright.junction`.
"""

from .panel import PanelEnd
from .record import Caution, Source, Worksheet
from .trim import FlatBlank, Profile
from .units import Angle, Length
from typing import Any, final

__all__ = ["Adjoining", "AlongLine", "BeadSize", "CapBlank", "CapOutline", "Coping", "CurbBack", "Eave", "EndProposal", "ExpansionAcross", "ExpansionAlong", "FacePath", "Headwall", "HighSide", "Hip", "JointMoves", "JunctionTrim", "KickOut", "KickOutPiece", "LayoutLine", "Levels", "LineOrder", "PathCheck", "PathFault", "PathLap", "Pipe", "PipePlan", "PitchTransition", "ProposedEnd", "ProposedEnds", "Rake", "Ridge", "RowShelter", "SectionPoint", "SideEnd", "Sidewall", "Solved", "Step", "Valley", "WaterCheck", "WaterPath", "WorkPlan", "WorkStep"]

@final
class Adjoining:
    """
    What others build and the section reckons with: it is drawn and named, and neither made nor ordered. What it has not is ``None``.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def back(self, /) -> Length | None:
        """
        The back edge of a gutter, level and square to the eave from the junction line.
        """
    @property
    def base(self, /) -> tuple[Length, Length] | None:
        """
        From its middle to the edges of its base, down and up the slope.
        """
    @property
    def diameter(self, /) -> Length | None:
        """
        The diameter of a pipe.
        """
    @property
    def front(self, /) -> Length | None:
        """
        Its front lip.
        """
    @property
    def gap(self, /) -> Length | None:
        """
        Between the curbs of a joint, and between the decks.
        """
    @property
    def height(self, /) -> Length | None:
        """
        By how much a deck is built up, or how thick packing on it is, square to it; how high curbs stand above their decks, or a riser from the lower deck to the upper.
        """
    @property
    def hole(self, /) -> tuple[Length, Length] | None:
        """
        From a pipe's middle to the edges of the hole in the pan, down and up the slope.
        """
    @property
    def lower_edge(self, /) -> Length | None:
        """
        The height of cladding's lower edge above the junction line.
        """
    @property
    def open_ratio(self, /) -> float | None:
        """
        The share of a vented closure's web that is open.
        """
    @property
    def reach(self, /) -> tuple[Length, Length] | None:
        """
        From the junction line to the edges of packing under a flange, up the slope.
        """
    @property
    def side(self, /) -> str | None:
        """
        On which face of a wall something comes up: ``first`` or ``second``.
        """
    @property
    def thickness(self, /) -> Length | None:
        """
        The thickness of the wall under a coping, from face to face; or how far what comes up a wall's face stands out from it.
        """
    @property
    def top_edge(self, /) -> Length | None:
        """
        Its top, from the wall's top edge on that side; negative is below it.
        """
    @property
    def what(self, /) -> str:
        """
        What it is: vent-slot, gutter, cladding, built-up, packing, pipe, joint-curbs, riser, wall-top or covered.
        """
    @property
    def width(self, /) -> Length | None:
        """
        The width of a vent's slot on each side, along the slope from the junction line, or of each curb of a joint.
        """

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
class BeadSize:
    """
    The section of a bead of sealant.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def depth(self, /) -> Length:
        """
        Its depth.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width.
        """

@final
class CapBlank:
    """
    An end cap as the shop makes it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def blank(self, /) -> FlatBlank:
        """
        The blank: across as in the section from its leftmost point, up from its lowest.
        """
    @property
    def face(self, /) -> list[tuple[Length, Length]]:
        """
        The face of the cap in the section, counter-clockwise, without its tabs: each corner level from the junction line and up from it.
        """
    @property
    def height(self, /) -> Length:
        """
        The greatest height of the hollow over what the cap stands on, plumb.
        """
    @property
    def tabs(self, /) -> int:
        """
        How many tabs it has.
        """

@final
class CapOutline:
    """
    The cap at the end of a trim, as its section gives it: the hollow between the trim and what it lies over, with tabs along the trim.

    >>> from seamwright.junction import CapOutline
    >>> sheet = {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> corners = [{"x": f"{x} in", "z": f"{z} in"} for x, z in [(-6, 2), (0, 2), (0, -4)]]
    >>> made = CapOutline.from_dict({"corners": corners, "sheet": sheet, "on": [{"rise": "0 deg", "height": "0 in"}], "tab": "1 in"}).compute()
    >>> format(made.height, "in/16"), made.tabs
    ('2"', 1)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CapOutline:
        """
        For unpickling.
        """
    def compute(self, /) -> CapBlank:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[CapBlank, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CapOutline:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CapOutline:
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
class Coping:
    """
    A cap on the top of a wall that falls to the roof, hooked on a cleat on each face or screwed through slots on one.

    >>> from seamwright.junction import Coping
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> cleat = {"sheet": sheet, "height": "3 in", "fasteners_above_bend": '1 1/2"', "fasteners": row, "hem": '7/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/4"'}
    >>> side = {"behind": "0 in", "depth": "4 in", "kick": "40 deg", "clears": '3/4"', "hold": {"cleat": cleat}}
    >>> lap = {"below_top": "0 in", "rule": {"what": "lap over the flashing", "least": "4 in", "source": "common-practice"}}
    >>> detail = {"sheet": sheet, "bed": "0.04 in", "fall": "1:12", "roof_side": side | {"behind": "0.024 in", "over": lap}, "outside": side}
    >>> [trim.name for trim in Coping.from_dict({"thickness": "8 in", "detail": detail}).compute().trims]
    ['continuous cleat, roof side', 'continuous cleat, outside', 'coping']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Coping:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Coping:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Coping:
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
    >>> detail = {"sheet": sheet, "wall": wall, "reach": "18 in", "top_edge": top_edge, "under_panels": under,
    ...     "clear_width": "6 in", "seam_cut_back": '1 1/4"',
    ...     "hook": {"offset-cleat": {"cleat": cleat}}, "cricket": {"widest": "30 in", "source": "common-practice"}}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
class EndProposal:
    """
    A junction whose panels' ends are to be given the fold and the gap that their movement needs: every end that hooks something and slides. What holds the fold
    is made to fit it; all else stays as it is.

    >>> from seamwright.junction import EndProposal
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    >>> flange = {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"}
    >>> strip = {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"}
    >>> panel = {"overhang": '1 1/2"', "gap": '3/8"', "fold": '1 1/4"', "fold_opening": '3/16"'}
    >>> detail = {"sheet": sheet, "flange": flange, "front": "plumb", "face": face, "strip": strip, "panel": panel}
    >>> eave = {"roof": {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}, "detail": detail}
    >>> range = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    >>> [end] = EndProposal.from_dict({"of": {"eave": eave}, "range": range, "to_fixed": "12 m"}).compute().ends
    >>> end.gap, end.travel
    (Length('8.935 mm'), Length('12.96 mm'))
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> EndProposal:
        """
        For unpickling.
        """
    def compute(self, /) -> ProposedEnds:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[ProposedEnds, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> EndProposal:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> EndProposal:
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
class ExpansionAcross:
    """
    An expansion joint across the panels: the upper ones slide over a flashing that is fixed to the deck.

    >>> from seamwright.junction import ExpansionAcross
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    >>> end = {"flange": "9 in", "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": "1 in", "clearance": '1/4"', "field_trim": "0 in"}
    >>> cleat = {"sheet": sheet, "width": "5 in", "tongue": "2 in", "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/2"',
    ...     "fold": '1 3/4"'}
    >>> flashing = {"sheet": sheet, "end": end, "packing": '1 3/4"', "bending": "direct", "unsupported_limit": "2 in", "upper_flange": "11 in",
    ...     "top_edge": {"hem": '1/2"', "screws_below": "1 in", "screws": row}, "cleat": cleat, "front_below_top": "8 in"}
    >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    >>> lap = {"what": "lap beside the movement", "least": "3 in", "source": "common-practice"}
    >>> roof = {"pitch": "3:12", "levels": {"seam_height": '1 3/4"'}}
    >>> joint = ExpansionAcross.from_dict({"roof": roof, "to_fixed": "50 ft", "range": temperatures, "detail": {"lap": lap, "flashing": flashing}})
    >>> [format(end.end.fold, "in/16") for end in joint.compute().ends]
    ['0"', '1 3/4"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> ExpansionAcross:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> ExpansionAcross:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> ExpansionAcross:
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
class ExpansionAlong:
    """
    An expansion joint along the panels: two curbs, the panels' edges turned up against them, and a cap that slides on one.

    >>> from seamwright.junction import ExpansionAlong
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> side = {"levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}, "to_fixed": "50 ft", "first_seam": "12 in"}
    >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    >>> least = {"what": "upstand", "least": "6 in", "source": "common-practice"}
    >>> detail = {"sheet": sheet, "gap": "1 in", "curb_width": '1 1/2"', "curb_height": "9 in", "edge_room": '1/8"', "turn_up": "8 in", "upstand": least,
    ...     "cleat_room": '1/8"', "cleat_fasteners": row, "fasteners_from_edge": '3/4"', "drop": "5 in", "lap": least | {"least": "4 in"}, "hook": "2 in",
    ...     "play": '1/16"', "rivets": row}
    >>> joint = ExpansionAlong.from_dict({"first": side, "second": side, "range": temperatures, "detail": detail})
    >>> [trim.name for trim in joint.compute().trims]
    ['joint cleat, fixed side', 'joint cleat, sliding side', 'joint cap']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> ExpansionAlong:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> ExpansionAlong:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> ExpansionAlong:
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
class FacePath:
    """
    The path of water on one face of a section, at one level.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def check(self, /) -> PathCheck:
        """
        The path.
        """
    @property
    def face(self, /) -> str:
        """
        The face: ``first``, ``second`` or ``wall``.
        """
    @property
    def level(self, /) -> str:
        """
        The level: ``metal`` or ``underlayment``.
        """
    @property
    def water(self, /) -> str:
        """
        Which way water runs on it: toward the line, away from it, or along it.
        """

@final
class Headwall:
    """
    A wall above a roof: a flashing over the closures and up the wall.

    >>> from seamwright.junction import Headwall
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
class JointMoves:
    """
    What moves at an expansion joint from the laying temperature, both sides together.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def closes(self, /) -> Length:
        """
        How far the sides come together from the laying temperature to the hottest.
        """
    @property
    def opens(self, /) -> Length:
        """
        How far they part from the laying temperature to the coldest.
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
class KickOut:
    """
    The kick-out at the foot of a wall's flashing, where an eave dies into the wall: an angle whose lower end is turned off the wall, in one piece of sheet.

    >>> from seamwright.junction import KickOut
    >>> sheet = {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> asked = {"pitch": "4:12", "sheet": sheet, "flange": '3 1/2"', "leg": "8 in", "wall": "right", "detail": {"throw": "4 in"}}
    >>> made = KickOut.from_dict(asked).compute()
    >>> round(made.turn.degrees, 2), round(made.notch.degrees, 2), format(made.turned, "in/16")
    (53.13, 49.37, '5 1/4"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> KickOut:
        """
        For unpickling.
        """
    def compute(self, /) -> KickOutPiece:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[KickOutPiece, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> KickOut:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> KickOut:
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
class KickOutPiece:
    """
    A kick-out as the shop makes it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def apron_bend(self, /) -> Angle:
        """
        How far the apron is bent to the turned leg, from flat.
        """
    @property
    def apron_fall(self, /) -> Angle:
        """
        How far the apron falls from level, down the slope.
        """
    @property
    def asked(self, /) -> KickOut:
        """
        What was asked.
        """
    @property
    def blank(self, /) -> FlatBlank:
        """
        The blank: up the slope where the wall is on the right, down it where it is on the left.
        """
    @property
    def corners(self, /) -> list[tuple[str, tuple[Length, Length], tuple[Length, Length, Length]]]:
        """
        Its corners: the name, the place on the blank, and folded how far out from the wall, past the turn and up.
        """
    @property
    def drop(self, /) -> Length:
        """
        How far that end lies below the turn.
        """
    @property
    def lean(self, /) -> Angle:
        """
        How far the line of the turn leans up the slope, on the leg, from square to the fold.
        """
    @property
    def notch(self, /) -> Angle:
        """
        The V cut out of the flange.
        """
    @property
    def tab_bend(self, /) -> Angle:
        """
        How far the tab is bent to the apron, from flat.
        """
    @property
    def turn(self, /) -> Angle:
        """
        How far the leg is turned off the wall, in plan.
        """
    @property
    def turned(self, /) -> Length:
        """
        Along the fold, from the turn out to the outer end.
        """
    @property
    def upper(self, /) -> Length:
        """
        Along the fold, from the turn up to the upper end.
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
    def __new__(cls, /, *, built_up: Length | str | None = None, underlayment: Length | str | None = None, stand_off: Length | str | None = None, pan: Length | str | None = None, seam_height: Length | str | None = None, closure_metal: Length | str | None = None, tape: Length | str | None = None) -> Levels: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Length, Length, Length, Length, Length, Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(built_up: Length | str, underlayment: Length | str, stand_off: Length | str, pan: Length | str, seam_height: Length | str, closure_metal: Length | str, tape: Length | str) -> Levels:
        """
        For unpickling.
        """
    @property
    def built_up(self, /) -> Length:
        """
        Packing over the deck under all of the plane: its top is the deck to everything that follows.
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
class LineOrder:
    """
    Lines to strike, in the order of the work: each must be measured from what is there by then. It gives how many there are.

    >>> from seamwright.junction import LineOrder
    >>> face = {"name": "closure face", "side": "first", "datum": "junction-line", "from_datum": "-6 in", "from_line": "-6 in"}
    >>> screws = {"name": "screws", "side": "first", "datum": {"line": "closure face"}, "from_datum": "0 in", "from_line": "-6 in"}
    >>> LineOrder.from_dict({"lines": [face, screws]}).compute()
    2
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> LineOrder:
        """
        For unpickling.
        """
    def compute(self, /) -> int:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[int, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> LineOrder:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> LineOrder:
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
class PathCheck:
    """
    A path of water as followed from the top of the slope to the bottom.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def faults(self, /) -> list[PathFault]:
        """
        Where it fails.
        """
    @property
    def holds(self, /) -> bool:
        """
        Whether water runs over every lap from the top to the bottom.
        """
    @property
    def laps(self, /) -> list[PathLap]:
        """
        Every two sheets that overlap, the highest lap first.
        """
    @property
    def order(self, /) -> list[str]:
        """
        The sheets from the top of the slope to the bottom.
        """

@final
class PathFault:
    """
    A place where a path of water fails.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Length:
        """
        Where on the slope: the upper edge that water runs behind, the lower edge of a short lap, the upper end of an open stretch.
        """
    @property
    def cure(self, /) -> str:
        """
        What cures it.
        """
    @property
    def failure(self, /) -> str:
        """
        How: runs-behind, short-lap or open.
        """
    @property
    def lower(self, /) -> str:
        """
        The sheet beneath, or below the open stretch.
        """
    @property
    def message(self, /) -> str:
        """
        It in words.
        """
    @property
    def short(self, /) -> Length:
        """
        By how much a lap is short, or how long a stretch lies open; nothing where water runs behind.
        """
    @property
    def upper(self, /) -> str:
        """
        The sheet on top, or above the open stretch.
        """

@final
class PathLap:
    """
    One sheet over another.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def holds(self, /) -> bool:
        """
        Whether water runs over it, and it is as long as the rule asks.
        """
    @property
    def least(self, /) -> Length | None:
        """
        The least lap; ``None`` where no rule names it.
        """
    @property
    def lower(self, /) -> str:
        """
        The sheet beneath.
        """
    @property
    def overlap(self, /) -> Length:
        """
        How far they overlap up the slope.
        """
    @property
    def source(self, /) -> Source | None:
        """
        Whose rule that is.
        """
    @property
    def upper(self, /) -> str:
        """
        The sheet on top.
        """

@final
class Pipe:
    """
    A round pipe through the roof: its hole with room for the movement, its base and where that lies between the seams.

    >>> from seamwright.junction import Pipe
    >>> base = {"shape": "rectangular", "seal": "2 in", "tape_width": '7/8"', "tape_lap": "1 in", "screws_from_edge": '1/2"',
    ...     "screws": {"spacing": '1 1/2"', "source": "common-practice"}}
    >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    >>> pipe = Pipe.from_dict({"diameter": '3 1/2"', "pitch": "4:12", "coverage": "18 in", "seam_width": "1 in", "from_seam": "9 in", "least_to_seam": "2 in",
    ...     "clearance": '1/4"', "fixed": "above", "to_fixed": "20 ft", "range": temperatures, "base": base, "upper_edge": "on-pan",
    ...     "may_cross_seams": False})
    >>> made = pipe.compute()
    >>> format(made.hole_across, "in/16"), format(made.base_across, "in/16"), made.screws
    ('4"', '8"', 20)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Pipe:
        """
        For unpickling.
        """
    def compute(self, /) -> PipePlan:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[PipePlan, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Pipe:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Pipe:
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
class PipePlan:
    """
    What a pipe takes.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def base_across(self, /) -> Length:
        """
        The base, across the slope.
        """
    @property
    def base_down(self, /) -> Length:
        """
        From the pipe's middle to its lower edge.
        """
    @property
    def base_up(self, /) -> Length:
        """
        From the pipe's middle to its upper edge.
        """
    @property
    def collar(self, /) -> Length:
        """
        The collar's bead and its clamp: the pipe's circumference.
        """
    @property
    def engineered(self, /) -> bool:
        """
        Whether an engineer gave their spacing.
        """
    @property
    def hole_across(self, /) -> Length:
        """
        The hole in the pan, across the slope.
        """
    @property
    def hole_down(self, /) -> Length:
        """
        From the pipe's middle to the hole's lower edge, along the slope.
        """
    @property
    def hole_up(self, /) -> Length:
        """
        From the pipe's middle to its upper edge.
        """
    @property
    def screws(self, /) -> int:
        """
        Screws around the base.
        """
    @property
    def seams_crossed(self, /) -> int:
        """
        Seams that the base crosses.
        """
    @property
    def section(self, /) -> Solved:
        """
        The section along the seams.
        """
    @property
    def tape(self, /) -> Length:
        """
        Tape around the base, its lap with it.
        """
    @property
    def to_seam(self, /) -> tuple[Length, Length]:
        """
        From the base's left and right edge to the foot of the seam there; negative where it covers it.
        """

@final
class PitchTransition:
    """
    A change of pitch, steep above shallow or shallow above steep: a trim on the seam tops of the lower roof, and on the upper deck.

    >>> from seamwright.junction import PitchTransition
    >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> top_edge = {"hem": '1/2"', "screws_below": "1 in", "screws": row}
    >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    >>> end |= {"flange": "12 in", "hold_back": '1 1/2"'}
    >>> detail = {"sheet": sheet, "end": end, "packing": "0 in", "bending": "direct", "unsupported_limit": "8 in", "upper_flange": "9 in",
    ...     "top_edge": top_edge, "cleat": cleat}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
class ProposedEnd:
    """
    An end with the fold and the gap that its movement needs.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def clearance_in_the_cold(self, /) -> Length:
        """
        The gap that is left on the coldest night.
        """
    @property
    def end(self, /) -> PanelEnd:
        """
        The end as the layout takes it: hold-back or overhang, gap and fold.
        """
    @property
    def engagement_in_the_heat(self, /) -> Length:
        """
        The length that is hooked on the hottest afternoon.
        """
    @property
    def fold(self, /) -> Length:
        """
        The fold.
        """
    @property
    def gap(self, /) -> Length:
        """
        From the nose to what the fold hooks, when laid.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def travel(self, /) -> Length:
        """
        How far the end moves over the year, square to the line.
        """

@final
class ProposedEnds:
    """
    A junction with the ends that were proposed for it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What else to know.
        """
    @property
    def ends(self, /) -> list[ProposedEnd]:
        """
        Each of its ends that hooks and slides.
        """
    @property
    def junction(self, /) -> str:
        """
        The junction with the ends in it, as JSON: an object of its kind with the input of that kind's own calculation.
        """
    @property
    def kind(self, /) -> str:
        """
        The kind of the junction, by which it stands in ``junction``.
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
class RowShelter:
    """
    What keeps a row of fasteners dry.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def name(self, /) -> str:
        """
        The row, by its name in the section.
        """
    @property
    def raised(self, /) -> Length | None:
        """
        How far over the pan its flange is raised.
        """
    @property
    def shelter(self, /) -> str:
        """
        What keeps it dry: ``under`` a sheet, through a ``face`` that is turned down or plumb, ``raised`` on a flange, or ``none``.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first``, ``second`` or ``riser``.
        """
    @property
    def under(self, /) -> str | None:
        """
        The sheet that lies over it.
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
    >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners_below_top": "1 in", "cover": cover}
    >>> on_z = {"web_from_wall": "3 in", "foot": '1 1/4"', "web_to_screws": '5/8"', "tape_width": '7/8"', "tape_beneath": '1/16"', "bites": "panel",
    ...     "screws": row, "cover": '3/4"', "rivets": row}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> detail = {"sheet": sheet, "edge": {"turned-up": {"height": '1 3/4"'}}, "edge_from_wall": '1/2"', "flange": {"on-z": on_z}, "drip": drip,
    ...     "wall": wall, "foot": {"dies-into-wall": {"kick_out": {"throw": "4 in"}}}}
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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
    def adjoining(self, /) -> list[Adjoining]:
        """
        What others build there.
        """
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
    def kick_out(self, /) -> KickOutPiece | None:
        """
        The piece that turns the water off a wall at the foot of its flashing, where an eave dies into the wall; else ``None``.
        """
    @property
    def lines(self, /) -> list[LayoutLine]:
        """
        The lines that the crew strikes, in the order of the work; each refers to what is there by then.
        """
    @property
    def lower_lines(self, /) -> list[LayoutLine]:
        """
        The same lines at the lower end of the junction line, where they turn away from it: then ``lines`` are those at its upper end. Else none.
        """
    @property
    def lower_trims(self, /) -> list[JunctionTrim]:
        """
        The same trims as they are and lie at the lower end of the line, where they turn away from it or taper; else none.
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
class Step:
    """
    An upper roof that ends over a plumb riser above a lower one: an eave above, a headwall below, the upper trim's face over the lower one's leg.

    >>> from seamwright.junction import Step
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    >>> least = {"what": "upstand", "least": "8 in", "source": "common-practice"}
    >>> lower = {"end": end, "sheet": sheet, "stands_out": "0 in", "below_edge": "1 in", "upstand": least, "fasteners": row, "fasteners_below_top": "1 in",
    ...     "lap": least | {"what": "lap", "least": "4 in"}, "clearance": "1 in"}
    >>> upper = {"sheet": sheet, "flange": {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"},
    ...     "face": {"depth": "5 in", "kick": "40 deg", "clears": '5/8"', "hem": {"closed": {"width": '1/2"'}}},
    ...     "strip": {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"},
    ...     "panel": {"overhang": '1 1/2"', "gap": '1/4"', "fold": "1 in", "fold_opening": '3/16"'}}
    >>> roof = {"pitch": "3:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    >>> step = Step.from_dict({"lower": roof, "upper": roof, "riser": "14 in", "detail": {"lower": lower, "upper": upper}})
    >>> [(end.side, format(end.end.allowance(), "in/16")) for end in step.compute().ends]
    [('first', '-1"'), ('second', '2 3/4"')]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Step:
        """
        For unpickling.
        """
    def compute(self, /) -> Solved:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Step:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Step:
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
class Valley:
    """
    The valley: a pan in the trough, and panels that hook it on both sides.

    >>> from seamwright.junction import Valley
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    >>> side = {"leg": "12 in", "hook": {"offset-cleat": {"cleat": cleat}}}
    >>> minimum = {"covering": "metal valley", "limit": "2:12", "printed_percentage": None, "source": "common-practice"}
    >>> detail = {"sheet": sheet, "bed": "0 in", "first": side, "second": side, "minimum": minimum}
    >>> corner = {"first": "6:12", "second": "6:12", "plan": "90 deg"}
    >>> levels = {"seam_height": '1 3/4"'}
    >>> valley = Valley.from_dict({"corner": corner, "first": levels, "second": levels, "detail": detail})
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
        What it comes to.
        """
    def explain(self, /) -> tuple[Solved, Worksheet]:
        """
        What it comes to, and the worksheet.
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

@final
class WaterCheck:
    """
    Water on a solved section.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be said of it.
        """
    @property
    def holds(self, /) -> bool:
        """
        Whether every path holds and every row is sheltered.
        """
    @property
    def paths(self, /) -> list[FacePath]:
        """
        The paths, one for each face and level.
        """
    @property
    def rows(self, /) -> list[RowShelter]:
        """
        What keeps each row of fasteners dry.
        """

@final
class WaterPath:
    """
    A path of water down one slope: sheets, each lying from one height to another in its layer, and the least laps of some over others.

    >>> from seamwright.junction import WaterPath
    >>> under = {"name": "underlayment", "low": "0 in", "high": "240 in", "layer": 1}
    >>> trim = {"name": "eave trim", "low": "0 in", "high": "4 in", "layer": 2}
    >>> [(fault.failure, fault.upper, format(fault.at, "in/16")) for fault in WaterPath.from_dict({"sheets": [under, trim]}).compute().faults]
    [('runs-behind', 'eave trim', '4"')]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> WaterPath:
        """
        For unpickling.
        """
    def compute(self, /) -> PathCheck:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[PathCheck, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> WaterPath:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> WaterPath:
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
class WorkPlan:
    """
    Tasks to be put in order by what must be in place before each. It gives the tasks by number, in the order in which they are done.

    >>> from seamwright.junction import WorkPlan
    >>> panels = {"does": "lay the panels", "gives": ["panels"], "needs": ["eave trim"]}
    >>> trim = {"does": "set the eave trim", "gives": ["eave trim"], "needs": ["deck"]}
    >>> WorkPlan.from_dict({"there": ["deck"], "tasks": [panels, trim]}).compute()
    [1, 0]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> WorkPlan:
        """
        For unpickling.
        """
    def compute(self, /) -> list[int]:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[list[int], Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> WorkPlan:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> WorkPlan:
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
class WorkStep:
    """
    A step of the work at a junction.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def does(self, /) -> str:
        """
        What is done.
        """
    @property
    def gives(self, /) -> list[str]:
        """
        What is in place when it is done.
        """
    @property
    def lines(self, /) -> list[int]:
        """
        The lines that are struck for it just before, by number in the section's ``lines``.
        """
    @property
    def needs(self, /) -> list[str]:
        """
        What had to be in place before it.
        """

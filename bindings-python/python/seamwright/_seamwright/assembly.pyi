"""
The classes of `seamwright.assembly`.
"""

from .closure import ClosurePiece
from .movement import EndVerdict
from .record import Caution, Source, Worksheet
from .roof import Vertex
from .spacing import Stations
from .trim import Profile
from .units import Angle, Length, Volume
from typing import Any, final

__all__ = ["Bay", "BeadRun", "Beside", "CleatRun", "ClipGroup", "ClipRule", "ClipSchedule", "ClosureGroup", "ClosureList", "ClosureRow", "CopingCleat", "CopingCorner", "CopingMeets", "CopingPiece", "CopingPieces", "CopingRun", "CopingScrews", "Corner", "CornerLine", "CornerPair", "EdgeMovement", "FastenerRow", "LineAssembly", "PanEndCut", "PanEndLeg", "PanelPin", "PlaneMovement", "PlanePins", "RoofCorners", "RunOfCoping", "SealBreak", "SealCheck", "SealedLine", "SeamPlugs", "SideBays", "SideSeal", "Stretch", "StruckLine", "TapeReading", "TapeRun", "TeeOnRun", "TrimRun"]

@final
class Bay:
    """
    One bay: the stretch of a line that ends one panel.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> str:
        """
        Which end of it lies here: ``lower`` or ``upper``.
        """
    @property
    def hand(self, /) -> str:
        """
        The hand: ``square``, ``left`` or ``right``.
        """
    @property
    def left(self, /) -> str:
        """
        What it ends at on the left: ``seam``, ``rip`` or ``corner``.
        """
    @property
    def length(self, /) -> Length:
        """
        Its length along the line.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        From the line's right-hand direction to the seams: 90 degrees is square, less where the line rises to the right, more where it falls.
        """
    @property
    def notched(self, /) -> bool:
        """
        Whether the panel goes on past the line beside the bay: it is cut around an opening or a notch there.
        """
    @property
    def panel(self, /) -> int:
        """
        The panel, as its number among the panels of its plane.
        """
    @property
    def right(self, /) -> str:
        """
        What it ends at on the right: ``seam``, ``rip`` or ``corner``.
        """
    @property
    def run(self, /) -> int:
        """
        Its run in the strip.
        """
    @property
    def start(self, /) -> Length:
        """
        Where the bay starts along the line. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def stop(self, /) -> Length:
        """
        Where it stops along the line. (In Rust this is ``to``.)
        """
    @property
    def strip(self, /) -> int:
        """
        Its strip, from the left, from 0.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width across, square to the seams.
        """

@final
class BeadRun:
    """
    A bead of gun sealant along a line.
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
    def length(self, /) -> Length:
        """
        Its length.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def volume(self, /) -> Volume:
        """
        Its volume.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width.
        """

@final
class Beside:
    """
    A panel that runs along a line: at a rake, a sidewall, the side of a curb.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> str:
        """
        What stands at the line: a ``seam``, or the panel's ripped side, ``rip``.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark.
        """
    @property
    def panel(self, /) -> int:
        """
        The panel, as its number among the panels of its plane.
        """
    @property
    def stretch(self, /) -> Stretch:
        """
        Along which stretch of the line.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width.
        """

@final
class CleatRun:
    """
    A cleat along a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def kind(self, /) -> str:
        """
        What it is: ``continuous``, hooked by a trim's hem, or ``offset``, hooked by the panels' folds.
        """
    @property
    def length(self, /) -> Length:
        """
        Its length: the line's.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """

@final
class ClipGroup:
    """
    Seams with one schedule of clips.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> list[Length]:
        """
        Where each is, across the plane.
        """
    @property
    def fixed(self, /) -> list[int]:
        """
        Which of them are fixed, by number along the seam.
        """
    @property
    def on_edge(self, /) -> bool:
        """
        Whether they are panels' sides along an edge, and no seams.
        """
    @property
    def positions(self, /) -> list[Length]:
        """
        The clips, from the seam's lower end.
        """
    @property
    def run(self, /) -> Length:
        """
        The length of seam between the ends of its panels.
        """
    @property
    def seams(self, /) -> int:
        """
        How many seams have this schedule.
        """

@final
class ClipRule:
    """
    How clips are set along the seams of a plane. What it has not is ``None``: only clips on open framing have supports.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end_distance(self, /) -> Length:
        """
        Of the first and last clip from the ends of the seam: as set on a deck, at the most on supports.
        """
    @property
    def kind(self, /) -> str:
        """
        What it is: ``spaced`` on a deck, or ``on-supports``.
        """
    @property
    def source(self, /) -> Source:
        """
        Whose spacing it is.
        """
    @property
    def spacing(self, /) -> Length:
        """
        Greatest spacing on centre.
        """
    @property
    def support_use(self, /) -> str | None:
        """
        Which supports carry a clip: ``every`` or ``fewest``.
        """
    @property
    def supports(self, /) -> list[Length] | None:
        """
        The supports, as heights up the slope in the plane's own axes, ascending.
        """

@final
class ClipSchedule:
    """
    The clips of a plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is built.
        """
    @property
    def clips(self, /) -> int:
        """
        All clips.
        """
    @property
    def engineered(self, /) -> bool:
        """
        Whether the spacing is an engineer's.
        """
    @property
    def fixed(self, /) -> int:
        """
        Those in the fixed zone.
        """
    @property
    def groups(self, /) -> list[ClipGroup]:
        """
        Seams of one schedule together, the longest first.
        """
    @property
    def screws(self, /) -> int:
        """
        Screws.
        """
    @property
    def sliding(self, /) -> int:
        """
        The others; all of them where no fixed zone is given.
        """

@final
class ClosureGroup:
    """
    Identical closure pieces.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bays(self, /) -> list[int]:
        """
        The bays, by number along the line.
        """
    @property
    def count(self, /) -> int:
        """
        How many.
        """
    @property
    def coverage(self, /) -> Length:
        """
        The coverage of the bay that the pieces fit.
        """
    @property
    def hand(self, /) -> str:
        """
        The hand: ``square``, ``left`` or ``right``.
        """
    @property
    def left(self, /) -> str:
        """
        What the bay ends at on the left, looking up the slope: ``seam``, ``rip`` or ``corner``.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        The angle at which its seams meet the line.
        """
    @property
    def piece(self, /) -> ClosurePiece:
        """
        The piece.
        """
    @property
    def right(self, /) -> str:
        """
        What it ends at on the right: ``seam``, ``rip`` or ``corner``.
        """
    @property
    def screws_each(self, /) -> int:
        """
        Screws of one piece.
        """

@final
class ClosureList:
    """
    The closures of one side of a line, in pieces.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before they are cut; each that several pieces share is said once.
        """
    @property
    def groups(self, /) -> list[ClosureGroup]:
        """
        Identical pieces together, in the order in which they first come along the line.
        """
    @property
    def pieces(self, /) -> int:
        """
        How many pieces there are.
        """
    @property
    def screws(self, /) -> int:
        """
        How many screws.
        """
    @property
    def without(self, /) -> list[int]:
        """
        The bays that take no piece, by number along the line.
        """

@final
class ClosureRow:
    """
    Closures along one side of a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def list(self, /) -> ClosureList:
        """
        The pieces.
        """
    @property
    def name(self, /) -> str:
        """
        What they are called in the section.
        """
    @property
    def screw_row(self, /) -> str | None:
        """
        The row of screws that they take, by its name in the section; ``None`` where the section has none and the starting figure stands.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def web(self, /) -> Length:
        """
        Height of the web.
        """

@final
class CopingCleat:
    """
    The pieces of one cleat of a coping.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def length(self, /) -> Length:
        """
        Their length together: the run less the gaps, and less what other walls take of it.
        """
    @property
    def pieces(self, /) -> int:
        """
        How many pieces.
        """
    @property
    def side(self, /) -> str:
        """
        On which face: ``first``, the roof side, or ``second``, the outside.
        """

@final
class CopingCorner:
    """
    Where two runs of coping meet.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Vertex:
        """
        Where: the outer edges' corner, or the middle of the wall that ends at a tee.
        """
    @property
    def kind(self, /) -> str:
        """
        What is made there: ``outside``, ``inside`` or ``tee``.
        """
    @property
    def runs(self, /) -> tuple[int, int]:
        """
        The two runs by number; at a tee the first goes through.
        """
    @property
    def turn(self, /) -> Angle:
        """
        How far the second run turns from the first in plan; at a tee, from the run that goes through to the one that ends on it.
        """

@final
class CopingMeets:
    """
    What an end of a run of coping meets. What it has not is ``None``.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def corner(self, /) -> int | None:
        """
        The number of the corner or tee, among the packet's ``coping_corners``.
        """
    @property
    def kind(self, /) -> str:
        """
        What it is: ``free``, ``corner`` or ``wall``.
        """
    @property
    def wall(self, /) -> str | None:
        """
        The name of the higher wall.
        """

@final
class CopingPiece:
    """
    Pieces of coping of one length.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many.
        """
    @property
    def length(self, /) -> Length:
        """
        Their length.
        """

@final
class CopingPieces:
    """
    What a run of coping takes.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bead(self, /) -> Length:
        """
        Beads in all joints together.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is made.
        """
    @property
    def cleats(self, /) -> list[CopingCleat]:
        """
        The cleats.
        """
    @property
    def end_bead(self, /) -> Length:
        """
        Beads in caps and wall ends together: one across each.
        """
    @property
    def end_caps(self, /) -> int:
        """
        Free ends, each with a cap.
        """
    @property
    def gap_least(self, /) -> Length:
        """
        The gap at its narrowest, in the heat.
        """
    @property
    def gap_when_laid(self, /) -> Length:
        """
        The gap to leave at the laying temperature.
        """
    @property
    def gap_widest(self, /) -> Length:
        """
        The gap at its widest, in the cold.
        """
    @property
    def joints(self, /) -> int:
        """
        Joints with a plate: between its pieces and to its corner pieces.
        """
    @property
    def pieces(self, /) -> list[CopingPiece]:
        """
        Its pieces, corner pieces left out.
        """
    @property
    def plate(self, /) -> Profile:
        """
        The plate's profile.
        """
    @property
    def plate_lap(self, /) -> Length:
        """
        How far a plate then lies under each piece.
        """
    @property
    def screws(self, /) -> list[CopingScrews]:
        """
        The rows of screws.
        """
    @property
    def wall_ends(self, /) -> int:
        """
        Ends turned up against a higher wall.
        """

@final
class CopingRun:
    """
    A run of coping along one wall: its pieces, joints, cleats, beads and screws.

    >>> from seamwright.assembly import CopingRun
    >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    >>> cleat = {"sheet": sheet, "height": "3 in", "fasteners_above_bend": '1 1/2"', "fasteners": row, "hem": '7/8"', "hem_gap": "0.165 in",
    ...     "short_of_fold": '1/16"', "engagement": '3/4"'}
    >>> side = {"behind": "0 in", "depth": "4 in", "kick": "40 deg", "clears": '3/4"', "hold": {"cleat": cleat}}
    >>> coping = {"thickness": "8 in", "detail": {"sheet": sheet, "bed": "0.04 in", "fall": "1:12", "roof_side": side, "outside": side}}
    >>> def least(what, length):
    ...     return {"what": what, "least": length, "source": "common-practice"}
    >>> joint = {"plate": "12 in", "plate_lap": least("plate", "4 in"), "gap": least("gap", '1/4"'), "clearance": '1/8"', "beads": 2,
    ...     "bead_width": '3/8"', "bead_depth": '1/4"'}
    >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    >>> run = CopingRun.from_dict({"coping": coping, "run": "42 ft", "ends": [{"corner": {"leg": "18 in"}}, "free"], "corner_leg": least("leg", "12 in"),
    ...     "piece": "10 ft", "least_piece": "2 ft", "joint": joint, "cleat_piece": "10 ft", "cleat_gap": '1/4"', "end_distance": "1 in",
    ...     "range": temperatures})
    >>> made = run.compute()
    >>> [piece.count for piece in made.pieces], made.joints, made.end_caps, format(made.gap_when_laid, "in/16")
    ([3, 2], 5, 1, '1/4"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CopingRun:
        """
        For unpickling.
        """
    def compute(self, /) -> CopingPieces:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[CopingPieces, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CopingRun:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CopingRun:
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
class CopingScrews:
    """
    A row of screws along a coping.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bites(self, /) -> str:
        """
        What they bite: ``structure``, ``panel``, ``slot`` or ``trim``.
        """
    @property
    def count(self, /) -> int:
        """
        How many.
        """
    @property
    def engineered(self, /) -> bool:
        """
        Whether an engineer gave the spacing.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def side(self, /) -> str:
        """
        On which face: ``first``, the roof side, or ``second``, the outside.
        """
    @property
    def source(self, /) -> Source:
        """
        Whose spacing it is.
        """
    @property
    def spacing(self, /) -> Length:
        """
        On centre, at the most.
        """

@final
class Corner:
    """
    A place where lines end.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Vertex:
        """
        Where it is: the end of its first line.
        """
    @property
    def lines(self, /) -> list[CornerLine]:
        """
        The lines that end there, in the roof's order.
        """
    @property
    def pairs(self, /) -> list[CornerPair]:
        """
        Every two of them.
        """

@final
class CornerLine:
    """
    A line at a corner.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def above(self, /) -> Length | None:
        """
        Along the upper edge of a step, how far over the line's own end the corner stands: its riser.
        """
    @property
    def allowance(self, /) -> Length:
        """
        What its trims run on here.
        """
    @property
    def closed(self, /) -> str:
        """
        How the end of its trim is closed here: ``capped``, ``turned-up`` a wall, ``kick-out``, ``joined``, ``covered``, ``outlet`` or ``undecided``.
        """
    @property
    def end(self, /) -> str:
        """
        Which end of it: ``start`` or ``end``.
        """
    @property
    def kind(self, /) -> str:
        """
        Its kind.
        """
    @property
    def line(self, /) -> int:
        """
        The line's number among the roof's lines.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """

@final
class CornerPair:
    """
    How the trims of two lines meet at a corner.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def between(self, /) -> Angle:
        """
        Between the two lines at the corner.
        """
    @property
    def cut(self, /) -> Angle | None:
        """
        The bevel on the sheet: from a trim's own line to the cut across its end in the plane of both, where one is cut to the other.
        """
    @property
    def cut_plan(self, /) -> Angle | None:
        """
        The same cut as seen from above, where it can be set from there.
        """
    @property
    def first(self, /) -> str:
        """
        The first line, by name.
        """
    @property
    def joint(self, /) -> str | None:
        """
        The expansion joint over which they slide.
        """
    @property
    def over(self, /) -> str | None:
        """
        The line on top: the one that laps over the other, or the third that covers both.
        """
    @property
    def plan(self, /) -> Angle:
        """
        The same as seen from above.
        """
    @property
    def rule(self, /) -> str:
        """
        How they meet: one ``laps`` over the other; of one kind they are ``mitred``, or in one straight line ``runs-on``; ``covered`` by a third
        that laps over both; or ``no-rule`` sets them in order.
        """
    @property
    def second(self, /) -> str:
        """
        The second, by name.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the rule comes from.
        """

@final
class EdgeMovement:
    """
    The panels that move at one edge.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def edge(self, /) -> int:
        """
        The edge, in the order of the outline's.
        """
    @property
    def end(self, /) -> str:
        """
        Which end of the panels lies there: ``lower`` or ``upper``.
        """
    @property
    def failing(self, /) -> int:
        """
        How many panels fail.
        """
    @property
    def fold(self, /) -> Length:
        """
        The fold given.
        """
    @property
    def gap(self, /) -> Length:
        """
        The gap given.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        The meeting angle.
        """
    @property
    def panels(self, /) -> int:
        """
        How many panels move there.
        """
    @property
    def to_fixed(self, /) -> Length:
        """
        From its moving end to its fixed line, along the seam.
        """
    @property
    def travel(self, /) -> Length:
        """
        How far that end moves over the year, square to the line.
        """
    @property
    def verdict(self, /) -> EndVerdict | None:
        """
        The verdict on fold and gap for that panel; ``None`` where the end hooks nothing.
        """
    @property
    def worst(self, /) -> int:
        """
        The panel that moves most, as its number among the panels of its plane.
        """
    @property
    def worst_name(self, /) -> str:
        """
        The same in words.
        """

@final
class FastenerRow:
    """
    A row of fasteners along a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bites(self, /) -> str:
        """
        What they bite: structure, panel, slot or trim.
        """
    @property
    def count(self, /) -> int:
        """
        How many there are.
        """
    @property
    def engineered(self, /) -> bool:
        """
        Whether that is an engineer.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def source(self, /) -> Source:
        """
        Whose spacing it is.
        """
    @property
    def spacing(self, /) -> Length:
        """
        Greatest spacing on centre.
        """
    @property
    def stations(self, /) -> Stations | None:
        """
        Stations along the line; ``None`` for the screws of closures, which go by the bay: their stations are those of each piece.
        """

@final
class LineAssembly:
    """
    A line of the roof with everything that lies along it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def beads(self, /) -> list[BeadRun]:
        """
        Beads.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is built. The section's own cautions are not repeated.
        """
    @property
    def cleats(self, /) -> list[CleatRun]:
        """
        Cleats.
        """
    @property
    def closures(self, /) -> list[ClosureRow]:
        """
        Closures.
        """
    @property
    def kind(self, /) -> str:
        """
        Its kind.
        """
    @property
    def length(self, /) -> Length:
        """
        Its true length.
        """
    @property
    def name(self, /) -> str:
        """
        The line's name.
        """
    @property
    def plugs(self, /) -> list[SeamPlugs]:
        """
        Plugs.
        """
    @property
    def rows(self, /) -> list[FastenerRow]:
        """
        Rows of fasteners.
        """
    @property
    def sides(self, /) -> list[SideBays]:
        """
        The sides with panels.
        """
    @property
    def struck(self, /) -> list[StruckLine]:
        """
        Lines to strike, in the order of the work.
        """
    @property
    def struck_lower(self, /) -> list[StruckLine]:
        """
        The same at the line's lower end, where they turn away from it; else none.
        """
    @property
    def tapes(self, /) -> list[TapeRun]:
        """
        Tapes.
        """
    @property
    def trims(self, /) -> list[TrimRun]:
        """
        Trims, in the order in which they are set.
        """

@final
class PanEndCut:
    """
    The lower end of a valley's pan: how each leg is cut, folded and sealed there.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bead_depth(self, /) -> Length:
        """
        Depth of each of them.
        """
    @property
    def bead_length(self, /) -> Length:
        """
        The length of all of them together.
        """
    @property
    def bead_width(self, /) -> Length:
        """
        Width of each of them.
        """
    @property
    def beads(self, /) -> int:
        """
        Beads of sealant under each end that laps over an eave or a roof.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is cut.
        """
    @property
    def first(self, /) -> PanEndLeg:
        """
        The leg on the first side.
        """
    @property
    def run_on(self, /) -> Length:
        """
        How far the metal runs on beyond the end of the junction line.
        """
    @property
    def second(self, /) -> PanEndLeg:
        """
        The leg on the second side.
        """

@final
class PanEndLeg:
    """
    How a leg of a pan is cut at its lower end.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> Angle:
        """
        Between the pan's centreline going up and the cut, along the leg.
        """
    @property
    def at_centre(self, /) -> Length:
        """
        Where the cut meets the pan's centreline, down from the end of the junction line; negative is up from it.
        """
    @property
    def at_edge(self, /) -> Length:
        """
        Where it meets the pan's edge.
        """
    @property
    def cut(self, /) -> Length:
        """
        The length of the cut.
        """
    @property
    def fold(self, /) -> Length:
        """
        From the fold's line to the cut, square to it; 0 for a raw end.
        """
    @property
    def fold_along(self, /) -> Length:
        """
        The same along the pan.
        """
    @property
    def on(self, /) -> str:
        """
        What it comes to: ``eave``, ``roof``, or ``against`` what its plane ends on.
        """

@final
class PanelPin:
    """
    Where one panel is held.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def apart(self, /) -> Length | None:
        """
        How far apart its pins are, where there are two levels.
        """
    @property
    def fixing(self, /) -> str:
        """
        Where it is pinned: at its ``lower`` or ``upper`` end, by a ``zone`` of fixed clips or at an ``opening``; or a fault: ``twice``, ``along`` a
        side, or ``nowhere``.
        """
    @property
    def panel(self, /) -> int:
        """
        The panel, as its number among the panels of its plane.
        """

@final
class PlaneMovement:
    """
    How the panels of a plane move with heat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What fails, and what else to know.
        """
    @property
    def ends(self, /) -> list[EdgeMovement]:
        """
        Each edge at which panels move, in the order of the outline's.
        """

@final
class PlanePins:
    """
    Where the panels of a plane are held.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        The faults, each with its first panel.
        """
    @property
    def panels(self, /) -> list[PanelPin]:
        """
        Each panel, in the order of the laid plane.
        """

@final
class RoofCorners:
    """
    Where lines of a roof meet, and how their trims do.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to decide before trims are cut.
        """
    @property
    def corners(self, /) -> list[Corner]:
        """
        The corners, in the order of the lines that first end there.
        """
    @property
    def ends(self, /) -> list[tuple[Length, Length]]:
        """
        For each line of the roof, in its order, what its trims run on beyond its start and its end.
        """
    @property
    def upper_ends(self, /) -> list[tuple[Length, Length]]:
        """
        The same for the trims along the upper edge of each step; nothing at any other line.
        """

@final
class RunOfCoping:
    """
    Where a coping runs without a break, and what it meets.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def coping(self, /) -> int:
        """
        The number of its coping among the job's choices.
        """
    @property
    def end(self, /) -> Vertex:
        """
        Where it ends.
        """
    @property
    def ends(self, /) -> list[CopingMeets]:
        """
        What it meets at its start and at its end.
        """
    @property
    def length(self, /) -> Length:
        """
        Length of the outer edge.
        """
    @property
    def start(self, /) -> Vertex:
        """
        Where its outer edge starts; the roof lies on the left.
        """
    @property
    def tees(self, /) -> list[TeeOnRun]:
        """
        Where other runs meet it between them, from its start on.
        """
    @property
    def walls(self, /) -> list[str]:
        """
        Its walls by name, in order.
        """

@final
class SealBreak:
    """
    A place where a sealed line breaks.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bay(self, /) -> int | None:
        """
        The bay in which it lies, counted from 1; ``None`` where no bay is known there.
        """
    @property
    def cure(self, /) -> str:
        """
        What cures it.
        """
    @property
    def lacks(self, /) -> str:
        """
        The same in words.
        """
    @property
    def missing(self, /) -> str:
        """
        What is missing: tape, closure, bead, plug, tape-lap, trim-lap or corner.
        """
    @property
    def name(self, /) -> str:
        """
        The layer or the passage.
        """
    @property
    def start(self, /) -> Length:
        """
        Where it starts, from the start of the line.
        """
    @property
    def stop(self, /) -> Length:
        """
        Where it ends; at its start for a passage.
        """

@final
class SealCheck:
    """
    Whether a sealed line goes through.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def breaks(self, /) -> list[SealBreak]:
        """
        Where it breaks, from the start of the line.
        """
    @property
    def continuous(self, /) -> bool:
        """
        Whether it does, from one end of the run to the other.
        """
    @property
    def layers(self, /) -> int:
        """
        How many layers were followed.
        """
    @property
    def longest_gap(self, /) -> Length:
        """
        No gap may be longer.
        """
    @property
    def passages(self, /) -> int:
        """
        How many passages were looked at.
        """
    @property
    def widest_gap(self, /) -> Length:
        """
        The widest gap that passes.
        """

@final
class SealedLine:
    """
    The sealed line of one side of a junction: layers that must each go through by themselves, and places where something passes through it.

    >>> from seamwright.assembly import SealedLine
    >>> tape = {"name": "tape", "need": "tape", "stretches": [{"from": "0 in", "to": "32 in"}]}
    >>> seam = {"name": "hollow of seam 1", "need": "plug", "at": "16 in", "sealed": True}
    >>> bays = [{"from": "0 in", "to": "16 in"}, {"from": "16 in", "to": "32 in"}, {"from": "32 in", "to": "48 in"}]
    >>> line = SealedLine.from_dict({"run": "48 in", "longest_gap": '1/16"', "bays": bays, "layers": [tape], "passages": [seam]})
    >>> [(gap.name, gap.missing, gap.bay, format(gap.start, "in/16"), format(gap.stop, "in/16")) for gap in line.compute().breaks]
    [('tape', 'tape', 3, '32"', '48"')]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> SealedLine:
        """
        For unpickling.
        """
    def compute(self, /) -> SealCheck:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[SealCheck, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> SealedLine:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> SealedLine:
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
class SeamPlugs:
    """
    Plugs in the hollows of seams.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many: one for every seam that crosses the line or ends its bays.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """

@final
class SideBays:
    """
    One side of a line with its real bays. Stations run along the line from its start; left and right are as seen looking up the slope.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bays(self, /) -> list[Bay]:
        """
        The bays in order along the line.
        """
    @property
    def beside(self, /) -> list[Beside]:
        """
        The panels that run along the line, where it lies along the seams.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before pieces are cut.
        """
    @property
    def covered(self, /) -> Length:
        """
        All bays together, along the line.
        """
    @property
    def flank(self, /) -> str:
        """
        On which flank of the line it lies: ``left`` or ``right``.
        """
    @property
    def gaps(self, /) -> list[Stretch]:
        """
        The stretches without a panel.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        The meeting angle, without sign: 90 degrees is square, 0 is along the seams.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of the plane in the roof.
        """
    @property
    def seams(self, /) -> list[Length]:
        """
        Where seams cross the line or end at it, each once.
        """
    @property
    def side(self, /) -> str:
        """
        Which side of the junction: ``first`` or ``second``.
        """

@final
class SideSeal:
    """
    The sealed line on one side of a line of the roof.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def caution(self, /) -> Caution | None:
        """
        What must be said of it; ``None`` where it goes through.
        """
    @property
    def check(self, /) -> SealCheck:
        """
        Whether it goes through.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first``, ``second`` or ``riser``.
        """

@final
class Stretch:
    """
    A stretch of a line, from station to station.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def start(self, /) -> Length:
        """
        Where it starts along the line. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def stop(self, /) -> Length:
        """
        Where it stops along the line. (In Rust this is ``to``.)
        """

@final
class StruckLine:
    """
    A line to strike along a real line of the roof, as exact figures and as a tape is read.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def along_seam(self, /) -> TapeReading | None:
        """
        The running total along a seam; ``None`` where the seams run along the line or no panels lie there.
        """
    @property
    def datum(self, /) -> str:
        """
        What it is measured from in the section, in words.
        """
    @property
    def datum_line(self, /) -> str | None:
        """
        The name of the line that it is measured from; ``None`` where it is no struck line.
        """
    @property
    def from_datum(self, /) -> TapeReading:
        """
        From that datum, square to the line, with the section's sign.
        """
    @property
    def from_line(self, /) -> TapeReading:
        """
        From the junction line, square to it, positive up the slope.
        """
    @property
    def from_start(self, /) -> TapeReading:
        """
        The running total from there, square to the line: up the slope, or down it from a trim's top edge; negative the other way.
        """
    @property
    def name(self, /) -> str:
        """
        What goes on it.
        """
    @property
    def order(self, /) -> int:
        """
        When it is struck, from 1.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def start(self, /) -> str:
        """
        What the running total starts from, in words: the junction line or a trim's edge.
        """
    @property
    def tolerance(self, /) -> Length:
        """
        How far off it may be.
        """

@final
class TapeReading:
    """
    A length as it is and as it is read off a tape.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def exact(self, /) -> Length:
        """
        As it is.
        """
    @property
    def read(self, /) -> Length:
        """
        As it is read.
        """

@final
class TapeRun:
    """
    Sealant tape along a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def length(self, /) -> Length:
        """
        Its length: straight, or developed over pans and seams with its laps.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def over_seams(self, /) -> bool:
        """
        Whether it follows the panels over their seams.
        """
    @property
    def side(self, /) -> str:
        """
        On which side: ``first`` or ``second``.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width.
        """

@final
class TeeOnRun:
    """
    Another run that ends on this one.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Length:
        """
        From the start of the run to the middle of the other wall.
        """
    @property
    def corner(self, /) -> int:
        """
        Its number among the corners.
        """
    @property
    def side(self, /) -> str:
        """
        Which face the other wall stands against: ``first`` looks to the roof.
        """
    @property
    def width(self, /) -> Length:
        """
        How much of the run the other wall takes.
        """

@final
class TrimRun:
    """
    A trim along a line, before like ones of the roof are put together.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at_end(self, /) -> Length:
        """
        What the corner adds beyond its end.
        """
    @property
    def at_start(self, /) -> Length:
        """
        What the corner adds beyond the line's start.
        """
    @property
    def lap(self, /) -> Length:
        """
        Lap of its pieces.
        """
    @property
    def line(self, /) -> Length:
        """
        True length of the line.
        """
    @property
    def lower(self, /) -> Profile | None:
        """
        Its profile at the line's lower end, where it tapers; else ``None``.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called in the section.
        """
    @property
    def profile(self, /) -> Profile:
        """
        Its profile.
        """
    @property
    def run(self, /) -> Length:
        """
        The length to cover: the line and both.
        """
    @property
    def trim(self, /) -> int:
        """
        Its number among the section's trims.
        """

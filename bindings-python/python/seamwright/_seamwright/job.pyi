"""
The classes of `seamwright.job`.
"""

from .assembly import ClipRule, ClipSchedule, CopingCorner, CopingPieces, LineAssembly, PanEndCut, PlaneMovement, PlanePins, RoofCorners, RunOfCoping, SideSeal
from .junction import BeadSize, CapBlank, Coping, JointMoves, KickOutPiece, Levels, Pipe, PipePlan, Solved, WaterCheck, WorkStep
from .layout import LaidPlane, Layout, ListedPlane, MarkedSeams, Revised
from .metal import MetalMeeting, Sheet
from .movement import CapMoves
from .panel import Panel
from .record import Caution, Source, Worksheet
from .roof import Point, Roof, RoofInput, Vertex
from .stock import CutPlan
from .trim import Flat, Profile, TaperedPieces
from .underlayment import EaveBand, LaidCourses, ValleyStrip
from .units import Angle, Area, Length, LengthFormat, LineMass, Mass, Temperature
from collections.abc import Callable
from typing import Any, SupportsIndex, final

__all__ = ["CapItem", "CopingCornerItem", "CopingItem", "EaveUnderlayment", "EndCap", "Job", "JobRevised", "JobRevision", "JunctionItem", "KickOutItem", "Metals", "OrderLine", "Packet", "PanelChange", "Paperwork", "PipeItem", "PlaneClips", "PlaneHeat", "PlaneLay", "PlaneUnderlayment", "Progress", "SectionSide", "SourceCount", "Summary", "Temperatures", "TrimItem", "TrimRun", "UnderlaymentPlan", "ValleyUnderlayment"]

@final
class CapItem:
    """
    The blank of end caps that are alike.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def made(self, /) -> CapBlank:
        """
        The cap, as the trim is drawn.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark: E1, E2 and so on.
        """
    @property
    def sheet(self, /) -> Sheet:
        """
        Its sheet.
        """
    @property
    def trim(self, /) -> str:
        """
        That trim's name.
        """
    @property
    def trim_mark(self, /) -> str:
        """
        The mark of the trim that it closes.
        """

@final
class CopingCornerItem:
    """
    A corner or tee piece of coping: made once, whichever of its runs it is looked for from.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def corner(self, /) -> CopingCorner:
        """
        What it is.
        """
    @property
    def cut(self, /) -> tuple[Length, Length]:
        """
        The lengths of coping that it is cut from, each to its longest edge.
        """
    @property
    def legs(self, /) -> tuple[Length, Length]:
        """
        The leg along each of them; at a tee the first goes through, with a leg to both sides.
        """
    @property
    def name(self, /) -> str:
        """
        Its name: coping corner 1 and so on.
        """
    @property
    def runs(self, /) -> tuple[str, str]:
        """
        The runs that meet there, by name.
        """

@final
class CopingItem:
    """
    A run of coping, worked out.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def choice(self, /) -> str:
        """
        Where in the job its choice stands.
        """
    @property
    def coping(self, /) -> Coping:
        """
        The coping as it was worked out.
        """
    @property
    def name(self, /) -> str:
        """
        Its name: coping 1, coping 2 and so on.
        """
    @property
    def pieces(self, /) -> CopingPieces:
        """
        What the run takes.
        """
    @property
    def run(self, /) -> RunOfCoping:
        """
        Where it runs, and what it meets.
        """
    @property
    def section(self, /) -> Solved:
        """
        Its section.
        """

@final
class EaveUnderlayment:
    """
    The membrane along one eave.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def band(self, /) -> EaveBand:
        """
        How far it reaches, and its marks from the eave.
        """
    @property
    def laid(self, /) -> LaidCourses:
        """
        Its courses; heights from the lowest point of the plane.
        """
    @property
    def line(self, /) -> int:
        """
        Number of the line in the roof.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """

@final
class EndCap:
    """
    An end cap, made to the outline of a trim's section with tabs on it: it closes the trim where its line ends and nothing lies over it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def above(self, /) -> Length | None:
        """
        Along the upper edge of a step, its riser; ``None`` at any other.
        """
    @property
    def end(self, /) -> str:
        """
        Which end of it: ``start`` or ``end``.
        """
    @property
    def hand(self, /) -> str:
        """
        How its outline lies to the trim's drawing, seen from outside: ``as-drawn``, ``opposite`` or ``either``.
        """
    @property
    def line(self, /) -> int:
        """
        The line's number in the roof.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark of the trim that it closes, and whose section is its outline.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def piece(self, /) -> str | None:
        """
        The mark of its blank; ``None`` where the trim leaves no hollow, and its end is folded down.
        """
    @property
    def trim(self, /) -> str:
        """
        That trim's name.
        """

@final
class Job:
    """
    A job: a measured roof, a panel, metals, a detail for each kind of junction, supplies, and the engineer's schedule where there is one.

    It is read from JSON or from a dict of the same form, in which quantities may stand as themselves. A field that is unknown, missing or of
    another kind is refused with its path.

    >>> from seamwright import InputError
    >>> from seamwright.job import Job
    >>> try:
    ...     Job.from_dict({"format": "seamwright-job", "version": 1, "colour": "red"})
    ... except InputError as e:
    ...     print(e.kind, e.path)
    unknown colour
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Job:
        """
        For unpickling.
        """
    def compute(self, /, progress: Callable[[Progress], bool | None] | None = None) -> Packet:
        """
        The job worked out.

        ``progress`` is called with a ``Progress`` after every part of the work. Where it returns ``False`` the work stops with a
        ``SeamwrightError`` of the kind ``cancelled``; what it raises is raised. Other threads of Python run meanwhile.
        """
    def explain(self, /, progress: Callable[[Progress], bool | None] | None = None) -> tuple[Packet, Worksheet]:
        """
        The job worked out, and the worksheet. ``progress`` is as in ``compute``.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Job:
        """
        Reads a job from a dict.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Job:
        """
        Reads a job from JSON, as text or as bytes in UTF-8.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called.
        """
    @property
    def panel(self, /) -> Panel:
        """
        Its panel.
        """
    @property
    def roof(self, /) -> RoofInput:
        """
        Its roof, as given.
        """
    def to_dict(self, /) -> dict:
        """
        The job as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        The job as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class JobRevised:
    """
    A job's revised list.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def panels(self, /) -> list[PanelChange]:
        """
        The places whose panel changes, is new or is gone.
        """
    @property
    def revised(self, /) -> Revised:
        """
        The list.
        """

@final
class JobRevision:
    """
    Two states of a job, and what is formed by the first: which panels change, are new or are gone, and what can be cut down, with no mark renumbered.

    >>> from seamwright import InputError
    >>> from seamwright.job import JobRevision
    >>> try:
    ...     JobRevision.from_dict({"before": {}, "now": {}})
    ... except InputError as e:
    ...     print(e.kind, e.path)
    missing before.format
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> JobRevision:
        """
        For unpickling.
        """
    def compute(self, /) -> JobRevised:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[JobRevised, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> JobRevision:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> JobRevision:
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
class JunctionItem:
    """
    One line of the roof, worked out.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def along(self, /) -> LineAssembly:
        """
        What lies along the real line: bays, closures, tapes, beads, rows of fasteners, cleats, trims, lines to strike.
        """
    @property
    def detail(self, /) -> str:
        """
        Where in the job its detail stands.
        """
    @property
    def first(self, /) -> SectionSide:
        """
        The plane on the first side of the section.
        """
    @property
    def kind(self, /) -> str:
        """
        Its kind.
        """
    @property
    def line(self, /) -> int:
        """
        Number of the line in the roof.
        """
    @property
    def moves(self, /) -> JointMoves | None:
        """
        What moves there over the year, at an expansion joint; else ``None``.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def not_engineered(self, /) -> list[str]:
        """
        Rows of fasteners whose spacing no engineer gave.
        """
    @property
    def pan_end(self, /) -> PanEndCut | None:
        """
        How a valley's pan is cut, folded and sealed at its lower end, where the roof there is known; else ``None``.
        """
    @property
    def rides(self, /) -> CapMoves | None:
        """
        What its cap must let pass over the year, where its closures ride with panels that move and the job gives temperatures; else ``None``.
        """
    @property
    def sealed(self, /) -> list[SideSeal]:
        """
        The sealed line of each side, from one end of the line to the other.
        """
    @property
    def second(self, /) -> SectionSide | None:
        """
        The plane on the second side, where there is one.
        """
    @property
    def section(self, /) -> Solved:
        """
        Its section.
        """
    @property
    def water(self, /) -> WaterCheck:
        """
        Water on its section.
        """
    @property
    def work(self, /) -> list[WorkStep]:
        """
        The order of the work.
        """

@final
class KickOutItem:
    """
    A kick-out as the shop makes it, and where it goes.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def lines(self, /) -> list[str]:
        """
        The names of the lines that have one at their foot.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark: K1, K2 and so on.
        """
    @property
    def piece(self, /) -> KickOutPiece:
        """
        The piece.
        """
    @property
    def sheet(self, /) -> Sheet:
        """
        Its sheet.
        """

@final
class Metals:
    """
    The sheets of a job.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def gutter(self, /) -> str | None:
        """
        The gutters' metal; ``None`` where it is not known.
        """
    @property
    def panel(self, /) -> Sheet:
        """
        The panels' sheet.
        """
    @property
    def trims(self, /) -> list[Sheet]:
        """
        The sheets that trims and cleats are folded from, each of another thickness.
        """

@final
class OrderLine:
    """
    One line of the order.
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
    def engineered(self, /) -> bool | None:
        """
        For fasteners and clips, whether an engineer gave the spacing behind the count.
        """
    @property
    def group(self, /) -> str:
        """
        What kind of thing it is: panels, coil, trims, closures, sealant, clips or fasteners.
        """
    @property
    def item(self, /) -> str:
        """
        What it is.
        """
    @property
    def length(self, /) -> Length | None:
        """
        The length of each; of a coil the whole.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark in the packet; empty where it has none.
        """
    @property
    def mass(self, /) -> Mass | None:
        """
        Its mass, where it follows.
        """
    @property
    def net(self, /) -> Length | None:
        """
        The net length that is needed of it.
        """
    @property
    def source(self, /) -> Source | None:
        """
        What the count rests on.
        """
    @property
    def spec(self, /) -> str:
        """
        Its sheet, size or use.
        """
    @property
    def unit(self, /) -> str:
        """
        Of what: each, stick, roll, tube or coil.
        """

@final
class Packet:
    """
    A job worked out: what the shop, the crew and the office work from. It pickles as its job, which computes it again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cap_pieces(self, /) -> list[CapItem]:
        """
        The blanks of the end caps, like ones together.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        Every caution, its subject a path into the packet or the job.
        """
    @property
    def clips(self, /) -> list[PlaneClips]:
        """
        The clips of every plane.
        """
    @property
    def coping_corners(self, /) -> list[CopingCornerItem]:
        """
        Where copings meet: each corner and tee piece once.
        """
    @property
    def copings(self, /) -> list[CopingItem]:
        """
        The copings, run by run.
        """
    @property
    def corners(self, /) -> RoofCorners:
        """
        Where lines meet.
        """
    @property
    def details(self, /) -> LengthFormat:
        """
        The notation of what is small: widths, trims, spacings and struck lines.
        """
    @property
    def end_caps(self, /) -> list[EndCap]:
        """
        What closes trims where nothing lies over their ends, corner by corner.
        """
    def files(self, /, worksheet: Worksheet | None = None) -> dict[str, bytes]:
        """
        Every file of the packet: its name, folders and all, with ``/`` between them, and what it holds.

        They are the packet's JSON, lists, plan, crew sheets, drawings, flats and cautions; with a ``worksheet``, from ``Job.explain``, the working for
        the office too. Nothing is written: that is the caller's. Other threads of Python run meanwhile.
        """
    @property
    def format(self, /) -> str:
        """
        The name of the packet format.
        """
    @property
    def heat(self, /) -> list[PlaneHeat]:
        """
        Where the panels of every plane are held, and how they move with heat.
        """
    @property
    def job(self, /) -> Job:
        """
        The job.
        """
    def junction(self, /, name: str) -> JunctionItem | None:
        """
        The junction of the line of this name, if there is one.
        """
    @property
    def junctions(self, /) -> list[JunctionItem]:
        """
        The lines that could be named, worked out.
        """
    @property
    def kick_outs(self, /) -> list[KickOutItem]:
        """
        The kick-outs at the feet of wall flashings, like ones together.
        """
    @property
    def lengths(self, /) -> LengthFormat:
        """
        The notation of lengths for crew and shop.
        """
    @property
    def library(self, /) -> str:
        """
        The version of the library that worked it out.
        """
    @property
    def metals(self, /) -> Metals:
        """
        The sheets.
        """
    @property
    def metals_met(self, /) -> list[MetalMeeting]:
        """
        Metals that do not go together, from what touches and from where water runs.
        """
    @property
    def order(self, /) -> list[OrderLine]:
        """
        The order.
        """
    @property
    def paperwork(self, /) -> Paperwork:
        """
        How lengths are written, and on what.
        """
    @property
    def pipes(self, /) -> list[PipeItem]:
        """
        The pipes, in the order given.
        """
    def plane(self, /, name: str) -> PlaneLay | None:
        """
        The panels of the plane of this name, if there is one.
        """
    @property
    def planes(self, /) -> list[PlaneLay]:
        """
        The panels of every plane, in the order of the roof's planes.
        """
    @property
    def roof(self, /) -> Roof:
        """
        The roof with its lines.
        """
    @property
    def site(self, /) -> list[str]:
        """
        What the crew and the office must know of every job.
        """
    @property
    def summary(self, /) -> Summary:
        """
        The packet in a few figures.
        """
    @property
    def temperatures(self, /) -> Temperatures | None:
        """
        The metal's temperatures; ``None`` where the job gives none.
        """
    def to_dict(self, /) -> dict:
        """
        The packet as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        The packet as JSON text, with every quantity in its canonical form.
        """
    def trim(self, /, mark: str) -> TrimItem | None:
        """
        The trim of this mark, if there is one.
        """
    @property
    def trims(self, /) -> list[TrimItem]:
        """
        The trims.
        """
    @property
    def underlayment(self, /) -> UnderlaymentPlan | None:
        """
        The underlayment; ``None`` where the job does not ask for it.
        """
    @property
    def version(self, /) -> int:
        """
        The version of the packet format.
        """

@final
class PanelChange:
    """
    A panel whose place has another piece than before.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def before(self, /) -> str | None:
        """
        The mark before; ``None`` for a place that is new.
        """
    @property
    def now(self, /) -> str | None:
        """
        The mark now, as revised; ``None`` for a place that is gone.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane.
        """
    @property
    def run(self, /) -> int:
        """
        The run of the strip, from the foot.
        """
    @property
    def strip(self, /) -> int:
        """
        The strip, from the left.
        """

@final
class Paperwork:
    """
    How lengths are written, and on what.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def details(self, /) -> LengthFormat | None:
        """
        The notation of what is small, where the job gives one of its own; else ``None``.
        """
    @property
    def lengths(self, /) -> LengthFormat:
        """
        The notation of lengths for crew and shop: panels and runs.
        """
    @property
    def paper(self, /) -> str:
        """
        The crew's sheets: ``letter`` or ``a4``.
        """
    @property
    def small(self, /) -> LengthFormat:
        """
        The notation of what is small: widths, trims, spacings and struck lines.
        """

@final
class PipeItem:
    """
    A pipe, worked out.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def above_end(self, /) -> Length:
        """
        From that line up to its middle, along the seams.
        """
    @property
    def at(self, /) -> Vertex:
        """
        Its middle on the deck.
        """
    @property
    def choice(self, /) -> str:
        """
        Where in the job its choice stands.
        """
    @property
    def collar_bead(self, /) -> BeadSize:
        """
        The bead around its collar.
        """
    @property
    def foot(self, /) -> str:
        """
        The line at the foot of its panel, by name.
        """
    @property
    def made(self, /) -> PipePlan:
        """
        What it takes.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark of that panel in the length list.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def on_plane(self, /) -> Point:
        """
        The same in the plane: across the slope and up it.
        """
    @property
    def panels(self, /) -> list[int]:
        """
        The panels that its base lies on, by number on the plane from 0; its middle goes through the first.
        """
    @property
    def pipe(self, /) -> Pipe:
        """
        The pipe as it was worked out.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of its plane in the roof.
        """

@final
class PlaneClips:
    """
    The clips of one plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end_distance(self, /) -> Length:
        """
        From a seam's ends to its first and last clip.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane's name.
        """
    @property
    def rule(self, /) -> ClipRule:
        """
        The rule that set them: the engineer's where the job has a schedule.
        """
    @property
    def schedule(self, /) -> ClipSchedule:
        """
        Where they stand.
        """
    @property
    def source(self, /) -> Source:
        """
        Whose spacing it is: the engineer's where the job has a schedule.
        """
    @property
    def spacing(self, /) -> Length:
        """
        The greatest spacing along a seam.
        """

@final
class PlaneHeat:
    """
    Where the panels of one plane are held, and how they move with heat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def movement(self, /) -> PlaneMovement | None:
        """
        The folds and gaps at the moving ends; ``None`` where the job gives no temperatures.
        """
    @property
    def pins(self, /) -> PlanePins:
        """
        Where each panel is held.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane's name.
        """

@final
class PlaneLay:
    """
    The panels of one plane, with the line behind every edge of the outline that they were laid on.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def broken_by(self, /) -> list[int]:
        """
        For every break of that layout, the number of the valley whose pan runs out there.
        """
    @property
    def laid(self, /) -> LaidPlane:
        """
        The panels.
        """
    @property
    def layout(self, /) -> Layout:
        """
        What was laid, on the plane's own outline with a vertex wherever one line of the roof ends and the next begins, broken where a valley's pan runs out on it.
        """
    @property
    def lines(self, /) -> list[int]:
        """
        For every edge of that outline, the number of its line in the roof.
        """
    @property
    def listed(self, /) -> ListedPlane | None:
        """
        The list for shop and crew, where the job asks for one.
        """
    @property
    def marks(self, /) -> MarkedSeams | None:
        """
        The marks of the seams, where the job asks for them.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of the plane in the roof.
        """

@final
class PlaneUnderlayment:
    """
    The underlayment of one plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def eaves(self, /) -> list[EaveUnderlayment]:
        """
        Membranes along its eaves.
        """
    @property
    def field(self, /) -> LaidCourses | None:
        """
        The field; ``None`` where membranes along the eave take all of the plane.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane, by name.
        """

@final
class Progress:
    """
    How far the work is: so many things of a stage are done.

    >>> from seamwright.job import Progress
    >>> print(Progress("panels", 3, 8))
    panels 3 of 8
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, stage: str, done: SupportsIndex, of: SupportsIndex) -> Progress: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, int, int]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def done(self, /) -> int:
        """
        How many of its things are done.
        """
    @property
    def of(self, /) -> int:
        """
        How many there are.
        """
    @property
    def stage(self, /) -> str:
        """
        The stage: roof, sections, panels, lines, clips, trims or order.
        """

@final
class SectionSide:
    """
    A side of a junction's section.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def levels(self, /) -> Levels:
        """
        The layers on the deck.
        """
    @property
    def plane(self, /) -> int:
        """
        Number of the plane in the roof.
        """
    @property
    def rise(self, /) -> Angle:
        """
        The direction of the deck in the section, walking from the first side to the second: positive where it rises.
        """

@final
class SourceCount:
    """
    How many figures rest on what.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def common_practice(self, /) -> int:
        """
        Common practice, no published source.
        """
    @property
    def derived(self, /) -> int:
        """
        Derived, from geometry or from another source.
        """
    @property
    def engineer(self, /) -> int:
        """
        The engineer's.
        """
    @property
    def memory(self, /) -> int:
        """
        Published, from memory: confirm before metal is cut.
        """
    @property
    def secondary(self, /) -> int:
        """
        Published, seen through another document.
        """
    @property
    def text(self, /) -> int:
        """
        Published and seen as text.
        """
    @property
    def user(self, /) -> int:
        """
        The caller's.
        """

@final
class Summary:
    """
    A packet in a few figures.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        True area of the roof.
        """
    @property
    def cautions(self, /) -> int:
        """
        Cautions.
        """
    @property
    def closures(self, /) -> int:
        """
        Closure pieces.
        """
    @property
    def coil(self, /) -> Length:
        """
        Length of the coil.
        """
    @property
    def coil_mass(self, /) -> Mass | None:
        """
        Mass of the coil, where the sheet's is known.
        """
    @property
    def engineered_rows(self, /) -> int:
        """
        Rows of fasteners and clips whose spacing an engineer gave.
        """
    @property
    def lengths(self, /) -> int:
        """
        Different order lengths.
        """
    @property
    def lines(self, /) -> int:
        """
        Lines of the roof.
        """
    @property
    def longest(self, /) -> Length:
        """
        The longest order length.
        """
    @property
    def not_engineered_rows(self, /) -> int:
        """
        Rows whose spacing nobody engineered.
        """
    @property
    def panel_length(self, /) -> Length:
        """
        Order lengths of all panels together.
        """
    @property
    def panels(self, /) -> int:
        """
        Panels as laid.
        """
    @property
    def pieces(self, /) -> int:
        """
        Pieces to form: more than panels where end laps divide them.
        """
    @property
    def planes(self, /) -> int:
        """
        Planes of the roof.
        """
    @property
    def shortest(self, /) -> Length:
        """
        The shortest order length.
        """
    @property
    def sources(self, /) -> SourceCount:
        """
        What the cautions and the rows rest on.
        """
    @property
    def sticks(self, /) -> int:
        """
        Stock lengths of trim to buy.
        """
    @property
    def trims(self, /) -> int:
        """
        Different trims.
        """

@final
class Temperatures:
    """
    The temperatures of the metal.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def coldest(self, /) -> Temperature:
        """
        On the coldest night.
        """
    @property
    def hottest(self, /) -> Temperature:
        """
        On the hottest afternoon.
        """
    @property
    def laid(self, /) -> Temperature:
        """
        When the panels are laid.
        """

@final
class TrimItem:
    """
    A trim as the shop makes it: like trims of the whole roof together.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cutting(self, /) -> CutPlan:
        """
        How its pieces are cut from the lengths that are bought.
        """
    @property
    def flat(self, /) -> Flat:
        """
        Its flat pattern by the job's bend rule.
        """
    @property
    def gap(self, /) -> Length:
        """
        What is left between its pieces where they butt; nothing where they lap.
        """
    @property
    def lap(self, /) -> Length:
        """
        How far its pieces lap; nothing where they butt.
        """
    @property
    def line_mass(self, /) -> LineMass:
        """
        Mass for each length of it.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark: T1, T2 and so on.
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
    @property
    def runs(self, /) -> list[TrimRun]:
        """
        Where it goes.
        """
    @property
    def sheet(self, /) -> Sheet:
        """
        Its sheet.
        """
    @property
    def stock(self, /) -> list[str]:
        """
        Whose lengths ``cutting`` counts, by their labels.
        """
    @property
    def tapered(self, /) -> TaperedPieces | None:
        """
        Where it tapers, its pieces from the lower end of the run up, each with its profiles and its blank; else ``None``.
        """
    @property
    def total(self, /) -> Length:
        """
        The net length of all runs.
        """

@final
class TrimRun:
    """
    One run of a trim along a line.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def line(self, /) -> int | None:
        """
        Number of the line in the roof; ``None`` for what stands on a wall: a coping and its corners.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def pieces(self, /) -> list[Length]:
        """
        The pieces, laps and all, in the order in which they are set.
        """
    @property
    def run(self, /) -> Length:
        """
        What is covered, with what corners add.
        """

@final
class UnderlaymentPlan:
    """
    The underlayment of a roof.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before they are ordered.
        """
    @property
    def eave_rolls(self, /) -> int:
        """
        Whole rolls along eaves.
        """
    @property
    def field_rolls(self, /) -> int:
        """
        Whole rolls for the field of all planes: what is left of one goes on to the next.
        """
    @property
    def planes(self, /) -> list[PlaneUnderlayment]:
        """
        The planes, in the roof's order.
        """
    @property
    def valley_rolls(self, /) -> int:
        """
        Whole rolls under valleys.
        """
    @property
    def valleys(self, /) -> list[ValleyUnderlayment]:
        """
        The valleys, in the roof's order.
        """

@final
class ValleyUnderlayment:
    """
    The membrane under one valley.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def line(self, /) -> int:
        """
        Number of the line in the roof.
        """
    @property
    def name(self, /) -> str:
        """
        Its name.
        """
    @property
    def strip(self, /) -> ValleyStrip:
        """
        The strip.
        """

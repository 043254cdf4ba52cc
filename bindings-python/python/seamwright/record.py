"""What stands beside a number: its source, its cautions, its worksheet."""

from ._start import open_room

open_room("record")
from ._seamwright.record import Caution, Source, Step, Worksheet

__all__ = ["Caution", "Source", "Step", "Worksheet"]

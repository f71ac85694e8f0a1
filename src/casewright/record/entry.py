"""An entry of the record: one thing that was read, done or noted in the shop."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from typing import Literal, TypeAlias, get_args

__all__ = ["HELD_KINDS", "KINDS", "MARKS", "Entry", "Kind", "Order", "Sizes"]

Kind = Literal[
    "reading", "cut", "machined", "assembled", "finished", "hung", "spoiled", "offcut",
    "minutes", "note", "tested", "accepted", "printed", "withdrawn",
]  # fmt: skip
KINDS: tuple[Kind, ...] = get_args(Kind)

MARKS: tuple[Kind, ...] = ("cut", "machined", "assembled", "finished", "hung")
"""How far a piece has come, in the order of making."""

HELD_KINDS: frozenset[Kind] = frozenset(("reading", *MARKS, "spoiled", "offcut", "accepted"))
"""What says how things are now; the others tell of work."""

Order: TypeAlias = tuple[datetime, str, int, str]
Sizes: TypeAlias = tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry. It is never changed; a correction is another entry.

    Parameters
    ----------
    id
        Made by the device that wrote it: the same id is the same entry.
    device
        Who wrote it.
    seq
        The device's own count, from 1; 0 until the record has numbered it.
    at
        When it was written, with its time zone.
    kind
        What it says.
    path
        The number, part, front or case it is about; empty for the job as a whole.
    sizes
        By the name of the number under `path`, sorted [mm]; one size under the empty name is
        that of the number at `path` itself. Of a proposal that was accepted, by the paths of the
        numbers: what pieces are cut to all the same, as they were planned.
    tool
        What was read or made with.
    u
        Standard uncertainty of the sizes (JCGM 100:2008) [mm]; None when not given.
    minutes
        Time spent.
    stock
        Key of the stock of an offcut.
    note
        In words.
    corrects
        Id of the entry in whose place this one stands.
    text
        Of a packet that was printed: a piece of the job file as it was, packed.
    against
        What the sizes are held against, by the same names [mm]: of a piece told as it came out,
        what it was to be; of a number read again with the same tool, what was read before.
    """

    id: str
    device: str
    seq: int
    at: datetime
    kind: Kind
    path: str
    sizes: Sizes = ()
    tool: str = ""
    u: Fraction | None = None
    minutes: Fraction | None = None
    stock: str = ""
    note: str = ""
    corrects: str = ""
    text: str = ""
    against: Sizes = ()

    @property
    def order(self) -> Order:
        """Entries are in the order of this: time, then device, its count, the id."""
        return (self.at, self.device, self.seq, self.id)

    def number_path(self, name: str) -> str:
        """Path of the number that a size is of."""
        if self.kind == "accepted":
            return name
        return f"{self.path}.{name}" if name else self.path

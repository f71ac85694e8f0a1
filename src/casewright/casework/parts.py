"""Parts: one entry for every physical piece."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.features import Cut, Feature, Plane
from casewright.casework.specs import EdgeKind, Hand
from casewright.dims import Dim
from casewright.geometry import Orientation

__all__ = ["EdgeTreatment", "Film", "Part", "PlacedAt", "Size"]


@dataclass(frozen=True, slots=True)
class Size:
    """Length along the grain, width, thickness [mm]."""

    length: Dim
    width: Dim
    thickness: Dim


@dataclass(frozen=True, slots=True)
class EdgeTreatment:
    """What is done to an edge. Its thickness counts in the finished size.

    Parameters
    ----------
    edge
        l0, l1, w0 or w1.
    kind
        band, lip or painted.
    thickness
        Added to the blank [mm]; 0 for a filled and painted edge.
    stock
        Key of the band or the lumber; empty when painted.
    """

    edge: Plane
    kind: EdgeKind
    thickness: Dim
    stock: str


@dataclass(frozen=True, slots=True)
class Film:
    """Film on the inner face of a pane, all its edges as far in from the pane's [mm].

    Parameters
    ----------
    length, width
        Cut to, along the pane's own length and width.
    margin
        From its edges to the pane's.
    """

    length: Dim
    width: Dim
    margin: Dim


@dataclass(frozen=True, slots=True)
class PlacedAt:
    """Where a part lies in its case: its corner (l0, w0, t0) as dims, and its directions."""

    x: Dim
    y: Dim
    z: Dim
    orientation: Orientation


@dataclass(frozen=True, slots=True)
class Part:
    """One physical piece.

    Parameters
    ----------
    path
        Permanent name: `sink.shelf.1`.
    mark
        Short number for labels.
    case
        Key of its case (or run, for fillers).
    role
        What it is, in the trade's word: side, bottom, shelf, stile.
    title
        Role with its position: 'left side', 'shelf 2'.
    hand
        left or right for handed parts, else None. Left parts are measured in a mirrored frame,
        so that both read the same from the datum edge and the datum end.
    stock
        Key of the stock.
    finished
        Size after banding and trimming, before joints take anything off [mm].
    blank
        Size it is cut to [mm].
    grain
        True: the length must run along the sheet's grain.
    ends
        Names of the planes l0, l1, w0, w1 in the trade's words: bottom, top, front, back.
    edges
        Treatments of edges.
    shows
        Planes that show when the case stands in the room.
    features
        Everything machined into it.
    placed
        Where it lies in the case.
    group
        Match group: parts to be cut in one setting, empty for none.
    front
        Path of the door, or of the frame on a finished end, it belongs to; empty for parts of
        the box.
    milled_from
        For strips of thin stock: what they are milled from, in words; else empty.
    state
        planned, cut, machined, assembled, finished, hung.
    waits_for
        Paths of questions that must be answered before it is cut.
    corner_radius
        Radius its four corners are rounded to [mm], or None when they are square.
    film
        What is laid on a pane; None: nothing.
    diagonal
        Lies at 45 degrees across a mitre, its width along it, from the corner that it is placed
        in; drawn straight.
    turned
        Lies in the mouth of a diagonal corner: its place is told in that mouth's axes.
    """

    path: str
    mark: str
    case: str
    role: str
    title: str
    hand: Hand | None
    stock: str
    finished: Size
    blank: Size
    grain: bool
    ends: tuple[str, str, str, str]
    edges: tuple[EdgeTreatment, ...]
    shows: tuple[Plane, ...]
    features: tuple[Feature, ...]
    placed: PlacedAt
    group: str = ""
    front: str = ""
    milled_from: str = ""
    state: Literal["planned", "cut", "machined", "assembled", "finished", "hung"] = "planned"
    waits_for: tuple[str, ...] = ()
    corner_radius: Dim | None = None
    film: Film | None = None
    diagonal: bool = False
    turned: bool = False

    @property
    def clipped(self) -> Fraction:
        """What clips take off its corners, and bevels off its edges on the average [mm2]."""
        cuts = [f for f in self.features if isinstance(f, Cut)]
        clips = sum((c.width.value**2 / 2 for c in cuts if c.kind == "clip"), Fraction(0))
        bevels = sum((c.width.value / 2 for c in cuts if c.kind == "bevel"), Fraction(0))
        return clips + bevels * self.finished.length.value

    def weight(self, density: Fraction) -> Fraction:
        """Weight [kg] of the finished piece at a density [kg/m3], holes not taken off."""
        size = self.finished
        area = size.length.value * size.width.value - self.clipped
        volume = area * size.thickness.value
        return volume * density / 1_000_000_000

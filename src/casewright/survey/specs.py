"""What a job file says of the room: walls, what is on them, corners, and the way in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.dims import Given, Origin
from casewright.survey.readings import TAPE, Accuracy, Reading

__all__ = [
    "NO_SURVEY", "Baseboard", "CornerSpec", "Depth", "FixedKind", "FixedThing", "Hollow",
    "Passage", "PassageKind", "Plumb", "PlumbOf", "Station", "Stud", "SurveySpec", "Swing",
    "TopReading", "Triangle", "WallSpec", "WidthReading", "has_upper_edge", "is_small",
    "stands_on_floor",
]  # fmt: skip

Depth = Literal["back", "front"]
"""At the wall itself, or where the fronts of the cases will be."""

FixedKind = Literal[
    "window", "door", "outlet", "switch", "pipe", "gas", "vent", "soffit", "radiator",
    "chimney", "tub", "shower", "stairs",
    "base case", "wall case", "tall case", "counter", "appliance",
]  # fmt: skip
_SMALL: tuple[FixedKind, ...] = ("outlet", "switch", "pipe", "gas", "vent")


def is_small(kind: FixedKind) -> bool:
    """Whether a thing is small enough for its middle and one height to tell where it is."""
    return kind in _SMALL


_ON_FLOOR: tuple[FixedKind, ...] = (
    "door", "base case", "tall case", "counter", "chimney", "tub", "shower", "stairs",
)  # fmt: skip
_NO_UPPER_EDGE: tuple[FixedKind, ...] = ("counter", "chimney", "soffit", "shower", "stairs")


def stands_on_floor(kind: FixedKind) -> bool:
    """Whether a thing begins at the floor, so that its height is where it ends."""
    return kind in _ON_FLOOR


def has_upper_edge(kind: FixedKind) -> bool:
    """Whether a thing ends at an edge of its own, neither at the ceiling nor in a counter."""
    return kind not in _NO_UPPER_EDGE


PlumbOf = Literal["left", "right", "face"]
"""The wall at the left end, the one at the right end, or the wall itself."""

Swing = Literal["left", "right"]
PassageKind = Literal["door", "stair", "hall"]


@dataclass(frozen=True, slots=True)
class WidthReading:
    """A reading of a wall's width between its two ends.

    Parameters
    ----------
    height
        Above the floor [mm]; None when it is not known.
    depth
        At the back, or where the fronts will be.
    """

    reading: Reading
    height: Fraction | None = None
    depth: Depth = "back"


@dataclass(frozen=True, slots=True)
class Station:
    """Heights read at one place along a wall.

    Parameters
    ----------
    along
        From the wall's left end [mm].
    down, up
        From the level line to the floor and to the ceiling; None: not read.
    whole
        From floor to ceiling in one.
    depth
        At the wall, or where the fronts will be.
    """

    along: Fraction
    down: Reading | None = None
    up: Reading | None = None
    whole: Reading | None = None
    depth: Depth = "back"


@dataclass(frozen=True, slots=True)
class Plumb:
    """How far a wall leans.

    Parameters
    ----------
    of
        Which wall.
    over
        Height it was read over [mm].
    lean
        How much farther into the room its upper end stands; below 0 when it leans away [mm].
    """

    of: PlumbOf
    over: Fraction
    lean: Reading


@dataclass(frozen=True, slots=True)
class Baseboard:
    """The board along the foot of a wall [mm]."""

    height: Given
    thickness: Given


@dataclass(frozen=True, slots=True)
class Stud:
    """A stud that was found.

    Parameters
    ----------
    middle
        From the wall's left end to its middle.
    probed
        Hit by a thin nail, not only heard.
    """

    middle: Reading
    probed: bool = False


@dataclass(frozen=True, slots=True)
class Hollow:
    """How far the wall lies behind a straight edge laid along it.

    Parameters
    ----------
    along
        From the wall's left end [mm].
    height
        Of the straight edge above the floor [mm].
    off
        From the edge, or a string, back to the wall; nothing where it touches.
    """

    along: Fraction
    height: Fraction
    off: Reading


@dataclass(frozen=True, slots=True)
class TopReading:
    """Height of the top of what stands there, read at one place.

    Parameters
    ----------
    along
        From the wall's left end [mm].
    down
        From the level line to the top.
    """

    along: Fraction
    down: Reading


@dataclass(frozen=True, slots=True)
class FixedThing:
    """What is on a wall already, or soon, and stays.

    Parameters
    ----------
    left, right
        From the wall's ends to its edges, casing included; `left` from the right edge of
        `after` where that is named.
    centre
        From the wall's left end to its middle.
    width, height
        Its own.
    bottom, top
        Above the floor.
    out
        How far it stands out from the wall [mm].
    swing
        Side of a door's hinges, seen from the room, when it opens into the room.
    built
        False for what will stand there but does not yet.
    tops
        Heights of a counter.
    """

    key: str
    title: str
    kind: FixedKind
    left: Reading | None = None
    width: Reading | None = None
    right: Reading | None = None
    centre: Reading | None = None
    bottom: Reading | None = None
    height: Reading | None = None
    top: Reading | None = None
    out: Given | None = None
    swing: Swing | None = None
    after: str | None = None
    built: bool = True
    tops: tuple[TopReading, ...] = ()


@dataclass(frozen=True, slots=True)
class WallSpec:
    """A wall as read, from its left end to its right end as one stands before it.

    Parameters
    ----------
    read_at
        By its name at the wall, where in the file each place stands that something was read at.
    """

    key: str
    title: str
    widths: tuple[WidthReading, ...] = ()
    stations: tuple[Station, ...] = ()
    plumbs: tuple[Plumb, ...] = ()
    studs: tuple[Stud, ...] = ()
    things: tuple[FixedThing, ...] = ()
    baseboard: Baseboard | None = None
    where: str = ""
    hollows: tuple[Hollow, ...] = ()
    read_at: Mapping[str, Origin] = field(default_factory=dict, compare=False)

    def thing(self, key: str) -> FixedThing:
        """The fixed thing of that name.

        Raises
        ------
        KeyError
            When there is none: the job file's checks refuse that first.
        """
        return {each.key: each for each in self.things}[key]


@dataclass(frozen=True, slots=True)
class Triangle:
    """Marks along two walls and the distance between them: three, four and five, say."""

    left: Reading
    right: Reading
    across: Reading


@dataclass(frozen=True, slots=True)
class CornerSpec:
    """Where two walls meet.

    Parameters
    ----------
    left, right
        Keys of the walls to the left and to the right of the corner, seen from the room.
    triangle
        Small, laid out in the corner.
    diagonal
        From the far end of the one wall to the far end of the other.
    outside
        True where the corner stands out into the room.
    """

    key: str
    title: str
    left: str
    right: str
    triangle: Triangle | None = None
    diagonal: Reading | None = None
    outside: bool = False
    where: str = ""


@dataclass(frozen=True, slots=True)
class Passage:
    """One place on the way from the shop into the room.

    Parameters
    ----------
    width, height
        Clear, at the narrowest and lowest.
    landing
        Of a stair's turn: clear length to turn in; None where there is none.
    """

    key: str
    title: str
    kind: PassageKind
    width: Reading
    height: Reading
    landing: Reading | None = None


@dataclass(frozen=True, slots=True)
class SurveySpec:
    """The room as measured.

    Parameters
    ----------
    next_accuracy
        Of the tool that a further reading would be taken with: the tape.
    """

    walls: tuple[WallSpec, ...] = ()
    corners: tuple[CornerSpec, ...] = ()
    way_in: tuple[Passage, ...] = ()
    next_accuracy: Accuracy = TAPE

    def wall(self, key: str) -> WallSpec | None:
        """The wall of that name, or None."""
        return next((wall for wall in self.walls if wall.key == key), None)


NO_SURVEY = SurveySpec()

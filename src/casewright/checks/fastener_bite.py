"""Brads and screws driven straight: where their points end.

A fastener goes square to the joint: through the first piece, less whatever a dado or rabbet has
taken away, then into the second. A point that comes out of a face that shows spoils the piece;
one that comes out at all can hurt a hand. One that goes less deep than the thickness of what it
holds hardly holds it; the screws of a drawer's front, which carry only its pull, of a lid that is
fixed, and of a pad or a flush end that is glued as well, want 10 mm of it. Pocket screws go in
slanted: 'pocket screw length' looks at them.

Passes
------
A 7/32 back nailed into the rabbets of the sides with 3/4 brads.

Fails
-----
The same back nailed with 1/4 brads; a face strip 3/16 thick nailed with 1 1/4 brads to a door
5/8 thick.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Fastening, Joint, Surface
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Told, greatest, least, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room

__all__ = ["RULE", "Drive", "drive_of"]

_NAME = "fastener bite"

_STRAIGHT = ("brad", "staple", "case screw", "front screw")
_FRONT_BITE = Limit("fastener_bite.front", "", "10", "what a washer-head screw wants of a front")
_HELD_LIGHTLY = ("flush end", "lid", "blind filler", "blind stile")
_OPPOSITE: Mapping[Plane, Plane] = {
    "l0": "l1", "l1": "l0", "w0": "w1", "w1": "w0", "t0": "t1", "t1": "t0",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Drive:
    """How a straight fastener lies in its joint.

    Parameters
    ----------
    through
        Wood it passes before the joint [mm].
    bite
        How far it goes in behind the joint [mm]; under 0 when it does not get there.
    room
        Wood behind the joint in its direction [mm].
    exit
        Plane of the second piece its point moves toward.
    """

    through: Fraction
    bite: Fraction
    room: Fraction
    exit: Plane


def drive_of(joint: Joint, fastening: Fastening, parts: Mapping[str, Part]) -> Drive | None:
    """Where a straight fastener's point ends; None when it is no straight one."""
    if fastening.kind not in _STRAIGHT or fastening.length is None:
        return None
    ends = {joint.one.part: joint.one, joint.other.part: joint.other}
    into, last = ends[fastening.into], ends[fastening.through[-1]]
    through = _wood(parts[last.part], last).value
    for path in fastening.through[:-1]:
        through += parts[path].finished.thickness.value
    exit_plane = into.plane if into.cut else _OPPOSITE[into.plane]
    bite = fastening.length.value - through - joint.gap.value
    return Drive(through, bite, _wood(parts[into.part], into).value, exit_plane)


def _wood(part: Part, surface: Surface) -> Dim:
    """Wood behind a surface, square to it [mm]."""
    size = part.finished
    axis = surface.plane[0]
    whole = {"l": size.length, "w": size.width, "t": size.thickness}[axis]
    cut = next((f for f in part.features if f.path == surface.cut), None)
    if not isinstance(cut, Cut):
        return whole
    if axis == "t":
        return whole - cut.depth
    near = cut.at if cut.datum == surface.plane else cut.at + cut.width
    return near if cut.datum == surface.plane else whole - near


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        alike: dict[tuple[object, ...], list[_Driven]] = {}
        for joint in case.joints:
            for fastening in joint.fastenings:
                drive = drive_of(joint, fastening, parts)
                if drive is not None:
                    driven = _Driven(fastening, joint, parts, drive)
                    alike.setdefault(driven.kin, []).append(driven)
        for group in alike.values():
            yield from _judge(room, group[0], len(group) - 1)


@dataclass(frozen=True, slots=True)
class _Driven:
    fastening: Fastening
    joint: Joint
    parts: Mapping[str, Part]
    drive: Drive

    @property
    def held(self) -> Part:
        """What it holds."""
        return self.parts[self.fastening.through[-1]]

    @property
    def into(self) -> Part:
        """What it goes into."""
        return self.parts[self.fastening.into]

    @property
    def sizes(self) -> tuple[Dim, Dim, Dim]:
        """What it goes through, how deep into what is behind, how thick that is there [mm]."""
        joint, fastening = self.joint, self.fastening
        ends = {joint.one.part: joint.one, joint.other.part: joint.other}
        paths = fastening.through[:-1]
        through = _wood(self.held, ends[self.held.path])
        if paths:
            through = total(through, *(self.parts[path].finished.thickness for path in paths))
        size = fastening.length or through  # what has none is not looked at
        room = _wood(self.into, ends[self.into.path])
        return through, size - through - joint.gap, room

    @property
    def shows(self) -> bool:
        return self.drive.exit in self.into.shows

    @property
    def kin(self) -> tuple[object, ...]:
        """What those have in common that need to be told of only once."""
        return self.fastening.kind, self.held.role, self.into.role, self.drive, self.shows


def _judge(room: Room, driven: _Driven, more: int) -> Iterator[Breach]:
    drive = driven.drive
    comes_out = drive.bite >= drive.room
    if comes_out or drive.bite < _least_bite(driven):
        kind = driven.fastening.kind.replace(" ", "_")
        own = reckoning(room, _NAME, f"{driven.joint.path}.{kind}")
        through, bite, behind = driven.sizes
        deep = own.let("through", through), own.let("bite", bite), own.let("room", behind)
        name = driven.fastening.kind
        what = tell("{} {}", own.length(driven.fastening.length or bite), name)
        others = f" (and {more} like it)" if more else ""
        yield (_out if comes_out else _short)(own, driven, deep, (what, others))


_Depths = tuple[Dim, Dim, Dim]
"""What it goes through, how deep it goes in behind that, and how thick that is [mm]."""


def _out(own: Reckoning, driven: _Driven, sizes: _Depths, words: tuple[Told, str]) -> Breach:
    """A point that comes out."""
    (through, bite, behind), (kind, others) = sizes, words
    held, into, name = driven.held, driven.into, driven.fastening.kind
    deep, wood = own.length(bite), own.thickness(behind)
    return Breach(
        into.path,
        tell(
            "a {} through the {} of {}{} comes out of the {}{}: {} into {} of wood",
            kind, held.title, held.case, others, into.title,
            " on a face that shows" if driven.shows else "", deep, wood,
        ),
        measured=deep.text,
        limit=wood.text,
        remedies=(
            tell("a {} shorter than {}", name, own.length(through + behind, "most")),
            "glue and clamps, no metal",
        ),
        severity=Severity.STOP if driven.shows else Severity.CARE,
        own=own,
    )  # fmt: skip


def _short(own: Reckoning, driven: _Driven, sizes: _Depths, words: tuple[Told, str]) -> Breach:
    """A point that hardly holds."""
    (through, bite, behind), (kind, others) = sizes, words
    held, into, name = driven.held, driven.into, driven.fastening.kind
    wants = through if not _is_light(driven) else least(through, own.limit(_FRONT_BITE))
    asked = own.thickness(wants, "least_bite")
    shortest, longest = own.let("shortest", through + wants), own.let("longest", through + behind)
    longer = tell("a {} of {} or more, under {}", name, own.length(shortest), own.length(longest))
    ways = (longer,) if shortest.value < longest.value else ()
    return Breach(
        held.path,
        tell(
            "a {} through {} of the {} of {}{} goes only {} into the {}; it should go in at "
            "least {}",
            kind, own.thickness(through), held.title, held.case, others,
            own.length(greatest(bite, own.none), "goes_in"), into.title, asked,
        ),
        measured=own.length(bite).text,
        limit=asked.text,
        remedies=(*ways, "glue and clamps until it is dry"),
        own=own,
    )  # fmt: skip


def _least_bite(driven: _Driven) -> Fraction:
    """How deep it should go: as far as it comes through, or less where it carries little [mm]."""
    through = driven.drive.through
    return min(through, _FRONT_BITE.of("mm")) if _is_light(driven) else through


def _is_light(driven: _Driven) -> bool:
    """Whether it carries little.

    A front's screws carry only a pull, a lid's or a filler's hold it down; those of a pad or
    behind a flush end clamp it until its glue is dry.
    """
    glued = driven.held.role == "pad" or driven.into.role in _HELD_LIGHTLY
    clamps = driven.held.role == "cleat" or driven.into.role == "end skin"
    return driven.fastening.kind == "front screw" or glued or clamps


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

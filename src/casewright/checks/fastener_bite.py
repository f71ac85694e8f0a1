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
from casewright.checks.words import length, thickness
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE", "Drive", "drive_of"]

_STRAIGHT = ("brad", "staple", "case screw", "front screw")
_FRONT_BITE = Fraction(10)
"""What a washer-head screw wants of a front's wood [mm]."""
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
    through = _wood(parts[last.part], last)
    for path in fastening.through[:-1]:
        through += parts[path].finished.thickness.value
    exit_plane = into.plane if into.cut else _OPPOSITE[into.plane]
    bite = fastening.length.value - through - joint.gap.value
    return Drive(through, bite, _wood(parts[into.part], into), exit_plane)


def _wood(part: Part, surface: Surface) -> Fraction:
    """Wood behind a surface, square to it [mm]."""
    size = part.finished
    axis = surface.plane[0]
    whole = {"l": size.length, "w": size.width, "t": size.thickness}[axis].value
    cut = next((f for f in part.features if f.path == surface.cut), None)
    if not isinstance(cut, Cut):
        return whole
    if axis == "t":
        return whole - cut.depth.value
    near = cut.at.value if cut.datum == surface.plane else cut.at.value + cut.width.value
    return near if cut.datum == surface.plane else whole - near


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        alike: dict[tuple[object, ...], list[_Driven]] = {}
        for joint in case.joints:
            for fastening in joint.fastenings:
                drive = drive_of(joint, fastening, parts)
                if drive is not None:
                    last = fastening.through[-1]
                    driven = _Driven(fastening, parts[last], parts[fastening.into], drive)
                    alike.setdefault(driven.kin, []).append(driven)
        for group in alike.values():
            yield from _judge(room, group[0], len(group) - 1)


@dataclass(frozen=True, slots=True)
class _Driven:
    fastening: Fastening
    held: Part
    into: Part
    drive: Drive

    @property
    def shows(self) -> bool:
        return self.drive.exit in self.into.shows

    @property
    def kin(self) -> tuple[object, ...]:
        """What those have in common that need to be told of only once."""
        return self.fastening.kind, self.held.role, self.into.role, self.drive, self.shows


def _judge(room: Room, driven: _Driven, more: int) -> Iterator[Breach]:
    drive, held, into = driven.drive, driven.held, driven.into
    name = driven.fastening.kind
    size = driven.fastening.length
    kind = f"{length(room, size.value if size else drive.through + drive.bite)} {name}"
    others = f" (and {more} like it)" if more else ""
    if drive.bite >= drive.room:
        yield Breach(
            into.path,
            f"a {kind} through the {held.title} of {held.case}{others} comes out of the "
            f"{into.title}{' on a face that shows' if driven.shows else ''}: "
            f"{length(room, drive.bite)} into {thickness(room, drive.room)} of wood",
            measured=length(room, drive.bite),
            limit=thickness(room, drive.room),
            remedies=(
                f"a {name} shorter than {length(room, drive.through + drive.room)}",
                "glue and clamps, no metal",
            ),
            severity=Severity.STOP if driven.shows else Severity.CARE,
        )
    elif drive.bite < _least_bite(driven):
        yield Breach(
            held.path,
            f"a {kind} through {thickness(room, drive.through)} of the {held.title} of "
            f"{held.case}{others} goes only {length(room, max(drive.bite, Fraction(0)))} into "
            f"the {into.title}; it should go in at least {thickness(room, _least_bite(driven))}",
            measured=length(room, drive.bite),
            limit=thickness(room, _least_bite(driven)),
            remedies=(*_longer(room, driven), "glue and clamps until it is dry"),
        )


def _longer(room: Room, driven: _Driven) -> tuple[str, ...]:
    """From how long on it bites enough, where that stays inside."""
    drive, name = driven.drive, driven.fastening.kind
    least, most = (drive.through + bite for bite in (_least_bite(driven), drive.room))
    if least >= most:
        return ()
    return (f"a {name} of {length(room, least)} or more, under {length(room, most)}",)


def _least_bite(driven: _Driven) -> Fraction:
    """How deep it should go: as far as it comes through.

    A front's screws carry only a pull, a lid's or a filler's hold it down; those of a pad or
    behind a flush end clamp it until its glue is dry.
    """
    through = driven.drive.through
    glued = driven.held.role == "pad" or driven.into.role in _HELD_LIGHTLY
    light = driven.fastening.kind == "front screw" or glued
    clamps = driven.held.role == "cleat" or driven.into.role == "end skin"
    return min(through, _FRONT_BITE) if light or clamps else through


RULE = Rule("fastener bite", Severity.CARE, __doc__ or "", "common practice", _examine)

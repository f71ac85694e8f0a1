"""Hinges and slides that are in each other's way, or in the way of a board or of a drawer.

A hinge takes more room than its cup: plate and arm stand on the side, about 70 mm back from the
door, 60 mm high and 20 mm into the case. A slide beside its box is 45 mm high over its whole
length; one under its box takes the room below that its sheet asks for. Where two of these, or
one of them and a board or a drawer's box, want the same room, neither can be screwed on. Shelves
beside hinges have a rule of their own, 'hinge beside shelf', and the holes of all of them are
proved apart when the case is built.

Passes
------
A base with two roll-outs behind a pair of doors, their slides clear of the hinges.

Fails
-----
The same with a hinge at the height of a slide.

Sources
-------
`common practice`: bodies of usual hinges and slides, from memory; air, length and line by the
sheet of the slides in hand. Bodies are taken as boxes.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations
from typing import NamedTuple

from casewright.casework.cases import Case, Door, Drawer
from casewright.casework.parts import Part
from casewright.checks.rods import outer_box
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, tell
from casewright.findings import Severity
from casewright.geometry import Box
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "hardware meets"
_BODIES = Origin(
    "solved", "height that both take up: bodies of hinges and slides by usual sizes, as boxes",
    "common practice",
)  # fmt: skip

_BACK, _UP, _IN = Fraction(70), Fraction(30), Fraction(20)
"""Of a hinge: back from its door, up and down from its middle, into the case [mm]."""
_SLIDE = Fraction(45, 2)
"""Half the height of a slide beside its box [mm]."""
_CARRIES = ("side", "pad", "back")


class _Body(NamedTuple):
    """What a piece of hardware takes up, in case axes [mm], and what its height follows."""

    path: str
    title: str
    box: Box
    rests_on: tuple[Dim, ...]


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        if not case.drawers:
            continue
        carriers = {f.path: part for part in case.parts for f in part.features}
        hinges = [body for door in case.doors for body in _hinges(door, carriers)]
        slides = [body for each in case.drawers for body in _slides(room, each, carriers)]
        boxes = [_Body(each.path, f"the box of {each.title}", _box(each), (each.y, each.height))
                 for each in case.drawers]  # fmt: skip
        yield from _meet(room, case, hinges, slides + boxes)
        for one, other in combinations(slides, 2):
            yield from _meet(room, case, [one], [other])
        yield from _meet(room, case, slides, list(_boards(case)))


def _meet(room: Room, case: Case, some: list[_Body], others: list[_Body]) -> Iterator[Breach]:
    told: set[tuple[str, str]] = set()
    for one in some:
        for other in others:
            if (one.path, other.path) in told or not one.box.meets(other.box):
                continue
            told.add((one.path, other.path))
            low = max(one.box.y0, other.box.y0)
            deep = Fraction(min(one.box.y1, other.box.y1) - low)
            own = reckoning(room, _NAME, f"{one.path}.{other.path}")
            rests_on = (*one.rests_on, *other.rests_on)
            high = own.length(own.worked("height", deep, _BODIES, *rests_on))
            yield Breach(
                one.path,
                tell(
                    "in {}, {} and {} want the same room, over {} of height",
                    case.spec.title,
                    one.title,
                    other.title,
                    high,
                ),
                measured=high.text,
                remedies=(
                    tell("move one of them {}: other rows, or fewer roll_outs", high),
                    "hardware that takes less room, its numbers under [hardware]",
                ),
                own=own,
            )


def _hinges(door: Door, carriers: dict[str, Part]) -> Iterator[_Body]:
    face = door.z.value
    for hinge in door.hinges:
        carrier = carriers.get(hinge.plate)
        if carrier is None:
            continue
        box, at = outer_box(carrier), hinge.height.value
        x = box.x1 if door.hinge_side == "left" else box.x0 - _IN
        body = Box(x, x + _IN, at - _UP, at + _UP, face - _BACK, face)
        yield _Body(hinge.path, f"a hinge of the {door.title}", body, (hinge.height,))


def _slides(room: Room, drawer: Drawer, carriers: dict[str, Part]) -> Iterator[_Body]:
    under = drawer.slides == "undermount"
    hardware = room.spec.hardware
    sheet = hardware.undermount if under else hardware.slide
    low, z = drawer.y.value, drawer.z.value
    line = low + sheet.line.value
    below, above = (low - sheet.below.value, low) if under else (line - _SLIDE, line + _SLIDE)
    left, right = (carriers.get(path) for path in drawer.bores)
    if left is None or right is None:
        return
    near, far = drawer.x.value, drawer.x.value + drawer.width.value
    sides = (("left", outer_box(left).x1, near), ("right", far, outer_box(right).x0))
    for hand, start, end in sides:
        if start < end:
            body = Box(start, end, below, above, z, z + drawer.depth.value)
            title = f"the {hand} slide of {drawer.title}"
            yield _Body(f"{drawer.path}.slide_{hand}", title, body, (drawer.y,))


def _box(drawer: Drawer) -> Box:
    x, y, z = drawer.x.value, drawer.y.value, drawer.z.value
    return Box(
        x, x + drawer.width.value, y, y + drawer.height.value, z, z + drawer.depth.value
    )  # fmt: skip


def _boards(case: Case) -> Iterator[_Body]:
    """Parts of the box that carry no slides."""
    for part in case.parts:
        if not part.front and not any(part.role.endswith(each) for each in _CARRIES):
            yield _Body(part.path, f"the {part.title}", outer_box(part), (part.placed.y,))


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)

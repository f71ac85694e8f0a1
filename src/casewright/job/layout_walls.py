"""What is on a wall already, as a layout of its runs has to know it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.layout.tasks import KeepClear
from casewright.room.model import Room, Run
from casewright.room.on_walls import thing_edges
from casewright.survey.specs import is_small

__all__ = ["StandsIn", "kept_clear", "parted", "standing_in"]

_AROUND = Fraction(50)
"""On either side of a thing of which only the middle is known [mm]."""


@dataclass(frozen=True, slots=True)
class StandsIn:
    """A thing on the wall where the cases of a run would stand or hang.

    Parameters
    ----------
    key, title
        Its name, in the file and in words.
    left, right
        From the wall's left end [mm].
    """

    key: str
    title: str
    left: Fraction
    right: Fraction


_Met = tuple[StandsIn, bool]


def _things(room: Room, run: Run) -> Iterator[_Met]:
    """What lies behind a run or in its way, and whether it is small enough for a case to hide.

    Where one case is higher than another, the lowest counts: what stands before which of them is
    seen once they have their places.
    """
    wall = room.survey.walls.get(run.spec.on)
    if wall is None:
        return
    low = run.lift.value
    high = min(low + case.height.value for case in run.cases)
    begins = run.begins.value
    ends = begins + room.chain.nodes[f"run.{run.spec.key}.wall"].value
    for thing in wall.things:
        edges = thing_edges(room, thing)
        if edges is None or thing.spec.key in (run.spec.after, run.spec.before):
            continue
        left, right, bottom, top = edges
        if bottom < high and low < top and left < ends and begins < right:
            spec = thing.spec
            yield StandsIn(spec.key, spec.title, left, right), is_small(spec.kind)


def kept_clear(room: Room, run: Run, step: Fraction) -> Iterator[KeepClear]:
    """Pipes, outlets and vents behind a run: a side of a case there would have to be cut out.

    Each is as wide as it was read, or as an outlet where only its middle is known, and a side's
    thickness more on either hand.
    """
    wall = room.survey.walls.get(run.spec.on)
    if wall is None:
        return
    begins = run.begins.value
    side = max(room.chain.nodes[f"stock.{case.spec.box_stock}.thickness"].value
               for case in run.cases)  # fmt: skip
    for thing, is_hidden in _things(room, run):
        if is_hidden:
            around = side + (_AROUND if thing.left == thing.right else 0)
            low, high = thing.left - around - begins, thing.right + around - begins
            yield KeepClear(thing.title, int(low // step), int(-(-high // step)))


def parted(room: Room, run: Run, thing: StandsIn) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Keys of what stands left and right of a thing, where a run is parted at it.

    So that cases whose width is open come out as alike as can be on either side; nothing on one of
    them where no case is left for it.
    """
    begins = run.begins.value
    ends = begins + room.chain.nodes[f"run.{run.spec.key}.wall"].value
    widths = {each.spec.key: each.width.value for each in run.appliances}
    for case in run.cases:
        given = None if case.key in run.spec.solved else case.spec.width
        widths[case.key] = Fraction(-1) if given is None else given.value
    places = run.spec.places

    def share(keys: tuple[str, ...], free: Fraction) -> Fraction:
        taken = sum((widths[key] for key in keys if widths[key] >= 0), Fraction(0))
        return (free - taken) / max(sum(widths[key] < 0 for key in keys), 1)

    def apart(n: int) -> Fraction:
        left, right = share(places[:n], thing.left - begins), share(places[n:], ends - thing.right)
        return abs(left - right)

    best = min(range(1, len(places)), key=apart, default=len(places))
    return places[:best], places[best:]


def standing_in(room: Room, run: Run) -> Iterator[StandsIn]:
    """Windows, doors, what stands out from the wall: no case goes there."""
    for thing, is_hidden in _things(room, run):
        if not is_hidden:
            yield thing

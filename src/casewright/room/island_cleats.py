"""Floor cleats of an island: inside its ladders, screwed to the floor, the ladders to them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.dims import Dim, Way
from casewright.room.model import Run

__all__ = ["Ladder", "add_cleats", "ladders"]


@dataclass(frozen=True, slots=True)
class Ladder:
    """A ladder of a run, its sleepers from the left.

    Parameters
    ----------
    start
        Its own left end from the run's left datum [mm].
    rails, sleepers
        In axes of its own.
    """

    start: Dim
    rails: tuple[Part, ...]
    sleepers: tuple[Part, ...]


def ladders(run: Run) -> Iterator[Ladder]:
    """Those that several of its cases share, and those that cases bring along."""
    carried = {key for plinth in run.plinths for key in plinth.carries}
    for plinth in run.plinths:
        yield _ladder(plinth.start, plinth.case.parts)
    for case, start in zip(run.cases, run.starts, strict=True):
        own = [part for part in case.parts if part.group == "plinth"]
        if case.key not in carried and own:
            left = start + case.left_frame if case.left_frame.value else start
            yield _ladder(left, own)


def _ladder(start: Dim, parts: Sequence[Part]) -> Ladder:
    rails = [part for part in parts if part.role == "plinth rail"]
    sleepers = [part for part in parts if part.role == "sleeper"]
    return Ladder(
        start,
        tuple(sorted(rails, key=lambda part: part.placed.z.value)),
        tuple(sorted(sleepers, key=lambda part: part.placed.x.value)),
    )


def add_cleats(maker: Maker, runs: tuple[Run, Run | None], at: tuple[Dim, Dim, Dim]) -> None:
    """A cleat beside each end sleeper of every ladder, between its rails.

    Parameters
    ----------
    runs
        The front, and what stands behind it with its back to that.
    at
        Thickness of the left end panel, depth of what stands behind the boxes of the front, and
        length of the boxes [mm].
    """
    number = 0
    for run in runs:
        if run is None:
            continue
        for ladder in ladders(run):
            for first in (True, False):
                number += 1
                _cleat(maker, f"cleat.{number}", ladder, (run is runs[0], first), at)


def _cleat(
    maker: Maker, name: str, ladder: Ladder, which: tuple[bool, bool], at: tuple[Dim, Dim, Dim]
) -> None:
    front, first = which
    end, behind, length = at
    sleeper = ladder.sleepers[0 if first else -1]
    play = maker.style("floor_cleat_play")
    outline = maker.outline(
        name, maker.spec.strip_stock, sleeper.finished.length - 2 * play,
        maker.style("floor_cleat"), setting=f"{maker.spec.key} cleats", way=Way.NEAREST,
        length_way=Way.DOWN,
    )  # fmt: skip
    low, high = extent(sleeper, 0)
    face = high if first else low
    along = ladder.start + face if face.value else ladder.start
    rear = extent(ladder.rails[0], 2)[1] + play
    # A row behind faces the other way: its left is the island's right, its rear the middle.
    left = first == front
    x = end + along if front else end + length - along
    z = behind + rear if front else behind - rear - outline.length
    lies = "+z +y -x" if not left else "-z +y +x"
    corner = z if not left else z + outline.length
    part = maker.add(
        outline, role="floor cleat", title=f"floor cleat {name.rpartition('.')[2]}", lies=lies,
        at=(x, maker.zero, corner), ends=("back", "front", "bottom", "top") if not left
        else ("front", "back", "bottom", "top"), group="cleats",
    )  # fmt: skip
    maker.step(
        "fit", part.path, "-y",
        f"Mark the inside of the {'first' if first else 'last'} sleeper on the floor where the "
        f"{'front' if front else 'back'} ladder is to stand; screw {part.title} to the floor "
        "along that line, clear of what runs in it. Set the ladder over the cleats, shim it "
        "level, and drive its end sleepers' screws into them.",
        cautions=("island_floor", "island_tips"),
    )  # fmt: skip
    air = maker.place.let(
        f"{name.replace('.', '_')}_air", sleeper.finished.length - outline.length
    )
    step = maker.style("cut_step").value
    maker.place.fit(
        f"{name.replace('.', '_')}_fit", air, play.value, 3 * play.value + 2 * step, part.path
    )

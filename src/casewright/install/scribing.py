"""What is scribed off a filler: how far the wall stands from the case at each height."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.room.fillers import GAP_HEIGHTS
from casewright.room.model import Filler, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["ScribePoint", "ScribeProfile", "scribe_profiles"]


@dataclass(frozen=True, slots=True)
class ScribePoint:
    """One height of a profile.

    Parameters
    ----------
    above_floor
        From the highest floor [mm].
    gap
        From the case to the wall: what is left of the filler there [mm].
    off
        What is scribed off its face there [mm].
    """

    above_floor: Dim
    gap: Dim
    off: Dim


@dataclass(frozen=True, slots=True)
class ScribeProfile:
    """The edge of a filler at the wall.

    Parameters
    ----------
    points
        Foot, middle and head, from below: straight from one to the next, until the compasses
        have drawn the rest.
    largest
        Between wall and filler, held upright and touching the wall: at the widest place [mm].
    compasses
        What they are set to then: by so much the filler's other edge lies over the case [mm].
    """

    run: Run
    filler: Filler
    points: tuple[ScribePoint, ...]
    largest: Dim
    compasses: Dim


def scribe_profiles(numbers: Numbers, wall: SurveyedWall) -> tuple[ScribeProfile, ...]:
    """A profile for each filler that meets a wall, in the order of the job.

    In a corner a filler closes a straight gap between two runs: nothing is scribed there.
    """
    return tuple(
        _profile(numbers, wall, run, filler)
        for run in numbers.room.runs
        if run.spec.on == wall.spec.key
        for filler in run.fillers
        if not filler.beyond.value
    )


def _profile(numbers: Numbers, wall: SurveyedWall, run: Run, filler: Filler) -> ScribeProfile:
    place = numbers.wall(wall.spec.key).at(run.spec.key).at(f"scribe_{filler.side}")
    nodes = numbers.room.chain.nodes
    widest, narrowest = (nodes[f"{filler.path}.{name}_gap"] for name in ("widest", "narrowest"))
    return ScribeProfile(
        run,
        filler,
        tuple(_points(filler, place.path, numbers)),
        place.let("largest", widest - narrowest),
        place.let("compasses", filler.part.finished.width - narrowest),
    )


def _points(filler: Filler, path: str, numbers: Numbers) -> Iterator[ScribePoint]:
    place = numbers.chain.place(path)
    face = filler.part
    length, foot = face.finished.length, face.placed.y
    heights = (foot, foot + length / 2, foot + length)
    for name, height, gap in zip(GAP_HEIGHTS, heights, filler.gaps, strict=True):
        yield ScribePoint(
            place.let(f"height_{name}", height),
            gap,
            place.let(f"off_{name}", face.finished.width - gap),
        )

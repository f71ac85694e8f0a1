"""Places on the floor, worked out on the chain: islands, and cases that are in no run."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Dim, Place, greatest
from casewright.room.floor_spec import FloorPlace, FloorSide
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room, Run
from casewright.room.specs import JobSpec
from casewright.survey.readings import enter_reading
from casewright.survey.survey import Survey
from casewright.survey.walls import SurveyedWall

__all__ = ["counter_over", "free_stands", "middle_of", "run_edge"]


class _Outline(NamedTuple):
    """What stands there, in axes of its own [mm].

    Parameters
    ----------
    width, depth
        Of its body.
    front, back, end
        How far its counter stands out beyond that, at each end alike.
    """

    width: Dim
    depth: Dim
    front: Dim
    back: Dim
    end: Dim


def free_stands(
    house: House,
    spec: JobSpec,
    cases: Mapping[str, Case],
    runs: Sequence[Run],
    measured: Survey,
) -> tuple[FreeStand, ...]:
    """Every island and every loose case whose place is known, in the order of the job.

    Parameters
    ----------
    cases
        By key, those of islands among them.
    """
    return tuple(
        _stand(house, each, cases[each.of], runs, wall)
        for each in spec.floor_places
        if each.is_known and (wall := measured.walls.get(each.wall)) is not None
    )


def counter_over(house: House, case: Case) -> Dim | None:
    """How far a counter stands out before the fronts of a case [mm]; None: it has none."""
    has_one = case.spec.kind == "base" and case.spec.lid is None
    return house.style_dim("island_front_overhang") if has_one else None


def run_edge(house: House, place: Place, run: Run) -> Dim:
    """How far a run reaches out from its wall at its deepest, doors and counters included [mm]."""
    reach = []
    for case in run.cases:
        over = counter_over(house, case)
        reach.append(case.overall_depth if over is None else case.overall_depth + over)
    return place.let("run_edge", greatest(*reach))


def _stand(
    house: House, spec: FloorPlace, case: Case, runs: Sequence[Run], wall: SurveyedWall
) -> FreeStand:
    place = house.chain.place(f"{spec.of}.place")
    run = next((each for each in runs if each.spec.key == spec.run), None)
    outline = _outline(house, place, case)
    side: FloorSide = spec.side or "front"
    width, depth = outline.width, outline.depth
    long, deep = (depth, width) if side in ("left", "right") else (width, depth)
    before, behind, at_left, at_right = _overs(outline, side)
    if spec.off is None:
        msg = f"how far off {spec.of} stands is not known"
        raise ValueError(msg)  # `is_known` was asked first
    off = place.given("off", spec.off)
    near = place.let(
        "counter_near", run_edge(house, place, run) + off if run else off + house.zero
    )
    body_near = place.let("near", near + before)
    body_far = place.let("far", body_near + deep)
    left = place.let("counter_left", _along(house, place, spec, runs, wall,
                                            at_left + long + at_right))  # fmt: skip
    body_left = place.let("left", left + at_left)
    body_right = place.let("right", body_left + long)
    edges = (left, place.let("counter_right", body_right + at_right), near,
             place.let("counter_far", body_far + behind))  # fmt: skip
    return FreeStand(
        spec.of, case.spec.title, wall.spec.key, side, body_left, body_right, body_near, body_far,
        edges, tuple(_shims(place, spec)),
    )  # fmt: skip


def _outline(house: House, place: Place, case: Case) -> _Outline:
    """Body and counter of an island; of a case its box and its fronts."""
    nodes, zero = house.chain.nodes, house.zero
    if case.spec.kind != "island":
        return _Outline(case.overall_width, case.face_plane,
                        case.overall_depth - case.face_plane, zero, zero)  # fmt: skip
    long, deep = (nodes[f"{case.key}.counter_{name}"] for name in ("length", "depth"))
    front = nodes[f"{case.key}.front_doors"] + house.style_dim("island_front_overhang")
    return _Outline(
        case.width, case.depth, place.let("over_front", front),
        place.let("over_back", deep - case.depth - front),
        place.let("over_end", (long - case.width) / 2),
    )  # fmt: skip


def _overs(outline: _Outline, side: FloorSide) -> tuple[Dim, Dim, Dim, Dim]:
    """How far the counter stands out: to the wall, away from it, to the left, to the right."""
    front, back, end = outline.front, outline.back, outline.end
    ways: Mapping[FloorSide, tuple[Dim, Dim, Dim, Dim]] = {
        "front": (front, back, end, end), "back": (back, front, end, end),
        "left": (end, end, front, back), "right": (end, end, back, front),
    }  # fmt: skip
    return ways[side]


def _along(
    house: House,
    place: Place,
    spec: FloorPlace,
    runs: Sequence[Run],
    wall: SurveyedWall,
    length: Dim,
) -> Dim:
    """From the wall's left end to the left edge, as written or from what it stands before."""
    if spec.along is not None:
        return place.given("along", spec.along)
    middle = next(iter(_middles(spec.centre, runs, wall)), None)
    if middle is None:
        msg = f"{spec.centre} has no middle"
        raise ValueError(msg)  # the job file's checks refuse that first
    return place.let("along", middle - length / 2)


def middle_of(room: Room, key: str, wall: str) -> Fraction | None:
    """Middle of a thing on a wall, or of what stands before it, from its left end [mm]."""
    found = _middles(key, room.runs, room.survey.walls[wall])
    return next((middle.value for middle in found), None)


def _middles(key: str, runs: Sequence[Run], wall: SurveyedWall) -> Iterator[Dim]:
    """Middle of a thing on the wall, or of a case or an appliance before it [mm]."""
    for thing in wall.things:
        if thing.spec.key == key and thing.left is not None and thing.right is not None:
            yield (thing.left + thing.right) / 2
    for run in runs:
        if run.spec.on != wall.spec.key:
            continue
        for case, start in zip(run.cases, run.starts, strict=True):
            if case.key == key:
                yield run.begins + start + case.overall_width / 2
        for each in run.appliances:
            if each.spec.key == key:
                yield run.begins + each.start + each.width / 2


def _shims(place: Place, spec: FloorPlace) -> Iterator[Dim]:
    """From the floor at each corner up to the highest of them."""
    names = ("near_left", "near_right", "far_right", "far_left")
    downs = [
        enter_reading(place, f"floor_{name}", reading)
        for name, reading in zip(names, spec.floor, strict=False)
    ]
    highest = min(downs, key=lambda down: down.value) if downs else None
    for name, down in zip(names, downs, strict=False):
        if highest is not None:
            yield place.let(f"shim_{name}", down - highest)

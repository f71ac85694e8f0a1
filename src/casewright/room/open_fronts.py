"""What opens over the floor: doors, drawers, doors of appliances, each as far as it reaches."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case, Front
from casewright.dims import Dim, Given
from casewright.room.footprints import rectangle
from casewright.room.free_stand import FreeStand
from casewright.room.island_places import island_boxes, island_openings, middle_plane
from casewright.room.model import Room, Run
from casewright.room.on_walls import cases_on_walls
from casewright.room.wall_stands import Spot, WallFrame, wall_frames

__all__ = ["OpenFront", "front_reach", "meet", "open_fronts"]


@dataclass(frozen=True, slots=True)
class OpenFront:
    """A front, or an appliance's door, opened as far as it goes.

    Parameters
    ----------
    key, title
        Path of the front, or of the appliance; what it is, in words.
    owner
        Key of the footprint that it belongs to, or of the island.
    opens
        From its closed face to its farthest edge [mm].
    corners
        What it sweeps, in order round it [mm in plan].
    wall
        Key of the wall that it is measured from.
    is_appliance
        Whether it is the door of an appliance.
    """

    key: str
    title: str
    owner: str
    opens: Dim | Given
    corners: tuple[Spot, ...]
    wall: str
    is_appliance: bool = False

    @property
    def reach(self) -> Fraction:
        """How far it opens [mm]."""
        return self.opens.value


def front_reach(case: Case, front: Front) -> Dim | None:
    """A drawer as far as its slides, a door as far as it is wide [mm]; None: it does not open."""
    drawer = next((each for each in case.drawers if each.front == front.path), None)
    if drawer is not None:
        return drawer.slide_length
    return front.width if front in case.doors else None


def open_fronts(room: Room) -> tuple[OpenFront, ...]:
    """Every front that opens over the floor, at walls first, and every room door."""
    frames = wall_frames(room.survey)
    found = [*_on_walls(room, frames), *_of_appliances(room, frames), *_room_doors(room, frames)]
    for stand in room.free:
        found += _free(room, stand, frames[stand.wall])
    return tuple(found)


def _fronts(case: Case) -> Iterator[tuple[Front, Dim, tuple[Fraction, Fraction], Fraction]]:
    """A front, its reach, its left and right edge from the case's left end, its face."""
    for front in case.wall_fronts:
        reach = front_reach(case, front)
        if reach is not None:
            left = case.left_frame.value + front.x.value
            face = front.z.value + front.thickness.value
            yield front, reach, (left, left + front.width.value), face


def _title(case: Case, front: Front) -> str:
    return f"the {front.title} of {case.spec.title}"


def _on_walls(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[OpenFront]:
    for place in cases_on_walls(room):
        if place.case.spec.is_hung or place.case.mouth is not None:
            continue
        frame = frames[place.wall.spec.key]
        for front, reach, (left, right), face in _fronts(place.case):
            corners = rectangle(frame, (place.left + left, place.left + right),
                                (face, face + reach.value))  # fmt: skip
            yield OpenFront(front.path, _title(place.case, front), place.case.key, reach, corners,
                            place.wall.spec.key)  # fmt: skip


def _of_appliances(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[OpenFront]:
    """From the faces of the doors beside it, as far as its sheet says."""
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        deep = max(case.overall_depth.value for case in run.cases)
        for each in run.appliances:
            if each.spec.opens is not None:
                left, reach = run.begins.value + each.start.value, each.spec.opens
                face = deep if each.spec.depth is None else each.spec.depth.value
                corners = rectangle(frames[run.spec.on], (left, left + each.width.value),
                                    (face, face + reach.value))  # fmt: skip
                key = f"appliance.{each.spec.key}"
                title = f"the door of {each.spec.title}"
                yield OpenFront(key, title, key, reach, corners, run.spec.on, is_appliance=True)


def _room_doors(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[OpenFront]:
    """Doors of the room that swing into it."""
    for key, frame in frames.items():
        for thing in room.survey.walls[key].things:
            spec = thing.spec
            if spec.swing is None or thing.left is None or thing.right is None:
                continue
            wide, edges = thing.right - thing.left, (thing.left.value, thing.right.value)
            corners = rectangle(frame, edges, (Fraction(0), wide.value))
            yield OpenFront(spec.key, spec.title, spec.key, wide, corners, key)


def _free(room: Room, stand: FreeStand, frame: WallFrame) -> Iterator[OpenFront]:
    island = next((each for each in room.islands if each.key == stand.key), None)
    if island is None:
        case = next(case for case in room.cases if case.key == stand.key)
        for front, reach, edges, face in _fronts(case):
            yield _opened(stand, frame, case, front, reach, (edges, (face, face + reach.value)))
        return
    body, runs = room.case_of(island), room.runs_of(island)
    middle = middle_plane(body, runs)
    cases = {case.key: case for run in runs for case in run.cases}
    behind = {case.key for run in runs[1:] for case in run.cases}
    for key, box in island_boxes(body, runs):
        low, high = Fraction(box.x0), Fraction(box.x1)
        for front, reach, (left, right), face in _fronts(cases[key]):
            span: _Edges = (
                (low + left, low + right),
                (middle + face, middle + face + reach.value),
            )
            if key in behind:
                span = ((high - right, high - left), (middle - face - reach.value, middle - face))
            yield _opened(stand, frame, cases[key], front, reach, span)
    yield from _free_appliances(stand, frame, body, runs)


def _free_appliances(
    stand: FreeStand, frame: WallFrame, body: Case, runs: tuple[Run, ...]
) -> Iterator[OpenFront]:
    """Doors of what stands between the boxes of an island, from the faces of those beside it."""
    middle = middle_plane(body, runs)
    outs = [max(case.overall_depth.value for case in run.cases) for run in runs]
    behind = {each.spec.key for run in runs[1:] for each in run.appliances}
    for each, box in island_openings(body, runs):
        if each.spec.opens is None:
            continue
        reach, is_behind = each.spec.opens.value, each.spec.key in behind
        face = outs[1] if is_behind else outs[0]
        span = (middle + face, middle + face + reach)
        if is_behind:
            span = (middle - face - reach, middle - face)
        key = f"appliance.{each.spec.key}"
        yield OpenFront(
            key, f"the door of {each.spec.title}", stand.key, each.spec.opens,
            _swept(stand, frame, ((Fraction(box.x0), Fraction(box.x1)), span)),
            stand.wall, is_appliance=True,
        )  # fmt: skip


_Edges = tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]


def _opened(
    stand: FreeStand, frame: WallFrame, case: Case, front: Front, reach: Dim, edges: _Edges
) -> OpenFront:
    corners = _swept(stand, frame, edges)
    return OpenFront(front.path, _title(case, front), stand.key, reach, corners, stand.wall)


def _swept(stand: FreeStand, frame: WallFrame, edges: _Edges) -> tuple[Spot, ...]:
    """Corners in plan of what lies so far along and out in the island's own axes."""
    (left, right), (near, far) = edges
    return tuple(
        frame.at(*stand.at(x, z))
        for x, z in ((left, near), (right, near), (right, far), (left, far))
    )


def meet(one: Sequence[Spot], other: Sequence[Spot]) -> bool:
    """Whether two convex shapes share more than an edge (separating axes)."""
    return not any(_apart(a, b) for a, b in ((one, other), (other, one)))


def _apart(one: Sequence[Spot], other: Sequence[Spot]) -> bool:
    """Whether a line along an edge of the first lies between the two."""
    for number, (x, y) in enumerate(one):
        x0, y0 = one[number - 1]
        across = (y - y0, x0 - x)
        spans = [[across[0] * u + across[1] * v for u, v in shape] for shape in (one, other)]
        if max(spans[0]) <= min(spans[1]) or max(spans[1]) <= min(spans[0]):
            return True
    return False

"""Proof of an island: boxes back to back, panels flush with them, cleats inside the ladders.

Like the proof of a run it works on sizes and placements alone, never on the formulas that made
them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.casework.proof import Failure, Proof
from casewright.geometry import Box, Direction, Number
from casewright.room.island_cleats import ladders
from casewright.room.island_places import (
    IslandFrame,
    island_boxes,
    middle_plane,
    part_span,
    parts_in_island,
)
from casewright.room.model import Island, Room, Run

__all__ = ["prove_island"]


def prove_island(room: Room, island: Island, *, grid: Fraction) -> Proof:
    """Check where the panels and cleats of an island are, round the boxes of its runs.

    Parameters
    ----------
    grid
        How far rounding may take an edge off its place [mm].
    """
    return Proof(tuple(_failures(room, island, grid)))


def _failures(room: Room, island: Island, grid: Fraction) -> Iterator[Failure]:
    case, runs = room.case_of(island), room.runs_of(island)
    by_role: dict[str, list[Part]] = {"island end": [], "island back": [], "floor cleat": []}
    for part in case.parts:
        by_role.get(part.role, []).append(part)
    ends = [part_span(part) for part in by_role["island end"]]
    if len(ends) != 2:
        yield Failure("parts", (case.key,), "an island has two end panels")
        return
    left, right = sorted(ends, key=lambda box: box.x0)
    yield from _check_faces(by_role, left)
    boxes = list(island_boxes(case, runs))
    yield from _check_sizes(case, left, right)
    yield from _check_ends(case, (left, right), boxes, _between_boxes(runs), grid)
    frame = IslandFrame(Fraction(left.x1), Fraction(right.x0), middle_plane(case, runs))
    there = {part.path: box for part, box in parts_in_island(frame, runs)}
    if len(runs) == 1:
        yield from _check_back(by_role["island back"], case, (left, right), grid)
        yield from _check_held(by_role["island back"], island, there)
    yield from _check_cleats(by_role["floor cleat"], case, runs, (left, right))
    yield from _check_screws(island, case, there, grid)
    yield from _check_paths(case, there)


_NEAR = Fraction(25)
"""Two screws of a row want at least so long a stretch of both boards (common practice) [mm]."""


_LOOSE = Fraction(76)
"""An upright edge of a panel may stand out so far past what it is screwed to (common practice)
[mm]."""


def _check_screws(
    island: Island, case: Case, there: Mapping[str, Box], grid: Fraction
) -> Iterator[Failure]:
    """Each passes its first board, and what thin lies between, and ends inside the second."""
    known = {**there, **{part.path: part_span(part) for part in case.parts}}
    for screws in island.screws:
        one, other = known.get(screws.through), known.get(screws.into)
        if one is None or other is None:
            says = f"screws of {screws.path} hold nothing that is there"
            yield Failure("joints", (screws.path,), says)
            continue
        across, thick, behind = _apart(one, other, grid)
        if across < _NEAR or thick is None:
            says = "boards that are screwed together do not lie on one another"
            yield Failure("joints", (screws.path, screws.through, screws.into), says)
            continue
        point = screws.length.value - thick
        paths = (screws.path, screws.into)
        if point <= 0:
            says = "screws of an island end short of their second board"
            yield Failure("fasteners", paths, says, -point, mended_by="a longer one")
        elif point >= behind + grid:
            says = "screws of an island come out of their second board"
            yield Failure("fasteners", paths, says, point - behind, mended_by="a shorter one")


def _apart(one: Box, other: Box, grid: Fraction) -> tuple[Fraction, Fraction | None, Fraction]:
    """How far two boards lie over each other, through how much a screw passes, what it ends in.

    The way it goes is the only one in which they do not overlap, but for what rounding may take
    a row past its neighbour; None where that is not one.
    """
    spans = tuple(zip(one[::2], one[1::2], strict=True))
    met = tuple(zip(other[::2], other[1::2], strict=True))
    laps = [Fraction(min(a[1], b[1]) - max(a[0], b[0])) for a, b in zip(spans, met, strict=True)]
    ways = [axis for axis, lap in enumerate(laps) if lap <= grid]
    if len(ways) != 1:
        return Fraction(0), None, Fraction(0)
    way = ways[0]
    over = sorted(lap for axis, lap in enumerate(laps) if axis != way)
    thick = Fraction(spans[way][1] - spans[way][0]) - laps[way]
    return over[-1], thick, Fraction(met[way][1] - met[way][0])


def _check_paths(case: Case, there: Mapping[str, Box]) -> Iterator[Failure]:
    """Cleats come first, on the bare floor; boxes and ladders stand in no panel's way."""
    parts = {part.path: part for part in case.parts}
    placed: dict[str, Box] = {}
    for step in case.assembly:
        part, way = parts.get(step.part), step.enters
        if part is None or way is None:
            continue
        own = part_span(part)
        standing = placed if part.role == "floor cleat" else {**placed, **there}
        for path, other in standing.items():
            if _swept(own, way).meets(other) and not own.meets(other):
                says = f"{path} is in the way of {part.title}"
                yield Failure("path", (step.part, path), says)
        placed[part.path] = own


def _swept(box: Box, way: Direction) -> Box:
    """What a board passes on its way in [mm]."""
    far = Fraction(10**6)
    ends = list(box)
    ends[2 * way.axis + (0 if way.sign > 0 else 1)] -= way.sign * far
    return Box(*ends)


def _most(*off: Number) -> Fraction:
    """The greatest of some numbers, whichever way they are off."""
    return max(abs(Fraction(each)) for each in off)


def _check_sizes(case: Case, left: Box, right: Box) -> Iterator[Failure]:
    """What the card says of it, against its panels."""
    sizes = (case.width, case.height, case.depth)
    off = _most(
        right.x1 - left.x0 - case.width.value, left.x0, case.standing.value,
        case.overall_width.value - case.width.value,
        case.overall_depth.value - case.depth.value,
        *(one.value - other.value for one, other in zip(sizes, case.wanted, strict=True)),
    )  # fmt: skip
    if off:
        yield Failure("size", (case.key,), "the panels are not as far apart as it is long",
                      Fraction(off))  # fmt: skip


def _check_faces(by_role: Mapping[str, list[Part]], left: Box) -> Iterator[Failure]:
    """The best face of every panel looks out of the island."""
    for part in (*by_role["island end"], *by_role["island back"]):
        outward = Direction.of("-z")
        if part.role == "island end":
            outward = Direction.of("-x" if part_span(part) == left else "+x")
        if part.placed.orientation.thickness != outward:
            yield Failure("hands", (part.path,), f"the best face of {part.title} looks inward")


def _between_boxes(runs: tuple[Run, ...]) -> list[tuple[set[str], Fraction]]:
    """Of each row: keys of its boxes, and what appliances take of it [mm]."""
    return [
        (
            {case.key for case in run.cases},
            sum((each.width.value for each in run.appliances), Fraction(0)),
        )
        for run in runs
    ]


def _check_ends(
    case: Case,
    ends: tuple[Box, Box],
    boxes: list[tuple[str, Box]],
    rows: list[tuple[set[str], Fraction]],
    grid: Fraction,
) -> Iterator[Failure]:
    """From the floor to the tops of the boxes, from front edge to front edge or finished back."""
    for box in ends:
        off = _most(box.y0, box.y1 - case.height.value, box.z1 - case.depth.value)
        if off:
            says = "an end panel does not end with the body of the island"
            yield Failure("size", (case.key,), says, off)
        if _most(box.z0) > grid:
            says = "an end panel is not as deep as the body of the island"
            yield Failure("size", (case.key,), says, _most(box.z0))
    for key, box in boxes:
        off = _most(box.y1 - case.height.value)
        if off > grid:
            yield Failure("size", (case.key, key), "a box is not as high as the end panels", off)
        if box.x0 < ends[0].x1 - grid or box.x1 > ends[1].x0 + grid:
            yield Failure("overlap", (case.key, key), "a box stands in an end panel")
    between = Fraction(ends[1].x0 - ends[0].x1)
    for keys, long in rows:
        long += sum((Fraction(box.x1 - box.x0) for key, box in boxes if key in keys), Fraction(0))
        if abs(between - long) > 2 * grid:
            says = "an end panel does not lie on its boxes"
            yield Failure("joints", (case.key,), says, abs(between - long))


def _check_back(
    skins: list[Part], case: Case, ends: tuple[Box, Box], grid: Fraction
) -> Iterator[Failure]:
    """Piece beside piece from end to end, on the backs of the boxes."""
    at = Fraction(ends[0].x1)
    for part in sorted(skins, key=lambda part: part.placed.x.value):
        box = part_span(part)
        off = _most(box.x0 - at, box.z0, box.y0, box.y1 - case.height.value)
        if off:
            says = f"{part.title} does not lie between its neighbours on the backs of the boxes"
            yield Failure("fronts", (part.path,), says, off)
        at = Fraction(box.x1)
    off = _most(at - ends[1].x0)
    if off > grid or not skins:
        yield Failure(
            "fronts", (case.key,), "the finished back does not reach from end to end", off
        )


def _check_held(skins: list[Part], island: Island, there: Mapping[str, Box]) -> Iterator[Failure]:
    """What each piece is screwed to reaches near both of its upright edges."""
    for part in skins:
        box = part_span(part)
        held = [there[each.through] for each in island.screws if each.into == part.path]
        for edge in (box.x0, box.x1):
            off = min((_most(max(one.x0 - edge, edge - one.x1, 0)) for one in held), default=None)
            if off is None or off > _LOOSE:
                says = f"an upright edge of {part.title} has no board behind it that holds it"
                yield Failure("joints", (part.path,), says, off or Fraction(0))


def _check_cleats(
    cleats: list[Part], case: Case, runs: tuple[Run, ...], ends: tuple[Box, Box]
) -> Iterator[Failure]:
    """On the floor, against an end sleeper, clear of every rail and sleeper."""
    middle = middle_plane(case, runs)
    solids: list[tuple[bool, Box]] = []
    for row, run in enumerate(runs):
        for ladder in ladders(run):
            for part in (*ladder.rails, *ladder.sleepers):
                box = part_span(part)
                low, high = ladder.start.value + box.x0, ladder.start.value + box.x1
                spans = (ends[0].x1 + low, ends[0].x1 + high, middle + box.z0, middle + box.z1)
                if row:
                    spans = (ends[1].x0 - high, ends[1].x0 - low, middle - box.z1, middle - box.z0)
                solids.append((part.role == "sleeper",
                               Box(*spans[:2], box.y0, box.y1, *spans[2:])))  # fmt: skip
    count = 2 * sum(1 for run in runs for _ in ladders(run))
    if len(cleats) != count:
        yield Failure("parts", (case.key,), "there are not two floor cleats in each ladder")
    for part in cleats:
        box = part_span(part)
        if any(box.meets(other) for _, other in solids):
            yield Failure("overlap", (part.path,), f"{part.title} stands in a ladder")
        beside = any(
            (box.x0 == other.x1 or box.x1 == other.x0)
            and other.z0 <= box.z0 and box.z1 <= other.z1
            for is_sleeper, other in solids if is_sleeper
        )  # fmt: skip
        if box.y0 or not beside:
            yield Failure(
                "joints", (part.path,), f"{part.title} lies beside no sleeper on the floor"
            )

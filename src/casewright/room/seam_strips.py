"""Seam strips: where two boxes with face strips meet, one strip covers both of their edges."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import pairwise

from casewright.casework.cases import Case
from casewright.casework.face_strips import TRIM_SETUP, parts_openings
from casewright.casework.features import Cut
from casewright.casework.house import House
from casewright.casework.levels import extent
from casewright.casework.specs import CaseSpec, Hand
from casewright.dims import Dim
from casewright.room.model import Run
from casewright.room.specs import JobSpec, RunSpec
from casewright.room.trims.model import Trim, TrimPiece
from casewright.room.trims.stretches import TrimShape, trim_part

__all__ = ["build_seam_strips", "seams_at"]


def seams_at(spec: JobSpec, run: RunSpec) -> Mapping[str, tuple[Hand, ...]]:
    """Sides of each case of a run at which one strip covers two edges; none where there is none.

    Both have face strips of the same boards, are as high and as deep and stand on the same toe,
    and nothing is on their ends there.
    """
    by_key = {case.key: case for case in spec.cases}
    found: dict[str, tuple[Hand, ...]] = {}
    for one, other in pairwise(run.places):
        left, right = by_key.get(one), by_key.get(other)
        if left is None or right is None or not _alike(left, right):
            continue
        found[one] = (*found.get(one, ()), "right")
        found[other] = (*found.get(other, ()), "left")
    return found


def _alike(one: CaseSpec, other: CaseSpec) -> bool:
    both = (one, other)
    if any(case.face != "strips" for case in both):
        return False
    if "right" in one.dressed or "left" in other.dressed:
        return False
    return len({(c.kind, c.height.value, c.depth.value, c.toe, c.face_stock) for c in both}) == 1


def build_seam_strips(house: House, spec: JobSpec, run: Run) -> Trim | None:
    """A strip for each seam, put on when the boxes are joined; None where there is none."""
    seams = seams_at(spec, run.spec)
    pieces = tuple(
        _strip(house, run, number, left, right)
        for number, (left, right) in enumerate(run.neighbours, start=1)
        if "right" in seams.get(left.key, ())
    )
    if not pieces:
        return None
    return Trim(f"run.{run.spec.key}.seam_strips", "seam strip", "seam strips", (), pieces)


def _strip(house: House, run: Run, number: int, left: Case, right: Case) -> TrimPiece:
    """As wide as the two edges, proud of the inside of either box, and trimmed flush with both."""
    place = house.chain.place(f"run.{run.spec.key}.seam_strips.{number}")
    one, other = _edge(left, "right"), _edge(right, "left")
    proud = house.style_dim("strip_proud")
    width = place.let("over_both", one + other + 2 * proud)
    face = left.frame
    low = house.zero if face is None else face.y
    tall = left.height if low is house.zero else left.height - low
    seam = run.starts[run.cases.index(right)]
    y = low if not run.lift.value else run.lift + low if low.value else run.lift
    shape = TrimShape("seam strip", f"seam strip {number}", left.spec.face_stock, width, y,
                      left.depth, rips=False)  # fmt: skip
    edge = place.let("left_edge", seam - one - proud)
    part = trim_part(house, place, shape, (tall,), edge, lies="+y -x +z", z=left.depth)
    ends = tuple(_trims(house, part.path, (left, right), (proud, tall, part.finished.thickness)))
    placed = replace(part.placed, x=place.let("right_edge", edge + part.finished.width))
    _fit(house, part.path, part.finished.width, one + other)
    return TrimPiece(replace(part, placed=placed, features=ends))


def _fit(house: House, path: str, width: Dim, edges: Dim) -> None:
    """Something is left to trim at either side, and little enough for the bit."""
    place = house.chain.place(path)
    over = place.let("proud", width - edges)
    proud = house.style_dim("strip_proud").value
    step = house.style_dim("cut_step").value
    place.fit("proud_fit", over, proud, 3 * proud + step, path)


def _edge(case: Case, hand: Hand) -> Dim:
    """Thickness of a side as it was made [mm]."""
    return case.part(f"{case.key}.side_{hand}").finished.thickness


def _trims(
    house: House, path: str, cases: tuple[Case, Case], sizes: tuple[Dim, Dim, Dim]
) -> Iterator[Cut]:
    """What is trimmed off its left and its right edge, between the strips across the boxes.

    Parameters
    ----------
    sizes
        How far it stands proud, its length and its thickness [mm].
    """
    proud, tall, thick = sizes
    for case, edge in zip(cases, ("w1", "w0"), strict=True):
        side = "left" if edge == "w1" else "right"
        for number, (low, high) in enumerate(_bays(house, path, side, case), start=1):
            name = f"trim_{side}" if number == 1 else f"trim_{side}_{number}"
            place = house.chain.place(path).at(name)
            end = tall - _boards(case)[1] if high is None else high
            yield Cut(
                path=place.path, kind="trim", face="A", runs="l",
                datum="w1" if edge == "w1" else "w0", at=house.zero,
                width=place.let("width", proud), depth=thick, start=low,
                end=place.let("end", end), asked_by=case.key, setup=TRIM_SETUP,
            )  # fmt: skip


def _bays(house: House, path: str, side: str, case: Case) -> Iterator[tuple[Dim, Dim | None]]:
    """Stretches between the boards of a box, from its face's lower end; the last to its top."""
    start, place = _boards(case)[0], house.chain.place(path)
    inner = sorted((p for p in case.parts if parts_openings(p)), key=lambda p: p.placed.y.value)
    low = case.frame.y if case.frame is not None else house.zero
    for number, board in enumerate(inner, start=1):
        under, upper = extent(board, 1)
        yield start, place.let(f"bay_{side}_{number}", under - low if low.value else under)
        start = place.let(f"over_{side}_{number}", upper - low if low.value else upper)
    yield start, None


def _boards(case: Case) -> tuple[Dim, Dim]:
    """Thickness of what closes a box below and above [mm]."""
    own = {part.path: part for part in case.parts}
    head = own.get(f"{case.key}.top") or own[f"{case.key}.front_stretcher"]
    return own[f"{case.key}.bottom"].finished.thickness, head.finished.thickness

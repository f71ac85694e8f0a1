"""Bends: where the trims of two runs turn across the face of a diagonal corner.

From one wall to the face, and from the face to the other wall, a trim turns in two inside corners
of 135 degrees, each mitred at 22 1/2. The piece across belongs to the run that the corner is in.

With the reach R of the face (the sum of the distances of any place on it from both walls), a trim
whose rear lies z off its wall, and n before the face, turns where both rears cross:

    R - z + n sqrt(2)   along the wall, from the corner of the walls
    (R - 2 z) sqrt(2) + 2 n   long is the piece across, from one crossing to the other

What lies out before that by t is tan 22 1/2 = sqrt(2) - 1 times t shorter at the corner. Source:
plane geometry.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from casewright.casework.cases import Case
from casewright.casework.diagonal import OVER_ROOT_2
from casewright.casework.house import House
from casewright.casework.parts import Part
from casewright.dims import Dim, Place, Way
from casewright.room.model import Run
from casewright.room.run_ends import SIDES, round_corner
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.room.trims.model import EndCut, TrimPiece
from casewright.room.trims.saw_settings import cosine_of, flat_setting
from casewright.room.trims.stretches import TrimShape, rail_end, trim_part

__all__ = [
    "BENT", "BENT_COSINE", "Bend", "Bends", "across_length", "across_piece", "bend_at", "bends_of",
    "beyond_bend", "joined_by_bends",
    "past_bend",
]  # fmt: skip

BENT = 1350
"""Either corner that a trim turns at a diagonal face [1/10 deg]."""
BENT_COSINE = cosine_of(Decimal(BENT) / 10)

_TURN = EndCut(
    "inside mitre", BENT, is_read=False, setting=flat_setting(BENT_COSINE), planned=BENT
)
"""Of a strip on edge."""


@dataclass(frozen=True, slots=True)
class Bend:
    """An end of a run at which its trims turn across a diagonal corner.

    Parameters
    ----------
    case
        The corner.
    owns
        Whether it stands in this run, so that the piece across does, too.
    edge
        Where the fronts meet its face, from the run's left datum [mm].
    """

    side: RunSide
    case: Case
    owns: bool
    edge: Dim

    @property
    def turn(self) -> EndCut:
        """How a strip on edge is cut here."""
        return _TURN

    def away(self, out: Dim) -> Dim:
        """A place so far from the edge, away from the corner, from the run's left datum [mm]."""
        return self.edge + out if self.side == "left" else self.edge - out


Bends = Mapping[RunSide, Bend]


def bend_at(spec: JobSpec, run: RunSpec, side: RunSide) -> str | None:
    """Key of the diagonal corner at an end of a run, its own or that of the run round it."""
    by_key = {case.key: case for case in spec.cases}
    own = by_key[run.cases[0 if side == "left" else -1]]
    if own.diagonal == side:
        return own.key
    other = round_corner(spec, run, side) if run.end(side) == "corner" else None
    if other is None:
        return None
    met = by_key[other.cases[-1 if side == "left" else 0]]
    return met.key if met.diagonal is not None else None


def beyond_bend(spec: JobSpec, run: RunSpec, side: RunSide) -> RunSpec | None:
    """The run on the other side of the corner at an end; None: none is there."""
    if run.end(side) == "corner":
        return round_corner(spec, run, side)
    back: RunSide = "right" if side == "left" else "left"
    return next(
        (other for other in spec.runs
         if other.end(back) == "corner" and round_corner(spec, other, back) is run), None,
    )  # fmt: skip


def joined_by_bends(spec: JobSpec, run: RunSpec) -> tuple[RunSpec, ...]:
    """A run, and every one whose trims go on from its own across diagonal corners."""
    found = [run]
    for one in found:
        for side in SIDES:
            other = beyond_bend(spec, one, side) if bend_at(spec, one, side) else None
            if other is not None and other not in found:
                found.append(other)
    return tuple(found)


def bends_of(spec: JobSpec, run: Run, runs: Mapping[str, Run]) -> Bends:
    """The ends of a run at which its trims turn.

    Parameters
    ----------
    runs
        All runs by key.
    """
    found: dict[RunSide, Bend] = {}
    cases = {case.key: case for each in runs.values() for case in each.cases}
    for side in SIDES:
        key = bend_at(spec, run.spec, side)
        if key is None:
            continue
        owns = key in run.spec.cases
        edge = rail_end(run, side)
        if owns:
            edge = run.starts[-1]
            if side == "left":
                edge = run.starts[0] + cases[key].overall_width
        found[side] = Bend(side, cases[key], owns, edge)
    return found


def past_bend(house: House, place: Place, name: str, out: Dim, way: Way = Way.UP) -> Dim:
    """Tan 22 1/2 of what a face lies behind another, on the grid [mm]."""
    exact = place.let(f"{name}_exact", out * (OVER_ROOT_2 - 1))
    return _on_grid(house, place, name, exact, way)


def across_length(
    house: House, place: Place, bend: Bend, plane: Dim, before: Dim | None = None
) -> Dim:
    """The length across a face, as planned until it is read: up to the grid [mm].

    Parameters
    ----------
    plane
        z of what is read along, in its run.
    before
        How far that lies before the face; below 0 behind it; None: on it.
    """
    mouth, name = bend.case.mouth, f"across_{bend.side}"
    if mouth is None:
        msg = f"{bend.case.key} is no diagonal corner"
        raise ValueError(msg)
    exact = (mouth.reach - 2 * plane) * OVER_ROOT_2
    if before is not None:
        exact = exact + 2 * before
    step = house.style_dim("cut_step").value
    if step and exact.value % step:
        exact, _ = place.rounded(f"{name}_planned", exact, step, Way.UP)
    return place.follows(name, exact, how="as planned, until it is read as built")


def _on_grid(house: House, place: Place, name: str, exact: Dim, way: Way) -> Dim:
    step = house.style_dim("cut_step").value
    if not step or not exact.value % step:
        return place.let(name, exact)
    return place.rounded(name, exact, step, way)[0]


def across_piece(
    house: House, place: Place, shape: TrimShape, bend: Bend, length: tuple[Dim, ...],
    before: Dim, *, cuts: tuple[EndCut, EndCut] = (_TURN, _TURN),
) -> TrimPiece:  # fmt: skip
    """The piece across a face, in the axes of its mouth.

    Parameters
    ----------
    length
        Terms of its length from long point to long point, both at its rear.
    before
        How far its rear lies before the face [mm]; below 0 behind it.
    cuts
        How its left and its right end are cut.
    """
    mouth = bend.case.mouth
    if mouth is None:
        msg = f"{bend.case.key} is no diagonal corner"
        raise ValueError(msg)
    own = place.at(f"{bend.side}_across")
    flat = replace(shape, flush=False)
    part: Part = trim_part(
        house, own, flat, length, house.zero, title=f"{shape.title} across {bend.case.spec.title}",
        z=mouth.front + before,
    )  # fmt: skip
    x = (mouth.width - part.finished.length) / 2
    part = replace(part, placed=replace(part.placed, x=x), turned=True)
    return TrimPiece(part, *cuts)

"""A wall out of plumb: what keeps the fronts of a case upright before it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.survey.specs import Plumb
from casewright.survey.walls import SurveyedWall

__all__ = ["lean_shims"]

Edges = tuple[str, Dim, Dim]
"""Title, lower and upper edge of a board that screws go through."""


def lean_shims(numbers: Numbers, place: WallPlace, rows: Sequence[Edges]) -> Mapping[int, Dim]:
    """What goes behind which row, by its number, so that the case hangs or stands plumb.

    Where the wall leans into the room its upper part bears, and the lower rows get a shim; where
    it leans away, the upper ones: as much as it leans over the height between.

    Returns
    -------
    Nothing for a row that bears, or when the wall's own face was not read [mm].
    """
    wall = place.before.wall
    found = _worst(wall)
    if found is None or not rows:
        return {}
    lean, plumb = found
    own = numbers.wall(wall.spec.key).at(place.run.spec.key).at(place.case.key)
    middles = [(low + high) / 2 for _, low, high in rows]
    foot = place.bottom
    top = max(middles, key=lambda dim: dim.value)
    shims: dict[int, Dim] = {}
    for n, middle in enumerate(middles):
        if plumb.lean.value > 0:
            away = (top - middle) * (lean.value / plumb.over)
        else:
            away = (middle - foot) * (-lean.value / plumb.over)
        if away.value:
            shims[n] = own.let(f"lean_shim_{n + 1}", away)
    return shims


def _worst(wall: SurveyedWall) -> tuple[Dim, Plumb] | None:
    """The reading by which the wall's own face is farthest out of plumb."""
    read = [
        (wall.read[f"plumb_{n}"], plumb)
        for n, plumb in enumerate(wall.spec.plumbs, start=1)
        if plumb.of == "face"
    ]

    def slope(row: tuple[Dim, Plumb]) -> Fraction:
        return abs(row[0].value) / row[1].over

    return max(read, key=slope) if read else None

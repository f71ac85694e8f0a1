"""Drawings for the cards of parts: no larger than it takes to letter them clearly."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import count
from typing import NamedTuple

from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing import SCALES, Plot, View, clashes, plot_within, sheet_at, struck
from casewright.drawing.part_frame import faces_to_draw
from casewright.drawing.part_view import part_scene
from casewright.packet.part_groups import PartGroup

__all__ = ["group_figure", "page_figure", "small_figure"]

_LARGEST = Fraction(4)
_LONG = (30, 172)  # least and largest length of the part itself [mm on paper]
_LEAST_ROUND = 15.0  # least room of a row of views besides the parts [mm on paper]
_ROW = 45  # room of a row of views besides the parts, about [mm]
_SMALL_TALL = 50.0
_FULL, _STEP = Fraction(1), Fraction(3, 4)  # lettering where nothing else helps
_MANY = 4  # marks under a view

_Rows = Sequence[Sequence[View]]


class _Try(NamedTuple):
    """An arrangement at a scale, and how high the part itself stands on paper [mm]."""

    rows: _Rows
    scale: Fraction
    tall: float

    @property
    def least(self) -> float:
        """Height that it needs at least [mm]."""
        return len(self.rows) * (self.tall + _LEAST_ROUND)


def group_figure(
    group: PartGroup, width_mm: float, heights_mm: Iterable[float], unit: Unit
) -> Plot | None:
    """Every face with work on it, as large as fits with nothing lying over anything.

    Left and right are side by side or one above the other. None when there is not that much room.

    Parameters
    ----------
    width_mm
        Room on the page [mm].
    heights_mm
        Heights to be content with, from the least to the most [mm]: the first in which anything
        fits counts.
    """
    heights = tuple(heights_mm)
    tries = _tries(group, unit)
    drawn: dict[int, Plot | None] = {}  # what each gives on the whole height, once it is asked
    for height in heights:
        for number, each in enumerate(tries):
            if each.least > height:
                continue
            if number not in drawn:
                drawn[number] = sheet_at(
                    each.rows, each.scale, width_mm, heights[-1], unit, bar=False,
                    accept=_is_clear,
                )  # fmt: skip
            found = drawn[number]
            if found is not None and found.area.height <= height:
                return found
    return None


def page_figure(group: PartGroup, width_mm: float, height_mm: float, unit: Unit) -> Plot:
    """As `group_figure`, for a page of its own: it always finds room.

    Where it must, lettering may lie over lettering or be smaller than usual.
    """
    for step in count():
        reduction = _STEP**step
        drawn = _clearest(_drawn(_tries(group, unit), width_mm, height_mm, unit, reduction))
        if drawn is not None:
            return drawn
    raise AssertionError


def small_figure(part: Part, width_mm: float, unit: Unit) -> Plot:
    """The one face with work on it, for two cards beside each other: it always finds room."""
    scene = part_scene(part, faces_to_draw(part)[0], unit, letters=False)
    scales = [*_scales(part, unit), *_smaller(part, unit)]

    def fitting(reduction: Fraction) -> Iterator[Plot]:
        wide, tall = width_mm / float(reduction), _SMALL_TALL / float(reduction)
        for scale in scales:
            drawn = plot_within(scene, scale, wide, tall)
            if drawn is not None:
                yield drawn if reduction == _FULL else drawn.reduced(reduction)

    for step in count():
        best = _clearest(fitting(_STEP**step))
        if best is not None:
            return best
    raise AssertionError


def _drawn(
    tries: Iterable[_Try], width_mm: float, height_mm: float, unit: Unit, reduction: Fraction
) -> Iterator[Plot]:
    for rows, scale, _ in tries:
        true = scale / reduction
        drawn = sheet_at(rows, true, width_mm, height_mm, unit, bar=False, reduction=reduction)
        if drawn is not None:
            yield drawn


def _clearest(plots: Iterable[Plot]) -> Plot | None:
    """The first on which nothing lies over anything, else the one where least does."""
    best: Plot | None = None
    fewest = 0
    for drawn in plots:
        crowded = _flaws(drawn)
        if best is None or crowded < fewest:
            best, fewest = drawn, crowded
        if not crowded:
            break
    return best


def _is_clear(drawn: Plot) -> bool:
    return not _flaws(drawn)


def _flaws(drawn: Plot) -> int:
    """How often something lies over what must be read [-]."""
    return len(clashes(drawn.groups)) + len(struck(drawn.groups))


def _tries(group: PartGroup, unit: Unit) -> list[_Try]:
    """Arrangements at scales, the largest first, and of these what needs the least height."""
    size = group.first.finished
    found: list[_Try] = []
    for stands in (False, True) if group.mirrored else (False,):
        tall = size.length.value if stands else size.width.value
        for rows in _arrangements(group, unit, stands=stands):
            scales = _scales(group.first, unit)
            found.extend(_Try(rows, scale, float(tall / scale)) for scale in scales)
    return sorted(found, key=lambda each: (each.scale, len(each.rows) * (each.tall + _ROW)))


def _scales(part: Part, unit: Unit) -> list[Fraction]:
    """Scales at which the part itself is neither tiny nor needlessly large, largest first."""
    least, most = _LONG
    long = max(part.finished.length.value, part.finished.width.value)
    wanted = [s for s in SCALES[unit] if s >= _LARGEST and least <= long / s <= most]
    if wanted:
        return wanted
    if long > most:
        return [SCALES[unit][-1]]
    larger = [s for s in SCALES[unit] if s <= _LARGEST and long / s <= most]
    return larger or [SCALES[unit][0]]


def _smaller(part: Part, unit: Unit) -> list[Fraction]:
    return [s for s in SCALES[unit] if s > _scales(part, unit)[-1]]


def _arrangements(group: PartGroup, unit: Unit, *, stands: bool) -> Iterator[_Rows]:
    """All views in one row; a row for each face; a row for each view."""
    hands = [(group.parts, group.first)]
    if group.mirrored:
        hands.append((group.mirrored, group.mirrored[0]))
    if group.mirrored and group.first.hand == "right":
        hands.reverse()
    faces = faces_to_draw(group.first)
    rows = [
        [
            View(part_scene(part, face, unit, standing=stands), _title(hand, face))
            for hand, part in hands
        ]
        for face in faces
    ]
    views = [view for row in rows for view in row]
    yield [views]
    if len(faces) > 1 and len(hands) > 1:
        yield rows
    if len(views) > 1 and not stands:
        yield [[view] for view in views]


def _title(hand: Sequence[Part], face: str) -> str:
    """'1: left side, face A', '1, 20, face A', 'left hand, face A'."""
    marks = ", ".join(part.mark for part in hand)
    if len(hand) == 1:
        return f"{marks}: {hand[0].title}, face {face}"
    if len(hand) <= _MANY:
        return f"{marks}, face {face}"
    return f"{hand[0].hand} hand, face {face}" if hand[0].hand else f"face {face}"

"""Drawings for the cards of parts: no larger than it takes to letter them clearly."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import count, product
from typing import NamedTuple

from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing import SCALES, Plot, Plots, View, clashes, plot_within, sheet_at, struck
from casewright.drawing.part_frame import faces_to_draw
from casewright.drawing.part_view import part_scene
from casewright.packet.part_groups import PartGroup

__all__ = ["GroupFigures", "small_figure"]

_LARGEST = Fraction(4)
_LONG = (30, 172)  # least and largest length of the part itself [mm on paper]
_LEAST_ROUND = 15.0  # least room of a row of views besides the parts [mm on paper]
_ROW = 45  # room of a row of views besides the parts, about [mm]
_SMALL_TALL = (50.0, 70.0)  # heights of a small drawing: usual, and where that is too crowded
_FULL, _STEP = Fraction(1), Fraction(3, 4)  # lettering where nothing else helps
_MANY = 4  # marks under a view

_Rows = Sequence[Sequence[View]]


class _Try(NamedTuple):
    """An arrangement at a scale, and the part itself on paper [mm]."""

    rows: _Rows
    scale: Fraction
    wide: float
    tall: float

    def can_fit(self, width_mm: float, height_mm: float) -> bool:
        """Whether there is room for the parts, whatever is lettered round them."""
        parts = max(len(row) for row in self.rows) * self.wide
        return parts <= width_mm and len(self.rows) * (self.tall + _LEAST_ROUND) <= height_mm


class GroupFigures:
    """Drawings of every face with work on it, left and right side by side or one above the other.

    What was found out for one room on a page is known when there is more: cards are drawn as
    they come and again, larger, when their pages are filled.
    """

    def __init__(self, group: PartGroup, unit: Unit) -> None:
        self.unit = unit
        self._tries = _tries(group, unit)
        self._plots = Plots(_is_clear)

    def within(self, width_mm: float, heights_mm: Sequence[float]) -> Plot | None:
        """As large as fits with nothing lying over anything; None when there is no such room.

        Parameters
        ----------
        width_mm
            Room on the page [mm].
        heights_mm
            Heights to be content with, from the least to the most [mm]: the first in which
            anything fits counts.
        """
        for height in heights_mm:
            for each in self._tries:
                if not each.can_fit(width_mm, height):
                    continue
                drawn = sheet_at(
                    each.rows, each.scale, width_mm, height, self.unit, bar=False,
                    plots=self._plots,
                )  # fmt: skip
                if drawn is not None:
                    return drawn
        return None

    def on_page(self, width_mm: float, height_mm: float) -> Plot:
        """As large as fits on a page of its own: it always finds room.

        Where it must, lettering may lie over lettering or be smaller than usual.
        """
        for step in count():
            drawn = _clearest(self._reduced(width_mm, height_mm, _STEP**step))
            if drawn is not None:
                return drawn
        raise AssertionError

    def _reduced(self, width_mm: float, height_mm: float, reduction: Fraction) -> Iterator[Plot]:
        for rows, scale, _, _ in self._tries:
            drawn = sheet_at(
                rows, scale / reduction, width_mm, height_mm, self.unit, bar=False,
                reduction=reduction,
            )  # fmt: skip
            if drawn is not None:
                yield drawn


def small_figure(part: Part, width_mm: float, unit: Unit) -> Plot:
    """The one face with work on it, for two cards beside each other: it always finds room."""
    scene = part_scene(part, faces_to_draw(part)[0], unit, letters=False)
    scales = [*_scales(part, unit), *_smaller(part, unit)]
    long = float(part.finished.length.value)  # it lies, and so needs at least this much width

    def fitting(reduction: Fraction) -> Iterator[Plot]:
        wide = width_mm / float(reduction)
        fit = [each for each in scales if long <= wide * float(each)]
        for tall, scale in product(_SMALL_TALL, fit):
            drawn = plot_within(scene, scale, wide, tall / float(reduction))
            if drawn is not None:
                yield drawn if reduction == _FULL else drawn.reduced(reduction)

    for step in count():
        best = _clearest(fitting(_STEP**step))
        if best is not None:
            return best
    raise AssertionError


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
        wide, tall = float(size.length.value), float(size.width.value)
        if stands:
            wide, tall = tall, wide
        for rows in _arrangements(group, unit, stands=stands):
            scales = _scales(group.first, unit)
            found.extend(_Try(rows, s, wide / float(s), tall / float(s)) for s in scales)
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

"""Drawings for the cards of parts: no larger than it takes to letter them clearly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing import SCALES, Plot, View, clashes, plot, sheet_at
from casewright.drawing.part_frame import faces_to_draw
from casewright.drawing.part_view import part_scene
from casewright.packet.part_groups import PartGroup

__all__ = ["group_figure", "small_figure"]

_LARGEST = Fraction(4)
_LONG = (42, 172)  # least and largest length of the part itself [mm on paper]
_ROW = 45  # room of a row of views besides the parts, about [mm]
_SMALL_TALL = 62.0

_Rows = Sequence[Sequence[View]]


def group_figure(group: PartGroup, width_mm: float, height_mm: float, unit: Unit) -> Plot | None:
    """Every face with work on it, on as little paper as lets nothing lie over anything.

    Left and right are side by side or one above the other. None when there is no room for a
    drawing large enough to read.

    Parameters
    ----------
    width_mm, height_mm
        Room on the page [mm].
    """
    best: Plot | None = None
    fewest = 0
    for rows, scale in _tries(group, unit):
        drawn = sheet_at(rows, scale, width_mm, height_mm, unit, bar=False)
        if drawn is None:
            continue
        crowded = len(clashes(drawn.groups))
        if best is None or crowded < fewest:
            best, fewest = drawn, crowded
        if not fewest:
            return best
    return best


def _tries(group: PartGroup, unit: Unit) -> list[tuple[_Rows, Fraction]]:
    """Arrangements at scales, those that need the least height of paper first."""
    size = group.first.finished
    found: list[tuple[Fraction, int, _Rows, Fraction]] = []
    for stands in (False, True) if group.mirrored else (False,):
        tall = size.length.value if stands else size.width.value
        for rows in _arrangements(group, unit, stands=stands):
            for scale in _scales(group.first, unit):
                found.append((len(rows) * (tall / scale + _ROW), len(found), rows, scale))
    return [(rows, scale) for _, _, rows, scale in sorted(found, key=lambda each: each[:2])]


def _scales(part: Part, unit: Unit) -> list[Fraction]:
    """Scales at which the part itself is neither tiny nor needlessly large, largest first."""
    least, most = _LONG
    long = part.finished.length.value
    wanted = [s for s in SCALES[unit] if s >= _LARGEST and long / s <= most]
    return [s for s in wanted if long / s >= least] or wanted[:1]


def _smaller(part: Part, unit: Unit) -> list[Fraction]:
    return [s for s in SCALES[unit] if s > _scales(part, unit)[-1]]


def _arrangements(group: PartGroup, unit: Unit, *, stands: bool) -> Iterator[_Rows]:
    """All views in one row; a row for each face; a row for each view."""
    hands = [each for each in (group.parts, group.mirrored) if each]
    if group.mirrored and group.first.hand == "right":
        hands.reverse()
    faces = faces_to_draw(group.first)
    rows = [
        [
            View(part_scene(hand[0], face, unit, standing=stands), _title(hand, face))
            for hand in hands
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
    marks = ", ".join(part.mark for part in hand)
    name = f"{marks}: {hand[0].title}" if len(hand) == 1 else marks
    return f"{name}, face {face}"


def small_figure(part: Part, width_mm: float, unit: Unit) -> Plot:
    """The one face with work on it, for two cards beside each other."""
    scene = part_scene(part, faces_to_draw(part)[0], unit, letters=False)
    best: Plot | None = None
    fewest = 0
    for scale in (*_scales(part, unit), *_smaller(part, unit)):
        drawn = plot(scene, scale)
        if drawn.area.width > width_mm or drawn.area.height > _SMALL_TALL:
            continue
        crowded = len(clashes(drawn.groups))
        if best is None or crowded < fewest:
            best, fewest = drawn, crowded
        if not fewest or scale in _smaller(part, unit):
            break
    return best if best is not None else plot(scene, SCALES[unit][-1])

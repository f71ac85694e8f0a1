"""Edges of fillers at the wall, drawn wider than high, to see what is scribed off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from textwrap import wrap

from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing.hatching import SECTION
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, line, rectangle
from casewright.install.scribing import ScribeProfile

__all__ = ["WIDER", "scribe_scene"]

WIDER = 6
"""So many times as wide as high."""

_CASE, _WALL, _APART = Fraction(90), Fraction(60), Fraction(620)  # [mm of model]
_WORDS = 2.2
_LETTERS = 20  # of a line below a filler: no more than its place is wide


def scribe_scene(profiles: Sequence[ScribeProfile], unit: Unit) -> Scene:
    """Fillers of a wall side by side, each with its case, the wall beside it and the line between.

    Hatched: what is scribed off.
    """
    elements: list[Element] = []
    at = Fraction(0)
    for profile in profiles:
        elements.extend(_filler(profile, at, unit))
        at += profile.filler.part.finished.width.value * WIDER + _APART
    return Scene(tuple(elements), "fillers and what is scribed off them")


def _filler(profile: ScribeProfile, at: Fraction, unit: Unit) -> Iterator[Element]:
    """From its case outward: mirrored where the case stands to its right."""
    side = -1 if profile.filler.side == "left" else 1
    face = profile.filler.part
    wide = face.finished.width.value * WIDER
    base = at + (wide if side < 0 else 0)
    foot = profile.points[0].above_floor.value
    points = [(p, p.above_floor.value - foot, p.gap.value * WIDER) for p in profile.points]
    low, high = points[0][1], points[-1][1]
    tag = Tag(path=face.path, title=face.title)

    def x(out: Fraction) -> Fraction:
        return base + side * out

    edge = [(x(gap), height) for _, height, gap in points]
    yield rectangle((x(-_CASE), low), (x(Fraction(0)), high), NEIGHBOUR, fill=Ink.TINT)
    yield rectangle((x(Fraction(0)), low), (x(wide), high), VISIBLE, tag=tag)
    yield Polyline((*edge, (x(wide), high), (x(wide), low)), HIDDEN, closed=True, hatch=SECTION)
    yield Polyline(tuple(edge), VISIBLE)
    for point, height, gap in points:
        yield line((x(Fraction(0)), height), (x(gap), height), THIN, ink=Ink.SOFT)
        words = (measure_of(point.gap, unit), ", off ", measure_of(point.off, unit))
        yield Text((x(wide), height), words, _WORDS, anchor="start" if side > 0 else "end",
                   shift_mm=(2.0 * side, 0.0), tag=Tag(path=point.off.path))  # fmt: skip
    middle = (low + high) / 2
    yield Text((x(-_CASE / 2), middle), "case", _WORDS, rotation_deg=90.0, ink=Ink.SOFT)
    below = (face.mark, *wrap(profile.run.spec.title, _LETTERS))
    for number, each in enumerate(below):
        yield Text((x(wide / 2), low), each, _WORDS, weight=600 if number == 0 else 400,
                   shift_mm=(0.0, -4.0 - number * 1.5 * _WORDS))  # fmt: skip

"""Marking sticks: heights of slides that several sides share."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Bores
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.jigs.model import LineMark, MarkingStick
from casewright.jigs.numbers import JigNumbers

__all__ = ["sticks"]

_ENOUGH = 2
_HOW = (
    "Stand it on the lower end of the side, flush with the front edge, and strike every line off "
    "it; then the same on the other side. The lines are where the screws of the slides go."
)


def sticks(numbers: JigNumbers) -> Iterator[MarkingStick]:
    """A stick for each family of sides whose slides lie at the same heights."""
    families: dict[tuple[Fraction, ...], list[tuple[Part, list[Dim]]]] = {}
    for part in numbers.room.parts:
        heights = _heights(part)
        if len(heights) > 1:
            families.setdefault(tuple(h.value for h in heights), []).append((part, heights))
    worth = [found for found in families.values() if len(found) >= _ENOUGH]
    for number, found in enumerate(worth, start=1):
        name = "slides" if len(worth) == 1 else f"slides_{number}"
        _, heights = found[0]
        marks = tuple(
            LineMark(at, f"slide {n}, from the bottom") for n, at in enumerate(heights, start=1)
        )
        top = numbers.named(name, "length", heights[-1] + numbers.style("jig_margin"))
        uses = tuple(part.path for part, _ in found)
        yield MarkingStick(f"jig.{name}", "Slide stick", _HOW, top, marks, uses)


def _heights(part: Part) -> list[Dim]:
    """Heights of the slides on a side, from its lower end; each once."""
    if part.role != "side":
        return []
    rows = [
        feature.places[0][0]
        for feature in part.features
        if isinstance(feature, Bores) and feature.kind == "slide" and feature.datum_l == "l0"
    ]
    found = {row.value: row for row in rows}
    return [found[value] for value in sorted(found)]

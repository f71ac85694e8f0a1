"""Slides in pairs, and the longer screws that the pulls of drawers want."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.pieces import pieces
from casewright.buying.spares import FIXED_SPARES, SCREWS
from casewright.buying.words import counted, length
from casewright.casework.cases import Drawer
from casewright.casework.features import Bores
from casewright.dims import Way, round_to
from casewright.room.model import Room

__all__ = ["slide_lines"]

_THREAD = Fraction(6)
"""What a pull's screw goes into the pull [mm] (common practice)."""
_SOLD = {"in": Fraction(127, 20), "mm": Fraction(5)}


def slide_lines(room: Room) -> Iterator[BuyLine]:
    """A line for each kind and length of slides; then the screws of drawers' pulls."""
    drawers: dict[tuple[str, Fraction], list[Drawer]] = {}
    for case in room.cases:
        for drawer in case.drawers:
            key = (drawer.slides, drawer.slide_length.value)
            drawers.setdefault(key, []).append(drawer)
    hardware = room.spec.hardware
    for (kind, size), own in sorted(drawers.items()):
        sheet = hardware.undermount if kind == "undermount" else hardware.slide
        yield pieces(
            "drawer hardware", f"{sheet.title}, {length(size, room.spec.unit)}", sheet.key,
            len(own), FIXED_SPARES, paths=tuple(drawer.path for drawer in own),
            why=f"a pair for each of {counted(len(own), 'drawer')}",
            note="type its data sheet into the job before cutting" if sheet.placeholder else "",
        )  # fmt: skip
    yield from _pull_screws(room)


def _pull_screws(room: Room) -> Iterator[BuyLine]:
    """Through the front and the box's front behind it."""
    unit = room.spec.unit
    found: dict[Fraction, dict[str, int]] = {}
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        fronts = {front.path: front for front in case.fronts}
        for drawer in case.drawers:
            front = fronts.get(drawer.front)
            holes = [
                (feature, part)
                for part in (parts[path] for path in drawer.parts)
                for feature in part.features
                if isinstance(feature, Bores) and feature.kind == "pull play"
            ]
            if front is None or not holes:
                continue
            through = parts[front.pull.rpartition(".")[0]].finished.thickness.value
            through += holes[0][1].finished.thickness.value + _THREAD
            size = round_to(through, _SOLD[unit], Way.DOWN)[0]
            found.setdefault(size, {})[drawer.path] = len(holes[0][0].places)
    for size, own in sorted(found.items()):
        need = sum(own.values())
        yield pieces(
            "drawer hardware", f"machine screw for pulls, {length(size, unit)}", "pull_screw",
            need, SCREWS, paths=tuple(own),
            why=f"one for each of {need} holes through front and box of "
            f"{counted(len(own), 'drawer')}; the screws that come with a pull are for doors",
        )  # fmt: skip

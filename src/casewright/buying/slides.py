"""Slides in pairs, and the longer screws that the pulls of drawers want."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.numbers import sums
from casewright.buying.pieces import pieces
from casewright.buying.spares import FIXED_SPARES, SCREWS
from casewright.buying.words import counted
from casewright.casework.cases import Drawer
from casewright.casework.features import Bores
from casewright.dims import Dim, Unit, Way, round_to, tell, total
from casewright.findings import Limit
from casewright.room.model import Room

__all__ = ["slide_lines"]

_THREAD = Limit("pull_screw.thread", "", "6", "what a pull's screw goes into the pull")
_SOLD: dict[Unit, Fraction] = {"in": Fraction(127, 20), "mm": Fraction(5)}
"""Steps that its screws are sold in: a quarter inch or 5 mm [mm]."""


def slide_lines(room: Room) -> Iterator[BuyLine]:
    """A line for each kind and length of slides; then the screws of drawers' pulls."""
    drawers: dict[tuple[str, Fraction], list[Drawer]] = {}
    for case in room.cases:
        for drawer in case.drawers:
            key = (drawer.slides, drawer.slide_length.value)
            drawers.setdefault(key, []).append(drawer)
    hardware = room.spec.hardware
    for number, ((kind, _), found) in enumerate(sorted(drawers.items()), start=1):
        sheet = hardware.undermount if kind == "undermount" else hardware.slide
        own = sums(room, "slides", f"size_{number}")
        what = tell("{}, {}", sheet.title, own.length(found[0].slide_length))
        yield pieces(
            "drawer hardware", what, sheet.key,
            len(found), FIXED_SPARES, paths=tuple(drawer.path for drawer in found),
            why=f"a pair for each of {counted(len(found), 'drawer')}", numbers=own.numbers,
            note="type its data sheet into the job before cutting" if sheet.placeholder else "",
        )  # fmt: skip
    yield from _pull_screws(room)


def _pull_screws(room: Room) -> Iterator[BuyLine]:
    """Through the front and the box's front behind it."""
    own, step = sums(room, "pull_screw", "drawers"), _SOLD[room.spec.unit]
    found: dict[Fraction, dict[str, int]] = {}
    dims: dict[Fraction, Dim] = {}
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
            outer, inner = parts[front.pull.rpartition(".")[0]], holes[0][1]
            sizes = (outer.finished.thickness, inner.finished.thickness, own.limit(_THREAD))
            size = round_to(total(*sizes).value, step, Way.DOWN)[0]
            dims.setdefault(size, Dim("round", (total(*sizes), step), size))
            found.setdefault(size, {})[drawer.path] = len(holes[0][0].places)
    for size, drawers in sorted(found.items()):
        need = sum(drawers.values())
        yield pieces(
            "drawer hardware", tell("machine screw for pulls, {}", own.length(dims[size])),
            "pull_screw", need, SCREWS, paths=tuple(drawers), numbers=own.numbers,
            why=f"one for each of {need} holes through front and box of "
            f"{counted(len(drawers), 'drawer')}; the screws that come with a pull are for doors",
        )  # fmt: skip

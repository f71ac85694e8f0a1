"""Drawings for the pages in the shop, on paper as narrow as their lettering allows.

The glass of a phone is some 62 mm wide between its margins: what is drawn on paper of that width
is lettered there as large as on paper.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from fractions import Fraction
from functools import partial

from casewright.casework.features import Face
from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing import Plot, ScaleError, Scene, View, clashes, largest, sheet, struck
from casewright.drawing.hanging_elevation import hanging_scene
from casewright.drawing.lift_view import lift_scene, wall_key
from casewright.drawing.part_view import part_scene
from casewright.drawing.pulled_apart import pulled_apart_scene
from casewright.drawing.sheet_layout import cut_scene, sheet_key
from casewright.drawing.wall_stretch import heights_scene, stretch_key, stretch_scene
from casewright.install.stretches import stretches
from casewright.outputs.svg import svg_text
from casewright.packet.hold_marks import HoldMarks
from casewright.web.shop_assembly import parts_by_then
from casewright.web.shop_book import Bound

__all__ = ["ShopDrawings"]

_WIDTHS = (
    62.0,
    70.0,
    78.0,
    86.0,
    95.0,
    105.0,
)  # of paper, the widest where lettering lies over lettering [mm]
_PORTION, _UPRIGHT = 1.3, 1.7  # height to width, at most: of a drawing; of a long part [-]
_SLENDER = 2  # length to width from which on a part is long [-]
_FACES: Mapping[str, Face] = {"A": "A", "B": "B"}
_LARGEST = Fraction(2)  # scale of a part
_WALL_WIDTHS = (82.0, 105.0, 140.0, 190.0)
_STAMPS = (40.0, 62.0, 105.0, 190.0, 400.0)  # [mm on paper]
_MOST = 400


class ShopDrawings:
    """Draws what cards name, and keeps what was drawn while the book is the same."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._stamp = ""
        self._kept: dict[str, str] = {}

    def drawn(self, bound: Bound, name: str) -> str | None:
        """A drawing as SVG, None where there is none of that name."""
        with self._lock:
            if self._stamp != bound.stamp or len(self._kept) > _MOST:
                self._stamp, self._kept = bound.stamp, {}
            if name not in self._kept:
                plot = _plot(bound, name)
                if plot is None:
                    return None
                self._kept[name] = svg_text(plot, with_ids=False)
            return self._kept[name]


def _plot(bound: Bound, name: str) -> Plot | None:
    kind, _, rest = name.partition(".")
    drawn = _KINDS.get(kind)
    return None if drawn is None else drawn(bound, rest)


def _wall(bound: Bound, key: str) -> Plot | None:
    """A wall with all its marks."""
    hang = bound.day.walls.get(key)
    if hang is None:
        return None
    return _fitted(bound, hanging_scene(hang, _unit(bound)), _WALL_WIDTHS, None)


def _heights(bound: Bound, key: str) -> Plot | None:
    """All heights of a wall."""
    hang = bound.day.walls.get(key)
    return None if hang is None else _fitted(bound, heights_scene(hang, _unit(bound)))


def _stretch(bound: Bound, rest: str, *, is_key: bool) -> Plot | None:
    """'garden.3': a stretch of a wall with its marks, or where on the wall it is."""
    key, _, number = rest.rpartition(".")
    hang = bound.day.walls.get(key)
    found = () if hang is None else stretches(hang.marks)
    if hang is None or not number.isdecimal() or not 0 < int(number) <= len(found):
        return None
    stretch = found[int(number) - 1]
    if is_key:
        return _key(bound, stretch_key(hang, stretch))
    return _fitted(bound, stretch_scene(hang, stretch, _unit(bound)))


def _unit(bound: Bound) -> Unit:
    return bound.room.spec.unit


def _sheet(bound: Bound, rest: str, *, is_key: bool) -> Plot | None:
    """'1a2b3c4d.plan.plywood.12.3': the cuts of a setting on a sheet, or where on it they are."""
    words = rest.split(".")
    hand = next((each for each in bound.plans if each.name == words[0]), None)
    room = bound.room
    if hand is None or len(words) < 4:
        return None
    path, card, number = ".".join(words[1:-2]), words[-2], words[-1]
    for plan in hand.breakdown.plans:
        for tree in plan.solution.tree:
            if plan.path == path and str(tree.sheet + 1) == number:
                steps = {step.number for step in plan.order.steps if str(step.card) == card}
                if is_key:
                    return _key(bound, sheet_key(plan, tree, steps))
                waits = HoldMarks(room, bound.points).words
                scene = cut_scene(plan, tree, steps, _unit(bound), waits=waits)
                return _fitted(bound, scene)
    return None


def _lift(bound: Bound, key: str, *, is_key: bool) -> Plot | None:
    """A case at its place, or where on its wall that is."""
    for hang in bound.day.walls.values():
        for place in hang.places:
            if place.case.key == key and is_key:
                return _key(bound, wall_key(hang, place))
            if place.case.key == key:
                return _fitted(bound, lift_scene(hang, place, _unit(bound)))
    return None


def _key(bound: Bound, scene: Scene) -> Plot:
    """A picture without words: it is read at any size."""
    return _fitted(bound, scene, _STAMPS, None)


def _view(bound: Bound, rest: str) -> Plot | None:
    """'A.sink.side_left': one face of a part, lying or upright, as it is lettered largest."""
    word, _, path = rest.partition(".")
    part = next((each for each in bound.room.parts if each.path == path), None)
    face = _FACES.get(word)
    if part is None or face is None:
        return None
    return _clearest(_faces(part, face, _unit(bound)))


def _faces(part: Part, face: Face, unit: Unit) -> Iterator[Plot]:
    """Lying and upright, a long part upright first: a phone is taller than it is wide."""
    size = part.finished
    is_long = size.length.value > size.width.value * _SLENDER
    lies, stands = (
        View(part_scene(part, face, unit, standing=standing), f"face {face}")
        for standing in (False, True)
    )
    long = [(stands, wide, _UPRIGHT) for wide in _WIDTHS] if is_long else []
    either = [(view, wide, _PORTION) for wide in _WIDTHS for view in (lies, stands)]
    for view, wide, portion in (*long, *either):
        with suppress(ScaleError):
            yield sheet([[view]], wide, wide * portion, unit, at_most=_LARGEST, bar=False)


def _step(bound: Bound, rest: str) -> Plot | None:
    """'sink.4': a case at a step, what comes in at it beside its place."""
    key, _, number = rest.rpartition(".")
    case = next((each for each in bound.room.cases if each.key == key), None)
    if case is None or not number.isdecimal():
        return None
    there, comes = parts_by_then(bound.room, case, int(number))
    return _fitted(bound, pulled_apart_scene(case, there, comes))


def _fitted(
    bound: Bound,
    scene: Scene,
    widths: tuple[float, ...] = _WIDTHS,
    at_most: Fraction | None = Fraction(4),
) -> Plot:
    def drawn() -> Iterator[Plot]:
        for wide in widths:
            with suppress(ScaleError):
                yield largest(
                    scene, wide, wide * _PORTION, _unit(bound), at_most=at_most, fine=True
                )

    return _clearest(drawn())


def _clearest(plots: Iterable[Plot]) -> Plot:
    """The first on which nothing lies over what must be read, else the one where least does."""
    best: tuple[int, Plot] | None = None
    for drawn in plots:
        flaws = len(clashes(drawn.groups)) + len(struck(drawn.groups))
        if not flaws:
            return drawn
        if best is None or flaws < best[0]:
            best = (flaws, drawn)
    if best is None:
        raise AssertionError
    return best[1]


_KINDS: Mapping[str, Callable[[Bound, str], Plot | None]] = {
    "cut": partial(_sheet, is_key=False),
    "sheet": partial(_sheet, is_key=True),
    "lift": partial(_lift, is_key=False),
    "at": partial(_lift, is_key=True),
    "view": _view,
    "step": _step,
    "wall": _wall,
    "heights": _heights,
    "stretch": partial(_stretch, is_key=False),
    "within": partial(_stretch, is_key=True),
}

"""The key to the drawings: every sign and line with what it says."""

from __future__ import annotations

from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, CUT, HIDDEN, NEIGHBOUR, VISIBLE, Pen
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, line
from casewright.drawing.symbols import SIGNS, GrainArrow, Sign, SignKind

__all__ = ["key_scene"]

_STEP = 6.8
_WORDS = 14.0
_COLUMN = 96.0
_HALF_LINE = 6.0

_PENS: tuple[tuple[Pen, str], ...] = (
    (CUT, "cut through"),
    (VISIBLE, "edge that is seen"),
    (HIDDEN, "edge behind something"),
    (CENTRE, "centre line"),
    (NEIGHBOUR, "what stands beside"),
)


def key_scene() -> Scene:
    """Signs on the left, kinds of lines on the right. To be plotted at full size."""
    elements: list[Element] = []
    for row, (sign, words) in enumerate(SIGNS.items()):
        elements.extend(_sign_row(sign, words, -row * _STEP))
    grain = -len(_PENS) * _STEP
    for row, (pen, words) in enumerate(_PENS):
        y = -row * _STEP
        elements.append(line((_COLUMN - _HALF_LINE, y), (_COLUMN + _HALF_LINE, y), pen))
        elements.append(_words(_COLUMN, y, words))
    elements.append(GrainArrow((_COLUMN, grain), 2 * _HALF_LINE))
    elements.append(_words(_COLUMN, grain, "grain runs this way"))
    return Scene(tuple(elements), "Key to the drawings")


def _sign_row(sign: SignKind, words: str, y: float) -> list[Element]:
    foot = {"datum": -1.6, "look": -2.2}.get(sign, 0.0)  # signs that stand on their foot
    return [Sign(sign, (0.0, y), shift_mm=(0.0, foot), size_mm=4.6), _words(0.0, y, words)]


def _words(x: float, y: float, words: str) -> Text:
    return Text((x + _WORDS, y), words, 2.4, anchor="start")

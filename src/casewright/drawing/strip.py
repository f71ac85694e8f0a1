"""The strip of paper beside a view in which its dimensions stand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Anchor, Mark, PaperPoint, Stroke
from casewright.drawing.pens import DIMENSION, TICK, Ink

__all__ = ["GAP", "TEXT_HEIGHT", "Side", "Strip"]

Side = Literal["below", "above", "left", "right"]

TEXT_HEIGHT = 3.0
"""Height of the figures of a dimension [mm on paper]: read at arm's length."""

GAP = 0.9
"""Between a dimension line and its number [mm on paper]."""

_HALF_TICK = 0.85


@dataclass(frozen=True, slots=True)
class Strip:
    """A frame of its own: u along the axis, v outward from the view [mm on paper].

    Parameters
    ----------
    base
        Where v is 0, across the axis [mm on paper].
    """

    side: Side
    base: float

    @property
    def lies(self) -> bool:
        """Whether its axis is horizontal."""
        return self.side in ("below", "above")

    @property
    def _outward(self) -> float:
        return -1.0 if self.side in ("below", "left") else 1.0

    def depth(self, across: float) -> float:
        """The v of a place across the axis [mm on paper]; under 0 inside the view."""
        return (across - self.base) * self._outward

    def point(self, u: float, v: float) -> PaperPoint:
        """A place of the strip on paper."""
        across = self.base + v * self._outward
        return (u, across) if self.lies else (across, u)

    def stroke(self, *places: tuple[float, float], ink: Ink = Ink.INK) -> Stroke:
        """A thin line through places of the strip."""
        return Stroke(tuple(self.point(u, v) for u, v in places), DIMENSION, ink)

    def tick(self, u: float, v: float, *, ink: Ink = Ink.INK) -> Stroke:
        """The oblique stroke where a dimension line ends."""
        x, y = self.point(u, v)
        low, high = (x - _HALF_TICK, y - _HALF_TICK), (x + _HALF_TICK, y + _HALF_TICK)
        return Stroke((low, high), TICK, ink)

    def along(self, text: Inscription) -> float:
        """Room an upright number needs along the axis [mm on paper]."""
        return text.width if self.lies else text.extent

    def across(self, text: Inscription) -> float:
        """Room an upright number needs across the axis [mm on paper]."""
        return text.extent if self.lies else text.width

    def upright(self, text: Inscription, u: float, near: float, far: float) -> Iterable[Mark]:
        """An upright number between two depths, nearest to the first; on a patch of paper."""
        anchor: Anchor = "middle"
        v = (near + far) / 2
        if not self.lies:
            anchor, v = ("end" if self.side == "left" else "start"), min(near, far)
        at = self.point(u, v)
        yield text.ground(at, anchor=anchor)
        yield from text.marks(at, anchor=anchor)

    def outward(self, text: Inscription, u: float, v: float) -> Iterable[Mark]:
        """A number that reads away from the view or toward it, beginning at a depth."""
        near_end: Anchor = "end" if self.side in ("below", "left") else "start"
        turned = 90.0 if self.lies else 0.0
        at = self.point(u, v)
        yield text.ground(at, anchor=near_end, rotation_deg=turned)
        yield from text.marks(at, anchor=near_end, rotation_deg=turned)

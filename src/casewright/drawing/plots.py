"""Plots of scenes that are asked for again and again while pages are being arranged."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from casewright.drawing.marks import Area
from casewright.drawing.scene import Laid, Plot, Scene

__all__ = ["Plots"]

_Key = tuple[int, Fraction]


def _any(_: Plot) -> bool:
    return True


class Plots:
    """Scenes on paper, each at a scale drawn once.

    Laid out is kept no longer than whoever asked for it keeps it: only how much paper it needs.

    Parameters
    ----------
    accept
        Asked of each plot; one that it says no to counts as none.
    """

    def __init__(self, accept: Callable[[Plot], bool] = _any) -> None:
        self._accept = accept
        self._scenes: dict[int, Scene] = {}  # by identity: comparing them would take longer
        self._areas: dict[_Key, Area] = {}
        self._plots: dict[_Key, Plot | None] = {}

    def laid(self, scene: Scene, scale: Fraction) -> Laid:
        """A scene at a scale, its lettering not yet in place."""
        key = self._key(scene, scale)
        laid = Laid(scene, scale, self._areas.get(key))
        self._areas[key] = laid.area
        return laid

    def plot(self, laid: Laid) -> Plot | None:
        """The whole picture; None when it is not accepted."""
        key = self._key(laid.scene, laid.scale)
        if key not in self._plots:
            drawn = laid.plot()
            self._plots[key] = drawn if self._accept(drawn) else None
        return self._plots[key]

    def _key(self, scene: Scene, scale: Fraction) -> _Key:
        self._scenes[id(scene)] = scene
        return id(scene), scale

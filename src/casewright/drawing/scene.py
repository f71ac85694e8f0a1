"""Scenes and plots: what is drawn, and what it becomes on paper at a scale."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from casewright.drawing.choice import Choice
from casewright.drawing.marks import Area, Group
from casewright.drawing.shapes import Element
from casewright.drawing.taken import Taken

__all__ = ["Laid", "Plot", "Scene", "plot", "plot_within"]

_MARGIN_MM = 0.5


@dataclass(frozen=True, slots=True)
class Scene:
    """A picture in model coordinates; later elements lie over earlier ones.

    Parameters
    ----------
    elements
        Shapes, lettering, dimensions, signs.
    title
        What it shows, in words.
    """

    elements: tuple[Element, ...]
    title: str = ""


@dataclass(frozen=True, slots=True)
class Plot:
    """A picture on paper [mm, y upward].

    Parameters
    ----------
    groups
        Marks by element, in drawing order.
    area
        The paper it takes.
    scale
        Millimetres of model to one of paper; None when it holds views at several scales.
    """

    groups: tuple[Group, ...]
    area: Area
    scale: Fraction | None = None
    title: str = ""

    def moved(self, dx: float, dy: float) -> Plot:
        """The same picture elsewhere on its paper."""
        groups = tuple(group.moved(dx, dy) for group in self.groups)
        return replace(self, groups=groups, area=self.area.moved(dx, dy))

    def reduced(self, by: Fraction) -> Plot:
        """The same picture on less paper, lettering and all, as a copier makes it smaller.

        Parameters
        ----------
        by
            So many times as large: 1/2 for half the size.
        """
        factor = float(by)
        area = Area(*(each * factor for each in self.area))
        scale = None if self.scale is None else self.scale / by
        groups = tuple(group.reduced(factor) for group in self.groups)
        return replace(self, groups=groups, area=area, scale=scale)


def plot(scene: Scene, scale: Fraction | int = 1) -> Plot:
    """A scene on paper.

    Parameters
    ----------
    scale
        Millimetres of model to one of paper: 8 for 1:8.
    """
    return Laid(scene, Fraction(scale)).plot()


def plot_within(scene: Scene, scale: Fraction, width_mm: float, height_mm: float) -> Plot | None:
    """A scene on paper; None when it takes more than so much of it [mm]."""
    laid = Laid(scene, scale)
    if laid.area.width > width_mm or laid.area.height > height_mm:
        return None
    drawn = laid.plot()
    fits = drawn.area.width <= width_mm and drawn.area.height <= height_mm
    return drawn if fits else None


class Laid:
    """A scene at a scale, its lettering not yet in place: enough to see that it will not fit.

    Parameters
    ----------
    scale
        Millimetres of model to one of paper.
    area
        Paper that it needs at least, where that is known already [mm].
    """

    def __init__(self, scene: Scene, scale: Fraction, area: Area | None = None) -> None:
        self.scene, self.scale, self._area = scene, scale, area

    @cached_property
    def area(self) -> Area:
        """Paper that it needs at least: without what still has to find its place [mm]."""
        return self._area or Area.around(self._bound_areas())

    @cached_property
    def _bound(self) -> list[tuple[Group, ...] | Choice]:
        """What can stand in one place only, and what still has to find its place, in order."""
        return [
            each if isinstance(each, Choice) else tuple(each.groups(self.scale))
            for each in self.scene.elements
        ]

    def _bound_areas(self) -> Iterator[Area]:
        bound = (each for each in self._bound if not isinstance(each, Choice))
        return (group.area for each in bound for group in each if group.marks)

    def plot(self) -> Plot:
        """The whole picture, with a narrow margin for the width of its lines."""
        groups = tuple(group for group in self._settled() if group.marks)
        x0, y0, x1, y1 = Area.around(group.area for group in groups)
        margin = _MARGIN_MM
        wide = Area(x0 - margin, y0 - margin, x1 + margin, y1 + margin)
        return Plot(groups, wide, self.scale, self.scene.title)

    def _settled(self) -> tuple[Group, ...]:
        """Marks in the order of the elements; those with a choice of places find them last."""
        bound = [each for each in self._bound if not isinstance(each, Choice)]
        if len(bound) == len(self._bound):
            return tuple(group for each in bound for group in each)
        taken = Taken()
        for each in bound:
            taken.add(each)
        found: list[Group] = []
        for element in self._bound:
            groups = element
            if isinstance(groups, Choice):
                groups = groups.settled(self.scale, taken)
                taken.add(groups)
            found.extend(groups)
        return tuple(found)

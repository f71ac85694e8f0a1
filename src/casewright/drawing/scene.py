"""Scenes and plots: what is drawn, and what it becomes on paper at a scale."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.drawing.choice import Choice
from casewright.drawing.marks import Area, Group
from casewright.drawing.shapes import Element
from casewright.drawing.taken import Taken

__all__ = ["Plot", "Scene", "bound_area", "plot"]

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
    return _plot_elements(scene.elements, Fraction(scale), scene.title)


def bound_area(scene: Scene, scale: Fraction) -> Area:
    """Paper that a scene needs at least: without what still has to find its place [mm]."""
    bound = (each for each in scene.elements if not isinstance(each, Choice))
    return Area.around(group.area for each in bound for group in each.groups(scale) if group.marks)


def _plot_elements(elements: Iterable[Element], scale: Fraction, title: str) -> Plot:
    """Elements on paper, with a narrow margin for the width of their lines."""
    groups = tuple(group for group in _settled(elements, scale) if group.marks)
    area = Area.around(group.area for group in groups)
    margin = _MARGIN_MM
    wide = Area(area.x0 - margin, area.y0 - margin, area.x1 + margin, area.y1 + margin)
    return Plot(groups, wide, scale, title)


def _settled(elements: Iterable[Element], scale: Fraction) -> tuple[Group, ...]:
    """Marks in the order of the elements; those with a choice of places find them last."""
    bound: list[tuple[Group, ...] | Choice] = [
        each if isinstance(each, Choice) else tuple(each.groups(scale)) for each in elements
    ]
    if not any(isinstance(each, Choice) for each in bound):
        return tuple(group for each in bound if isinstance(each, tuple) for group in each)
    taken = Taken()
    for each in bound:
        if isinstance(each, tuple):
            taken.add(each)
    found: list[Group] = []
    for each in bound:
        groups = each
        if isinstance(groups, Choice):
            groups = groups.settled(scale, taken)
            taken.add(groups)
        found.extend(groups)
    return tuple(found)

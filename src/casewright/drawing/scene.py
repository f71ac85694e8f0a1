"""Scenes and plots: what is drawn, and what it becomes on paper at a scale."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.drawing.marks import Area, Group
from casewright.drawing.shapes import Element

__all__ = ["Plot", "Scene", "plot"]

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


def plot(scene: Scene, scale: Fraction | int = 1) -> Plot:
    """A scene on paper.

    Parameters
    ----------
    scale
        Millimetres of model to one of paper: 8 for 1:8.
    """
    return _plot_elements(scene.elements, Fraction(scale), scene.title)


def _plot_elements(elements: Iterable[Element], scale: Fraction, title: str) -> Plot:
    """Elements on paper, with a narrow margin for the width of their lines."""
    groups = tuple(group for element in elements for group in element.groups(scale) if group.marks)
    area = Area.around(group.area for group in groups)
    margin = _MARGIN_MM
    wide = Area(area.x0 - margin, area.y0 - margin, area.x1 + margin, area.y1 + margin)
    return Plot(groups, wide, scale, title)

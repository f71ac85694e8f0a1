"""Placing views on one area of paper at the largest standard scale that fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.units import Unit
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Area, Group, Mark, PaperPoint, Tag
from casewright.drawing.pens import Ink
from casewright.drawing.scales import (
    SCALES,
    ScaleError,
    check_bar,
    check_bar_width,
    scale_text,
)
from casewright.drawing.scene import Plot, Scene, bound_area, plot
from casewright.drawing.shapes import Polyline

__all__ = ["View", "largest", "sheet", "sheet_at"]

_BETWEEN = 9.0  # least distance of two views beside each other, of two rows
_WIDEST = 26.0
_CAPTION = 9.5  # room for the words under a row of views
_TITLE_HEIGHT = 2.8
_BAR_ROOM = 6.5
_ROUNDING = 1e-6


@dataclass(frozen=True, slots=True)
class View:
    """One picture of a sheet.

    Parameters
    ----------
    title
        What is seen: 'Front, doors shown'.
    note
        A few words behind the scale.
    target
        Anchor that its title leads to.
    """

    scene: Scene
    title: str
    note: str = ""
    target: str = ""


def largest(
    scene: Scene, width_mm: float, height_mm: float, unit: Unit, *, at_most: Fraction | None = None
) -> Plot:
    """A scene at the largest standard scale that fits an area of paper.

    Parameters
    ----------
    width_mm, height_mm
        The area [mm of paper].
    at_most
        Largest scale wanted, as millimetres of model to one of paper.

    Raises
    ------
    ScaleError
        When even the smallest scale is too large.
    """
    for scale in _candidates([[scene]], width_mm, height_mm, unit, at_most):
        least = bound_area(scene, scale)
        if least.width > width_mm or least.height > height_mm:
            continue
        drawn = plot(scene, scale)
        if drawn.area.width <= width_mm and drawn.area.height <= height_mm:
            return drawn
    raise ScaleError(_too_large(scene.title, width_mm, height_mm))


def sheet(
    rows: Sequence[Sequence[View]],
    width_mm: float,
    height_mm: float,
    unit: Unit,
    *,
    at_most: Fraction | None = None,
    bar: bool = True,
) -> Plot:
    """Views in rows, all at one scale, the largest standard one that fits.

    Views of a row stand on one level: where their models' y is 0. Each has its title and scale
    under it, and the sheet a check bar.

    Parameters
    ----------
    width_mm, height_mm
        The area [mm of paper]. The width is filled; the height is as much as is needed.
    at_most
        Largest scale wanted, as millimetres of model to one of paper.
    bar
        Whether to draw the check bar.

    Raises
    ------
    ScaleError
        When even the smallest scale is too large.
    """
    scenes = [[view.scene for view in row] for row in rows]
    for scale in _candidates(scenes, width_mm, height_mm, unit, at_most):
        drawn = sheet_at(rows, scale, width_mm, height_mm, unit, bar=bar)
        if drawn is not None:
            return drawn
    raise ScaleError(_too_large(rows[0][0].title, width_mm, height_mm))


def sheet_at(
    rows: Sequence[Sequence[View]],
    scale: Fraction,
    width_mm: float,
    height_mm: float,
    unit: Unit,
    *,
    bar: bool = True,
) -> Plot | None:
    """Views in rows as on a `sheet`, at one scale; None when they do not fit.

    Parameters
    ----------
    scale
        As millimetres of model to one of paper.
    width_mm, height_mm
        The area [mm of paper].
    """
    height = height_mm - (_BAR_ROOM if bar else 0.0)
    least = [[bound_area(view.scene, scale) for view in row] for row in rows]
    if not _fits(least, rows, width_mm, height):
        return None
    plots = [[plot(view.scene, scale) for view in row] for row in rows]
    if not _fits([[p.area for p in row] for row in plots], rows, width_mm, height):
        return None
    return _placed(rows, plots, width_mm, unit, bar)


def _candidates(
    rows: Sequence[Sequence[Scene]],
    width_mm: float,
    height_mm: float,
    unit: Unit,
    at_most: Fraction | None,
) -> list[Fraction]:
    """Scales at which at least the bare shapes fit: the only ones worth plotting."""
    bare = [[_bare(scene) for scene in row] for row in rows]
    width = max(sum(area.width for area in row) for row in bare)
    height = sum(max(area.height for area in row) for row in bare)
    least = max(width / width_mm, height / height_mm) - _ROUNDING
    return [s for s in SCALES[unit] if s >= least and (at_most is None or s >= at_most)]


def _bare(scene: Scene) -> Area:
    """What the lines of a scene cover, without lettering and dimensions [mm of model]."""
    lines = (each.points for each in scene.elements if isinstance(each, Polyline))
    points = [(float(x), float(y)) for line in lines for x, y in line]
    return Area.around(Area(x, y, x, y) for x, y in points)


def _too_large(title: str, width_mm: float, height_mm: float) -> str:
    return f"{title or 'the picture'} does not fit {width_mm} x {height_mm} mm of paper"


def _column(area: Area, view: View) -> float:
    """Width a view takes, its title included."""
    return max(area.width, _caption_width(view))


def _caption_width(view: View) -> float:
    return Inscription(view.title, _TITLE_HEIGHT, 600).width


def _row_height(areas: Sequence[Area]) -> float:
    return max(area.y1 for area in areas) - min(area.y0 for area in areas) + _CAPTION


def _fits(
    areas: list[list[Area]], rows: Sequence[Sequence[View]], width: float, height: float
) -> bool:
    heights = sum(_row_height(row) for row in areas) + _BETWEEN * (len(areas) - 1)
    widths = [
        sum(_column(a, v) for a, v in zip(row, views, strict=True)) + _BETWEEN * (len(row) - 1)
        for row, views in zip(areas, rows, strict=True)
    ]
    return heights <= height and max(widths) <= width


def _placed(
    rows: Sequence[Sequence[View]], plots: list[list[Plot]], width: float, unit: Unit, bar: bool
) -> Plot:
    """Rows from the top down, y 0 at the top of the sheet."""
    groups: list[Group] = []
    y = 0.0
    for views, drawn in zip(rows, plots, strict=True):
        level = y - max(p.area.y1 for p in drawn)
        foot = level + min(p.area.y0 for p in drawn)
        for (x, column), p, view in zip(_places(drawn, views, width), drawn, views, strict=True):
            dx = x + (column - p.area.width) / 2 - p.area.x0
            groups.extend(p.moved(dx, level).groups)
            groups.append(_caption(view, p.scale, unit, (x + column / 2, foot)))
        y = foot - _CAPTION - _BETWEEN
    y += _BETWEEN
    if bar:
        y -= _BAR_ROOM
        groups.append(check_bar(unit, (width - check_bar_width(unit), y + 0.5)))
    title = ", ".join(view.title for row in rows for view in row)
    return Plot(tuple(groups), Area(0.0, y, width, 0.0), plots[0][0].scale, title)


def _places(
    plots: Sequence[Plot], views: Sequence[View], width: float
) -> list[tuple[float, float]]:
    """Left side and width of each column of a row, centred on the sheet."""
    columns = [_column(p.area, v) for p, v in zip(plots, views, strict=True)]
    spare = width - sum(columns)
    between = min(_WIDEST, spare / (len(columns) + 1)) if len(columns) > 1 else 0.0
    between = max(between, min(_BETWEEN, spare / max(1, len(columns) - 1)))
    x = (width - sum(columns) - between * (len(columns) - 1)) / 2
    places = []
    for column in columns:
        places.append((x, column))
        x += column + between
    return places


def _caption(view: View, scale: Fraction | None, unit: Unit, at: PaperPoint) -> Group:
    title = Inscription(view.title, _TITLE_HEIGHT, 600)
    marks: list[Mark] = list(title.marks((at[0], at[1] - 4.0), anchor="middle"))
    words = [scale_text(scale, unit)] if scale is not None else []
    small = Inscription(", ".join([*words, view.note] if view.note else words), 2.0, ink=Ink.SOFT)
    marks.extend(small.marks((at[0], at[1] - 8.0), anchor="middle"))
    return Group(Tag(target=view.target, title=view.title), tuple(marks), "caption")

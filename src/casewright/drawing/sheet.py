"""Placing views on one area of paper at the largest standard scale that fits."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.units import Unit
from casewright.drawing.captions import Caption, caption_height
from casewright.drawing.marks import Area, Group
from casewright.drawing.plots import Plots
from casewright.drawing.scales import (
    FINE_SCALES,
    SCALES,
    ScaleError,
    check_bar,
    check_bar_width,
)
from casewright.drawing.scene import Plot, Scene, plot_within
from casewright.drawing.shapes import Polyline

__all__ = ["View", "largest", "sheet", "sheet_at"]

_BETWEEN = 7.0  # least distance of two views beside each other, of two rows
_WIDEST = 26.0
_BAR_ROOM = 6.5
_ROUNDING = 1e-6
_FULL = Fraction(1)


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
    scene: Scene,
    width_mm: float,
    height_mm: float,
    unit: Unit,
    *,
    at_most: Fraction | None = None,
    fine: bool = False,
) -> Plot:
    """A scene at the largest standard scale that fits an area of paper.

    Parameters
    ----------
    width_mm, height_mm
        The area [mm of paper].
    at_most
        Largest scale wanted, as millimetres of model to one of paper.
    fine
        Of scales in small steps instead: for what is read, never scaled off.

    Raises
    ------
    ScaleError
        When even the smallest scale is too large.
    """
    steps = FINE_SCALES if fine else SCALES[unit]
    for scale in _candidates([[scene]], width_mm, height_mm, steps, at_most):
        drawn = plot_within(scene, scale, width_mm, height_mm)
        if drawn is not None:
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
    plots: Plots | None = None,
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
    plots
        What is known of its views from other areas they were tried on.

    Raises
    ------
    ScaleError
        When even the smallest scale is too large.
    """
    scenes = [[view.scene for view in row] for row in rows]
    for scale in _candidates(scenes, width_mm, height_mm, SCALES[unit], at_most):
        drawn = sheet_at(rows, scale, width_mm, height_mm, unit, bar=bar, plots=plots)
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
    reduction: Fraction = _FULL,
    plots: Plots | None = None,
) -> Plot | None:
    """Views in rows as on a `sheet`, at one scale; None when they do not fit.

    Parameters
    ----------
    scale
        As millimetres of model to one of paper.
    width_mm, height_mm
        The area [mm of paper].
    reduction
        Size of the lettering against the usual one: 1/2 for half as large, for what would not
        fit otherwise. Not with a check bar.
    plots
        What is known of its views; when they do not accept one, the sheet is None.
    """
    wide, high = width_mm / float(reduction), height_mm / float(reduction)
    wide -= _ROUNDING if reduction != _FULL else 0.0
    if bar:
        high -= _BAR_ROOM
    said, drawn_at = scale, scale * reduction

    def placed(areas: Iterable[Iterable[Area]]) -> list[_Row]:
        return [_row(views, row, said, unit) for views, row in zip(rows, areas, strict=True)]

    plots = plots or Plots()
    laid = [[plots.laid(view.scene, drawn_at) for view in row] for row in rows]
    if not _fit(placed((each.area for each in row) for row in laid), wide, high):
        return None
    views: list[list[Plot]] = [[] for _ in rows]
    for drawn_row, row in zip(views, laid, strict=True):
        for each in row:
            view = plots.plot(each)
            if view is None:
                return None
            drawn_row.append(view)
    places = placed((each.area for each in row) for row in views)
    if not _fit(places, wide, high):
        return None
    drawn = _placed(places, views, wide, unit, bar)
    return drawn if reduction == _FULL else drawn.reduced(reduction)


def _candidates(
    rows: Sequence[Sequence[Scene]],
    width_mm: float,
    height_mm: float,
    steps: Sequence[Fraction],
    at_most: Fraction | None,
) -> list[Fraction]:
    """Scales at which at least the bare shapes fit: the only ones worth plotting."""
    bare = [[_bare(scene) for scene in row] for row in rows]
    width = max(sum(area.width for area in row) for row in bare)
    height = sum(max(area.height for area in row) for row in bare)
    least = max(width / width_mm, height / height_mm) - _ROUNDING
    return [s for s in steps if s >= least and (at_most is None or s >= at_most)]


def _bare(scene: Scene) -> Area:
    """What the lines of a scene cover, without lettering and dimensions [mm of model]."""
    lines = (each.points for each in scene.elements if isinstance(each, Polyline))
    points = [(float(x), float(y)) for line in lines for x, y in line]
    return Area.around(Area(x, y, x, y) for x, y in points)


def _too_large(title: str, width_mm: float, height_mm: float) -> str:
    return f"{title or 'the picture'} does not fit {width_mm} x {height_mm} mm of paper"


@dataclass(frozen=True, slots=True)
class _Row:
    """Views beside each other: their captions and what they cover."""

    captions: tuple[Caption, ...]
    areas: tuple[Area, ...]

    @property
    def columns(self) -> list[float]:
        """Width each takes, its title included."""
        pairs = zip(self.captions, self.areas, strict=True)
        return [max(caption.least_width, area.width) for caption, area in pairs]

    @property
    def one_line(self) -> bool:
        """Whether title and scale stand on one line everywhere."""
        pairs = zip(self.captions, self.columns, strict=True)
        return all(caption.lies_within(column) for caption, column in pairs)

    @property
    def width(self) -> float:
        return sum(self.columns) + _BETWEEN * (len(self.areas) - 1)

    @property
    def height(self) -> float:
        high, low = max(area.y1 for area in self.areas), min(area.y0 for area in self.areas)
        return high - low + caption_height(one_line=self.one_line)

    def places(self, width: float) -> Iterator[tuple[float, float]]:
        """Left side and width of each column, centred on the sheet."""
        columns = self.columns
        spare = width - sum(columns)
        between = min(_WIDEST, spare / (len(columns) + 1)) if len(columns) > 1 else 0.0
        between = max(between, min(_BETWEEN, spare / max(1, len(columns) - 1)))
        x = (width - sum(columns) - between * (len(columns) - 1)) / 2
        for column in columns:
            yield x, column
            x += column + between


def _row(views: Iterable[View], areas: Iterable[Area], scale: Fraction, unit: Unit) -> _Row:
    captions = (Caption(view.title, scale, unit, view.note, view.target) for view in views)
    return _Row(tuple(captions), tuple(areas))


def _fit(rows: Sequence[_Row], width: float, height: float) -> bool:
    heights = sum(row.height for row in rows) + _BETWEEN * (len(rows) - 1)
    return heights <= height and max(row.width for row in rows) <= width


def _placed(
    rows: Sequence[_Row], plots: Sequence[Sequence[Plot]], width: float, unit: Unit, bar: bool
) -> Plot:
    """Rows from the top down, y 0 at the top of the sheet."""
    groups: list[Group] = []
    y = 0.0
    for row, drawn in zip(rows, plots, strict=True):
        level = y - max(area.y1 for area in row.areas)
        foot = level + min(area.y0 for area in row.areas)
        for (x, column), each, caption in zip(row.places(width), drawn, row.captions, strict=True):
            dx = x + (column - each.area.width) / 2 - each.area.x0
            groups.extend(each.moved(dx, level).groups)
            groups.append(caption.group((x + column / 2, foot), one_line=row.one_line))
        y -= row.height + _BETWEEN
    y += _BETWEEN
    if bar:
        y -= _BAR_ROOM
        groups.append(check_bar(unit, (width - check_bar_width(unit), y + 0.5)))
    title = ", ".join(caption.title for row in rows for caption in row.captions)
    return Plot(tuple(groups), Area(0.0, y, width, 0.0), plots[0][0].scale, title)

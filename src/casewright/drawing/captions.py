"""Words under the views of a sheet: what is seen, and at which scale."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.units import Unit
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Group, Mark, PaperPoint, Tag
from casewright.drawing.pens import Ink
from casewright.drawing.scales import scale_text

__all__ = ["Caption", "caption_height"]

_TITLE_HEIGHT, _SMALL = 2.8, 2.0
_BETWEEN = 3.0  # title and scale on one line
_FIRST, _SECOND = 4.0, 8.0  # middles of the lines under the view
_ONE_LINE, _TWO_LINES = 6.0, 9.5


@dataclass(frozen=True, slots=True)
class Caption:
    """The words under one view, on one line where the view is wide enough.

    Parameters
    ----------
    title
        What is seen.
    scale
        As millimetres of model to one of paper; None: not said.
    note
        A few words behind the scale.
    target
        Anchor that the title leads to.
    """

    title: str
    scale: Fraction | None
    unit: Unit
    note: str = ""
    target: str = ""

    @property
    def least_width(self) -> float:
        """Room it needs at least [mm of paper]."""
        return self._title.width

    def lies_within(self, width_mm: float) -> bool:
        """Whether it stands on one line of such a width [mm of paper]."""
        return self._title.width + _BETWEEN + self._small.width <= width_mm

    def group(self, middle: PaperPoint, *, one_line: bool) -> Group:
        """Its marks, from the middle of the foot of the view down."""
        x, foot = middle
        title, small = self._title, self._small
        marks: list[Mark] = []
        if one_line:
            left = x - (title.width + _BETWEEN + small.width) / 2
            marks.extend(title.marks((left, foot - _FIRST)))
            beside = (left + title.width + _BETWEEN, foot - _FIRST)
            marks.extend(small.marks(beside))
        else:
            marks.extend(title.marks((x, foot - _FIRST), anchor="middle"))
            marks.extend(small.marks((x, foot - _SECOND), anchor="middle"))
        return Group(Tag(target=self.target, title=self.title), tuple(marks), "caption")

    @property
    def _title(self) -> Inscription:
        return Inscription(self.title, _TITLE_HEIGHT, 600)

    @property
    def _small(self) -> Inscription:
        words = [scale_text(self.scale, self.unit)] if self.scale is not None else []
        if self.note:
            words.append(self.note)
        return Inscription(", ".join(words), _SMALL, ink=Ink.SOFT)


def caption_height(*, one_line: bool) -> float:
    """Height of the words under a row of views [mm of paper]."""
    return _ONE_LINE if one_line else _TWO_LINES

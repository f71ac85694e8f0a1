"""Packing dimensions into rows, and numbers into the room they have."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Group, Mark, Stroke, Tag
from casewright.drawing.pens import DIMENSION, Ink
from casewright.drawing.spread import spread
from casewright.drawing.strip import GAP, Strip

__all__ = ["PaperSpan", "row_groups"]

_ROOT_GAP = 0.8  # between the view and an extension line
_OVERSHOOT = 1.5  # of an extension line past its dimension line
_INNER = 2.5  # least room inside a dimension line
_LIFT = 3.2  # length of the leader to a lifted number
_SIDE_ROOM = 0.7  # on each side of a number inside its gap
_BETWEEN = 0.8  # lifted numbers beside each other
_BESIDE = 1.4  # from the end of a dimension line to a number beyond it
_TOUCH = 1e-9


@dataclass(frozen=True, slots=True)
class PaperSpan:
    """A dimension in its strip: two ends (u, root v) and a number."""

    ends: tuple[tuple[float, float], tuple[float, float]]
    text: Inscription
    tag: Tag
    underlined: bool
    ink: Ink

    @property
    def low(self) -> float:
        """Lower end along the axis [mm on paper]."""
        return min(self.ends[0][0], self.ends[1][0])

    @property
    def high(self) -> float:
        """Upper end along the axis [mm on paper]."""
        return max(self.ends[0][0], self.ends[1][0])

    @property
    def middle(self) -> float:
        """Half way along [mm on paper]."""
        return (self.low + self.high) / 2


@dataclass(slots=True)
class _Row:
    """Spans that share a dimension line."""

    spans: list[PaperSpan] = field(default_factory=list)
    level: float = 0.0
    inline: float = 0.0  # room across for the numbers that stand at the line
    beside: dict[int, float] = field(default_factory=dict)  # places of numbers beyond the line

    def takes(self, span: PaperSpan) -> bool:
        return all(
            span.high <= other.low + _TOUCH or other.high <= span.low + _TOUCH
            for other in self.spans
        )


def row_groups(strip: Strip, spans: Sequence[PaperSpan], offset: float) -> list[Group]:
    """The dimensions of a strip on paper, outermost row first, one group each."""
    rows = _packed(spans)
    v = offset
    for row in rows:
        row.beside = _beside(strip, row, spans)
        v = _level(strip, row, v)
    drawn: set[tuple[float, float]] = set()
    groups: list[Group] = []
    for i, row in reversed(list(enumerate(rows))):
        lifted = _lifted(strip, row, _ends(rows[i + 1 :]))
        for span in row.spans:
            marks = [
                *_extensions(strip, row, span, drawn),
                *_line(strip, row, span),
                *_number(strip, row, span, lifted.get(id(span))),
            ]
            groups.append(Group(span.tag, tuple(marks), "dimension"))
    return groups


def _packed(spans: Iterable[PaperSpan]) -> list[_Row]:
    rows: list[_Row] = []
    for span in sorted(spans, key=lambda s: (round(s.high - s.low, 6), s.low)):
        row = next((r for r in rows if r.takes(span)), None)
        if row is None:
            row = _Row()
            rows.append(row)
        row.spans.append(span)
    return rows


def _fits(strip: Strip, span: PaperSpan) -> bool:
    return strip.along(span.text) + 2 * _SIDE_ROOM <= span.high - span.low


def _beside(strip: Strip, row: _Row, spans: Sequence[PaperSpan]) -> dict[int, float]:
    """Numbers too wide for their gap that stand beyond its end, where no other line comes.

    Only where numbers lie along the line: elsewhere lifting costs no more room.
    """
    if not strip.lies or len(spans) == 1:
        return {}
    low, high = min(s.low for s in spans), max(s.high for s in spans)
    found = {}
    for span in row.spans:
        reach = _BESIDE + strip.along(span.text) / 2
        if not _fits(strip, span) and span.low <= low + _TOUCH:
            found[id(span)] = span.low - reach
        elif not _fits(strip, span) and span.high >= high - _TOUCH:
            found[id(span)] = span.high + reach
    return found


def _level(strip: Strip, row: _Row, v: float) -> float:
    """Set the depth of a row's line; return where the next row may begin."""
    inline = [strip.across(s.text) for s in row.spans if _fits(strip, s)]
    out = [s for s in row.spans if not _fits(strip, s)]
    lifted = [strip.across(s.text) for s in out if id(s) not in row.beside]
    aside = [strip.across(s.text) / 2 for s in out if id(s) in row.beside]
    room = GAP + max(inline) if inline else 0.0
    outer = max(_OVERSHOOT, *aside, 0.0)
    if strip.side == "below":  # numbers above the line, toward the view
        row.level, row.inline = v + max(_INNER, room, *aside), 0.0
    else:
        row.level, row.inline = v + (_INNER if v else 0.0), room
        outer = max(outer, room)
    if lifted:
        outer = max(outer, row.inline + _LIFT + max(lifted))
    return row.level + outer + GAP


def _ends(rows: Iterable[_Row]) -> list[float]:
    """Where extension lines of rows further out run through."""
    return sorted({round(u, 6) for row in rows for span in row.spans for u, _ in span.ends})


def _lifted(strip: Strip, row: _Row, crossing: list[float]) -> dict[int, float]:
    """Where the numbers without room in their gap stand along the axis."""
    out = [s for s in row.spans if not _fits(strip, s) and id(s) not in row.beside]
    halves = [strip.along(s.text) / 2 for s in out]
    places = spread([s.middle for s in out], halves, _BETWEEN, obstacles=crossing)
    return {id(s): place for s, place in zip(out, places, strict=True)}


def _extensions(
    strip: Strip, row: _Row, span: PaperSpan, drawn: set[tuple[float, float]]
) -> Iterator[Mark]:
    for u, root in span.ends:
        key = (round(u, 6), round(root, 6))
        if key not in drawn:
            drawn.add(key)
            yield strip.stroke((u, root + _ROOT_GAP), (u, row.level + _OVERSHOOT), ink=span.ink)


def _line(strip: Strip, row: _Row, span: PaperSpan) -> Iterator[Mark]:
    yield strip.stroke((span.low, row.level), (span.high, row.level), ink=span.ink)
    for u, _ in span.ends:
        yield strip.tick(u, row.level, ink=span.ink)


def _number(strip: Strip, row: _Row, span: PaperSpan, place: float | None) -> Iterator[Mark]:
    room = strip.across(span.text)
    beyond = row.beside.get(id(span))
    if beyond is not None:
        u, near, far = beyond, row.level - room / 2, row.level + room / 2
    elif place is None:
        toward_view = strip.side == "below"
        near = row.level + (-GAP if toward_view else GAP)
        far = near + (-room if toward_view else room)
        u = span.middle
    else:
        u, near = place, row.level + row.inline + _LIFT
        far = near + room
        straight = (span.middle, row.level + row.inline)
        yield strip.stroke((span.middle, row.level), straight, (u, near - 0.3), ink=span.ink)
    yield from strip.upright(span.text, u, near, far)
    if span.underlined:
        yield _underline(strip, span, u, near, far)


def _underline(strip: Strip, span: PaperSpan, u: float, near: float, far: float) -> Stroke:
    width, extent = span.text.width, span.text.extent
    if strip.lies:
        x, y = strip.point(u, (near + far) / 2)
        left = x - width / 2
    else:
        x, y = strip.point(u, min(near, far))
        left = x - width if strip.side == "left" else x
    low = y - extent / 2 - 0.5
    return Stroke(((left, low), (left + width, low)), DIMENSION, span.ink)

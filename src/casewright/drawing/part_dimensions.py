"""Dimensions of a part: every distance from its datum edge or its datum end."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise

from casewright.casework.features import Bores, Cut, Plane
from casewright.dims import Dim, Measure, measure_of
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.part_frame import Edge, PartFrame, faces_to_draw
from casewright.drawing.running import Running, Stop
from casewright.drawing.shapes import Element

__all__ = ["part_dimensions"]


@dataclass(slots=True)
class _Axis:
    """What is to be dimensioned along one axis of a part, by its place on that axis."""

    frame: PartFrame
    datum: Edge
    stops: dict[Fraction, Stop] = field(default_factory=dict)
    spans: dict[tuple[Fraction, Fraction], Span] = field(default_factory=dict)

    def stop(self, at: Fraction, measure: Measure) -> None:
        """A distance from the datum."""
        place = self.frame.x_or_y(self.datum, at)
        self.stops.setdefault(at, Stop(place, measure))

    def span(self, start: Fraction, end: Fraction, measure: Measure) -> None:
        """A distance between two places."""
        a, b = sorted(self.frame.x_or_y(self.datum, each) for each in (start, end))
        self.spans.setdefault((a, b), Span(a, b, measure))

    def whole(self, size: Dim) -> tuple[Span, ...]:
        """The finished size, then the spans."""
        a, b = sorted(self.frame.x_or_y(self.datum, each) for each in (Fraction(0), size.value))
        overall = Span(a, b, measure_of(size, self.frame.unit), emphasis=True)
        return overall, *(span for ends, span in self.spans.items() if ends != (a, b))


def part_dimensions(frame: PartFrame) -> Iterator[Element]:
    """Sizes on the sides away from the datums, distances from the datums beside them."""
    along, across = _Axis(frame, "l0"), _Axis(frame, "w0")
    for feature in frame.part.features:
        if isinstance(feature, Cut):
            lone = feature.kind == "notch" and feature.face not in faces_to_draw(frame.part)
            if frame.tells(feature) or lone:
                _cut(frame, feature, along, across)
        elif frame.tells(feature):
            _bores(frame, feature, along, across)
    size = frame.part.finished
    yield Dimensions(frame.side("w1"), frame.base("w1"), along.whole(size.length), offset_mm=2.2)
    yield Dimensions(frame.side("l0"), frame.base("l0"), across.whole(size.width), offset_mm=2.5)
    for axis, plane in ((along, "w0"), (across, "l1")):
        if axis.stops:
            edge: Edge = "w0" if plane == "w0" else "l1"
            yield Running(
                frame.side(edge), frame.base(edge), frame.base(axis.datum),
                tuple(axis.stops.values()), offset_mm=5.0 if plane == "w0" else 3.0,
            )  # fmt: skip


def _cut(frame: PartFrame, cut: Cut, along: _Axis, across: _Axis) -> None:
    l0, l1, w0, w1 = frame.cut_span(cut)
    if cut.face not in ("A", "B") or cut.kind in ("mitre", "bevel"):
        _slanted_or_in_edge(frame, cut, along, across)
        return
    at, width = measure_of(cut.at, frame.unit), measure_of(cut.width, frame.unit)
    axis, near, far, whole = (
        (along, l0, l1, frame.length) if cut.runs == "w" else (across, w0, w1, frame.width)
    )
    from_datum = cut.datum in ("l0", "w0")
    if cut.kind == "notch" and from_datum and not cut.at.value:
        axis.stop(far, width)
    elif cut.kind != "finger" or all(b - a != far - near for a, b in axis.spans):
        axis.span(near, far, width)  # the width of slots is told once for all
    if cut.at.value and _is_told(frame, cut):
        axis.stop(near, at) if from_datum else axis.span(far, whole, at)
    run = across if cut.runs == "w" else along
    _ends(frame, cut, run)


def _ends(frame: PartFrame, cut: Cut, run: _Axis) -> None:
    """Where a cut begins and ends along its run, as far as it does not go right through."""
    for end in (cut.start, cut.end):
        if end is not None and end.value:
            run.stop(end.value, measure_of(end, frame.unit))


def _slanted_or_in_edge(frame: PartFrame, cut: Cut, along: _Axis, across: _Axis) -> None:
    """The short point of a mitred part, the face beside a bevel, the depth of a cut in an edge."""
    _, _, w0, w1 = frame.cut_span(cut)
    if cut.edge is not None:
        across.span(w0, w1, measure_of(cut.depth, frame.unit))
        _ends(frame, cut, along)
    elif cut.kind == "bevel":  # what is left of the face is what is measured
        left = Measure(frame.width - w1, frame.unit, f"{cut.path}.face_width")
        across.span(w1, frame.width, left)
    elif cut.kind == "mitre" and cut.mitred_end == "l0":
        near, far = frame.width, frame.length - frame.width
        path = f"{frame.part.path}.short_point"
        along.span(near, far, Measure(far - near, frame.unit, path))


def _is_told(frame: PartFrame, cut: Cut) -> bool:
    """Of the slots of a box joint the lowest is told: a jig spaces those above it."""
    below = [
        other.at.value
        for other in frame.part.features
        if isinstance(other, Cut) and other.kind == "finger" and other.at.value
    ]
    return cut.kind != "finger" or cut.at.value == min(below)


def _bores(frame: PartFrame, bores: Bores, along: _Axis, across: _Axis) -> None:
    lengths = _distinct(place[0] for place in bores.places)
    widths = _distinct(place[1] for place in bores.places)
    if bores.kind == "hinge plate":
        middle = (lengths[0].value + lengths[-1].value) / 2
        along.stop(middle, Measure(middle, frame.unit, f"{bores.path}.from_end"))
        lengths = []
    if bores.kind == "pocket":  # the jig sets how far a pocket is from the end it points to
        lengths, widths = (lengths, []) if bores.toward in ("w0", "w1") else ([], widths)
    if bores.kind == "shelf pins":
        lengths = _row_ends(lengths, bores.pitch)
    if bores.kind == "pull":
        lengths = _pair(frame, along, bores.datum_l, lengths, bores.pitch)
        widths = _pair(frame, across, bores.datum_w, widths, bores.pitch)
    for dim in lengths:
        _place(frame, along, bores.datum_l, dim)
    for dim in widths:
        _place(frame, across, bores.datum_w, dim)


def _place(frame: PartFrame, axis: _Axis, datum: Plane, dim: Dim) -> None:
    """A hole from its datum: on the tape, or from the far end or edge."""
    position = frame.from_datum(datum, dim.value)
    if datum in ("l0", "w0"):
        axis.stop(position, measure_of(dim, frame.unit))
    else:
        whole = frame.length if datum == "l1" else frame.width
        axis.span(position, whole, measure_of(dim, frame.unit))


def _pair(
    frame: PartFrame, axis: _Axis, datum: Plane, dims: list[Dim], pitch: Dim | None
) -> list[Dim]:
    """Two holes of a pull: the second from the first, which the pull decides."""
    if len(dims) != 2 or pitch is None:
        return dims
    near, far = (frame.from_datum(datum, dim.value) for dim in dims)
    axis.span(near, far, measure_of(pitch, frame.unit))
    return dims[:1]


def _row_ends(dims: list[Dim], pitch: Dim | None) -> list[Dim]:
    """Holes at one pitch: the first, and where some are left out the ends of each stretch."""
    if pitch is None:
        return dims
    ends = dims[:1]
    for before, after in pairwise(dims):
        if after.value - before.value != pitch.value:
            ends += [before, after]
    return ends


def _distinct(dims: Iterable[Dim]) -> list[Dim]:
    seen: dict[Fraction, Dim] = {}
    for dim in dims:
        seen.setdefault(dim.value, dim)
    return sorted(seen.values(), key=lambda d: d.value)

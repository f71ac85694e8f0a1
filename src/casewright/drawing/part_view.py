"""A part as it lies on the bench, one face up, everything dimensioned from its datums.

The datum edge lies nearest to you. The datum end is at the left for a right-hand part seen on
face A, at the right for a left-hand one; turning the part end for end brings up face B.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Face, Feature, Plane
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.dims.units import Unit
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.measure import Measure, measure_of
from casewright.drawing.notes import Balloon, Text
from casewright.drawing.pens import CENTRE, HIDDEN, VISIBLE, Ink
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, circle, line, rectangle
from casewright.drawing.strip import Side
from casewright.drawing.symbols import GrainArrow, Sign, SignKind

__all__ = ["faces_to_draw", "feature_letters", "part_scene"]


def faces_to_draw(part: Part) -> tuple[Face, ...]:
    """Faces with work on them, the one with more of it first; face A when there is none."""
    count = {face: sum(f.face == face for f in part.features) for face in ("A", "B")}
    faces: tuple[Face, ...] = ("A", "B") if count["A"] >= count["B"] else ("B", "A")
    return tuple(f for f in faces if count[f]) or ("A",)


def feature_letters(part: Part) -> dict[str, str]:
    """A letter for every feature by its path, in the order of machining."""
    letters = "abcdefghijklmnopqrstuvwxyz"
    return {
        feature.path: letters[n % 26] * (1 + n // 26) for n, feature in enumerate(part.features)
    }


@dataclass(frozen=True, slots=True)
class _Frame:
    """From part axes to the picture of one face."""

    part: Part
    face: Face
    unit: Unit

    @property
    def mirrored(self) -> bool:
        return (self.part.hand == "left") != (self.face == "B")

    @property
    def length(self) -> Fraction:
        return self.part.finished.length.value

    @property
    def width(self) -> Fraction:
        return self.part.finished.width.value

    def x(self, along: Fraction) -> Fraction:
        return self.length - along if self.mirrored else along

    def from_datum(self, datum: Plane, distance: Fraction) -> Fraction:
        """Position along the part's own axis of a distance from one of its planes."""
        if datum in ("l1", "w1"):
            return (self.length if datum == "l1" else self.width) - distance
        return distance


def _span(frame: _Frame, cut: Cut) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """A cut's l0, l1, w0, w1 in part axes [mm]."""
    near = frame.from_datum(cut.datum, cut.at.value)
    far = frame.from_datum(cut.datum, cut.at.value + cut.width.value)
    across = (min(near, far), max(near, far))
    run_length = frame.length if cut.runs == "l" else frame.width
    start = cut.start.value if cut.start is not None else Fraction(0)
    end = cut.end.value if cut.end is not None else run_length
    if cut.runs == "l":
        return start, end, *across
    return *across, start, end


def part_scene(part: Part, face: Face, unit: Unit) -> Scene:
    """One face of a part with its features and their dimensions."""
    frame = _Frame(part, face, unit)
    letters = feature_letters(part)
    elements: list[Element] = [_outline(frame)]
    for feature in part.features:
        elements.extend(_feature(frame, feature))
    elements.extend(_signs(frame))
    elements.extend(_dimensions(frame))
    elements.extend(
        _balloon(frame, feature, letters[feature.path])
        for feature in part.features
        if feature.face == face
    )
    return Scene(tuple(elements), f"{part.title}, face {face}")


def _outline(frame: _Frame) -> Polyline:
    """The blank, with notched corners taken out."""
    corners = []
    length, width = frame.length, frame.width
    notches = {
        (c.datum, c.at.value, c.start.value if c.start else None): _span(frame, c)
        for c in frame.part.features
        if isinstance(c, Cut) and c.kind == "notch"
    }
    spans = list(notches.values())
    for l_corner, w_corner in ((0, 0), (1, 0), (1, 1), (0, 1)):
        at = (length * l_corner, width * w_corner)
        notch = next((s for s in spans if s[0] <= at[0] <= s[1] and s[2] <= at[1] <= s[3]), None)
        if notch is None:
            corners.append(at)
            continue
        inner_l = notch[1] if l_corner == 0 else notch[0]
        inner_w = notch[3] if w_corner == 0 else notch[2]
        steps = [(at[0], inner_w), (inner_l, inner_w), (inner_l, at[1])]
        corners.extend(steps if (l_corner, w_corner) in ((0, 0), (1, 1)) else steps[::-1])
    points = tuple((frame.x(a), b) for a, b in corners)
    return Polyline(points, VISIBLE, closed=True, fill=Ink.TINT, tag=Tag(path=frame.part.path))


def _feature(frame: _Frame, feature: Feature) -> Iterator[Element]:
    here = feature.face == frame.face
    tag = Tag(path=feature.path, title=feature.kind)
    if isinstance(feature, Cut):
        if feature.kind == "notch":
            return
        l0, l1, w0, w1 = _span(frame, feature)
        yield rectangle(
            (frame.x(l0), w0), (frame.x(l1), w1), VISIBLE if here else HIDDEN,
            fill=Ink.SHADE if here else None, tag=tag,
        )  # fmt: skip
        return
    if not here and feature.depth is not None:
        return
    for along, across in feature.places:
        x = frame.x(frame.from_datum(feature.datum_l, along.value))
        y = frame.from_datum(feature.datum_w, across.value)
        if feature.kind == "pocket":
            yield from _pocket(frame, feature, (x, y), here, tag)
        else:
            yield circle(
                (x, y), feature.diameter.value / 2, VISIBLE if here else HIDDEN,
                fill=Ink.PAPER, tag=tag,
            )  # fmt: skip


def _pocket(
    frame: _Frame, bores: Bores, at: tuple[Fraction, Fraction], here: bool, tag: Tag
) -> Iterator[Element]:
    """A pocket: the long mouth the bit leaves, and the axis the screw runs out on."""
    if not here:
        return
    half = bores.diameter.value / 2
    long = bores.diameter.value * Fraction(5, 4)
    x, y = at
    if bores.toward in ("l0", "l1"):
        end = frame.x(Fraction(0) if bores.toward == "l0" else frame.length)
        yield line((x, y), (end, y), CENTRE)
        yield rectangle((x - long, y - half), (x + long, y + half), VISIBLE, fill=Ink.PAPER,
                        tag=tag)  # fmt: skip
    else:
        end = Fraction(0) if bores.toward == "w0" else frame.width
        yield line((x, y), (x, end), CENTRE)
        yield rectangle((x - half, y - long), (x + half, y + long), VISIBLE, fill=Ink.PAPER,
                        tag=tag)  # fmt: skip


def _signs(frame: _Frame) -> Iterator[Element]:
    part = frame.part
    yield Sign("datum", (frame.length / 2, 0), toward_deg=270, size_mm=3.2)
    end = frame.x(Fraction(0))
    yield Sign("datum", (end, frame.width / 2), toward_deg=180 if end == 0 else 0, size_mm=3.2)
    sign: SignKind = "face A" if frame.face == "A" else "face B"
    yield Sign(sign, (frame.length / 2, frame.width * Fraction(3, 4)), size_mm=4.5)
    if part.hand is not None:
        yield Sign(
            part.hand, (frame.length / 2, frame.width * Fraction(3, 4)), size_mm=5.5,
            shift_mm=(9.0, 0.0),
        )  # fmt: skip
    if part.grain:
        yield GrainArrow((frame.length / 2, frame.width * Fraction(2, 5)), 14.0)
    for plane, x, y in (
        ("l0", frame.x(Fraction(0)), frame.width / 2),
        ("l1", frame.x(frame.length), frame.width / 2),
    ):
        word = part.ends[("l0", "l1").index(plane)]
        inward = 4.0 if x == 0 else -4.0
        yield Text((x, y), word, 2.2, rotation_deg=90, shift_mm=(inward, 0), ink=Ink.SOFT)
    for y, word, shift in ((Fraction(0), part.ends[2], 2.6), (frame.width, part.ends[3], -2.6)):
        yield Text(
            (frame.length / 4, y),
            f"{word.removesuffix(' edge')} edge",
            2.2,
            shift_mm=(0, shift),
            ink=Ink.SOFT,
        )


def _balloon(frame: _Frame, feature: Feature, letter: str) -> Balloon:
    if isinstance(feature, Cut):
        l0, l1, w0, w1 = _span(frame, feature)
        middle = ((l0 + l1) / 2, (w0 + w1) / 2)
        if feature.runs == "l":
            middle = (l0 + (l1 - l0) * Fraction(2, 3), middle[1])
        else:
            middle = (middle[0], w0 + (w1 - w0) * Fraction(2, 3))
    else:
        first, last = feature.places[0], feature.places[-1]
        middle = (
            frame.from_datum(feature.datum_l, (first[0].value + last[0].value) / 2),
            frame.from_datum(feature.datum_w, (first[1].value + last[1].value) / 2),
        )
    return Balloon((frame.x(middle[0]), middle[1]), letter, (6.0, 6.0), height=2.2)


@dataclass(slots=True)
class _Found:
    """Distances to be dimensioned, along one axis."""

    stops: dict[Fraction, Stop]
    spans: dict[tuple[Fraction, Fraction], Span]


def _dimensions(frame: _Frame) -> Iterator[Element]:
    along, across = _Found({}, {}), _Found({}, {})
    for feature in frame.part.features:
        if feature.face == frame.face or (isinstance(feature, Cut) and feature.kind == "notch"):
            if isinstance(feature, Cut):
                _cut_dimensions(frame, feature, along, across)
            else:
                _bore_dimensions(frame, feature, along, across)
    size = frame.part.finished
    origin = frame.x(Fraction(0))
    top = [Span(Fraction(0), frame.length, measure_of(size.length, frame.unit), emphasis=True)]
    top.extend(along.spans.values())
    yield Dimensions("above", frame.width, tuple(top))
    left_side: Side = "left" if not frame.mirrored else "right"
    right_side: Side = "right" if not frame.mirrored else "left"
    edge_x = Fraction(0) if left_side == "left" else frame.length
    width = [Span(Fraction(0), frame.width, measure_of(size.width, frame.unit), emphasis=True)]
    width.extend(across.spans.values())
    yield Dimensions(left_side, edge_x, tuple(width), offset_mm=7.0)
    if along.stops:
        yield Running("below", Fraction(0), origin, tuple(along.stops.values()), offset_mm=6.0)
    if across.stops:
        yield Running(right_side, frame.length - edge_x, Fraction(0), tuple(across.stops.values()))


def _cut_dimensions(frame: _Frame, cut: Cut, along: _Found, across: _Found) -> None:
    l0, l1, w0, w1 = _span(frame, cut)
    unit = frame.unit
    if cut.runs == "w":
        if cut.datum == "l0" and cut.at.value:
            along.stops.setdefault(l0, Stop(frame.x(l0), measure_of(cut.at, unit)))
        a, b = sorted((frame.x(l0), frame.x(l1)))
        along.spans.setdefault((a, b), Span(a, b, measure_of(cut.width, unit)))
    else:
        if cut.datum == "w0" and cut.at.value:
            across.stops.setdefault(w0, Stop(w0, measure_of(cut.at, unit)))
        across.spans.setdefault((w0, w1), Span(w0, w1, measure_of(cut.width, unit)))
        if cut.datum == "w1" and cut.at.value:
            span = (w1, frame.width)
            across.spans.setdefault(span, Span(*span, measure_of(cut.at, unit)))
    if cut.end is not None and cut.kind == "notch":
        across.stops.setdefault(w1, Stop(w1, measure_of(cut.end, unit)))


def _bore_dimensions(frame: _Frame, bores: Bores, along: _Found, across: _Found) -> None:
    unit = frame.unit
    lengths = _distinct([p[0] for p in bores.places])
    widths = _distinct([p[1] for p in bores.places])
    note = ""
    shown = lengths
    if bores.kind == "hinge plate":
        middle = (lengths[0].value + lengths[-1].value) / 2
        measure = Measure(middle, unit, f"{bores.path}.from_end")
        stop = Stop(frame.x(middle), measure, note="plate")
        along.stops.setdefault(middle, stop)
        shown = []
    if bores.kind == "shelf pins":
        shown, note = lengths[:1], f"first of {len(lengths)}"
    for dim in shown:
        _place(frame, along, bores.datum_l, dim, unit, note)
    for dim in widths if len(widths) <= 4 else [widths[0], widths[-1]]:
        _place(frame, across, bores.datum_w, dim, unit, "")


def _place(frame: _Frame, found: _Found, datum: Plane, dim: Dim, unit: Unit, note: str) -> None:
    position = frame.from_datum(datum, dim.value)
    lengthwise = datum in ("l0", "l1")
    drawn = frame.x(position) if lengthwise else position
    if datum in ("l0", "w0"):
        found.stops.setdefault(position, Stop(drawn, measure_of(dim, unit), note=note))
        return
    whole = frame.length if datum == "l1" else frame.width
    far = frame.x(whole) if lengthwise else whole
    a, b = sorted((drawn, far))
    found.spans.setdefault((a, b), Span(a, b, measure_of(dim, unit)))


def _distinct(dims: list[Dim]) -> list[Dim]:
    seen: dict[Fraction, Dim] = {}
    for dim in dims:
        seen.setdefault(dim.value, dim)
    return sorted(seen.values(), key=lambda d: d.value)

"""The face of a part with what is machined into it, without lettering."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Feature
from casewright.drawing.marks import Tag
from casewright.drawing.part_frame import PartFrame
from casewright.drawing.pens import CENTRE, HIDDEN, VISIBLE, Ink
from casewright.drawing.shapes import Element, Polyline, circle, line, rectangle

__all__ = ["feature_elements", "outline"]


def outline(frame: PartFrame) -> Polyline:
    """The blank, with notched corners taken out."""
    corners = []
    length, width = frame.length, frame.width
    notches = {
        (c.datum, c.at.value, c.start.value if c.start else None): frame.cut_span(c)
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
    points = tuple(frame.point(*corner) for corner in corners)
    return Polyline(points, VISIBLE, closed=True, fill=Ink.TINT, tag=Tag(path=frame.part.path))


def feature_elements(frame: PartFrame, feature: Feature) -> Iterator[Element]:
    """A cut or a row of holes as seen on the face: dashed where it is in the other one."""
    if isinstance(feature, Cut):
        yield from _cut(frame, feature)
        return
    here = feature.face == frame.face
    if not here and feature.depth is not None:
        return
    tag = Tag(path=feature.path, title=feature.kind)
    for along, across in feature.places:
        at = (
            frame.from_datum(feature.datum_l, along.value),
            frame.from_datum(feature.datum_w, across.value),
        )
        if feature.kind == "pocket":
            yield from _pocket(frame, feature, at, tag)
        else:
            pen = VISIBLE if here else HIDDEN
            yield circle(
                frame.point(*at), feature.diameter.value / 2, pen,
                fill=Ink.PAPER, keep_clear=True, tag=tag,
            )  # fmt: skip


def _cut(frame: PartFrame, cut: Cut) -> Iterator[Element]:
    if cut.kind == "notch":
        return
    here = cut.face == frame.face
    l0, l1, w0, w1 = frame.cut_span(cut)
    yield rectangle(
        frame.point(l0, w0), frame.point(l1, w1), VISIBLE if here else HIDDEN,
        fill=Ink.SHADE if here else None, tag=Tag(path=cut.path, title=cut.kind),
    )  # fmt: skip


def _pocket(
    frame: PartFrame, bores: Bores, at: tuple[Fraction, Fraction], tag: Tag
) -> Iterator[Element]:
    """A pocket: the long mouth the bit leaves, and the axis the screw runs out on."""
    if bores.face != frame.face:
        return
    half = bores.diameter.value / 2
    long = bores.diameter.value * Fraction(5, 4)
    along, across = at
    if bores.toward in ("l0", "l1"):
        end = (Fraction(0) if bores.toward == "l0" else frame.length, across)
        reach = (long, half)
    else:
        end = (along, Fraction(0) if bores.toward == "w0" else frame.width)
        reach = (half, long)
    yield line(frame.point(*at), frame.point(*end), CENTRE)
    yield rectangle(
        frame.point(along - reach[0], across - reach[1]),
        frame.point(along + reach[0], across + reach[1]),
        VISIBLE, fill=Ink.PAPER, keep_clear=True, tag=tag,
    )  # fmt: skip

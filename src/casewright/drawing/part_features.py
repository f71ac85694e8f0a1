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

_ROOT = Fraction(99, 70)  # about the square root of 2


def outline(frame: PartFrame) -> Polyline:
    """The blank, with notched corners taken out and mitred ends cut."""
    corners: list[tuple[Fraction, Fraction]] = []
    length, width = frame.length, frame.width
    notches = {
        (c.datum, c.at.value, c.start.value if c.start else None): frame.cut_span(c)
        for c in frame.part.features
        if isinstance(c, Cut) and c.kind == "notch"
    }
    spans = list(notches.values())
    clips = {c.datum: c.width.value for c in frame.part.features
             if isinstance(c, Cut) and c.kind == "clip"}  # fmt: skip
    slants = {
        c.mitred_end: c.width.value
        for c in frame.part.features
        if isinstance(c, Cut) and c.kind == "mitre"
    }
    for l_corner, w_corner in ((0, 0), (1, 0), (1, 1), (0, 1)):
        at = (length * l_corner, width * w_corner)
        leg = clips.get("l1" if l_corner else "l0")
        if leg is not None and not w_corner:
            up, beside = (at[0], leg), (at[0] - leg if l_corner else leg, at[1])
            corners.extend((beside, up) if l_corner else (up, beside))
            continue
        notch = next((s for s in spans if s[0] <= at[0] <= s[1] and s[2] <= at[1] <= s[3]), None)
        if notch is None:
            slant = slants.get("l1" if l_corner else "l0", Fraction(0)) if w_corner else 0
            corners.append((at[0] - slant if l_corner else at[0] + slant, at[1]))
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
    if cut.kind in ("notch", "mitre", "clip"):
        return  # the outline shows them
    if cut.kind == "slot":
        yield _slot(frame, cut)
        return
    if cut.edge is not None:
        yield _edge_groove(frame, cut)
        return
    here = cut.face == frame.face
    l0, l1, w0, w1 = frame.cut_span(cut)
    fill = Ink.PAPER if cut.kind == "finger" else Ink.SHADE if here else None
    yield rectangle(
        frame.point(l0, w0), frame.point(l1, w1), VISIBLE if here else HIDDEN,
        fill=fill, tag=Tag(path=cut.path, title=cut.kind),
    )  # fmt: skip


def _edge_groove(frame: PartFrame, cut: Cut) -> Element:
    """A cut in an edge, hidden: its floor, and the walls in which it stops short of an end."""
    l0, l1, w0, w1 = frame.cut_span(cut)
    floor, mouth = (w0, w1) if cut.edge == "w1" else (w1, w0)
    mitred = {
        c.mitred_end for c in frame.part.features if isinstance(c, Cut) and c.kind == "mitre"
    }
    near = l0 + (floor if "l0" in mitred else 0)
    far = l1 - (floor if "l1" in mitred else 0)
    tag = Tag(path=cut.path, title=cut.kind)
    places = [(near, floor), (far, floor)]
    if l0 > 0:
        places.insert(0, (near, mouth))
    if l1 < frame.length:
        places.append((far, mouth))
    return Polyline(tuple(frame.point(*place) for place in places), HIDDEN, tag=tag)


def _slot(frame: PartFrame, cut: Cut) -> Element:
    """The floor of a slot in a mitred end: hidden, along the slant."""
    far = cut.depth.value * _ROOT
    near, wide = (far, frame.width + far), frame.width
    if cut.mitred_end == "l1":
        near = (frame.length - near[0], frame.length - near[1])
    tag = Tag(path=cut.path)
    return line(frame.point(near[0], Fraction(0)), frame.point(near[1], wide), HIDDEN, tag=tag)


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

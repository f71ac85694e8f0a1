"""Lettering on the face of a part: letters of its features, face and hand, edges, grain.

Everything here may stand in more than one place; holes and dimensions are there before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

from casewright.casework.features import Cut, Feature
from casewright.dims import Content, measure_of
from casewright.drawing.choice import Choice
from casewright.drawing.lettering import text_width
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Balloon, Leader, Text
from casewright.drawing.part_frame import Edge, PartFrame
from casewright.drawing.pens import Ink
from casewright.drawing.shapes import Element, Point
from casewright.drawing.strip import Side
from casewright.drawing.symbols import GrainArrow, Sign, SignKind

__all__ = ["edge_cut_notes", "feature_letters_on", "part_signs"]

_LETTER = 2.2  # height of a feature's letter [mm on paper]
_WORD = 2.2  # height of the name of an edge
_IN, _OUT = 2.3, 2.4  # from an edge to the middle of its name, inside and outside
_FAR_OUT = tuple(_OUT + more for more in (9.0, 12.0, 15.0, 18.0, 21.0))  # past the dimensions
_INSETS = tuple(_IN + more for more in (0.0, 2.0, 5.0, 8.0, 12.0))
_LENGTHWISE = _INSETS[:3]
_EDGE_INSETS = (_IN, _IN + 1.5, -_OUT, *(-out for out in _FAR_OUT))
_SIGNS = ((4.5, 5.5), (3.4, 3.6))  # heights of the signs of the face and of the hand
_GRAIN = (14.0, 9.0, 6.5)
_HALF = Fraction(1, 2)
_ALONG = tuple(Fraction(n, 16) for n in (4, 12, 8, 6, 10, 3, 13, 2, 14, 5, 11, 7, 9))
_ALONG_MIDDLE_FIRST = tuple(sorted(_ALONG, key=lambda share: abs(share - _HALF)))
_MIDDLE_FIRST = tuple(Fraction(n, 16) for n in (8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14))
_ACROSS = tuple(Fraction(n, 8) for n in (4, 6, 2, 5, 3))
_NOTE_REACHES = tuple(
    (u * 3.0, v * far)
    for far in (8.0, 6.0, 10.5, 13.0, 16.0, 20.0)
    for v in (1, -1)
    for u in (1, -1)
)
_INWARD: dict[Side, tuple[int, int]] = {
    "left": (1, 0), "right": (-1, 0), "below": (0, 1), "above": (0, -1),
}  # fmt: skip
_REACHES = tuple(
    (u * far, v * far)
    for far in (5.0, 7.0, 9.5, 13.0, 17.0)
    for u, v in ((0.8, 0.8), (-0.8, 0.8), (0.8, -0.8), (-0.8, -0.8),
                 (0.0, 1.0), (0.0, -1.0), (1.0, 0.0), (-1.0, 0.0),
                 (0.45, 0.9), (-0.45, 0.9), (0.45, -0.9), (-0.45, -0.9))
)  # fmt: skip


def feature_letters_on(frame: PartFrame, letters: dict[str, str]) -> Iterator[Element]:
    """The letter of each feature of the face in a ring, with a line to the feature."""
    shown: set[str] = set()
    for feature in frame.part.features:
        letter = letters[feature.path]
        if frame.tells(feature) and letter not in shown:
            yield Choice(_rings(letter, _tips(frame, feature)))
        shown.add(letter)


def _rings(letter: str, tips: Sequence[Point]) -> Iterator[Sequence[Element]]:
    for reach in _REACHES:
        for tip in tips:
            yield (Balloon(tip, letter, reach, height=_LETTER),)


def _tips(frame: PartFrame, feature: Feature) -> list[Point]:
    """Places of a feature that its line may lead to, the best first."""
    if isinstance(feature, Cut):
        l0, l1, w0, w1 = frame.cut_span(feature)
        shares = (Fraction(2, 3), Fraction(1, 3), _HALF)
        if feature.runs == "l":
            return [frame.point(l0 + (l1 - l0) * share, (w0 + w1) / 2) for share in shares]
        return [frame.point((l0 + l1) / 2, w0 + (w1 - w0) * share) for share in shares]
    places = feature.places
    chosen = (places[len(places) // 2], places[0], places[-1])
    return [
        frame.point(
            frame.from_datum(feature.datum_l, along.value),
            frame.from_datum(feature.datum_w, across.value),
        )
        for along, across in dict.fromkeys(chosen)
    ]


def edge_cut_notes(frame: PartFrame) -> Iterator[Element]:
    """How far cuts in edges and mitred ends lie from face A: what a view of a face cannot show."""
    noted: set[Fraction] = set()
    for feature in frame.part.features:
        aside = isinstance(feature, Cut) and feature.face not in ("A", "B")
        if isinstance(feature, Cut) and aside and frame.tells(feature):
            if feature.at.value not in noted:
                yield Choice(_edge_notes(frame, feature))
            noted.add(feature.at.value)


def _edge_notes(frame: PartFrame, cut: Cut) -> Iterator[Sequence[Element]]:
    """The note outside beyond the edge, else inside, where there is room for it."""
    face = "face A" if cut.datum == "t1" else "face B"
    distance = measure_of(cut.at, frame.unit)
    words: Content = (distance, f" from {face}")
    tag = Tag(path=distance.path, title=distance.text)
    l0, l1, w0, w1 = frame.cut_span(cut)
    floor = (w0 if cut.edge == "w1" else w1) if cut.edge else (w0 + w1) / 2
    for reach, share in product(_NOTE_REACHES, _ALONG):
        tip = frame.point(l0 + (l1 - l0) * share, floor)
        yield (Leader(tip, reach, (words,), height=_WORD, ends_on_edge=True, tag=tag),)


def part_signs(frame: PartFrame) -> Iterator[Element]:
    """Datums, face and hand, names of ends and edges, grain."""
    yield Choice(_face_and_hand(frame, at, *tall) for tall in _SIGNS for at in _grid(frame))
    edges: tuple[Edge, ...] = ("w0", "w1")
    ends: tuple[Edge, ...] = ("l0", "l1")
    yield from (Choice(_end_words(frame, plane)) for plane in ends)
    yield from (Choice(_edge_words(frame, plane)) for plane in edges)
    yield from _datum_signs(frame)
    if frame.part.grain:
        yield Choice(_grain(frame))


def _grain(frame: PartFrame) -> Iterator[Sequence[Element]]:
    """Places of the grain arrow; at last none, for the card says it in words, too."""
    turned = 90.0 if frame.standing else 0.0
    for long, at in product(_GRAIN, _grid(frame)):
        yield (GrainArrow(at, long, along_deg=turned),)
    yield ()


def _datum_signs(frame: PartFrame) -> Iterator[Element]:
    """A dark triangle at the datum edge and one at the datum end."""
    yield Choice(_triangles(frame, "w0"))
    yield Choice(_triangles(frame, "l0"))


def _triangles(frame: PartFrame, plane: Edge) -> Iterator[Sequence[Element]]:
    away = {"left": 180.0, "right": 0.0, "below": 270.0, "above": 90.0}[frame.side(plane)]
    zero = Fraction(0)
    for share in _MIDDLE_FIRST:
        along, across = (
            (frame.length * share, zero) if plane == "w0" else (zero, frame.width * share)
        )
        yield (Sign("datum", frame.point(along, across), toward_deg=away, size_mm=3.2),)


def _grid(frame: PartFrame) -> Iterator[Point]:
    """Places on the face, the middle first."""
    alongs = [frame.length * share for share in _ALONG_MIDDLE_FIRST]
    for share in _ACROSS:
        across = frame.width * share
        yield from (frame.point(along, across) for along in alongs)


def _face_and_hand(frame: PartFrame, at: Point, face_mm: float, hand_mm: float) -> list[Element]:
    """The sign of the face, and beside it, toward the middle of the part, that of the hand."""
    sign: SignKind = "face A" if frame.face == "A" else "face B"
    face = Sign(sign, at, size_mm=face_mm)
    if frame.part.hand is None:
        return [face]
    if frame.standing:
        down = -1.0 if 2 * at[1] >= frame.length else 1.0
        aside = (0.0, down * (face_mm / 2 + hand_mm / 2 + 1.5))
    else:
        aside = ((-2.0 if 2 * at[0] > frame.length else 2.0) * face_mm, 0.0)
    return [face, Sign(frame.part.hand, at, size_mm=hand_mm, shift_mm=aside)]


def _edge_words(frame: PartFrame, plane: Edge) -> Iterator[Sequence[Element]]:
    """The name of an edge along it: inside, then outside."""
    name = f"{_end_name(frame, plane).removesuffix(' edge')} edge"
    inward = _INWARD[frame.side(plane)]
    across = Fraction(0) if plane == "w0" else frame.width
    places = [frame.point(frame.length * share, across) for share in _ALONG]
    for inset, at in product(_EDGE_INSETS, places):
        yield (_word(inward, name, at, inset),)


def _end_words(frame: PartFrame, plane: Edge) -> Iterator[Sequence[Element]]:
    """The name of an end across it; in a narrow part along it, else outside, past all sizes."""
    name = f"{_end_name(frame, plane).removesuffix(' end')} end"
    inward = _INWARD[frame.side(plane)]
    end = Fraction(0) if plane == "l0" else frame.length
    half = text_width(name, _WORD) / 2
    places = [frame.point(end, frame.width * share) for share in _ACROSS]
    for inset, at in product(_INSETS, places):
        yield (_word(inward, name, at, inset),)
    for inset, at in product(_LENGTHWISE, places):
        yield (_word(inward, name, at, half + inset - 1.0, along=True),)
    for at in places:
        yield (_word(inward, name, at, -_OUT),)
    yield from _beyond_corner(frame, plane, name)
    for out, at in product(_FAR_OUT, places):
        yield (_word(inward, name, at, -out),)


def _beyond_corner(frame: PartFrame, plane: Edge, name: str) -> Iterator[Sequence[Element]]:
    """The name of an end of a narrow part: level, off either corner of the end."""
    end = Fraction(0) if plane == "l0" else frame.length
    half = text_width(name, _WORD) / 2 + 0.8
    u, v = _INWARD[frame.side(plane)]
    corners: tuple[tuple[Edge, Fraction], ...] = (("w1", frame.width), ("w0", Fraction(0)))
    for out, (edge, corner) in product((_OUT, _OUT + 1.5, _OUT + 3.0), corners):
        p, q = _INWARD[frame.side(edge)]
        shift = (-(u + p) * half, -(v + q) * out)
        at = frame.point(end, corner)
        yield (Text(at, name, _WORD, shift_mm=shift, ink=Ink.SOFT, ground=Ink.PAPER),)


def _end_name(frame: PartFrame, plane: Edge) -> str:
    return frame.part.ends[("l0", "l1", "w0", "w1").index(plane)]


def _word(
    inward: tuple[int, int], words: str, at: Point, inset: float, *, along: bool = False
) -> Text:
    """A word so far inward from a plane; it runs with the plane, or away from it."""
    u, v = inward
    turned = 90.0 if bool(u) != along else 0.0
    ground = Ink.PAPER if inset < 0 else None  # over extension lines, never over the part
    return Text(
        at, words, _WORD, rotation_deg=turned, shift_mm=(u * inset, v * inset), ink=Ink.SOFT,
        ground=ground,
    )  # fmt: skip

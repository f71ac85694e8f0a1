"""A trim at a diagonal corner from above: its pieces, their long points and how they are cut."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case
from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CUT, HIDDEN, NEIGHBOUR, THIN, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Point, Polyline
from casewright.room.model import Run
from casewright.room.specs import RunSide
from casewright.room.trims.model import EndCut, Trim, TrimPiece

__all__ = ["bend_scene", "bent_ends"]

_STUB = 140.0  # of what runs along either wall [mm of model]
_DEEP = 240.0  # of the case behind its face [mm of model]
_ROOT = math.sqrt(2)
_SMALL = 2.2


@dataclass(frozen=True, slots=True)
class _Bend:
    """Places by their distances u from the far wall and v from the run's own [mm].

    Parameters
    ----------
    rear, before
        The trim's rear: from either wall, and before the face.
    out
        How far it stands out from there as seen from above.
    """

    mouth: CaseMouth
    leg: float
    rear: float
    before: float
    out: float

    def at(self, u: float, v: float) -> Point:
        """On the drawing: the run's wall above, the room below."""
        return (u if self.mouth.corner == "left" else -u, -v)

    def turn(self, out: float) -> float:
        """Where a plane so far before the rear turns, along either wall."""
        reach = float(self.mouth.reach.value)
        return reach - self.rear - out + (self.before + out) * _ROOT

    def outline(self, *, far: bool) -> tuple[Point, ...]:
        """The end of what runs along a wall."""
        places = [(self.turn(0.0), self.rear), (self.leg + _STUB, self.rear),
                  (self.leg + _STUB, self.rear + self.out),
                  (self.turn(self.out), self.rear + self.out)]  # fmt: skip
        return tuple(self.at(*((v, u) if far else (u, v))) for u, v in places)

    def across(self) -> tuple[Point, ...]:
        """The piece across the face."""
        near, front = self.turn(0.0), self.turn(self.out)
        deep = self.rear + self.out
        return tuple(
            self.at(*place)
            for place in ((near, self.rear), (self.rear, near), (deep, front), (front, deep))
        )


def bent_ends(trim: Trim) -> tuple[RunSide, ...]:
    """The ends at which a trim has a piece across a diagonal corner."""
    return tuple(
        "left" if piece.part.path.endswith(".left_across") else "right" for piece in trim.across
    )


def bend_scene(run: Run, trim: Trim, side: RunSide, unit: Unit, out: Dim | None = None) -> Scene:
    """Its pieces at a corner of the run's own, the walls above and beside it.

    Parameters
    ----------
    out
        How far it stands out from its rear as seen from above [mm]; None: its thickness.
    """
    case = run.cases[0 if side == "left" else -1]
    piece = next(p for p in trim.across if p.part.path.endswith(f".{side}_across"))
    along = trim.along[0 if side == "left" else -1]
    if case.mouth is None:
        msg = f"{case.key} is no diagonal corner"
        raise ValueError(msg)
    size = piece.part.finished.thickness if out is None else out
    bend = _Bend(
        case.mouth, float(case.width.value), float(along.part.placed.z.value),
        float(piece.part.placed.z.value - case.mouth.front.value), float(size.value),
    )  # fmt: skip
    read = next(d for d in trim.open_lengths if d.path.endswith(f"across_{side}"))
    elements = (
        *_case(case, bend), *_pieces(bend, along, piece), *_words(bend, piece, read, unit),
    )  # fmt: skip
    return Scene(elements, f"{trim.title} at {case.spec.title}, from above")


def _case(case: Case, bend: _Bend) -> Iterator[Element]:
    """The corner and the fronts of its neighbours."""
    deep, leg = float(bend.mouth.side.value), bend.leg
    back = max(0.0, (leg + deep) / 2 - _DEEP)
    places = ((leg, min(back, deep)), (leg, deep), (deep, leg), (min(back, deep), leg))
    tag = Tag(path=case.key, title=case.spec.title, target=case.key)
    yield Polyline(tuple(bend.at(*p) for p in places), NEIGHBOUR, tag=tag)
    for turned in (False, True):
        ends = ((leg, deep), (leg + _STUB, deep))
        yield Polyline(tuple(bend.at(*((v, u) if turned else (u, v))) for u, v in ends), HIDDEN)
    middle = (leg + deep) / 2 - _DEEP / 2
    yield Text(bend.at(middle, middle), case.spec.title, _SMALL, ink=Ink.SOFT, tag=tag)


def _pieces(bend: _Bend, along: TrimPiece, piece: TrimPiece) -> Iterator[Element]:
    for outline, part in (
        (bend.outline(far=False), along.part), (bend.across(), piece.part),
    ):  # fmt: skip
        tag = Tag(path=part.path, title=part.title, target=part.path)
        yield Polyline(outline, CUT, closed=True, fill=Ink.TINT, tag=tag)
    yield Polyline(bend.outline(far=True), THIN, closed=True, fill=Ink.PAPER)


def _words(bend: _Bend, piece: TrimPiece, read: Dim, unit: Unit) -> Iterator[Element]:
    """Long points over the case, corners and settings in the room."""
    left = bend.mouth.corner == "left"
    way, slant = (1, 45.0) if left else (-1, -45.0)
    middle = (bend.turn(0.0) + bend.rear) / 2
    yield Text(
        bend.at(middle, middle), (measure_of(piece.part.finished.length, unit), " long points"),
        2.5, rotation_deg=slant, weight=600, shift_mm=(-3.2 * way, 3.2),
        tag=Tag(path=read.path, title=piece.part.title),
    )  # fmt: skip
    own, far = (piece.right, piece.left) if left else (piece.left, piece.right)
    for cut, turned in ((own, False), (far, True)):
        u, v = bend.turn(bend.out), bend.rear + bend.out
        at = bend.at(*((v, u) if turned else (u, v)))
        for n, words in enumerate(_angles(cut)):
            shift = (4.0 * way, -5.5 - 3.6 * n) if not turned else (4.0 * way, -1.5 - 3.6 * n)
            yield Text(at, words, _SMALL, shift_mm=shift, anchor="start" if left else "end",
                       weight=400 if n else 600, ground=Ink.PAPER)  # fmt: skip


def _angles(cut: EndCut) -> tuple[str, ...]:
    """The corner, and how the saw is set for it."""
    if cut.corner is None or cut.setting is None:
        return ()
    setting = cut.setting
    words = f"mitre {_degrees(setting.mitre)}"
    words = f"{words}, bevel {_degrees(setting.bevel)}" if setting.bevel else words
    return (f"{_degrees(cut.corner)} corner", words)


def _degrees(tenths: int) -> str:
    return f"{tenths // 10}.{tenths % 10}°"

"""Strips of solid wood on the front edges of a frameless box, trimmed flush with its inside.

A seam between two boxes has one strip for both, put on when they are joined: it is the run's.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.box import Board, Box
from casewright.casework.brads import row_marks
from casewright.casework.carcase import Carcase, FrameEdges
from casewright.casework.cases import FaceFrame
from casewright.casework.features import Cut, Plane, Setup
from casewright.casework.fronts.constructions import upright
from casewright.casework.fronts.strips import strip_fastenings
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["TRIM_SETUP", "add_face_strips", "with_strips"]

_HANDS: tuple[Hand, Hand] = ("left", "right")

TRIM_SETUP = Setup(
    tool="router", bit="flush-trim bit, its bearing on the inside of the box",
    cautions=("router_trim",),
)  # fmt: skip
"""What stands proud is trimmed when the glue is dry, with the box as its guide."""


def with_strips(maker: Maker, carcase: Carcase) -> Carcase:
    """The carcase with the plane that its fronts lie against: the face of its strips."""
    if maker.spec.face != "strips":
        return carcase
    thick = maker.house.thickness(maker.spec.face_stock)
    right = carcase.width - carcase.right_thickness
    edges = FrameEdges(
        left=carcase.left_thickness,
        right=right,
        front=maker.place.at("face_strips").let("front", carcase.depth + thick),
        room=(maker.zero, maker.zero),
        pads=(None, None),
        faces=(carcase.left_thickness, right),
    )
    return replace(carcase, frame=edges)


def add_face_strips(
    maker: Maker, box: Box, carcase: Carcase, seams: tuple[Hand, ...]
) -> FaceFrame | None:
    """Cut, place and fasten the strips of one box; tell the steps.

    Parameters
    ----------
    seams
        Sides at which a neighbour's box will stand: their edges get a strip of the run's.
    """
    if maker.spec.face != "strips" or carcase.frame is None:
        return None
    proud = maker.style("strip_proud")
    low, place = box.low, maker.place.at("face_strips")
    tall = box.head if low is maker.zero else box.head - low
    boards = _boards(box)
    ends = {hand: _end(maker, box, hand, tall, proud) for hand in _HANDS if hand not in seams}
    flats = {word: _flat(maker, carcase, board, word, proud) for word, board in boards}
    for hand, strip in ends.items():
        _place_end(maker, box, carcase, hand, strip)
        edges = [board.outline.thickness for _, board in boards]
        _trim(maker, strip, (edges[0], strip.length - edges[1]))
    for word, board in boards:
        _place_flat(maker, carcase, board, word, flats[word], proud)
        _trim(maker, flats[word], (None, None))
    _put_on(maker, box, boards, ends, flats)
    first, last = maker.parts[flats["bottom"].path], flats["bottom"]
    x = maker.zero if "left" in ends else first.placed.x
    end = carcase.width if "right" in ends else first.placed.x + last.length
    return FaceFrame(
        path=place.path, title="face strips", x=x, y=low, z=carcase.depth,
        width=place.let("width", end if x is maker.zero else end - x),
        height=place.let("height", tall),
        thickness=place.let("thickness", carcase.frame.front - carcase.depth),
        parts=tuple(p.path for p in maker.parts.values() if p.front == place.path),
        openings=tuple(
            (opening.name, carcase.clear_width,
             place.let(f"{opening.name}_opening_height", opening.y1 - opening.y0))
            for opening in carcase.openings
        ),
    )  # fmt: skip


def _boards(box: Box) -> tuple[tuple[str, Board], ...]:
    """What closes the box below and above, whose front edges are covered."""
    head = next(b for b in box.boards if b.name in ("top", "front_stretcher"))
    return (("bottom", box.bottom), ("top", head))


def _end(maker: Maker, box: Box, hand: Hand, tall: Dim, proud: Dim) -> Outline:
    """A strip over the edge of a side; its inner edge stands proud."""
    side = box.left if hand == "left" else box.right
    strip = maker.outline(
        f"face_strips.end_{hand}", maker.spec.face_stock, tall, side.thickness + proud,
        setting=f"{maker.spec.key} face strips", way=None, matched=True,
    )  # fmt: skip
    _fit(maker, strip, side.thickness, proud)
    return strip


def _flat(maker: Maker, carcase: Carcase, board: Board, word: str, proud: Dim) -> Outline:
    """A strip over the edge of a board, between the strips over the sides."""
    strip = maker.outline(
        f"face_strips.{word}", maker.spec.face_stock, carcase.clear_width - 2 * proud,
        board.outline.thickness + proud, setting=f"{maker.spec.key} face strips across",
        way=None, matched=True,
    )  # fmt: skip
    _fit(maker, strip, board.outline.thickness, proud)
    return strip


def _fit(maker: Maker, strip: Outline, edge: Dim, proud: Dim) -> None:
    """There must be something to trim, and little enough for the bit."""
    over = strip.place.let("proud", strip.width - edge)
    step = maker.style("cut_step").value
    strip.place.fit("proud_fit", over, Fraction(0), 2 * proud.value + step, strip.path)


def _place_end(maker: Maker, box: Box, carcase: Carcase, hand: Hand, strip: Outline) -> None:
    maker.add(
        strip, role="face strip", title=f"{hand} face strip", lies=upright(hand),
        at=(maker.zero if hand == "left" else carcase.width, box.low, carcase.depth),
        ends=("bottom", "top", "outer edge", "inner edge"), hand=hand, shows=("t1", "w1"),
        group="face strips", front=maker.path("face_strips"),
    )  # fmt: skip


def _place_flat(
    maker: Maker, carcase: Carcase, board: Board, word: str, strip: Outline, proud: Dim
) -> None:
    """The lower one lies with its outer edge down, the upper one turned end for end."""
    left = carcase.left_thickness + proud
    top = board.underside + board.outline.thickness
    low = word == "bottom"
    maker.add(
        strip, role="face strip", title=f"{word} face strip",
        lies="+x +y +z" if low else "-x -y +z",
        at=(left, board.underside, carcase.depth) if low
        else (left + strip.length, top, carcase.depth),
        ends=("left" if low else "right", "right" if low else "left", "outer edge", "inner edge"),
        shows=("t1", "w1"), group="face strips across", front=maker.path("face_strips"),
    )  # fmt: skip


def _trim(maker: Maker, strip: Outline, stretch: tuple[Dim | None, Dim | None]) -> None:
    """What stands proud of the inside, trimmed where nothing butts against it."""
    place = strip.place.at("trim")
    width = place.let("width", maker.house.chain.nodes[f"{strip.path}.proud"])
    maker.machine(
        strip.path,
        Cut(
            path=place.path, kind="trim", face="A", runs="l", datum="w1", at=maker.zero,
            width=width, depth=strip.thickness, start=stretch[0], end=stretch[1],
            asked_by=maker.path("face_strips"), setup=TRIM_SETUP,
        ),
    )  # fmt: skip


def _put_on(
    maker: Maker,
    box: Box,
    boards: tuple[tuple[str, Board], ...],
    ends: dict[Hand, Outline],
    flats: dict[str, Outline],
) -> None:
    """The strips over the sides first, then those between them; trimmed when the glue is dry."""
    inside = maker.house.text(maker.style("strip_proud"))
    for hand, strip in ends.items():
        side = box.left if hand == "left" else box.right
        _step(maker, strip, side, hand, "its outer edge flush with the outside of the side, its "
              f"inner edge {inside} proud of the inside", ())  # fmt: skip
    for word, board in boards:
        butts = [
            maker.join(
                f"face_strips.joint_{word}_{hand}", "butt",
                (flats[word].path, _end_at(word, hand)), (end.path, "w1"),
            )
            for hand, end in ends.items()
        ]  # fmt: skip
        where = (
            "tight between the upright ones"
            if len(ends) == 2
            else f"as far in from the inside of a side, {inside}, as its inner edge is proud"
        )
        last = word == "top"
        _step(maker, flats[word], board.outline, word, where, tuple(butts), last=last)


def _end_at(word: str, hand: Hand) -> Plane:
    return "l0" if (word == "bottom") == (hand == "left") else "l1"


def _step(
    maker: Maker,
    strip: Outline,
    onto: Outline,
    word: str,
    where: str,
    joints: tuple[str, ...],
    *,
    last: bool = False,
) -> None:
    name = f"face_strips.joint_{word}"
    held = strip_fastenings(maker, name, strip, onto.path, onto.width)
    face = maker.join(name, "face", (strip.path, "t0"), (onto.path, "w0"), fastenings=held)
    brads = any(f.kind == "brad" for f in held)
    words = (
        f"Spread glue thinly; set the {word} face strip on the front edge, {where}; "
        f"{'hold it with brads' if brads else 'clamp it'}."
    )
    if last:
        words += (
            " When the glue is dry, trim what stands proud flush with the inside: the bearing on "
            "the box, the brads out of the bit's way; finish the corners with a chisel."
        )
    maker.step(
        "fit", strip.path, "-z", words, joints=(face, *joints), marks=row_marks(maker, (face,)),
        cautions=(*(("brad_points",) if brads else ()), *(("router_trim",) if last else ())),
    )  # fmt: skip

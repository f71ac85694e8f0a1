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
from casewright.casework.fronts.ends import end_stock
from casewright.casework.fronts.strips import strip_fastenings
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.specs import Hand
from casewright.dims import Dim, Told, tell

__all__ = ["TRIM_SETUP", "add_face_strips", "parts_openings", "with_strips"]

_HANDS: tuple[Hand, Hand] = ("left", "right")
_PARTING = ("divider", "fixed shelf")
"""Roles of boards between two openings; rails between rows have strips, too."""

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
    bays = _bays(box, [board for _, board in boards])
    ends = {hand: _end(maker, box, hand, tall, proud) for hand in _HANDS if hand not in seams}
    flats = {word: _flat(maker, carcase, board, word, proud) for word, board in boards}
    for hand, strip in ends.items():
        _place_end(maker, box, carcase, hand, strip)
        most = strip.length - boards[-1][1].outline.thickness
        for number, (start, end) in enumerate(bays, start=1):
            name = "trim" if number == 1 else f"trim_{number}"
            _trim(maker, strip, (start, end or most), name=name)
    for word, board in boards:
        _place_flat(maker, carcase, board, word, flats[word], proud)
        _trim(maker, flats[word], (None, None))
        if _is_inner(word):
            _trim(maker, flats[word], (None, None), edge="w0", name="trim_below")
    _put_on(maker, box, boards, ends, flats)
    first, last = maker.parts[flats["bottom"].path], flats["bottom"]
    x = maker.parts[ends["left"].path].placed.x if "left" in ends else first.placed.x
    end = first.placed.x + last.length
    if "right" in ends:
        end = maker.parts[ends["right"].path].placed.x
    thick = place.let("thickness", carcase.frame.front - carcase.depth)
    return FaceFrame(
        path=place.path, title="face strips", x=x, y=low, z=carcase.depth,
        width=place.let("width", end if x is maker.zero else end - x),
        height=place.let("height", tall),
        thickness=thick, front=place.let("face_plane", carcase.depth + thick),
        parts=tuple(p.path for p in maker.parts.values() if p.front == place.path),
        openings=tuple(
            (opening.name, carcase.clear_width,
             place.let(f"{opening.name}_opening_height", opening.y1 - opening.y0))
            for opening in carcase.openings
        ),
    )  # fmt: skip


def _boards(box: Box) -> tuple[tuple[str, Board], ...]:
    """What closes the box below and above, and what parts it, whose front edges are covered.

    From the bottom up, each with the name of its strip.
    """
    head = next(b for b in box.boards if b.name in ("top", "front_stretcher"))
    inner = [b for b in box.boards if b.role in _PARTING or b.name.startswith("row_board.")]
    parted = [
        (board.name.replace(".", "_"), board)
        for board in sorted(inner, key=lambda board: board.underside.value)
    ]
    return (("bottom", box.bottom), *parted, ("top", head))


def parts_openings(part: Part) -> bool:
    """Whether a board of a box lies between two openings, so that a strip covers its edge."""
    return part.role in _PARTING or ".row_board." in part.path


def _is_inner(word: str) -> bool:
    """Whether a strip lies on a board between two openings, and is trimmed flush with both."""
    return word not in ("bottom", "top")


def _bays(box: Box, boards: list[Board]) -> list[tuple[Dim, Dim | None]]:
    """Stretches between boards, from the lower end of the face; the last ends at the top."""
    bays: list[tuple[Dim, Dim | None]] = []
    start = box.bottom.outline.thickness
    for board in boards[1:-1]:
        low = board.underside - box.low if box.low.path or box.low.op else board.underside
        bays.append((start, low))
        start = low + board.outline.thickness
    return [*bays, (start, None)]


def _end(maker: Maker, box: Box, hand: Hand, tall: Dim, proud: Dim) -> Outline:
    """A strip over the edge of a side; its inner edge stands proud."""
    edge, beside = _side(box, hand).thickness, _beside(maker, hand)
    if beside is not None:
        edge = beside + edge
    strip = maker.outline(
        f"face_strips.end_{hand}", maker.spec.face_stock, tall, edge + proud,
        setting=f"{maker.spec.key} face strips", way=None, matched=True,
    )  # fmt: skip
    _fit(maker, strip, edge, proud)
    return strip


def _side(box: Box, hand: Hand) -> Outline:
    return box.left if hand == "left" else box.right


def _beside(maker: Maker, hand: Hand) -> Dim | None:
    """Thickness of what is on a finished end, whose edge its strip covers too [mm].

    None: nothing is on it, or a flush end, which reaches out past the strip.
    """
    spec = maker.spec
    covers = hand in spec.dressed and spec.end != "flush"
    return maker.house.thickness(end_stock(spec)) if covers else None


def _flat(maker: Maker, carcase: Carcase, board: Board, word: str, proud: Dim) -> Outline:
    """A strip over the edge of a board, between the strips over the sides."""
    over = 2 * proud if _is_inner(word) else proud
    strip = maker.outline(
        f"face_strips.{word}", maker.spec.face_stock, carcase.clear_width - 2 * proud,
        board.outline.thickness + over, setting=f"{maker.spec.key} face strips across",
        way=None, matched=True,
    )  # fmt: skip
    _fit(maker, strip, board.outline.thickness, proud, both=_is_inner(word))
    return strip


def _fit(maker: Maker, strip: Outline, edge: Dim, proud: Dim, *, both: bool = False) -> None:
    """There must be something to trim, and little enough for the bit."""
    over = strip.width - edge
    over = strip.place.let("proud", over / 2 if both else over)
    step = maker.style("cut_step").value
    strip.place.fit("proud_fit", over, Fraction(0), 2 * proud.value + step, strip.path)


def _place_end(maker: Maker, box: Box, carcase: Carcase, hand: Hand, strip: Outline) -> None:
    x, beside = maker.zero if hand == "left" else carcase.width, _beside(maker, hand)
    if beside is not None:
        x = strip.place.let("outer_edge", maker.zero - beside if hand == "left" else x + beside)
    maker.add(
        strip, role="face strip", title=f"{hand} face strip", lies=upright(hand),
        at=(x, box.low, carcase.depth),
        ends=("bottom", "top", "outer edge", "inner edge"), hand=hand, shows=("t1", "w1"),
        group="face strips", front=maker.path("face_strips"),
    )  # fmt: skip


def _place_flat(
    maker: Maker, carcase: Carcase, board: Board, word: str, strip: Outline, proud: Dim
) -> None:
    """The lower one lies with its outer edge down, the upper one turned end for end."""
    left = carcase.left_thickness + proud
    top, underside = board.underside + board.outline.thickness, board.underside
    low = word != "top"
    if _is_inner(word):
        over = maker.house.chain.nodes[f"{strip.path}.proud"]
        underside = strip.place.let("lower_edge", underside - over)
    maker.add(
        strip, role="face strip", title=f"{_called(word)} face strip",
        lies="+x +y +z" if low else "-x -y +z",
        at=(left, underside, carcase.depth) if low
        else (left + strip.length, top, carcase.depth),
        ends=("left" if low else "right", "right" if low else "left",
              *_edges_of(word)),
        shows=("t1", "w0", "w1") if _is_inner(word) else ("t1", "w1"),
        group="face strips across", front=maker.path("face_strips"),
    )  # fmt: skip


def _edges_of(word: str) -> tuple[str, str]:
    return ("lower edge", "upper edge") if _is_inner(word) else ("outer edge", "inner edge")


def _called(word: str) -> str:
    """A strip's board in words: 'shelf 2', 'rail 1'."""
    return word.removeprefix("fixed_").replace("row_board", "rail").replace("_", " ")


def _trim(
    maker: Maker, strip: Outline, stretch: tuple[Dim | None, Dim | None], *, name: str = "trim",
    edge: Plane = "w1",
) -> None:  # fmt: skip
    """What stands proud of the inside, trimmed where nothing butts against it."""
    place = strip.place.at(name)
    width = place.let("width", maker.house.chain.nodes[f"{strip.path}.proud"])
    maker.machine(
        strip.path,
        Cut(
            path=place.path, kind="trim", face="A", runs="l", datum=edge, at=maker.zero,
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
    inside = maker.house.said(maker.style("strip_proud"))
    for hand, strip in ends.items():
        side, beside = _side(box, hand), _beside(maker, hand)
        outer, line = Told("flush with the outside of the side"), None
        if beside is not None:
            off = maker.house.said(beside)
            outer = tell("{} out from the side, for what is on that end", off)
            line = beside + side.thickness / 2
        where = tell("its outer edge {}, its inner edge {} proud of the inside", outer, inside)
        _step(maker, strip, side, (hand, where), (), line=line)
    for word, board in boards:
        butts = [
            maker.join(
                f"face_strips.joint_{word}_{hand}", "butt",
                (flats[word].path, _end_at(word, hand)), (end.path, "w1"),
            )
            for hand, end in ends.items()
        ]  # fmt: skip
        where = (
            Told("tight between the upright ones")
            if len(ends) == 2
            else tell(
                "as far in from the inside of a side, {}, as its inner edge is proud", inside
            )
        )
        if _is_inner(word):
            where += tell(", {} proud of both faces of the {}", inside, board.title)
        last = word == "top"
        _step(maker, flats[word], board.outline, (word, where), tuple(butts), last=last)


def _end_at(word: str, hand: Hand) -> Plane:
    return "l0" if (word != "top") == (hand == "left") else "l1"


def _step(
    maker: Maker,
    strip: Outline,
    onto: Outline,
    at: tuple[str, Told],
    joints: tuple[str, ...],
    *,
    last: bool = False,
    line: Dim | None = None,
) -> None:
    """Glue a strip on.

    Parameters
    ----------
    at
        Its name, and where it goes in words.
    line
        Of the brads from its outer edge [mm]; None: along its middle.
    """
    word, where = at
    name = f"face_strips.joint_{word}"
    held = strip_fastenings(maker, name, strip, onto.path, onto.width, line=line)
    face = maker.join(name, "face", (strip.path, "t0"), (onto.path, "w0"), fastenings=held)
    brads = any(f.kind == "brad" for f in held)
    words = tell(
        "Spread glue thinly; set the {} face strip on the front edge, {}; {}.",
        _called(word),
        where,
        "hold it with brads" if brads else "clamp it",
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

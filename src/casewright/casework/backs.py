"""Backs: rabbeted, grooved, applied or thick inset, cut from the box they close."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.box import Box
from casewright.casework.brads import fastener_row
from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.pockets import bore_pockets
from casewright.casework.setups import rip_cut_setup
from casewright.dims import Dim, Place, Way

__all__ = ["BackCuts", "Rear", "add_back", "machine_for_back"]

_ENDS = ("bottom", "top", "right", "left")

_PLANED = Fraction(1, 2)
"""How much too wide a thin back may be: a few strokes of a plane (common practice) [mm]."""


@dataclass(frozen=True, slots=True)
class BackCuts:
    """Cuts that take the back, as made.

    Parameters
    ----------
    left, right, bottom, top
        Depth of the rabbet or groove in each [mm]; nothing where there is none.
    seat
        Plane z of the back's front face above the rear plane [mm].
    """

    left: Dim
    right: Dim
    bottom: Dim
    top: Dim
    seat: Dim


@dataclass(frozen=True, slots=True)
class Rear:
    """Dimensions of the closed box that a back is cut from [mm]."""

    width: Dim
    clear_width: Dim
    left_thickness: Dim
    deck: Dim
    head: Dim


def machine_for_back(maker: Maker, box: Box) -> BackCuts:
    """Cut the rabbets or grooves. The bottom's rear edge is the datum of a rabbet's width."""
    zero = maker.zero
    match maker.spec.back:
        case "rabbeted":
            left, width = _rabbet(maker, box, box.left)
            right, _ = _rabbet(maker, box, box.right)
            return BackCuts(left, right, zero, zero, width)
        case "grooved":
            return _grooves(maker, box)
        case "applied":
            return BackCuts(zero, zero, zero, zero, box.seat.thin)
        case "inset":
            return BackCuts(zero, zero, zero, zero, _inset_seat(maker, box))
        case "open":
            return BackCuts(zero, zero, zero, zero, zero)


def _inset_seat(maker: Maker, box: Box) -> Dim:
    """A thick back's front face: where the fixed boards inside end, else its own thickness."""
    for board in box.boards:
        if board.role in ("divider", "fixed shelf"):
            return maker.place.let("back_seat", box.left.width - board.outline.width)
    return box.seat.thin


def _rabbet(maker: Maker, box: Box, side: Outline) -> tuple[Dim, Dim]:
    place = side.place.at("rabbet_back")
    width = maker.machined(place, "width", side.width - box.bottom.outline.width)
    depth = maker.machined(place, "depth", maker.style("rabbet_depth"))
    _cut_along(maker, side, place, "rabbet", at=maker.zero, width=width, depth=depth)
    return depth, width


def _grooves(maker: Maker, box: Box) -> BackCuts:
    """The groove's rear wall is its datum, which the back lies on; any clearance is before it."""
    inset = maker.style("groove_inset")
    top = next(b for b in box.boards if b.name in ("top", "rear_stretcher"))
    depths = []
    wide = box.seat.thin + maker.style("dado_clearance")
    for outline in (box.left, box.right, box.bottom.outline, top.outline):
        place = outline.place.at("groove_back")
        width = maker.machined(place, "width", wide, tool="router")
        maker.board_fit(place, width, box.seat.thin)
        depth = maker.machined(place, "depth", maker.style("groove_depth"))
        depths.append(depth)
        _cut_along(maker, outline, place, "groove", at=inset, width=width, depth=depth)
    seat = maker.place.let("back_seat", inset + box.seat.thin)
    return BackCuts(depths[0], depths[1], depths[2], depths[3], seat)


def _cut_along(
    maker: Maker,
    board: Outline,
    place: Place,
    kind: Literal["rabbet", "groove"],
    *,
    at: Dim,
    width: Dim,
    depth: Dim,
) -> None:
    """A cut right along a board's rear edge, into the face that looks inside."""
    setup = rip_cut_setup(maker.house, place, at=at, width=width, depth=depth, name=kind)
    maker.machine(
        board.path,
        Cut(
            path=place.path,
            kind=kind,
            face="A",
            runs="l",
            datum="w1",
            at=at,
            width=width,
            depth=depth,
            start=None,
            end=None,
            asked_by=maker.path("back"),
            setup=setup,
        ),
    )


def add_back(maker: Maker, box: Box, rear: Rear, cuts: BackCuts) -> Outline | None:
    """Cut the back from the closed box and set it in; nothing where it stays open."""
    match maker.spec.back:
        case "rabbeted":
            return _rabbeted_back(maker, box, rear, cuts)
        case "grooved":
            return _grooved_back(maker, box, rear, cuts)
        case "applied":
            return _applied_back(maker, box, rear)
        case "inset":
            return _inset_back(maker, box, rear, cuts.seat)
        case "open":
            return None


def _brads(
    maker: Maker, joint: str, length: Dim, into: str, line: tuple[Plane, Dim]
) -> tuple[Fastening, ...]:
    return (
        fastener_row(
            maker, joint, length, "brads along the back", through=maker.path("back"), into=into,
            screw=maker.house.screw("back_brad"), line=line,
        ),
    )  # fmt: skip


def _rabbeted_back(maker: Maker, box: Box, rear: Rear, cuts: BackCuts) -> Outline:
    back = maker.outline(
        "back",
        maker.spec.back_stock,
        rear.head - rear.deck if rear.deck is not maker.zero else rear.head,
        rear.clear_width + cuts.left + cuts.right,
        way=Way.DOWN,
    )
    x_left = rear.left_thickness - cuts.left
    play = maker.place.let("back_play", rear.clear_width + cuts.left + cuts.right - back.width)
    maker.place.fit("back_side_play", play, *_band(maker), back.path)
    _place(maker, back, x_left + back.width, rear.deck, cuts.seat - back.thickness)
    sides: tuple[tuple[str, Outline, Plane, Dim, Dim], ...] = (
        ("left", box.left, "w1", maker.zero, cuts.left / 2),
        ("right", box.right, "w0", play, (cuts.right - play) / 2),
    )
    for hand, side, edge, gap, line in sides:
        cut = f"{side.path}.rabbet_back"
        maker.join(
            f"joint_back_{hand}", "rabbet", (back.path, "t1"), (side.path, "w0", cut),
            fastenings=_brads(
                maker, f"joint_back_{hand}", back.length, side.path, (edge, line)
            ),
        )  # fmt: skip
        maker.join(
            f"joint_back_{hand}_play", "loose", (back.path, edge),
            (side.path, "t0", cut), gap=gap,
        )  # fmt: skip
    _against_rear_edges(maker, box, back, rear.deck)
    return back


def _against_rear_edges(maker: Maker, box: Box, back: Outline, low: Dim) -> None:
    for board in box.boards:
        at_rear = board.role in ("bottom", "top", "divider", "fixed shelf")
        if at_rear or board.name == "rear_stretcher":
            name = f"joint_back_{board.name.replace('.', '_')}"
            up = board.underside if low is maker.zero else board.underside - low
            line = board.outline.thickness / 2
            maker.join(
                name, "butt", (back.path, "t1"), (board.outline.path, "w1"),
                fastenings=_brads(
                    maker, name, box.clear, board.outline.path,
                    ("l0", line if up is maker.zero else up + line),
                ),
            )  # fmt: skip


def _grooved_back(maker: Maker, box: Box, rear: Rear, cuts: BackCuts) -> Outline:
    top = next(b for b in box.boards if b.name in ("top", "rear_stretcher"))
    clearance = maker.style("groove_clearance")
    tall = top.underside - rear.deck - box.bottom.outline.thickness
    back = maker.outline(
        "back",
        maker.spec.back_stock,
        tall + cuts.bottom + cuts.top - clearance,
        box.clear + cuts.left + cuts.right - clearance,
        way=Way.DOWN,
    )
    play = maker.place.let("back_play", box.clear + cuts.left + cuts.right - back.width)
    rise = maker.place.let("back_rise", tall + cuts.bottom + cuts.top - back.length)
    y = rear.deck + box.bottom.outline.thickness - cuts.bottom
    x_left = rear.left_thickness - cuts.left + play / 2
    _place(maker, back, x_left + back.width, y, cuts.seat - back.thickness)
    loose: tuple[tuple[str, Plane, str, Plane, Dim], ...] = (
        ("left", "w1", box.left.path, "t0", play / 2),
        ("right", "w0", box.right.path, "t0", play / 2),
        ("bottom", "l0", box.bottom.outline.path, "t0", maker.zero),
        ("top", "l1", top.outline.path, "t0", rise),
    )
    for name, edge, part, floor, gap in loose:
        cut = f"{part}.groove_back"
        maker.join(
            f"joint_back_{name}", "groove", (back.path, edge), (part, floor, cut), gap=gap,
        )  # fmt: skip
    return back


def _applied_back(maker: Maker, box: Box, rear: Rear) -> Outline:
    margin = maker.style("applied_back_margin")
    back = maker.outline(
        "back",
        maker.spec.back_stock,
        rear.head - rear.deck - 2 * margin,
        rear.width - 2 * margin,
        way=Way.DOWN,
    )
    _place(maker, back, margin + back.width, rear.deck + margin, maker.zero)
    right = box.right.thickness / 2 - (rear.width - margin - back.width)
    sides: tuple[tuple[str, Outline, Plane, Dim], ...] = (
        ("left", box.left, "w1", box.left.thickness / 2 - margin),
        ("right", box.right, "w0", right),
    )
    for hand, side, edge, line in sides:
        name = f"joint_back_{hand}"
        maker.join(
            name, "butt", (back.path, "t1"), (side.path, "w1"),
            fastenings=_brads(maker, name, back.length, side.path, (edge, line)),
        )  # fmt: skip
    _against_rear_edges(maker, box, back, rear.deck + margin)
    return back


def _inset_back(maker: Maker, box: Box, rear: Rear, seat: Dim) -> Outline:
    top = next((b for b in box.boards if b.name in ("top", "rear_stretcher")), None)
    head = box.head if top is None else top.underside
    deck = rear.deck + box.bottom.outline.thickness
    back = maker.outline(
        "back",
        maker.spec.box_stock,
        head - deck,
        rear.clear_width,
        way=Way.DOWN,
    )
    play = maker.place.let("back_play", rear.clear_width - back.width)
    rise = maker.place.let("back_rise", head - deck - back.length)
    x = rear.left_thickness + back.width
    against = any(board.role in ("divider", "fixed shelf") for board in box.boards)
    _place(maker, back, x, deck, seat - back.thickness if against else maker.zero)
    screwed = all(board.joint == "butt" for board in box.boards)
    count = bore_pockets(maker, back.path, "B", ("w0", "w1"), along="l0") if screwed else 0
    zero = maker.zero
    above = () if top is None else (("top", "l1", top.outline.path, "t1", rise),)
    meets: tuple[tuple[str, Plane, str, Plane, Dim], ...] = (
        ("bottom", "l0", box.bottom.outline.path, "t1", zero),
        *above,
        ("right", "w0", box.right.path, "t1", play),
        ("left", "w1", box.left.path, "t1", zero),
    )
    for name, edge, part, face, gap in meets:
        maker.join(
            f"joint_back_{name}", "butt", (back.path, edge), (part, face), gap=gap,
            fastenings=_inset_fastenings(maker, back, part, count if edge in ("w0", "w1") else 0),
        )  # fmt: skip
    return back


def _inset_fastenings(
    maker: Maker, back: Outline, into: str, pockets: int
) -> tuple[Fastening, ...]:
    """Glue all round; pocket screws into sides without dadoes, which they would run into."""
    glue = Fastening("glue", 1, None, (back.path,), into)
    if not pockets:
        return (glue,)
    screws = maker.house.pocket_screw(maker.spec.box_stock)
    return (Fastening("pocket screw", pockets, screws, (back.path,), into), glue)


def _place(maker: Maker, back: Outline, x: Dim, y: Dim, z: Dim) -> None:
    maker.add(
        back, role="back", title="back", lies="+y -x +z", at=(x, y, z), ends=_ENDS,
        shows=("t1",) if maker.spec.front is None else (),
    )  # fmt: skip


def _band(maker: Maker) -> tuple[Fraction, Fraction]:
    step = maker.house.style["cut_step"].value
    return -_PLANED, 2 * step + Fraction(1)

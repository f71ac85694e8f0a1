"""Corners of a drawer's box: butt, rabbet, dado and box joint, cut into sides and ends."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from casewright.casework.brads import fastener_row
from casewright.casework.drawers.boxes import DrawerBox
from casewright.casework.features import Cut, Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import cross_dado_setup, finger_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["cut_corners", "join_corners"]

_End = Literal["front", "back"]
_ENDS: tuple[_End, _End] = ("front", "back")


def _hands(box: DrawerBox) -> Iterator[tuple[Hand, Outline, Dim]]:
    yield "left", box.left, box.into[0]
    yield "right", box.right, box.into[1]


def _piece(box: DrawerBox, end: _End) -> Outline:
    return box.front if end == "front" else box.back


def _joint(box: DrawerBox, end: _End, hand: Hand) -> str:
    return f"{box.plan.name}.joint_{end}_{hand}"


def cut_corners(maker: Maker, box: DrawerBox) -> None:
    """Machine sides and ends for the joints of their corners."""
    match box.spec.joint:
        case "rabbet" | "dado":
            for hand, side, depth in _hands(box):
                for end in _ENDS:
                    _cut_side(maker, box, side, depth, end, hand)
        case "box joint":
            _cut_fingers(maker, box)
        case "butt":
            pass


def _cut_side(
    maker: Maker, box: DrawerBox, side: Outline, depth: Dim, end: _End, hand: Hand
) -> None:
    """The rabbet or dado of one end; a dado's rear wall is its datum, which the back lies on."""
    in_dado = end == "back" and box.back_in is not maker.zero
    kind: Literal["dado", "rabbet"] = "dado" if in_dado else "rabbet"
    place = side.place.at(f"{kind}_{end}")
    wide = _piece(box, end).thickness
    if in_dado:
        wide = wide + maker.style("dado_clearance")
    at = maker.machined(place, "at", box.back_in) if in_dado else maker.zero
    width = maker.machined(place, "width", wide, tool="router")
    if in_dado:
        maker.board_fit(place, width, _piece(box, end).thickness)
    maker.machine(
        side.path,
        Cut(
            path=place.path, kind=kind, face="A", runs="w", datum="l1" if end == "front" else "l0",
            at=at, width=width, depth=depth, start=None, end=None,
            asked_by=maker.path(_joint(box, end, hand)),
            setup=cross_dado_setup(maker.house, place, at=at, width=width, depth=depth, name=kind),
        ),
    )  # fmt: skip


def _steps(maker: Maker, box: DrawerBox) -> tuple[Dim, ...]:
    """Heights at which fingers and slots change, from the lower edge; the last is the top [mm].

    The lowest finger, of the sides, is as many steps high as the groove for the bottom needs, so
    that the groove comes out in a slot of front and back. The topmost takes what is left.
    """
    finger = maker.style("finger")
    top = box.groove_up + box.bottom.thickness + maker.style("dado_clearance")
    first = box.place.times(top, finger, "fingers below the groove's upper wall") + 1
    high = box.left.width
    count = max(box.place.times(high, finger, "fingers in the height of the box"), first + 1)
    return (*(finger * n for n in range(first, count)), high)


def _cut_fingers(maker: Maker, box: DrawerBox) -> None:
    """Slots in the sides where front and back have fingers, and the other way round."""
    steps = _steps(maker, box)
    lows = (maker.zero, *steps[:-1])
    for number, (low, high) in enumerate(zip(lows, steps, strict=True)):
        in_sides = number % 2 == 1
        width = high if low is maker.zero else high - low
        for end in _ENDS:
            piece = _piece(box, end)
            for hand, side, _ in _hands(box):
                mate, own = (piece, side) if in_sides else (side, piece)
                far = _is_far(end, hand, of_side=in_sides)
                name = f"slot_{end}_{hand}_{number}"
                _slot(maker, own, mate, (low, width), (name, _joint(box, end, hand)), far=far)


def _is_far(end: _End, hand: Hand, *, of_side: bool) -> bool:
    """Whether a corner is at the end l1 of a piece.

    Sides begin at their rear end, the front at its right, the back at its left.
    """
    if of_side:
        return end == "front"
    return (hand == "left") == (end == "front")


def _slot(
    maker: Maker,
    own: Outline,
    mate: Outline,
    sizes: tuple[Dim, Dim],
    names: tuple[str, str],
    *,
    far: bool,
) -> None:
    """One slot, right through, as long as its mate is thick.

    Parameters
    ----------
    sizes
        Its lower wall above the lower edge, and its width [mm].
    names
        Of the slot and of the joint that asks for it.
    far
        Whether it is at the end l1.
    """
    low, width = sizes
    place = own.place.at(names[0])
    maker.machine(
        own.path,
        Cut(
            path=place.path, kind="finger", face="A", runs="l", datum="w0", at=low, width=width,
            depth=own.thickness, start=own.length - mate.thickness if far else None,
            end=None if far else mate.thickness, asked_by=maker.path(names[1]),
            setup=finger_setup(maker.house, mate.thickness),
        ),
    )  # fmt: skip


def join_corners(maker: Maker, box: DrawerBox) -> None:
    """Record the joints of the four corners with what holds them."""
    for end in _ENDS:
        for hand, side, _ in _hands(box):
            _join(maker, box, end, hand, side)


def _join(maker: Maker, box: DrawerBox, end: _End, hand: Hand, side: Outline) -> None:
    piece, name = _piece(box, end), _joint(box, end, hand)
    own: Plane = "l1" if _is_far(end, hand, of_side=False) else "l0"
    glue = Fastening("glue", 1, None, (piece.path,), side.path)
    near: Plane = "l1" if end == "front" else "l0"
    line = piece.thickness / 2
    match box.spec.joint:
        case "butt":
            held = _row(maker, box, name, side, piece, (near, line), screws=True)
            maker.join(name, "butt", (piece.path, own), (side.path, "t1"),
                       fastenings=(held, glue))  # fmt: skip
        case "box joint":
            far: Plane = "l0" if end == "front" else "l1"
            first = f"{side.path}.slot_{end}_{hand}_1"
            maker.join(name, "lap", (piece.path, "t1"), (side.path, far, first),
                       fastenings=(glue,))  # fmt: skip
        case "rabbet" | "dado":
            kind: Literal["dado", "rabbet"] = (
                "dado" if end == "back" and box.back_in is not maker.zero else "rabbet"
            )
            if kind == "dado":
                line = box.back_in + line
            cut = f"{side.path}.{kind}_{end}"
            held = _row(maker, box, name, side, piece, (near, line), screws=False)
            maker.join(name, kind, (piece.path, own), (side.path, "t0", cut),
                       fastenings=(glue, held))  # fmt: skip
            seat: tuple[Plane, Plane] = ("t0", "l0") if kind == "dado" else (
                "t1", "l0" if end == "front" else "l1")  # fmt: skip
            maker.join(f"{name}_seat", kind, (piece.path, seat[0]), (side.path, seat[1], cut))


def _row(
    maker: Maker,
    box: DrawerBox,
    joint: str,
    side: Outline,
    piece: Outline,
    line: tuple[Plane, Dim],
    *,
    screws: bool,
) -> Fastening:
    """Screws into the ends of butted pieces, else brads until the glue is dry."""
    if screws:
        length = maker.house.screw_for("drawer_screw", side.thickness, side.thickness * 2)
        return fastener_row(
            maker, joint, piece.width, "screws in a corner of a drawer", through=side.path,
            into=piece.path, screw=length, line=line, kind="case screw",
        )  # fmt: skip
    return fastener_row(
        maker, joint, piece.width, "brads in a corner of a drawer", through=side.path,
        into=piece.path, screw=maker.house.screw("brad"), line=line,
    )  # fmt: skip

"""The face panel of a hood: one board over the front edges of its box."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.box import Box
from casewright.casework.carcase import Carcase
from casewright.casework.cases import FaceFrame
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.casework.pockets import bore_pockets
from casewright.casework.specs import Hand
from casewright.dims import Way
from casewright.stock import Sheet

__all__ = ["add_face_panel"]

_HANDS: tuple[Hand, Hand] = ("left", "right")
_EDGES: tuple[Plane, ...] = ("l0", "l1", "w0", "w1")
_CLEAR = 4
"""Pockets keep so many thicknesses from the boards that meet a side (common practice)."""


def add_face_panel(maker: Maker, box: Box, carcase: Carcase) -> FaceFrame:
    """Cut it as wide as the box and as high as its sides, and screw it on from inside.

    Raises
    ------
    ValueError
        When the case is no hood: a defect of the program.
    """
    hood = maker.spec.hood
    if hood is None:
        msg = f"{maker.spec.key} has no face panel"
        raise ValueError(msg)
    goods = maker.house.stock[hood.face_stock]
    fibre = isinstance(goods, Sheet) and goods.is_fibreboard
    outline = maker.outline(
        "face_panel", hood.face_stock, box.left.length, carcase.width, edges=_EDGES,
        edge="painted" if fibre else maker.spec.edge, setting=f"{maker.spec.key} face",
        way=Way.DOWN, length_way=Way.DOWN,
    )  # fmt: skip
    place = maker.place.at("face")
    x = place.let("x", (carcase.width - outline.width) / 2)
    part = maker.add(
        outline, role="face panel", title="face panel", lies="+y -x +z",
        at=(x + outline.width, box.foot, carcase.depth), ends=("bottom", "top", "right", "left"),
        shows=("l0", "w0", "w1", "t1"), group="face", front=place.path,
    )  # fmt: skip
    step = maker.style("cut_step").value
    for name, off in (
        ("wide", carcase.width - outline.width), ("high", carcase.height - box.foot
                                                  - outline.length),
    ):  # fmt: skip
        maker.place.fit(f"face_{name}_fit", place.let(f"step_{name}", off), Fraction(-1) - step,
                        1 + step, part.path)  # fmt: skip
    _fix(maker, box, part)
    return FaceFrame(
        path=place.path, title="face panel", x=x, y=place.let("y", box.foot),
        z=place.let("z", carcase.depth), width=outline.width, height=outline.length,
        thickness=outline.thickness,
        front=place.let("face_plane", carcase.depth + outline.thickness), parts=(part.path,),
        openings=(),
    )  # fmt: skip


def _fix(maker: Maker, box: Box, part: Part) -> None:
    """Glue on every front edge, pocket screws from inside through both sides."""
    joints = []
    screw = maker.house.pocket_screw(maker.spec.box_stock)
    clear = box.left.thickness * _CLEAR
    for hand, side in zip(_HANDS, (box.left, box.right), strict=True):
        count = bore_pockets(
            maker, side.path, "A", ("w0",), along="l0", start=clear, reach=side.length - clear
        )
        held = Fastening("pocket screw", count, screw, (side.path,), part.path)
        joints.append(_join(maker, f"joint_face_{hand}", side.path, part, held))
    joints.extend(
        _join(maker, f"joint_face_{name}", maker.path(name), part) for name in ("bottom", "top")
    )
    maker.step(
        "fit", part.path, "-z",
        "Lay the box on its back; spread glue on its front edges; set the face panel on, flush "
        "with the outsides of the sides and with their lower ends; clamp, and drive the pocket "
        "screws from inside.",
        joints=tuple(joints), cautions=("clamp_screws",),
    )  # fmt: skip


def _join(maker: Maker, name: str, board: str, part: Part, *held: Fastening) -> str:
    glue = Fastening("glue", 1, None, (part.path,), board)
    return maker.join(name, "butt", (board, "w0"), (part.path, "t0"), fastenings=(*held, glue))

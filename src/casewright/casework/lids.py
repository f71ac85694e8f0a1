"""The lid of a window seat: a board over the whole box, hinged at the back or fixed."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.carcase import Carcase
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.lifted import lift_path, told_weight
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.dims import Dim, Measure, Way, tell

__all__ = ["add_lid", "seat_box_height"]

_POINT = Fraction(5, 6)
"""How far into a fixed lid the screws under it may go (common practice)."""

_SUPPORTS: tuple[tuple[str, Plane], ...] = (
    ("side_left", "l1"), ("side_right", "l1"), ("front_stretcher", "t0"),
    ("rear_stretcher", "t0"), ("front_rail", "w1"), ("nailer_top", "w1"),
)  # fmt: skip


def seat_box_height(maker: Maker) -> Dim:
    """What the box under a lid may be high: the finished seat less cushion and lid [mm]."""
    lid = maker.house.thickness(maker.spec.lid_stock)
    return maker.style("seat_height") - maker.style("seat_cushion") - lid


def add_lid(maker: Maker, carcase: Carcase) -> None:
    """Cut the lid and lay it on: a gap short at either end, and proud of the front.

    L - 2g long and D + oh wide (common practice), over a face frame or strips where there are any.
    Its rear edge is flush with the back, where a hinged one turns on the top nailer.
    """
    if maker.spec.lid is None or maker.spec.shares_lid:
        return
    gap = maker.style("gap")
    treated: tuple[Plane, ...] = ("l0", "l1", "w0")
    low, wide = _face(maker, carcase)
    start = gap if low is maker.zero else low + gap
    outline = maker.outline(
        "lid", maker.spec.lid_stock, wide - 2 * gap,
        carcase.front + maker.style("lid_overhang"), edges=treated,
        setting=f"{maker.spec.key} lid", way=Way.DOWN, length_way=Way.DOWN,
    )  # fmt: skip
    part = maker.add(
        outline, role="lid", title="lid", lies="+x -z +y",
        at=(start, carcase.height, outline.width), ends=("left", "right", "front", "back"),
        shows=("l0", "l1", "w0", "t1"), group="lids", front=outline.path,
    )  # fmt: skip
    outline.place.let("top", carcase.height + outline.thickness)
    air = outline.place.let("right_air", wide - gap - outline.length)
    most = gap.value + maker.style("gap_tolerance").value
    maker.place.fit("lid_air", air, gap.value / 2, most, outline.path)
    joints = tuple(_lie_on(maker, part, carcase.height))
    if maker.spec.lid == "hinged":
        _hang(maker, part, joints)
        return
    maker.step(
        "fit", part.path, "-y",
        "Lay the lid on, its rear edge flush with the back, as far from either side; clamp it, "
        "and drive the screws from below through the stretchers.",
        joints=joints, cautions=("clamp_screws",),
    )  # fmt: skip


def _face(maker: Maker, carcase: Carcase) -> tuple[Dim, Dim]:
    """Case x where the face begins, and its width [mm]: that of the frame where there is one."""
    if not maker.spec.framed:
        return maker.zero, carcase.width
    left, right = (maker.parts[maker.path(f"frame.stile_{hand}")].placed.x
                   for hand in ("left", "right"))  # fmt: skip
    return left, right - left


def _lie_on(maker: Maker, part: Part, head: Dim) -> list[str]:
    """Its joints with what it lies on; a fixed one is screwed down through the stretchers.

    The inner front ends where its last step on the grid does, a hair under the lid.
    """
    found = []
    for name, plane in _SUPPORTS:
        below = maker.parts.get(maker.path(name))
        if below is None or (name == "nailer_top" and maker.path("rear_stretcher") in maker.parts):
            continue
        air = None
        if name == "front_rail":
            top = below.placed.y + below.finished.width
            air = maker.place.at("lid").let("front_air", head - top)
            wanted, play = maker.style("finger_gap").value, maker.style("gap_tolerance").value
            maker.place.fit("finger_gap_fit", air, wanted - play, wanted + play, part.path)
        held: tuple[Fastening, ...] = ()
        if below.role == "stretcher":
            most = part.finished.thickness * _POINT
            screw = maker.house.screw_for("drawer_screw", below.finished.thickness, most)
            count = max(2, maker.place.times(part.finished.length, maker.style("lid_screws"),
                                             "screws along a stretcher"))  # fmt: skip
            held = (Fastening("case screw", count, screw, (below.path,), part.path),)
        found.append(
            maker.join(f"joint_lid_{name}", "loose" if not held else "face", (part.path, "t0"),
                       (below.path, plane), gap=air, fastenings=held)
        )  # fmt: skip
    return found


def _weighs(maker: Maker, part: Part) -> Measure:
    kilos = part.weight(maker.house.density(part.stock))
    return told_weight(kilos, maker.house.unit, lift_path(part.path), fine=True)


def _hang(maker: Maker, part: Part, joints: tuple[str, ...]) -> None:
    behind = "top nailer" if maker.path("nailer_top") in maker.parts else "upper edge of the back"
    maker.step(
        "fit", part.path, "-y",
        tell(
            "It weighs about {}, cushion apart. Lay it on, its rear edge flush with the back, as "
            "far from either side; screw its hinges to it and to the {}, propped open with a "
            "stick cut to length, then the stays, chosen for its weight, by their makers' "
            "sheets. Open, it must stay wherever the hand leaves it.",
            _weighs(maker, part), behind,
        ),
        joints=joints, cautions=("lid_falls", "clamp_screws"),
    )  # fmt: skip

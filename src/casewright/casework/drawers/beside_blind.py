"""What carries the slides of a drawer at the blind side of a corner: a partition under the top.

A drawer passes the mouth, so that its slide there has no side to lie on. A partition hangs under
both stretchers instead, its face even with the edge of the blind panel, from behind that to the
nailer; below it arms and shelves pass (common practice).
"""

from __future__ import annotations

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.slide_bores import bore_along
from casewright.casework.joints import Fastening
from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.casework.specs import SlideKind
from casewright.dims import Dim, Way, greatest

__all__ = ["bore_partition", "hang_partition"]


def hang_partition(maker: Maker, carcase: Carcase, opening: Opening) -> Part:
    """Cut it, place it, join it to stretchers and nailer.

    Parameters
    ----------
    opening
        Row of the drawer, right under the stretchers.
    """
    front = maker.parts[maker.path("front_stretcher")]
    nailers = [extent(p, 2)[1] for p in maker.parts.values() if p.role == "nailer"]
    rear = greatest(carcase.seat, *nailers) if nailers else carcase.seat
    wide = maker.house.chain.nodes[maker.path("blind.width")]
    panel = maker.house.chain.nodes[maker.path("blind.thickness")]
    outline = maker.outline(
        "partition", maker.spec.box_stock, carcase.depth - panel - rear, opening.y1 - opening.y0,
        setting=f"{maker.spec.key} partition", way=Way.DOWN, matched=True,
    )  # fmt: skip
    left = maker.spec.blind == "left"
    outline.place.let("clear", carcase.clear_width - wide)
    edge = carcase.left_thickness + wide
    x = edge - outline.thickness
    if not left:
        edge = carcase.width - carcase.right_thickness - wide
        x = edge + outline.thickness
    part = maker.add(
        outline, role="partition", title="partition", lies="+z +y +x" if left else "+z +y -x",
        at=(x, opening.y1 - outline.width, rear), ends=("back", "front", "bottom", "top"),
        hand="left" if left else "right",
    )  # fmt: skip
    outline.place.let("wall", edge)
    _join(maker, part, front)
    return part


def _join(maker: Maker, part: Part, front: Part) -> None:
    rear = maker.parts[maker.path("rear_stretcher")]
    for board in (front, rear):
        thick = board.finished.thickness
        length = maker.house.screw_for("drawer_screw", thick, 2 * thick)
        screws = Fastening("case screw", 2, length, (board.path,), part.path)
        glue = Fastening("glue", 1, None, (part.path,), board.path)
        name = board.path.rpartition(".")[2]
        maker.join(f"joint_partition_{name}", "butt", (part.path, "w1"), (board.path, "t1"),
                   fastenings=(screws, glue))  # fmt: skip
    nailer = maker.parts.get(maker.path("nailer_top"))
    if nailer is not None and extent(nailer, 2)[1].value == part.placed.z.value:
        glue = Fastening("glue", 1, None, (part.path,), nailer.path)
        maker.join("joint_partition_nailer", "butt", (part.path, "l0"), (nailer.path, "t1"),
                   fastenings=(glue,))  # fmt: skip


def bore_partition(
    maker: Maker, part: Part, name: str, kind: SlideKind, sizes: tuple[Dim, Dim], holes: list[Dim]
) -> str:
    """Bore the pilot holes of a slide into it, where those in the side beyond are; their path.

    Parameters
    ----------
    sizes
        Case height of the row, and how far the slide's front lies behind the front edges [mm].
    holes
        From the slide's front end [mm].
    """
    place, nodes = maker.house.chain.place(part.path), maker.house.chain.nodes
    line, front = sizes
    up = place.let(f"slide_{name}_up", line - part.placed.y)
    ahead = front - nodes[maker.path("blind.thickness")]
    from_front = [ahead + hole for hole in holes]
    return bore_along(maker, part, f"slide_{name}", kind, up, from_front, asked_by=name)

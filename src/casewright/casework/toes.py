"""What a standing case stands on: toe notch and toe board, or a separate ladder plinth."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.box import Board, Box, cut_horizontal
from casewright.casework.features import Cut
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.pockets import bore_pockets
from casewright.casework.setups import notch_setup
from casewright.dims import Dim, Way, greatest

__all__ = [
    "Plinth",
    "cut_plinth",
    "cut_toe_board",
    "notch_sides",
    "place_plinth",
    "plinth_bays",
    "toe_setback",
]


@dataclass(frozen=True, slots=True)
class Plinth:
    """A ladder: two rails and the sleepers between them.

    Parameters
    ----------
    height
        As cut [mm].
    length
        Of the rails [mm].
    """

    front: Outline
    back: Outline
    sleepers: tuple[Outline, ...]
    height: Dim
    length: Dim


def plinth_bays(maker: Maker, length: Dim, boxes: int) -> int:
    """Bays of a ladder: one to a box, more where sleepers would be over the limit apart."""
    bay = length / boxes
    whole = maker.place.times(bay, maker.style("sleeper_spacing"), "sleepers along a box")
    exact = bay.value == whole * maker.style("sleeper_spacing").value
    return boxes * max(1, whole if exact else whole + 1)


def cut_plinth(maker: Maker, length: Dim, depth: Dim, height: Dim, boxes: int = 1) -> Plinth:
    """Cut a ladder plinth for a row of boxes.

    Parameters
    ----------
    length
        Of the row [mm].
    depth
        Of the boxes [mm]; the ladder stands back from it by the toe setback.
    height
        [mm].
    boxes
        Number of boxes it carries [-].
    """
    stock = maker.spec.box_stock
    setting = f"{maker.spec.key} plinth"
    front, back = (
        maker.outline(name, stock, length, height, setting=setting, way=Way.NEAREST, matched=True)
        for name in ("plinth.front", "plinth.back")
    )
    between = depth - maker.style("toe_setback") - front.thickness - back.thickness
    sleepers = tuple(
        maker.outline(
            f"plinth.sleeper.{n}", stock, between, front.width, setting=setting, way=Way.NEAREST
        )
        for n in range(1, plinth_bays(maker, length, boxes) + 2)
    )
    return Plinth(front, back, sleepers, front.width, front.length)


def place_plinth(maker: Maker, plinth: Plinth) -> None:
    """Lay the ladder under the box, its back rail on the rear plane."""
    zero = maker.zero
    behind = plinth.back.thickness + plinth.sleepers[0].length
    for outline, title, z in (
        (plinth.front, "plinth front rail", behind),
        (plinth.back, "plinth back rail", zero),
    ):
        maker.add(
            outline, role="plinth rail", title=title, lies="+x +y +z", at=(zero, zero, z),
            ends=("left", "right", "bottom", "top"), group="plinth",
            shows=("t1",) if outline is plinth.front else (),
        )  # fmt: skip
    bays = len(plinth.sleepers) - 1
    for number, sleeper in enumerate(plinth.sleepers):
        x = maker.place.let(
            f"sleeper_{number + 1}_mark",
            (plinth.length - sleeper.thickness) * Fraction(number, bays),
        )
        maker.add(
            sleeper, role="sleeper", title=f"sleeper {number + 1}", lies="-z +y +x",
            at=(x, zero, behind), ends=("front", "back", "bottom", "top"), group="plinth",
        )  # fmt: skip
        bore_pockets(maker, sleeper.path, "A" if number == 0 else "B", ("l0", "l1"))
        screws = maker.house.screw("pocket_screw")
        for end, rail, plane in (("l0", plinth.front, "t0"), ("l1", plinth.back, "t1")):
            maker.join(
                f"joint_sleeper_{number + 1}_{'front' if end == 'l0' else 'back'}", "butt",
                (sleeper.path, "l0" if end == "l0" else "l1"),
                (rail.path, "t0" if plane == "t0" else "t1"),
                fastenings=(Fastening("pocket screw", 2, screws, (sleeper.path,), rail.path),),
            )  # fmt: skip


def notch_sides(maker: Maker, box: Box) -> None:
    """Cut the toe notch into the lower front corner of both sides."""
    for outline in (box.left, box.right):
        place = outline.place.at("notch_toe")
        tall = maker.machined(place, "width", maker.style("toe_height"))
        deep = maker.machined(place, "end", maker.style("toe_setback"))
        maker.machine(
            outline.path,
            Cut(
                path=place.path,
                kind="notch",
                face="A",
                runs="w",
                datum="l0",
                at=maker.zero,
                width=tall,
                depth=outline.thickness,
                start=maker.zero,
                end=deep,
                asked_by=maker.path("toe_board"),
                setup=notch_setup(along=tall, across=deep),
            ),
        )


def toe_setback(maker: Maker) -> Dim:
    """How far a toe board stands back from the case's front [mm].

    In a bookcase it makes room for the nosing of the bottom.
    """
    if maker.spec.kind != "bookcase":
        return maker.style("toe_setback")
    back = maker.style("bookcase_toe_setback")
    if maker.spec.nosing is None:
        return back
    return greatest(back, maker.house.thickness(maker.spec.strip_stock))


def cut_toe_board(maker: Maker, box: Box) -> Board:
    """The board that closes the toe space, between the sides."""
    return cut_horizontal(
        maker, box, "toe_board", "rail", "toe board", underside=box.foot,
        width=box.deck - box.foot if box.foot is not maker.zero else box.deck, edges=(),
    )  # fmt: skip

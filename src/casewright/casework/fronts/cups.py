"""Hinge cups: bored into the doors in line with the plates already in the sides."""

from __future__ import annotations

from casewright.casework.cases import Hinge
from casewright.casework.features import Bores
from casewright.casework.fronts.constructions import Construction, Corner
from casewright.casework.fronts.hinges import HungLeaf, boring_tool
from casewright.casework.fronts.leaves import report
from casewright.casework.maker import Maker
from casewright.casework.setups import bore_setup
from casewright.dims import Dim, tell
from casewright.findings import Finding, Severity

__all__ = ["bore_cups"]


def bore_cups(
    maker: Maker, hung: HungLeaf, door: Construction, at: Corner
) -> tuple[Dim, tuple[Hinge, ...]]:
    """Bore the cups of a leaf: their heights come from the plates as bored.

    Returns
    -------
    Bore distance as made [mm], and the hinges from the bottom up.
    """
    leaf = hung.leaf
    place = maker.place.at(leaf.name)
    bore = place.made(
        "bore_distance", hung.overlay.bore, maker.house.causes(f"{place.path}.bore_distance", "")
    )
    line = place.let("cup_line", bore + maker.house.hinge("cup_diameter") / 2)
    _check_backing(maker, hung, door)
    hinges = []
    for number, plate in enumerate(hung.plates, start=1):
        path = f"{door.cup_part}.cup_{number}"
        cup = maker.house.chain.place(path)
        on_door = cup.made(
            "on_door", plate.height - at.y, maker.house.causes(f"{path}.on_door", "")
        )
        maker.machine(door.cup_part, _cup(maker, path, (on_door, line), bore, plate.path))
        hinges.append(
            Hinge(f"{place.path}.hinge_{number}", plate.height, on_door, path, plate.path)
        )
    return bore, tuple(hinges)


def _cup(maker: Maker, path: str, at: tuple[Dim, Dim], bore: Dim, plate: str) -> Bores:
    hinge = maker.house.hinge
    diameter, depth = hinge("cup_diameter"), hinge("cup_depth")
    return Bores(
        path=path,
        kind="hinge cup",
        face="B",
        datum_l="l0",
        datum_w="w0",
        places=(at,),
        diameter=diameter,
        depth=depth,
        asked_by=plate,
        setup=bore_setup(
            boring_tool(maker), line=at[1], depth=depth, bit="cup bit", bit_size=diameter,
            check=bore, check_words="from the hinge edge to the near edge of the cup",
        ),
    )  # fmt: skip


def _check_backing(maker: Maker, hung: HungLeaf, door: Construction) -> None:
    """Enough wood must be left under a cup, or the bit's point comes through the face."""
    left = door.cup_backing - maker.house.hinge("cup_depth")
    floor = maker.style("cup_floor")
    if left.value >= floor.value:
        return
    own = maker.reckoning("wood under the cup", maker.path(hung.leaf.name))
    wood, asked = own.text(left, "left"), own.text(floor)
    lacks = own.text(floor - left, "lacks")
    report(
        maker,
        Finding(
            rule="wood under the cup",
            severity=Severity.STOP if left.value <= 1 else Severity.CARE,
            path=maker.path(hung.leaf.name),
            says=tell(
                "the hinge cups leave {} of the {}, {} is wanted",
                wood, hung.leaf.called, asked,
            ),
            measured=wood.text,
            limit=asked.text,
            source="common practice",
            remedies=(
                tell("a door {} thicker", lacks),
                "a bit with its point filed short",
                tell("a cup {} shallower", lacks),
            ),
            numbers=own.numbers,
        ),
    )  # fmt: skip

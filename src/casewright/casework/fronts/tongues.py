"""Tongues on the ends of rails: two cheeks each, fitted to the groove of the stiles."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.features import Cut, Plane
from casewright.casework.fronts.frames import Level
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import tongue_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["Tongue", "cut_tongue", "join_tongue", "plan_tongue"]

_ENDS: tuple[Plane, Plane] = ("l0", "l1")
_FACES: tuple[Literal["A", "B"], ...] = ("A", "B")


@dataclass(frozen=True, slots=True)
class Tongue:
    """The tongues of a frame, cut with one set-up for each cheek.

    Parameters
    ----------
    long
        From the shoulder to the rail's end [mm].
    front, rear
        What is taken off face A and face B [mm].
    thick
        What is left [mm].
    """

    long: Dim
    front: Dim
    rear: Dim
    thick: Dim


def plan_tongue(maker: Maker, leaf: LeafPlan, groove: PanelGroove) -> Tongue:
    """A tongue that lies against the groove's front wall, so that the faces come out flush.

    It is thinner than the groove by what a groove is wider than its panel: room for glue.
    """
    door = maker.place.at(leaf.name)
    house = maker.house
    thick = door.at("tongue").let("thickness", groove.width - maker.style("dado_clearance"))
    wanted = (
        ("tongue", "length", maker.style("tongue")),
        ("tongue_front", "depth", groove.at),
        ("tongue_rear", "depth", house.thickness(leaf.front.frame) - groove.at - thick),
    )
    long, front, rear = (
        door.at(cut).made(
            name, dim, house.causes(f"{door.path}.{cut}.{name}",
                                    f"{maker.spec.key} {leaf.opening.name} {cut} {name}"),
        )
        for cut, name, dim in wanted
    )  # fmt: skip
    return Tongue(long, front, rear, thick)


def cut_tongue(maker: Maker, leaf: LeafPlan, rail: Outline, level: Level, tongue: Tongue) -> None:
    """Cut the four cheeks of a rail."""
    for end in _ENDS:
        for face in _FACES:
            place = rail.place.at(_cheek(face, end))
            deep = tongue.front if face == "A" else tongue.rear
            maker.machine(
                rail.path,
                Cut(
                    path=place.path, kind="tongue", face=face, runs="w", datum=end,
                    at=maker.zero, width=tongue.long, depth=deep, start=None, end=None,
                    asked_by=maker.path(_joint(leaf, level, _hand(level, end))),
                    setup=tongue_setup(maker.house, place, long=tongue.long, depth=deep),
                ),
            )  # fmt: skip


def join_tongue(
    maker: Maker,
    leaf: LeafPlan,
    frame: tuple[Outline, Level, Outline, Hand],
    tongue: Tongue,
    groove: PanelGroove,
) -> tuple[str, ...]:
    """Join one end of a rail: glued against the front wall, its shoulders home.

    Parameters
    ----------
    frame
        The rail and its level, the stile and its hand.

    Returns
    -------
    Paths of the joints: cheek, both shoulders, and what is left free behind and at the end.
    """
    rail, level, stile, hand = frame
    end: Plane = next(each for each in _ENDS if _hand(level, each) == hand)
    shoulder: Plane = "l1" if end == "l0" else "l0"
    front, rear = (f"{rail.path}.{_cheek(face, end)}" for face in _FACES)
    name, slot = _joint(leaf, level, hand), f"{stile.path}.groove"
    glue = Fastening("glue", 1, None, (rail.path,), stile.path)
    place = maker.place.at(name)
    play = place.let("play", groove.width - tongue.thick)
    free = place.let("relief", groove.depth - tongue.long)
    join = maker.join
    return (
        join(name, "groove", (rail.path, "t0", front), (stile.path, "t1", slot),
             fastenings=(glue,)),
        join(f"{name}_shoulder", "groove", (rail.path, shoulder, front), (stile.path, "w1")),
        join(f"{name}_rear_shoulder", "groove", (rail.path, shoulder, rear), (stile.path, "w1")),
        join(f"{name}_play", "loose", (rail.path, "t1", rear), (stile.path, "t0", slot), gap=play),
        join(f"{name}_relief", "loose", (rail.path, end), (stile.path, "w0", slot), gap=free),
    )  # fmt: skip


def _cheek(face: Literal["A", "B"], end: Plane) -> str:
    return f"tongue_{'front' if face == 'A' else 'rear'}_{end[1]}"


def _hand(level: Level, end: Plane) -> Hand:
    """The side a rail's end is at: the top rail lies turned end for end."""
    return "left" if (level != "top") == (end == "l0") else "right"


def _joint(leaf: LeafPlan, level: Level, hand: Hand) -> str:
    return f"{leaf.name}.joint_{level}_{hand}"

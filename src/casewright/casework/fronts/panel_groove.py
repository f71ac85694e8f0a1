"""The groove round the inside of a frame, which takes the panel and the rails' tongues."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Cut, Edge
from casewright.casework.fronts.frames import Frame
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import edge_groove_setup
from casewright.dims import Dim, Given, Origin, Way, tell
from casewright.findings import Finding, Severity

__all__ = ["PanelGroove", "groove_depth", "groove_members", "groove_mid_rail", "plan_groove"]


@dataclass(frozen=True, slots=True)
class PanelGroove:
    """The groove of a frame, cut with one set-up in all members.

    Parameters
    ----------
    at
        From face A to its near wall [mm].
    width, depth
        [mm].
    """

    at: Dim
    width: Dim
    depth: Dim


_WALL = Fraction(4)


def groove_depth(maker: Maker) -> Dim:
    """How deep the grooves are to be: a tongue's length, and a little for glue."""
    return maker.style("tongue") + maker.style("tongue_relief")


def plan_groove(maker: Maker, leaf: LeafPlan) -> PanelGroove:
    """A groove as wide as the panel that was measured, near the middle of the frame."""
    place = maker.place.at(leaf.name).at("groove")
    house, front = maker.house, leaf.front
    setting = f"{maker.spec.key} {leaf.opening.name} grooves"
    wide = house.thickness(front.panel) + maker.style("dado_clearance")
    # Set up with a scrap of the panel: only the cut's own straying is left.
    width = maker.machined(place, "width", wide, tool="router")
    depth = place.made(
        "depth", groove_depth(maker), house.causes(f"{place.path}.depth", f"{setting} depth")
    )
    middle = (house.thickness(front.frame) - width) / 2
    step = maker.style("cut_step").value
    if step and middle.value % step:
        middle, _ = place.rounded("at_to_set", middle, step, Way.DOWN)
    at = place.made("at", middle, house.causes(f"{place.path}.at", f"{setting} at"))
    _check_walls(maker, leaf, at, width)
    return PanelGroove(at, width, depth)


def _check_walls(maker: Maker, leaf: LeafPlan, at: Dim, width: Dim) -> None:
    """The walls of the groove hold tongue and panel: thin ones split off."""
    house = maker.house
    rear = house.thickness(leaf.front.frame) - at - width
    least = at if at.value < rear.value else rear
    origin = Origin("cited", "least wood beside the groove of a panel", "common practice")
    floor = house.enter("rule.groove_wall", Given(_WALL, origin))
    if least.value >= floor.value:
        return
    own = maker.reckoning("panel and frame", maker.path(leaf.name))
    wall, asked = own.text(least, "wall"), own.text(floor)
    thickest = own.text(house.thickness(leaf.front.frame) - 2 * floor, "thickest")
    report(
        maker,
        Finding(
            rule="panel and frame",
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=tell(
                "the groove for a panel of {} leaves {} of the frame beside it, {} is wanted",
                own.text(house.thickness(leaf.front.panel)), wall, asked,
            ),
            measured=wall.text,
            limit=asked.text,
            source="common practice",
            remedies=(
                tell("a panel of {} or less", thickest),
                tell("boards {} thicker for the frame",
                     own.text(2 * (floor - least), "thicker")),
            ),
            numbers=own.numbers,
        ),
    )  # fmt: skip


def groove_members(
    maker: Maker, leaf: LeafPlan, frame: Frame, groove: PanelGroove, *, parted: bool = False
) -> None:
    """Cut the groove into the inner edge of every member, right along it.

    Parameters
    ----------
    parted
        Whether a mid rail parts the panel, so that another one meets the top rail.
    """
    sides = ("left", "right", "bottom", "top")
    for side, member in zip(sides, frame.members, strict=True):
        name = f"{leaf.name}.upper" if parted and side == "top" else leaf.name
        _cut(maker, maker.path(f"{name}.panel_{side}"), member, groove)


def groove_mid_rail(maker: Maker, leaf: LeafPlan, rail: Outline, groove: PanelGroove) -> None:
    """Cut the groove into both edges of a mid rail, for the panels below and above it."""
    _cut(maker, maker.path(f"{leaf.name}.panel_top"), rail, groove, "w0")
    _cut(maker, maker.path(f"{leaf.name}.upper.panel_bottom"), rail, groove)


def _cut(maker: Maker, seat: str, member: Outline, groove: PanelGroove, edge: Edge = "w1") -> None:
    place = member.place.at("groove" if edge == "w1" else "groove_low")
    maker.machine(
        member.path,
        Cut(
            path=place.path, kind="groove", face=edge, runs="l", datum="t1", at=groove.at,
            width=groove.width, depth=groove.depth, start=None, end=None, asked_by=seat,
            setup=edge_groove_setup(
                maker.house, place, at=groove.at, width=groove.width, depth=groove.depth
            ),
        ),
    )  # fmt: skip

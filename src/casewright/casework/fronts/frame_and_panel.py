"""A frame and panel: stiles full length, rails between them with tongues, the panel in grooves."""

from __future__ import annotations

from dataclasses import dataclass, replace

from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frame_panel import PanelRoom, add_panel
from casewright.casework.fronts.frame_steps import close_frame, hold_for_test_joint, lay_panel
from casewright.casework.fronts.frames import (
    Frame,
    FrameLeaf,
    Level,
    cut_rails,
    cut_stiles,
    place_rail,
    place_stile,
)
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.fronts.panel_groove import (
    PanelGroove,
    groove_members,
    groove_mid_rail,
    plan_groove,
)
from casewright.casework.fronts.tongues import Tongue, cut_tongue, join_tongue, plan_tongue
from casewright.casework.maker import Maker, Outline
from casewright.casework.wood import is_solid
from casewright.dims import Dim, Way, tell
from casewright.findings import Finding, Severity

__all__ = ["FrameAndPanelDoor", "MidRail", "cut_frame_and_panel"]


@dataclass(frozen=True, slots=True)
class MidRail:
    """A rail between two panels, as cut, and its lower edge above the door's lower end [mm]."""

    rail: Outline
    low: Dim


@dataclass(frozen=True, slots=True)
class FrameAndPanelDoor(FrameLeaf):
    """A leaf of a tongued frame with a panel in its grooves."""

    groove: PanelGroove
    tongue: Tongue
    mid: MidRail | None = None

    @property
    def width(self) -> Dim:
        """Outside width [mm]: the stiles, and what lies between the rails' shoulders."""
        frame = self.frame
        return frame.left.width + self._sight_width + frame.right.width

    @property
    def _sight_width(self) -> Dim:
        return self.frame.bottom.length - 2 * self.tongue.long

    def put(self, at: Corner) -> None:
        """Place the frame and its panel, groove and tongue the members, tell the steps."""
        maker, leaf, frame = self.maker, self.leaf, self.frame
        right = at.x + frame.left.width + self._sight_width + frame.right.width
        for hand, stile in frame.stiles:
            place_stile(maker, leaf, stile, hand, at, right)
        for level, rail in frame.rails:
            z = at.z + self.thickness - rail.thickness
            low = (at.x + frame.left.width - self.tongue.long, at.y, z)
            high = (right - frame.right.width + self.tongue.long, at.y + self.height, z)
            place_rail(maker, leaf, rail, level, low if level == "bottom" else high)
        if self.mid is not None:
            z = at.z + self.thickness - self.mid.rail.thickness
            left = at.x + frame.left.width - self.tongue.long
            place_rail(maker, leaf, self.mid.rail, "middle", (left, at.y + self.mid.low, z))
            groove_mid_rail(maker, leaf, self.mid.rail, self.groove)
        groove_members(maker, leaf, frame, self.groove, parted=self.mid is not None)
        for level, rail in self._rails:
            cut_tongue(maker, leaf, rail, level, self.tongue)
        self._assemble(at)

    @property
    def _rails(self) -> tuple[tuple[Level, Outline], ...]:
        """Bottom, middle where there is one, top."""
        if self.mid is None:
            return self.frame.rails
        bottom, top = self.frame.rails
        return (bottom, ("middle", self.mid.rail), top)

    def _rooms(self, at: Corner) -> tuple[tuple[Frame, PanelRoom], ...]:
        """Each panel's room, with the members round it; from the bottom up."""
        frame, deep = self.frame, self.groove.depth
        wide = self._sight_width + 2 * deep
        left = at.x + frame.left.width - deep
        bottom = at.y + frame.bottom.width - deep
        tall = frame.left.length - frame.top.width
        if self.mid is None:
            return ((frame, PanelRoom(wide, tall - frame.bottom.width + 2 * deep, left, bottom)),)
        mid, low = self.mid.rail, self.mid.low
        high = low + mid.width
        return (
            (
                replace(frame, top=mid),
                PanelRoom(wide, low - frame.bottom.width + 2 * deep, left, bottom, "lower"),
            ),
            (
                replace(frame, bottom=mid),
                PanelRoom(wide, tall - high + 2 * deep, left, at.y + high - deep, "upper"),
            ),
        )

    def _assemble(self, at: Corner) -> None:
        maker, leaf, frame = self.maker, self.leaf, self.frame
        corners = {
            (level, hand): join_tongue(
                maker, leaf, (rail, level, stile, hand), self.tongue, self.groove
            )
            for level, rail in self._rails
            for hand, stile in frame.stiles
        }
        panels = [
            add_panel(maker, leaf, members, self.groove, room, at)
            for members, room in self._rooms(at)
        ]
        hold_for_test_joint(maker, leaf, self.tongue)
        lay_panel(maker, leaf, panels[0])
        close_frame(maker, leaf, (frame, self._rails), panels, corners)


def _mid_rail(maker: Maker, leaf: LeafPlan, frame: Frame) -> MidRail | None:
    """A rail between two panels, cut as the others; None, with a finding, where it has no room."""
    given = leaf.front.mid_rail
    if given is None:
        return None
    if is_solid(maker.house, leaf.front.panel):
        report(maker, _of_boards(maker, leaf))
        return None
    place = maker.place.at(leaf.name)
    middle, wide = maker.number(f"{leaf.name}.mid_rail_middle", given), maker.style("rail")
    low = place.let("mid_rail_low", middle - wide / 2)
    least = frame.bottom.width + maker.style("drawer_least")
    most = frame.left.length - frame.top.width - maker.style("drawer_least") - wide
    if place.over(least, low, "no mid rail, too near the bottom rail") or place.over(
        low, most, "no mid rail, too near the top rail"
    ):
        report(maker, _no_room(maker, leaf, frame, (middle, least + wide / 2, most + wide / 2)))
        return None
    rail = maker.outline(
        f"{leaf.name}.rail_middle", leaf.front.frame, frame.bottom.length, wide,
        setting=f"{maker.spec.key} {leaf.opening.name} frame rails", length_way=Way.CLOSE,
    )  # fmt: skip
    return MidRail(rail, low)


def _no_room(maker: Maker, leaf: LeafPlan, frame: Frame, heights: tuple[Dim, Dim, Dim]) -> Finding:
    """A mid rail too near an end.

    Parameters
    ----------
    heights
        As asked for, the least and the most [mm].
    """
    own, door = maker.reckoning("mid rail", maker.path(leaf.name)), frame.left.length
    middle, least, most = (
        own.text(each, name)
        for each, name in zip(heights, ("middle", "least", "most"), strict=True)
    )
    return Finding(
        rule="mid rail",
        severity=Severity.STOP,
        path=maker.path(leaf.name),
        says=tell(
            "a mid rail {} up leaves no room for a panel on either side of it in a door of {}",
            middle, own.text(door),
        ),
        measured=middle.text,
        limit=f"{least.text} to {most.text}",
        source="common practice",
        remedies=(tell("a height between {} and {}", least, most), "no mid rail"),
        numbers=own.numbers,
    )  # fmt: skip


def _of_boards(maker: Maker, leaf: LeafPlan) -> Finding:
    """Panels glued up of boards are laid one at a time; a mid rail is put between sheets."""
    return Finding(
        rule="mid rail",
        severity=Severity.STOP,
        path=maker.path(leaf.name),
        says=f"a mid rail parts panels of a sheet, and those of the {leaf.called} are glued up of "
        "boards",
        source="common practice",
        remedies=("a panel of a sheet", "no mid rail"),
    )


def cut_frame_and_panel(maker: Maker, leaf: LeafPlan) -> FrameAndPanelDoor:
    """Cut stiles, set up the groove, then cut the rails to the stiles as they are."""
    left, right = cut_stiles(maker, leaf, maker.style("stile"))
    groove = plan_groove(maker, leaf)
    between = leaf.width - left.width - right.width
    long = between + 2 * maker.style("tongue")
    bottom, top = cut_rails(maker, leaf, long, maker.style("rail"))
    tongue = plan_tongue(maker, leaf, groove)
    frame = Frame(left, right, bottom, top)
    return FrameAndPanelDoor(maker, leaf, frame, groove, tongue, _mid_rail(maker, leaf, frame))

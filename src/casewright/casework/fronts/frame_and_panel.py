"""A frame and panel: stiles full length, rails between them with tongues, the panel in grooves."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frame_panel import PanelRoom, add_panel
from casewright.casework.fronts.frame_steps import close_frame, hold_for_test_joint, lay_panel
from casewright.casework.fronts.frames import Frame, FrameLeaf, place_rail, place_stile
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove, groove_members, plan_groove
from casewright.casework.fronts.tongues import Tongue, cut_tongue, join_tongue, plan_tongue
from casewright.casework.maker import Maker
from casewright.dims import Dim, Way

__all__ = ["FrameAndPanelDoor", "cut_frame_and_panel"]


@dataclass(frozen=True, slots=True)
class FrameAndPanelDoor(FrameLeaf):
    """A leaf of a tongued frame with a panel in its grooves."""

    groove: PanelGroove
    tongue: Tongue

    @property
    def width(self) -> Dim:
        """Outside width [mm]: the stiles, and what lies between the rails' shoulders."""
        frame = self.frame
        return frame.left.width + self._sight_width + frame.right.width

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""
        own = self.maker.path(self.leaf.name)
        return tuple(path for path, part in self.maker.parts.items() if part.front == own)

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
        groove_members(maker, leaf, frame, self.groove)
        for level, rail in frame.rails:
            cut_tongue(maker, leaf, rail, level, self.tongue)
        self._assemble(at)

    def _room(self, at: Corner) -> PanelRoom:
        frame, deep = self.frame, self.groove.depth
        tall = frame.left.length - frame.bottom.width - frame.top.width
        return PanelRoom(
            wide=self._sight_width + 2 * deep,
            tall=tall + 2 * deep,
            left=at.x + frame.left.width - deep,
            bottom=at.y + frame.bottom.width - deep,
        )

    def _assemble(self, at: Corner) -> None:
        maker, leaf, frame = self.maker, self.leaf, self.frame
        corners = {
            (level, hand): join_tongue(
                maker, leaf, (rail, level, stile, hand), self.tongue, self.groove
            )
            for level, rail in frame.rails
            for hand, stile in frame.stiles
        }
        panel = add_panel(maker, leaf, frame, self.groove, self._room(at), at)
        hold_for_test_joint(maker, leaf, self.tongue)
        lay_panel(maker, leaf, panel)
        close_frame(maker, leaf, frame, panel, corners)


def cut_frame_and_panel(maker: Maker, leaf: LeafPlan) -> FrameAndPanelDoor:
    """Cut stiles, set up the groove, then cut the rails to the stiles as they are."""
    key, name = leaf.front.frame, leaf.name
    setting = f"{maker.spec.key} {leaf.opening.name} frame"
    left, right = (
        maker.outline(
            f"{name}.stile_{hand}", key, leaf.height, maker.style("stile"),
            setting=f"{setting} stiles", length_way=Way.CLOSE,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    groove = plan_groove(maker, leaf)
    between = leaf.width - left.width - right.width
    bottom, top = (
        maker.outline(
            f"{name}.rail_{word}", key, between + 2 * maker.style("tongue"), maker.style("rail"),
            setting=f"{setting} rails", length_way=Way.CLOSE,
        )
        for word in ("bottom", "top")
    )  # fmt: skip
    tongue = plan_tongue(maker, leaf, groove)
    return FrameAndPanelDoor(maker, leaf, Frame(left, right, bottom, top), groove, tongue)

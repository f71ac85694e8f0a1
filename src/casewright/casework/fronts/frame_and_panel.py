"""A frame and panel: stiles full length, rails between them with tongues, the panel in grooves."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frame_panel import PanelRoom, add_panel
from casewright.casework.fronts.frames import Frame, FrameLeaf, place_rail, place_stile
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove, groove_members, plan_groove
from casewright.casework.fronts.tongues import Tongue, cut_tongue, join_tongue, plan_tongue
from casewright.casework.maker import Maker
from casewright.dims import Dim, Way

__all__ = ["FrameAndPanelDoor", "cut_frame_and_panel"]

_GLUE = "Glue on the tongue's cheeks only;"
_FLUSH = "outer edge flush with the stile's end."


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
        return (
            *(outline.path for outline in self.frame.members),
            self.maker.path(f"{self.leaf.name}.panel"),
        )

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
        maker, leaf, frame, title = self.maker, self.leaf, self.frame, self.leaf.title
        corners = {
            (level, hand): join_tongue(
                maker, leaf, (rail, level, stile, hand), self.tongue, self.groove
            )
            for level, rail in frame.rails
            for hand, stile in frame.stiles
        }
        panel, seats = add_panel(maker, leaf, frame, self.groove, self._room(at), at)
        by_side = {
            side: tuple(path for path in seats if f".panel_{side}" in path)
            for side in ("left", "bottom", "top", "right")
        }
        self._hold()
        maker.step(
            "lay", frame.left.path, None,
            f"Lay the left stile of the {title} on the bench, groove up. The frame is glued, the "
            "panel never: it has to move.",
        )  # fmt: skip
        joined = corners["bottom", "left"]
        maker.step("fit", frame.bottom.path, "-x", f"{_GLUE} push the bottom rail home, {_FLUSH}",
                   joints=joined)  # fmt: skip
        maker.step(
            "fit", panel.path, "-y",
            "Slide the panel into its grooves without glue, its edges sealed or painted first.",
            joints=(*by_side["left"], *by_side["bottom"]),
        )  # fmt: skip
        joined = (*corners["top", "left"], *by_side["top"])
        maker.step("fit", frame.top.path, "-y",
                   f"{_GLUE} slide the top rail down over the panel, {_FLUSH}",
                   joints=joined)  # fmt: skip
        joined = (*corners["bottom", "right"], *corners["top", "right"], *by_side["right"])
        maker.step(
            "fit", frame.right.path, "-x",
            "Glue on the last two tongues; bring the right stile down on both at once; clamp "
            "across the rails until the shoulders close.",
            joints=joined,
        )  # fmt: skip
        self._check()

    def _check(self) -> None:
        maker, title = self.maker, self.leaf.title
        maker.step(
            "check square", "", None,
            f"Measure both diagonals of the {title}: they must agree within "
            f"{maker.house.spoken('1/32', '1')}; sight across both stiles that it lies flat. "
            "The panel still moves by hand. When the glue is dry, bore the stiles as their "
            "cards say.",
            check_words="diagonals",
        )  # fmt: skip

    def _hold(self) -> None:
        """The test joint: before the rails are cut to length and tongued."""
        maker, title = self.maker, self.leaf.title
        maker.step(
            "hold", "", None,
            f"Hold: before the rails of the {title} are cut to length, groove and tongue a test "
            "joint in scraps of the same boards. It goes together by hand, faces flush, and holds "
            "when it is lifted. Measure both stiles as ripped: by what they are wider than on "
            "their card, the rails are cut shorter.",
            check=self.tongue.thick, check_words="thickness of the tongue",
        )  # fmt: skip


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

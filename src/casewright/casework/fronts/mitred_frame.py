"""A mitred frame: four members of one width, closed at 45 degrees round their panel, splined."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.features import Cut, Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frame_panel import Panel, PanelRoom, add_panel
from casewright.casework.fronts.frame_steps import lay_panel, panel_glue
from casewright.casework.fronts.frames import (
    Frame,
    FrameLeaf,
    Level,
    cut_rails,
    cut_stiles,
    place_corners,
)
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove, groove_members, plan_groove
from casewright.casework.fronts.splines import add_splines, cut_slots
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import mitre_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim, tell

__all__ = ["MitreDoor", "cut_mitred"]

_ENDS: tuple[Plane, Plane] = ("l0", "l1")


@dataclass(frozen=True, slots=True)
class MitreDoor(FrameLeaf):
    """A leaf of a mitred frame with a panel in its grooves.

    Stiles and rails are all as wide as the style's stile: mitres of 45 degrees ask for it.
    """

    groove: PanelGroove

    @property
    def width(self) -> Dim:
        """Outside width [mm]."""
        return self.frame.bottom.length

    def put(self, at: Corner) -> None:
        """Place the frame round its panel, mitre and slot its ends, tell the steps."""
        maker, leaf, frame = self.maker, self.leaf, self.frame
        place_corners(maker, leaf, frame, at)
        groove_members(maker, leaf, frame, self.groove)
        for member in frame.members:
            _mitre(maker, member)
            cut_slots(maker, member, self.groove)
        panel = add_panel(maker, leaf, frame, self.groove, self._room(at), at)
        self._assemble(panel)
        first = panel.pieces[0]
        side = maker.parts[first.path].placed.x - first.width - at.x
        end = maker.parts[first.path].placed.y - at.y
        near = side if side.value < end.value else end
        self._push_in(add_splines(maker, leaf, frame, self.groove, at, near))

    def _room(self, at: Corner) -> PanelRoom:
        frame, deep = self.frame, self.groove.depth
        return PanelRoom(
            wide=frame.bottom.length - frame.left.width - frame.right.width + 2 * deep,
            tall=frame.left.length - frame.bottom.width - frame.top.width + 2 * deep,
            left=at.x + frame.left.width - deep,
            bottom=at.y + frame.bottom.width - deep,
        )

    def _assemble(self, panel: Panel) -> None:
        maker, leaf, frame = self.maker, self.leaf, self.frame
        self._hold()
        lay_panel(maker, leaf, panel)
        glue = panel_glue(maker, leaf)
        for level, rail in frame.rails:
            maker.step(
                "fit", rail.path, "+y" if level == "bottom" else "-y",
                f"Push the {level} rail onto the panel, {glue}.", joints=panel.seats[level],
            )  # fmt: skip
        for hand, stile in frame.stiles:
            closed = tuple(_close(maker, leaf, rail, level, stile, hand)
                           for level, rail in frame.rails)  # fmt: skip
            maker.step(
                "fit", stile.path, "+x" if hand == "left" else "-x",
                f"Glue on both mitres; push the {hand} stile onto the panel until long point "
                "meets long point; pull all four corners in together with a band clamp.",
                joints=(*closed, *panel.seats[hand]),
            )  # fmt: skip
        maker.step(
            "check square", "", None,
            tell(
                "Measure both diagonals of the {}: they must agree within {}; no light through "
                "any mitre; it lies flat.",
                leaf.title, maker.house.trade("frame_diagonals"),
            ),
            check_words="diagonals",
        )  # fmt: skip

    def _hold(self) -> None:
        maker, title = self.maker, self.leaf.title
        maker.step(
            "hold", "", None,
            f"Hold: before the members of the {title} are cut to length, mitre four short pieces "
            "of the same boards and close them to a small frame: no light at any corner, the last "
            "one too, or the saw is not at 45 degrees. Slot one corner and try its spline: it "
            "slides in by hand.",
            check=self.groove.width, check_words="width of the slot",
        )  # fmt: skip

    def _push_in(self, splines: tuple[str, ...]) -> None:
        maker = self.maker
        for path in splines:
            joints = tuple(j.path for j in maker.joints if j.one.part == path)
            title = maker.parts[path].title.partition(" of the ")[0]
            maker.step(
                "fit", path, "-x" if "right" in title else "+x",
                f"Glue the {title} and push it along the mitre from the outer corner until it "
                "meets the panel; when the glue is dry, trim it flush, then bore the stiles as "
                "their cards say.",
                joints=joints,
            )  # fmt: skip


def _mitre(maker: Maker, member: Outline) -> None:
    """Cut both ends at 45 degrees; the outer edge keeps its whole length."""
    for end in _ENDS:
        place = member.place.at(f"mitre_{end[1]}")
        maker.machine(
            member.path,
            Cut(
                path=place.path, kind="mitre", face="A", runs="w", datum=end, at=maker.zero,
                width=member.width, depth=member.thickness, start=None, end=None,
                asked_by=member.path, setup=mitre_setup(maker.house, long=member.length),
            ),
        )  # fmt: skip
    member.place.let("short_point", member.length - 2 * member.width)


def _close(
    maker: Maker, leaf: LeafPlan, rail: Outline, level: Level, stile: Outline, hand: Hand
) -> str:
    """Join one corner."""
    rail_end: Plane = "l0" if (level == "bottom") == (hand == "left") else "l1"
    stile_end: Plane = "l0" if level == "bottom" else "l1"
    glue = Fastening("glue", 1, None, (rail.path,), stile.path)
    return maker.join(
        f"{leaf.name}.joint_{level}_{hand}", "mitre", (rail.path, rail_end),
        (stile.path, stile_end), fastenings=(glue,),
    )  # fmt: skip


def cut_mitred(maker: Maker, leaf: LeafPlan) -> MitreDoor:
    """Cut the members to their long points: the leaf's height and width."""
    wide = maker.style("stile")
    left, right = cut_stiles(maker, leaf, wide)
    bottom, top = cut_rails(maker, leaf, leaf.width, wide)
    return MitreDoor(maker, leaf, Frame(left, right, bottom, top), plan_groove(maker, leaf))

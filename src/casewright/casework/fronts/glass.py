"""A glass door: a half-lapped frame, rebated from behind when the glue is dry."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.features import Cut, Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frames import (
    Frame,
    FrameLeaf,
    Level,
    cut_rails,
    cut_stiles,
    place_corners,
)
from casewright.casework.fronts.glass_pane import add_pane
from casewright.casework.fronts.glass_rebate import rout_rebate
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import cross_dado_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim, tell

__all__ = ["GlassDoor", "cut_glass"]


@dataclass(frozen=True, slots=True)
class GlassDoor(FrameLeaf):
    """A leaf of a half-lapped frame with a pane.

    Stiles run full length on the show face; the rails lie behind them in the corners.
    """

    @property
    def width(self) -> Dim:
        """Outside width [mm]."""
        return self.frame.bottom.length

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""
        return (
            *(outline.path for outline in self.frame.members),
            self.maker.path(f"{self.leaf.name}.pane"),
        )

    def put(self, at: Corner) -> None:
        """Place the frame, lap its corners, rebate it, set the pane."""
        maker, leaf, frame = self.maker, self.leaf, self.frame
        place_corners(maker, leaf, frame, at)
        joints = {
            level: tuple(
                path
                for hand, stile in frame.stiles
                for path in self._lap(rail, level, stile, hand)
            )
            for level, rail in frame.rails
        }
        self._glue_up(joints)
        rebate = rout_rebate(maker, leaf, frame)
        add_pane(maker, leaf, frame, rebate, at)

    def _lap(self, rail: Outline, level: Level, stile: Outline, hand: Hand) -> tuple[str, ...]:
        """Cut and join one corner: half of the stile's back away, half of the rail's front."""
        stile_end: Plane = "l0" if level == "bottom" else "l1"
        rail_end: Plane = "l0" if (level == "bottom") == (hand == "left") else "l1"
        back = self._cut(stile, f"lap_{level}", ("B", stile_end), rail, stile.thickness / 2)
        rest = stile.thickness - back.depth
        front = self._cut(rail, f"lap_{hand}", ("A", rail_end), stile, rest)
        name = f"{self.leaf.name}.joint_{level}_{hand}"
        glue = Fastening("glue", 1, None, (rail.path,), stile.path)
        shoulder = _other_end(rail_end)
        return (
            self.maker.join(name, "lap", (stile.path, "t1", back.path),
                            (rail.path, "t0", front.path), fastenings=(glue,)),
            self.maker.join(f"{name}_shoulder", "lap", (rail.path, shoulder, front.path),
                            (stile.path, "w1")),
        )  # fmt: skip

    def _cut(
        self,
        outline: Outline,
        name: str,
        where: tuple[Literal["A", "B"], Plane],
        mate: Outline,
        depth: Dim,
    ) -> Cut:
        """Cut a lap as wide as the mate into a face, at an end."""
        face, end = where
        place = outline.place.at(name)
        causes = self.maker.house.causes
        wide = place.made("width", mate.width, causes(f"{place.path}.width", ""))
        deep = place.made("depth", depth, causes(f"{place.path}.depth", ""))
        cut = Cut(
            path=place.path, kind="lap", face=face, runs="w", datum=end, at=self.maker.zero,
            width=wide, depth=deep, start=None, end=None, asked_by=mate.path,
            setup=cross_dado_setup(
                self.maker.house, place, at=self.maker.zero, width=wide, depth=deep, name="lap"
            ),
        )  # fmt: skip
        self.maker.machine(outline.path, cut)
        return cut

    def _glue_up(self, joints: dict[Level, tuple[str, ...]]) -> None:
        maker, frame, title = self.maker, self.frame, self.leaf.title
        maker.step(
            "lay", frame.left.path, None,
            f"Lay the left stile of the {title} face down on the bench. On the show face the "
            "stiles run the full height; the rails end at them.",
        )  # fmt: skip
        maker.step(
            "fit",
            frame.right.path,
            "-x",
            "Lay the right stile beside it, face down, outer edges a rail's length apart.",
        )
        for level, rail in frame.rails:
            maker.step(
                "fit", rail.path, "+z",
                f"Spread glue on the laps; set the {level} rail into both stiles; clamp.",
                joints=joints[level],
            )  # fmt: skip
        maker.step(
            "check square", "", None,
            tell(
                "Measure both diagonals of the {}: they must agree within {}. When the glue is "
                "dry, rout the rebate all round on the back, in shallow passes, and bore the "
                "stiles as their cards say.",
                title, maker.house.trade("frame_diagonals"),
            ),
            check_words="diagonals", cautions=("router_rebate",),
        )  # fmt: skip


def _other_end(end: Plane) -> Plane:
    return "l1" if end == "l0" else "l0"


def cut_glass(maker: Maker, leaf: LeafPlan) -> GlassDoor:
    """Cut the frame: stiles as long as the door is high, rails as long as it is wide."""
    left, right = cut_stiles(maker, leaf, maker.style("stile"))
    bottom, top = cut_rails(maker, leaf, leaf.width, maker.style("rail"))
    return GlassDoor(maker, leaf, Frame(left, right, bottom, top))

"""A glass door: a half-lapped frame, rebated from behind when the glue is dry."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.features import Cut, Plane
from casewright.casework.fronts.constructions import Corner, edge_words, upright
from casewright.casework.fronts.glass_pane import add_pane
from casewright.casework.fronts.glass_rebate import Frame, rout_rebate
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import cross_dado_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way

__all__ = ["GlassDoor", "cut_glass"]

Level = Literal["bottom", "top"]


@dataclass(frozen=True, slots=True)
class GlassDoor:
    """A leaf of a half-lapped frame with a pane.

    Stiles run full length on the show face; the rails lie behind them in the corners.
    """

    maker: Maker
    leaf: LeafPlan
    frame: Frame

    @property
    def width(self) -> Dim:
        """Outside width [mm]."""
        return self.frame.bottom.length

    @property
    def height(self) -> Dim:
        """Outside height [mm]."""
        return self.frame.left.length

    @property
    def thickness(self) -> Dim:
        """Outside thickness [mm]."""
        return self.frame.left.thickness

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""
        return (
            *(outline.path for outline in self.frame.members),
            self.maker.path(f"{self.leaf.name}.pane"),
        )

    @property
    def cup_part(self) -> str:
        """The stile at the hinges."""
        frame = self.frame
        return frame.left.path if self.leaf.hinge == "left" else frame.right.path

    @property
    def cup_backing(self) -> Dim:
        """Thickness of the stile [mm]."""
        return self.thickness

    @property
    def pull_parts(self) -> tuple[str, ...]:
        """The stile at the free edge."""
        frame = self.frame
        return (frame.right.path if self.leaf.hinge == "left" else frame.left.path,)

    def put(self, at: Corner) -> None:
        """Place the frame, lap its corners, rebate it, set the pane."""
        frame = self.frame
        stiles: tuple[tuple[Hand, Outline], ...] = (("left", frame.left), ("right", frame.right))
        rails: tuple[tuple[Level, Outline], ...] = (("bottom", frame.bottom), ("top", frame.top))
        for hand, stile in stiles:
            self._place_stile(stile, hand, at)
        for level, rail in rails:
            self._place_rail(rail, level, at)
        joints = {
            level: tuple(
                path for hand, stile in stiles for path in self._lap(rail, level, stile, hand)
            )
            for level, rail in rails
        }
        self._glue_up(joints)
        rebate = rout_rebate(self.maker, self.leaf, frame)
        add_pane(self.maker, self.leaf, frame, rebate, at)

    def _place_stile(self, stile: Outline, hand: Hand, at: Corner) -> None:
        self.maker.add(
            stile, role="stile", title=f"{hand} stile of the {self.leaf.title}",
            lies=upright(hand), at=(at.x if hand == "left" else at.x + self.width, at.y, at.z),
            ends=edge_words("outer edge", "inner edge"), hand=hand,
            shows=("l0", "l1", "w0", "w1", "t1"), group=f"{self.leaf.opening.name} stiles",
            front=self.maker.path(self.leaf.name),
        )  # fmt: skip

    def _place_rail(self, rail: Outline, level: Level, at: Corner) -> None:
        """Rails lie front-flush with the stiles: the frame is glued up face down."""
        front = at.z + self.thickness
        low = level == "bottom"
        self.maker.add(
            rail, role="rail", title=f"{level} rail of the {self.leaf.title}",
            lies="+x +y +z" if low else "-x -y +z",
            at=(at.x, at.y, front - rail.thickness) if low
            else (at.x + self.width, at.y + self.height, front - rail.thickness),
            ends=("left" if low else "right", "right" if low else "left",
                  "outer edge", "inner edge"),
            shows=("w0", "w1", "t1"), group=f"{self.leaf.opening.name} rails",
            front=self.maker.path(self.leaf.name),
        )  # fmt: skip

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
            f"Lay the left stile of the {title} face down on the bench.",
        )  # fmt: skip
        maker.step(
            "fit",
            frame.right.path,
            "-x",
            "Lay the right stile beside it, face down, outer edges a rail's length apart.",
        )
        for level, rail in (("bottom", frame.bottom), ("top", frame.top)):
            maker.step(
                "fit", rail.path, "+z",
                f"Spread glue on the laps; set the {level} rail into both stiles; clamp.",
                joints=joints["bottom" if level == "bottom" else "top"],
            )  # fmt: skip
        maker.step(
            "check square", "", None,
            f"Measure both diagonals of the {title}: they must agree within "
            f"{maker.house.spoken('1/32', '1')}. When the glue is dry, "
            "rout the rebate all round on the back, in shallow passes, and bore the stiles as "
            "their cards say.",
            check_words="diagonals", cautions=("router_feed",),
        )  # fmt: skip


def _other_end(end: Plane) -> Plane:
    return "l1" if end == "l0" else "l0"


def cut_glass(maker: Maker, leaf: LeafPlan) -> GlassDoor:
    """Cut the frame: stiles as long as the door is high, rails as long as it is wide."""
    key, name = leaf.front.frame, leaf.name
    setting = f"{maker.spec.key} {leaf.opening.name} frame"
    left, right = (
        maker.outline(
            f"{name}.stile_{hand}", key, leaf.height, maker.style("stile"),
            setting=f"{setting} stiles", length_way=Way.CLOSE,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    bottom, top = (
        maker.outline(
            f"{name}.rail_{word}", key, leaf.width, maker.style("rail"),
            setting=f"{setting} rails", length_way=Way.CLOSE,
        )
        for word in ("bottom", "top")
    )  # fmt: skip
    return GlassDoor(maker, leaf, Frame(left, right, bottom, top))

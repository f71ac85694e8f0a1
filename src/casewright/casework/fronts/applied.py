"""An applied-frame door: thin strips on a slab, stiles full length, rails between them."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.brads import row_marks
from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import Corner, edge_words, upright
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.slab import SlabLeaf, cut_slab, place_slab
from casewright.casework.fronts.strips import milled_from, strip_fastenings
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["AppliedDoor", "cut_applied"]


@dataclass(frozen=True, slots=True)
class AppliedDoor(SlabLeaf):
    """A leaf of a slab with a frame of strips on its face."""

    left: Outline
    right: Outline
    bottom: Outline
    top: Outline

    @property
    def thickness(self) -> Dim:
        """Slab and strips [mm]."""
        return self.slab.thickness + self.left.thickness

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""
        outlines = (self.slab, self.left, self.right, self.bottom, self.top)
        return tuple(outline.path for outline in outlines)

    @property
    def cup_backing(self) -> Dim:
        """Slab and strip where the stile covers the whole cup, else the slab alone [mm]."""
        hinge = self.maker.house.hinge
        stile = self.left if self.leaf.hinge == "left" else self.right
        reach = hinge("bore_high") + hinge("cup_diameter")
        if self.maker.place.at(self.leaf.name).over(
            reach, stile.width, "only the slab is behind the cups, the stile is too narrow"
        ):
            return self.slab.thickness
        return self.slab.thickness + stile.thickness

    @property
    def pull_parts(self) -> tuple[str, ...]:
        """The stile at the free edge, then the slab; the slab alone of a front without hinges."""
        if self.leaf.hinge is None:
            return (self.slab.path,)
        stile = self.right if self.leaf.hinge == "left" else self.left
        return (stile.path, self.slab.path)

    def put(self, at: Corner) -> None:
        """Place slab and strips; glue the strips on."""
        maker, leaf = self.maker, self.leaf
        title = f"slab of the {leaf.title}"
        place_slab(maker, leaf, self.slab, at, role="slab", title=title)
        self._place_strips(at)
        maker.step(
            "lay", self.slab.path, None,
            f"Lay the {title} on the bench, show face up; mark {self.leaf.to_mark} on the back.",
        )  # fmt: skip
        stiles = (("left", self.left), ("right", self.right))
        for hand, stile in stiles:
            self._fit(stile, f"{hand} stile", "flush with the slab's edge and ends", ())
        for word, rail in (("bottom", self.bottom), ("top", self.top)):
            butts = self._butts(word, rail)
            last = word == "top"
            then = "flush with the slab's end, tight between the stiles"
            self._fit(rail, f"{word} rail", then, butts, last=last)

    def _place_strips(self, at: Corner) -> None:
        front = at.z + self.slab.thickness
        right_x = at.x + self.width
        self._place_stile(self.left, "left", at.x, at.y, front)
        self._place_stile(self.right, "right", right_x, at.y, front)
        self._place_rail(self.bottom, "bottom", "+x +y +z",
                         (at.x + self.left.width, at.y, front))  # fmt: skip
        self._place_rail(self.top, "top", "-x -y +z",
                         (right_x - self.right.width, at.y + self.height, front))  # fmt: skip

    def _place_stile(self, stile: Outline, hand: Hand, x: Dim, y: Dim, z: Dim) -> None:
        self.maker.add(
            stile, role="stile", title=f"{hand} stile of the {self.leaf.title}",
            lies=upright(hand), at=(x, y, z), ends=edge_words("outer edge", "inner edge"),
            hand=hand, shows=("l0", "l1", "w0", "w1", "t1"), group=self._group("stiles"),
            front=self.maker.path(self.leaf.name), milled_from=self._source(),
        )  # fmt: skip

    def _place_rail(self, rail: Outline, word: str, lies: str, at: tuple[Dim, Dim, Dim]) -> None:
        ends = ("left", "right") if word == "bottom" else ("right", "left")
        self.maker.add(
            rail, role="rail", title=f"{word} rail of the {self.leaf.title}", lies=lies, at=at,
            ends=(*ends, "outer edge", "inner edge"), shows=("w0", "w1", "t1"),
            group=self._group("rails"), front=self.maker.path(self.leaf.name),
            milled_from=self._source(),
        )  # fmt: skip

    def _group(self, kind: str) -> str:
        return f"{self.leaf.opening.name} {kind}"

    def _source(self) -> str:
        return milled_from(self.maker, self.leaf.front.strip)

    def _butts(self, word: str, rail: Outline) -> tuple[str, ...]:
        """Joints of a rail's ends with the stiles' inner edges."""
        ends: tuple[Plane, Plane] = ("l0", "l1") if word == "bottom" else ("l1", "l0")
        return tuple(
            self.maker.join(
                f"{self.leaf.name}.joint_{word}_rail_{hand}", "butt", (rail.path, end),
                (stile.path, "w1"),
                fastenings=(Fastening("glue", 1, None, (rail.path,), stile.path),),
            )
            for hand, stile, end in (("left", self.left, ends[0]), ("right", self.right, ends[1]))
        )  # fmt: skip

    def _fit(
        self, strip: Outline, word: str, where: str, joints: tuple[str, ...], *, last: bool = False
    ) -> None:
        name = f"{self.leaf.name}.joint_{word.replace(' ', '_')}"
        held = strip_fastenings(self.maker, name, strip, self.slab.path, self.slab.thickness)
        face = self.maker.join(
            name, "face", (strip.path, "t0"), (self.slab.path, "t1"), fastenings=held
        )
        brads = any(f.kind == "brad" for f in held)
        hold = "hold it with brads" if brads else "clamp it"
        words = f"Spread glue thinly; set the {word} {where}; {hold}."
        if last:
            words += " When it is dry, sand the edges flush, then bore the door as its cards say."
        self.maker.step(
            "fit", strip.path, "-z", words, joints=(face, *joints),
            marks=row_marks(self.maker, (face,)),
            cautions=("brad_points",) if brads else (),
        )  # fmt: skip


def cut_applied(maker: Maker, leaf: LeafPlan) -> AppliedDoor:
    """Cut slab and strips: strips are marked from the slab as it is."""
    slab = cut_slab(maker, leaf)
    key, name = leaf.front.strip, leaf.name
    setting = f"{maker.spec.key} {leaf.opening.name} strips"
    left, right = (
        maker.outline(
            f"{name}.stile_{hand}", key, slab.length, maker.style("stile"),
            setting=f"{setting} stiles", matched=True,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    between = slab.width - left.width - right.width
    bottom, top = (
        maker.outline(
            f"{name}.rail_{word}", key, between, maker.style("rail"),
            setting=f"{setting} rails", matched=True,
        )
        for word in ("bottom", "top")
    )  # fmt: skip
    return AppliedDoor(maker, leaf, slab, left, right, bottom, top)

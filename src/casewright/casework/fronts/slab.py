"""Leaves that are a slab: one panel, its four edges treated; bare, or with something on it."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import Corner, edge_words, upright
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import EdgeKind
from casewright.dims import Dim
from casewright.stock import Sheet

__all__ = ["SlabDoor", "SlabLeaf", "cut_slab", "place_slab"]

EDGES: tuple[Plane, ...] = ("l0", "l1", "w0", "w1")


@dataclass(frozen=True, slots=True)
class SlabLeaf:
    """A leaf whose slab gives it its outline and holds its hinges."""

    maker: Maker
    leaf: LeafPlan
    slab: Outline

    @property
    def width(self) -> Dim:
        """Outside width [mm]."""
        return self.slab.width

    @property
    def height(self) -> Dim:
        """Outside height [mm]."""
        return self.slab.length

    @property
    def cup_part(self) -> str:
        """The slab."""
        return self.slab.path


@dataclass(frozen=True, slots=True)
class SlabDoor(SlabLeaf):
    """A leaf of one panel."""

    @property
    def thickness(self) -> Dim:
        """Outside thickness [mm]."""
        return self.slab.thickness

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""
        return (self.slab.path,)

    @property
    def cup_backing(self) -> Dim:
        """Thickness of the slab [mm]."""
        return self.slab.thickness

    @property
    def pull_parts(self) -> tuple[str, ...]:
        """The slab."""
        return (self.slab.path,)

    def put(self, at: Corner) -> None:
        """Place the slab."""
        place_slab(
            self.maker, self.leaf, self.slab, at, role=self.leaf.role, title=self.leaf.title
        )
        self.maker.step(
            "lay",
            self.slab.path,
            None,
            f"Lay the {self.leaf.title} on the bench, show face down; mark {self.leaf.to_mark} on "
            "the back, then bore it as its card says.",
        )


def cut_slab(maker: Maker, leaf: LeafPlan) -> Outline:
    """Cut a slab, whose blank is smaller by what the edges add."""
    return maker.outline(
        f"{leaf.name}.slab",
        leaf.front.slab,
        leaf.height,
        leaf.width,
        edges=EDGES,
        edge=_edge(maker, leaf),
        setting=f"{maker.spec.key} {leaf.opening.name} leaves",
        way=leaf.way,
    )


def _edge(maker: Maker, leaf: LeafPlan) -> EdgeKind | None:
    """How the slab's edges are treated; None: as the box's."""
    goods = maker.house.stock[leaf.front.slab]
    if leaf.front.edge is None and isinstance(goods, Sheet) and goods.is_fibreboard:
        return "painted"
    return leaf.front.edge


def place_slab(
    maker: Maker, leaf: LeafPlan, slab: Outline, at: Corner, *, role: str, title: str
) -> None:
    """Place a slab with its datum edge at the hinges, so that both hands read the same.

    One that does not swing has it on its right.
    """
    words = ("hinge edge", "free edge") if leaf.hinge else ("right", "left")
    x = at.x if leaf.hinge == "left" else at.x + slab.width
    maker.add(
        slab,
        role=role,
        title=title,
        lies=upright(leaf.hinge),
        at=(x, at.y, at.z),
        ends=edge_words(*words),
        hand=leaf.hinge,
        shows=("l0", "l1", "w0", "w1", "t1"),
        group=f"{leaf.opening.name} leaves",
        front=maker.path(leaf.name),
    )

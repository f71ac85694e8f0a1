"""Frames of stiles and rails: what half-lapped and tongued doors have in common."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.fronts.constructions import Corner, edge_words, upright
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way

__all__ = [
    "Frame", "FrameLeaf", "Level", "cut_rails", "cut_stiles", "place_corners", "place_rail",
    "place_stile",
]  # fmt: skip

Level = Literal["bottom", "middle", "top"]


@dataclass(frozen=True, slots=True)
class Frame:
    """Members of a frame, as cut."""

    left: Outline
    right: Outline
    bottom: Outline
    top: Outline

    @property
    def members(self) -> tuple[Outline, ...]:
        """Stiles, then rails."""
        return (self.left, self.right, self.bottom, self.top)

    @property
    def stiles(self) -> tuple[tuple[Hand, Outline], ...]:
        """Left, then right."""
        return (("left", self.left), ("right", self.right))

    @property
    def rails(self) -> tuple[tuple[Level, Outline], ...]:
        """Bottom, then top."""
        return (("bottom", self.bottom), ("top", self.top))


@dataclass(frozen=True, slots=True)
class FrameLeaf:
    """A leaf whose stiles give it its height and hold its hinges and its pull."""

    maker: Maker
    leaf: LeafPlan
    frame: Frame

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
        own = self.maker.path(self.leaf.name)
        return tuple(path for path, part in self.maker.parts.items() if part.front == own)

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


def cut_stiles(maker: Maker, leaf: LeafPlan, width: Dim) -> tuple[Outline, Outline]:
    """Cut the left and the right stile, as long as the leaf is high and so wide [mm]."""
    left, right = (
        maker.outline(
            f"{leaf.name}.stile_{hand}", leaf.front.frame, leaf.height, width,
            setting=f"{_setting(maker, leaf)} stiles", length_way=Way.CLOSE,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    return left, right


def cut_rails(maker: Maker, leaf: LeafPlan, length: Dim, width: Dim) -> tuple[Outline, Outline]:
    """Cut the bottom and the top rail, so long and so wide [mm]."""
    bottom, top = (
        maker.outline(
            f"{leaf.name}.rail_{word}", leaf.front.frame, length, width,
            setting=f"{_setting(maker, leaf)} rails", length_way=Way.CLOSE,
        )
        for word in ("bottom", "top")
    )  # fmt: skip
    return bottom, top


def _setting(maker: Maker, leaf: LeafPlan) -> str:
    return f"{maker.spec.key} {leaf.opening.name} frame"


def place_corners(maker: Maker, leaf: LeafPlan, frame: Frame, at: Corner) -> None:
    """Place a frame whose rails are as long as the leaf is wide, flush in front.

    Parameters
    ----------
    at
        Lower left back corner of the leaf.
    """
    right = at.x + frame.bottom.length
    for hand, stile in frame.stiles:
        place_stile(maker, leaf, stile, hand, at, right)
    for level, rail in frame.rails:
        # Front-flush with the stiles: the frame is glued up face down.
        z = at.z + frame.left.thickness - rail.thickness
        corner = (at.x, at.y, z) if level == "bottom" else (right, at.y + frame.left.length, z)
        place_rail(maker, leaf, rail, level, corner)


def place_stile(
    maker: Maker, leaf: LeafPlan, stile: Outline, hand: Hand, at: Corner, right: Dim
) -> None:
    """Place a stile of a leaf, its datum edge outside.

    Parameters
    ----------
    at
        Lower left back corner of the leaf.
    right
        Its right edge, in case axes x [mm].
    """
    maker.add(
        stile, role="stile", title=f"{hand} stile of the {leaf.title}", lies=upright(hand),
        at=(at.x if hand == "left" else right, at.y, at.z),
        ends=edge_words("outer edge", "inner edge"), hand=hand,
        shows=("l0", "l1", "w0", "w1", "t1"), group=f"{leaf.opening.name} stiles",
        front=maker.path(leaf.name),
    )  # fmt: skip


def place_rail(
    maker: Maker, leaf: LeafPlan, rail: Outline, level: Level, at: tuple[Dim, Dim, Dim]
) -> None:
    """Place a rail of a leaf, its datum edge outside; the top one is turned end for end.

    Parameters
    ----------
    at
        Case position of its outer corner: at the left of the bottom rail, the right of the top.
    """
    low = level != "top"
    maker.add(
        rail, role="mid rail" if level == "middle" else "rail",
        title=f"{level} rail of the {leaf.title}",
        lies="+x +y +z" if low else "-x -y +z", at=at,
        ends=("left" if low else "right", "right" if low else "left", "outer edge", "inner edge"),
        shows=("w0", "w1", "t1"), group=f"{leaf.opening.name} rails",
        front=maker.path(leaf.name),
    )  # fmt: skip

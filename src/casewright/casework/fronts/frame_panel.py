"""The panel of a frame, cut to the grooves as made, free to move in them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import reduce
from itertools import pairwise
from operator import add
from typing import Literal

from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frames import Frame
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_boards import (
    panel_names,
    panel_outlines,
    tell_airy,
    tell_loose,
)
from casewright.casework.fronts.panel_groove import PanelGroove
from casewright.casework.fronts.strips import milled_from
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.wood import is_solid, season_change
from casewright.dims import Dim, Given, Origin, greatest

__all__ = ["Panel", "PanelRoom", "add_panel"]

# A panel lies at least this deep in its grooves: one of a sheet when it is pushed to one side,
# one of solid wood, which is held in the middle, when it has shrunk (common practice).
_HELD = Fraction(3)
_SWELLS = "more air beside the panel, it swells by more than the usual"


@dataclass(frozen=True, slots=True)
class PanelRoom:
    """What lies between the floors of the grooves.

    Parameters
    ----------
    wide, tall
        [mm].
    left, bottom
        Where it begins, in case axes x and y [mm].
    half
        lower or upper, beside a mid rail; else empty.
    """

    wide: Dim
    tall: Dim
    left: Dim
    bottom: Dim
    half: Literal["", "lower", "upper"] = ""

    def named(self, leaf: LeafPlan) -> str:
        """What its numbers and joints are named for."""
        return f"{leaf.name}.upper" if self.half == "upper" else leaf.name


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel as cut: one piece of a sheet, or boards glued edge to edge.

    Parameters
    ----------
    pieces
        From left to right.
    seams
        Paths of the joints between neighbours, from left to right.
    seats
        Paths of the joints with the frame, by side: left, right, bottom, top.
    """

    pieces: tuple[Outline, ...]
    seams: tuple[str, ...]
    seats: dict[str, tuple[str, ...]]


def add_panel(
    maker: Maker, leaf: LeafPlan, frame: Frame, groove: PanelGroove, room: PanelRoom, at: Corner
) -> Panel:
    """Cut a panel and place it in the middle of its grooves.

    Solid wood gets room to swell from the day it is made to the dampest month.
    """
    name = room.named(leaf)
    place = maker.place.at(name).at("panel_room")
    relief, free = maker.style("tongue_relief"), maker.style("panel_clearance")
    air = _held(maker, leaf, groove, relief + free, name)
    across = air
    if is_solid(maker.house, leaf.front.panel):
        swell = season_change(maker.house, room.wide, leaf.front.panel, "swell")
        half = place.let("swell", swell) / 2 if swell.value else swell
        if swell.value and place.over(half, free, _SWELLS):
            across = _held(maker, leaf, groove, relief + half, name)
    pieces = panel_outlines(
        maker, leaf, room.tall - 2 * air, room.wide - 2 * place.let("air_wanted", across), name
    )
    width = reduce(add, (piece.width for piece in pieces))
    side = place.let("air_side", (room.wide - width) / 2)
    end = place.let("air_end", (room.tall - pieces[0].length) / 2)
    corner = (
        room.left + side,
        room.bottom + end,
        at.z + frame.left.thickness - groove.at - pieces[0].thickness,
    )
    _place(maker, leaf, pieces, corner, room.half)
    _fits(maker, leaf, pieces, groove, name, (room.wide - width, room.tall - pieces[0].length))
    seams = tuple(
        maker.join(
            f"{name}.seam_{number}", "butt", (one.path, "w0"), (other.path, "w1"),
            fastenings=(Fastening("glue", 1, None, (one.path,), other.path),),
        )
        for number, (one, other) in enumerate(pairwise(pieces), start=1)
    )  # fmt: skip
    return Panel(pieces, seams, _seats(maker, room, name, pieces, frame, (side, end)))


def _held(maker: Maker, leaf: LeafPlan, groove: PanelGroove, air: Dim, name: str) -> Dim:
    """The air wanted beside a panel, or as much as leaves it in its grooves."""
    place = maker.place.at(name).at("panel_room")
    origin = Origin("cited", "how deep a panel lies in its groove at least", "common practice")
    held = maker.house.enter("rule.panel_held", Given(_HELD, origin))
    most = greatest(groove.depth - held, groove.depth / 2)
    if not place.over(air, most, "less air than wanted, the panel must stay in its grooves"):
        return air
    tell_airy(maker, leaf, groove, air)
    return most


def _place(
    maker: Maker,
    leaf: LeafPlan,
    pieces: tuple[Outline, ...],
    corner: tuple[Dim, Dim, Dim],
    half: str,
) -> None:
    x, y, z = corner
    title = f"{half} panel of the {leaf.title}".strip()
    source = (
        milled_from(maker, leaf.front.panel) if is_solid(maker.house, leaf.front.panel) else ""
    )
    for number, piece in enumerate(pieces, start=1):
        x = x + piece.width
        maker.add(
            piece, role="panel", lies="+y -x +z", at=(x, y, z), shows=("t1",),
            title=title if len(pieces) == 1 else f"panel board {number} of the {leaf.title}",
            ends=("bottom", "top", "right edge", "left edge"), milled_from=source,
            group=f"{leaf.opening.name} panels", front=maker.path(leaf.name),
        )  # fmt: skip


def _fits(
    maker: Maker,
    leaf: LeafPlan,
    pieces: tuple[Outline, ...],
    groove: PanelGroove,
    name: str,
    play: tuple[Dim, Dim],
) -> None:
    """Play in all: never tight when it has swollen, never out of a groove when it has shrunk."""
    place = maker.place.at(name).at("panel_room")
    held = groove.depth.value - _HELD
    side, end = (place.let(name, gap) for name, gap in zip(("side_play", "end_play"), play,
                                                           strict=True))  # fmt: skip
    least, most = Fraction(0), held
    if is_solid(maker.house, leaf.front.panel):
        width = reduce(add, (piece.width for piece in pieces))
        swell, shrink = (
            season_change(maker.house, width, leaf.front.panel, way) for way in ("swell", "shrink")
        )
        least, most = swell.value, 2 * held - shrink.value
        if side.value > most:
            tell_loose(maker, leaf, groove, side + shrink)
    maker.board_fit(maker.place.at(name).at("groove"), groove.width, pieces[0].thickness)
    place.fit("side_play_fit", side, least, most, pieces[-1].path)
    place.fit("end_play_fit", end, Fraction(0), held, pieces[-1].path)


def _seats(
    maker: Maker,
    room: PanelRoom,
    name: str,
    pieces: tuple[Outline, ...],
    frame: Frame,
    air_at: tuple[Dim, Dim],
) -> dict[str, tuple[str, ...]]:
    """The panel lies against the front walls of its grooves, with air at its edges."""
    side, end = air_at
    edges: tuple[tuple[str, Outline, Plane, Dim, tuple[Outline, ...]], ...] = (
        ("left", frame.left, "w1", side, pieces[:1]),
        ("right", frame.right, "w0", side, pieces[-1:]),
        ("bottom", frame.bottom, "l0", end, pieces),
        ("top", frame.top, "l1", end, pieces),
    )
    found: dict[str, tuple[str, ...]] = {}
    for word, member, edge, air, met in edges:
        # Over the lower panel lies the mid rail, its lower edge grooved for that.
        under = room.half == "lower" and word == "top"
        slot = f"{member.path}.groove_low" if under else f"{member.path}.groove"
        floor: Plane = "w1" if under else "w0"
        for piece, joint in zip(met, panel_names(f"{name}.panel_{word}", met), strict=True):
            seat = maker.join(joint, "groove", (piece.path, "t1"), (member.path, "t1", slot))
            free = maker.join(
                f"{joint}_air", "loose", (piece.path, edge), (member.path, floor, slot), gap=air
            )
            found[word] = (*found.get(word, ()), seat, free)
    return found

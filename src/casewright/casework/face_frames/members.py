"""Stiles, rails and mullions of a face frame, cut to the box as it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from casewright.casework.box import Board, Box
from casewright.casework.carcase import FrameEdges
from casewright.casework.face_frames.blind_stile import blind_edges, cut_blind_stile
from casewright.casework.face_frames.plan import FramePlan
from casewright.casework.face_frames.tenons import Tenon, plan_tenon
from casewright.casework.framed_rows import rail_before
from casewright.casework.maker import Maker, Outline
from casewright.casework.rows import boards_behind_rails, row_heights, row_names
from casewright.casework.specs import CaseSpec, FrontSpec, RowKind
from casewright.dims import Dim, Way, least

__all__ = [
    "FrameParts",
    "Mullion",
    "Rail",
    "cut_members",
    "outer_left",
    "planes_of",
    "rows_of",
    "upper_edge",
]


@dataclass(frozen=True, slots=True)
class Rail:
    """A rail: its name in the frame, its title, and the case height of its lower edge [mm]."""

    name: str
    title: str
    outline: Outline
    low: Dim


@dataclass(frozen=True, slots=True)
class Mullion:
    """An upright in the middle of a row of doors: its opening, and the rails it stands between."""

    opening: str
    outline: Outline
    above: Rail
    below: Rail


@dataclass(frozen=True, slots=True)
class FrameParts:
    """A frame whose members are cut but have no place yet.

    Parameters
    ----------
    plan
        As wished.
    left, right
        Its stiles.
    rails
        From the top down.
    backers
        Rails in the openings of false fronts, which these are screwed to.
    low
        Case height of its lower end [mm].
    between
        From stile to stile, as the rails make it [mm].
    width
        Outside, as its members make it [mm].
    tenon
        On the rails' ends; None where these are screwed.
    mullions
        From the top down.
    blind
        The stile beside the mouth of a blind corner; None elsewhere.
    """

    plan: FramePlan
    left: Outline
    right: Outline
    rails: tuple[Rail, ...]
    backers: tuple[Rail, ...]
    low: Dim
    between: Dim
    width: Dim
    tenon: Tenon | None
    mullions: tuple[Mullion, ...] = ()
    blind: Mullion | None = None

    @property
    def uprights(self) -> tuple[Mullion, ...]:
        """What stands between two rails."""
        return self.mullions if self.blind is None else (*self.mullions, self.blind)


def rows_of(spec: CaseSpec) -> list[tuple[str, RowKind, FrontSpec | None]]:
    """Name, kind and front of each row of a framed face, from the top down."""
    asked = [
        (name, row.kind, row.front)
        for name, row in zip(row_names(spec.rows), spec.rows, strict=True)
    ] or [("main", _closed(spec.front), spec.front)]
    if spec.divider is not None:
        asked.insert(0, ("upper", _closed(spec.upper_front), spec.upper_front))
    return asked


def _closed(front: FrontSpec | None) -> RowKind:
    return "doors" if front else "open"


def upper_edge(rail: Rail) -> Dim:
    """Case height of a rail's upper edge [mm]."""
    width = rail.outline.width
    return width if not rail.low.path and not rail.low.op else rail.low + width


def cut_members(maker: Maker, box: Box, plan: FramePlan) -> FrameParts:
    """Cut stiles as long as the box's face, rails between them: under each row one."""
    stock, spec = maker.spec.face_stock, maker.spec
    # Before the panels of a surround they reach the floor.
    foot = maker.zero if spec.between_panels else box.low
    tall = box.head if foot is maker.zero else box.head - foot
    left, right = (
        maker.outline(
            f"frame.stile_{hand}", stock, tall, width, setting=f"{spec.key} frame stiles",
            way=Way.NEAREST, matched=True,
        )
        for hand, width in zip(("left", "right"), plan.stiles, strict=True)
    )  # fmt: skip
    names = _rail_names(spec)
    fitted = len(spec.dressed) == 2
    whole = plan.width
    if fitted:
        # Flush with what is on both ends: as wide as the box is, with these.
        box_width = box.left.thickness + box.clear + box.right.thickness
        whole = box_width + plan.beside[0] + plan.beside[1]
    tenon = plan_tenon(maker, _narrower(maker, left, right))
    between = whole - left.width - right.width
    if tenon is not None:
        between = between + 2 * tenon.long
    cut = [
        maker.outline(
            f"frame.rail_{name}", stock, between, _rail_width(maker, box, name),
            setting=f"{spec.key} frame rails", way=Way.NEAREST, matched=fitted,
            length_way=Way.DOWN if spec.diagonal else None,  # no corner's before its neighbours'
        )
        for name in names
    ]  # fmt: skip
    frame, own = maker.place.at("frame"), cut[0].length
    clear = frame.let("between", own if tenon is None else own - 2 * tenon.long)
    width = frame.follows("width", left.width + clear + right.width)
    head = left.length if foot is maker.zero else foot + left.length
    rails = _stacked(maker, box, names, cut, head)
    return FrameParts(
        plan, left, right, rails, tuple(_backers(maker, rails, between)), foot, clear, width,
        tenon, tuple(_mullions(maker, rails)), _blind(maker, rails),
    )  # fmt: skip


def _rail_names(spec: CaseSpec) -> list[str]:
    inner = ["divider"] if spec.divider else [str(n) for n in range(1, len(spec.rows))]
    return ["top", *inner, "bottom"]


def _narrower(maker: Maker, left: Outline, right: Outline) -> Dim:
    """Width of the narrower stile [mm], less what a bevel takes of it across a corner."""
    narrow = least(left.width, right.width)
    return narrow if maker.spec.diagonal is None else narrow - left.thickness


def _rail_width(maker: Maker, box: Box, name: str) -> Dim:
    """As the style has it; the lowest reaches the top of a bottom that came out thicker [mm]."""
    rail, bottom, step = maker.style("face_rail"), box.bottom, maker.style("cut_step").value
    top = bottom.underside + bottom.outline.thickness
    need = top if box.low is maker.zero else top - box.low
    if name != "bottom" or not maker.place.over(need, rail, "the bottom reaches over its rail"):
        return rail
    place = maker.place.at("frame")
    if step and need.value % step:
        return place.rounded("bottom_rail_wished", need, step, Way.UP)[0]
    return place.let("bottom_rail_wished", need)


def _blind(maker: Maker, rails: tuple[Rail, ...]) -> Mullion | None:
    """The stile beside the mouth of a blind corner, from rail to rail."""
    above, below = rails[0], rails[-1]
    outline = cut_blind_stile(maker, above.low - upper_edge(below))
    return None if outline is None else Mullion("main", outline, above, below)


def _mullions(maker: Maker, rails: tuple[Rail, ...]) -> Iterator[Mullion]:
    """An upright from rail to rail in each row of doors, where they are wanted."""
    rows = rows_of(maker.spec) if maker.spec.mullion else []
    for (name, kind, _), (above, below) in zip(rows, pairwise(rails), strict=False):
        if kind != "doors":
            continue
        outline = maker.outline(
            f"frame.mullion_{name}", maker.spec.face_stock, above.low - upper_edge(below),
            maker.style("face_stile"), setting=f"{maker.spec.key} frame mullions", matched=True,
        )  # fmt: skip
        yield Mullion(name, outline, above, below)


def _backers(maker: Maker, rails: tuple[Rail, ...], length: Dim) -> Iterator[Rail]:
    """A rail in the middle of each opening that a false front lies over."""
    rows = maker.spec.rows
    for name, row, (above, below) in zip(row_names(rows), rows, pairwise(rails), strict=False):
        if row.kind != "false front" or row.front is None or row.front.overlay == "inset":
            continue
        low = upper_edge(below)
        tall = above.low - low
        outline = maker.outline(
            f"frame.backer_{name}", maker.spec.face_stock, length,
            least(maker.style("stretcher"), tall), setting=f"{maker.spec.key} frame rails",
        )  # fmt: skip
        at = maker.place.at("frame").let(f"{name}_low", low + (tall - outline.width) / 2)
        yield Rail(name, f"rail behind the {name.replace('_', ' ')}", outline, at)


def _stacked(
    maker: Maker, box: Box, names: list[str], cut: list[Outline], head: Dim
) -> tuple[Rail, ...]:
    """The rails with their heights: the rows' openings lie between them."""
    place = maker.place.at("frame")
    top = Rail("top", "top rail", cut[0], place.let("top_rail_low", head - cut[0].width))
    bottom = Rail("bottom", "bottom rail", cut[-1], box.low)
    rails, upper = [top], top.low
    divider = next((board for board in box.boards if board.role == "divider"), None)
    if divider is not None:
        low = _over_divider(maker, divider, cut[1])
        return (top, Rail("divider", "rail before the divider", cut[1], low), bottom)
    fixed = boards_behind_rails(maker.spec)
    first = 1
    for number in (*fixed, len(cut) - 1):
        last = bottom
        if number in fixed:
            outline = cut[number]
            low = rail_before(maker, place, f"rail_{number}_low", box, number, outline.width)
            last = Rail(str(number), f"rail under row {number}", outline, low)
        upper = rails[-1].low
        openings = _heights(maker, (rails[-1], last), cut[first:number], first)
        for each, (outline, height) in enumerate(
            zip(cut[first:number], openings, strict=False), start=first
        ):
            low = place.let(f"rail_{each}_low", upper - height - outline.width)
            rails.append(Rail(str(each), f"rail under row {each}", outline, low))
            upper = low
        rails.append(last)
        first = number + 1
    return tuple(rails)


def _over_divider(maker: Maker, divider: Board, rail: Outline) -> Dim:
    """Case height of the lower edge of a rail whose top is flush with a divider's [mm].

    It is marked on a stile, so that it may end higher by less than one step of that grid.
    """
    place, step = maker.place.at("frame"), maker.style("cut_step").value
    exact = divider.underside + divider.outline.thickness - rail.width
    if step and exact.value % step:
        return place.rounded("rail_divider_low", exact, step, Way.UP)[0]
    return place.let("rail_divider_low", exact)


def _heights(
    maker: Maker, ends: tuple[Rail, Rail], between: list[Outline], first: int
) -> list[Dim]:
    """Heights of the openings of some rows [mm], from the top down.

    Those without a height of their own share what is left; where all have one, the lowest takes
    it.

    Parameters
    ----------
    ends
        The rails above and below these rows, in their places.
    between
        The rails between them.
    first
        Number of the first of these rows.
    """
    if not between:
        return []
    above, below = ends
    given = list(row_heights(maker)[first - 1 : first + len(between)])
    if all(dim is not None for dim in given):
        given[-1] = None
    left = above.low - below.outline.width
    left = left if below.low is maker.zero else left - below.low
    for taken in (*(rail.width for rail in between), *(dim for dim in given if dim)):
        left = left - taken
    sharing = sum(dim is None for dim in given)
    name = "row_share" if first == 1 else f"row_share_{first}"
    share = maker.place.let(name, left if sharing == 1 else left / sharing)
    return [share if dim is None else dim for dim in given]


def outer_left(maker: Maker, members: FrameParts, width: Dim) -> Dim:
    """How far the frame stands out at the left of the box [mm].

    What it is wider than planned is shared out, or goes to the end that is not finished.

    Parameters
    ----------
    width
        Of the box [mm].
    """
    left, right = members.plan.beside
    place = maker.place.at("frame")
    dressed = maker.spec.dressed
    if dressed == ("left",):
        return place.let("left_out", left)
    spare = members.width - width - left - right
    if dressed == ("right",):
        return place.let("left_out", left + spare)
    return place.let("left_out", left + spare / 2)


def planes_of(maker: Maker, members: FrameParts, box: Box, width: Dim, depth: Dim) -> FrameEdges:
    """The planes that fronts and hardware are laid out from.

    Parameters
    ----------
    width, depth
        Of the box as it is [mm].
    """
    place = maker.place.at("frame")
    out = outer_left(maker, members, width)
    left = place.let("inner_left", members.left.width - out)
    right = place.let("inner_right", left + members.between)
    side = width - box.right.thickness
    room = (
        place.let("pad_room_left", left - box.left.thickness),
        place.let("pad_room_right", side - right),
    )
    one, other = (_pad(maker, each) for each in room)
    main = next((m for m in members.mullions if m.opening == "main"), None)
    edges = FrameEdges(
        left=left,
        right=right,
        front=place.let("front", depth + members.left.thickness),
        room=room,
        pads=(one, other),
        faces=(
            box.left.thickness if one is None else box.left.thickness + one,
            side if other is None else side - other,
        ),
        mullion=None if main is None else _edges(main, left, right),
    )
    if members.blind is None:
        return edges
    ends = members.left.width if maker.spec.blind == "left" else members.right.width
    return replace(edges, blind=blind_edges(maker, edges, members.blind.outline, ends))


def _edges(mullion: Mullion, left: Dim, right: Dim) -> tuple[Dim, Dim]:
    """Case x of a mullion's edges, in the middle between the stiles [mm]."""
    wide, place = mullion.outline.width, mullion.outline.place
    low = place.let("left_edge", left + (right - left - wide) / 2)
    return low, place.let("x", low + wide)


def _pad(maker: Maker, room: Dim) -> Dim | None:
    """A pad as thick as the room, or as the boards of the frame where these are thinner [mm]."""
    if room.value <= 0:
        return None
    return least(room, maker.house.thickness(maker.spec.face_stock))

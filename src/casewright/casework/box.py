"""The box: sides and horizontals, cut to outline in the order of making."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from casewright.casework.features import Plane
from casewright.casework.maker import Maker, Outline
from casewright.casework.matched import Size, cut_before, in_one_size
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim, Way

__all__ = [
    "Board",
    "Box",
    "EndJoint",
    "Role",
    "Seat",
    "box_outlines",
    "cut_horizontal",
    "end_depth",
    "front_edges",
    "marked_underside",
    "underside_shows",
]

EndJoint = Literal["butt", "dado", "rabbet"]
Role = Literal["bottom", "top", "divider", "fixed shelf", "stretcher", "nailer", "rail"]


@dataclass(frozen=True, slots=True)
class Seat:
    """Numbers that the kind of back decides, before any back is cut.

    Parameters
    ----------
    thin
        Label or measured thickness of the back's stock [mm].
    side_width
        Finished width wanted of a side [mm].
    through
        Whether horizontals run right to the rear edge of the sides.
    """

    thin: Dim
    side_width: Dim
    through: bool


@dataclass(frozen=True, slots=True)
class Board:
    """A horizontal between the sides.

    Parameters
    ----------
    name, role, title
        Name inside the case; the trade's word; title for people.
    outline
        As cut.
    joint
        How its ends meet the sides.
    underside
        Case height of its lower face [mm].
    """

    name: str
    role: Role
    title: str
    outline: Outline
    joint: EndJoint
    underside: Dim


@dataclass(slots=True)
class Box:
    """Outlines of the box, and the planes it is laid out from.

    Parameters
    ----------
    foot
        Case height of the sides' lower ends [mm].
    deck
        Case height of the bottom's underside [mm].
    low
        Case height that its face begins at [mm]: under a face frame's bottom rail, else the deck.
    head
        Case height of the sides' upper ends [mm].
    clear
        Between the sides, as the bottom (the datum part) makes it [mm].
    """

    left: Outline
    right: Outline
    foot: Dim
    deck: Dim
    low: Dim
    head: Dim
    clear: Dim
    seat: Seat
    bottom: Board
    boards: list[Board] = field(default_factory=list)
    head_is_open: bool = False


def _seat(maker: Maker, depth: Dim) -> Seat:
    thin = maker.house.thickness(
        maker.spec.box_stock if maker.spec.back == "inset" else maker.spec.back_stock
    )
    if maker.spec.back == "applied":
        return Seat(thin, depth - thin, through=True)
    return Seat(thin, depth, through=maker.spec.back in ("inset", "grooved", "open"))


def underside_shows(spec: CaseSpec, role: str) -> bool:
    """Whether a board's lower face is seen from the room: a wall case's bottom without a skirt.

    The bottom rail of a face frame hides it, too.
    """
    bare = spec.skirt is None and not spec.framed
    return role == "bottom" and spec.is_hung and bare


def front_edges(spec: CaseSpec, role: str = "") -> tuple[Plane, ...]:
    """Edges of a board of the box that are treated: its front one, where no frame covers it.

    That of a fixed shelf is seen between the stiles; a strip covers it where the others have one.
    """
    bare = role == "fixed shelf" and spec.face != "strips"
    return () if spec.covered and not bare else ("w0",)


def _end_joint(maker: Maker, role: str, *, at_end: bool) -> EndJoint:
    """How a board's ends meet the sides.

    A bottom that shows on both faces, where pockets are not to be plugged, is let into the sides
    instead of being screwed.
    """
    spec = maker.spec
    bare = underside_shows(spec, role) and spec.is_open_inside and spec.pockets == "hidden"
    if spec.kind == "bookcase" or (bare and spec.joint == "pocket screws"):
        return "rabbet" if at_end else "dado"
    match maker.spec.joint:
        case "pocket screws":
            return "butt"
        case "dado" | "rabbet":
            return "rabbet" if at_end else "dado"


def _board_joint(maker: Maker, role: Role, *, at_end: bool) -> EndJoint:
    """How the ends of a board beside the bottom meet the sides; those that bear nothing butt."""
    if role in ("stretcher", "nailer", "rail"):
        return "butt"
    return _end_joint(maker, role, at_end=at_end)


def end_depth(maker: Maker, joint: EndJoint) -> Dim:
    """How far a horizontal's end goes into a side [mm].

    Both ends together are a whole number of steps, so that boards in dadoes and boards between
    the sides can both be cut to the grid.
    """
    if joint == "butt":
        return maker.zero
    deep = joint == "rabbet" and maker.spec.joint == "rabbet" and maker.spec.kind != "bookcase"
    key = "end_rabbet_depth" if deep else "dado_depth"
    return maker.on_grid(key, maker.style(key), parts=2)


def _sides(maker: Maker, length: Dim, seat: Seat) -> tuple[Outline, Outline]:
    left, right = in_one_size(
        maker,
        ("side_left", "side_right"),
        (length, seat.side_width),
        (Way.NEAREST, Way.NEAREST),
        stock=maker.spec.box_stock,
        setting=f"{maker.spec.key} sides",
        edges=front_edges(maker.spec),
    )
    return left, right


def box_outlines(
    maker: Maker,
    size: tuple[Dim, Dim, Dim],
    foot: Dim,
    deck: Dim,
    *,
    rise: Dim | None = None,
    beside: Iterable[tuple[str, Role]] = (),
) -> Box:
    """Cut the sides and the bottom, which is the datum for every other horizontal.

    Parameters
    ----------
    size
        Outside width, height and depth wanted [mm]; height from the floor for a case that stands.
    foot, deck
        Case heights wished for the sides' lower ends and the bottom's underside [mm]. A plinth
        makes up whatever the sides, once cut, leave of the height.
    rise
        How far the bottom's underside lies above that, behind the bottom rail of a face frame
        [mm]; None without one.
    beside
        Boards that will be cut to match the bottom, with their roles: it matches those that are
        cut already.
    """
    width, height, depth = size
    seat = _seat(maker, depth)
    if foot is not maker.zero:
        height = maker.on_grid("height", height)
    length = height if foot is maker.zero else height - foot
    left, right = _sides(maker, length, seat)
    at_end = rise is None and (deck is foot or deck.value == foot.value)
    joint = _end_joint(maker, "bottom", at_end=at_end)
    into = end_depth(maker, joint)
    wanted = width - left.thickness - right.thickness
    board_width = left.width if seat.through else left.width - seat.thin
    if foot is not maker.zero:
        on_it = deck is foot
        foot = maker.place.let("foot", height - left.length)
        deck = foot if on_it else deck
    low = deck
    if rise is not None:
        deck = marked_underside(maker, low, rise)
    outline = _bottom(maker, (wanted, board_width), into, beside)
    clear = maker.place.let(
        "clear_to_cut", outline.length - 2 * into if into.value else outline.length
    )
    bottom = Board("bottom", "bottom", "bottom", outline, joint, deck)
    head = left.length if foot is maker.zero else foot + left.length
    return Box(left, right, foot, deck, low, head, clear, seat, bottom, [bottom])


def marked_underside(maker: Maker, low: Dim, rise: Dim) -> Dim:
    """Height of the underside of a bottom that lies above the lower end of its face [mm].

    Marked on the sides before anything is cut to it, and kept whatever the next sheet is.
    """
    height = rise if low is maker.zero else low + rise
    return maker.place.made("deck", height, how="marked on both sides")


def _bottom(maker: Maker, size: Size, into: Dim, beside: Iterable[tuple[str, Role]]) -> Outline:
    """Cut the bottom to what lies between the sides, and so wide."""
    wanted, width = size
    clear = _clear_as_cut(maker, wanted, beside)
    return maker.outline(
        "bottom",
        maker.spec.box_stock,
        clear + 2 * into if into.value else clear,
        width,
        edges=front_edges(maker.spec),
        setting=f"{maker.spec.key} horizontals",
        length_way=Way.NEAREST,
        matched=clear is not wanted,
    )


def _clear_as_cut(maker: Maker, wanted: Dim, beside: Iterable[tuple[str, Role]]) -> Dim:
    """Between the sides: by a board beside the bottom that is cut already, where one is [mm]."""
    boards = (
        (name, end_depth(maker, _board_joint(maker, role, at_end=role == "top")))
        for name, role in beside
    )
    return cut_before(maker, boards, wanted, f"{maker.spec.key} horizontals")


def cut_horizontal(
    maker: Maker,
    box: Box,
    name: str,
    role: Role,
    title: str,
    *,
    underside: Dim | None,
    width: Dim | None = None,
    edges: tuple[Plane, ...] | None = None,
    below: Dim | None = None,
) -> Board:
    """Cut another horizontal to match the bottom.

    Parameters
    ----------
    underside
        Case height of its lower face [mm]; None: flush with the sides' upper ends.
    width
        None: as the bottom, or up to a captured back.
    edges
        That are treated; None: the front one, where it shows.
    below
        Case height that an upright board's upper edge reaches, as it is cut [mm].
    """
    spec = maker.spec
    joint = _board_joint(maker, role, at_end=underside is None)
    into = end_depth(maker, joint)
    outline = maker.outline(
        name,
        spec.box_stock,
        box.clear + 2 * into if into.value else box.clear,
        width or _board_width(maker, box, role),
        edges=front_edges(spec, role) if edges is None else edges,
        setting=f"{spec.key} horizontals",
        matched=True,
    )
    if below is not None:
        underside = below - outline.width
    if underside is None:
        underside = maker.place.let(
            f"{name.replace('.', '_')}_underside", box.head - outline.thickness
        )
    board = Board(name, role, title, outline, joint, underside)
    box.boards.append(board)
    return board


def _board_width(maker: Maker, box: Box, role: Role) -> Dim:
    inside = role in ("divider", "fixed shelf")
    if inside and maker.spec.back == "grooved":
        return box.left.width - maker.style("groove_inset") - box.seat.thin
    if inside and maker.spec.back == "inset":
        return box.left.width - box.seat.thin
    return box.bottom.outline.width

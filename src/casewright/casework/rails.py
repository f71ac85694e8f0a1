"""Nailers, stretchers, the crown's stretcher: narrow boards between the sides."""

from __future__ import annotations

from casewright.casework.box import (
    Board,
    Box,
    Role,
    cut_horizontal,
    front_edges,
    underside_shows,
)
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.features import Plane
from casewright.casework.fronts.face_edges import inset_by
from casewright.casework.maker import Maker
from casewright.casework.rows import crown_drop, row_boards, wants_front_rail
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim, Way

__all__ = [
    "boards_beside", "cut_nailers", "cut_rails", "front_rail_depth", "nailer_rear", "place_flat",
    "place_upright",
]  # fmt: skip

_FLAT_ENDS = ("left", "right", "front", "back")
_FLIPPED_ENDS = ("right", "left", "front", "back")
_UPRIGHT_ENDS = ("left", "right", "bottom", "top")


def place_flat(maker: Maker, board: Board, x: Dim, front: Dim, *, show_down: bool = False) -> None:
    """Lay a board flat between the sides; its show face up, or down for a top.

    Parameters
    ----------
    x
        Case x of its left end [mm].
    front
        Case z of its front edge [mm].
    """
    outline = board.outline
    inside: tuple[Plane, ...] = ("t1",) if maker.spec.is_open_inside else ()
    # A rail of the frame hides the edge of a board between rows.
    role = "" if board.name.startswith("row_board.") else board.role
    shows = (*front_edges(maker.spec, role), *inside)
    if show_down:
        top = board.underside + outline.thickness
        maker.add(
            outline, role=board.role, title=board.title, lies="-x -z -y",
            at=(x + outline.length, top, front), ends=_FLIPPED_ENDS, shows=shows,
            group="horizontals",
        )  # fmt: skip
        return
    under = underside_shows(maker.spec, board.role)
    maker.add(
        outline, role=board.role, title=board.title, lies="+x -z +y",
        at=(x, board.underside, front), ends=_FLAT_ENDS,
        shows=(*shows, "t0") if under else shows, group="horizontals",
    )  # fmt: skip


def place_upright(maker: Maker, board: Board, x: Dim, rear: Dim) -> None:
    """Stand a narrow board upright between the sides, its show face forward.

    Parameters
    ----------
    rear
        Case z of its rear face [mm].
    """
    forward = board.name == "toe_board"
    maker.add(
        board.outline, role=board.role, title=board.title, lies="+x +y +z",
        at=(x, board.underside, rear), ends=_UPRIGHT_ENDS,
        shows=("t1",) if forward or maker.spec.is_open_inside else (), group="horizontals",
    )  # fmt: skip


def cut_nailers(maker: Maker, box: Box, below: Board | None) -> list[Board]:
    """Nailers: one under the top at the rear; a wall case gets one above its bottom, too.

    A thick inset back needs none. Where the back is open, they are as wide as stretchers, the
    upper one flush with the sides' upper ends.

    Parameters
    ----------
    below
        What the upper one stands under; None: nothing.
    """
    if maker.spec.back == "inset":
        return []
    is_open = maker.spec.back == "open"
    width = maker.style("stretcher" if is_open else "nailer")
    nailers = [
        cut_horizontal(
            maker, box, "nailer_top", "nailer", "top nailer", underside=None,
            below=below.underside if below else box.head, width=width, edges=(),
        )
    ]  # fmt: skip
    if _has_lower_nailer(maker.spec):
        deck = box.deck + box.bottom.outline.thickness
        nailers.append(
            cut_horizontal(
                maker, box, "nailer_bottom", "nailer", "bottom nailer",
                underside=deck, width=width, edges=(),
            )
        )  # fmt: skip
    return nailers


def _has_lower_nailer(spec: CaseSpec) -> bool:
    return spec.is_hung or spec.between_panels or spec.back == "open"


def boards_beside(spec: CaseSpec, *, toe: bool) -> tuple[tuple[str, Role], ...]:
    """The boards that are cut to match the bottom of a box, with their roles.

    Parameters
    ----------
    toe
        Whether its sides reach down to the floor below the bottom.
    """
    found: list[tuple[str, Role]] = []
    if not spec.topless:
        two = ("front_stretcher", "rear_stretcher")
        found += [(name, "stretcher") for name in two] if spec.kind == "base" else [("top", "top")]
    found += _shelves(spec)
    found += [(f"row_board.{n}", _row_role(whole=whole)) for n, whole in row_boards(spec)]
    if wants_front_rail(spec):
        found.append(("front_rail", "rail"))
    if spec.back != "inset":
        found += [("nailer_top", "nailer")]
        found += [("nailer_bottom", "nailer")] if _has_lower_nailer(spec) else []
    if spec.crown is not None and not spec.topless and not wants_front_rail(spec):
        found.append(("crown_stretcher", "stretcher"))
    if toe and not spec.is_hung:
        found.append(("toe_board", "rail"))
    return tuple(found)


def _row_role(*, whole: bool) -> Role:
    return "fixed shelf" if whole else "stretcher"


def _shelves(spec: CaseSpec) -> list[tuple[str, Role]]:
    if spec.kind == "bookcase":
        return [(f"shelf.{n}", "fixed shelf") for n in range(1, spec.shelves + 1)]
    found: list[tuple[str, Role]] = [
        (f"fixed_shelf.{n}", "fixed shelf") for n in range(1, len(spec.fixed_shelves) + 1)
    ]
    return [*found, ("divider", "divider")] if spec.divider is not None else found


def cut_rails(maker: Maker, box: Box, top: Board | None) -> list[Board]:
    """The front stretcher under a crown; where a rail on edge stands, that carries the crown."""
    rails = []
    spec = maker.spec
    if spec.crown is not None and top is not None and not wants_front_rail(spec):
        width = _crown_stretcher(maker)
        rails.append(
            cut_horizontal(
                maker, box, "crown_stretcher", "stretcher", "front stretcher under the crown",
                underside=None, below=top.underside, width=width, edges=(),
            )
        )  # fmt: skip
    return rails


def _crown_stretcher(maker: Maker) -> Dim:
    """Width of the front stretcher under a crown [mm]: at least lap plus gap, up to the grid.

    Under the top it then reaches as far behind the doors as the top is thick: the crown's foot is
    nailed to it, and no slit is open over them. Source: common practice.
    """
    wide, drop = maker.style("crown_stretcher"), crown_drop(maker)
    if drop is None or not maker.place.over(
        drop, wide, "front stretcher wider than usual: it reaches behind the doors under the crown"
    ):
        return wide
    step = maker.style("cut_step").value
    if not step or not drop.value % step:
        return drop
    return maker.place.rounded("crown_stretcher_width", drop, step, Way.UP)[0]


def front_rail_depth(maker: Maker, openings: tuple[Opening, ...], front: Dim) -> Dim:
    """Plane z of the front of the rail that a false front is screwed to [mm].

    In the plane of the box's front; where the false front is inset, behind that and its bumpers.
    """
    over = next((each for each in openings if each.row == "false front"), None)
    deep = None if over is None or maker.spec.framed else inset_by(maker, over)
    return front if deep is None else front - deep - maker.style("bumper")


def nailer_rear(maker: Maker, carcase: Carcase, thickness: Dim) -> Dim:
    """Case z of the rear of nailers [mm]: behind a captured back where there is room for them."""
    if maker.spec.back != "grooved":
        return carcase.seat
    inset = maker.style("groove_inset")
    if maker.place.over(thickness, inset, "nailer in front of the back: no room behind it"):
        return carcase.seat
    return maker.zero

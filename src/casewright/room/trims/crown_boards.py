"""What a crown is nailed to: the backing on the cases, and the frieze board before it."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.dims import Dim, Place
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.bends import across_piece, past_bend
from casewright.room.trims.crown_face import crown_case, frieze_stock
from casewright.room.trims.crown_layout import CrownLayout
from casewright.room.trims.model import Trim, TrimPiece
from casewright.room.trims.stretches import (
    TrimShape,
    joints_along,
    longest_piece,
    seams_of,
    straight_pieces,
    trim_part,
)

__all__ = ["boards_behind"]


def boards_behind(made: CrownLayout) -> tuple[Trim, Trim]:
    """Backing on the cases, flush with their front edges, and the frieze board before it.

    What is read lies along the frieze board's face: at a bend both are longer at their rear.
    """
    house, place, run, own = made.house, made.place, made.run, made.own
    depth, air = crown_case(run).face_plane, made.heights.frieze + made.drop
    high = place.let("behind", air - house.style_dim("crown_air"))
    y, thick = made.heights.cases_top, house.thickness(made.spec.backing)
    shape = TrimShape(
        "backing", f"crown backing{made.suffix}", made.spec.backing, high, y, depth, flush=True
    )
    behind = _board(made, place.at("backing"), shape, made.board + thick, house.zero - thick)
    behind = _with_returns(made, place.at("backing"), shape, behind)
    face = TrimShape("frieze", f"frieze board{made.suffix}", frieze_stock(run), high, y, depth)
    faces = _board(made, place.at("frieze_board"), face, made.board, house.zero)
    read = (own.along, *made.across.values())
    return (
        Trim(place.at("backing").path, "backing", shape.title, read, behind, own.start),
        Trim(place.at("frieze_board").path, "frieze", face.title, read, faces, own.start),
    )


def _board(
    made: CrownLayout, place: Place, shape: TrimShape, out: Dim, before: Dim
) -> tuple[TrimPiece, ...]:
    """Pieces along the wall, and those across the corners beside them.

    Parameters
    ----------
    out, before
        How far the rear lies behind what is read along, and before the face of a corner [mm].
    """
    house, own = made.house, made.own
    past = past_bend(house, place, "past_bend", out) if made.bends else out
    left, right = ((past,) if side in made.bends else () for side in SIDES)
    joints = joints_along(place, own, seams_of(made.run), longest_piece(house, shape.stock))
    front = straight_pieces(
        house, place, shape, own, joints, made.board_cuts, longer=(left, right)
    )
    across = {
        side: across_piece(house, place, shape, made.bends[side], (length, past, past), before)
        for side, length in made.across.items()
    }
    first, last = (tuple(across[s] for s in (side,) if s in across) for side in SIDES)
    return (*first, *front, *last)


def _with_returns(
    made: CrownLayout, place: Place, shape: TrimShape, pieces: Sequence[TrimPiece]
) -> tuple[TrimPiece, ...]:
    """The backing with its ends along the sides of the run."""
    left, right = (
        (_return(made, place, shape, pieces, side),) if made.ends[side].kind == "return" else ()
        for side in SIDES
    )
    return (*left, *pieces, *right)


def _return(
    made: CrownLayout, place: Place, shape: TrimShape, pieces: Sequence[TrimPiece], side: RunSide
) -> TrimPiece:
    left, own = side == "left", made.own
    behind = pieces[0 if left else -1].part.placed.z
    part = trim_part(
        made.house, place.at(side), shape, (behind,),
        own.start if left else own.start + own.along,
        title=f"{side} end of the crown backing",
        lies="+z +y -x" if left else "-z +y +x", z=made.house.zero if left else behind,
    )  # fmt: skip
    return TrimPiece(part)

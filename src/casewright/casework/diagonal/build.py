"""A diagonal corner from its spec: the box with a leg along either wall, then its mouth."""

from __future__ import annotations

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case, FaceFrame
from casewright.casework.diagonal.assembly import assemble_corner
from casewright.casework.diagonal.boards import cut_corner, join_boards, place_boards
from casewright.casework.diagonal.bowl import ask_for_bowl
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.framed import (
    bottom_behind_rail,
    cut_frame,
    frame_box,
    framed_mouth,
    side_depth,
)
from casewright.casework.diagonal.ladder import add_corner_ladder, assemble_corner_ladder
from casewright.casework.diagonal.mouth import Mouth, add_strips, add_toe_board, mouth_carcase
from casewright.casework.diagonal.rear import add_backs, add_nailers, add_post
from casewright.casework.diagonal.shelves import add_corner_shelves, bore_corner_pins
from casewright.casework.drawers import add_drawers, hang_false_fronts
from casewright.casework.face_frames import FrameParts, add_face_frame
from casewright.casework.fronts import add_fronts, fit_between_rows, hang_fronts, plan_hinges
from casewright.casework.house import House
from casewright.casework.levels import clear_heights, levels
from casewright.casework.maker import Maker
from casewright.casework.outside import hold_outside
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim

__all__ = ["build_diagonal"]


def build_diagonal(house: House, spec: CaseSpec) -> Case:
    """Build the model of a diagonal corner, wall or base.

    Its width is the leg along either wall, its depth that of the return sides, which is its
    neighbours'.

    Raises
    ------
    ValueError
        When it has no width: the job file's checks refuse that first.
    """
    if spec.width is None or spec.diagonal is None:
        msg = f"{spec.key} is no diagonal corner with a width"
        raise ValueError(msg)
    maker = Maker(spec, house, house.chain.place(spec.key))
    place = maker.place
    leg = place.given("wanted_width", spec.width)
    wanted = (leg, place.given("wanted_height", spec.height), place.let("wanted_depth", leg))
    deep = place.given("wanted_side_depth", spec.depth)
    low = _deck(maker)
    corner = _box(maker, wanted[:2], deep, low)
    members = cut_frame(maker, corner, deep, low) if spec.framed else None
    mouth, frame = _furnish(maker, corner, members, low)
    parts = tuple(maker.parts.values())
    plain = [part for part in parts if not part.turned]
    horizontals = levels(place, plain)
    return Case(
        spec=spec,
        width=corner.width,
        height=corner.head,
        depth=corner.depth,
        wanted=wanted,
        standing=maker.zero,
        overall_width=corner.width,
        left_frame=maker.zero,
        overall_depth=corner.depth,
        tolerance=hold_outside(maker, (corner.width, corner.head, corner.depth), wanted),
        levels=horizontals,
        clear_heights=clear_heights(place, horizontals),
        parts=parts,
        joints=tuple(maker.joints),
        fronts=tuple(maker.fronts),
        faces=tuple(maker.faces),
        assembly=tuple(maker.steps),
        findings=tuple(maker.findings),
        questions=tuple(maker.questions),
        frame=frame,
        mouth=_mouth(maker, corner, mouth, deep),
    )  # fmt: skip


def _box(maker: Maker, size: tuple[Dim, Dim], deep: Dim, low: Dim) -> Corner:
    """The closed box; a face frame takes of its depth and hides its bottom.

    Parameters
    ----------
    size
        Leg and height [mm].
    deep, low
        Of its neighbours, over their frames; where its face begins [mm].
    """
    deck = low
    if maker.spec.framed:
        deep, deck = side_depth(maker, deep), bottom_behind_rail(maker, low)
    corner = cut_corner(maker, *size, deep, deck)
    place_boards(maker, corner)
    return corner


def _mouth(maker: Maker, corner: Corner, mouth: Mouth, deep: Dim) -> CaseMouth:
    spec = maker.spec
    banded = spec.edge == "band" and not spec.framed
    return CaseMouth(
        corner.hand, mouth.span, mouth.front,
        maker.place.let("face_reach", corner.width + corner.own.width), corner.own.width,
        deep if spec.framed else corner.own.width, maker.style("band") if banded else maker.zero,
    )  # fmt: skip


def _deck(maker: Maker) -> Dim:
    if maker.spec.kind == "base" and maker.spec.toe != "none":
        return maker.on_grid("toe_height", maker.style("toe_height"))
    return maker.zero


def _furnish(
    maker: Maker, corner: Corner, members: FrameParts | None, low: Dim
) -> tuple[Mouth, FaceFrame | None]:
    join_boards(maker, corner)
    post = add_post(maker, corner)
    add_nailers(maker, corner, post)
    mouth = add_strips(maker, corner, members)
    board = add_toe_board(maker, corner, mouth)
    ladder = None if board is None else add_corner_ladder(maker, corner, mouth, board)
    if members is None:
        carcase = mouth_carcase(maker, corner, mouth)
    else:
        carcase = framed_mouth(maker, corner, members, mouth.strips, low)
    plan = plan_hinges(maker, carcase)
    opening = carcase.openings[0]
    if maker.spec.shelves:
        pins = bore_corner_pins(maker, corner, mouth, post, opening)
        add_corner_shelves(maker, corner, mouth, post, opening, pins)
    add_backs(maker, corner, maker.parts[post.path])
    assemble_corner(maker, corner)
    if ladder is not None:
        assemble_corner_ladder(maker, ladder)
    maker.turned = True
    frame = None
    if members is not None:
        frame = add_face_frame(
            maker, frame_box(maker, corner, mouth.strips, low), carcase, members
        )
    add_fronts(maker, carcase, plan)
    add_drawers(maker, carcase, ())
    fit_between_rows(maker, carcase)
    hang_fronts(maker)
    hang_false_fronts(maker)
    maker.turned = False
    ask_for_bowl(maker)
    return mouth, frame

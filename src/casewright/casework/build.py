"""One case from its spec: outlines, machining, box, back, shelves, fronts, assembly."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.appliance_rows import add_cleats, fit_appliances
from casewright.casework.assembly import assemble_box, fit_shelves, warn_of_tipping
from casewright.casework.backs import BackCuts, Rear, add_back, machine_for_back
from casewright.casework.blind_corner import add_blind_filler, add_blind_panel, cut_blind_panel
from casewright.casework.board_joints import join_all
from casewright.casework.box import Box, box_outlines, cut_horizontal, front_edges
from casewright.casework.carcase import Carcase
from casewright.casework.cases import Case, FaceFrame
from casewright.casework.diagonal import build_diagonal
from casewright.casework.drawers import (
    DrawerPlan,
    add_drawers,
    add_pads,
    hang_drawers,
    hang_false_fronts,
    hang_roll_outs,
    plan_slides,
    slide_length,
)
from casewright.casework.face_frames import (
    FrameParts,
    FramePlan,
    bottom_rise,
    cut_members,
    frame_openings,
    plan_frame,
    planes_of,
)
from casewright.casework.face_strips import with_strips
from casewright.casework.faces import add_face
from casewright.casework.framed_rows import cut_boards_between
from casewright.casework.fronts import (
    EndFrames,
    HingePlan,
    add_finished_ends,
    add_fronts,
    fit_between_rows,
    hang_fronts,
    plan_hinges,
)
from casewright.casework.hoods import cut_for_liner
from casewright.casework.house import House
from casewright.casework.joinery import machine_sides
from casewright.casework.levels import clear_heights, levels, overall_depth
from casewright.casework.lids import add_lid, seat_box_height
from casewright.casework.lower_ends import lower_ends
from casewright.casework.maker import Maker, Outline
from casewright.casework.openings import find_openings
from casewright.casework.outside import hold_outside
from casewright.casework.packing import fit_pads
from casewright.casework.plinths import Plinth, assemble_plinth, cut_plinth, place_plinth
from casewright.casework.rails import (
    boards_beside,
    cut_nailers,
    cut_rails,
    front_rail_depth,
    nailer_rear,
    place_flat,
    place_upright,
)
from casewright.casework.rows import cut_front_rail, wants_front_rail
from casewright.casework.shelves import add_shelves, bore_pins, cut_fixed, shelves_in_rows
from casewright.casework.specs import CaseSpec, Hand
from casewright.casework.strips_below import add_nosings, add_skirt
from casewright.casework.surrounds import add_floor_cleat
from casewright.casework.toes import cut_toe_board, notch_sides, toe_setback
from casewright.dims import Cause, Dim

__all__ = ["build_case"]

_SHIFT = (Fraction(3, 10), Fraction(6, 10))
"""Shift of a joint as it is screwed together [mm]: deviation and limit (common practice)."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    width: Dim
    height: Dim
    depth: Dim
    foot: Dim
    deck: Dim
    on_plinth: bool
    frame: FramePlan | None

    @property
    def size(self) -> tuple[Dim, Dim, Dim]:
        return self.width, self.height, self.depth


def build_case(
    house: House,
    spec: CaseSpec,
    width: Dim | None = None,
    *,
    height: Dim | None = None,
    own_plinth: bool = True,
    seams: tuple[Hand, ...] = (),
) -> Case:
    """Build the model of one case.

    Parameters
    ----------
    width
        Outside width [mm] where the run decides it; else the spec's own.
    height
        Outside height [mm] where a crown decides it; else the spec's own.
    own_plinth
        Whether a case on a plinth brings it along; not where its run's plinth carries it.
    seams
        Sides at which its run covers the edges of two boxes with one strip.

    Raises
    ------
    ValueError
        When neither the spec nor the caller gives a width: a defect of the program.
    """
    if spec.diagonal is not None:
        return build_diagonal(house, spec)
    maker = Maker(spec, house, house.chain.place(spec.key))
    wanted = _wanted(maker, width, height)
    box = _sides_and_bottom(maker, wanted)
    _cut_between(maker, box)
    depths = {board.name: machine_sides(maker, box, board) for board in box.boards}
    notch_sides(maker, (box.left, box.right), box.low)
    cuts = machine_for_back(maker, box)
    members = cut_members(maker, box, wanted.frame) if wanted.frame else None
    carcase = with_strips(maker, _close(maker, box, cuts, depths, members))
    _place_sides(maker, box, carcase)
    _place_boards(maker, box, carcase, depths)
    plinth = _own_plinth(maker, box, carcase) if wanted.on_plinth and own_plinth else None
    join_all(maker, box)
    frame, ends = _furnish(maker, box, carcase, cuts, plinth, (members, seams))
    parts = tuple(maker.parts.values())
    horizontals = levels(maker.place, parts)
    return Case(
        spec=spec,
        width=carcase.width,
        height=carcase.height,
        depth=carcase.depth,
        wanted=wanted.size,
        standing=box.foot if spec.reaches_down or not own_plinth else maker.zero,
        overall_width=frame.width if frame and members else ends.overall_width,
        left_frame=maker.place.let("frame_out", -frame.x) if frame and members else ends.left,
        overall_depth=overall_depth(maker.place, parts, carcase.depth),
        tolerance=hold_outside(maker, (carcase.width, carcase.height, carcase.depth), wanted.size),
        levels=horizontals,
        clear_heights=clear_heights(maker.place, horizontals),
        parts=parts, joints=tuple(maker.joints),
        fronts=tuple(maker.fronts),
        faces=tuple(maker.faces),
        assembly=tuple(maker.steps),
        findings=tuple(maker.findings), questions=tuple(maker.questions),
        drawers=tuple(maker.drawers), frame=frame,
    )  # fmt: skip


def _wanted(maker: Maker, width: Dim | None, height: Dim | None) -> _Wanted:
    spec, place = maker.spec, maker.place
    if width is None:
        if spec.width is None:
            msg = f"{spec.key} has no width"
            raise ValueError(msg)
        width = place.given("wanted_width", spec.width)
    else:
        width = place.let("wanted_width", width)
    height = _wanted_height(maker, height)
    depth = place.given("wanted_depth", spec.depth)
    foot, deck = lower_ends(maker)
    on_plinth = spec.has_toe and spec.toe == "plinth"
    frame = plan_frame(maker, width) if spec.framed else None
    before = spec.face_stock if spec.face == "strips" else spec.hood and spec.hood.face_stock
    if before:
        depth = place.let("box_depth", depth - maker.house.thickness(before))
    if frame is not None:
        left, right = frame.beside
        width = place.let("box_width", frame.width - left - right)
        depth = place.let("box_depth", depth - frame.thickness)
    return _Wanted(width, height, depth, foot, deck, on_plinth, frame)


def _wanted_height(maker: Maker, height: Dim | None) -> Dim:
    """As the run gives it, as the seat and its cushion leave it, or as asked for [mm]."""
    if height is None and maker.spec.seated:
        height = seat_box_height(maker)
    if height is None:
        return maker.place.given("wanted_height", maker.spec.height)
    return maker.place.let("wanted_height", height)


def _sides_and_bottom(maker: Maker, wanted: _Wanted) -> Box:
    rise = bottom_rise(maker) if wanted.frame else None
    beside = boards_beside(maker.spec, toe=wanted.deck.value > wanted.foot.value)
    return box_outlines(maker, wanted.size, wanted.foot, wanted.deck, rise=rise, beside=beside)


def _cut_between(maker: Maker, box: Box) -> None:
    """Everything that goes between the sides, matched to the bottom."""
    spec = maker.spec
    head = None
    if spec.kind == "base" and not spec.topless:
        wide = maker.style("stretcher")
        cut_horizontal(
            maker, box, "front_stretcher", "stretcher", "front stretcher",
            underside=None, width=wide,
        )  # fmt: skip
        head = cut_horizontal(
            maker, box, "rear_stretcher", "stretcher", "rear stretcher",
            underside=None, width=wide, edges=(),
        )  # fmt: skip
    elif not spec.topless:
        head = cut_horizontal(maker, box, "top", "top", "top", underside=None)
    cut_fixed(maker, box)
    cut_boards_between(maker, box)
    if wants_front_rail(spec):
        below = box.head if head is None else head.underside
        if spec.framed:
            below = maker.place.let("front_rail_top", box.head - maker.style("face_rail"))
        cut_front_rail(maker, box, below)
    cut_nailers(maker, box, head)
    cut_rails(maker, box, head)
    if box.low.value > box.foot.value and not spec.is_hung:
        cut_toe_board(maker, box)


def _close(
    maker: Maker,
    box: Box,
    cuts: BackCuts,
    depths: dict[str, tuple[Dim, Dim]],
    members: FrameParts | None,
) -> Carcase:
    place = maker.place
    left, right = depths["bottom"]
    length = box.bottom.outline.length
    clear = place.follows(
        "clear_width",
        length - left - right if left.value or right.value else length,
        (Cause(f"{place.path}.clear_width", *_SHIFT),),
    )
    width = place.follows("width", box.left.thickness + clear + box.right.thickness)
    height = place.follows("height", box.head)
    front = box.left.width
    depth = place.follows(
        "depth", front + box.seat.thin if maker.spec.back == "applied" else front
    )
    return Carcase(
        width=width,
        height=height,
        depth=depth,
        clear_width=clear,
        left=box.left.path,
        right=box.right.path,
        left_thickness=box.left.thickness,
        right_thickness=box.right.thickness,
        seat=cuts.seat,
        openings=find_openings(maker, box, height)
        if members is None
        else frame_openings(maker, box, members),
        frame=None if members is None else planes_of(maker, members, box, width, depth),
    )


def _place_sides(maker: Maker, box: Box, carcase: Carcase) -> None:
    spec = maker.spec
    open_inside = spec.is_open_inside and spec.upper_front is None
    for hand, outline, lies, x in (
        ("left", box.left, "+y -z +x", maker.zero),
        ("right", box.right, "+y -z -x", carcase.width),
    ):
        shows: list[str] = list(front_edges(spec))
        if open_inside:
            shows.append("t1")
        if hand in spec.finished:
            shows.append("t0")
        maker.add(
            outline, role="side", title=f"{hand} side", lies=lies,
            at=(x, box.foot, carcase.depth), ends=("bottom", "top", "front", "back"),
            hand="left" if hand == "left" else "right",
            shows=tuple(p for p in ("l0", "l1", "w0", "w1", "t0", "t1") if p in shows),
            group="sides",
        )  # fmt: skip


def _place_boards(
    maker: Maker, box: Box, carcase: Carcase, depths: dict[str, tuple[Dim, Dim]]
) -> None:
    to_rear = maker.spec.back in ("grooved", "inset")
    rear = maker.zero if to_rear else carcase.seat
    for board in box.boards:
        into = depths[board.name][0]
        x = carcase.left_thickness - into if into.value else carcase.left_thickness
        outline = board.outline
        match board.name:
            case "top" | "front_stretcher":
                place_flat(maker, board, x, carcase.depth, show_down=True)
            case "rear_stretcher":
                place_flat(maker, board, x, rear + outline.width, show_down=True)
            case "nailer_top" | "nailer_bottom":
                place_upright(maker, board, x, nailer_rear(maker, carcase, outline.thickness))
            case "crown_stretcher" | "front_rail":
                front = front_rail_depth(maker, carcase.openings, carcase.depth)
                place_upright(maker, board, x, front - outline.thickness)
            case "toe_board":
                back_face = carcase.depth - toe_setback(maker) - outline.thickness
                place_upright(maker, board, x, back_face)
            case _:
                place_flat(maker, board, x, carcase.depth)


def _own_plinth(maker: Maker, box: Box, carcase: Carcase) -> Plinth:
    plinth = cut_plinth(maker, carcase.width, carcase.depth, box.foot)
    place_plinth(maker, plinth)
    _stand_on(maker, box, plinth)
    return plinth


def _stand_on(maker: Maker, box: Box, plinth: Plinth) -> None:
    for hand, side in (("left", box.left), ("right", box.right)):
        for word, rail in (("front", plinth.front), ("back", plinth.back)):
            maker.join(f"stand_{hand}_{word}", "loose", (side.path, "l0"), (rail.path, "w1"))


def _fit_inside(maker: Maker, carcase: Carcase, blind: Outline | None) -> None:
    """What goes in by the front, in this order: nothing passes a blind panel."""
    fit_pads(maker, carcase)
    add_cleats(maker, carcase)
    fit_appliances(maker, carcase)
    shelves_in_rows(maker, carcase)
    fit_shelves(maker)
    add_blind_panel(maker, carcase, blind)


def _add_face(
    maker: Maker,
    box: Box,
    carcase: Carcase,
    face: tuple[FrameParts | None, tuple[Hand, ...]],
    behind: tuple[Dim | None, HingePlan],
) -> tuple[FaceFrame | None, tuple[DrawerPlan, ...]]:
    """Its face frame or strips, its lid; pads of roll-outs, which go in before a frame."""
    before = add_pads(maker, carcase, *behind) if maker.spec.framed else ()
    frame = add_face(maker, box, carcase, *face)
    add_lid(maker, carcase)
    return frame, before if maker.spec.framed else add_pads(maker, carcase, *behind)


def _furnish(
    maker: Maker,
    box: Box,
    carcase: Carcase,
    cuts: BackCuts,
    plinth: Plinth | None,
    face: tuple[FrameParts | None, tuple[Hand, ...]],
) -> tuple[FaceFrame | None, EndFrames]:
    blind = cut_blind_panel(maker, carcase)
    plan = plan_hinges(maker, carcase)
    length = slide_length(maker, carcase)
    drawers = plan_slides(maker, carcase, length)
    pins = {}
    if maker.spec.kind != "bookcase":
        for opening in carcase.openings:
            if maker.spec.shelves_in(opening.name):
                pins[opening.name] = bore_pins(maker, box, opening, plan.hole_heights)
    # Backs over the edges cover the whole case, those between the boards the clear inside.
    deck = box.low if maker.spec.back in ("rabbeted", "applied") else box.deck
    rear = Rear(carcase.width, carcase.clear_width, carcase.left_thickness, deck, carcase.height)
    back = add_back(maker, box, rear, cuts)
    if back is not None and maker.parts[back.path].placed.z is maker.zero:
        carcase = replace(carcase, seat=back.thickness)
    cut_for_liner(maker, box, carcase)
    for opening in carcase.openings:
        if opening.name in pins:
            add_shelves(maker, carcase, opening, pins[opening.name], plan.heights)
    assemble_box(maker, box)
    if plinth:
        assemble_plinth(maker, plinth, above="the box is")
    add_skirt(maker, box, carcase)
    add_nosings(maker, box, carcase)
    _fit_inside(maker, carcase, blind)
    frame, roll_outs = _add_face(maker, box, carcase, face, (length, plan))
    add_fronts(maker, carcase, plan)
    add_drawers(maker, carcase, (*drawers, *roll_outs))
    fit_between_rows(maker, carcase)
    add_blind_filler(maker, carcase)
    ends = add_finished_ends(maker, carcase)
    add_floor_cleat(maker, carcase)
    hang_roll_outs(maker)
    hang_fronts(maker)
    hang_drawers(maker)
    hang_false_fronts(maker)
    warn_of_tipping(maker)
    return frame, ends

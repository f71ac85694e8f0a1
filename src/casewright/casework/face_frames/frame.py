"""A face frame put together flat on the bench, then set before its box as one piece."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from casewright.casework.assembly import join_part
from casewright.casework.box import Box
from casewright.casework.carcase import Carcase
from casewright.casework.cases import FaceFrame
from casewright.casework.face_frames.fixing import fasten_frame
from casewright.casework.face_frames.members import FrameParts, Rail, upper_edge
from casewright.casework.face_frames.plan import check_inset
from casewright.casework.face_frames.tenons import Tenon, TenonSeat, cut_tenon
from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import upright
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.pockets import bore_pockets
from casewright.casework.specs import Hand
from casewright.dims import HAIR, Dim, Told, Unit, tell
from casewright.sources import INCH

__all__ = ["add_face_frame"]

_LEFT: Hand = "left"
_RIGHT: Hand = "right"
_TITLE = "face frame"
_STEPS: dict[Unit, tuple[Fraction, Fraction]] = {
    "in": (INCH / 64, INCH / 16), "mm": (Fraction(2, 5), Fraction(3, 2)),
}  # fmt: skip
"""Steps that are let be where one board is to hide another's edge: too low, and too high [mm]."""
_NO_MARKS: tuple[tuple[str, Dim], ...] = ()


def add_face_frame(maker: Maker, box: Box, carcase: Carcase, members: FrameParts) -> FaceFrame:
    """Place, join and assemble the frame; fasten it to the box; declare its fits."""
    place = maker.place.at("frame")
    frame = carcase.frame
    if frame is None:
        msg = f"{maker.spec.key} has no face frame"
        raise ValueError(msg)
    check_inset(maker, carcase.openings, members.left.thickness)
    left = place.let("x", frame.left - members.left.width)
    _place(maker, carcase, members, left)
    _place_mullions(maker, carcase, members)
    _join(maker, members)
    _assemble(maker, members)
    fasten_frame(maker, box, members)
    _fits(maker, carcase, members, left)
    thick = place.follows("thickness", members.left.thickness)
    return FaceFrame(
        path=place.path, title=_TITLE, x=left, y=members.low, z=carcase.depth,
        width=members.width, height=place.follows("height", members.left.length),
        thickness=thick, front=place.let("face_plane", carcase.depth + thick),
        parts=tuple(p.path for p in maker.parts.values() if p.front == place.path),
        openings=tuple(_openings(maker, carcase, members)),
    )  # fmt: skip


def _openings(
    maker: Maker, carcase: Carcase, members: FrameParts
) -> Iterator[tuple[str, Dim, Dim]]:
    """Name, width and height of each opening between its members [mm], from the bottom up."""
    place, frame = maker.place.at("frame"), carcase.frame
    wide = carcase.clear_width
    if frame is not None:
        low, high = frame.mouth(maker.spec.blind)
        wide = high - low
    rails = pairwise(reversed(members.rails))
    for opening, (below, above) in zip(carcase.openings, rails, strict=True):
        name, tall = opening.name, above.low - upper_edge(below)
        yield (
            name,
            place.let(f"{name}_opening_width", wide),
            place.let(f"{name}_opening_height", tall),
        )


def _place(maker: Maker, carcase: Carcase, members: FrameParts, left: Dim) -> None:
    for hand, stile in (("left", members.left), ("right", members.right)):
        x = left if hand == "left" else left + members.width
        side: Hand = "left" if hand == "left" else "right"
        maker.add(
            stile, role="frame stile", title=f"{hand} stile of the {_TITLE}", lies=upright(side),
            at=(x, members.low, carcase.depth), ends=("bottom", "top", "outer edge", "inner edge"),
            hand=side, shows=("w1", "t1"), group="frame stiles", front=maker.path("frame"),
        )  # fmt: skip
    for rail in (*members.rails, *members.backers):
        role = "backer" if rail in members.backers else "frame rail"
        maker.add(
            rail.outline, role=role, title=f"{rail.title} of the {_TITLE}",
            lies="+x +y +z", at=(_rail_x(members, left), rail.low, carcase.depth),
            ends=("left", "right", "bottom", "top"), shows=("w0", "w1", "t1"),
            group="frame rails", front=maker.path("frame"),
        )  # fmt: skip


def _rail_x(members: FrameParts, left: Dim) -> Dim:
    """Case x of the left end of its rails, tenons included [mm]."""
    inner = left + members.left.width
    return inner if members.tenon is None else inner - members.tenon.long


def _place_mullions(maker: Maker, carcase: Carcase, members: FrameParts) -> None:
    """In the middle of each row of doors; beside the mouth of a blind corner."""
    opened = {opening.name: opening for opening in carcase.openings}
    for mullion in members.mullions:
        outline = mullion.outline
        maker.add(
            outline, role="mullion", title=f"mullion of the {_TITLE}", lies=upright(None),
            at=(_right_edge(maker, carcase, outline), opened[mullion.opening].y0, carcase.depth),
            ends=("bottom", "top", "right", "left"), shows=("w0", "w1", "t1"),
            group="frame mullions", front=maker.path("frame"),
        )  # fmt: skip
    blind, edges = members.blind, carcase.frame and carcase.frame.blind
    if blind is not None and edges:
        maker.add(
            blind.outline, role="blind stile", title=f"blind stile of the {_TITLE}",
            lies=upright(None), at=(edges[1], opened[blind.opening].y0, carcase.depth),
            ends=("bottom", "top", "right", "left"),
            shows=("t1", "w0" if maker.spec.blind == "left" else "w1"), front=maker.path("frame"),
        )  # fmt: skip


def _right_edge(maker: Maker, carcase: Carcase, mullion: Outline) -> Dim:
    """Case x of a mullion's right edge [mm]."""
    known = maker.house.chain.nodes.get(f"{mullion.path}.x")
    if known is not None or carcase.frame is None:
        return known or maker.zero
    middle = carcase.frame.left + (carcase.frame.right - carcase.frame.left) / 2
    return mullion.place.let("x", middle + mullion.width / 2)


def _join(maker: Maker, members: FrameParts) -> None:
    """Rails to stiles by pocket screws from behind, or tenons; mullions to rails by screws."""
    if members.tenon is not None:
        for rail in (*members.rails, *members.backers):
            _tenon(maker, members, rail, members.tenon)
        return
    for rail in (*members.rails, *members.backers):
        ends: tuple[tuple[Plane, Outline, Plane, str], ...] = (
            ("l0", members.left, "w1", "left"), ("l1", members.right, "w1", "right"),
        )  # fmt: skip
        _screw(maker, rail.outline, ends)
    for each in members.uprights:
        _screw(maker, each.outline, (
            ("l0", each.below.outline, "w1", "bottom"), ("l1", each.above.outline, "w0", "top"),
        ))  # fmt: skip


def _tenon(maker: Maker, members: FrameParts, rail: Rail, tenon: Tenon) -> None:
    """Both ends of a rail into the stiles: right at an end of these where it lies there."""
    word = rail.outline.path.rpartition(".")[2]
    low = None
    if rail.low is not members.low:
        up = rail.low if members.low is maker.zero else rail.low - members.low
        low = rail.outline.place.let("from_end", up)
    wide = rail.outline.width
    high = None if rail.name == "top" else wide if low is None else low + wide
    one, other = (
        TenonSeat(stile, hand, low, high)
        for stile, hand in ((members.left, _LEFT), (members.right, _RIGHT))
    )
    cut_tenon(maker, rail.outline, word, tenon, (one, other))


def _screw(
    maker: Maker, member: Outline, ends: tuple[tuple[Plane, Outline, Plane, str], ...]
) -> None:
    count = bore_pockets(maker, member.path, "B", ("l0", "l1"))
    screw = maker.house.pocket_screw(maker.spec.face_stock)
    for end, mate, edge, word in ends:
        maker.join(
            f"frame.joint_{member.path.rpartition('.')[2]}_{word}", "butt",
            (member.path, end), (mate.path, edge),
            fastenings=(
                Fastening("pocket screw", count, screw, (member.path,), mate.path),
                Fastening("glue", 1, None, (member.path,), mate.path),
            ),
        )  # fmt: skip


def _assemble(maker: Maker, members: FrameParts) -> None:
    """Face down on a flat bench: left stile, rails, mullions, right stile, square."""
    screwed = ("clamp_screws",) if members.tenon is None else ()
    drive = "Spread glue thinly on the joint; clamp the faces flush; drive the pocket screws"
    if members.tenon is not None:
        drive = "Glue on the tenons' cheeks; push the shoulders home and clamp across"
        _hold(maker, members.tenon)
    maker.step(
        "lay", members.left.path, None,
        f"Lay the left stile of the {_TITLE} face down on a flat bench, inner edge to the right.",
    )  # fmt: skip
    for rail in (*members.rails, *members.backers):
        where, marks = "on its mark", _NO_MARKS
        if rail.name == "top":
            where = "flush with the stile's upper end"
        elif rail.low is members.low:
            where = "flush with its lower end"
        else:
            up = rail.low if members.low is maker.zero else rail.low - members.low
            marks = (("lower edge above the stile's lower end", rail.outline.place.let("up", up)),)
        join_part(maker, rail.outline.path, "-x", f"{drive}: the {rail.title}, {where}.",
                  *screwed, marks=marks)  # fmt: skip
    for mullion in (each.outline for each in members.uprights):
        out = maker.parts[mullion.path].placed.x - mullion.width
        inner = maker.parts[members.left.path].placed.x + members.left.width
        mark = mullion.place.let("mark_out", out - inner)
        says = f"{drive}: the {_called(mullion)}, on its mark."
        join_part(maker, mullion.path, "-x", says, "clamp_screws",
                  marks=(("left edge from the inner edge of the left stile", mark),))  # fmt: skip
    join_part(maker, members.right.path, "-x",
              f"{drive}: the right stile, against all rails at once.", *screwed)  # fmt: skip
    maker.step(
        "check square", "", None,
        tell(
            "Measure both diagonals of the frame{}. They must agree within {}; sand its joints "
            "flush, both faces, before it goes on the box.{}",
            _between_rails(maker), maker.house.trade("frame_diagonals"), _batten(maker, members),
        ),
        check_words="diagonals",
    )  # fmt: skip


def _between_rails(maker: Maker) -> str:
    return ", from rail to rail" if maker.spec.between_panels else ""


def _batten(maker: Maker, members: FrameParts) -> Told:
    """What holds the feet of stiles that reach past their lowest rail."""
    if not maker.spec.between_panels:
        return Told()
    return tell(
        " Screw a scrap across the backs of both stiles near their feet, {} apart there too; it "
        "stays on until the panels stand.",
        maker.house.said(members.between),
    )


def _called(upright: Outline) -> str:
    return "blind stile" if upright.path.endswith("blind_stile") else "mullion"


def _hold(maker: Maker, tenon: Tenon) -> None:
    """Stop before the mortises are cut into good wood."""
    maker.step(
        "hold", "", None,
        "Hold: rout a mortise and cut a tenon in scraps of the same boards first. They go "
        "together by hand, faces flush, and hold when lifted. Square the ends of the mortises "
        "with a chisel, or round the tenons' edges.",
        check=tenon.thick, check_words="thickness of the tenon",
        cautions=("router_on_edge", "chisel"),
    )  # fmt: skip


def _fits(maker: Maker, carcase: Carcase, members: FrameParts, left: Dim) -> None:
    """What frames want of their boxes: joints that close, an opening that meets the bottom."""
    place = maker.place.at("frame")
    stile = members.left.path
    out = place.let("right_out", left + members.width - carcase.width)
    beside = members.plan.beside
    # What the two sides get may differ by what rounding makes a frame wider than its box.
    play = max(maker.style("face_overhang").value, maker.style("cut_step").value)
    for name, real, wished in (("left", maker.zero - left, beside[0]), ("right", out, beside[1])):
        low = wished.value - play
        place.fit(f"{name}_joint", real, low, wished.value + play, stile)
    error = place.let("width_error", members.width - members.plan.width)
    step = max(maker.style("cut_step").value, maker.style("gap_tolerance").value)
    place.fit("width_fit", error, -step, step, members.rails[0].outline.path)
    lowest = members.rails[-1]
    bottom = maker.parts[maker.path("bottom")]
    top = bottom.placed.y + bottom.finished.thickness
    wide = lowest.outline.width
    rail = wide if lowest.low is maker.zero else lowest.low + wide
    over = place.let("rail_over_bottom", rail - top)
    most = maker.style("face_rise").value + maker.style("cut_step").value
    under, above = _STEPS[maker.house.unit]
    place.fit("rail_over_bottom_fit", over, -HAIR * under, max(most, above), stile)
    if carcase.frame is not None and carcase.frame.blind is not None:
        _fit_panel(maker, carcase.frame.blind)


def _fit_panel(maker: Maker, stile: tuple[Dim, Dim]) -> None:
    """A blind panel ends behind its stile; one that looks out is planed back (common practice).

    Parameters
    ----------
    stile
        Case x of its edges [mm].
    """
    place, panel = maker.place.at("frame"), maker.parts[maker.path("blind")]
    edge = panel.placed.x
    short = stile[1] - edge
    if maker.spec.blind == "right":
        short = edge - panel.finished.width - stile[0]
    real = place.let("panel_behind_stile", short)
    under, above = _STEPS[maker.house.unit]
    place.fit("panel_behind_stile_fit", real, -under, above, panel.path)

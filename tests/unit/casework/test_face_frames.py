"""Face frames against worked constructions of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space (`FF_BASE`, `PARTIAL_FF`, `INSET_FF`); common practice, no publication. Figures
transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    INCH,
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    given,
    hardware,
    house,
    length,
    one_case,
    plain_style,
    rows,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.proof import prove
from casewright.casework.specs import OverlayKind
from casewright.casework.verification import verify
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import work_out

FRAME: dict[str, Any] = {"face": "face frame", "face_stock": "board"}

FF_BASE: dict[Unit, dict[str, str]] = {
    "in": {
        "frame.stile_left": "30 1/2 x 1 1/2", "frame.stile_right": "30 1/2 x 1 1/2",
        "frame.rail_top": "33 x 1 1/2", "frame.rail_1": "33 x 1 1/2",
        "frame.rail_bottom": "33 x 1 1/2", "side_left": "34 1/2 x 22 1/2",
        "bottom": "34 5/16 x 22 9/32", "back": "30 1/2 x 35 1/16",
    },
    "mm": {
        "frame.stile_left": "770 x 40", "frame.stile_right": "770 x 40",
        "frame.rail_top": "820 x 40", "frame.rail_1": "820 x 40", "frame.rail_bottom": "820 x 40",
        "side_left": "870 x 561", "bottom": "858.4 x 554.8", "back": "770 x 876.4",
    },
}  # fmt: skip
# Box outside width, opening width, pack-out, drawer and door opening heights, bottom panel top.
FF_PLANES: dict[Unit, tuple[str, ...]] = {
    "in": ("35 3/4", "33", "21/32", "6", "20", "5 1/2"),
    "mm": ("894", "820", "19.2", "150", "500", "140"),
}


def framed_rows(unit: Unit, overlay: OverlayKind, *asked: str) -> dict[str, Any]:
    """A framed base with these rows, all of one overlay."""
    found = tuple(
        replace(row, front=row.front and replace(row.front, overlay=overlay),
                low=row.low and replace(row.low, overlay=overlay))
        for row in rows(unit, *asked)
    )  # fmt: skip
    return {**drawer_base(unit), "rows": found, "front": replace(SLAB, overlay=overlay), **FRAME}


def _worked(unit: Unit) -> Case:
    """The worked base: 36 (900) wide, one drawer over a pair of doors, sizes to no grid."""
    asked = framed_rows(unit, "partial", f"drawer {'6' if unit == 'in' else '150'}", "doors")
    width = "36" if unit == "in" else "900"
    return one_case(unit, style=plain_style(unit, cut_step="0"), **{**asked, "width": width})


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_base_with_a_face_frame(unit: Unit) -> None:
    """Every member and board of the worked base has its size; so have its planes."""
    case = _worked(unit)
    scale = INCH if unit == "in" else Fraction(1)
    for name, text in FF_BASE[unit].items():
        wanted = tuple(length(each, "mm") for each in text.split(" x "))
        size = case.part(f"base.{name}").finished
        assert (size.length.value / scale, size.width.value / scale) == wanted, name
    assert case.frame is not None
    (_, wide, doors), (_, _, drawer) = case.frame.openings
    pad = case.part("base.drawer_1.pad_left").finished.thickness
    bottom = case.part("base.bottom")
    real = (case.width, wide, pad, drawer, doors, bottom.placed.y + bottom.finished.thickness)
    sizes = [length(text, "mm") for text in FF_PLANES[unit]]
    if unit == "mm":
        # Its boards of 19 end 0.2 short of the frame's edge: the room beside them is the figure.
        assert pad.value == 19
        sizes[2] = Fraction(19)
    assert [dim.value / scale for dim in real] == sizes
    rooms = {"in": Fraction(21, 32), "mm": Fraction(96, 5)}
    stile = case.part("base.frame.stile_left")
    inner = stile.placed.x.value + stile.finished.width.value
    side = case.part("base.side_left").finished.thickness.value
    assert (inner - side) / scale == rooms[unit]


@pytest.mark.parametrize(
    ("unit", "overlay", "leaf"),
    [
        ("in", "partial", ("25", "16 15/16")), ("mm", "partial", ("624", "420.5")),
        ("in", "inset", ("23 13/16", "16 23/64")), ("mm", "inset", ("595", "406.25")),
    ],
)  # fmt: skip
def test_pairs_of_doors_on_a_face_frame(
    unit: Unit, overlay: OverlayKind, leaf: tuple[str, str]
) -> None:
    """In an opening of 33 x 24 in (820 x 600 mm): half an inch (12 mm) over it, or inset."""
    width, height = ("36", "27") if unit == "in" else ("900", "680")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), width=width, height=height,
        front=replace(SLAB, overlay=overlay), **FRAME,
    )  # fmt: skip
    scale = INCH if unit == "in" else Fraction(1)
    wanted = tuple(length(size, "mm") for size in leaf)
    for door in case.doors:
        assert (door.height.value / scale, door.width.value / scale) == wanted
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_stile_at_a_wall_is_wider_on_its_outside(hand: Any) -> None:
    """What is scribed away stands out beside the box; doors and pads stay where they were."""
    plain = one_case(front=replace(SLAB, overlay="partial"), **FRAME)
    scribed = one_case(
        front=replace(SLAB, overlay="partial"), width="33 3/4", scribes=(hand,), **FRAME
    )
    other = "right" if hand == "left" else "left"
    wide = scribed.part(f"upper.frame.stile_{hand}").finished.width.value
    assert wide == length("2 1/4")
    assert scribed.part(f"upper.frame.stile_{other}").finished.width.value == length("1 1/2")
    assert scribed.width.value == plain.width.value
    assert [d.width.value for d in scribed.doors] == [d.width.value for d in plain.doors]
    assert [d.x.value for d in scribed.doors] == [d.x.value for d in plain.doors]
    assert scribed.overall_width.value - plain.overall_width.value == length("3/4")
    assert verify(scribed, hardware=hardware()).holds


def test_a_frame_is_flush_with_a_finished_end() -> None:
    """Beside it the frame stands out as far as the end's own frame is thick."""
    case = one_case(front=replace(SLAB, overlay="partial"), finished=("left",), **FRAME)
    stile = case.part("upper.frame.stile_left")
    end = case.part("upper.end_left.stile_front")
    assert stile.placed.x.value == -end.finished.thickness.value
    assert not any(f.kind == "pocket" and "front" in f.path
                   for f in case.part("upper.side_left").features)  # fmt: skip
    assert verify(case, hardware=hardware()).holds


@pytest.mark.parametrize("overlay", ["partial", "inset"])
def test_a_mullion_parts_a_pair_of_doors(overlay: OverlayKind) -> None:
    """Each leaf covers its own half of the opening as a single door covers a whole one.

    By the formulas of a pair without one (`PARTIAL_FF`, `INSET_FF`) for either half: half the
    opening less half the mullion, and two covers more or two gaps less.
    """
    case = one_case(
        front=replace(SLAB, overlay=overlay),
        mullion=True,
        style=plain_style(cut_step="0"),
        **FRAME,
    )
    half = (length("30") - length("1 1/2")) / 2
    more = 2 * length("1/2") if overlay == "partial" else -2 * length("3/32")
    assert [door.width.value for door in case.doors] == [half + more] * 2
    assert verify(case, hardware=hardware()).holds


def test_a_false_front_over_a_frame_has_a_rail_behind_it() -> None:
    """A false front is screwed to a rail of the frame, an inset one to one of the box."""
    over = one_case(
        **framed_rows("in", "partial", "false front 7", "doors"), sink=True, back="open"
    )
    inside = one_case(
        **framed_rows("in", "inset", "false front 7", "doors"), sink=True, back="open"
    )
    for case, behind in ((over, "base.frame.backer_false_front"), (inside, "base.front_rail")):
        held = next(j for j in case.joints if j.path == "base.false_front.joint")
        assert held.other.part == behind
        assert verify(case, hardware=hardware()).holds


def test_an_inset_front_thicker_than_its_frame_is_told_with_numbers() -> None:
    """Fronts of 5/8 in a frame of 1/2 stand an eighth into the box; the relief is named."""
    goods = stock()
    thin = replace(goods["board"], key="thin", thickness=given("1/2"))
    case = one_case(
        goods={**goods, "thin": thin}, front=replace(SLAB, overlay="inset"),
        face="face frame", face_stock="thin",
    )  # fmt: skip
    found = next(f for f in case.findings if f.rule == "inset front")
    assert found.severity is Severity.STOP
    assert (found.measured, found.limit) == ('5/8"', '1/2"')
    assert any('1/8"' in remedy for remedy in found.remedies)


def test_a_frame_that_hides_nothing_is_told_with_numbers() -> None:
    """A stile narrower than overhang and side, a rail lower than the bottom: least sizes named."""
    case = one_case(
        front=replace(SLAB, overlay="partial"),
        style=plain_style(face_stile="3/4", face_rail="5/8"), **FRAME,
    )  # fmt: skip
    limits = {f.says.split()[1]: f.limit for f in case.findings if f.rule == "narrow face frame"}
    assert limits == {"stile": '27/32"', "rail": '23/32"'}


def test_full_overlay_on_a_frame_asks_for_another_hinge() -> None:
    """A hinge that lies 13 mm over cannot carry a door over the whole of a stile."""
    case = one_case(front=SLAB, **FRAME)
    assert any(f.rule == "hinge overlay" and f.severity is Severity.STOP for f in case.findings)
    sheets = hardware()
    far = replace(sheets, hinge=replace(sheets.hinge, constant=given("33", "mm")))
    made = house(sheets=far)
    held = build_case(made, case_spec(front=SLAB, **FRAME))
    assert not any(f.severity is Severity.STOP for f in held.findings)
    assert verify(held, hardware=far).holds


def test_frames_follow_the_box_as_it_was_built() -> None:
    """A box that came out wide keeps its frame's width; what stands out beside it shrinks."""
    read = Fact(Origin("measured", "tape"), built=length("32 7/8"))
    case = one_case(facts={"upper.width": read}, front=replace(SLAB, overlay="partial"), **FRAME)
    assert case.frame is not None
    assert case.frame.width.value == length("33")
    assert -case.frame.x.value == length("1/16")
    assert not [f for f in prove(case, hardware=hardware()).failures if "frame" in f.says]


@pytest.mark.parametrize(
    ("unit", "width", "stile", "tenon", "rail"),
    [("in", "30", "1 7/16", "1", "29 1/8"), ("mm", "750", "35.6", "25", "728.8")],
)
def test_rails_with_tenons(unit: Unit, width: str, stile: str, tenon: str, rail: str) -> None:
    """A rail is as long as its frame is wide, less two stiles, and two tenons more.

    Source: the same set of constructions (`JOINTS`), its stiles two boards wide; transcribed.
    """
    case = one_case(
        unit, width=width, face_joint="tenons", front=replace(SLAB, overlay="partial"),
        style=plain_style(unit, cut_step="0", face_stile=stile, face_tenon=tenon), **FRAME,
    )  # fmt: skip
    part = case.part("upper.frame.rail_top")
    assert part.finished.length.value == length(rail, unit)
    assert not any(f.kind == "pocket" for f in part.features)
    assert {f.kind for f in case.part("upper.frame.stile_left").features} == {"mortise"}
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("more", [{}, {"scribes": ("right",)}, {"finished": ("left",)}])
def test_tenoned_stiles_are_alike_from_their_inner_edges(more: dict[str, Any]) -> None:
    """Mortises of a wider stile are as deep and lie as high as those of its twin."""
    asked = framed_rows("in", "inset", "drawer 6", "doors")
    case = one_case(**asked, face_joint="tenons", **more)
    assert verify(case, hardware=hardware()).holds


def test_a_pad_ends_before_the_nailer_behind_a_low_drawer() -> None:
    """It begins behind the frame, where its slide does not: as long as that it would run in."""
    text = (
        'format = 1\nunit = "in"\n[stock.plywood]\nmeasured = "0.6"\n[stock.board]\n'
        'measured = "0.75"\n[case.a]\nkind = "tall"\nwidth = "10 31/32"\ndepth = "15 13/32"\n'
        'top_drawer = "3 1/2"\nface = "face frame"\n'
    )
    worked = work_out(read_job(text, "pad.toml"))
    assert worked.failures == ()


@pytest.mark.parametrize(("unit", "divider", "rail"), [("in", "26", "1 1/2"), ("mm", "650", "40")])
def test_a_rail_lies_before_a_divider(unit: Unit, divider: str, rail: str) -> None:
    """Its top is flush with the divider's, as the bottom rail's is with the bottom's (`FF_BASE`).

    Doors over the frame meet on the middle of that rail, pairs above and below with a mullion.
    """
    front = replace(SLAB, overlay="partial")
    case = one_case(
        unit, divider=divider, front=front, upper_front=front, mullion=True, shelves=0, **FRAME
    )
    board, held = case.part("upper.divider"), case.part("upper.frame.rail_divider")
    top = board.placed.y.value + board.finished.thickness.value
    over = held.placed.y.value + held.finished.width.value - top
    assert 0 <= over <= length("1/32" if unit == "in" else "1/2", unit)
    lower = max(d.y.value + d.height.value for d in case.doors if d.opening == "main")
    upper = min(d.y.value for d in case.doors if d.opening == "upper")
    assert lower + upper == 2 * held.placed.y.value + held.finished.width.value
    assert held.finished.width.value == length(rail, unit)
    assert len([p for p in case.parts if p.role == "mullion"]) == 2
    assert verify(case, hardware=hardware(unit)).holds

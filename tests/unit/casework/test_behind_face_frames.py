"""What stands and runs behind a face frame: roll-outs, partitions, the shelves of a bookcase.

Source: common practice; plane geometry where a test says so.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    SLAB,
    Unit,
    drawer_base,
    given,
    hardware,
    length,
    one_case,
    plain_style,
)
from tests.unit.casework.test_face_frames import FRAME, framed_rows

from casewright.casework.levels import extent
from casewright.casework.proof import prove
from casewright.casework.specs import BackKind, Hand, OverlayKind, RowSpec
from casewright.casework.verification import verify
from casewright.findings import Severity


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("overlay", ["partial", "inset"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_roll_outs_behind_a_frame_clear_it_and_the_open_doors(
    unit: Unit, overlay: OverlayKind, hand: Hand
) -> None:
    """Packing reaches the frame's edge; pads go on from there past a door at a right angle.

    That stands over the edge by td - stand_off - overlay, an inset one by td - stand_off + gap:
    plane geometry of a leaf turned by 90 degrees. Pads are a board thick where that is enough.
    """
    front = replace(SLAB, overlay=overlay, leaves=1, hinge=hand)
    asked = drawer_base(unit, roll_outs=2, front=front, width="18" if unit == "in" else "460")
    case = one_case(unit, **{**asked, **FRAME})
    assert not [f for f in case.findings if f.severity is Severity.STOP]
    side = case.part(f"base.side_{hand}").finished.thickness.value
    packing = case.part(f"base.roll_out_1.packing_{hand}").finished.thickness.value
    layers = [p.finished.thickness.value for p in case.parts
              if p.path.startswith(f"base.roll_out_1.pad_{hand}")]  # fmt: skip
    stile = case.part(f"base.frame.stile_{hand}")
    edge = length("1 3/8" if unit == "in" else "37", unit)
    board = length("3/4" if unit == "in" else "19", unit)
    assert stile.finished.width.value - edge == length("1/8" if unit == "in" else "3", unit)
    assert side + packing == (edge if unit == "in" else edge - Fraction(1, 5))
    doors = length("5/8" if unit == "in" else "15", unit) - Fraction(3, 2)
    gap = length("3/32" if unit == "in" else "2.5", unit)
    air = length("1/8" if unit == "in" else "3", unit)
    short = Fraction(0) if unit == "in" else Fraction(1, 5)
    need = board if overlay == "partial" else doors + gap + air + short
    assert len(layers) == (1 if need <= board else 2)
    # The frame shares out to both sides what the box is narrower on its grid: 0.1 mm here.
    assert abs(sum(layers) - max(need, board)) <= Fraction(1, 20)
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("drawer", [False, True])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_roll_outs_at_either_side_of_a_mullion(unit: Unit, *, drawer: bool) -> None:
    """A partition stands behind the mullion, in its middle; inner pads end with its edges.

    (mullion - partition) / 2 is left for each pad, and a box is as wide as between pads less the
    slides' air (common practice). Under a drawer it ends with the rail; a back holds it there.
    """
    asked = ("drawer 6" if unit == "in" else "drawer 150", "doors") if drawer else ("doors",)
    case = one_case(
        unit, **{**framed_rows(unit, "partial", *asked), "roll_outs": 2, "mullion": True}
    )
    assert not [f for f in case.findings if f.severity is Severity.STOP]
    assert [d.title for d in case.drawers if not d.front] == [
        "left roll-out 1", "left roll-out 2", "right roll-out 1", "right roll-out 2",
    ]  # fmt: skip
    part, mullion = case.part("base.partition"), case.part("base.frame.mullion_main")
    wide, thick = mullion.finished.width.value, part.finished.thickness.value
    low = mullion.placed.x.value - wide
    assert part.placed.x.value - thick - low == (wide - thick) / 2
    rail = case.part("base.frame.rail_1" if drawer else "base.frame.rail_top").placed.y.value
    top = part.placed.y.value + part.finished.length.value
    over = case.part("base.front_stretcher").placed.y.value - thick
    assert top == (rail if drawer else over)
    held = {joint.path.rpartition("_")[2] for joint in case.joints if ".partition." in joint.path}
    assert held == ({"bottom", "back"} if drawer else {"bottom", "over", "nailer"})
    box = next(d for d in case.drawers if d.title == "left roll-out 1")
    pad = case.part(f"{box.path}.pad_left")
    wall = pad.placed.x.value + pad.finished.thickness.value
    air = hardware(unit).slide.air.value
    step = length("1/32" if unit == "in" else "1/2", unit)
    assert 0 <= low - wall - box.width.value - 2 * air <= step + hardware(unit).slide.play.value
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("back", ["rabbeted", "grooved", "applied", "inset"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_bookcase_behind_a_frame(unit: Unit, back: BackKind) -> None:
    """Its shelves show between the stiles: their edges are treated, each has a nosing; no other.

    Its bays are alike up to the grid: height less boards, shared out (`BOOKCASE`, whose dadoes
    leave the bays alike).
    """
    tall, wide, deep = ("84", "32", "12") if unit == "in" else ("2100", "800", "300")
    asked: dict[str, Any] = {
        "kind": "bookcase", "width": wide, "height": tall, "depth": deep, "front": None,
        "shelves": 4, "back": back, "nosing": given("1" if unit == "in" else "25", unit),
    }  # fmt: skip
    case = one_case(unit, **asked, **FRAME)
    assert verify(case, hardware=hardware(unit)).holds
    shelves = [p for p in case.parts if p.role == "fixed shelf"]
    assert [[e.edge for e in p.edges] for p in shelves] == [["w0"]] * 4
    assert sum(p.role == "nosing" for p in case.parts) == 4
    assert not [e for p in case.parts if p.role in ("side", "top", "bottom") for e in p.edges]
    clear = [each.size.value for each in case.clear_heights]
    assert max(clear) - min(clear) <= length("1/16" if unit == "in" else "1.5", unit)
    assert case.frame is not None
    assert [name for name, _, _ in case.frame.openings] == ["main"]


@pytest.mark.parametrize("overlay", ["partial", "inset"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_an_open_row_lies_between_boards_behind_rails(unit: Unit, overlay: OverlayKind) -> None:
    """Each board's top is as high as its rail's, or lower by less than a step of the grid.

    Openings and rails fill the frame: `FF_BASE` sums likewise. Its boards' edges stay untreated.
    """
    asked = framed_rows(unit, overlay, "drawer 5" if unit == "in" else "drawer 130", "doors")
    drawer, doors = asked["rows"]
    high = given("9" if unit == "in" else "230", unit)
    case = one_case(unit, **{**asked, "rows": (drawer, RowSpec("open", high, None), doors)})
    assert verify(case, hardware=hardware(unit)).holds
    step = length("1/32", "in") if unit == "in" else Fraction(1, 2)
    for number in (1, 2):
        board = case.part(f"base.row_board.{number}")
        rail = case.part(f"base.frame.rail_{number}")
        over = extent(rail, 1)[1].value - extent(board, 1)[1].value
        assert 0 <= over < step
        assert not board.edges
    assert case.frame is not None
    openings = {name: tall.value for name, _, tall in case.frame.openings}
    assert abs(openings["open"] - high.value) < 2 * step
    rails = sum(p.finished.width.value for p in case.parts if p.role == "frame rail")
    assert sum(openings.values()) + rails == case.frame.height.value


def test_a_mullion_that_hides_no_partition_is_told_with_numbers() -> None:
    """Of one inch, a partition of 23/32 leaves 9/64 for each pad; of 3/4 it leaves 1/64."""
    asked = {**framed_rows("in", "partial", "doors"), "roll_outs": 1, "mullion": True}
    for stile, rule in (("1", None), ("3/4", "narrow face frame")):
        case = one_case(**asked, style=plain_style(face_stile=stile))
        found = [f for f in case.findings if f.path == "base.roll_outs"]
        assert [f.rule for f in found] == ([rule] if rule else [])
        assert bool(case.drawers) is (rule is None)


def test_a_roll_out_that_an_open_door_would_meet_is_caught() -> None:
    """With a hinge that takes its doors out less than the pads were made for, the proof fails."""
    front = replace(SLAB, overlay="inset")
    case = one_case(**{**drawer_base(roll_outs=1, front=front), **FRAME})
    sheets = hardware()
    assert verify(case, hardware=sheets).holds
    near = replace(sheets, hinge=replace(sheets.hinge, stand_off=given("-1/8")))
    assert any("stands in its way" in f.says for f in prove(case, hardware=near).failures)

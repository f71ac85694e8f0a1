"""Stacks of zones: whatever stands in them, they sum to the height and leave the oven its room."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import Unit, case_spec, drawer_base, hardware, house, rows, stock

from casewright.casework.build import build_case
from casewright.casework.levels import extent
from casewright.casework.specs import ApplianceOpening, FaceKind, OverlayKind, RowSpec
from casewright.casework.verification import verify
from casewright.dims import Given, Origin


def _sheet(key: str, high: int) -> RowSpec:
    sizes = [Given(Fraction(mm), Origin("cited", "its sheet")) for mm in (500, high, 450)]
    return RowSpec("appliance", None, None, None, ApplianceOpening(key, key, *sizes))


def _lying(row: RowSpec, overlay: OverlayKind) -> RowSpec:
    front, low = (each and replace(each, overlay=overlay) for each in (row.front, row.low))
    return replace(row, front=front, low=low)


@settings(max_examples=12, deadline=None)
@given(
    unit=st.sampled_from(("in", "mm")),
    size=st.tuples(st.integers(560, 900), st.integers(1950, 2700), st.integers(520, 700)),
    high=st.lists(st.integers(350, 620), min_size=1, max_size=2),
    ply=st.sampled_from(("17.3", "17.8", "18.3")),
    toe=st.sampled_from(("notch", "plinth", "none")),
    low=st.sampled_from(("drawer", "doors")),
    face=st.sampled_from(("frameless", "face frame")),
    built=st.tuples(
        st.sampled_from(("pocket screws", "dado")),
        st.sampled_from(("rabbeted", "grooved", "inset", "applied")),
    ),
)
def test_zones_sum_to_the_height_and_each_oven_has_its_room(
    unit: Unit,
    size: tuple[int, int, int],
    high: list[int],
    ply: str,
    toe: str,
    low: str,
    face: FaceKind,
    built: tuple[str, str],
) -> None:
    """Boards and what is clear between them fill the case from its bottom to its top.

    Behind a frame its rails and openings do, and no rail stands in the way of an oven.
    """
    overlay: OverlayKind = "full" if face == "frameless" else "partial"
    doors, lower = (_lying(row, overlay) for row in rows(unit, "doors", low))
    stack = tuple(_sheet(f"oven_{number}", mm) for number, mm in enumerate(high))
    text = str(Fraction(ply) / Fraction(254, 10)) if unit == "in" else ply
    width, height, depth = (Given(Fraction(mm), Origin("chosen", "drawn")) for mm in size)
    asked = {**drawer_base(unit), "key": "tall", "kind": "tall", "width": width, "height": height,
             "depth": depth, "toe": toe, "front": doors.front, "joint": built[0], "back": built[1],
             "rows": (doors, *stack, lower), "face": face, "face_stock": "board"}  # fmt: skip
    case = build_case(house(unit, goods=stock(unit, ply=text)), case_spec(unit, **asked))
    assert verify(case, hardware=hardware(unit)).failures == ()
    fixed = [level for level in case.levels if level.role != "shelf"]
    boards = sum((level.high.value - level.low.value for level in fixed), Fraction(0))
    clear = sum((each.size.value for each in case.clear_heights), Fraction(0))
    assert boards + clear == case.height.value - fixed[0].low.value
    cleats = [extent(part, 1)[0].value for part in case.parts if part.role == "cleat"]
    for number, mm in enumerate(high, start=2):
        deck = case.part(f"tall.row_board.{number}")
        floor = extent(deck, 1)[1].value
        over = [extent(case.part(f"tall.row_board.{number - 1}"), 1)[0].value]
        if case.frame is None:
            over += cleats
        else:
            over = [extent(case.part(f"tall.frame.rail_{number - 1}"), 1)[0].value]
            assert extent(case.part(f"tall.frame.rail_{number}"), 1)[1].value <= floor
        assert min(y for y in over if y > floor) - floor >= mm
    if case.frame is not None:
        rails = [part.finished.width.value for part in case.parts if part.role == "frame rail"]
        clear = sum((tall.value for _, _, tall in case.frame.openings), Fraction(0))
        assert sum(rails) + clear == case.frame.height.value

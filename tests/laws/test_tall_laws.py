"""Stacks of zones: whatever stands in them, they sum to the height and leave the oven its room."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import SLAB, Unit, case_spec, drawer_base, hardware, house, rows, stock

from casewright.casework.build import build_case
from casewright.casework.levels import extent
from casewright.casework.specs import ApplianceOpening, RowSpec
from casewright.casework.verification import verify
from casewright.dims import Given, Origin


def _sheet(key: str, high: int) -> RowSpec:
    sizes = [Given(Fraction(mm), Origin("cited", "its sheet")) for mm in (500, high, 450)]
    return RowSpec("appliance", None, None, None, ApplianceOpening(key, key, *sizes))


@settings(max_examples=12, deadline=None)
@given(
    unit=st.sampled_from(("in", "mm")),
    size=st.tuples(st.integers(560, 900), st.integers(1950, 2700), st.integers(520, 700)),
    high=st.lists(st.integers(350, 620), min_size=1, max_size=2),
    ply=st.sampled_from(("17.3", "17.8", "18.3")),
    toe=st.sampled_from(("notch", "plinth", "none")),
    low=st.sampled_from(("drawer", "doors")),
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
    built: tuple[str, str],
) -> None:
    """Boards and what is clear between them fill the case from its bottom to its top."""
    doors, lower = rows(unit, "doors", low)
    stack = tuple(_sheet(f"oven_{number}", mm) for number, mm in enumerate(high))
    text = str(Fraction(ply) / Fraction(254, 10)) if unit == "in" else ply
    width, height, depth = (Given(Fraction(mm), Origin("chosen", "drawn")) for mm in size)
    asked = {**drawer_base(unit), "key": "tall", "kind": "tall", "width": width, "height": height,
             "depth": depth, "toe": toe, "front": SLAB, "joint": built[0], "back": built[1],
             "rows": (doors, *stack, lower)}  # fmt: skip
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
        over = [extent(case.part(f"tall.row_board.{number - 1}"), 1)[0].value, *cleats]
        assert min(y for y in over if y > floor) - floor >= mm

"""Rows of fronts that lie over part of a frameless face, or inside it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import SLAB, Unit, drawer_base, hardware, length, one_case, plain_style, rows
from tests.jobs import HEAD, problems

from casewright.casework.cases import Case
from casewright.casework.specs import OverlayKind, SlideKind
from casewright.casework.verification import verify
from casewright.job.load import read_job


def _built(unit: Unit, overlay: OverlayKind, *asked: str, **more: Any) -> Case:
    changes = drawer_base(unit, slides=more.pop("slides", "side-mount"))
    own = tuple(
        replace(row, front=row.front and replace(row.front, overlay=overlay),
                low=row.low and replace(row.low, overlay=overlay))
        for row in rows(unit, *asked)
    )  # fmt: skip
    style = plain_style(unit, cut_step="0")
    front = replace(SLAB, overlay=overlay)
    return one_case(unit, style=style, **{**changes, "rows": own, "front": front, **more})


@pytest.mark.parametrize("slides", ["side-mount", "undermount"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_inset_rows_fill_the_box_between_their_rails(unit: Unit, slides: SlideKind) -> None:
    """Fronts, the gap above and below each, and rails of the box's boards sum to the clear inside.

    By the sums of an inset front (`INSET_FF`: opening less two gaps) and of a base
    (`BASE_INT`: toe, bottom and stretcher); transcribed, common practice.
    """
    first = "6" if unit == "in" else "150"
    case = _built(unit, "inset", f"drawer {first}", "doors", row_rails=True, slides=slides)
    board = case.part("base.side_left").finished.thickness.value
    toe, gap = (length(each, unit) for each in (("4", "3/32") if unit == "in" else ("100", "2.5")))
    clear = case.height.value - toe - 2 * board
    drawer, door = (next(f for f in case.fronts if f.opening == name)
                    for name in ("drawer_1", "main"))  # fmt: skip
    assert drawer.height.value == length(first, unit)
    assert drawer.height.value + door.height.value + 4 * gap + board == clear
    assert drawer.width.value == case.width.value - 2 * board - 2 * gap
    assert {f.z.value + f.thickness.value for f in case.fronts} == {case.depth.value}
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("rails", [True, False])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_partial_rows_leave_the_edges_bare(unit: Unit, rails: bool) -> None:
    """All round the face the same is left bare; given heights are those of the fronts."""
    first = "6" if unit == "in" else "150"
    case = _built(unit, "partial", f"drawer {first}", "drawer", "drawer", row_rails=rails)
    bare = length("3/8", "in") if unit == "in" else Fraction(10)
    toe = length("4", "in") if unit == "in" else Fraction(100)
    top, *_, bottom = sorted(case.fronts, key=lambda f: -f.y.value)
    assert top.height.value == length(first, unit)
    assert case.height.value - top.y.value - top.height.value == bare
    assert bottom.y.value - toe == bare
    assert {f.x.value for f in case.fronts} == {bare}
    assert verify(case, hardware=hardware(unit)).holds


def test_what_inset_rows_cannot_have_is_told_at_its_line() -> None:
    """No rail between two rows leaves a hole; an inner front lies where an inset one would."""
    front = 'front = { overlay = "inset" }\n'
    text = f'{HEAD}[case.a]\nkind = "base"\nwidth = 24\n{front}rows = ["drawer 6", "doors"]\n'
    assert read_job(text, "a.toml").cases[0].row_rails
    assert any("hole" in problem.what for problem in problems(f"{text}rails = false\n"))
    seat = f'{HEAD}[case.a]\nkind = "base"\nwidth = 24\nheight = 18\n{front}lid = "hinged"\n'
    assert any("under its lid" in problem.what for problem in problems(seat))


@pytest.mark.parametrize("width", [("12", "300"), ("36", "900"), ("48", "1200")])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_an_inset_false_front_lies_before_its_rail(unit: Unit, width: tuple[str, str]) -> None:
    """Fronts, the gap above and below each, the rail between and the bottom fill a sink base.

    By the sums of an inset front (`INSET_FF`: opening less two gaps) and of a sink base (no top);
    transcribed. The rail on edge stands back by the front and its bumpers, and no other board
    reaches farther in, where the bowl hangs (common practice).
    """
    inch = unit == "in"
    case = _built(
        unit, "inset", "false front 7" if inch else "false front 180", "doors", sink=True,
        back="open", row_rails=True, width=width[0 if inch else 1],
    )  # fmt: skip
    of = length
    thick = case.part("base.side_left").finished.thickness.value
    toe, gap, bumper = (
        of(each, unit) for each in (("4", "3/32", "1/16") if inch else ("100", "2.5", "1.5"))
    )
    false = next(f for f in case.fronts if f.opening == "false_front")
    doors = [f for f in case.fronts if f.opening == "main"]
    rail, between = case.part("base.front_rail"), case.part("base.row_board.1")
    assert false.height.value == of("7" if inch else "180", unit)
    assert {f.height.value + false.height.value + 4 * gap + 2 * thick + toe for f in doors} == {
        case.height.value
    }
    assert {f.z.value + f.thickness.value for f in case.fronts} == {case.depth.value}
    assert rail.placed.z.value + thick == false.z.value - bumper
    assert between.finished.width.value <= case.depth.value - rail.placed.z.value
    assert verify(case, hardware=hardware(unit)).holds

"""`sheets` sorts sheets of several thicknesses by case, and writes that into the job file."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.record_shop import Shop

from casewright.casework.verification import verify
from casewright.job.load import load_job, read_job
from casewright.job.sheet_sorting import sorted_sheets
from casewright.room.build import build
from casewright.stock import Sheet

JOB = """\
format = 1
unit = "in"

[stock.plywood]
sheets = { a = "0.720", b = 0.7215, c = "0.703" } # chalked

[case.left]
kind = "base"
width = 24

[case.middle]
kind = "base"
width = 24

[case.right]
kind = "base"
width = 24
"""


@pytest.fixture
def shop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shop:
    job = tmp_path / "bases.toml"
    job.write_text(JOB, "utf-8")
    return Shop(job, capsys)


def test_each_case_is_cut_out_of_sheets_that_are_alike(shop: Shop) -> None:
    """Once it is accepted every box has one thickness, and nothing is left to sort."""
    [told] = shop.data("sheets")["stocks"]
    assert told["suffice"]
    assert [group["sheets"] for group in told["groups"]] == [["c"], ["a", "b"]]
    assert sorted(case for group in told["groups"] for case in group["cases"]) == [
        "left", "middle", "right",
    ]  # fmt: skip
    assert all(group["takes"] <= len(group["sheets"]) for group in told["groups"])
    text = shop.job.read_text("utf-8")
    [sorting] = sorted_sheets(text, shop.job.name, {})
    shop.job.write_text(sorting.text, "utf-8")
    assert "# chalked" in sorting.text
    room = build(load_job(shop.job).spec)
    for case in room.boxes:
        boards = [part for part in case.parts if part.stock.startswith("plywood")]
        assert len({part.finished.thickness.value for part in boards}) == 1
    assert {case.spec.box_stock for case in room.boxes} == {"plywood", "plywood_2"}
    assert not shop.data("sheets")["stocks"]


def test_sheets_that_do_not_suffice_are_told(shop: Shop) -> None:
    """Two single sheets for three bases: each case out of one group does not go."""
    shop.job.write_text(JOB.replace(", b = 0.7215", ""), "utf-8")
    [told] = shop.data("sheets")["stocks"]
    assert not told["suffice"]


def test_sheets_read_twice_over_are_refused(shop: Shop) -> None:
    shop.job.write_text(JOB.replace("sheets =", 'measured = "0.72"\nsheets ='), "utf-8")
    _, says = shop.says("note", "x")
    assert "one by one and all together" in says


_MIXED = """\
format = 1
unit = "in"

[stock.plywood]
sheets = {{ a = "{0}", b = "{1}", c = "{2}", d = "{3}" }}

[case.base]
kind = "base"
width = 24

[case.upper]
kind = "wall"
width = 24
joint = "dado"

[case.books]
kind = "bookcase"
width = 24
height = 48
depth = 11
shelves = 2
"""
_THICK = st.integers(690, 735).map(lambda each: f"{each / 1000:.3f}")


@settings(max_examples=4, deadline=None)
@given(st.lists(_THICK, min_size=4, max_size=4))
def test_every_joint_follows_the_sheet_its_case_is_cut_out_of(read: list[str]) -> None:
    """Whatever the sheets measure: each box is of one thickness, and is proved to go together."""
    text = _MIXED.format(*read)
    for sorting in sorted_sheets(text, "mixed.toml", {}):
        text = sorting.text or text
    room = build(read_job(text, "mixed.toml"))
    spread = room.spec.style["sheet_spread"].value
    for case in room.boxes:
        goods = room.spec.stock[case.spec.box_stock]
        sheets = [each for _, each in goods.by_sheet] if isinstance(goods, Sheet) else []
        thick = {p.finished.thickness.value for p in case.parts if p.stock == goods.key}
        assert thick == {sum(sheets) / len(sheets)}
        assert max(sheets) - min(sheets) <= spread
        assert verify(case, hardware=room.spec.hardware).failures == ()

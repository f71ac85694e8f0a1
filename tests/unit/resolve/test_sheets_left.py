"""Whether a spoiled piece takes another sheet: beside plans that are proved to need so many."""

from __future__ import annotations

from dataclasses import replace

from tests.jobs import read

from casewright.resolve.sheets_left import more_sheets
from casewright.room.build import build

_HEAD = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[stock.thin_plywood]
measured = "0.200"
"""
_BASES = _HEAD + "".join(
    f'[case.{key}]\nkind = "base"\nwidth = "24"\n' for key in ("left", "middle", "right")
)
_ROOM = build(read(_BASES))


def test_a_large_piece_takes_a_sheet_that_a_small_one_does_not() -> None:
    """The other 23 pieces are proved to need two sheets, all 24 to need three."""
    parts = {part.path: part for part in _ROOM.parts}
    assert more_sheets(_ROOM, "plywood", [parts["left.shelf.1"]]) == 1
    assert more_sheets(_ROOM, "thin_plywood", [parts["left.back"]]) == 0


def test_where_all_else_is_cut_a_sheet_is_needed() -> None:
    cases = tuple(
        replace(case, parts=tuple(replace(part, state="cut") for part in case.parts))
        for case in _ROOM.cases
    )
    lost = next(part for part in _ROOM.parts if part.path == "left.shelf.1")
    assert more_sheets(replace(_ROOM, cases=cases), "plywood", [lost]) == 1

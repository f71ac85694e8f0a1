"""The cut list of a job that is under way."""

from __future__ import annotations

from tests.jobs import FIVE_LINES, read
from tests.record_entries import entry

from casewright.breakdown import break_down
from casewright.job.recorded import marked
from casewright.outputs.blocks import Table
from casewright.packet.cut_list import cut_list_section
from casewright.record import marks_of, standing
from casewright.room.build import build

_FROM = -2
"""Which column tells where a piece comes out of."""


def test_what_is_cut_says_so_and_lies_on_no_sheet() -> None:
    """Alike pieces stand on one line: while one of them is to be cut it leads to its sheet."""
    text = FIVE_LINES + '[stock.plywood]\nmeasured = "0.720"\n'
    paths = ("upper.side_left", "upper.side_right", "upper.shelf.1")
    marks = marks_of(standing(entry(n, "cut", path) for n, path in enumerate(paths, 1)))
    room = marked(build(read(text)), marks)
    section = cut_list_section(room, break_down(room))
    rows = [row for block in section.blocks if isinstance(block, Table) for row in block.rows]
    told = {str(row.cells[2]).partition(";")[0]: row.cells[_FROM] for row in rows}
    assert told["side"] == ("cut",)
    assert told["shelf"] != ("cut",)

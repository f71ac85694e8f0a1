"""Holes whose data sheet nobody has typed: the part may be cut, its card says what waits."""

from __future__ import annotations

import pytest
from tests.jobs import read

from casewright.jigs import jigs
from casewright.outputs.blocks import Heading, Keep, Paragraph
from casewright.outputs.document import LETTER
from casewright.outputs.inlines import rich_text
from casewright.packet.card_words import card_facts, open_holes
from casewright.packet.feature_rows import feature_rows
from casewright.packet.jig_pages import jig_section
from casewright.packet.part_groups import group_parts
from casewright.room.build import build
from casewright.room.model import Room

_STOCK = "".join(
    f'[stock.{key}]\nmeasured = "{thick}"\n'
    for key, thick in (("plywood", "0.709"), ("thin_plywood", "0.207"),
                       ("drawer_plywood", "0.472"), ("fibreboard", "0.748"))
)  # fmt: skip
_SHEETS = {
    "hardware.hinge": '[hardware.hinge]\nconstant = "13 mm"\nbore_distance = ["3 mm", "6 mm"]\n'
    'plate_heights = ["0 mm", "2 mm"]\n',
    "hardware.pull": '[hardware.pull]\ncentres = "96 mm"\n',
    "hardware.slide": '[hardware.slide]\nair = "1/2"\nlengths = [18, 20]\nline = "32 mm"\n'
    'holes = ["35 mm", "163 mm"]\n',
}
_CASES = (
    'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 24\nrows = ["drawer 6", "doors"]\n'
)


def _without(path: str) -> Room:
    """A base whose stock is measured and whose hardware is known, but for one sheet."""
    sheets = "".join(text for key, text in _SHEETS.items() if key != path)
    return build(read(_CASES + _STOCK + sheets))


@pytest.mark.parametrize(
    ("path", "part", "holes"),
    [
        ("hardware.hinge", "a.side_left", {"hinge plate"}),
        ("hardware.hinge", "a.door_left.slab", {"hinge cup"}),
        ("hardware.pull", "a.door_left.slab", {"pull"}),
        ("hardware.slide", "a.side_left", {"slide"}),
    ],
)
def test_the_card_says_which_holes_wait(path: str, part: str, holes: set[str]) -> None:
    """It is cut, not bored; the rows of those holes alone have the sign."""
    room = _without(path)
    [asked] = [question for question in room.questions if question.path == path]
    assert part in asked.waiting
    piece = next(each for each in room.parts if each.path == part)
    assert piece.waits_for == ()
    assert set(open_holes(piece, room)) == holes
    group = next(g for g in group_parts(room.parts) if piece in g.pieces)
    assert "bore nothing for" in rich_text(card_facts(group, room))
    rows = list(feature_rows(piece, "in", open_holes(piece, room)))
    told = [rich_text(row.cells[3]).count("waits") for row in rows]
    assert sum(told) == len([row for row in rows if rich_text(row.cells[3]).startswith(" waits")])
    assert 0 < sum(told) < len(rows)


def test_what_is_cut_to_a_sheet_is_not_cut() -> None:
    """The boxes of drawers are as long and as wide as their slides let them be."""
    room = _without("hardware.slide")
    boxes = [part for part in room.parts if part.role.startswith(("drawer side", "drawer back"))]
    assert boxes
    assert all("hardware.slide" in part.waits_for for part in boxes)


def test_with_all_sheets_nothing_waits() -> None:
    """The same base asks nothing."""
    room = _without("")
    assert not any(question.path.startswith("hardware") for question in room.questions)
    assert not any(open_holes(part, room) for part in room.parts)


def test_a_template_for_holes_that_wait_is_not_made_yet() -> None:
    """Of plates while the hinge's sheet is missing; that of pulls may be made."""
    room = _without("hardware.hinge")
    section = jig_section(room, jigs(room, room.chain), LETTER)
    assert section is not None
    told = {
        block.blocks[0].text.partition(",")[0]: rich_text(block.blocks[1].text)
        for block in section.blocks
        if isinstance(block, Keep)
        and isinstance(block.blocks[0], Heading)
        and isinstance(block.blocks[1], Paragraph)
    }
    assert "Do not make it yet" in told["Plate template"]
    assert "Do not make it yet" not in told["Pull template"]


def test_a_stick_for_slides_that_wait_is_not_made_yet() -> None:
    """Where their screws go follows from the sheet that nobody has typed."""
    sheets = _SHEETS["hardware.hinge"] + _SHEETS["hardware.pull"]
    text = _CASES.replace('rows = ["drawer 6", "doors"]', "drawers = 3") + _STOCK
    for more, waits in ((sheets, True), (sheets + _SHEETS["hardware.slide"], False)):
        room = build(read(text + more))
        section = jig_section(room, jigs(room, room.chain), LETTER)
        assert section is not None
        [how] = [rich_text(block.blocks[1].text) for block in section.blocks
                 if isinstance(block, Keep) and isinstance(block.blocks[0], Heading)
                 and isinstance(block.blocks[1], Paragraph)
                 and block.blocks[0].text.startswith("Slide stick")]  # fmt: skip
        assert ("Do not make it yet" in how) == waits

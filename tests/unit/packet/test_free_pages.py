"""What stands free on paper: marks to tape it out by, and the sheet it is set by."""

from __future__ import annotations

from tests.island_room import island_room

from casewright.dims import Measure
from casewright.drawing.dimension import Aligned
from casewright.drawing.room_plan import plan_scene
from casewright.outputs.blocks import Block, Callout, Heading, Keep, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import Strong
from casewright.packet.free_pages import free_sections, free_tape
from casewright.room.aisles import aisles
from casewright.sources import INCH

_FLOOR = '\nfloor = ["40", "40 1/8", "40 1/4", "40"]'
_PLACE = 'run = "sinks"\noff = 42\nalong = 40'


def _flat(blocks: tuple[Block, ...]) -> list[Block]:
    return [each for block in blocks
            for each in (_flat(block.blocks) if isinstance(block, Keep) else [block])]  # fmt: skip


def _sheet(place: str) -> tuple[Section, list[Block]]:
    [section] = free_sections(island_room(place=place))
    return section, _flat(section.blocks)


def _numbers(table: Table) -> list[list[Measure]]:
    """Lengths of each row."""
    rows = []
    for row in table.rows:
        bare = [cell.content if isinstance(cell, Strong) else cell for cell in row.cells]
        rows.append([cell for cell in bare if isinstance(cell, Measure)])
    return rows


def test_the_corners_lie_as_the_room_has_them_from_two_walls() -> None:
    """Along the west wall, out from it, and out from the north wall 144 along it (by hand)."""
    room = island_room(place=_PLACE)
    _, blocks = _sheet(_PLACE)
    corners = next(block for block in blocks if isinstance(block, Table))
    [stand] = room.free
    for along, out, north in _numbers(corners):
        assert along.value in (stand.left.value, stand.right.value)
        assert out.value in (stand.near.value, stand.far.value)
        assert abs(north.value - (144 * INCH - along.value)) <= INCH / 16


def test_shims_are_printed_or_asked_for() -> None:
    """Four readings give four shims, the highest corner none; without them there are blanks."""
    _, read = _sheet(_PLACE + _FLOOR)
    tables = [block for block in read if isinstance(block, Table)]
    shims = [row[1].value / INCH for row in _numbers(tables[-1])]
    assert [float(each) for each in shims] == [0, 0.125, 0.25, 0]
    assert not any(isinstance(block, Callout) for block in read)
    _, blank = _sheet(_PLACE)
    assert any(isinstance(block, Callout) and block.sign == "ask" for block in blank)


def test_it_is_taped_out_by_its_counter() -> None:
    """The edges that people walk into, not those of the boxes."""
    room = island_room(place=_PLACE)
    blocks = _flat(tuple(free_tape(room)))
    assert isinstance(blocks[0], Heading)
    [stand] = room.free
    corners = next(block for block in blocks if isinstance(block, Table))
    edges = {each.value for each in stand.counter}
    assert {number.value for row in _numbers(corners) for number in row} == edges


def test_the_plan_has_every_aisle_with_its_number() -> None:
    """As long as it is drawn, in a crooked room too."""
    corner = 'triangle = { left = 48, right = 36, across = "60 3/8" }'
    room = island_room(place=_PLACE, corner=corner)
    drawn = [each for each in plan_scene(room, "in").elements if isinstance(each, Aligned)]
    assert [each.measure.value for each in drawn] == [each.clear for each in aisles(room)]

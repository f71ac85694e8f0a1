"""Every drawing of every example's packet can be read: nothing lies over anything."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

import pytest
from tests.unit.packet.test_packet import EXAMPLES, packet

from casewright.drawing import Plot, Word, clashes, struck


def plots(thing: object) -> Iterator[Plot]:
    """All drawings inside a part of a document, in order."""
    if isinstance(thing, Plot):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from plots(each)
    elif is_dataclass(thing):
        for field in fields(thing):
            yield from plots(getattr(thing, field.name))


@pytest.mark.parametrize("name", EXAMPLES)
def test_words_rings_signs_and_holes_lie_apart(name: str) -> None:
    """Cards of parts and cases, elevations, sheets and boards, the overview and the key."""
    found = list(plots(packet(name)))
    assert found
    for drawn in found:
        assert not clashes(drawn.groups), drawn.title


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_line_runs_through_a_word(name: str) -> None:
    """A number with a line through it is misread."""
    for drawn in plots(packet(name)):
        assert not struck(drawn.groups), drawn.title


def test_strips_on_a_sheet_stand_with_their_size() -> None:
    """Who looks for a nailer on the sheet need not leaf to the table: 746 x 90, by hand."""
    (section,) = [s for s in packet("paint_store_metric").sections if "birch" in s.title]
    words = [
        [mark.text for mark in group.marks if isinstance(mark, Word)]
        for drawn in plots(section)
        for group in drawn.groups
    ]
    said = ["".join(each) for each in words if each]
    assert said.count("746 × 90") == 4
    assert said.count("864.5 × 100") == 2

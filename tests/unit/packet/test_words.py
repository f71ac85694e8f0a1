"""What the packet says, in the words of the shop."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.packet.test_packet import EXAMPLES, packet, planned

from casewright.breakdown import CAUTION_WORDS, saw_cards
from casewright.outputs.blocks import Block, Callout, Labels, Table
from casewright.outputs.inlines import Link, rich_text
from casewright.packet.alike import piece_groups, shared_title
from casewright.packet.cut_words import time_words
from casewright.packet.places import place_words, plain_words
from casewright.packet.saw_rows import saw_rows
from casewright.packet.words import sizes, unfold

WORDS = st.lists(
    st.sampled_from(["left", "right", "of", "the", "door", "rail", "stile", "1"]), min_size=1
)

DANGERS = {
    CAUTION_WORDS[key] for key in ("heavy", "narrow rip", "short piece", "beyond straightedge")
}


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_cover_names_places_and_not_paths(name: str) -> None:
    """No underscore, no dotted path: a woodworker reads the titles of cases and parts."""
    room = planned(name).worked.room
    keys = {case.key for case in room.cases if "_" in case.key}
    for block in packet(name).sections[0].blocks:
        if not isinstance(block, Callout) or block.sign == "ask":
            continue
        said = f"{block.title} {rich_text(block.text)}"
        assert not any(path in said for path in room.chain.nodes if "." in path), said
        assert not any(key in said for key in keys), said


def test_a_path_becomes_the_nearest_thing_with_a_name() -> None:
    """Parts with their case, doors, runs, stock; what has no name keeps its last word."""
    room = planned("garden_room").worked.room
    assert place_words(room, "catalogues.nosing.bottom") == "nosing of the bottom, catalogues"
    assert place_words(room, "seed_tins.side_left.rabbet.depth") == "left side, seed tins"
    assert place_words(room, "run.window_base.length") == "window wall, below"
    assert place_words(room, "stock.plywood.thickness") == room.spec.stock["plywood"].title
    assert place_words(room, "nowhere.at_all") == "at all"


def test_sentences_lose_their_keys_and_keep_the_rest() -> None:
    """A key of a case after a preposition, a path anywhere; ordinary words stay."""
    room = planned("garden_room").worked.room
    said = plain_words(
        room, "the left side of seed_tins is 48 tall; kettle.side_left too, of pots"
    )
    assert said == (
        "the left side of seed tins is 48 tall; left side, kettle and cups too, of pot store"
    )
    assert plain_words(room, "leave 1.5 to spare; a push block carries it.") == (
        "leave 1.5 to spare; a push block carries it."
    )


@given(st.lists(WORDS, min_size=1, max_size=5))
def test_a_shared_title_is_made_of_words_of_every_title(titles: list[list[str]]) -> None:
    """Or, where nothing is shared, of all of them side by side."""
    joined = [" ".join(title) for title in titles]
    shared = shared_title(joined)
    own = shared.split()
    if ", " not in shared:
        for title in titles:
            rest = iter(title)
            assert all(word in rest for word in own)
    else:
        assert shared == ", ".join(dict.fromkeys(joined))
    assert shared_title([joined[0]] * 3) in (shared_title([joined[0]]), joined[0])


@pytest.mark.parametrize(
    ("titles", "shared"),
    [
        (["left side", "right side"], "side"),
        (
            ["left stile of the left door", "right stile of the left door"],
            "stile of the left door",
        ),
        (["nosing of the bottom", "nosing of the top"], "nosing"),
        (["bottom", "divider"], "bottom, divider"),
    ],
)
def test_shared_titles_read_well(titles: list[str], shared: str) -> None:
    """Examples of the trade's words."""
    assert shared_title(titles) == shared


@given(st.integers(1, 6000))
def test_times_are_rounded_and_never_nothing(minutes: int) -> None:
    """To five minutes, in hours and minutes."""
    words = time_words(minutes).split()
    units = {"h": 60, "min": 1}
    total = sum(int(n) * units[u] for n, u in zip(words[::2], words[1::2], strict=True))
    assert total > 0
    assert abs(total - minutes) <= max(2.5, 5 - minutes)


def _tables(blocks: tuple[Block, ...]) -> list[Table]:
    return [block for block in blocks if isinstance(block, Table)]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_cut_list_counts_every_piece_once(name: str) -> None:
    """Counts sum to the parts; every part's mark stands there once, with the size it is cut to."""
    room = planned(name).worked.room
    section = next(s for s in packet(name).sections if s.anchor == "cut-list")
    rows = [row for table in _tables(section.blocks) for row in table.rows]
    assert sum(int(rich_text(row.cells[0])) for row in rows) == len(room.parts)
    listed: dict[str, str] = {}
    for row in rows:
        marks = row.cells[3]
        for item in marks if isinstance(marks, tuple) else (marks,):
            if isinstance(item, Link):
                assert item.anchor == f"cut:{item.target}"
                assert item.target not in listed
                listed[item.target] = rich_text(row.cells[1])
    assert set(listed) == {part.path for part in room.parts}
    first = room.parts[0]
    alike = [path for path, size in listed.items() if size == listed[first.path]]
    for path in alike:
        part = next(part for part in room.parts if part.path == path)
        assert part.blank.length.value == first.blank.length.value
        assert part.blank.width.value == first.blank.width.value


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_saw_gives_what_the_cut_list_and_the_label_say(name: str) -> None:
    """One size to cut to, wherever it stands: a strip is a little longer than in the model."""
    made = planned(name)
    unit = made.worked.room.spec.unit
    sections = {section.anchor: section for section in packet(name).sections}
    listed = {
        item.target: rich_text(row.cells[1])
        for table in _tables(sections["cut-list"].blocks)
        for row in table.rows
        for item in unfold(row.cells[3])
        if isinstance(item, Link)
    }
    (sheets,) = sections["labels"].blocks
    assert isinstance(sheets, Labels)
    stuck = {label.target: rich_text(label.lines[1]) for label in sheets.labels}
    sawn = [
        gives.piece
        for plan in made.breakdown.plans
        for card in saw_cards(plan)
        for step in card.steps
        for gives in step.gives
        if gives.piece is not None and gives.piece.kind == "part"
    ]
    assert sawn
    for piece in sawn:
        size = rich_text(sizes(piece.long, piece.wide, unit=unit))
        assert listed[piece.id] == size
        assert stuck[piece.id] == f"cut {size}"


@pytest.mark.parametrize("name", EXAMPLES)
def test_pieces_in_one_group_are_cut_alike(name: str) -> None:
    """Each part is in one group, and a group has one size."""
    parts = planned(name).worked.room.parts
    groups = piece_groups(parts)
    assert sorted(p.path for group in groups for p in group) == sorted(p.path for p in parts)
    for group in groups:
        assert len({(p.stock, p.blank.length.value, p.blank.width.value) for p in group}) == 1


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_cut_has_a_row_in_order_and_every_danger_is_told(name: str) -> None:
    """The first time in full; from the next on with the number of the cut that tells it."""
    made = planned(name)
    unit = made.worked.room.spec.unit
    for plan in made.breakdown.plans:
        cards = tuple(saw_cards(plan))
        rows = [row for row in saw_rows(cards, "sheet", unit) if len(row.cells) > 1]
        steps = [step for card in cards for step in card.steps]
        assert [rich_text(row.cells[0]) for row in rows] == [str(s.number) for s in steps]
        told = [rich_text(row.cells[3]) for row in rows]
        for words, step in zip(told, steps, strict=True):
            earlier = [int(number) for number in re.findall(r"as\sat\scut\s(\d+)", words)]
            assert all(number < step.number for number in earlier)
            in_full = [words, *(told[number - 1] for number in earlier)]
            for caution in set(step.cautions) & DANGERS:
                assert any(caution in each for each in in_full), (step.number, caution)


def test_what_waits_stands_so_on_the_cut_list() -> None:
    """Parts that hang on an open question are marked, all others lead to their sheet."""
    made = planned("garden_room")
    waits = {part.path: bool(part.waits_for) for part in made.worked.room.parts}
    assert any(waits.values())
    section = next(s for s in packet("garden_room").sections if s.anchor == "cut-list")
    for table in _tables(section.blocks):
        for row in table.rows:
            paths = [item.target for item in unfold(row.cells[3]) if isinstance(item, Link)]
            assert {waits[path] for path in paths} == {"waits" in rich_text(row.cells[-2])}

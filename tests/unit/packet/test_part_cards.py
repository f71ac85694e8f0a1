"""Cards of parts: each piece has its place, each drawing finds room, nothing is left to guess."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import case_spec, job
from tests.jobs import EXAMPLE_NAMES, example, read
from tests.pieces import board, bores, cut
from tests.unit.packet.test_drawings import plots

from casewright.casework.features import Cut, Feature, Plane
from casewright.casework.parts import Part
from casewright.dims import Dim, Unit, measure_of
from casewright.drawing import SCALES, Plot, Word, clashes, struck
from casewright.outputs.blocks import Heading, Keep, Table
from casewright.outputs.document import A4, LETTER, Document, Paper, Section, anchors
from casewright.outputs.inlines import rich_text
from casewright.outputs.typst_data import document_json
from casewright.packet.card_pages import Card, filled
from casewright.packet.card_words import card_facts, card_heading
from casewright.packet.feature_rows import feature_rows
from casewright.packet.part_cards import part_section
from casewright.packet.part_figures import GroupFigures, small_figure
from casewright.packet.part_groups import PartGroup, group_parts
from casewright.room.build import build
from casewright.room.model import Room

UNITS: tuple[Unit, ...] = get_args(Unit)
PAPERS = (A4, LETTER)
PLANES_L: tuple[Plane, ...] = ("l0", "l1")
PLANES_W: tuple[Plane, ...] = ("w0", "w1")


@cache
def example_room(name: str) -> Room:
    return build(read(example(name)))


@cache
def example_cards(name: str) -> Section:
    return part_section(example_room(name), LETTER)


@cache
def many_alike(cases: int) -> Room:
    """A room of equal cases: all their sides share one card."""
    return build(job(*(case_spec(key=f"case_{n}", title=f"case {n}") for n in range(cases))))


def printable(section: Section, paper: Paper) -> str:
    """The section as data for the typesetter, which refuses what does not fit the paper."""
    return document_json(Document("Shop packet", "job", "", "in", paper, (section,)))


@st.composite
def features(draw: st.DrawFn, length: int, width: int) -> Feature:
    """A cut or a row of holes anywhere on a board of such a size."""
    number = draw(st.integers(0, 10**6))
    face = draw(st.sampled_from(("A", "B")))
    if draw(st.booleans()):
        runs = draw(st.sampled_from(("l", "w")))
        datum = draw(st.sampled_from(PLANES_W if runs == "l" else PLANES_L))
        at = draw(st.integers(0, (width if runs == "l" else length) - 2))
        wide = draw(st.integers(1, (width if runs == "l" else length) - at - 1))
        return cut(path=f"p.{number}", face=face, runs=runs, datum=datum, at=at, width=wide)
    count = draw(st.integers(1, 6))
    kind = draw(st.sampled_from(("shelf pins", "hinge cup", "hinge plate", "pull", "pocket")))
    places = [
        (draw(st.integers(0, length)), draw(st.integers(0, width))) for _ in range(count)
    ]  # fmt: skip
    return bores(
        *sorted(places), path=f"p.{number}", face=face, kind=kind,
        datum_l=draw(st.sampled_from(PLANES_L)), datum_w=draw(st.sampled_from(PLANES_W)),
        toward=draw(st.sampled_from(PLANES_L)) if kind == "pocket" else None,
        diameter=draw(st.integers(1, 40)),
    )  # fmt: skip


@st.composite
def worked(draw: st.DrawFn) -> Part:
    """A board from 3 mm to 5 m with work on it: more than any shop would ask of a drawing."""
    length, width = draw(st.integers(3, 5000)), draw(st.integers(3, 2500))
    found = draw(st.lists(features(length, width), min_size=1, max_size=5))
    apart = tuple(replace(each, path=f"p.{n}") for n, each in enumerate(found))
    hand = draw(st.sampled_from((None, "left", "right")))
    return board(length, width, 18, *apart, hand=hand)


@settings(max_examples=12, deadline=None)
@given(worked(), st.sampled_from(UNITS), st.integers(1, 60), st.booleans())
def test_a_drawing_always_finds_room(part: Part, unit: Unit, many: int, paired: bool) -> None:
    """Whatever the part, its drawing is no larger than the page."""
    other = replace(part, hand="left" if part.hand == "right" else "right")
    pieces = tuple(replace(part, mark=f"{n}") for n in range(1, many + 1))
    group = PartGroup(pieces, (other,) if paired and part.hand else ())
    paper = A4 if unit == "mm" else LETTER
    wide, tall = paper.text_width_mm, paper.text_height_mm
    drawn = GroupFigures(group, unit).on_page(wide, tall)
    assert drawn.groups
    assert drawn.area.width <= wide + 1e-3
    assert drawn.area.height <= tall + 1e-3


@settings(max_examples=12, deadline=None)
@given(worked(), st.sampled_from(UNITS))
def test_a_small_drawing_always_finds_room(part: Part, unit: Unit) -> None:
    """Beside another card, too."""
    drawn = small_figure(part, 88.0, unit)
    assert drawn.groups
    assert drawn.area.width <= 88.0


@settings(max_examples=12, deadline=None)
@given(worked(), st.sampled_from(UNITS), st.integers(40, 250))
def test_a_drawing_on_a_shared_page_is_clear_or_not_there(
    part: Part, unit: Unit, tall: int
) -> None:
    """It fits the room it is given, at a standard scale, with nothing over anything."""
    drawn = GroupFigures(PartGroup((part,)), unit).within(LETTER.text_width_mm, (tall,))
    if drawn is not None:
        assert drawn.area.height <= tall
        assert drawn.scale in SCALES[unit]
        assert not clashes(drawn.groups)
        assert not struck(drawn.groups)


def test_lettering_reduced_as_by_a_copier_keeps_the_drawing_true() -> None:
    """Where only smaller lettering helps, the scale said is still the scale drawn."""
    dados = [cut(path=f"p.{n}", at=20 + 54 * n, width=6) for n in range(40)]
    part = board(2200, 300, 18, *dados)
    drawn = GroupFigures(PartGroup((part,)), "mm").on_page(186.0, 60.0)
    outline = max(
        (group.area for group in drawn.groups if group.kind == "line"), key=lambda a: a.width
    )
    assert drawn.scale is not None
    assert outline.width * float(drawn.scale) == pytest.approx(2200)


@pytest.mark.parametrize("cases", [1, 10, 40])
def test_pieces_that_are_alike_share_a_card_however_many(cases: int) -> None:
    """Two sides a case, all on one card; each has its place where links to it arrive."""
    room = many_alike(cases)
    (sides,) = [group for group in group_parts(room.parts) if group.first.role == "side"]
    assert len(sides.pieces) == 2 * cases
    section = part_section(room, LETTER)
    assert printable(section, LETTER)
    found = anchors(Document("", "", "", "in", LETTER, (section,)))
    assert sorted(a for a in found if a in {part.path for part in room.parts}) == sorted(
        part.path for part in room.parts
    )


def test_a_piece_that_is_made_stays_on_the_card_of_the_rest() -> None:
    """It waits for no answer any more; the card names those that do."""
    made, *others = next(g for g in group_parts(many_alike(2).parts) if len(g.pieces) == 4).pieces
    asked = ("stock.ply18.thickness",)
    pieces = [
        replace(made, state="machined", waits_for=()),
        *(replace(each, waits_for=asked) for each in others),
    ]
    [group] = group_parts(pieces)
    assert {each.path for each in group.pieces} == {each.path for each in pieces}
    words = rich_text(card_facts(group, many_alike(2)))
    assert f"Do not cut {', '.join(each.mark for each in others)} yet" in words
    [waiting] = group_parts(pieces[1:])
    assert "Do not cut yet" in rich_text(card_facts(waiting, many_alike(2)))


def test_many_places_are_counted_not_listed() -> None:
    """A list of forty rooms would eat the page the drawing needs; two are named."""
    few, many = many_alike(2), many_alike(40)
    words = [rich_text(card_facts(group_parts(room.parts)[0], room)) for room in (few, many)]
    assert "case 0" in words[0]
    assert "case 1" in words[0]
    assert "in 40 places" in words[1]
    assert len(card_heading(group_parts(many.parts)[0])) < 100


@pytest.mark.parametrize(
    ("unit", "width", "height"),
    [("in", "96", "30"), ("in", "9", "96"), ("mm", "240", "2400"), ("mm", "2400", "300")],
)
@pytest.mark.parametrize("joint", ["pocket screws", "dado"])
def test_cases_of_unusual_size_have_their_cards(
    unit: Unit, width: str, height: str, joint: str
) -> None:
    """Narrow and tall, wide and low: every card can be set."""
    room = build(
        job(case_spec(unit, width=width, height=height, joint=joint, shelves=0), unit=unit)
    )
    for paper in PAPERS:
        assert printable(part_section(room, paper), paper)


def _told(drawn: Plot) -> set[str]:
    return {group.tag.title for group in drawn.groups if group.kind in ("dimension", "leader")}


def _distances(feature: Feature) -> Iterator[Dim]:
    """What must be measured to place a feature, as far as no jig sets it."""
    if isinstance(feature, Cut) and feature.kind == "finger":
        yield from (each for each in (feature.start, feature.end) if each)
    elif isinstance(feature, Cut):
        yield from (each for each in (feature.at, feature.start, feature.end) if each)
    elif feature.kind in ("shelf pins", "hinge cup"):
        yield from feature.places[0]


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_feature_is_dimensioned_on_the_drawing(name: str) -> None:
    """At the bench nobody looks up a distance in the table, or works one out."""
    room = example_room(name)
    seen = 0
    for group in group_parts(room.parts):
        if not group.first.features:
            continue
        told = _told(GroupFigures(group, room.spec.unit).on_page(186.0, 240.0))
        for feature in group.first.features:
            for dim in _distances(feature):
                if dim.value:
                    assert measure_of(dim, room.spec.unit).text in told, feature.path
                    seen += 1
    assert seen


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_nothing_lies_over_anything_on_a_card(name: str) -> None:
    """Words, rings, signs and holes lie apart, and no line runs through a word."""
    found = list(plots(example_cards(name)))
    assert found
    for drawn in found:
        assert not clashes(drawn.groups), drawn.title
        assert not struck(drawn.groups), drawn.title


def test_the_same_piece_the_other_way_round_shares_the_card() -> None:
    """Its ends then go by the tape, since left and right are swapped from piece to piece."""
    dado = cut(at=30)
    one = board(400, 60, 18, dado, mark="1", path="a", ends=("left", "right", "front", "back"))
    other = replace(one, mark="2", path="b", ends=("right", "left", "front", "back"))
    (group,) = group_parts((one, other))
    assert group.first.ends == ("datum end", "far end", "front", "back")
    row = next(iter(feature_rows(group.first, "mm")))
    assert "from the datum end" in rich_text(row.cells[2])
    drawn = GroupFigures(group, "mm").on_page(186.0, 200.0)
    words = {mark.text for each in drawn.groups for mark in each.marks if isinstance(mark, Word)}
    assert {"datum end", "far end"} <= words
    assert not {"left end", "right end"} & words


def test_a_hand_is_never_merged_with_the_other() -> None:
    """Left and right share a card as a pair, and only when they mirror each other."""
    left = board(400, 60, 18, cut(at=30), mark="1", path="a", hand="left")
    right = replace(left, mark="2", path="b", hand="right")
    longer = replace(right, path="c", features=(cut(at=31),))
    pair, single = group_parts((left, right, longer))
    assert (pair.parts, pair.mirrored) == ((left,), (right,))
    assert (single.parts, single.mirrored) == ((longer,), ())


def test_rows_made_with_one_set_up_name_their_places_once() -> None:
    """'90 and 690 from ..., 22 from ...' instead of saying the edge twice."""
    cups = [
        bores((at, 22), path=f"p.{at}", kind="hinge cup", diameter=35) for at in (90, 300, 690)
    ]
    part = board(760, 400, 18, *cups)
    (row,) = feature_rows(part, "mm")
    where = rich_text(row.cells[2])
    assert where.startswith("90, 300 and 690 from the ")
    assert where.count("from the") == 2


def test_pins_with_some_left_out_are_dimensioned_on_either_side_of_the_gap() -> None:
    """Nobody counts holes on paper: the first, and the two that border what is left out."""
    places = [(at, 37) for at in (100, 132, 164, 260, 292)]
    pins = replace(bores(*places), pitch=cut(at=32).at)
    drawn = GroupFigures(PartGroup((board(760, 400, 18, pins),)), "mm").on_page(186.0, 200.0)
    assert {"100", "164", "260"} <= _told(drawn)
    assert not {"132", "292"} & _told(drawn)


def test_the_first_case_stands_under_its_name() -> None:
    """Cards are found by case."""
    first = part_section(many_alike(1), LETTER).blocks[0]
    assert isinstance(first, Heading)
    assert first.text == "case 0"


def _card(part: Part, unit: Unit, besides: float, tall: float) -> Card:
    figures = GroupFigures(PartGroup((part,)), unit)
    drawn = figures.within(LETTER.text_width_mm, (tall,))
    assert drawn is not None
    return Card(figures, (), drawn, (), besides, table_kept=True)


@settings(max_examples=12, deadline=None)
@given(st.lists(st.tuples(st.integers(40, 90), st.integers(60, 110)), min_size=1, max_size=5))
def test_what_a_page_spares_goes_to_its_drawings(rooms: list[tuple[int, int]]) -> None:
    """No card is lost, no page gets more than it holds, and drawings shrink only to save a page.

    Headings that begin a page have no room above them: 7 mm of what they were reckoned with.
    """
    page, top = 240.0, 7.0
    part = board(762, 300, 18, cut(path="p.1", at=200))
    cards = [_card(part, "mm", float(besides), float(tall)) for besides, tall in rooms]
    found = filled(cards, page, LETTER.text_width_mm)
    assert [card.besides for card in found] == [card.besides for card in cards]
    shrunk = any(
        (after.drawn.scale or 0) > (before.drawn.scale or 0)
        for before, after in zip(cards, found, strict=True)
    )
    assert _page_count(found, page + top) <= _page_count(cards, page + 4.0) - shrunk


def _page_count(cards: list[Card], page: float) -> int:
    """Pages that cards in this order need."""
    count, height = 1, 0.0
    for card in cards:
        if height and height + card.height > page:
            count, height = count + 1, 0.0
        height += card.height
    return count


def test_two_cards_share_a_page_when_smaller_drawings_let_them() -> None:
    """One page with both on it is handier than two half empty ones; the order stays."""
    part = board(762, 300, 18, cut(path="p.1", at=200))
    cards = [_card(part, "mm", 45.0, 110.0), _card(part, "mm", 55.0, 100.0)]
    page = 215.0
    assert _page_count(cards, page) == 2
    found = filled(cards, page, LETTER.text_width_mm)
    assert [card.besides for card in found] == [45.0, 55.0]
    assert _page_count(found, page + 7.0) == 1


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_a_card_is_on_one_page_with_its_table_where_it_can_be(name: str) -> None:
    """Letters on a drawing are looked up under it, not overleaf: all but the tallest cards.

    These are two, or one card in twenty.
    """
    blocks = example_cards(name).blocks
    apart = [
        block for block in blocks if isinstance(block, Table) and block.columns[0].title == ""
    ]
    assert len(apart) <= max(2, sum(isinstance(block, Keep) for block in blocks) // 20)

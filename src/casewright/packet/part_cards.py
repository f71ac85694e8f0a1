"""Cards of parts: every cut and hole from its datum, with the set-up that makes it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import chain, groupby

from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Bores
from casewright.casework.parts import Part
from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.outputs.blocks import (
    Beside,
    Block,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, Rich, SignMark, Strong, rich_text
from casewright.packet.card_pages import Card, filled
from casewright.packet.card_words import card_facts, card_heading, open_holes, pieces_words
from casewright.packet.feature_rows import FEATURES, feature_rows
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.part_figures import GroupFigures, small_figure
from casewright.packet.part_groups import PartGroup, group_parts
from casewright.packet.part_heights import paragraph_height, table_height
from casewright.packet.words import (
    edge_words,
    feature_name,
    place_titles,
    setup_lines,
    sizes,
    unfold,
)
from casewright.room.model import Room

__all__ = ["part_section"]

_BETWEEN = 6.0  # two small cards beside each other [mm]
_TITLE, _CASE, _CARD = 17.0, 13.0, 9.0  # headings, with the room round them [mm]
_ROUND = 5.5  # more room round a figure than round words [mm]
_SPARE = 3.0  # of a page [mm]
_SMALL = 75.0  # height of a drawing whose card shares its page [mm]
_SHARES_OF_A_PAGE = (0.42, 0.58, 1.0)  # so that cards fill pages together
_PLAIN = (
    Column("Make", "centre"), Column("Part", share=1.3), Column("Marks", share=3.0),
    Column("Finished", "left", share=2.0), Column("Edges", share=1.5),
)  # fmt: skip


def part_section(room: Room, paper: Paper, holds: HoldMarks | None = None) -> Section:
    """Cards of worked parts by case, then parts with pockets only, then plain ones.

    Parameters
    ----------
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    holds = holds or HoldMarks(room)
    groups = group_parts(room.parts)
    plain = [group for group in groups if not group.first.features]
    pockets = [group for group in groups if _has_pockets_only(group)]
    worked = [group for group in groups if group not in plain and group not in pockets]
    blocks = list(_worked_cards(worked, room, paper, holds))
    if pockets:
        blocks.append(Heading("Pockets only", 2, "parts with pockets"))
        blocks.extend(_pocket_cards(pockets, room, paper.text_width_mm, holds))
    if plain:
        blocks.append(Heading("Nothing to machine", 2, "plain parts"))
        blocks.append(Table(_PLAIN, tuple(_plain_rows(plain, room, holds)), small=True))
    return Section("Part cards", tuple(blocks), "part-cards")


def _worked_cards(
    groups: Sequence[PartGroup], room: Room, paper: Paper, holds: HoldMarks
) -> Iterator[Block]:
    """Cards under the names of their cases, drawn as large as their pages let them be."""
    cards: list[Card] = []
    before: dict[int, list[Block]] = {}
    taken = _TITLE
    for key, title in place_titles(room).items():
        own = [group for group in groups if group.first.case == key]
        place = before.setdefault(len(cards), [])
        if own:
            place.append(Heading(title, 2, f"parts:{key}"))
            facts = [card_facts(group, room, key, holds) for group in own]
            sets = zip(own, facts, strict=True)
            made = sorted(
                (_card(*each, room, paper, taken + _CASE) for each in sets), key=_is_small
            )
            cards.append(replace(made[0], besides=made[0].besides + taken + _CASE))
            cards += made[1:]
            taken = 0.0
        elif any(part.case == key for part in room.parts):
            words = f"{title}: on shared cards, among the pockets or the plain parts."
            place.append(Paragraph(words, True, f"parts:{key}"))
    wide, page = paper.text_width_mm, paper.text_height_mm - _SPARE
    cards = filled(cards, page, wide)
    for number, card in enumerate(cards):
        yield from before.get(number, ())
        yield from card.blocks()
    yield from before.get(len(cards), ())


def _has_pockets_only(group: PartGroup) -> bool:
    features = group.first.features
    faces = {feature.face for feature in features}
    return len(faces) == 1 and not group.mirrored and all(f.kind == "pocket" for f in features)


def _is_small(card: Card) -> bool:
    """Small cards come last, so that they stand together."""
    return card.kept and card.drawn.area.height < _SMALL


def _card(group: PartGroup, facts: Rich, room: Room, paper: Paper, taken: float) -> Card:
    """Heading, facts, drawing and table on a part of a page where they fit, or on a page.

    Else the table runs on to the next page; else the drawing has a page of its own, too.

    Parameters
    ----------
    facts
        What stands under its heading.
    taken
        Height of what stands above it on its page at least [mm].
    """
    unit, wide = room.spec.unit, paper.text_width_mm
    rows = tuple(feature_rows(group.first, unit, open_holes(group.first, room)))
    cautions = _cautions(group.first)
    tail: list[Block] = [Paragraph(cautions)] if cautions else []
    tail.append(Table(FEATURES, rows, small=True))
    page = paper.text_height_mm - _SPARE
    above = _CARD + _ROUND + paragraph_height(facts, wide)
    below = table_height(FEATURES, rows, wide) + paragraph_height(cautions, wide)
    left = page - taken - above
    rooms = [left - below - (1 - share) * (page - taken) for share in _SHARES_OF_A_PAGE]
    head = (Heading(card_heading(group), 3), Paragraph(facts))
    figures = GroupFigures(group, unit)
    drawn = figures.within(wide, rooms)
    if drawn is not None:
        return Card(figures, head, drawn, tuple(tail), above + below, table_kept=True)
    drawn = figures.within(wide, (left,))
    kept = drawn is not None
    figure = drawn or figures.on_page(wide, page)
    return Card(figures, head, figure, tuple(tail), above + below, kept=kept)


def _cautions(part: Part) -> tuple[Inline, ...]:
    """What can hurt at the set-ups of this card."""
    keys = dict.fromkeys(key for feature in part.features for key in feature.setup.cautions)
    cautions = ((SignMark("caution"), f" {CAUTIONS[key]}  ") for key in keys)
    return tuple(chain.from_iterable(cautions))


def _pocket_cards(
    groups: Sequence[PartGroup], room: Room, width_mm: float, holds: HoldMarks
) -> Iterator[Block]:
    """Small cards, two beside each other, under the set-up that bores them all."""
    unit = room.spec.unit
    half = (width_mm - _BETWEEN) / 2

    def words(group: PartGroup) -> str:
        return rich_text(setup_lines(group.first.features[0].setup, unit))

    for _, same in groupby(sorted(groups, key=words), key=words):
        alike = sorted(same, key=lambda group: group.first.finished.width.value)
        first = alike[0].first
        yield Keep(
            (
                Paragraph(setup_lines(first.features[0].setup, unit)),
                Paragraph(_cautions(first)),
            )
        )
        for left, right in zip(alike[::2], [*alike[1::2], None], strict=False):
            cards = [tuple(_small_card(each, room, half, holds)) for each in (left, right) if each]
            yield Keep((Beside((cards[0], cards[1] if len(cards) > 1 else ())),))


def _small_card(
    group: PartGroup, room: Room, width_mm: float, holds: HoldMarks
) -> Iterator[Block]:
    part = group.first
    yield Heading(card_heading(group), 3)
    yield Paragraph(unfold(f"{_pockets(part)} ", card_facts(group, room, holds=holds)))
    yield Figure(small_figure(part, width_mm, room.spec.unit))


def _pockets(part: Part) -> str:
    """'2 pockets at each end, face B.'."""
    features = [each for each in part.features if isinstance(each, Bores)]
    counts = {len(each.places) for each in features}
    face = features[0].face
    if len(counts) == 1 and {each.toward for each in features} == {"l0", "l1"}:
        return f"{counts.pop()} pockets at each end, face {face}."
    pockets = "; ".join(feature_name(part, each) for each in features)
    return f"{pockets[:1].upper()}{pockets[1:]}, face {face}."


def _plain_rows(groups: Iterable[PartGroup], room: Room, holds: HoldMarks) -> Iterator[Row]:
    """Rows by stock and by what it is milled from; the same piece once."""

    def stock(group: PartGroup) -> str:
        part = group.first
        milled = f"; {part.milled_from}" if part.milled_from else ""
        return f"{room.spec.stock[part.stock].title}{milled}"

    for title, same in groupby(sorted(groups, key=stock), key=stock):
        yield Row((title,))
        for group in same:
            yield _plain_row(group, room, holds)


def _plain_row(group: PartGroup, room: Room, holds: HoldMarks) -> Row:
    part, unit = group.first, room.spec.unit
    size = part.finished
    roles = dict.fromkeys(each.role for each in group.pieces)
    waits: list[Inline] = [_waits_words(group)] if group.waits_for else []
    if reading := holds.short(*(each.path for each in group.pieces)):
        waits += ["  ", *reading]
    return Row(
        (
            str(len(group.pieces)),
            ", ".join(roles),
            (*pieces_words(group.pieces, room), *waits),
            sizes(size.length, size.width, size.thickness, unit=unit, strong=True),
            _edges(part, unit),
        )
    )


def _waits_words(group: PartGroup) -> str:
    return f" ({f'{group.held_up} wait' if group.held_up else 'waits'}: see the questions)"


def _edges(part: Part, unit: Unit) -> Rich:
    """What is done to its edges; of a pane its rounded corners, and the film laid on it."""
    if part.corner_radius is None:
        return edge_words(part)
    told: tuple[Inline, ...] = (
        "corners rounded to ",
        Strong(measure_of(part.corner_radius, unit)),
    )
    if part.film is None:
        return told
    high, wide = (measure_of(each, unit) for each in (part.film.length, part.film.width))
    return (*told, "; film ", Strong(f"{high} x {wide}"), " on its inner face")

"""Cards of parts: every cut and hole from its datum, with the set-up that makes it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, groupby

from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Bores
from casewright.casework.parts import Part
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
from casewright.outputs.inlines import Inline, Link, Rich, SignMark, Small, Strong, rich_text
from casewright.packet.feature_rows import FEATURES, feature_rows
from casewright.packet.part_figures import group_figure, small_figure
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
_CASE, _CARD = 13.0, 9.0  # headings, with the room round them [mm]
_SPARE = 6.0  # of a page [mm]
_PLAIN = (
    Column("Make", "centre"), Column("Mark", "centre"), Column("Part", share=3.4),
    Column("Finished", "left", share=2.2), Column("Edges", share=1.8),
)  # fmt: skip
_READING = (
    "Left and right are measured alike, from the datum edge and the datum end, which the dark "
    "triangles mark. A pair is drawn as mirror images: check the letter L or R before the first "
    "cut. Parts that are the same share a card."
)


def part_section(room: Room, paper: Paper) -> Section:
    """Cards of worked parts by case, then parts with pockets only, then plain ones."""
    groups = group_parts(room.parts)
    plain = [group for group in groups if not group.first.features]
    pockets = [group for group in groups if _has_pockets_only(group)]
    worked = [group for group in groups if group not in plain and group not in pockets]
    blocks: list[Block] = [Paragraph(_READING, soft=True)]
    for key, title in place_titles(room).items():
        own = [group for group in worked if group.first.case == key]
        above: tuple[Block, ...] = (Heading(title, 2, f"parts:{key}"),)
        for group in own:
            blocks.extend(_card(group, room, paper, above))
            above = ()
        if not own and any(part.case == key for part in room.parts):
            words = f"{title}: on shared cards, among the pockets or the plain parts."
            blocks.append(Paragraph(words, True, f"parts:{key}"))
    if pockets:
        blocks.append(Heading("Pockets only", 2, "parts with pockets"))
        blocks.extend(_pocket_cards(pockets, room, paper.text_width_mm))
    if plain:
        blocks.append(Heading("Nothing to machine", 2, "plain parts"))
        blocks.append(Table(_PLAIN, tuple(_plain_rows(plain, room)), small=True))
    return Section("Part cards", tuple(blocks), "part-cards")


def _has_pockets_only(group: PartGroup) -> bool:
    features = group.first.features
    faces = {feature.face for feature in features}
    return len(faces) == 1 and not group.mirrored and all(f.kind == "pocket" for f in features)


def _card(group: PartGroup, room: Room, paper: Paper, above: tuple[Block, ...]) -> Iterator[Block]:
    """Heading, facts, drawing and table on one page; a long table may run on to the next."""
    unit, wide = room.spec.unit, paper.text_width_mm
    words = _facts(group, room)
    head: list[Block] = [*above, Heading(_heading(group), 3), *(Paragraph(each) for each in words)]
    rows = tuple(feature_rows(group.first, unit))
    cautions = _cautions(group.first)
    left = paper.text_height_mm - (_CASE if above else 0.0) - _CARD - _SPARE
    left -= sum(paragraph_height(each, wide) for each in words)
    below = table_height(FEATURES, rows, wide) + paragraph_height(cautions, wide)
    tail: list[Block] = [Table(FEATURES, rows, small=True)]
    if cautions:
        tail.append(Paragraph(cautions))
    whole = group_figure(group, wide, left - below, unit)
    if whole is not None:
        yield Keep((*head, Figure(whole), *tail))
        return
    drawn = group_figure(group, wide, left, unit)
    if drawn is None:
        msg = f"{_heading(group)}: no room to draw it on {paper.name}"
        raise AssertionError(msg)
    yield Keep((*head, Figure(drawn)))
    yield from tail


def _heading(group: PartGroup) -> str:
    """Marks and names: '1: left side; 2: right side', '4, 23: make 2 stretchers'."""
    singles = [each for each in (group.parts, group.mirrored) if each]
    if all(len(each) == 1 for each in singles):
        return "; ".join(f"{each[0].mark}: {each[0].title}" for each in singles)
    marks = ", ".join(part.mark for part in group.pieces)
    count = f"make {len(group.pieces)}"
    if group.mirrored:
        hands = [f"{len(each)} {each[0].hand}" for each in singles]
        count += f", {' and '.join(sorted(hands, key=lambda h: h.split()[1]))}"
    return f"{marks}: {group.first.role}, {count}"


def _facts(group: PartGroup, room: Room) -> tuple[Rich, ...]:
    """Sizes and stock, what the pieces are, what they wait for."""
    found: list[Inline] = []
    for pieces in (group.parts, group.mirrored):
        if pieces and pieces[0].hand is not None:
            found += [SignMark(pieces[0].hand), " "]
        for part in pieces:
            found += [*_piece(part, room), ", "]
    lines = (tuple(_sizes(group.first, room)), tuple(found), _waiting(group.first))
    return tuple(each for each in lines if each)


def _piece(part: Part, room: Room) -> tuple[Inline, ...]:
    """A piece by its mark and place; others come here, it leads to the cut list."""
    place = place_titles(room)[part.case]
    return (Link(part.mark, f"cut:{part.path}", part.path), f" {place}")


def _sizes(part: Part, room: Room) -> Iterator[Inline]:
    unit, size, blank = room.spec.unit, part.finished, part.blank
    yield "Finished "
    yield from sizes(size.length, size.width, size.thickness, unit=unit, strong=True)
    if (blank.length.value, blank.width.value) != (size.length.value, size.width.value):
        yield "; cut "
        yield from sizes(blank.length, blank.width, unit=unit, strong=True)
    if part.edges:
        yield f"; {edge_words(part)}"
    yield f". Stock: {room.spec.stock[part.stock].title}"
    if part.grain:
        yield "; grain along the length"
    if part.milled_from:
        yield f"; {part.milled_from}"
    yield "."


def _waiting(part: Part) -> tuple[Inline, ...]:
    if not part.waits_for:
        return ()
    waits = f"Do not cut yet: waits for {', '.join(part.waits_for)}."
    return (SignMark("ask"), " ", Strong(waits))


def _cautions(part: Part) -> tuple[Inline, ...]:
    """What can hurt at the set-ups of this card."""
    keys = dict.fromkeys(key for feature in part.features for key in feature.setup.cautions)
    cautions = ((SignMark("caution"), Small(f" {CAUTIONS[key]}  ")) for key in keys)
    return tuple(chain.from_iterable(cautions))


def _pocket_cards(groups: Sequence[PartGroup], room: Room, width_mm: float) -> Iterator[Block]:
    """Small cards, two beside each other, under the set-up that bores them all."""
    unit = room.spec.unit
    half = (width_mm - _BETWEEN) / 2

    def words(group: PartGroup) -> str:
        return rich_text(setup_lines(group.first.features[0].setup, unit))

    for _, same in groupby(sorted(groups, key=words), key=words):
        alike = list(same)
        first = alike[0].first
        yield Keep(
            (
                Paragraph(setup_lines(first.features[0].setup, unit)),
                Paragraph(_cautions(first)),
            )
        )
        for left, right in zip(alike[::2], [*alike[1::2], None], strict=False):
            cards = [tuple(_small_card(each, room, half)) for each in (left, right) if each]
            yield Keep((Beside((cards[0], cards[1] if len(cards) > 1 else ())),))


def _small_card(group: PartGroup, room: Room, width_mm: float) -> Iterator[Block]:
    part = group.first
    yield Heading(_heading(group), 3)
    yield from (Paragraph(each) for each in _facts(group, room))
    yield Figure(small_figure(part, width_mm, room.spec.unit))
    yield Paragraph(_pockets(part), soft=True)


def _pockets(part: Part) -> str:
    """'2 pockets at each end, face B.'."""
    features = [each for each in part.features if isinstance(each, Bores)]
    counts = {len(each.places) for each in features}
    face = features[0].face
    if len(counts) == 1 and {each.toward for each in features} == {"l0", "l1"}:
        return f"{counts.pop()} pockets at each end, face {face}."
    pockets = "; ".join(feature_name(part, each) for each in features)
    return f"{pockets[:1].upper()}{pockets[1:]}, face {face}."


def _plain_rows(groups: Iterable[PartGroup], room: Room) -> Iterator[Row]:
    """Rows by stock and by what it is milled from; the same piece once."""

    def stock(group: PartGroup) -> str:
        part = group.first
        milled = f"; {part.milled_from}" if part.milled_from else ""
        return f"{room.spec.stock[part.stock].title}{milled}"

    for title, same in groupby(sorted(groups, key=stock), key=stock):
        yield Row((title,))
        for group in same:
            yield _plain_row(group, room)


def _plain_row(group: PartGroup, room: Room) -> Row:
    part, unit = group.first, room.spec.unit
    size = part.finished
    pieces = [(*_piece(each, room), "; ") for each in group.pieces]
    names = list(unfold(*pieces))[:-1]
    if part.waits_for:
        names.append(" (waits: see the questions)")
    return Row(
        (
            str(len(group.pieces)),
            ", ".join(each.mark for each in group.pieces),
            tuple(names),
            sizes(size.length, size.width, size.thickness, unit=unit, strong=True),
            edge_words(part),
        )
    )

"""The bench: cards of what is machined into parts, and every part as its label opens it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from casewright.breakdown import Breakdown
from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Feature
from casewright.casework.parts import Part
from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing.part_frame import faces_to_draw
from casewright.drawing.part_view import feature_letters
from casewright.outputs.inlines import Rich, Strong
from casewright.packet.card_words import card_heading, held_up_words
from casewright.packet.cut_places import rough_lengths
from casewright.packet.feature_rows import feature_rows
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.part_groups import PartGroup, group_parts
from casewright.packet.words import edge_words, place_titles, plane_word, sizes
from casewright.room.model import Room
from casewright.web.shop_lines import caution_line, line_of, size_text
from casewright.web.shop_readings import Readable
from casewright.web.shop_schema import Bit, Line, ShopCard, ShopFigure, ShopPart, ShopRow, ShopTick

__all__ = ["machining_cards", "shop_parts"]


def machining_cards(room: Room, holds: HoldMarks) -> Iterator[ShopCard]:
    """A card for all parts that are machined alike."""
    titles = place_titles(room)
    for group in group_parts(room.parts):
        if group.first.features:
            yield _group_card(room, group, titles, holds)


def _group_card(
    room: Room, group: PartGroup, titles: Mapping[str, str], holds: HoldMarks
) -> ShopCard:
    part, unit = group.first, room.spec.unit
    places = list(dict.fromkeys(titles[each.case] for each in group.pieces))
    letters = {letter: f for f in part.features if (letter := feature_letters(part)[f.path])}
    cautions = dict.fromkeys(key for f in part.features for key in f.setup.cautions)
    size = part.finished
    return ShopCard(
        id=f"machine.{part.path}",
        station="machine",
        over="; ".join(places[:3]) + ("; …" if len(places) > 3 else ""),
        title=card_heading(group),
        stops=_stops(room, group, holds),
        lines=(
            (f"From the {plane_word(part, 'w0')} and the {plane_word(part, 'l0')}",),
            line_of("Finished ", sizes(size.length, size.width, size.thickness, unit=unit)),
        ),
        warns=tuple(caution_line(CAUTIONS[key]) for key in cautions),
        figures=tuple(_views(group)),
        rows=tuple(_rows(part, letters, unit)),
        ticks=tuple(_machined(each) for each in group.pieces),
        parts=tuple(each.path for each in group.pieces),
    )


def _views(group: PartGroup) -> Iterator[ShopFigure]:
    """Every face with work on it by itself, left and right one after the other."""
    for face in faces_to_draw(group.first):
        for hand in (group.parts, group.mirrored):
            if hand:
                marks = ", ".join(part.mark for part in hand)
                says = f"{marks}: {hand[0].title}, face {face}"
                yield ShopFigure(name=f"view.{face}.{hand[0].path}", says=says)


def _rows(part: Part, letters: Mapping[str, Feature], unit: Unit) -> Iterator[ShopRow]:
    for row in feature_rows(part, unit):
        named, what, where, setup = row.cells
        label = size_text(line_of(named))
        lead, big = _setting(letters[label.partition(",")[0].strip()], unit)
        yield ShopRow(
            label=label,
            what=line_of(what),
            lead=lead,
            big=big,
            lines=(line_of(where), _unsigned(line_of(setup))),
        )


def _unsigned(line: Line) -> Line:
    """A set-up without the sign of its cautions: the card tells them in words."""
    if line and isinstance(line[0], Bit) and line[0].kind == "sign" and line[0].text == "Caution":
        line = line[1:]
    if line and isinstance(line[0], str):
        return line_of(line[0].lstrip()) + line[1:]
    return line


def _setting(feature: Feature, unit: Unit) -> tuple[str, Line]:
    """What is set, largest: the fence, else the stop, the collar or the depth."""
    setup = feature.setup
    for lead, dim in (
        ("fence or guide", setup.fence),
        ("stop", setup.stop),
        ("collar", setup.collar),
        ("depth", setup.depth),
    ):
        if dim is not None and dim.value:
            return lead, line_of(measure_of(dim, unit))
    return "", ()


def _machined(part: Part) -> ShopTick:
    return ShopTick(
        key=f"machined:{part.path}", kind="machined", words=(part.path,),
        label=line_of(Strong(part.mark), f" {part.title}"), parts=(part.path,),
    )  # fmt: skip


def _stops(room: Room, group: PartGroup, holds: HoldMarks) -> tuple[Line, ...]:
    """What these pieces wait for: questions that are open, hold points that are not passed."""
    found: list[Line] = []
    if group.waits_for:
        found.append((held_up_words(group, room),))
    points = holds.points(*(part.path for part in group.pieces))
    found += [(f"Not before hold point {point.number} is read.",) for point in points]
    return tuple(found)


def shop_parts(
    room: Room, plans: Sequence[Breakdown], holds: HoldMarks, cards: tuple[ShopCard, ...]
) -> Iterator[ShopPart]:
    """Every part, with the cards that it is on."""
    titles, readable = place_titles(room), Readable(room)
    rough = {path: each for plan in plans for path, each in rough_lengths(plan).items()}
    on: dict[str, list[str]] = {}
    for card in cards:
        for path in dict.fromkeys(card.parts):
            on.setdefault(path, []).append(card.id)
    for part in room.parts:
        length = rough.get(part.path, part.blank.length)
        yield _part(
            room, part, titles[part.case], holds, readable,
            cut=(length, part.blank.width), cards=tuple(on.get(part.path, ())),
        )  # fmt: skip


def _part(
    room: Room, part: Part, case: str, holds: HoldMarks, readable: Readable,
    *, cut: tuple[Dim, Dim], cards: tuple[str, ...],
) -> ShopPart:  # fmt: skip
    unit, size = room.spec.unit, part.finished
    about: list[Rich] = [room.spec.stock[part.stock].title]
    if part.grain:
        about.append("; grain along the length")
    if part.edges:
        about.append(("; ", edge_words(part)))
    if part.milled_from:
        about.append(f"; {part.milled_from}")
    named = (("length", part.blank.length), ("width", part.blank.width))
    shown = size_text(line_of(sizes(*cut, unit=unit)))
    readings = (readable.reading(dim, f"{name}, as cut") for name, dim in named)
    return ShopPart(
        path=part.path,
        mark=part.mark,
        title=part.title,
        case=case,
        hand=part.hand or "",
        edge=plane_word(part, "w0"),
        end=plane_word(part, "l0"),
        finished=line_of(sizes(size.length, size.width, size.thickness, unit=unit)),
        cut=line_of(sizes(*cut, unit=unit)),
        stock=room.spec.stock[part.stock].title,
        about=line_of(*about),
        stops=_stops(room, PartGroup((part,)), holds),
        cards=cards,
        figures=tuple(_views(PartGroup((part,)))),
        readings=tuple(each for each in readings if each is not None),
        tick=ShopTick(
            key=f"cut:{part.path}", kind="cut", words=(part.path,), label=("Cut",),
            parts=(part.path,), shown="" if cut[0] is not part.blank.length else shown,
        ),
    )  # fmt: skip

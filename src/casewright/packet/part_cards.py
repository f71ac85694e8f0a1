"""Cards of parts: every cut and hole from its datum, with the set-up that makes it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Bores, Cut, Face, Feature
from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing import Plot, ScaleError, SignKind, largest
from casewright.drawing.part_view import faces_to_draw, feature_letters, part_scene
from casewright.outputs.blocks import (
    Block,
    Callout,
    Caution,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Section
from casewright.outputs.inlines import Inline, Link, Rich, SignMark
from casewright.packet.words import (
    at_words,
    feature_name,
    plane_word,
    setup_lines,
    size_words,
    sizes,
    unfold,
)
from casewright.room.model import Room

__all__ = ["alike", "part_sections"]

_LOW, _HEIGHTS, _TALLEST = 58.0, (84.0, 120.0), 220.0
_LARGEST = Fraction(4)
_LONG, _WIDE = 85, 40
_FEATURES = (
    Column("", "centre"),
    Column("What", share=2.2),
    Column("Where", share=3.0),
    Column("Size", share=2.2),
    Column("Set-up", share=4.0),
)
_PLAIN = (
    Column("Mark", "centre"), Column("Part", share=2.0), Column("Finished", "left", share=2.4),
    Column("Edges", share=2.0), Column("Notes", share=2.6),
)  # fmt: skip


_ALIKE = (
    "Left and right parts are measured alike, from the datum edge and the datum end; the drawings "
    "show them mirrored. Dark triangles mark the datums."
)


def _shape(part: Part) -> tuple[object, ...]:
    """What makes two parts the same card: sizes, hand, features by their numbers."""
    size, blank = part.finished, part.blank
    features = tuple(
        (f.kind, f.face, f.datum, f.at.value, f.width.value, f.depth.value, f.runs,
         f.start.value if f.start else None, f.end.value if f.end else None)
        if isinstance(f, Cut)
        else (f.kind, f.face, f.datum_l, f.datum_w, f.toward, f.diameter.value,
              tuple((a.value, b.value) for a, b in f.places))
        for f in part.features
    )  # fmt: skip
    return (
        part.case, part.role, part.stock, part.hand, size.length.value, size.width.value,
        blank.length.value, blank.width.value, part.ends, features, part.waits_for,
    )  # fmt: skip


def alike(parts: Iterable[Part]) -> list[tuple[Part, ...]]:
    """Parts that are the same piece of work, together, in the order they first come."""
    groups: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        groups.setdefault(_shape(part), []).append(part)
    return [tuple(group) for group in groups.values()]


def part_sections(room: Room, width_mm: float) -> tuple[Section, ...]:
    """One section a case: cards of worked parts, then a table of the plain ones."""
    sections = []
    titles = {case.key: case.spec.title for case in room.cases}
    titles |= {f"run.{run.spec.key}": run.spec.title for run in room.runs}
    by_case: dict[str, list[Part]] = {}
    for part in room.parts:
        by_case.setdefault(part.case, []).append(part)
    for key, parts in by_case.items():
        groups = alike(parts)
        blocks: list[Block] = [Paragraph(_ALIKE, soft=True)]
        worked = [group for group in groups if group[0].features]
        keys = {key for group in worked for f in group[0].features for key in f.setup.cautions}
        blocks.extend(Caution(CAUTIONS[key]) for key in sorted(keys))
        for group, mirrored in _hands(worked):
            blocks.extend(_card(group, mirrored, room, width_mm))
        plain = [group for group in groups if not group[0].features]
        if plain:
            blocks.append(Heading("Plain parts: nothing to machine", 2))
            blocks.append(Table(_PLAIN, tuple(_plain_rows(plain, room.spec.unit))))
        sections.append(Section(f"Parts: {titles[key]}", tuple(blocks), f"parts:{key}"))
    return tuple(sections)


def _marks(group: tuple[Part, ...]) -> str:
    marks = ", ".join(part.mark for part in group)
    return f"{marks}: {group[0].title}" if len(group) == 1 else f"{marks}: {_joint_title(group)}"


def _joint_title(group: tuple[Part, ...]) -> str:
    return f"{group[0].role}, {len(group)} pieces"


def _hands(groups: list[tuple[Part, ...]]) -> Iterator[tuple[tuple[Part, ...], tuple[Part, ...]]]:
    """Each group with its mirror image, or with nothing where it has none."""
    left = list(groups)
    while left:
        first = left.pop(0)
        other = next((group for group in left if _is_mirrored(first[0], group[0])), ())
        if other:
            left.remove(other)
        yield first, other


def _is_mirrored(one: Part, other: Part) -> bool:
    if one.hand is None or other.hand is None or one.hand == other.hand:
        return False
    setups = [[feature.setup for feature in part.features] for part in (one, other)]
    numbers = [
        [(s.tool, s.bit, s.passes, *(d and d.value for d in (s.fence, s.depth, s.collar, s.stop)),
          s.check_words, s.check and s.check.value) for s in each]
        for each in setups
    ]  # fmt: skip
    return numbers[0] == numbers[1] and _shape(one) == _shape(replace(other, hand=one.hand))


def _card(
    group: tuple[Part, ...], mirrored: tuple[Part, ...], room: Room, width_mm: float
) -> Iterator[Block]:
    """One card; a left and a right part share the table, each with its own drawings."""
    for each in (group, mirrored):
        if each:
            yield from _card_head(each, room, width_mm)
    if mirrored:
        marks = ", ".join(part.mark for part in (*group, *mirrored))
        yield Paragraph(f"For {marks} alike, mirrored:", soft=True)
    yield Table(_FEATURES, tuple(_feature_rows(group[0], room.spec.unit)), small=True)


def _card_head(group: tuple[Part, ...], room: Room, width_mm: float) -> Iterator[Block]:
    part, unit = group[0], room.spec.unit
    top: list[Block] = [Heading(_marks(group), 2, part.path)]
    top.extend(
        Paragraph(f"{other.mark} is {other.title}.", True, other.path) for other in group[1:]
    )
    top.append(Paragraph(_facts(part, room)))
    if part.waits_for:
        top.append(Callout("ask", f"Do not cut yet: waits for {', '.join(part.waits_for)}."))
    faces = faces_to_draw(part)
    figures = [Figure(_drawn(part, face, width_mm, unit)) for face in faces]
    yield Keep((*top, figures[0]))
    yield from figures[1:]


def _drawn(part: Part, face: Face, width_mm: float, unit: Unit) -> Plot:
    """The face, low on the page where little is on it, higher where it would not fit."""
    scene = part_scene(part, face, unit)
    for tall in _HEIGHTS if _is_busy(part) else (_LOW, *_HEIGHTS):
        try:
            drawn = largest(scene, width_mm, tall, unit, at_most=_LARGEST)
        except ScaleError:
            continue
        if _is_legible(part, drawn):
            return drawn
    return largest(scene, width_mm, _TALLEST, unit)


def _is_legible(part: Part, drawn: Plot) -> bool:
    """Whether the part itself, without its dimensions, is large enough to read at the saw."""
    if drawn.scale is None:
        return True
    size = part.finished
    return size.length.value / drawn.scale >= _LONG or size.width.value / drawn.scale >= _WIDE


def _is_busy(part: Part) -> bool:
    """Whether there is more on it than pockets."""
    return any(feature.kind != "pocket" for feature in part.features)


def _feature_rows(part: Part, unit: Unit) -> Iterator[Row]:
    """A row for each feature; pockets alike at both ends share one."""
    letters = feature_letters(part)
    done: set[object] = set()
    two_sided = len({f.face for f in part.features}) > 1 or part.features[0].face == "B"
    for feature in part.features:
        twins = [other for other in part.features if _alike(feature, other)]
        key = tuple(other.path for other in twins)
        if key in done:
            continue
        done.add(key)
        names = "; ".join(feature_name(part, twin) for twin in twins)
        marks = ", ".join(letters[twin.path] for twin in twins)
        cautions = tuple(SignMark("caution") for _ in feature.setup.cautions[:1])
        yield Row(
            (
                marks,
                f"{names}{f', face {feature.face}' if two_sided else ''}",
                at_words(part, feature, unit)
                if len(twins) == 1
                else unfold(at_words(part, feature, unit), "; the same at the other end"),
                size_words(feature, unit),
                unfold(*cautions, " " if cautions else "", setup_lines(feature.setup, unit)),
            )
        )


def _alike(one: Feature, other: Feature) -> bool:
    """Whether two rows of pockets are bored with one setting of the jig."""
    if one is other:
        return True
    if not isinstance(one, Bores) or not isinstance(other, Bores):
        return False
    ends = ({"l0", "l1"}, {"w0", "w1"})
    return (
        one.kind == other.kind == "pocket"
        and one.face == other.face
        and any({one.toward, other.toward} == pair for pair in ends)
        and [(a.value, b.value) for a, b in one.places]
        == [(a.value, b.value) for a, b in other.places]
    )


def _facts(part: Part, room: Room) -> Rich:
    unit = room.spec.unit
    size, blank = part.finished, part.blank
    found: list[Inline] = []
    if part.hand is not None:
        hand: SignKind = part.hand
        found += [SignMark(hand), f" {part.hand}-hand part. "]
    found += ["Finished ", *sizes(size.length, size.width, size.thickness, unit=unit, strong=True)]
    if blank.length is not size.length or blank.width is not size.width:
        found += ["; cut ", *sizes(blank.length, blank.width, unit=unit, strong=True)]
        found.append(f" and treat: {_edges(part)}")
    found.append(f". Stock: {room.spec.stock[part.stock].title}")
    if part.grain:
        found.append("; grain along the length")
    if part.milled_from:
        found.append(f"; {part.milled_from}")
    found += [". ", Link("Cut list", f"cut:{part.path}"), "."]
    return tuple(found)


def _edges(part: Part) -> str:
    words = [f"{plane_word(part, e.edge)} {_TREATED[e.kind]}" for e in part.edges]
    return ", ".join(words) or "none"


_TREATED = {"band": "banded", "lip": "lipped", "painted": "filled and painted"}


def _plain_rows(groups: list[tuple[Part, ...]], unit: Unit) -> Iterator[Row]:
    for group in groups:
        for part in group:
            size = part.finished
            notes = part.milled_from or ("waits: see questions" if part.waits_for else "")
            yield Row(
                (
                    part.mark,
                    part.title,
                    sizes(size.length, size.width, size.thickness, unit=unit),
                    _edges(part),
                    notes,
                ),
                part.path,
            )

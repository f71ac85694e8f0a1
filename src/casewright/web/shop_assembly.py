"""Putting together: a card for every step of a case, with the picture of that step."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.outputs.inlines import Strong
from casewright.packet.assembly_steps import ToldStep, told_steps
from casewright.room.model import Room
from casewright.web.shop_lines import line_of, size_text, split_at_signs
from casewright.web.shop_readings import Readable
from casewright.web.shop_schema import Bit, Line, ShopCard, ShopFigure, ShopReading, ShopTick

__all__ = ["assembly_cards", "parts_by_then"]

_HANGING = "Hanging"
_NO_GLUE = re.compile(r"\b(?:without|no) glue\b")
"""A dry fit has nothing to wait for."""


def assembly_cards(room: Room) -> Iterator[ShopCard]:
    """The steps of every case, in the order in which they are told."""
    readable = Readable(room)
    for case in room.cases:
        steps = tuple(told_steps(case, room.spec.unit))
        for number, told in enumerate(steps, 1):
            yield _card(room, case, told, (number, len(steps)), readable)


def parts_by_then(room: Room, case: Case, number: int) -> tuple[frozenset[str], frozenset[str]]:
    """Parts that are in their places before a step of a case, and those that come in at it.

    Of a door or a drawer that is put together by itself, its own alone; they are in the case once
    they are hung. Before anything is, all of the box comes in.
    """
    steps = tuple(told_steps(case, room.spec.unit))[:number]
    if not any(told.parts for told in steps):
        return frozenset(), frozenset(part.path for part in case.parts if not part.front)
    fronts = {part.path: part.front for part in case.parts}
    stage = [told for told in steps if told.stage == steps[-1].stage]
    made = {fronts.get(path, "") for told in stage for path in told.parts}
    made = made if made and all(made) else {""}
    before = frozenset(
        path
        for told in steps[:-1]
        for each in told.parts
        if fronts.get(each, "") in made
        for path in _with_their_own(case, each)
    )
    return before, frozenset(
        path for each in steps[-1].parts for path in _with_their_own(case, each)
    )


def _with_their_own(case: Case, path: str) -> Iterator[str]:
    """What comes in; of a door or a drawer all its parts."""
    yield path
    yield from (part.path for part in case.parts if part.front == path)


def _card(
    room: Room, case: Case, told: ToldStep, place: tuple[int, int], readable: Readable
) -> ShopCard:
    number, of = place
    words = line_of(told.step.text)
    is_box = told.is_last and not told.makes and told.stage != _HANGING
    text = size_text((*words, *(bit for note in told.step.notes for bit in line_of(note))))
    return ShopCard(
        id=f"assemble.{case.key}.{number}",
        station="assemble",
        over=f"{case.spec.title}: step {number} of {of}",
        title=told.stage or "The box",
        lead=_first_sentence(size_text(words)),
        lines=(
            *_rest(words),
            *(
                line
                for note in told.step.notes
                for line in split_at_signs(line_of(note))
                if not _is_to_write_on(line)
            ),
        ),
        figures=(_figure(case, number),),
        ticks=tuple(_ticks(case, told)) if told.is_last and told.stage != _HANGING else (),
        readings=tuple(_readings(room, case, readable)) if is_box else (),
        parts=told.parts,
        timer="glue" if "glue" in _NO_GLUE.sub("", text.lower()) else "",
    )


def _figure(case: Case, number: int) -> ShopFigure:
    says = f"{case.spec.title} as it stands at this step, with what comes in"
    return ShopFigure(name=f"step.{case.key}.{number}", says=says)


def _is_to_write_on(line: Line) -> bool:
    """Whether a line has blanks for a pencil."""
    return any(isinstance(bit, Bit) and bit.kind == "blank" for bit in line)


def _first_sentence(words: str) -> str:
    return words.partition(". ")[0].rstrip(".")


def _rest(words: tuple[object, ...]) -> Iterator[tuple[str]]:
    rest = size_text(words).partition(". ")[2]  # type: ignore[arg-type]
    if rest:
        yield (rest,)


def _ticks(case: Case, told: ToldStep) -> Iterator[ShopTick]:
    titles = {front.path: front.title for front in case.fronts}
    titles |= {drawer.path: drawer.title for drawer in case.drawers}
    for path in told.makes:
        parts = tuple(part.path for part in case.parts if part.front == path)
        yield _tick(path, f"{titles[path]} put together", parts)
    if not told.makes:
        box = tuple(part.path for part in case.parts if not part.front)
        yield _tick(case.key, f"{case.spec.title}: box put together", box)


def _tick(path: str, words: str, parts: tuple[str, ...]) -> ShopTick:
    label = line_of(Strong(words[:1].upper() + words[1:]))
    return ShopTick(
        key=f"assembled:{path}", kind="assembled", words=(path,), label=label, parts=parts
    )


def _readings(room: Room, case: Case, readable: Readable) -> Iterator[ShopReading]:
    """Outside of the box and its openings, as it stands clamped."""
    nodes = room.chain.nodes
    named = [("width, outside", case.width), ("height, outside", case.height),
             ("depth, outside", case.depth)]  # fmt: skip
    if (clear := nodes.get(f"{case.key}.clear_width")) is not None:
        named.append(("clear width", clear))
    named += [(f"clear height {n}", each.size) for n, each in enumerate(case.clear_heights, 1)]
    for label, dim in named:
        reading = readable.reading(dim, label)
        if reading is not None:
            yield reading

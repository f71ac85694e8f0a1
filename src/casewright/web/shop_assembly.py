"""Putting together: a card for every step of a case, with the picture of that step."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from casewright.casework.cases import Case
from casewright.packet.assembly_steps import ToldStep, told_steps
from casewright.packet.step_runs import works
from casewright.room.model import Room
from casewright.web.shop_lines import caution_line, line_of, size_text, split_at_signs
from casewright.web.shop_notes import done_tick, part_tick
from casewright.web.shop_readings import Readable
from casewright.web.shop_schema import Bit, Line, ShopCard, ShopFigure, ShopReading, ShopTick
from casewright.web.shop_things import added_things, box_parts

__all__ = ["assembly_cards", "parts_by_then"]

_HANGING = "Hanging"
_NO_GLUE = re.compile(r"\b(?:without|no) glue\b")
"""A dry fit has nothing to wait for."""


def assembly_cards(room: Room) -> Iterator[ShopCard]:
    """The steps of every case, in the order in which they are told."""
    readable = Readable(room)
    for case in room.cases:
        steps = tuple(told_steps(case, room.spec.unit))
        ticks = _ticks(case, steps)
        for number, (told, own) in enumerate(zip(steps, ticks, strict=True), 1):
            yield _card(room, case, told, (number, len(steps)), own, readable)


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
    room: Room, case: Case, told: ToldStep, place: tuple[int, int],
    ticks: tuple[ShopTick, ...], readable: Readable,
) -> ShopCard:  # fmt: skip
    number, of = place
    words = line_of(told.step.text)
    is_box = any(tick.key == f"assembled:{case.key}" for tick in ticks)
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
        warns=tuple(caution_line(words) for words in told.again),
        figures=(_figure(case, number),),
        ticks=ticks,
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


def _ticks(case: Case, steps: Sequence[ToldStep]) -> Iterator[tuple[ShopTick, ...]]:
    """Step for step: what is put together by it; of any other that it is done.

    The box is by the last step of its first stage, what is added later by the last that it
    comes in at.
    """
    added = {each.path: each for each in added_things(case)}
    comes = {
        path: max((n for n, told in enumerate(steps) if set(told.parts) & set(each.parts)),
                  default=len(steps) - 1)
        for path, each in added.items()
    }  # fmt: skip
    box_at = next((n for n, told in enumerate(steps) if _ends_box(told)), None)
    for number, told in enumerate(steps):
        found = [
            part_tick("assembled", path, f"{added[path].title} put on", added[path].parts)
            for path, last in comes.items()
            if last == number
        ]
        if number == box_at:
            words = f"{case.spec.title}: box put together"
            found.append(part_tick("assembled", case.key, words, box_parts(case)))
        elif told.is_last and told.stage != _HANGING:
            found += _made(case, told)
        if not found:
            says = (size_text(line_of(each)) for each in (told.step.text, *told.step.notes))
            made = _stage_parts(case, told, is_box=box_at is not None and number < box_at)
            found.append(done_tick(f"step {number + 1} of {case.spec.title}", says, parts=made))
        yield tuple(found)


def _ends_box(told: ToldStep) -> bool:
    return told.is_last and not told.makes and told.stage != _HANGING


def _stage_parts(case: Case, told: ToldStep, *, is_box: bool) -> tuple[str, ...]:
    """Of what a step goes toward; none where that is not put together by it."""
    if told.stage == _HANGING:
        return ()
    if told.makes:
        return tuple(part.path for part in case.parts if part.front in told.makes)
    return box_parts(case) if is_box else ()


def _made(case: Case, told: ToldStep) -> Iterator[ShopTick]:
    titles = {work.path: work.title for work in works(case)}
    for path in told.makes:
        parts = tuple(part.path for part in case.parts if part.front == path)
        yield part_tick("assembled", path, f"{titles[path]} put together", parts)


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

"""Finishing: what gets its coats, case by case."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.outputs.inlines import Strong
from casewright.packet.words import edge_words
from casewright.room.model import Room
from casewright.web.shop_lines import caution_line, line_of
from casewright.web.shop_notes import part_tick
from casewright.web.shop_schema import Line, ShopCard, ShopTick
from casewright.web.shop_things import box_parts, things

__all__ = ["finishing_cards"]

_FINISHING = (
    "Vapours: open the windows, no flame, pilot light, heater or spark. Rags with oil dry flat "
    "outdoors, never in a heap. What the tin and its data sheet say comes first."
)


def finishing_cards(room: Room) -> Iterator[ShopCard]:
    """A card for each case and its fronts, and for what a run has of its own."""
    for case in room.cases:
        yield _finish_card(
            f"finish.{case.key}", case.spec.title, tuple(_finished(case)), _edges(case)
        )
    for run in room.runs:
        own = tuple(
            part_tick("finished", part.path, f"{part.mark} {part.title}", (part.path,))
            for part in run.own_parts
        )
        if own:
            yield _finish_card(f"finish.{run.spec.key}", run.spec.title, own, ())


def _finish_card(
    key: str, title: str, ticks: tuple[ShopTick, ...], edges: tuple[Line, ...]
) -> ShopCard:
    return ShopCard(
        id=key,
        station="finish",
        over="Finish",
        title=title,
        lines=(
            ("Try it on a test piece first.",),
            ("Hinges and pulls off, bores masked, dust off.",),
            ("Fill, sand, prime, sand; then as many coats as the tin says, sanded between.",),
            *edges,
        ),
        warns=(caution_line(_FINISHING),),
        ticks=ticks,
        parts=tuple(path for tick in ticks for path in tick.parts),
        timer="paint",
    )


def _edges(case: Case) -> tuple[Line, ...]:
    """What is done to edges before the first coat, each way of it once."""
    ways: dict[str, list[str]] = {}
    for part in case.parts:
        if part.edges:
            ways.setdefault(edge_words(part), []).append(part.mark)
    return tuple(line_of(Strong(f"{', '.join(marks)}: "), way) for way, marks in ways.items())


def _finished(case: Case) -> Iterator[ShopTick]:
    yield part_tick("finished", case.key, f"{case.spec.title}, the box", box_parts(case))
    for thing in things(case):
        yield part_tick("finished", thing.path, thing.title, thing.parts)

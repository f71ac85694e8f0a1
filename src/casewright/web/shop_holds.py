"""What is measured before the next cut: hold points, and questions that a reading answers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Literal

from casewright.findings import Question
from casewright.packet.hold_marks import point_measure, point_name
from casewright.packet.mark_words import mark_list
from casewright.packet.places import place_words
from casewright.resolve import HoldPoint, band_path
from casewright.room.forecast_words import chance_text, with_text
from casewright.room.model import Room
from casewright.web.shop_lines import line_of, sentence
from casewright.web.shop_readings import Readable
from casewright.web.shop_schema import Line, ShopCard

__all__ = ["hold_cards"]


def hold_cards(
    room: Room, points: Iterable[HoldPoint], questions: Iterable[Question]
) -> Iterator[ShopCard]:
    """Readings that are asked for, then the hold points in the order of making."""
    readable = Readable(room)
    for question in questions:
        reading = readable.reading(room.chain.nodes.get(question.path), "As read")
        if reading is not None:
            yield ShopCard(
                id=f"holds.ask.{question.path}", station="holds", over="A question is open",
                title=place_words(room, question.path), lead=sentence(question.needs),
                lines=((f"{sentence(question.because)}.",),), readings=(reading,),
                stops=_waiting(len(question.waiting)),
            )  # fmt: skip
    for point in points:
        yield _point_card(room, point, readable)


def _waiting(count: int) -> tuple[Line, ...]:
    if not count:
        return ()
    return ((f"{count} part{'s wait' if count > 1 else ' waits'} for it.",),)


def _point_card(room: Room, point: HoldPoint, readable: Readable) -> ShopCard:
    marks = {part.path: part.mark for part in room.parts}
    waits = [marks[path] for path in point.parts if path in marks]
    first = point.watched[0]
    go, sound = _band(room, point, "go"), _band(room, point, "sound")
    reading = readable.reading(
        point.reading.dim, point_name(point), tool=point.reading.tool, go=go, sound=sound
    )
    lines: list[Line] = [
        ("Go: ", *go, ". What waits is cut as it is planned.") if go
        else ("What waits is cut to the reading.",),
    ]  # fmt: skip
    if sound:
        lines.append(("No go: outside ", *sound, ". Put right what was measured first."))
    odds = (
        f"{chance_text(first.without)} without the reading, {chance_text(first.with_it)} with it"
    )
    lines.append((f"How often what waits would not fit: {odds}.",))
    return ShopCard(
        id=f"holds.point.{point.path}",
        station="holds",
        over=f"Hold point {point.number}: {place_words(room, point.path)}",
        title=f"{point_name(point).capitalize()}, {with_text(point.reading.tool)}",
        lead="planned",
        big=line_of(point_measure(room, point, point.planned, point.path)),
        stops=((f"Waiting: {mark_list(waits)}",),) if waits and point.read is None else (),
        lines=tuple(lines),
        readings=() if reading is None else (reading,),
    )


def _band(room: Room, point: HoldPoint, name: Literal["go", "sound"]) -> Line:
    band = point.go if name == "go" else point.sound
    if band is None:
        return ()
    low, high = (
        point_measure(room, point, value, band_path(point, name, end))
        for end, value in zip(("low", "high"), band, strict=True)
    )
    return line_of(low) if band[0] == band[1] else line_of(low, " to ", high)

"""What the pages in the shop show, as types: cards by station, what the record says."""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict

from casewright.web.schema import Answer, Short

__all__ = [
    "Bit",
    "Line",
    "ShopAnew",
    "ShopAsked",
    "ShopBook",
    "ShopCard",
    "ShopEntry",
    "ShopFigure",
    "ShopGone",
    "ShopNow",
    "ShopPart",
    "ShopReading",
    "ShopRest",
    "ShopRow",
    "ShopStation",
    "ShopTick",
]

StationKey = Literal["holds", "saw", "machine", "assemble", "finish", "hang"]


class Bit(Answer):
    """Something in a line that is not plain words: a size, a sign, a blank, a box.

    `to` is the path of a part, or the id of a card.
    """

    kind: Literal["size", "sign", "blank", "box", "strong", "part", "card"]
    text: str
    to: str = ""


Line = tuple[str | Bit, ...]


class ShopTick(Answer):
    """Something that can be ticked off, and the entry that this writes.

    `key` names it whoever ticks it. It is done when the record says so of all `parts`, or, where
    there are none, when an entry carries its words. A note with parts is done either way: by an
    entry, or once they are put together. `shown` is the size that the person saw: when
    it is to be another by then, the entry is doubted.
    """

    key: str
    kind: Literal["cut", "machined", "assembled", "finished", "hung", "note", "offcut"]
    words: tuple[str, ...]
    label: Line
    parts: tuple[str, ...] = ()
    shown: str = ""
    note: str = ""


class ShopReading(Answer):
    """A number that is read on the real thing.

    `low` and `high` are what it is expected within [mm]; outside it is asked about before it is
    sent. `go` and `sound` are the bands of a hold point, in words.
    """

    path: str
    label: str
    tool: str
    planned: Line
    planned_mm: str
    low: str
    high: str
    go: Line = ()
    sound: Line = ()
    read: Line = ()


class ShopFigure(Answer):
    """A drawing by its name, and what it shows for those who cannot see it.

    `key` is a small one without words: where on the whole it is.
    """

    name: str
    says: str
    key: str = ""


class ShopRow(Answer):
    """One thing on a card: a cut, a set-up, a screw."""

    label: str
    what: Line
    lead: str = ""
    big: Line = ()
    lines: tuple[Line, ...] = ()
    warns: tuple[Line, ...] = ()
    ticks: tuple[ShopTick, ...] = ()


class ShopCard(Answer):
    """One thing at a time, on one screen.

    `lead` and `big` are what is set or done, largest.
    """

    id: str
    station: StationKey
    over: str
    title: str
    lead: str = ""
    big: Line = ()
    stops: tuple[Line, ...] = ()
    lines: tuple[Line, ...] = ()
    first: Line = ()
    warns: tuple[Line, ...] = ()
    figures: tuple[ShopFigure, ...] = ()
    rows: tuple[ShopRow, ...] = ()
    ticks: tuple[ShopTick, ...] = ()
    readings: tuple[ShopReading, ...] = ()
    parts: tuple[str, ...] = ()
    timer: Literal["", "glue", "paint"] = ""


class ShopStation(Answer):
    """A place of work with its cards in order."""

    key: StationKey
    title: str
    about: str
    cards: tuple[str, ...]


class ShopPart(Answer):
    """A part as its label opens it."""

    path: str
    mark: str
    title: str
    case: str
    hand: Literal["", "left", "right"]
    edge: str
    end: str
    finished: Line
    cut: Line
    stock: str
    about: Line
    stops: tuple[Line, ...]
    cards: tuple[str, ...]
    figures: tuple[ShopFigure, ...]
    readings: tuple[ShopReading, ...]
    tick: ShopTick


class ShopGone(Answer):
    """A piece that was spoiled and is to be made again."""

    path: str
    mark: str
    title: str


class ShopAnew(Answer):
    """What changed when the rest of the cuts was planned anew; `plan` names what was planned."""

    plan: str
    at: str
    gone: tuple[ShopGone, ...]
    says: tuple[str, ...]


class ShopRest(Answer):
    """What would be planned anew, were it asked for.

    `plan` names the plans in hand. `gone` has lost its place on them; `stays` are the sheets that
    are begun, as far as ticks say, `anew` those that are planned anew.
    """

    plan: str
    state: Literal["", "pending", "failed"]
    gone: tuple[ShopGone, ...]
    stays: tuple[str, ...]
    anew: tuple[str, ...]


class ShopAsked(BaseModel):
    """The rest is to be planned anew; `plan` names what the person saw in hand."""

    model_config = ConfigDict(extra="forbid")

    plan: Short


class ShopBook(Answer):
    """All that is done in the shop, station by station.

    `stamp` changes with its content. `home` is of the job file's place: entries meant for one job
    are never sent into another. `plan` names the plans of cuts in hand, `anew` is what changed
    when the rest was last planned anew, `says` what is to be known of how they are kept.
    """

    job: str
    file: str
    home: str
    unit: Literal["in", "mm"]
    stamp: str
    plan: str
    planned: Literal["there", "pending", "none"]
    anew: ShopAnew | None = None
    says: str = ""
    stations: tuple[ShopStation, ...]
    cards: tuple[ShopCard, ...]
    parts: tuple[ShopPart, ...]


class ShopNow(Answer):
    """What the record says now: how far parts have come, what was sawn, what was spoiled.

    `states` leaves out what is planned only. `noted` are the keys of what is ticked by a note.
    """

    home: str
    entries: int
    states: dict[str, str]
    noted: tuple[str, ...]
    spoiled: tuple[str, ...]
    read: dict[str, Line]


class ShopEntry(Answer):
    """An entry about a thing, as it stands in the record."""

    id: str
    kind: str
    path: str
    says: str
    device: str
    at: str

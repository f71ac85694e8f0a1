"""The book of the shop: every station with its cards, kept while nothing on them changes."""

from __future__ import annotations

import gzip
import hashlib
import threading
from collections.abc import Iterator
from dataclasses import dataclass

from casewright.breakdown import Desk
from casewright.findings import Question
from casewright.install.hanging import Hanging, hanging
from casewright.packet.hold_marks import HoldMarks
from casewright.resolve import HoldPoint, hold_points
from casewright.room.model import Room
from casewright.web.hand_plan import HandPlan
from casewright.web.live_job import LiveJob
from casewright.web.shop_assembly import assembly_cards
from casewright.web.shop_bench import machining_cards, shop_parts
from casewright.web.shop_finish import finishing_cards
from casewright.web.shop_holds import hold_cards
from casewright.web.shop_home import home_of
from casewright.web.shop_plan import Hand
from casewright.web.shop_saw import saw_cards
from casewright.web.shop_schema import ShopBook, ShopCard, ShopStation, StationKey
from casewright.web.shop_wall import hanging_cards
from casewright.web.snapshot import Snapshot

__all__ = ["Bound", "ShopShelf"]

_STATIONS: tuple[tuple[StationKey, str, str], ...] = (
    ("holds", "Measure first", "what is read before the next cut"),
    ("saw", "Saw", "a card for every setting"),
    ("machine", "Machine", "cuts and holes, part by part"),
    ("assemble", "Put together", "step by step, case by case"),
    ("finish", "Finish", "what gets its coats"),
    ("hang", "Hang and set", "marks, lifts, screws"),
)


@dataclass(frozen=True, slots=True)
class Bound:
    """A book with what it was made from.

    Parameters
    ----------
    packed
        The book as it is sent, compressed.
    """

    stamp: str
    packed: bytes
    room: Room
    plans: tuple[HandPlan, ...]
    day: Hanging
    points: tuple[HoldPoint, ...]


class ShopShelf:
    """Makes the book of a job, once for all who ask."""

    def __init__(self, live: LiveJob) -> None:
        self._live = live
        self._lock = threading.Lock()
        self._last: tuple[str, Bound] | None = None
        self._seen: tuple[Snapshot | None, Hand | None] = (None, None)

    def book(self, snapshot: Snapshot) -> Bound:
        """The book of the job as it is."""
        with self._lock:
            plans = self._live.plans
            if self._last and self._seen[0] is snapshot and self._seen[1] is plans.last:
                return self._last[1]
            hand = plans.of(snapshot)
            key = _key(snapshot, hand)
            if self._last is None or self._last[0] != key:
                self._last = (key, _bound(self._live, snapshot, hand))
            self._seen = (snapshot, plans.last)
            return self._last[1]


def _key(snapshot: Snapshot, hand: Hand) -> str:
    """Changes with any number of the job and with the plan of its cuts."""
    digest = hashlib.sha256(snapshot.loaded.file.digest.encode())
    for path, dim in snapshot.worked.room.chain.nodes.items():
        digest.update(f"{path} {dim.value} {dim.built}\n".encode())
    for question in _questions(snapshot, hand):
        digest.update(question.path.encode())
    digest.update((hand.name or "pending").encode())
    digest.update(hand.says.encode())
    return digest.hexdigest()


def _questions(snapshot: Snapshot, hand: Hand) -> tuple[Question, ...]:
    """Those of the job and of the plan in hand: they stay while the next one is worked out."""
    of_plans = (each for plan in hand.plans for each in plan.breakdown.questions)
    return tuple(dict.fromkeys((*snapshot.worked.questions, *of_plans)))


def _bound(live: LiveJob, snapshot: Snapshot, hand: Hand) -> Bound:
    room = snapshot.worked.room
    points = () if snapshot.worked.failures else hold_points(room)
    day = Hanging({}) if snapshot.worked.failures else hanging(room, Desk(room).chain)
    holds = HoldMarks(room, points)
    cards: tuple[ShopCard, ...] = ()
    if not snapshot.worked.failures:
        cards = tuple(_cards(snapshot, hand, points, day, holds))
    parts = tuple(shop_parts(room, hand.breakdowns, holds, cards))
    is_there = any(each.plans for each in hand.breakdowns)
    planned = "there" if is_there else "none" if hand.plans else "pending"
    book = ShopBook(
        job=room.spec.name,
        file=live.path.name,
        home=home_of(live.path),
        unit=room.spec.unit,
        stamp="",
        plan=hand.name,
        planned=planned,  # type: ignore[arg-type]
        anew=hand.anew,
        says=hand.says,
        stations=tuple(_stations(cards)),
        cards=cards,
        parts=parts,
    )
    stamp = hashlib.sha256(book.model_dump_json().encode()).hexdigest()[:16]
    text = book.model_copy(update={"stamp": stamp}).model_dump_json()
    return Bound(stamp, gzip.compress(text.encode(), 6, mtime=0), room, hand.plans, day, points)


def _cards(
    snapshot: Snapshot, hand: Hand, points: tuple[HoldPoint, ...],
    day: Hanging, holds: HoldMarks,
) -> Iterator[ShopCard]:  # fmt: skip
    room = snapshot.worked.room
    yield from hold_cards(room, points, _questions(snapshot, hand))
    for number, plan in enumerate(hand.plans, 1):
        gone = {path for each in hand.plans[number:] if each.rest for path in each.rest.lost}
        yield from saw_cards(room, plan, holds, gone)
    yield from machining_cards(room, holds)
    yield from assembly_cards(room)
    yield from finishing_cards(room)
    yield from hanging_cards(room, day)


def _stations(cards: tuple[ShopCard, ...]) -> Iterator[ShopStation]:
    for key, title, about in _STATIONS:
        own = tuple(card.id for card in cards if card.station == key)
        if own:
            yield ShopStation(key=key, title=title, about=about, cards=own)

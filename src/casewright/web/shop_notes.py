"""Notes that ticks write into the record: what was sawn by which plan, which step is done."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable
from typing import Literal

from casewright.outputs.inlines import Strong
from casewright.record import Entry
from casewright.web.shop_lines import line_of, sentence
from casewright.web.shop_schema import ShopTick

__all__ = [
    "KEPT", "cut_note", "done_tick", "kept_note", "last_plan", "part_tick", "sawn_note",
    "ticks_off",
]  # fmt: skip

KEPT = "kept: "
_SAWN = "sawn: "
_DONE = "done: "
_PLAN = re.compile(r"\bplan ([0-9a-f]{8})$")


def sawn_note(number: int, place: str, plan: str) -> str:
    """Of a cut that gives no part."""
    return f"{_SAWN}cut {number} of {place} plan {plan}"


def kept_note(piece: str, place: str, plan: str) -> str:
    """Of an offcut that is kept."""
    return f"{KEPT}{piece} of {place} plan {plan}"


def cut_note(plan: str) -> str:
    """Of a part that is cut."""
    return f"by plan {plan}"


def part_tick(
    kind: Literal["assembled", "finished", "hung"], path: str, words: str, parts: tuple[str, ...]
) -> ShopTick:
    """Ticks off how far a thing has come."""
    label = line_of(Strong(sentence(words)))
    return ShopTick(key=f"{kind}:{path}", kind=kind, words=(path,), label=label, parts=parts)


def done_tick(what: str, told: Iterable[str], parts: tuple[str, ...] = ()) -> ShopTick:
    """Ticks off what makes no part: done as it is told now, open again once it is told otherwise.

    Parameters
    ----------
    what
        'step 3 of pots'.
    told
        What is to be done.
    parts
        Of what it is a step to: it is done as well once they are put together.
    """
    label = line_of(Strong(sentence(what)))
    digest = hashlib.sha256(what.encode())
    for each in told:
        digest.update(f"{each}\n".encode())
    words = f"{_DONE}{what}, as told {digest.hexdigest()[:8]}"
    return ShopTick(key=words, kind="note", words=(words,), label=label, parts=parts)


def ticks_off(entry: Entry) -> bool:
    """Whether the words of an entry tick something off."""
    return entry.kind in ("note", "offcut") and entry.note.startswith((_SAWN, KEPT, _DONE))


def last_plan(entries: Iterable[Entry]) -> str:
    """Name of the plan of cuts that was last sawn by; empty: none was."""
    name = ""
    for entry in entries:
        found = _PLAN.search(entry.note)
        if found and (entry.kind == "cut" or ticks_off(entry)):
            name = found[1]
    return name

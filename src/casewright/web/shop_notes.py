"""Notes that ticks at the saw write into the record: what was sawn, by which plan."""

from __future__ import annotations

import re
from collections.abc import Iterable

from casewright.record import Entry

__all__ = ["KEPT", "cut_note", "kept_note", "last_plan", "sawn_note", "ticks_off"]

KEPT = "kept: "
_SAWN = "sawn: "
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


def ticks_off(entry: Entry) -> bool:
    """Whether the words of an entry tick something off."""
    return entry.kind in ("note", "offcut") and entry.note.startswith((_SAWN, KEPT))


def last_plan(entries: Iterable[Entry]) -> str:
    """Name of the plan of cuts that was last sawn by; empty: none was."""
    name = ""
    for entry in entries:
        found = _PLAN.search(entry.note)
        if found and (entry.kind == "cut" or ticks_off(entry)):
            name = found[1]
    return name

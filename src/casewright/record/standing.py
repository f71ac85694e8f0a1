"""Which entries stand: corrections and withdrawals carried out, in any order of arrival.

- An entry may name another that it corrects. It counts as a correction when both are about the
  same path and are of one kind; a `withdrawn` entry may name one of any kind. Otherwise it is an
  entry like any other.
- A correction stands in the place of what it corrects, in the order of time too: a reading that
  was put right is no newer than it was.
- Of several corrections of one entry the last in order counts. A correction can be corrected or
  withdrawn in turn; a withdrawn one is as if it had never been.

What stands is a function of the set of entries: neither the order in which they arrive nor how
often each arrives matters.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from casewright.record.entry import HELD_KINDS, Entry, Kind, Order

__all__ = ["Standing", "as_of", "held", "standing"]


@dataclass(frozen=True, slots=True)
class Standing:
    """An entry that stands.

    Parameters
    ----------
    entry
        As it was written.
    place
        Its place in the order: its own, or that of the entry it corrects.
    """

    entry: Entry
    place: Order


def as_of(entries: Iterable[Entry], moment: datetime | Entry) -> tuple[Entry, ...]:
    """The entries that were there at a time, or when an entry had just been written."""
    if isinstance(moment, Entry):
        return tuple(e for e in entries if e.order <= moment.order)
    return tuple(e for e in entries if e.at <= moment)


def standing(entries: Iterable[Entry]) -> tuple[Standing, ...]:
    """The entries that stand, in the order of their places.

    Parameters
    ----------
    entries
        In any order, each at least once.
    """
    known = {entry.id: entry for entry in entries}
    target = _targets(known)
    outcome = _outcomes(known, target)
    found = (
        Standing(result, known[root].order)
        for root, result in outcome.items()
        if root not in target and result is not None and result.kind != "withdrawn"
    )
    return tuple(sorted(found, key=lambda each: (each.place, each.entry.order)))


def held(found: Iterable[Standing]) -> tuple[Standing, ...]:
    """Of what stands, what says how things are now: of each path, kind and size the last."""
    last: dict[tuple[str, Kind, str], Standing] = {}
    for each in found:
        entry = each.entry
        if entry.kind not in HELD_KINDS:
            continue
        for name in [name for name, _ in entry.sizes] or [""]:
            key = (entry.path, entry.kind, name)
            if key not in last or last[key].place <= each.place:
                last[key] = each
    unique = {each.entry.id: each for each in last.values()}
    return tuple(sorted(unique.values(), key=lambda each: (each.place, each.entry.order)))


def _targets(known: Mapping[str, Entry]) -> dict[str, str]:
    """Which entry each correction corrects; none that leads back to itself."""
    target: dict[str, str] = {}
    for entry in known.values():
        other = known.get(entry.corrects)
        if (
            other is not None
            and other.path == entry.path
            and entry.kind in (other.kind, "withdrawn")
        ):
            target[entry.id] = other.id
    for circle in _circles(target):
        del target[circle]
    return target


def _circles(target: Mapping[str, str]) -> set[str]:
    """Ids of corrections that correct one another in a circle."""
    found: set[str] = set()
    done: set[str] = set()
    for start in target:
        way: dict[str, int] = {}
        at = start
        while at in target and at not in done and at not in way:
            way[at] = len(way)
            at = target[at]
        if at in way:
            found.update(each for each, number in way.items() if number >= way[at])
        done.update(way)
    return found


def _outcomes(known: Mapping[str, Entry], target: Mapping[str, str]) -> dict[str, Entry | None]:
    """What stands in the place of each entry; None where it was withdrawn."""
    corrections: dict[str, list[str]] = defaultdict(list)
    for each, corrected in target.items():
        corrections[corrected].append(each)
    left = {each: len(corrections.get(each, ())) for each in known}
    ready = [each for each, count in left.items() if not count]
    outcome: dict[str, Entry | None] = {}
    for each in ready:
        outcome[each] = _outcome(known[each], corrections.get(each, ()), known, outcome)
        if each in target:
            left[target[each]] -= 1
            if not left[target[each]]:
                ready.append(target[each])
    return outcome


def _outcome(
    entry: Entry,
    corrections: Iterable[str],
    known: Mapping[str, Entry],
    outcome: Mapping[str, Entry | None],
) -> Entry | None:
    valid = [known[each] for each in corrections if outcome[each] is not None]
    if not valid:
        return entry
    last = max(valid, key=lambda each: each.order)
    return None if last.kind == "withdrawn" else outcome[last.id]

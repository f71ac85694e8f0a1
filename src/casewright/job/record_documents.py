"""JSON documents of the record. See docs/documents.md."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from casewright.job.changed import Changed
from casewright.job.documents import head_json
from casewright.record import Entry, entry_json, standing
from casewright.resolve.differences import Difference
from casewright.room.specs import JobSpec

__all__ = ["changed_document", "chosen", "difference_json", "list_document", "written_document"]

_Json = dict[str, Any]


def chosen(entries: Iterable[Entry], words: Sequence[str]) -> tuple[Entry, ...]:
    """The entries of some kinds, or about some things and what is in them; all without words."""

    def fits(entry: Entry, word: str) -> bool:
        return word in (entry.kind, entry.path) or entry.path.startswith(f"{word}.")

    return tuple(e for e in entries if not words or any(fits(e, word) for word in words))


def list_document(spec: JobSpec, entries: Sequence[Entry], words: Sequence[str]) -> _Json:
    """`record --json`: entries in order, each with whether it stands."""
    stands = {each.entry.id for each in standing(entries)}
    return {
        **head_json("record", spec),
        "entries": [
            {**entry_json(entry, spec.unit), "stands": entry.id in stands}
            for entry in chosen(entries, words)
        ],
    }


def written_document(
    spec: JobSpec,
    entries: Sequence[Entry],
    doubts: Sequence[str],
    found: Sequence[Difference],
    later: Sequence[tuple[Entry, Entry]] = (),
) -> _Json:
    """`record KIND ... --json`: what was written, what was hard to believe, what follows."""
    return {
        **head_json("record", spec),
        "entries": [{**entry_json(entry, spec.unit), "stands": True} for entry in entries],
        "doubts": list(doubts),
        "changes": [difference_json(difference) for difference in found],
        "later": [{"entry": entry.id, "goes_before_it": other.id} for entry, other in later],
    }


def changed_document(spec: JobSpec, changed: Changed) -> _Json:
    """`changed --json`: what differs since a packet or a moment."""
    return {
        **head_json("changed", spec),
        "since": {
            "packet": None if changed.since is None else changed.since.fingerprint,
            "at": changed.moment.isoformat(),
        },
        "old": changed.old,
        "new": changed.new,
        "stale": changed.is_stale,
        "exact": changed.is_exact,
        "same_file": changed.same_file,
        "changes": [difference_json(difference) for difference in changed.pieces],
        "entries": [entry_json(entry, spec.unit) for entry in changed.entries],
    }


def difference_json(difference: Difference) -> _Json:
    """A difference as data."""
    return {
        "path": difference.path,
        "mark": difference.mark,
        "what": difference.what,
        "old": difference.old,
        "new": difference.new,
        "features": list(difference.features),
        "state": difference.state,
    }

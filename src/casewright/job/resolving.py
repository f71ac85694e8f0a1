"""The proposal of a job: what follows from the record since it was last said yes to."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass

from casewright.job.collector import collector_at_rest
from casewright.job.load import LoadedJob
from casewright.job.recorded import read_entries, record_path, room_with, with_record
from casewright.job.writer import Writer
from casewright.record import (
    Entry,
    Rescue,
    as_of,
    held,
    marks_of,
    offcuts_of,
    outer_paths,
    standing,
)
from casewright.resolve import Offcut, Proposal, propose
from casewright.room.model import Room

__all__ = ["Resolved", "accept", "resolve"]


@dataclass(frozen=True, slots=True)
class Resolved:
    """What follows from the record.

    Parameters
    ----------
    proposal
        Kept, changed, impossible now.
    room
        As it is now.
    since
        The acceptance that it is compared with; None: with the design.
    digest
        Of all that the record says of real things now.
    rescue
        What was done about damage, or None.
    """

    proposal: Proposal
    room: Room
    since: Entry | None
    digest: str
    rescue: Rescue | None = None


def resolve(job: LoadedJob) -> Resolved:
    """What follows from what was read, cut and spoiled since it was last accepted.

    An acceptance counts as long as the record still says of its time what it said then: a
    correction, a withdrawal or an entry that came in late puts what was accepted before it in
    its place.
    """
    entries, rescue = read_entries(job.path)
    name = record_path(job.path).name
    since = _last_accepted(entries)
    then = () if since is None else as_of(entries, since)
    with collector_at_rest():
        before = room_with(job.spec, then, name)
        after = room_with(job.spec, entries, name, designed=before.designed)
        found = held(standing(entries))
        gone = marks_of(held(standing(then))).spoiled
        marks = marks_of(found).spoiled
        fresh = {path for path, place in marks.items() if gone.get(path) != place}
        proposal = propose(
            before,
            after,
            spoiled=tuple(
                part.path
                for part in after.parts
                if part.state == "planned" and fresh.intersection(outer_paths(part.path))
            ),
            offcuts=tuple(_offcut(entry) for entry in offcuts_of(found)),
        )
    return Resolved(proposal, after, since, _digest(entries), rescue)


def accept(job: LoadedJob, resolved: Resolved, writer: Writer) -> Entry:
    """Say yes to a proposal: from now on only what comes after it is told.

    It is taken back by withdrawing the entry.

    Raises
    ------
    RecordError
        When the record cannot be written.
    """
    entry = Entry(
        id=writer.new_id(),
        device=writer.device,
        seq=0,
        at=writer.now,
        kind="accepted",
        path="",
        note=resolved.digest,
    )
    (new, *_), _ = with_record(job.path, lambda store: store.add([entry]))
    return new


def _last_accepted(entries: tuple[Entry, ...]) -> Entry | None:
    yes = [s.entry for s in standing(entries) if s.entry.kind == "accepted" and not s.entry.path]
    for entry in reversed(yes):
        if _digest(as_of(entries, entry)) == entry.note:
            return entry
    return None


def _digest(entries: Iterable[Entry]) -> str:
    """Twelve characters that change whenever the record says something else of real things."""
    stands = (s.entry.id for s in held(standing(entries)) if s.entry.kind != "accepted")
    return hashlib.sha256("\n".join(sorted(stands)).encode()).hexdigest()[:12]


def _offcut(entry: Entry) -> Offcut:
    sizes = dict(entry.sizes)
    return Offcut(entry.path, entry.stock, sizes["length"], sizes["width"])

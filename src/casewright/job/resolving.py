"""The proposal of a job: what follows from the record since it was last said yes to."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass, replace

from casewright.facts import merged
from casewright.findings import Finding
from casewright.job.collector import collector_at_rest
from casewright.job.load import LoadedJob
from casewright.job.recorded import (
    marked,
    moment_of,
    on_hand,
    read_entries,
    record_path,
    room_with,
    with_record,
)
from casewright.job.relayout import outgrown_runs, told_anew
from casewright.job.writer import Writer
from casewright.record import (
    Entry,
    Rescue,
    Sizes,
    as_of,
    facts_of,
    held,
    marks_of,
    offcuts_of,
    outer_paths,
    standing,
)
from casewright.resolve import Proposal, Staying, propose, stay
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["Resolved", "accept", "resolve"]


_AT_ONCE = 40
"""Sizes that one entry tells of."""


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
    staying
        Pieces that are cut as they were planned all the same, where that was asked for.
    rescue
        What was done about damage, or None.
    outgrown
        Of each run that no longer holds as it was laid out, what is wrong with it, and what it
        would be now.
    """

    proposal: Proposal
    room: Room
    since: Entry | None
    digest: str
    rescue: Rescue | None = None
    staying: Staying | None = None
    outgrown: tuple[Finding, ...] = ()


def resolve(job: LoadedJob, *, fewest: bool = False, moment: str | None = None) -> Resolved:
    """What follows from what was read, cut and spoiled since it was last accepted.

    Parameters
    ----------
    fewest
        Whether as few pieces are to change as can be, rather than each go to its best size.
    moment
        As it was then: a date, a time or an entry; None: as it is now.

    An acceptance counts as long as the record still says of its time what it said then: a
    correction, a withdrawal or an entry that came in late puts what was accepted before it in
    its place.

    Raises
    ------
    RecordError
        When the moment has no meaning.
    """
    entries, rescue = read_entries(job.path)
    if moment is not None:
        entries = as_of(entries, moment_of(moment, entries))
    name = record_path(job.path).name
    since = _last_accepted(entries)
    then = () if since is None else as_of(entries, since)
    with collector_at_rest():
        before = room_with(job.spec, then, name)
        after = room_with(job.spec, entries, name, designed=before.designed)
        found = held(standing(entries))
        staying = stay(before, after) if fewest else None
        if staying is not None and staying.kept:
            facts = merged(facts_of(found, name), staying.facts)
            after = marked(build(job.spec, facts, designed=before.designed), marks_of(found))
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
            offcuts=on_hand(offcuts_of(found)),
        )
        outgrown = told_anew(after, outgrown_runs(after).values())
    return Resolved(proposal, after, since, _digest(entries), rescue, staying, outgrown)


def accept(job: LoadedJob, resolved: Resolved, writer: Writer) -> Entry:
    """Say yes to a proposal: from now on only what comes after it is told.

    It is taken back by withdrawing the entry.

    Raises
    ------
    RecordError
        When the record cannot be written.
    """
    kept = _kept(resolved.staying)
    bare = Entry(
        id=writer.new_id(),
        device=writer.device,
        seq=0,
        at=writer.now,
        kind="accepted",
        path="",
    )
    yes = replace(bare, note=resolved.digest)
    if kept:
        yes = replace(yes, path=f"as_planned.{yes.id[:8]}")
    sizes = [
        replace(bare, id=writer.new_id(), path=yes.path, sizes=kept[n : n + _AT_ONCE])
        for n in range(0, len(kept), _AT_ONCE)
    ]
    (*_, new), _ = with_record(job.path, lambda store: store.add([*sizes, yes]))
    return new


def _kept(staying: Staying | None) -> Sizes:
    """Sizes that pieces are cut to all the same."""
    kept = () if staying is None else staying.kept
    return tuple(sorted((dim.path, size) for each in kept for dim, size in each.sizes))


def _last_accepted(entries: tuple[Entry, ...]) -> Entry | None:
    yes = [s.entry for s in standing(entries) if s.entry.kind == "accepted" and s.entry.note]
    for entry in reversed(yes):
        if _digest(as_of(entries, entry)) == entry.note:
            return entry
    return None


def _digest(entries: Iterable[Entry]) -> str:
    """Twelve characters that change whenever the record says something else of real things."""
    stands = (s.entry.id for s in held(standing(entries)) if s.entry.kind != "accepted")
    return hashlib.sha256("\n".join(sorted(stands)).encode()).hexdigest()[:12]

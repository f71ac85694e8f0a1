"""What differs in a job since a packet was printed, or since a date."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from casewright.job.fingerprint import printed_fingerprint
from casewright.job.load import LoadedJob, read_job
from casewright.job.printed import Print, prints_in
from casewright.job.recorded import (
    moment_of,
    read_entries,
    record_path,
    room_with,
)
from casewright.record import (
    Entry,
    RecordError,
    Rescue,
    as_of,
)
from casewright.resolve.differences import Difference, differences
from casewright.room.model import Room

__all__ = ["Changed", "changed_since"]

_SHORTEST = 4


@dataclass(frozen=True, slots=True)
class Changed:
    """A job now against what it was.

    Parameters
    ----------
    since
        What it is compared with: the packet, or None for a date.
    moment
        When that was.
    old, new
        Fingerprints then and now.
    is_exact
        False where the packet cannot be worked out as it was: the program is another one.
    same_file
        True where the job file of then is not known, and is taken as it is now.
    pieces
        Those that came, went, or are to be made otherwise.
    entries
        Written since, in order.
    rescue
        What was done about damage, or None.
    """

    since: Print | None
    moment: datetime
    old: str
    new: str
    is_exact: bool
    same_file: bool
    pieces: tuple[Difference, ...]
    entries: tuple[Entry, ...]
    rescue: Rescue | None = None

    @property
    def is_stale(self) -> bool:
        """Whether pages of then are not what would be printed now."""
        return self.old != self.new


def changed_since(job: LoadedJob, since: str | None) -> Changed:
    """What differs since a packet, a date or an entry.

    Parameters
    ----------
    since
        Fingerprint of a packet, or its beginning; a date, a time, the id of an entry; None: the
        last packet that was printed.

    Raises
    ------
    RecordError
        When there was none, or the word has no meaning.
    """
    entries, rescue = read_entries(job.path)
    prints = prints_in(entries)
    print_, moment = _meant(since, prints, entries)
    text = print_
    if text is None:
        there = {entry.id for entry in as_of(entries, moment)}
        earlier = [each for each in prints if each.entry.id in there]
        text = earlier[-1] if earlier else None
    before = _room(job, None if text is None else text.text, as_of(entries, moment))
    after = _room(job, None, entries)
    old, new = printed_fingerprint(before), printed_fingerprint(after)
    known = {entry.id for entry in as_of(entries, moment)}
    return Changed(
        since=print_,
        moment=moment.at if isinstance(moment, Entry) else moment,
        old=old if print_ is None else print_.fingerprint,
        new=new,
        is_exact=print_ is None or old == print_.fingerprint,
        same_file=text is None,
        pieces=differences(before, after),
        entries=tuple(e for e in entries if e.id not in known and e.kind != "printed"),
        rescue=rescue,
    )


def _meant(
    since: str | None, prints: Sequence[Print], entries: tuple[Entry, ...]
) -> tuple[Print | None, datetime | Entry]:
    if since is None:
        if not prints:
            what = "no packet of this job was printed yet"
            raise RecordError.of(what, "name a date, such as 2026-05-12")
        return prints[-1], prints[-1].entry
    if len(since) >= _SHORTEST:
        for each in reversed(prints):
            if each.fingerprint.startswith(since.lower()):
                return each, each.entry
    try:
        return None, moment_of(since, entries)
    except RecordError:
        known = ", ".join(dict.fromkeys(each.fingerprint for each in reversed(prints[-6:])))
        what = "this is no date, no entry, and no packet that was printed here"
        want = "write a date such as 2026-05-12"
        if known:
            want += f", or the fingerprint of a packet: {known}"
        raise RecordError.of(what, want, word=since[:40]) from None


def _room(job: LoadedJob, text: str | None, entries: tuple[Entry, ...]) -> Room:
    spec = job.spec if text is None else read_job(text, job.file.name)
    return room_with(spec, entries, record_path(job.path).name)

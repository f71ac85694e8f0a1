"""The record beside a job file: where it lies, what it says, and the job worked out with it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import NamedTuple, TypeVar

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Chain
from casewright.facts import NO_FACTS, Facts
from casewright.findings import Finding, Severity
from casewright.job.learning import learned_of, with_learned
from casewright.job.load import LoadedJob, load_job
from casewright.job.trial import work_out_job
from casewright.job.worked import WorkedJob
from casewright.record import (
    NO_MARKS,
    Entry,
    Marks,
    RecordError,
    Rescue,
    Standing,
    Store,
    as_of,
    damaged_files,
    facts_of,
    held,
    marks_of,
    offcuts_of,
    standing,
    with_store,
)
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec
from casewright.shop import Learned
from casewright.stock import Offcut

__all__ = [
    "EMPTY",
    "AsRecorded",
    "Recorded",
    "Use",
    "as_recorded",
    "entry_named",
    "is_kept",
    "marked",
    "moment_of",
    "on_hand",
    "read_entries",
    "read_record",
    "record_path",
    "recorded_by",
    "room_with",
    "with_record",
    "work_out_recorded",
]  # fmt: skip

_Result = TypeVar("_Result")
_SHORTEST_ID = 4


@dataclass(frozen=True, slots=True)
class Recorded:
    """What the record of a job says.

    Parameters
    ----------
    facts
        Sizes read and cut, by path.
    marks
        How far pieces, fronts and cases have come.
    offcuts
        Those that are there.
    rescue
        What was done about damage, or None.
    learned
        By kind of tool, what pieces cut and read say of it.
    entries
        Ids of the entries that it says it by.
    """

    facts: Facts
    marks: Marks
    offcuts: tuple[Entry, ...] = ()
    rescue: Rescue | None = None
    learned: Mapping[str, Learned] = field(default_factory=dict)
    entries: tuple[str, ...] = ()


EMPTY = Recorded(NO_FACTS, NO_MARKS)


@dataclass(frozen=True, slots=True)
class Use:
    """Which record a job is to be worked out with.

    Parameters
    ----------
    left_out
        As if nothing had been read or cut.
    moment
        As it was then; None: as it is now.
    """

    left_out: bool = False
    moment: str | None = None


def record_path(job: Path) -> Path:
    """Where the record of a job lies: kitchen.record beside kitchen.toml."""
    path = job.with_suffix(".record")
    return job.with_name(f"{job.name}.record") if path == job else path


def is_kept(job: Path) -> bool:
    """Whether a job has a record, or what damage left of one."""
    path = record_path(job)
    return path.exists() or bool(damaged_files(path))


def with_record(job: Path, work: Callable[[Store], _Result]) -> tuple[_Result, Rescue | None]:
    """Work on the record of a job; see `casewright.record.with_store`."""
    return with_store(record_path(job), work)


def read_entries(job: Path) -> tuple[tuple[Entry, ...], Rescue | None]:
    """Every entry in order; none where there is no record."""
    if not is_kept(job):
        return (), None
    entries, rescue = with_record(job, Store.entries)
    return tuple(sorted(entries, key=lambda entry: entry.order)), rescue


def read_record(job: Path, use: Use | None = None) -> Recorded:
    """What the record of a job says.

    Parameters
    ----------
    use
        Now, unless it says otherwise.

    Raises
    ------
    RecordError
        When the record cannot be used, or the moment has no meaning.
    """
    moment = use.moment if use else None
    if (use and use.left_out) or not is_kept(job):
        return EMPTY
    if moment is None:
        found, rescue = with_record(job, Store.held)
    else:
        entries, rescue = read_entries(job)
        found = held(standing(as_of(entries, moment_of(moment, entries))))
    return _recorded(found, record_path(job).name, rescue)


def room_with(
    spec: JobSpec, entries: Iterable[Entry], name: str, *, designed: Chain | None = None
) -> Room:
    """A job built with what entries say, its parts marked; not proved.

    Parameters
    ----------
    name
        What origins call the record.
    designed
        As for `build`.
    """
    found = held(standing(entries))
    facts = facts_of(found, name) if found else NO_FACTS
    room = marked(build(spec, facts, designed=designed), marks_of(found))
    return replace(room, offcuts=on_hand(offcuts_of(found)))


def _recorded(found: tuple[Standing, ...], name: str, rescue: Rescue | None) -> Recorded:
    facts, marks = facts_of(found, name), marks_of(found)
    ids = tuple(each.entry.id for each in found)
    return Recorded(facts, marks, offcuts_of(found), rescue, learned_of(found), ids)


def recorded_by(job: Path, ids: Collection[str]) -> Recorded:
    """What a record said when it held no more than some of its entries.

    Raises
    ------
    RecordError
        When the record cannot be used.
    """
    entries, rescue = read_entries(job)
    then = [entry for entry in entries if entry.id in ids]
    return _recorded(held(standing(then)), record_path(job).name, rescue)


def moment_of(text: str, entries: tuple[Entry, ...]) -> datetime | Entry:
    """A moment as it was typed: 2026-05-12 (its whole day), with a time, or an entry.

    Raises
    ------
    RecordError
        When it is none of them.
    """
    known = _named(text, entries)
    if len(known) == 1:
        return known[0]
    try:
        day = date.fromisoformat(text)
    except ValueError:
        pass
    else:
        end = datetime.combine(day, time()) + timedelta(days=1, microseconds=-1)
        return end.astimezone()
    try:
        return datetime.fromisoformat(text).astimezone()
    except (ValueError, OverflowError):
        what = "several entries begin so" if known else "this is no date and no entry"
        want = "write a date such as 2026-05-12, or the id of an entry"
        raise RecordError.of(what, want, word=text[:40]) from None


def entry_named(text: str, entries: tuple[Entry, ...]) -> Entry:
    """The entry with an id, or whose id alone begins so.

    Raises
    ------
    RecordError
        When there is none, or several.
    """
    known = _named(text, entries)
    if len(known) != 1:
        what = f"{'several entries begin with' if known else 'there is no entry'} {text[:40]}"
        raise RecordError.of(what, "casewright record JOB lists them with their ids")
    return known[0]


def _named(text: str, entries: tuple[Entry, ...]) -> list[Entry]:
    whole = [e for e in entries if e.id == text]
    if whole or len(text) < _SHORTEST_ID:
        return whole
    return [e for e in entries if e.id.startswith(text)]


def work_out_recorded(job: LoadedJob, recorded: Recorded) -> WorkedJob:
    """A job worked out with what its record says.

    Raises
    ------
    JobFileError
        As `work_out_job` does.
    """
    job = replace(job, spec=with_learned(job.spec, recorded.learned))
    worked = work_out_job(job, recorded.facts)
    lost = tuple(_lost_marks(worked.room, recorded.marks))
    room = replace(marked(worked.room, recorded.marks), offcuts=on_hand(recorded.offcuts))
    return replace(worked, room=room, findings=(*worked.findings, *lost))


class AsRecorded(NamedTuple):
    """A job as it lies on the disk.

    Parameters
    ----------
    job
        Its file.
    recorded
        Its record.
    worked
        Worked out with that.
    """

    job: LoadedJob
    recorded: Recorded
    worked: WorkedJob


def as_recorded(path: Path) -> AsRecorded:
    """A job file read, and worked out with the record beside it.

    Raises
    ------
    JobFileError
        With everything that is wrong in the file.
    RecordError
        When its record cannot be used.
    OSError
        When the file cannot be read.
    """
    job, recorded = load_job(path), read_record(path)
    return AsRecorded(job, recorded, work_out_recorded(job, recorded))


def on_hand(entries: Iterable[Entry]) -> tuple[Offcut, ...]:
    """Offcuts that were kept, by their entries."""
    sizes = ((entry, dict(entry.sizes)) for entry in entries)
    return tuple(Offcut(e.path, e.stock, size["length"], size["width"]) for e, size in sizes)


def _lost_marks(room: Room, marks: Marks) -> Iterator[Finding]:
    """Marks on what is not in the job now; sizes that nothing takes up are found by the room."""
    known = {case.key for case in room.cases}
    for part in room.parts:
        known |= {part.path, part.front}
    known |= {front.path for case in room.cases for front in case.fronts}
    for path in sorted(set(marks.marked) - known):
        kind = marks.furthest(path)
        if kind is not None:
            yield Finding(
                rule="lost mark",
                severity=Severity.CARE,
                path=path,
                says=f"{path} was marked {kind}, but nothing of that name is in the job now",
                remedies=("name the case as it was", "mark the right piece, withdraw this mark"),
            )


def marked(room: Room, marks: Marks) -> Room:
    """A room whose parts know how far they have come.

    A mark on a case is one on its box, not on its fronts; one on a front is on all its parts.
    """
    if not marks.marked:
        return room
    cases = {case.key: _marked_case(case, marks) for case in room.cases}
    runs = tuple(
        run.with_parts(lambda part: _marked_part(part, marks)).with_cases(cases)
        for run in room.runs
    )
    return replace(room, cases=tuple(cases.values()), runs=runs)


def _marked_case(case: Case, marks: Marks) -> Case:
    return replace(case, parts=tuple(_marked_part(part, marks) for part in case.parts))


def _marked_part(part: Part, marks: Marks) -> Part:
    furthest = marks.furthest(part.path, without=(part.case,) if part.front else ())
    match furthest:
        case "cut" | "machined" | "assembled" | "finished" | "hung":
            return replace(part, state=furthest)
        case _:
            return part

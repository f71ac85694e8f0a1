"""The command `record`: write into the record of a job, list it, send it on."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import NoReturn

from casewright.cli.commands import has_failed, tell_rescue
from casewright.cli.exits import CLEAN, FAILED_PROOF, OPEN
from casewright.cli.forecast_texts import answer_lines
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cli.record_texts import (
    change_lines,
    fronts_left_lines,
    later_lines,
    list_lines,
    written_lines,
)
from casewright.cli.resolve_texts import outgrown_lines
from casewright.job.load import LoadedJob, load_job
from casewright.job.record_documents import list_document, written_document
from casewright.job.recorded import (
    entry_named,
    moment_of,
    read_entries,
    read_record,
    record_path,
    with_record,
    work_out_recorded,
)
from casewright.job.recording import Drafts, Said, draft
from casewright.job.relayout import outgrown_runs, told_anew
from casewright.job.transfer import STANDARD, check_export, content_of, entries_in
from casewright.job.writer import this_writer
from casewright.outputs.files import write_file
from casewright.record import KINDS, Entry, Kind, RecordError, Standing, Store, as_of
from casewright.resolve.differences import differences
from casewright.room.model import Room

__all__ = ["RecordOptions", "run_record"]

_LIST = "list"


@dataclass(frozen=True, slots=True)
class RecordOptions:
    """What goes with an entry, and what else is to be done.

    Parameters
    ----------
    size, tool, within, note, corrects
        As typed; None when not given.
    sure
        Whether what is hard to believe is true.
    moment
        List it as it was then.
    take_in, put_out
        Files to import from and export to.
    """

    size: str | None = None
    tool: str | None = None
    within: str | None = None
    note: str | None = None
    corrects: str | None = None
    sure: bool = False
    moment: str | None = None
    take_in: Path | None = None
    put_out: Path | None = None


def run_record(job: Path, words: list[str], options: RecordOptions, *, as_json: bool) -> int:
    """`record`: one thing of the four."""
    loaded = load_job(job)
    if options.take_in is not None or options.put_out is not None:
        if words or (options.take_in and options.put_out):
            _refuse("that is two things at once", "import, export or record, one at a time")
        return _take_in(loaded, options) if options.take_in else _put_out(loaded, options)
    kind, *rest = words or [_LIST]
    if kind == _LIST:
        return _list(loaded, rest, options, as_json=as_json)
    if kind not in KINDS:
        near = get_close_matches(kind, (*KINDS, _LIST), 1)
        meant = f"did you mean {near[0]}? " if near else ""
        want = f"{meant}use one of {', '.join(KINDS)}, or {_LIST}"
        _refuse(f"{kind} is nothing that can be recorded", want)
    if options.moment is not None:
        _refuse("nothing can be written into the past", "leave out --as-of")
    return _write(loaded, kind, rest, options, as_json=as_json)


def _write(
    loaded: LoadedJob, kind: Kind, words: list[str], options: RecordOptions, *, as_json: bool
) -> int:
    corrects = options.corrects
    if kind == "withdrawn" and corrects is None and words:
        corrects, *words = words
    recorded = read_record(loaded.path)
    tell_rescue(recorded.rescue)
    with working("working out every part"):
        before = work_out_recorded(loaded, recorded)
    if has_failed(before, as_json=as_json):
        print("Nothing was recorded: the parts do not go together.", file=sys.stderr)
        return FAILED_PROOF
    said = Said(
        kind,
        tuple(words),
        size=options.size or "",
        tool=options.tool or "",
        within=options.within or "",
        note=options.note or "",
        corrects=None if corrects is None else _entry(loaded, corrects),
    )
    drafts = draft(before.room, recorded.facts, said, this_writer())
    if drafts.doubts and not options.sure:
        return _question(loaded, drafts, as_json=as_json)
    new, later = _added(loaded, drafts)
    with working("looking what follows"):
        after = work_out_recorded(loaded, read_record(loaded.path))
        found = differences(before.room, after.room)
    if as_json:
        print_json(written_document(loaded.spec, new, drafts.doubts, found, later))
    else:
        print_lines(written_lines(new, before.room))
        print_lines(fronts_left_lines(new, after.room))
        print_lines(later_lines(later))
        print_lines(change_lines(found))
        print_lines(_outgrown_lines(before.room, after.room))
        print_lines(answer_lines(before.room, new))
    return CLEAN


def _outgrown_lines(before: Room, after: Room) -> Iterator[str]:
    """Runs that held as they were laid out until now, and what they would be."""
    known, found = outgrown_runs(before), outgrown_runs(after)
    new = [finding for key, finding in found.items() if key not in known]
    if new:
        yield from outgrown_lines(told_anew(after, new))


def _added(
    loaded: LoadedJob, drafts: Drafts
) -> tuple[tuple[Entry, ...], tuple[tuple[Entry, Entry], ...]]:
    """The new entries; those of them that one dated later goes before, with that one."""

    def add(store: Store) -> tuple[tuple[Entry, ...], tuple[Standing, ...]]:
        return store.add(drafts.entries), store.held()

    (new, held), rescue = with_record(loaded.path, add)
    tell_rescue(rescue)
    ids = {each.entry.id for each in held}
    later = [
        (entry, each.entry)
        for entry in new
        for each in held
        if entry.id not in ids and (each.entry.path, each.entry.kind) == (entry.path, entry.kind)
    ]
    return new, tuple(later)


def _question(loaded: LoadedJob, drafts: Drafts, *, as_json: bool) -> int:
    if as_json:
        print_json(written_document(loaded.spec, (), drafts.doubts, ()))
    else:
        print_lines(f"  ASK   {says}" for says in drafts.doubts)
        print("Nothing was recorded. Measure again; if it is so, say it with --sure.")
    return OPEN


def _list(loaded: LoadedJob, words: list[str], options: RecordOptions, *, as_json: bool) -> int:
    entries, rescue = read_entries(loaded.path)
    tell_rescue(rescue)
    if options.moment is not None:
        entries = as_of(entries, moment_of(options.moment, entries))
    if as_json:
        print_json(list_document(loaded.spec, entries, words))
    else:
        print_lines(list_lines(loaded.spec, record_path(loaded.path), entries, words))
    return CLEAN


def _take_in(loaded: LoadedJob, options: RecordOptions) -> int:
    entries = entries_in(options.take_in or STANDARD, loaded.spec.unit)
    new, rescue = with_record(loaded.path, lambda store: store.add(entries))
    tell_rescue(rescue)
    there = len(entries) - len(new)
    print(f"{len(new)} new, {there} there already")
    return CLEAN


def _put_out(loaded: LoadedJob, options: RecordOptions) -> int:
    file = options.put_out or STANDARD
    entries, rescue = read_entries(loaded.path)
    tell_rescue(rescue)
    if options.moment is not None:
        entries = as_of(entries, moment_of(options.moment, entries))
    content = content_of(entries, file, loaded.spec.unit)
    if file == STANDARD:
        sys.stdout.buffer.write(content)
        return CLEAN
    check_export(file)
    write_file(file, content)
    print(f"{file}: {len(entries)} entries")
    return CLEAN


def _entry(loaded: LoadedJob, name: str) -> Entry:
    entries, rescue = read_entries(loaded.path)
    tell_rescue(rescue)
    return entry_named(name, entries)


def _refuse(what: str, want: str) -> NoReturn:
    raise RecordError.of(what, want)

"""The command `changed`: whether pages in the shop are stale, and what differs."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import CLEAN, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.record_texts import change_lines, entry_lines
from casewright.dims import Unit
from casewright.job.changed import Changed, changed_since
from casewright.job.load import load_job
from casewright.job.record_documents import changed_document

__all__ = ["run_changed"]


def run_changed(job: Path, since: str | None, *, as_json: bool) -> int:
    """`changed`: since a packet, a date or an entry; 1 when pages of then are stale."""
    loaded = load_job(job)
    changed = changed_since(loaded, since)
    tell_rescue(changed.rescue)
    if as_json:
        print_json(changed_document(loaded.spec, changed))
    else:
        print_lines(_lines(changed, loaded.spec.unit))
    return OPEN if changed.is_stale else CLEAN


def _lines(changed: Changed, unit: Unit) -> Iterator[str]:
    day = f"{changed.moment.day} {changed.moment:%b %Y %H:%M}"
    then = f"The packet {changed.old} of {day}" if changed.since else f"Since {day}"
    if not changed.is_stale:
        yield f"{then}: nothing that is printed has changed."
    elif changed.since:
        yield f"{then}: its pages are stale. Printed now it would be {changed.new}."
    else:
        yield f"{then}: pages printed then are stale. Printed now they would be {changed.new}."
    if not changed.is_exact:
        yield (
            "It cannot be worked out quite as it was, because the program is another one now; "
            "what is told here goes by the program as it is."
        )
    if changed.same_file:
        yield "No packet was printed before that, so the job file is taken as it is now."
    yield from change_lines(changed.pieces, "What differs")
    if changed.is_stale and not changed.pieces:
        yield "No piece is to be made otherwise; cuts, lists or findings may differ."
    if changed.entries:
        yield "Written since:"
        yield from entry_lines(changed.entries, unit)

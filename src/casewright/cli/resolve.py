"""The command `resolve`: what follows from the record, shown and said yes to."""

from __future__ import annotations

from pathlib import Path

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import CLEAN, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cli.resolve_texts import (
    has_kept,
    outgrown_lines,
    proposal_lines,
    staying_lines,
)
from casewright.job.load import load_job
from casewright.job.resolve_document import resolve_document
from casewright.job.resolving import Resolved, accept, resolve
from casewright.job.writer import this_writer
from casewright.record import Entry, RecordError

__all__ = ["run_resolve"]


def run_resolve(
    job: Path, *, accepts: bool, fewest: bool, as_json: bool, moment: str | None = None
) -> int:
    """`resolve`: 1 as long as there is something to say yes to."""
    if accepts and moment is not None:
        what = "what was is not accepted now"
        raise RecordError.of(what, "leave --accept out, or --as-of")
    loaded = load_job(job)
    with working("looking what follows"):
        resolved = resolve(loaded, fewest=fewest, moment=moment)
    tell_rescue(resolved.rescue)
    is_open = not resolved.proposal.is_empty or has_kept(resolved.staying)
    yes = accept(loaded, resolved, this_writer()) if accepts and is_open else None
    if as_json:
        print_json(resolve_document(loaded.spec, resolved, yes))
    else:
        print(_since(resolved))
        print_lines(staying_lines(resolved.staying))
        print_lines(proposal_lines(resolved.proposal, loaded.spec.unit))
        print_lines(outgrown_lines(resolved.outgrown))
        if (accepts or is_open) and moment is None:
            print(_verdict(yes, resolved, is_open=is_open))
    return OPEN if is_open and yes is None else CLEAN


def _since(resolved: Resolved) -> str:
    if resolved.since is None:
        return "What was read and cut, against the design:"
    at = resolved.since.at
    return f"Since it was accepted on {at.day} {at:%b %Y %H:%M} ({resolved.since.id[:8]}):"


def _verdict(yes: Entry | None, resolved: Resolved, *, is_open: bool) -> str:
    if yes is not None:
        name = yes.id[:8]
        return f"Accepted as {name}; casewright record JOB withdrawn {name} takes it back."
    if not is_open:
        return "There is nothing to accept."
    told = resolved.proposal
    if resolved.since and not (told.changes or told.again or has_kept(resolved.staying)):
        return "Nothing new to say yes to; what is impossible is told until it is put right."
    return "Say yes with --accept; only what comes after is told then."

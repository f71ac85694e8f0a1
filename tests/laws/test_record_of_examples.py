"""Example jobs lived through: what is made as it was planned changes nothing."""

from __future__ import annotations

from datetime import UTC, datetime
from functools import cache

import pytest
from tests.jobs import EXAMPLE_NAMES, example, loaded

from casewright.facts import NO_FACTS
from casewright.job.recorded import marked
from casewright.job.recording import Said, draft
from casewright.job.worked import WorkedJob, work_out
from casewright.job.writer import Writer
from casewright.record import Entry, facts_of, marks_of, standing
from casewright.record.codec import LONGEST_BODY, body_of
from casewright.resolve.differences import differences
from casewright.room.build import build


@cache
def _planned(name: str) -> WorkedJob:
    return work_out(loaded(example(name)).spec)


@cache
def _made(name: str) -> tuple[Entry, ...]:
    """Every piece machined as planned."""
    room = _planned(name).room
    numbers = iter(range(10**6))
    writer = Writer("bench", datetime(2026, 5, 12, tzinfo=UTC), lambda: f"e{next(numbers)}")
    said = Said("machined", tuple(part.mark for part in room.parts))
    return draft(room, NO_FACTS, said, writer).entries


@cache
def _lived(name: str) -> WorkedJob:
    """The job when all of that is done."""
    return work_out(_planned(name).room.spec, facts_of(standing(_made(name))))


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_a_job_made_as_planned_is_the_job_as_planned(name: str) -> None:
    """After half of the pieces and after all of them: no size, no cut, no hole is another."""
    before, entries = _planned(name).room, _made(name)
    assert len(entries) == len(before.parts)
    assert all(len(body_of(entry)) <= LONGEST_BODY for entry in entries)
    half = standing(entries[: len(entries) // 2])
    for found, built in (
        (half, build(before.spec, facts_of(half))), (standing(entries), _lived(name).room),
    ):  # fmt: skip
        after = marked(built, marks_of(found))
        assert differences(before, after) == ()
        assert [part.state for part in after.parts].count("machined") == len(found)
        assert not after.chain.unused_facts
        now = after.chain.nodes
        gone = set(before.chain.nodes) - set(now)
        for path, dim in before.chain.nodes.items():
            assert path in gone or now[path].value == dim.value, path
        # Cut to its twin, a piece is on the grid as it is.
        assert all(path.endswith(("_to_cut", "_to_cut_rest")) for path in gone)


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_a_job_made_as_planned_goes_together(name: str) -> None:
    plain, made = _planned(name), _lived(name)
    assert made.holds
    assert {finding.rule for finding in made.findings} <= {f.rule for f in plain.findings}

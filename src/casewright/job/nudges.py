"""The cuts of a job, and depths near its own that would save a sheet or a setting."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from casewright.breakdown import Breakdown, Each, Nudge, break_down, find_nudges, in_turn, moved
from casewright.cutting.settling import Task, TaskSolution
from casewright.dims import Origin, as_said, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.outputs.apart import in_two

__all__ = [
    "SAVES", "Planned", "pays_apart", "plan_apart", "plan_job", "planned_job",
]  # fmt: skip

_Thing = TypeVar("_Thing")
_Made = TypeVar("_Made")

_PLAN = "plan"
SAVES = f"{_PLAN}.saves"
"""Under which depths that save something stand on the chain."""

_TRIED = Origin("solved", "tried on the whole job: what it saves was laid out anew")
_MANY = 100
"""From so many parts on a process that helps takes less time than it saves (measured)."""


def pays_apart(worked: WorkedJob) -> bool:
    """Whether another process that plans saves more time than its start takes."""
    return len(worked.room.parts) >= _MANY


def plan_job(worked: WorkedJob, *, quick: bool = False) -> Breakdown:
    """Break a job down into cuts; what another depth would save is among the findings.

    Parameters
    ----------
    quick
        Whether a second process may help where there is much to do; it changes nothing else.
    """
    if quick and pays_apart(worked):
        return planned_job(worked, plan_apart(worked))
    breakdown = break_down(worked.room)
    return _with(breakdown, _savings(worked, breakdown, in_turn))


@dataclass(frozen=True, slots=True)
class Planned:
    """What a job's plans hang on, for whoever has the job.

    Parameters
    ----------
    done
        What came of all that was to be laid out.
    savings
        Notes of depths that save something.
    """

    done: Mapping[tuple[Task, ...], TaskSolution]
    savings: tuple[Finding, ...]


def plan_apart(worked: WorkedJob) -> Planned:
    """Do what takes long in planning a job, with a second process that helps."""
    done: dict[Any, Any] = {}

    def each(work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
        made = in_two(work, things)
        done.update(zip(things, made, strict=True))
        return made

    breakdown = break_down(worked.room, each=each)
    return Planned(done, tuple(_savings(worked, breakdown, in_two)))


def planned_job(worked: WorkedJob, planned: Planned) -> Breakdown:
    """`plan_job` with what takes long done already."""
    done: Mapping[Any, Any] = planned.done

    def each(work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
        return [done[thing] if thing in done else work(thing) for thing in things]

    return _with(break_down(worked.room, each=each), planned.savings)


def _with(breakdown: Breakdown, savings: Iterable[Finding]) -> Breakdown:
    return replace(breakdown, findings=(*breakdown.findings, *savings))


def _savings(worked: WorkedJob, breakdown: Breakdown, each: Each) -> Iterator[Finding]:
    """A note for each depth that saves something and brings up nothing that was not there."""
    known = _grave(worked)
    for nudge in find_nudges(worked.room, breakdown, worked.facts, each=each):
        spec = moved(worked.room.spec, nudge.group, nudge.depth)
        then = work_out(spec, worked.facts)
        if not then.failures and _grave(then) <= known:
            yield _note(worked, nudge)


def _grave(worked: WorkedJob) -> set[tuple[str, str]]:
    graves = (f for f in worked.findings if f.severity is not Severity.NOTE)
    return {(found.rule, found.path) for found in graves}


def _note(worked: WorkedJob, nudge: Nudge) -> Finding:
    spec, group = worked.room.spec, nudge.group
    own = Reckoning("saves", group.cases[0], spec.unit, worked.room.chain.nodes, _PLAN)
    nodes, key = worked.room.chain.nodes, group.cases[0]
    dim = nodes.get(f"{key}.wanted_depth") or nodes[f"{key}.depth"]
    now = as_said(dim, spec.unit)
    then = as_said(own.worked("depth", nudge.depth, _TRIED, dim), spec.unit)
    titles = [case.title for case in spec.cases if case.key in group.cases]
    keys = [f"[case.{key}]" for key in group.cases]
    is_one = len(titles) == 1
    if nudge.settings is None:
        counts = " and ".join(
            f"{fewer} instead of {more} sheets of {spec.stock[key].title}"
            for key, (more, fewer) in nudge.sheets.items()
        )
    else:
        more, fewer = nudge.settings
        counts = f"{fewer} instead of {more} settings at the saws for the sheets"
    return Finding(
        rule="a depth that saves",
        severity=Severity.NOTE,
        path=f"{group.cases[0]}.depth",
        says=tell(
            "{}, {} deep instead of {}, {} {}",
            _listed(titles),
            then,
            now,
            "takes" if is_one else "take",
            counts,
        ),
        measured=now.text,
        limit=then.text,
        source="common practice",
        remedies=(
            tell('depth = "{}" under {}', then, _listed(keys)),
            f"leave {'it' if is_one else 'them'} as {'it is' if is_one else 'they are'}",
        ),
        numbers=own.numbers,
    )


def _listed(words: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))

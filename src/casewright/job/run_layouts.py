"""Accepted layouts put into cases, and what a run says about its layout that has no meaning."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.specs import CaseSpec
from casewright.dims import size_text
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.requests import solved_widths
from casewright.job.tables import RunTable

__all__ = ["check_run_layouts", "with_solved_widths"]

_NEIGHBOURS = 2


def with_solved_widths(
    cases: dict[str, CaseSpec], content: Content, origins: Origins
) -> dict[str, CaseSpec]:
    """Cases with the widths that accepted layouts gave them."""
    found = dict(cases)
    for key, table in content.runs.items():
        for case, width in solved_widths(key, table, origins).items():
            if case in found:
                found[case] = replace(found[case], width=width)
    return found


def check_run_layouts(content: Content, reporter: Reporter) -> None:
    """Tell what a run asks of its layout that cannot be."""
    for key, run in content.runs.items():
        path: KeyPath = ("run", key)
        _beside(path, run, reporter)
        _over(path, run, content, reporter)
        _seams(path, run, content, reporter)
        _proportions(path, run, content, reporter)
        for case in run.solved.widths if run.solved else ():
            where = (*path, "solved", "widths", case)
            table = content.cases.get(case)
            if case not in run.cases:
                if not all(map(content.knows, run.cases)):
                    continue  # one of its cases is told to be unknown: probably this one
                reporter.unknown(where, case, run.cases, f"case {case} is not in this run")
            elif table is not None and table.width is not None:
                what = f"case {case} has a width of its own"
                reporter.tell(where, what, f"take it out here, or in [case.{case}]")


def _proportions(path: KeyPath, run: RunTable, content: Content, reporter: Reporter) -> None:
    """Two cases or more, whose widths the layout may choose."""
    for key in run.proportions:
        where = (*path, "proportions", key)
        case = content.cases.get(key)
        if key not in run.cases or key in content.appliances:
            cases = [each for each in run.cases if each not in content.appliances]
            reporter.unknown(where, key, cases, f"case {key} is not in this run")
        elif case is not None and case.width is not None:
            what = f"case {key} has a width of its own"
            reporter.tell(where, what, f"take it out here, or in [case.{key}]")
    if len(run.proportions) == 1:
        what = "one case alone has no proportion to another"
        reporter.tell((*path, "proportions"), what, "name two or more")


def _beside(path: KeyPath, run: RunTable, reporter: Reporter) -> None:
    if run.beside and run.order is None:
        what = "the order of the run is not free, so that each has its neighbours already"
        reporter.tell((*path, "beside"), what, 'write order = "free", or take it out')
    met: dict[str, list[str]] = {}
    for one, other in run.beside.items():
        where = (*path, "beside", one)
        for key in (one, other):
            if key not in run.cases:
                reporter.unknown(where, key, run.cases, f"{key} is not in this run")
        if one == other:
            reporter.tell(where, "nothing stands beside itself", "name two things")
        elif _joins(met, one, other):
            what = f"with the others, {one} beside {other} would close a ring"
            reporter.tell(where, what, "take one of them out")
        else:
            met.setdefault(one, []).append(other)
            met.setdefault(other, []).append(one)
    for key, others in met.items():
        if len(others) > _NEIGHBOURS:
            what = f"{key} cannot stand beside {len(others)} things"
            reporter.tell((*path, "beside"), what, "leave two of them")


def _joins(met: dict[str, list[str]], one: str, other: str) -> bool:
    """Whether two are joined already through their neighbours."""
    seen, stack = set[str](), [one]
    while stack:
        key = stack.pop()
        if key == other:
            return True
        if key not in seen:
            seen.add(key)
            stack.extend(met.get(key, ()))
    return False


def _seams(path: KeyPath, run: RunTable, content: Content, reporter: Reporter) -> None:
    """Pinned seams on a wall, in the order of the run where that is given."""
    wall = content.walls.get(run.on or "")
    widths = run.wall or ([each.read for each in wall.width] if wall is not None else [])
    last = ("", Fraction(0))
    for key in run.cases if run.order is None else ():
        at = run.seams.get(key)
        if at is None:
            continue
        if last[0] and at <= last[1]:
            what = f"{key} stands right of {last[0]}, but is pinned no farther from the left"
            reporter.tell((*path, "seams", key), what, "put the run in another order, or the pins")
        last = (key, at)
    for key, at in run.seams.items():
        where = (*path, "seams", key)
        if key not in run.cases:
            reporter.unknown(where, key, run.cases, f"{key} is not in this run")
        elif not widths and run.on is None:
            what = "a run that is free of walls has nothing to measure its seams from"
            reporter.tell(where, what, "take it out, or write wall = ... or on = ...")
        elif widths and at >= max(widths):
            widest = size_text(max(widths), content.unit)
            what = f"the wall is only {widest} wide"
            reporter.tell(where, what, f"write less than {widest}")


def _over(path: KeyPath, run: RunTable, content: Content, reporter: Reporter) -> None:
    if run.over is None:
        return
    where, other = (*path, "over"), content.runs.get(run.over)
    others = [key for key in content.runs if key != path[1]]
    if other is None and ("run", run.over) in content.lost:
        return
    if other is None or run.over == path[1]:
        reporter.unknown(where, run.over, others, f"there is no other run {run.over}")
    elif run.on is None or other.on != run.on:
        what = f"{run.over} does not stand on the same wall"
        reporter.tell(where, what, 'write on = "..." with that wall in both')
    elif other.over is not None:
        what = f"{run.over} goes by the seams of another run itself"
        reporter.tell(where, what, "name the run at the bottom")

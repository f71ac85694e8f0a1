"""Trims that turn across a diagonal corner: they go on, alike, along both walls."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.specs import CaseSpec
from casewright.job.problems import Reporter
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.room.trims.bends import bend_at, beyond_bend
from casewright.room.trims.specs import RunTrims

__all__ = ["check_bends"]

_ZERO = Fraction(0)
_TRIMS = ("toe_skin", "light_rail", "crown")


def check_bends(spec: JobSpec, reporter: Reporter) -> None:
    """Tell trims that end at a diagonal corner, or that cannot meet there."""
    by_key = {case.key: case for case in spec.cases}
    for run in spec.runs:
        for trim in _TRIMS:
            if getattr(run.trims, trim) is None:
                continue
            for side in SIDES:
                key = bend_at(spec, run, side)
                for what, want in _unfit(spec, run, side, trim, by_key) if key else ():
                    reporter.tell(("run", run.key, trim), what, want)


def _unfit(
    spec: JobSpec, run: RunSpec, side: RunSide, trim: str, by_key: dict[str, CaseSpec]
) -> Iterator[tuple[str, str]]:
    corner = bend_at(spec, run, side) or ""
    owns, word = corner in run.cases, trim.replace("_", " ")
    if by_key[corner].framed:
        what = f"no {word} turns across {corner}, whose face frame stands before it at a slant"
        yield what, f'take the {word} out, or write face = "frameless" for {corner}'
        return
    other = beyond_bend(spec, run, side)
    if other is None:
        want = f"{'write' if owns else 'take'} the run round the corner, or take the {word} out"
        yield f"the {word} turns across {corner}, and no run stands round the corner", want
        return
    if getattr(other.trims, trim) is None:
        what = (
            f"the {word} turns across {corner} and goes on along run {other.key}, which has none"
        )
        yield what, f"write {trim} for {other.key} too, or take it out here"
        return
    places = list(run.places) if side == "left" else list(reversed(run.places))
    beside = places[1:2] if owns else places[:1]
    if not beside or beside[0] not in run.cases:
        what = f"no case of run {run.key} stands beside {corner}: its {word} has nothing to meet"
        yield what, f"put a case beside {corner}, or take the {word} out of both runs"
        return
    if not owns:
        yield from _unlike(by_key[corner], by_key[beside[0]], trim, word)
        if _stocks(run.trims, trim) != _stocks(other.trims, trim):
            what = f"the {word} of run {other.key} is of another stock, and both meet at {corner}"
            yield what, "give both one stock"
        if trim == "crown":
            yield from _unlike_crowns(run, other, corner)


def _unlike_crowns(run: RunSpec, other: RunSpec, corner: str) -> Iterator[tuple[str, str]]:
    """A crown that goes on along both walls stands as high over the cases of either."""
    one, its = run.trims.crown, other.trims.crown
    if one is None or its is None:
        return
    alike = {
        "drop": (one.drop.value, its.drop.value),
        "projection": (one.projection.value, its.projection.value),
        "frieze": (one.frieze and one.frieze.value, its.frieze and its.frieze.value),
        "to_ceiling": (one.to_ceiling, its.to_ceiling),
    }
    for name, (here, there) in alike.items():
        if here != there:
            what = f"the crowns of runs {run.key} and {other.key} are one, turning at {corner}"
            yield what, f"write the same {name} for both"


def _unlike(corner: CaseSpec, beside: CaseSpec, trim: str, word: str) -> Iterator[tuple[str, str]]:
    """What the corner and the case round it must have in common for a trim to go on."""
    sizes = {"depth": (corner.depth.value, beside.depth.value)}
    if trim == "crown":
        sizes["height"] = (corner.height.value, beside.height.value)
    if trim == "toe_skin":
        for name in ("toe_height", "toe_setback"):
            own, its = (each.overrides.get(name) for each in (corner, beside))
            sizes[name] = (own.value if own else _ZERO, its.value if its else _ZERO)
    for name, (one, other) in sizes.items():
        if one != other:
            what = (
                f"{corner.key} and {beside.key} differ in {name}, and one {word} turns along both"
            )
            yield what, f"give them one {name}"


def _stocks(trims: RunTrims, trim: str) -> tuple[str, ...]:
    asked = getattr(trims, trim)
    names = ("stock", "backing")
    return tuple(getattr(asked, name) for name in names if hasattr(asked, name))

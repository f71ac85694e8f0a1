"""Plinths under several cases of a run: which cases share one, and where it ends."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import zip_longest

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.run_plinth import build_plinth, plinth_spec
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim, Place, total
from casewright.room.model import Run, RunPlinth
from casewright.room.specs import RunSpec
from casewright.stock import Sheet

__all__ = ["run_plinths", "shared_plinths"]


def shared_plinths(
    house: House, run: RunSpec, specs: Mapping[str, CaseSpec], widths: Mapping[str, Fraction]
) -> tuple[tuple[str, ...], ...]:
    """Keys of the cases that share a plinth, a tuple for each; a case alone has its own.

    Neighbours on plinths of one height, setback and depth share one ladder, levelled once for
    all, as far as a sheet is long; the next ladder begins at a seam.

    Parameters
    ----------
    specs, widths
        Of every case of the run, by key; widths as asked for [mm].
    """
    groups: list[list[str]] = []
    for key in run.places:
        spec = specs.get(key)
        # A diagonal corner has a plinth of its own, that the ones beside it are screwed to.
        if spec is None or spec.diagonal is not None or not _is_on_plinth(spec):
            groups.append([])
            continue
        last = groups[-1] if groups else []
        goes_on = (
            last
            and _ladder(house, specs[last[0]]) == _ladder(house, spec)
            and sum(widths[k] for k in (*last, key)) <= _longest(house, spec)
        )
        if goes_on:
            last.append(key)
        else:
            groups.append([key])
    return tuple(tuple(group) for group in groups if len(group) > 1)


def _is_on_plinth(spec: CaseSpec) -> bool:
    return spec.has_toe and spec.toe == "plinth"


def _ladder(house: House, spec: CaseSpec) -> tuple[object, ...]:
    """What two cases must have in common to stand on one ladder."""
    styled = (
        spec.overrides.get(key, house.style[key]).value for key in ("toe_height", "toe_setback")
    )
    return (spec.box_stock, spec.depth.value, spec.back, *styled)


def _longest(house: House, spec: CaseSpec) -> Fraction:
    """Longest rail that comes out of a sheet [mm], with a little to spare for its ends."""
    sheet = house.stock[spec.box_stock]
    if not isinstance(sheet, Sheet):
        msg = f"{spec.key} is cut from {spec.box_stock}, which is no sheet"
        raise TypeError(msg)
    trims = 2 * house.style["sheet_trim"].value + house.style["sheet_slack"].value
    return sheet.length_in_hand.value - trims


def run_plinths(house: House, run: Run, groups: Sequence[tuple[str, ...]]) -> Run:
    """The run with its plinths, built under the cases as they are."""
    place = house.chain.place(f"run.{run.spec.key}")
    titles = [f"{run.spec.title}, plinth"]
    if len(groups) > 1:
        titles = [f"{titles[0]} {number}" for number in range(1, len(groups) + 1)]
    built = tuple(
        _plinth(
            house, place.at("plinth" if number == 1 else f"plinth_{number}"), run, group, title
        )
        for number, (group, title) in enumerate(zip(groups, titles, strict=False), start=1)
    )
    return replace(run, plinths=built)


def _plinth(house: House, place: Place, run: Run, group: tuple[str, ...], title: str) -> RunPlinth:
    """One plinth. Its first case gives the height; that the others stand on it too is a fit."""
    members = [case for case in run.cases if case.key in group]
    first = members[0]
    *seams, length = _ends(place, members)
    ladder = build_plinth(
        house, plinth_spec(first.spec, place.path, title),
        length=length, depth=first.depth, height=first.standing, seams=seams,
    )  # fmt: skip
    band = house.style_dim("gap_tolerance").value
    for case in members:
        place.fit(f"under_{case.key}", case.standing - ladder.height, -band, band, place.path)
    start = run.starts[run.cases.index(first)]
    left = start + first.left_frame if first.left_frame.value else start
    return RunPlinth(ladder, place.let("start", left), group)


def _ends(place: Place, members: Sequence[Case]) -> list[Dim]:
    """Seams between the boxes and the end of the last one, from the left end of the first [mm].

    Where frames stand between two boxes the seam lies in their middle.
    """
    ends: list[Dim] = []
    pieces: list[Dim] = []
    for case, after in zip_longest(members, members[1:]):
        pieces.append(case.width)
        end = total(*pieces)
        frames = _frames_between(case, after) if after else []
        if frames:
            end = end + total(*frames) / 2
            pieces.extend(frames)
        ends.append(place.let(f"end_{case.key}", end))
    return ends


def _frames_between(left: Case, right: Case) -> list[Dim]:
    """Thickness of the frames on the ends that two neighbours turn to each other [mm]."""
    own = left.overall_width - left.width - left.left_frame
    return [frame for frame in (own, right.left_frame) if frame.value]

"""A packet of what is left to do: no page for what is cut, machined or put together."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from casewright.casework.parts import Part
from casewright.dims import Measure
from casewright.drawing import Plot
from casewright.outputs.document import Document, anchors
from casewright.outputs.inlines import Link, PageNumber, PageNumbers
from casewright.room.model import Room

__all__ = ["Left", "all_of", "left_of", "without_dead_ends"]

_AT_THE_SAW, _AT_THE_BENCH = ("planned",), ("planned", "cut")
_APART = (*_AT_THE_BENCH, "machined")
_STANDING = (*_APART, "assembled", "finished")


@dataclass(frozen=True, slots=True)
class Left:
    """A room, stage by stage, as far as something is to be done at it.

    Parameters
    ----------
    saw
        With the pieces to cut.
    bench
        With the pieces to cut or to machine.
    floor
        With the cases of which something is to be put together, all their pieces in them.
    wall
        With the cases that do not hang or stand in their places yet.
    is_part
        Whether it is only what is left.
    """

    saw: Room
    bench: Room
    floor: Room
    wall: Room
    is_part: bool


def all_of(room: Room) -> Left:
    """Everything, however far it has come."""
    return Left(room, room, room, room, is_part=False)


def left_of(room: Room) -> Left:
    """What is left to do by the marks of the record."""
    return Left(
        _with_parts(room, _AT_THE_SAW),
        _with_parts(room, _AT_THE_BENCH),
        _with_cases(room, _APART),
        _with_cases(room, _STANDING),
        is_part=True,
    )


def _with_parts(room: Room, states: Container[str]) -> Room:
    def stays(part: Part) -> bool:
        return part.state in states

    cases = tuple(
        replace(case, parts=tuple(filter(stays, case.parts)))
        for case in room.cases
        if any(map(stays, case.parts))
    )
    runs = tuple(
        replace(run, fillers=tuple(f for f in run.fillers if any(map(stays, f.parts))))
        for run in room.runs
    )
    return replace(room, cases=cases, runs=runs)


def _with_cases(room: Room, states: Container[str]) -> Room:
    found = tuple(case for case in room.cases if any(part.state in states for part in case.parts))
    keys = {case.key for case in found}
    runs = tuple(run for run in room.runs if any(case.key in keys for case in run.cases))
    standing = {run.spec.key for run in runs} | {""}
    done = {
        island.key
        for island in room.islands
        if not {island.spec.front, island.spec.back} <= standing
    }
    free = tuple(each for each in room.free if each.key in keys - done)
    return replace(room, cases=found, runs=runs, free=free)


def without_dead_ends(document: Document) -> Document:
    """The document with plain words and dashes where its links lead to pages that are left out."""
    loose: Document = _loose(document, frozenset(anchors(document)))
    return loose


def _loose(thing: Any, known: Container[str]) -> Any:
    found = thing
    match found:
        case Plot():
            found = _loose_plot(found, known)
        case Link() if found.target not in known:
            found = replace(found, target=found.anchor) if found.anchor else found.content
        case PageNumber() if found.target not in known:
            found = "–"
        case PageNumbers():
            there = tuple(target for target in found.targets if target in known)
            found = PageNumbers(there) if there else "–"
        case tuple():
            changed = [_loose(each, known) for each in found]
            if any(new is not old for new, old in zip(changed, found, strict=True)):
                found = tuple(changed)
        case Measure() | str():
            pass
        case _ if is_dataclass(found):
            found = _loose_members(found, known)
        case _:
            pass
    return found


def _loose_members(thing: Any, known: Container[str]) -> Any:
    changes: dict[str, Any] = {}
    for field in fields(thing):
        old = getattr(thing, field.name)
        new = (old if old in known else "") if field.name == "target" else _loose(old, known)
        if new is not old:
            changes[field.name] = new
    return replace(thing, **changes) if changes else thing


def _loose_plot(plot: Plot, known: Container[str]) -> Plot:
    dead = [group.tag.target for group in plot.groups if group.tag.target not in known]
    if not any(dead):
        return plot
    groups = tuple(
        group if group.tag.target in known else replace(group, tag=replace(group.tag, target=""))
        for group in plot.groups
    )
    return replace(plot, groups=groups)

"""Fronts that match: they come out of one piece, so what holds one up holds all of them up."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from casewright.casework.cases import Case
from casewright.room.model import Room
from casewright.room.specs import MatchSpec

__all__ = [
    "grained_slabs", "held_together", "match_cases", "match_names", "matched_slabs",
    "with_matched",
]  # fmt: skip


def match_cases(room: Room, match: MatchSpec) -> Iterator[tuple[str, tuple[Case, ...]]]:
    """The columns of a match from left to right, each under the name it has there.

    An appliance stands there by its panels, where it has some: two side by side are a column each,
    two one over the other are one.
    """
    known = {case.key: (case,) for case in room.cases}
    stands = {each.spec.key: each for run in room.runs for each in run.panelled}
    for key in match.cases:
        each = stands.get(key)
        if each is None:
            if key in known:
                yield key, known[key]
            continue
        panels, second = tuple(case for case, _ in each.panels), each.spec.second_panel
        if second is not None and second.place == "right":
            yield from ((key, (panel,)) for panel in panels)
        elif panels:
            yield key, panels


def grained_slabs(case: Case) -> Iterator[str]:
    """Paths of the slabs with grain among the fronts of a case."""
    grained = {part.path for part in case.parts if part.grain}
    for front in case.fronts:
        if front.construction == "slab":
            yield from (path for path in front.parts if path in grained)


def matched_slabs(room: Room) -> Mapping[str, tuple[str, ...]]:
    """Paths of the slabs with grain of every match, by its name."""
    return {
        match.key: tuple(
            path
            for _, column in match_cases(room, match)
            for case in column
            for path in grained_slabs(case)
        )
        for match in room.spec.matches
    }


def match_names(room: Room) -> Mapping[str, str]:
    """The match that a part belongs to, by its path."""
    slabs = matched_slabs(room)
    return {path: name for name, paths in slabs.items() if len(paths) > 1 for path in paths}


def with_matched(room: Room, paths: Collection[str]) -> set[str]:
    """Paths of parts, and of all that match one of them."""
    found = set(paths)
    for slabs in matched_slabs(room).values():
        if found.intersection(slabs):
            found.update(slabs)
    return found


def held_together(
    room: Room, held: Mapping[str, Collection[str]]
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """What a part waits for since one that it matches does.

    Parameters
    ----------
    held
        What parts wait for themselves, by path.

    Yields
    ------
    Path of each slab that is held up, and what for.
    """
    for slabs in matched_slabs(room).values():
        wanted = {path for slab in slabs for path in held.get(slab, ())}
        if wanted:
            yield from ((slab, tuple(sorted(wanted))) for slab in slabs)

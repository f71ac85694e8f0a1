"""Which sizes read or cut stand behind a number that is not what it was."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, fields, is_dataclass
from fractions import Fraction
from typing import Any

from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.resolve.differences import Difference
from casewright.room.model import Room

__all__ = ["FactChange", "Sources", "dims_in"]


@dataclass(frozen=True, slots=True)
class FactChange:
    """A size that was read or cut, and is not what it was taken to be.

    Parameters
    ----------
    path
        Of the number.
    old, new
        What it was and is taken to be [mm]; old is None for a thing that was not there.
    how
        Tool and day, in words; empty when a size no longer counts.
    """

    path: str
    old: Fraction | None
    new: Fraction
    how: str


class Sources:
    """The sizes that differ between two rooms, and what each of them reaches."""

    def __init__(self, room: Room, changes: Iterable[FactChange]) -> None:
        self._room = room
        self.changes = tuple(changes)
        self._known = {change.path: change for change in self.changes}

    @classmethod
    def of(cls, before: Room, after: Room) -> Sources:
        """Those with a fact in either room, where the value is another one."""
        old, new = before.chain, after.chain
        paths = [path for path in new.nodes if path in new.facts or path in old.facts]
        found = []
        for path in paths:
            now, then = new.nodes[path], old.nodes.get(path)
            if then is None or then.value != now.value:
                fact = new.facts.get(path)
                value = None if then is None else then.value
                found.append(FactChange(path, value, now.value, fact.origin.note if fact else ""))
        return cls(after, found)

    def behind(self, *dims: Dim) -> tuple[FactChange, ...]:
        """The changed sizes that some numbers are worked out from.

        What is read or cut hides what it was worked out from: the thing is as it is.
        """
        seen: set[int] = set()
        reached: set[str] = set()
        stack = list(dims)
        while stack:
            node = stack.pop()
            if id(node) in seen:
                continue
            seen.add(id(node))
            if node.path in self._known:
                reached.add(node.path)
            if node.built is None and node.cut is None:
                stack.extend(arg for arg in node.args if isinstance(arg, Dim))
        return tuple(change for change in self.changes if change.path in reached)

    def behind_part(self, part: Part | None, difference: Difference) -> tuple[FactChange, ...]:
        """The changed sizes behind a piece that is new, gone, or to be made otherwise.

        Where none of its own numbers leads to one, it hung on a decision, and those behind the
        decisions of its case are told.
        """
        if part is not None:
            dims = [part.blank.length, part.blank.width] if difference.old else []
            own = {f"{part.path}.{name}" for name in difference.features}
            dims += [d for f in part.features if f.path in own for d in dims_in(f)]
            found = self.behind(*dims)
            if found:
                return found
        case = difference.path.partition(".")[0]
        branches = [b for b in self._room.chain.branches if b.place.partition(".")[0] == case]
        return self.behind(*(dim for b in branches for dim in (b.left, b.right)))


def dims_in(value: Any) -> Iterator[Dim]:
    """Every number in a cut or a row of holes."""
    if isinstance(value, Dim):
        yield value
    elif is_dataclass(value):
        for field in fields(value):
            yield from dims_in(getattr(value, field.name))
    elif isinstance(value, tuple):
        for each in value:
            yield from dims_in(each)

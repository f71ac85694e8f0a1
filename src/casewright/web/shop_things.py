"""What a case is made of beside its box: fronts, drawers, finished ends, lids, each by itself."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.packet.step_runs import works

__all__ = ["Thing", "added_things", "box_parts", "things"]


@dataclass(frozen=True, slots=True)
class Thing:
    """Something that is finished and put on by itself.

    Parameters
    ----------
    path
        By which the record knows it.
    placed
        What is said once it is in its place: 'left door hung', 'drawer 1 run in'.
    """

    path: str
    title: str
    parts: tuple[str, ...]
    placed: str


def box_parts(case: Case) -> tuple[str, ...]:
    """Paths of the parts of its box."""
    return tuple(part.path for part in case.parts if not part.front)


def things(case: Case) -> Iterator[Thing]:
    """Fronts, boxes of drawers, then what is added to the box."""
    for front in case.fronts:
        yield Thing(front.path, front.title, front.parts, f"{front.title} hung")
    for drawer in case.drawers:
        parts = tuple(part.path for part in case.parts if part.front == drawer.path)
        if parts:
            yield Thing(drawer.path, f"{drawer.title}, its box", parts, f"{drawer.title} run in")
    yield from added_things(case)


def added_things(case: Case) -> Iterator[Thing]:
    """What goes on the box once it stands: finished ends, lids, a panel beside a blind corner."""
    known = {work.path for work in works(case)}
    for path in dict.fromkeys(part.front for part in case.parts if part.front):
        if path in known:
            continue
        own = [part for part in case.parts if part.front == path]
        title = own[0].title if len(own) == 1 else _called(path)
        yield Thing(path, title, tuple(part.path for part in own), f"{title} on")


def _called(path: str) -> str:
    """'plates.end_right' as 'right end'."""
    words = path.rpartition(".")[2].split("_")
    return " ".join(words[::-1] if words[0] == "end" else words)

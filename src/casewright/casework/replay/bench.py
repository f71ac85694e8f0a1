"""What stands on the bench at each step: the box; fronts and drawers apart until hung."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.cases import AssemblyStep
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.solids import Solid

__all__ = ["Move", "moves"]


@dataclass(frozen=True, slots=True)
class Move:
    """A step seen as a movement.

    Parameters
    ----------
    number
        Place in the order, from 0.
    step
        The step.
    coming
        Solids that come in: a part, or all parts of what is hung; none at a check.
    there
        Solids already together with what comes in, by path.
    work
        What is worked on: empty for the box, else the path of the front or drawer.
    """

    number: int
    step: AssemblyStep
    coming: tuple[Solid, ...]
    there: dict[str, Solid]
    work: str


def moves(case: Assembled) -> Iterator[Move]:
    """The steps of a case in order. Parts that do not exist come in as nothing."""
    stands: dict[str, dict[str, Solid]] = {"": {}}
    work = ""
    for number, step in enumerate(case.model.assembly):
        if not step.part:
            yield Move(number, step, (), dict(stands[work]), work)
            continue
        solid = case.solids.get(step.part)
        if solid is None:
            work = ""
            coming = tuple(stands.pop(step.part, {}).values())
        else:
            work = solid.part.front if solid.part.front in case.works else ""
            coming = (solid,)
        there = stands.setdefault(work, {})
        yield Move(number, step, coming, dict(there), work)
        there.update((each.part.path, each) for each in coming)

"""Each part and each joint once, each joint between what is there, nothing left over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from casewright.casework.cases import Drawer, Front
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.replay.bench import Move

__all__ = ["check_order"]


def check_order(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Parts and joints that the steps forget, repeat or take too early."""
    used = Counter(move.step.part for move in steps if move.step.part)
    for path in case.solids:
        if used[path] != 1:
            yield Failure("order", (path,), f"the steps bring in {path} {used[path]} times")
    for path in sorted(case.works):
        if used[path] != 1:
            yield Failure("order", (path,), f"the steps hang {path} {used[path]} times")
    for path in sorted(set(used) - set(case.solids) - case.works):
        yield Failure("order", (path,), f"the steps bring in {path}, which does not exist")
    yield from _check_joints(case, steps)
    yield from _check_hung(case, steps)
    yield from _check_slides(case, steps)


def _check_slides(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Slides are fixed, once, before the first drawer runs in on them."""
    drawers = {drawer.path for drawer in case.model.drawers}
    fixed = [m.number for m in steps if m.step.verb == "hang" and not m.step.part]
    hung = [m.number for m in steps if m.step.part in drawers]
    if drawers and not (len(fixed) == 1 and all(fixed[0] < number for number in hung)):
        says = "the steps do not fix the slides before the drawers"
        yield Failure("order", (case.model.key,), says)


def _check_joints(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    by_path = {joint.path: joint for joint in case.joints}
    closed: Counter[str] = Counter()
    for move in steps:
        here = {solid.part.path for solid in move.coming}
        for path in move.step.joints:
            closed[path] += 1
            joint = by_path.get(path)
            if joint is None:
                yield Failure("order", (path,), "a step closes a joint that does not exist")
                continue
            ends = {joint.one.part, joint.other.part}
            if not (ends & here and ends - here <= set(move.there)):
                says = "a step closes a joint with a part that is not there yet"
                yield Failure("order", (path, move.step.part), says)
    for path in by_path:
        if closed[path] != 1:
            yield Failure("order", (path,), f"the steps close the joint {closed[path]} times")


def _check_hung(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """A door or a drawer is whole when it is hung."""
    works: tuple[Front | Drawer, ...] = (*case.model.fronts, *case.model.drawers)
    for front in works:
        for move in steps:
            if move.step.part == front.path:
                lost = set(front.parts) - {solid.part.path for solid in move.coming}
                if lost:
                    says = f"{front.title} is hung before it is whole"
                    yield Failure("order", (front.path, *sorted(lost)), says)

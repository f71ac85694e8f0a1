"""What does not go together, and no single made piece is to blame for: told thing by thing.

A thing is a drawer, a front, or the box of a case. What brings it in order is tried on the model,
the least first: a piece named brought to its size, several of them, all of the thing that are off,
then the thing cut again. All that helps is told, but for what asks more of the same pieces.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.resolve.broken import Key, Told
from casewright.resolve.misfits import TAKEN_UP, off_pieces
from casewright.resolve.moves import Move, Remedy, all_mended, cut_anew, mended, sides_of
from casewright.resolve.sources import FactChange, Sources
from casewright.resolve.trials import Sizes, Trials
from casewright.stock import Offcut

_MOST_ALONE = 4
"""So many of the pieces named are tried by themselves."""

__all__ = ["Clash", "clashes"]


@dataclass(frozen=True, slots=True)
class Clash:
    """A thing whose pieces do not go together as they are.

    Parameters
    ----------
    path
        Of the drawer, the front or the case.
    says
        What does not hold, in words.
    off
        Its made pieces that are not of the size wanted, those that are named first.
    because
        The sizes read or cut that reach its pieces, in the order of the chain.
    remedies
        Those that apply, the least work first.
    """

    path: str
    says: tuple[str, ...]
    off: tuple[Move, ...]
    because: tuple[FactChange, ...]
    remedies: tuple[Remedy, ...]


def clashes(
    trials: Trials,
    sources: Sources,
    told: Iterable[str],
    offered: Iterable[Remedy],
    offcuts: Sequence[Offcut] = (),
) -> tuple[Clash, ...]:
    """What stops the work in the cases with made pieces that are off, and is told nowhere else.

    Parameters
    ----------
    trials
        On the room as things are.
    sources
        The sizes that are not what they were.
    told
        Sentences that are told already.
    offered
        What helps elsewhere: what one of these mends as well is left to it.
    offcuts
        Those on hand.
    """
    known = set(told)
    sizes: list[Sizes] = [dict(remedy.sizes) for remedy in offered if remedy.sizes]
    return tuple(
        clash
        for case in trials.room.cases
        if off_pieces(case.parts)
        for thing in _in_case(trials, case, known, sizes)
        for clash in (thing.clash(sources, offcuts),)
    )


def _in_case(
    trials: Trials,
    case: Case,
    told: set[str],
    offered: Iterable[Sizes],
) -> Iterator[_Thing]:
    open_ = {
        key: each
        for key, each in trials.broken(case).items()
        if each.stops and each.says not in told
    }
    for sizes in offered:
        named = {path for each in open_.values() for path in each.paths}
        if any(path.rpartition(".")[0] in named for path in sizes):
            left = trials.alone(case, sizes).broken(case.key)
            open_ = {key: each for key, each in open_.items() if key in left}
    things: dict[str, dict[Key, Told]] = {}
    for key, each in open_.items():
        things.setdefault(_thing(case, each), {})[key] = each
    for path, found in things.items():
        yield _Thing(trials, case, path, found)


def _thing(case: Case, told: Told) -> str:
    """The drawer or front that a failure is about; the case where it is of the box."""
    drawers = [drawer.path for drawer in case.drawers]
    fronts = [front.path for front in case.fronts]
    for path in told.paths:
        for thing in (*drawers, *fronts):
            if path == thing or path.startswith(f"{thing}."):
                return thing
    return case.key


class _Thing:
    """One thing that does not go together."""

    def __init__(self, trials: Trials, case: Case, path: str, found: Mapping[Key, Told]) -> None:
        self.trials, self.case, self.path, self.found = trials, case, path, found
        self.named = {path for told in found.values() for path in told.paths}

    def clash(self, sources: Sources, offcuts: Sequence[Offcut]) -> Clash:
        """It, with what helps."""
        off = sorted(filter(self._concerns, off_pieces(self.case.parts)), key=self._rank)
        parts = [part for part in self.case.parts if self._is_named(part) or self._is_own(part)]
        says = tuple(dict.fromkeys(told.says for told in self.found.values()))
        because = sources.behind(*(dim for part in parts for _, dim in sides_of(part)))
        return Clash(self.path, says, tuple(off), because, tuple(self._remedies(off, offcuts)))

    def _concerns(self, move: Move) -> bool:
        return self._is_named(move.part) or self._is_own(move.part)

    def _rank(self, move: Move) -> bool:
        return not self._is_named(move.part)

    def _is_named(self, part: Part) -> bool:
        return any(path == part.path or path.startswith(f"{part.path}.") for path in self.named)

    def _is_own(self, part: Part) -> bool:
        if self.path != self.case.key:
            return part.path.startswith(f"{self.path}.") or part.front == self.path
        drawers = (f"{drawer.path}." for drawer in self.case.drawers)
        return not part.front and not part.path.startswith(tuple(drawers))

    def _remedies(self, off: Sequence[Move], offcuts: Sequence[Offcut]) -> Iterator[Remedy]:
        room, told = self.trials.room, list[set[Move]]()
        for moves in self._choices([m for m in off if m.part in self.trials.movable]):
            if any(less <= set(moves) for less in told):
                continue
            if self._mends({path: size for move in moves for path, size in move.sizes}):
                told.append(set(moves))
                if len(moves) == 1:
                    yield from mended(room, moves, offcuts)
                else:
                    yield all_mended(room, moves, offcuts)
        for parts in self._things(is_mended=bool(told)):
            if self._mends({dim.path: None for part in parts for _, dim in sides_of(part)}):
                yield cut_anew(room, parts)
                break
        yield Remedy("design anew", f"change what the job asks of {self.case.key}", 0)

    def _choices(self, off: Sequence[Move]) -> Iterator[tuple[Move, ...]]:
        """Pieces to bring to their sizes, the fewest first; what clamps take up only at last."""
        large = [move for move in off if abs(move.by) > TAKEN_UP]
        named = [move for move in large if self._is_named(move.part)]
        shorter = [move for move in named if move.by < 0]
        alone = [[m] for m in (*shorter, *(m for m in named if m.by > 0))[:_MOST_ALONE]]
        choices = map(tuple, (*alone, shorter, named, large, off))
        yield from filter(None, dict.fromkeys(choices))

    def _things(self, *, is_mended: bool) -> Iterator[tuple[Part, ...]]:
        """What can be cut again: the thing, or all of the case where nothing less helps."""
        loose = [part for part in self.case.parts if part in self.trials.movable]
        own = tuple(part for part in loose if self._is_own(part))
        if is_mended:
            yield from filter(None, (own,) if self.path != self.case.key else ())
            return
        yield from filter(None, dict.fromkeys((own, tuple(loose))))

    def _mends(self, sizes: Sizes) -> bool:
        """Whether all of it goes together then, and nothing fails that holds now."""
        trial = self.trials.alone(self.case, sizes)
        if any(key in self.found for key in trial.broken(self.case.key)):
            return False
        return self.trials.spoils_nothing(trial)

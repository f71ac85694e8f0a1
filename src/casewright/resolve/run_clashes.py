"""What does not go together between the cases: a row on its wall, trims, parts of an island."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from casewright.casework.parts import Part
from casewright.resolve.broken import Broken, Key, Told, broken_between
from casewright.resolve.clashes import Clash
from casewright.resolve.misfits import off_pieces
from casewright.resolve.moves import Move, Remedy, all_mended, cut_anew, sides_of
from casewright.resolve.sources import Sources
from casewright.resolve.trials import Sizes, Trials
from casewright.room.model import Room
from casewright.stock import Offcut

__all__ = ["run_clashes"]


def run_clashes(
    before: Room, trials: Trials, sources: Sources, offcuts: Sequence[Offcut] = ()
) -> tuple[Clash, ...]:
    """What stops the work between the cases and did not as it was agreed.

    Parameters
    ----------
    before
        The room as it was agreed.
    trials
        On the room as things are.
    sources
        The sizes that are not what they were.
    offcuts
        Those on hand.
    """
    found = broken_between(trials.room)
    known = broken_between(before) if found else {}
    places: dict[str, dict[Key, Told]] = {}
    for key, told in found.items():
        if key not in known:
            places.setdefault(_place(told.paths[0]), {})[key] = told
    return tuple(
        _Place(trials, path, fresh, found).clash(sources, offcuts)
        for path, fresh in places.items()
    )


def _place(path: str) -> str:
    """The run, the island or the case that a path is of."""
    first, _, rest = path.partition(".")
    return f"{first}.{rest.partition('.')[0]}" if first in ("run", "island") else first


class _Place:
    """One run or island.

    Parameters
    ----------
    found
        What stops the work there.
    now
        What stops it between any cases, as things are.
    """

    def __init__(self, trials: Trials, path: str, found: Broken, now: Broken) -> None:
        self.trials, self.path, self.found, self.now = trials, path, found, now
        self.named = [path for told in found.values() for path in told.paths]

    def clash(self, sources: Sources, offcuts: Sequence[Offcut]) -> Clash:
        """It, with what helps."""
        parts = [part for part in self.trials.room.parts if self._is_own(part)]
        off = off_pieces(parts)
        dims = [dim for part in parts for _, dim in sides_of(part)]
        says = tuple(dict.fromkeys(told.says for told in self.found.values()))
        remedies = tuple(self._remedies(off, parts, offcuts))
        return Clash(self.path, says, off, sources.behind(*dims), remedies)

    def _round_corners(self) -> tuple[Move, ...]:
        """All that is off in any run: what ends in a corner meets that of another."""
        runs = (part for part in self.trials.room.parts if part.path.startswith("run."))
        return tuple(move for move in off_pieces(runs) if move.part in self.trials.movable)

    def _is_own(self, part: Part) -> bool:
        """What is of the place itself, not of its cases; of a case that stands there all of it."""
        return part.path.startswith(f"{self.path}.")

    def _remedies(
        self, off: Sequence[Move], parts: Iterable[Part], offcuts: Sequence[Offcut]
    ) -> Iterator[Remedy]:
        movable = set(self.trials.movable)
        loose = [move for move in off if move.part in movable]
        named = [move for move in loose if self._is_named(move.part)]
        anew = [part for part in parts if part in movable]
        corners = self._round_corners()
        for moves in filter(None, dict.fromkeys((tuple(named), tuple(loose), corners))):
            if self._mends({path: size for move in moves for path, size in move.sizes}):
                yield all_mended(self.trials.room, moves, offcuts)
                break
        else:
            if anew and self._mends({d.path: None for part in anew for _, d in sides_of(part)}):
                yield cut_anew(self.trials.room, anew)
        helps = [each for told in self.found.values() for each in told.helps]
        for says in helps or (f"change what the job asks of {self.path}",):
            yield Remedy("design anew", says, 0)

    def _is_named(self, part: Part) -> bool:
        return any(
            path == part.path
            or path.startswith(f"{part.path}.")
            or part.path.startswith(f"{path}.")
            for path in self.named
        )

    def _mends(self, sizes: Sizes) -> bool:
        trial = self.trials.whole(sizes)
        if any(key in self.found or key not in self.now for key in broken_between(trial.room)):
            return False
        return self.trials.spoils_nothing(trial)

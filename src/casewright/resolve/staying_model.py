"""The optimisation model of what can stay as planned, in whole thousandths of a millimetre."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, lcm

from casewright.casework.parts import Part
from casewright.dims import Dim, Fit
from casewright.layout.programme import LayoutProgramme, ProgrammeSolution
from casewright.resolve.slopes import Slopes
from casewright.room.model import Room

__all__ = ["Resize", "StayingModel"]

_GOALS = ("changes", "settings", "movement")

_UNIT = Fraction(1, 1000)
"""In which the model counts [mm]."""


@dataclass(frozen=True, slots=True)
class Resize:
    """A piece still to be cut, which may be of another size now.

    Parameters
    ----------
    part
        As it is to be cut now.
    sizes
        Its length and width, each with what it was planned at [mm].
    """

    part: Part
    sizes: tuple[tuple[Dim, Fraction], ...]

    @property
    def is_changed(self) -> bool:
        """Whether it is to be cut otherwise than it was planned."""
        return any(dim.value != planned for dim, planned in self.sizes)


class StayingModel:
    """Each piece is kept as planned or follows; fits that hold go on holding, to first order.

    Parameters
    ----------
    room
        With the facts of now.
    changed
        Pieces to be kept or not.
    settings
        By stock, the sizes that are set at the saw as it was planned.
    """

    def __init__(
        self,
        room: Room,
        changed: Sequence[Resize],
        settings: frozenset[tuple[str, object]],
    ) -> None:
        self.room, self.changed, self.settings = room, tuple(changed), settings
        self.slopes = Slopes(dim for each in changed for dim, _ in each.sizes)
        self.excluded: list[tuple[list[int], list[int]]] = []
        self.is_proved = False

    def exclude(self, kept: Sequence[Resize], followed: Sequence[Resize]) -> None:
        """Some are not all kept while others follow: one of those follows or of these is kept."""
        numbers = {each.part.path: n for n, each in enumerate(self.changed)}
        self.excluded.append(
            ([numbers[e.part.path] for e in kept], [numbers[e.part.path] for e in followed])
        )

    def best(self) -> tuple[Resize, ...]:
        """The best choice: the fewest changes, then the fewest new settings, then least moved."""
        limits: dict[str, int] = {}
        chosen: tuple[Resize, ...] = ()
        for goal in _GOALS:
            programme = _Programme(self, goal, limits)
            solved = programme.solve()
            if solved is None:
                return chosen
            if goal == _GOALS[0]:
                self.is_proved = solved.cost == solved.bound
            limits[goal] = solved.cost
            chosen = programme.read(solved)
            if not chosen:
                break
        return chosen


class _Programme:
    """One goal, with what the goals before it reached as limits."""

    def __init__(self, model: StayingModel, goal: str, limits: Mapping[str, int]) -> None:
        self.model, self.programme = model, LayoutProgramme()
        self.goal, self.limits = goal, limits
        self.keeps = [self.programme.choice() for _ in model.changed]
        self.off: dict[str, int] = {}
        self.moves: list[int] = []
        self._sizes()
        self._fits()
        for kept, followed in model.excluded:
            terms = {self.keeps[n]: 1 for n in kept} | {self.keeps[n]: -1 for n in followed}
            self.programme.require(terms, high=len(kept) - 1)
        self._goals()

    def solve(self) -> ProgrammeSolution | None:
        return self.programme.solve()

    def read(self, solved: ProgrammeSolution) -> tuple[Resize, ...]:
        pairs = zip(self.keeps, self.model.changed, strict=True)
        return tuple(each for keep, each in pairs if solved.values[keep])

    def _sizes(self) -> None:
        """A kept size is off what it would be now; one that follows, as what it follows is."""
        reach = self._reach()
        for each in self.model.changed:
            for dim, _ in each.sizes:
                self.off[dim.path] = self.programme.number(-reach, reach)
        for keep, each in zip(self.keeps, self.model.changed, strict=True):
            for dim, planned in each.sizes:
                own, by = self.off[dim.path], (planned - dim.value) / _UNIT
                self.programme.require_if(
                    keep, {own: 1}, low=floor(by), high=ceil(by), reach=2 * reach
                )
                rates = self.model.slopes.of(dim)
                terms, factor = self._whole({path: -rate for path, rate in rates.items()})
                far = 2 * reach * (factor + sum(abs(rate) for rate in terms.values()))
                follows = {**terms, own: factor}
                self.programme.require({**follows, keep: -far}, high=factor)
                self.programme.require({**follows, keep: far}, low=-factor)
                self._moved(keep, own, by, reach)

    def _moved(self, keep: int, own: int, by: Fraction, reach: int) -> None:
        """By how much a size that follows is another one than was planned."""
        move = self.programme.number(0, 2 * reach)
        self.programme.require({own: 1, move: -1, keep: -2 * reach}, high=floor(by))
        self.programme.require({own: 1, move: 1, keep: 2 * reach}, low=ceil(by))
        self.moves.append(move)

    def _reach(self) -> int:
        """Farther than any size strays [thousandths]."""
        offs = [
            abs(planned - dim.value) for each in self.model.changed for dim, planned in each.sizes
        ]
        return ceil(4 * max(offs, default=Fraction(0)) / _UNIT) + 4

    def _fits(self) -> None:
        for fit in self.model.room.chain.fits.values():
            rates = self.model.slopes.of(fit.gap)
            if not fit.holds or not rates:
                continue
            terms, factor = self._whole(rates)
            self._banded(fit, terms, factor)

    def _banded(self, fit: Fit, terms: Mapping[int, int], factor: int) -> None:
        """The band, a little narrower, as sizes of the model are a little off; 0 stays inside."""
        slack = sum(abs(rate) for rate in terms.values())
        low = ceil((fit.low - fit.gap.value) / _UNIT * factor) + slack
        high = floor((fit.high - fit.gap.value) / _UNIT * factor) - slack
        self.programme.require(terms, low=min(low, 0), high=max(high, 0))

    def _whole(self, rates: Mapping[str, Fraction]) -> tuple[dict[int, int], int]:
        """Terms in whole numbers, and by what they were multiplied."""
        factor = lcm(*(rate.denominator for rate in rates.values()))
        return {self.off[path]: int(rate * factor) for path, rate in rates.items()}, factor

    def _goals(self) -> None:
        """What is to be small; what the goals before it reached is its limit."""
        counts = {
            "changes": (dict.fromkeys(self.keeps, -1), len(self.keeps)),
            "settings": (self._new_settings(), 0),
            "movement": (dict.fromkeys(self.moves, 1), 0),
        }
        for goal, (terms, offset) in counts.items():
            cost = 1 if goal == self.goal else 0
            most = self.limits.get(
                goal, 2 * self._reach() * (1 + len(self.moves)) + len(self.keeps)
            )
            value = self.programme.number(0, most, cost=cost)
            self.programme.require({value: 1, **{n: -f for n, f in terms.items()}}, low=offset)

    def _new_settings(self) -> dict[int, int]:
        """Sizes of pieces that follow which nothing was planned at."""
        taken: dict[tuple[str, object], int] = {}
        for keep, each in zip(self.keeps, self.model.changed, strict=True):
            for dim, _ in each.sizes:
                setting = (each.part.stock, dim.value)
                if setting in self.model.settings:
                    continue
                choice = taken.setdefault(setting, self.programme.choice())
                self.programme.require({choice: 1, keep: 1}, low=1)
        return dict.fromkeys(taken.values(), 1)

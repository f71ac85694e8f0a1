"""How likely each fit misses its band: made by the numbers, and with what it meets read first."""

from __future__ import annotations

from collections.abc import Container, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from casewright.dims import Cause, Dim, Fit, Settled, Slack, Term, slack
from casewright.room.model import Room
from casewright.room.simulation import chance_outside
from casewright.shop.gauges import gauge_for

__all__ = ["Forecast", "Forecasts", "ShopReading"]

_READ = ("stock",)
"""What is bought is read too, though its number was chosen."""


@dataclass(frozen=True, slots=True)
class ShopReading:
    """A reading that can be taken before something is made.

    Parameters
    ----------
    dim
        What is read.
    tool
        Kind of tool that reads it best, of those owned.
    cause
        How far the reading strays.
    """

    dim: Dim
    tool: str
    cause: Cause


@dataclass(frozen=True, slots=True)
class Forecast:
    """What is to be expected of a fit.

    Parameters
    ----------
    fit
        The fit.
    slack
        How far its gap may stray, made by the numbers known now.
    chance
        Chance that it misses its band then [-].
    read
        What can be read before its owner is made, and helps.
    read_chance
        Chance that it misses its band with all that read [-].
    """

    fit: Fit
    slack: Slack
    chance: float
    read: tuple[ShopReading, ...]
    read_chance: float

    @property
    def main(self) -> Term | None:
        """The cause that contributes most; None where nothing strays."""
        return max(self.slack.terms, key=lambda term: (term.sigma, term.worst), default=None)

    @property
    def main_share(self) -> Fraction:
        """Its share of the variance, what is systematic counted like the rest [-]."""
        variance = sum((t.slope**2 * t.cause.variance for t in self.slack.terms), Fraction(0))
        main = self.main
        if main is None or not variance:
            return Fraction(0)
        return main.slope**2 * main.cause.variance / variance


class Forecasts:
    """The fits of a room, each seen from the day its owner is made."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._unread: dict[str, tuple[Slack, float]] = {}

    @cached_property
    def _made(self) -> dict[int, int]:
        """When each number was made: its place on the chain, by the number's id."""
        return {id(dim): number for number, dim in enumerate(self._room.chain.nodes.values())}

    @cached_property
    def _begun(self) -> dict[str, int]:
        """When the making of each thing began, by its path."""
        begun: dict[str, int] = {}
        for number, path in enumerate(self._room.chain.nodes):
            while path and path not in begun:
                begun[path] = number
                path = path.rpartition(".")[0]
        return begun

    def all(self) -> Iterator[Forecast]:
        """One for every fit, in the order of the chain."""
        return (self.of(fit) for fit in self._room.chain.fits.values())

    def of(self, fit: Fit) -> Forecast:
        """What is to be expected of one fit."""
        found, chance = self._with_nothing_read(fit)
        read = self._helpful(fit) if chance else ()
        with_them = self.chance(fit, read) if read else chance
        if with_them >= chance:  # what shares a setting may cancel, what is read apart does not
            return Forecast(fit, found, chance, (), chance)
        return Forecast(fit, found, chance, read, with_them)

    def _with_nothing_read(self, fit: Fit) -> tuple[Slack, float]:
        known = self._unread.get(fit.path)
        if known is None:
            found = slack(fit.gap)
            known = found, chance_outside(fit.gap, fit.low, fit.high, found=found)
            self._unread[fit.path] = known
        return known

    def _helpful(self, fit: Fit) -> tuple[ShopReading, ...]:
        """The readings that stray less than what they are of, that of what strays most first."""
        found = [(_spread_mm(each), each) for each in self.readings(fit)]
        found = [each for each in found if each[0] > float(each[1].cause.sigma)]
        return tuple(each for _, each in sorted(found, key=lambda e: (-e[0], e[1].dim.path)))

    def chance(self, fit: Fit, read: tuple[ShopReading, ...]) -> float:
        """Chance that a fit misses its band when some things are read before its owner is made."""
        if not read:
            return self._with_nothing_read(fit)[1]
        return chance_outside(fit.gap, fit.low, fit.high, settled=self._settled(fit, read))

    def slack(self, fit: Fit, read: tuple[ShopReading, ...], *, always: bool = False) -> Slack:
        """How far a gap may stray when some things are read before its owner is made.

        Parameters
        ----------
        always
            As if they were read, whenever they are made.
        """
        return slack(fit.gap, settled=self._settled(fit, read, always=always))

    def readings(self, fit: Fit, *, without: Container[str] = ()) -> tuple[ShopReading, ...]:
        """What real things met by a fit can be read before its owner is made, the last first.

        Parameters
        ----------
        without
            Paths that are not read.
        """
        found: list[ShopReading] = []
        seen: set[int] = set()
        stack = [fit.gap]
        while stack:
            node = stack.pop()
            if id(node) in seen:
                continue
            seen.add(id(node))
            own = self.reading(node) if self._is_before(node, fit) else None
            if own is not None and node.path not in without:
                found.append(own)
            elif node.flows:
                stack.extend(arg for arg in node.args if isinstance(arg, Dim))
        return tuple(found)

    def reading(self, dim: Dim) -> ShopReading | None:
        """The best reading of a thing that was not read yet; None where there is none to take."""
        if not _is_real(dim) or dim.built is not None:
            return None
        tool = gauge_for(self._room.spec.shop, dim.value)
        if tool is None:
            return None
        return ShopReading(dim, tool.kind, tool.strays(f"reading of {dim.path}"))

    def _is_before(self, dim: Dim, fit: Fit) -> bool:
        begun = self._begun.get(fit.owner, 0)
        return self._made.get(id(dim), begun) < begun

    def _settled(
        self, fit: Fit, read: tuple[ShopReading, ...], *, always: bool = False
    ) -> Settled:
        known = {
            id(each.dim): (each.cause,)
            for each in read
            if always or self._is_before(each.dim, fit)
        }
        return lambda dim: known.get(id(dim))


def _is_real(dim: Dim) -> bool:
    origin = dim.origin
    if origin is None or dim.power != 1:
        return False
    return origin.kind == "made" or dim.path.partition(".")[0] in _READ


def _spread_mm(reading: ShopReading) -> float:
    """How far what is read strays by itself [mm]."""
    own = slack(reading.dim)
    return own.sigma_mm + own.bias_mm

"""Slack: how far a gap between real things may stray from its number."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from casewright.dims.causes import Cause
from casewright.dims.dim import Dim
from casewright.dims.slack_sizes import SlackSize, share_of, size_of

__all__ = [
    "Settled",
    "Slack",
    "Term",
    "nothing",
    "reaching",
    "slack",
]

_ZERO = Fraction(0)

_Rate: TypeAlias = int | Fraction
"""A slope while slopes are added up: most of them are whole, which is many times as fast [-]."""

Settled = Callable[[Dim], tuple[Cause, ...] | None]
"""How far a reading of a dim strays that is taken before the thing in question is made, in place
of how far the dim itself does; None for a dim that is not read then."""


def nothing(_: Dim) -> None:
    """Nothing is read."""


@dataclass(frozen=True, slots=True)
class Term:
    """What one cause contributes to a dim.

    Parameters
    ----------
    cause
        The cause, counted once however often it enters.
    slope
        Exact sensitivity: mm of the dim per mm of the cause [-].
    """

    cause: Cause
    slope: Fraction

    @property
    def worst(self) -> Fraction:
        """Greatest contribution either way [mm]."""
        return abs(self.slope) * self.cause.limit

    @property
    def sigma(self) -> Fraction:
        """One standard deviation of the contribution [mm]."""
        return abs(self.slope) * self.cause.sigma


@dataclass(frozen=True, slots=True)
class Slack:
    """How far a dim may stray.

    Parameters
    ----------
    nominal
        The number itself [mm].
    size
        How far all causes together let it stray.
    reached
        The causes with their exact slopes, in the order in which they were met [-].
    decided
        True where a `least` or `greatest` chose between close candidates, so that the linear
        figures are only a guide and it should be simulated.
    """

    nominal: Fraction
    size: SlackSize
    reached: tuple[tuple[Cause, _Rate], ...]
    decided: bool

    @property
    def terms(self) -> tuple[Term, ...]:
        """The causes, greatest contribution first."""
        both = zip(self.size.worsts, self.reached, strict=True)
        ranked = sorted(both, key=lambda e: (-e[0], e[1][0].key))
        return tuple(Term(cause, Fraction(slope)) for _, (cause, slope) in ranked)

    @property
    def worst(self) -> Fraction:
        """Sum of all limits, exact [mm]."""
        return self.size.worst

    @property
    def sigma_mm(self) -> float:
        """Root of the sum of squares of the random causes [mm]."""
        return self.size.sigma_mm

    @property
    def bias_mm(self) -> float:
        """Sum of the systematic causes' deviations, which add [mm]."""
        return float(self.size.bias)

    @property
    def low(self) -> Fraction:
        """Worst case below [mm]."""
        return self.nominal - self.worst

    @property
    def high(self) -> Fraction:
        """Worst case above [mm]."""
        return self.nominal + self.worst


def reaching(dim: Dim, settled: Settled = nothing) -> list[Dim]:
    """Every dim whose deviation reaches this one, results before arguments."""
    order: list[Dim] = []
    seen: set[int] = set()
    stack: list[tuple[Dim, bool]] = [(dim, False)]
    while stack:
        node, done = stack.pop()
        if done:
            order.append(node)
            continue
        if id(node) in seen:
            continue
        seen.add(id(node))
        if not (node.flows and node.args) or settled(node) is not None:
            order.append(node)
            continue
        stack.append((node, True))
        stack.extend((a, False) for a in node.args if isinstance(a, Dim) and id(a) not in seen)
    order.reverse()
    return order


def _slopes(node: Dim) -> Iterator[tuple[Dim, _Rate]]:
    op, args = node.op, node.args
    if op in ("least", "greatest"):
        for arg in args:
            if isinstance(arg, Dim) and arg.value == node.wanted:
                yield arg, 1
                return
        return
    if op in ("*", "/") and len(args) == 2:
        a, b = args
        a_value = a.value if isinstance(a, Dim) else a
        b_value = b.value if isinstance(b, Dim) else b
        if isinstance(a, Dim):
            yield a, b_value if op == "*" else 1 / b_value
        if isinstance(b, Dim):
            yield b, a_value if op == "*" else -a_value / b_value**2
        return
    for index, arg in enumerate(args):
        if isinstance(arg, Dim) and op == "root":
            yield arg, 1 / (2 * node.wanted)
        elif isinstance(arg, Dim):
            yield arg, -1 if op == "-" and index == 1 else 1


def _reached(order: list[Dim], settled: Settled) -> list[tuple[Cause, _Rate]]:
    """Every cause that reaches the first of some dims, with its exact slope.

    Deviations stop at things cut to a number and start afresh there; equal keys are one cause.
    """
    rate: dict[int, _Rate] = {id(order[0]): 1}
    sums: dict[str, _Rate] = {}
    causes: dict[str, Cause] = {}
    for node in order:
        slope = rate.get(id(node), 0)
        read = settled(node)
        for cause in node.causes if read is None else read:
            sums[cause.key] = sums.get(cause.key, 0) + slope
            causes[cause.key] = cause
        if node.flows and read is None:
            for arg, part in _slopes(node):
                rate[id(arg)] = rate.get(id(arg), 0) + slope * part
    return [(causes[key], slope) for key, slope in sums.items() if slope]


def _has_close_choice(order: list[Dim], settled: Settled) -> bool:
    choices = [
        node
        for node in order
        if node.op in ("least", "greatest") and node.flows and settled(node) is None
    ]
    if not choices:
        return False
    reach = _reaches([node for node in order if settled(node) is None])
    return any(_is_close(node, reach) for node in choices)


def _reaches(order: list[Dim]) -> dict[int, Fraction]:
    """How far each dim may stray at most, causes that cancel counted as if they did not [mm]."""
    reach: dict[int, Fraction] = {}
    for node in reversed(order):
        own = sum((cause.limit for cause in node.causes), _ZERO)
        if node.flows and node.op in ("least", "greatest"):
            own += max(reach.get(id(arg), _ZERO) for arg in node.args if isinstance(arg, Dim))
        elif node.flows:
            own += sum(
                (max(part, -part) * reach.get(id(arg), _ZERO) for arg, part in _slopes(node)),
                _ZERO,
            )
        reach[id(node)] = own
    return reach


def _is_close(node: Dim, reach: dict[int, Fraction]) -> bool:
    """Whether another candidate could turn out to be the one that decides."""
    candidates = [arg for arg in node.args if isinstance(arg, Dim)]
    chosen = next(arg for arg in candidates if arg.value == node.wanted)
    return any(
        abs(arg.value - chosen.value) <= reach.get(id(arg), _ZERO) + reach.get(id(chosen), _ZERO)
        for arg in candidates
        if arg is not chosen and (reach.get(id(arg), _ZERO) or reach.get(id(chosen), _ZERO))
    )


def slack(dim: Dim, *, settled: Settled = nothing) -> Slack:
    """Worst case by intervals and root-sum-square by causes.

    Parameters
    ----------
    settled
        What is read first, and how far its reading strays.

    Sources
    -------
    Root-sum-square of independent deviations and plain addition of systematic ones:
    the general law of propagation of uncertainty (`gum`).
    """
    order = reaching(dim, settled)
    found = _reached(order, settled)
    size = size_of(tuple(share_of(cause, slope) for cause, slope in found))
    return Slack(dim.value, size, tuple(found), _has_close_choice(order, settled))

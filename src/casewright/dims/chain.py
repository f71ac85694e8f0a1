"""The chain of dimensions: named places, facts applied at creation, fits and branches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Protocol

from casewright.dims.causes import Cause
from casewright.dims.dim import Dim, Given, Origin
from casewright.dims.rounding import Way, round_to

__all__ = ["Branch", "Chain", "Fit", "Frozen", "Place"]

_ZERO = Fraction(0)
_CUT = Origin("made", "cut to this number")
_RESULTS = Origin("made", "results from its parts")


class Frozen(Protocol):
    """What the chain needs to know of a fact: sizes of one path, and how well they are known."""

    @property
    def cut(self) -> Fraction | None:
        """Size it was cut to [mm]."""

    @property
    def built(self) -> Fraction | None:
        """Size read on the real thing [mm]."""

    @property
    def causes(self) -> tuple[Cause, ...]:
        """Uncertainty of the reading."""

    @property
    def origin(self) -> Origin:
        """Tool, time, who."""


@dataclass(frozen=True, slots=True)
class Fit:
    """A gap between physical things that must stay inside a band.

    Parameters
    ----------
    path
        Name of the fit.
    gap
        The gap as a formula over made and measured things [mm].
    low, high
        The band [mm].
    owner
        Path of the part or case that is wrong when the gap is.
    """

    path: str
    gap: Dim
    low: Fraction
    high: Fraction
    owner: str

    @property
    def holds(self) -> bool:
        """Whether the gap, by the numbers known now, is inside its band."""
        return self.low <= self.gap.value <= self.high


@dataclass(frozen=True, slots=True)
class Branch:
    """A decision that hung on a dimension.

    Parameters
    ----------
    place
        Path of the place that decided.
    because
        In words: 'two doors, one would be too wide'.
    left, right
        The two dims compared.
    over
        True when left was over right.
    count
        How often `right` goes into `left`, for a count; else None.
    """

    place: str
    because: str
    left: Dim
    right: Dim
    over: bool
    count: int | None = None


@dataclass(slots=True)
class Chain:
    """All named dims of one build.

    Parameters
    ----------
    facts
        Frozen sizes by path.
    """

    facts: Mapping[str, Frozen] = field(default_factory=dict)
    nodes: dict[str, Dim] = field(default_factory=dict)
    fits: dict[str, Fit] = field(default_factory=dict)
    branches: list[Branch] = field(default_factory=list)
    used_facts: set[str] = field(default_factory=set)

    def place(self, path: str) -> Place:
        """The place of that path; everything named in it begins with it."""
        return Place(self, path)

    def register(self, path: str, dim: Dim) -> Dim:
        """Give a dim its permanent name.

        Raises
        ------
        ValueError
            When the path is taken: a defect of the program.
        """
        if path in self.nodes:
            msg = f"two dims are named {path}"
            raise ValueError(msg)
        dim.path = path
        self.nodes[path] = dim
        return dim

    @property
    def unused_facts(self) -> tuple[str, ...]:
        """Paths of facts that no number of this build took up, sorted."""
        return tuple(sorted(set(self.facts) - self.used_facts))


@dataclass(frozen=True, slots=True)
class Place:
    """An explicit place in the job, through which dims get their names and their facts."""

    chain: Chain
    path: str

    def at(self, name: str) -> Place:
        """A place inside this one."""
        return Place(self.chain, f"{self.path}.{name}" if self.path else name)

    def _full(self, name: str) -> str:
        return f"{self.path}.{name}" if self.path else name

    def let(self, name: str, dim: Dim) -> Dim:
        """Name a formula. No physical thing stands for it, so no fact applies."""
        node = dim
        if dim.path:
            node = Dim("as", (dim,), dim.value, dim.power)
        elif not dim.op:
            # A bare number may stand in many places: each name gets a number of its own.
            node = Dim("", (), dim.value, dim.power)
            node.origin, node.causes = dim.origin, dim.causes
        return self.chain.register(self._full(name), node)

    def enter(
        self, name: str, value: Fraction, origin: Origin, *, causes: tuple[Cause, ...] = ()
    ) -> Dim:
        """A number from outside: chosen, cited, solved or measured. A reading replaces it."""
        node = Dim("", (), value)
        node.origin = origin
        node.causes = causes
        return self._physical(name, node)

    def given(self, name: str, given: Given) -> Dim:
        """`enter` for a value that carries its origin."""
        return self.enter(name, given.value, given.origin)

    def made(self, name: str, dim: Dim, causes: tuple[Cause, ...] = (), how: str = "") -> Dim:
        """A thing cut to the number: the value passes, its deviation starts afresh."""
        node = Dim("as", (dim,), dim.value, dim.power)
        node.causes = causes
        node.flows = False
        node.origin = Origin("made", how) if how else _CUT
        return self._physical(name, node)

    def follows(self, name: str, dim: Dim, causes: tuple[Cause, ...] = (), how: str = "") -> Dim:
        """A size that results from real things: their deviations come through, its own add.

        A box's width follows from its parts; a part's thickness from its sheet.
        """
        node = Dim("as", (dim,), dim.value, dim.power)
        node.causes = causes
        node.origin = Origin("made", how) if how else _RESULTS
        return self._physical(name, node)

    def rounded(self, name: str, dim: Dim, step: Fraction, way: Way) -> tuple[Dim, Dim]:
        """A number on the grid, and the remainder left over (exact value minus rounded).

        The remainder is named `<name>_rest` and belongs into a gap, so that sums close.

        Parameters
        ----------
        step
            Grid [mm]; 0 leaves the value as it is.
        way
            Down, up or nearest.
        """
        value, _ = round_to(dim.value, step, way) if step else (dim.value, _ZERO)
        node = Dim("round", (dim, step), value, dim.power)
        node.flows = False
        self.chain.register(self._full(name), node)
        return node, self.let(f"{name}_rest", dim - node)

    def over(self, left: Dim, right: Dim, because: str) -> bool:
        """Whether left is over right; the decision is kept for `why`."""
        answer = left.value > right.value
        self.chain.branches.append(Branch(self.path, because, left, right, answer))
        return answer

    def times(self, length: Dim, step: Dim, because: str) -> int:
        """How many whole steps go into a length, never below 0; kept for `why`."""
        count = max(0, int(length.value // step.value))
        self.chain.branches.append(Branch(self.path, because, length, step, count > 0, count))
        return count

    def fit(self, name: str, gap: Dim, low: Fraction, high: Fraction, owner: str) -> Fit:
        """Declare a gap over physical things and the band it must keep [mm]."""
        fit = Fit(self._full(name), gap, low, high, owner)
        self.chain.fits[fit.path] = fit
        return fit

    def _physical(self, name: str, node: Dim) -> Dim:
        path = self._full(name)
        fact = self.chain.facts.get(path)
        if fact is not None:
            self.chain.used_facts.add(path)
            node.cut, node.built = fact.cut, fact.built
            known = node.built if node.built is not None else node.cut
            if known is not None:
                node.value = known
                node.flows = False
            if node.built is not None:
                node.causes = fact.causes
                node.origin = fact.origin
        return self.chain.register(path, node)

"""One number of the chain: an exact value, the formula that made it, and where it came from."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NoReturn

from casewright.dims.causes import Cause
from casewright.dims.exact import all_of, less, plus, side_of, times

__all__ = [
    "Dim",
    "DimensionKindError",
    "Given",
    "Origin",
    "OriginKind",
    "greatest",
    "least",
    "root",
    "total",
]

OriginKind = Literal["chosen", "solved", "measured", "cited", "made"]
_POWER_NAMES = {0: "a plain number", 1: "a length", 2: "an area", 3: "a volume"}


class DimensionKindError(TypeError):
    """Two quantities of different kinds were mixed: a length and an area, say.

    A defect of the program, never of a job file.
    """


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a formula ends: who or what decided this number.

    Parameters
    ----------
    kind
        chosen, solved, measured, cited or made.
    note
        In words: 'style "painted"', 'tape, wall left to right'.
    source
        Key in `casewright.sources`, or empty.
    where
        Place in the job file, 'kitchen.toml line 12', or empty.
    """

    kind: OriginKind
    note: str
    source: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class Given:
    """A number from outside the chain together with its origin.

    Parameters
    ----------
    value
        Length [mm].
    origin
        Who decided it.
    """

    value: Fraction
    origin: Origin


class Dim:
    """A node of the chain. Arithmetic on dims records itself.

    `value` is what everything downstream sees: the built size if one is known, else the cut
    size, else the number wanted. Equality is identity; compare through `Place.over`, so that
    the branch taken is remembered.

    Attributes
    ----------
    op, args
        The formula: an operator and what it acts on.
    value
        Exact value [mm to the `power`].
    power
        1 for a length, 2 for an area, 0 for a ratio [-].
    path
        Permanent name, empty for a step inside a formula.
    wanted
        The number the formula asked for [mm].
    cut, built
        Sizes taken from facts [mm], or None.
    origin, causes
        Set where a formula ends or a physical thing begins.
    flows
        Whether deviations of the arguments come through (False: cut to a number).
    """

    __slots__ = (
        "args", "built", "causes", "cut", "flows", "op", "origin", "path", "power", "value",
        "wanted",
    )  # fmt: skip

    op: str
    args: tuple[Dim | Fraction, ...]
    value: Fraction
    power: int
    path: str
    wanted: Fraction
    cut: Fraction | None
    built: Fraction | None
    origin: Origin | None
    causes: tuple[Cause, ...]
    flows: bool

    def __init__(
        self, op: str, args: tuple[Dim | Fraction, ...], value: Fraction, power: int = 1
    ) -> None:
        self.op = op
        self.args = args
        self.value = self.wanted = value
        self.power = power
        self.path = ""
        self.cut = self.built = self.origin = None
        self.causes = ()
        self.flows = True

    @property
    def is_held(self) -> bool:
        """Whether it is read or cut, so that it follows nothing any more."""
        return self.cut is not None or self.built is not None

    @property
    def followed(self) -> list[Dim]:
        """The numbers that it follows: none where it is read or cut."""
        return [] if self.is_held else [arg for arg in self.args if isinstance(arg, Dim)]

    def __repr__(self) -> str:
        return f"Dim({self.path or self.op}={self.value})"

    def __add__(self, other: Dim) -> Dim:
        if other.__class__ is not Dim or other.power != self.power:
            _mixed("add", self, other)
        return Dim("+", (self, other), plus(self.value, other.value), self.power)

    def __sub__(self, other: Dim) -> Dim:
        if other.__class__ is not Dim or other.power != self.power:
            _mixed("subtract", self, other)
        return Dim("-", (self, other), less(self.value, other.value), self.power)

    def __neg__(self) -> Dim:
        return Dim("*", (Fraction(-1), self), -self.value, self.power)

    def __mul__(self, other: Dim | Fraction | int) -> Dim:
        if isinstance(other, Dim):
            return Dim("*", (self, other), self.value * other.value, self.power + other.power)
        factor = _number(other, "multiply", self)
        return Dim("*", (factor, self), times(self.value, factor), self.power)

    def __rmul__(self, other: Fraction | int) -> Dim:
        return self * other

    def __truediv__(self, other: Dim | Fraction | int) -> Dim:
        if isinstance(other, Dim):
            return Dim("/", (self, other), self.value / other.value, self.power - other.power)
        divisor = _number(other, "divide", self)
        return Dim("/", (self, divisor), self.value / divisor, self.power)

    def __lt__(self, other: object) -> NoReturn:
        msg = "compare dims through Place.over, so that the branch is remembered"
        raise TypeError(msg)

    __gt__ = __le__ = __ge__ = __lt__


def _number(other: object, verb: str, dim: Dim) -> Fraction:
    """A bare number that a dim is multiplied or divided by."""
    if isinstance(other, Fraction):
        return other
    if not isinstance(other, int):
        _mixed(verb, dim, other)
    return Fraction(other)


def _mixed(verb: str, left: Dim, right: object) -> NoReturn:
    names = [
        _POWER_NAMES.get(x.power, f"power {x.power}") if isinstance(x, Dim) else repr(x)
        for x in (left, right)
    ]
    msg = f"cannot {verb} {names[0]} and {names[1]}"
    raise DimensionKindError(msg)


def _same_power(dims: tuple[Dim, ...]) -> int:
    if not dims:
        msg = "needs at least one dim"
        raise ValueError(msg)
    for other in dims[1:]:
        if other.power != dims[0].power:
            _mixed("combine", dims[0], other)
    return dims[0].power


def total(*dims: Dim) -> Dim:
    """Sum of any number of dims as one node.

    Raises
    ------
    DimensionKindError
        When kinds are mixed.
    ValueError
        When nothing is given.
    """
    power = _same_power(dims)
    return Dim("total", dims, all_of([d.value for d in dims]), power)


def least(*dims: Dim) -> Dim:
    """The smallest of several dims: the narrowest of three wall readings, say."""
    power = _same_power(dims)
    return Dim("least", dims, min(d.value for d in dims), power)


def greatest(*dims: Dim) -> Dim:
    """The greatest of several dims: the highest of the floor readings, say."""
    power = _same_power(dims)
    return Dim("greatest", dims, max(d.value for d in dims), power)


def root(area: Dim) -> Dim:
    """The side of a square of that area, by `side_of`: a diagonal, say [mm].

    Raises
    ------
    DimensionKindError
        When it is no area.
    """
    if area.power != 2:
        _mixed("take the root of", area, "")
    return Dim("root", (area,), side_of(area.value))

"""Why a number of the job is what it is, in the job's unit."""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable
from fractions import Fraction

from casewright.dims import Branch, Chain, Dim, Unit, Why, shop_text, why
from casewright.errors import CasewrightError, Location, Problem
from casewright.job.numbers import chain_with
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["NoSuchPathError", "nearest_paths", "number_text", "reasons", "short_name"]

_LOADS = {-3: (10**9, "kg/m3"), -2: (10**6, "kg/m2"), -1: (10**3, "kg/m")}
"""Weights for each cube, square or stretch of a length, by its power."""

_GRAVITY = Fraction("9.80665")
"""Standard acceleration of gravity: a pound of force is a pound's weight under it [m/s2]."""

_OFF_FIGURES = 2
"""Of what a ratio is off a whole number [-]."""

_OUTSIDE = {"length": 1, "width": 2, "height": 3, "depth": 4, "thickness": 5}


class NoSuchPathError(CasewrightError, LookupError):
    """No number has this path.

    Parameters
    ----------
    path
        As asked for.
    nearest
        Paths that look like it, best first.
    """

    def __init__(self, path: str, nearest: tuple[str, ...]) -> None:
        super().__init__(path, nearest)
        self.path = path
        self.nearest = nearest

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The path, and the nearest ones."""
        want = "ask for the list with `casewright why JOB`"
        if self.nearest:
            want = f"did you mean {', or '.join(self.nearest)}?"
        return (Problem(Location("", word=self.path), f"there is no number {self.path}", want),)

    def __str__(self) -> str:
        (problem,) = self.problems
        return f"{problem.what}; {problem.want}"


def reasons(room: Room, path: str, chain: Chain | None = None) -> tuple[Why, ...]:
    """The number asked for and everything it rests on.

    Parameters
    ----------
    chain
        That it stands on; None: it is looked for.

    Raises
    ------
    NoSuchPathError
        With the nearest paths.
    """
    chain, unit = chain or chain_with(room, path), room.spec.unit
    if path not in chain.nodes:
        styles = (f"style.{key}" for key in room.spec.style.values)
        known = tuple(dict.fromkeys([*chain.nodes, *styles]))
        raise NoSuchPathError(path, nearest_paths(path, known))

    def show(dim: Dim) -> str:
        return f"{short_name(dim.path, path)} {number_text(dim.value, unit, dim.power, dim.path)}"

    def branch(taken: Branch) -> str:
        return _branch(taken, unit, show)

    def grid(step: Fraction) -> str:
        return shop_text(step, unit)

    return why(
        chain, path, show=show, number=str, branch=branch, grid=grid, designed=room.designed
    )


def nearest_paths(path: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Up to six paths like one that is not known, the likeliest first.

    The name of a part or a case leads to its own numbers, also when it is not quite right.
    """
    inner = [word for p in known for word in _around(p)]
    names = dict.fromkeys([*known, *inner])
    close = difflib.get_close_matches(path, names, n=4, cutoff=0.6)
    likely = [path] if path in names else close
    found = [p for name in likely for p in ([name] if name in known else _inside(name, known)[:3])]
    ends = [p for p in known if p.endswith(f".{path}")]
    return tuple(dict.fromkeys([*found, *ends[:4]]))[:6]


def _around(path: str) -> list[str]:
    """Names that a path lies in, the nearest first."""
    steps = path.split(".")
    return [".".join(steps[:count]) for count in range(len(steps) - 1, 0, -1)]


def _inside(name: str, known: tuple[str, ...]) -> list[str]:
    """Numbers of a part or a case, its own before those of what is in it, outside sizes first."""
    own = [path for path in known if path.startswith(f"{name}.")]
    return sorted(own, key=lambda p: (p.count("."), _OUTSIDE.get(p.rpartition(".")[2], 9)))


def short_name(path: str, asked: str) -> str:
    """A path without what it shares with the one asked for; a style value by its key."""
    place = asked.rpartition(".")[0]
    while place:
        if path.startswith(f"{place}."):
            return path[len(place) + 1 :]
        place = place.rpartition(".")[0]
    return path.removeprefix("style.")


def number_text(value: Fraction, unit: Unit, power: int, path: str = "") -> str:
    """A value of the chain in words: a length in the job's unit, a weight, a ratio in decimals.

    Parameters
    ----------
    value
        In mm to the power [mm], [kg/mm3], [kg], [N] or [-].
    path
        Its own, which tells a weight or a force from a ratio.
    """
    if power == 1:
        return shop_text(value, unit)
    if power in _LOADS:
        times, words = _LOADS[power]
        return f"{float(value * times):.4g} {words}"
    if power == 0 and path.startswith("wood."):
        return f"{float(value):.4g} %"
    if power == 0 and path.endswith("_force"):
        pounds = f" ({float(value / POUND / _GRAVITY):.3g} lb)" if unit == "in" else ""
        return f"{float(value):.4g} N{pounds}"
    if power == 0 and path.endswith(("weight", ".heaviest")):
        pounds = f" ({float(value / POUND):.3g} lb)" if unit == "in" else ""
        return f"{float(value):.3g} kg{pounds}"
    return _ratio_text(value)


def _ratio_text(value: Fraction) -> str:
    """A ratio to four figures and four decimals; what is nearly whole shows what it is off.

    Whoever follows a length times a ratio by hand comes out within 1/64 in on any wall of a room.
    """
    if value.denominator == 1:
        return str(value)
    text = f"{float(value):.4f}" if abs(value) >= 1 else f"{float(value):.4g}"
    if float(text).is_integer():
        off = abs(float(value) - round(float(value)))
        text = f"{float(value):.{_OFF_FIGURES - 1 - math.floor(math.log10(off))}f}"
    return text.rstrip("0") if "." in text and "e" not in text else text


def _branch(taken: Branch, unit: Unit, show: Callable[[Dim], str]) -> str:
    left, right = (
        show(dim) if dim.path else number_text(dim.value, unit, dim.power)
        for dim in (taken.left, taken.right)
    )
    if taken.count is not None:
        return f"{taken.because}: {taken.count} whole {right} in {left}"
    if taken.over:
        return f"{taken.because}: {left} is over {right}"
    return f"not: {taken.because} ({left} is not over {right})"

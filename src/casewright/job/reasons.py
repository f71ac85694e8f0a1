"""Why a number of the job is what it is, in the job's unit."""

from __future__ import annotations

import difflib
from collections.abc import Callable
from fractions import Fraction

from casewright.dims import Branch, Dim, Unit, Why, shop_text, why
from casewright.errors import CasewrightError
from casewright.job.numbers import chain_with
from casewright.room.model import Room

__all__ = ["NoSuchPathError", "number_text", "reasons", "short_name"]


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

    def __str__(self) -> str:
        if not self.nearest:
            return f"there is no number {self.path}; ask for the list with `casewright why JOB`"
        return f"there is no number {self.path}; did you mean {', or '.join(self.nearest)}?"


def reasons(room: Room, path: str) -> tuple[Why, ...]:
    """The number asked for and everything it rests on.

    Raises
    ------
    NoSuchPathError
        With the nearest paths.
    """
    chain, unit = chain_with(room, path), room.spec.unit
    if path not in chain.nodes:
        styles = (f"style.{key}" for key in room.spec.style.values)
        known = tuple(dict.fromkeys([*chain.nodes, *styles]))
        raise NoSuchPathError(path, _nearest(path, known))

    def show(dim: Dim) -> str:
        return f"{short_name(dim.path, path)} {number_text(dim.value, unit, dim.power)}"

    def branch(taken: Branch) -> str:
        return _branch(taken, unit, show)

    def grid(step: Fraction) -> str:
        return shop_text(step, unit)

    return why(
        chain, path, show=show, number=str, branch=branch, grid=grid, designed=room.designed
    )


def _nearest(path: str, known: tuple[str, ...]) -> tuple[str, ...]:
    inside = [p for p in known if p.startswith(f"{path}.")]
    inside.sort(key=lambda p: p.count("."))
    ends = [p for p in known if p.endswith(f".{path}")]
    close = difflib.get_close_matches(path, known, n=5, cutoff=0.6)
    return tuple(dict.fromkeys([*inside[:4], *close[:4], *ends[:4]]))[:6]


def short_name(path: str, asked: str) -> str:
    """A path without what it shares with the one asked for; a style value by its key."""
    place = asked.rpartition(".")[0]
    while place:
        if path.startswith(f"{place}."):
            return path[len(place) + 1 :]
        place = place.rpartition(".")[0]
    return path.removeprefix("style.")


def number_text(value: Fraction, unit: Unit, power: int) -> str:
    """A value of the chain in words: a length in the job's unit, a ratio in decimals."""
    if power == 1:
        return shop_text(value, unit)
    return str(value) if value.denominator == 1 else f"{float(value):.4g}"


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

"""Why a number of the job is what it is, in the job's unit."""

from __future__ import annotations

import difflib
from fractions import Fraction

from casewright.dims import Branch, Dim, Unit, Why, shop_text, why
from casewright.errors import CasewrightError
from casewright.room.model import Room

__all__ = ["NoSuchPathError", "reasons"]


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
    chain, unit = room.chain, room.spec.unit
    if path not in chain.nodes:
        raise NoSuchPathError(path, _nearest(path, tuple(chain.nodes)))

    def show(dim: Dim) -> str:
        return f"{_short(dim.path, path)} {_number(dim.value, unit, dim.power)}"

    def branch(taken: Branch) -> str:
        return _branch(taken, unit)

    return why(chain, path, show=show, number=str, branch=branch, designed=room.designed)


def _nearest(path: str, known: tuple[str, ...]) -> tuple[str, ...]:
    inside = [p for p in known if p.startswith(f"{path}.")]
    ends = [p for p in known if p.endswith(f".{path}")]
    close = difflib.get_close_matches(path, known, n=5, cutoff=0.6)
    return tuple(dict.fromkeys([*inside, *ends, *close]))[:6]


def _short(path: str, asked: str) -> str:
    """The path without what it shares with the one asked for."""
    place = asked.rpartition(".")[0]
    while place:
        if path.startswith(f"{place}."):
            return path[len(place) + 1 :]
        place = place.rpartition(".")[0]
    return path


def _number(value: Fraction, unit: Unit, power: int) -> str:
    return shop_text(value, unit) if power == 1 else str(value)


def _branch(taken: Branch, unit: Unit) -> str:
    left, right = (_number(d.value, unit, d.power) for d in (taken.left, taken.right))
    if taken.count is not None:
        return f"{taken.because}: {taken.count} (whole {right} in {left})"
    relation = "over" if taken.over else "not over"
    return f"{taken.because}: {'yes' if taken.over else 'no'}, {left} is {relation} {right}"

"""Numbers of the chain drawn at random from the laws of their causes, many draws at a time."""

from __future__ import annotations

from fractions import Fraction
from functools import reduce
from random import Random  # noqa: TID251 - seeded
from typing import Any, TypeAlias

import numpy as np
import numpy.typing as npt

from casewright.dims import Dim, Law, Settled, nothing, reaching

__all__ = ["Drawn", "Draws", "sampled", "share_outside"]

Draws: TypeAlias = npt.NDArray[np.float64]
"""Values of one number, one for each sample [mm], or shares of a cause's limit [-]."""

Drawn = dict[tuple[Law, ...], tuple[Draws, tuple[Any, ...]]]
"""What was drawn after so many laws, and the state that the generator was left in."""

_KEPT = 200
"""So many lists of draws are kept at the most."""

_EACH: dict[str, np.ufunc] = {
    "least": np.minimum, "greatest": np.maximum, "-": np.subtract, "*": np.multiply,
    "/": np.divide,
}  # fmt: skip
"""What a formula does draw by draw; all others add."""

_DRAWS, _SEED = 2000, 1
_DRAWN: Drawn = {}
"""Draws with that seed: the same for whatever is simulated, so that they are made once."""


def share_outside(dim: Dim, low: Fraction, high: Fraction, settled: Settled = nothing) -> float:
    """How many draws of a number leave its band, of all of them, with a fixed seed [-].

    Parameters
    ----------
    low, high
        The band [mm].
    settled
        As for `slack`.
    """
    source = Random(_SEED)  # noqa: S311 - a simulation, no secret
    values = sampled(dim, _DRAWS, source, settled=settled, drawn_before=_DRAWN)
    least_mm, most_mm = float(low), float(high)
    inside = int(np.count_nonzero((least_mm <= values) & (values <= most_mm)))
    return (_DRAWS - inside) / _DRAWS


def sampled(
    dim: Dim,
    draws: int,
    source: Random,
    *,
    settled: Settled = nothing,
    drawn_before: Drawn | None = None,
) -> Draws:
    """Simulated values of the real thing [mm], for choices that lie close together.

    Every cause is drawn once per sample from its law and shared by all that carry it.

    Parameters
    ----------
    draws
        Number of samples [-].
    source
        A seeded generator, so that results repeat.
    settled
        What is read first, and how far its reading strays.
    drawn_before
        Draws of earlier calls with the same number of draws and a generator of the same seed: the
        same come of them, in less time.
    """
    order = reaching(dim, settled)[::-1]
    laws: tuple[Law, ...] = ()
    before: Drawn = {} if drawn_before is None else drawn_before
    drawn: dict[str, Draws] = {}
    values: dict[int, Draws] = {}
    for node in order:
        read = settled(node)
        flows = node.flows and node.args and read is None
        now = _evaluate(node, values) if flows else np.full(draws, float(node.value))
        for cause in node.causes if read is None else read:
            if cause.key not in drawn:
                laws = (*laws, cause.law)
                drawn[cause.key] = _drawn_next(laws, draws, source, before)
            scale = float(cause.limit if cause.law == "even" else cause.sigma)
            now = now + scale * drawn[cause.key]
        values[id(node)] = now
    return values[id(dim)]


def _drawn_next(laws: tuple[Law, ...], draws: int, source: Random, before: Drawn) -> Draws:
    """What is drawn for the last of some laws, after all others."""
    known = before.get(laws)
    if known is not None:
        source.setstate(known[1])
        return known[0]
    values = _drawn(laws[-1], draws, source)
    if len(before) < _KEPT:
        before[laws] = values, source.getstate()
    return values


def _drawn(law: Law, draws: int, source: Random) -> Draws:
    """Deviations of one cause, as shares of its limit or its standard deviation [-]."""
    if law == "even":
        return np.array([source.uniform(-1.0, 1.0) for _ in range(draws)])
    return np.array([source.gauss(0.0, 1.0) for _ in range(draws)])


def _evaluate(node: Dim, values: dict[int, Draws]) -> Draws:
    """A formula, draw by draw."""
    args = [values[id(a)] if isinstance(a, Dim) else np.full(1, float(a)) for a in node.args]
    return np.sqrt(args[0]) if node.op == "root" else reduce(_EACH.get(node.op, np.add), args)

"""The chance that a gap leaves its band, simulated where its causes alone do not tell it.

Where candidates of a `least` or `greatest` lie close, which of them decides is chance too.
"""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Dim, Settled, Slack, chance_of, nothing, slack

__all__ = ["chance_outside"]

_FAR = 5


def chance_outside(
    dim: Dim,
    low: Fraction,
    high: Fraction,
    *,
    settled: Settled = nothing,
    found: Slack | None = None,
) -> float:
    """Chance that the real gap leaves its band [-].

    Where candidates of a `least` or `greatest` lie close, it is simulated, with a fixed seed; not
    where the band is so wide that no draw would be outside.

    Parameters
    ----------
    low, high
        The band [mm].
    settled
        As for `slack`.
    found
        Its slack with that settled, where it is known already.
    """
    if found is None:
        found = slack(dim, settled=settled)
    if not found.decided or _is_far_inside(found, low, high):
        return chance_of(found, low, high)
    from casewright.room.sampling import share_outside  # few jobs need it: it takes long to load

    return share_outside(dim, low, high, settled)


def _is_far_inside(found: Slack, low: Fraction, high: Fraction) -> bool:
    """Whether both ends are five standard deviations off: a choice moves it by one at the most."""
    room = float(min(found.nominal - low, high - found.nominal))
    return room > found.bias_mm + _FAR * found.sigma_mm

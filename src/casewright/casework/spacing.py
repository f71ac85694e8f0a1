"""Things spread evenly along an edge."""

from __future__ import annotations

from casewright.dims import Dim, Place

__all__ = ["spread_along"]


def spread_along(
    place: Place, length: Dim, most: Dim, edge: Dim, because: str
) -> tuple[Dim, Dim, int]:
    """Distances along an edge, the outer ones `edge` from its ends, no gap over `most`.

    On an edge too short for that, two at a quarter of its length from the ends.

    Parameters
    ----------
    length, most, edge
        [mm].
    because
        The count in words, for `why`.

    Returns
    -------
    The outer ones from the ends, from one to the next [mm], and how many [-].
    """
    if place.over(edge * 3, length, f"{because}: too short for the usual edge distance"):
        edge = length / 4
    span = length - 2 * edge
    whole = place.times(span, most, because)
    gaps = max(1, whole if most.value * whole == span.value else whole + 1)
    return edge, span / gaps, gaps + 1

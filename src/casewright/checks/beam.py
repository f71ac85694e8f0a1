"""Sag of a beam on two supports: floats, because nothing is cut to them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

__all__ = ["Rectangle", "section_inertia", "uniform_load_sag"]


class Rectangle(NamedTuple):
    """A rectangle of a cross-section.

    Parameters
    ----------
    width_mm, height_mm
        [mm].
    centre_mm
        Its centroid below the top of the section [mm].
    """

    width_mm: float
    height_mm: float
    centre_mm: float


def section_inertia(rectangles: Sequence[Rectangle]) -> float:
    """Second moment of area of glued rectangles of one stiffness about their common axis.

    Parameters
    ----------
    rectangles
        At least one.

    Returns
    -------
    Second moment [mm4].

    Sources
    -------
    Parallel axis theorem.

    Examples
    --------
    >>> section_inertia([Rectangle(300, 18, 9)])
    145800.0
    """
    areas = [r.width_mm * r.height_mm for r in rectangles]
    axis = sum(a * r.centre_mm for a, r in zip(areas, rectangles, strict=True)) / sum(areas)
    return sum(
        r.width_mm * r.height_mm**3 / 12 + a * (r.centre_mm - axis) ** 2
        for a, r in zip(areas, rectangles, strict=True)
    )


def uniform_load_sag(
    span_mm: float, load_n_per_mm: float, modulus_mpa: float, inertia_mm4: float
) -> float:
    """Sag at mid-span of a beam that rests on its two ends under an even load.

    Small deflection, shear left out: for spans over ten thicknesses.

    Parameters
    ----------
    span_mm
        Clear distance between the supports [mm].
    load_n_per_mm
        [N/mm].
    modulus_mpa
        Bending modulus along the span [MPa].
    inertia_mm4
        Second moment of area of the section [mm4].

    Returns
    -------
    Sag [mm].

    Sources
    -------
    `wood-handbook`: equation 9-2 with k = 5/384.

    Examples
    --------
    >>> round(uniform_load_sag(800, 0.3, 3000, section_inertia([Rectangle(300, 18, 9)])), 2)
    3.66
    """
    return 5 * load_n_per_mm * span_mm**4 / (384 * modulus_mpa * inertia_mm4)

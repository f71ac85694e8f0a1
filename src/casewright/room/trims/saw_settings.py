"""Settings of the mitre saw for mouldings: angles to a tenth of a degree, never lengths.

The functions here are the only ones of the room that reckon with floats. Their results are
rounded to whole tenths of a degree, which no length depends on: half a tenth is 0.003 in over a
face of 3 5/8 in (0.08 mm over 92), less than the saw itself strays.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from casewright.dims import Dim

__all__ = [
    "CornerSetting",
    "CornerStance",
    "Spring",
    "corner_tenths",
    "cosine_of",
    "crown_setting",
    "flat_setting",
    "spring_of",
    "stance",
]

_FINE = 10**9
"""Digits to which a sine is kept before it is rounded further, so that no machine differs."""


@dataclass(frozen=True, slots=True)
class Spring:
    """How far a moulding stands off the wall, as the tangent of its spring angle.

    Parameters
    ----------
    tangent
        Projection over drop [-].
    """

    tangent: Fraction

    @property
    def tenths(self) -> int:
        """Spring angle, between the back of the moulding and the wall [1/10 deg]."""
        return _tenths(math.atan(float(self.tangent)))


@dataclass(frozen=True, slots=True)
class CornerSetting:
    """Mitre and bevel for one end of a piece that lies flat on the saw's table.

    Parameters
    ----------
    mitre, bevel
        Of the table and of the blade [1/10 deg].
    nested
        Mitre for the same end of a piece that stands in the saw as it will in the room, without
        bevel [1/10 deg].
    """

    mitre: int
    bevel: int
    nested: int


@dataclass(frozen=True, slots=True)
class CornerStance:
    """How a crown lies flat on a saw whose blade tilts to the left, its face up.

    Parameters
    ----------
    at_fence
        The edge of the moulding at the fence: top or bottom.
    swing
        Which way the table is turned.
    keep
        On which side of the blade the piece is.
    """

    at_fence: Literal["top", "bottom"]
    swing: Literal["left", "right"]
    keep: Literal["left", "right"]


def stance(*, inside: bool, right_end: bool) -> CornerStance:
    """How to lay a crown for one of its ends.

    Parameters
    ----------
    inside
        Whether the corner is an inside one.
    right_end
        Whether it is the piece's right end, seen from the room.

    Sources
    -------
    `common practice`; checked in space against the plane that halves the corner.
    """
    return CornerStance(
        at_fence="top" if inside == right_end else "bottom",
        swing="right" if inside == right_end else "left",
        keep="left" if inside else "right",
    )


def spring_of(drop: Dim, projection: Dim) -> Spring:
    """The spring of a moulding by its two sizes as it stands: tan sp = projection / drop."""
    return Spring(projection.value / drop.value)


def cosine_of(degrees: Decimal) -> Fraction:
    """Cosine of an angle that was read in degrees, to nine digits [-]."""
    return Fraction(round(math.cos(math.radians(float(degrees))) * _FINE), _FINE)


def corner_tenths(cosine: Fraction) -> int:
    """The angle of a corner [1/10 deg]."""
    return _tenths(math.acos(_within(float(cosine))))


def crown_setting(cosine: Fraction, spring: Spring) -> CornerSetting:
    """Settings for a moulding laid flat, at a corner.

    mitre = atan(sin sp / tan(a / 2)), bevel = asin(cos sp cos(a / 2)), with the spring angle sp
    and the corner a; nested in the saw 90 - a / 2 without bevel.

    Parameters
    ----------
    cosine
        Of the corner [-].

    Sources
    -------
    Trigonometry of two planes; checked against published tables of the trade.
    """
    half = math.acos(_within(float(cosine))) / 2
    sp = math.atan(float(spring.tangent))
    return CornerSetting(
        mitre=_tenths(math.atan(math.sin(sp) / math.tan(half))),
        bevel=_tenths(math.asin(math.cos(sp) * math.cos(half))),
        nested=_tenths(math.pi / 2 - half),
    )


def flat_setting(cosine: Fraction) -> CornerSetting:
    """Settings for a strip that stands on edge, as a light rail: 90 - a / 2, no bevel."""
    nested = _tenths(math.pi / 2 - math.acos(_within(float(cosine))) / 2)
    return CornerSetting(nested, 0, nested)


def _within(cosine: float) -> float:
    return max(-1.0, min(1.0, cosine))


def _tenths(radians: float) -> int:
    """To the nearest tenth of a degree, halves up."""
    return math.floor(round(math.degrees(radians) * 10, 6) + 0.5)

"""Settings of the mitre saw for crown, against published tables and the geometry of two planes."""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.room.trims.saw_settings import (
    Spring,
    cosine_of,
    crown_setting,
    flat_setting,
    stance,
)


def _spring(degrees: float) -> Spring:
    return Spring(Fraction(math.tan(math.radians(degrees))))


def _cosine(degrees: float) -> Fraction:
    return Fraction(math.cos(math.radians(degrees)))


# Spring, corner, mitre, bevel [deg]. The first five are published (crown tables, read in secondary
# copies), the others computed by the same two formulas.
_TABLE = [
    (38, 90, 31.61901, 33.86291), (45, 135, 16.32495, 15.69986), (38, 135, 14.30638, 17.55124),
    (38, 45, 56.067, 46.721), (52, 1, 89.3655, 37.9983), (38, 88, 32.519, 34.5307),
    (38, 89, 32.0672, 34.1976), (38, 91, 31.1743, 33.5266), (38, 92, 30.7331, 33.1887),
    (45, 90, 35.2644, 30.0), (45, 88, 36.2127, 30.574), (45, 91, 34.7944, 29.7105),
    (52, 90, 38.2385, 25.8068),
]  # fmt: skip


@pytest.mark.parametrize(("spring", "corner", "mitre", "bevel"), _TABLE)
def test_the_tables_of_crown(spring: float, corner: float, mitre: float, bevel: float) -> None:
    """To the tenth of a degree that a saw is set to."""
    setting = crown_setting(_cosine(corner), _spring(spring))
    assert abs(setting.mitre / 10 - mitre) <= 0.0501
    assert abs(setting.bevel / 10 - bevel) <= 0.0501


def test_nested_in_the_saw_it_is_half_of_what_the_corner_lacks() -> None:
    """90: 45; 135: 22.5 (trigonometry); a light rail on edge likewise, without bevel."""
    assert crown_setting(_cosine(90), _spring(38)).nested == 450
    assert crown_setting(_cosine(135), _spring(38)).nested == 225
    assert (flat_setting(Fraction(0)).mitre, flat_setting(Fraction(0)).bevel) == (450, 0)


@given(st.floats(20, 70), st.floats(60, 165))
def test_the_cut_lies_in_the_plane_that_halves_the_corner(spring: float, corner: float) -> None:
    """The blade's plane, turned with the moulding into its place, halves the corner.

    On the saw: length x, face width y, up z; the blade turned by the mitre and tilted by the
    bevel. In place the width rises along the wall and out of it by the spring angle.
    """
    setting = crown_setting(_cosine(corner), _spring(spring))
    m, b, sp = (math.radians(each) for each in (setting.mitre / 10, setting.bevel / 10, spring))
    along, wide, thick = math.cos(m) * math.cos(b), math.sin(m) * math.cos(b), math.sin(b)
    up = wide * math.cos(sp) - thick * math.sin(sp)
    out = wide * math.sin(sp) + thick * math.cos(sp)
    assert abs(math.degrees(up)) < 0.12
    assert abs(math.degrees(math.atan2(along, out)) - corner / 2) < 0.12


_Vector = tuple[float, float, float]


def _cross(a: _Vector, b: _Vector) -> _Vector:
    return (
        a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0],
    )  # fmt: skip


def _dot(a: _Vector, b: _Vector) -> float:
    return sum(one * other for one, other in zip(a, b, strict=True))


@given(st.floats(20, 70), st.floats(60, 165), st.booleans(), st.booleans())
def test_every_end_laid_as_told_closes_its_corner(
    spring: float, corner: float, inside: bool, right_end: bool
) -> None:
    """Fence edge, swing and side kept, in space: the cut halves the corner, the piece is left.

    The saw: x to the right, y to the fence, z up; its blade tilts to the left. The room: x along
    the wall, y up, z out of the wall, the corner at the origin.
    """
    laid = stance(inside=inside, right_end=right_end)
    setting = crown_setting(_cosine(corner), _spring(spring))
    m, b, sp = (math.radians(each) for each in (setting.mitre / 10, setting.bevel / 10, spring))
    m = m if laid.swing == "right" else -m
    line, left = (math.sin(m), -math.cos(m), 0.0), (-math.cos(m), -math.sin(m), 0.0)
    blade = (left[0] * math.sin(b), left[1] * math.sin(b), math.cos(b))
    normal = _cross(line, blade)
    kept = left if laid.keep == "left" else (-left[0], -left[1], 0.0)
    turned = 1.0 if laid.at_fence == "top" else -1.0

    def in_place(v: _Vector) -> _Vector:
        along, wide, thick = turned * v[0], turned * v[1], v[2]
        return (
            along,
            wide * math.cos(sp) - thick * math.sin(sp),
            wide * math.sin(sp) + thick * math.cos(sp),
        )

    half = math.radians(corner) / 2
    toward = -1.0 if right_end == inside else 1.0
    halves = (toward * math.cos(half), 0.0, math.sin(half))
    cut = in_place(normal)
    assert abs(math.degrees(_dot(cut, halves))) < 0.15
    assert abs(math.degrees(cut[1])) < 0.15
    assert (in_place(kept)[0] < 0) == right_end


@given(st.floats(20, 70), st.floats(60, 165))
def test_a_corner_read_a_tenth_otherwise_moves_the_saw_no_more(
    spring: float, corner: float
) -> None:
    """Settings vary with the corner without a jump."""
    one, other = (crown_setting(_cosine(a), _spring(spring)) for a in (corner, corner + 0.1))
    assert 0 <= one.mitre - other.mitre <= 1
    assert 0 <= one.bevel - other.bevel <= 1


@given(st.tuples(*[st.integers(7500, 10500)] * 3))
def test_the_mitres_of_a_closed_room_close(read: tuple[int, int, int]) -> None:
    """Four corners sum to 360 degrees, their mitres nested in the saw to 180 (by geometry)."""
    angles = [Fraction(each, 100) for each in read]
    angles.append(360 - sum(angles, Fraction(0)))
    corners = [cosine_of(Decimal(a.numerator) / Decimal(a.denominator)) for a in angles]
    turned = sum(crown_setting(cosine, _spring(45)).nested for cosine in corners)
    assert abs(turned - 1800) <= 2

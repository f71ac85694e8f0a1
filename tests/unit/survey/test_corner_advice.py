"""The best further reading of a corner: against Monte Carlo and brute force over both ways."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pytest

from casewright.dims import Chain, Given, Origin
from casewright.survey.corner_advice import WANDER_DEGREES, advise_corner, spread_degrees
from casewright.survey.corners import SurveyedCorner, survey_corner
from casewright.survey.readings import TAPE, Reading
from casewright.survey.specs import CornerSpec, Triangle

DEPTH = Fraction(600)


def _reading(value: Fraction) -> Reading:
    return Reading(Given(value, Origin("measured", "tape")), TAPE)


def _corner(*, is_read: bool) -> SurveyedCorner:
    triangle = Triangle(*(_reading(Fraction(n)) for n in (1200, 900, 1500))) if is_read else None
    return survey_corner(Chain(), CornerSpec("c", "corner", "one", "other", triangle), {})


@pytest.mark.parametrize(("left", "right", "degrees"), [(1200, 900, 90), (3000, 2500, 88)])
def test_an_angle_is_known_as_well_as_a_hundred_thousand_readings_say(
    left: float, right: float, degrees: float
) -> None:
    """Three readings of 0.5 mm each, seed 7; within 2 %."""
    rng = np.random.default_rng(7)
    cosine = math.cos(math.radians(degrees))
    across = math.sqrt(left**2 + right**2 - 2 * left * right * cosine)
    one, other, far = (size + rng.normal(0, 0.5, 100_000) for size in (left, right, across))
    angles = np.degrees(np.arccos((one**2 + other**2 - far**2) / (2 * one * other)))
    assert spread_degrees(left, right, cosine, 0.5) == pytest.approx(float(angles.std()), rel=0.02)


def test_what_two_ways_say_together_is_what_least_squares_says() -> None:
    """An eye's guess of 1 degree and a triangle, by the inverse of the information (numpy)."""
    advice = advise_corner(_corner(is_read=False), (None, None), TAPE, DEPTH)
    assert advice is not None
    assert advice.read == "triangle"
    way = math.hypot(spread_degrees(1200, 900, 0, 0.5), WANDER_DEGREES)
    design = np.array([[1.0], [1.0]])
    weights = np.diag([1 / 1.0**2, 1 / way**2])
    spread = math.sqrt(float(np.linalg.inv(design.T @ weights @ design)[0, 0]))
    assert advice.after_mm == pytest.approx(600 * math.radians(spread))
    assert math.isinf(advice.before_mm)


@pytest.mark.parametrize("sides", [(3000, 2500), (400, 500), (1000, 1000)])
def test_no_other_way_cuts_the_risk_more(sides: tuple[int, int]) -> None:
    """Both ways tried: long walls are better than a triangle, short ones worse."""
    advice = advise_corner(_corner(is_read=False), _fractions(sides), TAPE, DEPTH)
    assert advice is not None
    spreads = {
        "triangle": spread_degrees(1200, 900, 0, 0.5),
        "diagonal": spread_degrees(*sides, 0, 0.5),
    }
    assert advice.read == min(spreads, key=lambda way: spreads[way])


def test_a_corner_read_in_both_ways_wants_no_more_and_a_second_way_helps_less() -> None:
    """What a further reading takes off falls with each one that is there."""
    bare = advise_corner(_corner(is_read=False), _fractions((3000, 2500)), TAPE, DEPTH)
    once = advise_corner(_corner(is_read=True), _fractions((3000, 2500)), TAPE, DEPTH)
    assert bare is not None
    assert once is not None
    assert once.read == "diagonal"
    assert once.after_mm < once.before_mm
    assert once.after_mm < bare.after_mm
    assert advise_corner(_corner(is_read=True), (None, None), TAPE, DEPTH) is None


def _fractions(sides: tuple[int, int]) -> tuple[Fraction, Fraction]:
    return Fraction(sides[0]), Fraction(sides[1])

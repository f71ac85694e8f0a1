"""Corners by the law of cosines, against a geometry library and Monte Carlo."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given as examples
from hypothesis import settings
from hypothesis import strategies as st
from shapely import LineString, Point
from shapely.affinity import rotate
from tests.unit.survey.rooms import inches, read, widths

from casewright.dims import Chain, Dim
from casewright.survey.angles import Angle, angle_of, departure_mm
from casewright.survey.corner_doubts import corner_doubts
from casewright.survey.corners import SurveyedCorner, survey_corner
from casewright.survey.specs import CornerSpec, SurveySpec, Triangle, WallSpec
from casewright.survey.survey import survey
from casewright.survey.walls import survey_wall


def _triangle(left: str, right: str, across: str) -> Triangle:
    return Triangle(read(left), read(right), read(across))


def _corner(spec: CornerSpec) -> SurveyedCorner:
    return survey_corner(Chain(), spec, {})


def _by_triangle(left: str, right: str, across: str) -> Dim:
    found = _corner(CornerSpec("c", "corner", "a", "b", _triangle(left, right, across))).cosine
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("sides", "degrees"),
    [(("3", "4", "5"), 90.0), (("36", "48", "60 1/4"), 90.4984), (("36", "48", "60"), 90.0)],
)
def test_three_four_five(sides: tuple[str, str, str], degrees: float) -> None:
    """The Pythagorean triple, and 60 1/4 across instead of 60 (law of cosines, computed)."""
    assert angle_of(_by_triangle(*sides)).degrees == pytest.approx(degrees, abs=1e-3)


@settings(max_examples=40)
@examples(st.integers(20, 160), st.integers(20, 160), st.integers(15, 165))
def test_a_corner_drawn_with_a_geometry_library_comes_back(a: int, b: int, degrees: int) -> None:
    """Two sides turned apart by shapely, the distance of their ends read to 1/1000 in."""
    one = LineString([(0, 0), (a, 0)])
    other = rotate(LineString([(0, 0), (b, 0)]), degrees, origin=(0, 0))
    across = Point(one.coords[-1]).distance(Point(other.coords[-1]))
    found = angle_of(_by_triangle(str(a), str(b), str(Fraction(round(across * 1000), 1000))))
    assert found.degrees == pytest.approx(degrees, abs=0.02)


@pytest.mark.parametrize("sides", [("36", "48", "60 1/4"), ("40", "40", "50"), ("24", "60", "70")])
def test_the_angle_strays_as_simulated_readings_do(sides: tuple[str, str, str]) -> None:
    """Propagation of variances against Monte Carlo with NumPy: 40 000 draws, 0.5 mm each.

    Of that 0.4 mm are each reading's own, 0.3 mm the hook's, one for the three of them.
    """
    random = np.random.default_rng(7)
    draws = random.normal(0.0, 0.4, (3, 40_000)) + random.normal(0.0, 0.3, (1, 40_000))
    a, b, c = (float(read(size).value) + row for size, row in zip(sides, draws, strict=True))
    simulated = np.degrees(np.arccos((a**2 + b**2 - c**2) / (2 * a * b)))
    found = angle_of(_by_triangle(*sides))
    assert found.sigma_degrees == pytest.approx(float(simulated.std()), rel=0.02)
    assert found.degrees == pytest.approx(float(simulated.mean()), abs=0.01)


def test_a_wall_departs_by_depth_over_the_tangent() -> None:
    """24 in out at 88 degrees: 24 / tan 88 = 0.838 in; none in a square corner (trigonometry)."""
    depth = 24 * Fraction(127, 5)
    sharp = Fraction(math.cos(math.radians(88)))
    assert departure_mm(sharp, depth) / 25.4 == pytest.approx(24 / math.tan(math.radians(88)))
    assert departure_mm(Fraction(0), depth) == 0.0


def test_the_diagonal_of_two_walls_gives_their_corner() -> None:
    """Walls of 120 and 90, 150 from end to end: square (3, 4, 5 times thirty)."""
    chain = Chain()
    walls = {
        key: survey_wall(chain, WallSpec(key, key, widths(size)))
        for key, size in (("a", "120"), ("b", "90"))
    }
    spec = CornerSpec("c", "corner", "a", "b", diagonal=read("150"))
    found = survey_corner(chain, spec, walls).cosine
    assert found is not None
    assert found.value == 0


def _room(*corners: CornerSpec, **sizes: str) -> SurveySpec:
    walls = tuple(WallSpec(key, key, widths(size)) for key, size in sizes.items())
    return SurveySpec(walls, corners)


def test_a_triangle_and_a_diagonal_that_disagree_are_doubted() -> None:
    """60 1/4 across gives 90.5 degrees; a diagonal of 150 says 90, which 153 does not."""
    small = _triangle("36", "48", "60")
    good = _room(CornerSpec("c", "corner", "a", "b", small, read("150 1/4")), a="120", b="90")
    bad = _room(CornerSpec("c", "corner", "a", "b", small, read("153")), a="120", b="90")
    assert not survey(Chain(), good, "in").doubts
    [doubt] = survey(Chain(), bad, "in").doubts
    assert "survey.corner.c.diagonal" in doubt.paths
    assert "90.0 degrees" in doubt.says


def _across(one: int, other: int, degrees: float) -> str:
    """Third side of a triangle, to 1/100 in (law of cosines)."""
    square = one**2 + other**2 - 2 * one * other * math.cos(math.radians(degrees))
    return str(Fraction(round(100 * math.sqrt(square)), 100))


def test_the_other_diagonal_of_a_leaning_room_is_guessed() -> None:
    """A corner of 85 degrees in a parallelogram, whose next corner has 95 (Euclid)."""
    small = _triangle("36", "48", _across(36, 48, 85))

    def doubts(diagonal: float) -> list[str]:
        corner = CornerSpec("c", "corner", "a", "b", small, read(_across(120, 90, diagonal)))
        return [d.says for d in survey(Chain(), _room(corner, a="120", b="90"), "in").doubts]

    assert doubts(85) == []
    [other] = doubts(95)
    assert other.endswith("was the other diagonal measured?")
    [odd] = doubts(88)
    assert "other diagonal" not in odd


def _ring(*across: str) -> SurveySpec:
    names = "abcd"
    corners = tuple(
        CornerSpec(f"c{n}", f"corner {n}", names[n], names[(n + 1) % 4],
                   _triangle("36", "48", size))
        for n, size in enumerate(across)
    )  # fmt: skip
    return _room(*corners)


def test_four_corners_of_a_room_sum_to_360_degrees() -> None:
    """Two corners a degree and a half over, two as much under close; four over do not (Euclid)."""
    over, under = "60 3/4", "59 1/4"
    assert not survey(Chain(), _ring(over, under, over, under), "in").doubts
    [doubt] = survey(Chain(), _ring(over, over, over, over), "in").doubts
    assert "sum to 366" in doubt.says


def test_three_corners_of_an_open_room_close_nothing() -> None:
    """Without the fourth there is no sum to check."""
    spec = _ring("60 3/4", "60 3/4", "60 3/4", "60 3/4")
    open_room = SurveySpec(spec.walls, spec.corners[:3])
    chain = Chain()
    corners = {c.key: survey_corner(chain, c, {}) for c in open_room.corners}
    assert not list(corner_doubts(open_room, corners))


def test_a_width_on_the_chain_is_in_millimetres() -> None:
    """The reading of a triangle keeps its value."""
    corner = _corner(CornerSpec("c", "corner", "a", "b", _triangle("36", "48", "60")))
    assert inches(corner.ways[0].across) == 60
    assert angle_of(corner.ways[0].cosine) == Angle(
        90.0, angle_of(corner.ways[0].cosine).sigma_degrees
    )

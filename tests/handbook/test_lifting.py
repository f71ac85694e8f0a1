"""The lifting equation against its manual's own examples.

Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) Publication 94-110
(revised 2021). The manual multiplies by figures of two decimals, as its tables print them.
"""

from __future__ import annotations

from fractions import Fraction
from math import prod

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.sources import (
    INCH,
    POUND,
    LiftingTask,
    hands_from_ankles,
    lifting_multipliers,
    weight_limit,
)


def _task(out: int, height: int, rise: int, *, often: str = "1", grip: str = "0.95",
          twist: int = 0) -> LiftingTask:  # fmt: skip
    """A lift told in inches."""
    return LiftingTask(
        out * INCH, height * INCH, rise * INCH, twist, Fraction(often), Fraction(grip)
    )


def _printed(figure: Fraction) -> Fraction:
    """Two decimals, halves up: as the manual's tables have it."""
    return Fraction(int(figure * 100 + Fraction(1, 2)), 100)


PACKAGE, PACKAGE_DOWN = (
    _task(10, 22, 37, often="0.88"), _task(20, 59, 37, often="0.88", grip="1"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("task", "limit", "off"),
    [
        (PACKAGE, 34.9, 0.05),  # example 4, origin, page 46: read in a secondary copy
        (PACKAGE_DOWN, 15.2, 0.06),  # destination; that H is 20 is inferred
        (_task(18, 15, 21, twist=45), 18.9, 0.11),  # example 3, pages 41-43: from memory
        (_task(20, 10, 17, grip="0.9"), 18.1, 0.06),  # example 2, destination: from memory
        (_task(15, 27, 17, grip="0.9"), 28.0, 0.06),  # example 2, origin: from memory
    ],
)
def test_printed_multipliers_give_the_printed_limit(
    task: LiftingTask, limit: float, off: float
) -> None:
    """51 lb times six figures of two decimals."""
    figures = [_printed(each) for each in lifting_multipliers(task, "in")]
    assert float(51 * prod(figures)) == pytest.approx(limit, abs=off)


@pytest.mark.parametrize(
    ("height", "grip", "limit", "index", "off"),
    [(15, "0.95", 16.3, 2.7, 0.06), (64, "1", 14.5, 3.0, 0.11)],
)
def test_the_table_has_44_hundredths_for_23_inches(
    height: int, grip: str, limit: float, index: float, off: float
) -> None:
    """Example 1, pages 33-37 (from memory): table HM .44, where 10 / 23 is .43."""
    across, *others = lifting_multipliers(_task(23, height, 49, grip=grip), "in")
    assert _printed(across) == Fraction("0.43")
    table = 51 * Fraction("0.44") * prod(_printed(each) for each in others)
    assert float(table) == pytest.approx(limit, abs=off)
    assert float(44 / table) == pytest.approx(index, abs=0.06)


def test_full_figures_give_a_little_less() -> None:
    """Example 4 unrounded: 34.8 lb."""
    limit = weight_limit(PACKAGE, "in")
    assert limit is not None
    assert float(limit / POUND) == pytest.approx(34.8, abs=0.06)


def test_centimetres_and_kilograms_are_a_system_of_their_own() -> None:
    """H 25, V 55, D 95 cm, .88, .95: 15.7 kg (a tutor's solution, not the manual's own)."""
    task = LiftingTask(
        Fraction(250), Fraction(550), Fraction(950), 0, Fraction("0.88"), Fraction("0.95")
    )
    limit = weight_limit(task, "mm")
    assert limit is not None
    assert float(limit) == pytest.approx(15.7, abs=0.06)
    assert float(12 / limit) == pytest.approx(0.76, abs=0.006)


@pytest.mark.parametrize(
    ("height", "printed"),
    [(0, "0.78"), (5, "0.81"), (10, "0.85"), (15, "0.89"), (20, "0.93"), (25, "0.96"),
     (30, "1"), (40, "0.93"), (50, "0.85"), (60, "0.78"), (70, "0.70")],
)  # fmt: skip
def test_table_2_of_heights(height: int, printed: str) -> None:
    """Read in a secondary copy; halves are rounded up there."""
    figure = lifting_multipliers(_task(10, height, 10), "in")[1]
    assert abs(figure - Fraction(printed)) <= Fraction("0.0051")


@pytest.mark.parametrize(
    ("rise", "printed"),
    [(10, "1"), (15, "0.94"), (20, "0.91"), (25, "0.89"), (30, "0.88"), (40, "0.87"),
     (50, "0.86"), (60, "0.85"), (70, "0.85")],
)  # fmt: skip
def test_table_3_of_distances(rise: int, printed: str) -> None:
    """Read in a secondary copy."""
    figure = lifting_multipliers(_task(10, 30, rise), "in")[2]
    assert abs(figure - Fraction(printed)) <= Fraction("0.0051")


def test_past_its_limits_there_is_no_figure() -> None:
    """H over 25 in, V over 70 in, A over 135 degrees (pages 8 to 13)."""
    assert weight_limit(_task(25, 70, 10, twist=135), "in") is not None
    for task in (_task(26, 30, 10), _task(10, 71, 10), _task(10, 30, 10, twist=136)):
        assert weight_limit(task, "in") is None


def test_how_far_the_hands_are_where_nobody_can_measure_it() -> None:
    """8 + W/2 from V 10 in on, 10 + W/2 below; 20 and 25 cm (page 8)."""
    wide = 12 * INCH
    assert hands_from_ankles(wide, 10 * INCH, "in") == 14 * INCH
    assert hands_from_ankles(wide, 9 * INCH, "in") == 16 * INCH
    assert hands_from_ankles(Fraction(300), Fraction(250), "mm") == 350
    assert hands_from_ankles(Fraction(300), Fraction(249), "mm") == 400


@given(st.integers(10, 25), st.integers(0, 70), st.integers(0, 70), st.integers(0, 134))
def test_farther_or_more_twisted_is_never_more(
    out: int, height: int, rise: int, twist: int
) -> None:
    """The limit falls with every move away from straight, near and level."""
    here = weight_limit(_task(out, height, rise, twist=twist), "in")
    assert here is not None
    assert here <= 51 * POUND
    for other in (_task(out + 1, height, rise, twist=twist),
                  _task(out, height, rise + 1, twist=twist),
                  _task(out, height, rise, twist=twist + 1)):  # fmt: skip
        assert (weight_limit(other, "in") or 0) <= here

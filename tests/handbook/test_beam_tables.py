"""Sag of shelves against worked examples.

Wood Handbook, FPL-GTR-190 (2010), equation 9-2, k = 5/384: simply supported beam, even load;
examples computed from the equation by an independent script. European fibreboard industry
guide, shelves: d = 5 W g L^3 / (32 E b t^3), formula read in a secondary copy. Second moment of
a compound section: parallel axis theorem, from memory, computed independently.
"""

from __future__ import annotations

import pytest

from casewright.checks.beam import Rectangle, section_inertia, uniform_load_sag

pytestmark = pytest.mark.handbook


@pytest.mark.parametrize(
    ("span", "depth", "thick", "pounds_per_inch", "psi", "sag"),
    [
        (36, 11.25, 0.75, 20 / 12, 1_820_000, 0.05064),
        (32, 11, 0.75, 25 * 11 / 144, 1_580_000, 0.04267),
        (30, 11.5, 0.75, 15 * 11.5 / 144, 290_100, 0.10772),
    ],
    ids=["red oak", "yellow-poplar", "particleboard"],
)
def test_sag_of_a_shelf_under_an_even_load(
    span: float, depth: float, thick: float, pounds_per_inch: float, psi: float, sag: float
) -> None:
    """Inches, pounds and psi go through the formula as well as millimetres."""
    inertia = section_inertia([Rectangle(depth, thick, thick / 2)])
    assert uniform_load_sag(span, pounds_per_inch, psi, inertia) == pytest.approx(sag, rel=1e-3)


def test_sag_of_a_fibreboard_shelf() -> None:
    """800 x 300 x 18 mm, 30 kg, 2500 N/mm2: 5.38 mm."""
    inertia = section_inertia([Rectangle(300, 18, 9)])
    assert uniform_load_sag(800, 30 * 9.80665 / 800, 2500, inertia) == pytest.approx(
        5.3827, rel=1e-3
    )


def test_sag_of_plywood_shelves_of_the_trade() -> None:
    """25 lb a foot on 300 x 17.8 mm of 8.3 GPa: 1.7, 2.7 and 4.1 mm (common practice)."""
    inertia = section_inertia([Rectangle(300, 17.8, 8.9)])
    load = 25 * 4.4482216152605 / 304.8
    sags = [round(uniform_load_sag(span, load, 8300, inertia), 1) for span in (800, 900, 1000)]
    assert sags == [1.7, 2.7, 4.1]


def test_second_moment_of_a_shelf_with_a_front_strip() -> None:
    """A strip 3/4 x 1 1/2 flush with the top of a shelf 11 1/4 x 3/4: 0.746 in4."""
    shelf, strip = Rectangle(11.25, 0.75, 0.375), Rectangle(0.75, 1.5, 0.75)
    assert section_inertia([shelf, strip]) == pytest.approx(0.746036, rel=1e-4)

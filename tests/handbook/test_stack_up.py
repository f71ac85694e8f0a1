"""Stack-ups of tolerances: printed examples, and the chain against simulation.

Printed, read in a secondary copy of an engineering article: a housing of 4.020 in less three
parts, worst case and root sum of squares. Printed, read in a secondary copy of a quality
handbook: parts per million outside the limits for a centred process, by its capability.
From memory, not seen in print while this was typed: ten parts of a textbook; the shares of the
normal law within one, two and three standard deviations.
The drawer between concealed slides is an example worked by hand: 9/64 of such drawers by geometry,
the volume of two corners of a cube, and 13 % by the table of the normal law.
Not printed anywhere: the comparisons with NumPy, which draws every physical deviation afresh and
knows nothing of slopes.

Limits count as three standard deviations where an example gives limits alone.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from random import Random  # noqa: TID251 - seeded, passed in

import numpy as np
import numpy.typing as npt
import pytest

from casewright.dims import (
    Cause,
    Chain,
    Dim,
    Origin,
    Place,
    chance_of,
    even_sum_below,
    greatest,
    least,
    normal_chance,
    root,
    slack,
    total,
)
from casewright.room.sampling import sampled
from casewright.room.simulation import chance_outside

Q = Fraction
TAPE = Origin("measured", "test")
DRAWS = 400_000
Values = npt.NDArray[np.float64]


def seeded(number: int) -> Random:
    """A generator whose draws repeat."""
    return Random(number)  # noqa: S311 - a simulation, no secret


def place() -> Place:
    """A place in a chain of its own."""
    return Chain().place("")


def cause(key: str, limit: str | Fraction, *, bias: bool = False) -> Cause:
    """A deviation whose limit is three standard deviations."""
    return Cause(key, Q(limit) / 3, Q(limit), bias)


def part(where: Place, name: str, size: str, limit: str) -> Dim:
    """A part read to that limit."""
    return where.enter(name, Q(size), TAPE, causes=(cause(name, limit),))


# -- printed examples


def housing() -> tuple[Dim, Dim]:
    """The gap in the housing, and the three parts in it [in]."""
    where = place()
    stack = total(
        part(where, "first", "2.000", "0.005"),
        part(where, "second", "1.500", "0.003"),
        part(where, "third", "0.500", "0.002"),
    )
    return part(where, "housing", "4.020", "0.005") - stack, stack


@pytest.mark.handbook
def test_printed_gap_in_a_housing_at_worst() -> None:
    """Gap 0.020, worst case 0.015 either way: 0.005 to 0.035. Exact."""
    found = slack(housing()[0])
    assert found.nominal == Q("0.020")
    assert found.worst == Q("0.015")
    assert (found.low, found.high) == (Q("0.005"), Q("0.035"))


@pytest.mark.handbook
def test_printed_gap_in_a_housing_by_root_sum_of_squares() -> None:
    """0.00794 for the gap, 0.00616 for the three parts alone: 0.012 to 0.028."""
    gap, stack = (slack(dim) for dim in housing())
    reach = 3 * gap.sigma_mm
    assert reach == pytest.approx(0.00794, abs=5e-6)
    assert 3 * stack.sigma_mm == pytest.approx(0.00616, abs=5e-6)
    assert float(gap.nominal) - reach == pytest.approx(0.012, abs=5e-4)
    assert float(gap.nominal) + reach == pytest.approx(0.028, abs=5e-4)


@pytest.mark.handbook
def test_ten_equal_parts_from_memory() -> None:
    """Ten parts of 0.1 either way: 1.0 at worst, 0.316 by root sum of squares (from memory)."""
    where = place()
    found = slack(total(*(part(where, f"part{n}", "10", "0.1") for n in range(10))))
    assert found.nominal == 100
    assert found.worst == 1
    assert 3 * found.sigma_mm == pytest.approx(0.316, abs=5e-4)


@pytest.mark.handbook
@pytest.mark.parametrize(("sigmas", "percent"), [(1, 68.27), (2, 95.45), (3, 99.73)])
def test_share_of_the_normal_law_from_memory(sigmas: int, percent: float) -> None:
    """Within one, two and three standard deviations, to 0.01 % (from memory)."""
    gap = place().enter("gap", Q(3), TAPE, causes=(Cause("saw", Q(1, 5), Q(3, 5)),))
    outside = chance_outside(gap, 3 - Q(sigmas, 5), 3 + Q(sigmas, 5))
    assert 100 * (1 - outside) == pytest.approx(percent, abs=0.005)


@pytest.mark.handbook
@pytest.mark.parametrize(
    ("capability", "parts_per_million"),
    [
        ("0.50", 133_600),
        ("0.75", 24_400),
        ("1.00", 2_700),
        ("1.20", 318),
        ("1.33", 66),
        ("1.50", 6.8),
        ("1.67", 0.55),
        ("2.00", 0.002),
    ],
)
def test_printed_parts_per_million_outside_the_limits(
    capability: str, parts_per_million: float
) -> None:
    """Limits at three times the capability in standard deviations; printed to two figures."""
    gap = place().enter("gap", Q(0), TAPE, causes=(Cause("saw", Q(1), Q(3)),))
    limit = 3 * Q(capability)
    assert 1e6 * chance_outside(gap, -limit, limit) == pytest.approx(parts_per_million, rel=0.02)


# -- a drawer between concealed slides: three even deviations of 0.5 mm either way


def drawer(*, opening: Cause | None = None) -> Dim:
    """How much narrower than its opening a drawer is beyond what its slides ask, aimed at -0.75.

    Parameters
    ----------
    opening
        How the opening strays when it is read, instead of three deviations that are not known.
    """
    if opening is not None:
        return place().enter("play", Q("-0.75"), TAPE, causes=(opening,))
    terms = tuple(Cause.even(name, Q(1, 2)) for name in ("opening", "box", "slides"))
    return place().enter("play", Q("-0.75"), TAPE, causes=terms)


BAND = (Q("-1.5"), Q(0))


def test_a_drawer_by_the_law_of_even_deviations() -> None:
    """9/64 are outside, 14 %: two corners of a cube, each (1.5 - 0.75)^3 / 6 of its volume."""
    assert 2 * even_sum_below([Q(1, 2)] * 3, Q("-0.75")) == Q(9, 64)
    assert chance_outside(drawer(), *BAND) == pytest.approx(9 / 64, rel=1e-12)


def test_a_drawer_by_the_normal_approximation() -> None:
    """Standard deviation 0.5, so 1.5 of them to either end: 13.36 % of the normal law."""
    found = slack(drawer())
    assert found.sigma_mm == pytest.approx(0.5)
    assert found.worst == Q("1.5")
    assert normal_chance(found, *BAND) == pytest.approx(0.1336, abs=5e-5)


def test_a_drawer_made_to_its_measured_opening() -> None:
    """Read to 0.2 mm, 3.75 standard deviations to either end: about 0.02 %."""
    read = Cause("rule", Q(1, 5), Q(2, 5))
    assert chance_outside(drawer(opening=read), *BAND) == pytest.approx(0.000177, abs=1e-6)


def test_even_deviations_of_all_widths_agree_with_simulation() -> None:
    """Evens of four widths alone, and with a normal one: to the error of 400,000 draws."""
    halves = [Q(1, 2), Q(1, 2), Q(1, 5), Q(1, 20)]
    evens = tuple(Cause.even(f"e{n}", half) for n, half in enumerate(halves))
    rng = np.random.default_rng(21)
    plain = sum(rng.uniform(-float(half), float(half), DRAWS) for half in halves)
    for sigma in (Q(0), Q(1, 50), Q(3, 10)):
        saw = (Cause("saw", sigma, 3 * sigma),) if sigma else ()
        gap = place().enter("gap", Q(1), TAPE, causes=(*evens, *saw))
        values = 1 + plain + rng.normal(0, float(sigma), DRAWS)
        for low, high in ((Q("0.4"), Q("1.5")), (Q("0.9"), Q(3)), (Q("0.2"), Q("1.1"))):
            outside = np.mean((values < float(low)) | (values > float(high)))
            assert chance_outside(gap, low, high) == pytest.approx(outside, abs=0.004)


def test_a_sum_of_many_even_deviations_is_nearly_normal() -> None:
    """Twelve of half a millimetre, as once used to draw normal numbers: variance 1."""
    terms = tuple(Cause.even(f"e{n}", Q(1, 2)) for n in range(12))
    found = slack(place().enter("gap", Q(0), TAPE, causes=terms))
    assert found.sigma_mm == pytest.approx(1)
    assert chance_of(found, Q(-2), Q(2)) == pytest.approx(0.0455, abs=0.002)


# -- against simulation


def boxes() -> tuple[Dim, Dim]:
    """Three boxes of one sheet against a wall: the gap at the end, and the run."""
    where = place()
    sheet = where.enter("sheet", Q("17.8"), TAPE, causes=(cause("batch", "0.3"),))
    opening = where.enter("wall", Q(1900), TAPE, causes=(cause("tape", "1.5"),))
    wish = where.enter("wish", Q(600), TAPE)
    widths = []
    for number in range(3):
        bottom = where.made(
            f"bottom{number}",
            wish - 2 * sheet,
            (cause("fence", "0.4"), cause(f"b{number}", "0.2")),
        )
        sides = [
            where.follows(f"side{number}{hand}", sheet, (cause(f"s{number}{hand}", "0.1"),))
            for hand in "lr"
        ]
        widths.append(total(sides[0], bottom, sides[1]))
    run = total(*widths)
    return opening - run, run


def simulated_boxes(rng: np.random.Generator) -> tuple[Values, Values]:
    """The same boxes, each thing drawn: one batch, one fence setting, pieces for themselves."""
    third = 1 / 3
    batch = rng.normal(0, 0.3 * third, DRAWS)
    fence = rng.normal(0, 0.4 * third, DRAWS)
    wall = 1900 + rng.normal(0, 1.5 * third, DRAWS)
    run = np.zeros(DRAWS)
    for _ in range(3):
        run += 600 - 2 * 17.8 + fence + rng.normal(0, 0.2 * third, DRAWS)
        for _ in range(2):
            run += 17.8 + batch + rng.normal(0, 0.1 * third, DRAWS)
    return wall - run, run


def test_slack_of_boxes_agrees_with_simulation() -> None:
    """Shared and single deviations together: mean and spread within the error of 400,000 draws."""
    dims, draws = boxes(), simulated_boxes(np.random.default_rng(7))
    for dim, values in zip(dims, draws, strict=True):
        found = slack(dim)
        error = found.sigma_mm / DRAWS**0.5
        assert values.mean() == pytest.approx(float(found.nominal), abs=5 * error)
        assert values.std() == pytest.approx(found.sigma_mm, rel=0.01)
        assert not found.decided


def test_chance_of_a_gap_leaving_its_band_agrees_with_simulation() -> None:
    """A filler that must stay between 98.9 and 101.3 mm."""
    gap, _ = boxes()
    values, _ = simulated_boxes(np.random.default_rng(8))
    outside = np.mean((values < 98.9) | (values > 101.3))
    assert chance_outside(gap, Q("98.9"), Q("101.3")) == pytest.approx(outside, abs=0.004)
    assert outside > 0.05


def test_a_bias_adds_and_does_not_average_out() -> None:
    """A tape's hook bent by 0.6 mm: the chance is that of its worse side."""
    where = place()
    bent = cause("hook", "1.8", bias=True)
    gap = where.enter("wall", Q(100), TAPE, causes=(bent, cause("reading", "1.5")))
    rng = np.random.default_rng(9)
    values = 100 + 0.6 + rng.normal(0, 0.5, DRAWS)
    found = slack(gap)
    assert found.bias_mm == pytest.approx(0.6)
    assert found.sigma_mm == pytest.approx(0.5)
    outside = np.mean((values < 99) | (values > 101))
    assert chance_outside(gap, Q(99), Q(101)) == pytest.approx(outside, abs=0.004)


def test_a_product_agrees_with_simulation_to_first_order() -> None:
    """An area of two measured sides, small deviations: spread within one per cent."""
    where = place()
    area = part(where, "width", "600", "3") * part(where, "height", "800", "6")
    rng = np.random.default_rng(10)
    values = rng.normal(600, 1, DRAWS) * rng.normal(800, 2, DRAWS)
    assert slack(area).sigma_mm == pytest.approx(values.std(), rel=0.01)
    share = part(where, "run", "1800", "3") / part(where, "module", "600", "3")
    ratios = rng.normal(1800, 1, DRAWS) / rng.normal(600, 1, DRAWS)
    assert slack(share).sigma_mm == pytest.approx(ratios.std(), rel=0.01)


def close_readings() -> list[Dim]:
    """Three readings of a wall half a millimetre apart, one tape's hook in all of them."""
    where = place()
    return [
        where.enter(
            f"reading{n}",
            Q(2600) + Q(n, 2),
            TAPE,
            causes=(cause("hook", "1.2"), cause(f"r{n}", "1.5")),
        )
        for n in range(3)
    ]


@pytest.mark.parametrize(("choose", "plain"), [(least, np.min), (greatest, np.max)])
def test_sampling_a_close_choice_agrees_with_simulation(
    choose: Callable[..., Dim], plain: Callable[..., Values]
) -> None:
    """Where linear figures mislead: the least of three readings lies under each of them."""
    dim = choose(*close_readings())
    rng = np.random.default_rng(11)
    hook = rng.normal(0, 0.4, (1, DRAWS))
    readings = 2600 + np.array([[0.0], [0.5], [1.0]]) + hook + rng.normal(0, 0.5, (3, DRAWS))
    values = plain(readings, axis=0)
    drawn = sampled(dim, 40_000, seeded(12))
    assert slack(dim).decided
    assert drawn.mean() == pytest.approx(values.mean(), abs=0.02)
    assert drawn.std() == pytest.approx(values.std(), rel=0.03)
    assert abs(values.mean() - float(dim.value)) > 0.1
    for percent in (1, 50, 99):
        there, here = np.percentile(values, percent), np.percentile(drawn, percent)
        assert here == pytest.approx(there, abs=0.05)


def test_sampling_repeats_with_its_seed() -> None:
    """The same seed gives the same draws, another seed others."""
    gap, _ = boxes()
    assert list(sampled(gap, 50, seeded(3))) == list(sampled(gap, 50, seeded(3)))
    assert list(sampled(gap, 50, seeded(3))) != list(sampled(gap, 50, seeded(4)))


def test_sampling_agrees_with_slack_where_nothing_is_chosen() -> None:
    """The two ways to a spread meet on a plain sum."""
    gap, _ = boxes()
    drawn = sampled(gap, 20_000, seeded(5))
    found = slack(gap)
    assert drawn.mean() == pytest.approx(float(found.nominal), abs=0.03)
    assert drawn.std() == pytest.approx(found.sigma_mm, rel=0.03)


def test_sampling_a_diagonal_agrees_with_simulation() -> None:
    """Across two measured legs of a corner: the side of a square as large as theirs together."""
    where = place()
    along, across = part(where, "along", "600", "3"), part(where, "across", "800", "6")
    diagonal = root(along * along + across * across)
    rng = np.random.default_rng(14)
    values = np.hypot(rng.normal(600, 1, DRAWS), rng.normal(800, 2, DRAWS))
    drawn = sampled(diagonal, 20_000, seeded(6))
    assert drawn.mean() == pytest.approx(values.mean(), abs=0.05)
    assert drawn.std() == pytest.approx(values.std(), rel=0.03)
    assert slack(diagonal).sigma_mm == pytest.approx(values.std(), rel=0.01)


def test_a_band_that_no_draw_leaves_is_not_drawn_for() -> None:
    """Three close readings in a band ten standard deviations wide: as good as none is outside."""
    dim = least(*close_readings())
    assert chance_outside(dim, dim.value - 10, dim.value + 10) < 1e-9
    near = chance_outside(dim, dim.value - 1, dim.value + 1)
    drawn = sampled(dim, 40_000, seeded(13))
    outside = np.mean(np.abs(drawn - float(dim.value)) > 1)
    assert near == pytest.approx(outside, abs=0.03)

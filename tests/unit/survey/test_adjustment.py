"""Least squares and the best next reading, against NumPy."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from tests.unit.survey.rooms import EXACT, at, station, surveyed, thing, widths

from casewright.survey.adjustment import Observation, Quantity, Terms, adjust
from casewright.survey.advice import advise, reliefs
from casewright.survey.network import Network, network
from casewright.survey.readings import TAPE
from casewright.survey.specs import WallSpec

_Matrix = NDArray[Any]

BARE = WallSpec("w", "W")
SOME = WallSpec(
    "w", "W", widths("100 1/4", "100 3/8"), (station(6, "40", "66"), station(50, "40 1/4")),
    things=(thing(left="30", width="40", bottom="42"), thing("outlet", centre="80", bottom="44")),
)  # fmt: skip
FULL = WallSpec(
    "w", "W", (at(4, "100 1/4"), at(36, "100 3/8"), at(84, "100 1/2"), at(36, "100", "front")),
    (station(0, "40", "66", "106"), station(50, "40 1/4", "66"), station(100, "40", "66 1/4")),
    things=(thing(left="30", width="40", right="30 1/4", bottom="42", height="36", top="78"),),
)  # fmt: skip
WALLS = pytest.mark.parametrize("spec", [BARE, SOME, FULL], ids=["bare", "some", "full"])


def _row(net: Network, terms: Terms) -> _Matrix:
    names = list(net.quantities)
    row = np.zeros(len(names))
    for name, factor in terms.items():
        row[names.index(name)] = float(factor)
    return row


def _normal(net: Network, more: tuple[Observation, ...] = ()) -> _Matrix:
    """Normal matrix of all readings and of what is said by eye."""
    matrix = np.diag([1.0 / float(q.sigma) ** 2 for q in net.quantities.values()])
    for reading in (*net.readings.values(), *more):
        row = _row(net, reading.terms)
        matrix += np.outer(row, row) / float(reading.variance)
    return matrix


def _adjusted(net: Network) -> Any:
    return adjust(tuple(net.quantities.values()), tuple(net.readings.values()))


@WALLS
def test_values_and_variances_are_those_of_the_normal_equations(spec: WallSpec) -> None:
    """One reading after the other gives what NumPy gives for all of them at once."""
    net = network(surveyed(spec), TAPE, "in")
    known, matrix = _adjusted(net), _normal(net)
    start = np.array([float(q.mean) for q in net.quantities.values()])
    right = np.diag([1.0 / float(q.sigma) ** 2 for q in net.quantities.values()]) @ start
    for reading in net.readings.values():
        right += _row(net, reading.terms) * float(reading.value) / float(reading.variance)
    values = np.linalg.solve(matrix, right)
    covariance = np.linalg.inv(matrix)
    for terms in net.sums:
        row = _row(net, terms)
        assert known.value_mm(terms) == pytest.approx(float(row @ values), abs=1e-6)
        assert known.sigma_mm(terms) == pytest.approx(
            float(row @ covariance @ row) ** 0.5, rel=1e-6
        )


@WALLS
def test_the_best_next_reading_is_that_of_brute_force(spec: WallSpec) -> None:
    """Every possible reading added in turn, all variances worked out anew with NumPy."""
    net = network(surveyed(spec), TAPE, "in")
    rows = np.array([_row(net, terms) for terms in net.sums])

    def risk(*more: Observation) -> float:
        return float(np.trace(rows @ np.linalg.inv(_normal(net, more)) @ rows.T))

    now = risk()
    brute = [now - risk(each.reading) for each in net.next_readings]
    told = [relief for _, relief in reliefs(net, _adjusted(net))]
    assert told == pytest.approx(brute, rel=1e-5, abs=1e-3)
    best = advise(net)
    assert best is not None
    assert best.relief_mm2 == pytest.approx(max(brute), rel=1e-5)


def test_what_was_never_read_comes_first() -> None:
    """An edge known only by eye outweighs any repetition."""
    net = network(surveyed(SOME), TAPE, "in")
    best = advise(net)
    assert best is not None
    assert not best.next_reading.read


def test_a_better_tool_leaves_less_in_doubt() -> None:
    """The same wall read again with a finer tool is known better after it."""
    fine, coarse = (advise(network(surveyed(FULL), tool, "in")) for tool in (EXACT, TAPE))
    assert fine is not None
    assert coarse is not None
    assert fine.relief_mm2 >= coarse.relief_mm2


def test_a_reading_that_nothing_checks_fits_by_itself() -> None:
    """Two readings of one length that differ by 6 sigma misfit; a single one does not."""
    width = Quantity("width", Fraction(2500), Fraction(10_000))

    def reading(value: int) -> Observation:
        return Observation(str(value), {"width": Fraction(1)}, Fraction(value), Fraction(1))

    one, other = reading(2500), reading(2506)
    assert adjust((width,), (one,)).misfit(one) == 0.0
    both = adjust((width,), (one, other))
    assert both.misfit(other) == pytest.approx(6 / 2**0.5, rel=1e-3)


def test_doubtful_readings_are_left_out() -> None:
    """They say nothing until they are read again."""
    wall = surveyed(SOME)
    whole, less = network(wall, TAPE, "in"), network(wall, TAPE, "in", frozenset({"width_1"}))
    assert set(whole.readings) - set(less.readings) == {"width_1"}

"""Round figures of the trade: said in both units, entered where one is asked for."""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import TRADE_FIGURES, Chain, enter_trade, trade
from casewright.sources import SOURCES


@pytest.mark.parametrize("name", sorted(TRADE_FIGURES))
def test_both_halves_are_one_figure_as_each_rounds_it(name: str) -> None:
    """Within a tenth, or what half a millimetre makes of a small one: no slip of the pen."""
    figure = TRADE_FIGURES[name]
    inches, metric = (figure.given(unit).value for unit in ("in", "mm"))
    assert abs(inches - metric) <= max(metric / 10, Fraction(1, 4))


@pytest.mark.parametrize("name", sorted(TRADE_FIGURES))
def test_a_figure_says_what_it_is_and_where_from(name: str) -> None:
    chain = Chain()
    enter_trade(chain, "in")
    told = trade(name, "in")
    dim = chain.nodes[told.path]
    assert dim.value == told.value
    assert dim.origin is not None
    assert dim.origin.note
    assert dim.origin.source == "common practice" or dim.origin.source in SOURCES
    assert (dim.power == 0) == name.endswith("weight")


def test_a_figure_begins_with_the_unit_of_the_job() -> None:
    assert trade("box_diagonals", "in").text == "1/16 in (1.5 mm)"
    assert trade("box_diagonals", "mm").text == "1.5 mm (1/16 in)"

"""Gaps in the words of the shop: what is planned as nothing reads as it is said at a bench."""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import Chain, Fit, Origin, parse_length
from casewright.room.fit_words import gap_text, planned_text

_TAPE = Origin("measured", "tape")


def _fit(name: str, gap: str, low: str, high: str) -> Fit:
    chain = Chain({})
    dim = chain.place("upper").enter("gap", parse_length(gap, "in"), _TAPE)
    return Fit(f"upper.{name}", dim, parse_length(low, "in"), parse_length(high, "in"), "upper")


@pytest.mark.parametrize(
    ("name", "gap", "words"),
    [
        ("gap_1_fit", "1/8", 'as 1/8"'),
        ("rail_over_bottom_fit", "0", "flush"),
        ("rail_over_bottom_fit", "0.004", 'flush within 0.004"'),
        ("mitre_left_fit", "0.002", 'to meet within 0.002"'),
        ("back_side_play", "0", "as none"),
        ("back_side_play", "0.0001", "as none"),
    ],
)
def test_a_gap_of_nothing_is_planned_to_be_flush_to_meet_or_none(
    name: str, gap: str, words: str
) -> None:
    """With the number where a calliper shows one."""
    assert planned_text(_fit(name, gap, "-1/64", "1/16"), "in") == words


@pytest.mark.parametrize("value", ["0.003", "-0.004", "0.007", "0.0001", "0", "1/64", "-1/2"])
def test_no_gap_reads_as_about_nothing(value: str) -> None:
    """What a tape cannot show is told to a thousandth, as a calliper does."""
    fit = _fit("left_joint", "0", "-1/64", "1/16")
    size = Fraction(value) * Fraction("25.4")
    text = gap_text(fit, size, "in")
    assert "~0" not in text
    told = parse_length(text.lstrip("~-"), "in") * (-1 if "-" in text else 1)
    assert abs(told - size) <= Fraction("0.0005") * Fraction("25.4")

"""Lengths as they are printed."""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import Chain, Measure, Origin, measure_of, plain_text
from casewright.drawing import Stack, pieces

INCH = Fraction("25.4")


@pytest.mark.parametrize(
    ("inches", "expected"),
    [
        (Fraction(95, 8), ("11", Stack("7", "8"))),
        (Fraction(117, 8), ("14", Stack("5", "8"))),
        (Fraction(23, 32), (Stack("23", "32"),)),
        (Fraction(36), ("36",)),
        (-Fraction(95, 8), ("-11", Stack("7", "8"))),
    ],
)
def test_a_fraction_stands_apart_from_its_whole_number(
    inches: Fraction, expected: tuple[str | Stack, ...]
) -> None:
    """11 7/8 can never run together into 117/8."""
    assert pieces(Measure(inches * INCH, "in")) == expected


def test_a_size_in_the_other_unit_names_it() -> None:
    """A 37 mm hole line stays 37 mm in a job in inches."""
    assert Measure(Fraction(37), "in").text == "37 mm"


def test_a_rounded_number_says_so() -> None:
    """What the tape cannot show is marked, not passed off as exact."""
    assert pieces(Measure(Fraction(1000, 3), "in")) == ("~13", Stack("1", "8"))


def test_words_before_and_behind_stay_on_the_line() -> None:
    """A diameter sign and a remark belong to the number."""
    hole = Measure(Fraction(5), "mm", before="Ø", after=" typ.")
    assert hole.text == "Ø5 typ."
    assert pieces(hole) == ("Ø", "5", " typ.")


def test_words_that_look_like_a_fraction_stay_words() -> None:
    """Only lengths are stacked: a label 'bin 3/4' keeps what its writer wrote."""
    assert pieces("bin 3/4") == ("bin 3/4",)


def test_a_line_of_words_and_lengths_reads_in_order() -> None:
    """Mixed content keeps its order, stacked or plain."""
    content = ("cut ", Measure(Fraction(95, 8) * INCH, "in"), " wide")
    assert pieces(content) == ("cut ", "11", Stack("7", "8"), " wide")
    assert plain_text(content) == "cut 11 7/8 wide"


def test_a_number_of_the_chain_brings_its_path() -> None:
    """A printed number can be traced."""
    width = Chain().place("sink").enter("width", 36 * INCH, Origin("chosen", "by hand"))
    measure = measure_of(width, "in")
    assert (measure.text, measure.path) == ("36", "sink.width")


@pytest.mark.parametrize(
    ("inches", "path", "expected"),
    [
        (Fraction("8.703"), "upper.pins_main.first", "~8 11/16"),
        (Fraction("28.594"), "upper.clear_height_1", "~28 19/32"),
        (Fraction("0.374"), "tall.joint_nosing.brad_line", "~3/8"),
        (Fraction("0.703"), "stock.plywood.thickness", "0.703"),
        (Fraction("0.7036"), "upper.side_left.thickness", "~0.704"),
        (Fraction("0.7036"), "upper.side_left.dado_top.width", "~0.704"),
        (Fraction("0.374"), "upper.stile.lap_top.depth", "0.374"),
        (Fraction("12.3456"), "upper.bottom.width", "~12 11/32"),
        (Fraction(3, 8), "upper.side_left.rabbet_back.depth", "3/8"),
    ],
)
def test_a_tape_shows_fractions_and_a_calliper_thousandths(
    inches: Fraction, path: str, expected: str
) -> None:
    """No tape has 8.703 on it; no calliper reading is worth rounding to 23/32."""
    assert Measure(inches * INCH, "in", path).text == expected


@pytest.mark.parametrize(
    ("millimetres", "path", "expected"),
    [
        (Fraction("26.35"), "run.base.filler_space", "~26.4"),
        (Fraction("26.3"), "run.base.filler_space", "26.3"),
        (Fraction("17.85"), "stock.plywood.thickness", "17.85"),
        (Fraction("17.853"), "stock.plywood.thickness", "~17.85"),
    ],
)
def test_a_metric_tape_shows_tenths_at_most(
    millimetres: Fraction, path: str, expected: str
) -> None:
    """Hundredths are for the calliper."""
    assert Measure(millimetres, "mm", path).text == expected

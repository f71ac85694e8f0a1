"""Reading and writing lengths."""

from __future__ import annotations

import doctest
from fractions import Fraction
from types import ModuleType

import pytest

from casewright.dims import (
    LONGEST_TEXT,
    MixedNumber,
    Unit,
    exact_text,
    format_length,
    is_on_grid,
    length_json,
    length_text,
    lengths,
    parse_length,
    reading_text,
    rounding,
    shop_text,
    split_fraction,
)
from casewright.errors import CasewrightError, LengthError

INCH = Fraction("25.4")


def inches(text: str) -> Fraction:
    """Inches in decimals or as one fraction, in mm."""
    return Fraction(text) * INCH


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("36", "36"),
        ("36.", "36"),
        ("0.5", "0.5"),
        (".5", "0.5"),
        ("23/32", "23/32"),
        ("9/8", "9/8"),
        ("11 7/8", "11.875"),
        ('11-7/8"', "11.875"),
        ("11\u20137/8", "11.875"),
        ("11\u00a07/8\u2033", "11.875"),
        ("11 7\u20448", "11.875"),
        ("11\u215e", "11.875"),
        ("11 \u215e\u201d", "11.875"),
        ("11-\u215e", "11.875"),
        ("\u00bd", "0.5"),
        ("3' 6 1/2\"", "42.5"),
        ("3'-6 1/2\"", "42.5"),
        ("3'-6-1/2\"", "42.5"),
        ("3\u2032\u20096\u00bd\u2033", "42.5"),
        ("3\u20196\u00bd\u201d", "42.5"),
        ("3' 6", "42"),
        ("3'", "36"),
        ("3.5 ft", "42"),
        ("6 ft 2 in", "74"),
        ("6 Ft. 2 In.", "74"),
        ("6 feet 2 inches", "74"),
        ("1 foot", "12"),
        ("6''", "6"),
        ("14 3/8 + 1/16", "14.4375"),
        ("14 3/8 - 1/16", "14.3125"),
        ("14 3/8-1/16", "14.3125"),
        ("14 3/8 \u2212 1/16", "14.3125"),
        ("11 - 7/8", "10.125"),
        ('36"-3/4"', "35.25"),
        ("36-3", "33"),
        ('8\' 0" - 1/2"', "95.5"),
        ("8' - 1'", "84"),
        ("8' + 6\"", "102"),
        ("-1/4", "-0.25"),
        ("-3' 6\"", "-42"),
        ("+ 3/4", "0.75"),
        ("3/4 - 1", "-0.25"),
        ("  36\t", "36"),
    ],
)
def test_inches_are_read_as_a_woodworker_writes_them(text: str, size: str) -> None:
    """Every way of writing inches and feet that the trade uses gives the exact length."""
    assert parse_length(text, "in") == inches(size)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("302", "302"),
        ("302 mm", "302"),
        ("302mm", "302"),
        ("30.2 cm", "302"),
        ("1 m", "1000"),
        ("1.5 m - 3", "1497"),
        ("0.5", "0.5"),
        ("17.8 + .2", "18"),
    ],
)
def test_millimetres_are_the_bare_numbers_of_a_metric_job(text: str, size: str) -> None:
    """A bare number means the job's unit; other metric units may be named."""
    assert parse_length(text, "mm") == Fraction(size)


def test_units_may_be_mixed_in_one_sum() -> None:
    """36 less 3 mm in a job in inches takes 3 mm away."""
    assert parse_length("36 - 3 mm", "in") == 36 * INCH - 3
    assert parse_length("1 m + 2 in", "mm") == 1000 + 2 * INCH
    assert parse_length("8' - 3 mm", "in") == 96 * INCH - 3


@pytest.mark.parametrize(
    ("text", "at", "what"),
    [
        ("", 0, "nothing is written here"),
        ("  ", 0, "nothing is written here"),
        ("30,2", 2, "a comma in a number can be read in two ways"),
        ("1,200", 1, "a comma in a number can be read in two ways"),
        ("11 7", 3, "two numbers side by side"),
        ("11.5 1/2", 5, "two numbers side by side"),
        ("1.2.3", 3, "a number has one decimal point"),
        ("3/4 1/2", 4, "two numbers side by side"),
        ("7/0", 2, "a fraction cannot have 0 below the line"),
        ("11 7/0", 5, "a fraction cannot have 0 below the line"),
        ("1 9/8", 2, "a fraction behind a whole number is under 1"),
        ("1 8/8", 2, "a fraction behind a whole number is under 1"),
        ("11/7/8", 4, "a fraction has one slash"),
        ("1.5/2", 3, "a fraction has a whole number on each side"),
        ("3/", 1, "a fraction has a whole number on each side"),
        ("\u00bd/2", 1, "a fraction has a whole number on each side"),
        ("/3", 0, "a number is missing before this"),
        ("- - 3", 2, "a number is missing before this"),
        ("3 in mm", 5, "a number is missing before this"),
        ("11 +", 3, "a number is missing behind this"),
        ("-", 0, "a number is missing behind this"),
        ("36 mm 5", 6, "a sign is missing before this"),
        ("11 -7/8", 3, "this could join a fraction or take it away"),
        ("11- 7/8", 2, "this could join a fraction or take it away"),
        ("11\u22127/8", 2, "this could join a fraction or take it away"),
        ("36-3/4-1/8", 6, "not clear which of these signs take away"),
        ("3' - 6\"", 3, "this could join feet and inches, or take away"),
        ("3' -6", 3, "this could join feet and inches, or take away"),
        ("3' 14\"", 3, "inches behind feet are under 12"),
        ("3' 12\"", 3, "inches behind feet are under 12"),
        ("3 1/2' 6\"", 0, "feet with inches behind them are whole"),
        ("3' 6 mm", 5, "only inches stand behind feet"),
        ("302 mm + 5", 9, "the sum has two units, this number none"),
        ("36 - 3 mm + 5", 12, "the sum has two units, this number none"),
        ("36 furlongs", 3, "'furlongs' is not a unit of length"),
        ("1e5", 1, "'e' is not a unit of length"),
        ("24 x 36", 3, "one length at a time"),
        ("24 \u00d7 36", 3, "one length at a time"),
        ("~11 7/8", 0, "~ marks a rounded length"),
        ("$36", 0, "'$' has no place in a length"),
        ("36\n", 2, "'\\n' has no place in a length"),
        ("\u0663\u0666", 0, "'\u0663' has no place in a length"),
        ("1" * (LONGEST_TEXT + 1), 0, "too long for a length"),
    ],
)
def test_what_is_no_length_is_refused_at_the_character(text: str, at: int, what: str) -> None:
    """The error points at the character and says what is wrong there."""
    with pytest.raises(LengthError) as caught:
        parse_length(text, "in")
    assert (caught.value.position, caught.value.what) == (at, what)
    assert caught.value.want


@pytest.mark.parametrize(
    ("text", "want"),
    [
        ("1 9/8", "write 2 1/8"),
        ("1 16/8", "write 3"),
        ("11 7", "write a fraction as in 11 7/8, or + between them"),
        ("11 -7/8", "write 11-7/8 to join, 11 - 7/8 to take away"),
        ("30,2", "write 30.2 or 1200, without a comma"),
        ("3 yd", "use in or \", ft or ', mm, cm or m"),
    ],
)
def test_the_error_says_what_would_be_right(text: str, want: str) -> None:
    """A person can put the text right from the message alone."""
    with pytest.raises(LengthError) as caught:
        parse_length(text, "in")
    assert caught.value.want == want


def test_a_length_error_is_in_the_tree_and_a_value_error() -> None:
    """Callers may catch it as one of ours or as Python's own."""
    assert issubclass(LengthError, CasewrightError)
    assert issubclass(LengthError, ValueError)


def test_text_too_long_is_not_carried_along() -> None:
    """A megabyte pasted by mistake does not come back in the message."""
    with pytest.raises(LengthError) as caught:
        parse_length("9" * 1_000_000, "in")
    assert len(str(caught.value)) < 2 * LONGEST_TEXT


@pytest.mark.parametrize(
    ("size", "precision", "text"),
    [
        ("34.5625", 32, "34 9/16"),
        ("11.875", 8, "11 7/8"),
        ("0.75", 32, "3/4"),
        ("36", 32, "36"),
        ("0", 32, "0"),
        ("-0.25", 32, "-1/4"),
        ("11.875", 4, "~12"),
        ("1/3", 16, "~5/16"),
        ("1/64", 32, "~1/32"),
        ("-1/64", 32, "~-1/32"),
        ("1/128", 32, "~0"),
        ("-1/128", 32, "~0"),
    ],
)
def test_inches_are_written_as_on_a_tape(size: str, precision: int, text: str) -> None:
    """Lowest terms; rounded to the nearest, a half away from 0, and marked when rounded."""
    assert format_length(inches(size), "in", precision=precision) == text


@pytest.mark.parametrize(
    ("size", "precision", "text"),
    [
        ("302", 10, "302"),
        ("17.8", 10, "17.8"),
        ("0.5", 10, "0.5"),
        ("18.25625", 100, "~18.26"),
        ("18.05", 100, "18.05"),
        ("18.25625", 1, "~18"),
        ("18.04", 10, "~18"),
        ("-3.5", 10, "-3.5"),
    ],
)
def test_millimetres_are_written_without_idle_zeros(size: str, precision: int, text: str) -> None:
    """A zero before the point, none behind the last digit, no point for a whole number."""
    assert format_length(Fraction(size), "mm", precision=precision) == text


def test_feet_units_and_mark_are_a_choice() -> None:
    """The same length with feet, with its unit, and rounded without the mark."""
    assert format_length(inches("42.5"), "in", feet=True) == "3' 6 1/2\""
    assert format_length(inches("36"), "in", feet=True) == "3' 0\""
    assert format_length(inches("-6.5"), "in", feet=True) == '-6 1/2"'
    assert format_length(inches("42.5"), "in", with_unit=True) == '42 1/2"'
    assert format_length(Fraction(302), "mm", with_unit=True) == "302 mm"
    assert format_length(Fraction(302), "in", rounded_mark="") == "11 7/8"


def test_a_precision_that_no_decimals_can_show_is_a_defect() -> None:
    """Millimetres come in tenths or hundredths, not in eighths."""
    with pytest.raises(ValueError, match="10 or 100 parts"):
        format_length(Fraction(1), "mm", precision=8)


def test_a_mixed_number_has_its_fraction_in_lowest_terms() -> None:
    """Drawings stack numerator over denominator."""
    assert split_fraction(inches("-34.5625"), "in") == MixedNumber(-1, 34, 9, 16, exact=True)
    assert split_fraction(inches("3"), "in", 64) == MixedNumber(1, 3, 0, 1, exact=True)
    assert split_fraction(Fraction(1), "in", 16) == MixedNumber(1, 0, 1, 16, exact=False)


def test_on_the_grid_means_no_rounding() -> None:
    """32 mm lies on the grid of millimetres and on none of inches."""
    assert is_on_grid(Fraction(32), "mm", 1)
    assert not is_on_grid(Fraction(32), "in", 64)


@pytest.mark.parametrize(
    ("size", "unit", "text"),
    [
        (inches("26"), "in", "26"),
        (inches("45/64"), "in", "45/64"),
        (inches("0.703"), "in", "0.703"),
        (inches("-0.703"), "in", "-0.703"),
        (inches("29.12"), "in", "~29 1/8"),  # no calliper opens so far
        (Fraction(37), "in", "37 mm"),
        (Fraction("17.8"), "in", "17.8 mm"),
        (inches("23/32"), "mm", '23/32"'),
        (Fraction("18.26"), "mm", "18.26"),
        (Fraction(1000, 3), "mm", "~333.3"),
        (Fraction(1000, 3), "in", "~13 1/8"),
    ],
)
def test_the_shop_reads_each_length_in_the_unit_that_is_exact(
    size: Fraction, unit: Unit, text: str
) -> None:
    """A metric hole stays metric in a job in inches; only what is exact in neither is rounded."""
    assert shop_text(size, unit) == text


@pytest.mark.parametrize(
    ("size", "unit", "tape", "calliper"),
    [
        (inches("47.719"), "in", '~47 23/32"', '47.719"'),
        (inches("23/32"), "in", '23/32"', '23/32"'),
        (Fraction(37), "in", "37 mm", '~1.457"'),
        (Fraction("17.82"), "mm", "~17.8 mm", "17.82 mm"),
        (Fraction("17.8"), "mm", "17.8 mm", "17.8 mm"),
    ],
)
def test_a_length_is_said_as_the_tool_shows_it(
    size: Fraction, unit: Unit, tape: str, calliper: str
) -> None:
    """A tape has marks, a calliper figures: 37 / 25.4 = 1.4567, 47.719 lies by 47 23/32."""
    assert reading_text(size, unit, with_unit=True) == tape
    assert reading_text(size, unit, calliper=True, with_unit=True) == calliper


def test_data_carries_the_exact_ratio_and_the_text() -> None:
    """660.4 mm is 3302/5 for programs and 26 for people."""
    assert length_json(Fraction(3302, 5), "in") == {"mm": "3302/5", "text": "26"}
    assert exact_text(Fraction(26)) == "26"


@pytest.mark.parametrize("module", [lengths, length_text, rounding])
def test_the_examples_in_the_docstrings_run(module: ModuleType) -> None:
    """What the documentation shows is what the code does."""
    result = doctest.testmod(module)
    assert result.attempted > 0
    assert result.failed == 0

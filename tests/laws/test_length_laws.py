"""Laws of reading and writing lengths."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from casewright.dims import (
    LONGEST_TEXT,
    Unit,
    exact_text,
    format_length,
    is_on_grid,
    parse_length,
    shop_text,
    split_fraction,
)
from casewright.errors import LengthError

INCH = Fraction(127, 5)
UNITS: st.SearchStrategy[Unit] = st.sampled_from(["in", "mm"])
SIZES = st.fractions(min_value=-10_000, max_value=10_000, max_denominator=5000)
COUNTS = st.integers(-2_000_000, 2_000_000)
INCH_PRECISIONS = st.sampled_from([1, 2, 3, 4, 8, 10, 12, 16, 32, 64, 100, 128])
MM_PRECISIONS = st.sampled_from([1, 10, 100, 1000])
WRITTEN = st.text(
    alphabet="0123456789 /.,+-'\"inchmftx~\u00bd\u215e\u2032\u2044\u2212\u2009", max_size=30
)


def attempt(text: str, unit: Unit) -> Fraction | LengthError:
    """The length, or the error that reading it gives."""
    try:
        return parse_length(text, unit)
    except LengthError as error:
        return error


@given(count=COUNTS, precision=INCH_PRECISIONS, feet=st.booleans(), with_unit=st.booleans())
def test_inches_on_the_grid_come_back_the_same(
    count: int, precision: int, feet: bool, with_unit: bool
) -> None:
    """parse(format(x)) is x for every length on the grid, in inches and in feet."""
    size = Fraction(count, precision) * INCH
    text = format_length(size, "in", precision=precision, feet=feet, with_unit=with_unit)
    assert parse_length(text, "in") == size


@given(count=COUNTS, precision=MM_PRECISIONS, with_unit=st.booleans())
def test_millimetres_on_the_grid_come_back_the_same(
    count: int, precision: int, with_unit: bool
) -> None:
    """parse(format(x)) is x for every length on the grid, in millimetres."""
    size = Fraction(count, precision)
    text = format_length(size, "mm", precision=precision, with_unit=with_unit)
    assert parse_length(text, "mm") == size


@given(count=COUNTS, precision=INCH_PRECISIONS, job=UNITS)
def test_a_length_with_its_unit_reads_the_same_in_any_job(
    count: int, precision: int, job: Unit
) -> None:
    """A named unit does not depend on the job's."""
    size = Fraction(count, precision) * INCH
    assert (
        parse_length(format_length(size, "in", precision=precision, with_unit=True), job) == size
    )


@given(size=SIZES, unit=UNITS)
def test_what_is_not_marked_as_rounded_is_exact(size: Fraction, unit: Unit) -> None:
    """The text of the shop reads back exactly, or it says that it was rounded."""
    text = shop_text(size, unit)
    if not text.startswith("~"):
        assert parse_length(text, unit) == size


@given(size=SIZES, precision=INCH_PRECISIONS)
def test_rounding_strays_by_half_a_step_at_most(size: Fraction, precision: int) -> None:
    """A rounded text is within half a part of the length, and only then marked."""
    text = format_length(size, "in", precision=precision)
    read = parse_length(text.removeprefix("~"), "in")
    assert abs(read - size) <= INCH / precision / 2
    assert text.startswith("~") == (read != size) == (not is_on_grid(size, "in", precision))


@given(size=SIZES, unit=UNITS)
def test_a_length_and_its_opposite_differ_in_the_sign_alone(size: Fraction, unit: Unit) -> None:
    """Rounding treats both directions alike."""
    there = format_length(abs(size), unit, rounded_mark="")
    back = format_length(-abs(size), unit, rounded_mark="")
    assert back == (there if there == "0" else f"-{there}")


@given(size=SIZES, precision=INCH_PRECISIONS)
def test_a_mixed_number_adds_up(size: Fraction, precision: int) -> None:
    """Sign, whole and fraction are the number that the text shows."""
    number = split_fraction(size, "in", precision)
    shown = number.sign * (number.whole + Fraction(number.numerator, number.denominator))
    text = format_length(size, "in", precision=precision, rounded_mark="")
    assert shown * INCH == parse_length(text, "in")
    assert 0 <= number.numerator < number.denominator


@given(left=COUNTS.map(abs), right=COUNTS.map(abs), a=INCH_PRECISIONS, b=INCH_PRECISIONS)
def test_a_written_sum_is_the_sum_of_its_terms(left: int, right: int, a: int, b: int) -> None:
    """Adding on paper and adding in code agree, and so does taking away."""
    first = format_length(Fraction(left, a) * INCH, "in", precision=a)
    second = format_length(Fraction(right, b) * INCH, "in", precision=b)
    whole = parse_length(first, "in") + parse_length(second, "in")
    rest = parse_length(first, "in") - parse_length(second, "in")
    assert parse_length(f"{first} + {second}", "in") == whole
    assert parse_length(f"{first} - {second}", "in") == rest


@given(size=SIZES)
def test_the_exact_ratio_is_the_length(size: Fraction) -> None:
    """What programs read is the length itself."""
    assert Fraction(exact_text(size)) == size


@given(text=st.one_of(WRITTEN, st.text()), unit=UNITS)
def test_any_text_is_a_length_or_an_error_that_points_into_it(text: str, unit: Unit) -> None:
    """Nothing that can be typed raises anything but a located error."""
    read = attempt(text, unit)
    if isinstance(read, LengthError):
        assert 0 <= read.position < max(1, len(text))
        assert read.text == text[:LONGEST_TEXT]
        assert read.what
        assert read.want
    else:
        assert type(read) is Fraction


@given(
    count=st.integers(1, 10_000),
    precision=INCH_PRECISIONS,
    junk=st.sampled_from("#$,;:~=abcdegjklqz!?%&\\\n"),
    data=st.data(),
)
def test_a_stray_character_is_found_where_it_stands(
    count: int, precision: int, junk: str, data: st.DataObject
) -> None:
    """One character that belongs in no length is the one the error points at."""
    text = format_length(Fraction(count, precision) * INCH, "in", precision=precision)
    at = data.draw(st.integers(0, len(text)))
    spoilt = text[:at] + junk + text[at:]
    read = attempt(spoilt, "in")
    assert isinstance(read, LengthError)
    assert read.position == at

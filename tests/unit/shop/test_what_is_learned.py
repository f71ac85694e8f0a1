"""What a record says of the tools: by pieces told as they came out, by things read twice."""

from __future__ import annotations

from fractions import Fraction

from tests.record_entries import entry

from casewright.job.learning import learned_of
from casewright.record import Entry, standing

_SAW, _TAPE = "table saw", "tape"


def told(number: int, off: Fraction) -> Entry:
    """A piece told as it came out, in one direction."""
    sizes, aimed = (("length", 700 + off),), (("length", Fraction(700)),)
    return entry(number, "cut", f"case.{number}", sizes=sizes, against=aimed, tool=_SAW)


def read(number: int, path: str, size: Fraction, before: Fraction | None = None) -> Entry:
    against = () if before is None else (("", before),)
    return entry(number, "reading", path, sizes=(("", size),), against=against, tool=_TAPE)


def test_pieces_told_as_they_came_out_say_what_the_saw_does() -> None:
    """By turns 0.2 and 0.4 mm over: 0.3 on average; one that is 6 mm over is a slip."""
    offs = [Fraction(2, 10), Fraction(4, 10)] * 4
    known = learned_of(standing(told(n, off) for n, off in enumerate([*offs, Fraction(6)], 1)))
    assert known[_SAW].count == 8
    assert known[_SAW].offset == Fraction(3, 10)
    assert _TAPE not in known


def test_a_piece_that_is_read_after_it_was_told_counts_once_by_its_reading() -> None:
    cuts = [told(n, Fraction(1)) for n in range(1, 9)]
    reads = [read(n + 10, f"case.{n}.length", Fraction(7005, 10)) for n in range(1, 9)]
    (known,) = learned_of(standing([*cuts, *reads])).values()
    assert (known.count, known.offset) == (8, Fraction(1, 2))


def test_what_is_read_twice_says_how_the_tape_reads() -> None:
    """0.4 mm between two readings: each strays by 0.4 over the root of 2, 0.283, told upwards."""
    size = Fraction(700)
    reads = [read(n, f"case.{n}.length", size + Fraction(2, 5), size) for n in range(1, 9)]
    known = learned_of(standing(reads))[_TAPE]
    assert known.is_twice
    assert known.sigma == Fraction(283, 1000)
    assert not learned_of(standing(reads[1:]))

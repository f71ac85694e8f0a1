"""What a finding says, against the numbers that it gives for it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from math import prod

from casewright.dims import Dim, Measure, parts_of
from casewright.findings import Finding
from casewright.room.model import Room

__all__ = ["unanswered"]

_FORMULAS: Mapping[str, Callable[[list[Fraction]], Fraction]] = {
    "+": lambda of: sum(of, Fraction(0)), "total": lambda of: sum(of, Fraction(0)),
    "*": lambda of: prod(of, start=Fraction(1)), "least": lambda of: min(of),
    "-": lambda of: of[0] - of[1], "greatest": lambda of: max(of),
    "/": lambda of: of[0] / of[1], "as": lambda of: of[0],
}  # fmt: skip


def unanswered(room: Room, finding: Finding) -> Iterator[str]:
    """Lengths of its sentences that lead elsewhere, and formulas that come out wrong."""
    known = dict(room.chain.nodes)
    for own in finding.numbers:
        if own.path in known and known[own.path].value != own.value:
            yield f"{own.path} is another number of the job"
        known[own.path] = own
    for words in (finding.says, *finding.remedies):
        for part in parts_of(words):
            if isinstance(part, Measure):
                number = known.get(part.path)
                if number is None or number.value != part.value:
                    yield f"{part.text} leads to {part.path!r}: {number}"
    for own in finding.numbers:
        yield from _wrong(own)


def _wrong(number: Dim) -> Iterator[str]:
    """Whether a formula comes out, and whether what has none says where it is from."""
    formula = _FORMULAS.get(number.op)
    if formula is None:
        if number.origin is None and number.op not in ("round", "root"):
            yield f"{number.path} says nothing of where it is from"
        return
    args = [arg.value if isinstance(arg, Dim) else arg for arg in number.args]
    if formula(args) != number.value:
        yield f"{number.path} is not what its formula comes to"
    for arg in number.args:
        if isinstance(arg, Dim) and arg.op and not arg.path:
            yield from _wrong(arg)

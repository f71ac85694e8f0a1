"""Long shelves whose stiffness nobody knows.

Where the job gives no bending modulus the sag cannot be computed, and the shop's rule of thumb
has to do: a 3/4 in plywood shelf over 32 in long wants a nosing. Thicker shelves are let pass.

Passes
------
A case 30 in wide with shelves of 3/4 plywood.

Fails
-----
A case 40 in wide with the same shelves and no nosing.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.shelves import (
    SHELF_ROLES,
    nosing_of,
    nosing_words,
    shelf_modulus,
    shelf_span,
)
from casewright.checks.words import reckoning
from casewright.dims import Dim, Way, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["RULE"]

_NAME = "long shelf"
_LONGEST = Limit("shelf.longest", "32", "800", "a longer shelf of 3/4 in wants a nosing")
_NOSING = Limit("shelf.least_nosing", "1", "25", "the lowest nosing that helps")
_THICK = Fraction(7, 8) * INCH
"""What is sold as 3/4 stays under this; the next thickness up is over it."""


def _examine(room: Room) -> Iterator[Breach]:
    longest = _LONGEST.of(room.spec.unit)
    for case in room.cases:
        for part in case.parts:
            if part.role not in SHELF_ROLES or shelf_modulus(room, part) is not None:
                continue
            span = shelf_span(room, case, part)
            thick = part.finished.thickness.value > _THICK
            if span.value > longest and not thick and nosing_of(case, part) is None:
                yield _breach(room, case, part, span)


def _breach(room: Room, case: Case, part: Part, span: Dim) -> Breach:
    own = reckoning(room, _NAME, part.path)
    longest = own.limit(_LONGEST)
    long = own.about(span, "spans")
    less = own.about(span - longest, "narrower", Way.UP)
    return Breach(
        part.path,
        tell(
            "the {} spans {} with nothing under its front; over {} a shelf this thick wants a "
            "nosing. Give the stock's modulus to have the sag computed.",
            part.title, long, own.length(longest),
        ),
        measured=long.text,
        limit=own.length(longest).text,
        remedies=(
            tell(
                "a nosing {} high or more: {}",
                own.length(own.limit(_NOSING)), nosing_words(case, part),
            ),
            tell("a case {} narrower, or two", less),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

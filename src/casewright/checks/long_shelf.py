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

from casewright.checks.rule import Breach, Rule
from casewright.checks.shelves import (
    SHELF_ROLES,
    nosing_of,
    nosing_words,
    shelf_modulus,
    shelf_span_mm,
)
from casewright.checks.words import about, by_unit, length
from casewright.dims import Way
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["RULE"]

_THICK = Fraction(7, 8) * INCH
"""What is sold as 3/4 stays under this; the next thickness up is over it."""


def _examine(room: Room) -> Iterator[Breach]:
    longest = by_unit(room, "32", "800")
    for case in room.cases:
        for part in case.parts:
            if part.role not in SHELF_ROLES or shelf_modulus(room, part) is not None:
                continue
            span_mm = shelf_span_mm(room, case, part)
            thick = part.finished.thickness.value > _THICK
            if span_mm > longest and not thick and nosing_of(case, part) is None:
                yield Breach(
                    part.path,
                    f"the {part.title} spans {about(room, span_mm)} with nothing under its "
                    f"front; over {length(room, longest)} a shelf this thick wants a nosing. "
                    "Give the stock's modulus to have the sag computed.",
                    measured=about(room, span_mm),
                    limit=length(room, longest),
                    remedies=(
                        f"a nosing {length(room, by_unit(room, '1', '25'))} high or more: "
                        + nosing_words(case, part),
                        f"a case {about(room, span_mm - float(longest), Way.UP)} narrower, or two",
                    ),
                )


RULE = Rule("long shelf", Severity.CARE, __doc__ or "", "common practice", _examine)

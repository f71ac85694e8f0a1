"""Shelves that sag to the eye.

A shelf that rests on its ends sags 5 w L^4 / 384 E I under an even load w, and creeps on for
years. The rule reckons with books, 20 lb on every foot of shelf, adds half again for creep, and
compares with what the eye sees: 1/32 in per foot of span. A nosing glued under the front counts
as stiff as the shelf. It speaks only where the job gives the stock's bending modulus along the
grain; without one, 'long shelf' speaks instead. Fixed shelves are taken as resting on their
ends, too: the back and the dadoes help them a little.

Passes
------
A shelf of 23/32 plywood, 8300 MPa, 12 in deep, in a case 24 in wide.

Fails
-----
The same shelf in a case 44 in wide; with a nosing 1 1/2 high it passes.

Sources
-------
Formula: `wood-handbook`, equation 9-2. Load: `book-loads`. Creep of half again and the limit:
`shelf-sag`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.checks.beam import Rectangle, section_inertia, uniform_load_sag
from casewright.checks.rule import Breach, Rule
from casewright.checks.shelves import SHELF_ROLES, nosing_of, shelf_modulus, shelf_span_mm
from casewright.checks.words import about, by_unit
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_POUND_FORCE_N = float(POUND) * 9.80665  # standard gravity [m/s2]
_FOOT_MM = 304.8
_LOAD_LB_PER_FOOT = 20
_CREEP = 1.5
_SEEN_PER_SPAN = 1 / 384  # 1/32 in per foot
_LEAST_SLENDER = 10
_NOSING_MM = 18.0
_MOST_STEPS = 17


def _section(part: Part, nosing: Part | None) -> list[Rectangle]:
    thick = float(part.finished.thickness.value)
    section = [Rectangle(float(part.finished.width.value), thick, thick / 2)]
    if nosing is not None:
        high = float(nosing.finished.width.value)
        section.append(Rectangle(float(nosing.finished.thickness.value), high, thick + high / 2))
    return section


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        alike: dict[tuple[float, ...], list[Part]] = {}
        for part in case.parts:
            beam = _beam(room, case, part)
            if beam is not None:
                alike.setdefault(beam, []).append(part)
        for (span_mm, first_mm, modulus_mpa), parts in alike.items():
            if first_mm * _CREEP > span_mm * _SEEN_PER_SPAN:
                ways = _ways(room, case, parts[0], (span_mm, first_mm, modulus_mpa))
                yield _breach(room, parts, (span_mm, first_mm, modulus_mpa), tuple(ways))


def _beam(room: Room, case: Case, part: Part) -> tuple[float, float, float] | None:
    """Span [mm], sag at first [mm] and modulus [MPa] of a shelf, where they can be known."""
    modulus = shelf_modulus(room, part) if part.role in SHELF_ROLES else None
    if modulus is None:
        return None
    span_mm = shelf_span_mm(room, case, part)
    if span_mm < _LEAST_SLENDER * float(part.finished.thickness.value):
        return None
    inertia_mm4 = section_inertia(_section(part, nosing_of(case, part)))
    load_n_per_mm = _LOAD_LB_PER_FOOT * _POUND_FORCE_N / _FOOT_MM
    return span_mm, uniform_load_sag(span_mm, load_n_per_mm, modulus, inertia_mm4), modulus


def _breach(
    room: Room, parts: list[Part], beam: tuple[float, float, float], ways: tuple[str, ...]
) -> Breach:
    span_mm, first_mm, modulus_mpa = beam
    lasting = about(room, first_mm * _CREEP)
    limit = about(room, span_mm * _SEEN_PER_SPAN)
    titles = ", ".join(part.title for part in parts)
    return Breach(
        parts[0].path,
        f"{titles} of {parts[0].case}: {about(room, span_mm)} between supports would sag "
        f"{about(room, first_mm)} under books ({_LOAD_LB_PER_FOOT} lb a foot), {lasting} once "
        f"it has crept; the eye sees {limit}. Reckoned with {modulus_mpa:.0f} MPa along the "
        "grain, the ends resting.",
        measured=lasting,
        limit=limit,
        remedies=(*ways, "light things only"),
    )


def _ways(room: Room, case: Case, part: Part, beam: tuple[float, float, float]) -> Iterator[str]:
    """What takes the sag out: how high a nosing, how short a span, how thick a board.

    Sag goes with the fourth power of the span, what the eye sees with the first, stiffness of a
    board with the third power of its thickness.
    """
    span_mm, first_mm, modulus_mpa = beam
    times = first_mm * _CREEP / (span_mm * _SEEN_PER_SPAN)
    step = float(by_unit(room, "1/4", "5"))
    nosing = nosing_of(case, part)
    for number in range(1, _MOST_STEPS):
        strip = _NOSING_MM if nosing is None else float(nosing.finished.thickness.value)
        thick, high = float(part.finished.thickness.value), number * step
        section = [Rectangle(float(part.finished.width.value), thick, thick / 2),
                   Rectangle(strip, high, thick + high / 2)]  # fmt: skip
        load_n_per_mm = _LOAD_LB_PER_FOOT * _POUND_FORCE_N / _FOOT_MM
        sag = uniform_load_sag(span_mm, load_n_per_mm, modulus_mpa, section_inertia(section))
        if sag * _CREEP <= span_mm * _SEEN_PER_SPAN:
            yield (
                f"a nosing {about(room, high)} high under the front edge, "
                f"{about(room, strip)} thick"
            )
            break
    yield (
        f"{about(room, span_mm * times ** (-1 / 3))} between supports at most: a divider, or a "
        "narrower case"
    )
    if nosing is None:
        thicker = float(part.finished.thickness.value) * times ** (1 / 3)
        yield f"stock {about(room, thicker)} thick or more, or doubled"


RULE = Rule("shelf sag", Severity.CARE, __doc__ or "", "shelf-sag", _examine)

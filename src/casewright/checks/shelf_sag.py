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

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.checks.beam import Rectangle, section_inertia, uniform_load_sag
from casewright.checks.rule import Breach, Rule
from casewright.checks.shelves import (
    SHELF_ROLES,
    nosing_of,
    nosing_words,
    shelf_modulus,
    shelf_span_mm,
    takes_nosing,
)
from casewright.checks.words import about, by_unit, length
from casewright.dims import TAPE_MARK, Unit, Way
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_POUND_FORCE_N = float(POUND) * 9.80665  # standard gravity [m/s2]
_FOOT_MM = 304.8
_LOAD_LB_PER_FOOT = 20
_LOADS: Mapping[Unit, str] = {"in": "20 lb a foot", "mm": "30 kg a metre"}
_CREEP = 1.5
_SEEN_PER_SPAN = 1 / 384  # 1/32 in per foot
_LEAST_SLENDER = 10
_MOST_STEPS = 17
"""So many steps of height are tried for a nosing [-]."""
_LEAST_STEPS: Mapping[Unit, int] = {"in": 4, "mm": 5}
"""The lowest nosing that the job draws, 1 in or 25 mm, in these steps [-]."""


class _Beam(NamedTuple):
    """A shelf as a beam: span [mm], sag at first [mm], modulus [MPa]."""

    span_mm: float
    first_mm: float
    modulus_mpa: float

    @property
    def seen_mm(self) -> float:
        """Sag that the eye sees."""
        return self.span_mm * _SEEN_PER_SPAN


class _Strip(NamedTuple):
    """A nosing under the front edge, by its section."""

    thick_mm: float
    high_mm: float


def _strip(nosing: Part | None) -> _Strip | None:
    if nosing is None:
        return None
    return _Strip(float(nosing.finished.thickness.value), float(nosing.finished.width.value))


def _first_sag(span_mm: float, modulus_mpa: float, part: Part, strip: _Strip | None) -> float:
    """Sag of a shelf full of books before it creeps [mm]."""
    thick = float(part.finished.thickness.value)
    section = [Rectangle(float(part.finished.width.value), thick, thick / 2)]
    if strip is not None:
        section.append(Rectangle(strip.thick_mm, strip.high_mm, thick + strip.high_mm / 2))
    load_n_per_mm = _LOAD_LB_PER_FOOT * _POUND_FORCE_N / _FOOT_MM
    return uniform_load_sag(span_mm, load_n_per_mm, modulus_mpa, section_inertia(section))


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        alike: dict[_Beam, list[Part]] = {}
        for part in case.parts:
            beam = _beam(room, case, part)
            if beam is not None:
                alike.setdefault(beam, []).append(part)
        for beam, parts in alike.items():
            if beam.first_mm * _CREEP > beam.seen_mm:
                yield _breach(room, case, parts, beam)


def _beam(room: Room, case: Case, part: Part) -> _Beam | None:
    """A shelf, where its span and what it is made of can be known."""
    modulus = shelf_modulus(room, part) if part.role in SHELF_ROLES else None
    if modulus is None:
        return None
    span_mm = shelf_span_mm(room, case, part)
    if span_mm < _LEAST_SLENDER * float(part.finished.thickness.value):
        return None
    strip = _strip(nosing_of(case, part))
    return _Beam(span_mm, _first_sag(span_mm, modulus, part, strip), modulus)


def _breach(room: Room, case: Case, parts: list[Part], beam: _Beam) -> Breach:
    lasting, limit = about(room, beam.first_mm * _CREEP), about(room, beam.seen_mm)
    titles = ", ".join(part.title for part in parts)
    return Breach(
        parts[0].path,
        f"{titles} of {parts[0].case}: {_span(room, beam.span_mm)} between supports would sag "
        f"{about(room, beam.first_mm)} under books ({_LOADS[room.spec.unit]}), {lasting} "
        f"once it has crept; the eye sees {limit}. Reckoned with {beam.modulus_mpa:.0f} MPa along "
        "the grain, the ends resting.",
        measured=lasting,
        limit=limit,
        remedies=(*_ways(room, case, parts[0], beam), "light things only"),
    )


def _span(room: Room, span_mm: float) -> str:
    """A span as a tape shows it, never more than it is."""
    return length(room, _on_tape(room, span_mm))


def _on_tape(room: Room, size_mm: float) -> Fraction:
    """Down to the next mark of a tape [mm]."""
    mark = TAPE_MARK[room.spec.unit]
    return Fraction(round(size_mm * 1000), 1000) // mark * mark


def _ways(room: Room, case: Case, part: Part, beam: _Beam) -> Iterator[str]:
    """What takes the sag out: how high a nosing, how short a span, how thick a board.

    Sag goes with the fourth power of the span, what the eye sees with the first, stiffness of a
    board with the third power of its thickness.
    """
    nosing = nosing_of(case, part)
    yield from _higher_nosing(room, case, part, beam)
    times = beam.first_mm * _CREEP / beam.seen_mm
    most = beam.span_mm * times ** (-1 / 3)
    less = length(room, -_on_tape(room, most - beam.span_mm))
    yield f"{_span(room, most)} between supports at most: a case {less} narrower, or two"
    if nosing is None:
        thicker = float(part.finished.thickness.value) * times ** (1 / 3)
        yield f"stock {about(room, thicker, Way.UP)} thick or more, or doubled"


def _higher_nosing(room: Room, case: Case, part: Part, beam: _Beam) -> Iterator[str]:
    """The lowest nosing that does, in usual steps; none where only a very high one would."""
    step, own = float(by_unit(room, "1/4", "5")), _strip(nosing_of(case, part))
    thick = float(by_unit(room, "3/4", "18")) if own is None else own.thick_mm
    least = _LEAST_STEPS[room.spec.unit] if takes_nosing(case, part) else 1
    for high in (number * step for number in range(least, _MOST_STEPS)):
        first = _first_sag(beam.span_mm, beam.modulus_mpa, part, _Strip(thick, high))
        if first * _CREEP <= beam.seen_mm:
            front = f"{about(room, high)} high under the front edge"
            yield f"a nosing {front}, {about(room, thick)} thick: {nosing_words(case, part)}"
            return


RULE = Rule("shelf sag", Severity.CARE, __doc__ or "", "shelf-sag", _examine)

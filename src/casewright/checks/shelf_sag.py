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
    shelf_span,
    takes_nosing,
)
from casewright.checks.words import reckoning
from casewright.dims import (
    TAPE_MARK,
    Dim,
    Given,
    Measure,
    Origin,
    Told,
    Unit,
    Way,
    tell,
)
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["RULE"]

_NAME = "shelf sag"
_STEP = Limit("shelf_sag.nosing_step", "1/4", "5", "steps that a nosing is made higher by")
_THICK = Limit("shelf_sag.nosing_thickness", "3/4", "18", "a nosing of usual stock")
_POUND_FORCE_N = float(POUND) * 9.80665  # standard gravity [m/s2]
_FOOT_MM = 304.8
_LOAD_LB_PER_FOOT = 20
_LOADS: Mapping[Unit, str] = {"in": "20 lb a foot", "mm": "30 kg a metre"}
_CREEP = 1.5
_CREEPS = Given(Fraction(3, 2), Origin("cited", "creep of half again over years", "shelf-sag"))
_SEES = Given(
    Fraction(1, 384), Origin("cited", "what the eye sees: 1/32 in per foot of span", "shelf-sag")
)
_SAGS = "5 w L^4 / 384 E I, the ends resting, of"
_LOW = Origin("solved", "the lowest, in usual steps, with which the eye sees no sag", "shelf-sag")
_LONG = Origin("solved", "sag goes with its fourth power, what the eye sees with the first")
_STIFF = Origin("solved", "stiffness goes with its third power")
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
    span_mm = float(shelf_span(room, case, part).value)
    if span_mm < _LEAST_SLENDER * float(part.finished.thickness.value):
        return None
    strip = _strip(nosing_of(case, part))
    return _Beam(span_mm, _first_sag(span_mm, modulus, part, strip), modulus)


class _Told(NamedTuple):
    """A shelf that sags: its numbers, where they are worked out, and what it is made of."""

    own: Reckoning
    case: Case
    part: Part
    beam: _Beam
    span: Dim
    first: Dim

    @property
    def lasting(self) -> Dim:
        """Sag once it has crept [mm]."""
        return self.first * self.own.given("shelf_sag.creep", _CREEPS, 0)

    @property
    def times(self) -> float:
        """How much more it sags than the eye sees [-]."""
        return self.beam.first_mm * _CREEP / self.beam.seen_mm

    def on_tape(self, name: str, dim: Dim, way: Way = Way.DOWN) -> Measure:
        """A length to a mark of the tape."""
        return self.own.length(self.own.rounded(name, dim, TAPE_MARK[self.own.unit], way))


def _told(room: Room, case: Case, part: Part, beam: _Beam) -> _Told:
    own, span = reckoning(room, _NAME, part.path), shelf_span(room, case, part)
    sizes, nosing = [span, part.finished.thickness, part.finished.width], nosing_of(case, part)
    if nosing is not None:
        sizes += [nosing.finished.thickness, nosing.finished.width]
    words = f"{_SAGS} {beam.modulus_mpa:.0f} MPa along the grain"
    sag = own.worked("sag", _fraction(beam.first_mm), Origin("solved", words, "wood-handbook"),
                     *sizes, _load(own))  # fmt: skip
    return _Told(own, case, part, beam, span, sag)


def _load(own: Reckoning) -> Dim:
    """Books on so much of a shelf as the job's unit counts by [kg]."""
    foot = _LOAD_LB_PER_FOOT * POUND
    value = foot if own.unit == "in" else foot * 10_000 / 3048
    note = f"books, {_LOAD_LB_PER_FOOT} lb on every foot, about 30 kg on every metre"
    origin = Origin("cited", note, "book-loads")
    return own.given("shelf_sag.load_weight", Given(value, origin), 0)


def _fraction(size_mm: float) -> Fraction:
    """A computed length without what floats add far behind [mm]."""
    return Fraction(round(size_mm * 1000), 1000)


def _breach(room: Room, case: Case, parts: list[Part], beam: _Beam) -> Breach:
    it = _told(room, case, parts[0], beam)
    own = it.own
    lasting = own.about(it.lasting, "lasting_sag")
    sees = own.let("seen", it.span * own.given("shelf_sag.share", _SEES, 0))
    limit = own.about(sees, "seen_sag")
    titles = ", ".join(part.title for part in parts)
    return Breach(
        parts[0].path,
        tell(
            "{} of {}: {} between supports would sag {} under books ({}), {} once it has crept; "
            "the eye sees {}. Reckoned with {} MPa along the grain, the ends resting.",
            titles, parts[0].case, it.on_tape("span", it.span), own.about(it.first, "sag_first"),
            own.said(_load(own), _LOADS[own.unit], "load_weight"), lasting, limit,
            f"{beam.modulus_mpa:.0f}",
        ),
        measured=lasting.text,
        limit=limit.text,
        remedies=(*_ways(it, sees), "light things only"),
        own=own,
    )  # fmt: skip


def _ways(it: _Told, sees: Dim) -> Iterator[Told]:
    """What takes the sag out: how high a nosing, how short a span, how thick a board.

    Sag goes with the fourth power of the span, what the eye sees with the first, stiffness of a
    board with the third power of its thickness.
    """
    own, follows = it.own, (it.first, sees)
    yield from _higher_nosing(it)
    longest = _fraction(it.beam.span_mm * it.times ** (-1 / 3))
    most = own.worked("longest", longest, _LONG, it.span, *follows)
    yield tell(
        "{} between supports at most: a case {} narrower, or two",
        it.on_tape("at_most", most), it.on_tape("narrower", it.span - most, Way.UP),
    )  # fmt: skip
    if nosing_of(it.case, it.part) is None:
        thick = it.part.finished.thickness
        wanted = _fraction(float(thick.value) * it.times ** (1 / 3))
        thicker = own.worked("thicker", wanted, _STIFF, thick, *follows)
        yield tell("stock {} thick or more, or doubled", own.about(thicker, "as_thick", Way.UP))


def _higher_nosing(it: _Told) -> Iterator[Told]:
    """The lowest nosing that does, in usual steps; none where only a very high one would."""
    own, case, part = it.own, it.case, it.part
    nosing, step = nosing_of(case, part), own.limit(_STEP)
    thick = own.limit(_THICK) if nosing is None else nosing.finished.thickness
    least = _LEAST_STEPS[own.unit] if takes_nosing(case, part) else 1
    for high in (number * step.value for number in range(least, _MOST_STEPS)):
        strip = _Strip(float(thick.value), float(high))
        first = _first_sag(it.beam.span_mm, it.beam.modulus_mpa, part, strip)
        if first * _CREEP <= it.beam.seen_mm:
            lowest = own.worked("nosing", high, _LOW, it.first, step)
            yield tell(
                "a nosing {} high under the front edge, {} thick: {}",
                own.about(lowest, "as_high"), own.about(thick, "as_thick"),
                nosing_words(case, part),
            )  # fmt: skip
            return


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "shelf-sag", _examine)

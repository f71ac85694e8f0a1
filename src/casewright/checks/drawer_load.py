"""Full drawers heavier than their slides carry.

Slides that carry more than they are made for sag, bind, and drop their balls. What will lie in a
drawer nobody knows, so a full one is reckoned: the load that drawers are tested with, 15 lb on
every square foot of their bottom (73 kg/m2), or pans and plates up to the rim at 300 kg/m3,
whichever is more; with its box and its front. Files, tins and tools weigh more, linen less. It is
held against `load` in the slides' sheet. While that is not given, usual ones are taken to carry
100 lb (45 kg) beside the box and 75 lb (34 kg) under it, and the finding is a note: the sheet
governs. The screws and the side that carry the slides are not judged here.

Passes
------
Three drawers in a base 24 in wide, on slides of 100 lb.

Fails
-----
The same on slides of 50 lb.

Sources
-------
`kcma`: 15 lb on a square foot. `common practice`, from memory: what usual slides carry. The 300
kg/m3 are this house's own judgement.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case, Drawer
from casewright.casework.specs import SlideKind
from casewright.checks.front_weights import front_weights
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, weight_of
from casewright.dims import Dim, Given, Origin, Way, greatest, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.sources import INCH, POUND

__all__ = ["RULE", "full_drawer"]

_NAME = "drawer load"

_ON_BOTTOM = 15 * POUND / (12 * INCH) ** 2
"""The load that drawers are tested with [kg/mm2]."""

_TO_THE_RIM = Fraction(300, 10**9)
"""Pans and plates [kg/mm3]."""

_USUAL: Mapping[SlideKind, Fraction] = {"side-mount": 100 * POUND, "undermount": 75 * POUND}
"""What usual slides carry [kg]."""


_USUALLY = Origin("cited", "what usual slides carry, from memory", "common practice")


def full_drawer(inside: Fraction, deep: Fraction, high: Fraction) -> Fraction:
    """What is reckoned to lie in a drawer [kg].

    Parameters
    ----------
    inside, deep, high
        Between its sides, from front to back, and to its rim [mm].

    Examples
    --------
    >>> float(full_drawer(24 * INCH, 18 * INCH, 4 * INCH) / POUND)
    45.0
    """
    bottom = inside * deep
    return max(bottom * _ON_BOTTOM, bottom * high * _TO_THE_RIM)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.boxes:
        if case.drawers:
            yield from _judge(room, case)


def _judge(room: Room, case: Case) -> Iterator[Breach]:
    """One breach for each kind of slides of a case: its heaviest drawer."""
    own = front_weights(room, case)
    heaviest: dict[SlideKind, tuple[Fraction, Fraction, Drawer]] = {}
    for drawer in case.drawers:
        held = full_drawer(drawer.inside_width.value, drawer.depth.value, drawer.height.value)
        empty = own.get(drawer.path, Fraction(0)) + own.get(drawer.front, Fraction(0))
        found = heaviest.get(drawer.slides)
        if found is None or held + empty > found[0] + found[1]:
            heaviest[drawer.slides] = held, empty, drawer
    for kind, (held, empty, drawer) in heaviest.items():
        sheets = room.spec.hardware
        given = (sheets.slide if kind == "side-mount" else sheets.undermount).load
        carries = _USUAL[kind] if given is None else given
        if held + empty > carries:
            yield _breach(room, case, drawer, given)


def _breach(room: Room, case: Case, drawer: Drawer, given: Fraction | None) -> Breach:
    own = reckoning(room, _NAME, drawer.path)
    key = "slide" if drawer.slides == "side-mount" else "undermount"
    per_width = own.let("held_per_width", _per_width(own, drawer))
    held = own.let("held_weight", per_width * drawer.inside_width)
    pieces = [part for part in case.parts if part.front in (drawer.path, drawer.front)]
    empty = own.let("own_weight", weight_of(room, own, pieces))
    origin = _USUALLY if given is None else Origin("chosen", f"load under [hardware.{key}]")
    load = Given(_USUAL[drawer.slides] if given is None else given, origin)
    carries = own.given(f"hardware.{key}.load_weight", load, 0)
    whole, limit = own.weight(held + empty, "full_weight"), own.weight(carries)
    carry = "usual slides carry, until theirs is known," if given is None else "its slides carry"
    return Breach(
        drawer.path,
        tell(
            "full, {} would weigh about {}: {} in it, by its size, and {} of its own; {} {}",
            drawer.title, whole, own.weight(held), own.weight(empty), carry, limit,
        ),
        measured=whole.text,
        limit=limit.text,
        remedies=(
            tell(
                "slides that carry {} and more: load under [hardware.{}], from their sheet",
                whole, key,
            ),
            *_narrower(own, drawer, (carries - empty, per_width)),
            "light things only",
        ),
        severity=Severity.NOTE if given is None else None,
        own=own,
    )  # fmt: skip


def _per_width(own: Reckoning, drawer: Drawer) -> Dim:
    """What is reckoned to lie in a drawer, on each millimetre of its width [kg/mm]."""
    tested = Origin("cited", "on a drawer's bottom: 15 lb on a square foot", "kcma")
    bottom = own.given("drawer_load.bottom", Given(_ON_BOTTOM, tested), -2)
    judged = Origin("cited", "pans and plates up to the rim: 300 kg/m3, this house's judgement")
    rim = own.given("drawer_load.rim", Given(_TO_THE_RIM, judged), -3)
    return greatest(drawer.depth * bottom, drawer.depth * drawer.height * rim)


def _narrower(own: Reckoning, drawer: Drawer, loads: tuple[Dim, Dim]) -> tuple[str, ...]:
    """A narrower case for it, or two beside each other: so wide that what is left lies in them.

    Parameters
    ----------
    loads
        What may lie in it, and what lies on each millimetre of its width [kg], [kg/mm].
    """
    (left, per_width), wide = loads, drawer.inside_width
    if left.value <= 0:
        return ()
    most = own.let("widest", left / per_width)
    less = own.about(wide - most, "narrower", Way.UP)
    halves = tell("two drawers beside each other, each at most {} wide inside", own.length(most))
    is_half = 2 * most.value >= wide.value * Fraction(9, 10)
    narrower = tell("a case {} narrower", less)
    return (narrower, halves) if is_half else (narrower,)


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "kcma", _examine)

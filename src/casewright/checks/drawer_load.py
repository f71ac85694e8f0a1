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
from casewright.checks.words import about, kilograms, length
from casewright.dims import Way
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.sources import INCH, POUND

__all__ = ["RULE", "full_drawer"]

_ON_BOTTOM = 15 * POUND / (12 * INCH) ** 2
"""The load that drawers are tested with [kg/mm2]."""

_TO_THE_RIM = Fraction(300, 10**9)
"""Pans and plates [kg/mm3]."""

_USUAL: Mapping[SlideKind, Fraction] = {"side-mount": 100 * POUND, "undermount": 75 * POUND}
"""What usual slides carry [kg]."""


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
            yield _breach(room, drawer, (held, empty, carries), given is not None)


def _breach(
    room: Room, drawer: Drawer, loads: tuple[Fraction, Fraction, Fraction], is_given: bool
) -> Breach:
    held, empty, carries = loads
    whole = kilograms(room, held + empty)
    own = "its slides carry" if is_given else "usual slides carry, until theirs is known,"
    key = "slide" if drawer.slides == "side-mount" else "undermount"
    return Breach(
        drawer.path,
        f"full, {drawer.title} would weigh about {whole}: {kilograms(room, held)} in it, by its "
        f"size, and {kilograms(room, empty)} of its own; {own} {kilograms(room, carries)}",
        measured=whole,
        limit=kilograms(room, carries),
        remedies=(
            f"slides that carry {whole} and more: load under [hardware.{key}], from their sheet",
            *_narrower(room, drawer, carries - empty),
            "light things only",
        ),
        severity=None if is_given else Severity.NOTE,
    )


def _narrower(room: Room, drawer: Drawer, left: Fraction) -> tuple[str, ...]:
    """A narrower case for it, or two beside each other: so wide that so much [kg] lies in them."""
    high, deep = drawer.height.value, drawer.depth.value
    if left <= 0:
        return ()
    most = left / full_drawer(Fraction(1), deep, high)
    wide = drawer.inside_width.value
    less = about(room, float(wide - most), Way.UP)
    halves = (f"two drawers beside each other, each at most {length(room, most)} wide inside",)
    return (f"a case {less} narrower", *(halves if 2 * most >= wide * Fraction(9, 10) else ()))


RULE = Rule("drawer load", Severity.CARE, __doc__ or "", "kcma", _examine)

"""Leaves too narrow, too wide or too long for their width.

A wide leaf swings far into the room and pulls at its hinges; a tall narrow one winds like a
propeller; one much wider than tall looks and hangs badly; a very tall one seldom
stays flat. Within 9 to 22 in of width, and a height of 1.2 to 3.5 times the width, doors give no
trouble. The low doors over a divider are wider than high by custom, and light: their height is let
pass. A leaf so tall or so wide that it cannot stay flat in one piece is not made at all.

Passes
------
A pair of leaves 16 3/8 x 38 15/16.

Fails
-----
A single leaf 24 in wide; a leaf 9 in wide and 39 in tall.

Sources
-------
`common practice`; the numbers are this house's own judgement: the greatest width is style
'widest_single_door', the greatest height 'tallest_leaf', and under 'narrowest_leaf' a leaf is
pinched.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length, style_value
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_APART = "two cases side by side, each with doors of its own"
_LOW, _HIGH = Fraction(12, 10), Fraction(35, 10)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        leaves = Counter(front.opening for front in case.doors)
        told: dict[tuple[str, Fraction, Fraction], list[Door]] = {}
        for front in case.doors:
            size = (front.opening, front.width.value, front.height.value)
            told.setdefault(size, []).append(front)
        for alike in told.values():  # a pair of one size is one finding
            pair = leaves[alike[0].opening] > 1
            wrong = list(_width(room, case, alike, pair=pair))
            tallest = style_value(room, case, "tallest_leaf")
            if alike[0].height.value > tallest:
                wrong.append(_tall(room, alike, tallest))
            if not wrong and alike[0].opening == "main":  # else its shape follows from that
                wrong += _aspect(room, alike, pair=pair)
            yield from wrong


def _named(alike: Sequence[Door]) -> str:
    others = " and the ".join(front.title for front in alike[1:])
    return f"the {alike[0].title}, like the {others}," if others else f"the {alike[0].title}"


def _width(room: Room, case: Case, alike: Sequence[Door], *, pair: bool) -> Iterator[Breach]:
    front = alike[0]
    wide = front.width.value
    narrowest = by_unit(room, "9", "230")
    pinched, widest = (
        style_value(room, case, key) for key in ("narrowest_leaf", "widest_single_door")
    )
    if wide > widest:
        yield Breach(
            front.path,
            f"{_named(alike)} is {length(room, wide)} wide, over {length(room, widest)}: it "
            "swings far out and pulls at its hinges",
            measured=length(room, wide),
            limit=length(room, widest),
            remedies=(f"a case {length(room, 2 * (wide - widest))} narrower", _APART)
            if pair
            else (
                *((f"two leaves, {length(room, wide / 2)} wide",) if not case.spec.blind else ()),
                f"a case {length(room, wide - widest)} narrower",
            ),
        )
    elif wide < narrowest:
        yield Breach(
            front.path,
            f"{_named(alike)} is only {length(room, wide)} wide; under "
            f"{length(room, narrowest)} a leaf hides more than it opens"
            + (", and so narrow a one looks pinched" if wide < pinched else ""),
            measured=length(room, wide),
            limit=length(room, narrowest),
            remedies=(
                f"one leaf instead of two, {length(room, 2 * wide)} wide",
                f"a case {length(room, 2 * (narrowest - wide))} wider",
            )
            if pair
            else (f"a case {length(room, narrowest - wide)} wider",),
            severity=None if wide < pinched else Severity.NOTE,
        )


def _tall(room: Room, alike: Sequence[Door], tallest: Fraction) -> Breach:
    high = length(room, alike[0].height.value)
    return Breach(
        alike[0].path,
        f"{_named(alike)} is {high} tall, over {length(room, tallest)}: so tall a door seldom "
        "stays flat",
        measured=high,
        limit=length(room, tallest),
        remedies=(
            f"a divider, each door at most {length(room, tallest)} tall",
            "flat, seasoned stock, and a straightener in each leaf",
        ),
    )


def _aspect(room: Room, alike: Sequence[Door], *, pair: bool) -> Iterator[Breach]:
    front = alike[0]
    ratio = front.height.value / front.width.value
    if _LOW <= ratio <= _HIGH:
        return
    long = ratio > _HIGH
    yield Breach(
        front.path,
        f"{_named(alike)} is {length(room, front.height.value)} tall and "
        f"{length(room, front.width.value)} wide, {float(ratio):.1f} to 1: "
        + ("so long a leaf may wind" if long else "wider than it should be for its height"),
        measured=f"{float(ratio):.1f}",
        limit=f"{float(_HIGH if long else _LOW):.1f}",
        remedies=(
            f"a divider, each door at most {length(room, front.width.value * _HIGH)} tall",
            "flat, seasoned stock",
        )
        if long
        else (
            f"leaves at most {length(room, front.height.value / _LOW)} wide"
            + (": a narrower case" if pair else ": two of them"),
        ),
        severity=Severity.NOTE,
    )


RULE = Rule("leaf size", Severity.CARE, __doc__ or "", "common practice", _examine)

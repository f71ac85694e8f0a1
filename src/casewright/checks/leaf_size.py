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
from casewright.checks.words import reckoning, style_of, style_value
from casewright.dims import tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "leaf size"
_NARROWEST = Limit("leaf.narrowest", "9", "230", "a narrower leaf hides more than it opens")
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
                wrong.append(_tall(room, case, alike))
            if not wrong and alike[0].opening == "main":  # else its shape follows from that
                wrong += _aspect(room, alike, pair=pair)
            yield from wrong


def _named(alike: Sequence[Door]) -> str:
    others = " and the ".join(front.title for front in alike[1:])
    return f"the {alike[0].title}, like the {others}," if others else f"the {alike[0].title}"


def _width(room: Room, case: Case, alike: Sequence[Door], *, pair: bool) -> Iterator[Breach]:
    wide = alike[0].width.value
    if wide > style_value(room, case, "widest_single_door"):
        yield _too_wide(room, case, alike, pair=pair)
    elif wide < _NARROWEST.of(room.spec.unit):
        yield _too_narrow(room, case, alike, pair=pair)


def _too_wide(room: Room, case: Case, alike: Sequence[Door], *, pair: bool) -> Breach:
    front = alike[0]
    own, wide = reckoning(room, _NAME, front.path), front.width
    most = style_of(room, own, "widest_single_door", case)
    half = own.length(wide / 2, "half_width")
    halved = () if case.spec.blind else (tell("two leaves, {} wide", half),)
    narrower = own.length(2 * (wide - most) if pair else wide - most, "narrower")
    case_words = tell("a case {} narrower", narrower)
    return Breach(
        front.path,
        tell(
            "{} is {} wide, over {}: it swings far out and pulls at its hinges",
            _named(alike), own.length(wide), own.length(most),
        ),
        measured=own.length(wide).text,
        limit=own.length(most).text,
        remedies=(case_words, _APART) if pair else (*halved, case_words),
        own=own,
    )  # fmt: skip


def _too_narrow(room: Room, case: Case, alike: Sequence[Door], *, pair: bool) -> Breach:
    front = alike[0]
    own, wide = reckoning(room, _NAME, front.path), front.width
    least = own.limit(_NARROWEST)
    pinched = wide.value < style_value(room, case, "narrowest_leaf")
    wider = own.length(2 * (least - wide) if pair else least - wide, "wider")
    words: tuple[str, ...] = (tell("a case {} wider", wider),)
    if pair:
        both = own.length(2 * wide, "as_one")
        words = (tell("one leaf instead of two, {} wide", both), *words)
    return Breach(
        front.path,
        tell(
            "{} is only {} wide; under {} a leaf hides more than it opens{}",
            _named(alike), own.length(wide), own.length(least),
            ", and so narrow a one looks pinched" if pinched else "",
        ),
        measured=own.length(wide).text,
        limit=own.length(least).text,
        remedies=words,
        severity=None if pinched else Severity.NOTE,
        own=own,
    )  # fmt: skip


def _tall(room: Room, case: Case, alike: Sequence[Door]) -> Breach:
    own = reckoning(room, _NAME, alike[0].path)
    high = own.length(alike[0].height)
    tallest = own.length(style_of(room, own, "tallest_leaf", case))
    return Breach(
        alike[0].path,
        tell(
            "{} is {} tall, over {}: so tall a door seldom stays flat",
            _named(alike), high, tallest,
        ),
        measured=high.text,
        limit=tallest.text,
        remedies=(
            tell("a divider, each door at most {} tall", tallest),
            "flat, seasoned stock, and a straightener in each leaf",
        ),
        own=own,
    )  # fmt: skip


def _aspect(room: Room, alike: Sequence[Door], *, pair: bool) -> Iterator[Breach]:
    front = alike[0]
    ratio = front.height.value / front.width.value
    if _LOW <= ratio <= _HIGH:
        return
    long, own = ratio > _HIGH, reckoning(room, _NAME, front.path)
    says = tell(
        "{} is {} tall and {} wide, {} to 1: ",
        _named(alike), own.length(front.height), own.length(front.width), f"{float(ratio):.1f}",
    )  # fmt: skip
    yield Breach(
        front.path,
        says + ("so long a leaf may wind" if long else "wider than it should be for its height"),
        measured=f"{float(ratio):.1f}",
        limit=f"{float(_HIGH if long else _LOW):.1f}",
        remedies=_shapes(own, front, pair=pair, long=long),
        severity=Severity.NOTE,
        own=own,
    )


def _shapes(own: Reckoning, front: Door, *, pair: bool, long: bool) -> tuple[str, ...]:
    """What gives a leaf a better shape."""
    if long:
        most = own.length(front.width * _HIGH, "tallest")
        return tell("a divider, each door at most {} tall", most), "flat, seasoned stock"
    most = own.length(front.height / _LOW, "widest")
    ending = ": a narrower case" if pair else ": two of them"
    return (tell("leaves at most {} wide{}", most, ending),)


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

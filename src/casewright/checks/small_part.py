"""Parts so small that the hands come close to the blade or the bit.

A piece under 8 in long cannot be held down and pushed past a bit with both hands away from it;
routed by itself it is snatched. Under 6 in, cutting it off is no work for the bare hand either.
Such pieces are worked on a long strip and cut off it last, against a stop, held by a sled or a
clamp. The saw's and the router's manuals govern.

Passes
------
Rails 16 3/8 long in a glass door of that width, half-lapped on its stiles.

Fails
-----
Rails 7 3/8 long in a pair of glass doors on a case 15 in wide, with their laps and rebates.

Sources
-------
`common practice`, from memory: no piece under 6 to 8 in by hand at a router.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _longest(part: Part) -> Fraction:
    return max(part.blank.length.value, part.blank.width.value)


def _is_routed(part: Part) -> bool:
    return any(feature.setup.tool in ("router", "router table") for feature in part.features)


def _examine(room: Room) -> Iterator[Breach]:
    small: dict[tuple[str, bool], list[Part]] = {}
    for part in room.parts:
        routed = _is_routed(part)
        if _longest(part) < _least(room, routed=routed):
            small.setdefault((part.stock, routed), []).append(part)
    for (_, routed), parts in small.items():
        yield _breach(room, sorted(parts, key=_longest), routed=routed)


def _least(room: Room, *, routed: bool) -> Fraction:
    return by_unit(room, "8", "200") if routed else by_unit(room, "6", "150")


def _breach(room: Room, parts: list[Part], *, routed: bool) -> Breach:
    first, least = parts[0], length(room, _least(room, routed=routed))
    others = f" and {len(parts) - 1} more" if len(parts) > 1 else ""
    near = "the bit and the blade" if routed else "the blade"
    return Breach(
        first.path,
        f"the {first.title} of {first.case}{others}: under {least} at the longest, "
        f"{length(room, _longest(first))} the smallest, so that hands come close to {near}",
        measured=length(room, _longest(first)),
        limit=least,
        remedies=(
            *(("rout it on a long strip, then cut it off",) if routed else ()),
            "cut it last, off a longer strip, on a sled with a stop and a clamp",
        ),
    )


RULE = Rule("small part", Severity.CARE, __doc__ or "", "common practice", _examine)

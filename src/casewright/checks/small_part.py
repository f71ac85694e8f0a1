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
from casewright.checks.words import reckoning
from casewright.dims import Dim, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "small part"
_ROUTED = Limit("small_part.routed", "8", "200", "no shorter piece by hand at a router")
_SAWN = Limit("small_part.sawn", "6", "150", "no shorter piece by the bare hand")


def _long(part: Part) -> Dim:
    return max(part.blank.length, part.blank.width, key=lambda dim: dim.value)


def _longest(part: Part) -> Fraction:
    return _long(part).value


def _is_routed(part: Part) -> bool:
    return any(feature.setup.tool in ("router", "router table") for feature in part.features)


def _examine(room: Room) -> Iterator[Breach]:
    small: dict[tuple[str, bool], list[Part]] = {}
    for part in room.parts:
        routed = _is_routed(part)
        if _longest(part) < _least(routed=routed).of(room.spec.unit):
            small.setdefault((part.stock, routed), []).append(part)
    for (_, routed), parts in small.items():
        yield _breach(room, sorted(parts, key=_longest), routed=routed)


def _least(*, routed: bool) -> Limit:
    return _ROUTED if routed else _SAWN


def _breach(room: Room, parts: list[Part], *, routed: bool) -> Breach:
    first, own = parts[0], reckoning(room, _NAME, parts[0].path)
    least, smallest = own.length(own.limit(_least(routed=routed))), own.length(_long(first))
    others = f" and {len(parts) - 1} more" if len(parts) > 1 else ""
    near = "the bit and the blade" if routed else "the blade"
    return Breach(
        first.path,
        tell(
            "the {} of {}{}: under {} at the longest, {} the smallest, so that hands come close "
            "to {}",
            first.title, first.case, others, least, smallest, near,
        ),
        measured=smallest.text,
        limit=least.text,
        remedies=(
            *(("rout it on a long strip, then cut it off",) if routed else ()),
            "cut it last, off a longer strip, on a sled with a stop and a clamp",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

"""Cuts set up for a dado stack, which not every saw takes and not every law lets be used.

A stack of cutters on a table saw makes a wide groove in one pass, riving knife and guard off.
Only a saw whose arbor and brake are made for it takes one; in several countries, those of Europe
among them, most saws take none and employers may not use one. Where it is owned it is set up for
grooves in edges and for tongues. This tells of it once, with the way that the shop's other tools
offer: leave "dado stack" out of tools in [shop], and the cards are written for that.

Passes
------
Frames and panels in a shop without a stack.

Fails
-----
The same in a shop that has one.

Sources
-------
`common practice`, from memory: where a stack may be used. The saw maker's manual and the law of
the place come before anything here.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.shop import Shop

__all__ = ["RULE"]

_BIT = "dado stack"


def _examine(room: Room) -> Iterator[Breach]:
    shop = room.spec.shop
    if not shop.has("dado stack"):
        return
    found: dict[str, list[Part]] = {}
    for part in room.parts:
        for feature in part.features:
            if feature.setup.bit.startswith(_BIT):
                found.setdefault(feature.kind, []).append(part)
    if not found:
        return
    paths = {part.path for parts in found.values() for part in parts}
    first = next(iter(found.values()))[0]
    kinds = " and ".join(f"{kind}s" for kind in found)
    more = f" and {len(paths) - 1} more" if len(paths) > 1 else ""
    yield Breach(
        first.path,
        f"{kinds} of the {first.title} of {first.case}{more} are set up for a dado stack; it may "
        "not fit the saw, and not everywhere may it be used",
        measured=_BIT,
        limit="the saw's manual and the law of the place",
        remedies=(
            f'tools in [shop] without "dado stack": the cards then say {_instead(shop)}',
            "ask the saw's maker whether its arbor, brake and guard are made for a stack",
        ),
        severity=Severity.CARE if room.spec.unit == "mm" else None,
    )


def _instead(shop: Shop) -> str:
    """What is set up without a stack, by what else there is."""
    if shop.has("router table") and shop.has("slot cutter"):
        return "slot cutter and straight bit on the router table"
    if shop.has("table saw"):
        return "the saw's own blade, pass beside pass, its riving knife left on where it fits"
    return "a straight bit along an edge guide"


RULE = Rule("dado stack", Severity.NOTE, __doc__ or "", "common practice", _examine)

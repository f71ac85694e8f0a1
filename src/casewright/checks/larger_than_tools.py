"""Parts too large for what the shop's saws reach.

A part is ripped to its width with an edge against the table saw's fence, as far as the fence
opens, and crosscut to its length on a sled or a mitre saw, as far as those reach. What is wider,
and sheets heavier than one person lifts, are cut on the floor: a circular saw along a clamped
guide, no longer than the guide. A guide laid twice along one line makes two cuts that do not quite
meet; without a circular saw there is no such cut at all. Sizes that are those of the whole sheet
are not cut. The sawing order says the same of each cut, but only once the sheets are planned.

Passes
------
Sides of 84 x 12, a fence that opens 25 in, a guide of 98.

Fails
-----
A back of 84 x 40 with a guide of 50: it is too wide for the fence, too long for the guide.

Sources
-------
`common practice`. Reach and guide are those of the job's shop, the sled's are style 'sled_reach'.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import kilograms, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["RULE"]


class _Saws(NamedTuple):
    """What the shop reaches [mm]; a fence of None opens as far as is wanted, 0: there is none."""

    fence: Fraction | None
    sled: Fraction
    guide: Fraction


def _examine(room: Room) -> Iterator[Breach]:
    saws, sheets = _saws(room), _sheets(room)
    far: dict[tuple[str, str], list[Part]] = {}
    for part in room.parts:
        whole = sheets.get(part.stock)
        if whole is None:
            continue
        long, wide = part.blank.length.value, part.blank.width.value
        if long > saws.guide and wide < whole[1] and _is_over(wide, saws.fence):
            far.setdefault((part.stock, "rip"), []).append(part)
        elif wide > saws.guide and wide > saws.sled and long < whole[0]:
            far.setdefault((part.stock, "crosscut"), []).append(part)
    for (_, word), parts in far.items():
        yield _breach(room, parts, word, saws)
    if not saws.guide:
        yield from _heavy(room)


def _is_over(value: Fraction, limit: Fraction | None) -> bool:
    return limit is not None and value > limit


def _saws(room: Room) -> _Saws:
    shop = room.spec.shop
    table, mitre = shop.tools.get("table saw"), shop.tools.get("mitre saw")
    none = Fraction(0)
    fence: Fraction | None = none
    if table is not None:
        fence = None if table.reach is None else table.reach.value
    sled = room.spec.style["sled_reach"].value if table is not None else none
    if mitre is not None and mitre.reach is not None:
        sled = max(sled, mitre.reach.value)
    return _Saws(fence, sled, shop.straightedge.value if shop.has("circular saw") else none)


def _sheets(room: Room) -> dict[str, tuple[Fraction, Fraction]]:
    """Length and width of whole sheets, by their key [mm]."""
    return {
        key: (goods.length_in_hand.value, goods.width_in_hand.value)
        for key, goods in room.spec.stock.items()
        if isinstance(goods, Sheet)
    }


def _breach(room: Room, parts: list[Part], word: str, saws: _Saws) -> Breach:
    def along(part: Part) -> Fraction:
        return part.blank.length.value if word == "rip" else part.blank.width.value

    part = max(parts, key=along)
    size = " x ".join(length(room, d.value) for d in (part.blank.length, part.blank.width))
    more = f" and {len(parts) - 1} more" if len(parts) > 1 else ""
    reach = saws.fence if word == "rip" else saws.sled
    near = "the fence opens" if word == "rip" else "the sled or the mitre saw reaches"
    first = f"{near} {length(room, reach or Fraction(0))}" if reach else "no saw with a fence"
    guide = (
        f"the guide is {length(room, saws.guide)}" if saws.guide else "no circular saw is owned"
    )
    longer = f"a guide of {length(room, along(part))} and a little more: straightedge in [shop]"
    return Breach(
        part.path,
        f"the {part.title} of {part.case}, {size}{more}: too large to {word} here, {first}, "
        f"{guide}",
        measured=size,
        limit=length(room, max(reach or Fraction(0), saws.guide)),
        remedies=(
            longer if saws.guide else "a circular saw and a guide, bought or borrowed",
            "have it cut at the yard, a little large, and trim it with a router along a long edge",
            *((f"a smaller case, or two: {length(room, reach)} at most",) if reach else ()),
        ),
    )


def _heavy(room: Room) -> Iterator[Breach]:
    """Without a circular saw: full sheets that have to go onto the table whole."""
    lift = room.spec.shop.lift
    used = {part.stock for part in room.parts}
    for key, goods in room.spec.stock.items():
        if not isinstance(goods, Sheet) or key not in used:
            continue
        size = goods.length_in_hand.value * goods.width_in_hand.value * goods.thickness.value
        weight = size * goods.density / 1_000_000_000
        if weight > lift:
            yield Breach(
                f"stock.{key}",
                f"a full sheet of {goods.title} weighs about {kilograms(room, weight)}, over the "
                f"{kilograms(room, lift)} one person lifts here, and without a circular saw it is "
                "not broken down on the floor",
                measured=kilograms(room, weight),
                limit=kilograms(room, lift),
                remedies=(
                    "a circular saw and a guide, bought or borrowed",
                    "have the yard cut it in two along the saw plan's first cut",
                    "a helper and stands before and behind the saw",
                ),
            )


RULE = Rule("larger than tools", Severity.CARE, __doc__ or "", "common practice", _examine)

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
from casewright.checks.sheet_weight import full_sheet_weight
from casewright.checks.words import length, lift_of, reckoning, style_of
from casewright.dims import Dim, greatest, joined, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["RULE"]

_NAME = "larger than tools"


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
    def along(part: Part) -> Dim:
        return part.blank.length if word == "rip" else part.blank.width

    part = max(parts, key=lambda each: along(each).value)
    own = reckoning(room, _NAME, part.path)
    size = joined(" x ", (own.length(dim) for dim in (part.blank.length, part.blank.width)))
    more = f" and {len(parts) - 1} more" if len(parts) > 1 else ""
    reach = _reach(room, own, word)
    near = "the fence opens" if word == "rip" else "the sled or the mitre saw reaches"
    first = tell("{} {}", near, own.length(reach)) if reach else "no saw with a fence"
    guide = own.given("shop.straightedge", room.spec.shop.straightedge)
    owned = (
        tell("the guide is {}", own.length(guide)) if saws.guide else "no circular saw is owned"
    )
    longer = tell(
        "a guide of {} and a little more: straightedge in [shop]", own.length(along(part))
    )
    most = max(saws.guide, reach.value if reach else saws.guide)
    return Breach(
        part.path,
        tell(
            "the {} of {}, {}{}: too large to {} here, {}, {}",
            part.title, part.case, size, more, word, first, owned,
        ),
        measured=size,
        limit=length(room, most),
        remedies=(
            longer if saws.guide else "a circular saw and a guide, bought or borrowed",
            "have it cut at the yard, a little large, and trim it with a router along a long edge",
            *((tell("a smaller case, or two: {} at most", own.length(reach)),) if reach else ()),
        ),
        own=own,
    )  # fmt: skip


def _reach(room: Room, own: Reckoning, word: str) -> Dim | None:
    """How far the fence opens, or the farther of sled and mitre saw; None: nothing is owned."""
    tools = room.spec.shop.tools
    table, mitre = tools.get("table saw"), tools.get("mitre saw")
    if word == "rip":
        reach = None if table is None else table.reach
        return own.given("shop.table_saw.reach", reach) if reach and reach.value else None
    found = [] if table is None else [style_of(room, own, "sled_reach")]
    if mitre is not None and mitre.reach is not None:
        found.append(own.given("shop.mitre_saw.reach", mitre.reach))
    found = [each for each in found if each.value]
    return greatest(*found) if found else None


def _heavy(room: Room) -> Iterator[Breach]:
    """Without a circular saw: full sheets that have to go onto the table whole."""
    used = {part.stock for part in room.parts}
    for key, goods in room.spec.stock.items():
        if not isinstance(goods, Sheet) or key not in used:
            continue
        size = goods.length.value * goods.width.value * goods.thickness.value
        if size * goods.density / 1_000_000_000 > room.spec.shop.lift:
            own = reckoning(room, _NAME, f"stock.{key}")
            weight = own.weight(full_sheet_weight(own, goods))
            most = own.weight(lift_of(room, own))
            yield Breach(
                f"stock.{key}",
                tell(
                    "a full sheet of {} weighs about {}, over the {} one person lifts here, and "
                    "without a circular saw it is not broken down on the floor",
                    goods.title, weight, most,
                ),
                measured=weight.text,
                limit=most.text,
                remedies=(
                    "a circular saw and a guide, bought or borrowed",
                    "have the yard cut it in two along the saw plan's first cut",
                    "a helper and stands before and behind the saw",
                ),
                own=own,
            )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

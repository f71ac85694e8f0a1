"""Parts longer or wider than any sheet or board they could come out of.

A part with a grain that shows lies with its length along the sheet's; one without may lie either
way. What the edges of a sheet lose to trimming is taken off first. Boards are judged by the
longest that is to be had; they are glued up to any width.

Passes
------
A bookcase 84 high out of sheets 96 long.

Fails
-----
A bookcase 104 high out of the same sheets.

Sources
-------
`common practice`. Sizes of sheets and boards are those of the job's stock, as measured where they
were; the edge that is trimmed is style 'sheet_trim'.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import Board, Sheet

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    trim = 2 * room.spec.style["sheet_trim"].value
    for part in room.parts:
        goods = room.spec.stock.get(part.stock)
        long, wide = part.blank.length.value, part.blank.width.value
        if isinstance(goods, Sheet):
            most = goods.length_in_hand.value - trim, goods.width_in_hand.value - trim
            turns = not (part.grain and goods.grain)
            if not _fits((long, wide), most) and not (turns and _fits((wide, long), most)):
                yield _breach(room, part, goods, most)
        elif isinstance(goods, Board):
            longest = max((each.value for each in goods.lengths), default=long) - goods.lost
            if long > longest:
                yield _breach(room, part, goods, (longest, wide))


def _fits(size: tuple[Fraction, Fraction], most: tuple[Fraction, Fraction]) -> bool:
    return size[0] <= most[0] and size[1] <= most[1]


def _breach(
    room: Room, part: Part, goods: Sheet | Board, most: tuple[Fraction, Fraction]
) -> Breach:
    own = part.blank.length.value, part.blank.width.value
    size = " x ".join(length(room, each) for each in own)
    room_there = " x ".join(length(room, each) for each in most)
    long, wide = (have - limit for have, limit in zip(own, most, strict=True))
    over = [f"{length(room, each)} too {word}" for each, word in ((long, "long"), (wide, "wide"))
            if each > 0]  # fmt: skip
    words = ((long, "shorter"), (wide, "narrower"))
    less = [f"{length(room, each)} {word}" for each, word in words if each > 0]
    by = f", {' and '.join(over)}" if over else ""
    return Breach(
        part.path,
        f"the {part.title} of {part.case}, {size}, is larger than any {goods.title}{by}",
        measured=size,
        limit=room_there if isinstance(goods, Sheet) else length(room, most[0]),
        remedies=(
            f"a part {' and '.join(less)}: a smaller case, or two"
            if less
            else "its grain the other way, or a smaller case",
            f"a sheet or board of {size} and more",
            "a joint in the part",
        ),
    )


RULE = Rule("larger than stock", Severity.STOP, __doc__ or "", "common practice", _examine)

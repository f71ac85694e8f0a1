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
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, Told, joined, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.stock import Board, Sheet

__all__ = ["RULE"]

_NAME = "larger than stock"
_WORDS = (("long", "shorter"), ("wide", "narrower"))


def _examine(room: Room) -> Iterator[Breach]:
    trim = 2 * room.spec.style["sheet_trim"].value
    for part in room.parts:
        goods = room.spec.stock.get(part.stock)
        long, wide = part.blank.length.value, part.blank.width.value
        if isinstance(goods, Sheet):
            most = goods.length_in_hand.value - trim, goods.width_in_hand.value - trim
            turns = not (part.grain and goods.grain)
            if not _fits((long, wide), most) and not (turns and _fits((wide, long), most)):
                yield _sheet(room, part, goods)
        elif isinstance(goods, Board):
            longest = max((each.value for each in goods.lengths), default=long) - goods.lost
            if long > longest:
                yield _board(room, part, goods)


def _fits(size: tuple[Fraction, Fraction], most: tuple[Fraction, Fraction]) -> bool:
    return size[0] <= most[0] and size[1] <= most[1]


def _sheet(room: Room, part: Part, goods: Sheet) -> Breach:
    own = reckoning(room, _NAME, part.path)
    stock = f"stock.{part.stock}"
    trim = 2 * style_of(room, own, "sheet_trim")
    long = own.given(f"{stock}.length", goods.length_in_hand) - trim
    wide = own.given(f"{stock}.width", goods.width_in_hand) - trim
    most = own.length(long, "longest"), own.length(wide, "widest")
    return _breach(own, part, goods, (long, wide), joined(" x ", most))


def _board(room: Room, part: Part, goods: Board) -> Breach:
    own = reckoning(room, _NAME, part.path)
    stock = f"stock.{part.stock}"
    longest = max(goods.lengths, key=lambda each: each.value)
    long = own.given(f"{stock}.longest", longest)
    if goods.trim is not None:
        long -= 2 * own.given(f"{stock}.trim", goods.trim)
    return _breach(own, part, goods, (long,), own.length(long, "longest").text)


def _breach(
    own: Reckoning, part: Part, goods: Sheet | Board, most: tuple[Dim, ...], limit: str
) -> Breach:
    sizes = part.blank.length, part.blank.width
    size = joined(" x ", (own.length(each) for each in sizes))
    over: list[Told] = []
    less: list[Told] = []
    for have, there, (over_word, less_word) in zip(sizes, most, _WORDS, strict=False):
        if have.value > there.value:
            by = own.length(have - there, f"too_{over_word}")
            over.append(tell("{} too {}", by, over_word))
            less.append(tell("{} {}", by, less_word))
    by_how_much = tell(", {}", joined(" and ", over)) if over else ""
    return Breach(
        part.path,
        tell(
            "the {} of {}, {}, is larger than any {}{}",
            part.title, part.case, size, goods.title, by_how_much,
        ),
        measured=size,
        limit=limit,
        remedies=(
            tell("a part {}: a smaller case, or two", joined(" and ", less))
            if less
            else "its grain the other way, or a smaller case",
            tell("a sheet or board of {} and more", size),
            "a joint in the part",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)

"""Sheets of one stock that differ in thickness, and are not sorted by case yet.

A dado, a rabbet or a groove takes one sheet's thickness. Where two sheets differ by more than the
style's `sheet_spread`, joints of one case that are cut with one setting fit some of its boards
and not others; so each case is best cut out of sheets that are alike.

Passes
------
Sheets read as 0.720 and 0.722.

Fails
-----
Sheets read as 0.720 and 0.703, in one stock.

Sources
-------
Common practice; how much is this house's own judgement.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Given, Origin, tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["RULE"]

_NAME = "sheets differ"


def _examine(room: Room) -> Iterator[Breach]:
    most = room.spec.style["sheet_spread"].value
    for key, goods in room.spec.stock.items():
        if not isinstance(goods, Sheet) or not goods.by_sheet:
            continue
        if f"stock.{key}.thickness" not in room.chain.nodes:
            continue
        readings = [value for _, value in goods.by_sheet]
        spread = max(readings) - min(readings)
        if spread > most:
            own = reckoning(room, _NAME, key)
            thin, thick = (
                own.given(
                    f"stock.{key}.{word}",
                    Given(size, Origin("measured", f"the {word} of its sheets, as read")),
                )
                for word, size in (("thinnest", min(readings)), ("thickest", max(readings)))
            )
            differ, allowed = own.let("spread", thick - thin), style_of(room, own, "sheet_spread")
            yield Breach(
                f"stock.{key}.thickness",
                tell(
                    "the sheets of {} are {} to {} thick, and reckoned with their mean",
                    goods.title, own.thickness(thin), own.thickness(thick),
                ),
                measured=own.thickness(differ).text,
                limit=own.thickness(allowed).text,
                remedies=("sort them by case: casewright sheets JOB",),
                own=own,
            )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)

"""Prices as they are typed: an amount of money, then whatever was noted with it."""

from __future__ import annotations

import re

__all__ = ["AMOUNT", "hundredths"]

AMOUNT = re.compile(
    r"(?P<before>[^\w\s]?) ?(?P<whole>\d{1,7})(?:(?P<point>[.,])(?P<part>\d{2}))?(?!\d|[.,/-]\d)"
)
"""An amount at the beginning of a text, in whatever money."""


def hundredths(price: str) -> int | None:
    """The amount that a price begins with, in hundredths of the money; None where it does not.

    Examples
    --------
    >>> hundredths("6.40, 3 May, the yard"), hundredths("7 each"), hundredths("ask")
    (640, 700, None)
    """
    found = AMOUNT.match(price)
    return None if found is None else int(found["whole"] + (found["part"] or "00"))

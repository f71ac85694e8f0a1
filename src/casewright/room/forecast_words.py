"""Forecasts in words: chances, causes, what a tool was found to stray by."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Cause, Unit, reading_text
from casewright.room.forecasts import Forecast
from casewright.shop import Shop

__all__ = [
    "cause_text",
    "chance_text",
    "fine_text",
    "main_text",
    "spread_text",
    "tool_text",
    "with_text",
]

_PER = (100, 1_000, 10_000)


def chance_text(chance: float) -> str:
    """A chance as so many in a round number: '14 in 100', '2 in 1,000', 'under 1 in 10,000'.

    Examples
    --------
    >>> chance_text(0.1406), chance_text(0.0018), chance_text(0.000_004)
    ('14 in 100', '2 in 1,000', 'under 1 in 10,000')
    """
    if not chance:
        return "none"
    for per in _PER:
        count = round(chance * per)
        if count >= (1 if per == _PER[-1] else 2):
            return f"{count} in {per:,}"
    return f"under 1 in {_PER[-1]:,}"


def cause_text(cause: Cause) -> str:
    """What a deviation comes from: 'the setting of sink doors width (table saw)'."""
    key, tool = cause.key, f" ({cause.tool})" if cause.tool else ""
    if key.startswith(("offset of ", "hook of ")):
        return f"the {key}, one for all that it made or read"
    if key.startswith(("setting ", "reading of ")):
        return f"the {key.replace('setting ', 'setting of ')}{tool}"
    if key.startswith("stock."):
        read = key.removesuffix(".measured")
        unread = f"{key}, not read yet: sheets differ from their label"
        return f"the reading of {read}{tool}" if read != key else unread
    if key.endswith(".thickness"):
        return f"{key} within its sheet"
    if key.endswith(".clear_width"):
        return f"how the pieces at {key} shift as they are put together"
    return f"{key}, each by itself{tool}"


def main_text(forecast: Forecast) -> str:
    """The cause that contributes most, with its share; empty where nothing strays."""
    main = forecast.main
    if main is None:
        return ""
    return f"{round(100 * forecast.main_share)} % {cause_text(main.cause)}"


def fine_text(size: Fraction, unit: Unit) -> str:
    """How far something strays, to what a calliper shows: '0.008"', '0.2 mm'."""
    return reading_text(size, unit, calliper=True, with_unit=True).removeprefix("~")


def spread_text(forecast: Forecast, unit: Unit) -> str:
    """How far a gap strays, one standard deviation: '0.018"', with what is systematic."""
    found = forecast.slack
    words = fine_text(Fraction(found.sigma_mm), unit)
    if found.bias_mm:
        off = fine_text(Fraction(found.bias_mm), unit)
        words += f" about a middle that may be {off} off"
    return words


def with_text(tool: str) -> str:
    """How a thing is read: 'with a steel rule, off two sticks slid apart in it'."""
    if tool == "steel rule":
        return "with a steel rule, off two sticks slid apart in it"
    return f"with a {tool}"


def tool_text(shop: Shop, kind: str, unit: Unit) -> str:
    """What the shop's own readings show of a tool; empty while there are too few."""
    tool = next((tool for tool in shop.tools.values() if tool.kind == kind), None)
    known = tool.learned if tool else None
    if tool is None or known is None:
        return ""
    strays, said = (fine_text(size, unit) for size in (known.sigma, tool.sigma))
    of = "things that you read twice" if known.is_twice else "of your pieces that were read"
    words = f"{kind}: {known.count} {of} stray by {strays}"
    if known.offset:
        way = "over" if known.offset > 0 else "under"
        off = fine_text(abs(known.offset), unit)
        words += f" about a middle {off} {way} their numbers"
    return f"{words}; {'the job says' if tool.is_stated else 'taken instead of the usual'} {said}"

"""What a reading is compared with before it is believed."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Chain, Dim, Origin, Unit, shop_text, slack
from casewright.facts import Fact, Facts
from casewright.job.mix_ups import mix_up
from casewright.job.reasons import reasons
from casewright.room.build import build
from casewright.room.model import Room
from casewright.survey.slips import meant
from casewright.survey.survey import survey

__all__ = ["allowed_off", "doubt", "expected", "settles_doubt"]

_LEAST = Fraction(1)
"""What no reading is questioned for [mm]: a tape that lies a little askew."""

_COVER = 2


def expected(room: Room, path: str, facts: Facts) -> Room:
    """The room as it would be without what was read or cut of one number itself.

    Parameters
    ----------
    facts
        Those the room was built with, besides the file's own.
    """
    if path not in facts:
        return room
    return build(room.spec, {each: fact for each, fact in facts.items() if each != path})


def settles_doubt(room: Room, path: str, value: Fraction, facts: Facts) -> bool:
    """Whether a reading of the room puts right what was asked to be read again.

    What was doubted is no measure for the reading in its place: the other readings are.

    Parameters
    ----------
    value
        As read [mm].
    facts
        Those the room was built with, besides the file's own.
    """
    if not any(path in each.paths for each in room.survey.doubts):
        return False
    # As a size that nobody has read on the thing: such a one would pass for read once more.
    instead = Fact(Origin("measured", ""), cut=value)
    after = survey(Chain({**facts, path: instead}), room.spec.survey, room.spec.unit)
    return not any(path in each.paths for each in after.doubts)


def doubt(room: Room, path: str, value: Fraction, u: Fraction | None) -> str:
    """Why a reading is hard to believe, in words; empty when it is as expected.

    Parameters
    ----------
    room
        Without facts of this very number; see `expected`.
    value
        As read [mm].
    u
        Its standard uncertainty [mm].
    """
    dim = room.chain.nodes[path]
    unit = room.spec.unit
    strays = slack(dim).worst
    allowed = allowed_off(strays, u)
    off = value - dim.value
    if abs(off) <= allowed:
        return ""
    way = "over" if off > 0 else "under"
    says = (
        f"{path} {shop_text(value, unit)} is {_rough(abs(off), unit)} {way} "
        f"{shop_text(dim.value, unit)}, {_compared(room, dim)}"
    )
    if strays:
        says += f"; that may be off by {_rough(strays, unit)} at the most"
    slip = meant(value, dim.value, allowed, unit)
    if slip is not None:
        return f"{says}; {slip.because}? Then it is {shop_text(slip.value, unit)}"
    other = mix_up(room, path, value, allowed)
    return f"{says}; {other}?" if other else says


def allowed_off(strays: Fraction, u: Fraction | None) -> Fraction:
    """How far a reading may lie off its number before it is asked about [mm].

    Parameters
    ----------
    strays
        How far the number itself may be off at the most [mm].
    u
        Standard uncertainty of the reading [mm].
    """
    return max(strays + _COVER * (u or 0), _LEAST)


def _compared(room: Room, dim: Dim) -> str:
    first = reasons(room, dim.path)[0]
    if dim.args and first.formula:
        return f"which follows from {first.formula}"
    origin = dim.origin
    if origin is None:
        return "the number so far"
    words = ", ".join(word for word in (origin.note, origin.where) if word)
    return f"the number so far ({origin.kind}: {words})" if words else "the number so far"


def _rough(size: Fraction, unit: Unit) -> str:
    return shop_text(size, unit, with_unit=True).removeprefix("~")

"""Kitchens along a wall and round a corner: sink, range, refrigerator; a wall with outlets."""

from __future__ import annotations

from functools import cache

from tests.jobs import read
from tests.unit.checks.surveyed_rooms import before_wall

from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["kitchen", "round_the_corner", "wired"]

BLIND = 'blind = "right"\n'
_HEAD = (
    'format = 1\nunit = "in"\n[appliance.range]\nwidth = 30\ncooks = true\n'
    "[appliance.cold]\nwidth = 36\nheight = 70\ncools = true\n"
    '[case.sink]\nkind = "base"\nwidth = 33\nsink = true\n'
)


def _base(key: str, width: int, more: str = "") -> str:
    return f'[case.{key}]\nkind = "base"\nwidth = {width}\n{more}'


@cache
def kitchen(*widths: int, more: str = "", cold: str = "", deep: str = "") -> Room:
    """Along a wall: a base, the sink, a base, the range, a base, the refrigerator [in].

    Parameters
    ----------
    widths
        Of the three bases.
    more, cold, deep
        Other sections; more of the refrigerator; more of each base.
    """
    bases = "".join(_base(key, width, deep) for key, width in zip("abc", widths, strict=True))
    wall = sum(widths) + 33 + 30 + 36
    head = _HEAD.replace("cools = true\n", f"cools = true\n{cold}")
    return build(
        read(
            f"{head}{bases}[wall.w]\nwidth = {wall}\n"
            '[run.r]\ncases = ["a", "sink", "b", "range", "c", "cold"]\non = "w"\n'
            f'left = "open"\nright = "open"\n{more}'
        )
    )


@cache
def round_the_corner() -> Room:
    """A base of 36, the sink and a blind base up to a square corner; round it a base and more."""
    return build(
        read(
            f"{_HEAD}{_base('a', 36)}{_base('b', 36)}{_base('k', 43, BLIND)}"
            "[wall.w]\nwidth = 115\n[wall.n]\nwidth = 160\n"
            '[corner.c]\nwalls = ["w", "n"]\n[run.r]\ncases = ["a", "sink", "k"]\non = "w"\n'
            'left = "open"\n[run.s]\ncases = ["b", "range", "cold"]\non = "n"\n'
            'left = "corner"\nright = "open"\n'
        )
    )


def wired(bottom: str, *, other: str = "", more: str = "") -> Room:
    """A wall case before a wall of 100, an outlet near either end [in].

    Parameters
    ----------
    bottom, other
        Of the two outlets; both alike where nothing is said of the other.
    more
        What else is told of the wall.
    """
    one, two = (
        f'[wall.w.fixed.{key}]\nkind = "outlet"\ncentre = {at}\nbottom = {high}\n'
        for key, at, high in (("one", 2, bottom), ("two", 98, other or bottom))
    )
    return before_wall("wall", f"{more}{one}{two}")

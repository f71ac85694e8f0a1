"""Which saw makes a cut: the shop's reach, and what is safe."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.cutting.solution import Direction

__all__ = ["Caution", "Limits", "Method", "Sawing", "choose_method", "is_over"]

Method = Literal["straightedge", "fence", "carrier", "sled"]
"""How a cut is made.

straightedge: circular saw along a clamped guide, the piece lying on foam. fence: table saw, the
datum edge against the rip fence. carrier: table saw, the piece held on a carrier that rides the
fence. sled: table saw or crosscut saw, the datum end against a stop.
"""

Caution = Literal[
    "heavy", "beyond fence", "wide against fence", "short along fence", "narrow rip",
    "too wide for sled", "long crosscut", "short piece", "beyond straightedge",
]  # fmt: skip
"""Why an easier method was passed over, or what needs care with the chosen one.

heavy: more than one person handles at the saw. beyond fence: wider than the fence opens. wide
against fence: the edge along the fence is shorter than the piece is wide. short along fence: too
short an edge for the fence. narrow rip: the hand would pass too near the blade. too wide for
sled: the cut is longer than the sled's reach. long crosscut: the piece hangs off the sled.
short piece: too short to hold at the stop. beyond straightedge: longer than the guide.
"""


@dataclass(frozen=True, slots=True)
class Limits:
    """What the shop can do, in the problem's unit; None or 0: no limit.

    Parameters
    ----------
    rip_capacity
        Widest setting of the fence.
    crosscut_capacity
        Longest cut of the sled: the widest piece it carries across.
    straightedge
        Longest guide.
    lift_area
        Largest face of a piece that one person handles at the saw [unit squared]: what one
        lifts, divided by the stock's weight for each unit of area.
    narrowest_rip
        Narrowest piece ripped by hand between blade and fence, and shortest held at a stop.
    shortest_on_fence
        Shortest edge that may ride the fence.
    longest_on_sled
        Longest piece carried across without support.
    """

    rip_capacity: int | None = None
    crosscut_capacity: int | None = None
    straightedge: int | None = None
    lift_area: int | None = None
    narrowest_rip: int = 0
    shortest_on_fence: int = 0
    longest_on_sled: int | None = None


@dataclass(frozen=True, slots=True)
class Sawing:
    """One cut to be made.

    Parameters
    ----------
    direction
        Rip or crosscut.
    setting
        From the datum edge to the blade [unit].
    along
        Length of the cut [unit].
    across
        Size of the piece at right angles to the cut [unit].
    """

    direction: Direction
    setting: int
    along: int
    across: int


def choose_method(cut: Sawing, limits: Limits) -> tuple[Method, tuple[Caution, ...]]:
    """The first method that is within reach and safe, and the cautions that go with it.

    Rips go to the fence before the sled, crosscuts to the sled before the fence; what neither can
    do safely is done with the straightedge.
    """
    if is_over(cut.along * cut.across, limits.lift_area):
        return "straightedge", ("heavy", *_guide(cut, limits))
    fence, sled = tuple(_fence_faults(cut, limits)), tuple(_sled_faults(cut, limits))
    order = (fence, sled) if cut.direction == "rip" else (sled, fence)
    if order[0] and order[1]:
        return "straightedge", (*order[0], *order[1], *_guide(cut, limits))
    passed_over = order[0]
    small = cut.setting < limits.narrowest_rip
    if not fence and (cut.direction == "rip" or sled):
        return ("carrier", (*passed_over, "narrow rip")) if small else ("fence", passed_over)
    return "sled", (*passed_over, "short piece") if small else passed_over


def is_over(value: int, limit: int | None) -> bool:
    """Whether a value passes a limit, if there is one."""
    return limit is not None and value > limit


def _fence_faults(cut: Sawing, limits: Limits) -> list[Caution]:
    faults: list[Caution] = []
    if is_over(cut.setting, limits.rip_capacity):
        faults.append("beyond fence")
    if cut.along < cut.setting:
        faults.append("wide against fence")
    if cut.along < limits.shortest_on_fence:
        faults.append("short along fence")
    return faults


def _sled_faults(cut: Sawing, limits: Limits) -> list[Caution]:
    faults: list[Caution] = []
    if is_over(cut.along, limits.crosscut_capacity):
        faults.append("too wide for sled")
    if is_over(cut.across, limits.longest_on_sled):
        faults.append("long crosscut")
    return faults


def _guide(cut: Sawing, limits: Limits) -> tuple[Caution, ...]:
    return ("beyond straightedge",) if is_over(cut.along, limits.straightedge) else ()

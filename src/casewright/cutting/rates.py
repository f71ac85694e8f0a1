"""What handling and setting up cost, in whole hundredths of a minute."""

from __future__ import annotations

from dataclasses import dataclass, field

from casewright.cutting.methods import Limits

__all__ = ["Load", "Rates", "WorkModel"]


@dataclass(frozen=True, slots=True)
class Load:
    """From which size of face a piece is heavy, in the problem's unit squared; None: never.

    Parameters
    ----------
    full
        A lift like that of a full sheet: over about 18 kg.
    half
        A lift like that of half a sheet: over about 9 kg.
    """

    full: int | None = None
    half: int | None = None


@dataclass(frozen=True, slots=True)
class Rates:
    """Work of each thing a plan asks for [hundredths of a minute]; own defaults, all editable.

    Parameters
    ----------
    full_lift, half_lift
        Handling a piece over the sizes of `load` once.
    fence, stop
        Setting the rip fence, or a stop, and checking it on the first piece.
    guide
        Marking out and clamping the straightedge for one cut.
    cut
        One cut.
    reach
        Sawing along `reach_length` units; 0: not counted.
    reach_length
        See `reach` [unit].
    label
        Marking one part.
    turn
        Turning a piece for a cut the other way.
    split_group
        Each further setting over which parts that belong together are spread.
    flip
        A group whose parts lie in both directions of the grain.
    lost_datum
        A sheet along or across which no part begins at an edge as bought.
    hour
        What an hour of the person is worth, in the money of the stock's prices; 0: money is not
        weighed against time.
    kept_share
        Worth of an offcut that is kept, in hundredths of what its area cost.
    """

    full_lift: int = 400
    half_lift: int = 200
    fence: int = 150
    stop: int = 100
    guide: int = 250
    cut: int = 30
    reach: int = 0
    reach_length: int = 1
    label: int = 40
    turn: int = 50
    split_group: int = 1000
    flip: int = 500
    lost_datum: int = 667
    hour: int = 0
    kept_share: int = 40


@dataclass(frozen=True, slots=True)
class WorkModel:
    """What work at the saw is reckoned by.

    Parameters
    ----------
    limits
        What the shop can do.
    rates
        What each thing costs.
    load
        What is heavy.
    """

    limits: Limits = field(default_factory=Limits)
    rates: Rates = field(default_factory=Rates)
    load: Load = field(default_factory=Load)

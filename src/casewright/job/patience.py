"""How long a search may go on: counted work, a time, or until someone has waited enough."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import Enum

from casewright.cutting.engine import Stop

__all__ = ["USUAL_WORK", "Ending", "Patience"]

USUAL_WORK = 200_000
"""Places that are tried for the fewest sheets unless asked otherwise."""


class Ending(Enum):
    """Why a search ended."""

    CONTENT = "content"
    TIME = "time"
    ASKED = "asked"


def _never() -> bool:
    return False


@dataclass(frozen=True, slots=True)
class Patience:
    """When to be content.

    Parameters
    ----------
    work
        Places tried for the fewest sheets. Alone, it gives the same plan on any machine.
    seconds
        Searching takes about so long at the most, counted from now; what is found then depends on
        the machine. None: as long as the work takes [s].
    asked
        Tells when someone wants the best plan so far.
    clock
        Tells the time [s].
    """

    work: int = USUAL_WORK
    seconds: float | None = None
    asked: Callable[[], bool] = _never
    clock: Callable[[], float] = time.monotonic
    began: float = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "began", self.clock())

    @property
    def spent(self) -> float:
        """Time since the beginning [s]."""
        return self.clock() - self.began

    def left(self, share: float = 1) -> float:
        """What is left of a share of the time; None asked for: no end of it [s]."""
        return float("inf") if self.seconds is None else self.seconds * share - self.spent

    def stop(self, nodes: int, share: float = 1, spare: float = 0) -> Stop:
        """A stop after so many places, at the end of a share of the time, or when asked.

        `spare` [s] is wanted for what comes after it.
        """
        return Stop(nodes, lambda: self.asked() or min(self.left(share), self.left() - spare) <= 0)

    @property
    def is_over(self) -> bool:
        """Whether nothing more should be looked for."""
        return self.asked() or self.left() <= 0

    @property
    def ending(self) -> Ending:
        """Why a search that ends now does so."""
        if self.asked():
            return Ending.ASKED
        return Ending.TIME if self.left() <= 0 else Ending.CONTENT

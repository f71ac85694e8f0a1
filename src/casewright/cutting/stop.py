"""When a search is to be content."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

__all__ = ["Stop"]


@dataclass(frozen=True, slots=True)
class Stop:
    """When to be content: after so many places have been tried. A first plan is always made.

    Parameters
    ----------
    nodes
        Places tried; where many are tried at once, some dozens count as one.
    asked
        Tells when someone wants the best plan so far, now. This alone can make the plan depend
        on the machine's speed; None: nobody asks.
    """

    nodes: int = 200_000
    asked: Callable[[], bool] | None = None

    def reached(self, nodes: int) -> bool:
        """Whether that many are enough."""
        return nodes >= self.nodes or self.is_asked()

    def is_asked(self) -> bool:
        """Whether someone wants the best plan so far."""
        return self.asked is not None and self.asked()

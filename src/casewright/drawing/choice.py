"""One thing that may be drawn in several places: the first that lies clear is taken."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.drawing.marks import Group
from casewright.drawing.shapes import Element
from casewright.drawing.taken import Taken

__all__ = ["Choice"]

_CLEAR = 0.05  # cost under which a place counts as clear [-]
_LATER = 0.02  # cost of each step down the list [-]


@dataclass(frozen=True, slots=True)
class Choice:
    """Lettering that may stand in more than one place.

    What has only one place is drawn first; choices follow in the order of the scene, each in the
    first of its places that lies clear of everything drawn before it. When none does, the one
    that covers least is taken. So the more a thing is bound to its place, the earlier it comes.

    Parameters
    ----------
    options
        Its places, the best first; each is one or more elements. At least one.
    """

    options: Sequence[Sequence[Element]]

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """Its first place, for who draws it alone."""
        return _groups(self.options[0], scale)

    def settled(self, scale: Fraction, taken: Taken) -> tuple[Group, ...]:
        """Its marks at the best place that is left."""
        best: tuple[Group, ...] = ()
        least = float("inf")
        for step, option in enumerate(self.options):
            groups = _groups(option, scale)
            cost = taken.cost(groups)
            if cost <= _CLEAR:
                return groups
            if cost + step * _LATER < least:
                best, least = groups, cost + step * _LATER
        return best


def _groups(elements: Sequence[Element], scale: Fraction) -> tuple[Group, ...]:
    return tuple(group for element in elements for group in element.groups(scale))

"""One thing that may be drawn in several places: the first that lies clear is taken."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import count

from casewright.drawing.marks import Group
from casewright.drawing.shapes import Element
from casewright.drawing.taken import Taken

__all__ = ["Choice"]

_CLEAR = 0.05  # cost under which a place counts as clear [-]
_LATER = 0.02  # cost of each step down the list [-]


class Choice:
    """Lettering that may stand in more than one place.

    What has only one place is drawn first; choices follow in the order of the scene, each in the
    first of its places that lies clear of everything drawn before it. When none does, the one
    that covers least is taken. So the more a thing is bound to its place, the earlier it comes.

    Parameters
    ----------
    options
        Its places, the best first; each is one or more elements. At least one. They are asked for
        one by one, and only as far as needed.
    hides_lines
        Whether lines may run under it: a filled ring on what is only drawn, not dimensioned.
    """

    def __init__(self, options: Iterable[Sequence[Element]], *, hides_lines: bool = False) -> None:
        self.hides_lines = hides_lines
        self._seen: list[Sequence[Element]] = []
        self._more = iter(options)

    @property
    def options(self) -> Iterator[Sequence[Element]]:
        """Its places, the best first."""
        for number in count():
            if number == len(self._seen):
                following = next(self._more, None)
                if following is None:
                    return
                self._seen.append(following)
            yield self._seen[number]

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """Its first place, for who draws it alone."""
        return [group for element in next(self.options) for group in element.groups(scale)]

    def settled(self, scale: Fraction, taken: Taken) -> tuple[Group, ...]:
        """Its marks at the best place that is left."""
        best: tuple[Group, ...] = ()
        least = float("inf")
        for step, option in enumerate(self.options):
            groups: list[Group] = []
            later = step * _LATER
            drawn = _drawn(option, scale, groups)
            cost = taken.cost(drawn, max(_CLEAR, least - later), over_lines=self.hides_lines)
            if cost <= _CLEAR:
                return tuple(groups)
            if cost + later < least:
                best, least = tuple(groups), cost + later
        return best


def _drawn(elements: Sequence[Element], scale: Fraction, kept: list[Group]) -> Iterator[Group]:
    """Elements as groups, each only when it is asked for: most places are refused at once."""
    for element in elements:
        for group in element.groups(scale):
            kept.append(group)
            yield group

"""Where the appliances of a wall go: nothing is hung there, and their room is marked too."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.room.model import Appliance
from casewright.survey.walls import SurveyedWall

__all__ = ["AppliancePlace", "appliances_on"]


@dataclass(frozen=True, slots=True)
class AppliancePlace:
    """The room that a run leaves for an appliance.

    Parameters
    ----------
    left, right
        From the wall's left end [mm].
    top
        How high it stands above the floor [mm].
    """

    appliance: Appliance
    left: Dim
    right: Dim
    top: Dim

    @property
    def title(self) -> str:
        """Its name."""
        return self.appliance.spec.title


def appliances_on(
    numbers: Numbers, wall: SurveyedWall, places: Iterable[WallPlace]
) -> tuple[AppliancePlace, ...]:
    """What the runs of a wall leave room for, from left to right."""
    own = numbers.wall(wall.spec.key)
    found: dict[str, AppliancePlace] = {}
    for place in places:
        run = place.run
        start = run.starts[run.cases.index(place.case)]
        for each in run.appliances:
            if each.spec.key in found:
                continue
            named = own.at(run.spec.key).at(each.spec.key)
            left = named.let("left", place.left - start + each.start)
            right = named.let("right", left + each.width)
            high = each.spec.height
            top = named.enter("top", high.value, high.origin)
            found[each.spec.key] = AppliancePlace(each, left, right, top)
    return tuple(sorted(found.values(), key=lambda each: each.left.value))

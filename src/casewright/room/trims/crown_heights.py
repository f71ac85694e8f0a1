"""Heights under the ceiling: cases, frieze and crown, from the lowest ceiling down."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.house import House
from casewright.dims import Dim, Place, Way
from casewright.room.specs import RunSpec
from casewright.room.trims.specs import CrownSpec
from casewright.survey.survey import Survey

__all__ = ["CrownHeights", "ceiling_over", "crown_heights", "height_under_crown"]


@dataclass(frozen=True, slots=True)
class CrownHeights:
    """Where a crown stands, above the highest floor [mm].

    Parameters
    ----------
    cases_top
        Upper end of the cases.
    frieze
        From there to the crown's foot; below 0 where the crown would lap over the cases.
    top
        Upper edge of the crown.
    """

    cases_top: Dim
    frieze: Dim
    top: Dim


def ceiling_over(house: House, run: RunSpec, measured: Survey) -> Dim:
    """The lowest ceiling over a run, above the highest floor: as read, else the style's."""
    wall = measured.walls.get(run.on)
    if wall is not None and wall.clear is not None:
        return wall.clear
    return measured.clear if measured.clear is not None else house.style_dim("ceiling")


def height_under_crown(house: House, run: RunSpec, spec: CrownSpec, measured: Survey) -> Dim:
    """How high the cases of a run are that reach up to its crown.

    The lowest ceiling less crown, frieze and the height that the cases hang at: counter and the
    space over it. Down on the cutting grid; the rest goes into the frieze.
    """
    place = house.chain.place(f"run.{run.key}.crown")
    known = house.chain.nodes.get(f"{place.path}.case_height")
    if known is not None:
        return known
    drop = place.given("drop", spec.drop)
    frieze = _wished(house, place, spec)
    free = ceiling_over(house, run, measured) - drop - frieze - house.style_dim("wall_bottom")
    step = house.style_dim("cut_step").value
    if not step:
        return place.let("case_height", free)
    height, _ = place.rounded("case_height", free, step, Way.DOWN)
    return height


def crown_heights(
    house: House, run: RunSpec, spec: CrownSpec, cases_top: Dim, ceiling: Dim
) -> CrownHeights:
    """Where the crown over cases of known height stands.

    To the ceiling the frieze takes up what is left; else it is as high as wished.

    Parameters
    ----------
    ceiling
        The lowest over the run, and over those that its crown goes on along at one height [mm].
    """
    place = house.chain.place(f"run.{run.key}.crown")
    drop = house.chain.nodes.get(f"{place.path}.drop") or place.given("drop", spec.drop)
    if spec.to_ceiling:
        top = ceiling
        frieze = place.let("frieze", top - cases_top - drop)
    else:
        frieze = place.let("frieze", _wished(house, place, spec))
        top = cases_top + frieze + drop
    return CrownHeights(cases_top, frieze, place.let("top", top))


def _wished(house: House, place: Place, spec: CrownSpec) -> Dim:
    if spec.frieze is None:
        return house.style_dim("frieze")
    known = house.chain.nodes.get(f"{place.path}.wished_frieze")
    return known or place.given("wished_frieze", spec.frieze)

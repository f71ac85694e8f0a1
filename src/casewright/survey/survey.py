"""The room as measured, joined: walls, corners, the worst of all, what is doubtful."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.dims import Chain, Dim, Unit, least
from casewright.survey.corner_doubts import corner_doubts
from casewright.survey.corners import SurveyedCorner, survey_corner
from casewright.survey.doubts import Doubt, wall_doubts
from casewright.survey.place_doubts import place_doubts
from casewright.survey.readings import enter_reading
from casewright.survey.specs import SurveySpec
from casewright.survey.walls import SurveyedWall, survey_wall

__all__ = ["Survey", "survey"]


@dataclass(frozen=True, slots=True)
class Survey:
    """The room as measured.

    Parameters
    ----------
    walls, corners
        By key.
    floor, ceiling
        From the level line, which is one for the whole room, down to the highest floor and up to
        the lowest ceiling [mm]; None: not read.
    clear
        From the highest floor to the lowest ceiling [mm]; None: not read.
    way_in
        Clear sizes of each passage by `<passage>.<size>` [mm].
    doubts
        Readings that cannot all be right.
    """

    spec: SurveySpec
    walls: Mapping[str, SurveyedWall]
    corners: Mapping[str, SurveyedCorner]
    floor: Dim | None
    ceiling: Dim | None
    clear: Dim | None
    way_in: Mapping[str, Dim]
    doubts: tuple[Doubt, ...]


def survey(chain: Chain, spec: SurveySpec, unit: Unit) -> Survey:
    """Enter all readings of a room, and judge them.

    Parameters
    ----------
    chain
        Of the job: facts it knows replace readings.
    unit
        In which doubts are told.
    """
    walls = {wall.key: survey_wall(chain, wall) for wall in spec.walls}
    corners = {corner.key: survey_corner(chain, corner, walls) for corner in spec.corners}
    doubts = [
        doubt
        for wall in walls.values()
        for doubt in (*wall_doubts(wall, unit), *place_doubts(wall, unit))
    ]
    doubts.extend(corner_doubts(spec, corners))
    place = chain.place("survey")
    floors = [wall.floor for wall in walls.values() if wall.floor is not None]
    ceilings = [wall.ceiling for wall in walls.values() if wall.ceiling is not None]
    clears = [wall.clear for wall in walls.values() if wall.clear is not None]
    floor = place.let("floor", least(*floors)) if floors else None
    ceiling = place.let("ceiling", least(*ceilings)) if ceilings else None
    if floor is not None and ceiling is not None:
        clears.append(floor + ceiling)
    way_in: dict[str, Dim] = {}
    for passage in spec.way_in:
        own = place.at("way_in").at(passage.key)
        for name in ("width", "height", "landing"):
            reading = getattr(passage, name)
            if reading is not None:
                way_in[f"{passage.key}.{name}"] = enter_reading(own, name, reading)
    return Survey(
        spec=spec,
        walls=walls,
        corners=corners,
        floor=floor,
        ceiling=ceiling,
        clear=place.let("clear", least(*clears)) if clears else None,
        way_in=way_in,
        doubts=tuple(doubts),
    )

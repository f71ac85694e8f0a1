"""`survey --json`: the room as measured, as data."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from casewright.dims import Dim, Unit, length_json
from casewright.job.documents import head_json
from casewright.job.surveying import survey_sheets, walls_to_survey
from casewright.packet.corner_table import next_of_corners
from casewright.room.model import Room
from casewright.survey.angles import angle_of
from casewright.survey.corners import SurveyedCorner
from casewright.survey.doubts import Doubt
from casewright.survey.walls import SurveyedWall, readings_of

__all__ = ["survey_json"]

_Json = dict[str, Any]


def survey_json(room: Room) -> _Json:
    """Walls with their readings and what counts of them, corners, doubts."""
    unit = room.spec.unit
    sheets = {sheet.key: sheet for sheet in survey_sheets(room)}
    next_ = next_of_corners(room.survey, unit)
    return {
        **head_json("survey", room.spec),
        "walls": [
            {
                **_wall(wall, unit),
                "missing": list(sheets[wall.spec.key].missing),
                "next": sheets[wall.spec.key].next_reading or None,
            }
            for wall in walls_to_survey(room)
        ],
        "corners": [
            {**_corner(corner), "next": next_.get(corner.spec.key)}
            for corner in room.survey.corners.values()
        ],
        "doubts": [_doubt(doubt) for doubt in room.survey.doubts],
    }


def _length(dim: Dim | None, unit: Unit) -> _Json | None:
    return None if dim is None else {**length_json(dim.value, unit), "path": dim.path}


def _wall(wall: SurveyedWall, unit: Unit) -> _Json:
    return {
        "wall": wall.spec.key,
        "title": wall.spec.title,
        "width": _length(wall.width, unit),
        "floor": _length(wall.floor, unit),
        "ceiling": _length(wall.ceiling, unit),
        "clear": _length(wall.clear, unit),
        "fall": _length(wall.fall, unit),
        "fixed": [
            {
                "thing": thing.spec.key,
                "kind": thing.spec.kind,
                "left": _length(thing.left, unit),
                "right": _length(thing.right, unit),
                "bottom": _length(thing.bottom, unit),
                "top": _length(thing.top, unit),
                "built": thing.spec.built,
            }
            for thing in wall.things
        ],
        "readings": list(_readings(wall, unit)),
    }


def _readings(wall: SurveyedWall, unit: Unit) -> Iterator[_Json]:
    for name, reading in readings_of(wall.spec):
        dim = wall.read[name]
        origin = dim.origin or reading.given.origin
        cause = dim.causes[0] if dim.causes else None
        yield {
            "size": _length(dim, unit),
            "tool": origin.note,
            "where": origin.where,
            "within": None if cause is None else length_json(cause.limit, unit),
            "sure": reading.sure or dim.built is not None,
        }


def _corner(corner: SurveyedCorner) -> _Json:
    angle = None if corner.cosine is None else angle_of(corner.cosine)
    return {
        "corner": corner.spec.key,
        "title": corner.spec.title,
        "walls": [corner.spec.left, corner.spec.right],
        "degrees": None if angle is None else round(angle.degrees, 3),
        "within_degrees": None if angle is None else round(2 * angle.sigma_degrees, 3),
    }


def _doubt(doubt: Doubt) -> _Json:
    return {"paths": list(doubt.paths), "says": doubt.says, "again": doubt.again}

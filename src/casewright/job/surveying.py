"""The survey of a job: what counts, what is doubtful or missing, and the form to print."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from casewright.dims import Chain, size_text
from casewright.job.collector import collector_at_rest
from casewright.job.fingerprint import fingerprint
from casewright.outputs.pdf import pdf_bytes
from casewright.packet.survey_pages import (
    advice_on,
    has_doubtful_width,
    survey_document,
)
from casewright.room.model import Room
from casewright.room.specs import RunSpec
from casewright.survey.doubts import Doubt
from casewright.survey.form import missing, survey_form
from casewright.survey.readings import Reading
from casewright.survey.specs import WallSpec, WidthReading
from casewright.survey.walls import SurveyedWall, survey_wall

__all__ = ["SURVEY_NAME", "SurveySheet", "survey_files", "survey_sheets", "walls_to_survey"]

SURVEY_NAME = "survey.pdf"


@dataclass(frozen=True, slots=True)
class SurveySheet:
    """What is to be said of one wall.

    Parameters
    ----------
    key, title
        Of the wall.
    counts
        The worst readings in their direction, in words.
    doubts
        Readings that cannot all be right.
    missing
        What was not read yet, in words.
    next_reading
        The further reading that would cut the risk most, in words; empty for none.
    """

    key: str
    title: str
    counts: tuple[str, ...]
    doubts: tuple[Doubt, ...]
    missing: tuple[str, ...]
    next_reading: str


def walls_to_survey(room: Room) -> tuple[SurveyedWall, ...]:
    """The walls of the survey; where there are none, one for each run, or a bare one."""
    if room.survey.walls:
        return tuple(room.survey.walls.values())
    specs = [_wall_of(room, run) for run in room.spec.runs] or [WallSpec("wall", "Wall")]
    return tuple(survey_wall(Chain(), spec) for spec in specs)


def _wall_of(room: Room, run: RunSpec) -> WallSpec:
    accuracy = room.spec.survey.next_accuracy
    widths = tuple(WidthReading(Reading(given, accuracy)) for given in run.widths)
    return WallSpec(run.key, run.title, widths)


def survey_sheets(room: Room) -> tuple[SurveySheet, ...]:
    """What is to be said of each wall."""
    return tuple(_sheet(room, wall) for wall in walls_to_survey(room))


def _sheet(room: Room, wall: SurveyedWall) -> SurveySheet:
    unit, path = room.spec.unit, f"{wall.place.path}."
    return SurveySheet(
        key=wall.spec.key,
        title=wall.spec.title,
        counts=tuple(_counts(room, wall)),
        doubts=tuple(d for d in room.survey.doubts if d.paths[0].startswith(path)),
        missing=tuple(missing(survey_form(wall, unit), unit)),
        next_reading=advice_on(room, wall),
    )


def _counts(room: Room, wall: SurveyedWall) -> Iterator[str]:
    unit = room.spec.unit
    in_doubt = has_doubtful_width(room, wall)
    if in_doubt:
        yield "width in doubt"
    for words, dim in (
        ("narrowest width", None if in_doubt else wall.width),
        ("highest floor to lowest ceiling", wall.clear),
        ("fall of the floor", wall.fall),
    ):
        if dim is not None:
            yield f"{words} {size_text(dim.value, unit)}"


def survey_files(room: Room) -> Mapping[str, bytes]:
    """The survey's only file: a form for each wall."""
    with collector_at_rest():
        document = survey_document(room, walls_to_survey(room), fingerprint(room.spec))
    return {SURVEY_NAME: pdf_bytes(document)}

"""`survey`: what the readings of the room say, what is missing, and the form to print."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from casewright.cli.commands import tell_rescue
from casewright.cli.exits import CLEAN, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.job.load import load_job
from casewright.job.recorded import Use, read_record
from casewright.job.survey_json import survey_json
from casewright.job.surveying import SURVEY_NAME, SurveySheet, survey_files, survey_sheets
from casewright.outputs.files import check_folder, write_folder
from casewright.packet.corner_table import next_of_corners
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["run_survey"]


def run_survey(
    job: Path, out: Path | None, use: Use | None = None, *, as_json: bool = False
) -> int:
    """`survey`: say what is doubtful and missing, and write survey.pdf; `--json`: all as data.

    The cases are not proved here: a survey comes before them.
    """
    folder = out or Path("out") / job.stem
    if not as_json:
        check_folder(folder)
    loaded, recorded = load_job(job), read_record(job, use)
    tell_rescue(recorded.rescue)
    room = build(loaded.spec, recorded.facts)
    sheets = survey_sheets(room)
    if as_json:
        print_json(survey_json(room))
    else:
        print_lines(_lines(room, sheets))
        with working("drawing and printing"):
            files = survey_files(room)
        write_folder(folder, files, lambda name: name != SURVEY_NAME)  # a packet stays
        print(folder / SURVEY_NAME)
    is_open = room.survey.doubts or any(sheet.missing for sheet in sheets)
    return OPEN if is_open else CLEAN


def _lines(room: Room, sheets: tuple[SurveySheet, ...]) -> Iterator[str]:
    for sheet in sheets:
        yield f"{sheet.title}: {', '.join(sheet.counts) or 'nothing read yet'}"
        for doubt in sheet.doubts:
            yield f"  ASK   read again: {doubt.again}: {doubt.says}"
        for each in sheet.missing:
            yield f"  MISSING  {each}"
        if sheet.next_reading:
            yield f"  NEXT  {sheet.next_reading}"
    for words in next_of_corners(room.survey, room.spec.unit).values():
        yield f"NEXT  {words}"
    for doubt in room.survey.doubts:
        if doubt.paths[0].startswith("survey.corner."):
            yield f"  ASK   read again: {doubt.again}: {doubt.says}"

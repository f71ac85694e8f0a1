"""The cover: what it is, what is still open, what was found, and where things are."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from fractions import Fraction

from casewright.drawing import ScaleError, largest, measure_of
from casewright.drawing.room_overview import room_overview
from casewright.drawing.run_elevation import run_scene
from casewright.findings import Finding, Question, Severity
from casewright.outputs.blocks import (
    Block,
    Bullets,
    Callout,
    Contents,
    Figure,
    Heading,
    Keep,
    Paragraph,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich
from casewright.packet.places import place_words, plain_words
from casewright.packet.words import unfold
from casewright.room.model import Room

__all__ = ["cover_section", "elevation_section"]

_OVERVIEW_MM = (100.0, 58.0)  # height when nothing is open, and when there is [mm]
_ELEVATION_MM = 84.0  # two of them to a page


def cover_section(
    room: Room,
    findings: tuple[Finding, ...],
    questions: tuple[Question, ...],
    paper: Paper,
) -> Section:
    """First page: open questions and findings, then the room and where everything is."""
    spec = room.spec
    blocks: list[Block] = [Heading(spec.name, 1)]
    if spec.address:
        blocks.append(Paragraph(spec.address))
    kinds = f"{len(room.boxes)} case{'s' if len(room.boxes) != 1 else ''}, {len(room.parts)} parts"
    blocks.append(
        Paragraph(f"Shop packet: {kinds}. Every size is worked out; nothing is left to add up.")
    )
    if spec.wishes:
        blocks.append(Bullets(spec.wishes))
    if not questions and not findings:
        blocks.append(Paragraph("No open question, no finding: ready to build."))
    if questions:
        blocks.append(Heading("Open questions", 2))
        blocks.extend(Callout("ask", _question(q), _capital(q.needs)) for q in questions)
    if findings:
        blocks.append(Heading("Found", 2))
        blocks.extend(_finding(room, f) for f in findings)
    blocks.extend(_overview(room, paper, _OVERVIEW_MM[bool(questions or findings)]))
    blocks.append(Heading("In this packet", 2))
    blocks.append(Contents())
    return Section("Cover", tuple(blocks), "cover", plain=True)


def _overview(room: Room, paper: Paper, tall_mm: float) -> Iterator[Block]:
    try:
        drawn = largest(room_overview(room), paper.text_width_mm, tall_mm, room.spec.unit)
    except ScaleError:
        return
    yield Figure(drawn, alternative="The room, every case with its name")


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"


def _question(question: Question) -> Rich:
    waiting = len(question.waiting)
    words: list[Inline] = [f"{_capital(question.because)}. "]
    if waiting:
        words.append(
            f"{waiting} part{'s' if waiting != 1 else ''} wait{'s' if waiting == 1 else ''}. "
        )
    words.append(f"How: {question.how}.")
    return tuple(words)


def _finding(room: Room, finding: Finding) -> Callout:
    words = _capital(plain_words(room, finding.says)).rstrip(".") + "."
    if finding.measured and finding.measured not in finding.says:
        words += f" Here {finding.measured}; limit {finding.limit}."
    if finding.remedies:
        words += f" What would help: {'; or '.join(finding.remedies)}."
    title = f"{_capital(finding.rule)}: {place_words(room, finding.path)}"
    if finding.severity is Severity.STOP:
        title = f"Stop. {title}"
    return Callout("look", words, title)


def elevation_section(room: Room, paper: Paper) -> Section | None:
    """Every run on its wall."""
    blocks: list[Block] = []
    unit = room.spec.unit
    for run in room.runs:
        scene = run_scene(run, unit, measure_of(room.wall_bottom, unit))
        drawn: tuple[Block, ...] = ()
        with suppress(ScaleError):
            figure = largest(scene, paper.text_width_mm, _ELEVATION_MM, unit, at_most=Fraction(10))
            drawn = (Figure(figure, alternative=f"{run.spec.title}, elevation"),)
        names = [
            unfold(
                f"{n} ", Link(case.spec.title, case.key), ", page ", PageNumber(case.key), ".  "
            )
            for n, case in enumerate(run.cases, start=1)
        ]
        blocks.append(
            Keep(
                (
                    Heading(run.spec.title, 2, f"run:{run.spec.key}"),
                    *drawn,
                    Paragraph(unfold(*names)),
                )
            )
        )
    return Section("Elevations", tuple(blocks), "elevations") if blocks else None

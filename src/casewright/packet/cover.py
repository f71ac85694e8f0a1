"""The cover: what it is, what is still open, what was found, and where things are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.drawing import clashes, plot_within
from casewright.drawing.room_overview import room_overview
from casewright.findings import (
    Finding,
    Question,
    Severity,
    findings_together,
    questions_together,
)
from casewright.outputs.blocks import (
    Block,
    Bullets,
    Callout,
    Contents,
    Figure,
    Heading,
    Paragraph,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Strong
from casewright.packet.part_heights import line_count
from casewright.packet.places import place_words, plain_words
from casewright.packet.words import unfold
from casewright.room.model import Room
from casewright.sources import source_words

__all__ = ["cover_section"]

_OVERVIEW_MM = (100.0, 58.0)  # height when nothing is open, and when there is [mm]
_SCALES = tuple(Fraction(scale) for scale in range(12, 124, 4))  # it is not measured from
_LINE, _APART = 4.5, 1.0  # from line to line, between paragraphs [mm]
_HEADINGS = {1: 13.0, 2: 10.0}  # with the room round them [mm]
_CALLOUT, _SIGN_MM, _BULLET, _ITEM = 3.0, 16.0, 4.6, 5.2  # round a callout, beside it, lines [mm]


def cover_section(
    room: Room,
    findings: tuple[Finding, ...],
    questions: tuple[Question, ...],
    paper: Paper,
    *,
    sections: int,
    title: str,
) -> Section:
    """First page: open questions and findings, then the room and where everything is.

    Parameters
    ----------
    sections
        That the contents list [-].
    title
        What it is the cover of.
    """
    spec = room.spec
    kinds = f"{len(room.boxes)} case{'s' if len(room.boxes) != 1 else ''}, {len(room.parts)} parts"
    words = f"{title}: {kinds}. Every size is worked out; nothing is left to add up."
    blocks: list[Block] = [
        Heading(spec.name, 1),
        Paragraph(f"{spec.address.rstrip('.')}. {words}" if spec.address else words),
    ]
    if not questions and not findings:
        blocks.append(Paragraph("No open question, no finding: ready to build."))
    if questions:
        blocks.append(Heading("Open questions", 2))
        for group in questions_together(questions):
            blocks.extend(_questions(group))
    if findings:
        blocks.append(Heading("Found", 2))
        for found in _of_one_rule(findings):
            blocks.extend(_findings(room, found))
    most = _OVERVIEW_MM[bool(questions or findings)]
    left = paper.text_height_mm - _height(blocks, paper) - _contents_height(sections)
    listed = Bullets(spec.wishes)
    if spec.wishes:
        wishes = listed if left - _height((listed,), paper) >= most else _in_one(spec.wishes)
        blocks.insert(2, wishes)
        left -= _height((wishes,), paper)
    blocks.extend(_overview(room, paper, min(most, left)))
    blocks.append(Heading("In this packet", 2))
    blocks.append(Contents())
    return Section("Cover", tuple(blocks), "cover", plain=True)


def _in_one(wishes: Sequence[str]) -> Paragraph:
    """Wishes as one paragraph, where a list would take the room of the overview."""
    return Paragraph(" ".join(f"{wish.rstrip('.')}." for wish in wishes))


def _height(blocks: Sequence[Block], paper: Paper) -> float:
    """About how much of the page they take [mm]."""
    wide, height = paper.text_width_mm, 0.0
    for block in blocks:
        match block:
            case Heading():
                height += _HEADINGS[block.level]
            case Callout():
                words = unfold(f"{block.title}  ", block.text)
                height += line_count(words, wide - _SIGN_MM) * _LINE + _CALLOUT
            case Bullets():
                lines = sum(line_count(each, wide - _SIGN_MM) for each in block.items)
                height += _BULLET * lines
            case Paragraph():
                height += line_count(block.text, wide) * _LINE + _APART
            case _:
                pass
    return height


def _contents_height(sections: int) -> float:
    """Of the heading and two columns of lines, and round the overview [mm]."""
    return _HEADINGS[2] + -(-(sections) // 2) * _ITEM + _CALLOUT


def _overview(room: Room, paper: Paper, tall_mm: float) -> Iterator[Block]:
    """As large as the page lets it be with no name over another; else none."""
    scene = room_overview(room)
    for scale in _SCALES:
        drawn = plot_within(scene, scale, paper.text_width_mm, tall_mm)
        if drawn is not None and not clashes(drawn.groups):
            yield Figure(drawn, alternative="The room, every case with its name")
            return


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"


def _questions(questions: Sequence[Question]) -> Iterator[Block]:
    """Asked for one reason: several as a list under it."""
    first = questions[0]
    if len(questions) == 1:
        words = f"{_capital(first.because)}. {_answer(first)}"
        yield Callout("ask", words, _capital(first.needs))
        return
    waiting = {path for each in questions for path in each.waiting}
    yield Callout("ask", _waiting(len(waiting)), f"{_capital(first.because)}.")
    yield Bullets(
        tuple((Strong(f"{_capital(each.needs)}."), f" {_how(each)}") for each in questions)
    )


def _answer(question: Question) -> str:
    return f"{_waiting(len(question.waiting))}{_how(question)}"


def _waiting(count: int) -> str:
    return f"{count} part{'s wait' if count != 1 else ' waits'}. " if count else ""


def _how(question: Question) -> str:
    return f"How: {question.how}."


def _of_one_rule(findings: Sequence[Finding]) -> Iterator[Sequence[Finding]]:
    """Findings of one rule and one gravity, where the first of them stands."""
    found: dict[tuple[str, Severity], list[Finding]] = {}
    for group in findings_together(findings):
        found.setdefault((group[0].rule, group[0].severity), []).extend(group)
    yield from found.values()


def _findings(room: Room, findings: Sequence[Finding]) -> Iterator[Block]:
    """Of one rule: several as a list, under what would help with all of them."""
    first = findings[0]
    shared = [each for each in first.remedies if all(each in f.remedies for f in findings)]
    said: dict[str, list[str]] = {}
    for each in findings:
        own = said.setdefault(_says(room, each), [])
        own.extend(more for more in each.remedies if more not in (*shared, *own))
    told = [_helped(words, own, also=bool(shared)) for words, own in said.items()]
    source = f"Source: {source_words(first.source)}." if first.source else ""
    helps = f"{_helped('', shared)} {source}".strip()
    places = "; ".join(dict.fromkeys(place_words(room, each.path) for each in findings))
    title = f"{_capital(first.rule)}: {places}"
    if first.severity is Severity.STOP:
        title = f"Stop. {title}"
    if len(told) == 1:
        yield Callout("look", f"{told[0]} {helps}".rstrip(), title)
        return
    yield Callout("look", helps, title)
    yield Bullets(tuple(told))


def _helped(words: str, remedies: Sequence[str], *, also: bool = False) -> str:
    """With what would help behind it, where anything would."""
    if not remedies:
        return words
    helps = "Or" if also else "What would help"
    return f"{words} {helps}: {'; or '.join(remedies)}.".lstrip()


def _says(room: Room, finding: Finding) -> str:
    words = _capital(plain_words(room, finding.says)).rstrip(".") + "."
    if finding.measured and finding.measured not in finding.says:
        words += f" Here {finding.measured}; limit {finding.limit}."
    return words

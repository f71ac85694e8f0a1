"""What pages and server say to each other, as types; the page's own are generated from these."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, StringConstraints

from casewright.dims import Measure, parts_of, plain_text
from casewright.errors import Problem
from casewright.findings import Finding, Question
from casewright.sources import source_words
from casewright.web.snapshot import Standing

__all__ = [
    "Answer",
    "CaseView",
    "Chapter",
    "Edited",
    "EntryAnswer",
    "EntryIn",
    "FindingView",
    "HindranceView",
    "IslandView",
    "JobView",
    "Joining",
    "LayoutAnswerView",
    "LayoutView",
    "Length",
    "NewNumber",
    "PacketView",
    "ProblemView",
    "QuestionView",
    "Refusal",
    "RunView",
    "Sentence",
    "Sheet",
    "Short",
    "Steps",
    "WallView",
    "WhyNode",
    "WhyView",
    "sentence_of",
]  # fmt: skip

Short = Annotated[str, StringConstraints(max_length=200)]
Sheet = Annotated[str, StringConstraints(max_length=4000)]


class Answer(BaseModel):
    """An answer of the server."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class ProblemView(Answer):
    """Something that is wrong: where, what, and what would be right."""

    file: str
    line: int
    column: int
    word: str
    what: str
    want: str

    @classmethod
    def of(cls, problem: Problem) -> ProblemView:
        """A problem as the page shows it."""
        at = problem.location
        return cls(file=at.file, line=at.line, column=at.column, word=at.word,
                   what=problem.what, want=problem.want)  # fmt: skip


class Refusal(Answer):
    """Why something was not done; nothing was changed."""

    what: str
    want: str = ""
    problems: tuple[ProblemView, ...] = ()


class Length(Answer):
    """A length within a sentence, with the path of its number."""

    text: str
    path: str


Sentence = tuple[str | Length, ...]
"""Words and lengths in order; empty for nothing."""


def sentence_of(words: str) -> Sentence:
    """A sentence as the page shows it: its lengths can be asked."""
    return tuple(
        Length(text=part.text, path=part.path)
        if isinstance(part, Measure) and part.path
        else plain_text(part)
        for part in parts_of(words)
        if part != ""
    )


class FindingView(Answer):
    """Something that is bad, risky or needs care."""

    rule: str
    severity: Literal["stop", "care", "note"]
    path: str
    says: Sentence
    measured: str
    limit: str
    source: str
    remedies: tuple[Sentence, ...]

    @classmethod
    def of(cls, finding: Finding) -> FindingView:
        """A finding as the page shows it."""
        return cls(rule=finding.rule, severity=finding.severity.value, path=finding.path,
                   says=sentence_of(finding.says), measured=finding.measured,
                   limit=finding.limit, source=source_words(finding.source),
                   remedies=tuple(map(sentence_of, finding.remedies)))  # fmt: skip


class QuestionView(Answer):
    """Something that is missing."""

    path: str
    needs: Sentence
    because: Sentence
    waiting: tuple[str, ...]
    how: Sentence

    @classmethod
    def of(cls, question: Question) -> QuestionView:
        """A question as the page shows it."""
        return cls(path=question.path, needs=sentence_of(question.needs),
                   because=sentence_of(question.because), waiting=question.waiting,
                   how=sentence_of(question.how))  # fmt: skip


class Steps(Answer):
    """Which version each kind of result is of; one that is older than `version` is pending."""

    version: int
    drawn: int
    checked: int
    counted: int
    planned: int

    @classmethod
    def of(cls, standing: Standing, version: int) -> Steps:
        """How far a standing has come, measured by the version that was written last."""
        snapshot = standing.snapshot
        done = snapshot.version if snapshot else 0
        counted = done if snapshot and (snapshot.count or snapshot.purchases) else 0
        planned = done if snapshot and snapshot.purchases else 0
        return cls(version=version, drawn=done, checked=done, counted=counted, planned=planned)


class CaseView(Answer):
    """A case by name."""

    key: str
    title: str
    kind: str


class WallView(Answer):
    """A surveyed wall with runs on it."""

    key: str
    title: str


class RunView(Answer):
    """A run by name, with what stands in it, left to right.

    `is_open`: the width of a case is left open, or was solved: it has other answers.
    """

    key: str
    title: str
    wall: str | None
    cases: tuple[str, ...]
    is_open: bool


class IslandView(Answer):
    """An island by name, with the runs it is made of.

    `is_open`: its place or its length leaves something to a layout.
    """

    key: str
    title: str
    runs: tuple[str, ...]
    is_open: bool


class JobView(Answer):
    """The job as a page needs it first."""

    name: str
    file: str
    unit: Literal["in", "mm"]
    build: str
    steps: Steps
    pages: tuple[str, ...]
    walls: tuple[WallView, ...]
    runs: tuple[RunView, ...]
    islands: tuple[IslandView, ...]
    has_heights: bool
    cases: tuple[CaseView, ...]
    problems: tuple[ProblemView, ...]
    findings: tuple[FindingView, ...]
    questions: tuple[QuestionView, ...]
    sheets: int | None
    can_undo: bool
    can_redo: bool
    digest: str


class Chapter(Answer):
    """A page of the desk as HTML, and the version it is of."""

    version: int
    html: str


class LayoutAnswerView(Answer):
    """One answer: what it decides, what it trades, and how it looks.

    `taken`: the file says it already.
    """

    number: int
    trade: tuple[Sentence, ...]
    sizes: tuple[Sentence, ...]
    proved: bool
    taken: bool
    drawing: str


class HindranceView(Answer):
    """What stands against every answer, and what would help."""

    what: Sentence
    reliefs: tuple[Sentence, ...]


class LayoutView(Answer):
    """Answers, the best first; where there is none, what stands against any."""

    version: int
    answers: tuple[LayoutAnswerView, ...]
    hindrances: tuple[HindranceView, ...]


class PacketView(Answer):
    """How far the packet has come, and its files once it is made."""

    stage: Literal["none", "making", "made", "failed"]
    fingerprint: str
    files: tuple[str, ...]
    says: str


class WhyNode(Answer):
    """A number, and what it rests on."""

    path: str
    value: str
    formula: str
    rests_on: tuple[str, ...]
    origin: str
    where: str
    key: str
    typed: str


class WhyView(Answer):
    """Why a number is what it is: the number asked for first, then all it rests on."""

    nodes: tuple[WhyNode, ...]


class NewNumber(BaseModel):
    """A number to be written into the job file.

    `path` is that of a number on the chain; `key` names the place in the file instead, dotted.
    `digest` is of the file that the page shows; when the file is another by now, it is refused.
    """

    model_config = ConfigDict(extra="forbid")

    path: Short = ""
    key: Short = ""
    value: Short
    digest: Short
    shows: Short = ""


class Edited(Answer):
    """What came of an edit: the version it has, and the drawing asked for, drawn anew."""

    version: int
    digest: str
    drawing: str


class EntryIn(BaseModel):
    """What happened in the shop, as `casewright record` takes it, with an id of its own.

    Sent twice, it is kept once.
    """

    model_config = ConfigDict(extra="forbid")

    id: Annotated[str, StringConstraints(pattern=r"^[0-9a-f]{32}$")]
    kind: Short
    words: Annotated[list[Sheet], "as typed"]
    size: Short = ""
    tool: Short = ""
    within: Short = ""
    note: Sheet = ""
    corrects: Short = ""
    sure: bool = False
    device: Short = ""
    shown: Short = ""
    """The size that the page showed for a piece: doubted when it is to be another by now."""


class EntryAnswer(Answer):
    """What became of an entry.

    kept: it stands. there: it was sent before. doubted: it is hard to believe, and waits to be
    sent again with `sure`. refused: it has no meaning.
    """

    id: str
    became: Literal["kept", "there", "doubted", "refused"]
    says: tuple[str, ...] = ()
    want: str = ""


class Joining(Answer):
    """How another device joins."""

    addresses: tuple[str, ...]
    code: str
    joined: bool

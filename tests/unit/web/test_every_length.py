"""Every length that a page of the desk shows can be asked why."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, replace
from pathlib import Path

import pytest
from tests.page_lengths import PageReader, bare_lengths

from casewright.job.numbers import chain_with
from casewright.job.packets import plan_purchases
from casewright.job.recorded import as_recorded
from casewright.room.model import Room
from casewright.web.chapters import RUNS, chapter_html
from casewright.web.drawings import drawing_names, drawn
from casewright.web.schema import FindingView, Length, QuestionView, Sentence
from casewright.web.snapshot import Snapshot

EXAMPLES = Path(__file__).parents[3] / "examples"

_WHOLE = ("survey", "buy", "cut", "machine", "assemble", "fronts", "finish", "install")


def _snapshot(name: str) -> Snapshot:
    loaded, recorded, worked = as_recorded(EXAMPLES / f"{name}.toml")
    bought = plan_purchases(worked)
    return replace(Snapshot(1, loaded, recorded, worked), purchases=bought)


def _pages(snapshot: Snapshot) -> Iterable[str]:
    room = snapshot.worked.room
    own = [("machine", RUNS)]
    own += [(page, case.key) for case in room.cases for page in ("machine", "cases")]
    for page, of in [*((page, "") for page in _WHOLE), *own]:
        yield chapter_html(snapshot, page, of) or ""
    for name in drawing_names(room):
        yield drawn(room, name) or ""


def _sentences(snapshot: Snapshot) -> Iterable[Sentence]:
    for finding in map(FindingView.of, snapshot.findings):
        yield from (finding.says, *finding.remedies)
    for question in map(QuestionView.of, snapshot.questions):
        yield from (question.needs, question.because, question.how)


def _names(room: Room) -> list[str]:
    """Of all that is bought: names also where a size stands in them."""
    sheets = (getattr(room.spec.hardware, each.name) for each in fields(room.spec.hardware))
    return [goods.title for goods in (*room.spec.stock.values(), *sheets)]


@pytest.mark.parametrize("name", ["bookcase", "garden_room", "paint_store_metric"])
def test_every_length_can_be_asked_and_answers(name: str) -> None:
    """In tables, in drawings and in sentences; each leads to a number that is there."""
    snapshot = _snapshot(name)
    pages = [PageReader(page) for page in _pages(snapshot)]
    lines = [line for page in pages for line in page.lines]
    paths = {path for page in pages for path in page.paths}
    for sentence in _sentences(snapshot):
        lines.append("".join("□" if isinstance(each, Length) else each for each in sentence))
        paths |= {each.path for each in sentence if isinstance(each, Length)}
    room = snapshot.worked.room
    assert list(bare_lengths(lines, _names(room))) == []
    chains = {path.partition(".")[0]: chain_with(room, path) for path in sorted(paths)}
    known = {path for chain in (room.chain, *chains.values()) for path in chain.nodes}
    assert sorted(paths - known) == []

"""Words on printed pages: set as they were written, never run."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.unit.outputs.pages import document, printed, reader_of, section

from casewright.dims import Measure
from casewright.drawing import Balloon, Plot, Scene, Tag, plot
from casewright.outputs.blocks import (
    Beside,
    Block,
    Bullets,
    Callout,
    Caution,
    CheckList,
    Column,
    Contents,
    Figure,
    Heading,
    Keep,
    Label,
    Labels,
    Paragraph,
    Row,
    Space,
    Step,
    Table,
)
from casewright.outputs.document import (
    LABELS_LETTER,
    LETTER,
    Document,
    Section,
)
from casewright.outputs.inlines import Blank, Link, PageNumber, SignMark, Strong
from casewright.outputs.pdf import pdf_bytes
from casewright.outputs.typst_data import document_json

INCH = Fraction("25.4")
POINT_MM = 25.4 / 72


def _inches(value: Fraction | int, path: str = "") -> Measure:
    return Measure(Fraction(value) * INCH, "in", path)


ATTACKS = [
    '#panic("x")',
    "#set page(width: 1pt)",
    '#read("/etc/passwd")',
    '#image("x.png") #include "y.typ"',
    "$ x^2 $ = Heading *bold* _it_ `raw` <label> @ref // gone /* gone */",
    '"); panic("x',
    "\\u{41} \\# ~ -- --- ... 'q' \"q\"",
    "]]] }}} ))) [[[ {{{ (((",
    "- item\n+ item\n/ term: x",
    "https://example.com/x",
]


@pytest.mark.parametrize("attack", ATTACKS)
def test_words_are_set_and_never_run(attack: str) -> None:
    """Whatever a job file says stands on the page character for character."""
    text = printed(Paragraph(attack)).pages[0].extract_text()
    assert "".join(attack.split()) in "".join(text.split())


def test_words_are_words_in_every_kind_of_block() -> None:
    """No block has a back door."""
    attack = '#panic("x") *a* $b$ <c>'
    made = Document(attack, attack, attack, "in", LETTER, _all_blocks(attack), attack)
    text = "".join("".join(page.extract_text().split()) for page in reader_of(made).pages)
    assert text.count('#panic("x")*a*$b$<c>') >= 25


def _all_blocks(words: str) -> tuple[Section, ...]:
    """One of each block, all saying the same."""
    inside: tuple[Block, ...] = (
        Heading(words, 2, "h"),
        Heading(words, 3),
        Paragraph((words, Strong(words), Link(words, "h"), PageNumber("h"), Blank())),
        Paragraph(words, soft=True),
        Bullets((words, (words, SignMark("look")))),
        CheckList((Step(words, (words,), (words,), "s"),)),
        Caution(words, words),
        Callout("ask", words, words),
        Table((Column(words), Column(words)), (Row((words,), "g"), Row((words, words), "r"))),
        Figure(_picture(words), words, "f", words),
        Beside(((Paragraph(words),), (Paragraph(words),))),
        Keep((Paragraph(words), Space(3))),
        Contents(),
    )
    labels = Labels(LABELS_LETTER, (Label(words, words, (words,), ("left",), words, "h"),))
    return (Section(words, inside, "first"), Section(words, (labels,)))


def _picture(words: str) -> Plot:
    return plot(Scene((Balloon((0, 0), words, tag=Tag(words, words, "h", words)),), words))


@settings(max_examples=25, deadline=None)
@given(st.text(max_size=60))
def test_any_text_can_be_printed(text: str) -> None:
    """No input breaks the typesetter."""
    assert len(printed(Paragraph(text), Heading(text, 2, "a")).pages) >= 1


def test_same_document_same_bytes() -> None:
    """Printing twice in one process gives one file."""
    made = document(*_all_blocks("same"))
    assert pdf_bytes(made) == pdf_bytes(made)


@pytest.mark.parametrize("text", ["a\x00b", "a\x1fb", "a\x7fb", "a\ud800b", "a\uffffb"])
def test_characters_that_cannot_be_printed_do_not_stop_the_print(text: str) -> None:
    """One replacement for each; the words round it stay."""
    made = document_json(document(section(Paragraph(text), Paragraph(r"\u00 stays"))))
    assert "a\ufffdb" in made
    assert json.loads(made)["sections"][0]["blocks"][1]["c"] == [r"\u00 stays"]

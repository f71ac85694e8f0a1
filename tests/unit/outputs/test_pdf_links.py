"""Marks that lead from page to page, read back from the printed document."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from pypdf import PdfReader
from tests.unit.outputs.pages import document, lines, reader_of, section

from casewright.dims import Measure
from casewright.drawing import Balloon, Scene, Tag, plot, rectangle
from casewright.outputs.blocks import (
    Column,
    Figure,
    Label,
    Labels,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import (
    LABELS_LETTER,
    LinkError,
)
from casewright.outputs.inlines import Link, PageNumber
from casewright.outputs.pdf import pdf_bytes

INCH = Fraction("25.4")
POINT_MM = 25.4 / 72


def _inches(value: Fraction | int, path: str = "") -> Measure:
    return Measure(Fraction(value) * INCH, "in", path)


def _destination(reader: PdfReader, page: int) -> list[int | None]:
    """Numbers of the pages that the links of a page lead to, from 0."""
    found = []
    for annotation in reader.pages[page].get("/Annots", []):
        target = annotation.get_object()["/Dest"]
        first = target.get_object()[0]
        found.append(reader.get_page_number(first.get_object()))
    return found


def test_marks_lead_to_their_pages() -> None:
    """From words, from a row, from a drawing and from a label to the page of the anchor."""
    balloon = Scene((Balloon((0, 0), "12", tag=Tag(target="card")),))
    made = document(
        section(Paragraph(("see ", Link("part 12", "card")))),
        section(Table((Column("Mark"),), (Row((Link("12", "card"),)),))),
        section(Figure(plot(balloon))),
        section(Labels(LABELS_LETTER, (Label("12", "side", target="card"),))),
        section(Paragraph("the card"), anchor="card"),
    )
    reader = reader_of(made)
    assert [_destination(reader, page) for page in range(4)] == [[4], [4], [4], [4]]


def test_a_link_of_a_drawing_lies_on_its_mark() -> None:
    """The place to touch is where the mark is printed."""
    scene = Scene(
        (rectangle((0, 0), (800, 800)), Balloon((200, 600), "12", tag=Tag(target="card")))
    )
    drawn = plot(scene, 8)
    reader = reader_of(document(section(Figure(drawn)), section(Paragraph("b"), anchor="card")))
    annotations: Any = reader.pages[0]["/Annots"]
    (annotation,) = annotations
    left, low, right, high = (float(v) * POINT_MM for v in annotation.get_object()["/Rect"])
    box = [line for line in lines(reader.pages[0]) if abs(line.width - 0.5) < 0.01]
    corner = (min(line.x0 for line in box), min(min(line.y0, line.y1) for line in box))
    middle = ((left + right) / 2 - corner[0], (low + high) / 2 - corner[1])
    assert middle == pytest.approx((25, 75), abs=0.1)


def test_page_numbers_of_anchors_are_right() -> None:
    """'see page 3' is on paper what the link is on a screen."""
    filler = tuple(Paragraph("line") for _ in range(120))
    made = document(
        section(Paragraph(("see page ", PageNumber("card"), " now"))),
        section(*filler),
        section(Paragraph("the card"), anchor="card"),
    )
    reader = reader_of(made)
    last = len(reader.pages)
    assert last > 3
    assert f"see page {last} now" in " ".join(reader.pages[0].extract_text().split())


def test_what_leads_nowhere_is_refused() -> None:
    """A mark without its page is found before printing."""
    with pytest.raises(LinkError, match=r"missing: \['card 9'\]"):
        pdf_bytes(document(section(Paragraph(Link("part 9", "card 9")))))


def test_an_anchor_that_stands_twice_is_refused() -> None:
    """Two pages cannot both be the one."""
    with pytest.raises(LinkError, match=r"twice: \['a'\]"):
        pdf_bytes(document(section(anchor="a"), section(anchor="a")))

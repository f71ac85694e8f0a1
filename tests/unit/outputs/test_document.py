"""The model of a printed document."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.unit.outputs.pages import document, section

from casewright.dims import Measure
from casewright.drawing import Dimensions, Scene, Span, Tag, Text, plot
from casewright.outputs.blocks import (
    Beside,
    CheckList,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Step,
    Table,
)
from casewright.outputs.document import A4, LETTER, LinkError, anchors, check_links, measures
from casewright.outputs.inlines import Blank, Link, PageNumber, SignMark, Strong, rich_text

INCH = Fraction("25.4")


def _inches(value: int, path: str) -> Measure:
    return Measure(value * INCH, "in", path)


def test_every_printed_number_is_found_with_its_path() -> None:
    """Numbers in words, tables, steps, side by side, kept together and drawn."""
    drawn = plot(Scene((Dimensions("below", 0, (Span(0, 7 * INCH, _inches(7, "g")),)),)))
    made = document(
        section(
            Paragraph(("a ", _inches(1, "a"), Strong(_inches(2, "b")))),
            Table((Column("x"),), (Row((_inches(3, "c"),)),)),
            CheckList((Step("do", notes=((_inches(4, "d"),),)),)),
            Beside(((Keep((Paragraph(_inches(5, "e")),)),), (Paragraph(_inches(6, "f")),))),
            Figure(drawn, _inches(8, "h")),
        )
    )
    assert [(each.text, each.path) for each in measures(made)] == [
        ("1", "a"), ("2", "b"), ("3", "c"), ("4", "d"), ("5", "e"), ("6", "f"), ("7", "g"),
        ("8", "h"),
    ]  # fmt: skip


def test_anchors_are_found_wherever_they_stand() -> None:
    """On sections, headings, paragraphs, rows, steps and figures, nested or not."""
    drawn = plot(Scene((Text((0, 0), "x"),)))
    made = document(
        section(
            Heading("h", anchor="b"),
            Keep((Paragraph("p", anchor="c"),)),
            Beside(((Table((Column("x"),), (Row(("1",), "d"),)),), (Figure(drawn, anchor="e"),))),
            CheckList((Step("s", anchor="f"),)),
            anchor="a",
        )
    )
    assert anchors(made) == ["a", "b", "c", "d", "e", "f"]


@pytest.mark.parametrize(
    "block",
    [
        Paragraph(Link("x", "gone")),
        Paragraph(("see ", PageNumber("gone"))),
        Table((Column("x"),), (Row((Link("x", "gone"),)),)),
        Figure(plot(Scene((Text((0, 0), "x", tag=Tag(target="gone")),)))),
    ],
)
def test_every_kind_of_reference_is_checked(block: Paragraph | Table | Figure) -> None:
    """Words, page numbers, rows and drawings cannot lead nowhere."""
    with pytest.raises(LinkError, match="gone"):
        check_links(document(section(block)))


def test_a_line_can_be_said_without_its_typography() -> None:
    """For titles and for search."""
    line = ("cut ", Strong(Measure(Fraction(95, 8) * INCH, "in")), Blank(), SignMark("look"))
    assert rich_text((*line, " ", Link("part 3", "p"))) == "cut 11 7/8 part 3"


@pytest.mark.parametrize("paper", [LETTER, A4])
def test_margins_leave_room_to_punch_and_to_hold(paper: object) -> None:
    """At least 12 mm on every side of the paper."""
    chosen = LETTER if paper is LETTER else A4
    margins = (chosen.left_mm, chosen.right_mm, chosen.top_mm, chosen.bottom_mm)
    assert min(margins) >= 12
    assert chosen.text_width_mm == chosen.width_mm - chosen.left_mm - chosen.right_mm
    assert chosen.turned.text_height_mm < chosen.text_height_mm

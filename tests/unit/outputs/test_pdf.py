"""Printed pages read back by another library and measured."""

from __future__ import annotations

import io
import re
import subprocess
import sys
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader
from pypdf.generic import ContentStream
from tests.unit.outputs.pages import document, lines, printed, reader_of, section

from casewright.dims import Measure
from casewright.drawing import Dimensions, Scene, Span, View, plot, rectangle, sheet
from casewright.outputs import typesetter
from casewright.outputs.blocks import (
    Column,
    Figure,
    Label,
    Labels,
    Paragraph,
    Row,
    Space,
    Table,
)
from casewright.outputs.document import (
    A4,
    LABELS_A4,
    LABELS_LETTER,
    LETTER,
    Paper,
    Section,
)
from casewright.outputs.font_error import FontError
from casewright.outputs.pdf import pdf_bytes

INCH = Fraction("25.4")
POINT_MM = 25.4 / 72


def _inches(value: Fraction | int, path: str = "") -> Measure:
    return Measure(Fraction(value) * INCH, "in", path)


def _case(width: Fraction, height: Fraction) -> Scene:
    return Scene(
        (
            rectangle((0, 0), (width * INCH, height * INCH)),
            Dimensions("below", 0, (Span(0, width * INCH, _inches(width, "sink.width")),)),
            Dimensions("left", 0, (Span(0, height * INCH, _inches(height, "sink.height")),)),
        ),
        "Sink case, front",
    )


@settings(max_examples=15, deadline=None)
@given(st.integers(9 * 32, 48 * 32), st.integers(9 * 32, 48 * 32))
def test_a_dimension_line_is_as_long_on_paper_as_its_text_says(width: int, height: int) -> None:
    """Measured in the PDF: number times scale, within a hundredth of a millimetre."""
    across, up = Fraction(width, 32), Fraction(height, 32)
    drawn = sheet([[View(_case(across, up), "Front")]], LETTER.text_width_mm, 200, "in")
    assert drawn.scale is not None
    thin = [line for line in lines(printed(drawn).pages[0]) if abs(line.width - 0.18) < 0.01]
    lying = [line.length for line in thin if abs(line.y0 - line.y1) < 1e-4]
    standing = [line.length for line in thin if abs(line.x0 - line.x1) < 1e-4]
    assert max(lying) == pytest.approx(float(across * INCH / drawn.scale), abs=0.01)
    assert max(standing) == pytest.approx(float(up * INCH / drawn.scale), abs=0.01)


def test_the_check_bar_measures_four_inches_on_paper() -> None:
    """Laid against a rule, the bar at the foot of a sheet is true."""
    drawn = sheet([[View(_case(Fraction(33), Fraction(39)), "Front")]], 180, 200, "in")
    lengths = [line.length for line in lines(printed(drawn).pages[0])]
    assert any(length == pytest.approx(101.6, abs=0.01) for length in lengths)


def test_full_size_is_full_size() -> None:
    """A template at 1:1 may be laid on the wood."""
    drawn = plot(_case(Fraction(5), Fraction(4)), 1)
    lengths = [line.length for line in lines(printed(drawn).pages[0])]
    assert any(length == pytest.approx(127.0, abs=0.005) for length in lengths)


@pytest.mark.parametrize(
    ("paper", "size"),
    [(LETTER, (215.9, 279.4)), (A4, (210, 297)), (LETTER.turned, (279.4, 215.9))],
)
def test_pages_have_the_size_of_their_paper(paper: Paper, size: tuple[float, float]) -> None:
    """Letter is 8 1/2 by 11 in, A4 210 by 297 mm (ISO 216); a sheet may lie on its side."""
    (page,) = reader_of(document(section(Paragraph("a")), paper=paper)).pages
    box = page.mediabox
    assert (float(box.width) * POINT_MM, float(box.height) * POINT_MM) == pytest.approx(
        size, abs=0.01
    )


def test_one_document_may_hold_several_sizes_of_paper() -> None:
    """A long template among letter pages."""
    long = Paper("strip", 400, 120)
    made = document(
        section(Paragraph("a")), Section("Strip", (Paragraph("b"),), paper=long, plain=True)
    )
    widths = [float(page.mediabox.width) * POINT_MM for page in reader_of(made).pages]
    assert widths == pytest.approx([215.9, 400], abs=0.01)


def test_all_fonts_are_embedded_and_of_one_family() -> None:
    """A print does not depend on the fonts of a machine, in words or in drawings."""
    reader = printed(Paragraph("words"), plot(_case(Fraction(33), Fraction(39)), 8))
    resources: Any = reader.pages[0]["/Resources"]
    fonts = resources["/Font"]
    assert len(fonts) >= 2
    for name in fonts:
        font = fonts[name].get_object()
        descriptor = font["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        assert "/FontFile2" in descriptor
        assert "IBMPlexSansCond" in font["/BaseFont"]


def test_lettering_of_drawings_is_text_and_not_lost() -> None:
    """Numbers of a drawing can be searched for."""
    text = printed(plot(_case(Fraction(33), Fraction(39)), 8)).pages[0].extract_text()
    assert {"33", "39"} <= set(text.split())


def test_every_page_says_which_it_is_of_how_many() -> None:
    """A dropped stack of pages can be put in order."""
    reader = reader_of(document(*(section(Paragraph("x")) for _ in range(3))))
    texts = [" ".join(page.extract_text().split()) for page in reader.pages]
    for number, text in enumerate(texts, 1):
        assert f"page {number} of 3" in text
        assert "Pantry" in text
        assert "c0ffee" in text
        assert "Sizes in inches" in text


def test_table_headings_are_repeated_on_every_page() -> None:
    """Column and group headings stand above their rows wherever those land."""
    rows = [Row(("Upper 1",)), *(Row((str(i), "side")) for i in range(150))]
    table = Table((Column("Mark"), Column("Part", share=1)), tuple(rows))
    pages = printed(table).pages
    assert len(pages) >= 3
    for page in pages:
        words = page.extract_text().split()
        assert {"Mark", "Part", "Upper"} <= set(words)


def test_sections_are_in_the_outline() -> None:
    """A reader's side bar lists the sections, covers and templates included."""
    made = document(
        Section("Cover", (Paragraph("a"),), plain=True), section(Paragraph("b"), title="Cut list")
    )
    titles = [str(entry.title) for entry in reader_of(made).outline if not isinstance(entry, list)]
    assert titles == ["Cover", "Cut list"]


def test_figures_have_their_alternative_in_words() -> None:
    """Who cannot see the drawing is told what it shows."""
    raw = pdf_bytes(document(section(Figure(plot(_case(Fraction(33), Fraction(39)), 8)))))
    reader = PdfReader(io.BytesIO(raw))
    known = sorted({*reader.xref[0], *reader.xref_objStm})
    objects: list[Any] = [reader.get_object(i) for i in known]
    alternatives = [str(found["/Alt"]) for found in objects if "/Alt" in (found or ())]
    assert "Sink case, front" in alternatives


def test_a_fraction_in_words_is_stacked() -> None:
    """Numerator over bar over denominator, beside the whole number: never 117/8."""
    heights: dict[str, float] = {}

    def note(text: str, matrix: Any, *_: object) -> None:
        if text.strip():
            heights[text.strip()] = matrix[5] * POINT_MM

    page = printed(Paragraph(("cut ", _inches(Fraction(95, 8)), " wide"))).pages[0]
    page.extract_text(visitor_text=note)
    (bar,) = [line for line in lines(page) if 1 < line.length < 4 and line.y0 == line.y1]
    assert heights["7"] > bar.y0 > heights["8"] + 1.0
    assert heights["8"] < heights["11"] < heights["7"]


def test_numbers_in_a_column_of_sizes_end_on_one_line() -> None:
    """Whole numbers stand under each other whether a fraction follows or not."""
    sizes = [Fraction(39), Fraction(309, 8), Fraction(1247, 32), Fraction(7)]
    table = Table((Column("Length", "size"),), tuple(Row((_inches(size),)) for size in sizes))
    bars = [
        line
        for line in lines(printed(table).pages[0])
        if 0.5 < line.length < 4 and abs(line.y0 - line.y1) < 1e-6
    ]
    assert len(bars) == 2
    assert bars[0].x0 == pytest.approx(bars[1].x0, abs=0.01)


@pytest.mark.parametrize("labels", [LABELS_LETTER, LABELS_A4])
def test_labels_lie_where_the_sheet_has_them(labels: object) -> None:
    """Outlines stand where the sheet's steps put them, row by row, across before down."""
    sheet_of = LABELS_LETTER if labels is LABELS_LETTER else LABELS_A4
    paper = LETTER if labels is LABELS_LETTER else A4
    block = Labels(sheet_of, tuple(Label(str(i), "side") for i in range(5)))
    (page,) = reader_of(document(section(block), paper=paper)).pages
    corners = sorted({round(line.y1, 2) for line in lines(page)}, reverse=True)
    top = paper.height_mm - sheet_of.top_mm
    rows = -(-5 // sheet_of.across)
    across = sorted({round(line.x0, 2) for line in lines(page)})
    assert across[0] == pytest.approx(sheet_of.left_mm, abs=0.1)
    right = sheet_of.left_mm + (sheet_of.across - 1) * sheet_of.step_x_mm + sheet_of.width_mm
    assert across[-1] == pytest.approx(right, abs=0.1)
    assert corners[0] == pytest.approx(top, abs=0.1)
    bottom = top - (rows - 1) * sheet_of.step_y_mm - sheet_of.height_mm
    assert corners[-1] == pytest.approx(bottom, abs=0.1)


def test_labels_run_on_to_more_sheets_and_skip_used_ones() -> None:
    """19 labels after 2 used ones need a second sheet of 20."""
    block = Labels(LABELS_LETTER, tuple(Label(str(i), "side") for i in range(19)), skip=2)
    assert len(reader_of(document(section(block))).pages) == 2


def test_a_drawing_too_large_for_its_page_is_refused() -> None:
    """It would be cut off without a word."""
    drawn = plot(_case(Fraction(33), Fraction(39)), 4)
    with pytest.raises(ValueError, match=r"does not fit letter: Sink case, front"):
        printed(drawn)


def test_a_row_of_the_wrong_length_is_refused() -> None:
    """Cells would slide under the wrong heading."""
    with pytest.raises(ValueError, match="2 cells in a table of 3 columns"):
        printed(Table((Column("a"), Column("b"), Column("c")), (Row(("1", "2")),)))


_PRINT = """
import hashlib, sys
from casewright.outputs.blocks import Paragraph
from casewright.outputs.document import A4, Document, Section
from casewright.outputs.pdf import pdf_bytes
made = Document("t", "j", "f", "mm", A4, (Section("s", (Paragraph("x"),)),))
sys.stdout.write(hashlib.sha256(pdf_bytes(made)).hexdigest())
"""


def test_bytes_do_not_depend_on_process_clock_or_place() -> None:
    """Two processes with other hash seeds, time zones and languages print the same."""
    prints = set()
    for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo")):
        done = subprocess.run(  # noqa: S603 (our own interpreter and text)
            [sys.executable, "-c", _PRINT],
            env={"PYTHONHASHSEED": seed, "TZ": zone, "LANG": "C"},
            capture_output=True,
            text=True,
            check=True,
        )
        prints.add(done.stdout)
    assert len(prints) == 1


def test_no_date_and_no_place_in_the_file() -> None:
    """Prints of one job compare equal on any day and any machine."""
    reader = printed(Paragraph("a"))
    assert reader.metadata is not None
    assert set(reader.metadata) == {"/Title", "/Creator"}


def test_a_missing_typeface_is_said_and_not_replaced(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without the font package nothing is printed in some other font."""
    monkeypatch.setattr(typesetter, "_FONT_PACKAGE", "no_such_fonts")
    monkeypatch.setattr(typesetter, "_fonts", typesetter._fonts.__wrapped__)
    with pytest.raises(FontError, match="install the project's requirements again"):
        printed(Paragraph("a"))


@pytest.mark.parametrize(
    ("title", "is_squeezed"),
    [
        ("left side", False),
        ("llllllllllllllllllllll", False),
        ("WWWWWWWWWWWWWWWW", True),
        ("left stile of the upper left-hand door", True),
    ],
)
def test_what_is_too_wide_for_a_label_is_squeezed(title: str, is_squeezed: bool) -> None:
    """Narrower letters instead of words that run into their neighbours."""
    reader = printed(Labels(LABELS_LETTER, (Label("12", title),)))
    page = reader.pages[0]
    operations: Any = ContentStream(page.get_contents(), reader).operations
    scales = [float(values[0]) / float(values[3]) for values, operator in operations
              if operator == b"cm" and float(values[3])]  # fmt: skip
    narrow = [abs(scale) for scale in scales if abs(scale) < 0.999]
    assert bool(narrow) == is_squeezed


def _table_pages(rows: tuple[Row, ...], before_mm: float) -> list[list[str]]:
    """First cells of the rows on each page, below an empty space."""
    table = Table((Column("Cut"), Column("What", share=1.0)), rows)
    reader = printed(Space(before_mm), table)
    found = []
    for page in reader.pages:
        words = page.extract_text().split()
        found.append([word for word in words if re.fullmatch(r"(row|group)\d+", word)])
    return found


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.integers(1, 12), min_size=1, max_size=6),
    st.floats(0, 225),
)
@example([8, 1], 174.0)
@example([1, 1], 210.0)
def test_no_table_is_split_with_a_single_row_left(groups: list[int], before_mm: float) -> None:
    """On no page does a group of two rows or more stand with one row, nor a heading alone.

    Nor is a single row all that is left for the last page.
    """
    rows: list[Row] = []
    names: list[str] = []
    for number, count in enumerate(groups):
        rows.append(Row((f"group{number}",)))
        own = [f"row{number}{each:02}" for each in range(count)]
        rows += [Row((name, "side")) for name in own]
        names += own
    pages = _table_pages(tuple(rows), before_mm)
    assert [word for page in pages for word in page if word.startswith("row")] == names
    for page in pages:
        assert not page or page[-1].startswith("row")
        for number, count in enumerate(groups):
            here = [word for word in page if re.fullmatch(rf"row{number}\d\d", word)]
            assert len(here) != 1 or count == 1, pages
    left = [word for word in pages[-1] if word.startswith("row")]
    assert len(left) != 1 or len(names) == 1, pages

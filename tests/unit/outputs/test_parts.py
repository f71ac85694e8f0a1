"""A document printed in parts is the document printed at once."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader
from tests.unit.outputs.pages import document, reader_of, section

from casewright.dims import Measure
from casewright.drawing import Balloon, Scene, Tag, plot
from casewright.outputs import parts
from casewright.outputs.apart import StoppedError, apart
from casewright.outputs.blocks import (
    Block,
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
    Table,
)
from casewright.outputs.document import LABELS_LETTER, Document, Section
from casewright.outputs.inlines import Link, PageNumber, PageNumbers
from casewright.outputs.parts import LIMIT, parts_of
from casewright.outputs.pdf import pdf_bytes
from casewright.outputs.section_text import SectionText

CARDS = 24
MANY = 2500  # a limit that cuts the document below into many parts [characters]


def _card(number: int) -> Keep:
    size = Measure(Fraction(number, 8) * Fraction("25.4"), "in", "")
    table = Table((Column("Mark"), Column("Length", "size")), (Row((str(number), size)),))
    blocks: tuple[Block, ...] = (Heading(f"Part {number}", 3, f"part {number}"), table, Space(28))
    group = (Heading(f"Group {number}", 2),) if number % 5 == 0 else ()
    return Keep((*group, *blocks))


def _drawing(number: int) -> Figure:
    balloon = Balloon((0, 0), str(number), tag=Tag(target=f"part {number}"))
    return Figure(plot(Scene((balloon,), f"Case {number}")))


def _packet() -> Document:
    marks = [f"part {number}" for number in range(CARDS)]
    rows = tuple(
        Row((Link(mark, mark), PageNumber(mark), PageNumbers(tuple(marks[: i + 1]))))
        for i, mark in enumerate(marks)
    )
    listed = Table((Column("Mark"), Column("Page"), Column("Pages", share=1)), rows)
    cases = (
        section(_drawing(i), Paragraph(PageNumber(f"part {i}")), title=f"Case {i}", anchor=f"c{i}")
        for i in range(3)
    )
    labels = tuple(
        Label(mark, "side", target=mark, after=("page ", PageNumber("c2"))) for mark in marks
    )
    return document(
        Section("Cover", (Paragraph("a"), Contents()), plain=True),
        section(listed, title="Cut list", anchor="list"),
        section(Paragraph("b"), *map(_card, range(CARDS)), title="Part cards", anchor="cards"),
        *cases,
        section(Labels(LABELS_LETTER, labels, note="On plain paper"), title="Labels"),
    )


@pytest.fixture(name="both", scope="module")
def _both() -> tuple[PdfReader, PdfReader]:
    """The same document printed at once, and in many parts."""
    made = _packet()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(parts, "LIMIT", MANY)
        many = reader_of(made)
    return reader_of(made), many


def _links(reader: PdfReader) -> list[object]:
    found: list[object] = []
    for number, page in enumerate(reader.pages):
        for each in page.get("/Annots", []):
            link = each.get_object()
            to, _, left, top, _ = link["/Dest"].get_object()
            place = (reader.get_page_number(to.get_object()), float(left), float(top))
            found.append((number, [float(x) for x in link["/Rect"]], place, link["/Contents"]))
    return found


def _outline(reader: PdfReader, items: Any) -> list[object]:
    return [
        _outline(reader, item)
        if isinstance(item, list)
        else (item.title, reader.get_destination_page_number(item), item.top)
        for item in items
    ]


def _elements(reader: PdfReader) -> list[Any]:
    """Every element of the structure, in reading order."""

    def below(element: Any) -> Iterator[Any]:
        yield element
        kids = element.get("/K", [])
        for kid in kids if isinstance(kids, list) else [kids]:
            thing = kid.get_object()
            if isinstance(thing, dict) and "/S" in thing:
                assert thing["/P"].get_object() == element
                yield from below(thing)

    root: Any = reader.trailer["/Root"]
    (top,) = root["/StructTreeRoot"]["/K"]
    return list(below(top.get_object()))


def test_parts_have_the_same_pages(both: tuple[PdfReader, PdfReader]) -> None:
    """Word for word, with the same numbers in the running text and at the foot."""
    once, many = ([page.extract_text() for page in reader.pages] for reader in both)
    assert len(once) > 8
    assert many == once
    assert all(f"page {i} of {len(once)}" in " ".join(t.split()) for i, t in enumerate(once, 1))


def test_parts_have_the_same_links(both: tuple[PdfReader, PdfReader]) -> None:
    """Each from the same rectangle to the same place, across parts."""
    once, many = map(_links, both)
    assert len(once) > 3 * CARDS
    assert many == once


def test_parts_have_the_same_outline(both: tuple[PdfReader, PdfReader]) -> None:
    """A heading stands under that of the level above it, though printed in another part."""
    once, many = (_outline(reader, reader.outline) for reader in both)
    assert many == once
    assert ("Cut list", 1) in [item[:2] for item in once if isinstance(item, tuple)]


def test_parts_have_the_same_structure(both: tuple[PdfReader, PdfReader]) -> None:
    """The order of headings, tables and figures that is read aloud."""
    once, many = ([(e["/S"], e.get("/Alt")) for e in _elements(reader)] for reader in both)
    assert many == once
    assert ("/Figure", "Case 2") in many


def test_heads_of_tables_are_told_apart(both: tuple[PdfReader, PdfReader]) -> None:
    """Each cell names its heads, and each name belongs to one head."""
    for reader in both:
        elements = _elements(reader)
        heads = [str(e["/ID"]) for e in elements if "/ID" in e]
        root: Any = reader.trailer["/Root"]
        listed = [str(name) for name in root["/StructTreeRoot"]["/IDTree"]["/Names"][::2]]
        assert listed == sorted(heads)
        assert len(set(heads)) == len(heads) > CARDS
        named = {
            str(name)
            for element in elements
            for attributes in element.get("/A", [])
            for name in attributes.get_object().get("/Headers", [])
        }
        assert named
        assert named <= set(heads)


def test_marked_contents_find_their_elements(both: tuple[PdfReader, PdfReader]) -> None:
    """The number of a page or a link leads to elements of that page (ISO 32000-1, 14.7.4.4)."""
    for reader in both:
        root: Any = reader.trailer["/Root"]
        flat = root["/StructTreeRoot"]["/ParentTree"]["/Nums"]
        parents = dict(zip(map(int, flat[::2]), flat[1::2], strict=True))
        pages: Any = reader.pages
        for page in pages:
            for element in parents[int(page["/StructParents"])].get_object():
                assert element.get_object()["/Pg"].get_object() == page
            for each in page.get("/Annots", []):
                link = each.get_object()
                owner = parents[int(link["/StructParent"])].get_object()
                assert owner["/S"] == "/Link"
                kids = [kid for kid in owner["/K"] if isinstance(kid, dict)]
                assert any(kid["/Obj"].get_object() == link for kid in kids if "/Obj" in kid)


def test_printing_in_parts_gives_the_same_bytes_each_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """Which process ends first does not matter."""
    monkeypatch.setattr(parts, "LIMIT", MANY)
    made = _packet()
    assert pdf_bytes(made) == pdf_bytes(made)


WEIGHTS = st.lists(
    st.tuples(st.integers(1, 2 * LIMIT), st.frozensets(st.integers(0, 11), max_size=3)),
    min_size=1,
    max_size=12,
)


@given(WEIGHTS)
def test_parts_keep_order_and_limit(given_sections: list[tuple[int, frozenset[int]]]) -> None:
    """Every section once; a part is light, or one section, and looks back at none of its own."""
    sections = [SectionText("{}", ("",), (weight,)) for weight, _ in given_sections]
    references = [others for _, others in given_sections]
    found = parts_of(sections, references)
    assert [number for part in found for number in part.numbers] == list(range(len(sections)))
    for part in found:
        assert part.weight <= LIMIT or len(part.sections) == 1 or part.weight <= 2 * LIMIT
        if len(found) > 1:
            assert part.weight <= LIMIT or len(part.sections) == 1
            own = set(part.numbers)
            assert not any(own & references[i] & set(range(i)) for i in part.numbers)


def test_what_goes_wrong_in_another_process_is_said_here() -> None:
    """The error of the work itself, and the end of a process that gives no answer."""
    assert apart(json.loads, "[1]") == [1]
    with pytest.raises(json.JSONDecodeError):
        apart(json.loads, "{")
    with pytest.raises(StoppedError, match=r"ended before its time \(3"):
        apart(os._exit, 3)

"""Joining printed runs of pages into one PDF."""

from __future__ import annotations

import io
from collections.abc import Callable, Mapping, Sequence

import pikepdf
from pikepdf import Array, Name, Object, OutlineItem, Page, Pdf

from casewright.outputs.join_structure import join_structure
from casewright.outputs.typesetter import Outlined, Place, Typeset

__all__ = ["join"]

_LINK = "anchor:"
_ABOVE = 10  # what a reader shows above the place a link leads to [pt]
_FOOTER = b"\nQ /Artifact <</Type /Pagination /Subtype /Footer>> BDC q %s Do Q EMC\n"


def join(
    runs: Sequence[Typeset], places: Mapping[str, Place], numbers: Callable[[], bytes]
) -> bytes:
    """All runs as one document.

    Parameters
    ----------
    places
        Where each anchor lies in the whole.
    numbers
        Gives pages with nothing but their numbers, as many as there are in all; asked for last.
    """
    opened = (pikepdf.open(io.BytesIO(run.pdf)) for run in runs)  # all at once take much memory
    whole = next(opened)
    join_structure(whole, opened)
    _link(whole, places)
    _number(whole, pikepdf.open(io.BytesIO(numbers())))
    _outline(whole, runs)
    made = io.BytesIO()
    whole.save(
        made,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
    )
    return made.getvalue()


def _link(whole: Pdf, places: Mapping[str, Place]) -> None:
    """What names an anchor leads to it."""
    pages = list(whole.pages)
    known: dict[str, Object] = {}
    for page in pages:
        for link in page.obj.get(Name.Annots, ()):
            target = bytes(link.A.URI).decode().removeprefix(_LINK)
            if target not in known:
                known[target] = whole.make_indirect(_destination(pages, places[target]))
            link.Dest = known[target]
            link.Contents = f"page {places[target].page}"
            del link.A


def _destination(pages: Sequence[Page], place: Place) -> Array:
    page = pages[place.page - 1]
    return Array([page.obj, Name.XYZ, place.x, _top(page, place), 0])


def _top(page: Page, place: Place) -> float:
    return float(page.mediabox[3]) - max(place.y - _ABOVE, 0)


def _number(whole: Pdf, numbers: Pdf) -> None:
    """Lay the page numbers over the pages; pages may share what they draw on, so names differ."""
    for i, (page, number) in enumerate(zip(whole.pages, numbers.pages, strict=True), 1):
        form = whole.copy_foreign(number.as_form_xobject())
        name = page.add_resource(form, Name.XObject, Name(f"/Number{i}"))
        page.contents_add(b"q\n", prepend=True)
        page.contents_add(_FOOTER % str(name).encode())


def _outline(whole: Pdf, runs: Sequence[Typeset]) -> None:
    """All headings, each under that of the level above it."""
    pages = list(whole.pages)
    with whole.open_outline() as outline:
        outline.root.clear()
        under: list[tuple[int, list[OutlineItem]]] = [(0, outline.root)]
        before = 0
        for run in runs:
            for heading in run.headings:
                item = _item(heading, pages, before)
                while under[-1][0] >= heading.level:
                    under.pop()
                under[-1][1].append(item)
                under.append((heading.level, item.children))
            before += run.pages


def _item(heading: Outlined, pages: Sequence[Page], before: int) -> OutlineItem:
    place = heading.place.after(before)
    item = OutlineItem(heading.text, _destination(pages, place))
    item.is_closed = True
    return item

"""The typesetter: data in, pages out, and where on them everything came to lie.

It keeps all it has laid out for the rest of its process, some megabytes a page: many pages are
laid out in processes of their own (see `apart`). Each of these loads this module, so it needs
little.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import Any, Literal, NamedTuple

import typst

__all__ = ["Outlined", "Place", "PrintError", "Template", "Typeset", "typeset"]

_FONT_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
_NO_FONTS = f"no fonts in {_FONT_PACKAGE}: install the project's requirements again"

# Asked when all is laid out, and not by the pages themselves: then each is laid out only once.
_PLACES = """{
  let at(found) = {
    let place = found.location().position()
    (place.page, place.x.pt(), place.y.pt())
  }
  (
    marks: query(metadata).map(mark => (mark.value, at(mark))),
    headings: query(heading).map(it => (it.level, it.body.at("text", default: ""), at(it))),
  )
}"""

_END = ""  # the mark at the end of the last page

Template = Literal["shop.typ", "page_numbers.typ"]


class PrintError(RuntimeError):
    """The typesetter complained: a defect of the program."""


class Place(NamedTuple):
    """A point of a page: the page from 1, from its left and upper edge [pt]."""

    page: int
    x: float
    y: float

    def after(self, pages: int) -> Place:
        """The same place when there are other pages before."""
        return self._replace(page=self.page + pages)


class Outlined(NamedTuple):
    """A heading for the outline."""

    level: int
    text: str
    place: Place


class Typeset(NamedTuple):
    """Pages as PDF.

    Parameters
    ----------
    pdf
        Empty when only places were asked for.
    pages
        How many [-].
    anchors
        Where each anchor came to lie.
    kept
        On which page each block that stays on one page lies, by its number in its section.
    """

    pdf: bytes
    pages: int
    anchors: Mapping[str, Place]
    kept: Mapping[int, int]
    headings: tuple[Outlined, ...]


def typeset(
    template: Template, inputs: Mapping[str, str], *, only_places: bool = False
) -> Typeset:
    """Lay out pages in this process.

    Parameters
    ----------
    only_places
        Do not write the pages: they are laid out to learn where everything comes to lie.

    Raises
    ------
    PrintError
        When the typesetter fails or warns of anything.
    FontError
        When the typeface is missing.
    """
    source = str(Path(__file__).with_name(template))
    compiler = typst.Compiler(source, font_paths=_fonts(), sys_inputs=dict(inputs))
    try:
        pdf = b"" if only_places else _written(compiler, template)
        found = json.loads(compiler.eval(_PLACES))
    except RuntimeError as error:  # all of the typesetter's are
        raise PrintError(str(error)) from error
    return _typeset(pdf, found)


def _written(compiler: typst.Compiler, template: Template) -> bytes:
    """The pages; numbers that are laid over others are no text of their own to be read aloud."""
    made, warnings = compiler.compile_with_warnings(format="pdf", pdf_tags=template == "shop.typ")
    if warnings:
        raise PrintError("; ".join(warning.message for warning in warnings))
    if not isinstance(made, bytes):
        msg = "the typesetter gave no PDF"
        raise PrintError(msg)
    return made


def _typeset(pdf: bytes, found: Any) -> Typeset:
    """The answer in our own terms."""
    anchors: dict[str, Place] = {}
    kept: dict[int, int] = {}
    for value, at in found["marks"]:
        place = Place(*at)
        if isinstance(value, int):
            kept.setdefault(value, place.page)
        else:  # a heading that a table repeats repeats its mark: the first counts
            anchors.setdefault(value, place)
    headings = tuple(Outlined(level, text, Place(*at)) for level, text, at in found["headings"])
    return Typeset(pdf, anchors.pop(_END, Place(0, 0, 0)).page, anchors, kept, headings)


@cache
def _fonts() -> typst.Fonts:
    """The one typeface, and no font of the machine: a print depends on no place."""
    spec = find_spec(_FONT_PACKAGE)
    folders = spec.submodule_search_locations if spec is not None else None
    fonts = typst.Fonts(
        include_system_fonts=False,
        include_embedded_fonts=False,
        font_paths=[str(Path(folder, "files")) for folder in folders or ()],
    )
    if not fonts.families():
        from casewright.outputs.font_error import FontError

        raise FontError(_NO_FONTS)
    return fonts

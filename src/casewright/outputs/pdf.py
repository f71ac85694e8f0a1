"""Documents as PDF: the same document always gives the same bytes."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

import typst

from casewright.errors import CasewrightError
from casewright.outputs.document import Document, check_links
from casewright.outputs.typst_data import document_json

__all__ = ["FontError", "PrintError", "pdf_bytes"]

_FONT_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
_NO_FONTS = f"no fonts in {_FONT_PACKAGE}: install the project's requirements again"


class PrintError(RuntimeError):
    """The typesetter complained: a defect of the program."""


class FontError(CasewrightError):
    """The typeface that all pages are set in is not installed."""


@cache
def _fonts() -> typst.Fonts:
    """The one typeface, and no font of the machine: a print depends on no place."""
    try:
        folder = files(_FONT_PACKAGE) / "files"
    except ModuleNotFoundError as error:
        raise FontError(_NO_FONTS) from error
    fonts = typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder)]
    )
    if not fonts.families():
        raise FontError(_NO_FONTS)
    return fonts


@cache
def _template() -> bytes:
    return (files("casewright.outputs") / "shop.typ").read_bytes()


def pdf_bytes(document: Document) -> bytes:
    """A document as PDF.

    It holds no date and no name of a machine. Text is text, fonts are embedded, links lead from
    page to page, sections are in the outline, figures have their alternatives in words.

    The typesetter keeps what it has laid out for the rest of its process, some megabytes a page:
    what prints again and again should call this in a child process and get the memory back.

    Raises
    ------
    LinkError
        When something leads nowhere.
    PrintError
        When the typesetter fails or warns of anything.
    FontError
        When the typeface is missing.
    """
    check_links(document)
    data = document_json(document)
    try:
        made, warnings = typst.compile_with_warnings(
            _template(), font_paths=_fonts(), format="pdf", sys_inputs={"data": data}
        )
    except typst.TypstError as error:
        raise PrintError(error.message) from error
    if warnings:
        raise PrintError("; ".join(warning.message for warning in warnings))
    return made

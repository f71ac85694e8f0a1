"""Documents as PDF: the same document always gives the same bytes."""

from __future__ import annotations

from casewright.outputs.document import Document, check_links
from casewright.outputs.typesetter import FontError, PrintError, typeset, typeset_apart
from casewright.outputs.typst_data import document_json

__all__ = ["FontError", "PrintError", "pdf_bytes"]


def pdf_bytes(document: Document, *, own_process: bool = False) -> bytes:
    """A document as PDF.

    It holds no date and no name of a machine. Text is text, fonts are embedded, links lead from
    page to page, sections are in the outline, figures have their alternatives in words.

    Parameters
    ----------
    own_process
        Let a child process do it: for a server, which would otherwise keep the memory.

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
    return typeset_apart(data) if own_process else typeset(data)

"""'page 3 of 221' on every page: pages with nothing else, to be laid over those they belong to."""

from __future__ import annotations

import json
from collections.abc import Sequence

from casewright.drawing import Ink
from casewright.drawing.lettering import FAMILIES
from casewright.outputs.blocks import Labels
from casewright.outputs.document import Document, Section
from casewright.outputs.typst_data import paper_data
from casewright.outputs.typst_lines import Json

__all__ = ["page_numbers_json"]


def page_numbers_json(document: Document, pages: Sequence[int]) -> str:
    """What the typesetter needs to number pages.

    Parameters
    ----------
    pages
        How many pages each section has [-].
    """
    runs = [
        _run(section, document, count)
        for section, count in zip(document.sections, pages, strict=True)
    ]
    return json.dumps({"ink": Ink.INK.value, "family": FAMILIES[-1], "runs": runs})


def _run(section: Section, document: Document, count: int) -> Json:
    paper = section.paper or document.paper
    sheets = [block for block in section.blocks if isinstance(block, Labels)]
    bare = len(section.blocks) == len(sheets)
    left = sheets[0].sheet.left_mm if bare and sheets[0].note else None
    return {"paper": paper_data(paper), "count": count, "sheets": bare, "left": left}

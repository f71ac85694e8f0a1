"""Reading a printed page back: where its lines run, in millimetres of paper."""

from __future__ import annotations

import io
import itertools
import math
from typing import Any, NamedTuple

from pypdf import PageObject, PdfReader
from pypdf.generic import ContentStream

from casewright.drawing import Plot
from casewright.outputs.blocks import Block, Figure
from casewright.outputs.document import LETTER, Document, Paper, Section
from casewright.outputs.pdf import pdf_bytes

__all__ = ["Line", "document", "lines", "printed", "reader_of", "section"]

_POINT_MM = 25.4 / 72


class Line(NamedTuple):
    """A straight line on the page [mm], its width [mm]."""

    x0: float
    y0: float
    x1: float
    y1: float
    width: float

    @property
    def length(self) -> float:
        """[mm]."""
        return math.hypot(self.x1 - self.x0, self.y1 - self.y0)


Matrix = tuple[float, float, float, float, float, float]
_UNIT: Matrix = (1, 0, 0, 1, 0, 0)


def _times(m: Matrix, n: Matrix) -> Matrix:
    a, b, c, d, e, f = m
    p, q, r, s, t, u = n
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s,
        e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip


def _mm(m: Matrix, x: float, y: float) -> tuple[float, float]:
    return (
        (m[0] * x + m[2] * y + m[4]) * _POINT_MM,
        (m[1] * x + m[3] * y + m[5]) * _POINT_MM,
    )


def lines(page: PageObject) -> list[Line]:
    """Every straight stroke of a page, read from its content stream."""
    found: list[Line] = []
    matrix, width = _UNIT, 1.0
    saved: list[tuple[Matrix, float]] = []
    path: list[tuple[float, float]] = []
    operations: Any = ContentStream(page.get_contents(), page.pdf).operations
    for values, operator in operations:
        match operator:
            case b"q":
                saved.append((matrix, width))
            case b"Q":
                matrix, width = saved.pop()
            case b"cm":
                a, b, c, d, e, f = map(float, values)
                matrix = _times((a, b, c, d, e, f), matrix)
            case b"w":
                width = float(values[0])
            case b"m":
                path = [_mm(matrix, *map(float, values))]
            case b"l":
                path.append(_mm(matrix, *map(float, values)))
            case b"S":
                scaled = width * math.hypot(matrix[0], matrix[1]) * _POINT_MM
                pairs = itertools.pairwise(path)
                found.extend(Line(*start, *end, scaled) for start, end in pairs)
            case _:
                pass
    return found


def section(*blocks: Block, title: str = "Page", anchor: str = "") -> Section:
    """A section of blocks."""
    return Section(title, blocks, anchor)


def document(*sections: Section, paper: Paper = LETTER) -> Document:
    """A small document in inches."""
    return Document("Shop packet", "Pantry", "c0ffee", "in", paper, sections, "Sizes in inches")


def reader_of(made: Document) -> PdfReader:
    """A document, printed and opened."""
    return PdfReader(io.BytesIO(pdf_bytes(made)))


def printed(*blocks: Block | Plot) -> PdfReader:
    """A one-section document, printed and read back."""
    made = [Figure(block) if isinstance(block, Plot) else block for block in blocks]
    return reader_of(document(section(*made)))

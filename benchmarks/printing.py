"""Drawing and printing a packet of about sixty pages, step by step, cold and warm.

Run with `python benchmarks/printing.py`. Each page holds a dimensioned case at the largest scale
that fits, a table, and steps with cautions; the target is two seconds for everything.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from fractions import Fraction
from functools import partial
from typing import TypeVar

from memory import Watch

from casewright.dims import Measure
from casewright.drawing import (
    SECTION,
    Balloon,
    Dimensions,
    Plot,
    Running,
    Scene,
    Span,
    Stop,
    Tag,
    View,
    rectangle,
    sheet,
)
from casewright.outputs.blocks import Caution, CheckList, Column, Figure, Row, Step, Table
from casewright.outputs.document import LETTER, Document, Section
from casewright.outputs.inlines import Link, PageNumber
from casewright.outputs.pdf import pdf_bytes
from casewright.outputs.svg import svg_text
from casewright.outputs.typst_data import document_json

PAGES = 60
ROWS = 9
INCH = Fraction(127, 5)
Result = TypeVar("Result")


def size(inches: Fraction | int, path: str) -> Measure:
    """A number with a path."""
    return Measure(Fraction(inches) * INCH, "in", path)


def case(number: int) -> Scene:
    """A front with chains of dimensions, a tape of holes and marks."""
    width, height, thick = Fraction(18 * 32 + number, 32), Fraction(39), Fraction(23, 32)
    cuts = [Fraction(0), thick, width - thick, width]
    spans = tuple(
        Span(a * INCH, b * INCH, size(b - a, f"case.{number}.{a}"))
        for a, b in zip([*cuts, Fraction(0)], [*cuts[1:], width, width], strict=False)
        if a < b
    )
    stops = tuple(
        Stop(k * 32 * Fraction(1), Measure(Fraction(32 * k), "in", f"pin.{k}"))
        for k in range(2, 24)
    )
    return Scene(
        (
            rectangle((0, 0), (width * INCH, height * INCH)),
            rectangle((thick * INCH, 0), ((width - thick) * INCH, thick * INCH), hatch=SECTION),
            Dimensions("below", 0, spans),
            Dimensions("left", 0, (Span(0, height * INCH, size(height, "h")),)),
            Running("right", width * INCH, 0, stops),
            Balloon((100, 500), str(number), (20, 10), tag=Tag(target=f"page {number}")),
        ),
        f"Case {number}",
    )


def page(number: int, drawn: Plot) -> Section:
    """A page as in a packet."""
    rows = tuple(
        Row((Link(str(i), f"page {i}"), "side", size(Fraction(309, 8), "x"), PageNumber("page 1")))
        for i in range(ROWS)
    )
    columns = (Column("Mark"), Column("Part", share=1), Column("Length", "size"), Column("Page"))
    steps = tuple(Step(("Fence ", size(Fraction(385, 32), "y")), ("Check",)) for _ in range(4))
    blocks = (Figure(drawn), Table(columns, rows), CheckList(steps), Caution("Guard on."))
    return Section(f"Case {number}", blocks, f"page {number}")


def timed(work: Callable[[], Result]) -> tuple[Result, float]:
    """A result and how long it took [s]."""
    start = time.perf_counter()
    result = work()
    return result, time.perf_counter() - start


def written(plots: list[Plot]) -> list[str]:
    """Every drawing by itself."""
    return [svg_text(plot) for plot in plots]


def main() -> None:
    """Print the table."""
    peak = 0.0
    for heat in ("cold", "warm"):
        plots, drawing = timed(
            lambda: [
                sheet([[View(case(n), "Front")]], LETTER.text_width_mm, 125, "in")
                for n in range(PAGES)
            ]
        )
        _, writing = timed(partial(written, plots))
        document = Document(
            "Packet", "Bench", "0", "in", LETTER, tuple(map(page, range(PAGES), plots))
        )
        _, data = timed(partial(document_json, document))
        with Watch() as memory:
            made, printing = timed(partial(pdf_bytes, document))
        peak = max(peak, memory.peak)
        whole = drawing + printing
        print(
            f"{heat}: draw {drawing:.2f} s, svg {writing:.2f} s, data {data:.2f} s, "
            f"pdf {printing:.2f} s ({len(made) / 1e6:.1f} MB); together {whole:.2f} s, "
            f"target 2 s"
        )
    print(f"{PAGES} pages, peak memory of all processes {peak:.0f} MB")


if __name__ == "__main__":
    main()

"""What a page is made of."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from casewright.drawing import Plot, SignKind
from casewright.outputs.inlines import Rich

__all__ = [
    "Align",
    "Beside",
    "Block",
    "Bullets",
    "Callout",
    "Caution",
    "CheckList",
    "Column",
    "Contents",
    "Figure",
    "Heading",
    "Keep",
    "Label",
    "LabelSheet",
    "Labels",
    "Paragraph",
    "Row",
    "Space",
    "Step",
    "Table",
]  # fmt: skip

Align = Literal["left", "centre", "right", "size"]
"""How a column stands; in a column of sizes whole numbers stand under each other."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading inside a section; level 2 or 3."""

    text: str
    level: int = 2
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph; soft ones step back."""

    text: Rich
    soft: bool = False
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Bullets:
    """A plain list."""

    items: tuple[Rich, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do, with a box to tick.

    Parameters
    ----------
    text
        What to do.
    notes
        Lines under it: settings, checks, blanks for readings.
    cautions
        What can hurt at this very step.
    anchor
        Where others lead to.
    """

    text: Rich
    notes: tuple[Rich, ...] = ()
    cautions: tuple[Rich, ...] = ()
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class CheckList:
    """Steps to tick off.

    Parameters
    ----------
    start
        Number of the first; None: without numbers.
    boxes
        Boxes to tick at each step: one for each thing made by these steps [-].
    """

    steps: tuple[Step, ...]
    start: int | None = 1
    boxes: int = 1


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt someone, at the place where it can."""

    text: Rich
    title: str = "Caution"


@dataclass(frozen=True, slots=True)
class Callout:
    """A note under one of the accents: look here, measure before cutting, a question."""

    sign: SignKind
    text: Rich
    title: str = ""


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table.

    Parameters
    ----------
    title
        Its heading.
    share
        Its share of the width left over; 0: as wide as its contents.
    """

    title: str
    align: Align = "left"
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a table; one cell alone makes a row of its own across all columns.

    Parameters
    ----------
    cells
        One a column, or one alone: the heading of a group of rows.
    anchor
        Where others lead to.
    """

    cells: tuple[Rich, ...]
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """A table whose headings are repeated on each page it runs to."""

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    small: bool = False


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing, printed as large as its plot says.

    Parameters
    ----------
    caption
        Words under it.
    alternative
        What it shows, for those who cannot see it; else the plot's title.
    """

    plot: Plot
    caption: Rich = ""
    anchor: str = ""
    alternative: str = ""


@dataclass(frozen=True, slots=True)
class Beside:
    """Blocks beside each other.

    Parameters
    ----------
    columns
        What stands in each.
    shares
        Share of the width of each; empty: equal.
    """

    columns: tuple[tuple[Block, ...], ...]
    shares: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Keep:
    """Blocks that stay on one page."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """The sections and the pages they begin on."""


@dataclass(frozen=True, slots=True)
class Space:
    """Room left free [mm]."""

    height_mm: float


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """How sticky labels lie on a sheet [mm].

    Parameters
    ----------
    across, down
        How many [-].
    width_mm, height_mm
        Size of one.
    left_mm, top_mm
        From the edges of the paper to the first.
    step_x_mm, step_y_mm
        From one to the next.
    """

    across: int
    down: int
    width_mm: float
    height_mm: float
    left_mm: float
    top_mm: float
    step_x_mm: float
    step_y_mm: float


@dataclass(frozen=True, slots=True)
class Label:
    """A label to stick on a part.

    Parameters
    ----------
    mark
        The short number, large.
    title
        What it is.
    lines
        Under the title: case, size to cut.
    signs
        Hand, face, measure first.
    toward
        What the triangle on the label's lower edge points at: 'front edge'; empty for none.
    target
        Anchor of the part's card.
    aside
        Smaller, beside them: finished size, stock, edges.
    after
        At its lower edge: what comes next.
    opens
        Address that its code leads a phone to; empty: it bears no code.
    """

    mark: str
    title: str
    lines: tuple[Rich, ...] = ()
    signs: tuple[SignKind, ...] = ()
    toward: str = ""
    target: str = ""
    aside: tuple[Rich, ...] = field(default=(), kw_only=True)
    after: Rich = field(default="", kw_only=True)
    opens: str = field(default="", kw_only=True)


@dataclass(frozen=True, slots=True)
class Labels:
    """Sheets of labels, row by row; they fill pages of their own.

    Parameters
    ----------
    skip
        Labels already used on the first sheet [-].
    outlines
        Draw thin outlines, to cut plain paper along.
    note
        Above the labels of each sheet: what to print on.
    """

    sheet: LabelSheet
    labels: tuple[Label, ...]
    skip: int = field(default=0, kw_only=True)
    outlines: bool = field(default=True, kw_only=True)
    note: Rich = field(default="", kw_only=True)


Block = (
    Heading | Paragraph | Bullets | CheckList | Caution | Callout | Table | Figure | Beside | Keep
    | Contents | Space | Labels
)  # fmt: skip

"""Sections as HTML: the same words and drawings as on paper, for a screen.

Nothing a person wrote becomes markup: every word is escaped.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.drawing import SignKind
from casewright.outputs import blocks as b
from casewright.outputs.document import Section
from casewright.outputs.html_lines import Leads, anchor_id, clean, line_html, sign_html
from casewright.outputs.inlines import Rich, rich_text
from casewright.outputs.svg import svg_text

__all__ = ["section_html"]


def section_html(section: Section, leads: Leads) -> str:
    """A section with its title.

    Parameters
    ----------
    leads
        Where anchors are found.
    """
    title = "" if section.plain else f"<h{_TITLE}>{clean(section.title)}</h{_TITLE}>"
    return (
        f"<section{_id(section.anchor)}>{title}{_Writer(leads).blocks(section.blocks)}</section>"
    )


def _id(anchor: str) -> str:
    return f' id="{anchor_id(anchor)}"' if anchor else ""


_TITLE = 2  # rank of a section's title: above it stands the job's name [-]


class _Writer:
    """Writes blocks, one after the other."""

    def __init__(self, leads: Leads) -> None:
        self.leads = leads
        self._open: list[int] = []  # levels of the headings that this place stands under

    def blocks(self, blocks: tuple[b.Block, ...]) -> str:
        """Several blocks."""
        return "".join(self.block(block) for block in blocks)

    def block(self, block: b.Block) -> str:
        """One block."""
        match block:
            case b.Heading(text, level, anchor):
                tag = f"h{self._rank(level)}"
                made = f"<{tag}{_id(anchor)}>{self.line(text)}</{tag}>"
            case b.Paragraph(text, soft, anchor):
                kind = ' class="soft"' if soft else ""
                made = f"<p{kind}{_id(anchor)}>{self.line(text)}</p>"
            case b.Bullets(items):
                made = f"<ul>{''.join(f'<li>{self.line(item)}</li>' for item in items)}</ul>"
            case b.CheckList():
                made = self.steps(block)
            case b.Caution(text, title):
                made = self.callout("caution", text, title)
            case b.Callout(sign, text, title):
                made = self.callout(sign, text, title)
            case b.Table():
                made = self.table(block)
            case b.Figure():
                made = self.figure(block)
            case _:
                made = self.arrangement(block)
        return made

    def _rank(self, level: int) -> int:
        """Rank of a heading: none is left out on the way down (WCAG 2.2, technique G141)."""
        while self._open and self._open[-1] >= level:
            self._open.pop()
        self._open.append(level)
        return _TITLE + len(self._open)

    def arrangement(self, block: b.Beside | b.Keep | b.Contents | b.Space | b.Labels) -> str:
        """Blocks beside each other or kept together; what is for paper alone is left out."""
        match block:
            case b.Beside(columns):
                inside = "".join(f"<div>{self.blocks(column)}</div>" for column in columns)
                return f'<div class="beside">{inside}</div>'
            case b.Keep(blocks):
                return f'<div class="keep">{self.blocks(blocks)}</div>'
            case b.Contents() | b.Space() | b.Labels():
                return ""

    def line(self, rich: Rich) -> str:
        """A line."""
        return line_html(rich, self.leads)

    def steps(self, block: b.CheckList) -> str:
        """Steps in order."""
        start = f' start="{block.start}"' if block.start is not None else ""
        tag = "ol" if block.start is not None else "ul"
        items = "".join(
            f"<li{_id(step.anchor)}>{self.line(step.text)}{''.join(self.under(step))}</li>"
            for step in block.steps
        )
        return f'<{tag} class="steps"{start}>{items}</{tag}>'

    def under(self, step: b.Step) -> Iterator[str]:
        """Notes and cautions of a step."""
        yield from (f'<p class="note">{self.line(note)}</p>' for note in step.notes)
        yield from (self.callout("caution", caution, "") for caution in step.cautions)

    def callout(self, sign: SignKind, text: Rich, title: str) -> str:
        """A note under a sign."""
        head = f"<strong>{clean(title)}</strong> " if title else ""
        kind = sign.replace(" ", "-")
        words = f"<p>{head}{self.line(text)}</p>"
        return f'<aside class="callout {kind}" role="note">{sign_html(sign)}{words}</aside>'

    def table(self, block: b.Table) -> str:
        """A table; a row of one cell is the heading of those under it."""
        heads = "".join(
            f'<th scope="col" class="{column.align}">{clean(column.title)}</th>'
            for column in block.columns
        )
        rows = "".join(self.row(block, row) for row in block.rows)
        small = " small" if block.small else ""
        head = f"<thead><tr>{heads}</tr></thead>"
        return (
            f'<div class="table{small}" tabindex="0" role="group">'
            f"<table>{head}<tbody>{rows}</tbody></table></div>"
        )

    def row(self, table: b.Table, row: b.Row) -> str:
        """A row of a table."""
        if len(row.cells) != len(table.columns):
            span = len(table.columns)
            inside = f'<th scope="rowgroup" colspan="{span}">{self.line(row.cells[0])}</th>'
        else:
            inside = "".join(
                f'<td class="{column.align}">{self.line(cell)}</td>'
                for column, cell in zip(table.columns, row.cells, strict=True)
            )
        return f"<tr{_id(row.anchor)}>{inside}</tr>"

    def figure(self, block: b.Figure) -> str:
        """A drawing as wide as on paper, narrower where the screen is."""
        says = block.alternative or block.plot.title or rich_text(block.caption)
        caption = f"<figcaption>{self.line(block.caption)}</figcaption>" if block.caption else ""
        drawing = svg_text(block.plot, with_ids=False)
        return f'<figure{_id(block.anchor)} aria-label="{clean(says)}">{drawing}{caption}</figure>'

"""How to read the packet: signs, datums, marks."""

from __future__ import annotations

from casewright.drawing import SIGNS
from casewright.outputs.blocks import Block, Column, Heading, Paragraph, Row, Table
from casewright.outputs.document import Section
from casewright.outputs.inlines import SignMark

__all__ = ["key_section"]


def key_section() -> Section:
    """The signs of the drawings and the few conventions that everything keeps to."""
    rows = tuple(Row((SignMark(sign), words)) for sign, words in SIGNS.items() if sign != "datum")
    blocks: tuple[Block, ...] = (
        Paragraph(
            "A part lies with its datum edge nearest to you. Measure every distance from the "
            "datum edge or the datum end, which the dark triangles mark; never from a cut you "
            "have just made."
        ),
        Paragraph(
            "Face A is the face that shows. Left-hand and right-hand parts have the same numbers "
            "and are mirror images: check the letter on the drawing before the first cut."
        ),
        Paragraph(
            "The first piece of every set-up is checked against the size given with it before the "
            "rest is cut. A number with ~ before it is rounded for printing only."
        ),
        Heading("Signs", 2),
        Table((Column("", "centre"), Column("means", share=1.0)), rows),
    )
    return Section("How to read this packet", blocks, "key")

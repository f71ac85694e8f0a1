"""How to read the packet: signs, datums, marks."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.drawing import plot
from casewright.drawing.key import key_scene
from casewright.outputs.blocks import Block, Figure, Heading, Keep, Paragraph

__all__ = ["key_blocks"]


def key_blocks() -> Iterator[Block]:
    """The signs of the drawings and the few conventions that everything keeps to."""
    words = (
        Paragraph(
            "A part lies with its datum edge nearest to you. Measure every distance from the "
            "datum edge or the datum end, which the dark triangles mark; never from a cut you "
            "have just made."
        ),
        Paragraph(
            "Face A looks into the box, or, of a door and of what stands in front, into the room; "
            "face B is the other one. Left-hand and right-hand parts have the same numbers and "
            "are mirror images: check the letter on the drawing before the first cut. Parts that "
            "are the same share a card."
        ),
        Paragraph(
            "The first piece of every set-up is checked against the size given with it before the "
            "rest is cut. A number with ~ before it is rounded for printing: to what a calliper "
            "shows where it is a thickness or is cut to fit one, else to what a tape shows."
        ),
    )
    yield Keep((Heading("How to read this packet", 2, "key"), *words, Figure(plot(key_scene()))))

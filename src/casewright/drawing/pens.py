"""Pens and inks: line widths and dashes after ISO 128, and the few colours that carry meaning."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

__all__ = [
    "CENTRE", "CUT", "DIMENSION", "FINE", "HATCHING", "HIDDEN", "NEIGHBOUR", "THIN", "TICK",
    "VISIBLE", "Ink", "Pen",
]  # fmt: skip


class Ink(Enum):
    """Colours on paper. Each accent always comes with a shape of its own, never alone."""

    INK = "#1d1b19"
    """Lines and lettering."""
    SOFT = "#6a645d"
    """Lettering that may step back: captions, running heads."""
    RULE = "#b9b2a8"
    """Hairlines between rows."""
    SHADE = "#ded7cb"
    """Fill of cut wood."""
    TINT = "#f4f0e9"
    """Fill of a surface that is meant: the part at hand."""
    GLASS = "#e9f0f0"
    """Fill of glass."""
    PAPER = "#ffffff"
    """Ground of lettering that lies over lines."""
    LOOK = "#bf4e14"
    """Look here."""
    MEASURE = "#0b6478"
    """Measure before cutting."""
    ASK = "#7a2c73"
    """A question is open."""


@dataclass(frozen=True, slots=True)
class Pen:
    """A kind of line.

    Parameters
    ----------
    name
        What it draws.
    width_mm
        Width on paper [mm], from the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7.
    dash_mm
        Lengths of dash, gap, dash, ... on paper [mm]; empty for a continuous line.

    Sources
    -------
    ISO 128 (from memory): dashed is 12 widths on, 3 off; chain 24 on, 3 off, 6 on, 3 off.
    """

    name: str
    width_mm: float
    dash_mm: tuple[float, ...] = ()


CUT = Pen("cut", 0.7)
"""Outline of what a section cuts through."""
VISIBLE = Pen("visible", 0.5)
"""Outlines that are seen."""
THIN = Pen("thin", 0.25)
"""Edges seen that matter less: far edges, joints between strips."""
HIDDEN = Pen("hidden", 0.25, (3.0, 0.75))
"""Edges behind something."""
NEIGHBOUR = Pen("neighbour", 0.25, (6.0, 0.75, 1.5, 0.75, 1.5, 0.75))
"""Outline of what stands beside and is not part of the thing drawn."""
CENTRE = Pen("centre", 0.18, (4.32, 0.54, 1.08, 0.54))
"""Centre lines and axes."""
DIMENSION = Pen("dimension", 0.18)
"""Dimension, extension and leader lines."""
TICK = Pen("tick", 0.35)
"""Oblique strokes at the ends of dimension lines."""
HATCHING = Pen("hatching", 0.13)
"""Lines of a hatch."""
FINE = Pen("fine", 0.13)
"""Marks of a surface: grain, glass."""

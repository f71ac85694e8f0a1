"""The drawing kernel: scenes in model millimetres, lettering in millimetres of paper.

A scene is a tuple of elements. At a scale it becomes a plot: strokes, arcs and words on paper,
which the writers in `outputs` turn into files.
"""

from casewright.drawing.choice import Choice
from casewright.drawing.clashes import clashes, struck
from casewright.drawing.dimension import Aligned, Dimensions, Span, dimension
from casewright.drawing.hatching import BACK_SECTION, SECTION, Hatch
from casewright.drawing.marks import ArcMark, Area, Group, Mark, Stroke, Tag, Word
from casewright.drawing.notes import Balloon, Leader, Text
from casewright.drawing.pens import (
    CENTRE,
    CUT,
    DIMENSION,
    FINE,
    HATCHING,
    HIDDEN,
    NEIGHBOUR,
    THIN,
    TICK,
    VISIBLE,
    Ink,
    Pen,
)
from casewright.drawing.plots import Plots
from casewright.drawing.room_overview import room_overview
from casewright.drawing.running import Running, Stop
from casewright.drawing.scales import SCALES, ScaleError, check_bar, scale_text
from casewright.drawing.scene import Plot, Scene, plot, plot_within
from casewright.drawing.shapes import (
    Arc,
    Element,
    Length,
    Point,
    Polyline,
    circle,
    line,
    rectangle,
)
from casewright.drawing.sheet import View, largest, sheet, sheet_at
from casewright.drawing.stacking import Stack, pieces
from casewright.drawing.symbols import SIGNS, GrainArrow, Sign, SignKind

__all__ = [
    "BACK_SECTION", "CENTRE", "CUT", "DIMENSION", "FINE", "HATCHING", "HIDDEN", "NEIGHBOUR",
    "SCALES", "SECTION", "SIGNS", "THIN", "TICK", "VISIBLE", "Aligned", "Arc", "ArcMark", "Area",
    "Balloon", "Choice", "Dimensions", "Element", "GrainArrow", "Group", "Hatch", "Ink", "Leader",
    "Length", "Mark", "Pen", "Plot", "Plots", "Point", "Polyline", "Running", "ScaleError",
    "Scene", "Sign", "SignKind", "Span", "Stack", "Stop", "Stroke", "Tag", "Text", "View", "Word",
    "check_bar", "circle", "clashes", "dimension", "largest", "line", "pieces", "plot",
    "plot_within", "rectangle", "room_overview", "scale_text", "sheet", "sheet_at", "struck",
]  # fmt: skip

"""Fillers on the sheet of their wall: the edge to scribe, drawn, with what comes off where."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress

from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.drawing import ScaleError, largest
from casewright.drawing.scribe_profile import WIDER, scribe_scene
from casewright.install.hanging import WallHanging
from casewright.install.scribing import ScribeProfile
from casewright.outputs.blocks import Block, Column, Figure, Heading, Keep, Paragraph, Row, Table
from casewright.outputs.document import Paper
from casewright.outputs.inlines import Blank, Rich, Strong
from casewright.room.fillers import GAP_HEIGHTS

__all__ = ["scribe_blocks"]

_TALL_MM = 92.0
_EACH = 3
"""At most so many fillers side by side in one figure."""

_HOW = (
    "Hold a filler upright with its edge against the wall, so that it touches at the narrowest "
    "place: its other edge then lies over the case by what the compasses are set to. Draw them "
    "down the wall, saw or plane to the line, the back of the edge a little under. The line is "
    "drawn as the wall was read, straight from height to height; read the gaps again beside the "
    f"case. Hatched comes off; drawn {WIDER} times as wide as high."
)
_COLUMNS = (
    Column("Filler", share=1.6), Column("At the", share=0.7), Column("Above the floor", "size"),
    Column("Gap", "size"), Column("Read", share=0.8), Column("Comes off", "size"),
)  # fmt: skip


def scribe_blocks(hang: WallHanging, unit: Unit, paper: Paper) -> Iterator[Block]:
    """Drawing and table; nothing where no filler meets the wall."""
    profiles = hang.profiles
    if not profiles:
        return
    figures: list[Block] = []
    rows_of = -(-len(profiles) // _EACH)
    each_row = -(-len(profiles) // rows_of)
    for first in range(0, len(profiles), each_row):
        some = profiles[first : first + each_row]
        with suppress(ScaleError):
            plot = largest(scribe_scene(some, unit), paper.text_width_mm, _TALL_MM, unit)
            names = ", ".join(each.filler.part.title for each in some)
            figures.append(Figure(plot, alternative=f"{names}: what is scribed off"))
    heading, how = Heading("Fillers, scribed to the wall", 3), Paragraph(_HOW)
    yield Keep((heading, how, *figures[:1]))
    yield from figures[1:]
    rows = tuple(row for each in profiles for row in _rows(each, unit))
    yield Table(_COLUMNS, rows, small=True)


def _rows(profile: ScribeProfile, unit: Unit) -> Iterator[Row]:
    part, is_read = profile.filler.part, profile.filler.is_read
    words: Rich = (
        Strong(f"{part.mark}, {part.title}"), f" of {profile.run.spec.title}: cut ",
        measure_of(part.finished.width, unit), " wide; compasses set to ",
        Strong(measure_of(profile.compasses, unit)), "; the largest gap beside it is ",
        Strong(measure_of(profile.largest, unit)),
    )  # fmt: skip
    yield Row((words,))
    for name, point in zip(GAP_HEIGHTS, profile.points, strict=True):
        place = {"low": "foot", "middle": "middle", "high": "head"}[name]
        yield Row(
            (
                "", place, measure_of(point.above_floor, unit), measure_of(point.gap, unit),
                "" if is_read else Blank(), Strong(measure_of(point.off, unit)),
            )
        )  # fmt: skip

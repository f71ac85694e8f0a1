"""Jigs of the job's own: what to make before the work begins, templates full size."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.dims import measure_of
from casewright.dims.count_text import counted
from casewright.drawing import Plot, Scene, largest
from casewright.drawing.jig_views import corner_scene, full_size, square_scene, template_scene
from casewright.drawing.story_stick import Stick, StickMark, stick_plots
from casewright.drawing.template_strips import template_plots
from casewright.jigs import CornerTemplate, Jigs, MarkingStick, Spacer, Square, Template
from casewright.outputs.blocks import Block, Column, Figure, Heading, Keep, Paragraph, Row, Table
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, SignMark, Strong
from casewright.packet.card_words import open_holes
from casewright.room.model import Room

__all__ = ["JIGS", "jig_section"]

JIGS = "jigs"
"""Anchor of the section."""

_HEAD_MM = 28.0  # what stands over a drawing
_PIECES_MM = 32.0  # the same over one in pieces
_SMALL_MM = 92.0  # height of a square that no page holds
_STRIPS_MM = 12.0  # what stands over strips of a stick
_HOW = (
    "A number that is set once cannot be set wrong the second time. All of these come out of "
    "offcuts: thin sheet for plates, a straight lath for sticks. Drawings named full size are "
    "printed without scaling: lay a rule on the bar first. Write on each what it is for, an arrow "
    "to the end its stop is at, and try it on an offcut before it touches a door."
)
_PIECES = (
    " It is longer than a page: cut its pieces out, lay each foot as far from the end stop as is "
    "written at it, all edges along one line, and prick the holes through."
)
_NOT_YET = "Do not make it yet: the holes wait for a data sheet, see the questions."


def jig_section(room: Room, jigs: Jigs, paper: Paper) -> Section | None:
    """The section; None where nothing is worth making."""
    if not jigs.has_any:
        return None
    unit = room.spec.unit
    drawn = [(template, _whole(template_scene(template, unit), room, paper))
             for template in jigs.templates]  # fmt: skip
    blocks: list[Block] = [Paragraph(_HOW)]
    blocks.extend(_spacer(room, spacer) for spacer in jigs.spacers)
    blocks.extend(_square(room, square, paper) for square in jigs.squares)
    blocks.extend(_corner(room, template) for template in jigs.corners)
    blocks.extend(_stick(room, stick) for stick in jigs.sticks)
    for stick in jigs.sticks:
        blocks.extend(_on_strips(room, stick, paper))
    for template, view in drawn:
        area = (paper.text_width_mm, paper.text_height_mm - _PIECES_MM)
        views = (view,) if view else tuple(template_plots(template, unit, area))
        blocks.extend(_template(room, template, views, is_whole=view is not None))
    return Section("Jigs of this job", tuple(blocks), JIGS)


def _corner(room: Room, template: CornerTemplate) -> Block:
    unit = room.spec.unit
    drawn = full_size(corner_scene(template, unit), unit)
    title = f"{template.title}, full size, for {counted(len(template.uses), 'pane')}"
    how: list[Inline] = [template.how]
    if template.offset is not None:
        off, radius = measure_of(template.offset, unit), measure_of(template.radius, unit)
        how += [" It holds for a bush that keeps the bit ", Strong(off)]
        how += [" off; the pane's corner comes out with a radius of ", Strong(radius), "."]
    figure = Figure(drawn, alternative=f"{template.title}, full size")
    return Keep((Heading(title, 3, template.path), Paragraph(tuple(how)), figure))


def _template(
    room: Room, template: Template, views: tuple[Plot, ...], *, is_whole: bool
) -> Iterator[Block]:
    """How it is used over its first drawing; the others each on a page of their own."""
    title = f"{template.title}, full size, for {counted(len(template.uses), 'piece')}"
    kind = "pull" if template.pitch is None else "hinge plate"
    how = _how(room, template, kind)
    if template.pitch is not None:
        pitch = measure_of(template.pitch, room.spec.unit)
        how = (*how, " Told are the middles of the plates; the two holes of each lie ", pitch,
               " apart.")  # fmt: skip
    if not is_whole:
        how = (*how, _PIECES)
    for number, view in enumerate(views):
        figure = Figure(view, alternative=title)
        if number:
            yield Keep((Heading(f"{template.title}, full size, goes on", 3), figure))
        else:
            yield Keep((Heading(title, 3, template.path), Paragraph(how), figure))


def _how(room: Room, jig: Template | MarkingStick, kind: str) -> tuple[Inline, ...]:
    """How it is used and for what; not yet while its holes wait for a sheet."""
    how = jig.how + f" For {_named(room, jig.uses)}."
    if any(kind in open_holes(part, room) for part in room.parts if part.path in jig.uses):
        return (SignMark("ask"), " ", Strong(_NOT_YET), " ", how)
    return (how,)


def _whole(scene: Scene, room: Room, paper: Paper) -> Plot | None:
    """Full size with its check bar, where a page holds it."""
    whole = full_size(scene, room.spec.unit)
    wide, high = whole.area.x1 - whole.area.x0, whole.area.y1 - whole.area.y0
    fits = wide <= paper.text_width_mm and high <= paper.text_height_mm - _HEAD_MM
    return whole if fits else None


def _named(room: Room, paths: tuple[str, ...]) -> str:
    """Marks of some pieces, in their order."""
    marks = {part.path: part.mark for part in room.parts}
    found = sorted((marks[path] for path in paths), key=lambda mark: (len(mark), mark))
    return ", ".join(found)


def _stick(room: Room, stick: MarkingStick) -> Block:
    unit = room.spec.unit
    rows = [Row((mark.says, Strong(measure_of(mark.at, unit)))) for mark in stick.marks]
    rows.append(Row(("length of the stick", measure_of(stick.length, unit))))
    columns = (Column("Line"), Column("From its end", "size"))
    return Keep(
        (
            Heading(f"{stick.title}, for {counted(len(stick.uses), 'piece')}", 3, stick.path),
            Paragraph(_how(room, stick, "slide")),
            Table(columns, tuple(rows), small=True),
        )
    )


def _on_strips(room: Room, stick: MarkingStick, paper: Paper) -> Iterator[Block]:
    """Its lines full size, on strips to glue on a lath."""
    unit = room.spec.unit
    marks = [StickMark(measure_of(mark.at, unit), mark.says, bold=True) for mark in stick.marks]
    area = (paper.text_width_mm, paper.text_height_mm - _STRIPS_MM)
    for view in stick_plots([Stick(marks, stick.length.value)], unit, area):
        named = f"{stick.title} for {_named(room, stick.uses)}"
        title = f"{named}, full size, to glue on a lath: {view.title}"
        yield Keep((Heading(title, 3), Figure(view, alternative=title)))


def _spacer(room: Room, spacer: Spacer) -> Block:
    thick = measure_of(spacer.thickness, room.spec.unit)
    words = (f"{counted(spacer.count, 'strip')}, each ", Strong(thick), f" thick. {spacer.how}")
    return Keep((Heading(spacer.title, 3, spacer.path), Paragraph(words)))


def _square(room: Room, square: Square, paper: Paper) -> Block:
    scene, unit = square_scene(square, room.spec.unit), room.spec.unit
    whole = _whole(scene, room, paper)
    drawn = whole or largest(scene, paper.text_width_mm, _SMALL_MM, unit)
    title = f"{square.title}, full size" if whole else square.title
    figure = Figure(drawn, alternative=title)
    return Keep((Heading(title, 3, square.path), Paragraph(square.how), figure))

"""Cards of cases: pictures, parts, hardware, and the order it goes together."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import AssemblyStep, Case
from casewright.casework.cautions import CAUTIONS
from casewright.dims.units import Unit
from casewright.drawing import View, measure_of, sheet
from casewright.drawing.case_front import closed_scene, open_scene
from casewright.drawing.case_section import section_scene
from casewright.drawing.plinth_plan import plinth_scene
from casewright.drawing.pulled_apart import pulled_apart_scene
from casewright.outputs.blocks import (
    Block,
    CheckList,
    Column,
    Figure,
    Heading,
    Paragraph,
    Row,
    Step,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich, SignMark, Strong
from casewright.packet.words import sizes
from casewright.room.model import Room

__all__ = ["case_sections"]

_PARTS = (
    Column("Mark", "centre"), Column("Part", share=2.0), Column("Finished size", share=3.0),
    Column("Stock", share=2.0), Column("Page", "right"),
)  # fmt: skip
_HINGES = (
    Column("Door", share=2.0), Column("Size", share=2.0), Column("Hinges", share=1.2),
    Column("Cups from the door's bottom end", share=3.0), Column("Edge to cup", share=1.2),
    Column("Plate", share=1.0), Column("Overlay", share=1.0),
)  # fmt: skip

_KINDS = {"wall": "Wall case", "base": "Base case", "bookcase": "Bookcase", "plinth": "Plinth"}


def case_sections(room: Room, paper: Paper) -> tuple[Section, ...]:
    """One section a case."""
    return tuple(
        Section(case.spec.title, tuple(_blocks(room, case, paper)), case.key)
        for case in room.cases
    )


def _blocks(room: Room, case: Case, paper: Paper) -> list[Block]:
    unit = room.spec.unit
    width = paper.text_width_mm
    first = _views(case, unit)
    blocks: list[Block] = [
        Paragraph(_summary(room, case)),
        Figure(sheet([first], width, 110.0, unit, bar=False), alternative=f"{case.spec.title}"),
        Figure(
            sheet([[View(pulled_apart_scene(case), "Pulled apart")]], width, 100.0, unit),
            alternative=f"{case.spec.title} pulled apart, every part with its mark",
        ),
        Heading("Parts", 2),
        Table(_PARTS, tuple(_part_rows(room, case, unit)), small=True),
    ]
    if case.fronts:
        blocks.append(Heading("Doors", 2))
        blocks.append(Table(_HINGES, tuple(_door_rows(case, unit)), small=True))
    blocks.append(Heading("Putting it together", 2, f"assembly:{case.key}"))
    blocks.append(
        Paragraph(
            "Dry fit first: everything clamped without glue, both diagonals alike. Bands and "
            "inside sanding are done before assembly.",
            soft=True,
        )
    )
    blocks.append(CheckList(tuple(_step(step, unit) for step in case.assembly)))
    return blocks


def _views(case: Case, unit: Unit) -> list[View]:
    if case.is_plinth:
        return [View(plinth_scene(case, unit), "From above, front below")]
    section = View(section_scene(case, unit), "Section, from the right")
    if not case.fronts:
        return [View(open_scene(case, unit), "Front"), section]
    return [
        View(closed_scene(case, unit), "Front"),
        View(open_scene(case, unit), "Doors off"),
        section,
    ]


def _summary(room: Room, case: Case) -> Rich:
    spec, unit = case.spec, room.spec.unit
    words: list[Inline] = [
        f"{_KINDS[spec.kind]}, outside ",
        *sizes(case.width, case.height, case.depth, unit=unit, strong=True),
    ]
    if case.is_plinth:
        words.append(" (length × height × depth).")
    else:
        words.append(
            f" (width × height × depth, doors apart). Joints: {spec.joint}; back: {spec.back}; "
            f"edges: {spec.edge}."
        )
    if case.standing.value:
        words += [" The lowest ", Strong(measure_of(case.standing, unit)),
                  " of the height is the plinth of its run."]  # fmt: skip
    weight = sum(
        (part.weight(_density(room, part.stock)) for part in case.parts if not part.front),
        Fraction(0),
    )
    words.append(
        f" It weighs about {round(float(weight))} kg"
        f" ({round(float(weight) * 2.2046)} lb){'' if case.is_plinth else ' without doors'}, from "
        "the density of its stock."
    )
    if spec.finished:
        words.append(f" Finished end: {', '.join(spec.finished)}.")
    words += [" ", Link("Part cards", f"parts:{case.key}"), ", page ",
              PageNumber(f"parts:{case.key}"), "."]  # fmt: skip
    return tuple(words)


def _density(room: Room, key: str) -> Fraction:
    return getattr(room.spec.stock[key], "density", Fraction(0))


def _part_rows(room: Room, case: Case, unit: Unit) -> list[Row]:
    return [
        Row(
            (
                part.mark,
                Link(part.title, part.path),
                sizes(
                    part.finished.length, part.finished.width, part.finished.thickness, unit=unit
                ),
                room.spec.stock[part.stock].title,
                PageNumber(part.path),
            )
        )
        for part in case.parts
    ]


def _door_rows(case: Case, unit: Unit) -> list[Row]:
    rows = []
    for front in case.fronts:
        heights: list[Inline] = []
        for number, hinge in enumerate(front.hinges):
            if number:
                heights.append(", ")
            heights.append(measure_of(hinge.on_door, unit))
        rows.append(
            Row(
                (
                    f"{front.title}, hinged {front.hinge_side}",
                    sizes(front.width, front.height, unit=unit),
                    str(len(front.hinges)),
                    tuple(heights),
                    measure_of(front.bore_distance, unit),
                    measure_of(front.plate_height, unit),
                    measure_of(front.overlay, unit),
                )
            )
        )
    return rows


def _step(step: AssemblyStep, unit: Unit) -> Step:
    notes: list[Rich] = []
    for words, dim in step.marks:
        if dim.value:
            notes.append((f"{words}: ", Strong(measure_of(dim, unit))))
        elif "behind" in words:
            notes.append("front edges flush")
    if step.verb == "check square":
        notes.append(("one diagonal ", Blank(), " the other ", Blank()))
    if step.check is not None:
        notes.append((f"{step.check_words}: ", Strong(measure_of(step.check, unit))))
    notes.extend((SignMark("caution"), f" {CAUTIONS[key]}") for key in step.cautions)
    return Step(step.words, tuple(notes))

"""Cards of cases: pictures, parts, hardware, and the order it goes together."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case
from casewright.dims.units import Unit
from casewright.drawing import View, measure_of, sheet
from casewright.drawing.case_front import closed_scene, open_scene
from casewright.drawing.case_section import section_scene
from casewright.drawing.plinth_plan import plinth_scene
from casewright.drawing.pulled_apart import pulled_apart_scene
from casewright.outputs.blocks import Block, Figure, Heading, Keep, Paragraph
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.assembly_steps import assembly_blocks
from casewright.packet.case_parts import door_table, part_tables
from casewright.packet.words import sizes
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["case_sections"]

_VIEWS_TALL, _APART_TALL = 68.0, 84.0  # room for the drawings above the parts [mm]

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
    apart = sheet(
        [[View(pulled_apart_scene(case), "Pulled apart")]], width, _APART_TALL, unit, bar=False
    )
    words = f"{case.spec.title} pulled apart, every part with its mark"
    blocks: list[Block] = [
        Paragraph(_summary(room, case)),
        Figure(sheet([first], width, _VIEWS_TALL, unit, bar=False), alternative=case.spec.title),
        Figure(apart, alternative=words),
        part_tables(room, case),
    ]
    if case.fronts:
        blocks.append(Keep((Heading("Doors", 3), door_table(case, unit))))
    blocks.append(Heading("Putting it together", 2, f"assembly:{case.key}"))
    blocks.extend(assembly_blocks(case, unit))
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
        f" ({round(weight / POUND)} lb){'' if case.is_plinth else ' without doors'}, from "
        "the density of its stock."
    )
    if spec.finished:
        words.append(f" Finished end: {', '.join(spec.finished)}.")
    words += [" ", Link("Part cards", f"parts:{case.key}"), ", page ",
              PageNumber(f"parts:{case.key}"), "."]  # fmt: skip
    return tuple(words)


def _density(room: Room, key: str) -> Fraction:
    return getattr(room.spec.stock[key], "density", Fraction(0))

"""Sections through the stiles of doors: each drawn once, where it is first needed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.casework.features import Cut
from casewright.drawing import View, sheet
from casewright.drawing.door_section import door_section_scene, has_section
from casewright.outputs.blocks import Block, Figure, Paragraph
from casewright.outputs.inlines import Inline, Link, PageNumber
from casewright.room.model import Room

__all__ = ["door_sections"]

_TALL = 62.0  # room for a section [mm]


def door_sections(room: Room, case: Case, width_mm: float) -> Iterator[Block]:
    """A section for each construction of the case's doors, full size where there is room.

    What is drawn with a case before it is pointed to.
    """
    first = _first(room)
    told: dict[str, str] = {}
    for key, door in _profiles(case).items():
        where = first[key]
        if where is not case:
            told[where.key] = where.spec.title
            continue
        words = f"Left stile of the {door.title}, from above, show face below"
        view = View(door_section_scene(case, door, room.spec.unit), words)
        drawn = sheet([[view]], width_mm, _TALL, room.spec.unit, at_most=Fraction(1), bar=False)
        yield Figure(drawn, alternative=words)
    if told:
        found: list[Inline] = ["Section through the stile: as of "]
        for number, (place, title) in enumerate(told.items()):
            anchor = f"assembly:{place}"
            found += [", " if number else "", Link(title, anchor), ", page ", PageNumber(anchor)]
        yield Paragraph((*found, "."))


def _first(room: Room) -> dict[tuple[object, ...], Case]:
    """The case that each profile is drawn with."""
    found: dict[tuple[object, ...], Case] = {}
    for case in room.cases:
        for key in _profiles(case):
            found.setdefault(key, case)
    return found


def _profiles(case: Case) -> dict[tuple[object, ...], Door]:
    """Doors whose sections differ, by all that a section shows."""
    found: dict[tuple[object, ...], Door] = {}
    for door in case.doors:
        if has_section(door):
            found.setdefault(_profile(case, door), door)
    return found


def _profile(case: Case, door: Door) -> tuple[object, ...]:
    own = [part for part in case.parts if part.front == door.path]
    stile = next(part for part in own if part.role == "stile")
    cuts = [f for f in stile.features if isinstance(f, Cut) and f.runs == "l"]
    filled = {p.finished.thickness.value for p in own if p.role in ("panel", "pane", "slab")}
    return (
        door.construction == "applied frame",
        stile.finished.width.value,
        door.thickness.value,
        *((cut.kind, cut.at.value, cut.width.value, cut.depth.value) for cut in cuts),
        *sorted(filled),
    )

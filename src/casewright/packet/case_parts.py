"""Tables of a case: what it is made of, and its doors with their hinges."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.casework.cases import Case, Door
from casewright.casework.parts import Part
from casewright.dims import Dim, Told, as_said, measure_of, reading_text, tell
from casewright.dims.units import Unit
from casewright.outputs.blocks import Beside, Column, Row, Table
from casewright.outputs.inlines import Inline, PageNumbers, Rich
from casewright.packet.alike import card_targets, mark_links, piece_groups, shared_title
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.words import sizes
from casewright.room.model import Room

__all__ = ["door_table", "drawer_table", "part_tables"]

_PARTS = (
    Column("Mark", share=2.1), Column("Part", share=2.6), Column("Finished", share=2.2),
    Column("Card", "right"),
)  # fmt: skip
_HINGES = (
    Column("Door", share=2.6), Column("Size", share=2.2), Column("Hinges", "centre"),
    Column("Cups from the door's bottom end", share=2.6), Column("Edge to cup", share=1.2),
    Column("Plate", share=0.9), Column("Overlay", share=0.9),
)  # fmt: skip


_DRAWERS = (
    Column("Drawer", share=1.4), Column("Box outside, w × h × d", share=2.8),
    Column("Inside width", share=1.3), Column("Joint", share=1.1), Column("Slides", share=2.0),
    Column("Slide's holes above the sides' bottom ends", share=2.6),
)  # fmt: skip


def part_tables(room: Room, case: Case, holds: HoldMarks | None = None) -> Beside:
    """Parts by stock in two columns; like ones in a row, each mark leads to its card.

    Parameters
    ----------
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    holds = holds or HoldMarks(room)
    stacks: list[list[Row]] = []
    for key in dict.fromkeys(part.stock for part in case.parts):
        parts = [part for part in case.parts if part.stock == key]
        rows = (_part_row(group, room.spec.unit, holds) for group in piece_groups(parts))
        stacks.append([Row((room.spec.stock[key].title,)), *rows])
    half = sum(map(len, stacks)) / 2
    left: list[Row] = []
    right: list[Row] = []
    for stack in stacks:
        fits = not right and len(left) + len(stack) / 2 <= half
        (left if fits or not left else right).extend(stack)
    tables = [Table(_PARTS, tuple(rows), small=True) for rows in (left, right) if rows]
    return Beside(((tables[0],), tuple(tables[1:])))


def _part_row(group: Sequence[Part], unit: Unit, holds: HoldMarks) -> Row:
    size = group[0].finished
    waits = holds.sign(*(part.path for part in group))
    count = f"{len(group)} × " if len(group) > 1 else ""
    return Row(
        (
            (*mark_links(group), "  ", *waits) if waits else mark_links(group),
            f"{count}{shared_title([part.title for part in group])}",
            sizes(size.length, size.width, unit=unit),
            PageNumbers(card_targets(group)),
        )
    )


def door_table(case: Case, unit: Unit) -> Table:
    """Doors and where their hinges sit; doors that differ in nothing but the side share a row."""
    groups: dict[tuple[object, ...], list[Door]] = {}
    for front in case.doors:
        groups.setdefault(tuple(dim.value for dim in _numbers(front)), []).append(front)
    return Table(_HINGES, tuple(_door_row(each, unit) for each in groups.values()), small=True)


def _numbers(front: Door) -> tuple[Dim, ...]:
    heights = (hinge.on_door for hinge in front.hinges)
    return (
        front.width, front.height, front.bore_distance, front.plate_height, front.overlay,
        *((front.crank,) if front.crank else ()), *heights,
    )  # fmt: skip


def _door_row(alike: Sequence[Door], unit: Unit) -> Row:
    front = alike[0]
    names = Told(", ".join(f"{each.title} (hinged {each.hinge_side})" for each in alike))
    if front.crank is not None:
        crank = f"{reading_text(front.crank.value, 'mm')} mm"
        names += tell(", cranked arm {}", as_said(front.crank, unit, crank))
    heights: list[Inline] = []
    for hinge in front.hinges:
        heights += [", " if heights else "", measure_of(hinge.on_door, unit)]
    last: tuple[Rich, ...] = tuple(
        measure_of(dim, unit) for dim in (front.bore_distance, front.plate_height, front.overlay)
    )
    size = sizes(front.width, front.height, unit=unit)
    return Row((names, size, str(len(front.hinges)), tuple(heights), *last))


def drawer_table(room: Room, case: Case) -> Table:
    """Boxes of the drawers, topmost first, with their slides and the line of the slides' holes."""
    unit = room.spec.unit
    joint = case.spec.drawer.joint if case.spec.drawer else ""
    rows = []
    for drawer in case.drawers:
        line = room.chain.nodes[f"{drawer.path}.slide_line"]
        slides: Rich = (f"{drawer.slides}, ", measure_of(drawer.slide_length, unit))
        rows.append(
            Row(
                (
                    drawer.title, sizes(drawer.width, drawer.height, drawer.depth, unit=unit),
                    (measure_of(drawer.inside_width, unit),), joint, slides,
                    (measure_of(line, unit),),
                )
            )
        )  # fmt: skip
    return Table(_DRAWERS, tuple(rows), small=True)

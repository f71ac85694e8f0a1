"""What stands free in the room: marks to tape it out by, and the sheet to set it by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cautions import CAUTIONS
from casewright.dims import TAPE_MARK, Dim, Measure, Way, measure_of, round_to
from casewright.dims.exact import side_of
from casewright.outputs.blocks import (
    Block,
    Callout,
    Caution,
    Column,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Section
from casewright.outputs.inlines import Blank, Link, Rich, Strong
from casewright.room.aisles import Aisle, aisles
from casewright.room.floor_numbers import (
    aisle_path,
    cleat_paths,
    corner_path,
    diagonal_path,
    other_walls,
)
from casewright.room.free_stand import FreeStand
from casewright.room.island_places import part_span
from casewright.room.model import Room
from casewright.room.wall_stands import wall_frames
from casewright.survey.walls import SurveyedWall

__all__ = ["free_sections", "free_tape", "setting_anchor"]

_TAPE = (
    "Masking tape on the floor along the edges of its counter. Mark the two corners nearest the "
    "wall first, then square the outline by its diagonals. Put chairs where chairs will be, open "
    "what opens, and walk round it with somebody coming the other way."
)
_SET = (
    "The outline of its body, end panels included and doors and counter apart. Every distance "
    "runs from one datum: along the wall from its left end, out from it square. Both diagonals "
    "agree when the outline is square; then look at the aisles with a stick."
)
_LEVEL = (
    "Read from the level line down to the floor at its four corners. The highest corner gets no "
    "shim, the others what the table shows; shim under the ladders' sleepers and rails, level "
    "along and across, then drive the screws into the cleats."
)
_CORNERS = ("nearest, left", "nearest, right", "farthest, right", "farthest, left")


def setting_anchor(stand: FreeStand) -> str:
    """Anchor of the sheet it is set by."""
    return f"setting:{stand.key}"


def _corners(edges: tuple[Rich, Rich, Rich, Rich]) -> Iterator[tuple[str, Rich, Rich]]:
    """Name, along the wall and out from it, of each corner of left, right, near and far."""
    left, right, near, far = edges
    places = ((left, near), (right, near), (right, far), (left, far))
    for name, (along, out) in zip(_CORNERS, places, strict=True):
        yield name, along, out


def free_tape(room: Room) -> Iterator[Block]:
    """Marks of the counters, and every aisle, for the page before anything is bought."""
    unit = room.spec.unit
    for stand in room.free:
        wall = room.survey.walls[stand.wall]
        left, right, near, far = (Strong(measure_of(edge, unit)) for edge in stand.counter)
        rows = tuple(
            Row((name, along, out)) for name, along, out in _corners((left, right, near, far))
        )
        diagonal = _diagonal(room, stand, stand.counter, counter=True)
        words = (_TAPE, " Diagonals: ", Strong(diagonal), ".")
        yield Keep((
            Heading(f"{stand.title}: on the floor", 3),
            Paragraph(words),
            Table(_columns(wall), rows, small=True),
            *_aisles(room, stand),
        ))  # fmt: skip


def _columns(wall: SurveyedWall) -> tuple[Column, ...]:
    title = wall.spec.title
    return (
        Column("Corner, seen from the wall", share=1.4),
        Column(f"Along {title}, from its left end", "size"), Column(f"Out from {title}", "size"),
    )  # fmt: skip


def _diagonal(room: Room, stand: FreeStand, edges: Sequence[Dim], *, counter: bool) -> Measure:
    """To what a tape shows: it is looked at, nothing is cut to it."""
    left, right, near, far = (edge.value for edge in edges)
    wide, deep = right - left, far - near
    across = side_of(wide * wide + deep * deep)
    path = diagonal_path(stand, counter=counter)
    return Measure(_on_tape(room, across), room.spec.unit, path)


def _aisles(room: Room, stand: FreeStand) -> Iterator[Block]:
    unit = room.spec.unit

    def clear(aisle: Aisle) -> Rich:
        return Strong(Measure(aisle.clear, unit, aisle_path(room, aisle)))

    rows = tuple(
        Row((each.across.title, _side(each), clear(each)))
        for each in aisles(room)
        if each.stand.key == stand.key and each.clear > 0
    )
    if rows:
        columns = (
            Column("Aisle up to", share=1.4), Column("Before its", share=1.0),
            Column("Clear, counter to counter", "size"),
        )  # fmt: skip
        yield Table(columns, rows, small=True)


def _side(aisle: Aisle) -> str:
    words = {"front": "front", "back": "back", "left": "left end", "right": "right end"}
    return words[aisle.own]


def free_sections(room: Room) -> tuple[Section, ...]:
    """A sheet for each thing that stands free."""
    return tuple(
        Section(f"Setting: {stand.title}", tuple(_sheet(room, stand)), setting_anchor(stand))
        for stand in room.free
    )


def _sheet(room: Room, stand: FreeStand) -> Iterator[Block]:
    unit, wall = room.spec.unit, room.survey.walls[stand.wall]
    edges = (stand.left, stand.right, stand.near, stand.far)
    left, right, near, far = (Strong(measure_of(edge, unit)) for edge in edges)
    others = tuple(_other_walls(room, stand))
    titles = (room.survey.walls[key].spec.title for key, _ in others)
    columns = (*_columns(wall), *(Column(f"Out from {title}", "size") for title in titles))
    rows = []
    for number, (name, along, out) in enumerate(_corners((left, right, near, far))):
        outs = (
            Measure(each[number], unit, corner_path(stand, key, number)) for key, each in others
        )
        rows.append(Row((name, along, out, *outs)))
    diagonal = _diagonal(room, stand, edges, counter=False)
    yield Paragraph((_SET, " Diagonals: ", Strong(diagonal), "."))
    yield Table(columns, tuple(rows))
    yield from _aisles(room, stand)
    yield from _cleats(room, stand)
    yield from _level(room, stand)


def _other_walls(room: Room, stand: FreeStand) -> Iterator[tuple[str, tuple[Fraction, ...]]]:
    """Walls that meet the one it is measured from: how far out from them its corners lie."""
    frames = wall_frames(room.survey)
    left, right, near, far = (
        edge.value for edge in (stand.left, stand.right, stand.near, stand.far)
    )
    frame = frames[stand.wall]
    spots = [frame.at(x, z) for x, z in ((left, near), (right, near), (right, far), (left, far))]
    for key in other_walls(room, stand):
        yield key, tuple(_on_tape(room, frames[key].seen(spot)[1]) for spot in spots)


def _on_tape(room: Room, size: Fraction) -> Fraction:
    """To the nearest mark of a tape: what is computed from angles is not known more closely."""
    return round_to(size, TAPE_MARK[room.spec.unit], Way.NEAREST)[0]


def _cleats(room: Room, stand: FreeStand) -> Iterator[Block]:
    """Where each cleat is screwed to the floor, by two of its corners."""
    case = next((case for case in room.cases if case.key == stand.key), None)
    cleats = [] if case is None else [p for p in case.parts if p.role == "floor cleat"]
    if not cleats:
        return
    unit, rows = room.spec.unit, []
    for part in cleats:
        box = part_span(part)
        spots = [stand.at(Fraction(x), Fraction(z)) for x in (box.x0, box.x1)
                 for z in (box.z0, box.z1)]  # fmt: skip
        along, out = ((min(each), max(each)) for each in zip(*spots, strict=True))
        cells = [
            Strong(Measure(each, unit, path))
            for each, path in zip((*along, *out), cleat_paths(part), strict=True)
        ]
        rows.append(Row((Link(part.title, part.path), *cells)))
    wall = room.survey.walls[stand.wall].spec.title
    columns = (
        Column("Cleat", share=1.2), Column(f"Along {wall}, from", "size"), Column("to", "size"),
        Column(f"Out from {wall}, from", "size"), Column("to", "size"),
    )  # fmt: skip
    yield Keep((
        Heading("Floor cleats", 3), Caution(CAUTIONS["island_floor"]),
        Table(columns, tuple(rows), small=True),
    ))  # fmt: skip


def _level(room: Room, stand: FreeStand) -> Iterator[Block]:
    unit = room.spec.unit
    columns = (
        Column("Corner, seen from the wall", share=1.4), Column("Level line to floor", "size"),
        Column("Shim", "size"), Column("As set", share=1.0),
    )  # fmt: skip
    rows = []
    names = ("near_left", "near_right", "far_right", "far_left")
    for number, (says, name) in enumerate(zip(_CORNERS, names, strict=True)):
        read = room.chain.nodes.get(f"{stand.key}.place.floor_{name}")
        cells: tuple[Rich, ...] = (Blank(), Blank())
        if read is not None and stand.shims:
            cells = (measure_of(read, unit), Strong(measure_of(stand.shims[number], unit)))
        rows.append(Row((says, *cells, Blank())))
    blocks: list[Block] = [Heading("Level", 3), Paragraph(_LEVEL)]
    if not stand.shims:
        says = (
            "The floor there was not read yet. Write the four readings as floor = [...] into its "
            "place in the job, in the order of the table, and print this sheet again; or take "
            "the least of them from each."
        )
        blocks.append(Callout("ask", says, "Floor"))
    yield Keep((*blocks, Table(columns, tuple(rows), small=True)))

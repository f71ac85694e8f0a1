"""What a wall screw is worth by the published equations, with all that was assumed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.dims import TAPE_MARK, Way, round_to, shop_text
from casewright.install.hanging import WallHanging
from casewright.install.screw_values import GRAVITIES, LEAST_DIAMETERS, screw_value
from casewright.install.stud_map import WallScrew
from casewright.outputs.blocks import Block, Column, Heading, Keep, Paragraph, Row, Table
from casewright.outputs.inlines import Rich, Strong
from casewright.room.model import Room
from casewright.room.wall_fixing import WallFixing, wall_fixings

__all__ = ["screw_blocks"]

_NEWTON_PER_LB = 4.4482216
_WOODS = ("lightest graded softwoods", "spruce-pine-fir", "Douglas fir-larch")
_ASSUMED = (
    "By the design equations for ordinary wood screws in the National Design Specification (2018; "
    "in part from memory: look it up before you rely on it), for ONE screw: driven into the side "
    "grain of a sound, dry stud, point not counted, a load that stays (0.9). Pulled: straight out "
    "of the stud. Across: down the wall; back, shim and wallboard between nailer and stud bear "
    "nothing. Which wood is in the wall is not known. The table says nothing of the nailer and "
    "its joints, of the back, of the frame of the wall, of knocks or of what is put in: what a "
    "case may carry is not worked out here. The screw maker's own report and local codes come "
    "first."
)


def screw_blocks(room: Room, walls: Iterable[WallHanging]) -> Iterator[Block]:
    """A row for each length of screw, where it bites least on any of some walls, and wood."""
    fixings = {fixing.case: fixing for fixing in wall_fixings(room)}
    seen: dict[Fraction, tuple[WallScrew, WallFixing]] = {}
    hung = [case for hang in walls for case in hang.screws]
    for case, screw in ((each, screw) for each in hung for screw in each.screws):
        if screw.strip is None:
            fixing = fixings[case.place.case.key]
            known = seen.get(screw.length.value)
            if known is None or screw.bite.value < known[0].bite.value:
                seen[screw.length.value] = (screw, fixing)
    rows = [row for each in seen.values() for row in _rows(room, *each)]
    if rows:
        columns = (
            Column("Screw"), Column("Least in a stud"), Column("Stud of", share=1.6),
            Column("Pulled", "right"), Column("Across", "right", share=1.2),
        )  # fmt: skip
        yield Keep(
            (
                Heading("What one wall screw is worth by the equations", 3),
                Paragraph(_ASSUMED),
                Table(columns, tuple(rows), small=True),
            )
        )


def _text(room: Room, length: Fraction) -> str:
    return shop_text(length, room.spec.unit, with_unit=True)


def _rows(room: Room, screw: WallScrew, fixing: WallFixing) -> Iterator[Row]:
    diameter = float(room.spec.hardware.wall_screw.diameter)
    head = _board(room, fixing)
    gap = float(screw.length.value - screw.bite.value) - head
    bite, _ = round_to(screw.bite.value, TAPE_MARK[room.spec.unit], Way.DOWN)
    for gravity, wood in zip(GRAVITIES, _WOODS, strict=True):
        value = screw_value(gravity, diameter, head, gap, float(screw.bite.value))
        across: Rich = f"none: under {LEAST_DIAMETERS:.0f} diameters deep"
        if value.lateral_n is not None:
            across = Strong(_force(room, value.lateral_n))
        yield Row(
            (
                _text(room, screw.length.value), _text(room, bite),
                f"{wood}, G {gravity:.2f}", Strong(_force(room, value.withdrawal_n)), across,
            )
        )  # fmt: skip


def _board(room: Room, fixing: WallFixing) -> float:
    """Thickness of the board under the head [mm]."""
    parts = {part.path: part for case in room.cases for part in case.parts}
    return float(parts[fixing.rows[0]].finished.thickness.value)


def _force(room: Room, newton: float) -> str:
    """Rounded down, to whole pounds or tens of newtons."""
    if room.spec.unit == "in":
        return f"{int(newton / _NEWTON_PER_LB)} lb"
    return f"{int(newton // 10 * 10)} N"

"""What a wall screw is worth by the published equations, with all that was assumed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.dims import TAPE_MARK, Dim, Measure, Unit, Way, as_said, round_to, shop_text
from casewright.install.screw_values import LEAST_DIAMETERS
from casewright.install.screw_worth import ScrewWorth
from casewright.outputs.blocks import Block, Column, Heading, Keep, Paragraph, Row, Table
from casewright.outputs.inlines import Rich, Strong
from casewright.room.model import Room

__all__ = ["screw_blocks"]

_NEWTON_PER_LB = 4.4482216
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


def screw_blocks(room: Room, worths: Iterable[ScrewWorth]) -> Iterator[Block]:
    """A row for each length of screw, where it bites least on any wall, and wood."""
    rows = [_row(worth, room.spec.unit) for worth in worths]
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


def _row(worth: ScrewWorth, unit: Unit) -> Row:
    screw = worth.screw
    bite, _ = round_to(screw.bite.value, TAPE_MARK[unit], Way.DOWN)
    across: Rich = f"none: under {LEAST_DIAMETERS:.0f} diameters deep"
    if worth.across is not None:
        across = Strong(_force(worth.across, unit))
    return Row(
        (
            as_said(screw.length, unit),
            as_said(screw.bite, unit, shop_text(bite, unit, with_unit=True)),
            worth.wood, Strong(_force(worth.pulled, unit)), across,
        )
    )  # fmt: skip


def _force(force: Dim, unit: Unit) -> Measure:
    """Rounded down, to whole pounds or tens of newtons."""
    newton = float(force.value)
    text = f"{int(newton / _NEWTON_PER_LB)} lb" if unit == "in" else f"{int(newton // 10 * 10)} N"
    return as_said(force, unit, text)

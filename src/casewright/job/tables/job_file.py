"""The job file as a whole."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from casewright.dims import Unit
from casewright.job.tables.appliance import ApplianceTable
from casewright.job.tables.boxes import BoxesTable, DoorsTable
from casewright.job.tables.case import CaseTable
from casewright.job.tables.hardware import HardwareTable
from casewright.job.tables.heights import HeightsTable
from casewright.job.tables.island import IslandTable
from casewright.job.tables.match import MatchTable
from casewright.job.tables.rows import DrawersTable
from casewright.job.tables.run import RunTable
from casewright.job.tables.shop import ShopTable
from casewright.job.tables.stock import StockTable
from casewright.job.tables.style import StyleTable
from casewright.job.tables.survey import CornerTable, PassageTable, WallTable
from casewright.job.tables.table import Key, Line, OneOrMore, Table
from casewright.job.tables.wood import WoodTable

__all__ = ["Heading", "JobFile"]


class Heading(Table):
    """What stands on top of a job file, before the first section."""

    format: Literal[1]
    """Form of this file: 1."""

    unit: Unit
    """What a bare number means and how lengths are written back."""

    name: Line | None = None
    """Title of the job. Default: the file's name."""

    address: Line | None = None
    """Where it will stand; for the cover."""

    wishes: Annotated[list[Line], Field(max_length=40), OneOrMore(Line)] = Field(
        default_factory=list
    )
    """What was asked for, in words; for the cover."""

    paper: Literal["letter", "a4"] | None = None
    """Paper of the packet. Default: letter in an inch job, a4 in a metric one."""

    accessible: bool | None = None
    """Whether somebody in a wheelchair is to work there: reach, counters and aisles are then held
    against the accessible-design standard. Default: false."""

    two_cooks: bool | None = None
    """Whether more than one person works in it at once: aisles that one works in are then held
    against 48 in (1220 mm), not 42 (1070). Default: false."""


class JobFile(Heading):
    """A job: cabinets for one room, built by one person."""

    style: StyleTable = Field(default_factory=StyleTable)
    """House style: what holds for every case, unless one says otherwise."""

    boxes: BoxesTable = Field(default_factory=BoxesTable)
    """How boxes are built, unless a case says otherwise."""

    doors: DoorsTable = Field(default_factory=DoorsTable)
    """How doors are built, unless a case says otherwise."""

    drawers: DrawersTable = Field(default_factory=DrawersTable)
    """How drawers are built, unless a case says otherwise."""

    stock: dict[Key, StockTable] = Field(default_factory=dict)
    """What can be bought. What is left out keeps the usual goods."""

    hardware: HardwareTable = Field(default_factory=HardwareTable)
    """Data sheets of the hardware in hand."""

    wood: WoodTable = Field(default_factory=WoodTable)
    """How moist solid wood is when it is cut, and how moist the room makes it."""

    shop: ShopTable = Field(default_factory=ShopTable)
    """Tools owned, and what one person there can lift."""

    case: Annotated[dict[Key, CaseTable], Field(min_length=1)]
    """The cases, each under its permanent name."""

    run: dict[Key, RunTable] = Field(default_factory=dict)
    """Runs: cases side by side along a wall."""

    appliance: dict[Key, ApplianceTable] = Field(default_factory=dict)
    """Appliances that stand between the cases of a run, each under its name there."""

    match: dict[Key, MatchTable] = Field(default_factory=dict)
    """Fronts through which the grain runs, each match under its name."""

    island: dict[Key, IslandTable] = Field(default_factory=dict)
    """Islands: runs that stand free in the room, each under its name."""

    heights: HeightsTable = Field(default_factory=HeightsTable)
    """Heights of the room as laid out."""

    wall: dict[Key, WallTable] = Field(default_factory=dict)
    """Walls as measured, each under its name."""

    corner: dict[Key, CornerTable] = Field(default_factory=dict)
    """Corners as measured."""

    way_in: dict[Key, PassageTable] = Field(default_factory=dict)
    """Doors, stairs and halls on the way into the room."""

"""The survey of a job from its tables: readings with their tools, walls, corners, the way in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Protocol

from casewright.dims import Given, Origin
from casewright.job.content import Content
from casewright.job.defaults import TOOL_ACCURACY
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.supplies import title_of
from casewright.job.tables import CornerTable, FixedTable, PassageTable, WallTable
from casewright.job.tables.survey import (
    HollowTable,
    PlumbTable,
    ReadingTable,
    StationTable,
    TopTable,
    TriangleTable,
    WidthTable,
)
from casewright.job.tables.table import Table
from casewright.shop import Shop, SurveyTool
from casewright.survey.readings import Accuracy, Reading
from casewright.survey.specs import (
    Baseboard,
    CornerSpec,
    FixedThing,
    Hollow,
    Passage,
    Plumb,
    Station,
    Stud,
    SurveySpec,
    TopReading,
    Triangle,
    WallSpec,
    WidthReading,
)

__all__ = ["survey_of"]

_READ_THERE = "where it was read"


class _Holder(Protocol):
    """A table that a reading stands in."""


def survey_of(content: Content, origins: Origins, shop: Shop) -> SurveySpec:
    """The room as measured. A reading is as good as its tool in the shop, else as usual."""
    reader = _Reader(origins, shop)
    return SurveySpec(
        walls=tuple(reader.wall(key, table) for key, table in content.walls.items()),
        corners=tuple(reader.corner(key, table) for key, table in content.corners.items()),
        way_in=tuple(reader.passage(key, table) for key, table in content.way_in.items()),
        next_accuracy=reader.accuracy("tape"),
    )


class _Reader:
    def __init__(self, origins: Origins, shop: Shop) -> None:
        self.origins, self.shop = origins, shop

    def accuracy(self, kind: SurveyTool) -> Accuracy:
        """Of a tool: as the shop has it, else as usual."""
        tool = self.shop.tools.get(kind) or TOOL_ACCURACY[kind]
        return Accuracy(tool.sigma, tool.limit)

    def reading(self, table: ReadingTable, path: KeyPath) -> Reading:
        """A reading at its place in the file."""
        kind: SurveyTool = table.tool or "tape"
        accuracy = self.accuracy(kind)
        if table.within is not None:
            accuracy = Accuracy(table.within / 2, table.within)
        where = (*path, "read") if self.origins.positions.has((*path, "read")) else path
        return Reading(self.origins.measured(table.read, where, kind), accuracy, table.sure)

    def maybe(self, holder: _Holder, name: str, path: KeyPath) -> Reading | None:
        """The reading under a key of a table, if there is one."""
        table: ReadingTable | None = getattr(holder, name)
        return None if table is None else self.reading(table, (*path, name))

    def wall(self, key: str, table: WallTable) -> WallSpec:
        """One wall."""
        path: KeyPath = ("wall", key)
        board = table.baseboard
        return WallSpec(
            key=key,
            title=title_of(key, table.title),
            widths=tuple(
                self.width(each, (*path, "width", n)) for n, each in enumerate(table.width)
            ),
            stations=tuple(
                self.station(each, (*path, "stations", n)) for n, each in enumerate(table.stations)
            ),
            plumbs=tuple(
                self.plumb(each, (*path, "plumb", n)) for n, each in enumerate(table.plumb)
            ),
            studs=tuple(
                Stud(self.reading(each, (*path, "studs", n)), each.probed)
                for n, each in enumerate(table.studs)
            ),
            things=tuple(
                self.thing(name, each, (*path, "fixed", name))
                for name, each in table.fixed.items()
            ),
            baseboard=None if board is None else Baseboard(
                self.origins.given(board.height, (*path, "baseboard", "height")),
                self.origins.given(board.thickness, (*path, "baseboard", "thickness")),
            ),
            where=self.origins.where(path),
            hollows=tuple(
                self.hollow(each, (*path, "hollows", n)) for n, each in enumerate(table.hollows)
            ),
            read_at=dict(self.read_at(table, path)),
        )  # fmt: skip

    def read_at(self, table: WallTable, path: KeyPath) -> Iterator[tuple[str, Origin]]:
        """Where in the file the places of readings stand, by their names at the wall."""
        rows: list[tuple[str, KeyPath, Sequence[Table], tuple[str, ...]]] = [
            ("width", ("width",), table.width, ("height",)),
            ("station", ("stations",), table.stations, ("along",)),
            ("plumb", ("plumb",), table.plumb, ("over",)),
            ("hollow", ("hollows",), table.hollows, ("along", "height")),
            *((f"fixed.{key}.top", ("fixed", key, "tops"), each.tops, ("along",))
              for key, each in table.fixed.items()),
        ]  # fmt: skip
        for name, keys, entries, places in rows:
            where = (*path, *keys)
            for n, entry in enumerate(entries):
                for place in places:
                    size: Fraction | None = getattr(entry, place)
                    if size is not None:
                        given = self.origins.given(size, (*where, n, place), note=_READ_THERE)
                        yield f"{name}_{n + 1}.{place}", given.origin

    def width(self, table: WidthTable, path: KeyPath) -> WidthReading:
        """One width of a wall."""
        return WidthReading(self.reading(table, path), table.height, table.depth)

    def station(self, table: StationTable, path: KeyPath) -> Station:
        """Heights at one place."""
        down, up, whole = (self.maybe(table, name, path) for name in ("down", "up", "whole"))
        return Station(table.along, down, up, whole, table.depth)

    def plumb(self, table: PlumbTable, path: KeyPath) -> Plumb:
        """How far a wall leans."""
        off = self.reading(table.off, (*path, "off"))
        if table.leans == "out":
            given = Given(-off.value, off.given.origin)
            off = Reading(given, off.accuracy, off.sure)
        return Plumb(table.of, table.over, off)

    def hollow(self, table: HollowTable, path: KeyPath) -> Hollow:
        """How far the wall lies behind a straight edge."""
        return Hollow(table.along, table.height, self.reading(table.off, (*path, "off")))

    def thing(self, key: str, table: FixedTable, path: KeyPath) -> FixedThing:
        """What is on a wall."""

        def read(name: str) -> Reading | None:
            return self.maybe(table, name, path)

        out: Fraction | None = table.out
        return FixedThing(
            key=key,
            title=title_of(key, table.title),
            kind=table.kind,
            left=read("left"),
            width=read("width"),
            right=read("right"),
            centre=read("centre"),
            bottom=read("bottom"),
            height=read("height"),
            top=read("top"),
            out=None if out is None else self.origins.given(out, (*path, "out")),
            swing=table.swing,
            after=table.after,
            built=table.built,
            tops=tuple(self.top(each, (*path, "tops", n)) for n, each in enumerate(table.tops)),
        )

    def top(self, table: TopTable, path: KeyPath) -> TopReading:
        """Height of a counter at one place."""
        return TopReading(table.along, self.reading(table.down, (*path, "down")))

    def triangle(self, table: TriangleTable, path: KeyPath) -> Triangle:
        """Marks in a corner."""
        return Triangle(
            self.reading(table.left, (*path, "left")),
            self.reading(table.right, (*path, "right")),
            self.reading(table.across, (*path, "across")),
        )

    def corner(self, key: str, table: CornerTable) -> CornerSpec:
        """One corner."""
        path: KeyPath = ("corner", key)
        marks = table.triangle
        return CornerSpec(
            key=key,
            title=title_of(key, table.title),
            left=table.walls[0],
            right=table.walls[1],
            triangle=None if marks is None else self.triangle(marks, (*path, "triangle")),
            diagonal=self.maybe(table, "diagonal", path),
            outside=table.outside,
            where=self.origins.where(path),
        )

    def passage(self, key: str, table: PassageTable) -> Passage:
        """A place on the way in."""
        path: KeyPath = ("way_in", key)
        return Passage(
            key=key,
            title=title_of(key, table.title),
            kind=table.kind,
            width=self.reading(table.width, (*path, "width")),
            height=self.reading(table.height, (*path, "height")),
            landing=self.maybe(table, "landing", path),
        )

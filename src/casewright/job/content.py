"""The data of a job file read into its tables, one by one, so that all problems are told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar, get_args

from pydantic import ValidationError
from pydantic_core import PydanticCustomError

from casewright.dims import Unit
from casewright.job.defaults import usual_tables
from casewright.job.homes import home_of
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter, nearest
from casewright.job.syntax import Plain
from casewright.job.tables import (
    ApplianceTable,
    BandTable,
    BoardTable,
    BoxesTable,
    CaseTable,
    CornerTable,
    DoorsTable,
    DrawersTable,
    GlazingTable,
    HardwareTable,
    Heading,
    HeightsTable,
    IslandTable,
    JobFile,
    MatchTable,
    PassageTable,
    RunTable,
    SheetTable,
    ShopTable,
    StyleTable,
    Table,
    WallTable,
    WoodTable,
)
from casewright.job.tables.table import check_key

__all__ = ["Content", "Goods", "read_content", "unit_in"]

Goods = SheetTable | BoardTable | BandTable | GlazingTable
_GOODS: Mapping[str, type[Goods]] = {
    "sheet": SheetTable, "board": BoardTable, "band": BandTable, "glazing": GlazingTable,
}  # fmt: skip
_T = TypeVar("_T", bound=Table)


@dataclass(slots=True)
class Content:
    """Tables of a job file. What could not be read is left out, and named in `lost`."""

    unit: Unit
    heading: Heading | None
    style: StyleTable
    boxes: BoxesTable
    doors: DoorsTable
    drawers: DrawersTable
    hardware: HardwareTable
    shop: ShopTable
    wood: WoodTable
    heights: HeightsTable
    stock: dict[str, Goods] = field(default_factory=dict)
    cases: dict[str, CaseTable] = field(default_factory=dict)
    runs: dict[str, RunTable] = field(default_factory=dict)
    appliances: dict[str, ApplianceTable] = field(default_factory=dict)
    matches: dict[str, MatchTable] = field(default_factory=dict)
    islands: dict[str, IslandTable] = field(default_factory=dict)
    walls: dict[str, WallTable] = field(default_factory=dict)
    corners: dict[str, CornerTable] = field(default_factory=dict)
    way_in: dict[str, PassageTable] = field(default_factory=dict)
    lost: set[KeyPath] = field(default_factory=set)

    def knows(self, key: str) -> bool:
        """Whether a case or an appliance has this name, be it one that could not be read."""
        named = key in self.cases or key in self.appliances
        return named or bool({("case", key), ("appliance", key), ("appliance",)} & self.lost)


def unit_in(data: Mapping[str, Plain]) -> Unit | None:
    """Unit the job gives, or None when it gives none that is known."""
    match data.get("unit"):
        case "in":
            return "in"
        case "mm":
            return "mm"
        case _:
            return None


def read_content(data: dict[str, Plain], reporter: Reporter) -> Content:
    """Read every table; what is wrong is told to the reporter."""
    return _Reader(data, reporter).read()


class _Reader:
    def __init__(self, data: dict[str, Plain], reporter: Reporter) -> None:
        self.data = data
        self.reporter = reporter
        self.unit: Unit = unit_in(data) or "in"
        self.usual = usual_tables(self.unit)
        self.lost: set[KeyPath] = set()

    def read(self) -> Content:
        """All tables."""
        self._sections()
        return Content(
            unit=self.unit,
            heading=self._heading(),
            style=self._section(StyleTable, "style"),
            boxes=self._section(BoxesTable, "boxes"),
            doors=self._section(DoorsTable, "doors"),
            drawers=self._section(DrawersTable, "drawers"),
            hardware=self._section(HardwareTable, "hardware"),
            shop=self._section(ShopTable, "shop"),
            wood=self._section(WoodTable, "wood"),
            heights=self._section(HeightsTable, "heights"),
            stock=self._stock(),
            cases=self._entries(CaseTable, "case"),
            runs=self._entries(RunTable, "run"),
            appliances=self._entries(ApplianceTable, "appliance"),
            matches=self._entries(MatchTable, "match"),
            islands=self._entries(IslandTable, "island"),
            walls=self._entries(WallTable, "wall"),
            corners=self._entries(CornerTable, "corner"),
            way_in=self._entries(PassageTable, "way_in"),
            lost=self.lost,
        )

    def _sections(self) -> None:
        known = list(JobFile.model_fields)
        for key in self.data:
            if key in known:
                continue
            like = nearest(key, known)
            kind = "section" if isinstance(self.data[key], dict) else "key"
            sections = [name for name in known if name not in Heading.model_fields]
            offered = sections if kind == "section" else list(Heading.model_fields)
            want = f"did you mean {like}?" if like else f"known here: {', '.join(offered)}"
            if not like:
                want = _meant(key, self.data[key]) or home_of((key,), offered) or want
            self.reporter.tell((key,), f"there is no {kind} {key}", want, key=True)

    def _heading(self) -> Heading | None:
        given = {key: self.data[key] for key in Heading.model_fields if key in self.data}
        return self._table(Heading, (), given)

    def _table(self, kind: type[_T], path: KeyPath, data: Plain) -> _T | None:
        if isinstance(data, list) and path:
            want = f"write [{'.'.join(map(str, path))}], with single brackets"
            self.reporter.tell(path, f"[[ ]] makes a list of {path[-1]}", want, key=True)
            self.lost.add(path)
            return None
        if not isinstance(data, dict):
            want = f"write a section [{'.'.join(map(str, path))}] with keys and values"
            self.reporter.tell(path, f"{path[-1]} is no section here", want)
            self.lost.add(path)
            return None
        try:
            return kind.model_validate(data, context={"unit": self.unit})
        except ValidationError as error:
            self.reporter.refuse(error, kind, path, data)
            self.lost.add(path)
            return None

    def _section(self, kind: type[_T], name: str) -> _T:
        """One section over the usual one; the usual one alone when it cannot be read."""
        usual = self.usual.get(name, {})
        given = self.data.get(name, {})
        table = self._table(kind, (name,), _over(usual, given))
        return table or kind.model_validate(usual, context={"unit": self.unit})

    def _named(self, section: str) -> dict[str, Plain]:
        """Entries of a section of named tables, those with an impossible name left out."""
        given = self.data.get(section, {})
        if not isinstance(given, dict):
            want = f"write [{section}.name], with a name of your own"
            self.reporter.tell((section,), f"every {section} has a name", want, key=True)
            self.lost.add((section,))
            return {}
        if given and not any(isinstance(value, dict | list) for value in given.values()):
            want = f"write [{section}.left], or whatever you call it"
            self.reporter.tell((section,), f"this {section} has no name", want, key=True)
            self.lost.add((section,))
            return {}
        named: dict[str, Plain] = {}
        for key, value in given.items():
            try:
                named[check_key(key)] = value
            except PydanticCustomError as error:
                context: dict[str, Any] = error.context or {}
                self.reporter.tell((section, key), error.message(), context["want"], key=True)
                self.lost.add((section, key))
        return named

    def _entries(self, kind: type[_T], section: str) -> dict[str, _T]:
        tables = {
            key: self._table(kind, (section, key), value)
            for key, value in self._named(section).items()
        }
        return {key: table for key, table in tables.items() if table is not None}

    def _stock(self) -> dict[str, Goods]:
        usual: dict[str, dict[str, Any]] = self.usual["stock"]
        given = self._named("stock")
        found: dict[str, Goods] = {}
        for key in dict.fromkeys([*usual, *given]):
            goods = self._goods(key, usual.get(key, {}), given.get(key, {}))
            if goods is not None:
                found[key] = goods
        return found

    def _goods(self, key: str, usual: dict[str, Any], given: Plain) -> Goods | None:
        path = ("stock", key)
        if not isinstance(given, dict):
            self._table(SheetTable, path, given)
            return None
        kind = given.get("kind", usual.get("kind"))
        if kind == usual.get("kind"):
            titled = not given.keys() & {"thickness", "width"}
            given = {k: v for k, v in usual.items() if titled or k != "title"} | given
        table = _GOODS.get(kind) if isinstance(kind, str) else None
        if table is None:
            self.lost.add(path)
            if kind is None:
                want = 'write kind = "sheet", "board", "band" or "glazing"'
                self.reporter.tell(path, f"kind is missing in [stock.{key}]", want)
            else:
                self.reporter.unknown(
                    (*path, "kind"), str(kind), _GOODS, "this is no kind of stock"
                )
            return None
        return self._table(table, path, given)


def _meant(name: str, value: Plain) -> str:
    """The section that a table without one was probably meant for; empty when nobody can tell."""
    if not isinstance(value, dict):
        return ""
    kind = value.get("kind")
    for section, fits in (
        ("case", kind in get_args(CaseTable.model_fields["kind"].annotation)),
        ("stock", isinstance(kind, str) and kind in _GOODS),
        ("run", "cases" in value),
    ):
        if fits:
            return f"write [{section}.{name}]"
    return ""


def _over(usual: Any, given: Plain) -> Plain:
    """Given values over the usual ones, tables inside tables as well."""
    if not (isinstance(usual, dict) and isinstance(given, dict)):
        return given
    merged = {**usual, **given}
    return {
        key: _over(usual[key], value) if key in usual and key in given else value
        for key, value in merged.items()
    }

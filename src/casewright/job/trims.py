"""Trims of runs from their tables, and what was read of them once they stood."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from casewright.facts import Fact
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.tables import RunTable
from casewright.job.tables.table import Table
from casewright.job.tables.trims import CrownTable, LightRailTable
from casewright.room.specs import RunSpec
from casewright.room.trims.specs import (
    AtHoodSpec,
    CrownSpec,
    LightRailSpec,
    RunTrims,
    ScribeMouldingSpec,
    ToeSkinSpec,
)
from casewright.stock import Board, Stock, StockList

__all__ = ["USUAL_TRIMS", "moulded", "trim_readings", "trims_of"]

USUAL_TRIMS: Mapping[tuple[str, str], str] = {
    ("toe_skin", "sheet"): "thin_plywood", ("light_rail", "boards"): "board",
    ("scribe_moulding", "strips"): "strip", ("crown", "backing"): "plywood",
}  # fmt: skip
"""Stock of a trim where the file names none."""

_ACROSS = {"left_across": "across_left", "right_across": "across_right"}
_READ = {
    "toe_skin": {"as_built": "along"} | _ACROSS,
    "light_rail": {"as_built": "along", "left_return": "return_left",
                   "right_return": "return_right"} | _ACROSS,
    "scribe_moulding": {"left_height": "high_left", "right_height": "high_right"},
    "crown": {"as_built": "along", "left_return": "return_left", "right_return": "return_right"}
    | _ACROSS,
}  # fmt: skip


def trims_of(key: str, run: RunTable, content: Content, origins: Origins) -> RunTrims:
    """The trims of one run."""
    skin, rail, scribe = run.toe_skin, run.light_rail, run.scribe_moulding
    return RunTrims(
        toe_skin=None if skin is None else ToeSkinSpec(_stock(skin, "toe_skin", "sheet")),
        light_rail=None if rail is None else LightRailSpec(_stock(rail, "light_rail", "boards")),
        scribe_moulding=None if scribe is None else ScribeMouldingSpec(
            _stock(scribe, "scribe_moulding", "strips"), tuple(dict.fromkeys(scribe.ends))
        ),
        crown=_crown(key, run, content, origins),
    )  # fmt: skip


def _stock(table: Table, trim: str, name: str) -> str:
    named: str | None = getattr(table, name)
    return named or USUAL_TRIMS[trim, name]


def _crown(key: str, run: RunTable, content: Content, origins: Origins) -> CrownSpec | None:
    table, base = run.crown, ("run", key, "crown")
    if table is None:
        return None
    cases = ((each, content.cases.get(each)) for each in run.cases)
    return CrownSpec(
        stock=table.moulding,
        backing=_stock(table, "crown", "backing"),
        drop=origins.given(table.drop, (*base, "drop")),
        projection=origins.given(table.projection, (*base, "projection")),
        frieze=None if table.frieze is None else origins.given(table.frieze, (*base, "frieze")),
        to_ceiling=table.to_ceiling,
        fitted=tuple(
            each
            for each, case in cases
            if case is not None and case.height is None and case.kind != "hood"
        )
        if table.sets_height and content.heights.wall_height is None
        else (),
        inside=table.inside,
        left_corner=_angle(table.left_corner),
        right_corner=_angle(table.right_corner),
        at_hoods={hood: AtHoodSpec(_angle(at.left_corner), _angle(at.right_corner))
                  for hood, at in table.at.items()},
    )  # fmt: skip


def _angle(read: Decimal | None) -> str:
    return "" if read is None else f"{read:f}"


def moulded(runs: Iterable[RunSpec], stock: StockList) -> dict[str, Stock]:
    """The mouldings among the boards of a job: what a crown is cut from."""
    named = {run.trims.crown.stock for run in runs if run.trims.crown is not None}
    return {
        key: replace(board, moulded=True)
        for key, board in stock.items()
        if key in named and isinstance(board, Board)
    }


def trim_readings(content: Content, origins: Origins) -> Iterator[tuple[str, Fact]]:
    """Lengths as built of every trim, by the path of the number they stand for."""
    for key, run in content.runs.items():
        for trim, names in _READ.items():
            table: Table | None = getattr(run, trim)
            for word, name in names.items() if table is not None else ():
                path: KeyPath = ("run", key, trim, word)
                given: Fraction | list[Fraction] | None = getattr(table, word)
                if isinstance(given, list):
                    for n, value in enumerate(given):
                        own = trim if not n else f"{trim}_{n + 1}"
                        yield f"run.{key}.{own}.{name}", origins.as_built(value, (*path, n))
                elif given is not None:
                    yield f"run.{key}.{trim}.{name}", origins.as_built(given, path)
            if isinstance(table, CrownTable | LightRailTable):
                yield from _at_hoods(key, trim, table.at, origins)


def _at_hoods(
    key: str, trim: str, tables: Mapping[str, Table], origins: Origins
) -> Iterator[tuple[str, Fact]]:
    """What was read of a trim round, or beside, the hoods of its run."""
    for hood, at in tables.items():
        for word, name in _READ[trim].items():
            given: Fraction | None = getattr(at, word, None)
            if given is not None:
                path: KeyPath = ("run", key, trim, "at", hood, word)
                yield f"run.{key}.{trim}_at_{hood}.{name}", origins.as_built(given, path)

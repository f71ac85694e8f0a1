"""Rows and drawers of a case from its table, with every default filled in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from casewright.casework.specs import (
    ApplianceOpening,
    DoorKind,
    DrawerSpec,
    FrontSpec,
    RowKind,
    RowSpec,
)
from casewright.dims import Given
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.supplies import title_of
from casewright.job.tables import CaseTable, DrawersTable

__all__ = ["appliance_opening", "bowl_of", "drawer_of", "rows_of", "written_rows"]

_Written = tuple[RowKind, Fraction | None, KeyPath]


def written_rows(key: str, table: CaseTable) -> tuple[_Written, ...]:
    """What each row is, the height written for it, and where that stands; from the top down."""
    return tuple(_written(("case", key), table))


def _written(base: KeyPath, table: CaseTable) -> Iterator[_Written]:
    if table.rows is not None:
        for number, row in enumerate(table.rows):
            yield row.kind, row.height, (*base, "rows", number)
    elif table.drawers is not None:
        for number in range(table.drawers):
            yield "drawer", None if number else table.top_drawer, (*base, "top_drawer")
    elif table.top_drawer is not None:
        yield "drawer", table.top_drawer, (*base, "top_drawer")
        yield "doors", None, (*base, "top_drawer")
    elif table.lid == "hinged":
        yield "false front", None, (*base, "lid")
    elif table.sink:
        yield "false front", None, (*base, "sink")
        yield "doors", None, (*base, "sink")


def rows_of(
    key: str,
    table: CaseTable,
    content: Content,
    origins: Origins,
    *,
    front: FrontSpec | None,
    false_front: Given,
) -> tuple[RowSpec, ...]:
    """The rows of a case's face, from the top down; none where it has its doors alone.

    Parameters
    ----------
    front
        The case's doors.
    false_front
        Height of the false front of a sink base where none is written.
    """
    rows = []
    panel, low = _panels(table, content, front)
    for kind, height, path in written_rows(key, table):
        given = None if height is None else origins.given(height, path)
        if kind == "false front" and given is None and table.rows is None and table.sink:
            given = false_front
        own, plain = (front, None) if kind == "doors" else (panel, low)
        if kind == "false front" and panel is not None and low is not None:
            own, plain = replace(panel, pull=False), replace(low, pull=False)
        if kind == "appliance":
            rows.append(RowSpec(kind, None, None, None, _opening(table, path, content, origins)))
            continue
        rows.append(RowSpec(kind, given, None if kind == "open" else own, plain))
    return tuple(rows)


def _opening(
    table: CaseTable, path: KeyPath, content: Content, origins: Origins
) -> ApplianceOpening:
    number = path[-1]
    key = table.rows[number].appliance if table.rows and isinstance(number, int) else ""
    return appliance_opening(key, content, origins)


def appliance_opening(key: str, content: Content, origins: Origins) -> ApplianceOpening:
    """What the sheet of an appliance in a case asks for, as far as it is known."""
    known = content.appliances.get(key)
    width, height, depth = (
        None
        if (value := getattr(known, name, None)) is None
        else origins.given(value, ("appliance", key, name))
        for name in ("width", "height", "depth")
    )
    return ApplianceOpening(key, title_of(key, known.title if known else None), width, height,
                            depth)  # fmt: skip


def _panels(
    table: CaseTable, content: Content, front: FrontSpec | None
) -> tuple[FrontSpec | None, FrontSpec | None]:
    """How fronts that do not swing are built: as asked, and where they are too low for a frame."""
    if front is None:
        return None, None
    own, shared = table.drawer or DrawersTable(), content.drawers
    as_doors: DoorKind = "applied frame" if front.construction == "applied frame" else "slab"
    construction: DoorKind = own.front or shared.front or as_doors
    pull = own.pull if own.pull is not None else shared.pull is not False
    # The stock of a slab under strips is too thin for a slab by itself.
    named = front.slab if front.construction == "slab" else None
    plain = replace(
        front, construction="slab", slab=named or content.doors.slab or "fibreboard", pull=pull,
        leaves=1,
    )  # fmt: skip
    if construction == "slab":
        return plain, plain
    thin = front.slab if front.construction == "applied frame" else "thin_fibreboard"
    return replace(plain, construction=construction, slab=thin), plain


def bowl_of(key: str, table: CaseTable, origins: Origins) -> tuple[Given, Given] | None:
    """How large the bowl of a sink base is: across, and from front to back."""
    if table.bowl is None:
        return None
    wide, deep = (origins.given(size, ("case", key, "bowl", n))
                  for n, size in enumerate(table.bowl))  # fmt: skip
    return wide, deep


def drawer_of(table: CaseTable, content: Content) -> DrawerSpec:
    """How the boxes of a case's drawers are built."""
    own, shared = table.drawer or DrawersTable(), content.drawers
    return DrawerSpec(
        joint=own.joint or shared.joint or "rabbet",
        slides=own.slides or shared.slides or "side-mount",
        box_stock=own.sheet or shared.sheet or "drawer_plywood",
        bottom_stock=own.bottom or shared.bottom or "thin_plywood",
    )

"""Style, cases and runs of a job from their tables, with every default filled in."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace
from fractions import Fraction
from typing import TypeVar

from casewright.casework.rows import rows_overlay
from casewright.casework.specs import (
    TOE_KINDS,
    CaseSpec,
    DoorKind,
    EdgeKind,
    EndKind,
    FrontSpec,
    Hand,
)
from casewright.dims import Given, Origin
from casewright.job.blind_corners import as_blind_corner
from casewright.job.content import Content
from casewright.job.diagonals import as_diagonal
from casewright.job.hoods import as_hood
from casewright.job.origins import Origins
from casewright.job.panels import panel_sheet, second_panel
from casewright.job.positions import KeyPath
from casewright.job.registers import as_before_register
from casewright.job.rows import appliance_opening, bowl_of, drawer_of, rows_of
from casewright.job.seats import as_seat
from casewright.job.supplies import title_of
from casewright.job.tables import (
    ApplianceTable,
    BoxesTable,
    CaseTable,
    DoorsTable,
    FrontTable,
    RunTable,
    SheetTable,
    SolvedTable,
    StyleTable,
)
from casewright.room.specs import ApplianceSpec, RunEnd, RunSpec
from casewright.style import STYLE_KEYS, Style, default_style

__all__ = [
    "USUAL_BOXES",
    "USUAL_DOORS",
    "appliance_of",
    "case_of",
    "first",
    "front_table",
    "run_of",
    "solved_widths",
    "style_of",
]

_T = TypeVar("_T")

USUAL_BOXES = BoxesTable(
    joint="pocket screws", back="rabbeted", pockets="hidden", sheet="plywood",
    back_sheet="thin_plywood", strips="board", band="band", face="frameless",
    face_boards="board", face_joint="pocket screws", face_fixing="pocket screws",
    end="applied frame",
)  # fmt: skip
USUAL_DOORS = DoorsTable(
    construction="slab", slab="fibreboard", strip="strip", frame="board", glazing="glass",
    panel="thin_plywood",    pull=True, hinge="left",
)  # fmt: skip
_HEIGHTS = {"hood": "wall_height"}
_SHELVES = {"wall": 2, "base": 1, "tall": 3, "bookcase": 5, "surround": 0, "hood": 0}


def style_of(table: StyleTable, origins: Origins) -> Style:
    """The house style with what the job changes."""
    name = table.name or "painted"
    style = default_style(origins.unit, name)
    return style.changed(_style_values(table, ("style",), f'style "{name}"', origins))


def _style_values(
    table: StyleTable | None, base: KeyPath, note: str, origins: Origins
) -> dict[str, Given]:
    """Style values that a table sets, by their key; none without a table."""
    set_here = {key.name: getattr(table, key.name, None) for key in STYLE_KEYS}
    return {
        name: Given(value, Origin("chosen", note, where=origins.where((*base, name))))
        for name, value in set_here.items()
        if value is not None
    }


def first(*choices: _T | None) -> _T:
    """The first choice that was made; the last one always is.

    Raises
    ------
    ValueError
        When none was made: a defect of the program.
    """
    for choice in choices:
        if choice is not None:
            return choice
    msg = "no choice was made"
    raise ValueError(msg)


def front_table(case: CaseTable, *, upper: bool) -> FrontTable | None:
    """What a case says of the doors of an opening; None when it has none there."""
    if upper and case.divider is None:
        return None
    asked = case.upper_front if upper else case.front
    if upper and asked is None:
        asked = case.front
    if asked is None:
        return None if case.kind in ("bookcase", "hood") else FrontTable()
    return None if asked.construction == "none" else asked


def _front(
    case: CaseTable, content: Content, origins: Origins, base: KeyPath, *, upper: bool
) -> FrontSpec | None:
    doors = content.doors
    framed = (case.face or content.boxes.face) == "face frame"
    table = front_table(case, upper=upper)
    if table is None:
        return None
    built: DoorKind | None = None if table.construction == "none" else table.construction
    usual = USUAL_DOORS
    construction: DoorKind = first(built, doors.construction, usual.construction)
    thin = "thin_fibreboard" if construction == "applied frame" else None
    return FrontSpec(
        construction=construction,
        leaves=table.leaves,
        hinge=first(table.hinge, doors.hinge, usual.hinge),
        slab=first(table.slab, doors.slab, thin, usual.slab),
        strip=first(table.strip, doors.strip, usual.strip),
        frame=first(table.frame, doors.frame, usual.frame),
        glazing=first(table.glazing, doors.glazing, usual.glazing),
        pull=first(table.pull, doors.pull, usual.pull),
        film=bool(first(table.film, doors.film, False)) and construction == "glass frame",
        edge=table.edge or doors.edge,
        panel=first(table.panel, doors.panel, usual.panel),
        mid_rail=None
        if table.mid_rail is None
        else origins.given(
            table.mid_rail, (*base, "upper_front" if upper else "front", "mid_rail")
        ),
        overlay=table.overlay or doors.overlay or ("partial" if framed else "full"),
    )


def _usual_edge(content: Content, sheet: str) -> EdgeKind:
    """Fibreboard is filled and painted as its faces are; other sheets are banded."""
    goods = content.stock.get(sheet)
    fibre = isinstance(goods, SheetTable) and goods.material in ("fibreboard", "hardboard")
    return "painted" if fibre else "band"


def _with_rows(
    spec: CaseSpec, table: CaseTable, content: Content, origins: Origins, style: Style
) -> CaseSpec:
    """A case with its face parted into rows, where it asks for some.

    Where it names no shelves it has none without doors before them, and none under a bowl.
    """
    false_front = spec.overrides.get("false_front") or style["false_front"]
    rows = rows_of(spec.key, table, content, origins, front=spec.front, false_front=false_front)
    rolls = table.roll_outs or 0
    if not rows and not rolls:
        return spec
    kinds = {row.kind for row in rows}
    closed = not rows or "doors" in kinds
    bare = table.shelves is None and (table.sink or rolls or not closed)
    spec = replace(spec, rows=rows)
    return replace(
        spec, row_rails=bool(table.rails) or rows_overlay(spec) == "inset",
        sink=bool(table.sink), roll_outs=rolls, bowl=bowl_of(spec.key, table, origins),
        drawer=drawer_of(table, content) if "drawer" in kinds or rolls else None,
        back="open" if table.sink else spec.back, shelves=0 if bare else spec.shelves,
    )  # fmt: skip


def _fixed_shelves(table: CaseTable, base: KeyPath, origins: Origins) -> tuple[Given, ...]:
    """Heights of the fixed shelves, lowest first."""
    rising = sorted(enumerate(table.fixed_shelves), key=lambda pair: pair[1])
    return tuple(
        origins.given(height, (*base, "fixed_shelves", number)) for number, height in rising
    )


def _finished(table: CaseTable) -> tuple[Hand, ...]:
    """Ends that show; in a surround a panel stands at both."""
    return ("left", "right") if table.kind == "surround" else tuple(dict.fromkeys(table.finished))


def _upper_shelves(table: CaseTable) -> int:
    """Shelves above the divider; a tall case has one where nothing is said."""
    usual = 1 if table.kind == "tall" and table.divider is not None else 0
    return usual if table.upper_shelves is None else table.upper_shelves


def case_of(
    key: str, table: CaseTable, content: Content, origins: Origins, style: Style
) -> CaseSpec:
    """One case."""
    base: KeyPath = ("case", key)

    def given(name: str) -> Given | None:
        value: Fraction | None = getattr(table, name)
        return None if value is None else origins.given(value, (*base, name))

    boxes, usual = content.boxes, USUAL_BOXES
    sheet = first(table.sheet, boxes.sheet, usual.sheet)
    spec = CaseSpec(
        key=key,
        title=title_of(key, table.title),
        kind=table.kind,
        width=given("width"),
        height=given("height") or style[_HEIGHTS.get(table.kind, f"{table.kind}_height")],
        depth=given("depth") or style[f"{table.kind}_depth"],
        joint=first(table.joint, boxes.joint, usual.joint),
        back=first(table.back, boxes.back, usual.back),
        edge=table.edge or boxes.edge or _usual_edge(content, sheet),
        pockets=first(table.pockets, boxes.pockets, usual.pockets),
        toe=table.toe or ("notch" if table.kind in TOE_KINDS else "none"),
        shelves=_SHELVES[table.kind] if table.shelves is None else table.shelves,
        upper_shelves=_upper_shelves(table),
        fixed_shelves=_fixed_shelves(table, base, origins),
        divider=given("divider"),
        finished=_finished(table),
        skirt=given("skirt"),
        crown=given("crown"),
        nosing=given("nosing"),
        front=_front(table, content, origins, base, upper=False),
        upper_front=_front(table, content, origins, base, upper=True),
        box_stock=sheet,
        back_stock=first(table.back_sheet, boxes.back_sheet, usual.back_sheet),
        strip_stock=first(table.strips, boxes.strips, usual.strips),
        band_stock=first(table.band, boxes.band, usual.band),
        overrides=_style_values(table.style, (*base, "style"), f"case {key}", origins),
        where=origins.where(base),
    )
    spec = as_diagonal(as_blind_corner(_with_face(spec, table, boxes), table, origins), table)
    spec = _round_appliance(as_seat(spec, table, content, style), table, content, origins, style)
    return as_before_register(_with_rows(spec, table, content, origins, style), table, origins)


def _round_appliance(
    spec: CaseSpec, table: CaseTable, content: Content, origins: Origins, style: Style
) -> CaseSpec:
    """A surround, with what it stands round; a hood, with what it is over."""
    if table.appliance is None:
        return as_hood(spec, table, content, origins, style)
    spec = replace(spec, appliance=appliance_opening(table.appliance, content, origins))
    return as_hood(spec, table, content, origins, style)


def _with_face(spec: CaseSpec, table: CaseTable, boxes: BoxesTable) -> CaseSpec:
    """A case with its outside: its face frame, if any, and what is on its finished ends."""
    usual = USUAL_BOXES
    panels = table.kind == "surround"
    shared = None if panels and boxes.end in ("applied frame", "plain") else boxes.end
    end: EndKind = first(table.end, shared, "skin" if panels else usual.end)
    return replace(
        spec,
        face=first(table.face, boxes.face, usual.face),
        face_stock=first(table.face_boards, boxes.face_boards, usual.face_boards),
        face_joint=first(table.face_joint, boxes.face_joint, usual.face_joint),
        face_fixing=first(table.face_fixing, boxes.face_fixing, usual.face_fixing),
        end=end,
        end_stock=first(
            table.end_sheet,
            boxes.end_sheet,
            spec.box_stock if end == "flush" or panels else spec.back_stock,
        ),
        mullion=bool(table.mullion),
        scribes=tuple(dict.fromkeys(table.scribe)),
    )


def appliance_of(
    key: str, table: ApplianceTable, content: Content, origins: Origins, style: Style
) -> ApplianceSpec:
    """One appliance."""
    base: KeyPath = ("appliance", key)
    given = {
        name: origins.given(value, (*base, name))
        for name in ("width", "height", "depth", "clear_above", "opens")
        if (value := getattr(table, name)) is not None
    }
    return ApplianceSpec(
        key=key,
        title=title_of(key, table.title),
        width=given.get("width"),
        height=given.get("height") or style["base_height"],
        where=origins.where(base),
        cooks=bool(table.cooks),
        washes=bool(table.washes),
        cools=bool(table.cools),
        clear_above=given.get("clear_above"),
        opens=given.get("opens"),
        depth=given.get("depth"),
        panel=panel_sheet(key, table, content, origins, USUAL_DOORS),
        second_panel=second_panel(key, table, content, origins, USUAL_DOORS),
    )


def run_of(
    key: str, table: RunTable, origins: Origins, appliances: Container[str] = ()
) -> RunSpec:
    """One run.

    Parameters
    ----------
    appliances
        Keys of all appliances of the job.
    """
    end: RunEnd = "wall" if table.wall or table.on else "open"
    return RunSpec(
        key=key,
        title=title_of(key, table.title),
        cases=tuple(key for key in table.cases if key not in appliances),
        appliances=tuple(
            (key, sum(other not in appliances for other in table.cases[:number]))
            for number, key in enumerate(table.cases)
            if key in appliances
        ),
        widths=tuple(
            origins.measured(width, ("run", key, "wall", number), "tape")
            for number, width in enumerate(table.wall)
        ),
        left=table.left or end,
        right=table.right or end,
        where=origins.where(("run", key)),
        on=table.on or "",
        after=table.after or "",
        before=table.before or "",
        left_filler=_left_filler(key, table, origins),
        centre=tuple(table.centre.items()),
        is_free=table.order == "free",
        beside=tuple(table.beside.items()),
        over=table.over or "",
        solved=frozenset(table.solved.widths) if table.solved else frozenset(),
        one_lid=bool(table.one_lid),
        proportions=tuple(table.proportions.items()),
        seams=tuple(
            (each, origins.given(at, ("run", key, "seams", each)))
            for each, at in table.seams.items()
        ),
    )


def solved_widths(key: str, table: RunTable, origins: Origins) -> dict[str, Given]:
    """By case, the widths that an accepted layout of a run gave."""
    if table.solved is None:
        return {}
    return {
        case: _as_solved(table.solved, width, ("run", key, "solved", "widths", case), origins)
        for case, width in table.solved.widths.items()
    }


def _left_filler(key: str, table: RunTable, origins: Origins) -> Given | None:
    """As the run says, else as the accepted layout gave it."""
    path: KeyPath = ("run", key)
    if table.left_filler is not None:
        return origins.given(table.left_filler, (*path, "left_filler"))
    if table.solved is None or table.solved.left_filler is None:
        return None
    return _as_solved(table.solved, table.solved.left_filler, (*path, "solved"), origins)


def _as_solved(table: SolvedTable, value: Fraction, path: KeyPath, origins: Origins) -> Given:
    return Given(value, Origin("solved", table.because or "layout", where=origins.where(path)))

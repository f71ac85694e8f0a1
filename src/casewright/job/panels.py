"""The panel of an appliance from its table, and what cannot go together in it."""

from __future__ import annotations

from collections.abc import Container

from casewright.casework.specs import DoorKind, FrontSpec, PanelSheet
from casewright.dims import Given, Origin
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import (
    AppliancePanelTable,
    ApplianceTable,
    BoardTable,
    DoorsTable,
    SheetTable,
)
from casewright.room.specs import DoorPanel

__all__ = ["check_panels", "panel_sheet", "second_panel"]

_LENGTHS = (
    "free_below", "least_height", "most_height", "most_width", "least_thickness",
    "most_thickness", "screws_apart", "screw_depth",
)  # fmt: skip


def panel_sheet(
    key: str, table: ApplianceTable, content: Content, origins: Origins, usual: DoorsTable
) -> PanelSheet | None:
    """What an appliance's sheet says of its panel; None where it gets none.

    Parameters
    ----------
    usual
        How doors are built where the job says nothing.
    """
    if table.panel is None:
        return None
    base: KeyPath = ("appliance", key, "panel")
    return _sheet(table.panel, base, content, origins, usual)


def second_panel(
    key: str, table: ApplianceTable, content: Content, origins: Origins, usual: DoorsTable
) -> DoorPanel | None:
    """What an appliance's sheet says of the panel on its second door; None where it gets none."""
    panel = table.second_panel
    if panel is None:
        return None
    base: KeyPath = ("appliance", key, "second_panel")
    return DoorPanel(
        sheet=_sheet(panel, base, content, origins, usual),
        place=panel.place,
        line=None if panel.line is None else origins.given(panel.line, (*base, "line")),
        apart=None if panel.apart is None else origins.given(panel.apart, (*base, "apart")),
    )


def _sheet(
    panel: AppliancePanelTable, base: KeyPath, content: Content, origins: Origins,
    usual: DoorsTable,
) -> PanelSheet:  # fmt: skip
    sizes = {
        name: None if (value := getattr(panel, name)) is None
        else origins.given(value, (*base, name))
        for name in _LENGTHS
    }  # fmt: skip
    weight = panel.most_weight
    origin = Origin("chosen", "the appliance's sheet", where=origins.where((*base, "most_weight")))
    return PanelSheet(
        front=_front(panel, content.doors, usual),
        most_weight=None if weight is None else Given(weight, origin),
        screw_rows=tuple(
            origins.given(row, (*base, "screw_rows", number))
            for number, row in enumerate(panel.screw_rows or ())
        ),
        no_limit=frozenset(panel.no_limit),
        hinge=panel.hinge,
        **sizes,
    )


def _construction(panel: AppliancePanelTable, doors: DoorsTable) -> DoorKind:
    """Its own, else the doors' where one back is flat."""
    if panel.construction is not None:
        return panel.construction
    return "applied frame" if doors.construction == "applied frame" else "slab"


def _front(panel: AppliancePanelTable, doors: DoorsTable, usual: DoorsTable) -> FrontSpec:
    """Built as the doors are, where they have one flat back."""
    construction = _construction(panel, doors)
    thin = "thin_fibreboard" if construction == "applied frame" else usual.slab
    return FrontSpec(
        construction=construction,
        leaves=1,
        hinge="left",
        slab=panel.slab or doors.slab or thin or "",
        strip=panel.strip or doors.strip or usual.strip or "",
        frame=doors.frame or usual.frame or "",
        glazing=doors.glazing or usual.glazing or "",
        pull=panel.pull is not False,
        edge=panel.edge or doors.edge,
        panel=doors.panel or usual.panel or "",
    )


def check_panels(content: Content, in_cases: Container[str], reporter: Reporter) -> None:
    """Tell panels where none can be, limits that leave nothing, and goods that are not known.

    Parameters
    ----------
    in_cases
        Keys of the appliances that stand in cases, or that cases stand round.
    """
    for key, table in content.appliances.items():
        both: tuple[tuple[str, AppliancePanelTable | None], ...] = (
            ("panel", table.panel), ("second_panel", table.second_panel),
        )  # fmt: skip
        for name, panel in both:
            if panel is not None:
                base: KeyPath = ("appliance", key, name)
                _limits(panel, base, reporter)
                _goods(panel, base, content, reporter)
        base = ("appliance", key, "panel")
        if table.panel is None:
            if table.second_panel is not None:
                reporter.tell((*base[:2], "second_panel"), "its other door has no panel",
                              "write panel for the left or the upper door")  # fmt: skip
        elif key in in_cases and not _in_surround(key, content):
            what = "no panel is hung on an appliance that stands in a case"
            want = "take it out, or put the appliance, or a surround round it, into a run"
            reporter.tell(base, what, want)
        elif any(_hangs(key, cases.cases, content) for cases in content.runs.values()):
            reporter.tell(base, "no panel is hung between wall cases",
                          "take it out, or put it into a run of base cases")  # fmt: skip


def _in_surround(key: str, content: Content) -> bool:
    """Whether a surround of a run stands round it."""
    rows = [each for run in content.runs.values() for each in run.cases]
    cases = [content.cases[each] for each in rows if each in content.cases]
    return any(case.kind == "surround" and case.appliance == key for case in cases)


def _hangs(key: str, members: list[str], content: Content) -> bool:
    """Whether it is in a run of wall cases."""
    kinds = {content.cases[each].kind for each in members if each in content.cases}
    return key in members and "wall" in kinds


def _limits(panel: AppliancePanelTable, base: KeyPath, reporter: Reporter) -> None:
    for word in ("height", "thickness"):
        low, high = getattr(panel, f"least_{word}"), getattr(panel, f"most_{word}")
        if low is not None and high is not None and low > high:
            what = f"the least {word} of a panel is greater than the greatest"
            reporter.tell((*base, f"least_{word}"), what, "read its sheet again")
    for number, word in enumerate(panel.no_limit):
        if getattr(panel, f"most_{word}") is not None:
            what = f"most_{word} is a limit, and no_limit says that there is none"
            reporter.tell((*base, "no_limit", number), what, "take one of the two out")
    if panel.screw_rows is not None and len(set(panel.screw_rows)) < len(panel.screw_rows):
        reporter.tell((*base, "screw_rows"), "two rows of screws are at one height",
                      "write each row once: it stands for two screws")  # fmt: skip


def _goods(
    panel: AppliancePanelTable, base: KeyPath, content: Content, reporter: Reporter
) -> None:
    construction = _construction(panel, content.doors)
    for name, kind in (("slab", SheetTable), ("strip", BoardTable)):
        key = getattr(panel, name)
        if key is None or ("stock", key) in content.lost:
            continue
        fitting = [each for each, goods in content.stock.items() if isinstance(goods, kind)]
        if key not in fitting:
            word = "sheet" if kind is SheetTable else "board"
            what = f"{key} is no {word}" if key in content.stock else f"there is no stock {key}"
            reporter.unknown((*base, name), key, fitting, what)
        elif name == "strip" and construction == "slab":
            reporter.tell((*base, name), "a slab has no strip",
                          'take it out, or write construction = "applied frame"')  # fmt: skip

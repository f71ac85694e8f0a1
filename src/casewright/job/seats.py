"""Window seats in the job file: base cases with a lid."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from casewright.casework.specs import CaseSpec
from casewright.dims import Given, Origin
from casewright.job.content import Content
from casewright.job.face_choices import has_face_frame
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import CaseTable, SheetTable
from casewright.room.specs import RunSpec
from casewright.style import Style

__all__ = ["as_seat", "check_seat", "check_shared_lids", "with_shared_lids"]

_NOT_UNDER_HINGED = ("rows", "drawers", "top_drawer", "roll_outs", "shelves", "fixed_shelves",
                     "divider")  # fmt: skip


def as_seat(spec: CaseSpec, table: CaseTable, content: Content, style: Style) -> CaseSpec:
    """A base case as the seat that it is to be, where it has a lid.

    Where no height is written, that of the box follows from the seat's, its cushion and its lid;
    by the lid's label here, as it was read when the case is built.
    """
    if table.lid is None:
        return spec
    lid = table.lid_sheet or spec.box_stock
    spec = replace(
        spec, lid=table.lid, lid_stock=lid, shelves=table.shelves or 0,
        depth=style["seat_depth"] if table.depth is None else spec.depth,
    )  # fmt: skip
    goods = content.stock.get(lid)
    if table.height is not None or not isinstance(goods, SheetTable):
        return spec
    high, cushion = (
        (spec.overrides.get(key) or style[key]).value for key in ("seat_height", "seat_cushion")
    )
    origin = Origin("chosen", "height of the seat less its cushion and its lid")
    return replace(spec, height=Given(high - cushion - goods.thickness, origin), seated=True)


def with_shared_lids(
    cases: dict[str, CaseSpec], runs: Mapping[str, RunSpec]
) -> dict[str, CaseSpec]:
    """The cases, those of a run under one lid without their own."""
    under = {key for run in runs.values() if run.one_lid for key in run.cases}
    return {
        key: replace(case, shares_lid=case.lid is not None) if key in under else case
        for key, case in cases.items()
    }


def check_shared_lids(content: Content, reporter: Reporter) -> None:
    """Tell a run under one lid whose cases are no seats, or not alike."""
    for key, run in content.runs.items():
        if not run.one_lid:
            continue
        path: KeyPath = ("run", key, "one_lid")
        cases = [content.cases[each] for each in run.cases if each in content.cases]
        if len(cases) < 2 or len(cases) != len(run.cases):
            what = "one lid lies over two seats or more, side by side, and over nothing else"
            reporter.tell(path, what, "take one_lid out, or list seats alone")
        elif any(case.lid is None for case in cases):
            what = "one lid lies over window seats alone"
            reporter.tell(
                path, what, 'write lid = "hinged" or lid = "fixed" for each of its cases'
            )
        else:
            _alike(path, cases, reporter)


def _alike(path: KeyPath, cases: list[CaseTable], reporter: Reporter) -> None:
    for name in ("lid", "lid_sheet", "height", "depth", "edge", "back"):
        if len({getattr(case, name) for case in cases}) > 1:
            what = f"cases under one lid have one {name.replace('_', ' ')}"
            reporter.tell(path, what, f"write the same {name} for each of them")


def check_seat(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell a lid on what cannot have one, and what cannot be under it."""
    base: KeyPath = ("case", key)
    if case.lid is None:
        if case.lid_sheet is not None:
            what = "this case has no lid, so lid_sheet means nothing"
            reporter.tell((*base, "lid_sheet"), what, 'take it out, or write lid = "hinged"')
        return
    _sheet(base, case, content, reporter)
    if case.kind != "base":
        what = "only a base case can be a window seat"
        reporter.tell((*base, "lid"), what, 'take lid out, or write kind = "base"')
        return
    if case.sink:
        reporter.tell((*base, "sink"), "no bowl hangs in a window seat", "take sink or lid out")
    if case.lid == "hinged" and has_face_frame(case, content):
        what = "a chest under a hinged lid has no face frame"
        reporter.tell((*base, "lid"), what, 'write lid = "fixed", or face = "frameless"')
    if case.lid == "hinged":
        _hinged(base, case, reporter)
        if (case.back or content.boxes.back) == "grooved":
            what = "a captured back wants a top to slide under, and a chest has none"
            where: KeyPath = (*base, "back") if case.back else ("boxes", "back")
            reporter.tell(where, what, f'write back = "inset" for {key}: hinges bite in its edge')


def _hinged(base: KeyPath, case: CaseTable, reporter: Reporter) -> None:
    for name in _NOT_UNDER_HINGED:
        if getattr(case, name):
            what = f"a chest under a hinged lid is one space: it has no {name.replace('_', ' ')}"
            reporter.tell((*base, name), what, 'take it out, or write lid = "fixed"')
    if case.front is not None and case.front.construction == "none":
        what = "a chest under a hinged lid has a front"
        reporter.tell((*base, "front"), what, 'take front out, or write lid = "fixed"')


def _sheet(base: KeyPath, case: CaseTable, content: Content, reporter: Reporter) -> None:
    key = case.lid_sheet
    if key is None or ("stock", key) in content.lost:
        return
    sheets = [each for each, goods in content.stock.items() if isinstance(goods, SheetTable)]
    if key not in sheets:
        known = key in content.stock
        what = f"{key} is no sheet" if known else f"there is no stock {key}"
        reporter.unknown((*base, "lid_sheet"), key, sheets, what)

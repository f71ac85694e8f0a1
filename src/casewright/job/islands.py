"""Islands as they are written: their runs, their sheets, and what they cannot be."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.specs import CaseSpec
from casewright.dims import Given, Origin, size_text
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.supplies import title_of
from casewright.job.tables import CaseTable, IslandTable, RunTable, SheetTable
from casewright.room.island_spec import IslandSpec
from casewright.sources import INCH
from casewright.stock import Sheet, StockList

__all__ = ["check_islands", "island_of", "with_island_widths"]

_LEAST = 4 * INCH
"""Narrowest case that is made at all [mm]."""

_ENDS = INCH
"""More than the thickness of an end panel [mm]."""


def island_of(key: str, table: IslandTable, content: Content, origins: Origins) -> IslandSpec:
    """One island."""
    end = table.end_sheet or content.boxes.sheet or "plywood"
    return IslandSpec(
        key=key, title=title_of(key, table.title), front=table.front, back=table.back or "",
        end_stock=end, back_stock=table.back_sheet or end, length=_length(key, table, origins),
        where=origins.where(("island", key)),
    )  # fmt: skip


def _length(key: str, table: IslandTable, origins: Origins) -> tuple[Given, Given] | None:
    """Least and greatest that it may be."""
    if table.length is None:
        return None
    path: KeyPath = ("island", key, "length")
    pair = len(table.length) > 1
    found = [origins.given(each, (*path, n) if pair else path)
             for n, each in enumerate(table.length)]  # fmt: skip
    return found[0], found[-1]


def with_island_widths(
    cases: dict[str, CaseSpec], content: Content, origins: Origins, stock: StockList
) -> dict[str, CaseSpec]:
    """Cases of islands that have no width: as an accepted layout gave it, else equal shares.

    The least length of the body, less its end panels and what has a width.
    """
    found = dict(cases)
    for key, table in content.islands.items():
        solved = table.solved.widths if table.solved is not None else {}
        for case, width in solved.items():
            if case in found:
                where = origins.where(("island", key, "solved", "widths", case))
                why = (table.solved.because if table.solved else None) or "layout"
                given = Given(width, Origin("solved", why, where=where))
                found[case] = replace(found[case], width=given)
        spec, limits = island_of(key, table, content, origins), _length(key, table, origins)
        end = stock.get(spec.end_stock)
        for run in (content.runs.get(table.front), content.runs.get(table.back or "")):
            if run is None or limits is None or not isinstance(end, Sheet):
                continue
            free = [each for each in run.cases if each in found and found[each].width is None]
            taken = [w.value for each in run.cases
                     if each in found and (w := found[each].width) is not None]  # fmt: skip
            rest = limits[0].value - 2 * end.thickness.value - sum(taken, Fraction(0))
            why = f"an equal share of island {key}, {limits[0].origin.where}"
            share = max(rest, Fraction(0)) / max(len(free), 1)
            for each in free if share >= _LEAST else ():
                found[each] = replace(found[each], width=Given(share, Origin("solved", why)))
    return found


def check_islands(content: Content, reporter: Reporter) -> None:
    """Tell runs that are not known, stand twice or at a wall, and cases that cannot be in one."""
    seen: dict[str, str] = {}
    for key, table in content.islands.items():
        base: KeyPath = ("island", key)
        for name in ("front", "back"):
            run_key = getattr(table, name)
            if run_key is None or {("run",), ("run", run_key)} & content.lost:
                continue
            run = content.runs.get(run_key)
            if run is None:
                what = f"there is no run {run_key}"
                reporter.unknown((*base, name), run_key, list(content.runs), what)
            elif run_key in seen:
                reporter.tell((*base, name), f"run {run_key} stands in {seen[run_key]} already",
                              "give each side a run of its own")  # fmt: skip
            else:
                _run(run_key, run, (*base, name), content, reporter)
            seen.setdefault(run_key, f"island {key}")
        _sheets(table, base, content, reporter)
        _sizes(table, base, content, reporter)


def _sizes(table: IslandTable, base: KeyPath, content: Content, reporter: Reporter) -> None:
    """Widths that an answer or the length is to give, and what they cannot be."""
    runs = [content.runs.get(name) for name in (table.front, table.back or "")]
    own = [case for run in runs if run is not None for case in run.cases]
    for case in table.solved.widths if table.solved is not None else ():
        where, known = (*base, "solved", "widths", case), content.cases.get(case)
        if case not in own:
            reporter.unknown(where, case, own, f"case {case} is not in this island")
        elif known is not None and known.width is not None:
            reporter.tell(where, f"case {case} has a width of its own",
                          f"take it out here, or in [case.{case}]")  # fmt: skip
    if table.length is not None and table.length[0] > table.length[-1]:
        reporter.tell((*base, "length"), "the least comes before the greatest", "swap the two")
    for run in runs:
        mine = [] if run is None else [content.cases.get(each) for each in run.cases]
        widths = [case.width for case in mine if case is not None]
        free, taken = widths.count(None), sum((w for w in widths if w is not None), Fraction(0))
        rest = (table.length[0] if table.length is not None else 0) - taken
        if table.length is not None and free and rest < free * _LEAST + 2 * _ENDS:
            text = size_text(table.length[0], content.unit)
            what = f"{text} leave too little for the cases without a width"
            reporter.tell((*base, "length"), what, "write more, or take a case out")


def _sheets(table: IslandTable, base: KeyPath, content: Content, reporter: Reporter) -> None:
    sheets = [each for each, goods in content.stock.items() if isinstance(goods, SheetTable)]
    for name in ("end_sheet", "back_sheet"):
        key = getattr(table, name)
        if key is not None and key not in sheets and ("stock", key) not in content.lost:
            reporter.unknown((*base, name), key, sheets, f"{key} is no sheet")
    if table.back_sheet is not None and table.back is not None:
        reporter.tell((*base, "back_sheet"), "behind this island stands a run: it has no back",
                      "take it out, or take back out: then there are seats")  # fmt: skip


def _run(key: str, run: RunTable, path: KeyPath, content: Content, reporter: Reporter) -> None:
    """It stands free, and each of its cases is a base on a ladder."""
    ends = (run.left or "open", run.right or "open")
    if run.wall or run.on or ends != ("open", "open"):
        reporter.tell(path, f"run {key} stands at a wall: an island is free all round",
                      f"take wall, on, left and right out of [run.{key}]")  # fmt: skip
    for trim in ("crown", "light_rail", "scribe_moulding"):
        if getattr(run, trim):
            reporter.tell(("run", key, trim), f"an island has no {trim}", "take it out")
    for side, member in (("left", run.cases[0]), ("right", run.cases[-1])) if run.cases else ():
        if member in content.appliances:
            what = f"{member} stands at the {side} end of run {key}: nothing holds the end panel"
            reporter.tell(path, what, "put a case beside it, from which the panel is screwed")
    for member in run.cases:
        case = content.cases.get(member)
        if case is not None:
            _member(member, case, reporter)


def _member(key: str, case: CaseTable, reporter: Reporter) -> None:
    if case.kind != "base" or case.lid is not None:
        reporter.tell(("case", key, "kind"), "an island is built of base cases",
                      'write kind = "base", or take it out of its run')  # fmt: skip
    elif (case.toe or "notch") != "plinth":
        where: KeyPath = ("case", key, "toe" if case.toe else "kind")
        reporter.tell(where, "an island stands on ladders, which are screwed to its floor",
                      'write toe = "plinth"')  # fmt: skip
    elif case.finished:
        reporter.tell(("case", key, "finished"), "the island has end panels of its own",
                      "take it out")  # fmt: skip
    elif case.blind is not None or case.scribe:
        name = "blind" if case.blind is not None else "scribe"
        reporter.tell(("case", key, name), "an island stands at no wall", "take it out")

"""Islands as they are written: their runs, their sheets, and what they cannot be."""

from __future__ import annotations

from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.supplies import title_of
from casewright.job.tables import CaseTable, IslandTable, RunTable, SheetTable
from casewright.room.island_spec import IslandSpec

__all__ = ["check_islands", "island_of"]


def island_of(key: str, table: IslandTable, content: Content, origins: Origins) -> IslandSpec:
    """One island."""
    end = table.end_sheet or content.boxes.sheet or "plywood"
    return IslandSpec(
        key=key, title=title_of(key, table.title), front=table.front, back=table.back or "",
        end_stock=end, back_stock=table.back_sheet or end, where=origins.where(("island", key)),
    )  # fmt: skip


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

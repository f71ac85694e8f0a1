"""Names in a job file that must exist, or must not: stock, cases in runs, reserved words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from casewright.job.appliance_choices import appliance_rows, check_appliance_rows
from casewright.job.content import Content, Goods
from casewright.job.floor_places import check_floor_places
from casewright.job.islands import check_islands
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.requests import first, front_table
from casewright.job.row_choices import (
    check_drawer_goods,
    check_row_choices,
    check_slide_holes,
)
from casewright.job.tables import (
    BandTable,
    BoardTable,
    CaseTable,
    DoorsTable,
    FrontTable,
    GlazingTable,
    SheetTable,
    Table,
)
from casewright.job.tables.table import LONGEST_KEY

__all__ = ["RESERVED", "check_references"]

RESERVED = ("appliance", "boxes", "doors", "drawers", "hardware", "island", "job", "plan", "run",
            "shop", "stock", "style", "survey", "wood")  # fmt: skip
"""Names no case may have: numbers of the whole job have them in their paths."""

_CASE_WORDS = {
    "wall": "wall case",
    "base": "base case",
    "tall": "tall case",
    "bookcase": "bookcase",
    "surround": "surround",
    "hood": "hood",
}

_Fitting = tuple[type[Goods], ...]
_BOX_GOODS: dict[str, _Fitting] = {
    "sheet": (SheetTable,), "back_sheet": (SheetTable,), "strips": (BoardTable,),
    "band": (BandTable,), "face_boards": (BoardTable,),
    "end_sheet": (SheetTable,),
}  # fmt: skip
_DOOR_GOODS: dict[str, _Fitting] = {
    "slab": (SheetTable,), "strip": (BoardTable,), "frame": (BoardTable,),
    "glazing": (GlazingTable,), "panel": (SheetTable, BoardTable),
}  # fmt: skip
_KINDS: dict[type[Goods], str] = {
    SheetTable: "sheet", BoardTable: "board", BandTable: "band", GlazingTable: "glazing",
}  # fmt: skip


def check_references(content: Content, reporter: Reporter) -> None:
    """Tell every name that is not known, is reserved, or is used twice."""
    _case_names(content, reporter)
    _goods(content.boxes, ("boxes",), _BOX_GOODS, content, reporter)
    _goods(content.doors, ("doors",), _DOOR_GOODS, content, reporter)
    check_drawer_goods(content.drawers, ("drawers",), content, reporter)
    check_slide_holes(content, reporter)
    for key, case in content.cases.items():
        base = ("case", key)
        _goods(case, base, _BOX_GOODS, content, reporter)
        for name in ("front", "upper_front"):
            table: FrontTable | None = getattr(case, name)
            if table is not None:
                _goods(table, (*base, name), _DOOR_GOODS, content, reporter)
        if case.drawer is not None:
            check_drawer_goods(case.drawer, (*base, "drawer"), content, reporter)
        _choices(case, base, content, reporter)
        check_row_choices(key, case, reporter)
    check_appliance_rows(content, reporter)
    check_islands(content, reporter)
    check_floor_places(content, reporter)
    _members(content, reporter)
    _matched(content, reporter)
    _ends(content, reporter)


def _case_names(content: Content, reporter: Reporter) -> None:
    seen: dict[str, str] = {}
    for key in content.cases:
        if key.lower() in RESERVED:
            what = f"no case can be named {key}: numbers of the whole job are"
            reporter.tell(("case", key), what, f"name it {key}_case", key=True)
        other = seen.setdefault(key.lower(), key)
        if other != key:
            what = f"{key} and {other} differ in capitals only"
            reporter.tell(("case", key), what, "give one another name", key=True)
    if not content.cases and not any(path[:1] == ("case",) for path in content.lost):
        reporter.tell((), "the job has no case", "write one such as [case.upper]")


def _goods(
    table: Table,
    base: KeyPath,
    kinds: dict[str, _Fitting],
    content: Content,
    reporter: Reporter,
) -> None:
    for name, kind in kinds.items():
        key: str | None = getattr(table, name)
        if key is None or ("stock", key) in content.lost:
            continue
        goods = content.stock.get(key)
        fitting = [each for each, stock in content.stock.items() if isinstance(stock, kind)]
        word = " or ".join(_KINDS[each] for each in kind)
        if goods is None:
            what = f"there is no stock {key}"
            reporter.unknown((*base, name), key, fitting, what)
        elif not isinstance(goods, kind):
            what = f"{key} is a {_KINDS[type(goods)]}, here a {word} is needed"
            reporter.unknown((*base, name), key, fitting, what)


def _choices(case: CaseTable, base: KeyPath, content: Content, reporter: Reporter) -> None:
    for name in ("front", "upper_front"):
        table: FrontTable | None = getattr(case, name)
        if table is not None and table.leaves == 2 and table.hinge is not None:
            what = "a pair of doors has its hinges on both sides"
            reporter.tell((*base, name, "hinge"), what, "take hinge out, or write leaves = 1")
    if case.upper_front is not None and case.divider is None:
        what = "there is no opening above: the case has no divider"
        want = "write divider = ... (its height), or take upper_front out"
        reporter.tell((*base, "upper_front"), what, want)
    if case.upper_shelves and case.divider is None:
        what = "there is no opening above: the case has no divider"
        reporter.tell((*base, "upper_shelves"), what, "write divider = ..., or shelves = ...")
    for name in ("divider", "fixed_shelves"):
        if case.kind == "bookcase" and getattr(case, name):
            what = f"a bookcase has no {name}: its shelves are fixed and evenly spread"
            reporter.tell((*base, name), what, "take it out, and write shelves = ...")
    if case.kind == "bookcase" and case.joint == "pocket screws":
        what = "nothing hides pockets in a bookcase: its shelves sit in dadoes"
        reporter.tell((*base, "joint"), what, 'take it out, or write joint = "dado"')
    _of_kinds(case, base, reporter)
    _ends_of(case, base, content, reporter)
    _glass(case, base, content.doors, reporter)


def _of_kinds(case: CaseTable, base: KeyPath, reporter: Reporter) -> None:
    """What only cases of some kinds have."""
    for name, kinds in (("toe", ("base", "tall")), ("skirt", ("wall",)),
                        ("crown", ("wall", "tall", "bookcase", "surround"))):  # fmt: skip
        value = getattr(case, name)
        if value is not None and value != "none" and case.kind not in kinds:
            what = f"a {_CASE_WORDS[case.kind]} has no {name}"
            want = (
                f"take it out; only a {' or a '.join(_CASE_WORDS[kind] for kind in kinds)} has one"
            )
            reporter.tell((*base, name), what, want)
    if case.nosing is not None and case.kind != "bookcase" and not _is_open(case):
        what = f"a {_CASE_WORDS[case.kind]} has no nosing where doors or rows close it"
        want = 'take it out, or write front = "none": bookcases and open shelves have one'
        reporter.tell((*base, "nosing"), what, want)


def _is_open(case: CaseTable) -> bool:
    """Whether a case is open shelves from top to bottom."""
    closed = case.rows or case.drawers or case.top_drawer or case.sink or case.lid or case.divider
    is_kind = case.kind in ("wall", "base", "tall")
    none = case.front is not None and case.front.construction == "none"
    return is_kind and none and not closed


def _ends_of(case: CaseTable, base: KeyPath, content: Content, reporter: Reporter) -> None:
    """Words for finished ends where none is, or a sheet for what is not cut from one."""
    kind = case.end or content.boxes.end or "applied frame"
    for name in ("end", "end_sheet"):
        if getattr(case, name) is not None and not (case.finished or case.kind == "surround"):
            what = f"no end of this case shows, so {name} means nothing"
            reporter.tell((*base, name), what, 'take it out, or write finished = "left"')
    if case.end_sheet is not None and case.finished and kind in ("applied frame", "plain"):
        what = f'nothing of a sheet is on an end that is "{kind}"'
        want = 'take it out, or write end = "skin" or "flush"'
        reporter.tell((*base, "end_sheet"), what, want)


def _glass(case: CaseTable, base: KeyPath, doors: DoorsTable, reporter: Reporter) -> None:
    """Stock, or an edge, named for a construction that does not use it is a slip."""
    uses = {"slab": {"slab", "edge"}, "applied frame": {"slab", "strip", "edge"},
            "glass frame": {"frame", "glazing", "film"},
            "frame and panel": {"frame", "panel"},
            "mitred frame": {"frame", "panel"}}  # fmt: skip
    for name, upper in (("front", False), ("upper_front", True)):
        table: FrontTable | None = getattr(case, name)
        if table is None or front_table(case, upper=upper) is None:
            continue
        construction = first(table.construction, doors.construction, "slab")
        if table.mid_rail is not None and construction != "frame and panel":
            what = f"a {construction} door has no mid rail"
            want = 'take it out, or write construction = "frame and panel"'
            reporter.tell((*base, name, "mid_rail"), what, want)
        for part in (*_DOOR_GOODS, "edge", "film"):
            if getattr(table, part) is not None and part not in uses[construction]:
                what = f"a {construction} door has no {part}"
                reporter.tell((*base, name, part), what, "take it out, or change construction")


def _members(content: Content, reporter: Reporter) -> None:
    placed: dict[str, str] = {}
    for run_key, run in content.runs.items():
        for number, key in enumerate(run.cases):
            path = ("run", run_key, "cases", number)
            if key in placed:
                twice = placed[key] == run_key
                what = f"case {key} already stands in {'this run' if twice else placed[key]}"
                want = f"take it out {'here' if twice else 'of one of the two'}"
                reporter.tell(path, what, want)
            elif run.on in content.walls and key in content.walls[run.on].fixed:
                what = f"{key} stands on the wall: a run ends before it, and another begins after"
                want = (
                    f'write two runs: one with the cases left of it and before = "{key}", one '
                    f'with those right of it and after = "{key}"'
                )
                reporter.tell(path, what, want)
            elif not content.knows(key):
                what = f"there is no case {key}"
                reporter.unknown(path, key, [*_case_keys(content), *content.appliances], what)
            placed.setdefault(key, run_key)
    _appliances(content, placed, reporter)
    for key, case in content.cases.items():
        if case.width is None:
            _no_width(key, placed.get(key), content, reporter)


def _matched(content: Content, reporter: Reporter) -> None:
    """Every case of a match is known, and its fronts are in no other."""
    seen: dict[str, str] = {}
    for name, match in content.matches.items():
        for number, key in enumerate(match.cases):
            path = ("match", name, "cases", number)
            if key in seen:
                what = f"the fronts of {key} are in match {seen[key]} already"
                reporter.tell(path, what, "name each case once")
            elif not content.knows(key):
                what = f"there is no case {key}"
                reporter.unknown(path, key, [*_case_keys(content), *content.appliances], what)
            seen.setdefault(key, name)


def _appliances(content: Content, placed: Mapping[str, str], reporter: Reporter) -> None:
    """Each stands in a run and has a name of its own; a filler is screwed to a case."""
    for key in content.appliances:
        path: KeyPath = ("appliance", key)
        if key in content.cases:
            what = f"a case is called {key} as well"
            reporter.tell(path, what, "give one of the two another name", key=True)
        elif _stands_nowhere(key, content, placed) and not any(
            p[:1] == ("run",) for p in content.lost
        ):
            want = f"put {key} among the cases of the run it stands in, or take it out"
            reporter.tell(path, f"appliance {key} stands in no run and in no case", want, key=True)
    for run_key, run in content.runs.items():
        usual = "wall" if run.wall or run.on else "open"
        for number, name in ((0, "left"), (len(run.cases) - 1, "right")):
            end = getattr(run, name) or usual
            if run.cases[number] in content.appliances and end in ("wall", "corner"):
                what = f"at its {name} end an appliance stands: nothing holds a filler"
                want = f'write {name} = "open", or a case between it and the {end}'
                reporter.tell(("run", run_key, "cases", number), what, want)
        if not set(run.cases) - set(content.appliances):
            what, want = "the run has appliances and no case", "put a case into it"
            reporter.tell(("run", run_key, "cases"), what, want)


def _stands_nowhere(key: str, content: Content, placed: Mapping[str, str]) -> bool:
    """Whether neither a run nor a case has it; one with a depth may wait for its case."""
    in_cases = {name for each, case in content.cases.items()
                for name, _ in appliance_rows(each, case)}  # fmt: skip
    return key not in placed and key not in in_cases and content.appliances[key].depth is None


def _case_keys(content: Content) -> list[str]:
    lost = [str(path[1]) for path in content.lost if path[:1] == ("case",) and len(path) == 2]
    known = [*content.cases, *sorted(lost)]
    return [key for key in known if key.lower() not in RESERVED and len(key) <= LONGEST_KEY]


def _no_width(key: str, run_key: str | None, content: Content, reporter: Reporter) -> None:
    path = ("case", key)
    if run_key is None:
        if any(lost[:1] == ("run",) for lost in content.lost):
            return
        if not all(content.knows(each) for run in content.runs.values() for each in run.cases):
            return  # told there: it is probably this one that stands in that run
        what = f"width is missing in [case.{key}]"
        want = "write width = ..., or put the case into a run with readings of its wall"
        reporter.tell(path, what, want)
    elif not (content.runs[run_key].wall or content.runs[run_key].on):
        islands = [i for i in content.islands.values() if run_key in (i.front, i.back)]
        if any(i.length is not None for i in islands):
            return
        what = f"case {key} has no width, and run {run_key} no wall to share out"
        want = f"write width = ... here, or wall = [...] in [run.{run_key}]"
        if islands:
            want = "write width = ... here, or length = [..., ...] in its island"
        reporter.tell(path, what, want)


def _ends(content: Content, reporter: Reporter) -> None:
    for key, run in content.runs.items():
        if run.wall or run.on:
            continue
        for name in _wall_ends(run.left, run.right):
            what = f"run {key} ends at a wall whose width is not known"
            want = f'write wall = ["...", "...", "..."], or {name} = "open"'
            reporter.tell(("run", key, name), what, want)


def _wall_ends(left: str | None, right: str | None) -> Iterator[str]:
    for name, end in (("left", left), ("right", right)):
        if end == "wall":
            yield name

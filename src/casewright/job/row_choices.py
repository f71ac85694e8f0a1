"""What a case says of its rows, drawers and bowl that cannot go together."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from casewright.casework.specs import TOE_KINDS
from casewright.dims import shop_text
from casewright.hardware import LAST_HOLE
from casewright.job.content import Content
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.rows import written_rows
from casewright.job.tables import CaseTable, DrawersTable, SheetTable, SlideTable

__all__ = ["check_drawer_goods", "check_row_choices", "check_slide_holes"]

_APART = Fraction(10)
"""Holes of a slide are never nearer to one another [mm]."""


def check_drawer_goods(
    table: DrawersTable, base: KeyPath, content: Content, reporter: Reporter
) -> None:
    """Tell sheets of drawers that are no sheets, or not known."""
    for name in ("sheet", "bottom"):
        key: str | None = getattr(table, name)
        if key is None or ("stock", key) in content.lost:
            continue
        sheets = [each for each, goods in content.stock.items() if isinstance(goods, SheetTable)]
        if key not in content.stock:
            reporter.unknown((*base, name), key, sheets, f"there is no stock {key}")
        elif key not in sheets:
            reporter.unknown((*base, name), key, sheets, f"{key} is no sheet")


def check_row_choices(key: str, case: CaseTable, reporter: Reporter) -> None:
    """Tell rows that a case cannot have, and keys that mean nothing beside them."""
    base: KeyPath = ("case", key)
    for name in ("rows", "drawers", "top_drawer", "sink", "roll_outs"):
        where = ("base",) if name == "sink" else TOE_KINDS
        if getattr(case, name) and case.kind not in where:
            what = f"only a {' or '.join(where)} case has {name}"
            reporter.tell((*base, name), what, 'take it out, or write kind = "base"')
            return
    for name in ("drawers", "top_drawer"):
        if getattr(case, name) is not None and (case.rows is not None or case.sink):
            other = "rows" if case.rows is not None else "sink"
            reporter.tell((*base, name), f"{other} says already what the face has",
                          f"take one of the two out: {name} or {other}")  # fmt: skip
            return
    rows = written_rows(key, case)
    kinds = [kind for kind, _, _ in rows]
    for number, (kind, _, path) in enumerate(rows):
        if kind == "false front" and number:
            reporter.tell(path, "a false front hides a rail under the top",
                          "write it first, as the topmost row")  # fmt: skip
    if kinds and set(kinds) == {"open"}:
        reporter.tell((*base, "rows"), "all rows are open", 'take rows out; write front = "none"')
    _without_doors(base, case, kinds, reporter)
    _sink(base, case, kinds, reporter)
    _roll_outs(base, case, kinds, reporter)
    if case.drawer is not None and "drawer" not in kinds and not case.roll_outs:
        reporter.tell((*base, "drawer"), "this case has no drawers", "take it out, or add drawers")
    if case.rails is not None and len(kinds) < 2:
        reporter.tell((*base, "rails"), "this case has no rows", "take it out")


def _without_doors(
    base: KeyPath, case: CaseTable, kinds: Sequence[str], reporter: Reporter
) -> None:
    """Doors, shelves, fixed shelves need a row of doors, or a face without rows."""
    if not kinds:
        return
    if case.front is not None and case.front.construction == "none":
        what = "rows close this face, but front says that it is open"
        reporter.tell((*base, "front"), what, 'write "open" among the rows, or take front out')
    if "doors" in kinds:
        return
    for name in ("shelves", "fixed_shelves"):
        if getattr(case, name):
            what = f"no row of this case has doors, so {name} has no place"
            reporter.tell((*base, name), what, f'take {name} out, or add "doors" to the rows')
    for name in ("leaves", "hinge"):
        if case.front is not None and getattr(case.front, name) is not None:
            what = f"no row of this case has doors, so {name} means nothing"
            reporter.tell((*base, "front", name), what, f"take {name} out")


def _roll_outs(base: KeyPath, case: CaseTable, kinds: Sequence[str], reporter: Reporter) -> None:
    """Roll-outs run behind doors, in place of shelves."""
    if not case.roll_outs:
        return
    is_open = case.front is not None and case.front.construction == "none"
    if is_open or case.sink or (kinds and "doors" not in kinds):
        what = "roll-outs run behind doors, where no bowl hangs"
        reporter.tell((*base, "roll_outs"), what, "take it out, or give the case doors")
    for name in ("shelves", "fixed_shelves"):
        if getattr(case, name):
            what = f"roll-outs take the place of {name}"
            reporter.tell((*base, name), what, "take one of the two out")


def _sink(base: KeyPath, case: CaseTable, kinds: Sequence[str], reporter: Reporter) -> None:
    """A bowl hangs where drawers would run; its case has no back and no divider."""
    if not case.sink:
        if case.bowl is not None:
            reporter.tell((*base, "bowl"), "no bowl hangs in this case", "write sink = true")
        return
    if kinds and kinds[0] != "false front":
        what = "the topmost row of a sink base hides the bowl"
        reporter.tell((*base, "rows"), what, 'begin with "false front"')
    for name in ("back", "divider", "fixed_shelves"):
        if getattr(case, name):
            what = f"a sink base has no {name.replace('_', ' ')} of its own choice"
            reporter.tell((*base, name), what, "take it out: pipes and bowl want the room")


def check_slide_holes(content: Content, reporter: Reporter) -> None:
    """Tell holes of slides on or past their ends, written twice, or running into one another."""
    for key in ("slide", "undermount"):
        table: SlideTable = getattr(content.hardware, key)
        _check_shortest(key, table, content, reporter)
        for name in ("holes", "box_holes"):
            row = sorted(enumerate(getattr(table, name) or ()), key=lambda pair: pair[1])
            if row and table.hole is not None and row[0][1] < table.hole / 2:
                reporter.tell(
                    ("hardware", key, name, row[0][0]), "this hole lies on the slide's front end",
                    "write how far behind the front end of the slide its middle is",
                )  # fmt: skip
            for (_, one), (number, other) in pairwise(row):
                if other - one < _APART:
                    reporter.tell(
                        ("hardware", key, name, number), "this hole runs into the one before it",
                        "write each hole by its distance from the slide's front end",
                    )  # fmt: skip


def _check_shortest(key: str, table: SlideTable, content: Content, reporter: Reporter) -> None:
    """The shortest slides have two holes to be screwed through."""
    if not table.holes or not table.lengths:
        return
    second, shortest = sorted(table.holes)[1], min(table.lengths)
    if second + LAST_HOLE > shortest:
        long = shop_text(shortest, content.unit, with_unit=True)
        most = shop_text(shortest - LAST_HOLE, content.unit, with_unit=True)
        number = table.holes.index(second)
        reporter.tell(
            ("hardware", key, "holes", number),
            f"slides of {long}, the shortest there are, have one hole at the most before this one",
            f"write how far behind the slide's front end its first two are: {most} at most",
        )  # fmt: skip
